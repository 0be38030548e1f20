"""``gaugeblock ask`` at the command line: any words, one answer."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_sheet

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
    from gaugeblock.answer.table import Table
    from gaugeblock.plain.answer import answer
    from gaugeblock.tables.load import refdata

    got = answer(" ".join(a.words), data=refdata(a.data_release))
    if isinstance(got.found, Table):
        return _print_table(got.read_as, got.found, a.json, a.unit)
    if not a.json:
        from gaugeblock.answer.short import width
        from gaugeblock.answer.text import wrap

        print("\n".join(wrap(f"read as {got.read_as}", 0, 2, wide=width())))
        return print_sheet(got.found, False, a.unit, a.why)
    return print_sheet(got.found, True, a.unit, a.why, {"read_as": got.read_as})


def _print_table(read_as: str, table: object, as_json: bool, unit: str | None) -> int:
    from gaugeblock.answer.table import Table

    assert isinstance(table, Table)
    if as_json:
        import json

        print(json.dumps({"read_as": read_as, **table.as_dict()}, ensure_ascii=False, indent=2))
    else:
        print(f"read as {read_as}")
        print(table.text(unit))
    return 0
