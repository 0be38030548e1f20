"""What an option says nothing without: every option that is given is read, or refused by its name."""

from __future__ import annotations

from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    Needs = Mapping[str, tuple[str, ...]]


def together(given: Mapping[str, object], needs: Needs) -> None:
    """InputError for an option that was given without any of those that it needs: option -> those, by key."""
    for name, others in needs.items():
        value = given.get(name)
        if value is None or any(given.get(other) is not None for other in others):
            continue
        said, wanted = name.replace("_", " "), " or ".join(other.replace("_", " ") for other in others)
        why = f"it says nothing without the {wanted}"
        raise InputError(str(value)[:60], said, why, (), f"give the {wanted} too, or leave the {said} out")


def known(given: Mapping[str, object], names: tuple[str, ...], of: str) -> None:
    """InputError for an option that the answer ``of`` this name does not have, with the nearest."""
    for name in given:
        if name not in names:
            from gaugeblock.tables.near import alike

            near = alike(name, names) or list(names)
            raise InputError(name[:60], of, f"not an option of {of}", near, "use one of these")


def unused(given: Mapping[str, object], names: tuple[str, ...], of: str) -> None:
    """InputError for an option that was given and that the figures ``of`` this do not ask for."""
    for name in names:
        if given.get(name) is not None:
            said = name.replace("_", " ")
            raise InputError(str(given[name])[:60], said, f"the figures of {of} do not go by it", (), "leave it out")
