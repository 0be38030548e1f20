"""What is asked about a pipe by its nominal size, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Named, Shaped, Topic, always, words_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet

_IN = r"(?: ?(?:inch(?:es)?|in|\"))"


def _pipe() -> Callable[..., Sheet]:
    from gaugeblock.tubes.pipe import pipe

    return pipe


PIPE = Topic(
    _pipe,
    "pipe",
    {
        "nps": (
            Shaped(rf"(?P<n>{NUMBER}){_IN}?(?: nominal)?(?: nps)?", lambda m: m["n"].replace("-", " "), "{} pipe"),
            Shaped(rf"nps (?P<n>{NUMBER})", lambda m: m["n"].replace("-", " "), "{} pipe"),
        ),
        "fact": (
            Shaped(r"(?:wall|thick)(?: thickness| is)*|how thick|thickness", always("wall"), "its wall"),
            Shaped(r"bore|inside(?: diameter)?|id", always("bore"), "its bore"),
            Shaped(
                r"(?:how )?(?:much )?(?:does )?(?:it )?(?:weigh(?:t|s)?|mass|heavy)(?: (?:per|a|an)"
                r" (?:foot|ft|met(?:re|er)))?",
                always("mass"),
                "its mass",
            ),
        ),
        "schedule": (
            Named(words_of("tubes", "schedule", bare=False)),
            Shaped(r"(?:sch|schedule|sched)\.? ?(?P<n>[0-9]+s?)", lambda m: m["n"].upper(), "schedule {}"),
            Shaped(r"(?P<n>[0-9]+s)", lambda m: m["n"].upper(), "schedule {}"),
        ),
    },
    r"(?:steel |black |galvanised |galvanized )?pipes?|od|outside(?: diameter)?|dia(?:meter)?|how"
    r" big|real|true|stainless"
    r"|steel|nominal|per foot|a foot",
    needs=("nps",),
    asks_for=r"pipes?|nps|sch\w*|std|xs|xxs",
    is_named=True,  # a number alone is of anything
    columns={"nps": ("tubes/pipe_sizes", "nps"), "schedule": ("tubes/pipe_sizes", "schedule")},
)
