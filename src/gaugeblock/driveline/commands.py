"""``steel``, ``shaftstress``, ``hardness``, ``spline``, ``setup``, ``joint`` and ``jointlimit`` at the command line."""

from __future__ import annotations

from functools import partial

from gaugeblock.answer.command import common_options, parser_of, print_answer, print_open, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_topic = partial(topic_in, "gaugeblock.driveline.ask")


def steel(argv: list[str]) -> int:
    """Run ``gaugeblock steel``; the exit code."""
    parser = parser_of(
        "steel",
        "The strength of a shaft steel, its torsional yield, and what a torque does to a shaft of it.",
        'gaugeblock steel 4340 --treatment "quenched and tempered" --temper "800 degF" --shaft "1 in" --torque "1500'
        ' lbf*ft"',
    )
    parser.add_argument("grade", nargs="?", metavar="GRADE", help="4340, 1541, 300M")
    parser.add_argument("--treatment", metavar="T", help='"cold drawn", "quenched and tempered", "induction hardened"')
    parser.add_argument("--temper", metavar="T", help="tempering temperature: 800 degF")
    parser.add_argument("--section", metavar="SIZE", help="the bar's own size: 1 in (else the shaft's diameter)")
    parser.add_argument("--shaft", metavar="DIA", help="outside diameter of the shaft at its smallest: 1-1/4 in")
    parser.add_argument("--bore", metavar="DIA", help="bore of a hollow shaft")
    parser.add_argument("--length", metavar="L", help="length that twists: 30 in")
    parser.add_argument("--torque", metavar="T", help="torque asked of the shaft: 1500 lbf*ft")
    parser.add_argument("--hardness", metavar="H", help="hardness measured on this shaft: 42 HRC")
    parser.add_argument(
        "--yield", "--yield-strength", dest="own", metavar="S", help="this shaft's own yield strength: 120 ksi"
    )
    parser.add_argument("--certificate", metavar="C", help="where its yield strength stands: mill sheet 12")
    parser.add_argument("--case-depth", metavar="L", help="depth of the hardened case: 0.15 in")
    parser.add_argument("--shear-modulus", metavar="G", help="the steel's own, in place of the table's: 11.5 Msi")
    parser.add_argument("--core-hardness", metavar="H", help="hardness below the case: 25 HRC")
    parser.add_argument(
        "--fact", metavar="F", help="of the steel alone: yield (default), tensile, torsional yield or hardness"
    )
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.driveline.steel import steel as sheet_of

    names = ("grade", "treatment", "temper", "section", "shaft", "bore", "length", "torque", "hardness")
    options = {
        name: getattr(a, name)
        for name in (*names, "certificate", "case_depth", "core_hardness", "shear_modulus", "fact")
    }
    options["yield_strength"] = a.own
    return print_open(
        sheet_of, _topic("STEEL"), options, a, is_open=a.grade is None or (a.treatment is None and a.hardness is None)
    )


def hardness(argv: list[str]) -> int:
    """Run ``gaugeblock hardness``; the exit code."""
    parser = parser_of(
        "hardness",
        "A hardness on other scales and as strength, on the printed points and between them.",
        "gaugeblock hardness 42 HRC",
    )
    parser.add_argument("value", metavar="VALUE", help='42; a tensile strength, "150 ksi", for the hardness of it')
    parser.add_argument("scale", nargs="?", metavar="SCALE", help="HRC, HB; either may stand first")
    parser.add_argument("--to", metavar="SCALE", help="the scale that is wanted: HB")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.driveline.hardness import TENSILE
    from gaugeblock.driveline.hardness import hardness as sheet_of
    from gaugeblock.driveline.keys import split_hardness

    if a.scale is None and a.value.endswith(("ksi", "psi", "MPa", "N/mm2")):
        a.scale = TENSILE
    if a.scale is None and (said := split_hardness(a.value)) is not None:
        a.value, a.scale = said

    return print_open(
        sheet_of, _topic("BY_SCALE"), {"scale": a.scale, "value": a.value, "to": a.to}, a, is_open=a.scale is None
    )


