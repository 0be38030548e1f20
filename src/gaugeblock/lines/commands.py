"""``heat`` and ``route`` at the command line."""

from __future__ import annotations

from functools import partial

from gaugeblock.answer.command import common_options, parser_of, print_answer, print_open, print_sheet, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from types import SimpleNamespace

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.job.model import Job
    from gaugeblock.tables.load import Refdata

_topic = partial(topic_in, "gaugeblock.lines.ask")


# option of the estimate -> parameter of the sheet, what it is
_BESIDE = {
    "gap": ("gap", "surface to surface: 1 in"),
    "od": ("od", "outside diameter of the line: 3/16 in"),
    "hot-od": ("hot_od", "outside diameter of the hot part: 2 1/4 in"),
    "hot": ("hot_temperature", "temperature of the hot part: 300 to 450 degC"),
    "hot-finish": ("hot_finish", 'its emissivity, or "material: surface": 0.6 to 0.9'),
    "finish": ("finish", "the same of the line: 0.5 to 0.9"),
    "air": ("air", "air beside the line: 30 to 50 degC"),
    "soak-air": ("soak_air", "air after shut-down: 60 to 90 degC"),
    "speed": ("speed", "air across the line while driving: 3 to 10 m/s"),
    "sleeve": ("sleeve", "thickness of a sleeve over the line: 2 mm"),
    "sleeve-finish": ("sleeve_finish", "the sleeve's emissivity"),
    "sleeve-conductivity": ("sleeve_conductivity", "of the sleeve, with flow: 0.05 W/(m*K)"),
    "flow": ("flow_temperature", "temperature of what flows in the line: 30 to 50 degC"),
    "flow-conductivity": ("flow_conductivity", "of that fluid: 0.12 W/(m*K)"),
    "shield": ("shield", "none, flat open, curved open, closed"),
    "shield-finish": ("shield_finish", "the shield's emissivity"),
    "film": ("film", "film coefficient of the air on the line: 8 to 15 W/(m**2*K)"),
    "margin": ("margin", "how far under its limit it is to stay: 20 degC"),
    "line-limit": ("line_limit", "what the line's maker says it stands: 150 degC"),
    "line-limit-from": ("line_limit_from", "his sheet and its page"),
    "fluid-limit": ("fluid_limit", "the least boiling point by the fluid's maker: 500 degF"),
    "fluid-limit-from": ("fluid_limit_from", "his sheet and its page"),
    "measured": ("temperature", "temperature of the line as measured on the car"),
    "by": ("temperature_by", "crayon, paint, thermocouple, infra-red"),
}
# What may be said of a line that passes no hot part.
_ALONE = (
    *("line_limit", "line_limit_from", "fluid_limit", "fluid_limit_from", "margin", "temperature", "temperature_by"),
)


def heat(argv: list[str]) -> int:
    """``gaugeblock heat ITEM``: what it stands; with ``--beside`` how hot it gets beside a hot part."""
    parser = parser_of(
        "heat",
        "What a line material, hose class, fluid or fuel stands, and whether a temperature is within it.",
        'gaugeblock heat "DOT 4" --state wet --at "120 degC"\n'
        '  gaugeblock heat "DOT 4" --beside "exhaust header" --gap "1 in" --od "3/16 in" '
        '--hot-od "2 1/4 in" --hot-finish 0.8 --finish 0.8',
    )
    parser.add_argument("item", nargs="?", metavar="ITEM", help='DOT 4, gasoline, PTFE, "fuel hose", "SAE J30 R9"')
    parser.add_argument("--class", dest="klass", metavar="C", help="the hose class or specification: SAE J2260")
    parser.add_argument("--state", metavar="S", help="wet, dry, continuous, intermittent ...")
    parser.add_argument("--at", metavar="TEMP", help="a temperature to judge: 120 degC, 250 degF")
    parser.add_argument("--fact", metavar="F", help='"working pressure", "burst pressure", ignition, "flash point"')
    parser.add_argument("--pressure", metavar="P", help="in it, against its working pressure: 60 psi")
    parser.add_argument("--beside", metavar="PART", help="the hot part it passes: an estimate; needs the options below")
    for option, (name, about) in _BESIDE.items():
        parser.add_argument(f"--{option}", dest=name, metavar="X", help=about)
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.errors import InputError

    given = {name: getattr(a, name) for name, _ in _BESIDE.values()}
    told = a.fact or a.pressure
    if told and (a.beside is not None or any(value is not None for value in given.values()) or a.at is not None):
        raise InputError(told, "heat", "its heat and another fact of it are two questions", (), "ask one at a time")
    if a.beside is None:
        alone = [f"--{o}" for o, (name, _) in _BESIDE.items() if given[name] is not None and name not in _ALONE]
        if not alone and any(given[name] is not None for name in _ALONE):
            return _by_itself(a, given)
        if alone:
            why = "asks for an estimate beside a hot part"
            raise InputError(", ".join(alone), "heat", why, (), "name the part with --beside")
        from gaugeblock.lines.heat import heat as answer

        options = {name: getattr(a, name) for name in ("item", "klass", "state", "at", "fact", "pressure")}
        return print_open(answer, _topic("HEAT"), options, a, is_open=a.item is None)
    if a.at is not None:
        why = "a temperature to judge and an estimate are two questions"
        raise InputError("--at", "heat", why, (), "ask one; a measured one is --measured")
    return _passing(a, given)


