"""What the commands share: the parser that refuses with one message, the common options, printing a Sheet."""

from __future__ import annotations

from gaugeblock.answer.options import Parser
from gaugeblock.answer.wing import loaded
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence
    from types import SimpleNamespace
    from typing import Any

    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.answer.table import Table
    from gaugeblock.figure import Figure


_COMPARE = 'an option\'s usual values side by side: condition, grade ...; or those you name: "wall=.095 in, .120 in"'


def parser_of(name: str, about: str, example: str) -> Parser:
    """The options of one command, none yet, with its worked example."""
    return Parser(f"gaugeblock {name}", about, example)


def common_options(parser: Parser, unit: bool = True, compare: bool = True) -> None:
    """``--json``, ``--data-release`` and, where figures are printed, ``--in``, ``--why`` and ``--compare``."""
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    if unit:
        parser.add_argument("--in", dest="unit", metavar="UNIT", help="print figures of this unit's dimension in it")
        parser.add_argument("--why", action="store_true", help="all figures, checks and cautions behind the answer")
    if unit and compare:
        parser.add_argument("--compare", metavar="KEY", help=_COMPARE)
    parser.add_argument("--data-release", metavar="V", help="use the tables of an earlier data release")


def add_options(parser: Parser, options: Iterable[tuple[str, str, str]], needed: int = 0) -> None:
    """Options by name, sign of their value and what they are; the first ``needed`` of them must be given."""
    for n, (name, metavar, said) in enumerate(options):
        parser.add_argument(f"--{name}", metavar=metavar, help=said, required=n < needed)


def print_answer(
    parser: Parser,
    argv: list[str],
    load: Callable[[], Callable[..., Sheet]],
    topic_of: Callable[[], Topic] | None = None,
    keys: tuple[str, ...] = (),
) -> int:
    """Print the answer that takes every option of a parser by its name; ``load`` imports it. The exit code.

    ``keys`` are those that it cannot do without and that the tables have values of.
    """
    common_options(parser)
    a = parser.parse_args(argv)
    shown = ("json", "unit", "why", "compare", "data_release")
    options = {k: v for k, v in vars(a).items() if k not in shown}
    is_open = any(options[key] is None for key in keys)
    return print_open(load(), topic_of or _untold(load, parser, options), options, a, is_open)


def topic_in(module: str, name: str) -> Callable[[], Topic]:
    """The topic of this name in a module that says how its answers are asked, loaded where something is left open."""

    def of() -> Topic:
        return getattr(loaded(module), name)  # type: ignore[no-any-return]

    return of


def _untold(load: Callable[[], Callable[..., Sheet]], parser: Parser, options: Iterable[str]) -> Callable[[], Topic]:
    """What is known of an answer that nobody asks for in plain words: the names of its options."""

    def of() -> Topic:
        from gaugeblock.answer.asking import Topic

        return Topic(load, parser.prog.removeprefix("gaugeblock "), dict.fromkeys(options, ()), "")

    return of


def print_sheet(sheet: Sheet, as_json: bool, unit: str | None, why: bool = False, read_as: str = "") -> int:
    """Print a Sheet as text (short, or all of it with ``why``) or as JSON, with how the question was ``read_as``; the
    exit code.
    """
    from gaugeblock.answer.decision import STOP

    unit = _known_unit(unit, sheet.figures)
    if as_json:
        import json

        out = {**({"read_as": read_as} if read_as else {}), **sheet.as_dict()}
        if unit is not None:
            _reprint(sheet, out, unit)
        print(json.dumps(out, ensure_ascii=False, indent=2))
    else:
        from gaugeblock.answer.short import short
        from gaugeblock.answer.text import width, wrap

        lines = wrap(f"read as {read_as}", 0, 2, wide=width()) if read_as else []
        print("\n".join([*lines, short(sheet, unit, above=len(lines), whole=why)]))
        if why:
            from gaugeblock.answer.text import render

            print(render(sheet, unit))
    return 1 if sheet.decision.kind == STOP else 0


