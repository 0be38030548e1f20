"""Known: what the user knows of a thing, typed or measured: ``0.16``, ``0.16 (0.14 to 0.18) by load cell on
2026-11-20``.
"""

from __future__ import annotations

import re

from gaugeblock import span, units
from gaugeblock.errors import InputError
from gaugeblock.span import Span
from gaugeblock.units import Measure
from gaugeblock.value import Value, put

_MEASURED = re.compile(r"(?P<value>.+?)\s+by\s+(?P<tool>\S.*)", re.DOTALL)
_DATED = re.compile(r"(?P<tool>.+?)\s+on\s+(?P<date>[0-9]{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12][0-9]|3[01]))", re.ASCII)
_ROUND = re.compile(r"(?P<usual>[^()]+?)\s*\((?P<ends>[^()]+ to [^()]+)\)")
_LONGEST_TOOL = 60
_DO = 'write it as "{}" where it is typed, and as "{} by load cell 2 on 2026-11-20" where it was measured'


class Known(Value):
    """What somebody states: its ``ends`` (one and the same for a single number), the ``usual`` value between them
    where one is given, and with what ``tool`` and on which ``date`` it was measured; both blank where it was typed.
    """

    __slots__ = ("date", "ends", "tool", "usual")

    ends: Span
    usual: Measure | None
    tool: str
    date: str

    def __init__(self, ends: Span, usual: Measure | None = None, tool: str = "", date: str = "") -> None:
        put(self, "ends", ends)
        put(self, "usual", usual)
        put(self, "tool", tool)
        put(self, "date", date)

    @property
    def unit(self) -> str:
        """The unit that its numbers are in."""
        return self.ends.unit

    @property
    def typical(self) -> Measure:
        """The usual value, the one value, or of a range its higher end."""
        return self.usual or self.ends.high

    @property
    def is_range(self) -> bool:
        """Whether two ends were given."""
        return self.ends.is_range

    @property
    def numbers(self) -> str:
        """The value and its ends as typed, without what they were measured with."""
        return str(self.ends) if self.usual is None else f"{_said(self.usual)} ({self.ends})"

    @property
    def read_by(self) -> str:
        """With what it was measured, and when; blank where it was typed."""
        return f"{self.tool}, {self.date}" if self.tool else ""

    @property
    def text(self) -> str:
        """As it is typed."""
        return f"{self.numbers} by {self.tool} on {self.date}" if self.tool else self.numbers

    def __str__(self) -> str:
        return self.text


def of(measure: Measure) -> Known:
    """One typed number as a Known."""
    return Known(span.of(measure))


def _said(measure: Measure) -> str:
    return measure.number if measure.unit == "1" else measure.text


def parse_known(text: str, dim: str, where: str, example: str) -> Known:
    """Read what somebody states of a quantity that is more than zero; InputError or UnitError where it cannot be.

    ``0.16``, a range ``0.14 to 0.18``, a usual value with its ends ``0.16 (0.14 to 0.18)``; each with
    ``by TOOL on YYYY-MM-DD`` behind it where it was measured. ``example`` is a number with its unit, for a refusal.

    >>> parse_known("0.16 (0.14 to 0.18) by load cell on 2026-11-20", "ratio", "nut factor", "0.16").read_by
    'load cell, 2026-11-20'
    """
    value, tool, date = _measured(text.strip(), where, example)
    match = _ROUND.fullmatch(value)
    usual = units.parse_measure(match["usual"], dim, where) if match is not None else None
    ends = span.parse_span(match["ends"] if match is not None else value, dim, where)
    if ends.low.value <= 0 and dim != "temperature":
        raise InputError(text[:60], where, "must be more than zero", (), f"give the {where} itself")
    if usual is not None and not ends.low.to(ends.unit) <= usual.to(ends.unit) <= float(ends.high.value):
        raise InputError(text[:60], where, "the usual value lies outside its ends", (), "read all three again")
    return Known(ends, usual, tool, date)


def _measured(text: str, where: str, example: str) -> tuple[str, str, str]:
    """The value, the tool and the date of what was typed; the last two blank where it was not measured."""
    match = _MEASURED.fullmatch(text)
    if match is None:
        return text, "", ""
    dated = _DATED.fullmatch(match["tool"].strip())
    if dated is None:
        why = "what was measured says with what, and on which day"
        raise InputError(text[:60], where, why, (), _DO.format(example, example))
    if len(dated["tool"]) > _LONGEST_TOOL:
        raise InputError(dated["tool"][:60], where, f"more than {_LONGEST_TOOL} characters", (), "shorten the tool")
    return match["value"], dated["tool"], dated["date"]
