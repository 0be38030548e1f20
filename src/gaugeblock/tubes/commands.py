"""The tube commands: bend, arc, overbend, sheet, gauge, pipe, material, section, box, flare. Each returns its code."""

from __future__ import annotations

from functools import partial

from gaugeblock.answer.command import common_options, parser_of, print_open, topic_in

_topic = partial(topic_in, "gaugeblock.tubes.ask")


def bend(argv: list[str]) -> int:
    """``gaugeblock bend``: the least radius for a tube, and what a bend does to it."""
    parser = parser_of(
        "bend",
        "The least radius for a tube, whether a die keeps to it, and what the bend does to the tube.",
        'gaugeblock bend --od "1-3/4 in" --wall ".120 in" --material "1020 DOM" --method "rotary draw" --radius'
        ' "5-1/2 in"',
    )
    parser.add_argument("--od", required=True, metavar="D", help="outside diameter: 1-3/4 in, 44.5 mm")
    parser.add_argument("--wall", required=True, metavar="T", help='wall: .120 in, 3 mm, "11 BWG"')
    parser.add_argument("--material", metavar="M", help='"1020 DOM", "4130 normalized", 304, steel')
    parser.add_argument("--method", metavar="X", help='"rotary draw", mandrel, press, hand, roll')
    parser.add_argument("--radius", metavar="R", help='the die: "5-1/2 in" to the centre line, "4-5/8 in inside"')
    parser.add_argument("--measured-to", metavar="WHAT", help="centre line (default) or inside")
    parser.add_argument("--angle", metavar="A", help="angle of the bend: 90 deg; gives its arc length and springback")
    parser.add_argument(
        "--service", default="vehicle", metavar="S", help="vehicle (default), vehicle safety cage, aircraft, ..."
    )
    parser.add_argument("--product", metavar="P", help="how the tube was made: DOM, ERW")
    parser.add_argument("--condition", metavar="C", help='"as drawn", normalized, annealed')
    parser.add_argument("--spec", metavar="S", help='what it was bought to: "ASTM A513"')
    parser.add_argument("--diameters", metavar="PAIR", help='largest and smallest at a bend made: "1.80 x 1.70 in"')
    parser.add_argument("--maker-radius", metavar="R", help="the least radius for this tube by the bender's maker")
    parser.add_argument("--maker-source", metavar="WHERE", help='his sheet and page: "bender manual, p. 12"')
    measured = 'typed "62 ksi", or "62 ksi by tensile test on 2026-11-20"'
    parser.add_argument(
        "--yield-strength", "--yield", metavar="S", help=f"this tube's own, in place of the tables': {measured}"
    )
    parser.add_argument("--tensile-strength", "--tensile", metavar="S", help="the same")
    parser.add_argument("--modulus", metavar="E", help="its modulus of elasticity, the same: 29 Msi")
    parser.add_argument("--test", metavar="BEND", help='one bend of the same stock: "47 deg set, 45 deg got"')
    fact = "radius (which it is where nothing is asked), outer wall: what the bend leaves of the wall"
    parser.add_argument("--fact", metavar="F", help=fact)
    parser.add_argument("--least-wall", metavar="T", help="that a rule asks for at the outside of the bend: .090 in")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes.bend import sheet as tubes

    names = ("od", "wall", "material", "method", "radius", "angle", "service", "measured_to", "product", "condition")
    own = ("spec", "diameters", "maker_radius", "maker_source", "yield_strength", "tensile_strength", "modulus", "test")
    options = {name: getattr(a, name) for name in (*names, *own, "fact", "least_wall")}
    return print_open(tubes.bend, _topic("BEND"), options, a, is_open=None in (a.material, a.method))


def gauge(argv: list[str]) -> int:
    """``gaugeblock gauge``: the wall that a gauge number means."""
    parser = parser_of(
        "gauge",
        "The wall that a gauge number means in one system; or the gauge that is nearest to a wall.",
        "gaugeblock gauge 16 --system BWG",
    )
    parser.add_argument("number", nargs="?", metavar="NUMBER", help='16, "16 ga", "16 BWG"; or a wall: ".120 in"')
    parser.add_argument("--system", metavar="S", help='BWG (tube), "sheet steel", stainless, AWG ...')
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import gauge as answers

    options = {"number": a.number, "system": a.system}
    return print_open(answers.gauge, _topic("GAUGE"), options, a, is_open=a.number is None)


