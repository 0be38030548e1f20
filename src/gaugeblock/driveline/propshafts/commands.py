"""``shaft`` at the command line."""

from __future__ import annotations

from functools import partial

from gaugeblock.answer.command import add_options, parser_of, print_answer, topic_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_topic = partial(topic_in, "gaugeblock.driveline.ask")


_OPTIONS = (
    ("od", "OD", "outside diameter of the tube: 3 in"),
    ("wall", "W", "wall of the tube: 0.083 in"),
    ("material", "M", "steel, aluminium"),
    ("length", "L", "between the centres of the joints at ride height: 48 in"),
    ("front-length", "L", "of a shaft in two pieces: length of its front piece; --length is then the rear piece"),
    ("bump", "L", "the same at full bump"),
    ("droop", "L", "the same at full droop"),
    ("slip-in", "L", "how far the slip joint can still go in, at ride height"),
    ("engaged", "L", "length on which its splines are engaged, at ride height"),
    ("spline-diameter", "DIA", "of the slip joint: 1-1/4 in"),
    ("engine-speed", "N", "most speed of the engine: 6000 rpm"),
    ("gears", "G", 'ratios of the gearbox: "3.06, 1.63, 1, 0.7"'),
    ("transfer", "R", "ratio of a transfer case"),
    ("speed", "N", "most speed of the shaft, in place of engine and gears"),
    ("shafts-side", "S", 'slopes of gearbox, shaft and pinion, side view: "3 deg, 5 deg, 3 deg"'),
    ("shafts-top", "S", "the same in the top view"),
    ("bump-side", "S", "the same in the side view at full bump"),
    ("droop-side", "S", "the same in the side view at full droop"),
    ("phasing", "P", '"in phase" or "wrong phase"'),
    ("wind-up", "A", "angle by which the springs let the pinion rise under power: 2 deg"),
    ("torque", "T", "torque on the shaft: 900 lbf*ft"),
    ("yield-strength", "S", "yield strength of its tube: 60 ksi"),
    ("modulus", "E", "the tube's own modulus of elasticity"),
    ("density", "D", "the tube's own density"),
)


def _answer() -> Callable[..., Sheet]:
    from gaugeblock.driveline.propshafts.answer import shaft as answer

    return answer


def shaft(argv: list[str]) -> int:
    """Run ``gaugeblock shaft``; the exit code."""
    parser = parser_of(
        "shaft",
        "A propeller shaft: the length to make it, the travel of its slip joint, when it whips, how its joints stand.",
        'gaugeblock shaft --od "3 in" --wall "0.083 in" --material steel --length "48 in" --bump "47-1/2 in" --droop'
        ' "48-3/4 in" --engine-speed "6000 rpm" --gears "3.06, 1.63, 1, 0.7" --shafts-side "3 deg, 5 deg, 3 deg"'
        ' --phasing "in phase"',
    )
    add_options(parser, _OPTIONS)
    return print_answer(parser, argv, _answer, _topic("SHAFT"))