def spline(argv: list[str]) -> int:
    """Run ``gaugeblock spline``; the exit code."""
    parser = parser_of(
        "spline",
        "Basic sizes of a 30 degree involute spline from the standard's equations, and whether it carries a torque.",
        "gaugeblock spline 24/48 35",
    )
    parser.add_argument("pitch", nargs="?", metavar="PITCH", help='24/48; "parallel side" for a straight-sided one')
    parser.add_argument("teeth", nargs="?", metavar="TEETH", help="number of teeth")
    parser.add_argument("--pressure-angle", default="30 deg", metavar="A", help="30 deg (default; the only one)")
    parser.add_argument("--root", default="flat root", metavar="R", help="flat root (default) or fillet root")
    parser.add_argument("--fit", default="side fit", metavar="F", help="side fit (default) or major diameter fit")
    parser.add_argument("--torque", metavar="T", help="torque that it must carry")
    parser.add_argument("--bore", metavar="DIA", help="bore under the spline")
    parser.add_argument("--material", metavar="M", help='"surface hardened, 48 to 53 HRC"')
    parser.add_argument("--source", metavar="S", help="what drives: engine, electric motor")
    parser.add_argument("--load", metavar="L", help='"uniform load", "heavy shock load"')
    parser.add_argument("--cycles", metavar="N", help='torque cycles: "10000 cycles"')
    parser.add_argument("--length", metavar="L", help="length on which shaft and hub are engaged: 1-1/2 in")
    parser.add_argument("--seating", metavar="S", help='"fixed" (shrunk or piloted, it cannot rock) or "flexible"')
    parser.add_argument("--misalignment", metavar="M", help="of a flexible one: 0.002 in/in")
    parser.add_argument("--revolutions", metavar="N", help='that a flexible one must last: "1000000 revolutions"')
    parser.add_argument("--fact", default="major diameter", metavar="F", help="or minor diameter, pitch diameter")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.driveline.splines.answer import spline as sheet_of

    names = ("pitch", "teeth", "pressure_angle", "root", "fit", "torque", "bore", "material", "source", "load")
    flexible = ("cycles", "length", "seating", "misalignment", "revolutions", "fact")
    options = {name: getattr(a, name) for name in (*names, *flexible)}
    return print_open(sheet_of, _topic("SPLINE"), options, a, is_open=None in (a.pitch, a.teeth))


def setup(argv: list[str]) -> int:
    """Run ``gaugeblock setup``; the exit code."""
    parser = parser_of(
        "setup",
        "One step of an axle's set-up: as found and as left against the maker's figure.",
        'gaugeblock setup rear "ring gear" backlash --wear new --as-left "0.007 in" --maker-low "0.005 in" --maker-high'
        ' "0.008 in" --maker-source "axle maker\'s sheet" --maker-place "page 4"',
    )
    parser.add_argument("axle", metavar="AXLE", help="the shop's name of the axle, or an axle of the table in full")
    parser.add_argument("component", nargs="?", metavar="COMPONENT", help="ring gear, drive pinion bearings")
    parser.add_argument("step", nargs="?", metavar="STEP", help="final setting, backlash, pattern check")
    parser.add_argument("--wear", metavar="W", help="new or used parts")
    parser.add_argument("--as-found", metavar="X", help="what was measured before")
    parser.add_argument("--as-left", metavar="X", help="what was measured after")
    for name in ("value", "low", "high", "source", "place"):
        parser.add_argument(f"--maker-{name}", metavar="X", help=f"the maker's figure: its {name}")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.driveline.setups.answer import setup as sheet_of

    maker = (a.maker_value, a.maker_low, a.maker_high, a.maker_source, a.maker_place)
    names = ("axle", "component", "step", "wear", "as_found", "as_left")
    options = {**{name: getattr(a, name) for name in names}, "maker": maker if any(maker) else None}
    return print_open(sheet_of, _topic("SETUP"), options, a, is_open=None in (a.component, a.step))


