"""``injector`` and ``injectorsize`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import parser_of, print_answer, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _injector() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.injector.flow import injector as answer

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
    return print_answer(parser, argv, _injector, topic_in("gaugeblock.lines.fuel.injector.ask", "INJECTOR"))


def _size() -> Callable[..., Sheet]:
    from gaugeblock.lines.fuel.injector.size import injector_size

    return injector_size


def injectorsize(argv: list[str]) -> int:
    """Run ``gaugeblock injectorsize``; the exit code."""
    parser = parser_of(
        "injectorsize",
        "How much one injector must pass held open, for an engine's power.",
        'gaugeblock injectorsize "220 hp" --injectors 4 --duty "80 %" --boost "no boost"',
    )
    parser.add_argument("power", metavar="POWER", help="of the engine: 220 hp")
    parser.add_argument("--injectors", required=True, metavar="N", help="how many: 4")
    parser.add_argument("--duty", metavar="D", help="share of the time that they are open: 80 %%")
    parser.add_argument("--boost", metavar="B", help='boost, or "no boost"')
    parser.add_argument("--consumption", metavar="C", help="the engine's own: 0.5 lb/(hp*h)")
    parser.add_argument("--fuel", metavar="F", help="gasoline (default), diesel, E85, methanol, ethanol")
    return print_answer(parser, argv, _size, topic_in("gaugeblock.lines.fuel.injector.ask", "INJECTOR_SIZE"))
