"""What is asked of the length of an exhaust wrap, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Hit, Shaped, Topic, always, amount
from gaugeblock.answer.said_units import millimetres

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable, Iterable

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata


def _wrap() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.wrap import exhaust_wrap

    return exhaust_wrap


_PIPE = r"(?:(?:exhaust|header|primary|down)[- ]?)?(?:pipes?|tubes?|headers?|primar(?:y|ies)|downpipes?)"
_LAP = r"(?:over ?lap\w*|lap\w*)"
_SHARES = {"quarter": "25 %", "half": "50 %", "third": "33 %", "no": "0", "zero": "0"}

_WIDEST = 110  # mm


def _across(match: re.Match[str]) -> str | None:
    """A diameter that a pipe can have."""
    unit = "mm" if match["mm"] else "in"
    return f"{match['n']} {unit}" if millimetres(match["n"], unit) <= _WIDEST else None


class BehindOf(Shaped):
    """What stands behind ``of``: thirty inches of two and a half inch."""

    __slots__ = ()

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """As it is read, behind that word alone."""
        return super().take(words, at, data) if at and words[at - 1] == "of" else ()


WRAP = Topic(
    _wrap,
    "exhaust wrap",
    {
        "width": (
            amount(
                "length",
                after=r"(?:wide )?(?:(?:exhaust|header|heat|titanium|basalt|fib(?:re|er)glass) )*wrap\w*"
                r"(?! (?:is|comes|width|that|which|of) )",
                say="wrap {} wide",
            ),
            amount(
                "length", after=r"(?:wide )?(?:(?:exhaust|header|heat|wrap) )*tape", say="wrap {} wide", most=_WIDEST
            ),
            amount("length", before=r"wrap (?:is|comes|in|that is)(?: an?| in)?", say="wrap {} wide", most=_WIDEST),
            amount("length", after="wide", say="wrap {} wide"),
            amount("length", before=r"wrap(?: (?:is|of|that|width))*", after="wide", say="wrap {} wide"),
            amount(
                "length", before=r"wrap(?: (?:is|of|that))*", followed="for|on|to", say="wrap {} wide", most=_WIDEST
            ),
        ),
        "od": (
            amount("length", after=rf"(?:od |dia(?:meter)? |across )?(?:{_PIPE})", say="{} pipe"),
            Shaped(
                rf"(?:of |an? )*(?P<n>[2-9][0-9](?:\.[0-9])?) (?:{_PIPE})",
                lambda m: f"{m['n']} mm",
                "{} pipe",
                cue=("pipe", "tube", "primar"),
            ),
            amount("length", after="(?:od|dia(?:meter)?|outside)", say="{} pipe"),
            amount("length", before=rf"(?:{_PIPE}) of", say="{} pipe", most=_WIDEST),
            Shaped(
                rf"(?:{_PIPE}) (?P<n>[1-3] [1-7]/8|[1-3] [13]/4|[1-3] 1/2)(?: ?(?:in|inch|\"))?(?! ?mm)",
                lambda m: f"{m['n']} in",
                "{} pipe",
                cue=("pipe", "tube", "header", "primar"),
            ),
            Shaped(  # no pipe is 1.75 mm across
                rf"(?:of |an? )*(?P<n>[1-6]\.[0-9]+|[1-6] [1-7]/8|[1-6] [13]/4|[1-6] 1/2|[1-6]) (?:od )?(?:{_PIPE})",
                lambda m: f"{m['n']} in",
                "{} pipe",
                cue=("pipe", "tube", "header", "primar"),
            ),
            amount(
                "length", before=rf"(?:{_PIPE})(?: (?:is|of|are))*", after="(?:od|dia(?:meter)?|across)", say="{} pipe"
            ),
            BehindOf(r"(?P<n>[1-6]\.[0-9]+)(?! ?(?:mm|cm|m|ft|in|inch)\b)", lambda m: f"{m['n']} in", "{} pipe"),
            BehindOf(
                rf"(?P<n>{NUMBER}) ?(?:(?P<mm>mm)|in|inch(?:es)?|\")(?! ?wrap(?! (?:is|comes|width)))",
                _across,
                "{} pipe",
            ),
        ),
        "length": (
            amount("length", after=rf"(?:long|of(?= {NUMBER})|of (?:{_PIPE})|in length|lengths?|each)", say="{} long"),
            amount("length", after="(?:long|lengths?|each)", bare="mm", say="{} long", least=200),
            amount("length", before="(?:by|x)", say="{} long", least=200, cue=("by", "x")),
            amount("length", before=r"(?:for|on|to wrap|wrap|cover)(?: (?:an?|about))*", say="{} long", doubt=1),
            amount("length", say="{} long", doubt=2, least=200),
        ),
        "overlap": (
            Shaped(
                rf"(?:(?:with|and|an?) )*(?P<n>quarter|half|third|no|zero)(?: of an?)?(?: inch)?(?: (?:width"
                rf"|wide))? {_LAP}",
                lambda m: (
                    _SHARES[m["n"]] if "inch" not in m[0] else {"quarter": "1/4 in", "half": "1/2 in"}.get(m["n"])
                ),
                "lapped {}",
                cue=("lap",),
            ),
            Shaped(
                rf"(?:(?:with|and|an?) )*(?P<n>{NUMBER}) ?(?:%|percent|per ?cent) {_LAP}",
                lambda m: f"{m['n']} %",
                "lapped {}",
                cue=("lap",),
            ),
            Shaped(
                rf"{_LAP}(?: (?:of|is|by))* (?P<n>{NUMBER}) ?(?:%|percent|per ?cent)",
                lambda m: f"{m['n']} %",
                "lapped {}",
                cue=("lap",),
            ),
            Shaped(
                rf"{_LAP}(?: (?:over|of|is|by|an?))* (?P<n>half|quarter|third|1/2|1/4|1/3)(?: of)?"
                r" (?:its|the|their|wrap|tape|a)(?: (?:own|wrap|tape))?(?: width)?",
                lambda m: _SHARES.get(m["n"]) or {"1/2": "50 %", "1/4": "25 %", "1/3": "33 %"}[m["n"]],
                "lapped {}",
                cue=("lap",),
            ),
            amount("length", after=_LAP, say="lapped {}", cue=("lap",)),
            amount("length", before=rf"{_LAP}(?: (?:of|is|by))*", say="lapped {}", cue=("lap",)),
            Shaped(
                r"(?:(?:i|we|going|go|goes|on|with|at|it|to) )*(?P<n>half|quarter|third|1/2|1/4"
                r"|1/3) (?:over(?: (?:each|every|the)"
                r"(?: (?:turn|wrap|last|one|previous|before))*)?|overlap(?:ped)?|each turn)",
                lambda m: _SHARES.get(m["n"]) or {"1/2": "50 %", "1/4": "25 %", "1/3": "33 %"}[m["n"]],
                "lapped {}",
                cue=("over", "each turn"),
            ),
            Shaped(r"edge to edge|butted", always("0"), "edge to edge", cue=("edge", "butted")),
        ),
        "roll": (
            Shaped(
                rf"(?:(?:it|and|which|they|shop|sells?|sold|stock|they|only|do|comes?|come|in|as|by|an?|the|got|have"
                r"|has|per) )*"
                rf"(?P<n>{NUMBER}) ?(?P<u>ft|foot|feet|m|met(?:re|er)s?) (?:rolls?|lengths?|reels?|coils?|packs?)",
                lambda m: f"{m['n']} {'m' if m['u'][0] == 'm' else 'ft'}",
                "in rolls of {}",
                cue=("roll", "reel", "coil", "pack"),
            ),
        ),
        "pipes": (
            Shaped(
                rf"(?:times|x) (?P<m>[2-8])|(?P<n>[2-8])(?= (?:[0-9./]+ ?(?:in|inch|mm)? )?(?:{_PIPE}))",
                lambda m: m["m"] or m["n"],
                "{} of them",
                doubt=1,
            ),
        ),
    },
    r"(?:exhaust |header |heat |titanium |basalt |lava )*wrap\w*|how (?:much|many|long)(?: (?:metres|meters"
    r"|feet|foot|ft|rolls?))?"
    r"|metres|meters"
    r"|feet"
    rf"|rolls|a roll|1 roll|roll of|length|(?:{_PIPE})|do i (?:need|buy)|need|buy|for|of|to cover|cover|each|wide|an?"
    rf"|with|long|takes?|will|covers?|al?together|(?:in )?(?:all|total)|wrapping|(?:do i need )?(?:one|1) or (?:two|2)"
    r"|how many rolls?|rolls|going on|go on|over|use|buy|header tubes?|down ?pipe",
    needs=("length", "od", "width"),
    settle=lambda values, _: {key: value for key, value in values.items() if key != "roll"},
    asks_for=r"(?:header|exhaust) wrap\b.*(?:in|inch|mm) wrap|"
    r"wrap\w*\b.*\b(?:over ?lap\w*|lap\w*|half over)|wide\b.*\bwrap|wrap\b.*\bwide|(?:how (?:much|many|long)"
    r"|metres|meters|feet|length|rolls?)\b.*\bwrap"
    r"|wrap\b.*\b(?:how (?:much|many"
    r"|long)|do i need)",
    is_named=True,
    unmoved="metal finish state form standard service quality",
)
