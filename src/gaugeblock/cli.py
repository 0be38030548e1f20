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
    parser.add_argument(
        "--joint", default="reused", metavar="J", help="reused (75 %% of proof, default) or permanent (90 %%)"
    )
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


def _part(argv: list[str]) -> int:
    parser = _parser(
        "part", "What to tighten a part to that has its own figure: plug, line nut, clamp, wheel nut.",
        'gaugeblock part "spark plug" --size "14 mm" --seat gasket --material aluminium',
    )  # fmt: skip
    parser.add_argument("part", metavar="PART", help="spark plug, flare nut, hose clamp, wheel nut ...")
    parser.add_argument("--size", metavar="SIZE", help="14 mm, 3/8 in, 1/2-20")
    parser.add_argument("--seat", metavar="SEAT", help="gasket, taper, 37 deg, 45 deg")
    parser.add_argument("--material", metavar="M", help="what it goes into, or the tube: aluminium, cast iron, steel")
    parser.add_argument("--service", default="vehicle", metavar="S", help="vehicle (default), aircraft, ...")
    _common(parser)
    a = parser.parse_args(argv)
    from gaugeblock.sheets.fastener_parts import part
    from gaugeblock.tables.load import refdata

    sheet = part(a.part, size=a.size, seat=a.seat, material=a.material, service=a.service, data=refdata(a.data_release))
    return _print_sheet(sheet, a.json, a.unit)


def _find(argv: list[str]) -> int:
    parser = _parser("find", "Every table and rule that has all the words.", "gaugeblock find spark plug 14 mm")
    parser.add_argument("text", metavar="TEXT", nargs="+", help="words, all of which must be there")
    _common(parser, unit=False)
    a = parser.parse_args(argv)
    from gaugeblock import finding
    from gaugeblock.tables.load import refdata

    data = refdata(a.data_release)
    found = finding.find(" ".join(a.text), data=data)
    if a.json:
        import json

        print(json.dumps(found.as_dict(), ensure_ascii=False, indent=2))
    else:
        print(found.text())
    return 0


def _sources(argv: list[str]) -> int:
    parser = _parser("sources", "The publications behind the tables.", "gaugeblock sources SHIGLEY9")
    parser.add_argument("words", metavar="WORD", nargs="*", help="only those whose id or title has all the words")
    _common(parser, unit=False)
    a = parser.parse_args(argv)
    from gaugeblock import finding
    from gaugeblock.tables.load import refdata

    rows = finding.sources(a.words, data=refdata(a.data_release))
    if a.json:
        import json

        print(
            json.dumps({"data_release": refdata(a.data_release).release, "sources": rows}, ensure_ascii=False, indent=2)
        )
    else:
        for row in rows:
            year = f", {row['year']}" if row["year"] else ""
            print(f"{row['id']:<14} {row['title']}{year} ({row['kind']}); {row['rows']} figures")
    return 0


def _packet(argv: list[str]) -> int:
    parser = _parser(
        "packet",
        "The spec packet of a job: packet.md, packet.html, packet.json.",
        "gaugeblock packet JOB.toml --out packets/roadster",
    )
    parser.add_argument("job", metavar="JOB.toml", help="the job file (see: gaugeblock new)")
    parser.add_argument(
        "--out", required=True, metavar="DIR", help="folder for the three files; made when its parent exists"
    )
    _common(parser, unit=False)
    a = parser.parse_args(argv)
    from gaugeblock.packet import make

    made = make.make_packet(a.job, a.out, a.data_release)
    if a.json:
        import json

        print(json.dumps(made.summary(), ensure_ascii=False, indent=2))
    else:
        print(made.text())
    return 1 if made.has_not_ok else 0


def _new(argv: list[str]) -> int:
    parser = _parser("new", "A commented starter of a job file.", "gaugeblock new roadster.toml")
    parser.add_argument("job", metavar="JOB.toml", help="the file to write; it must not exist yet")
    a = parser.parse_args(argv)
    from gaugeblock.job.starter import starter

    starter(a.job)
    print(f"{a.job} written; fill it in, then: gaugeblock packet {a.job} --out DIR")
    return 0


def _audit(argv: list[str]) -> int:
    parser = _parser(
        "audit",
        "What is published, read, remembered, habit; over the tables or one packet.",
        "gaugeblock audit packets/roadster/packet.json",
    )
    parser.add_argument("packet", metavar="packet.json", nargs="?", help="a packet; without it, the tables")
    parser.add_argument(
        "--fail-on", metavar="KIND", action="append", default=[], help="exit 1 when there is a finding of this kind"
    )
    _common(parser, unit=False)
    a = parser.parse_args(argv)
    from gaugeblock import audit
    from gaugeblock.tables.load import nearest, refdata

    for kind in a.fail_on:
        if kind not in audit.KINDS:
            raise InputError(
                kind[:60],
                "--fail-on",
                "not a kind of finding",
                nearest(kind, list(audit.KINDS)) or audit.KINDS,
                "use one of these",
            )
    if a.packet is None:
        found = audit.audit_refdata(refdata(a.data_release))
    else:
        from gaugeblock.packet import make

        found = audit.audit_packet(make.read_record(a.packet))
    if a.json:
        import json

        print(json.dumps(found, ensure_ascii=False, indent=2))
    else:
        print(audit.report(found))
    return 1 if any(f["kind"] in a.fail_on for f in found["findings"]) else 0


def _validate(argv: list[str]) -> int:
    parser = _parser("validate", "Every rule over every table; all faults at once.", "gaugeblock validate")
    parser.add_argument(
        "folder", metavar="DIR", nargs="?", help="another refdata folder; without it, the program's own"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    a = parser.parse_args(argv)
    from gaugeblock.tables import validate

    checked = validate.check(a.folder)
    if a.json:
        import json

        names = ("file", "line", "column", "rule", "found", "do")
        faults = [dict(zip(names, f.parts, strict=True)) for f in checked.faults]
        print(
            json.dumps(
                {"rows": checked.rows, "tables": checked.tables, "releases": checked.releases, "faults": faults},
                indent=2,
            )
        )
    else:
        print(validate.report(checked))
    return 1 if checked.faults else 0


# The one list that maps commands to what runs them.
COMMANDS: dict[str, tuple[Callable[[list[str]], int], str]] = {
    "torque": (_torque, "what to tighten a thread to, and the clamp it gives"),
    "part": (_part, "what to tighten a plug, line nut, clamp or wheel nut to"),
    "find": (_find, "all words, over every table and rule"),
    "packet": (_packet, "the spec packet of a job, to print and sign"),
    "new": (_new, "a commented starter of a job file"),
    "audit": (_audit, "what is published, from memory, habit; what disagrees"),
    "validate": (_validate, "every rule over every table"),
    "sources": (_sources, "the publications behind the tables"),
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
