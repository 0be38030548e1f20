"""``injector`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import parser_of, print_answer, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _injector() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.injector import injector as answer

    return answer


def injector(argv: list[str]) -> int:
    """Run ``gaugeblock injector``; the exit code."""
    parser = parser_of(
        "injector",
        "What an injector passes held open at another pressure than it is rated at, by volume and by mass.",
        'gaugeblock injector "24 lb/h" --rated "43.5 psi" --pressure "39 psi"',
    )
    parser.add_argument("flow", metavar="FLOW", help="as its maker prints it: 24 lb/h, 240 cm**3/min")
    parser.add_argument("--rated", metavar="P", help="the pressure that this is for: 43.5 psi")
    parser.add_argument("--pressure", metavar="P", help="the pressure that it gets: 39 psi")
    parser.add_argument("--fuel", metavar="F", help="gasoline (default), diesel, E85, methanol, ethanol")
    return print_answer(parser, argv, _injector, topic_in("gaugeblock.lines.fuel.injector_ask", "INJECTOR"))
