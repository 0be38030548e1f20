"""What is asked of the pressure at which a tube bursts, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, Topic, always
from gaugeblock.tubes.said import answer_in

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping

    from gaugeblock.answer.asking import Reader


def burst_of(slots: Mapping[str, tuple[Reader, ...]]) -> Topic:
    """The topic, with the words of a tube's diameter, wall and metal."""
    return Topic(
        lambda: answer_in("material", "material"),
        "burst of a tube",
        {
            "material": slots["material"],
            "od": slots["od"],
            "wall": slots["wall"],
            "fact": (
                Shaped(
                    r"burst(?:s|ing)?(?: (?:pressure|strength|at|psi))*|(?:max(?:imum)? |safe |working )*pressure(?:s)?"
                    r"|working psi",
                    always("burst"),
                    "its burst pressure, for no working pressure is on record",
                    cue=("burst", "press", "psi"),
                ),
            ),
        },
        r"(?:seamless |hydraulic |fuel |brake )*(?:tubes?|tubing|lines?|pipes?)|max(?:imum)?|safe|wall|x|od|hydraulics?"
        r"|seamless|psi|bar|(?:at )?room temp(?:erature)?|cold",
        needs=("material", "fact", "od", "wall"),
        joined=("material",),
        asks_for=r"burst\w*|press?ures?",
        is_named=True,
    )
