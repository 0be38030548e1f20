"""What is asked of an axle that is turned by hand, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always
from gaugeblock.driveline.ask.common import answer_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re

_SHAFT = r"(?:the )?(?:prop(?:eller)?[- ]?shaft|prop|drive ?shaft|pinion(?: flange)?|yoke|shaft|input)"
_WENT = r"(?:(?:goes|went|turns|turned|spins|spun|rotates?d?|does|did|came|comes|gets|got)(?: round| around| over)?)"
_N = {"once": "1", "one": "1", "two": "2", "twice": "2", "ten": "10"}


def _number(match: re.Match[str]) -> str:
    return _N.get(match["n"], match["n"])


TURNS = Topic(
    lambda: answer_of("gears.turns", "turns"),
    "axle ratio by turning it",
    {
        "shaft": (
            Shaped(
                rf"{_SHAFT} {_WENT}(?: round| about| exactly| just| nearly| roughly)* (?P<n>{NUMBER})"
                r"(?: (?:times?|turns?|revs?|revolutions?|rounds?))?",
                _number,
                "{} of the shaft",
                cue=("prop", "shaft", "pinion", "yoke"),
            ),
            Shaped(
                rf"(?P<n>{NUMBER}) (?:turns?|times|revs?|revolutions?) (?:of|on|at) {_SHAFT}",
                _number,
                "{} of the shaft",
                cue=("prop", "shaft", "pinion", "yoke"),
            ),
        ),
        "wheel": (
            Shaped(
                r"(?:(?:i )?(?:turn(?:ed|ing)?|spun|spin|rotated?) )?(?:the |a |one |jacked |back |rear )*wheels?"
                r"(?: (?:went|goes|turned|turns|round|exactly|is|was|spun))*"
                r" (?P<n>one|once|two|twice|ten|[0-9]{1,2})(?: (?:full |complete )?(?:turns?|times?|revs?|revolutions?"
                r"|rounds?))?",
                _number,
                "{} of the wheel",
                cue=("wheel",),
            ),
            Shaped(
                r"(?P<n>one|once|two|twice|ten|[0-9]{1,2})(?: full| complete)? (?:turns?|times|revs?|revolutions?)"
                r" (?:of|on|at) (?:(?:the |a |one )*wheels?|(?=both ))",
                _number,
                "{} of the wheel",
                cue=("wheel",),
            ),
            Shaped(
                r"(?P<n>[0-9]{1,2})(?: full| complete) (?:turns?|revs?|revolutions?)",
                _number,
                "{} of the wheel",
                cue=("wheel",),
            ),
        ),
        "turned": (
            Shaped(
                r"(?:one (?:back |rear )?wheel (?:is |was )?(?:jacked(?: up)?|up|off the (?:floor|ground)))"
                r"|(?:the )?other(?: one| wheel| side)?(?: is| was| stays| stayed)? (?:on the (?:floor|ground)|held"
                r"|still|down)"
                r"|one back wheel jacked other on the floor"
                r"|one (?:back |rear )?wheel (?:is |was )?(?:still )?(?:on|down on) the (?:floor|ground)"
                r"|spun the other",
                always("one"),
                "one wheel turned, the other held",
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
    r"what have i got|full|whisker|and a|(?:what'?s|whats|what is|which)(?: the)? ratio(?: of(?: the| my)? (?:diff"
    r"|axle|rear end))?|ratio|diff|axle"
    r"|rear end"
    r"|box in neutral|neutral|in neutral|and|i|round|exactly|jacked|floor|on the|prop|shaft|wheels?|turn(?:ed|s)?|back"
    r"|rear",
    needs=("shaft",),
    asks_for=r"ratio|what have i got",
    is_named=True,
    unmoved="metal finish state form standard service quality",
)
