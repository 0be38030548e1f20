"""What is asked of how strong a bolt is: of its grade, and of a bolt of that grade and thread."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always, amount
from gaugeblock.errors import InputError
from gaugeblock.fasteners.own_words import KNOWN
from gaugeblock.fasteners.spoken import GRADE, THREAD
from gaugeblock.fasteners.threads_said import threads_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

_METRIC, _INCH = "metric", "imperial"


def grades_said(data: Refdata) -> list[str]:
    """Every grade of the tables with its standard."""
    rows = data.table("fasteners/grades").rows
    return list(dict.fromkeys(f"{row['standard']} {row['grade']}" for row in rows if not row.standing))


def _grade() -> Callable[..., Sheet]:
    from gaugeblock.fasteners.grade_facts import grade

    return grade


def _settle_grade(values: dict[str, str], _: Refdata) -> dict[str, str]:
    """The grade, where it is of the inches or the metric bolts that were said."""
    grade, system = values["grade"], values.get("system")
    is_metric = grade.startswith(("ISO 898-1", "ISO 3506", "ISO "))
    if system is not None and is_metric != (system == _METRIC):
        other = _METRIC if is_metric else _INCH
        raise InputError(grade, "grade", f"it is of {other} bolts, not of {system} ones", (), "read the head again")
    without = {"system", "plane"}
    return {k: v for k, v in values.items() if k not in without}


def _open_strength(values: dict[str, str], data: Refdata) -> Open | None:
    """Coarse and fine of a bare size; across its shank it bears least with the coarse one."""
    if "thread" not in values:
        return None
    threads = threads_of(values["thread"], data)
    if values.get("load") == "stretch" and "grip" in values and "shank" not in values:
        ends = ("0 mm", values["grip"])  # all thread, and all plain shank
        return ("thread", "shank"), [{"thread": cell, "shank": shank} for cell in threads for shank in ends]
    if values.get("load") == "shear":
        return ("thread",), [{"thread": threads[0]}]
    return (("thread",), [{"thread": cell} for cell in threads]) if len(threads) > 1 else None


_SHEAR = (
    r"(?:in )?(?:(?:single|double|2|1) )?shear(?:ing)?s?(?: (?:load|strength|force|off))?|sideways|side[- ]?load(?:ing"
    r"|ed)?"
    r"|(?:held|bolted|supported) (?:on )?both sides?"
)
_HOLDS = (
    r"(?:how much|what)(?: (?:weight|load|force|pull))?(?: (?:will|can|does|would|could))(?: (?:an?|the|my|one|1))?"
    r"(?=.* (?:hold|carry|lift|bear|support)(?: |$))(?!.*(?:shear|side|torque))"
    r"|(?:what|how much) (?:weight|load|force|pull)(?: (?:will|can|does|would|could))?"
    r"(?: (?:snaps?|breaks?|parts?)| (?=.* (?:take|stand|snap|break)(?: |$)))(?!.*(?:shear|side|torque))"
)
_PULL = (
    r"(?:(?:in )?(?:an? )?(?:straight|dead) pull|pull(?:ed)? (?:straight )?apart|breaking (?:load|strength|point"
    r"|strain)"
    r"|(?:before|till|until) (?:it|they) (?:snaps?|breaks?|l[e]ts? go|gives? way|parts?)|to (?:snap|break) (?:it|one))"
    r"(?: (?:before|till|until) (?:it|they) (?:snaps?|breaks?|l[e]ts? go|gives? way|parts?))?"
)


STRENGTH = Topic(
    _grade,
    "bolt grade",
    {
        "grade": GRADE,
        "thread": THREAD,
        "load": (
            Shaped(_SHEAR, always("shear"), "across its shank", cue=("shear", "side")),
            Shaped(_PULL, always("tensile"), "in straight pull", cue=("pull", "break", "snap", "let", "giv", "part")),
            Shaped(_HOLDS, always("tensile"), "what breaks it", cue=("how much", "what")),
            Shaped(
                r"(?:how (?:much|far|long) )?(?:(?:does|will|do|would|should|can) )?(?:(?:it|an?|the"
                r"|my) )*str[e]tch(?:es|ed)?"
                r"|how much longer(?: (?:does|will|do|would))?|(?:bolt )?elongat(?:ion|es?)",
                always("stretch"),
                "its stretch",
                cue=("stretch", "longer", "elong"),
            ),
            Shaped(r"proof load", always("proof"), "{} load", cue=("proof load",)),
            Shaped(r"proof(?: (?:strength|stress))?", always("proof"), "proof strength", cue=("proof",)),
            Shaped(
                r"yield(?:s)?(?: (?:strength|stress|point|load))?", always("yield"), "yield strength", cue=("yield",)
            ),
            Shaped(
                r"(?:ultimate )?tensile(?: (?:strength|stress|load))?|uts",
                always("tensile"),
                "tensile strength",
                cue=("tensile", "uts"),
            ),
            Shaped(
                r"(?:(?:what|how much) )?(?:preload(?:ed)?|clamp(?:ing)?(?: (?:load|force))?|squeeze)"
                r"(?: (?:of|for|from|on|should|would|does|do|will|can)(?: (?:an?|the|my|i))?)*",
                always("clamp"),
                "clamp",
                cue=("preload", "clamp", "squeeze"),
            ),
        ),
        "grip": KNOWN["grip"],
        "shank": (
            Shaped(
                r"(?:thread(?:ed)?|threads) all (?:the way|through|the way through)|no shank",
                always("0 mm"),
                "no shank",
                cue=("all", "no shank"),
            ),
            amount("length", after="(?:of )?(?:plain )?shank", say="shank {}", cue=("shank",)),
        ),
        "plane": (  # where it is cut, and how often: the answer says it of each plane
            Shaped(
                r"(?:and |but |with )*(?:the )?(?:threads? (?:sit |is |are |lies? |comes? )?(?:in|across|into)|on"
                r"|through|over"
                r"|plain|full|wh[o]le) (?:the )?(?:plain )?(?:shank|(?:1 |one |shear |both )?(?:plate|plane)s?)",
                always("said"),
                "its plane",
                cue=("shank", "plane", "plate"),
            ),
            Shaped(
                r"(?:in |on )?(?:single|one|1|2|both) (?:shear )?planes?", always("said"), "its plane", cue=("plane",)
            ),
        ),
        "size": (amount("length", before="of|at", say="{}"), amount("length", after="bolts?|screws?|studs?", say="{}")),
        "system": (
            Shaped(r"(?:it is |its )?(?:an? )?(?:imperial|inch(?: size[ds]?)?|unified)", always(_INCH), "{}"),
            Shaped(r"(?:it is |its )?(?:an? )?metric", always(_METRIC), "{}"),
        ),
    },
    r"(?:how )?(?:much |any )?strong(?:er|est)?|the same(?: as)?|better|strength"
    r"|means?|stand(?: for)?"
    r"|head(?: (?:says?|reads?|has))?(?= .*(?:lines?|mark|stamp|mean|dash))|heads?(?= (?:mark|stamp|line))"
    r"|on (?:the|its|a|my) head"
    r"|mark(?:s|ed|ing|ings)?(?: (?:on|of) (?:the|its|a|my) (?:bolt )?head)?|stamp(?:s|ed)?|on it"
    r"|(?:what |how much )?(?:load|force)|(?:it )?(?:takes?|bears?|carry|carries|holds?)|(?:to|on) the (?:axle|chassis"
    r"|frame)"
    r"|(?:get )?when (?:it is|it's) (?:at )?full|(?:at )?full (?:preload|clamp|torque)"
    r"|till|until|kn|kilonewtons?|lbf"
    r"|links?|pivots?|sh[o]ck(?:er)?s?|bolts?|screws?|grade|class|ksi|psi|mpa|lines?|what (?:is|are|grade)|is",
    needs=("grade",),
    asks_for=r"preload\w*|clamp|shear\w*|sideways|side[- ]?load\w*|pull|snap\w*|break\w*|weight|hold|carry|lift"
    r"|support|what load|stretch\w*|longer|elongat\w*"
    r"|strong\w*|strength|tensile|proof|yield\w*"
    r"|mean|means|head|mark\w*|stamp\w*|lines?",
    is_named=True,
    columns={"grade": grades_said},
    opens=_open_strength,
    settle=_settle_grade,
)
