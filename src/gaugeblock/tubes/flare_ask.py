"""What is asked about a flare and its nut, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import Named, Shaped, Topic, always, words_of
from gaugeblock.errors import Ambiguous, LookupMiss

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.asking import Open, Reader
    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _flare() -> Callable[..., Sheet]:
    from gaugeblock.tubes.flare import flare

    return flare


# A brake line is flared double, or in a bubble: a single flare may crack.
_OF_BRAKES = ("45 deg double", "bubble (ISO)")


def _settle_flare(values: dict[str, str], _data: Refdata) -> dict[str, str]:
    """Which line it is says which flares are meant, and that the nut of a double one is that of an inverted flare."""
    settled = {k: v for k, v in values.items() if k != "line"}
    if "line" in values and values.get("flare") == _OF_BRAKES[0]:
        settled.setdefault("standard", "inverted flare")
    return settled


def _open_flare(values: dict[str, str], data: Refdata) -> Open | None:
    """The kinds of flare of a tube of this size."""
    if "flare" in values:
        return None
    found = []
    kinds = data.table("tubes/flares").column("flare").values()
    for kind in _OF_BRAKES if "line" in values else kinds:
        try:
            _flare()(**_settle_flare({**values, "flare": kind}, data), data=data)
        except (LookupMiss, Ambiguous):
            continue
        found.append({"flare": kind})
    return ("flare",), found


def topic(od: tuple[Reader, ...], walls: tuple[Reader, ...]) -> Topic:
    """The topic of a flare, with the words of a tube's diameter and its wall."""
    return Topic(
        _flare,
        "flare",
        {
            "flare": (Named(words_of("tubes", "flare", "tubes/flares"), tail="flares?|flared|fittings?"),),
            "od": od,
            "wall": walls,
            "standard": (Named(words_of("tubes", "standard", "tubes/flares")),),
            "fact": (
                Shaped(
                    r"(?:what |which )?(?:nut |fitting )?(?:threads?(?: (?:size|pitch))?)(?: (?:of|on|is|for))*(?:"
                    r" nuts?)?",
                    always("thread"),
                    "its thread",
                ),
            ),
            "line": (Shaped(r"brakes?(?: (?:lines?|pipes?|tubes?|tubing))?", always("brake line"), "of a brake line"),),
            "port": (
                Shaped(
                    r"(?:port|thread|threads?) (?P<t>[0-9/]+-[0-9]{2}|m[0-9]+x[0-9.]+)",
                    lambda m: m["t"].upper() if m["t"][0] == "m" else m["t"],
                    "port {}",
                ),
                Shaped(
                    r"(?P<t>[0-9/]+-[0-9]{2}|m[0-9]+x[0-9.]+)(?: (?:port|threads?))?",
                    lambda m: m["t"].upper() if m["t"][0] == "m" else m["t"],
                    "port {}",
                    doubt=1,
                ),
            ),
        },
        r"(?:flare )?angles?|flares?|flared|metric|fittings?|nuts?|(?:nut"
        r" )?threads?(?: size)?|what threads?|lines?|fuel"
        r" (?:lines?|pipes?|tubes?)(?:"
        r" nuts?)?|tubes?|size|fits?|ports?|max(?:imum)? wall|wall(?: max(?:imum)?| limit)?|max(?:imum)?",
        needs=("od",),
        asks_for=r"flares?(?! nuts?)|flared|threads?|ports?|orb|bubble",
        opens=_open_flare,
        settle=_settle_flare,
        columns={
            "flare": ("tubes/flares", "flare"),
            "od": ("tubes/flares", "od"),
            "standard": ("tubes/flares", "standard"),
        },
        unmoved="finish state service quality",
    )
