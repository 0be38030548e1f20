"""The pandera schemas of refdata, made from the column catalogue: types, vocabularies, grammars, units, evidence.

The columns that every row has are checked in one frame for all tables (``shared_schema``), the key columns in one
frame a table (``key_schema``), each list in one frame (``list_schema``). A check is named after its rule; ``DO``
holds what to do about each rule.
"""

from __future__ import annotations

import re
import sys
from typing import TYPE_CHECKING, Any

import pandas as pd
import pandera.pandas as pa

from gaugeblock import units
from gaugeblock.errors import GaugeblockError
from gaugeblock.figure import BASES, CHECKED, SOURCED, STANDINGS
from gaugeblock.tables.catalogue import DOMAINS, LISTS, SERVICES, Key, keys_of
from gaugeblock.tables.fault import Fault
from gaugeblock.tables.interval import parse_interval

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Mapping

SIDES = ("max", "min", "target", "nominal")
SAFER = ("low", "high", "none")
HAZARDS = ("injury", "damage", "none")
# What a quantity may do to a decision: bound it, be what is set, or inform.
MAY = ("limit", "target", "information")
SEVERITIES = ("injury", "damage", "note")
SOURCE_KINDS = (
    "standard", "regulation", "government handbook", "textbook", "handbook", "paper", "competition rules", "maker's sheet",
    "reference page", "other",
)  # fmt: skip
NUMBERS = ("value", "low", "high")

# The dimension of interval and interpolated key columns. The hardness key is a bare number on the scale of its row.
KEY_DIMENSIONS = {
    "size": "length", "od": "length", "wall": "length", "section": "length", "bend_ratio": "ratio", "temper": "temperature",
    "temperature": "temperature",
}  # fmt: skip

NUMBER = re.compile(r"-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?", re.ASCII)
DECIMAL_COMMA = re.compile(r".*[0-9],[0-9]", re.ASCII)
VERSION = re.compile(r"(?:0|[1-9][0-9]{0,5})(?:\.(?:0|[1-9][0-9]{0,5})){2}", re.ASCII)
NAME = re.compile(r"[a-z][a-z0-9]*(?:_[a-z0-9]+)*", re.ASCII)
THREAD = re.compile(
    r"(?:#(?:[0-9]|1[02])|(?:[1-9]-)?(?:[13]/4|[1357]/8|(?:1|3|5|7|9|11|13|15)/16|1/2)|[1-9])"
    r"-[1-9][0-9]? (?:UNC|UNF|UNEF|UNS|UN|UNJF|UNJC|4UN|6UN|8UN|12UN|16UN|20UN|28UN|32UN)"
    r"|M[1-9][0-9]{0,2}(?:\.[0-9])?x[0-9](?:\.[0-9]{1,2})?",
    re.ASCII,
)
BARE_SIZE = re.compile(r"(?:#[0-9]{1,2}|(?:[0-9]+ )?[0-9]+(?:/[0-9]+)? in|M[0-9]+|[0-9]+ mm)", re.ASCII)
_MONTH = r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec)(?:uary|ruary|ch|il|e|y|ust|ember|tember|ober)?"
DATE = re.compile(
    rf"[0-9]{{1,4}}[-/ ]{_MONTH}(?:[-/ ][0-9]{{2,4}})?|{_MONTH}[-/ ][0-9]{{1,4}}|[0-9]{{4}}-[0-9]{{1,2}}-[0-9]{{1,2}}"
    r"|[0-9]{1,2}([-/.])[0-9]{1,2}\1[0-9]{2,4}|[0-9]{4}/[0-9]{1,2}/[0-9]{1,2}",
    re.ASCII | re.IGNORECASE,
)

