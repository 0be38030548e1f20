"""What is asked about a pipe by its nominal size, as people say it."""

from __future__ import annotations

import re

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Hit, Named, Shaped, Topic, always, words_of
from gaugeblock.errors import InputError
from gaugeblock.tubes.keys import pipe_size

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_IN = r"(?: ?(?:inch(?:es)?|in|\"))"


def _pipe() -> Callable[..., Sheet]:
    from gaugeblock.tubes.pipe import pipe

    return pipe


# Sizes by DN, and the nominal pipe size of each: one pipe by two names.
_OF_DN = {
    "15": "1/2",
    "20": "3/4",
    "25": "1",
    "32": "1 1/4",
    "40": "1 1/2",
    "50": "2",
    "65": "2 1/2",
    "80": "3",
    "90": "3 1/2",
    "100": "4",
}
_NEAR = 0.008  # of a diameter: as calipers read a pipe


class Outside(Shaped):
    """An outside diameter as the pipe that has it: 1.315 in is 1 pipe."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """The pipe whose outside diameter is that one, told with it; none where no pipe is so."""
        for hit in super().take(words, at, data):
            number = re.search(rf"(?<![0-9]){NUMBER}", hit.value)
            if number is None:
                return
            typed = float(units.parse_number(number[0]))
            inches = typed / _MM if "mm" in hit.value or typed > _MOST_INCHES else typed
            rows = [r for r in data.table("tubes/pipe_sizes").of("outside_diameter") if not r["standing"]]
            for row in rows:
                own = float(units.parse_number(row["value"])) / (_MM if row["unit"] == "mm" else 1)
                if abs(own - inches) <= _NEAR * own:
                    said = f"{number[0]} {'mm' if inches != typed else 'in'} outside: {row['nps']} pipe"
                    yield Hit(hit.count, row["nps"], said)
                    return


class OfDn(Shaped):
    """A pipe by its DN, told with it."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, and told with what was typed."""
        for hit in super().take(words, at, data):
            typed = next(word for word in (words[at], *words[at + 1 : at + 2]) if word.strip("dn"))
            yield Hit(hit.count, hit.value, f"DN {typed.strip('dn')}: {hit.value} pipe")


_MM, _MOST_INCHES = 25.4, 12


def _as_length(match: re.Match[str]) -> str:
    """A diameter; a large one without a unit is in millimetres."""
    is_mm = match["mm"] or float(units.parse_number(match["n"])) > _MOST_INCHES
    return f"{match['n']} {'mm' if is_mm else 'in'}"


def _settle(values: dict[str, str], data: Refdata) -> dict[str, str]:
    """The pipe; InputError where it was measured, and is none of that size."""
    measured = values.get("measured")
    rows = data.table("tubes/pipe_sizes").of("outside_diameter") if measured is not None else ()
    row = next((one for one in rows if one["nps"] == pipe_size(values["nps"])), None)
    if measured is not None and row is not None:  # the answer tells of a size that there is not
        own = float(units.parse_number(row["value"])) * units.factor(row["unit"])
        number, _, unit = measured.rpartition(" ")
        if abs(float(units.parse_number(number)) * units.factor(unit) - own) > _WORN * own:
            why = (
                f"pipe {row['nps']} is {row['value']} {row['unit']} outside in every schedule, and {measured}"
                f" was measured"
            )
            raise InputError(measured, "measured", why, (), "measure it again, or ask for a tube of that diameter")
    return {key: value for key, value in values.items() if key not in ("measured", "die")}


