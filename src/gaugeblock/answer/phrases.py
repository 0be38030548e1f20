"""The phrases of a vocabulary as they are typed."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

# A line has its numbers in digits, whatever was said.
_DIGITS = {
    w: str(n)
    for n, w in enumerate(
        ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
    )
}
_PARTED = str.maketrans(",()", "   ")


def spoken(cells: Mapping[str, str]) -> dict[str, str]:
    """Each phrase as it is typed: commas out, with its hyphens and without, in the plural too."""
    found: dict[str, str] = {}
    for phrase, cell in cells.items():
        plain = phrase.casefold()
        if "," in plain or "(" in plain:
            plain = " ".join(plain.translate(_PARTED).split())
        found.setdefault(plain, cell)
        if "-" in plain:
            found.setdefault(plain.replace("-", " "), cell)
            found.setdefault(plain.replace("-", ""), cell)
        if (first := plain.partition(" ")[0]) in _DIGITS:
            found.setdefault(plain.replace(first, _DIGITS[first], 1), cell)
    for phrase, cell in list(found.items()):
        if len(phrase) > 3 and phrase[-1].isalpha() and not phrase.endswith("s"):
            found.setdefault(phrase + ("es" if phrase.endswith(("ch", "sh", "x")) else "s"), cell)
    return found
