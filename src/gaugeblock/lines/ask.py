"""What is asked about a line, a hose, a fluid or a fuel in the heat, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Named, Shaped, Topic, always, amount, words_of
from gaugeblock.answer.stating import known
from gaugeblock.answer.unpublished import maker_of, named_by
from gaugeblock.errors import InputError
from gaugeblock.lines.age import DRY, Moist, NewUnlessOld, Old
from gaugeblock.lines.bears_ask import FACTS
from gaugeblock.lines.brakes.ask import TOPICS as BRAKES
from gaugeblock.lines.clutch.ask import CLUTCH
from gaugeblock.lines.cooling_ask import ANTIFREEZE, COOLANT
from gaugeblock.lines.fuel.ask import TOPICS as FUELS
from gaugeblock.lines.held_ask import CLIPS, GROWTH
from gaugeblock.lines.spoken import INSIDE, ON_IT, SIZE, OnIt, Unscaled, items, ruined_inside
from gaugeblock.warmth.item import table_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_NEW = (
    r"(?:brand )?(?:new|fresh|dry|unopened)(?: (?:fr[o]m|out of) (?:an?|the) (?:sealed |new"
    r" )?(?:can|bottle))?|(?:fr[o]m|out of) (?:an?|the) (?:sealed |new )?(?:can|bottle)"
)


def _j30(match: re.Match[str]) -> str:
    return f"SAE J30 R{match['n'].upper().replace('-', ' ')}"


def _dot(match: re.Match[str]) -> str:
    number = {"51": "5.1"}.get(match["n"], match["n"])
    return f"DOT {number}"


_MOST_GAP = 1000  # mm
_BY = "beside|past|near|next to|by|from|off|close to|away from|against|alongside|along|under|over|touching"


_HOT = r"exhausts?|headers?|manifolds?|down ?pipes?|turbo(?:charger)?|mufflers?|silencers?|tail ?pipes?|exhaust pipes?"
# What somebody knows of a line by itself.
_OWN = frozenset(("limit", "margin"))
# What says nothing of a line that passes nothing hot.
_OF_ESTIMATE = ("film", "gap", "od", "hot_od")
_LIMIT = r"(?:its |own |the |a |with |of )*(?:temp(?:erature)? |heat |maker'?s? )*limit(?: of| is| at)?"
_MAKER = (
    r"(?:if )?(?:the |its )?(?:makers?|manufacturers?|sheet|label)(?:'s)?(?:"
    r" (?:says?|rates?|gives?|rated|it|to|at|for|limit|is))+"
)


_O_RING, _STORED = "O-ring", "storage"
_SPELLS = ("continuous", "intermittent")


def _as_known(item: str, options: dict[str, str], data: Refdata) -> dict[str, str]:
    """The options without the size of a line that passes nothing hot, and without how long it is hot where that is not
    on record. InputError for an O-ring in use: only how it is stored is on record.
    """
    is_judged = "beside" not in options and not {"gap", "hot_od", "film", "fact", "pressure"} & options.keys()
    if item == _O_RING and options.get("state") != _STORED and "at" in options:
        why = "what an O-ring stands in use hangs on its rubber, and that was not said or is not known"
        raise InputError(item, "item", why, (), "name the rubber: nitrile, fluorocarbon rubber, silicone, EPDM")
    if "state" in options and options["state"] in _SPELLS:
        states = {r["state"] for r in data.table("lines/materials").rows if r["item"] == item}
        if states and states <= {"not stated", "any"}:
            options = {key: value for key, value in options.items() if key != "state"}
    return {key: value for key, value in options.items() if not (key == "od" and is_judged)}


def heat(item: str, *, data: Refdata, **options: str) -> Sheet:
    """What an item stands, or by its own limit; beside a hot part, how hot it gets there; who has it of what no table
    has, wherever it is.
    """
    inside = options.pop("inside", "")
    unscaled = options.pop("unscaled", "")
    if options.pop("boils", "") and table_of(item, data) == "lines/materials":
        why = "it is no fluid, and boils at nothing"
        raise InputError(item, "item", why, (), f"ask what it stands: `{item} heat`")
    ruined = ruined_inside(item, inside, data) if inside else None
    if ruined is not None:
        return ruined
    if unscaled:
        raise InputError(unscaled, "at", "it has no scale", (), f"say {unscaled} degC or {unscaled} degF")
    options = _as_known(item, options, data)
    if maker_of(item, "lines", "item", data)[0]:
        options = {key: value for key, value in options.items() if key in ("fact", "pressure")}
    hot_only = [] if "beside" in options else [k for k in _OF_ESTIMATE if k in options]
    if hot_only:
        why = "it is of an estimate beside a hot part, and no hot part was named"
        raise InputError(options[hot_only[0]], "question", why, (), "name the hot part too, or leave it out")
    if "at" in options and _OWN.isdisjoint(options) and not any(k in options for k in _OF_ESTIMATE if k != "od"):
        options.pop("beside", None)  # how hot it gets there is said
        options.pop("od", None)
    if "beside" in options or not _OWN.isdisjoint(options):
        from gaugeblock.lines.beside import beside

        if "limit" in options:
            of_line = table_of(item, data) == "lines/materials"
            options["line_limit" if of_line else "fluid_limit"] = options.pop("limit")
        if "beside" not in options and "at" in options:
            options["temperature"] = options.pop("at")
        if "at" in options:
            why = "a temperature to judge and an estimate beside a hot part are two questions"
            raise InputError(options["at"], "question", why, (), "ask one at a time")
        hot, klass, state = options.pop("beside", None), options.pop("klass", None), options.pop("state", None)
        return beside(item, hot, klass=klass, state=state, given=options, data=data)
    from gaugeblock.lines.heat import heat as by_itself

    if options.get("state") in _AGES and table_of(item, data) == "lines/materials":  # of a fluid alone
        from gaugeblock.answer.caution import Caution

        old = options.pop("state") == _AGES[0]
        sheet = by_itself(item, data=data, **options)
        text = "That is of a sound one: renew a line that is old, brown, hard or cracked, whatever its limit."
        return sheet.replace(cautions=(Caution(text, "injury"), *sheet.cautions)) if old else sheet
    return by_itself(item, data=data, **options)


_FLUID, _AGES = "brake fluid", ("wet", "dry")


def _open_heat(values: dict[str, str], data: Refdata) -> Open | None:
    """Of brake fluid whose class was not said: each class, new or old as it was said."""
    if values["item"] != _FLUID or values.get("state", _AGES[0]) not in _AGES or "beside" in values:
        return None
    rows = data.table("lines/fluids").rows
    classes = sorted({r["item"] for r in rows if r["item"].startswith("DOT ") and r["state"] in _AGES})
    if "state" in values:
        return ("item",), [{"item": item} for item in classes]
    return ("item", "state"), [{"item": item, "state": state} for item in classes for state in _AGES]


def _is_of_metal(temperature: str) -> bool:
    """Whether only a hot part is so hot, and no line beside it."""
    if not temperature:
        return False
    from gaugeblock import units

    number, unit = temperature.split()
    return units.to_base(float(units.parse_number(number)), unit) > _MOST_OF_A_LINE


_HOT_PART = "exhaust pipe"  # where no table has the part that is hot
_MOST_OF_A_LINE = 573  # K, 300 degC


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """How hot it gets in a place is said, or asked; beside a part that no table has, no estimate is made of a gap. A
    temperature that no line lives at is the hot part's.
    """
    if not {"gap", "place", "hot_od", "beside"}.isdisjoint(values) and _is_of_metal(values.get("at", "")):
        values = {"hot_temperature": values["at"], **{key: value for key, value in values.items() if key != "at"}}
    if "hot_temperature" in values and not {"place", "beside", "gap"}.isdisjoint(values):
        values = {"beside": _HOT_PART, **{key: value for key, value in values.items() if key != "place"}}
    dropped = ("place", *(_OF_ESTIMATE if "place" in values and "beside" not in values else ()))
    return {key: value for key, value in values.items() if key not in dropped}


HEAT = Topic(
    lambda: heat,
    "heat",
    {
        "item": (
            Shaped(
                r"(?:(?:brake )?fluid (?:is |in it is |in there is |boil(?:s|ing)?(?: points?| pts?| temps?)? "
                r"|temp\w* |limits? |max\w*"
                r" )?(?:of |for )?)?"
                r"dot[- ]?(?P<n>3|4|5\.1|51|5)(?: (?:brake )?fluid)?",
                _dot,
            ),
            Shaped(r"brake fluid (?P<n>3|4|5\.1|5)", _dot),
            Shaped(r"(?:sae )?j?30[- ]?r ?(?P<n>[0-9]+(?:[- ]?t[12])?)(?: (?:fuel )?(?:hose|line))?", _j30),
            Shaped(
                r"(?:fuel )?(?:hose|line) r ?(?P<n>6|7|8|9|10|14)|r ?(?P<m>6|7|8|9|10|14)(?= (?:rated )?(?:fuel"
                r" )?(?:hose|line))",
                lambda m: f"SAE J30 R{m['n'] or m['m']}",
                cue=(" r", "r6", "r7", "r8", "r9", "r10", "r14"),
            ),
            Named(lambda data: named_by("lines", "item", data)),
            Named(
                items,
                tail=(
                    r"(?:brake |fuel |coolant |oil )?(?:lines?|hoses?|pipes?)|tubes?|tubing|boots?|seals?"
                    r"|o-?rings?|grommets?"
                    r"|insulat(?:ion|ed)"
                ),
            ),
        ),
        "klass": (Named(words_of("lines", "class", "lines/materials"), doubt=1),),
        **FACTS,
        "inside": INSIDE,
        "unscaled": (Unscaled(),),
        "boils": (
            Shaped(
                r"(?:boiling|boil) (?:points?|pts?|temps?|temperatures?)",
                always("boils"),
                "where it boils",
                cue=("boil",),
            ),
        ),
        "state": (
            Old(),
            NewUnlessOld(
                Named(words_of("lines", "state", "lines/fluids", "lines/fuels", "lines/materials", bare=False))
            ),
            Shaped(r"50[ /-]50(?: (?:mix|with water|water))?|half and half", always("50 %"), "50 %"),
            NewUnlessOld(Shaped(_NEW, always(DRY), "new (dry)", doubt=1)),
            Moist(),
            Shaped(r"(?:all day|for long|all the time|steady|constant(?:ly)?)", always("continuous")),
            Shaped(
                r"(?:for )?(?:a )?(?:short (?:while|time)|moment|minute|few minutes|briefly|short)",
                always("intermittent"),
            ),
        ),
        "at": (
            amount(
                "temperature",
                before=(
                    r"(?:at|to|of|in|hits?|sees?|reach(?:es)?|gets? to|gets?|it gets to|it gets|gets? up to|up to"
                    r"|goes to|around|about|next"
                    r" to)(?: about| around)?"
                ),
                say="at {}",
            ),
            amount("temperature", say="at {}"),
        ),
        "limit": (
            amount("temperature", before=_LIMIT, say="limit {}", cue=("limit",)),
            amount("temperature", before=_MAKER, say="limit {} by its maker", cue=("maker", "manu", "sheet", "label")),
            amount("temperature", before=r"(?:rated|good)(?: to| for| up to)", say="limit {}", doubt=3),
        ),
        "margin": (
            amount("temperature", before="(?:with |an? )*margin(?: of| is)?", say="margin {}", cue=("margin",)),
            amount("temperature", after="(?:of )?margin", say="margin {}", cue=("margin",)),
            amount(
                "temperature",
                before="(?:keep|stay)(?: it)?",
                after="(?:under|below)(?: it| its limit)?",
                say="margin {}",
            ),
        ),
        "film": known(
            "film coefficient", "film(?: coefficient)?|heat transfer coefficient", "film coefficient {}", cue=("film",)
        ),
        "beside": (
            Shaped(
                rf"(?:{_BY} )?(?:the |an? |my )?(?:exhaust )?(?:headers?|exhaust headers?)(?: (?:pipe|tube)s?)?",
                always("exhaust header"),
                "beside an exhaust header",
                cue=("header",),
            ),
            Named(
                words_of("lines", "part", "lines/heat_sources"), lead=rf"(?:{_BY})(?: an?| the| my)?", say="beside {}"
            ),
        ),
        "place": (
            Shaped(
                rf"(?:{_BY}) (?:the |an? |my )?(?:hot |exhaust |turbo )*(?:manifolds?|down ?pipes?|exhausts?|turbo"
                rf"|engine"
                r"|silencer|muffler|tail ?pipe)(?: pipe| system)?(?=.* [0-9])",
                always("there"),
                "near what is hot",
                doubt=5,  # without a temperature the gap is asked
            ),
            Shaped(
                rf"(?:{_BY}|of) (?:the |an? |my )?(?:hot |exhaust )*(?:turbo(?:charger)?|turbine|manifolds?"
                rf"|down ?pipes?|silencer"
                r"|muffler)(?: (?:housing|turbine))*",
                always("there"),
                "near what is hot",
                doubt=40,
                cue=("turb", "manifold", "pipe", "silencer", "muffler"),
            ),
        ),
        "hot_temperature": (
            amount(
                "temperature",
                before=rf"(?:{_HOT})(?: (?:pipe|skin|surface|wall|tube|itself|which|that|is|was|at|runs?|reads?"
                rf"|measured|gets"
                r"|sits|of|about|around|i|it|to))*",
                after="(?:on (?:it|the pipe|the skin|the surface))?",
                say="hot part {}",
                cue=("exhaust", "header", "manifold", "pipe", "turbo", "muffler", "silencer"),
            ),
            OnIt(ON_IT, _HOT),
            amount(
                "temperature",
                after=rf"(?:on the (?:pipe|skin|surface|{_HOT})|(?:hot )?(?:{_HOT}))(?: skin| surface| pipe)?",
                say="hot part {}",
            ),
        ),
        "gap": (
            amount("length", followed=_BY, say="{} away"),
            amount("length", before="within", followed="of|from", say="{} away", cue=("within",)),
            amount("length", after="away", say="{} away"),
            amount("length", say="{} away", doubt=4, most=_MOST_GAP),
        ),
        "hot_od": (
            amount(
                "length", followed="(?:exhaust )?(?:headers?|manifold|downpipe|exhaust)", bare="in", say="{} hot part"
            ),
            amount(
                "length",
                before=rf"(?:{_BY}) (?:an?|the|my)",
                after=rf"(?:inch )?(?:exhaust (?:pipe|tube)|header (?:pipe|tube)|primary(?: tube)?|{_HOT})",
                bare="in",
                say="by a hot part of {}",
            ),
            amount(
                "length",
                before=r"(?:exhaust |down ?)?pipe(?: (?:is|of|measures|size))*(?: an?)?",
                bare="in",
                say="{} hot part",
                most=200,
                doubt=1,
                cue=("pipe",),
            ),
        ),
        "od": SIZE,
    },
    r"(?:when does (?:it )?|does (?:it )?|will (?:it )?)?(?:boil(?:s|ing)? over|boils?|boil(?:ing)?(?: points?| pts?|"
    r" temps?)?|boil"
    r" over)|(?:boiling )?(?:points?|pts?)|(?:max(?:imum)?|top|highest)|min(?:imum)?(?= (?:dry|wet|boil))|"
    r"temp(?:erature)?s?(?: limits?| ratings?| range)?|how hot|too hot|hot|heat(?: limit| rating|"
    r" resist\w*)?|runs?|runn?ing|routed|stands?(?: up)?|limits?|survives?|melts?|rated|"
    r"ratings?|how (?:much|far) (?:lower|less|higher|worse|better)"
    r"|(?:regular|ordinary|normal|plain|standard|stock|usual|bog standard)(?= (?:old )?(?:black )?(?:rubber|epdm"
    r"|silicone"
    r"|nitrile|nylon|steel))|last|there"
    r"|(?:new|fresh)(?: fluid)? (?:and|or|versus|vs|against) (?:when )?(?:old|used)(?: fluid)?"
    r"|(?:old|used)(?: fluid)? (?:and|or|versus|vs|against) (?:when )?(?:new|fresh)"
    r"(?: fluid)?|thermal(?: limit)?|glass(?: fib(?:re|er))?|safe|okay|handle|before|go(?:es)?"
    r" bad|bad|cooks?|fail(?:s|ure)?|live|good for|cope|degrees|burn|(?:how many )?degrees (?:apart|between)"
    r"|apart|plumb"
    r"|turbo|drains?|(?:stands? |takes? |lives? )?(?:hotter|more heat)"
    r"|(?:will|would) take|hoses?|(?:brake |fuel |steel"
    r" )?lines?|degrees|(?:(?:pipe|metal|outer|the) )?skin|nothing (?:in )?between(?: (?:it|them))?|on the (?:left"
    r"|right)"
    r"|after (?:a )?(?:hard|long) (?:pull|run|drive|climb)"
    r"|(?:would |will |could |has |have |did )?(?:it |that |the fluid |they )?(?:have )?boil(?:ed)?"
    r"|(?:my |the |an? )?(?:heat|temp(?:erature)?|infra ?-?red|ir|laser|non[- ]contact)? ?(?:gun|thermometer|probe)"
    r"(?: (?:says?|said|reads?|shows?|showed|measured|on|it|at|of))*|(?:reads?|shows?|measured|measures|saw)"
    r"|(?:on )?the (?:outside|surface)(?: of (?:it|the (?:hose|line|pipe)))?"
    r"|(?:with |when )?(?:the )?engine (?:is )?(?:hot|running|warm)|(?:down "
    r"|along )?(?:the )?(?:side of )?the block(?: side)?"
    r"|(?:keeps? )?(?:cooking|melting(?! (?:point|temp))|burning)(?: (?:the|my|his|its|our))?|(?:race"
    r"|track) car|soft pedal"
    r"|(?:the )?least (?:it|that)|any good|alright|all right|pass(?:es|ing)"
    r"|(?:an? )?(?:coil|length|roll|piece|bit|offcut) of|(?:on an? )?hot day"
    r"|towing|(?:just )?(?:ordinary|plain|normal|standard|usual) (?:black )?rubber"
    r"|(?:should|do|can|would) (?:it be|i use|i fit|i run) instead"
    r"|(?:and |or )?what (?:rubber|hose|kind of hose|else)(?= (?:should|do|can|would))"
    r"|fluid(?= (?:gets|goes|saw|is|was|got|runs|hits|reached|at))",
    needs=("item",),
    opens=_open_heat,
    settle=_settle,
    columns={"beside": ("lines/heat_sources", "part")},
)


TOPICS = (HEAT, COOLANT, ANTIFREEZE, CLIPS, GROWTH, CLUTCH, *BRAKES, *FUELS)
