"""gaugeblock: reference figures for a small vehicle-building shop, each with its source, and the packet of one build.

>>> import gaugeblock
>>> gaugeblock.torque("3/8-16", grade="SAE J429 5", condition="dry").governing.text
'31'
"""

from __future__ import annotations

__version__ = "0.25.0"

TYPE_CHECKING = False  # a type checker sees each name; a running program loads it when it is first used
if TYPE_CHECKING:
    from gaugeblock.answer.caution import Caution as Caution
    from gaugeblock.answer.check import Bound as Bound
    from gaugeblock.answer.check import Check as Check
    from gaugeblock.answer.decision import Candidate as Candidate
    from gaugeblock.answer.decision import Decision as Decision
    from gaugeblock.answer.question import Question as Question
    from gaugeblock.answer.sheet import Sheet as Sheet
    from gaugeblock.answer.table import Table as Table
    from gaugeblock.audit.packets import audit_packet as audit_packet
    from gaugeblock.audit.tables import audit_refdata as audit_refdata
    from gaugeblock.domains import validate as validate
    from gaugeblock.driveline.axles.answer import axle as axle
    from gaugeblock.driveline.axles.answer import axle_compared as axle_compared
    from gaugeblock.driveline.gears.answer import gearing as gearing
    from gaugeblock.driveline.gears.final_drive import finaldrive as finaldrive
    from gaugeblock.driveline.gears.regear import regear as regear
    from gaugeblock.driveline.gears.road_speed import roadspeed as roadspeed
    from gaugeblock.driveline.gears.size import tyre as tyre
    from gaugeblock.driveline.gears.teeth import ratio as ratio
    from gaugeblock.driveline.gears.true_speed import true_speed as true_speed
    from gaugeblock.driveline.gears.turns import turns as turns
    from gaugeblock.driveline.hardness import hardness as hardness
    from gaugeblock.driveline.joints.answer import joint as joint
    from gaugeblock.driveline.joints.limit import joint_limit as joint_limit
    from gaugeblock.driveline.propshafts.answer import shaft as shaft
    from gaugeblock.driveline.setups.answer import setup as setup
    from gaugeblock.driveline.shims.answer import shims as shims
    from gaugeblock.driveline.splines.answer import spline as spline
    from gaugeblock.driveline.steel import steel as steel
    from gaugeblock.driveline.stress import shaftstress as shaftstress
    from gaugeblock.errors import Ambiguous as Ambiguous
    from gaugeblock.errors import DataError as DataError
    from gaugeblock.errors import GaugeblockError as GaugeblockError
    from gaugeblock.errors import InputError as InputError
    from gaugeblock.errors import JobError as JobError
    from gaugeblock.errors import LookupMiss as LookupMiss
    from gaugeblock.errors import OutputError as OutputError
    from gaugeblock.errors import UnitError as UnitError
    from gaugeblock.exhaust.gap import exhaust_gap as exhaust_gap
    from gaugeblock.exhaust.hanger import exhaust_hanger as exhaust_hanger
    from gaugeblock.exhaust.ignition import exhaust_ignition as exhaust_ignition
    from gaugeblock.exhaust.joint import exhaust_joint as exhaust_joint
    from gaugeblock.exhaust.outlet import exhaust_outlet as exhaust_outlet
    from gaugeblock.exhaust.pipe import exhaust_pipe as exhaust_pipe
    from gaugeblock.exhaust.run.answer import exhaust_run as exhaust_run
    from gaugeblock.exhaust.wrap import exhaust_wrap as exhaust_wrap
    from gaugeblock.fasteners.depth import engagement as engagement
    from gaugeblock.fasteners.drills import drill as drill
    from gaugeblock.fasteners.grade_facts import grade as grade
    from gaugeblock.fasteners.hole import hole as hole
    from gaugeblock.fasteners.identify import identify as identify
    from gaugeblock.fasteners.part import part as part
    from gaugeblock.fasteners.pipe_thread import pipe_thread as pipe_thread
    from gaugeblock.fasteners.spanner import spanner as spanner
    from gaugeblock.fasteners.thread_facts import thread as thread
    from gaugeblock.fasteners.torque import torque as torque
    from gaugeblock.figure import Figure as Figure
    from gaugeblock.finding import find as find
    from gaugeblock.finding import sources as sources
    from gaugeblock.found import Found as Found
    from gaugeblock.found import Listed as Listed
    from gaugeblock.frames import frame as frame
    from gaugeblock.lines.antifreeze import antifreeze as antifreeze
    from gaugeblock.lines.brakes.circuit import brake as brake
    from gaugeblock.lines.brakes.facts import brake_fact as brake_fact
    from gaugeblock.lines.brakes.hand import handbrake as handbrake
    from gaugeblock.lines.brakes.hose import brake_hose as brake_hose
    from gaugeblock.lines.brakes.master import mastercylinder as mastercylinder
    from gaugeblock.lines.brakes.pedal import pedal as pedal
    from gaugeblock.lines.clutch.travel import clutch as clutch
    from gaugeblock.lines.cooling import coolant as coolant
    from gaugeblock.lines.fuel.habits import fuel_habit as fuel_habit
    from gaugeblock.lines.fuel.injector.flow import injector as injector
    from gaugeblock.lines.fuel.injector.size import injector_size as injector_size
    from gaugeblock.lines.fuel.leak import fuel_test as fuel_test
    from gaugeblock.lines.fuel.line import fuel_line as fuel_line
    from gaugeblock.lines.fuel.supply import fuel as fuel
    from gaugeblock.lines.heat import heat as heat
    from gaugeblock.lines.held import clips as clips
    from gaugeblock.lines.held import growth as growth
    from gaugeblock.lines.route import route as route
    from gaugeblock.lookup import look_up as look_up
    from gaugeblock.packet.make import make_packet as make_packet
    from gaugeblock.plain.answer import ask as ask
    from gaugeblock.plain.comparing import compared as compared
    from gaugeblock.plain.convert import Conversion as Conversion
    from gaugeblock.tables.fault import Fault as Fault
    from gaugeblock.tables.load import Refdata as Refdata
    from gaugeblock.tables.load import refdata as refdata
    from gaugeblock.tubes.arc import arc as arc
    from gaugeblock.tubes.beam import beam as beam
    from gaugeblock.tubes.bend.sheet import bend as bend
    from gaugeblock.tubes.box import box as box
    from gaugeblock.tubes.flare import flare as flare
    from gaugeblock.tubes.folded.part import sheet_bend as sheet_bend
    from gaugeblock.tubes.gauge import gauge as gauge
    from gaugeblock.tubes.material import material as material
    from gaugeblock.tubes.mitre import mitre as mitre
    from gaugeblock.tubes.notch import cope as cope
    from gaugeblock.tubes.offset import offset as offset
    from gaugeblock.tubes.overbend import overbend as overbend
    from gaugeblock.tubes.pipe import pipe as pipe
    from gaugeblock.tubes.plan.plan import plan as plan
    from gaugeblock.tubes.section import section as section
    from gaugeblock.tubes.sheet_metal import sheet as sheet
    from gaugeblock.wiring.circuit import circuit as circuit
    from gaugeblock.wiring.fusing import fuse as fuse
    from gaugeblock.wiring.lost import drop as drop
    from gaugeblock.wiring.parked import parked as parked
    from gaugeblock.wiring.reach import reach as reach
    from gaugeblock.wiring.size import wire_size as wire_size

