"""The commands of lines beside heat."""

from __future__ import annotations

from gaugeblock.commands.shared import common_options, parser_of, print_sheet


def heat(argv: list[str]) -> int:
    """``gaugeblock heat ITEM``: what a line material, hose class, fluid or fuel stands."""
    parser = parser_of(
        "heat", "What a line material, hose class, fluid or fuel stands, and whether a temperature is within it.",
        'gaugeblock heat "DOT 4" --state wet --at "120 degC"',
    )  # fmt: skip
    parser.add_argument("item", metavar="ITEM", help='DOT 4, gasoline, PTFE, "fuel hose", "SAE J30 R9"')
    parser.add_argument("--class", dest="klass", metavar="C", help="the hose class or specification: SAE J2260")
    parser.add_argument("--state", metavar="S", help="wet, dry, continuous, intermittent ...")
    parser.add_argument("--at", metavar="TEMP", help="a temperature to judge: 120 degC, 250 degF")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.sheets.lines import heat as answer
    from gaugeblock.tables.load import refdata

    sheet = answer(a.item, klass=a.klass, state=a.state, at=a.at, data=refdata(a.data_release))
    return print_sheet(sheet, a.json, a.unit)