def _known_unit(unit: str | None, figures: Sequence[Figure]) -> str | None:
    """A unit as the tables spell it; InputError for none, or for one of a dimension that no figure has."""
    if unit is None:
        return None
    from gaugeblock import units

    unit = units.TYPED.get(unit, unit)
    if unit not in units.UNITS:  # nm is no unit of the tables but one way to type N*m
        loose = {units.TYPED.get(u, u) for u in (*units.TYPED, *units.UNITS) if u.casefold() == unit.casefold()}
        unit = loose.pop() if len(loose) == 1 else unit
    dims = dict.fromkeys(units.dimension(f.unit) for f in figures)
    if unit not in units.UNITS:
        near = units.nearest_units(unit) or tuple(u for d in dims for u in units.spellings(d))
        raise InputError(unit[:60], "--in", "no such unit spelling", near, "use one of these")
    if figures and units.dimension(unit) not in dims:
        near = tuple(u for d in dims for u in units.spellings(d))
        raise InputError(unit, "--in", "no figure of this answer has that dimension", near, "ask for one of these")
    return unit


def print_table(table: Table, as_json: bool, unit: str | None, read_as: str = "", why: bool = False) -> int:
    """Print a Table as text (all of its rows with ``why``) or as JSON, with how the question was ``read_as``; the exit
    code.
    """
    unit = _known_unit(unit, [f for line in table.lines for f in line.sheet.decision.figures])
    if as_json:
        import json

        out = {**({"read_as": read_as} if read_as else {}), **table.as_dict()}
        print(json.dumps(out, ensure_ascii=False, indent=2))
        return 0
    from gaugeblock.answer.text import width, wrap

    lines = wrap(f"read as {read_as}", 0, 2, wide=width()) if read_as else []
    print("\n".join([*lines, table.text(unit, above=len(lines), whole=why)]))
    return 0


def print_open(
    answer: Callable[..., Sheet],
    topic_of: Callable[[], Topic],
    options: Mapping[str, Any],
    a: SimpleNamespace,
    is_open: bool = False,
) -> int:
    """Print the answer to these options, or the Table of what was not said and changes the number; the exit code.

    With ``is_open`` something that the answer cannot do without was not said. With ``--compare`` it is the Table of
    that option.
    """
    from gaugeblock.errors import LookupMiss
    from gaugeblock.tables.load import refdata

    data = refdata(a.data_release)
    refused: LookupMiss | InputError | None = None
    if not is_open and a.compare is None:
        try:
            return print_sheet(answer(**options, data=data), a.json, a.unit, a.why)
        except (LookupMiss, InputError) as error:
            refused = error
    from gaugeblock.answer.opening import answered, compared, opened
    from gaugeblock.answer.table import Table
    from gaugeblock.errors import GaugeblockError

    topic = topic_of().of(answer, options)
    given = {k: v for k, v in options.items() if v is not None}
    said = {k: v for k, v in given.items() if isinstance(v, str) and v not in ("vehicle", "reused")}
    if a.compare is not None:
        return print_table(compared(topic, given, said, a.compare, data), a.json, a.unit, why=a.why)
    try:
        missing = [need for need in topic.needs if need not in given] if is_open else []
        got = opened(topic, given, said, missing, data) if missing else answered(topic, given, said, data)
    except GaugeblockError:
        if refused is None:
            raise
        raise refused from None
    if isinstance(got, Table):
        return print_table(got, a.json, a.unit, why=a.why)
    return print_sheet(got, a.json, a.unit, a.why)


def _reprint(sheet: Sheet, out: dict[str, object], unit: str) -> None:
    """With ``--in``, the ``printed`` text of each answer is in that unit; values stay in the source's own."""
    from gaugeblock import units
    from gaugeblock.answer.printing import printed

    rows = out["figures"]
    if isinstance(rows, list):
        for figure, row in zip(sheet.figures, rows, strict=True):
            if units.dimension(figure.unit) == units.dimension(unit):
                row["printed"] = printed(figure, sheet.data, unit)