# public name -> the module it stands in, so that importing this package is quick. The answers are named by the domains.
_FACE = {
    "ask": "gaugeblock.plain.answer",
    "compared": "gaugeblock.plain.comparing",
    "Table": "gaugeblock.answer.table",
    "sources": "gaugeblock.finding",
    "look_up": "gaugeblock.lookup",
    "find": "gaugeblock.finding",
    "frame": "gaugeblock.frames",
    "refdata": "gaugeblock.tables.load",
    "Refdata": "gaugeblock.tables.load",
    "Fault": "gaugeblock.tables.fault",
    "audit_refdata": "gaugeblock.audit.tables",
    "audit_packet": "gaugeblock.audit.packets",
    "validate": "gaugeblock.domains",
    "make_packet": "gaugeblock.packet.make",
    "Figure": "gaugeblock.figure",
    "Sheet": "gaugeblock.answer.sheet",
    "Check": "gaugeblock.answer.check",
    "Decision": "gaugeblock.answer.decision",
    "Question": "gaugeblock.answer.question",
    "Caution": "gaugeblock.answer.caution",
    "Found": "gaugeblock.found",
    "Listed": "gaugeblock.found",
    "Conversion": "gaugeblock.plain.convert",
    "Candidate": "gaugeblock.answer.decision",
    "Bound": "gaugeblock.answer.check",
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
    "Bound",
    "Candidate",
    "Caution",
    "Check",
    "Conversion",
    "DataError",
    "Decision",
    "Fault",
    "Figure",
    "Found",
    "GaugeblockError",
    "InputError",
    "JobError",
    "Listed",
    "LookupMiss",
    "OutputError",
    "Question",
    "Refdata",
    "Sheet",
    "Table",
    "UnitError",
    "antifreeze",
    "arc",
    "ask",
    "audit_packet",
    "audit_refdata",
    "axle",
    "axle_compared",
    "beam",
    "bend",
    "box",
    "brake",
    "brake_fact",
    "brake_hose",
    "circuit",
    "clips",
    "clutch",
    "compared",
    "coolant",
    "cope",
    "drill",
    "drop",
    "engagement",
    "exhaust_gap",
    "exhaust_hanger",
    "exhaust_ignition",
    "exhaust_joint",
    "exhaust_outlet",
    "exhaust_pipe",
    "exhaust_run",
    "exhaust_wrap",
    "finaldrive",
    "find",
    "flare",
    "frame",
    "fuel",
    "fuel_habit",
    "fuel_line",
    "fuel_test",
    "fuse",
    "gauge",
    "gearing",
    "grade",
    "growth",
    "handbrake",
    "hardness",
    "heat",
    "hole",
    "identify",
    "injector",
    "injector_size",
    "joint",
    "joint_limit",
    "look_up",
    "make_packet",
    "mastercylinder",
    "material",
    "mitre",
    "offset",
    "overbend",
    "parked",
    "part",
    "pedal",
    "pipe",
    "pipe_thread",
    "plan",
    "ratio",
    "reach",
    "refdata",
    "regear",
    "roadspeed",
    "route",
    "section",
    "setup",
    "shaft",
    "shaftstress",
    "sheet",
    "sheet_bend",
    "shims",
    "sources",
    "spanner",
    "spline",
    "steel",
    "thread",
    "torque",
    "true_speed",
    "turns",
    "tyre",
    "validate",
    "wire_size",
]


if not TYPE_CHECKING:  # to a type checker a name that is not above is none

    def __getattr__(name: str) -> object:
        from importlib import import_module

        home = _FACE.get(name)
        if home is None and name in __all__:
            home = import_module("gaugeblock.domains").answers().get(name)
        if home is None:
            raise AttributeError(f"module 'gaugeblock' has no attribute {name!r}")
        found = getattr(import_module(home), name)
        if not isinstance(found, type):
            found = import_module("gaugeblock.typed").guarded(found, name)
        globals()[name] = found
        return found


def __dir__() -> list[str]:
    return [*__all__, "__version__"]
