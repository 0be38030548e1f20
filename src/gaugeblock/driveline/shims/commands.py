"""``shims`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import add_options, parser_of, print_answer

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_OPTIONS = (
    ("backlash", "L", "as it is read: 0.012 in"),
    ("wanted", "L", "by the axle maker: 0.006 in"),
    ("per-shim", "R", "backlash that one shim thickness moves on this axle: 0.7"),
    ("move", "L", "or the maker's own shim change from the gauge stack: 0.010 in"),
    ("ring-side", "L", "the pack on the ring gear's side"),
    ("other-side", "L", "the pack on the other side"),
    ("preload", "L", "shim that is added to each side after it"),
    ("shim", "L", "of the pinion: the one that is in, or that the depth gauge asks for"),
    ("old-mark", "M", "on the pinion that comes out: +2"),
    ("new-mark", "M", "on the pinion that goes in: -1"),
    ("sign", "S", '"plus adds" or "plus takes off", by the axle maker'),
    ("fact", "F", "shim, or backlash: what the shim that is moved does to it"),
)


def _answer() -> Callable[..., Sheet]:
    from gaugeblock.driveline.shims.answer import shims as answer

    return answer


def shims(argv: list[str]) -> int:
    """Run ``gaugeblock shims``; the exit code."""
    parser = parser_of(
        "shims",
        "Shims of an axle: what to move from side to side for a backlash, or what the pinion's mark asks for.",
        'gaugeblock shims --backlash "0.012 in" --wanted "0.006 in" --per-shim 0.7 --ring-side "0.250 in" --other-side'
        ' "0.265 in"',
    )
    add_options(parser, _OPTIONS)
    return print_answer(parser, argv, _answer)