def coolant(argv: list[str]) -> int:
    """``gaugeblock coolant``: where a mixture freezes, and where it boils under its cap."""
    parser = parser_of(
        "coolant",
        "Where a mixture of glycol and water freezes, and where it boils under its cap.",
        'gaugeblock coolant 50/50 --cap "15 psi"',
    )
    parser.add_argument("mix", nargs="?", metavar="MIX", help="glycol to water by volume: 50/50, 40 %%; or water")
    parser.add_argument("--kind", default="coolant, ethylene glycol", metavar="G", help="propylene glycol; or ethylene")
    parser.add_argument("--cap", metavar="P", help="pressure stamped on the radiator cap: 15 psi")
    parser.add_argument("--air", metavar="H", help="height over the sea: 5000 ft; or the barometer: 90 kPa")
    parser.add_argument("--fact", default="boiling", metavar="F", help="boiling (default) or freezing")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.lines.cooling import coolant as answer

    options = {name: getattr(a, name) for name in ("mix", "kind", "cap", "air", "fact")}
    return print_open(answer, _topic("COOLANT"), options, a, is_open=a.mix is None)


def _passing(a: SimpleNamespace, given: dict[str, str | None]) -> int:
    """A line beside a hot part, or by itself, with all that was said of both."""

    def answer(item: str, *, data: Refdata, beside: str | None = None, **options: str | None) -> Sheet:
        from gaugeblock.lines.beside import beside as sheet_of

        klass, state = options.pop("klass", None), options.pop("state", None)
        return sheet_of(item, beside, klass=klass, state=state, given=options, data=data)

    options = {"item": a.item, "beside": a.beside, "klass": a.klass, "state": a.state, **given}
    return print_open(answer, _topic("HEAT"), options, a, is_open=a.item is None)


def _by_itself(a: SimpleNamespace, given: dict[str, str | None]) -> int:
    """A line that passes nothing hot, with what is known of it: its own limit, margin, clips."""
    from gaugeblock.errors import InputError

    if a.at is not None and given["temperature"] is not None:
        why = "a temperature to judge and one that was measured are the same question"
        raise InputError("--at", "heat", why, (), "give one of the two")
    return _passing(a, {**given, "temperature": a.at or given["temperature"]})


def _clips() -> Callable[..., Sheet]:
    from gaugeblock.lines.held import clips as answer

    return answer


def clips(argv: list[str]) -> int:
    """``gaugeblock clips``: how many clips a line takes, and where they stand."""
    parser = parser_of(
        "clips",
        "How many clips a line takes and where they stand, at the spacing that you want or at the published one.",
        'gaugeblock clips --length "9 ft" --spacing "18 in" --service coolant',
    )
    parser.add_argument("--length", required=True, metavar="L", help="of the whole line, both ends in their fittings")
    parser.add_argument("--spacing", metavar="L", help="as you want it: 18 in")
    parser.add_argument("--service", metavar="S", help="brake, fuel feed, fuel return, vapour, coolant, transmission")
    return print_answer(parser, argv, _clips, _topic("CLIPS"))


