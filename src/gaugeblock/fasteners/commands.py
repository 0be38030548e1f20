"""``torque``, ``part``, ``hole``, ``engagement``, ``thread``, ``identify``, ``grade`` and ``spanner`` as commands."""

from __future__ import annotations

from functools import partial

from gaugeblock.answer.command import common_options, parser_of, print_answer, print_open, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from types import SimpleNamespace

    from gaugeblock.answer.options import Parser
    from gaugeblock.answer.sheet import Sheet


_topic = partial(topic_in, "gaugeblock.fasteners.ask")
_THREADS = "gaugeblock.fasteners.thread_ask"
_SPANNER = "gaugeblock.fasteners.spanner_ask"


def torque(argv: list[str]) -> int:
    """Run ``gaugeblock torque``; the exit code."""
    parser = parser_of(
        "torque",
        "What to tighten a thread to, the clamp it gives, and whether bolt and thread stand it.",
        'gaugeblock torque 3/8-16 --grade "SAE J429 5" --condition dry\n'
        '  gaugeblock torque 3/8-16 --grade "SAE J429 5" --condition oiled \\\n'
        '    --nut-factor "0.16 (0.14 to 0.18) by load cell 2 on 2026-11-20" --preload "70 %" \\\n'
        '    --grip "1-1/2 in" --grip-shank "1 in" --grip-metal steel --grip-load "1500 lbf"',
    )
    parser.add_argument("thread", nargs="?", metavar="THREAD", help="3/8-16, 3/8-16 UNC, M10x1.5")
    parser.add_argument("--grade", metavar="G", help='"SAE J429 5", "ISO 898-1 8.8", "ASTM A574"')
    parser.add_argument("--condition", metavar="C", help="dry, oiled, zinc plated, anti-seize ...")
    parser.add_argument(
        "--joint", default="reused", metavar="J", help="reused (75 %% of proof, default) or permanent (90 %%)"
    )
    parser.add_argument("--into", metavar="METAL", help="the tapped metal: aluminium, cast iron, steel")
    parser.add_argument("--insert", metavar="YES", help="yes or no: whether the hole has a steel thread insert")
    parser.add_argument("--engagement", metavar="LENGTH", help="thread length engaged: 3/4 in, 15 mm")
    parser.add_argument("--tapped-strength", metavar="STRESS", help="tensile strength of the tapped metal: 35 ksi")
    _own_options(parser)
    parser.add_argument("--given", metavar="TORQUE", help="answer backwards: what clamp does this setting give")
    _torque_options(parser)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.fasteners.torque import torque as sheet_of

    options = {
        "thread": a.thread,
        "grade": a.grade,
        "condition": a.condition,
        "service": a.service,
        "joint": a.joint,
        "into": a.into,
        "insert": a.insert,
        "engagement": a.engagement,
        "tapped_strength": a.tapped_strength,
        "nut_factor": a.nut_factor,
        "preload": a.preload,
        "proof_strength": a.proof_strength,
        "yield_strength": a.yield_strength,
        "tensile_strength": a.tensile_strength,
        "grip": _grip(a),
        "locknut": a.locknut,
        "prevailing": a.prevailing,
        "maker": _maker(a),
        "wanted": a.wanted,
        "given": a.given,
        "wrench": a.wrench,
        "adapter": a.adapter,
        "confirmed": a.confirmed,
    }
    is_of_maker = a.maker is not None and a.condition is not None  # its torque, whatever the thread
    is_through = a.adapter is not None and a.given is not None  # what reaches the nut, whatever the thread
    is_open = a.thread is None and not (is_of_maker or is_through)
    return print_open(sheet_of, _topic("TORQUE"), options, a, is_open=is_open)


def part(argv: list[str]) -> int:
    """Run ``gaugeblock part``; the exit code."""
    parser = parser_of(
        "part",
        "What to tighten a part to that has its own figure: plug, line nut, clamp, wheel nut.",
        'gaugeblock part "spark plug" --size "14 mm" --seat gasket --material aluminium',
    )
    parser.add_argument("part", nargs="?", metavar="PART", help="spark plug, flare nut, hose clamp, wheel nut ...")
    parser.add_argument("--size", metavar="SIZE", help="14 mm, 3/8 in, 1/2-20")
    parser.add_argument("--seat", metavar="SEAT", help="gasket, taper, 37 deg, 45 deg")
    parser.add_argument("--material", metavar="M", help="what it goes into, or the tube: aluminium, cast iron, steel")
    parser.add_argument("--condition", metavar="C", help="how the threads are tightened: dry, anti-seize ...")
    _torque_options(parser)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.fasteners.part import part as sheet_of

    options = {
        "part": a.part,
        "size": a.size,
        "seat": a.seat,
        "material": a.material,
        "service": a.service,
        "condition": a.condition,
        "locknut": a.locknut,
        "prevailing": a.prevailing,
        "maker": _maker(a),
        "wanted": a.wanted,
        "wrench": a.wrench,
        "adapter": a.adapter,
        "confirmed": a.confirmed,
    }
    is_open = a.part is None or (a.size is None and a.maker is None and a.wanted is None)
    return print_open(sheet_of, _topic("PART"), options, a, is_open)


