"""``torque`` and ``part`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_sheet


def torque(argv: list[str]) -> int:
    """Run ``gaugeblock torque``; the exit code."""
    parser = parser_of(
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
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.fasteners.torque import torque as sheet_of
    from gaugeblock.tables.load import refdata

    sheet = sheet_of(
        a.thread, grade=a.grade, condition=a.condition, service=a.service, joint=a.joint, into=a.into, engagement=a.engagement,
        tapped_strength=a.tapped_strength, locknut=a.locknut, prevailing=a.prevailing, given=a.given, wrench=a.wrench,
        adapter=a.adapter, data=refdata(a.data_release),
    )  # fmt: skip
    return print_sheet(sheet, a.json, a.unit, a.why)


def part(argv: list[str]) -> int:
    """Run ``gaugeblock part``; the exit code."""
    parser = parser_of(
        "part", "What to tighten a part to that has its own figure: plug, line nut, clamp, wheel nut.",
        'gaugeblock part "spark plug" --size "14 mm" --seat gasket --material aluminium',
    )  # fmt: skip
    parser.add_argument("part", metavar="PART", help="spark plug, flare nut, hose clamp, wheel nut ...")
    parser.add_argument("--size", metavar="SIZE", help="14 mm, 3/8 in, 1/2-20")
    parser.add_argument("--seat", metavar="SEAT", help="gasket, taper, 37 deg, 45 deg")
    parser.add_argument("--material", metavar="M", help="what it goes into, or the tube: aluminium, cast iron, steel")
    parser.add_argument("--service", default="vehicle", metavar="S", help="vehicle (default), aircraft, ...")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.fasteners.part import part as sheet_of
    from gaugeblock.tables.load import refdata

    sheet = sheet_of(
        a.part, size=a.size, seat=a.seat, material=a.material, service=a.service, data=refdata(a.data_release)
    )
    return print_sheet(sheet, a.json, a.unit, a.why)
