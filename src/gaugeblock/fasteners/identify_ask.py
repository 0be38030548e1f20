"""What is asked of a thread that was measured: which it is."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _identify() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.identify import identify

    return identify


_ACROSS = (
    r"(?:over|across|outside|on)(?: (?:the|its|all|of))*(?: (?:threads?|crests?|outside|diameter|od))*"
    r"(?: of (?:the |its )?(?:threads?|bolt|fitting))?|o\.?d\.?|outside(?: diameter)?|diameter|thick|across|wide"
)
_MEASURED = (
    r"(?:it |that |which )?(?:measures?|measured|measuring|mikes?|miked|miking|reads?|is|comes? (?:out|up)"
    r"|(?:the |my )?(?:calipers?|verniers?|mic|micrometer) (?:says?|shows?|gives?|has|reads?)"
    r"|calipers?|verniers?|od|outside(?: diameter)?|diameter|mic|mics|micd)"
    r"(?: (?:out|up|at|to|as|about|just|under|over|roughly|is|of|a))*"
)
# A gauge of pitches that lies in the thread, or nearly.
_FITS = (
    r"(?: (?:sort of|kind of|nearly|almost|just about|just|seems to|about|only|sits?))*"
    r"(?: (?:fits?|fitted|drops? in|goes in|go in|match(?:es)?|lies in|sits in|in))?"
)
_LEAST_MM, _MOST_MM = 3.5, 75.0  # no thread of inches is so thick, and none of millimetres is thinner
_LEAST_TPI, _MOST_TPI, _MOST_PITCH = 8, 80, 3.5
_SERIES = "unf|unc|bspp?|bspt|npt|bsf"  # a Whitworth thread has the pitch of UNC: a rule says what tells them apart
_GUESS = (
    rf"(?:#?[0-9]{{1,2}}-[0-9]{{2}}|m ?[0-9]+(?:x[0-9.]+)?(?: fine| coarse)?|metric(?: [0-9]+)?|imperial"
    rf"|(?:[0-9]+/[0-9]+(?: ?(?:in|inch))? )?(?:{_SERIES})"
    r"|[0-9]+/[0-9]+(?: ?(?:in|inch))?)"
)


def _across(match: re.Match[str]) -> str | None:
    """An outside without its unit: more than 3.5 are millimetres, under 2 inches."""
    number = float(match["n"])
    if _LEAST_MM < number < _MOST_MM:
        return f"{match['n']} mm"
    return f"{match['n']} in" if number < 2 else None


def _gauged(match: re.Match[str]) -> str | None:
    """A pitch gauge by its number: 1.25 is of millimetres, 24 of threads an inch."""
    number = float(match["n"])
    if "." not in match["n"] and _LEAST_TPI <= number <= _MOST_TPI:
        return f"{match['n']} tpi"
    return f"{match['n']} mm" if 0 < number <= _MOST_PITCH else None


def _over(match: re.Match[str]) -> str:
    """The pitch of so many threads over a length."""
    parts = [part.partition("/") for part in match["n"].split()]
    length = sum(float(top) / float(bottom or 1) for top, _, bottom in parts)
    return f"{length / int(match['c']):.4g} mm"


def _settle(values: dict[str, str], _: Refdata) -> dict[str, str]:
    """Without what changes no thread; the inside of a thread is narrower than its name."""
    if "inside" in values:
        why = "it was measured inside a thread, and a thread goes by the outside of its bolt"
        raise InputError(values["diameter"], "diameter", why, (), "measure a bolt that fits, over its threads")
    return {k: v for k, v in values.items() if k not in ("nose", "guess", "origin")}


IDENTIFY = Topic(
    _identify,
    "measured thread",
    {
        "diameter": (
            amount("length", before=_MEASURED, after=_ACROSS),
            amount("length", after=_ACROSS),
            amount("length", before=_MEASURED),
            Shaped(
                rf"(?:{_MEASURED} )?(?P<n>0?\.[0-9]{{3,4}})(?: (?:{_ACROSS}))?", lambda m: f"{m['n']} in", "{}", doubt=1
            ),
            Shaped(rf"(?:{_MEASURED} )?(?P<n>[0-9]+(?:\.[0-9]+)?) (?:{_ACROSS})", _across, doubt=1),
            Shaped(rf"{_MEASURED} (?P<n>[0-9]+\.[0-9]+)", _across, doubt=1),
            amount("length", doubt=2),
        ),
        "inside": (
            Shaped(
                r"(?:(?:in|of|across|on) )?(?:(?:the|an?|its) )?(?:inside(?: diameter)?|internal(?: (?:threads?"
                r"|diameter))?"
                r"|females?(?: threads?)?|bore|i\.?d\.?|(?:tapped|threaded) holes?"
                r"|holes?(?= (?:measures?|is|mikes?|comes)))",
                always("inside"),
                "inside it",
                cue=("inside", "internal", "female", "bore", "id", "i.d", "hole"),
            ),
        ),
        "nose": (  # it changes no thread
            amount("angle", after="(?:nose|seat|flare|cone|taper)(?: on it)?", say="{} nose"),
        ),
        "form": (
            Shaped(
                r"(?:it is |is )?(?:parallel|straight)(?: threads?)?(?: (?:not|no) taper(?:ed)?)?", always("parallel")
            ),
            Shaped(
                r"(?:it |is |it is )?taper(?:s|ed|ing)?(?: threads?)?(?: (?:not|no) (?:parallel|straight))?",
                always("taper"),
            ),
        ),
        "origin": (  # with which the rules of the old threads are shown
            Shaped(r"(?:(?:an? )?old )?british", always("british"), cue=("british",)),
        ),
        "guess": (  # the name that one would give it changes nothing of what was measured
            Shaped(
                rf"(?:is|would|could) (?:it|that|this)(?: be)?(?: (?:an?|the))? (?P<one>{_GUESS})"
                rf"(?: or (?:an? )?(?P<two>{_GUESS}|what|something else))?",
                lambda m: m[0].partition(" it ")[2] or m[0],
                "taken for {}",
                cue=("it", "that", "this"),
            ),
            Shaped(
                rf"(?:an? )?(?P<one>{_GUESS}) or (?:an? )?(?P<two>{_GUESS}|something else|what|not)",
                lambda m: m[0],
                "taken for {}",
            ),
            Shaped(  # what one was sold it as, or told that it is
                r"(?:(?:tried|trying|wanted) (?:to sell|selling)|sold|selling|gave|offered|called|reckons?(?: it'?s)?"
                rf"|(?:said|says|thinks?)(?: it'?s| it is)?)(?: (?:me|us|it))?(?: (?:an?|the))? (?P<one>{_GUESS})",
                lambda m: m["one"],
                "taken for {}",
                cue=("sell", "sold", "gave", "offer", "call", "reckon", "sa", "think"),
            ),
        ),
        "pitch": (
            Shaped(
                r"(?:(?:the |my )?(?:(?:pitch|thread) gauge|leaf|blade)(?: (?:that|which))?"
                r"(?: (?:says|reads|shows|fits|gives|is|matches))+ )?(?:(?:and |it has )?(?:around|about|roughly) )?"
                r"(?P<n>[0-9]{1,2}(?:\.5)?) ?(?:tpi|threads? (?:(?:counted|counting) )?"
                r"(?:per|to the|an|to an|to 1|in an?|in 1|over an?|over 1|each)(?: (?:one )?inch)?"
                rf"|threads?|(?:to the|to an|an|per) inch)(?: inch)?(?: (?:pitch |thread )?gauge{_FITS})?",
                lambda m: f"{m['n']} tpi",
                "{}",
            ),
            Shaped(
                r"(?:pitch|gauge says|pitch gauge says|thread gauge says)(?: (?:is|of|gauge|says|fits|reads|at))*"
                r" (?P<n>[0-9]?\.?[0-9]+)(?P<unit> ?mm)?",
                lambda m: f"{m['n']} mm" if m["unit"] else _gauged(m),
                "pitch {}",
                cue=("pitch", "gauge"),
            ),
            Shaped(  # so many threads over so much; nine gaps lie between the crests of ten
                r"(?P<c>[1-9][0-9]?) (?:threads?|pitches) (?:measures?|spans?|covers?|takes? up|comes? to|are|is|in"
                r"|over"
                rf"|make)(?: up)? (?P<n>{NUMBER}) ?mm(?: (?:across|long|in all))?",
                _over,
                "{}, if that is from a crest to the one as many threads on",
                cue=("thread", "pitches"),
            ),
            Shaped(r"(?P<n>[0-9]?\.?[0-9]+) ?(?:mm )?pitch", lambda m: f"{m['n']} mm", "pitch {}", cue=("pitch",)),
            Shaped(
                r"(?:(?:and |it )*(?:takes|s[u]its|wants|matches|fits|needs) )?(?:the |my |an? )?"
                rf"(?P<n>[0-9]*\.?[0-9]+) ?(?:mm )?(?:(?:pitch |thread )?gauge|leaf|blade){_FITS}",
                _gauged,
                "pitch {}",
                cue=("gauge", "leaf", "blade"),
            ),
        ),
    },
    r"(?:whats?|what's|which)(?: size| kind of| sort of)? (?:pitch(?: am i dealing with| is it| have i got)?|thread"
    r"|bolt|screw|fitting|stud|tap|nut"
    r"|(?:is )?(?:it|this|that))(?: is(?: (?:it|this|that))?)?"
    r"|(?:brake |fuel |oil |clutch |cooler |water |turbo )*(?:pipe |line |hose |tube )?"
    r"(?:nuts?|unions?|fittings?|bolts?|adapt[eo]rs?)"
    r"|(?:(?:oil|water|air|temp|temperature|pressure|brake|reverse|fan) )+(?:switch|sender|sensor)"
    r"|(?:off|from|of|out of)(?: (?:an?|the|my|some))*(?: old)?(?: (?:fuel|oil|water|brake|clutch|hydraulic|carb"
    r"|gear ?box|engine|pump|caliper|cylinder|cooler|tank|filter|tractor|block|head|radiator))+"
    r"|(?:old|rusty|manky|odd|strange|weird)(?= (?:rusty |old |brake |fuel )*(?:bolt|stud|screw|fitting|union|nut"
    r"|plug|thread))"
    r"|threads?|bolts?|studs?|screws?|fittings?|nose|male|identify|flare|tube|hydraulic|suit|die nut|plugs?|ports?"
    r"|what (?:is|tube)|which tube(?: does it suit)?|does it|it|its|mystery|measuring|has|have|got"
    r"|count(?:ed|ing)?|(?:with )?no marks(?: on it)?|(?:oil |water |fuel |pressure )*take-?offs?|and (?:it|they|the"
    r" sides?)(?= taper)"
    r"|(?:the |my )?(?:parts?|hydraulics?|motor) (?:counter|store|shop|place)"
    r"|mikes?(?: at| out at)?|measures?|calipers?|over the threads?|union|fine|coarse|across|pipe(?: threads?)?",
    needs=("diameter", "pitch"),
    settle=_settle,
    asks_for=r"what|whats|what's|which|outside|threads? (?:per|to the|to an?|in an?|over an?) inch"
    r"|identify|mystery|unknown|is (?:it|this|that)|across|over (?:the )?threads?"
    r"|measures?|mikes?|mics?|takes|tpi|leaf",
    is_named=True,
    unmoved="metal finish state form standard service quality",
)