def hole(argv: list[str]) -> int:
    """Run ``gaugeblock hole``; the exit code."""
    parser = parser_of("hole", "What to drill for a tap, or for a bolt to pass.", "gaugeblock hole 3/8-16 --fit tap")
    parser.add_argument("--fit", metavar="F", help="tap, or close, normal or free for a bolt to pass")
    parser.add_argument("--share", metavar="S", help='of the full thread, where it is not three quarters: "60 %%"')
    return _of_thread(parser, argv, "hole", "HOLE")


def drill(argv: list[str]) -> int:
    """Run ``gaugeblock drill``; the exit code."""
    about = "A twist drill by its number or its letter, and the drills that come nearest to a size."
    parser = parser_of("drill", about, "gaugeblock drill '#7'")
    parser.add_argument("name", nargs="?", metavar="DRILL", help="its number or its letter: '#7', 29, Q")
    parser.add_argument("--size", metavar="D", help="a diameter, for the drills next to it: 8.78 mm, 0.334 in")
    return print_answer(parser, argv, partial(_answer, "drill"), topic_in(_THREADS, "DRILL"))


def engagement(argv: list[str]) -> int:
    """Run ``gaugeblock engagement``; the exit code."""
    about = "How much thread a bolt needs in the metal that it goes into."
    parser = parser_of("engagement", about, "gaugeblock engagement 3/8-16 --into aluminium")
    parser.add_argument("--into", metavar="METAL", help="the tapped metal: aluminium, cast iron, steel")
    parser.add_argument("--have", metavar="LENGTH", help="how much is engaged, to be judged: 5/8 in, 15 mm")
    return _of_thread(parser, argv, "engagement", "ENGAGEMENT")


def thread(argv: list[str]) -> int:
    """Run ``gaugeblock thread``; the exit code."""
    about = "The pitch of a thread, its diameter and the area that carries."
    parser = parser_of("thread", about, 'gaugeblock thread M10 --fact "stress area"')
    fact = "pitch (which it is where nothing is asked), stress area, root area, diameter"
    parser.add_argument("--fact", default="pitch", metavar="F", help=fact)
    return _of_thread(parser, argv, "thread", "FACT")


def spanner(argv: list[str]) -> int:
    """Run ``gaugeblock spanner``; the exit code."""
    about = "The spanner, socket or hex key that fits a bolt, a nut or a plug, and what a spanner fits."
    parser = parser_of("spanner", about, 'gaugeblock spanner M10\n  gaugeblock spanner --flats "17 mm"')
    parser.add_argument("thread", nargs="?", metavar="THREAD", help="M10, 3/8-16, or its diameter alone: 3/8")
    parser.add_argument("--head", metavar="H", help="bolt, nut, socket head cap screw, flange bolt, spark plug ...")
    parser.add_argument("--standard", metavar="S", help='what it is made to, where that is an older one: "DIN 931"')
    parser.add_argument("--flats", metavar="SIZE", help="the size of a spanner, to see what it fits: 17 mm, 9/16 in")
    return print_answer(parser, argv, partial(_answer, "spanner"), topic_in(_SPANNER, "SPANNER"), ())


def identify(argv: list[str]) -> int:
    """Run ``gaugeblock identify``; the exit code."""
    about = "The thread that an outside diameter and a pitch are of."
    parser = parser_of("identify", about, 'gaugeblock identify "22.2 mm" "14 tpi"')
    parser.add_argument("diameter", metavar="DIAMETER", help="over the threads of the bolt or the fitting: .374 in")
    parser.add_argument("pitch", metavar="PITCH", help="threads an inch, or the pitch: 16 tpi, 1.5 mm")
    parser.add_argument("--form", metavar="FORM", help="parallel or taper, where that was seen")
    return print_answer(parser, argv, partial(_answer, "identify"), topic_in(_THREADS, "IDENTIFY"), ())


def pipethread(argv: list[str]) -> int:
    """Run ``gaugeblock pipethread``; the exit code."""
    about = "The drill for the tap of a pipe thread, its threads an inch, how far it goes in."
    parser = parser_of("pipethread", about, 'gaugeblock pipethread NPT "1/4 in"')
    parser.add_argument("series", metavar="SERIES", help="NPT, BSPT or BSPP (straight)")
    parser.add_argument("size", nargs="?", metavar="SIZE", help="its nominal size: 1/4 in")
    fact = "tap drill (which it is where nothing is asked), pitch, diameter, hand tight, thread length"
    parser.add_argument("--fact", default="tap drill", metavar="F", help=fact)
    return print_answer(parser, argv, partial(_answer, "pipe_thread"), topic_in(_THREADS, "PIPE_THREAD"), ("size",))


