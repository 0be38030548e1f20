"""``gearing`` at the command line."""

from __future__ import annotations

from functools import partial

from gaugeblock.answer.command import add_options, parser_of, print_answer, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_topic = partial(topic_in, "gaugeblock.driveline.ask")


_OPTIONS = (
    ("tyre", "T", "size code or outside diameter, several with commas: P215/65R15, 28 in"),
    ("revolutions", "N", "of the tyre by its maker: 775 rev/mile"),
    ("transfer", "R", "ratio of a transfer case"),
    ("engine-speed", "N", "most speed of the engine: 6000 rpm"),
    ("was-ratio", "R", "axle ratio with which the speedometer was right"),
    ("was-tyre", "T", "tyre with which the speedometer was right"),
    ("driven-gear", "N", "teeth of the driven gear of the speedometer"),
)


def _answer() -> Callable[..., Sheet]:
    from gaugeblock.driveline.gears.answer import gearing as answer

    return answer


def gearing(argv: list[str]) -> int:
    """Run ``gaugeblock gearing``; the exit code."""
    parser = parser_of(
        "gearing",
        "Engine speed at a road speed through every gear, for axle ratios and tyres side by side; what the speedometer"
        " then shows.",
        'gaugeblock gearing "3.55, 41/10" --tyre P215/65R15 --speed "60 mph" --gears "3.06, 1.63, 1, 0.7"',
    )
    parser.add_argument("ratios", metavar="RATIOS", help='axle ratios or tooth counts, with commas: "3.55, 41/10"')
    parser.add_argument("--speed", default="60 mph", metavar="V", help="of the vehicle: 60 mph (default)")
    parser.add_argument("--gears", default="1", metavar="G", help='of the gearbox, the top gear last: "3.06, 1.63, 1"')
    add_options(parser, _OPTIONS)
    return print_answer(parser, argv, _answer, _topic("GEARING"))


def _tyre() -> Callable[..., Sheet]:
    from gaugeblock.driveline.gears.size import tyre as answer

    return answer


def tyre(argv: list[str]) -> int:
    """Run ``gaugeblock tyre``; the exit code."""
    parser = parser_of("tyre", "What a tyre measures by its size.", "gaugeblock tyre 205/55R16")
    parser.add_argument("size", metavar="SIZE", help="its code or its outside diameter: 205/55R16, 31x10.50R15, 28 in")
    parser.add_argument(
        "--fact", default="diameter", metavar="F", help="diameter (default), revolutions, circumference or width"
    )
    return print_answer(parser, argv, _tyre, _topic("TYRE"))


def _true_speed() -> Callable[..., Sheet]:
    from gaugeblock.driveline.gears.true_speed import true_speed as answer

    return answer


def truespeed(argv: list[str]) -> int:
    """Run ``gaugeblock truespeed``; the exit code."""
    parser = parser_of(
        "truespeed",
        "How fast it goes by a speedometer that was right with another tyre.",
        'gaugeblock truespeed --tyre "33 in" --was "31 in" --shown "100 km/h"',
    )
    parser.add_argument("--tyre", required=True, metavar="T", help="that is fitted: 285/30R20, 33 in")
    parser.add_argument("--was", required=True, metavar="T", help="with which the speedometer was right: 31 in")
    parser.add_argument("--shown", metavar="V", help="what the speedometer shows: 100 km/h")
    return print_answer(parser, argv, _true_speed, _topic("SPEEDO"))


def _regear() -> Callable[..., Sheet]:
    from gaugeblock.driveline.gears.regear import regear as answer

    return answer


def regear(argv: list[str]) -> int:
    """Run ``gaugeblock regear``; the exit code."""
    parser = parser_of(
        "regear",
        "The axle ratio that gives with other tyres the engine speed of before.",
        'gaugeblock regear 3.73 --was "31 in" --tyre "35 in"',
    )
    parser.add_argument("ratio", metavar="RATIO", help="that is fitted: 3.73")
    parser.add_argument("--was", required=True, metavar="T", help="the tyre that it drove: 31 in, 235/75R15")
    parser.add_argument("--tyre", required=True, metavar="T", help="the tyre that it shall drive: 35 in, 285/75R16")
    return print_answer(parser, argv, _regear, _topic("REGEAR"))


def _ratio() -> Callable[..., Sheet]:
    from gaugeblock.driveline.gears.teeth import ratio as answer

    return answer


def ratio(argv: list[str]) -> int:
    """Run ``gaugeblock ratio``; the exit code."""
    parser = parser_of(
        "ratio", "The axle ratio of a ring gear and its pinion, by their teeth.", "gaugeblock ratio 41/11"
    )
    parser.add_argument("teeth", metavar="TEETH", help="of the ring gear and of the pinion: 41/11")
    return print_answer(parser, argv, _ratio, _topic("TEETH"))


def _roadspeed() -> Callable[..., Sheet]:
    from gaugeblock.driveline.gears.road_speed import roadspeed as answer

    return answer


def roadspeed(argv: list[str]) -> int:
    """Run ``gaugeblock roadspeed``; the exit code."""
    parser = parser_of(
        "roadspeed",
        "How fast it goes at a speed of the engine.",
        'gaugeblock roadspeed 4.56 --tyre "29 in" --engine-speed "6800 rpm"',
    )
    parser.add_argument("ratio", metavar="RATIO", help="axle ratio: 4.56")
    parser.add_argument("--tyre", required=True, metavar="T", help="size code or outside diameter: P215/65R15, 28 in")
    parser.add_argument("--engine-speed", required=True, metavar="N", help="of the engine: 6800 rpm")
    parser.add_argument("--gear", default="1", metavar="R", help="ratio of the gear that is in: 0.7 (default 1)")
    return print_answer(parser, argv, _roadspeed, _topic("ROAD"))


def _turns() -> Callable[..., Sheet]:
    from gaugeblock.driveline.gears.turns import turns as answer

    return answer


def turns(argv: list[str]) -> int:
    """Run ``gaugeblock turns``; the exit code."""
    parser = parser_of(
        "turns",
        "The ratio of an axle whose cover stays on: turn a wheel, and count the propeller shaft.",
        "gaugeblock turns 1.9 --turned one",
    )
    parser.add_argument("shaft", metavar="TURNS", help="of the propeller shaft: 1.9")
    parser.add_argument("--wheel", default="1", metavar="TURNS", help="of the wheel: 1 (default), 10")
    parser.add_argument("--turned", metavar="W", help="one wheel (the other held, open differential) or both")
    return print_answer(parser, argv, _turns, _topic("TURNS"))


def _finaldrive() -> Callable[..., Sheet]:
    from gaugeblock.driveline.gears.final_drive import finaldrive as answer

    return answer


def finaldrive(argv: list[str]) -> int:
    """Run ``gaugeblock finaldrive``; the exit code."""
    parser = parser_of(
        "finaldrive",
        "The axle ratio that gives an engine speed at a road speed.",
        'gaugeblock finaldrive "2500 rpm" --speed "110 km/h" --tyre "640 mm" --gear 0.82',
    )
    parser.add_argument("engine_speed", metavar="RPM", help="that is wanted of the engine: 2500 rpm")
    parser.add_argument("--speed", required=True, metavar="V", help="the road speed: 110 km/h, 70 mph")
    parser.add_argument("--tyre", required=True, metavar="T", help="P215/65R15, or its diameter: 640 mm")
    parser.add_argument("--gear", default="1", metavar="G", help="ratio of the gear that is in: 1 (default), 0.82")
    return print_answer(parser, argv, _finaldrive, _topic("FINAL_DRIVE"))
