"""What is asked of a gauge number, as people say it: what thickness it is, in which system."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, amount, words_of
from gaugeblock.tubes.said import answer_in
from gaugeblock.tubes.sizes_ask import GAUGE as GAUGE_WORDS
from gaugeblock.tubes.sizes_ask import IN, UNIT, WallBetween, wall_between

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def _systems(data: Refdata) -> dict[str, str]:
    """The systems of gauge numbers; a word with its own number (``10 awg``) would hide the number."""
    return {w: c for w, c in words_of("tubes", "system", "tubes/gauges")(data).items() if not w[0].isdigit()}


def _open_gauge(values: dict[str, str], data: Refdata) -> Open | None:
    """What the number means in each system that has it."""
    if "system" in values:
        return None
    rows = data.table("tubes/gauges").of("wall_thickness")
    number = values["number"]
    if not number.isdigit():
        return ("system",), [{"system": s} for s in dict.fromkeys(r["system"] for r in rows if not r["standing"])]
    systems = [r["system"] for r in rows if r["gauge"] == number and not r["standing"]]
    return ("system",), [{"system": s} for s in dict.fromkeys(systems)]


_LEAST_MM_WALL = 0.5  # a wall without a unit: under it inches
GAUGE = Topic(
    lambda: answer_in("gauge", "gauge"),
    "gauge",
    {
        "number": (
            Shaped(rf"(?:#)?(?P<n>[0-9]{{1,2}}|0{{2,4}}) ?(?:{GAUGE_WORDS})?(?= |$)", lambda m: m["n"], "{} gauge"),
            *(amount("length", after=after, say="{} thick") for after in (r"(?:thick(?:ness)?|wall)", "")),
            WallBetween(
                rf"(?:outside|od|o\.d)(?: (?:is|of|diameter|measures|at))* (?P<od>{NUMBER}){UNIT}(?: (?:and|with|an?))*"
                rf" (?:inside|id|i\.d|bore)(?: (?:is|of|diameter|measures|at))* (?P<id>{NUMBER})(?: ?(?P<mm>mm)|{IN})?",
                wall_between,
                cue=("inside", " id ", "bore"),
            ),
            Shaped(
                r"(?P<n>0?\.[0-9]+|[0-9]+\.[0-9]+) (?:thick(?:ness)?|wall)",
                lambda m: f"{m['n']} {'in' if float(m['n']) < _LEAST_MM_WALL else 'mm'}",
                "{} thick",
            ),
        ),
        "system": (
            Shaped(
                r"(?:swg|british)(?: gauge)? (?:and )?(?:not|no) (?:the )?(?:yank|american|us|u\.s\.)(?: (?:one|kind"
                r"|gauge))?",
                always("SWG (British)"),
                cue=("swg", "british"),
            ),
            Shaped(
                r"(?:alumini?um|brass|copper)(?: sheet| plate)?(?: and)? not (?:steel|iron|stainless)",
                always("AWG"),
                "{}, not steel",
                cue=("not ",),
            ),
            Shaped(  # a tube of whatever metal goes by the wire gauge
                r"(?:(?:stainless|mild|carbon|steel|copper|brass|ally|alumini?um|chromoly|304|316|409"
                r"|exhaust|header) )+"
                r"(?:tub(?:e|es|ing))(?: wall)?",
                always("BWG (Stubs)"),
                "{} of a tube",
                cue=("tub",),
            ),
            Shaped(  # of a tube it is another system
                r"(?:mild|carbon|plain|uncoated)(?: steel)?(?: sheet| plate| panel)?(?! (?:tub|pipe|erw|dom|box|roll))"
                r"|(?:american|us|yank)(?: standard)? (?:sheet|steel)(?: gauge)?",
                always("manufacturers standard sheet"),
                "mild steel sheet",
                cue=("mild", "carbon", "plain", "uncoated", "american", "us ", "yank"),
            ),
            Named(_systems),
        ),
    },
    rf"(?:{GAUGE_WORDS})|close to|nearest|plate|thick(?:ness)?|how thick|wall(?: thickness)?|in inches|in"
    r" mm|decimal|steel|dia(?:meter)?|metal"
    r"|sheet|floor ?pans?|pan|panel|for|(?:the )?same(?: thing| thickness)?|all systems|calipers|(?:old )?roll"
    r" ?(?:bar|cage)"
    r"|tube|(?:would|do) (?:they|you) call it|call it|called|differ(?:ent|s)?|vary|varies",
    needs=("number",),
    asks_for=rf"what wall|call it|(?:{GAUGE_WORDS})|[a-z]wg|[0-9]ga|sheet\w*",
    opens=_open_gauge,
    columns={"number": ("tubes/gauges", "gauge"), "system": ("tubes/gauges", "system")},
)
