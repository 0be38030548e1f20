"""What the tables of a job are made of: checked values, and the model they share. Blank text is a missing key."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Annotated, Any, Self, get_args, get_origin

from gaugeblock.errors import InputError
from gaugeblock.job import values
from gaugeblock.job.locate import Path
from gaugeblock.job.wrench import WrenchRange
from gaugeblock.known import Known
from gaugeblock.tables.catalogue import SERVICES
from gaugeblock.units import Measure
from gaugeblock.value import Value

DIRECTIONS = ("forward", "rearward", "left", "right", "up", "down")

# A value's reader gives what the job holds, or refuses it with InputError.
Name = Annotated[str, partial(values.plain_text, limit=values.NAME_LIMIT)]
Text = Annotated[str, values.plain_text]
Length = Annotated[Measure, partial(values.measure, dim="length")]
Wall = Annotated[Measure, values.wall]
Gap = Annotated[Measure, partial(values.measure, dim="length", least="zero")]
Torque = Annotated[Measure, partial(values.measure, dim="torque")]
Stress = Annotated[Measure, partial(values.measure, dim="stress")]
StatedTemperature = Annotated[Known, partial(values.known, dim="temperature", example="10 degC")]
StatedExpansion = Annotated[Known, partial(values.known, dim="thermal expansion", example="17.3 um/(m*K)")]
StatedStress = Annotated[Known, partial(values.known, dim="stress", example="30 ksi")]
Temperature = Annotated[Measure, partial(values.measure, dim="temperature")]
Speed = Annotated[Measure, partial(values.measure, dim="rotational speed")]
Turn = Annotated[Measure, partial(values.measure, dim="angle", least="any")]
Place = Annotated[Measure, partial(values.measure, dim="length", least="any")]
Mass = Annotated[Measure, partial(values.measure, dim="mass")]
Force = Annotated[Measure, partial(values.measure, dim="force")]
Ratio = Annotated[Measure, partial(values.measure, dim="ratio")]
BendAngle = Annotated[Measure, values.bend_angle]
Share = Annotated[Measure, values.share]
Wrench = Annotated[WrenchRange, values.wrench]
IssueDate = Annotated[str, values.issue_date]
AnyFigure = Annotated[Measure, values.any_measure]
Finding = Annotated[Measure | str, values.finding]
Count = Annotated[int, values.count]
Point = Annotated[tuple[Measure, Measure, Measure], partial(values.point, least="any")]
Size = Annotated[tuple[Measure, Measure, Measure], partial(values.point, least="positive")]


def one_of(*choices: str) -> Callable[[object], str]:
    """The reader of one of a short list of words."""
    return partial(values.choice, choices=choices)


Service = Annotated[str, one_of(*SERVICES)]
Direction = Annotated[str, one_of(*DIRECTIONS)]
YesNo = Annotated[str, one_of("yes", "no")]


class Refused:
    """What is wrong at one place of a job: ``missing``, ``unknown``, ``list`` or ``table`` wanted, or a value's own
    InputError.
    """

    __slots__ = ("kind", "path", "value")

    def __init__(self, path: Path, kind: str | InputError, value: object = None) -> None:
        self.path = path
        self.kind = kind
        self.value = value


class Key:
    """A key of a table of a job: its attribute, and what is in it: a table (``part``) or what ``reader`` takes, or
    many.
    """

    __slots__ = ("is_needed", "many", "name", "part", "reader")

    def __init__(self, name: str, annotation: Any, is_needed: bool) -> None:
        self.name = name
        self.is_needed = is_needed
        optional = [a for a in get_args(annotation) if a is not type(None)]
        inner = optional[0] if len(optional) < len(get_args(annotation)) else annotation
        self.many = get_origin(inner) is tuple
        if self.many:
            inner = get_args(inner)[0]
        self.part: type[Part] | None = inner if isinstance(inner, type) and issubclass(inner, Part) else None
        self.reader: Callable[[object], Any] | None = None if self.part else inner.__metadata__[0]

    def read(self, value: object, path: Path, refused: list[Refused]) -> Any:
        """The checked value; what is wrong goes into ``refused``."""
        if not self.many:
            return self._one(value, path, refused)
        if not isinstance(value, list):
            refused.append(Refused(path, "list", value))
            return ()
        return tuple([self._one(item, (*path, at), refused) for at, item in enumerate(value)])

    def _one(self, value: object, path: Path, refused: list[Refused]) -> Any:
        if self.part is not None:
            return self.part.read(value, path, refused)
        assert self.reader is not None
        try:
            return self.reader(value)
        except InputError as error:
            refused.append(Refused(path, error, value))
            return None


class Part:
    """What all tables of a job share: known keys only, frozen, blank text dropped.

    A subclass names its keys as annotated attributes: a checked value above, a Part, a tuple of either; ``| None`` when
    it may be missing. It has the keys of the class that it is made from, too. ``aliases`` are the keys of the file
    that no attribute can be called.
    """

    keys: dict[str, Key] = {}  # noqa: RUF012 - made by __init_subclass__, key of the file -> Key

    def __init_subclass__(cls, aliases: Mapping[str, str] | None = None) -> None:
        named = {
            (aliases or {}).get(name, name): Key(name, annotation, name not in cls.__dict__)
            for name, annotation in cls.__annotations__.items()
        }
        cls.keys = {**named, **{name: key for name, key in cls.keys.items() if name not in named}}

    def __init__(self, **given: Any) -> None:
        self.__dict__.update(given)

    @classmethod
    def read(cls, raw: object, path: Path, refused: list[Refused]) -> Self:
        """The part that a table of the file makes; what is wrong with it goes into ``refused``."""
        part = cls()
        if isinstance(raw, str):
            try:
                raw = cls.of_text(raw) or raw
            except InputError as error:
                refused.append(Refused(path, error, raw))
                return part
        if not isinstance(raw, dict):
            refused.append(Refused(path, "table", raw))
            return part
        for name, key in cls.keys.items():
            value = raw.get(name)
            if value is not None and not values.is_blank(value):
                part.__dict__[key.name] = key.read(value, (*path, name), refused)
            elif key.is_needed:
                refused.append(Refused((*path, name), "missing"))
        refused += [Refused((*path, name), "unknown") for name in raw if name not in cls.keys]
        return part

    @classmethod
    def of_text(cls, text: str) -> dict[str, Any] | None:
        """The keys of the table where it is written as one text, as a command takes it; None where none does."""
        del text
        return None

    def as_dict(self) -> dict[str, Any]:
        """What was given, with the keys of the file, as JSON carries it; what is blank is left out."""
        given = ((name, getattr(self, key.name)) for name, key in self.keys.items())
        return {name: _plain(value) for name, value in given if value is not None}

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"a job is frozen: {name} cannot be set")

    def __eq__(self, other: object) -> bool:
        return type(other) is type(self) and all(
            getattr(self, key.name) == getattr(other, key.name) for key in self.keys.values()
        )

    __hash__ = None  # type: ignore[assignment]


class Entry(Part):
    """What every item of a job may say: ``step``, its place in the order of the work."""

    step: Count | None = None


def _plain(value: Any) -> Any:
    if isinstance(value, Part):
        return value.as_dict()
    if isinstance(value, Value):
        return str(value)
    return [_plain(v) for v in value] if isinstance(value, tuple) else value


def as_texts(value: Any) -> Any:
    """A part with its measures as text: for the answers that still read text."""
    if isinstance(value, Measure):
        return value.text
    if isinstance(value, tuple):
        return tuple(as_texts(v) for v in value)
    if not isinstance(value, Part):
        return value
    copy = type(value)()
    copy.__dict__.update({name: as_texts(inner) for name, inner in value.__dict__.items()})
    return copy
