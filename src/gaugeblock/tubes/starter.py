"""What a new job file says of ``[[tubes]]``: every key once, as comments."""

STARTER = """\
#[[tubes]]                              # one a tube to be bent; its shape is given in one of the ways below
#name = "EXAMPLE main hoop"
#where = "behind the seats"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#material = "1020"                      # steel or alloy
#product = "DOM"                        # how the tube was made
#spec = "ASTM A513"                     # what it was bought to
#condition = "as drawn"
#yield_strength = "62 ksi by tensile test on 2026-11-20"   # this tube's own, in place of the tables'; typed: "62 ksi"
#tensile_strength = "78 ksi"            # the same
#modulus = "29 Msi"                     # of elasticity, the same
#shear_modulus = "11.5 Msi"             # of rigidity, the same: for the twist
#section = { length = "30 in", torque = "200 lbf*ft" }   # a straight piece of it, and what twists that
#od = "1-3/4 in"
#wall = ".120 in"                       # or a gauge number with its system: "11 BWG"
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
#radius = "7 in"                        # of the bends
#measured_to = "centre line"            # what the radius is measured to: "centre line" or "inside"
#maker_radius = "6 in"                  # the least radius for this tube, by the maker of the bender
#maker_source = "bender manual, p. 12"  # where the maker says so
#diameters = ["1.76 in", "1.68 in"]     # largest and smallest, measured at a bend of this tube on this die
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
#spacing = "3 in"                       # two such pipes side by side, middle to middle
#height = "2 in"                        # of its centre (flat: its top) over the centre line of the first foot
#at = "18 in"                           # its middle (of two: half-way between), from the first end
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
#bump_factor = 3                        # times its weight, as you state it
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
"""