_WORN = 0.02  # of a diameter: scale, paint and a hurried calliper
PIPE = Topic(
    _pipe,
    "pipe",
    {
        "die": (  # which is as large as the tube that it bends, and the pipe is told by its outside
            Shaped(
                rf"(?:(?:on|in|fit|fits|go|round|for|with) )*(?:an?|the|my|that|this|it)? ?(?P<n>{NUMBER}){_IN}? "
                r"(?:dies?|shoes?|former)(?: set)?",
                lambda m: f"{m['n']} in",
                "for a die of {}",
                cue=("die", "shoe", "former"),
            ),
        ),
        "nps": (
            Shaped(
                rf"(?P<n>{NUMBER}){_IN}?(?! (?:od|outside|across)(?: |$))(?: nominal(?: bore)?)?(?: nps)?",
                lambda m: m["n"].replace("-", " "),
                "{} pipe",
            ),
            Shaped(rf"nps (?P<n>{NUMBER})", lambda m: m["n"].replace("-", " "), "{} pipe"),
            OfDn(rf"dn ?(?P<n>{'|'.join(_OF_DN)})(?: pipes?)?", lambda m: _OF_DN[m["n"]], cue=("dn",)),
            Outside(
                rf"(?:(?:that |which |it )?(?:has|is|are|with)(?: an?)? )?(?:outside|od)(?: diameter)?"
                rf"(?: of| is)? (?P<n>{NUMBER})(?: ?(?P<mm>mm|millimet(?:re|er)s?)|{_IN})?"
                rf"(?: (?:outside|od|across))?|(?P<n2>{NUMBER})(?: ?(?P<mm2>mm)|{_IN})? (?:outside|od|across)(?:"
                rf" diameter)?",
                lambda m: m[0],
                cue=("outside", "od", "across"),
            ),
            Outside(
                rf"(?:it |that |which )?measures? (?P<n>{NUMBER})(?: ?(?P<mm>mm)|{_IN})?",
                lambda m: m[0],
                doubt=1,
                cue=("measur",),
            ),
        ),
        "measured": (
            Shaped(
                rf"(?:(?:and |but )?(?:it |that |mine ))?measures? (?P<n>{NUMBER})(?: ?(?P<mm>mm)|{_IN})?",
                _as_length,
                "measured {}",
                cue=("measur",),
            ),
        ),
        "tube": (
            Shaped(
                rf"(?:(?:the )?same (?:size )?as |(?:than|with|against|in|into|for|on|does|will|is) )?(?:an?"
                rf" )?(?P<n>{NUMBER})"
                rf"(?: ?(?P<mm>mm|millimet(?:re|er)s?)|{_IN})?(?: (?:od|round|steel|dom|erw|cds))* (?:tub(?:e|es"
                rf"|ing)|dom|erw|cds)",
                _as_length,
                "beside a {} tube",
                cue=("tub", "dom", "erw", "cds"),
            ),
        ),
        "fact": (
            Shaped(r"(?:wall|thick)(?: thickness| is)*|how thick|thickness", always("wall"), "its wall"),
            Shaped(r"bore|inside(?: diameter)?|id", always("bore"), "its bore"),
            Shaped(
                r"(?:how )?(?:much )?(?:does )?(?:it )?(?:weigh(?:t|s)?|mass|heavy)(?: (?:per|a|an)"
                r" (?:foot|ft|met(?:re|er)))?",
                always("mass"),
                "its mass",
            ),
        ),
        "schedule": (
            Named(words_of("tubes", "schedule", bare=False)),
            Shaped(r"(?:sch|schedule|sched)\.? ?(?P<n>[0-9]+s?)", lambda m: m["n"].upper(), "schedule {}"),
            Shaped(r"(?P<n>[0-9]+s)", lambda m: m["n"].upper(), "schedule {}"),
        ),
    },
    r"(?:i'?m |to |am )?(?:sleev(?:e|es|ed|ing)|slid(?:e|es|ing)|slip(?:s|ping)?)(?: (?:it|them|this))?"
    r" (?:over|into|inside|onto|on)(?: (?:an?|the|my|some))? tub(?:e|ing)"
    r"|nominal bore|(?:steel |black |galvanised |galvanized )?pipes?|od|outside(?: diameter)?|dia(?:meter)?|how"
    r" big|real|true|stainless"
    r"|steel|nominal|per foot|a foot|size|sizes|actual(?:ly)?|short|dies?"
    r"|shoes?|former|bender|sits?|properly|fits?|same|measures?|supposed(?: to be)?|nb|which|has",
    needs=("nps",),
    settle=_settle,
    asks_for=r"pipes?|nps|dn|sch\w*|std|xs|xxs",
    is_named=True,  # a number alone is of anything
    columns={"nps": ("tubes/pipe_sizes", "nps"), "schedule": ("tubes/pipe_sizes", "schedule")},
)
