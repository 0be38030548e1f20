"""What the tables of a job are made of: checked values, and the model they share. Blank text is a missing key."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, model_validator
from pydantic_core import CoreSchema, core_schema

from gaugeblock.errors import InputError
from gaugeblock.job import values
from gaugeblock.tables.catalogue import SERVICES

DIRECTIONS = ("forward", "rearward", "left", "right", "up", "down")


class Read:
    """How a text of a job is read. Its schema is made once, not again for each of the 200 keys that share it."""

    def __init__(self, read: Callable[..., str], **options: Any) -> None:
        self._schema = core_schema.no_info_before_validator_function(
            partial(read, **options) if options else read, core_schema.str_schema()
        )

    def __get_pydantic_core_schema__(self, source: Any, handler: Any) -> CoreSchema:
        return self._schema


Name = Annotated[str, Read(values.plain_text, limit=values.NAME_LIMIT)]
Text = Annotated[str, Read(values.plain_text)]
Length = Annotated[str, Read(values.measure, dim="length")]
Gap = Annotated[str, Read(values.measure, dim="length", least="zero")]
Torque = Annotated[str, Read(values.measure, dim="torque")]
Stress = Annotated[str, Read(values.measure, dim="stress")]
Temperature = Annotated[str, Read(values.measure, dim="temperature")]
Turn = Annotated[str, Read(values.measure, dim="angle", least="any")]
Place = Annotated[str, Read(values.measure, dim="length", least="any")]
Mass = Annotated[str, Read(values.measure, dim="mass")]
Force = Annotated[str, Read(values.measure, dim="force")]
Ratio = Annotated[str, Read(values.measure, dim="ratio")]
BendAngle = Annotated[str, Read(values.bend_angle)]
Share = Annotated[str, Read(values.share)]
Wrench = Annotated[str, Read(values.wrench)]
IssueDate = Annotated[str, Read(values.issue_date)]
AnyFigure = Annotated[str, Read(values.figure_text)]
Finding = Annotated[str, Read(values.finding)]
Count = Annotated[int, Field(ge=1, le=values.COUNT_LIMIT)]


def one_of(*choices: str) -> Read:
    return Read(values.choice, choices=choices)


Service = Annotated[str, one_of(*SERVICES)]
Direction = Annotated[str, one_of(*DIRECTIONS)]
YesNo = Annotated[str, one_of("yes", "no")]


def _point(value: Any, least: str) -> tuple[str, str, str]:
    """Three lengths: rearward, right and up."""
    if not isinstance(value, list | tuple) or len(value) != 3:
        what = f"{len(value)} values" if isinstance(value, list | tuple) else values.kind_of(value)
        why = f"three lengths are wanted (rearward, right, up), not {what}"
        raise InputError("value", "", why, (), 'write it as ["0 in", "-18 in", "6 in"]')
    a, b, c = (values.measure(v, "length", least) for v in value)
    return (a, b, c)


Point = Annotated[tuple[str, str, str], BeforeValidator(partial(_point, least="any")), Field(strict=False)]
Size = Annotated[tuple[str, str, str], BeforeValidator(partial(_point, least="positive")), Field(strict=False)]
# TOML gives lists, a frozen model holds tuples; what is inside stays strict.
as_tuple = Field(strict=False)


class Part(BaseModel):
    """What all tables of a job share: unknown keys refused, frozen, blank text dropped."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True, defer_build=True)

    @model_validator(mode="before")
    @classmethod
    def _drop_blanks(cls, raw: Any) -> Any:
        if not isinstance(raw, dict):
            return raw
        known = {field.alias or name for name, field in cls.model_fields.items()}
        return {key: value for key, value in raw.items() if key not in known or not values.is_blank(value)}

    def as_dict(self) -> dict[str, Any]:
        """What was given, with the keys of the file, as JSON carries it; what is blank is left out."""
        given = ((field.alias or name, getattr(self, name)) for name, field in type(self).model_fields.items())
        return {key: _plain(value) for key, value in given if value is not None}


def _plain(value: Any) -> Any:
    if isinstance(value, Part):
        return value.as_dict()
    return [_plain(v) for v in value] if isinstance(value, tuple) else value
