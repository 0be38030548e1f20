"""``brake`` and ``handbrake`` at the command line."""

from __future__ import annotations

from functools import partial

from gaugeblock.answer.command import common_options, parser_of, print_answer, print_open, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_topic = partial(topic_in, "gaugeblock.lines.brakes.ask")


_HOSES = ("hose", "brake hose", "flexible hose")
# option -> what it is
_OPTIONS = {
    "master": "bore of the master cylinder: 1 in",
    "force": "of the foot on the pedal: 100 lbf",
    "ratio": "of the pedal, pad over push rod: 6",
    "assist": "force out of the booster over force in: 4",
    "stroke": "that the master cylinder has for this circuit: 0.6 in",
    "kind": 'drum, "floating caliper", "fixed caliper", "slave cylinder"',
    "bore": "of the wheel cylinders or caliper pistons: 7/8 in",
    "pistons": "of one wheel: 2",
    "wheels": "that this circuit works: 2",
    "travel": "of each piston until the brake is hard on: 2 mm",
    "play": "free, at the push rod: 1 mm",
    "pedal": "whole way of the pedal, rest to floor: 5 in",
    "was": "bore of the pistons before a swap: 3/4 in",
    "rated": "pressure that the weakest hose, tube or valve stands, by its maker: 3000 psi",
    "tube": "inside diameter of its tube, for the speed of the fluid: 0.132 in",
    "time": "from the first touch of the pedal until the brake is hard on: 0.3 s",
    "hose": "free length of the flexible hose: 16 in",
    "droop": "way from fitting to fitting at full droop: 14 in",
    "lock": "the same at full lock: 13 in",
    "balance": "who tried the balance, and when",
}


def brake(argv: list[str]) -> int:
    """Run ``gaugeblock brake``; the exit code."""
    parser = parser_of(
        "brake",
        "One hydraulic brake circuit: pressure, force at the shoes, fluid, stroke and pedal; or a hose at droop and"
        " lock; or what rules and habits say of a SUBJECT.",
        'gaugeblock brake --master "1 in" --ratio 6 --force "100 lbf" --kind drum --bore "7/8 in" --wheels 2 --travel'
        ' "2 mm"\n  gaugeblock brake "leak test" --place "US Massachusetts"\n  gaugeblock brake --hose "16 in" --droop'
        ' "14 in" --lock "13 in"',
    )
    about = (
        "residual pressure, line size, pedal ratio, balance, bleeding, leak test, parking brake, stopping distance,"
        " pedal reserve"
    )
    parser.add_argument("subject", nargs="?", metavar="SUBJECT", help=about)
    parser.add_argument(
        "--case",
        metavar="C",
        help='of a residual pressure: drum, "disc below", "disc above"; of a tube: "one wheel", axle; of a'
        ' pedal: assisted, "no assist"',
    )
    parser.add_argument("--place", metavar="P", help='whose rule: "US federal"')
    for option, text in _OPTIONS.items():
        parser.add_argument(f"--{option}", metavar="X", help=text)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.errors import InputError

    given = {k: getattr(a, k) for k in _OPTIONS}
    typed = [f"--{k}" for k, v in given.items() if v is not None]
    hoses = ("hose", "droop", "lock")
    if a.subject in _HOSES:
        a.subject = None
        typed = typed or ["--hose"]
    if a.subject is not None:
        if typed not in ([], ["--ratio"]):
            why = "a subject and a circuit are two questions"
            raise InputError(", ".join(typed), "brake", why, (), "ask one")
        from gaugeblock.lines.brakes.facts import brake_fact

        options = {"subject": a.subject, "case": a.case, "place": a.place, "ratio": a.ratio}
        return print_open(brake_fact, _topic("FACT"), options, a)
    alone = [f"--{k}" for k in ("case", "place") if getattr(a, k) is not None]
    if alone or not typed:
        why = "belongs to a subject" if alone else "nothing was asked"
        raise InputError(", ".join(alone) or "brake", "brake", why, (), "name a subject, or give --master and the rest")
    if all(v is None for k, v in given.items() if k not in hoses):
        from gaugeblock.lines.brakes.hose import brake_hose

        return print_open(brake_hose, _topic("HOSE"), {k: given[k] for k in hoses}, a)
    from gaugeblock.lines.brakes.circuit import brake as answer

    return print_open(answer, _topic("CIRCUIT"), given, a, is_open=a.master is None)


def _handbrake() -> Callable[..., Sheet]:
    from gaugeblock.lines.brakes.hand import handbrake as answer

    return answer


def handbrake(argv: list[str]) -> int:
    """Run ``gaugeblock handbrake``; the exit code."""
    parser = parser_of(
        "handbrake",
        "The pull of a hand brake's cables, and whether its lever has way enough.",
        'gaugeblock handbrake --force "300 N" --ratio 6 --cables 2 --travel "20 mm" --lever "150 mm"',
    )
    parser.add_argument("--force", metavar="F", help="of the hand at the grip: 300 N")
    parser.add_argument("--ratio", metavar="R", help="way of the grip over way of the cable: 6")
    parser.add_argument("--cables", metavar="N", help="that share the pull: 2")
    parser.add_argument("--travel", metavar="L", help="that the brake takes of its cable: 20 mm")
    parser.add_argument("--lever", metavar="L", help="whole way of the grip: 150 mm")
    parser.add_argument("--rated", metavar="F", help="pull that a cable stands, by its maker: 2000 N")
    parser.add_argument("--slope", metavar="S", help='on which it shall hold: "1 in 5"')
    parser.add_argument("--weight", metavar="W", help="that it shall hold there: 1500 kg")
    return print_answer(parser, argv, _handbrake, _topic("HAND"))


def _mastercylinder() -> Callable[..., Sheet]:
    from gaugeblock.lines.brakes.master import mastercylinder as answer

    return answer


def mastercylinder(argv: list[str]) -> int:
    """Run ``gaugeblock mastercylinder``; the exit code."""
    parser = parser_of(
        "mastercylinder",
        "What another bore of a master cylinder does to the pressure and the pedal, by the same foot.",
        'gaugeblock mastercylinder "7/8 in" --was "1 in"',
    )
    parser.add_argument("master", metavar="BORE", help="of the master cylinder now: 7/8 in")
    parser.add_argument("--was", required=True, metavar="BORE", help="of the one before: 1 in")
    return print_answer(parser, argv, _mastercylinder, _topic("MASTER"))


def _pedal() -> Callable[..., Sheet]:
    from gaugeblock.lines.brakes.pedal import pedal as answer

    return answer


def pedal(argv: list[str]) -> int:
    """Run ``gaugeblock pedal``; the exit code."""
    parser = parser_of(
        "pedal",
        "The pedal ratio, the foot or the master cylinder for a wanted line pressure: give two of the three.",
        'gaugeblock pedal "900 psi" --master "7/8 in" --force "80 lbf"',
    )
    parser.add_argument("pressure", metavar="PRESSURE", help="wanted in the line: 900 psi")
    for option in ("master", "force", "ratio", "assist"):
        parser.add_argument(f"--{option}", metavar="X", help=_OPTIONS[option])
    return print_answer(parser, argv, _pedal, _topic("PEDAL"))
