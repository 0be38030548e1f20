"""What is asked of two pieces that meet in a corner, each cut to half of it, as people say it."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.asking import NUMBER, Hit, Shaped, Topic
from gaugeblock.errors import InputError
from gaugeblock.tubes.said import DEG, answer_in
from gaugeblock.tubes.sizes_ask import OD_OF_TUBE

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from gaugeblock.answer.asking import Reader
    from gaugeblock.tables.load import Refdata

_MEET = r"(?:m[e]et(?:s|ing)?|join(?:s|ed|ing)?|come together|comes? in|butt(?:s|ed|ing)?|set)"
_HALF_TURN = 180
_PIECES = (
    r"(?:lengths?|bits?|pieces?|tubes?|pipes?|sticks?|members?|rails?|bars?|box(?:es)?|sections?|sides?|ends?"
    r"|legs?|arms?)"
)


class Mitred(Shaped):
    """An angle behind a mitre of two pieces: it is the one between them."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, behind those words alone."""
        before = words[:at]
        is_of_two = any(word.startswith(("mitre", "miter")) for word in before) and not _TWO.isdisjoint(before)
        return super().take(words, at, data) if is_of_two else ()


_TWO = frozenset(["2", "two", "both"])
_STRAIGHT = "nothing is cut: the two are in one line"


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """The corner as a bend of two pieces, which turns by what the angle between them leaves of a straight line.

    InputError for pieces that lie in one line, and for two of unlike sizes.
    """
    if {"size", "od"} <= values.keys() and not values["size"].startswith(values["od"].partition(" ")[0]):
        do = "ask for two pieces of one size: a wide and a narrow one are not cut alike"
        raise InputError(f"{values['size']} and {values['od']}", "size", "two sizes do not share a corner", (), do)
    between = units.parse_number(values["between"].partition(" ")[0])
    if not 0 < between < _HALF_TURN:
        raise InputError(values["between"], "between", _STRAIGHT, (), "say the angle between the two pieces")
    found = {"angle": f"{float(_HALF_TURN - between):g} deg", "slices": "2", "ends": "square"}
    return {**found, "od": values["od"]} if "od" in values else found


def corner_of(slots: Mapping[str, tuple[Reader, ...]]) -> Topic:
    """At which angle each of two pieces is sawn that meet in a corner; ``slots`` are those of a box."""
    return Topic(
        lambda: answer_in("mitre", "mitre"),
        "corner of two pieces",
        {
            "between": (
                Shaped(
                    rf"(?:at )?(?:an? )?includ(?:ed|ing) angle(?: (?:of|is|to be|between them))* (?P<n>{NUMBER})"
                    rf"(?: ?(?:{DEG}))?",
                    lambda m: f"{m['n']} deg",
                    "{} between them",
                    cue=("includ",),
                ),
                Shaped(
                    rf"(?:(?:{_MEET}) )?(?:(?:at|to|in|make|making|with) )*(?:an? )?(?P<n>{NUMBER})(?: ?(?:{DEG}))?"
                    r" (?:includ(?:ed|ing)(?: angle)?|(?:angle )?between (?:them|the two)|corners?)",
                    lambda m: f"{m['n']} deg",
                    "{} between them",
                    cue=("includ", "between", "corner"),
                ),
                Shaped(
                    rf"(?:{_MEET})(?: (?:each other|up|together|another|one|it))* (?:at|in) (?:an? )?(?:angle of )?"
                    rf"(?P<n>{NUMBER})(?: ?(?:{DEG}))?(?: corner| angle)?(?! ?(?:in|inch|mm|x|by)(?: |$))",
                    lambda m: f"{m['n']} deg",
                    "{} between them",
                    cue=("meet", "join", "come", "butt", "set"),
                ),
                Mitred(rf"(?:at|by) (?P<n>{NUMBER}) ?(?:{DEG})", lambda m: f"{m['n']} deg", "{} between the 2"),
                Shaped(
                    rf"(?:{_MEET})(?: (?:each other|up|together))* (?:square|at (?:an? )?right angles?)",
                    lambda _: "90 deg",
                    "{} between the 2",
                    cue=("square", "right angle"),
                ),
            ),
            "size": slots["size"],
            "wall": slots["wall"],
            "od": OD_OF_TUBE,
        },
        rf"(?:two|2|both|the two|each|every)(?: (?:{_PIECES}))?(?: of)?|{_PIECES}(?: of)?|mit(?:er|re)(?:s"
        r"|d)?(?: angle)?"
        r"|(?:at )?(?:(?:what|which)(?: saw| cut| mitre)? )?angles?|(?:chop |mitre |cold |band )?saw|cut(?:s|ting)?|set"
        r"|have to|has to|end|square|frames?|corners?|steel|degrees?|both|mm|that|which",
        needs=("between",),
        settle=_settle,
        asks_for=r"includ(?:ed|ing)|mit(?:er|re)\w* (?:of |for |on )?(?:two|2|both)\b|"
        r"(?:meet\w*|join\w*|corners?)\b.*\b(?:mit(?:er|re)\w*|angle|saw|cut)|(?:mit(?:er"
        r"|re)\w*"
        r"|angle|saw|cut)\b.*\b(?:meet\w*|join\w*|corners?)",
        is_named=True,
        unmoved="metal finish state form standard service quality count",
    )
