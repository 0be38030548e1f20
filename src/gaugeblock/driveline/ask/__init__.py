"""What is asked about shafts, steels, gears and joints, as people say it: one module a noun."""

from __future__ import annotations

from gaugeblock.driveline.ask.axles import AXLE as AXLE
from gaugeblock.driveline.ask.axles import GRIP as GRIP
from gaugeblock.driveline.ask.both_set import BOTH_SET as BOTH_SET
from gaugeblock.driveline.ask.crawling import CRAWL as CRAWL
from gaugeblock.driveline.ask.crawling import SPEEDO_OF_GEARS as SPEEDO_OF_GEARS
from gaugeblock.driveline.ask.final_drive import FINAL_DRIVE as FINAL_DRIVE
from gaugeblock.driveline.ask.gears import GEARING as GEARING
from gaugeblock.driveline.ask.gears import ROAD as ROAD
from gaugeblock.driveline.ask.hardness import BY_SCALE as BY_SCALE
from gaugeblock.driveline.ask.hardness import HARD_OF_STRENGTH
from gaugeblock.driveline.ask.hardness import HARDNESS as HARDNESS
from gaugeblock.driveline.ask.joints import JOINT as JOINT
from gaugeblock.driveline.ask.joints import JOINT_LIMIT as JOINT_LIMIT
from gaugeblock.driveline.ask.joints import SLOPES as SLOPES
from gaugeblock.driveline.ask.other_tyres import REGEAR as REGEAR
from gaugeblock.driveline.ask.other_tyres import SPEEDO as SPEEDO
from gaugeblock.driveline.ask.props import LONGEST as LONGEST
from gaugeblock.driveline.ask.props import PROP_ON_THE_ROAD as PROP_ON_THE_ROAD
from gaugeblock.driveline.ask.props import PROP_SPEED as PROP_SPEED
from gaugeblock.driveline.ask.props import SHAFT as SHAFT
from gaugeblock.driveline.ask.setups import SETUP as SETUP
from gaugeblock.driveline.ask.setups import SPLINE as SPLINE
from gaugeblock.driveline.ask.setups import SPLINE_BY_SIZE as SPLINE_BY_SIZE
from gaugeblock.driveline.ask.shims import SHIMS as SHIMS
from gaugeblock.driveline.ask.steels import SHEAR_YIELD as SHEAR_YIELD
from gaugeblock.driveline.ask.steels import STEEL as STEEL
from gaugeblock.driveline.ask.steels import STRESS as STRESS
from gaugeblock.driveline.ask.steels import TENSILE_YIELD as TENSILE_YIELD
from gaugeblock.driveline.ask.steels import TUBE_TORQUE as TUBE_TORQUE
from gaugeblock.driveline.ask.steels import TWIST as TWIST
from gaugeblock.driveline.ask.teeth import TEETH as TEETH
from gaugeblock.driveline.ask.turning import TURNS as TURNS
from gaugeblock.driveline.ask.tyres import SHORT_TYRE as SHORT_TYRE
from gaugeblock.driveline.ask.tyres import TYRE as TYRE
from gaugeblock.driveline.ask.tyres import TYRE_AS_HIGH as TYRE_AS_HIGH
from gaugeblock.driveline.ask.tyres import TYRE_BY_HEIGHT as TYRE_BY_HEIGHT
from gaugeblock.driveline.ask.unanswered import BORED as BORED
from gaugeblock.driveline.ask.unanswered import EQUIVALENT
from gaugeblock.driveline.ask.unanswered import OTHER_STEEL as OTHER_STEEL
from gaugeblock.driveline.ask.unanswered import STRONGER as STRONGER
from gaugeblock.driveline.ask.unanswered import TAPER as TAPER

ALONE = (BY_SCALE,)
# Of two that read a line alike the first one has it.
TOPICS = (
    *(HARDNESS, TWIST, STEEL, AXLE, SPEEDO, TEETH, GEARING, TYRE, SLOPES, JOINT, SHIMS, SETUP, SPLINE, SHAFT, LONGEST),
    *(
        PROP_SPEED,
        PROP_ON_THE_ROAD,
        REGEAR,
        FINAL_DRIVE,
        TURNS,
        ROAD,
        JOINT_LIMIT,
        STRESS,
        SHEAR_YIELD,
        TENSILE_YIELD,
        TYRE_AS_HIGH,
    ),
    *(CRAWL, SPEEDO_OF_GEARS, SPLINE_BY_SIZE, GRIP, TUBE_TORQUE, BORED, OTHER_STEEL, STRONGER, TAPER, SHORT_TYRE),
    TYRE_BY_HEIGHT,
    BOTH_SET,
    HARD_OF_STRENGTH,
    EQUIVALENT,
)
