"""What is asked of an axle that is turned by hand, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always
from gaugeblock.driveline.ask.common import answer_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

_SHAFT = (
    r"(?:the )?(?:prop(?:eller)?[- ]?shaft|prop|drive ?shaft|tail ?shaft|pinion(?: flange)?|(?:companion )?flange|yoke"
    r"|shaft|input)"
)
_WENT = (
    r"(?:(?:goes|went|going|turns|turned|spins|spun|rotates?d?|does|did|came|comes|gets|got|made|makes|moved)"
    r"(?: (?:round|around|over))?)"
)
# How near a turn was seen says nothing of the count.
_ABOUT = r"(?:(?:about|exactly|just|nearly|roughly|round|around|near(?: enough| as)?|almost|only|maybe|like|say) )*"
_TURNS = r"(?:times?|turns?|revs?|revolutions?|rounds?|rotations?)"
_OF_A_WHEEL = r"(?:the |a |an |one |jacked |jacked up |back |rear |other |free |lifted )*(?:wheels?|tyres?|tires?)"
_N = {"once": "1", "one": "1", "a": "1", "two": "2", "twice": "2", "ten": "10"}
_WHEEL = "wheel|tyre|tire"
_UP = r"jacked(?: up)?|lifted(?: up)?|up in the air|up|raised|off the (?:floor|ground|deck)|in the air"
_DOWN = r"(?:still |down )?on (?:the )?(?:floor|ground|deck)|held|chocked|still|down"
_ONE = r"(?:one|1) (?:(?:back|rear) )?"
_COUNT = r"(?P<n>one|once|two|twice|ten|[0-9]{1,2})"


def _number(match: re.Match[str]) -> str:
    said = match["n"] or match.groupdict()["m"]
    return _N.get(said, said)


TURNS = Topic(
    lambda: answer_of("gears.turns", "turns"),
    "axle ratio by turning it",
    {
        "shaft": (
            Shaped(
                rf"{_SHAFT} {_WENT} {_ABOUT}(?P<n>{NUMBER})(?: {_TURNS})?",
                _number,
                "{} of the shaft",
                cue=("prop", "shaft", "pinion", "yoke", "flange"),
            ),
            Shaped(
                rf"{_SHAFT} {_ABOUT}(?P<n>[0-9]+\.[0-9]+)(?= (?:one|1|both|other|with|held|locked|spool)\b|$)",
                _number,
                "{} of the shaft",
                doubt=1,
                cue=("prop", "shaft", "pinion", "yoke", "flange"),
            ),
            Shaped(
                rf"(?P<n>{NUMBER}) {_TURNS} (?:of|on|at) {_SHAFT}",
                _number,
                "{} of the shaft",
                cue=("prop", "shaft", "pinion", "yoke", "flange"),
            ),
            Shaped(
                rf"{_SHAFT} {_ABOUT}(?P<n>{NUMBER}) {_TURNS}",
                _number,
                "{} of the shaft",
                cue=("prop", "shaft", "pinion", "yoke", "flange"),
            ),
            Shaped(
                rf"(?P<n>{NUMBER}) {_SHAFT} {_TURNS}",
                _number,
                "{} of the shaft",
                cue=("prop", "shaft", "pinion", "yoke", "flange"),
            ),
            Shaped(
                rf"(?P<n>{NUMBER})(?: {_TURNS})? (?:of|on|at) {_SHAFT}|(?:turned|spun|turning)"
                rf" {_SHAFT} {_ABOUT}(?P<m>{NUMBER})"
                rf" {_TURNS}",
                _number,
                "{} of the shaft",
                cue=("prop", "shaft", "pinion", "yoke", "flange"),
            ),
        ),
        "wheel": (
            Shaped(
                rf"(?:(?:i )?(?:turn(?:ed|ing)?|spun|spin|rotated?|rolled) )?{_OF_A_WHEEL}"
                rf"(?: (?:went|goes|turned|turns|round|around|exactly|is|was|spun|by hand))* {_COUNT}"
                rf"(?: (?:full|complete))?(?: {_TURNS})?",
                _number,
                "{} of the wheel",
                cue=("wheel", "tyre", "tire"),
            ),
            Shaped(
                r"(?:per|(?:for|to) (?:each|every|one|1)) (?:wheel|tyre|tire) (?:turn|rev|revolution)",
                always("1"),
                "{} of the wheel",
                cue=("per ", "each", "every", "one", "1"),
            ),
            Shaped(
                rf"{_COUNT} (?:wheel|tyre|tire) {_TURNS}", _number, "{} of the wheel", cue=("wheel", "tyre", "tire")
            ),
            Shaped(
                rf"{_COUNT}(?: (?:full|complete))? {_TURNS} (?:of|on|at|to) (?:the )?(?:other|free)(?: one)?(?= |$)",
                _number,
                "{} of the wheel",
                cue=("other", "free"),
            ),
            Shaped(
                r"(?:turned|spun)(?: (?:just|only|the|my))* (?:left|right|near|far|off|one|back|rear)(?: (?:side"
                r"|hand|one|wheel))*"
                r" (?P<n>an?|one|1)(?: (?:full|complete))? turn",
                _number,
                "{} of the wheel",
                cue=("turned", "spun"),
            ),
            Shaped(
                rf"{_COUNT}(?: (?:full|complete))? {_TURNS} (?:of|on|at|to) (?:{_OF_A_WHEEL}|(?=both ))",
                _number,
                "{} of the wheel",
                cue=("wheel", "tyre", "tire"),
            ),
            Shaped(
                r"(?:turned|turn|spun|spin) (?:it|her|that) (?P<n>once|twice)",
                _number,
                "{} of the wheel",
                cue=("once", "twice"),
            ),
            Shaped(r"(?P<n>once|twice)(?: (?:round|around|over))?", _number, "{} of the wheel", doubt=1),
            Shaped(
                rf"{_COUNT} (?:full|complete) {_TURNS}",
                _number,
                "{} of the wheel",
                cue=("full", "complete"),
            ),
            Shaped(
                rf"(?:(?:gave|give|giving|turned|turn|spun|spin) (?:it|her|him|that)|turned) {_COUNT}(?: (?:full"
                rf"|complete))?"
                rf" {_TURNS}",
                _number,
                "{} of the wheel",
                cue=("gave", "give", "giving", "turned"),
            ),
        ),
        "turned": (
            Shaped(
                r"(?:the )?(?:left|right|other|off side|near side)(?: (?:one|wheel|side))? (?:sat|stayed|stays"
                r"|is|was|held)"
                r"(?: dead)? still",
                always("one"),
                "one wheel turned, the other held",
                cue=("still",),
            ),
            Shaped(
                rf"{_ONE}(?:{_WHEEL}|side|end) (?:is |was )?(?:{_DOWN})(?: and| with)*(?: the)? other(?: one)?"
                rf"(?: (?:{_WHEEL}|side|end))? (?:is |was )?(?:{_UP})"
                rf"|{_ONE}(?:{_WHEEL}|side|end) (?:is |was )?(?:{_UP}|{_DOWN})"
                rf"|(?:{_UP}) (?:an? |{_ONE})(?:{_WHEEL}|side|end)"
                rf"|(?:the )?other(?: one)?(?: (?:{_WHEEL}|side|end))? (?:is |was |stays |stayed |still )*(?:{_DOWN})"
                r"|(?:one|1) (?:side|wheel|tyre|end) held"
                r"|spun the other",
                always("one"),
                "one wheel turned, the other held",
                cue=("one", "1", "other", "up"),
            ),
            Shaped(
                r"both(?: (?:back|rear))?(?: wheels)?(?: (?:up|turned|together|turning|off the (?:floor|ground)))*"
                r"|locked(?: diff)?|spool|welded"
                r"(?: diff)?",
                always("both"),
                "both wheels turned",
            ),
        ),
    },
    r"(?:with )?no tag(?: on it)?|spun|flange|jack(?:ed|ing)?(?: up)?|breakers|times"
    r"|(?:(?:what|which)(?:'?s| is)?(?: the| axle| rear)* )?(?:diff(?:erential)?|gears?|gearing|ratio|axle|rear end)"
    r"(?: ratio)?(?: (?:of|in) (?:the |my )?(?:diff|axle|rear end|thing|car))?(?: (?:have |has "
    r"|'?ve )?(?:i|it)(?: got)?)?"
    r"|and a bit|(?:chalk )?mark(?: on)?|gave|please|both wheels up|(?:back |rear )?wheels up|on the|went"
    r"|what have i got|full|whisker|and a|open(?: diff(?:erential)?)?|by hand|gave|give|giving|lifted|raised"
    r"|(?:with the |the )?(?:gear ?)?box(?: is)? in neutral|in neutral|neutral|and|i|round|around|exactly"
    r"|jacked(?: up)?"
    r"|floor|ground|on the|prop|shaft|drive ?shaft|wheels?|tyres?|tires?|turn(?:ed|s)?|back(?: end)?"
    r"|rear(?: end)?|count(?:ed)?",
    needs=("shaft",),
    asks_for=r"(?:spun|turned|rotated) (?:both|1|one|the).*(?:shaft|prop|pinion|yoke|flange)"
    r"|(?:went|turned|goes|turns) (?:round|around)|wheel.*(?:prop|drive ?shaft|turns? (?:at|of"
    r"|on) (?:the )?(?:yoke|pinion|flange))|(?:prop|drive ?shaft).*wheel"
    r"|ratio|what have i got|turns? of (?:the )?(?:wheel|tyre|tire|shaft|prop).*turns? of|(?:what|which) (?:axle "
    r"|rear )?(?:diff|gears?|gearing|axle|rear end)",
    is_named=True,
    unmoved="metal finish state form standard service quality",
)
