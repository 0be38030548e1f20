"""The schemas of refdata, made from the column catalogue: types, vocabularies, grammars, units, evidence.

The columns that every row has are checked at once for all tables (``shared_schema``), the key columns a table at a time
(``key_schema``), each list by itself (``list_schema``). A check is named after its rule; ``DO`` holds what to do
about it.
A schema library did this before: loading it and its frames took two thirds of a second, and every test of a cell
was ours.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from gaugeblock import units
from gaugeblock.errors import GaugeblockError
from gaugeblock.figure import BASES, CHECKED, SOURCED, STANDINGS
from gaugeblock.tables.catalogue import DOMAINS, KEY_DIMENSIONS, LISTS, SERVICES, SOURCE_WEIGHTS, Key, keys_of
from gaugeblock.tables.fault import Fault
from gaugeblock.tables.interval import is_interval, parse_interval

if TYPE_CHECKING:
    from collections.abc import Callable, Collection, Mapping, Sequence

    # One row as its cells by column.
    Cells = Mapping[str, str]

SIDES = ("max", "min", "target", "nominal")
SAFER = ("low", "high", "none")
HAZARDS = ("injury", "damage", "none")
# What a quantity may do to a decision: bound it, be what is set, or inform.
MAY = ("limit", "target", "information")
SEVERITIES = ("injury", "damage", "note")
SOURCE_KINDS = tuple(SOURCE_WEIGHTS)
NUMBERS = ("value", "low", "high")

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


class Test:
    """A rule with its test, of one cell or of a whole row."""

    __slots__ = ("rule", "test")

    def __init__(self, rule: str, test: Callable[..., object]) -> None:
        self.rule = rule
        self.test = test


class Schema:
    """What cells must be: the tests of each column, and those that look at a whole row."""

    __slots__ = ("columns", "rules")

    def __init__(self, columns: Mapping[str, list[Test]], rules: list[Test]) -> None:
        self.columns = columns
        self.rules = rules


def _each(rule: str, test: Callable[[str], object]) -> Test:
    """A test of one cell; each distinct cell of a column is tested once."""
    return Test(rule, test)


def _word(rule: str, words: Collection[str]) -> Test:
    return Test(rule, frozenset(words).__contains__)


def _shape(rule: str, pattern: re.Pattern[str], blank: bool = False) -> Test:
    return Test(rule, lambda cell: (blank and not cell) or pattern.fullmatch(cell))


def _filled(rule: str = "blank_cell") -> Test:
    return Test(rule, bool)


def _row_rule(rule: str, test: Callable[[Cells], object]) -> Test:
    """A test of a whole row."""
    return Test(rule, test)


def _number_checks() -> list[Test]:
    return [
        _each("decimal_comma", lambda cell: not DECIMAL_COMMA.fullmatch(cell)),
        _each("number_grammar", lambda cell: not cell or NUMBER.fullmatch(cell) or DECIMAL_COMMA.fullmatch(cell)),
    ]


def _evidence_rules() -> list[Test]:
    def needs(column: str) -> Test:
        return _row_rule(f"missing_{column}", lambda row: row[column] or row["basis"] not in SOURCED)

    return [needs("source"), needs("locator"), needs("checked")]


def _lifetime_columns(versions: Mapping[str, int]) -> dict[str, list[Test]]:
    return {"since": [_word("unknown_release", versions)], "until": [_word("unknown_release", {"", *versions})]}


def _lifetime_rule(versions: Mapping[str, int]) -> Test:
    def test(row: Cells) -> bool:
        since, until = versions.get(row["since"]), versions.get(row["until"])
        return since is None or until is None or since < until

    return _row_rule("since_after_until", test)


def _number(cell: str) -> float | None:
    try:
        return float(cell) if cell else None
    except ValueError:
        return None


def _ends_in_order(row: Cells) -> bool:
    low, high = _number(row["low"]), _number(row["high"])
    return low is None or high is None or low <= high


def _value_between(row: Cells) -> bool:
    value, low, high = (_number(row[name]) for name in NUMBERS)
    if value is None or (low is not None and high is not None and low > high):
        return True
    return (low is None or value >= low) and (high is None or value <= high)


def shared_schema(dimensions: Mapping[str, str], sources: Collection[str], versions: Mapping[str, int]) -> Schema:
    """The schema of the columns that every row has.

    ``dimensions`` maps each quantity to its dimension word, ``versions`` each release to its place in order.
    """
    measure = {unit: entry[0] for unit, entry in units.UNITS.items()}

    def right_dimension(row: Cells) -> bool:
        wanted, given = dimensions.get(row["quantity"]), measure.get(row["unit"])
        return wanted is None or given is None or wanted == given

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
        _row_rule("no_number", lambda row: row["value"] or row["low"] or row["high"]),
        _row_rule("low_above_high", _ends_in_order),
        _row_rule("value_outside_ends", _value_between),
        _row_rule("wrong_dimension", right_dimension),
        *_evidence_rules(),
        _lifetime_rule(versions),
    ]
    return Schema(columns, rules)


# Where a rule over several columns points.
RULE_COLUMN = {
    "no_number": "value",
    "low_above_high": "low",
    "value_outside_ends": "value",
    "wrong_dimension": "unit",
    "missing_source": "source",
    "missing_locator": "locator",
    "missing_checked": "checked",
    "since_after_until": "until",
}


def _has_dimension(cell: str, wanted: str) -> bool:
    if cell == "any" or not is_interval(cell):
        return True
    interval = parse_interval(cell)
    return interval is None or interval.dimension == wanted


def _key_checks(table: str, key: Key) -> list[Test]:
    checks = [_filled(), _each("looks_like_a_date", lambda cell: not DATE.fullmatch(cell))]
    if not key.any_allowed:
        checks.append(_each("any_not_allowed", lambda cell: cell != "any"))
    if key.match != "exact":
        checks.append(_each("interval_grammar", lambda cell: DATE.fullmatch(cell) or is_interval(cell)))
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


def key_schema(table: str) -> Schema:
    """The schema of the key columns of one table."""
    return Schema({key.name: _key_checks(table, key) for key in keys_of(table)}, [])


def _prefers(cell: str) -> bool:
    bases = cell.split(" > ")
    return all(b in BASES for b in bases) and len(set(bases)) == len(bases)


def _steps(row: Cells) -> bool:
    if not row["step"]:
        return True
    try:
        return all(units.parse_measure(part, row["dimension"]).value > 0 for part in row["step"].split("; "))
    except GaugeblockError:
        return False


RULE_COLUMN["step_grammar"] = "step"


def list_schema(name: str, sources: Collection[str], versions: Mapping[str, int]) -> Schema:
    """The schema of one list: sources, quantities, formulas, words, rules or releases."""
    columns: dict[str, list[Test]] = {column: [] for column in LISTS[name]}
    rules = []
    if name == "releases":
        columns["version"] = [_shape("version_grammar", VERSION)]
        columns["date"] = [
            _shape("date_grammar", re.compile(r"20[0-9]{2}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01])"))
        ]
        columns["sha256"] = [_shape("digest_grammar", re.compile(r"[0-9a-f]{64}"), blank=True)]
        columns["summary"] = [_filled()]
        return Schema(columns, [])
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
        rules.append(_row_rule("step_grammar", _steps))
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
    return Schema(columns, rules)


def faults_of(
    schema: Schema, columns: Sequence[str], rows: Sequence[Sequence[str]], places: Sequence[tuple[str, int]]
) -> list[Fault]:
    """The faults that a schema finds in rows that stand at ``places`` (file, line), in the order of the rows."""
    found: dict[tuple[int, str, str], Fault] = {}

    def add(at: int, column: str, rule: str) -> None:
        cells = dict(zip(columns, rows[at], strict=True))
        file, line = places[at]
        cell = cells[column]
        found[at, column, rule] = Fault(file, line, column, rule, repr(cell) if cell else "nothing", _do(rule, cells))

    for place, column in enumerate(columns):
        cells = [row[place] for row in rows]
        for test in schema.columns.get(column, ()):
            refused = {cell for cell in set(cells) if not test.test(cell)}
            if refused:
                for at, cell in enumerate(cells):
                    if cell in refused:
                        add(at, column, test.rule)
    if schema.rules:
        for at, row in enumerate(rows):
            named = dict(zip(columns, row, strict=True))
            for test in schema.rules:
                if not test.test(named):
                    add(at, RULE_COLUMN[test.rule], test.rule)
    return [found[key] for key in sorted(found)]


def _do(rule: str, row: Cells) -> str:
    if rule == "wrong_dimension":
        return f"{DO[rule]} ({row['quantity']})"
    if rule == "unknown_unit":
        near = units.nearest_units(row["unit"])
        return f"{DO[rule]}{', nearest ' + ', '.join(near) if near else ''}"
    return DO[rule]
