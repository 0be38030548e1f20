"""How hot a line gets beside a hot pipe: a steady energy balance a metre of line. SI in, SI out.

Every argument may be a float or an array (n,); the answers have the same shape. Temperatures are absolute (K).
The line has no flow unless a cooling conductance is given; it is round, long and parallel to the hot pipe, of one
temperature all round. What the pipe does not fill of its view is far surroundings; air is met at one temperature.
"""

from __future__ import annotations

from gaugeblock.calc import heat, namespace

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any, TypeAlias

    from gaugeblock.calc.air import Air

    T: TypeAlias = Any  # a float, or a numpy array of any shape

LAMINAR_NUSSELT = 3.66
_CLOSES = 1e-12  # of the largest term; the promise is 1e-9
_ROUNDS = 80
_STEP = 1e-3  # K, for the first slope; after it the secant


class Balance:
    """A solved line (or shield): its temperature and the heat flows in W a metre that hold it there.

    ``kelvin`` is the outer surface; ``line_k`` the line itself, which under a sleeve with flow is cooler.
    ``absorbed`` and ``emitted`` by radiation, ``convected`` to the air, ``carried`` away by flow (or conducted);
    ``rayleigh``, ``reynolds_prandtl`` and ``film_k`` of its convection. Where a shield stands between: ``shield_k``,
    how far
    its balance does not close, its own convection in ``shield`` and if it is ``covered`` (no straight sight past its
    edges).
    """

    __slots__ = (
        "absorbed",
        "air",
        "carried",
        "convected",
        "covered",
        "emitted",
        "film_k",
        "kelvin",
        "line_k",
        "rayleigh",
        "reynolds_prandtl",
        "shield",
        "shield_k",
        "shield_residual",
    )

    kelvin: T
    line_k: T
    absorbed: T
    emitted: T
    convected: T
    carried: T
    film_k: T
    rayleigh: T
    reynolds_prandtl: T
    shield_k: T
    shield_residual: T
    shield: tuple[T, T, T] | None
    covered: T
    air: Air

    @property
    def residual(self) -> T:
        """What does not close, as a share of the largest term; 0 is a closed balance."""
        ns = namespace.of(self.kelvin)
        terms = (self.absorbed, self.emitted, abs(self.convected), abs(self.carried))
        net = self.absorbed - self.emitted - self.convected - self.carried
        if ns.__name__ == "numpy":
            largest = ns.maximum.reduce(ns.broadcast_arrays(*terms))
            return ns.abs(net) / ns.where(largest > 0.0, largest, 1.0)
        return abs(net) / (max(terms) or 1.0)

    def _bodies(self) -> tuple[tuple[str, tuple[T, T, T]], ...]:
        line = ("", (self.film_k, self.rayleigh, self.reynolds_prandtl))
        return (line,) if self.shield is None else (line, (" of the shield", self.shield))

    @property
    def inside(self) -> T:
        """Whether air points and correlations cover this answer, and a shield covers the sight."""
        fits = self.covered
        for _, (film, ra, re_pr) in self._bodies():
            fits = fits & self.air.covers(film) & (ra <= heat.RAYLEIGH_MAXIMUM)
            fits = fits & ((re_pr == 0.0) | (re_pr > heat.REYNOLDS_PRANDTL_MINIMUM))
        return fits

    def why_outside(self) -> str:
        """What a scalar answer is outside of; blank when it is inside."""
        low, high = self.air.temperature_k[0] - 273.15, self.air.temperature_k[-1] - 273.15
        if not self.covered:
            return "the shield is too narrow: there is straight sight past its edges from the hot part to the line"
        for whose, (film, ra, re_pr) in self._bodies():
            if not self.air.covers(film):
                at = f"the air film{whose} would be at {film - 273.15:.0f} degC"
                return f"{at}; the air figures cover {low:.0f} to {high:.0f} degC"
            if ra > heat.RAYLEIGH_MAXIMUM:
                return f"Rayleigh number{whose} {ra:.2g} is over the 1e12 that the still-air correlation covers"
            if 0.0 < re_pr <= heat.REYNOLDS_PRANDTL_MINIMUM:
                return f"Re Pr{whose} {re_pr:.2g} is not over the 0.2 that the cross-flow correlation asks for"
        return ""


class Cooling:
    """What a flow or a sleeve adds to a line: conductance to the fluid in W/(m K), the fluid's temperature, the sleeve.

    ``sleeve_m`` is the sleeve's thickness and ``sleeve_conductivity`` its k; the line's given emissivity is then the
    sleeve's. Without flow a sleeve carries no steady heat: it changes size and finish only.
    """

    __slots__ = ("conductance", "fluid_k", "sleeve_conductivity", "sleeve_m")

    def __init__(
        self, conductance: T = 0.0, fluid_k: T = 293.15, sleeve_m: T = 0.0, sleeve_conductivity: T = 1.0
    ) -> None:
        self.conductance = conductance
        self.fluid_k = fluid_k
        self.sleeve_m = sleeve_m
        self.sleeve_conductivity = sleeve_conductivity

    def from_surface(self, radius_m: T) -> T:
        """Conductance in W/(m K) from the outer surface through the sleeve to the fluid."""
        ns = namespace.of(radius_m, self.sleeve_m, self.conductance)
        return self.conductance / (1.0 + self.conductance * self._resistance(ns, radius_m))

    def _resistance(self, ns: Any, radius_m: T) -> T:
        return ns.log((radius_m + self.sleeve_m) / radius_m) / (2.0 * heat.PI * self.sleeve_conductivity)

    def under_sleeve(self, surface_k: T, radius_m: T) -> T:
        """Temperature in K of the line under the sleeve; without flow it is the surface's."""
        ns = namespace.of(radius_m, self.sleeve_m, self.conductance)
        return surface_k - self.from_surface(radius_m) * (surface_k - self.fluid_k) * self._resistance(ns, radius_m)