def pipe(argv: list[str]) -> int:
    """``gaugeblock pipe``: the true OD of a pipe size."""
    parser = parser_of(
        "pipe", "The true OD of a pipe size, with wall and bore of a schedule.", 'gaugeblock pipe "1-1/2" --schedule 40'
    )
    parser.add_argument("nps", nargs="?", metavar="SIZE", help='nominal pipe size: "1-1/2"')
    parser.add_argument("--schedule", metavar="S", help="40, 80, 10S, STD, XS")
    fact = "outside diameter (which it is where nothing is asked), wall, bore, mass"
    parser.add_argument("--fact", default="outside diameter", metavar="F", help=fact)
    parser.add_argument("--tube", metavar="OD", help="a tube to set beside it, by its outside diameter: 48 mm")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import pipe as answers

    options = {"nps": a.nps, "schedule": a.schedule, "fact": a.fact, "tube": a.tube}
    return print_open(answers.pipe, _topic("PIPE"), options, a, is_open=a.nps is None)


def material(argv: list[str]) -> int:
    """``gaugeblock material``: what a tube metal guarantees, and what is typical of it."""
    parser = parser_of(
        "material",
        "What a tube metal guarantees, then what is typical of it.",
        'gaugeblock material "1020 DOM as drawn"',
    )
    parser.add_argument("material", nargs="?", metavar="M", help='"1020 DOM as drawn", "4130 normalized", 304')
    parser.add_argument("--product", metavar="P", help="how the tube was made: DOM, ERW")
    parser.add_argument("--condition", metavar="C", help='"as drawn", normalized, annealed')
    parser.add_argument("--spec", metavar="S", help='what it was bought to: "ASTM A513"')
    parser.add_argument("--od", metavar="D", help="outside diameter, where the specification steps by size")
    parser.add_argument("--wall", metavar="T", help="wall, where the specification steps by size")
    fact = '"tensile strength", "yield strength" or elongation first; burst: the pressure at which such a tube bursts'
    parser.add_argument("--fact", metavar="F", help=fact)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import material as answers

    names = ("material", "product", "condition", "spec", "od", "wall", "fact")
    options = {name: getattr(a, name) for name in names}
    return print_open(answers.material, _topic("MATERIAL"), options, a, is_open=a.material is None)


def section(argv: list[str]) -> int:
    """``gaugeblock section``: the section of a round tube, its mass, and what brings it to yield."""
    parser = parser_of(
        "section",
        "Area, second moment, section modulus and mass of a round tube, and the bending that brings it to yield.",
        'gaugeblock section --od "1-3/4 in" --wall ".120 in" --material "1020 DOM as drawn" --length "6 ft"',
    )
    parser.add_argument("--od", required=True, metavar="D", help="outside diameter: 1-3/4 in, 44.5 mm")
    parser.add_argument("--wall", required=True, metavar="T", help='wall: .120 in, 3 mm, "11 BWG"')
    parser.add_argument("--material", metavar="M", help='"1020 DOM as drawn", 304: its density and yield strength')
    parser.add_argument("--length", metavar="L", help="of the piece: 6 ft")
    parser.add_argument("--torque", metavar="T", help="that twists it: 200 lbf*ft; with the shear modulus")
    parser.add_argument("--product", metavar="P", help="how the tube was made: DOM, ERW")
    parser.add_argument("--condition", metavar="C", help='"as drawn", normalized, annealed')
    parser.add_argument("--spec", metavar="S", help='what it was bought to: "ASTM A513"')
    own = "this tube's own, in place of the tables': 62 ksi"
    parser.add_argument("--yield-strength", "--yield", metavar="S", help=own)
    parser.add_argument("--tensile-strength", "--tensile", metavar="S", help="the same")
    parser.add_argument("--modulus", metavar="E", help="its modulus of elasticity, the same: 29 Msi")
    parser.add_argument("--shear-modulus", metavar="G", help="its modulus of rigidity: 11.5 Msi")
    fact = "section modulus (which it is where nothing is asked), mass, second moment, area"
    parser.add_argument("--fact", default="section modulus", metavar="F", help=fact)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import section as answers

    names = ("od", "wall", "material", "length", "torque", "product", "condition", "spec")
    stated = ("yield_strength", "tensile_strength", "modulus", "shear_modulus", "fact")
    given = {name: getattr(a, name) for name in (*names, *stated)}
    return print_open(answers.section, _topic("SECTION"), given, a)


