"""``clutch`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import parser_of, print_answer, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _clutch() -> Callable[..., Sheet]:
    from gaugeblock.lines.clutch.travel import clutch as answer

    return answer


def clutch(argv: list[str]) -> int:
    """Run ``gaugeblock clutch``; the exit code."""
    parser = parser_of(
        "clutch",
        "How far a hydraulic clutch is moved, or which bore moves it so far: give three of the two bores, the stroke"
        " and the travel.",
        'gaugeblock clutch "7/8 in" --master "5/8 in" --stroke "30 mm"',
    )
    parser.add_argument("slave", nargs="?", metavar="BORE", help="of the slave cylinder: 7/8 in")
    parser.add_argument("--master", metavar="BORE", help="of the master cylinder: 5/8 in")
    parser.add_argument("--stroke", metavar="L", help="of the master cylinder's piston: 30 mm")
    parser.add_argument("--travel", metavar="L", help="of the slave cylinder's piston: 14 mm")
    parser.add_argument("--ratio", metavar="R", help="of the pedal, pad over push rod: 6")
    parser.add_argument("--force", metavar="F", help="of the foot on the pedal: 90 lbf")
    return print_answer(parser, argv, _clutch, topic_in("gaugeblock.lines.clutch.ask", "CLUTCH"))
