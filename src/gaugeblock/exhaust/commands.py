"""``exhaust`` at the command line: its questions, each with options of its own."""

from __future__ import annotations

from gaugeblock.answer.command import add_options, parser_of, print_answer, topic_in
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

    Option = tuple[str, str, str]

_EXAMPLE = 'gaugeblock exhaust pipe --power "260 hp" --displacement "4.75 L"'
_PIPE: tuple[Option, ...] = (
    ("power", "P", "of the engine: 260 hp"),
    ("displacement", "V", "of the engine: 4.75 L, 290 in**3"),
    ("speed", "N", "of the engine at that power: 5500 rpm"),
    ("pipes", "N", "how many equal pipes side by side: 1 or 2"),
    ("od", "D", "of the pipe that is there or chosen: 2-1/2 in"),
    ("wall", "T", "of that pipe: .065 in"),
    ("gas", "T", "temperature of the gas in the pipe: 1200 degF"),
    ("length", "L", "of the run as straight pipe, its bends counted: 12 ft"),
    ("back-pressure", "P", "that the engine maker allows: 2 psi"),
)
_WRAP: tuple[Option, ...] = (
    ("length", "L", "of each pipe that is wrapped: 3 ft"),
    ("od", "D", "of the pipe: 1-5/8 in"),
    ("width", "W", "of the wrap: 2 in"),
    ("overlap", "O", "of each turn on the one before: 25 %%, 1/2 in"),
    ("pipes", "N", "that are alike: 4"),
)
_RUN: tuple[Option, ...] = (
    ("length", "L", "along its middle line: 9 ft"),
    ("od", "D", "of the pipe: 2-1/2 in"),
    ("wall", "T", "of the pipe: .065 in"),
    ("material", "M", "of the pipe: 304 stainless, aluminised steel"),
    ("hot", "T", "its metal at the hottest: 900 degF"),
    ("fixed", "L", "its fixed point, from the front end: 20 in"),
    ("hangers", "L", "their places from the front end: 20 in, 60 in, 100 in"),
    ("hanger-length", "L", "from pin to pin: 3 in"),
    ("hanger-limit", "F", "what one hanger may carry: 40 lbf"),
    ("masses", "M", "what hangs on it and where: 12 lb at 80 in"),
    ("flex", "F", "flexible section, its length and where it begins: 6 in at 4 in"),
    ("flex-kind", "K", "hose or bellows"),
    ("travel", "L", "of the flexible section, by its maker: 3/4 in"),
    ("rate", "K", "its spring rate: 150 lbf/in"),
    ("area", "A", "its effective area: 5 in**2"),
    ("pressure", "P", "in the pipe: 2 psi"),
    ("expansion", "A", "of its metal, in place of the tables': 17.3 um/(m*K)"),
    ("cold-end", "T", "what it grows from: 10 degC; else 20 degC"),
)
_GAP: tuple[Option, ...] = (
    ("to", "N", "the neighbour: brake line, fuel tank, floor, wire, rubber boot, tyre, ground"),
    ("gap", "L", "between both when cold: 2 in"),
    ("movement", "L", "of the run towards it when hot: 3/8 in"),
    ("jurisdiction", "J", "whose rule it must keep: US Maryland"),
    ("pipe", "D", "outside diameter of the exhaust pipe, for the heat of a line or wire: 2-1/4 in"),
    ("hot", "T", "the pipe's metal: 700 to 900 degF"),
    ("hot-finish", "E", 'its emissivity, or "material: surface": 0.7 to 0.9'),
    ("od", "D", "outside diameter of the line, hose or wire: 3/16 in"),
    ("finish", "E", "its emissivity: 0.8 to 0.95"),
    ("air", "T", "air beside it: 30 to 50 degC"),
    ("soak-air", "T", "air after shut-down: 60 to 90 degC"),
    ("what", "W", "what it is or carries: DOT 4, SAE J30 R9, SAE J1128 TXL cable"),
    ("state", "S", "its state: wet, dry, continuous"),
    ("limit", "T", "what its maker says that it stands: 150 degC"),
    ("measured", "T", "what it came to on the car, hot and after shut-down: 90 degC"),
    ("shield", "W", "what stands between both: yes, 1 mm steel"),
)
_JOINT: tuple[Option, ...] = (
    ("kind", "K", "slip joint, sliding joint, butt weld, mitre, collector, balance pipe, sensor boss, flange"),
    ("od", "D", "of the pipe: 2-1/2 in"),
    ("wall", "T", "of the pipe: .065 in"),
    ("socket", "D", "inside diameter of the socket as it is: 2.520 in"),
    ("overlap", "L", "of the pipe in its socket as it is: 1-1/2 in"),
    ("angle", "A", "that a mitred bend turns in all: 90 deg"),
    ("clamp", "C", "that holds it: V-band, band clamp, exhaust clamp"),
    ("tried", "T", "how it was found tight: smoke, 2 psi, 2026-11-20"),
    ("fact", "F", "socket (which it is where nothing is asked), overlap"),
)
_HANGER: tuple[Option, ...] = (
    ("spacing", "L", "from hanger to hanger: 4 ft"),
    ("first", "L", "from the flexible section or first joint to the first hanger: 10 in"),
    ("swing", "A", "of a hanger from straight down when hot: 15 deg"),
    ("run", "L", "length of the whole run, for how many hangers that is: 12 ft"),
    ("tried", "T", "how the run was found to hold still: shaken by hand, hot, 2026-11-20"),
)
_OUTLET: tuple[Option, ...] = (("jurisdiction", "J", "whose rules hold: Germany, US New Hampshire"),)
_IGNITION: tuple[Option, ...] = (
    ("maker-gap", "L", "plug gap that the engine maker says: 0.044 in"),
    ("gap", "L", "as set: 0.044 in"),
    ("reach", "L", "of the new plugs: 0.750 in"),
    ("old-reach", "L", "of the plugs that came out: 0.750 in"),
    ("heat-range", "R", "as the engine maker says"),
    ("lead", "L", "from the nearest lead to the pipe: 1-1/2 in"),
    ("timing-before", "A", "before the headers came off: 10 deg"),
    ("timing-after", "A", "with the headers on, at the same speed: 10 deg"),
)


