"""What is asked about a bend that springs back: how far to pull it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Hit, Shaped, Topic
from gaugeblock.errors import GaugeblockError, InputError
from gaugeblock.tubes.keys import phrases, stock
from gaugeblock.tubes.said import DEG, answer_in, is_without_metal
from gaugeblock.tubes.sizes_ask import OD_OF_TUBE
from gaugeblock.tubes.told_apart import ToldApart

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Iterable, Mapping

    from gaugeblock.answer.asking import Reader
    from gaugeblock.tables.load import Refdata


def _pulled(match: re.Match[str]) -> str | None:
    """What a bend was pulled to, and what it came to: ``springs back 3`` is by so much, ``to 87`` is what is left."""
    put, got = float(units.parse_number(match["set"])), float(units.parse_number(match["got"]))
    if got < put / 2:
        got = put - got
    return f"{match['set']} deg set, {got:g} deg got" if 0 < got <= put else None


def _by_so_much(match: re.Match[str]) -> str | None:
    """``springs back 3 on a 90``: set and got."""
    by, put = float(units.parse_number(match["by"])), float(units.parse_number(match["put"]))
    return f"{put:g} deg set, {put - by:g} deg got" if 0 < by < put / 2 else None


_LETS_GO = (
    r"springs?|sprung|sprang|springing|relax(?:es|ed)?|comes?|came|opens?|opened|ends?|ended|measures?|measured|goes"
    r"|went|gives?|gave|drops?|dropped|unwinds?|unwound|settles?|settled|falls?|fell|reads?|is|its|it's|was|got|kept"
    r"|leaves|gets?"
)
# What stands between the pull and what became of it; any other word is read for itself.
_BETWEEN = (
    r"on|in|with|it|this|that|mine|then|and|but|the|a|an|my|bender|machine|die|former|dial|pointer|tube|tubing"
    r"|pipe|piece"
    r"|test|trial|bend|sample|bit|one|first|lever|arm|when|once|after|i|we|let|l[e]ts|l[e]tting|go|goes|off|of"
    r"|up|back"
    r"|release|released|only|just|always|usually|at|which|same"
)
_WANTED_BEND = (
    r"(?:for|to get|get|dead on|want|wants|wanted|need|needs|finish(?:es|ed)?|ends? up|winds? up|land|lands|true|dead"
    r"|final|actual)"
    r"(?: (?:it|to|an?|be|me|at|dead|finish|finished|up|true|dead|actual|real|get|end|with|square|bend|of|come|out"
    r"|the|on"
    r"|at|exactly|bang))*"
)


class Pulled(Shaped):
    """A test bend, told with the degrees by which it opened where these were said."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, and told with what was typed."""
        for hit in super().take(words, at, data):
            back = [word for word in words[at : at + hit.count] if word[0].isdigit() and word not in hit.value.split()]
            yield Hit(hit.count, hit.value, f"{hit.said}, opened by {back[-1]}" if back else hit.said)


def _is_wanted_so(angle: str) -> bool:
    """Whether a tube is bent to that angle, which is no pull beyond one: 90, 22.5, and not 93."""
    return float(units.parse_number(angle.partition(" ")[0])) % _STEP == 0


_STEP = 2.5  # degrees


