"""How people say a crow-foot on a torque wrench: how far it sticks out, how long the wrench is, how it is turned."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, always

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

    from gaugeblock.answer.asking import Reader

_CROW = (
    r"(?:an? |the |my )?(?:extension )?crow'?s?[ -]?(?:foot|feet)"
    r"(?: (?:ad[a]pt[eo]r|spanner|attachment|extension|head|end|wrench(?= (?:is|that|of|sticks?|stands?))))?"
)
_UNIT = r"inch(?:es)?|in|\"|mm|cm"
_OUT = (
    r"(?: (?:long|dead|straight|out|in line(?= |$)(?! with)|inline(?! with)|forwards?|ahead|further|past|beyond|proud"
    r"|the drive|the square|the end|the head|front|offset|centre to centre|center to center))*"
)
_STICKS = (
    r"(?: (?:that|which|it|is|it's|its|adds?|sticks?|sticking|stands?|goes|reach(?:es)?|extends?|measures?|of|out|by"
    r"|has"
    r"|about|dead|straight|forwards?|past the (?:drive|square|end)|an?|length|offset))*"
)
_MIDDLE = (
    r"(?:the )?(?:(?:middle|centre|center) of (?:the |my )?)?"
    r"(?:grip|handle|hand|pull|where i (?:hold|pull|grip)(?: it)?)"
)
_DRIVE = r"(?:the )?(?:(?:middle|centre|center) of (?:the )?)?(?:square|drive|head|ratchet|anvil)(?: drive)?"
_SPAN = rf"(?: (?:measured )?(?:from|between) {_DRIVE} (?:to|and) {_MIDDLE}| {_DRIVE} to {_MIDDLE}| to {_MIDDLE})"
_TORQUES = "n ?m|newton|ft|foot|feet|lb|pound|in|inch"
_WRENCH = r"(?:torque )?(?:wrench|handle|clicker)"


def _long(name: str, units: str = _UNIT) -> str:
    """A length with its unit, as the groups ``name`` and ``name`` with a ``u``."""
    return rf"(?P<{name}>{NUMBER})[ -]?(?P<{name}u>{units})"


def _length(match: re.Match[str], name: str) -> str:
    """The length that such groups have."""
    unit = match[f"{name}u"]
    return f"{match[name]} {unit if unit in ('mm', 'cm') else 'ft' if unit[:1] == 'f' else 'in'}"


def _arm(match: re.Match[str]) -> str:
    return _length(match, "a")


def _wrench(match: re.Match[str]) -> str:
    return _length(match, "w")


def _arms(match: re.Match[str]) -> str:
    at = f" at {match['at']} deg" if match["at"] else ""
    return f"{_arm(match)} on {_wrench(match)}{at}"


_A, _W = _long("a"), _long("w", rf"{_UNIT}|(?:ft|foot|feet)(?! ?[-.]?(?:lbs?|lbf|pounds?))")
_ON = (
    rf"{_OUT} (?:on|off|from|with|of|at|end|in line|inline)(?: (?:on|off|from|of|at|the|an?|my|end"
    rf"|with))* {_W}(?: long)?"
    rf"(?: {_WRENCH})?{_SPAN}?(?: at (?P<at>[0-9]+)(?: ?deg(?:rees)?(?= |$)|(?= |$)(?! ?(?:{_TORQUES}))))?"
)
# Both lengths in one breath.
ADAPTER: tuple[Reader, ...] = (
    Shaped(rf"{_CROW}{_STICKS} {_A}{_ON}", _arms, "crow-foot {}", doubt=3, cue=("crow",)),
    Shaped(rf"(?:an? |the )?{_A} (?:long |offset )*{_CROW}{_ON}", _arms, "crow-foot {}", doubt=3, cue=("crow",)),
)
# Each by itself, wherever it stands.
CROW_FOOT_SLOTS: dict[str, tuple[Reader, ...]] = {
    "crow_foot_length": (
        Shaped(rf"{_CROW}{_STICKS} {_A}{_OUT}", _arm, "crow-foot {}", cue=("crow",)),
        Shaped(rf"(?:an? |the )?{_A} (?:long |offset )*{_CROW}", _arm, "crow-foot {}", cue=("crow",)),
        Shaped(
            rf"(?:it |that |which )?(?:sticks?|sticking|stands?|reach(?:es)?|extends?|adds?"
            rf"|offset){_STICKS} {_A}{_OUT}",
            _arm,
            "crow-foot {}",
            cue=("stick", "stand", "reach", "exten", "add", "offset"),
        ),
        Shaped(rf"{_A}(?= on (?:an? |the |my )?[0-9])", _arm, "crow-foot {}", doubt=1, cue=(" on ",)),
        Shaped(rf"{_A} (?:of )?(?:offset|longer|extra){_OUT}", _arm, "crow-foot {}", cue=("offset", "longer", "extra")),
    ),
    "wrench_length": (
        Shaped(
            rf"(?:(?:on|off|from|with|of|in line with|inline with|using|got|have) )*(?:(?:an?|the|my) )?{_W} (?:long )?"
            rf"{_WRENCH}{_SPAN}?",
            _wrench,
            "wrench {}",
            cue=("wrench", "handle", "clicker"),
        ),
        Shaped(
            rf"(?:(?:an?|the|my) )?{_WRENCH}(?:'s)?(?: (?:arm|length|long|reach|that|which|is|it's|of|measures?|about"
            rf"|effective|from|{_DRIVE} to {_MIDDLE}))* {_W}(?: long)?{_SPAN}?",
            _wrench,
            "wrench {}",
            cue=("wrench", "handle", "clicker"),
        ),
        Shaped(  # no wrench is so many millimetres, or so many inches
            rf"(?:(?:the|my) )?{_WRENCH}(?:'s)? (?:is|of|length)(?: (?:about|is))? (?P<n>1[0-9]|2[0-9]|3[0-6]"
            rf"|[2-9][0-9]0)"
            rf"(?= |$)(?! ?(?:{_TORQUES}))",
            lambda m: f"{m['n']} {'in' if int(m['n']) < 100 else 'mm'}",
            "wrench {}",
            cue=("wrench", "handle", "clicker"),
        ),
        Shaped(rf"{_W}{_SPAN}", _wrench, "wrench {}", cue=("grip", "handle", "hand", "pull", "hold")),
        Shaped(
            rf"(?:on|off) (?:(?:the )?end of )?(?:an? |the |my )?{_W}(?: long)?",
            _wrench,
            "wrench {}",
            doubt=1,
            cue=("on a", "off a", "on the", "on my", "end of", "on 1", "on 2"),
        ),
    ),
    "turned": (
        Shaped(
            r"(?:(?:at|turned|set|fitted|round|sticking|on|and|but) )*(?P<n>[0-9]{1,3}) ?deg(?:rees)?(?: (?:to|off"
            r"|from|of)"
            r" (?:the |my )?(?:wrench|handle))?",
            lambda m: m["n"],
            "at {} deg",
            cue=("deg",),
        ),
        Shaped(
            rf"(?:turned |set )?at (?P<n>90|60|45|30|0)(?= |$)(?! ?(?:{_TORQUES}))",
            lambda m: m["n"],
            "at {} deg",
            cue=("at 90", "at 60", "at 45", "at 30", "at 0"),
        ),
        Shaped(
            r"(?:(?:at|turned|set|fitted|sticking|is|its|it's) )*(?:an? )?(?:right angles?|square|sideways"
            r"|perpendicular)"
            r"(?: (?:to|off) (?:the |my )?(?:wrench|handle))?",
            always("90"),
            "at {} deg",
            cue=("right angle", "square", "sideways", "perpend"),
        ),
        Shaped(
            r"(?:facing|pointing|turned|pointed|folded|sticking) back(?:w[a]rds?)?(?: (?:towards?|to|at|over|along))?"
            r"(?: (?:the |my )?(?:handle|grip|hand|me|wrench))?"
            r"|back(?:w[a]rds?)? (?:towards?|to|at|over|along) (?:the |my )?(?:handle|grip|hand|me|wrench)",
            always("180"),
            "at {} deg",
            cue=("back",),
        ),
    ),
}
_NUT = r"(?:nut|bolt|fastener|stud|thread)"
CROW_FOOT_SLOTS["outcome"] = (  # the wrench was pulled, and what came of it is asked
    Shaped(
        rf"(?:what|how much)(?: torque)? (?:did|does|do|will|would|has|is|was)(?: (?:the|that|this|each|my))? (?:it"
        rf"|{_NUT})"
        r"(?: (?:really|actually|then|now))* (?:get|got|getting|see|seen|feel|take)(?= |$)(?! set)",
        always("at the nut"),
        cue=("get", "got", "see", "feel", "take"),
    ),
    Shaped(
        rf"(?:what|how much)(?: torque)? (?:is|was|did i (?:really|actually) (?:put|get|have)) (?:on|at) the {_NUT}",
        always("at the nut"),
        cue=(" on the ", " at the "),
    ),
)
CROW_FOOT_SIGNALS = (
    r"after|(?:i |we )?(?:had|set|clicked|pulled)(?: (?:the|my) (?:wrench|clicker))?(?: (?:to|at|on|off))?"
    r"|(?:pointing|sticking|stick(?:s|ing)?|stands?)(?: (?:dead|straight|out))*"
    r"|setting|what|want(?:ed)?|(?:on|at|to) the (?:nut|bolt|fastener)|nut|bolt|wrench|set(?: it)?(?: to)?|get|to"
    r"|straight|dead|(?:in ?line|straight)(?: with)?(?: (?:the|my) (?:wrench|handle))?|out(?: (?:the )?front)?|clicker"
    rf"|reads?|dial|{_CROW}"
)


def settle_crow_foot(values: dict[str, str], _: object) -> dict[str, str]:
    """The two lengths, and how it is turned, as the answer takes them."""
    at = f" at {values['turned']} deg" if "turned" in values else ""
    adapter = f"{values['crow_foot_length']} on {values['wrench_length']}{at}"
    return {"adapter": adapter, "given" if "outcome" in values else "wanted": values["wanted"]}
