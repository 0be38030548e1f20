"""What is asked of an axle ratio by the teeth of its gears, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic
from gaugeblock.driveline.ask.common import answer_of

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
                r"(?P<ring>[0-9]{2}) ?(?:teeth|tooth|t)?(?: on)?(?: the| a)? (?:ring|crown ?wheel)(?: gear)?(?:"
                r" teeth)?,?"
                r"(?: and| with)? (?P<pinion>[0-9]{1,2}) ?(?:teeth|tooth|t)?(?: on)?(?: the| a)? pinion(?: teeth)?",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
                cue=("pinion",),
            ),
            Shaped(
                r"(?P<pinion>[0-9]{1,2})(?: tooth)? pinion(?: teeth)?(?: and| with)?(?: an?)? (?P<ring>[0-9]{2})(?:"
                r" tooth)?(?: on)?(?: the)?"
                r" ring(?: gear)?(?: teeth)?",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
            ),
            Shaped(
                r"(?P<ring>[0-9]{2}) ?(?:teeth|tooth|t)? ?(?:/|:|and|to|by|x|over) ?(?P<pinion>[0-9]{1,2})"
                r" ?(?:teeth|tooth|t)?",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
                doubt=1,
            ),
            Shaped(
                r"(?P<ring>[0-9]{2})[/:](?P<pinion>[0-9]{1,2}) ratio",
                lambda m: f"{m['ring']}/{m['pinion']}",
                "{} teeth",
            ),
        ),
    },
    r"(?:what |which |gear |axle |rear )*ratio|gears?|ring(?: gear)?|pinion|teeth|tooth|count|crown ?wheel|diff|axle",
    needs=("teeth",),
    asks_for="teeth|tooth|ring|pinion|crown ?wheel|ratio",
    is_named=True,
    unmoved="metal finish state form standard service quality",
)