def box(argv: list[str]) -> int:
    """``gaugeblock box``: the section of a square or rectangular tube, and its mass."""
    parser = parser_of(
        "box",
        "Area, second moment, section modulus and mass of a square or rectangular tube.",
        'gaugeblock box "3 x 2 in" --wall ".120 in" --material "1020 DOM" --length "6 ft"',
    )
    parser.add_argument("size", metavar="SIZE", help='its sides, the upright one first: "3 x 2 in", "3 x 2 x 3/16 in"')
    parser.add_argument("--wall", metavar="T", help="wall, where the size has none: .120 in, 3 mm")
    parser.add_argument("--material", metavar="M", help='"1020 DOM", 304: its density')
    parser.add_argument("--length", metavar="L", help="of the piece: 6 ft")
    parser.add_argument("--span", metavar="L", help="between two supports, with what loads it: 1.5 m")
    parser.add_argument("--load", metavar="M", help="what sits in the middle of the span: 200 kg")
    fact = "section modulus (which it is where nothing is asked), mass, second moment, area"
    parser.add_argument("--fact", default="section modulus", metavar="F", help=fact)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import box as answers

    given = {name: getattr(a, name) for name in ("size", "wall", "material", "length", "span", "load", "fact")}
    return print_open(answers.box, _topic("BOX"), given, a)


def arc(argv: list[str]) -> int:
    """``gaugeblock arc``: how much tube a bend takes up."""
    parser = parser_of(
        "arc",
        "How much of a straight tube a bend takes up: its arc at the centre line.",
        'gaugeblock arc --radius "5-1/2 in" --angle "90 deg"',
    )
    parser.add_argument("--radius", required=True, metavar="R", help="of the die, to the centre line: 5-1/2 in")
    parser.add_argument("--angle", required=True, metavar="A", help="that the tube turns: 90 deg")
    parser.add_argument("--legs", metavar="L", help='straights beside the bend, to where it starts: "20 in, 12 in"')
    parser.add_argument("--corner", metavar="L", help='the same, to the corner of the centre lines: "20 in, 12 in"')
    many = "how many equal bends, where no legs say it: 2; the legs of a hoop are three"
    parser.add_argument("--bends", metavar="N", help=many)
    fact = "length (which it is where nothing is asked), setback, or start: where the bend starts"
    parser.add_argument("--fact", default="length", metavar="F", help=fact)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import arc as answers

    given = {name: getattr(a, name) for name in ("radius", "angle", "legs", "corner", "bends", "fact")}
    return print_open(answers.arc, _topic("ARC"), given, a)


def overbend(argv: list[str]) -> int:
    """``gaugeblock overbend``: how far to pull a bend that springs back."""
    parser = parser_of(
        "overbend",
        "How far to pull a bend so that it is right when the tool lets go, by one test bend.",
        'gaugeblock overbend "45 deg" --test "90 deg set, 87 deg got"',
    )
    parser.add_argument("angle", metavar="ANGLE", help="of the finished bend: 45 deg")
    parser.add_argument(
        "--test", required=True, metavar="BEND", help='one bend of the same stock: "90 deg set, 87 deg got"'
    )
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import overbend as answers

    return print_open(answers.overbend, _topic("OVERBEND"), {"angle": a.angle, "test": a.test}, a)


def sheet(argv: list[str]) -> int:
    """``gaugeblock sheet``: what a piece of sheet weighs."""
    parser = parser_of(
        "sheet",
        "What a piece of sheet weighs.",
        'gaugeblock sheet --size "4 ft x 8 ft" --thickness "14 ga"',
    )
    parser.add_argument("--size", required=True, metavar="S", help="its two sides: 4 ft x 8 ft")
    parser.add_argument("--thickness", required=True, metavar="T", help="0.075 in, or a gauge number: 14 ga")
    parser.add_argument("--material", default="mild steel", metavar="M", help="mild steel (default), 304, aluminium")
    parser.add_argument("--system", metavar="G", help="of the gauge number, where it is not the metal's usual one")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import sheet_metal as answers

    given = {name: getattr(a, name) for name in ("size", "thickness", "material", "system")}
    return print_open(answers.sheet, _topic("SHEET"), given, a)


def flare(argv: list[str]) -> int:
    """``gaugeblock flare``: what a flare asks of the tube and the nut."""
    parser = parser_of(
        "flare",
        "What a flare asks: wall limit, diameter, nut thread; whether wall and port thread fit.",
        'gaugeblock flare double --od "3/16 in" --wall ".028 in" --standard "inverted flare" --port 3/8-24',
    )
    parser.add_argument("flare", nargs="?", metavar="KIND", help="double, bubble, AN, ORB, '45 single'; or the size")
    parser.add_argument("--od", metavar="D", help="outside diameter of the tube: 3/16 in")
    parser.add_argument("--wall", metavar="T", help="wall to check: .028 in")
    parser.add_argument("--standard", metavar="S", help="of the nut: 'inverted flare', 'SAE J514', AN924 ...")
    parser.add_argument("--port", metavar="THREAD", help="thread of the port: 3/8-24, M10x1")
    parser.add_argument(
        "--fact", default="wall", metavar="F", help="wall (which it is where nothing is asked), thread, angle"
    )
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import flare as answers

    options = {name: getattr(a, name) for name in ("flare", "od", "wall", "standard", "port", "fact")}
    if a.od is None and a.flare is not None and (a.flare[:1].isdigit() or a.flare[:1] == ".") and "/" in a.flare:
        options |= {"flare": None, "od": a.flare}  # no kind of flare is a fraction
    is_open = options["flare"] is None or (options["od"] is None and a.fact != "angle")
    return print_open(answers.flare, _topic("FLARE"), options, a, is_open=is_open)


