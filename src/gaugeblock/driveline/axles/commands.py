"""``axle`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_open

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic
    from gaugeblock.answer.table import Table

_OPTIONS = (
    ("treatment", "T", '"cold drawn", "quenched and tempered", "induction hardened"'),
    ("temper", "T", "tempering temperature: 800 degF"),
    ("diameter", "DIA", "outside diameter of the shaft at its smallest: 1-1/4 in"),
    ("bore", "DIA", "bore of a hollow shaft"),
    ("length", "L", "length that twists: 30 in"),
    ("engine-torque", "T", "most torque of the engine: 300 lbf*ft"),
    ("converter", "R", "stall ratio of the torque converter, or none: 2.2"),
    ("gear", "R", "ratio of the lowest gear: 2.5"),
    ("transfer", "R", "ratio of a transfer case: 2.7"),
    ("ratio", "R", "axle ratio: 4.1"),
    ("differential", "D", '"open", "limited slip" or "locked"'),
    ("bias", "R", "torque bias of a limited slip differential: 2.5"),
    ("wheel-load", "W", "weight on this wheel when it pulls hardest: 1000 lb"),
    ("grip", "G", "greatest pull of the tyre over its weight: 0.9"),
    ("radius", "R", "centre of the loaded wheel to the road: 13 in"),
    ("axle-load", "W", "weight on this axle at rest, in place of the wheel load: 1800 lb"),
    ("height", "L", "height of the centre of mass over the road: 20 in"),
    ("wheelbase", "L", "wheelbase: 100 in"),
    ("driven", "A", '"rear" or "front": the axle that drives'),
    ("lifted", "Y", '"yes" where the other wheel of the axle is in the air'),
    ("parts", "P", 'steps of the shaft: "1-1/2 in x 4 in, 1-1/4 in x 22 in"'),
    ("spline", "PITCH", "pitch of its spline: 24/48"),
    ("teeth", "N", "teeth of its spline: 30"),
    ("root", "R", "root of its spline: flat root or fillet root"),
    ("fillet", "R", "radius of the fillet under a shoulder or flange: 1/8 in"),
    ("shoulder", "DIA", "diameter of that shoulder or flange: 2 in"),
    ("shear-modulus", "G", "the steel's own: 11.5 Msi"),
    ("section", "SIZE", "the bar's own size (else the shaft's diameter)"),
    ("hardness", "H", "hardness measured on this shaft: 42 HRC"),
    ("certificate", "C", "where its yield strength stands: mill sheet 12"),
    ("case-depth", "L", "depth of the hardened case: 0.15 in"),
    ("core-hardness", "H", "hardness below the case: 25 HRC"),
)


def _topic() -> Topic:
    """What may be left open, loaded where something is."""
    from gaugeblock.driveline.ask import AXLE

    return AXLE


def print_table(table: Table, as_json: bool, unit: str | None, why: bool) -> int:
    """Print a Table, the first rows of it unless all are asked for; the exit code."""
    from gaugeblock.answer.table import MOST, Table

    if as_json:
        import json

        print(json.dumps(table.as_dict(), ensure_ascii=False, indent=2))
    else:
        more = 0 if why else max(len(table.lines) - MOST, 0)
        shown = table.lines[: len(table.lines) - more]
        print(Table(table.title, table.asked, table.data, table.open, shown, more).text(unit, whole=why))
    return 0


def axle(argv: list[str]) -> int:
    """Run ``gaugeblock axle``; the exit code."""
    parser = parser_of(
        "axle",
        "The torque that engine and tyre can send to one axle shaft, and whether the shaft carries it. --compare steels"
        " shows every steel of the table, --compare splines the next sizes of its spline.",
        'gaugeblock axle --material 4340 --treatment "quenched and tempered" --temper "800 degF" --diameter "1-1/4 in"'
        ' --length "30 in" --engine-torque "300 lbf*ft" --gear 2.5 --converter none --ratio 4.1 --differential open'
        ' --wheel-load "1000 lb" --grip 0.9 --radius "13 in"',
    )
    parser.add_argument("--material", "--steel", metavar="M", help="4340, 1541, 300M")
    for name, metavar, said in _OPTIONS:
        parser.add_argument(f"--{name}", metavar=metavar, help=said)
    parser.add_argument(
        "--yield",
        "--yield-strength",
        dest="yield_strength",
        metavar="S",
        help="this shaft's own yield strength: 120 ksi",
    )
    common_options(parser)
    a = parser.parse_args(argv)
    options = {k: v for k, v in vars(a).items() if k not in ("json", "unit", "why", "compare", "data_release")}
    if a.compare in ("steels", "splines"):
        from gaugeblock.driveline.axles.answer import axle_compared
        from gaugeblock.tables.load import refdata

        table = axle_compared(a.compare, **options, data=refdata(a.data_release))
        return print_table(table, a.json, a.unit, a.why)
    from gaugeblock.driveline.axles.answer import axle as sheet_of

    return print_open(sheet_of, _topic, options, a)
