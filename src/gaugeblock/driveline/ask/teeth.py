"""What is asked of an axle ratio by the teeth of its gears, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic
from gaugeblock.driveline.ask.common import OF_THE_CAR, answer_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_BIG = r"(?:(?:big(?:ger)?|large(?:r)?)(?: (?:one|1|gear|wheel))?|ring(?: gear)?|crown(?: ?wheel)?)"
_SMALL = r"(?:(?:little|small(?:er)?)(?: (?:one|1|gear|wheel))?|pinion)"
# The ratio that somebody said it was: the teeth say what it is.
_TOLD = "told"


def _without_hearsay(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    return {key: value for key, value in values.items() if key not in (_TOLD, "slip")}


TEETH = Topic(
    lambda: answer_of("gears.teeth", "ratio"),
    "axle ratio",
    {
        "teeth": (
            Shaped(
                r"(?:the )?(?:ring|crown ?wheel)(?: gear)?(?: has| with| is)? (?P<ring>[0-9]{2})(?: teeth)?,?(?:"
                r" and)?"
                r"(?: the)? pinion(?: has| with| is)? (?P<pinion>[0-9]{1,2})(?: teeth)?",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
                cue=("pinion",),
            ),
            Shaped(
                r"(?P<ring>[0-9]{2}) ?(?:teeth|tooth|t)?(?: on)?(?: the| a)? (?:ring|crown(?: ?wheel)?)(?: gear)?(?:"
                r" teeth)?,?"
                r"(?: and| with)? (?P<pinion>[0-9]{1,2}) ?(?:teeth|tooth|t)?(?: on)?(?: the| a)? pinion(?: teeth)?",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
                cue=("pinion",),
            ),
            Shaped(  # told by their size
                rf"(?P<ring>[0-9]{{2}})(?: teeth)? on (?:the )?{_BIG},?(?: (?:and|with))?(?: (?:has|got))?"
                rf" (?P<pinion>[0-9]{{1,2}})(?: teeth)? on (?:the )?{_SMALL}",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
                cue=("big", "large", "ring", "crown"),
            ),
            Shaped(
                rf"(?P<pinion>[0-9]{{1,2}})(?: teeth)? on (?:the )?{_SMALL},?(?: (?:and|with))?"
                rf" (?P<ring>[0-9]{{2}})(?: teeth)? on (?:the )?{_BIG}",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
                cue=("big", "large", "ring", "crown"),
            ),
            Shaped(
                r"(?P<pinion>[0-9]{1,2})(?: tooth)? pinion(?: teeth)?(?: and| with)?(?: an?)? (?P<ring>[0-9]{2})(?:"
                r" tooth)?(?: on)?(?: the)?"
                r" ring(?: gear)?(?: teeth)?",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
            ),
            Shaped(
                rf"{_SMALL}(?: (?:is|has))? (?P<pinion>[0-9]{{1,2}})(?: teeth)?,?(?: (?:and|with|the))* {_BIG}(?:"
                rf" (?:is|has))?"
                r" (?P<ring>[0-9]{2})(?: teeth)?",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
                cue=("pinion", "small", "little"),
            ),
            Shaped(
                r"(?P<ring>[0-9]{2}) ?(?:teeth|tooth|t)? ?(?:/|:|and|to|by|x|over) ?(?P<pinion>[0-9]{1,2})"
                r" ?(?:teeth|tooth|t)?",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
                doubt=1,
            ),
            Shaped(
                r"(?P<ring>[0-9]{2})[/:](?P<pinion>[0-9]{1,2})(?: (?:cwp|ratio|crown ?wheel(?: and pinion)?|diff"
                r"|axle))+",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
            ),
        ),
        "slip": OF_THE_CAR["slip"],
        _TOLD: (
            Shaped(
                r"(?:(?:i )?(?:was|were|been) )?(?:told|thought|supposed to be|meant to be|sold as|reckons?|says)"
                r"(?: (?:it'?s|it|is|was|had|has|they|are|an?|the))* (?P<n>[2-6]\.[0-9]{1,2}|[2-6]\.[0-9])",
                lambda m: m["n"],
                "told {}",
                cue=("told", "thought", "supposed", "meant", "sold", "reckon", "says"),
            ),
            Shaped(  # and what was counted behind it
                r"(?:(?:it|that|diff|axle|ratio|rear|tag|book|plate)(?: ratio)? )?(?:is|was|says)(?: (?:an?|the"
                r"|about))*"
                r" (?P<n>[2-6]\.[0-9]{1,2})(?= but )",
                lambda m: m["n"],
                "told {}",
                cue=("is", "was", "says"),
            ),
        ),
    },
    r"big|large|little|small|(?:pulled )?(?:the )?cover(?: off)?|count(?:ed)?|doesn'?t feel (?:it"
    r"|like it|right)"
    r"|(?:what |which |gear |axle |rear )*ratio|gears?|ring(?: gear)?|pinion|teeth|tooth|count|crown ?wheel|cwp"
    r"|diff|axle",
    needs=("teeth",),
    settle=_without_hearsay,
    asks_for="teeth|tooth|ring|pinion|crown ?wheel|ratio|cwp|[0-9]{2}/[0-9]{1,2} (?:diff|axle)",
    is_named=True,
    unmoved="metal finish state form standard service quality",
)
