"""gaugeblock: reference figures for a small vehicle-building shop, each with its source, and the packet of one build.

>>> import gaugeblock
>>> gaugeblock.torque("3/8-16", grade="SAE J429 5", condition="dry").governing.text
'31'
"""

from __future__ import annotations

__version__ = "0.1.0"

# public name -> the module it stands in; loaded when first used, so that importing this package is quick
_FACE = {
    "torque": "gaugeblock.sheets.fasteners",
    "part": "gaugeblock.sheets.fastener_parts",
    "bend": "gaugeblock.sheets.tubes",
    "gauge": "gaugeblock.sheets.tube_tables",
    "pipe": "gaugeblock.sheets.tube_tables",
    "material": "gaugeblock.sheets.tube_tables",
    "flare": "gaugeblock.sheets.tube_tables",
    "heat": "gaugeblock.sheets.lines",
    "route": "gaugeblock.sheets.route",
    "steel": "gaugeblock.sheets.driveline",
    "hardness": "gaugeblock.sheets.driveline_hardness",
    "spline": "gaugeblock.sheets.driveline_spline",
    "setup": "gaugeblock.sheets.driveline_setup",
    "joint": "gaugeblock.sheets.driveline_joint",
    "sources": "gaugeblock.finding",
    "look_up": "gaugeblock.lookup",
    "find": "gaugeblock.finding",
    "refdata": "gaugeblock.tables.load",
    "audit_refdata": "gaugeblock.audit",
    "audit_packet": "gaugeblock.audit",
    "validate": "gaugeblock.tables.validate",
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
    home = _FACE.get(name)
    if home is None:
        raise AttributeError(f"module 'gaugeblock' has no attribute {name!r}")
    from importlib import import_module

    return getattr(import_module(home), name)


def __dir__() -> list[str]:
    return [*__all__, "__version__"]
