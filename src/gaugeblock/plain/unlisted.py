"""More of what a shop asks and no table is about: headers and flanges, thermostats, rods and the current of a torch."""

from __future__ import annotations

_WELDER = "The maker of the rod or the welder prints it, and a qualified procedure governs a weld that carries a load."
_RODS = r"(?:e[ -]?)?(?:60|70)1[0-8](?:[ -]1)?|(?:arc |stick |welding )?(?:rods?|electrodes?|sticks?)"
_TORCH = r"mig|tig|mma|gmaw|gtaw|(?:arc|stick) weld\w*|weld(?:ing|er)?"
_ALLOYS = r"30[0-9]l?|31[0-9]l?|stainless"
# The thing, what is asked of it (blank: the thing alone asks), how it is called, who has it.
SUBJECTS: tuple[tuple[str, str, str, str], ...] = (
    (_RODS, r"amps?|amperage|current|settings?|polarity|dc ?[+-]|dcen|dcep", "the settings of a welder", _WELDER),
    (_TORCH, r"(?:ac|dc)(?: or (?:ac|dc))?|dcen|dcep|ac/dc", "the settings of a welder", _WELDER),
    (
        rf"(?:which|what)(?: [a-z]+)? (?:{_RODS}|wire|filler)",
        rf"(?:{_ALLOYS})\b(.*)\b(?:mild|carbon|steel)|(?:mild|carbon)\b(.*)\b(?:{_ALLOYS})",
        "the filler of a weld",
        _WELDER,
    ),
    (
        r"thermostats?|stats?",
        r"which|what|temp\w*|open(?:s|ing)?|rat(?:ing|ed)|hot(?:ter)?|cool(?:er)?|[0-9]{2,3}(?: ?(?:deg\w*|c|f))?",
        "the thermostat of an engine",
        "The maker of the engine prints it. What is stamped on one is where it begins to open.",
    ),
    (
        r"(?:headers?|extractors?|manifold|exhaust)\b(.*)\bprimar(?:y|ies)(?: (?:tub|pip)\w+)?"
        r"|primar(?:y|ies)\b(.*)\b(?:headers?|extractors?|manifold|tubes?|pipes?)",
        r"diamet\w+|sizes?|od|id|bore|lengths?|(?:how )?(?:big|long|wide)",
        "the primaries of a header",
        "No standard for them was found: the maker of the engine or of the header has them by its revs and its power."
        " One pipe behind them the tables size: `gaugeblock ask exhaust pipe for 250 hp`.",
    ),
    (
        r"(?:headers?|exhaust|manifold|collector|stainless|turbo)\b(.*)\bflanges?"
        r"|flanges?\b(.*)\b(?:headers?|exhaust|manifold|collector|turbo)|flanges?",
        r"thick\w*|(?:how )?thick|plate|warp\w*",
        "how thick a flange is",
        "No standard for it was found: the maker of the header or of the flange has it.",
    ),
)
