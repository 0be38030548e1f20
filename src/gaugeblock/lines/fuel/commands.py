"""``fuel`` at the command line."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of, print_open

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Topic

# option -> parameter, what it is
_OPTIONS = {
    "power": ("power", "of the engine: 350 hp"),
    "fuel": ("fuel", "gasoline (default), diesel, E85, methanol, ethanol"),
    "boost": ("boost", 'boost, or "no boost"'),
    "consumption": ("consumption", "the engine's own: 0.5 lb/(hp*h), 300 g/(kW*h)"),
    "system": ("system", "carburettor or injection"),
    "density": ("density", "the fuel's own: 6.2 lb/gal"),
    "viscosity": ("viscosity", "the fuel's own: 0.6 mm**2/s"),
    "reserve": ("reserve", "on top of what is burnt: 20 %%"),
    "pump": ("pump", "what it delivers at its pressure: 190 L/h, 60 gph"),
    "length": ("length", "of the feed, fittings counted as length: 14 ft"),
    "bore": ("bore", "inside diameter of the feed: 5/16 in"),
    "loss": ("loss", "that the feed may have: 2 psi"),
    "return-length": ("return_length", "of the return"),
    "return-bore": ("return_bore", "of the return"),
    "return-loss": ("return_loss", "that the return may have"),
    "pressure": ("pressure", "at the engine: 43 psi"),
    "filter": ("filter", "after the pump: 10 um"),
    "filter-flow": ("filter_flow", "that the filter is made for, by its maker: 300 L/h"),
    "rated": ("rated", "pressure that the weakest hose or tube stands, by its maker: 100 psi"),
    "injectors": ("injectors", "how many, in place of the power: 8"),
    "injector": ("injector", "what one passes held open: 42 lb/h, 440 cc/min"),
    "duty": ("duty", "of the injectors: 80 %%"),
    "line": ("line", '"drawn tube" or "rubber hose"'),
}

_SUBJECTS = "line: the bores of its feed, with what they lose; test: leaks; filter, pressure: what shops fit"


def _topic() -> Topic:
    """What may be left open, loaded where something is."""
    from gaugeblock.lines.fuel.ask import FUEL

    return FUEL


def _line() -> Topic:
    from gaugeblock.lines.fuel.ask import LINE

    return LINE


def _test() -> Topic:
    from gaugeblock.lines.fuel.ask import TEST

    return TEST


def _habits() -> Topic:
    from gaugeblock.lines.fuel.ask import HABIT

    return HABIT


def fuel(argv: list[str]) -> int:
    """Run ``gaugeblock fuel``; the exit code."""
    parser = parser_of(
        "fuel",
        "What the fuel pump must deliver for an engine's power, and what feed and return lose.",
        'gaugeblock fuel --power "350 hp" --boost "no boost" --pump "60 gph" --bore "5/16 in" --length "14 ft" --line'
        ' "drawn tube"\n  gaugeblock fuel line --power "400 hp" --boost "no boost" --length "14 ft"\n  gaugeblock fuel'
        " test",
    )
    for option, (name, about) in _OPTIONS.items():
        parser.add_argument(f"--{option}", dest=name, metavar="X", help=about)
    parser.add_argument(
        "subject", nargs="?", choices=("line", "test", "filter", "pressure"), metavar="SUBJECT", help=_SUBJECTS
    )
    common_options(parser)
    a = parser.parse_args(argv)
    given = {name: getattr(a, name) for name, _ in _OPTIONS.values()}
    if a.subject in ("test", "filter", "pressure"):
        from gaugeblock.answer.needs import unused

        used = () if a.subject == "test" else ("system",)
        unused(given, tuple(name for name in given if name not in used), f"fuel {a.subject}")
    if a.subject == "test":
        from gaugeblock.lines.fuel.leak import fuel_test

        return print_open(fuel_test, _test, {}, a)
    if a.subject in ("filter", "pressure"):
        from gaugeblock.lines.fuel.habits import fuel_habit

        return print_open(fuel_habit, _habits, {"subject": a.subject, "system": a.system}, a)
    if a.subject == "line":
        from gaugeblock.lines.fuel.line import fuel_line

        return print_open(fuel_line, _line, given, a)
    from gaugeblock.lines.fuel.supply import fuel as answer

    return print_open(answer, _topic, given, a)