def grade(argv: list[str]) -> int:
    """Run ``gaugeblock grade``; the exit code."""
    about = "What a bolt of a grade or class is guaranteed to stand, and the marks on its head."
    parser = parser_of("grade", about, "gaugeblock grade 10.9")
    parser.add_argument("grade", nargs="?", metavar="GRADE", help='"SAE J429 5", "grade 8", 10.9')
    parser.add_argument("--size", metavar="D", help="its diameter: 3/8 in, 10 mm")
    parser.add_argument("--thread", metavar="THREAD", help="3/8-16, M10: what such a bolt bears")
    parser.add_argument("--load", metavar="L", help="tensile (which breaks it), proof, clamp, shear, stretch")
    parser.add_argument("--grip", metavar="LENGTH", help="all that the bolt clamps, for its stretch")
    parser.add_argument("--shank", metavar="LENGTH", help='plain shank inside the grip; "0 mm" where all is thread')
    return print_answer(
        parser, argv, partial(_answer, "grade"), topic_in("gaugeblock.fasteners.strength_ask", "STRENGTH"), ("grade",)
    )


def _of_thread(parser: Parser, argv: list[str], name: str, topic: str) -> int:
    """Print the answer of this name about one thread; the exit code."""
    parser.add_argument("thread", nargs="?", metavar="THREAD", help="3/8-16, M8, which is coarse")
    return print_answer(parser, argv, partial(_answer, name), topic_in(_THREADS, topic), ("thread",))


def _answer(name: str) -> Callable[..., Sheet]:
    """The public answer of this name."""
    import gaugeblock

    return getattr(gaugeblock, name)  # type: ignore[no-any-return]


def _torque_options(parser: Parser) -> None:
    """What bolts and parts share: a torque that is named, and the tools."""
    add = parser.add_argument
    add("--service", default="vehicle", metavar="S", help="vehicle (default), aircraft, ...")
    add("--maker", metavar="TORQUE", help='the maker\'s own: "33 lbf*ft", "25 to 28 N*m", "22 N*m + 90 deg"')
    add("--maker-source", metavar="PAPER", help="the paper that the maker's torque stands in")
    add("--maker-place", metavar="PAGE", help="the page of it")
    add("--maker-condition", metavar="C", help="the condition that the maker's torque is for: dry, oiled ...")
    add("--new-bolts", metavar="YES", help="yes or no: whether the maker wants new bolts each time")
    add("--wanted", metavar="TORQUE", help="the torque that you want at the fastener")
    add("--locknut", metavar="KIND", help="nylon insert, all-metal: its drag is asked for")
    add("--prevailing", metavar="TORQUE", help="drag of the locknut as measured while it runs down: 12 lbf*in")
    add("--wrench", action="append", metavar="RANGE", help='the wrench: "5 to 80 lbf*ft by 1"; may be given again')
    add("--adapter", metavar="ARMS", help='a crow-foot: "2 in on 12 in", "2 in on 12 in at 90 deg"')
    add("--confirmed", metavar="OPTION", help="an option that looks odd and was read twice: maker, prevailing ...")


def _own_options(parser: Parser) -> None:
    """What is known of this very bolt, in place of the tables."""
    add = parser.add_argument
    measured = 'measured, with " by TOOL on 2026-11-20" behind it'
    add(
        "--nut-factor",
        metavar="K",
        help=f'friction of this lot: 0.16, "0.14 to 0.18", "0.16 (0.14 to 0.18)"; {measured}',
    )
    add("--preload", metavar="P", help='the preload wanted: a share of proof "70 %%", a force or a stretch of the bolt')
    add("--proof-strength", metavar="STRESS", help="the bolt's own proof strength, in place of the grade's")
    add("--yield-strength", metavar="STRESS", help="its yield strength: proof is taken as 0.85 of it")
    add("--tensile-strength", metavar="STRESS", help="its tensile strength")
    add("--grip", metavar="LENGTH", help="all that the bolt clamps: its stretch and stiffness follow")
    add("--grip-shank", metavar="LENGTH", help='plain shank inside the grip; "0 in" where all of it is thread')
    add("--grip-metal", metavar="METAL", help="what is clamped: steel, aluminium, cast iron, stainless steel")
    add("--grip-modulus", metavar="E", help="its modulus of elasticity, in place of the table's")
    add("--grip-bolt-modulus", metavar="E", help="the bolt's modulus of elasticity, in place of the table's")
    add("--grip-load", metavar="FORCE", help="outside load that pulls the joint apart, on one bolt")


def _grip(a: SimpleNamespace) -> dict[str, str] | None:
    """The grip of the options; None where none is given."""
    names = ("shank", "metal", "modulus", "bolt_modulus", "load")
    given = {"length": a.grip, **{name: getattr(a, f"grip_{name}") for name in names}}
    return {k: v for k, v in given.items() if v} or None


def _maker(a: SimpleNamespace) -> dict[str, str] | None:
    """The maker's figure of the options; None where none is given."""
    if a.maker is None:
        of_maker = ("maker_source", "maker_place", "maker_condition", "new_bolts")
        if any(getattr(a, name) is not None for name in of_maker):
            from gaugeblock.answer.needs import together

            together(vars(a), dict.fromkeys(of_maker, ("maker",)))
        return None
    given = {
        "torque": a.maker,
        "source": a.maker_source,
        "place": a.maker_place,
        "condition": a.maker_condition,
        "new_bolts": a.new_bolts,
    }
    return {k: v for k, v in given.items() if v}
