"""What is asked of the bend of a brake or a fuel line, as people say it: bent by hand, and nobody says its wall."""

from __future__ import annotations

from gaugeblock import units
from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.tubes.said import answer_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata

_MOST_OF_A_LINE = 13  # mm across: more is a tube that goes on a die
# The usual wall of a small steel line; the habit of a hand bender hangs on the diameter alone.
_WALL = ".028 in"


# Round what a line is bent where there is no bender.
_FORMER = (
    r"(?:(?:deep |spark plug )?sockets?|pipe|bar|former|mandrel|cans?|tin|dowel|rod|bottle|post|pulley|bolt|round bar"
    r"|shaft|drill|tube|fitting|disc|roller|wheel)"
)


def _settle(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Bent by hand, of the metal that was said or of steel; round a former of so much across, whose half and the line's
    own half are the radius.
    """
    found = {key: value for key, value in values.items() if key not in ("line", "former", "nickel", "tool")}
    if "nickel" in values:
        found["material"] = values["nickel"]
    if "former" in values:
        measures = [units.parse_measure(values[key], "length", key) for key in ("former", "od")]
        across = [units.to_base(float(one.value), one.unit) for one in measures]
        found["radius"] = f"{units.significant(units.from_base(sum(across) / 2, 'mm'), 3)} mm"
    return {"wall": _WALL, "material": "steel", "method": "hand", **found}


def nickel_topic() -> Topic:
    """The same of copper-nickel, which is drawn for lines alone."""
    whole = topic()
    return Topic(
        whole.answer,
        whole.noun,
        {
            "nickel" if key == "material" else key: readers[: 1 if key == "material" else None]
            for key, readers in whole.slots.items()
        },
        whole.signals,
        needs=("od", "nickel"),
        settle=_settle,
        asks_for=whole.asks_for,
        is_named=True,
        unmoved="state service quality",
    )


def topic() -> Topic:
    """The least radius of a small line that is bent by hand."""
    return Topic(
        lambda: answer_in("bend.sheet", "bend"),
        "bend of a line",
        {
            "od": (
                amount("length", bare="in", say="{} line", most=_MOST_OF_A_LINE),
                amount("length", after="(?:od|outside)", bare="in", say="{} line", most=_MOST_OF_A_LINE),
            ),
            "line": (
                Shaped(
                    r"(?:(?:hard|rigid|metal|brake|fuel|clutch|hydraulic|transmission|cooler|oil) )+(?:lines?|pipes?"
                    r"|tub(?:e|es|ing))",
                    always("line"),
                    "bent by hand",
                ),
                Shaped(
                    r"(?:the |an? |my )?(?:lines?|pipes?|tub(?:e|es|ing))(?= (?:round|around|over|against))",
                    always("line"),
                    "bent by hand",
                    cue=("round", "over", "against"),
                ),
            ),
            "tool": (Shaped(r"by hand|hand(?: bend(?:er|s|ing)?|(?= *$))", always("hand"), "by hand", cue=("hand",)),),
            "wall": (amount("length", after="wall(?: thickness)?", bare="in", say="{} wall", cue=("wall",)),),
            "former": (
                amount(
                    "length",
                    before=r"(?:round|around|over|on|against)(?: (?:an?|the|my|some|old))*",
                    after=_FORMER,
                    bare="mm",
                    say="round a former of {}",
                    cue=("round", "over", "on", "against"),
                ),
            ),
            "material": (
                Shaped(r"(?:cupro[- ]?nickel|copper[- ]nickel|nickel[- ]copper)", always("copper-nickel"), "{}"),
                Shaped(r"stainless(?: steel)?", always("stainless steel"), "{}"),
                Shaped(r"steel", always("steel"), "{}", doubt=1),
            ),
        },
        r"(?:smallest |least |min(?:imum)? |tightest )?(?:bend(?:ing)? )?radius|bend(?:s|ing)?"
        r"|how (?:tight|sharp)(?:ly)?"
        r"|tight|least|min(?:imum)?|can|be|bent|without (?:a |it |them )*kink(?:ing|ed)?|kinks?|safe(?:ly)?|ok|it"
        r"|of|for",
        needs=("od", "line"),
        settle=_settle,
        asks_for=rf"(?:round|around|over|against)\b.*\b{_FORMER}|bend(?:ing)? radius|radius"
        r"|(?:min(?:imum)?|tightest|smallest|sharpest|least) bend"
        rf"|how (?:tight|sharp)\w*\b.*\b(?:bend|bent)"
        r"|bend\b.*\bhow (?:tight|sharp)",
        is_named=True,
        unmoved="state service quality",
    )
