"""``[[lines]]``: a fluid line, its path and what is hot beside it."""

from functools import partial
from typing import Annotated

from gaugeblock.errors import InputError
from gaugeblock.job import values
from gaugeblock.job.checks import no_faults
from gaugeblock.job.kind import Kind, Later
from gaugeblock.job.model import Move
from gaugeblock.job.part import Entry, Gap, Length, Name, Part, Point, Stress, Temperature, Text, Wall, one_of
from gaugeblock.lines.keys import READ_BY, SERVICES, SHIELDS, SIDES, read_span
from gaugeblock.span import Span, of, parse_span


def _span(value: object, dim: str) -> Span:
    """A measure of ``dim``, or a range of two; InputError otherwise."""
    text = values.plain_text(value, values.NAME_LIMIT)
    if " to " not in text:
        return of(values.measure(text, dim, "zero"))
    try:
        return parse_span(text, dim, "")
    except InputError as error:
        raise InputError(values.shown(text), "", error.why, error.nearest, error.do) from None


def _read(value: object, dim: str) -> tuple[Span, str]:
    """A measure or a range, and with what it was measured."""
    return read_span(values.plain_text(value, values.NAME_LIMIT), dim, "")


Film = Annotated[tuple[Span, str], partial(_read, dim="film coefficient")]
Margin = Annotated[tuple[Span, str], partial(_read, dim="temperature difference")]
Expansion = Annotated[tuple[Span, str], partial(_read, dim="thermal expansion")]
OwnTemperature = Annotated[tuple[Span, str], partial(_read, dim="temperature")]
Temperatures = Annotated[Span, partial(_span, dim="temperature")]
Speeds = Annotated[Span, partial(_span, dim="speed")]
Lengths = Annotated[Span, partial(_span, dim="length")]
Ratios = Annotated[Span, partial(_span, dim="ratio")]
Conductivities = Annotated[Span, partial(_span, dim="thermal conductivity")]


class HotPipe(Part):
    """The hot pipe a line passes: its path (rearward, right, up), bend radius and outside diameter."""

    name: Name
    points: tuple[Point, ...] = ()
    radius: Length | None = None
    od: Length | None = None
    moves: tuple[Move, ...] = ()


class Line(Entry, aliases={"hose_class": "class"}):
    """``[[lines]]``: a fluid line and what is hot beside it; ``hose_class`` is the file's ``class``."""

    name: Name
    where: Text | None = None
    service: Annotated[str, one_of(*SERVICES)] | None = None
    material: Name | None = None
    hose_class: Name | None = None
    od: Length | None = None
    wall: Wall | None = None
    length: Length | None = None
    pressure: Stress | None = None
    fluid: Name | None = None
    fluid_state: Name | None = None
    fluid_limit: OwnTemperature | None = None
    fluid_limit_from: Name | None = None
    marked_for: Name | None = None
    beside: Name | None = None
    gap: Gap | None = None
    temperature: Temperature | None = None
    temperature_by: Annotated[str, one_of(*READ_BY)] | None = None
    side: Annotated[str, one_of(*SIDES)] | None = None
    shield: Annotated[str, one_of(*SHIELDS)] | None = None
    shield_finish: Name | None = None
    state: Name | None = None
    factor: Ratios | None = None
    factor_on_burst: Ratios | None = None
    factor_on_yield: Ratios | None = None
    yield_strength: Stress | None = None
    tensile_strength: Stress | None = None
    line_limit: OwnTemperature | None = None
    line_limit_from: Name | None = None
    hot_od: Length | None = None
    hot_temperature: Temperatures | None = None
    hot_finish: Name | None = None
    finish: Name | None = None
    air: Temperatures | None = None
    soak_air: Temperatures | None = None
    speed: Speeds | None = None
    sleeve: Lengths | None = None
    sleeve_finish: Name | None = None
    sleeve_conductivity: Conductivities | None = None
    flow_temperature: Temperatures | None = None
    flow_conductivity: Conductivities | None = None
    film: Film | None = None
    margin: Margin | None = None
    jurisdiction: Name | None = None
    flare: Name | None = None
    seat: Name | None = None
    nut: Name | None = None
    port: Name | None = None
    anchors: Length | None = None
    exhaust_material: Name | None = None
    expansion: Expansion | None = None
    cold_end: OwnTemperature | None = None
    clip_spacing: Length | None = None
    points: tuple[Point, ...] = ()
    radius: Length | None = None
    datum: Text | None = None
    gap_asked: Gap | None = None
    moves: tuple[Move, ...] = ()
    hot: HotPipe | None = None
    hose_length: Length | None = None
    droop: Length | None = None
    lock: Length | None = None
    notes: Text | None = None


STARTER = """\
#[[lines]]                              # one a fluid line
#name = "EXAMPLE rear brake line"
#where = "along the left frame rail"
#step = 1                               # its place in the order of the work, where the usual order is not yours
#service = "brake"                      # "brake", "fuel feed", "fuel return", "vapour", "coolant", "transmission"
#material = "copper-nickel brake tube"  # tube or hose
#class = ""                             # class of a hose, if it has one
#od = "3/16 in"
#wall = ".028 in"
#length = "9 ft"                        # of the whole line
#pressure = "1200 psi"                  # highest in use
#fluid = "DOT 4"                        # what runs in it
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
#film = "8 to 15 W/(m**2*K)"            # film coefficient of the air on the line, in place of the correlations
#margin = "20 degC"                     # how far under its limit it is to stay; else 10 degC, what a reading is good to
#line_limit = "150 degC"                # what its maker says it stands; this governs over the tables
#line_limit_from = "hose maker's sheet, page 3"    # the paper that says so, and its page
#fluid_limit = "500 degF"               # least boiling point on the maker's sheet of the fluid
#fluid_limit_from = "bottle, back label"           # the same of the fluid
#marked_for = "E10"                     # the fluid that the hose is marked for
#factor_on_burst = "4"                  # the wall keeps against the highest pressure, on its tensile strength
#factor_on_yield = "3"                  # the same, on its yield strength
#factor = "4"                           # of an older job: whether on burst or on yield is asked
#tensile_strength = "50 ksi"            # the tube's own, from its maker's sheet
#yield_strength = "25 ksi"              # the same
#jurisdiction = "US Maryland"           # whose written rules
#flare = "45 deg double"                # flare, seat, nut and port thread of its end
#seat = "45 deg"                        # of the fitting it seats in
#nut = "3/8-24 UNF"                     # thread of the tube nut
#port = "3/8-24 UNF"                    # thread of the port
#anchors = "60 in"                      # exhaust between its anchors
#exhaust_material = "carbon steel"       # what the exhaust is made of, for its growth
#expansion = "17.3 um/(m*K)"            # its own mean coefficient of expansion, in place of the tables'
#cold_end = "10 degC"                   # what it grows from; else 20 degC
#clip_spacing = "18 in"                 # of the line's clips, as you want it
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
"""

KINDS = {
    "lines": Kind(Line, no_faults, STARTER),
    "brakes": Later("gaugeblock.lines.brakes.job"),
    "fuel": Later("gaugeblock.lines.fuel.job"),
}
