"""What somebody says of a tube's stock, and what it leaves open."""

from __future__ import annotations

from gaugeblock.tubes.keys import _phrases

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.tables.load import Refdata


def names_metal(typed: str, data: Refdata) -> bool:
    """Whether a stock names its metal: ``DOM tube`` does, ``tube`` does not."""
    known, words = _phrases(data), typed.casefold().split()
    spans = ((a, b) for a in range(len(words)) for b in range(a + 1, len(words) + 1))
    return any("family" in known.get(" ".join(words[a:b]), ()) for a, b in spans)
