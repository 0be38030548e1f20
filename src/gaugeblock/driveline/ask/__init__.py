"""What is asked about shafts, steels, gears and joints, as people say it: one module a noun."""

from __future__ import annotations

from gaugeblock.driveline.ask.axles import AXLE
from gaugeblock.driveline.ask.gears import GEARING
from gaugeblock.driveline.ask.joints import JOINT, SHAFT
from gaugeblock.driveline.ask.setups import SETUP, SPLINE
from gaugeblock.driveline.ask.shims import SHIMS
from gaugeblock.driveline.ask.steels import HARDNESS, STEEL

TOPICS = (HARDNESS, STEEL, AXLE, GEARING, JOINT, SHIMS, SETUP, SPLINE, SHAFT)