# rule -> what to do about it
DO = {
    "number_grammar": "write plain decimal text, such as 0.0775, with no unit and no blank",
    "decimal_comma": "write a decimal point",
    "no_number": "give value, low or high as the source prints it",
    "low_above_high": "put the lower end in low and the higher in high",
    "value_outside_ends": "value lies between low and high; read the source again",
    "unknown_unit": "use a spelling of the table of units",
    "wrong_dimension": "use a unit of the quantity's dimension",
    "unknown_quantity": "name a quantity of quantities.csv, or add it there",
    "unknown_source": "name a source of sources.csv, or add it there",
    "basis_word": "use one of: " + ", ".join(BASES),
    "checked_word": "use one of: " + ", ".join(CHECKED),
    "standing_word": "leave it blank, or use one of: " + ", ".join(STANDINGS[1:]),
    "service_word": "use one of: " + ", ".join(SERVICES),
    "side_word": "use one of: " + ", ".join(SIDES),
    "safer_word": "use one of: " + ", ".join(SAFER),
    "hazard_word": "use one of: " + ", ".join(HAZARDS),
    "may_word": "use one of: " + ", ".join(MAY),
    "severity_word": "use one of: " + ", ".join(SEVERITIES),
    "kind_word": "use one of: " + ", ".join(SOURCE_KINDS),
    "domain_word": "use one of: any, " + ", ".join(DOMAINS),
    "prefers_grammar": "write an order of bases: maker > published > measured > common practice",
    "step_grammar": "write steps with a unit of the dimension, such as 1 lbf*ft; 1 N*m",
    "unknown_dimension": "use a dimension word of the table of units",
    "missing_source": "a published, maker or measured row names its source",
    "missing_locator": "a published, maker or measured row says where in the source",
    "missing_checked": "a published, maker or measured row says whether the source was read",
    "unknown_release": "use a version of releases.csv",
    "since_after_until": "a row ends in a release after the one it began in",
    "blank_cell": "this cell must not be blank",
    "any_not_allowed": "name one value; this key does not take any",
    "interval_grammar": "write 0.375 in, 1/4 to 3/4 in, over 3/4 to 1 1/2 in, to 16 mm or over 16 mm",
    "interval_dimension": "write the interval with a unit of the key's dimension",
    "thread_grammar": "write 3/8-16 UNC, #10-24 UNC, 1-14 UNS or M10x1.5",
    "looks_like_a_date": "a spreadsheet turned a size into a date; write the size again from the source",
    "name_grammar": "write lower_snake",
    "year_grammar": "write four digits, or leave it blank",
    "url_grammar": "write an https address, or leave it blank",
    "version_grammar": "write a release number, such as 0.2.0",
    "date_grammar": "write the day of the release as 2026-11-25",
    "digest_grammar": "a digest is 64 hex digits, written by closing the release; an open release has none",
}

Strings = Any  # a pandas Series of str
Rule = Any  # a pandera Check


def _check(rule: str, test: Callable[[Any], object]) -> Rule:
    """A check that is never changed: where a schema copies its columns, the copies share it."""
    made = pa.Check(test, name=rule, error=rule, ignore_na=False)
    made.__deepcopy__ = lambda _: made  # type: ignore[attr-defined]
    return made


def _each(rule: str, test: Callable[[str], object]) -> Rule:
    """A check of one column, each distinct cell tested once; a plain True, which is quicker, when all pass."""

    def column(cells: Strings) -> Strings:
        refused = [cell for cell in set(cells.to_numpy().tolist()) if not test(cell)]
        return ~cells.isin(refused) if refused else True

    return _check(rule, column)


def _word(rule: str, words: Collection[str]) -> Rule:
    allowed = frozenset(words)
    return _each(rule, lambda cell: cell in allowed)


def _shape(rule: str, pattern: re.Pattern[str], blank: bool = False) -> Rule:
    return _each(rule, lambda cell: (blank and not cell) or pattern.fullmatch(cell))


def _filled(rule: str = "blank_cell") -> Rule:
    return _each(rule, bool)


def _frame_rule(rule: str, test: Callable[[Any], Strings]) -> Rule:
    """A check over several columns of a frame."""
    return _check(rule, test)


def _number_checks() -> list[Rule]:
    return [
        _each("decimal_comma", lambda cell: not DECIMAL_COMMA.fullmatch(cell)),
        _each("number_grammar", lambda cell: not cell or NUMBER.fullmatch(cell) or DECIMAL_COMMA.fullmatch(cell)),
    ]


def _evidence_rules() -> list[Rule]:
    def needs(column: str) -> Rule:
        return _frame_rule(f"missing_{column}", lambda f: (f[column] != "") | ~f["basis"].isin(SOURCED))

    return [needs("source"), needs("locator"), needs("checked")]


def _lifetime_columns(versions: Mapping[str, int]) -> dict[str, list[Rule]]:
    return {"since": [_word("unknown_release", versions)], "until": [_word("unknown_release", {"", *versions})]}


def _lifetime_rule(versions: Mapping[str, int]) -> Rule:
    def test(frame: Any) -> Strings:
        since, until = frame["since"].map(versions), frame["until"].map(versions)
        return ~(since >= until)

    return _frame_rule("since_after_until", test)


def _schema(columns: Mapping[str, list[Rule]], rules: list[Rule]) -> Any:
    # A cell of a CSV file is text, at the least blank, never null: no search for nulls (a quarter of the time).
    return pa.DataFrameSchema(
        {name: pa.Column(checks=checks, nullable=True) for name, checks in columns.items()}, checks=rules
    )


