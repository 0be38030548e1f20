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
    hints = {wing.name: len(re.findall(rf"\b(?:{wing.hints})\b", line)) for wing in domains.WINGS if wing.hints}
    order = sorted((w for w in domains.WINGS if w.hints), key=lambda w: -hints[w.name])
    first = [w for w in order if hints[w.name] == hints[order[0].name] or hints[w.name] > 0]
    yield [t for wing in first for t in wing.module("ask").TOPICS]
    rest = [w for w in order if w not in first]
    if rest:
        yield [t for wing in rest for t in wing.module("ask").TOPICS]
