"""``circuit`` and ``parked`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_sheet


def circuit(argv: list[str]) -> int:
    """Run ``gaugeblock circuit``; the exit code."""
    parser = parser_of(
        "circuit",
        "The smallest wire of one circuit by its drop and by its heat, and the fuse ahead of it.",
        'gaugeblock circuit --current "28 A" --length "12 ft" --voltage "12 V" --drop "3 %" --insulation GXL --air "60'
        ' degC" --bundle 1 --return wire',
    )
    parser.add_argument("--current", required=True, metavar="I", help="of the load: 28 A")
    parser.add_argument("--length", required=True, metavar="L", help="from the source to the load, one way: 12 ft")
    parser.add_argument("--voltage", required=True, metavar="V", help="of the system: 12 V")
    parser.add_argument("--drop", metavar="D", help="that is allowed: 3 %%, or 0.5 V")
    parser.add_argument("--insulation", metavar="T", help="what it bears, or the letters of the cable: 105 degC, GXL")
    parser.add_argument("--air", metavar="T", help='along the wire: 60 degC, "by the engine", "in the cabin"')
    parser.add_argument("--bundle", metavar="N", help="how many loaded wires lie together, this one too")
    parser.add_argument("--return", dest="back", metavar="R", help="wire or body")
    parser.add_argument("--fuse", metavar="I", help="that is to be fitted: 30 A")
    parser.add_argument("--connector", metavar="I", help="what the weakest connector may carry: 25 A")
    parser.add_argument("--wire", metavar="W", help="a wire that is there already: 10 AWG, 6 mm2")
    parser.add_argument("--earth-drop", metavar="V", help="what the body was measured to lose, under load: 0.05 V")
    parser.add_argument("--relay", metavar="I", help="what the relay's contact may carry: 40 A")
    parser.add_argument("--wires", metavar="N", help="how many equal wires side by side share the current")
    parser.add_argument("--kind", metavar="K", help='load (default), or "starter cable"')
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tables.load import refdata
    from gaugeblock.wiring.circuit import circuit as sheet_of

    sheet = sheet_of(
        a.current,
        a.length,
        a.voltage,
        drop=a.drop,
        insulation=a.insulation,
        air=a.air,
        bundle=a.bundle,
        back=a.back,
        earth_drop=a.earth_drop,
        fuse=a.fuse,
        connector=a.connector,
        relay=a.relay,
        wire=a.wire,
        wires=a.wires,
        kind=a.kind,
        data=refdata(a.data_release),
    )
    return print_sheet(sheet, a.json, a.unit, a.why)


def parked(argv: list[str]) -> int:
    """Run ``gaugeblock parked``; the exit code."""
    parser = parser_of(
        "parked",
        "How long a battery bears a standing draw and still starts the engine.",
        'gaugeblock parked --draw "35 mA" --battery "60 Ah" --days "21 days"',
    )
    parser.add_argument("--draw", required=True, metavar="I", help="of the vehicle at rest: 35 mA")
    parser.add_argument("--battery", metavar="Q", help="charge of the full battery: 60 Ah")
    parser.add_argument("--reserve", metavar="T", help="or its reserve capacity: 100 min")
    parser.add_argument("--days", metavar="T", help="that it is to stand: 21 days")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tables.load import refdata
    from gaugeblock.wiring.parked import parked as sheet_of

    sheet = sheet_of(a.draw, battery=a.battery, reserve=a.reserve, days=a.days, data=refdata(a.data_release))
    return print_sheet(sheet, a.json, a.unit, a.why)
