"""The answer ``exhaust_wrap``: how much wrap a pipe takes."""

from __future__ import annotations

from math import ceil

from gaugeblock import units
from gaugeblock.answer.caution import Caution
from gaugeblock.answer.check import ASK, CANNOT_TELL, Check
from gaugeblock.answer.decision import Candidate, ask, use
from gaugeblock.answer.making import base, derived, read_positive, stated
from gaugeblock.answer.open_sheet import questioned
from gaugeblock.answer.plausible import did_you_mean, is_plausible
from gaugeblock.answer.question import FILL_IN, Question
from gaugeblock.answer.sheet import Sheet
from gaugeblock.calc import exhaust as calc
from gaugeblock.errors import InputError
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.figure import Figure

VERB = "BUY AT LEAST"
_QUANTITIES = {"length": "wrapped_length", "od": "outside_diameter", "width": "wrap_width"}
_NAME = "overlap of the wrap"
# Laps that are laid: by common practice a quarter to a half of the width.
_LAPS = (("25 %", "a quarter of the width lies on the turn before"), ("50 %", "half of it does"))
_MOST_LAP, _MOST_PIPES = 0.75, 16
_DO = "Bends, branches and the ends take more: buy a tenth over it. Wet it if its maker says so, and pull it tight."


def exhaust_wrap(
    length: str,
    od: str,
    width: str,
    *,
    overlap: str | None = None,
    pipes: str | None = None,
    data: Refdata | None = None,
) -> Sheet:
    """How much wrap pipes take, laid round and round.

    ``length`` of each pipe that is wrapped (``3 ft``), ``od`` its outside diameter (``1-5/8 in``), ``width`` of the
    wrap (``2 in``); ``overlap`` as a share of the width (``25 %``) or a length (``1/2 in``); ``pipes`` how many are
    alike (``8``).

    Returns a Sheet whose decision is the length of wrap; for a lap of a quarter and of a half, where none was given.
    Raises InputError or UnitError for what cannot be read. Source: a helix unrolled; the wrap's thickness is left out.

    >>> round(exhaust_wrap("1 m", "45 mm", "50 mm", overlap="25 %").decision.figure.typical, 2)
    3.9
    """
    data = data or refdata()
    asked: dict[str, str | None] = {"length": length, "od": od, "width": width, "overlap": overlap, "pipes": pipes}
    read = {key: read_positive(str(asked[key]), "length", key) for key in _QUANTITIES}
    if pipes is not None and not 0 < (units.whole_number(pipes) or 0) <= _MOST_PIPES:
        why = f"not a number of pipes from 1 to {_MOST_PIPES}"
        raise InputError(pipes[:60] or "(blank)", "pipes", why, (), "give a whole number")
    how_many = f"{pipes} x " if pipes else ""
    title = f"wrap {read['width'].text} wide on {how_many}{read['length'].text} of {read['od'].text} pipe"
    doubts = {
        key: did_you_mean(f"{one.text} is no usual {_QUANTITIES[key].replace('_', ' ')}", ())
        for key, one in read.items()
        if not is_plausible(one, _QUANTITIES[key], data)
    }
    if doubts:
        return questioned(title, asked, doubts, VERB, data)
    given = {key: stated(one, _QUANTITIES[key], key, data) for key, one in read.items()}
    count = None if pipes is None else stated(units.parse_measure(pipes, "ratio", "pipes"), "pipe_count", "pipes", data)
    cautions = [Caution("Fibres of the wrap itch and its first heat smokes: gloves, glasses, and outdoors.", "injury")]
    if overlap is not None:
        made = _made(given, count, overlap, data)
        return Sheet(title, asked, data, [made, *given.values()], [], cautions, decision=use(VERB, made, _DO))
    both = [_made(given, count, lap, data) for lap, _ in _LAPS]
    check = Check(
        _NAME, CANNOT_TELL, "how far each turn laps the one before was not said", subject="overlap", bears=ASK
    )
    question = Question(FILL_IN, "How far does each turn lap the one before?", "overlap", (_NAME,))
    shown = [Candidate(one, when, "with the ends to spare") for one, (_, when) in zip(both, _LAPS, strict=True)]
    decision = ask(VERB, shown, (_NAME,), f"Say how far the turns lap. {_DO}")
    figures = [*both, *given.values()]
    return Sheet(title, asked, data, figures, [check], cautions, decision=decision, questions=[question])


def _made(given: dict[str, Figure], count: Figure | None, overlap: str, data: Refdata) -> Figure:
    """The length of wrap at one lap."""
    lap = _lap(overlap, given["width"], data)
    share = base(lap) if lap is not None else 0.0
    advance = base(given["width"]) * (1 - share)
    pipes = base(count) if count is not None else 1
    metres = pipes * calc.wrap_length(base(given["length"]), base(given["od"]), advance)
    unit, step = ("m", 10) if given["length"].unit in ("m", "mm", "cm") else ("ft", 2)
    length = units.from_base(metres, unit)
    inputs = [f for f in (*given.values(), lap, count) if f is not None]
    key = {"overlap": overlap, **{name: f"{f.text} {f.unit}" for name, f in given.items()}}
    if count is not None:
        key["pipes"] = str(count.text)
    text = f"{ceil(length * step - 1e-9) / step:g}"
    return derived("wrap_length", "wrap_length", length, unit, inputs, data, key=key, text=text)


def _lap(overlap: str, width: Figure, data: Refdata) -> Figure | None:
    """The lap as a share of the width; None where the turns lie edge to edge."""
    text = overlap.strip()
    if text in ("0", "0 %", "none"):
        return None
    try:
        share = read_positive(text, "ratio", "overlap")
    except (InputError, ValueError):
        length = read_positive(text, "length", "overlap")
        number = length.to("m") / base(width)
        share = units.parse_measure(f"{number * 100:.6g} %", "ratio", "overlap")
    if share.to("1") > _MOST_LAP:
        why = f"a lap is no more than {_MOST_LAP:.0%} of the width"
        raise InputError(text, "overlap", why, ("25 %", "50 %"), "give the share of the width that laps")
    return stated(share, "wrap_overlap", "overlap", data)
