"""Which topics a line may be about: those of the wings whose words it has first, then all."""

from __future__ import annotations

import re

from gaugeblock import domains

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator

    from gaugeblock.answer.asking import Topic


def topics(words: tuple[str, ...]) -> Iterator[list[Topic]]:
    """The topics in groups, the likeliest first; those of a wing are loaded when their turn comes."""
    line = " ".join(words)
    hints = {wing.name: _hits(wing.hints, line) for wing in domains.WINGS if wing.hints}
    order = sorted((w for w in domains.WINGS if w.hints), key=lambda w: -hints[w.name])
    first = [w for w in order if hints[w.name] == hints[order[0].name] or hints[w.name] > 0]
    yield [t for wing in first for t in wing.module("ask").TOPICS]
    rest = [w for w in order if w not in first]
    if rest:
        yield [t for wing in rest for t in wing.module("ask").TOPICS]


def _hits(hints: str, line: str) -> int:
    """How many words of a line are hints of a wing: plain ones by comparing them, for a pattern of all of them takes
    longer to make than a line to read.
    """
    whole, begins, shaped = set(), [], []
    for hint in _parted(hints):
        if hint.isalnum():
            whole.add(hint)
        elif hint.removesuffix("s?").isalnum():
            whole.update((hint[:-2], f"{hint[:-2]}s"))
        elif hint.removesuffix("\\w*").isalnum():
            begins.append(hint[:-3])
        elif not hint[:2].isalpha() or hint[:2] in line:  # one that begins otherwise cannot be in it
            shaped.append(hint)
    starts = tuple(begins)
    plain: int = sum(word in whole or word.startswith(starts) for word in re.findall(r"\w+", line))
    return plain + (len(re.findall(rf"\b(?:{'|'.join(shaped)})\b", line)) if shaped else 0)


def _parted(hints: str) -> list[str]:
    """The alternatives of a pattern; those in brackets stay together."""
    found: list[str] = []
    for piece in hints.split("|"):
        if found and found[-1].count("(") > found[-1].count(")"):
            found[-1] += f"|{piece}"
        else:
            found.append(piece)
    return found