def shared_schema(dimensions: Mapping[str, str], sources: Collection[str], versions: Mapping[str, int]) -> Any:
    """The schema of the columns that every row has.

    ``dimensions`` maps each quantity to its dimension word, ``versions`` each release to its place in order.
    """
    measure = {unit: entry[0] for unit, entry in units.UNITS.items()}

    def right_dimension(frame: Any) -> Strings:
        wanted, given = frame["quantity"].map(dimensions), frame["unit"].map(measure)
        return (wanted == given) | wanted.isna() | given.isna()

    def number(frame: Any, name: str) -> Strings:
        return pd.to_numeric(frame[name], errors="coerce")

    def some_number(frame: Any) -> Strings:
        return (frame["value"] != "") | (frame["low"] != "") | (frame["high"] != "")

    def ends_in_order(frame: Any) -> Strings:
        return ~(number(frame, "low") > number(frame, "high"))

    def value_between(frame: Any) -> Strings:
        value, low, high = (number(frame, name) for name in NUMBERS)
        return ~((value < low) | (value > high)) | (low > high)

    columns = {name: _number_checks() for name in NUMBERS}
    columns |= {
        "quantity": [_word("unknown_quantity", dimensions)],
        "unit": [_word("unknown_unit", units.UNITS)],
        "basis": [_word("basis_word", BASES)],
        "source": [_word("unknown_source", {"", *sources})],
        "checked": [_word("checked_word", {"", *CHECKED})],
        "standing": [_word("standing_word", STANDINGS)],
    }
    columns |= _lifetime_columns(versions)
    rules = [
        _frame_rule("no_number", some_number), _frame_rule("low_above_high", ends_in_order),
        _frame_rule("value_outside_ends", value_between), _frame_rule("wrong_dimension", right_dimension),
        *_evidence_rules(), _lifetime_rule(versions),
    ]  # fmt: skip
    return _schema(columns, rules)


# Where a rule over several columns points.
RULE_COLUMN = {
    "no_number": "value", "low_above_high": "low", "value_outside_ends": "value", "wrong_dimension": "unit",
    "missing_source": "source", "missing_locator": "locator", "missing_checked": "checked", "since_after_until": "until",
}  # fmt: skip


def _is_interval(cell: str) -> bool:
    try:
        parse_interval(cell)
    except GaugeblockError:
        return False
    return True


def _has_dimension(cell: str, wanted: str) -> bool:
    if cell == "any" or not _is_interval(cell):
        return True
    interval = parse_interval(cell)
    return interval is None or interval.dimension == wanted


def _key_checks(table: str, key: Key) -> list[Rule]:
    checks = [_filled(), _each("looks_like_a_date", lambda cell: not DATE.fullmatch(cell))]
    if not key.any_allowed:
        checks.append(_each("any_not_allowed", lambda cell: cell != "any"))
    if key.match != "exact":
        checks.append(_each("interval_grammar", lambda cell: DATE.fullmatch(cell) or _is_interval(cell)))
        if key.name in KEY_DIMENSIONS:
            wanted = KEY_DIMENSIONS[key.name]
            checks.append(_each("interval_dimension", lambda cell: _has_dimension(cell, wanted)))
    elif key.name == "service":
        checks.append(_word("service_word", SERVICES))
    elif key.name == "thread":
        strict = table in ("fasteners/threads", "fasteners/bolt_loads", "fasteners/thread_stripping")
        # A torque table may print a size without its series; then the key is that bare size.
        checks.append(
            _each(
                "thread_grammar",
                lambda cell: (
                    THREAD.fullmatch(cell) or DATE.fullmatch(cell) or (not strict and BARE_SIZE.fullmatch(cell))
                ),
            )
        )
    return checks


def key_schema(table: str) -> Any:
    """The schema of the key columns of one table."""
    return _schema({key.name: _key_checks(table, key) for key in keys_of(table)}, [])


def _prefers(cell: str) -> bool:
    bases = cell.split(" > ")
    return all(b in BASES for b in bases) and len(set(bases)) == len(bases)


def _steps(frame: Any) -> Strings:
    def good(dimension: str, text: str) -> bool:
        try:
            return all(units.parse_measure(part, dimension).value > 0 for part in text.split("; "))
        except GaugeblockError:
            return False

    return pd.Series(
        [not s or good(d, s) for d, s in zip(frame["dimension"], frame["step"], strict=True)], index=frame.index
    )


