"""The commented starter of a job file: every key with what it means and how the trade writes it."""

from __future__ import annotations

import os

from gaugeblock.job.output import write_new

STARTER = """\
# A job file: one vehicle, and what is tightened, bent, run and set up on it.
#
# Fill in what you know. What is left blank comes out as a blank box, and a check that needs it says `cannot tell`.
# A line that begins with # and a key is switched off: take the # away to use it.
# Figures are text with their unit: "31 lbf*ft", "25 Nm", "1-3/4 in", ".120 in", "16 mm", "45 deg", "250 degF".
# Items of one kind each begin with their name in double brackets; write as many as there are.

[job]                                   # the title block of the packet
owner = ""                              # whose it is, e.g. "A. Sample"
identification = ""                     # number on the vehicle, e.g. "frame no. 1047"
vehicle = ""                            # in plain words, e.g. "two-seat roadster, tube frame, front engine"
revision = ""                           # e.g. "A", then "B" when a figure changes
issued = ""                             # date of issue, year-month-day, e.g. "2031-05-17"
status = "draft"                        # "draft", "for build" or "as built"
notes = ""                              # one line for the title block

[shop]                                  # the tools that the numbers are set with
name = ""                               # e.g. "north bay"
units = "inch"                          # "inch" or "metric": which unit stands first
#wrenches = ["30 to 250 lbf*in by 1", "10 to 80 lbf*ft by 1"]   # each torque wrench: low to high, by its graduation
#stock_length = "20 ft"                 # tube as it is bought
#kerf = "1/16 in"                       # what the saw takes

#[[shop.dies]]                          # each bending die
#name = "die A"                         # how the shop calls it
#od = "1-3/4 in"                        # tube it takes
#radius = "6 in"                        # centre-line radius
#start_mark = "2-1/4 in"                # from the mark on the die to the tangent point
#grip = "4 in"                          # straight that the clamp needs
#between = "2 in"                       # straight needed between two bends, where it is not the grip
#notes = ""
#[[shop.dies.test_bends]]               # bends made to learn how far this lot springs back
#pulled = "92 deg"                      # angle under load
#released = "90 deg"                    # angle when let go
#material = "1020"                      # of the tube that was bent, as the tube names it
#wall = ".120 in"                       # wall thickness
#notes = ""

[[fasteners]]                           # one a fastener, or a set of alike ones
name = "EXAMPLE bracket bolts"          # your own name for it; each name once
where = "steering gear to frame"        # where it is on the vehicle
thread = "3/8-16 UNC"                   # size and thread, e.g. "1/2-20 UNF", "M10x1.5"
grade = "SAE J429 5"                    # standard and grade, e.g. "ISO 898-1 8.8"
condition = "dry"                       # thread as it is tightened: "dry", "oiled", a paste
into = ""                               # what the thread goes into, e.g. "aluminium", "cast iron", "steel nut"
engagement = ""                         # length of thread in it, e.g. "5/8 in"
#tapped_strength = "30 ksi"             # tensile strength of that material, if you know it
#joint = "reused"                       # "reused" or "permanent"
locknut = ""                            # e.g. "nylon insert", "all-metal"
#prevailing = "20 lbf*in"               # drag of the locknut as measured on the way down
#service = "vehicle"                    # leave it out for a road vehicle
count = 4                               # how many
order = ""                              # tightening order, e.g. "crosswise from the middle"
passes = []                             # shares of the final torque, rising, e.g. ["50 %", "80 %", "100 %"]
retighten = ""                          # after heat or after miles, e.g. "cold, after the first heat"
#wrench = "10 to 80 lbf*ft by 1"        # the wrench for this one
#adapter = { length = "2 in", wrench_length = "18 in", angle = "0 deg" }   # crow-foot; 0 deg points straight on
notes = ""
#[fasteners.maker]                      # the part maker's own figure governs, and is printed as the maker's
#torque = "30 lbf*ft"                   # the figure, when it is one
#low = "28 lbf*ft"                      # when the maker gives a range
#high = "32 lbf*ft"                     # the upper end of it
#source = "maker's data sheet, issue 3" # the paper it stands in
#place = "page 2"                       # where in it

#[[fasteners]]                          # a part that has its own figure: plug, line nut, hose clamp, drain plug
#name = "EXAMPLE spark plugs"
#part = "spark plug"                    # what it is, instead of a thread and grade
#size = "14 mm"                         # its size as it is sold
#seat = "gasket seat"                   # how it seals
#material = "aluminium head"            # what it goes into
#count = 4

#[[tubes]]                              # one a tube to be bent; its shape is given in one of the ways below
#name = "EXAMPLE main hoop"
#where = "behind the seats"
#material = "1020"                      # steel or alloy
#product = "DOM"                        # how the tube was made
#spec = "ASTM A513"                     # what it was bought to
#condition = "as drawn"
#od = "1-3/4 in"
#wall = ".120 in"
#wall_needed = ".095 in"                # wall that must be left at the outside of a bend
#method = "rotary draw"                 # how it is bent
#die = "die A"                          # a name from [[shop.dies]]; or give a radius
#service = "vehicle"
#count = 1
#marks_from = "centre"                  # what marks are measured from: "centre", "start" or "end" of the tube
#reads = "1/32 in"                      # the tape: "1/32 in", "1/16 in", "decimal" or "mm"
#trim = { start = "1 in", end = "1 in" } # spare length at each end, cut off after bending
#tolerance = "1/16 in"                  # on the finished tube, for a bending shop
#end = "24 in"                          # straight after the last bend
#bends = [                              # in order: straight before it, angle, turn of the tube since the bend before
#  { straight = "24 in", angle = "90 deg" },
#  { straight = "20 in", angle = "90 deg", turn = "0 deg", radius = "6 in" },
#]
#copes = [{ end = "end", onto = "1-3/4 in", angle = "60 deg", offset = "0 in" }]   # ends cut to fit another tube
#mitres = [{ angle = "90 deg", radius = "4 in", joints = 3 }]   # corners cut and welded; a radius and joints: pie cuts
#notes = ""

#[[tubes]]                              # bent to a radius, without a die of the list
#name = "EXAMPLE hand rail"
#radius = "7 in"                        # centre-line radius
#single = { first = "12 in", second = "20 in", angle = "60 deg" }   # one bend: legs from end to apex

#[[tubes]]                              # from what it must clear: the tube goes over it and lands on its feet
#name = "EXAMPLE crossmember"
#datum = "middle of the frame at the gearbox mount"   # where rearward, right and up are measured from
#place = { start = ["0 in", "-18 in", "0 in"], runs = "right", bends = "up" }   # its first end, its run, its first bend
#gap = "3/4 in"                         # gap asked of everything round it
#moves = [                              # how far the tube itself moves, by direction
#  { why = "heat", up = "1 mm", down = "0 in", left = "0 in", right = "0 in", forward = "0 in", rearward = "0 in" },
#]
#collars = [{ at = "2 in", length = "1/4 in", od = "3 in" }]   # flanges and clamps wider than the tube
#[tubes.clear]
#name = "exhaust pipe"
#od = "2-1/2 in"                        # a round pipe; or width = "8 in" for something flat on top
#height = "2 in"                        # of its centre (flat: its top) over the centre line of the first foot
#at = "18 in"                           # its middle, from the first end
#span = "36 in"                         # from end to end
#gap = "3/4 in"
#angle = "45 deg"                       # of the bends
#second_foot_up = "0 in"                # how much higher the second foot stands
#moves = [
#  { why = "rock", left = "6 mm", right = "6 mm", up = "3 mm", down = "0 in", forward = "0 in", rearward = "0 in" },
#]
#[[tubes.obstacles]]                    # what must not be touched: a pipe along its points
#name = "propeller shaft"
#points = [["-4 in", "0 in", "9 in"], ["10 in", "0 in", "9 in"], ["30 in", "2 in", "8 in"]]   # rearward, right, up
#od = "3 in"
#radius = "6 in"                        # of its bends, where it has any
#gap = "1/2 in"                         # its own, where it is another
#collars = [{ at = "3 in", length = "1 in", od = "4 in" }]
#moves = [
#  { why = "bump", up = "3 in", down = "2 in", left = "0 in", right = "0 in", forward = "0 in", rearward = "1 in" },
#]
#[[tubes.obstacles]]
#name = "battery tray"
#box = { middle = ["6 in", "10 in", "8 in"], size = ["7 in", "9 in", "8 in"] }   # sizes rearward, right, up
#[[tubes.obstacles]]
#name = "road"
#plane = { point = ["0 in", "0 in", "-9 in"], free = "up" }   # and which side is free
#[tubes.removal]                        # a part that must come out past the tube
#name = "gearbox"
#middle = ["-10 in", "0 in", "9 in"]    # of the box round it
#size = ["18 in", "9 in", "7 in"]       # of that box: rearward, right, up
#travel = ["-8 in", "0 in", "0 in"]     # how it is moved out, in a straight line
#[tubes.load]                           # what it carries; a screening figure
#mass = "90 kg"                         # what rests on it
#at = "centre"                          # where: "centre", or a length from its first end, measured level
#bump_factor = "3"                      # times its weight, as you state it
#torque = "200 lbf*ft"                  # torque reaction
#mount_spacing = "6 in"                 # between two mounts that take it
#feet = "pinned"                        # "pinned" or "fixed"
#feet_in = "1-1/2 in"                   # how far inside the ends the feet hold
#yield_share = "50 %"                   # share of the yield strength that you allow
#[tubes.bolts]                          # bolts through the tube
#clamp_load = "8000 lbf"                # of one bolt, from its own sheet
#width = "1-1/2 in"                     # tube under the washer or bracket
#sleeve = "no"                          # "yes" with a crush sleeve
#slots = "yes"                          # slotted holes
#friction = "0.15"                      # between the clamped faces
#count = 4

#[[tubes]]
#name = "EXAMPLE offset pipe"
#offset = { rise = "6 in", angle = "45 deg", before = "8 in", after = "8 in" }   # straights before and after

#[[tubes]]
#name = "EXAMPLE kick-up"
#kick_up = { flat = "6 in", rise = "5 in", angle = "45 deg", foot = "8 in" }   # both sides alike

#[[tubes]]
#name = "EXAMPLE kick-up by its width"
#[tubes.kick_up]
#width = "40 in"                        # over all, for the flat
#rise = "5 in"                          # centre line to centre line
#foot = "8 in"                          # straight at the foot
#second = { rise = "4 in", angle = "30 deg", foot = "9 in" }   # the other side, where it is not the same

#[[tubes]]
#name = "EXAMPLE over a flat thing"
#clear = { width = "8 in", height = "3 in", at = "20 in", span = "42 in", gap = "1 in", angle = "45 deg" }   # a box

#[[tubes]]
#name = "EXAMPLE saddle"
#saddle = { rise = "3 in", angle = "30 deg", before = "8 in", after = "8 in" }   # three bends over one thing

#[[tubes]]
#name = "EXAMPLE read off a bent rod"
#[tubes.template]
#lengths = ["10 in", "6 in", "12 in"]   # apex to apex, ends included
#angles = ["45 deg", "30 deg"]          # of each bend
#turns = ["0 deg", "90 deg"]            # before each bend, clockwise as seen from its start; the first is 0

#[[tubes]]
#name = "EXAMPLE by its points"
#points = [["0 in", "-18 in", "4 in"], ["30 in", "-18 in", "4 in"]]  # or its path: rearward, right, up of datum

#[[lines]]                              # one a fluid line
#name = "EXAMPLE rear brake line"
#where = "along the left frame rail"
#service = "brake"                      # "brake", "fuel feed", "fuel return", "vapour", "coolant", "transmission"
#material = "copper-nickel tube"        # tube or hose
#class = ""                             # class of a hose, if it has one
#od = "3/16 in"
#wall = ".028 in"
#length = "9 ft"                        # of the whole line
#pressure = "1200 psi"                  # highest in use
#fluid = "brake fluid"                  # what runs in it
#fluid_state = "wet"                    # e.g. "dry" or "wet"
#beside = "exhaust pipe"                # the hot part it passes
#gap = "2 in"                           # nearest distance to it
#temperature = "250 degF"               # measured at the line
#temperature_by = "thermocouple"        # "crayon", "paint", "thermocouple" or "infra-red"
#side = "other side"                    # of the rail: "same side" or "other side"
#shield = "none"                        # "none", "flat open", "curved open", "closed"
#shield_finish = "0.2 to 0.4"           # how it radiates: an emissivity, or "material: surface"
#state = ""                             # state of the line's material, where its limit depends on it
#hot_od = "2-1/4 in"                    # the hot part's diameter; with the next ones the heat is estimated
#hot_temperature = "300 to 450 degC"    # its surface, hot; a range gives a band
#hot_finish = "0.7 to 0.9"              # an emissivity, or "material: surface"
#finish = "0.3 to 0.8"                  # the line's own
#air = "40 to 60 degC"                  # air around it, driving or idling
#soak_air = "80 to 110 degC"            # air around it after shut-down
#speed = "3 to 10 m/s"                  # air across the line while driving
#sleeve = "2 mm"                        # a heat sleeve over the line: its thickness; gap counts from its outside
#sleeve_finish = "0.5 to 0.9"           # how the sleeve radiates
#sleeve_conductivity = "0.05 W/(m*K)"   # of the sleeve; it counts only with flow
#flow_temperature = "30 to 50 degC"     # of what flows in the line while the engine runs, which cools it
#flow_conductivity = "0.12 W/(m*K)"     # of that fluid, where the tables have none
#factor = "4"                           # on burst, for wall and pressure
#jurisdiction = "US Maryland"           # whose written rules
#flare = "45 deg double"                # flare, seat, nut and port thread of its end
#seat = "45 deg"                        # of the fitting it seats in
#nut = "3/8-24 UNF"                     # thread of the tube nut
#port = "3/8-24 UNF"                    # thread of the port
#anchors = "60 in"                      # exhaust between its anchors
#exhaust_material = "carbon steel"       # what the exhaust is made of, for its growth
#points = [["0 in", "-18 in", "4 in"], ["30 in", "-18 in", "4 in"]]  # or its path: rearward, right, up of datum
#radius = "1 in"                        # bend radius of that path, centre line
#datum = "front crossmember, middle"    # what the points are measured from, in the same words for all that has a path
#gap_asked = "1/2 in"                   # to everything else that has a path
#moves = [                              # how far the line moves, by direction
#  { why = "bump", up = "1/2 in", down = "0 in", left = "0 in", right = "0 in", forward = "0 in", rearward = "0 in" },
#]
#hose_length = "16 in"                  # a flexible hose: free length, and what it spans at droop and at full lock
#droop = "14 in"                        # what it spans at full droop
#lock = "13 in"                         # what it spans at full lock
#notes = ""
#[lines.hot]                            # the hot pipe it passes, by its points: the nearest place gives the gap
#name = "left header"
#points = [["0 in", "0 in", "6 in"], ["9 in", "0 in", "2 in"]]
#radius = "3 in"
#od = "2 in"
#moves = [                              # how far the hot pipe moves
#  { why = "rock", left = "6 mm", right = "6 mm", up = "3 mm", down = "0 in", forward = "0 in", rearward = "0 in" },
#]

#[[driveline]]                          # a shaft
#name = "EXAMPLE rear axle shaft"
#where = "rear axle, left"
#kind = "shaft"                         # "shaft" or "setup"
#steel = "4340"                         # grade of steel
#treatment = "quenched and tempered"# how it was hardened
#temper = "800 degF"                    # tempering temperature
#diameter = "1-1/4 in"                  # the smallest it has
#length = "30 in"
#torque = "1500 lbf*ft"                 # what is asked of it
#notes = ""

#[[driveline]]                          # a step of an axle's set-up
#name = "EXAMPLE ring gear backlash"
#kind = "setup"
#axle = "rear"                          # which axle
#component = "ring gear"                # the part that is set
#step = "backlash"                      # what is set or measured on it
#wear = "new"                           # "new" or "used" parts
#as_found = "0.011 in"                  # a figure, or words
#as_left = "0.007 in"                   # the same after the work
#[driveline.maker]
#value = "0.006 in"                     # the axle maker's own figure
#low = "0.005 in"
#high = "0.008 in"
#source = "axle maker's sheet"
#place = "page 4"
"""


def starter(path: str | os.PathLike[str]) -> None:
    """Write the starter to ``path``; OutputError, with nothing written, when a file is there or the folder is not."""
    write_new(path, STARTER.encode("utf-8"))
