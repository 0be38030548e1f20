"""The command line: parse, call a sheet, print. Each command imports only what it needs.

Exit 0 done; 1 done, and a check is not ok; 2 refused: standard output empty, one message on standard error.
"""

from __future__ import annotations

import argparse
import sys

from gaugeblock.errors import GaugeblockError, InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import NoReturn

    from gaugeblock.sheets.sheet import Sheet


class _Parser(argparse.ArgumentParser):
    """Refuses with our own one message instead of usage and exit."""

    def error(self, message: str) -> NoReturn:
        raise InputError(self.prog.split(" ")[-1], "command line", message, (), f"see {self.prog} --help")


def _parser(name: str, about: str, example: str) -> _Parser:
    return _Parser(
        prog=f"gaugeblock {name}", description=about, epilog=f"example:\n  {example}", allow_abbrev=False,
        formatter_class=_help_formatter,
    )  # fmt: skip


def _help_formatter(prog: str) -> argparse.HelpFormatter:
    return argparse.RawDescriptionHelpFormatter(prog, width=100)  # a given width spares asking the terminal's


def _common(parser: _Parser, unit: bool = True) -> None:
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    if unit:
        parser.add_argument("--in", dest="unit", metavar="UNIT", help="print figures of this unit's dimension in it")
    parser.add_argument("--data-release", metavar="V", help="use the tables of an earlier data release")


def _print_sheet(sheet: Sheet, as_json: bool, unit: str | None) -> int:
    from gaugeblock.sheets.sheet import NOT_OK

    if unit is not None:
        from gaugeblock import units

        unit = units.TYPED.get(unit, unit)
        units.dimension(unit)
        if all(units.dimension(f.unit) != units.dimension(unit) for f in sheet.figures):
            near = tuple(dict.fromkeys(u for f in sheet.figures for u in units.spellings(units.dimension(f.unit))))
            raise InputError(unit, "--in", "no figure of this answer has that dimension", near, "ask for one of these")
    if as_json:
        import json

        out = sheet.as_dict()
        if unit is not None:
            _reprint(sheet, out, unit)
        print(json.dumps(out, ensure_ascii=False, indent=2))
    else:
        from gaugeblock.sheets.text import render

        print(render(sheet, unit))
    return 1 if sheet.worst == NOT_OK else 0


def _reprint(sheet: Sheet, out: dict[str, object], unit: str) -> None:
    """With ``--in``, the ``printed`` text of each answer is in that unit; values stay in the source's own."""
    from gaugeblock import units
    from gaugeblock.sheets.printing import printed

    rows = out["figures"]
    if isinstance(rows, list):
        for figure, row in zip(sheet.figures, rows, strict=True):
            if units.dimension(figure.unit) == units.dimension(unit):
                row["printed"] = printed(figure, sheet.data, unit)


def _torque(argv: list[str]) -> int:
    parser = _parser(
        "torque", "What to tighten a thread to, the clamp it gives, and whether bolt and thread stand it.",
        'gaugeblock torque 3/8-16 --grade "SAE J429 5" --condition dry',
    )  # fmt: skip
    parser.add_argument("thread", metavar="THREAD", help="3/8-16, 3/8-16 UNC, M10x1.5")
    parser.add_argument("--grade", required=True, metavar="G", help='"SAE J429 5", "ISO 898-1 8.8", "ASTM A574"')
    parser.add_argument("--condition", required=True, metavar="C", help="dry, oiled, zinc plated, anti-seize ...")
    parser.add_argument("--service", default="vehicle", metavar="S", help="vehicle (default), aircraft, ...")
    parser.add_argument("--joint", default="reused", metavar="J", help="reused (75 %% of proof, default) or permanent (90 %%)")
    parser.add_argument("--into", metavar="METAL", help="the tapped metal: aluminium, cast iron, steel")
    parser.add_argument("--engagement", metavar="LENGTH", help="thread length engaged: 3/4 in, 15 mm")
    parser.add_argument("--tapped-strength", metavar="STRESS", help="tensile strength of the tapped metal: 35 ksi")
    parser.add_argument("--locknut", metavar="KIND", help="nylon insert, all-metal: its prevailing torque is added")
    parser.add_argument("--prevailing", metavar="TORQUE", help="run-down torque as measured: 12 lbf*in")
    parser.add_argument("--given", metavar="TORQUE", help="answer backwards: what clamp does this setting give")
    parser.add_argument("--wrench", metavar="RANGE", help='the wrench: "5 to 80 lbf*ft by 1"')
    parser.add_argument("--adapter", metavar="ARMS", help='a crow-foot: "2 in on 12 in", "2 in on 12 in at 90 deg"')
    _common(parser)
    a = parser.parse_args(argv)
    from gaugeblock.sheets.fasteners import torque
    from gaugeblock.tables.load import refdata

    sheet = torque(
        a.thread, grade=a.grade, condition=a.condition, service=a.service, joint=a.joint, into=a.into, engagement=a.engagement,
        tapped_strength=a.tapped_strength, locknut=a.locknut, prevailing=a.prevailing, given=a.given, wrench=a.wrench,
        adapter=a.adapter, data=refdata(a.data_release),
    )  # fmt: skip
    return _print_sheet(sheet, a.json, a.unit)


# The one list that maps commands to what runs them.
COMMANDS: dict[str, tuple[Callable[[list[str]], int], str]] = {
    "torque": (_torque, "what to tighten a thread to"),
}


def _overview() -> str:
    from gaugeblock.tables.load import refdata

    lines = ["gaugeblock: figures for building a vehicle, each with its source; data release " + refdata().release, ""]
    lines += [f"  {name:<10} {about}" for name, (_, about) in COMMANDS.items()]
    return "\n".join([*lines, "", "  gaugeblock COMMAND --help   options and a worked example"])


def main(argv: list[str] | None = None) -> int:
    """Run one command; the exit code."""
    argv = sys.argv[1:] if argv is None else argv
    try:
        if not argv or argv[0] in ("-h", "--help"):
            print(_overview())
            return 0 if argv else 2
        run = COMMANDS.get(argv[0])
        if run is None:
            from difflib import get_close_matches

            near = get_close_matches(argv[0], COMMANDS, n=5, cutoff=0.4) or list(COMMANDS)
            raise InputError(argv[0][:60], "command", "no such command", near, "see gaugeblock --help")
        return run[0](argv[1:])
    except GaugeblockError as error:
        if "--json" in argv:
            import json

            print(json.dumps({"error": error.as_dict()}, ensure_ascii=False), file=sys.stderr)
        else:
            print(error, file=sys.stderr)
        return 2
    except BrokenPipeError:
        sys.stderr.close()
        return 0


if __name__ == "__main__":
    sys.exit(main())
