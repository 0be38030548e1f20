"""What is asked of the length of an exhaust wrap, as people say it."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, Topic, always, amount

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

    from gaugeblock.answer.sheet import Sheet


def _wrap() -> Callable[..., Sheet]:
    from gaugeblock.exhaust.wrap import exhaust_wrap

    return exhaust_wrap


_PIPE = r"(?:(?:exhaust|header|primary|down)[- ]?)?(?:pipes?|tubes?|headers?|primar(?:y|ies)|downpipes?)"
_LAP = r"(?:over ?lap\w*|lap\w*)"
_SHARES = {"quarter": "25 %", "half": "50 %", "third": "33 %", "no": "0", "zero": "0"}

_WIDEST = 110  # mm

WRAP = Topic(
    _wrap,
    "exhaust wrap",
    {
        "width": (
            amount(
                "length",
                after=r"(?:wide )?(?:(?:exhaust|header|heat|titanium|basalt|fib(?:re|er)glass) )*wrap\w*",
                say="wrap {} wide",
            ),
            amount("length", after="wide", say="wrap {} wide"),
            amount("length", before=r"wrap(?: (?:is|of|that|width))*", after="wide", say="wrap {} wide"),
            amount(
                "length", before=r"wrap(?: (?:is|of|that))*", followed="for|on|to", say="wrap {} wide", most=_WIDEST
            ),
        ),
        "od": (
            amount("length", after=rf"(?:od |dia(?:meter)? |across )?(?:{_PIPE})", say="{} pipe"),
            Shaped(
                rf"(?:of |an? )*(?P<n>[2-9][0-9]) (?:{_PIPE})",
                lambda m: f"{m['n']} mm",
                "{} pipe",
                cue=("pipe", "tube", "primar"),
            ),
            amount("length", after="(?:od|dia(?:meter)?|outside)", say="{} pipe"),
            amount("length", before=rf"(?:{_PIPE}) of", say="{} pipe", most=_WIDEST),
            amount(
                "length", before=rf"(?:{_PIPE})(?: (?:is|of|are))*", after="(?:od|dia(?:meter)?|across)", say="{} pipe"
            ),
        ),
        "length": (
            amount("length", after=rf"(?:long|of(?= {NUMBER})|of (?:{_PIPE})|in length|lengths?|each)", say="{} long"),
            amount("length", after="(?:long|lengths?|each)", bare="mm", say="{} long", least=200),
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
            amount("length", after=_LAP, say="lapped {}", cue=("lap",)),
            amount("length", before=rf"{_LAP}(?: (?:of|is|by))*", say="lapped {}", cue=("lap",)),
            Shaped(r"edge to edge|butted", always("0"), "edge to edge", cue=("edge", "butted")),
        ),
        "pipes": (
            Shaped(
                rf"(?P<n>[2-8])(?= (?:[0-9./]+ ?(?:in|inch|mm)? )?(?:{_PIPE}))", lambda m: m["n"], "{} of them", doubt=1
            ),
        ),
    },
    r"(?:exhaust |header |heat )*wrap\w*|how (?:much|many|long)(?: (?:metres|meters|feet|foot|rolls?))?|metres|meters"
    r"|feet"
    rf"|rolls|a roll|1 roll|roll of|length|(?:{_PIPE})|do i (?:need|buy)|need|buy|for|of|to cover|cover|each|wide|an?"
    rf"|with|long|takes?|will",
    needs=("length", "od", "width"),
    asks_for=r"wide\b.*\bwrap|wrap\b.*\bwide|(?:how (?:much|many|long)|metres|meters|feet|length|rolls?)\b.*\bwrap"
    r"|wrap\b.*\b(?:how (?:much|many"
    r"|long)|do i need)",
    is_named=True,
    unmoved="metal finish state form standard service quality",
)