def offset(argv: list[str]) -> int:
    """``gaugeblock offset``: how far apart the two bends of an offset are."""
    parser = parser_of(
        "offset",
        "How far apart the two equal bends of an offset are, along the tube; with a die's radius as it is marked.",
        'gaugeblock offset "4 in" --angle "30 deg" --radius "6 in"',
    )
    parser.add_argument("rise", metavar="RISE", help="how far the tube is carried over: 4 in")
    parser.add_argument("--angle", required=True, metavar="A", help="of each of the two bends: 30 deg")
    parser.add_argument("--across", metavar="L", help="how far to the side besides, of a rolling offset: 3 in")
    parser.add_argument("--radius", metavar="R", help="of the die, to the centre line: 6 in")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import offset as answers

    given = {key: getattr(a, key) for key in ("rise", "angle", "across", "radius")}
    return print_open(answers.offset, _topic("OFFSET"), given, a)


def beam(argv: list[str]) -> int:
    """``gaugeblock beam``: what a straight tube bears in the middle of a span."""
    parser = parser_of(
        "beam",
        "What a straight tube bears in the middle between two supports, and when it bends for good.",
        'gaugeblock beam --od "1-1/2 in" --wall ".095 in" --span "30 in" --material "1020 DOM" --load "200 lb" --bump 2'
        ' --share "50 %"',
    )
    parser.add_argument("--od", required=True, metavar="D", help="outside diameter: 1-1/2 in")
    parser.add_argument("--wall", required=True, metavar="T", help='wall: .095 in, "11 BWG"')
    parser.add_argument("--span", required=True, metavar="L", help="between the two supports: 30 in")
    parser.add_argument("--material", metavar="M", help='"1020 DOM", "4130 normalized": its yield strength')
    parser.add_argument("--load", metavar="M", help="what sits in the middle: 500 lb, 200 kg")
    parser.add_argument("--bump", metavar="N", help="how many times its weight it comes to on the road: 2")
    parser.add_argument("--share", metavar="S", help='of the yield strength that is allowed: "50 %%"')
    own = "this tube's own, in place of the tables': 62 ksi"
    parser.add_argument("--yield-strength", "--yield", metavar="S", help=own)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import beam as answers

    names = ("od", "wall", "span", "material", "load", "bump", "share", "yield_strength")
    return print_open(answers.beam, _topic("BEAM"), {name: getattr(a, name) for name in names}, a)


def cope(argv: list[str]) -> int:
    """``gaugeblock cope``: how deep a tube is coped to sit on another."""
    parser = parser_of(
        "cope",
        "How deep the end of a tube is coped to sit on another tube, and the hole saw for it.",
        'gaugeblock cope "1-1/2 in" --onto "1-3/4 in" --angle "60 deg"',
    )
    parser.add_argument("od", metavar="OD", help="of the tube that is coped: 1-1/2 in")
    parser.add_argument("--onto", required=True, metavar="OD", help="of the tube that it sits on: 1-3/4 in")
    parser.add_argument("--angle", default="90 deg", metavar="A", help="between their axes: 90 deg (default)")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import notch as answers

    return print_open(answers.cope, _topic("COPE"), {"od": a.od, "onto": a.onto, "angle": a.angle}, a)


def mitre(argv: list[str]) -> int:
    """``gaugeblock mitre``: how the slices of a bend are sawn."""
    parser = parser_of(
        "mitre",
        "At which angle the slices of a bend are sawn, and how long each is outside and inside.",
        'gaugeblock mitre "90 deg" --slices 5 --ends cut --od "2-1/2 in" --radius "3-3/4 in"',
    )
    parser.add_argument("angle", metavar="A", help="that they turn in all: 90 deg")
    parser.add_argument("--slices", required=True, metavar="N", help="how many pieces: 5")
    parser.add_argument("--ends", metavar="E", help="cut: every piece on both faces; square: the outer two on one")
    parser.add_argument("--od", metavar="D", help="of the tube, with the radius for the lengths of a slice")
    parser.add_argument("--radius", metavar="R", help="of the bend, to its centre line: 3-3/4 in")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.tubes import mitre as answers

    given = {name: getattr(a, name) for name in ("angle", "slices", "ends", "od", "radius")}
    return print_open(answers.mitre, _topic("MITRE"), given, a)
