"""What is asked of a drill by its number or its letter, and of the drill next to a size."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_BIT = r"(?:(?:twist |jobber )?(?:drill|bit)s?(?: bits?| size)?)"


def _drill() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.drills import drill

    return drill


def _name(match: re.Match[str]) -> str:
    """A number or a letter as the table has it."""
    said = match.groupdict()
    return f"#{said['n']}" if said.get("n") else str(said["l"]).upper()


DRILL = Topic(
    _drill,
    "drill",
    {
        "name": (
            Shaped(
                rf"(?:an? |the )?(?:number |num |no\.? |#)(?P<n>[1-9]|[1-7][0-9]|80) {_BIT}",
                _name,
                "drill {}",
                cue=("number", "num", "no", "#"),
            ),
            Shaped(
                rf"(?:an? |the )?{_BIT} (?:number |num |no\.? |#)(?P<n>[1-9]|[1-7][0-9]|80)(?= |$)",
                _name,
                "drill {}",
                cue=("number", "num", "no", "#"),
            ),
            Shaped(rf"(?:an? |the )?letter (?P<l>[a-z])(?: {_BIT})?", _name, "drill {}", cue=("letter",)),
            Shaped(rf"(?:an? |the )?{_BIT} letter (?P<l>[a-z])(?= |$)", _name, "drill {}", cue=("letter",)),
            Shaped(
                rf"(?:an? |the )?(?P<l>[b-hj-z]) {_BIT}",
                _name,
                "drill {}",
                cue=tuple(f"{c} " for c in "bcdefghjklmnopqrstuvwxyz"),
            ),
        ),
        "size": (
            Shaped(
                rf"(?:nearest|closest|next|near)(?: (?:twist|inch|metric|imperial))? {_BIT}(?: (?:size|there is))*"
                rf"(?: (?:to|for|from|is))* (?P<n>{NUMBER}) ?(?P<u>mm|in|inch|inches|thou)",
                lambda m: f"{m['n']} {'mm' if m['u'] == 'mm' else 'thou' if m['u'] == 'thou' else 'in'}",
                "next to {}",
                cue=("nearest", "closest", "next", "near"),
            ),
        ),
    },
    r"(?:how (?:big|large|wide)|what size|size|diameter|dia|decimal(?: equivalent)?|sizes?|bits?|drills?"
    r"|in decimal|inches)",
    asks_for=r"drill|drills|bit|bits|letter",
    is_named=True,
    unmoved="metal finish state form standard service quality",
)
