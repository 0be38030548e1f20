"""A heat shield between a hot pipe and a line: its geometry, its temperature, and the line behind it. SI in, SI out.

The shield is long, parallel to both, thin and of one temperature; it sees the pipe with one face and the line with the
other, and the surroundings with what is left of both. Every argument may be a float or an array (n,).
"""

from __future__ import annotations

from gaugeblock.calc import heat, namespace
from gaugeblock.calc.lines import Around, Balance, Pair, Round, convection, least, most, solve, solve_body

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any, TypeAlias

    T: TypeAlias = Any  # a float, or a numpy array of any shape

_CYCLES = 40


class Shield:
    """The shape of a shield as the balance needs it: width of one face, view factors, diameter for convection.

    Made by ``flat`` or ``curved``. ``covered`` tells whether no straight line from pipe to line passes its edges;
    where it does not, the model does not hold.
    """

    __slots__ = (
        "convects_m",
        "covered",
        "gap_conductance_over_k",
        "line_to_shield",
        "pipe_to_shield",
        "self_view",
        "width_m",
    )

    def __init__(
        self,
        width_m: T,
        pipe_to_shield: T,
        line_to_shield: T,
        self_view: T,
        convects_m: T,
        gap_conductance_over_k: T,
        covered: T,
    ) -> None:
        self.width_m = width_m
        self.pipe_to_shield = pipe_to_shield
        self.line_to_shield = line_to_shield
        self.self_view = self_view
        self.convects_m = convects_m
        self.gap_conductance_over_k = gap_conductance_over_k  # of a closed shield: 2 pi / ln(rs/r1); else 0
        self.covered = covered


def flat(pipe_radius_m: T, line_radius_m: T, gap_m: T, half_width_m: T, place: T = 0.5) -> Shield:
    """A flat sheet square to the line between the axes, centred, open to the air on both faces.

    ``place`` is its distance from the pipe's surface as a share of the gap, over 0 and under 1. For convection it is
    taken as a cylinder of the same perimeter.
    """
    to_pipe = pipe_radius_m + place * gap_m
    to_line = line_radius_m + (1.0 - place) * gap_m
    ns = namespace.of(to_pipe, half_width_m)
    sine = (pipe_radius_m - line_radius_m) / (to_pipe + to_line)
    sight = (pipe_radius_m - to_pipe * sine) / ns.sqrt(1.0 - sine * sine)
    width = 2.0 * half_width_m
    return Shield(
        width,
        heat.view_factor_strip(half_width_m, to_pipe),
        heat.view_factor_strip(half_width_m, to_line),
        0.0,
        2.0 * width / heat.PI,
        0.0,
        half_width_m >= sight,
    )


def curved(pipe_radius_m: T, line_radius_m: T, gap_m: T, shield_radius_m: T, half_angle_rad: T) -> Shield:
    """An arc round the pipe's axis, ``half_angle_rad`` to each side; pi is a closed tube, whose inside holds its own
    air.

    The line is taken to see a whole cylinder of the shield's radius, which is never less than it sees.
    """
    ns = namespace.of(pipe_radius_m, gap_m, shield_radius_m, half_angle_rad)
    array = ns.__name__ == "numpy"
    acos = ns.arccos if array else ns.acos
    width = 2.0 * half_angle_rad * shield_radius_m
    reach = 2.0 * acos(pipe_radius_m / shield_radius_m)
    closed = half_angle_rad >= heat.PI * (1.0 - 1e-12)
    needed = acos((pipe_radius_m - line_radius_m) / (pipe_radius_m + line_radius_m + gap_m)) - 0.5 * reach
    between = gap_m - (shield_radius_m - pipe_radius_m)
    through = 2.0 * heat.PI / ns.log(shield_radius_m / pipe_radius_m)
    return Shield(
        width,
        half_angle_rad / heat.PI,
        heat.view_factor_cylinders(line_radius_m, shield_radius_m, between),
        self_view(half_angle_rad, reach),
        2.0 * shield_radius_m,
        ns.where(closed, through, 0.0) if array else through * closed,
        half_angle_rad >= needed,
    )


def self_view(half_angle_rad: T, reach_rad: T) -> T:
    """What a concave arc sees of itself past a concentric pipe; ``reach_rad`` is 2 acos(r1/rs), the widest chord
    there is.

    Exact integral of the chords of the arc. A full circle sees 1 - r1/rs of itself:

    >>> from math import acos, pi
    >>> round(self_view(pi, 2 * acos(0.25)), 12)
    0.75
    """
    ns = namespace.of(half_angle_rad, reach_rad)
    whole = 2.0 * half_angle_rad
    near = least(reach_rad, whole)
    own = 1.0 - ns.cos(near / 2) - (2.0 * ns.sin(near / 2) - near * ns.cos(near / 2)) / whole
    first = least(2.0 * heat.PI - whole, reach_rad)

    def part(turn: T) -> T:
        return 2.0 * ns.sin(turn / 2) - turn * ns.cos(turn / 2) + first * ns.cos(turn / 2)

    return own + (part(reach_rad) - part(first)) / whole


