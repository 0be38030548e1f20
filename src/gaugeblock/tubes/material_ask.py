"""What is asked of the strength of a tube's metal, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always
from gaugeblock.errors import Ambiguous, GaugeblockError, InputError
from gaugeblock.tubes.said import answer_in
from gaugeblock.tubes.sizes_ask import OD, STOCK, WALLS

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Open
    from gaugeblock.tables.load import Refdata


def stocks_of(data: Refdata) -> list[str]:
    """Every stock of which the tables have a strength, as it is named."""
    named = ("material", "product", "condition")
    rows = data.table("tubes/materials").rows
    return [" ".join(r[k] for k in named if r[k] not in ("any", "not stated")) for r in rows if not r.standing]


# What may be said of a tube's stock besides its metal.
STOCK_COLUMNS = {key: ("tubes/materials", key) for key in ("spec", "product", "condition")}


def _open_sized(values: dict[str, str], data: Refdata) -> Open | None:
    """None; InputError for a metal whose strength steps by the size of its tube, where that was not said."""
    if "material" not in values:  # several of them stand side by side
        return None
    try:
        answer_in("material", "material")(**values, data=data)
    except Ambiguous as error:
        if error.nearest and all(one.startswith("od ") for one in error.nearest):
            why = "its strength hangs on the size of the tube, which was not said"
            do = "say the outside diameter and the wall too: `1 1/2 x .065`"
            raise InputError(values["material"], "od", why, (), do) from error
    except GaugeblockError:
        pass  # which the answer itself will say
    return None


FACT = (
    Shaped(
        r"(?:tensile|uts|ultimate(?: tensile)?)(?: (?:strength|stress|only))?",
        always("tensile strength"),
        "tensile strength",
        cue=("tensile", "uts", "ultimate"),
    ),
    Shaped(r"(?:yield|proof)(?: (?:strength|stress|point|only))?", always("yield strength"), "yield strength"),
    Shaped(r"(?:elongation|stretch|ductility)", always("elongation"), "elongation"),
)
MATERIAL = Topic(
    lambda: answer_in("material", "material"),
    "strength",
    {"material": (STOCK,), "od": OD, "wall": WALLS, "fact": FACT},
    r"strength|how"
    r" strong|strong\w*|steel|tubes?|tubing|guarantee[ds]?|min(?:imum)?|ksi|mpa",
    needs=("material",),
    opens=_open_sized,
    joined=("material",),
    columns={"material": stocks_of, **STOCK_COLUMNS},
    asks_for=r"strength|strong\w*|yield|tensile|ultimate|ksi|mpa|guarantee\w*",
)