RULE_COLUMN["step_grammar"] = "step"


def list_schema(name: str, sources: Collection[str], versions: Mapping[str, int]) -> Any:
    """The schema of one list: sources, quantities, formulas, words, rules or releases."""
    columns: dict[str, list[Rule]] = {column: [] for column in LISTS[name]}
    rules = []
    if name == "releases":
        columns["version"] = [_shape("version_grammar", VERSION)]
        columns["date"] = [
            _shape("date_grammar", re.compile(r"20[0-9]{2}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])"))
        ]
        columns["sha256"] = [_shape("digest_grammar", re.compile(r"[0-9a-f]{64}"), blank=True)]
        columns["summary"] = [_filled()]
        return _schema(columns, [])
    columns |= _lifetime_columns(versions)
    rules.append(_lifetime_rule(versions))
    if name == "sources":
        columns["id"] = columns["title"] = [_filled()]
        columns["year"] = [_shape("year_grammar", re.compile(r"1[89][0-9]{2}|20[0-9]{2}"), blank=True)]
        columns["kind"] = [_word("kind_word", SOURCE_KINDS)]
        columns["url"] = [_shape("url_grammar", re.compile(r"https?://[!-~]+"), blank=True)]
    elif name == "quantities":
        columns["quantity"] = [_shape("name_grammar", NAME)]
        columns["dimension"] = [_word("unknown_dimension", {entry[0] for entry in units.UNITS.values()})]
        columns["side"] = [_word("side_word", SIDES)]
        columns["safer"] = [_word("safer_word", SAFER)]
        columns["prefers"] = [_each("prefers_grammar", _prefers)]
        columns["hazard"] = [_word("hazard_word", HAZARDS)]
        columns["may"] = [_word("may_word", MAY)]
        columns["definition"] = [_filled()]
        rules.append(_frame_rule("step_grammar", _steps))
    elif name == "words":
        columns["domain"] = [_word("domain_word", ("any", *DOMAINS))]
        columns["word"] = columns["column"] = columns["cell"] = [_filled()]
    else:
        columns["basis"] = [_word("basis_word", BASES)]
        columns["source"] = [_word("unknown_source", {"", *sources})]
        columns["checked"] = [_word("checked_word", {"", *CHECKED})]
        rules += _evidence_rules()
        if name == "formulas":
            columns["name"] = [_shape("name_grammar", NAME)]
            columns["domain"] = [_word("domain_word", ("any", *DOMAINS))]
            columns["expression"] = [_filled()]
        else:
            columns["topic"] = columns["statement"] = [_filled()]
            columns["service"] = [_word("service_word", SERVICES)]
            columns["severity"] = [_word("severity_word", SEVERITIES)]
            columns["standing"] = [_word("standing_word", STANDINGS)]
    return _schema(columns, rules)


def _register() -> None:
    """Load pandera's checks without its test strategies: where hypothesis is installed they bring all of it in."""
    absent = "hypothesis" not in sys.modules
    if absent:
        sys.modules["hypothesis"] = None  # type: ignore[assignment]
    try:
        pa.DataFrameSchema.register_default_backends(pd.DataFrame)
    finally:
        if absent:
            del sys.modules["hypothesis"]


_register()


def faults_of(schema: Any, frame: Any, places: list[tuple[str, int]]) -> list[Fault]:
    """The faults that a schema finds in a frame whose rows stand at ``places`` (file, line), in the order of the rows."""
    try:
        schema.validate(frame, lazy=True)
    except pa.errors.SchemaErrors as error:
        cases = error.failure_cases
    else:
        return []
    found: dict[tuple[int, str, str], Fault] = {}
    for context, column, rule, index in zip(
        cases["schema_context"], cases["column"], cases["check"], cases["index"], strict=True
    ):
        if pd.isna(index):
            raise AssertionError(f"schema of the wrong columns: {column} {rule}")
        at = int(index)
        where = RULE_COLUMN[rule] if context == "DataFrameSchema" else str(column)
        file, line = places[at]
        cell = frame[where].array[at]
        found[at, where, rule] = Fault(file, line, where, rule, repr(cell) if cell else "nothing", _do(rule, frame, at))
    return [found[k] for k in sorted(found)]


def _do(rule: str, frame: Any, at: int) -> str:
    if rule == "wrong_dimension":
        return f"{DO[rule]} ({frame['quantity'].array[at]})"
    if rule == "unknown_unit":
        near = units.nearest_units(frame["unit"].array[at])
        return f"{DO[rule]}{', nearest ' + ', '.join(near) if near else ''}"
    return DO[rule]
