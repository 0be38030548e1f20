"""``exhaust`` at the command line: its questions, each with options of its own."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_sheet
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

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


def _pipe() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.pipe import exhaust_pipe

    return exhaust_pipe


# Question -> what it is about, its worked example, its options, the answer; the first option is needed.
QUESTIONS: dict[str, tuple[str, str, tuple[Option, ...], Callable[[], Callable[..., Sheet]]]] = {
    "pipe": ("The usual size of an exhaust pipe, and what a given pipe makes of the gas.", _EXAMPLE, _PIPE, _pipe),
}


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
    about, example, options, answer = QUESTIONS[name]
    parser = parser_of(f"exhaust {name}", about, example)
    for n, (option, metavar, said) in enumerate(options):
        parser.add_argument(f"--{option}", metavar=metavar, help=said, required=n == 0)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tables.load import refdata

    given: dict[str, Any] = {o.replace("-", "_"): getattr(a, o.replace("-", "_")) for o, _, _ in options}
    return print_sheet(answer()(**given, data=refdata(a.data_release)), a.json, a.unit, a.why)
