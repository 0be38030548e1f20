"""Value: what all records of this program are - frozen, equal by value, readable, and safe to pickle and copy."""

from __future__ import annotations

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator
    from typing import Any, NoReturn, Self

put = object.__setattr__  # for the constructors of values alone
_PARTS: dict[tuple[str, ...], tuple[str, ...]] = {}  # by slots


class Value:
    """A frozen record of the attributes that its slots name; a slot that begins with ``_`` is worked out, not part
    of it.

    A subclass sets its slots in ``__init__`` with ``put``. The standard library's records would do the same: to load
    what makes them takes a fifth of a look-up's time, measured.
    """

    __slots__ = ()

    @classmethod
    def _parts(cls) -> tuple[str, ...]:
        slots: tuple[str, ...] = cls.__slots__
        parts = _PARTS.get(slots)
        if parts is None:
            parts = _PARTS[slots] = tuple([s for s in slots if not s.startswith("_")])
        return parts

    def _pairs(self) -> Iterator[tuple[str, Any]]:
        for name in self._parts():
            yield name, getattr(self, name)

    def __setattr__(self, name: str, value: object) -> NoReturn:
        raise AttributeError(f"a {type(self).__name__} is frozen: {name} cannot be set; make another with replace")

    def __delattr__(self, name: str) -> NoReturn:
        raise AttributeError(f"a {type(self).__name__} is frozen: {name} cannot be deleted")

    def __eq__(self, other: object) -> bool:
        if self is other:
            return True
        if type(other) is not type(self):
            return NotImplemented
        return all(value == getattr(other, name) for name, value in self._pairs())

    def __hash__(self) -> int:
        return hash((type(self).__name__, *(value for _, value in self._pairs())))

    def __repr__(self) -> str:
        return f"{type(self).__name__}({', '.join(f'{name}={value!r}' for name, value in self._pairs())})"

    def __reduce__(self) -> tuple[Any, ...]:
        # by slots, not by the maker: that may take other things than it keeps
        slots = [slot for kind in type(self).__mro__ for slot in getattr(kind, "__slots__", ())]
        return _again, (type(self), {slot: getattr(self, slot) for slot in slots if hasattr(self, slot)})

    def __copy__(self) -> Self:
        return self

    def __deepcopy__(self, memo: dict[int, Any]) -> Self:
        return self

    def replace(self, **changes: Any) -> Self:
        """A copy with some parts changed."""
        for name in self._parts():
            if name not in changes:
                changes[name] = getattr(self, name)
        return type(self)(**changes)


def _again(kind: Any, slots: dict[str, Any]) -> Any:
    made = object.__new__(kind)
    for slot, value in slots.items():
        put(made, slot, value)
    return made


class Keys(dict[str, str]):
    """A frozen dict: what a figure answers for, or what was asked."""

    __slots__ = ()

    def _refuse(self, *_: object, **__: object) -> NoReturn:
        raise TypeError("this record is frozen; copy it with dict(...) to change it")

    def __init__(self, *given: Any, **named: str) -> None:
        if self:  # made once
            self._refuse()
        super().__init__(*given, **named)

    __setitem__ = __delitem__ = clear = pop = popitem = setdefault = update = __ior__ = _refuse

    def __hash__(self) -> int:  # type: ignore[override]
        return hash(frozenset(self.items()))

    def __reduce__(self) -> tuple[Any, ...]:
        return Keys, (dict(self),)

    def __copy__(self) -> Keys:
        return self

    def __deepcopy__(self, memo: dict[int, Any]) -> Keys:
        return self
