"""What a circuit's answer says: what is open and why, what comes of a wire, where the fuse goes."""

from __future__ import annotations

from gaugeblock.answer.caution import Caution
from gaugeblock.answer.drawing import Drawing
from gaugeblock.answer.making import base
from gaugeblock.answer.pretty import capital
from gaugeblock.answer.printing import number_only, printed
from gaugeblock.answer.question import FILL_IN, MEASURE
from gaugeblock.wiring import conductor, fuse
from gaugeblock.wiring.conductor import SIZES

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Sequence

    from gaugeblock.answer.check import Check
    from gaugeblock.figure import Figure
    from gaugeblock.tables.load import Refdata
    from gaugeblock.wiring.conductor import Conductor, Load, Sized
    from gaugeblock.wiring.keys import Circuit
    from gaugeblock.wiring.settings import Setting

_QUESTIONS = {
    "drop": (FILL_IN, "How much may the circuit lose: 3 % where it must not fail, or 10 % where dim or slow will do?"),
    "insulation": (FILL_IN, "Which insulation is it? Read the letters printed on the wire: GPT, TXL, GXL, SXL."),
    "air": (MEASURE, "How hot is the air along the wire? Measure it at the hottest place with the engine hot."),
    "bundle": (FILL_IN, "How many loaded wires lie in the same loom? Count this one too."),
    "return": (FILL_IN, "Does the current come back by a wire or through the body?"),
}
_NAMED = {
    "drop": "the allowed drop",
    "insulation": "the insulation",
    "air": "the heat of the air",
    "bundle": "the loom",
    "return": "the way back",
}


# What a person knows of a wire by looking stands first.
_BY_SIGHT = ("return", "bundle", "air", "insulation", "drop")
_CRANKING = "How much may the cable lose while cranking: 0.2 V as a manual has it, or 0.4 V with its connections?"


def question(key: str, *, is_starter: bool = False) -> tuple[str, str]:
    """The kind and the text of the question of an open key."""
    return (FILL_IN, _CRANKING) if key == "drop" and is_starter else _QUESTIONS[key]


def deciding(open_keys: Sequence[str], every: Sequence[Sized]) -> tuple[str, ...]:
    """Those of the open keys whose way changes the wire, with all other keys as they are."""
    out = []
    for key in open_keys:
        groups: dict[tuple[str, ...], set[int]] = {}
        for one in every:
            rest = tuple(w.words for w in one.setting.ways if w.key != key)
            groups.setdefault(rest, set()).add(one.at)
        if any(len(sizes) > 1 for sizes in groups.values()):
            out.append(key)
    return tuple(out)


def when(setting: Setting, keys: Sequence[str]) -> str:
    """The ways of some keys as one condition, what is seen at a glance first."""
    return "; ".join(setting.way(k).words for k in _BY_SIGHT if k in keys)


def then(one: Sized, wire: Conductor, data: Refdata) -> str:
    """What comes of a wire: its metric size, what it loses, and which of drop and heat asked for it."""
    lost = f"loses {number_only(wire.drop, data)}" if wire.drop is not None else "over what it may carry"
    metric = conductor.metric_of(wire.size, data)
    return f"{f'or {metric}; ' if metric else ''}{lost}; {governs(one)}"


def governs(one: Sized) -> str:
    """Which of the two governs."""
    if one.by_drop == one.by_heat:
        return "drop and heat ask for the same"
    return "the drop governs" if one.by_drop > one.by_heat else "the heat governs"


def ask_for(keys: Sequence[str], unserved: str = "") -> str:
    """What to settle first, and what would never do."""
    names = [_NAMED[k] for k in _BY_SIGHT if k in keys]
    listed = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
    said = f"Settle {listed}: the wire hangs on {'it' if len(names) == 1 else 'them'}."
    return f"{said} {capital(unserved)}." if unserved else said


def do(one: Sized, wire: Conductor, load: Load, of: Circuit, data: Refdata) -> str:
    """What to do with the wire that is to be used."""
    limit = one.setting.way("drop").figure
    assert wire.drop is not None
    assert limit is not None
    lost = f"It loses {number_only(wire.drop, data)} of {number_only(limit, data)}; {governs(one)}."
    metric = conductor.metric_of(wire.size, data)
    bigger = f"the next bigger is {SIZES[one.at + 1].removeprefix('AWG ')} AWG" if one.at + 1 < len(SIZES) else ""
    copper = f"{conductor.area_text(wire.size)} of copper" + (f", {metric} as metric wire" if metric else "")
    many = f" {of.wires} such wires side by side." if of.wires and of.wires > 1 else ""
    it = "each" if many else "it"
    fused = f" Fuse {it} with {printed(load.fuse, data)} at the source." if load.fuse is not None else ""
    return f"{lost} {capital(copper)}{'; ' + bigger if bigger else ''}.{many}{fused}"


