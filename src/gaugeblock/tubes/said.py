"""What somebody says of a tube's stock, and what it leaves open."""

from __future__ import annotations

from gaugeblock.answer.wing import loaded
from gaugeblock.tubes.keys import phrases

DEG = r"deg|degs|degrees?|\u00b0"
# Of a bend that is made: what it leaves of the wall is asked.
LOOKS_THIN = (
    r"(?:and )?(?:the |its )?(?:outside|back|outer wall)(?: of (?:it|the bend))? looks (?:a bit |very |too |pretty )*"
    r"(?:thin|thinner|stretched|flat)|there"
)

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def is_without_metal(typed: str, data: Refdata) -> bool:
    """Whether nothing was said of a stock, or a product alone: ``tube`` is of any metal, ``DOM tube`` is of steel."""
    cells = phrases(data).get(" ".join(typed.casefold().split()))
    return not typed or (cells is not None and "family" not in cells)


def answer_in(module: str, name: str) -> Callable[..., Sheet]:
    """The answer of this name in a module of the wing, loaded when it is asked."""
    return getattr(loaded(f"gaugeblock.tubes.{module}"), name)  # type: ignore[no-any-return]