def joint(argv: list[str]) -> int:
    """Run ``gaugeblock joint``; the exit code."""
    parser = parser_of(
        "joint",
        "How much a universal joint, or the two of a shaft, make the driven shaft speed up and slow down.",
        'gaugeblock joint --side "3 deg, 5 deg, 3 deg" --shafts-top "0 deg, 2 deg, 0 deg" --phasing "in phase" --speed'
        ' "3000 rpm"',
    )
    parser.add_argument("angle", nargs="?", metavar="ANGLE", help="working angle of the first joint: 5 deg")
    parser.add_argument("second", nargs="?", metavar="ANGLE2", help="working angle of the second joint")
    parser.add_argument(
        "--top", metavar="ANGLE", help="the first joint's angle in the top view; ANGLE is the side view's"
    )
    parser.add_argument("--second-top", metavar="ANGLE", help="the second joint's angle in the top view")
    parser.add_argument(
        "--side", metavar="S", help='slopes of input, propeller and output shaft: "3 deg, 5 deg, 3 deg"'
    )
    parser.add_argument("--shafts-top", metavar="S", help="the same three slopes in the top view")
    parser.add_argument("--phasing", metavar="P", help='"in phase" or "wrong phase"')
    parser.add_argument("--yokes-out", metavar="A", help="how far the yokes are out of line, as measured: 15 deg")
    parser.add_argument("--speed", metavar="N", help="driveshaft speed: 3000 rpm")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.driveline.joints.answer import joint as sheet_of

    names = ("angle", "second", "top", "second_top", "shafts_top", "phasing", "speed", "yokes_out")
    options = {**{name: getattr(a, name) for name in names}, "shafts_side": a.side}
    return print_open(sheet_of, _topic("JOINT"), options, a)


def jointlimit(argv: list[str]) -> int:
    """Run ``gaugeblock jointlimit``; the exit code."""
    parser = parser_of(
        "jointlimit",
        "The greatest usual working angle of a universal joint at a driveshaft's speed.",
        'gaugeblock jointlimit --speed "3000 rpm"',
    )
    parser.add_argument("--speed", metavar="N", help="of the driveshaft at the vehicle's top speed: 3000 rpm")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.driveline.joints.limit import joint_limit as sheet_of

    return print_open(sheet_of, _topic("JOINT_LIMIT"), {"speed": a.speed}, a, is_open=a.speed is None)


def _shaftstress() -> Callable[..., Sheet]:
    from gaugeblock.driveline.stress import shaftstress as answer

    return answer


def shaftstress(argv: list[str]) -> int:
    """Run ``gaugeblock shaftstress``; the exit code."""
    parser = parser_of(
        "shaftstress",
        "The shear stress at the surface of a round shaft under a torque, how far it twists, or the torque at which"
        " it yields.",
        'gaugeblock shaftstress "1-1/4 in" --torque "1100 lbf*ft"',
    )
    parser.add_argument("diameter", metavar="DIA", help="of the shaft: 1-1/4 in")
    parser.add_argument("--torque", metavar="T", help="in the shaft: 1100 lbf*ft")
    parser.add_argument("--bore", metavar="DIA", help="of a hollow shaft")
    parser.add_argument("--wall", metavar="W", help="of a tube, in place of its bore: 0.083 in")
    parser.add_argument("--length", metavar="L", help="that twists under the torque: 30 in")
    parser.add_argument("--shear-yield", metavar="S", help="where its steel yields in shear, for that torque: 500 MPa")
    parser.add_argument("--yield-strength", metavar="S", help="or where it yields in tension: 160 ksi")
    return print_answer(parser, argv, _shaftstress, _topic("STRESS"))
