"""``gaugeblock ask`` at the command line: any words, one answer."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_sheet, print_table

EXAMPLE = "gaugeblock ask 3/8-16 grade 8 anti-seize into aluminum"


def ask(argv: list[str]) -> int:
    """Run ``gaugeblock ask``; the exit code."""
    parser = parser_of(
        "ask",
        "A question in plain words. It says how it read the line, and names every word that it did not understand.",
        EXAMPLE,
    )
    parser.add_argument("words", nargs="+", metavar="WORDS", help="what you want to know, as you would say it")
    parser.add_argument("--compare", metavar="KEY", help="the usual values of a key side by side: condition, grade ...")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.answer.table import Table
    from gaugeblock.plain.answer import answer
    from gaugeblock.tables.load import refdata

    got = answer(" ".join(a.words), compare=a.compare, data=refdata(a.data_release))
    if isinstance(got.found, Table):
        return print_table(got.found, a.json, a.unit, got.read_as)
    if not a.json:
        from gaugeblock.answer.text import width, wrap

        print("\n".join(wrap(f"read as {got.read_as}", 0, 2, wide=width())))
        return print_sheet(got.found, False, a.unit, a.why)
    return print_sheet(got.found, True, a.unit, a.why, {"read_as": got.read_as})
