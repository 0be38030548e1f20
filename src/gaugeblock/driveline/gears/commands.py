"""``gearing`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_sheet

_OPTIONS = (
    ("tyre", "T", "size code or outside diameter, several with commas: P215/65R15, 28 in"),
    ("revolutions", "N", "of the tyre by its maker: 775 rev/mile"),
    ("gears", "G", 'ratios of the gearbox, the top gear last: "3.06, 1.63, 1"'),
    ("transfer", "R", "ratio of a transfer case"),
    ("engine-speed", "N", "most speed of the engine: 6000 rpm"),
    ("was-ratio", "R", "axle ratio with which the speedometer was right"),
    ("was-tyre", "T", "tyre with which the speedometer was right"),
    ("driven-gear", "N", "teeth of the driven gear of the speedometer"),
)


def gearing(argv: list[str]) -> int:
    """Run ``gaugeblock gearing``; the exit code."""
    parser = parser_of(
        "gearing",
        "Engine speed at a road speed through every gear, for axle ratios and tyres side by side; what the speedometer"
        " then shows.",
        'gaugeblock gearing "3.55, 41/10" --tyre P215/65R15 --speed "60 mph" --gears "3.06, 1.63, 1, 0.7"',
    )
    parser.add_argument("ratios", metavar="RATIOS", help='axle ratios or tooth counts, with commas: "3.55, 41/10"')
    parser.add_argument("--speed", default="60 mph", metavar="V", help="of the vehicle: 60 mph (default)")
    for name, metavar, said in _OPTIONS:
        parser.add_argument(f"--{name}", metavar=metavar, help=said, default="1" if name == "gears" else None)
    common_options(parser)
    a = vars(parser.parse_args(argv))
    from gaugeblock.driveline.gears.answer import gearing as sheet_of
    from gaugeblock.tables.load import refdata

    shown = (a.pop("json"), a.pop("unit"), a.pop("why"))
    data = refdata(a.pop("data_release"))
    return print_sheet(sheet_of(a.pop("ratios"), **a, data=data), *shown)