def _growth() -> Callable[..., Sheet]:
    from gaugeblock.lines.held import growth as answer

    return answer


def growth(argv: list[str]) -> int:
    """``gaugeblock growth``: how much a length between two anchors grows when it is hot."""
    parser = parser_of(
        "growth",
        "How much an exhaust or a line between two anchors grows when it is hot, and the slip that this needs.",
        'gaugeblock growth --length "60 in" --hot "500 degC" --material "carbon steel" --cold-end "10 degC"',
    )
    parser.add_argument("--length", required=True, metavar="L", help="between its anchors: 60 in")
    parser.add_argument("--hot", required=True, metavar="T", help="its temperature: 500 degC, 400 to 500 degC")
    parser.add_argument("--material", metavar="M", help="carbon steel, 304 ...")
    parser.add_argument("--expansion", metavar="A", help="its own coefficient, in place of the tables': 17.3 um/(m*K)")
    parser.add_argument("--cold-end", metavar="T", help="what it grows from: 10 degC; else 20 degC")
    return print_answer(parser, argv, _growth, _topic("GROWTH"))


def route(argv: list[str], read_job: Callable[[str], Job]) -> int:
    """Run ``gaugeblock route``: every line of a job, or the one named; the worst exit code."""
    parser = parser_of(
        "route",
        "The lines of a job past their hot parts: cool enough, far enough, allowed, held, joined.",
        'gaugeblock route build.toml "rear brake line, as re-routed"',
    )
    parser.add_argument("job", metavar="JOB.toml", help="the job file")
    parser.add_argument("name", nargs="?", metavar="NAME", help="one line of it (all when left out)")
    common_options(parser)
    a = parser.parse_args(argv)
    from gaugeblock.errors import LookupMiss
    from gaugeblock.lines.paths import route_of_part
    from gaugeblock.tables.load import refdata
    from gaugeblock.tables.near import nearest

    lines = read_job(a.job).lines
    names = [line.name for line in lines]
    if not lines:
        raise LookupMiss("lines", a.job, "the job has no line", (), "add one under [[lines]]")
    if a.name is not None and a.name not in names:
        raise LookupMiss(a.name, a.job, "no line of this name", nearest(a.name, names) or names, "use one of these")
    data = refdata(a.data_release)
    sheets = [route_of_part(line, data=data) for line in lines if a.name in (None, line.name)]
    if len(sheets) == 1:
        return print_sheet(sheets[0], a.json, a.unit, a.why)
    if not a.json:
        code = 0
        for sheet in sheets:
            code = max(code, print_sheet(sheet, False, a.unit, a.why))
            print()
        return code
    import json

    from gaugeblock.answer.decision import STOP

    print(json.dumps({"sheets": [{"name": s.title, **s.as_dict()} for s in sheets]}, ensure_ascii=False, indent=2))
    return 1 if any(s.decision.kind == STOP for s in sheets) else 0


def antifreeze(argv: list[str]) -> int:
    """``gaugeblock antifreeze``: how much neat antifreeze a cooling system takes."""
    parser = parser_of(
        "antifreeze",
        "How much neat antifreeze a cooling system takes, from empty or topped up.",
        'gaugeblock antifreeze "14 qt" --mix "50 %" --now "30 %"',
    )
    parser.add_argument("system", metavar="VOLUME", help="what the system holds in all: 9 L, 14 qt")
    parser.add_argument("--frost", metavar="T", help="the cold that it must stand: -25 degC")
    parser.add_argument("--mix", metavar="M", help="or the share of glycol that is wanted: 50 %%, 50/50")
    parser.add_argument("--now", metavar="M", help="the share that is in it; without it the system is empty: 30 %%")
    parser.add_argument("--kind", default="coolant, ethylene glycol", metavar="G", help="propylene glycol; or ethylene")
    return print_answer(parser, argv, _antifreeze, _topic("ANTIFREEZE"))


def _antifreeze() -> Callable[..., Sheet]:
    from gaugeblock.lines.antifreeze import antifreeze as answer

    return answer