def line_behind_shield(pipe: Round, line: Round, shield: Shield, emissivities: tuple[T, T], around: Around) -> Balance:
    """Steady temperature of a line behind a shield, with the shield's own in ``shield_k``.

    ``emissivities`` are those of the shield's hot and of its cool face, 0 to 1. The shield gains from the pipe on its
    hot face and loses by both faces to line, surroundings and air; behind a closed one the air between conducts only.
    Both balances close; the shield's is in ``shield_residual``.
    """
    hot_face, cool_face = emissivities
    radius = around.outside(line.radius_m)
    far = heat.emissive_power(around.far_k)
    faces = _Faces(
        shield,
        Pair(
            heat.emissive_power(around.hot_k),
            far,
            pipe.emissivity,
            hot_face,
            shield.pipe_to_shield,
            shield.pipe_to_shield * 2.0 * heat.PI * pipe.radius_m / shield.width_m,
        ),
        Pair(
            0.0,
            far,
            cool_face,
            line.emissivity,
            shield.line_to_shield * 2.0 * heat.PI * radius / shield.width_m,
            shield.line_to_shield,
        ),
        around,
    )
    out = _both(faces, around, radius, line.radius_m)
    gains, losses, convected = faces.flows(out.shield_k, out.kelvin)
    out.covered = shield.covered
    out.shield = convection(out.shield_k, around.air_k, shield.convects_m, around.speed, around.air)[1:]
    out.shield_residual = abs(gains - losses - convected) / gains
    return out


class _Faces:
    """A shield between pipe and line: what each of its faces gains and loses.

    ``to_pipe`` is the shield as the body that the pipe shines on; ``to_line`` the line as the one that the shield does.
    """

    __slots__ = ("around", "shield", "to_line", "to_pipe")

    def __init__(self, shield: Shield, to_pipe: Pair, to_line: Pair, around: Around) -> None:
        self.shield = shield
        self.to_pipe = to_pipe
        self.to_line = to_line
        self.around = around

    @property
    def scale(self) -> T:
        """What the balance is measured by, W a metre."""
        faces = self.to_pipe.emissivity + self.to_line.hot_emissivity
        return self.shield.width_m * faces * self.to_pipe.far + 1e-30

    def flows(self, x: T, line_k: T) -> tuple[T, T, T]:
        """What the shield at ``x`` gains, radiates and conducts, and gives to the air, with the line at ``line_k``."""
        shield, pipe, line, around = self.shield, self.to_pipe, self.to_line, self.around
        own, behind = heat.emissive_power(x), heat.emissive_power(line_k)
        _, from_pipe = heat.grey_pair(
            own,
            pipe.hot,
            pipe.far,
            pipe.emissivity,
            pipe.hot_emissivity,
            pipe.own_to_hot,
            pipe.hot_to_own,
            shield.self_view,
        )
        _, from_line = heat.grey_pair(
            own, behind, line.far, line.hot_emissivity, line.emissivity, line.hot_to_own, line.own_to_hot
        )
        h = convection(x, around.air_k, shield.convects_m, around.speed, around.air)[0]
        k = around.air.at(0.5 * (x + around.hot_k))[0]
        sides = 2.0 - (shield.gap_conductance_over_k > 0.0)
        gains = shield.width_m * (pipe.emissivity * from_pipe + line.hot_emissivity * from_line)
        gains = gains + shield.gap_conductance_over_k * k * around.hot_k
        losses = shield.width_m * (pipe.emissivity + line.hot_emissivity) * own + shield.gap_conductance_over_k * k * x
        return gains, losses, h * shield.width_m * sides * (x - around.air_k)

    def net(self, line_k: T) -> Callable[[T], T]:
        """What the shield keeps, by its temperature."""

        def net(x: T) -> T:
            gains, losses, convected = self.flows(x, line_k)
            return gains - losses - convected

        return net


def _both(faces: _Faces, around: Around, radius: T, bare_radius: T) -> Balance:
    """Shield and line in turn until neither moves; the shield's temperature in ``shield_k``."""
    shield, behind = faces.shield, faces.to_line
    views = (shield.width_m, shield.pipe_to_shield, shield.line_to_shield)
    ns = namespace.of(around.hot_k, around.air_k, faces.to_pipe.emissivity, behind.hot_emissivity, *views)
    low, high = (pick(around.air_k, around.far_k, around.hot_k) for pick in (least, most))
    line_k: T = low + 0.1 * (high - low)
    shield_k: T = low + 0.4 * (high - low)
    if ns.__name__ == "numpy":
        shape = ns.broadcast_shapes(*(ns.shape(v) for v in (low, high, *views, faces.scale)))
        line_k, shield_k = ns.broadcast_to(line_k, shape) + 0.0, ns.broadcast_to(shield_k, shape) + 0.0
    line = None
    for _ in range(_CYCLES):
        shield_k = solve(faces.net(line_k), low, high, faces.scale, shield_k)
        pair = Pair(
            heat.emissive_power(shield_k),
            behind.far,
            behind.hot_emissivity,
            behind.emissivity,
            behind.hot_to_own,
            behind.own_to_hot,
        )
        beside = Around(shield_k, around.air_k, around.air, around.far_k, around.speed, around.cooling, around.film)
        line = solve_body(pair, beside, radius, bare_radius, line_k)
        moved, line_k = abs(line.kelvin - line_k), line.kelvin
        if ns.all(moved <= 1e-11 * line_k) if ns.__name__ == "numpy" else moved <= 1e-11 * line_k:
            break
    if line is None:
        raise ValueError("no cycle was run")
    line.shield_k = shield_k
    return line