def _joint() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.joint import exhaust_joint

    return exhaust_joint


def _hanger() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.hanger import exhaust_hanger

    return exhaust_hanger


def _wrap() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.wrap import exhaust_wrap

    return exhaust_wrap


def _outlet() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.outlet import exhaust_outlet

    return exhaust_outlet


def _ignition() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.ignition import exhaust_ignition

    return exhaust_ignition


def _run() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.run.answer import exhaust_run

    return exhaust_run


def _gap() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.gap import exhaust_gap

    return exhaust_gap


def _pipe() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.pipe import exhaust_pipe

    return exhaust_pipe


# Question -> what it is about, its worked example, its options, how many of the first are needed, the answer.
QUESTIONS: dict[str, tuple[str, str, tuple[Option, ...], int, Callable[[], Callable[..., Sheet]]]] = {
    "pipe": ("The usual size of an exhaust pipe, and what a given pipe makes of the gas.", _EXAMPLE, _PIPE, 1, _pipe),
    "run": (
        "How far a run grows, what each hanger carries, what its fixed point takes.",
        (
            'gaugeblock exhaust run --length "108 in" --od "2-1/2 in" --wall ".065 in" --material "aluminised steel"'
            ' --hot "900 degF" --fixed "20 in" --flex "6 in at 4 in" --travel "3/4 in" --hangers "20 in, 60 in, 100 in"'
            ' --hanger-length "3 in" --masses "12 lb at 80 in"'
        ),
        _RUN,
        3,
        _run,
    ),
    "gap": (
        "How near a neighbour of an exhaust may be, by rules and habits.",
        'gaugeblock exhaust gap --to "brake line" --gap "2-1/2 in" --movement "3/8 in"',
        _GAP,
        0,
        _gap,
    ),
    "joint": (
        "Socket and overlap, weld gap, mitres, collector, balance pipe, sensor boss, flanges.",
        'gaugeblock exhaust joint --kind "slip joint" --od "2-1/2 in" --socket "2.52 in" --overlap "1-1/2 in"',
        _JOINT,
        0,
        _joint,
    ),
    "hanger": (
        "How far apart hangers stand, how near the first one, how far they may swing.",
        'gaugeblock exhaust hanger --spacing "4 ft" --first "10 in"',
        _HANGER,
        0,
        _hanger,
    ),
    "wrap": (
        "How much wrap pipes take.",
        'gaugeblock exhaust wrap --length "3 ft" --od "1-5/8 in" --width "2 in" --overlap "25 %" --pipes 4',
        _WRAP,
        3,
        _wrap,
    ),
    "outlet": (
        "Where the end of an exhaust may be, by published rules.",
        "gaugeblock exhaust outlet --jurisdiction Germany",
        _OUTLET,
        0,
        _outlet,
    ),
    "ignition": (
        "Plugs, leads and timing beside headers, before and after.",
        (
            'gaugeblock exhaust ignition --maker-gap "0.044 in" --gap "0.044 in" --reach "0.75 in" --old-reach "0.75'
            ' in" --heat-range "as the maker says" --lead "1-1/2 in" --timing-before "10 deg" --timing-after "10 deg"'
        ),
        _IGNITION,
        0,
        _ignition,
    ),
}


# Question -> the keys that it cannot do without and that have a list of values.
_KEYS = {"gap": ("to",), "joint": ("kind",), "run": ("material",)}


def exhaust(argv: list[str]) -> int:
    """Run ``gaugeblock exhaust QUESTION``; the exit code."""
    name = argv[0] if argv else ""
    if name in QUESTIONS:
        return _asked(name, argv[1:])
    if name in ("-h", "--help"):
        parser = parser_of("exhaust", "An exhaust: its questions, each with its own --help.", _EXAMPLE)
        parser.add_argument("question", metavar="QUESTION", help=", ".join(QUESTIONS))
        parser.parse_args(argv)
    near = list(QUESTIONS)
    raise InputError(name or "(nothing)", "command line", "not a question of exhaust", near, "name one of these")


def _asked(name: str, argv: list[str]) -> int:
    about, example, options, needed, answer = QUESTIONS[name]
    parser = parser_of(f"exhaust {name}", about, example)
    add_options(parser, options, needed)

    topic = topic_in("gaugeblock.exhaust.ask", name.upper())
    return print_answer(parser, argv, answer, topic if name != "ignition" else None, _KEYS.get(name, ()))
