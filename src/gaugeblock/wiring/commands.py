"""``circuit`` and ``parked`` at the command line."""

from __future__ import annotations

from functools import partial

from gaugeblock.answer.command import parser_of, print_answer, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.options import Parser
    from gaugeblock.answer.sheet import Sheet

_topic = partial(topic_in, "gaugeblock.wiring.ask")


def _circuit() -> Callable[..., Sheet]:
    from gaugeblock.wiring.circuit import circuit as answer

    return answer


def circuit(argv: list[str]) -> int:
    """Run ``gaugeblock circuit``; the exit code."""
    parser = parser_of(
        "circuit",
        "The smallest wire of one circuit by its drop and by its heat, and the fuse ahead of it.",
        'gaugeblock circuit --current "28 A" --length "12 ft" --voltage "12 V" --drop "3 %" --insulation GXL --air "60'
        ' degC" --bundle 1 --return wire',
    )
    parser.add_argument("--current", required=True, metavar="I", help="of the load: 28 A; or its power: 100 W")
    parser.add_argument("--length", required=True, metavar="L", help="from the source to the load, one way: 12 ft")
    parser.add_argument("--voltage", metavar="V", help="of the system; 12 V unless given")
    parser.add_argument("--drop", metavar="D", help="that is allowed: 3 %%, or 0.5 V")
    parser.add_argument("--insulation", metavar="T", help="what it bears, or the letters of the cable: 105 degC, GXL")
    parser.add_argument("--air", metavar="T", help='along the wire: 60 degC, "by the engine", "in the cabin"')
    parser.add_argument("--bundle", metavar="N", help="how many loaded wires lie together, this one too")
    parser.add_argument("--return", dest="back", metavar="R", help="wire or body")
    parser.add_argument("--fuse", metavar="I", help="that is to be fitted: 30 A")
    parser.add_argument("--connector", metavar="I", help="what the weakest connector may carry: 25 A")
    parser.add_argument("--wire", metavar="W", help="a wire that is there already: 10 AWG, 6 mm2")
    parser.add_argument("--earth-drop", metavar="V", help="what the body was measured to lose, under load: 0.05 V")
    parser.add_argument("--relay", metavar="I", help="what the relay's contact may carry: 40 A")
    parser.add_argument("--wires", metavar="N", help="how many equal wires side by side share the current")
    parser.add_argument("--kind", metavar="K", help='load (default), or "starter cable"')
    return print_answer(parser, argv, _circuit, _topic("CIRCUIT"))


def _fuse() -> Callable[..., Sheet]:
    from gaugeblock.wiring.fusing import fuse as answer

    return answer


def fuse(argv: list[str]) -> int:
    """Run ``gaugeblock fuse``; the exit code."""
    parser = parser_of(
        "fuse",
        "The fuse of a load and the wire that stands it, or the largest fuse that a wire allows.",
        'gaugeblock fuse --current "20 A"',
    )
    parser.add_argument("--current", metavar="I", help="of the load: 20 A; or its power: 100 W")
    parser.add_argument("--wire", metavar="W", help="a wire that is there already: 12 AWG, 4 mm2")
    parser.add_argument("--voltage", metavar="V", help="of the system, for a power; 12 V unless given")
    parser.add_argument("--insulation", metavar="T", help="what it bears, or the letters of the cable: 105 degC, GXL")
    parser.add_argument("--air", metavar="T", help='along the wire: 60 degC, "by the engine", "in the cabin"')
    parser.add_argument("--bundle", metavar="N", help="how many loaded wires lie together, this one too")
    parser.add_argument("--lasts", metavar="YES", help="yes or no: whether the load is on for minutes")
    parser.add_argument("--fact", default="fuse", metavar="F", help="fuse (default), or current: what a wire may carry")
    return print_answer(parser, argv, _fuse, _topic("FUSE"))


