"""The temperature of exhaust gas, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import amount
from gaugeblock.answer.limited import Limited
from gaugeblock.answer.said_units import value_of

_LEAST_GAS = 100  # degrees on either scale: no exhaust gas under way is colder
# A bare number is its pipe, and not 2.5 degrees.
HOT = Limited(
    amount("temperature", say="gas {}"), lambda _words, _at, hit: value_of(hit.value.partition(" ")[0]) >= _LEAST_GAS
)