def laminar_conductance(conductivity: T) -> T:
    """Conductance in W/(m K) from a round tube's wall to what flows in it, from the fluid's k in W/(m K): pi Nu k.

    Nu = 3.66: laminar, fully developed, wall at one temperature; faster flow and the entry take more, so this is the
    least. It does not depend on the bore. Source: Incropera, eq. 8.55 (from memory).

    >>> round(laminar_conductance(0.12), 3)
    1.38
    """
    return heat.PI * LAMINAR_NUSSELT * conductivity


def convection(surface_k: T, air_k: T, diameter_m: T, speed_m_s: T, air: Air) -> tuple[T, T, T, T]:
    """Coefficient in W/(m^2 K) with film temperature, Rayleigh number and Re Pr of a cylinder in air.

    Still air: Churchill-Chu. Moving air: Churchill-Bernstein, or still air's where that is the larger.
    """
    film = 0.5 * (surface_k + air_k)
    k, nu, pr = air.at(film)
    ra = heat.rayleigh(surface_k - air_k, film, diameter_m, nu, pr)
    still = heat.nusselt_natural(ra, pr)
    re = speed_m_s * diameter_m / nu
    plain = (
        type(film) is float and type(re) is float and type(diameter_m) is float
    )  # the common case, and the quickest told
    ns = None if plain else namespace.of(film, re, diameter_m)
    if ns is not None and ns.__name__ == "numpy":
        if ns.any(re > 0.0):
            still = ns.maximum(still, ns.where(re > 0.0, heat.nusselt_forced(re, pr), 0.0))
        return still * k / diameter_m, film, ra, re * pr
    moving = heat.nusselt_forced(re, pr) if re > 0.0 else 0.0
    return max(still, moving) * k / diameter_m, film, ra, re * pr


def solve(net: Callable[[T], T], low_k: T, high_k: T, scale: T, start_k: T) -> T:
    """The temperature where ``net`` (falling) is zero, between two bounds: secant kept inside a shrinking bracket."""
    ns = namespace.of(low_k, high_k, scale, start_k)
    array = ns.__name__ == "numpy"
    pick = ns.where if array else _pick
    x = start_k
    f = net(x)
    slope = (net(x + _STEP) - f) / _STEP
    for _ in range(_ROUNDS):
        done = abs(f) <= _CLOSES * scale
        if ns.all(done) if array else done:
            break
        low_k = pick(f > 0.0, x, low_k)
        high_k = pick(f > 0.0, high_k, x)
        new = x - f / pick(slope < 0.0, slope, -1.0)
        new = pick((new <= low_k) | (new >= high_k) | (slope >= 0.0), 0.5 * (low_k + high_k), new)
        moved = pick(done, 0.0, new - x)  # a closed one stays: the slope of two closed ones is noise
        if ns.all(moved == 0.0) if array else moved == 0.0:
            break
        before, x = f, x + moved
        f = net(x)
        slope = pick(moved != 0.0, (f - before) / pick(moved != 0.0, moved, 1.0), slope)
    return x


def _pick(choice: bool, yes: float, no: float) -> float:
    return yes if choice else no


def least(*values: T) -> T:
    """The least of numbers, or of arrays place by place."""
    ns = namespace.of(*values)
    return ns.minimum.reduce(ns.broadcast_arrays(*values)) if ns.__name__ == "numpy" else min(values)


def most(*values: T) -> T:
    """The most of numbers, or of arrays place by place."""
    ns = namespace.of(*values)
    return ns.maximum.reduce(ns.broadcast_arrays(*values)) if ns.__name__ == "numpy" else max(values)


class Round:
    """A round body: its radius in m and the emissivity of its surface, 0 to 1."""

    __slots__ = ("emissivity", "radius_m")

    def __init__(self, radius_m: T, emissivity: T) -> None:
        self.radius_m = radius_m
        self.emissivity = emissivity