def _lying(parser: Parser) -> None:
    """What one wire lies in, and what it feeds."""
    parser.add_argument("--voltage", metavar="V", help="of the system: 12 V")
    parser.add_argument("--insulation", metavar="T", help="what it bears, or the letters of the cable: 105 degC, GXL")
    parser.add_argument("--air", metavar="T", help='along the wire: 60 degC, "by the engine", "in the cabin"')
    parser.add_argument("--bundle", metavar="N", help="how many loaded wires lie together, this one too")
    parser.add_argument("--kind", metavar="K", help='load (default), or "starter cable"')


def _drop() -> Callable[..., Sheet]:
    from gaugeblock.wiring.lost import drop as answer

    return answer


def drop(argv: list[str]) -> int:
    """Run ``gaugeblock drop``; the exit code."""
    parser = parser_of(
        "drop",
        "The volts that a wire loses between the source and the load.",
        'gaugeblock drop --wire "12 AWG" --current "25 A" --length "12 ft" --return body',
    )
    parser.add_argument("--wire", required=True, metavar="WIRE", help="12 AWG, 2/0, 4 mm2")
    parser.add_argument("--current", required=True, metavar="I", help="of the load: 25 A")
    parser.add_argument("--length", required=True, metavar="L", help="from the source to the load, one way: 12 ft")
    parser.add_argument("--return", dest="back", metavar="WAY", help="how the current comes back: wire or body")
    _lying(parser)
    return print_answer(parser, argv, _drop, _topic("DROP"))


def _reach() -> Callable[..., Sheet]:
    from gaugeblock.wiring.reach import reach as answer

    return answer


def reach(argv: list[str]) -> int:
    """Run ``gaugeblock reach``; the exit code."""
    parser = parser_of(
        "reach",
        "How far a wire may run, one way, before it loses so many volts.",
        'gaugeblock reach --wire "4 mm2" --current "20 A" --drop "0.5 V" --return body',
    )
    parser.add_argument("--wire", required=True, metavar="WIRE", help="12 AWG, 2/0, 4 mm2")
    parser.add_argument("--current", required=True, metavar="I", help="of the load: 20 A")
    parser.add_argument("--drop", required=True, metavar="V", help="that may be lost: 0.5 V")
    parser.add_argument("--return", dest="back", metavar="WAY", help="how the current comes back: wire or body")
    _lying(parser)
    return print_answer(parser, argv, _reach, _topic("REACH"))


def _wire_size() -> Callable[..., Sheet]:
    from gaugeblock.wiring.size import wire_size as answer

    return answer


def wiresize(argv: list[str]) -> int:
    """Run ``gaugeblock wiresize``; the exit code."""
    about = "A wire's gauge as the copper it holds, or the gauge of a metric wire."
    parser = parser_of("wiresize", about, 'gaugeblock wiresize "10 AWG"')
    parser.add_argument("wire", metavar="WIRE", help="10 AWG, 2/0, 6 mm2")
    return print_answer(parser, argv, _wire_size, _topic("SIZE"))


def _parked() -> Callable[..., Sheet]:
    from gaugeblock.wiring.parked import parked as answer

    return answer


def parked(argv: list[str]) -> int:
    """Run ``gaugeblock parked``; the exit code."""
    parser = parser_of(
        "parked",
        "How long a battery bears a standing draw and still starts the engine; without one the draw for so many days.",
        'gaugeblock parked --draw "35 mA" --battery "60 Ah" --days "21 days"',
    )
    parser.add_argument("--draw", metavar="I", help="of the vehicle at rest: 35 mA")
    parser.add_argument("--battery", metavar="Q", help="charge of the full battery: 60 Ah")
    parser.add_argument("--reserve", metavar="T", help="or its reserve capacity: 100 min")
    parser.add_argument("--days", metavar="T", help="that it is to stand: 21 days")
    parser.add_argument("--used", metavar="S", help="share of its charge that may be gone by then: 50 %%")
    return print_answer(parser, argv, _parked, _topic("PARKED"))
