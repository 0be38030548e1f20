"""What is asked of a hand brake, and of the length of a brake hose, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount
from gaugeblock.lines.told import Told

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_GRAVITY = 9.80665  # m/s2
RATIO = rf"(?P<n>{NUMBER}) ?(?:to|:) ?(?:1|one)"


def pounds(match: re.Match[str]) -> str:
    """A force in pounds."""
    return f"{match['n']} lbf"


def kilos(match: re.Match[str]) -> str | None:
    """The weight of so many kilograms."""
    try:
        return f"{float(match['n']) * _GRAVITY:.0f} N"
    except ValueError:  # 1 1/2
        return None


def _hand() -> Callable[..., Sheet]:
    from gaugeblock.lines.brakes.hand import handbrake

    return handbrake


def _hose() -> Callable[..., Sheet]:
    from gaugeblock.lines.brakes.hose import brake_hose

    return brake_hose


def _slope(match: re.Match[str]) -> str:
    return f"1 in {match['n']}" if match["n"] else f"{match['p']} %"


_PULL = (
    r"(?: (?:of )?(?:pull|hand|by hand|(?:on|at) (?:it|the (?:lever|grip|handle|end(?: of (?:it|the lever))?))"
    r"|of (?:pull|effort|hand)))*"
)
_EQUALISER = r"(?:equali[sz](?:er|or|ing bar)|compensator|yoke|balance bar|whiffletree)"
_SIDE = r"(?:rear|back)? ?(?:cables?|sides?|drums?|wheels?|brakes?|rears?|ends?)"
HAND = Topic(
    _hand,
    "hand brake",
    {
        "force": (
            Shaped(rf"(?:pull )?(?P<n>{NUMBER}) ?(?:lbs?|lbf|pounds?){_PULL}", pounds, "{} by hand"),
            Shaped(rf"(?P<n>{NUMBER}) ?(?:n|newtons?){_PULL}", lambda m: f"{m['n']} N", "{} by hand"),
            Told(rf"(?P<n>{NUMBER}) ?(?:kg|kgs|kgf|kilos?){_PULL}", kilos, "{} by hand", cue=("kg", "kilo")),
        ),
        "ratio": (
            Shaped(rf"{RATIO}(?: lever(?: ratio)?)?", lambda m: m["n"], "lever {} to 1"),
            Shaped(
                r"(?:lever )?(?:ratio|leverage)(?: (?:of|is|about))* (?P<n>[0-9]+(?:\.[0-9]+)?)(?: ?(?:to"
                r"|:) ?(?:1|one))?"
                r"(?! ?(?:mm|cm|in|inch(?:es)?|kg|kilos?|n|newtons?|lbs?|pounds?)\b)",
                lambda m: m["n"],
                "lever {} to 1",
                cue=("ratio", "leverage"),
            ),
        ),
        "cables": (
            Shaped(r"(?P<n>[2-4]|two) cables?", lambda m: "2" if m["n"] == "two" else m["n"], "{} cables"),
            Shaped(r"(?:1|one|single) cable", always("1"), "{} cable"),
            Told(
                rf"(?:an? |one |1 )?cable (?:per|for each|to each|for every) {_SIDE}",
                always("2"),
                "2 cables",
                cue=("cable",),
            ),
            Told(  # one to the equaliser, and behind it one to each side
                rf"(?:(?:a )?(?:single|one|1|front) cable (?:to|into|with|and|on) (?:an? |the )?{_EQUALISER}"
                rf"|(?:with |to |and |an? |the )*{_EQUALISER})(?: (?:and|then|with|to|from there|out|cables?|one"
                rf"|1|two|2|each"
                rf"|both|each {_SIDE}|{_SIDE}))*",
                always("2"),
                "2 cables",
                cue=("quali", "compens", "yoke", "balance bar", "whiffle"),
            ),
            Shaped(
                rf"(?:in |on |at |to |of )?(?:each|either|both)(?: of the)? {_SIDE}",
                always("2"),
                "2 cables",
                cue=("each", "either", "both"),
            ),
        ),
        "travel": (amount("length", after="(?:of )?(?:cable )?travel", say="cable travel {}"),),
        "slope": (
            Shaped(
                r"(?:on |of |up |down |at )?(?:an? |the )?(?:(?:hill|slope|grade|gradient|incline) of )?(?:1|one) in"
                r" (?P<n>[0-9]{1,2})(?: (?:hill|slope|grade|gradient|incline))?(?P<p>)",
                _slope,
                "on a slope of {}",
                cue=(" in ",),
            ),
            Shaped(
                r"(?:on |of |up |down |at )?(?:an? |the )?(?:(?:hill|slope|grade|gradient|incline) of"
                r" )?(?P<p>[0-9]{1,2}) ?"
                r"(?:%|percent|per cent)(?: (?:hill|slope|grade|gradient|incline))?(?P<n>)",
                _slope,
                "on a slope of {}",
                cue=("%", "percent", "per cent"),
            ),
        ),
        "weight": (
            amount("mass", before="(?:car|truck|van|it|vehicle|thing|weight|weighing)(?: (?:is|weighs|at|of|about))*"),
            amount("mass", after="(?:car|truck|van|vehicle|ute|trailer)"),
        ),
    },
    r"(?:hand|parking|park)[- ]?brakes?(?: (?:lever|handle)(?! (?:(?:is|of|measures|about|ratio) )*[0-9]))?|lever"
    r"|cables?|pulls?|force|how hard|what|with|holds?|will"
    r"|handle|grip|tension|pulling|rears?|drums?|each|tester|load|(?:in|on) each|at the (?:drums?|rear|back|wheels?)"
    r"|(?:won't|wont|will not|doesn't|doesnt|does not|never) hold(?: (?:on|the|our|my|a|drive|driveway|hill|car|ramp))*"
    r"|(?:which|that) is steep(?: as)?|thats steep(?: as)?"
    r"|(?:adjusted|backed off|set)(?: the| it| them| up| shoes| cable| drums)*(?: (?:once|twice|again))?",
    needs=("force", "ratio"),
    table="brakes",
    asks_for=r"(?:hand|parking|park)[- ]?brakes?|handbrake|cables?",
    unmoved="metal finish standard quality",
)
# A hundred of what nobody said is millimetres: no flexible hose of a brake is so many inches.
_BARE = r"(?P<n>[1-9][0-9]{2})"


def _in_mm(match: re.Match[str]) -> str:
    return f"{match['n']} mm"


_MASSES = ("kg", "kilo", "lb", "pound")


def _tonnes(match: re.Match[str]) -> str:
    return f"{match['n']} tonnes"


SLOPE = Topic(
    _hand,
    "hand brake on a slope",
    {
        "slope": (
            *HAND.slots["slope"],
            Shaped(r"(?:on |at )?(?:1|one) in (?P<n>[0-9]{1,2})(?P<p>)", _slope, cue=(" in ",)),
        ),
        "weight": (
            *HAND.slots["weight"],
            amount(
                "mass", after="(?:of )?(?:car|truck|van|vehicle|ute|trailer|kerb weight|weight)?", say="{}", cue=_MASSES
            ),
            amount("mass", before="(?:kerb |curb |laden )?weight(?: is| of)*", say="{}", cue=("weight",)),
            amount("mass", say="{}", cue=_MASSES),
            Shaped(r"(?P<n>[0-9]*\.?[0-9]+) ?tonnes?", _tonnes, "{}", cue=("tonne",)),
        ),
        "wheel": (
            amount(
                "length", before="(?:tyres?|tires?|wheels?)(?: are| is| of| on)*", after=r"(?:across|dia\w*|tall|high)"
            ),
            amount("length", after="(?:tyres?|tires?|wheels?)", cue=("tyre", "tire", "wheel")),
        ),
    },
    HAND.signals
    + r"|stays?(?: put)?|held|hold(?:s|ing)?|kerb|curb|weight|torque|each(?: rear)? wheel|rear wheels?|wheels?|tyres?"
    r"|tires?|slope|hill|on|needs?|park(?:ed)?",
    needs=("slope",),
    settle=lambda values, _: {key: value for key, value in values.items() if key != "wheel"},
    table="brakes",
    asks_for=r"(?:hand|parking|park)[- ]?brakes?|handbrake",
    is_named=True,
    unmoved="metal finish standard quality",
)
_WAY = r"[0-9./]+(?: ?(?:mm|cm|in|inch|inches))?"
HOSE = Topic(
    _hose,
    "brake hose",
    {
        "hose": (
            amount("length", after="(?:of )?(?:long )?(?:flexible |flexi |flex |brake )*hose|long", say="hose {}"),
            amount("length", before="(?:brake )?hose(?: of| is)?", say="hose {}"),
        ),
        "droop": (
            amount("length", after="(?:at |of )?(?:full )?droop", say="{} at droop"),
            amount("length", before="(?:full )?droop(?: of| is)?", say="{} at droop"),
            Shaped(rf"{_BARE} (?:at |of )?(?:full )?droop", _in_mm, "{} at droop", cue=("droop",)),
        ),
        "lock": (
            amount("length", after="(?:at |of )?(?:full )?lock", say="{} at lock"),
            amount("length", before="(?:full )?lock(?: of| is)?", say="{} at lock"),
            Shaped(rf"{_BARE} (?:at |of )?(?:full )?lock", _in_mm, "{} at lock", cue=("lock",)),
        ),
        "way": (
            Shaped(
                r"(?:(?:the |an? |my )?(?:front |rear |back )?(?:wheels?|axles?|hubs?|suspension|travel|it|arm) )"
                rf"(?:goes|go|moves?|travels?|has|does|gets|of|is|drops?|swings?)(?: about| around)? (?P<n>{_WAY}"
                rf"(?: (?:up|down|total|in total|travel|in all|of (?:wheel )?travel|of droop|of bump|and {_WAY}))*)",
                lambda m: m["n"],
                "the wheel moves {}, which gives no length by itself",
                cue=("wheel", "axle", "hub", "suspension", "travel", "it ", "arm"),
            ),
            Shaped(
                rf"(?P<n>{_WAY} (?:up|of (?:wheel |suspension |axle )?travel|of wheel movement)(?: and {_WAY} down)?)",
                lambda m: m["n"],
                "the wheel moves {}, which gives no length by itself",
                cue=(" up", "travel", "movement"),
            ),
            Shaped(
                rf"(?P<n>{_WAY}) (?:at |in )?(?:ride(?: height)?|(?:full )?bump|rest|static|(?:normal )?height)",
                lambda m: m["n"],
                "{} where nothing is stretched",
                cue=("ride", "bump", "rest", "static", "height"),
            ),
        ),
    },
    r"(?:flexible |flexi |flex |front |rear |back |axle |brake |rubber |braided )*hoses?|flexi|flex|front|rear|axle|how"
    r" long|length|long"
    r"|(?:chassis |body |frame )?brackets?|(?:the |its |from )chassis|(?:cal?liper )?inlets?|cal?lipers?|diffs?|solid"
    r"|live|beam"
    r"|one|fittings?"
    r" enough|is|a|and|at|full|droop|lock|between|fittings|for|make|should|need",
    needs=("droop", "lock"),
    settle=lambda values, _: {key: value for key, value in values.items() if key != "way"},
    joined=("way",),
    table="brakes",
    asks_back=r"(?:what|which) length .*(?:hose|flexi)|length .*flexi|how long .*hose|hose .*how long|hose"
    r" length|length of .*hose|how long .*flexi",
    asks_for=r"(?:brake |flexible |flexi |flex )hose|flexi|droop|lock",
    unmoved="metal finish standard quality",
)