def line_beside_pipe(pipe: Round, line: Round, gap_m: T, around: Around) -> Balance:
    """Steady temperature of a line beside a hot pipe, with the flows that hold it there.

    ``gap_m`` is surface to surface in m, over 0. With a sleeve the line's emissivity is the sleeve's.
    Radiation: crossed strings and the radiosities of two grey surfaces with black surroundings. Convection: see
    ``convection``. Range: see ``Balance.inside``; contact conducts and is outside the model.

    >>> from gaugeblock.calc.air import Air
    >>> air = Air((273.15, 673.15), (0.02364, 0.05015), (1.338e-5, 6.219e-5), (0.7362, 0.6948))
    >>> got = line_beside_pipe(Round(0.0286, 0.8), Round(0.00238, 0.8), 0.025, Around(673.15, 313.15, air))
    >>> got.residual < 1e-9, 313.15 < got.kelvin < 673.15
    (True, True)
    """
    radius = around.outside(line.radius_m)
    own_to_hot = heat.view_factor_cylinders(radius, pipe.radius_m, gap_m)
    pair = Pair(
        heat.emissive_power(around.hot_k),
        heat.emissive_power(around.far_k),
        pipe.emissivity,
        line.emissivity,
        own_to_hot * radius / pipe.radius_m,
        own_to_hot,
    )
    return solve_body(pair, around, radius, line.radius_m)


class Pair:
    """A round body and the hot one that shines on it: black emissive powers of the hot one and of all else, finishes,
    views.
    """

    __slots__ = ("emissivity", "far", "hot", "hot_emissivity", "hot_to_own", "own_to_hot")

    def __init__(self, hot: T, far: T, hot_emissivity: T, emissivity: T, hot_to_own: T, own_to_hot: T) -> None:
        self.hot = hot
        self.far = far
        self.hot_emissivity = hot_emissivity
        self.emissivity = emissivity
        self.hot_to_own = hot_to_own
        self.own_to_hot = own_to_hot


class Around:
    """What a body stands in: temperatures of the hot part, the air and all else in K, and what cools it.

    ``far_k`` of all else is the air's when not given; ``speed`` is that of the air across the body in m/s, 0 for still
    air; ``film`` a coefficient in W/(m^2 K) in place of the correlations.
    """

    __slots__ = ("air", "air_k", "cooling", "far_k", "film", "hot_k", "speed")

    def __init__(
        self,
        hot_k: T,
        air_k: T,
        air: Air,
        far_k: T | None = None,
        speed: T = 0.0,
        cooling: Cooling | None = None,
        film: T | None = None,
    ) -> None:
        self.hot_k = hot_k
        self.air_k = air_k
        self.far_k = air_k if far_k is None else far_k
        self.speed = speed
        self.air = air
        self.cooling = cooling
        self.film = film

    def outside(self, radius_m: T) -> T:
        """The radius of a line with the sleeve that is over it."""
        return radius_m if self.cooling is None else radius_m + self.cooling.sleeve_m


def solve_body(pair: Pair, around: Around, radius: T, bare_radius: T, start_k: T | None = None) -> Balance:
    """The balance of a round body that a hot one shines on; all as ``line_beside_pipe``, view factors given."""
    hot, far, emissivity, own_to_hot = pair.hot, pair.far, pair.emissivity, pair.own_to_hot
    air_k, speed, air, cooling, film = around.air_k, around.speed, around.air, around.cooling, around.film
    area, diameter = 2.0 * heat.PI * radius, 2.0 * radius
    to_fluid = 0.0 if cooling is None else cooling.from_surface(bare_radius)
    fluid_k = air_k if cooling is None else cooling.fluid_k

    def flows(x: T) -> tuple[T, T, T, T]:
        own = heat.emissive_power(x)
        on_own, _ = heat.grey_pair(hot, own, far, pair.hot_emissivity, emissivity, pair.hot_to_own, own_to_hot)
        h = convection(x, air_k, diameter, speed, air)[0] if film is None else film
        return emissivity * area * on_own, emissivity * area * own, h * area * (x - air_k), to_fluid * (x - fluid_k)

    def net(x: T) -> T:
        absorbed, emitted, convected, carried = flows(x)
        return absorbed - emitted - convected - carried

    low, high = least(air_k, around.far_k, around.hot_k), most(air_k, around.far_k, around.hot_k)
    if cooling is not None:
        low, high = least(low, cooling.fluid_k), most(high, cooling.fluid_k)
    ns = namespace.of(hot, far, own_to_hot, air_k, emissivity, speed, diameter)
    if start_k is None:  # a coefficient of 25 W/(m^2 K) for all losses is near enough to begin with
        start_k = low + least(emissivity * own_to_hot * pair.hot_emissivity * (hot - far) / 25.0, 0.9 * (high - low))
    start = most(start_k, low)
    scale = emissivity * area * far + 1e-30
    if ns.__name__ == "numpy":
        shapes = (ns.shape(v) for v in (hot, far, own_to_hot, air_k, emissivity, speed, diameter, start))
        start = ns.broadcast_to(start, ns.broadcast_shapes(*shapes)) + 0.0
    x = solve(net, low, high, scale, start)
    out = Balance()
    out.kelvin, out.air = x, air
    out.line_k = x if cooling is None else cooling.under_sleeve(x, bare_radius)
    out.absorbed, out.emitted, out.convected, out.carried = flows(x)
    _, out.film_k, out.rayleigh, out.reynolds_prandtl = convection(x, air_k, diameter, speed, air)
    out.shield_k, out.shield_residual, out.shield, out.covered = None, 0.0, None, True
    return out
