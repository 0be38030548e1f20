"""A mapping from Python as a table of a job, read as strictly: unknown and missing keys and wrong types are refused."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar

from gaugeblock.errors import InputError
from gaugeblock.job.part import Part, Refused
from gaugeblock.job.values import kind_of
from gaugeblock.units import Measure

P = TypeVar("P", bound=Part)


def part_of(model: type[P], given: Mapping[str, Any], what: str) -> P:
    """The part that a mapping makes; measures may be text or a Measure.

    InputError names the first key that is wrong, as ``what`` and its path, with the nearest keys there are.
    """
    refused: list[Refused] = []
    part = model.read(plain(given), (), refused)
    if refused:
        raise _refusal(refused[0], model, what)
    return part


def plain(value: Any) -> Any:
    """Mappings as dicts, sequences as lists and measures as their text: what a job file would give."""
    if isinstance(value, Measure):
        return value.text
    if isinstance(value, Mapping):
        return {key: plain(inner) for key, inner in value.items() if inner is not None}
    return [plain(inner) for inner in value] if isinstance(value, list | tuple) else value


def _refusal(refused: Refused, model: type[Part], what: str) -> InputError:
    where = what + "".join(f" {p + 1}" if isinstance(p, int) else f" {str(p).replace('_', ' ')}" for p in refused.path)
    if isinstance(refused.kind, InputError):
        error = refused.kind
        return InputError(error.asked, where, error.why, error.nearest, error.do)
    key = str(refused.path[-1]) if refused.path else what
    if refused.kind == "missing":
        return InputError(key, where, "is missing", (), f"give {key}")
    if refused.kind == "unknown":
        from difflib import get_close_matches

        keys = _keys_at(model, refused.path[:-1])
        near = tuple(get_close_matches(key.casefold()[:60], keys, n=5, cutoff=0.5)) or keys
        return InputError(key, where, "no such key", near, "use one of these")
    wanted = "a list" if refused.kind == "list" else "a table"
    return InputError(key, where, f"{wanted} is wanted, not {kind_of(refused.value)}", (), f"give {wanted}")


def _keys_at(model: type[Part], path: tuple[str | int, ...]) -> tuple[str, ...]:
    for step in path:
        inner = model.keys[step].part if isinstance(step, str) else model
        model = inner if inner is not None else model
    return tuple(model.keys)
