"""The one column catalogue: every table, its key columns and how they match, and the columns all rows share.

Schemas, the loader, the look-up and the documentation are made from this. A key is written
``name`` + marks: ``!`` no ``any`` allowed; ``~`` an interval; ``^`` interpolated between printed points.
"""

from __future__ import annotations

from gaugeblock.errors import LookupMiss

ROW_COLUMNS = (
    "quantity", "value", "low", "high", "unit", "conditions", "basis", "source", "locator", "checked", "standing",
    "since", "until", "note",
)  # fmt: skip

# The domains, in the order of the work on a car. The only list that names them beside cli.COMMANDS.
DOMAINS = ("fasteners", "tubes", "lines", "driveline")

# table -> key columns
TABLES: dict[str, str] = {
    "fasteners/threads": "thread!",
    "fasteners/thread_stripping": "thread! member!",
    "fasteners/grades": "standard! grade! size~",
    "fasteners/bolt_loads": "thread! standard! grade!",
    "fasteners/nut_factors": "surface lubricant",
    "fasteners/friction": "surface lubricant place",
    "fasteners/torques": "thread! standard! grade! condition! nut service",
    "fasteners/torque_multipliers": "condition! base! service",
    "fasteners/part_torques": "part! size! seat material service",
    "fasteners/prevailing": "nut! thread! service",
    "fasteners/preload": "method lubricant case",
    "fasteners/engagement": "into! load",
    "fasteners/pipe_threads": "series! size!",
    "tubes/materials": "family! material spec product condition od~ wall~",
    "tubes/sizes": "product! spec material od~ wall~",
    "tubes/gauges": "system! gauge!",
    "tubes/pipe_sizes": "nps! schedule",
    "tubes/bend_minimums": "product! family material condition od~ wall~ method measured_to! service",
    "tubes/bend_quality": "service! product! family case bend_ratio~",
    "tubes/flares": "standard! flare! tube_material od~",
    "lines/materials": "item! class state",
    "lines/fluids": "item! state",
    "lines/fuels": "item! state",
    "lines/clearances": "jurisdiction! subject! service!",
    "lines/supports": "service! subject! size~",
    "lines/limits": "jurisdiction! subject! service!",
    "lines/emissivity": "material! surface temperature~",
    "lines/expansion": "material! temperature~",
    "lines/growth": "material! temperature^!",
    "lines/heat_sources": "part! state",
    "lines/air": "fluid! temperature^!",
    "lines/wire": "item! size! condition",
    "driveline/steels": "steel! treatment temper~ section~ specimen",
    "driveline/hardness": "scale! hardness^!",
    "driveline/splines": "pitch! teeth! pressure_angle! root! fit",
    "driveline/spline_allowables": "material! teeth",
    "driveline/spline_factors": "factor! case! level!",
    "driveline/stress_concentration": "feature! loading! radius_ratio^! diameter_ratio^",
    "driveline/preheat": "steel! thickness~",
    "driveline/setup": "axle! component! step! wear",
    "driveline/joints": "joint! case shaft_speed^ service",
}

SERVICES = (
    "any", "vehicle", "vehicle safety cage", "light truck", "heavy truck", "military vehicle", "aircraft", "piping",
    "conduit", "marine", "industrial", "refrigeration", "hydraulic",
)  # fmt: skip
# A figure of one of these services answers a vehicle; all others inform and never pass or fail a check.
VEHICLE_SERVICES = ("vehicle", "any")


class Key:
    """A key column: its ``name``, how it matches (``exact``, ``interval``, ``interpolated``), and if ``any`` may stand."""

    __slots__ = ("any_allowed", "match", "name")

    def __init__(self, mark: str) -> None:
        self.any_allowed = not mark.endswith("!")
        mark = mark.rstrip("!")
        self.match = {"~": "interval", "^": "interpolated"}.get(mark[-1], "exact")
        self.name = mark.rstrip("~^")


_KEYS: dict[str, tuple[Key, ...]] = {}


def keys_of(table: str) -> tuple[Key, ...]:
    """The key columns of a table, in order; LookupMiss names the nearest tables."""
    got = _KEYS.get(table)
    if got is None:
        if table not in TABLES:
            from difflib import get_close_matches

            near = get_close_matches(table, TABLES, n=5, cutoff=0.3)
            raise LookupMiss(table, "refdata", "no such table", near, "use one of the tables of the catalogue")
        got = _KEYS[table] = tuple(Key(mark) for mark in TABLES[table].split())
    return got


def columns_of(table: str) -> tuple[str, ...]:
    """All columns of a table: its keys, then those every row has."""
    return tuple(k.name for k in keys_of(table)) + ROW_COLUMNS


# The other files of refdata: column names, in order.
LISTS: dict[str, tuple[str, ...]] = {
    "sources": ("id", "title", "publisher", "year", "kind", "url", "note", "since", "until"),
    "quantities": (
        "quantity", "dimension", "side", "safer", "prefers", "step", "hazard", "may", "plausible_low", "plausible_high",
        "plausible_unit", "definition", "words", "since", "until",
    ),
    "formulas": (
        "name", "domain", "expression", "symbols", "range", "basis", "source", "locator", "checked", "since", "until", "note",
    ),
    "words": ("domain", "word", "column", "cell", "since", "until", "note"),
    "releases": ("version", "date", "summary", "sha256"),
    "ranges": ("table", "quantity", "low", "high", "unit"),
    "rules": (
        "topic", "subject", "service", "jurisdiction", "statement", "basis", "source", "locator", "checked", "standing",
        "severity", "since", "until", "note",
    ),
}  # fmt: skip
