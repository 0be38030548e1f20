"""``gaugeblock ask`` at the command line: any words, one answer."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_sheet, print_table

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.found import Found
    from gaugeblock.plain.convert import Conversion

EXAMPLE = "gaugeblock ask 3/8-16 grade 8 anti-seize into aluminum"


def ask(argv: list[str]) -> int:
    """Run ``gaugeblock ask``; the exit code."""
    parser = parser_of(
        "ask",
        "A question in plain words. It says how it read the line, and names every word that it did not understand.",
        EXAMPLE,
    )
    parser.add_argument("words", nargs="+", metavar="WORDS", help="what you want to know, as you would say it")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.answer.table import Table
    from gaugeblock.plain.answer import answer
    from gaugeblock.tables.load import refdata

    got = answer(" ".join(a.words), compare=a.compare, data=refdata(a.data_release))
    if not isinstance(got.found, Table | Sheet):
        return print_as_it_is(got.found, a.json)
    if isinstance(got.found, Table):
        return print_table(got.found, a.json, a.unit or got.unit or None, got.read_as, a.why)
    return print_sheet(got.found, a.json, a.unit or got.unit or None, a.why, got.read_as)


def print_as_it_is(found: Conversion | Found, as_json: bool) -> int:
    """Print the conversion of a measure, or rows that were found; the exit code."""
    if as_json:
        import json

        print(json.dumps({"read_as": found.read_as, **found.as_dict()}, ensure_ascii=False, indent=2))
    else:
        print(f"read as {found.read_as}\n{found.text()}")
    return 0
