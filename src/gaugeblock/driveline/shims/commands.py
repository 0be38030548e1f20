"""``shims`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_sheet

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
)


def shims(argv: list[str]) -> int:
    """Run ``gaugeblock shims``; the exit code."""
    parser = parser_of(
        "shims",
        "Shims of an axle: what to move from side to side for a backlash, or what the pinion's mark asks for.",
        'gaugeblock shims --backlash "0.012 in" --wanted "0.006 in" --per-shim 0.7 --ring-side "0.250 in" --other-side'
        ' "0.265 in"',
    )
    for name, metavar, said in _OPTIONS:
        parser.add_argument(f"--{name}", metavar=metavar, help=said)
    common_options(parser)
    a = vars(parser.parse_args(argv))
    from gaugeblock.driveline.shims.answer import shims as sheet_of
    from gaugeblock.tables.load import refdata

    shown = (a.pop("json"), a.pop("unit"), a.pop("why"))
    data = refdata(a.pop("data_release"))
    return print_sheet(sheet_of(**a, data=data), *shown)
