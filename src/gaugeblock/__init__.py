"""gaugeblock: reference figures for a small vehicle-building shop, each with its source, and the packet of one build.

>>> import gaugeblock
>>> gaugeblock.torque("3/8-16", grade="SAE J429 5", condition="dry").governing.text
'31'
"""

from __future__ import annotations

__version__ = "0.1.0"

# public name -> the module it stands in; loaded when first used, so that importing this package is quick. The answers
# are named by the domains.
_FACE = {
    "sources": "gaugeblock.finding",
    "look_up": "gaugeblock.lookup",
    "find": "gaugeblock.finding",
    "refdata": "gaugeblock.tables.load",
    "audit_refdata": "gaugeblock.audit",
    "audit_packet": "gaugeblock.audit",
    "validate": "gaugeblock.domains",
    "make_packet": "gaugeblock.packet.make",
    "Figure": "gaugeblock.figure",
    "GaugeblockError": "gaugeblock.errors",
    "LookupMiss": "gaugeblock.errors",
    "Ambiguous": "gaugeblock.errors",
    "InputError": "gaugeblock.errors",
    "UnitError": "gaugeblock.errors",
    "JobError": "gaugeblock.errors",
    "DataError": "gaugeblock.errors",
    "OutputError": "gaugeblock.errors",
}

__all__ = [
    "Ambiguous",
    "DataError",
    "Figure",
    "GaugeblockError",
    "InputError",
    "JobError",
    "LookupMiss",
    "OutputError",
    "UnitError",
    "audit_packet",
    "audit_refdata",
    "bend",
    "find",
    "flare",
    "gauge",
    "hardness",
    "heat",
    "joint",
    "look_up",
    "make_packet",
    "material",
    "part",
    "pipe",
    "refdata",
    "route",
    "setup",
    "sources",
    "spline",
    "steel",
    "torque",
    "validate",
]


def __getattr__(name: str) -> object:
    from importlib import import_module

    home = _FACE.get(name)
    if home is None and name in __all__:
        home = import_module("gaugeblock.domains").answers().get(name)
    if home is None:
        raise AttributeError(f"module 'gaugeblock' has no attribute {name!r}")
    return getattr(import_module(home), name)


def __dir__() -> list[str]:
    return [*__all__, "__version__"]
