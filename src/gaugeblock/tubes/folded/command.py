"""The command sheetbend. It returns its code."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_open, topic_in


def sheetbend(argv: list[str]) -> int:
    """``gaugeblock sheetbend``: the flat length of a part bent of sheet, and what comes off its outside legs."""
    parser = parser_of(
        "sheetbend",
        "The flat length of a part bent of sheet or plate, what comes off its outside legs, and its least radius.",
        'gaugeblock sheetbend --thickness "3 mm" --radius "3 mm" --material "mild steel" --legs "50 mm, 30 mm, 50 mm"',
    )
    parser.add_argument("--thickness", required=True, metavar="T", help="2 mm, 1/8 in, or a gauge number: 16 ga")
    parser.add_argument("--radius", metavar="R", help='to the inside of the bend: 3 mm, or "1.5 t": in thicknesses')
    parser.add_argument("--angle", metavar="A", help="that the sheet turns: 90 deg, which it is where none is said")
    parser.add_argument("--material", metavar="M", help='"mild steel", 304, 5052-H32, 6061-T6')
    parser.add_argument("--legs", metavar="L", help='on the outside, in order: "50 mm, 30 mm, 50 mm"')
    parser.add_argument("--k", metavar="K", help="the K factor of your own test strip: 0.42")
    fact = "flat length (with legs), deduction (without), allowance, setback, or radius: the least that the metal takes"
    parser.add_argument("--fact", metavar="F", help=fact)
    parser.add_argument("--system", metavar="G", help="of the gauge number, where it is not the metal's usual one")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes.folded import part as answers

    names = ("thickness", "radius", "angle", "material", "legs", "k", "fact", "system")
    given = {name: getattr(a, name) for name in names}
    is_open = a.radius is None and a.fact != "radius"
    return print_open(answers.sheet_bend, topic_in("gaugeblock.tubes.ask", "SHEET_BEND"), given, a, is_open=is_open)