def _settle_overbend(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """One stock and one die; the test bend is of the angle that is wanted, where no other is said.

    InputError for two metals: the test bend holds for its own.
    """
    metal = values.get("material", "")
    if metal and not is_without_metal(metal, data) and metal.casefold() not in phrases(data):
        try:
            stock(metal, data)
        except GaugeblockError as error:
            do = "bend a test piece of the metal that is to be bent, and say that one alone"
            raise InputError(metal, "material", "a test bend holds for its own metal alone", (), do) from error
    tested = values.get("test", "")
    angle = values.get("angle") or tested.partition(" set")[0]
    if tested and "angle" not in values and not _is_wanted_so(angle):
        why = "a bend was tried, and which one is wanted was not said"
        raise InputError(angle, "angle", why, (), "say it too: `for 45`")
    return {key: value for key, value in (("angle", angle), ("test", tested)) if value}


_TESTED = (
    ToldApart(),
    Shaped(  # set 93 for a 90, and what for 30
        rf"(?:i |we )?(?:set|pull(?:ed)?|went to|go to|bent)(?: (?:it|to|the|dial|at))* (?P<set>{NUMBER}) ?(?:{DEG})?"
        rf" (?:for|gives?(?: me)?|gave(?: me)?|to get)(?: an?| me)* (?P<got>{NUMBER}) ?(?:{DEG})?"
        r"(?=.* (?:for|wants?|needs?|get|make)(?: (?:an?|me|to|it|get))* [0-9])",
        _pulled,
        "test bend {}",
        cue=("set", "pull", "went", "go to", "bent"),
    ),
    Shaped(
        r"(?:springs? ?back|sprang back|(?:comes?|came|kicks?|kicked|goes|went) back|relax(?:es|ed)|open(?:s|ed)"
        r"(?: up)?|los(?:es|t))(?: by| about"
        rf"| roughly)* (?P<by>{NUMBER}) ?(?:{DEG})?(?: (?:on|for|in|at|of|over|from|off))+"
        rf"(?: an?| the)? (?P<put>{NUMBER}) ?(?:{DEG})?(?: bend)?",
        _by_so_much,
        "test bend {}",
        cue=("back", "relax", "open", "los"),
    ),
    Pulled(
        r"(?:(?:when |if )?(?:i |we )?(?:pull(?:ed|ing)?|bent|set|wound|took|take|bending|go|went"
        r"|reads?|cranked"
        r"|dialled|dialed|showed|showing)"
        r"(?: (?:it|this|that|mine|round|over|to|at|past|on|the|die|bender|an?|my|me|tube|pipe|test|bit"
        r"|piece|sample"
        r"|first|one))* )?"
        rf"(?P<set>{NUMBER}) ?(?:{DEG})?(?: (?:{_BETWEEN}))* (?:{_LETS_GO})"
        rf"(?: (?:back|out|up|open|to|at|as|about|only|around|down|be|just|off|by|it|me|roughly|an?"
        rf"|the|of|machine"
        r"|bender|die|tool|former))*"
        rf" (?P<got>{NUMBER}) ?(?:{DEG})?",
        _pulled,
        "test bend {}",
        cue=("pull", "bent", "spr", "relax", "out", "back", "open", "set", "let", "came", "read"),
    ),
)
_WANTED = (
    Shaped(
        rf"over-?(?:bend|shoot)(?: to| for| an?)* (?P<n>{NUMBER}) ?(?:{DEG})?",
        lambda m: f"{m['n']} deg",
        "to get {}",
    ),
    Shaped(
        rf"{_WANTED_BEND} (?P<n>{NUMBER})(?! ?(?:x|by)\b) ?(?:{DEG})?(?: bends?)?",
        lambda m: f"{m['n']} deg",
        "to get {}",
    ),
    Shaped(
        rf"(?P<n>{NUMBER}) ?(?:{DEG})? (?:finished|wanted|true|final)",
        lambda m: f"{m['n']} deg",
        "to get {}",
    ),
)


def overbend_of(slots: Mapping[str, tuple[Reader, ...]]) -> Topic:
    """How far to pull a bend that springs back."""
    return Topic(
        lambda: answer_in("overbend", "overbend"),
        "overbend",
        {
            "test": (
                *slots["test"],
                *_TESTED,
            ),
            "angle": _WANTED,
            "od": OD_OF_TUBE,
            **{key: slots[key] for key in ("wall", "material", "method", "radius")},
        },
        r"(?:how (?:much|far) )?over(?:shoot)?|(?:my |the )?last(?: bend| one)?|scrap|test (?:bit|piece|bend)|dial"
        r"|(?:over-?|over )?(?:bend|bends|bending|pull|pulled"
        r"|pulling)|spring(?:s"
        r"|ing)?(?: ?back)?|sprang|sprung"
        r"|pointer|stop|relax(?:ed|es)?(?: back)?|(?:a )?fair bit|past(?: the)?(?: mark)?|mark|crank|machine"
        r"|stick|trial"
        r"|test (?:bit|piece|bend)|sample|check|kick(?:s|ed)? back|unwinds?|compensat(?:e|ion)|allow(?:ance)?"
        r"|tubes?|tubing|pipe|bender|die|set|go|wind|take|round|finish|relax(?:es)?|let'?s? go|true|how far|bent"
        r"|degrees?|it"
        r"|where (?:do|should) i stop|dial|angle finder|protractor|inclinometer|end up|should i (?:pull|stop|go)"
        r"|(?:the )?next(?: one)?|same answer|ended up|out of",
        needs=("test",),
        joined=("material",),
        asks_for=(
            r"spring\w*|sprang|sprung|relax\w*|lets? (?:it )?go|let'?s go|test (?:bit|piece|bend)|over-?bend|overbent"
            r"|over bend|pull\w*|pointer|opens|comes out"
            r"|came out|(?:set|bent|pull\w*) [0-9.]+(?: deg\w*)?(?: \w+)? got|set [0-9.]+(?: deg\w*)? for"
            r"|angle finder|protractor|inclinometer"
            r"|stop for|bent to|overshoot|settled at|how far do i (?:go|pull|bend)"
        ),
        is_named=True,
        settle=_settle_overbend,
        unmoved="metal finish state form standard service quality",
    )
