"""``[[brakes]]``: one brake circuit, or the hand brake."""

from typing import Annotated

from gaugeblock.job.checks import no_faults
from gaugeblock.job.kind import Kind
from gaugeblock.job.part import Entry, Name, Text, one_of
from gaugeblock.lines.brakes.keys import KINDS

HAND, HOSE, BALANCE = "hand brake", "flexible hose", "balance"


class Brake(Entry):
    """``[[brakes]]``: one hydraulic circuit with what it works, the hand brake, a hose, or the balance."""

    name: Name
    where: Text | None = None
    kind: Annotated[str, one_of(*KINDS, HAND, HOSE, BALANCE)] | None = None
    force: Name | None = None
    ratio: Name | None = None
    assist: Name | None = None
    master: Name | None = None
    stroke: Name | None = None
    bore: Name | None = None
    pistons: Name | None = None
    wheels: Name | None = None
    travel: Name | None = None
    play: Name | None = None
    pedal: Name | None = None
    was: Name | None = None
    rated: Name | None = None
    tube: Name | None = None
    time: Name | None = None
    hose: Name | None = None
    droop: Name | None = None
    lock: Name | None = None
    balance: Name | None = None
    cables: Name | None = None
    lever: Name | None = None
    notes: Text | None = None


STARTER = """\
#[[brakes]]                             # one brake circuit; the hand brake, a hose, the balance
#name = "EXAMPLE rear brakes"
#where = "rear axle"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#kind = "drum"                          # "floating caliper", "fixed caliper", "slave cylinder", "hand brake" ...
#force = "100 lbf"                      # of the foot on the pedal; of the hand at the grip
#ratio = "6"                            # of the pedal, pad over push rod; of the lever, grip over cable
#assist = "4"                           # force out of the booster over force in
#master = "1 in"                        # bore of the master cylinder
#stroke = "0.6 in"                      # that it has for this circuit
#bore = "7/8 in"                        # of the wheel cylinders, or of the caliper's pistons
#pistons = "2"                          # of one wheel
#wheels = "2"                           # that this circuit works
#travel = "2 mm"                        # of each piston until the brake is hard on; of a hand brake its cable
#play = "1 mm"                          # free, at the push rod
#pedal = "5 in"                         # whole way of the pedal, rest to floor
#was = "7/8 in"                         # bore of the pistons before a swap
#rated = "3000 psi"                     # that the weakest hose, tube or valve stands, by its maker
#tube = "0.132 in"                      # inside diameter of its tube, for the speed of the fluid
#time = "0.3 s"                         # from the first touch of the pedal until the brake is hard on
#hose = "16 in"                         # free length of the flexible hose
#droop = "14 in"                        # way from fitting to fitting at full droop
#lock = "13 in"                         # the same at full lock
#balance = ""                           # who tried the balance front to rear, and when
#cables = "2"                           # of a hand brake, that share its pull
#lever = "150 mm"                       # of a hand brake, whole way of the grip
#notes = ""
"""
KIND = Kind(Brake, no_faults, STARTER)