def earth(left: Figure, data: Refdata) -> str:
    """What to measure on the earth side."""
    return f"What does the body lose under load, from the load's earth to the battery? {printed(left, data)} is left."


def stopped(check: Check, needed: Figure, *, is_least: bool = False) -> str:
    """What would make a stop right; of a wire the gauge that drop and heat need together, or, where much is open, the
    least that it may come to.
    """
    if check.subject == "wire":
        wire = check.reason.partition(" is there")[0]
        easiest = " even where all that is open is at its easiest" if is_least else ""
        return f"{wire} is there, and {needed.text} AWG is needed{easiest}: too small a wire."
    right = {
        "connector": "fit a connector for more current",
        "relay": "fit a relay for more current",
        "fuse": "it blows in use",
    }
    return f"{check.reason}: {right.get(check.subject, 'too small a wire')}."


def refused(setting: Setting) -> str:
    """Why no wire of the table serves a setting."""
    if setting.number("air") >= setting.number("insulation"):
        return f"no wire of {setting.way('insulation').words} serves in {setting.way('air').words}"
    return f"no wire up to {SIZES[-1]} for: {when(setting, tuple(w.key for w in setting.ways))}"


def cautions(
    near: Figure, rating: Figure | None, wire: Conductor, load: Load, of: Circuit, data: Refdata
) -> list[Caution]:
    """What can hurt: the unfused wire, with the ``rating`` of its fuse where that may be fitted; what the table is and
    is not.
    """
    far = printed(near, data)
    size = f"a {printed(rating, data)} fuse" if rating is not None else "the fuse"
    fire = (
        f"Put {size} at the battery, within {far} of wire (boat rule): a short ahead of it is stopped by nothing but"
        " fire."
    )
    table = (
        "What the wire may carry is the boat rule's figure, or a truck or trailer part maker's where that is lower:"
        " no standard for cars was found. Aircraft and chassis-wiring figures are for other wire or air, and not used."
    )
    sae = "A cable sold by an SAE number holds 3 to 12 % less copper than AWG of that number: buy it by AWG or mm2."
    if of.is_starter:
        fire = (
            "A starter cable has no fuse, and a short of it is fire: keep it short, boot both ends, clamp it, and let"
            " it touch no edge and nothing hot."
        )
        table = "The boat rule leaves cranking conductors out of its table: this cable is sized by its drop."
    ids = () if of.is_starter else (near.id,)
    about = () if wire.allowed is None else (wire.allowed.id,)
    out = [Caution(fire, "injury", ids), Caution(table, "note", about, "33CFR183")]
    if of.wires and of.wires > 1:
        text = "Wires side by side share the current only while all are whole: fuse each by itself, all of one length."
        out.append(Caution(text, "injury"))
    out.append(Caution(sae, "damage", (wire.area.id,)))
    if load.fuse is not None and base(load.current) > fuse.LASTING * base(load.fuse):
        share = 100 * base(load.current) / base(load.fuse)
        text = (
            f"The load is {share:.0f} % of its fuse. Where it lasts, habit is 80 % at most: give the next bigger fuse"
            " as fuse, and the wire goes with it."
        )
        out.append(Caution(text, "damage", (load.fuse.id,)))
    if of.relay is not None:
        coil = printed(fuse.coil(data), data)
        text = f"The wire to the relay's coil carries {coil}, and so does the switch: fuse it by itself, and small."
        out.append(Caution(text, "note", (fuse.coil(data).id,), "RELAY-NOTE"))
    if of.back == "body":
        text = "The body itself is counted as no loss: clean and bolt its earth."
        out.append(Caution(text, "damage"))
    return out


def drawings(of: Circuit, load: Load, one: Sized, wire: Conductor, data: Refdata) -> list[Drawing]:
    """The one-line diagram."""
    from gaugeblock.drawing import one_line

    parts = [one_line.Part("battery", of.voltage.text)]
    if load.fuse is not None:
        parts.append(one_line.Part("fuse", printed(load.fuse, data)))
    if of.relay is not None:
        parts.append(one_line.Part("relay", of.relay.text))
    parts.append(one_line.Part("starter" if of.is_starter else "load", of.current.text))
    is_body = not conductor.is_pair(one.setting)
    said = [f"{wire.size}, {of.length.text}"]
    if wire.drop is not None:
        said.append(f"loses {number_only(wire.drop, data)}")
    back = "body" if is_body else wire.size
    return [Drawing("one-line diagram", one_line.diagram(parts, said, back, is_body))]
