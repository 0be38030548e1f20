"""What is bent: the metal and the temper of a sheet as people name them, and what the tables have of its bends."""

from __future__ import annotations

from gaugeblock import lookup
from gaugeblock.errors import Ambiguous, GaugeblockError
from gaugeblock.tubes import keys
from gaugeblock.value import Value, put

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata

TABLE = "tubes/sheet_bends"


class SheetStock(Value):
    """The metal of a sheet: its family, its grade where one was named, and how it is called."""

    __slots__ = ("family", "grade", "label", "typed")

    family: str
    grade: str | None
    label: str
    typed: str

    def __init__(self, family: str, grade: str | None, label: str, typed: str) -> None:
        put(self, "family", family)
        put(self, "grade", grade)
        put(self, "label", label)
        put(self, "typed", typed)

    @property
    def cells(self) -> dict[str, str]:
        """The key cells that are known."""
        return {"family": self.family, **({"grade": self.grade} if self.grade else {})}


def sheet_stock(typed: str, data: Refdata) -> SheetStock:
    """The metal of a sheet: ``mild steel``, ``5052-H32``, ``6061 T6 aluminium``, ``304``. LookupMiss for no metal.

    >>> from gaugeblock.tables.load import refdata
    >>> sheet_stock("5052 h32 aluminum", refdata()).grade
    '5052-H32'
    """
    known = _grades(data)
    words = typed.casefold().replace(",", " ").split()
    for size in range(len(words), 0, -1):
        for at in range(len(words) - size + 1):
            cell = known.get(_squeezed(" ".join(words[at : at + size])))
            rest = " ".join(words[:at] + words[at + size :])
            if cell is not None and _agrees(rest, _families(data)[cell], data):
                own = " ".join(words[at : at + size])
                label = cell if _squeezed(own) == _squeezed(cell) else f"{own} ({cell})"
                return SheetStock(_families(data)[cell], cell, label, typed)
    stock = keys.stock(typed, data)
    return SheetStock(stock.family, None, stock.label, typed)


def tempers(stock: SheetStock, data: Refdata) -> list[str]:
    """The grades of a family of which the tables have a least radius; of one alloy where it was named."""
    rows = [r for r in data.table(TABLE).of("sheet_bend_ratio_minimum") if r["family"] == stock.family]
    every = [g for g in dict.fromkeys(r["grade"] for r in rows if not r["standing"]) if g != "any"]
    own = [g for g in every if g.split("-")[0] in stock.typed.casefold().replace("-", " ").split()]
    return own or every


def least_ratio(stock: SheetStock, wall: Figure, data: Refdata) -> Figure | None:
    """The least inside radius of this sheet over its thickness; None where the tables have none."""
    thick = f"{wall.text} {wall.unit}"
    quantity = "sheet_bend_ratio_minimum"
    return lookup.look_up_or_none(TABLE, quantity, data=data, thickness=thick, **stock.cells)


def least_ratio_or_refusal(stock: SheetStock, wall: Figure, data: Refdata) -> Figure | None:
    """As ``least_ratio``; Ambiguous where the temper was not named and the tables hang on it."""
    got = least_ratio(stock, wall, data)
    if got is not None or stock.grade is not None:
        return got
    near = tempers(stock, data)
    if not near:
        return None
    why = "the least radius hangs on grade and temper"
    raise Ambiguous(stock.typed, "material", why, near, "name one of them")


def _squeezed(text: str) -> str:
    return text.casefold().replace("-", "").replace(" ", "")


def _grades(data: Refdata) -> dict[str, str]:
    """Every word for a grade, without blanks and hyphens, -> its cell."""
    found = {_squeezed(word): cell for word, cell in data.words("tubes", "grade").items()}
    found |= {_squeezed(cell): cell for cell in _families(data)}
    return found


def _families(data: Refdata) -> dict[str, str]:
    """Each grade of the table with its family."""
    return {r["grade"]: r["family"] for r in data.table(TABLE).rows if r["grade"] != "any"}


def _agrees(rest: str, family: str, data: Refdata) -> bool:
    """Whether the words beside a grade say no more than its family."""
    if not rest:
        return True
    try:
        stock = keys.stock(rest, data)
    except GaugeblockError:
        return False
    return stock.family == family and not stock.is_graded
