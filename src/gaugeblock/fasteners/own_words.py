"""How people say what they know of their own bolt: friction, the preload wanted, strengths, the grip."""

from __future__ import annotations

import re

from gaugeblock.answer.asking import END, NUMBER, Hit, Shaped, amount
from gaugeblock.answer.stating import known

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable

    from gaugeblock.answer.asking import Named, Reader
    from gaugeblock.tables.load import Refdata

_TAPPED = r"(?:tapped|threaded) (?:metal|hole|casting|block|part|material)(?:'s)?(?: tensile)?"
_OF = " of "


class Tapped:
    """A metal with its own strength behind it: ``into aluminium of 240 MPa``, as ``aluminium of 240 MPa``."""

    __slots__ = ("_metal",)

    def __init__(self, metal: Named) -> None:
        self._metal = metal

    def phrases(self, data: Refdata) -> dict[str, str]:
        """Those of the metal."""
        return self._metal.phrases(data)

    def choices(self, data: Refdata) -> tuple[str, ...]:
        """Those of the metal."""
        return self._metal.choices(data)

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """The metal, and the strength that follows it."""
        for hit in self._metal.take(words, at, data):
            rest = at + hit.count
            found = re.match(rf"(?:of|with|at|tensile){END}", " ".join(words[rest : rest + 1]))
            for more in _STRENGTH_OF[0].take(words, rest, data) if found is not None else ():
                said = f"{hit.said} of {more.value}"
                yield Hit(hit.count + more.count, f"{hit.value}{_OF}{more.value}", said, hit.doubt)


class TappedPlate:
    """How thick a plate is that a line says is tapped, which is as much thread as there is: in 1/2 inch steel plate."""

    __slots__ = ("_thick",)

    def __init__(self) -> None:
        metal = r"alumini?um|alloy|mild|steel|cast|iron|brass|plate|sheet"
        self._thick = amount(
            "length",
            before="(?:tapped |threaded )?(?:in|into|through)(?: (?:an?|the|some|this))?",
            say="{} engaged",
            followed=rf"(?:thick )?(?:{metal})",
        )

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """None of its own."""
        return {}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: a plate is as thick as it is."""
        return ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """The thickness, where the line has a thread cut in the plate."""
        if not {"tapped", "threaded"}.isdisjoint(words[: at + 1]):
            yield from self._thick.take(words, at, data)


_OF_A_BOLT = r"(?:bolts?|screws?|studs?|capscrews?|setscrews?|cap|allen|socket|hex|fasteners?|ones?|m?[0-9]\S*)"
_BEFORE_IT = r"(?:are|is|it's|they're|(?:m|#)?[0-9]\S*|fine|coarse|un[cf]|bolts?|screws?|studs?)"
_OF_ANOTHER = (
    r"(?:plates?|sheet|tubes?|bungs?|boss(?:es)?|nuts?|washers?|inserts?|flanges?|blocks?|brackets?|wire|pipes?)"
)


class StainlessBolt:
    """A bolt that is told to be of stainless, whatever is on its threads: nothing else of the line is."""

    __slots__ = ()

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """None of its own."""
        return {}

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """None: by itself it is how its threads are."""
        return ()

    def take(self, words: tuple[str, ...], at: int, _data: Refdata) -> Iterable[Hit]:
        """The word, beside a bolt or its thread."""
        if words[at] != "stainless":
            return
        count = 2 if words[at + 1 : at + 2] == ("steel",) else 1
        behind = words[at + count] if at + count < len(words) else ""
        before = words[at - 1] if at else ""
        is_of_bolt = re.fullmatch(_OF_A_BOLT, behind) or (
            (not before or re.fullmatch(_BEFORE_IT, before)) and not re.fullmatch(_OF_ANOTHER, behind)
        )
        if is_of_bolt:
            yield Hit(count, "stainless", "stainless", 1)


_STRENGTH_OF = known("stress", r"(?:of|with|at|tensile)(?: an?)?(?: tensile)?", "{}")


def apart(values: dict[str, str]) -> dict[str, str]:
    """The metal and its strength as two options."""
    metal, of, strength = values.get("into", "").partition(_OF)
    return {**values, "into": metal, "tapped_strength": strength} if of else values


def _share(match: re.Match[str]) -> str:
    return f"{match['n']} %"


def _pounds(match: re.Match[str]) -> str:
    """Pounds that clamp are a force, whatever the word."""
    return f"{match['n']} lbf"


_POUNDS = rf"(?P<n>{NUMBER}) ?(?:lbs?|lbf|pounds?)(?: force| of force)?"
_CLAMP = r"(?:preload|clamp(?:ing)?(?: load| force)?|bolt (?:load|tension)|tension|squeeze)"
KNOWN: dict[str, tuple[Reader, ...]] = {
    "nut_factor": known(
        "number", r"nut factor|k factor|friction factor|k", "nut factor {}", bare="1", cue=("k", "fact")
    ),
    "preload": (
        Shaped(
            rf"(?:with |at |to )?(?P<n>{NUMBER}) ?(?:%|percent|per cent)(?: of)?(?: the)? (?:proof|preload)(?: load)?",
            _share,
            "preload {} of proof",
            cue=("proof", "preload"),
        ),
        Shaped(
            rf"preload(?: of| is| to| at)* (?P<n>{NUMBER}) ?(?:%|percent|per cent)(?: of(?: the)? proof(?: load)?)?",
            _share,
            "preload {} of proof",
            cue=("preload",),
        ),
        *known("force", _CLAMP, "preload {}", cue=("preload", "clamp", "load", "tension", "squeeze")),
        Shaped(rf"{_POUNDS}(?: of)? {_CLAMP}", _pounds, "preload {}", cue=("lb", "pound")),
        Shaped(rf"{_CLAMP}(?: of| is| at| to)* {_POUNDS}", _pounds, "preload {}", cue=("lb", "pound")),
        amount("length", before="stretch(?:ed)?(?: it)?(?: of| is| to| by)?", say="stretched {}", cue=("stretch",)),
        amount("length", after="(?:of )?(?:bolt )?stretch", say="stretched {}", cue=("stretch",)),
    ),
    "proof_strength": known("stress", "proof(?: load| stress)?", "proof strength {}", cue=("proof",)),
    "yield_strength": known("stress", "yields?(?: stress)?", "yield strength {}", cue=("yield",)),
    "tensile_strength": known("stress", "tensile|uts|ultimate", "tensile strength {}", cue=("tensile", "uts", "ultim")),
    "tapped_strength": known("stress", _TAPPED, "tapped metal of {}", cue=("tapped", "threaded")),
    "grip": (
        amount("length", before="grip(?: length)?(?: of| is)?", say="grip {}", cue=("grip",)),
        amount("length", after="(?:of )?grip(?: length)?", say="grip {}", cue=("grip",)),
    ),
}
