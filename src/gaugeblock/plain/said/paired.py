"""Two facts of one bolt in one breath, ``what drill and how deep for an M8`` -> a question, and the next one."""

from __future__ import annotations

from gaugeblock.answer.patterns import compiled

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    import re
    from collections.abc import Callable

_DRILL = (
    r"(?:tap(?:ping)?|clearance|pilot) (?:drill|hole|bit)(?: size)?|drill(?: bit)?(?: size)?|(?:hole|bit)(?: size)?"
)
_SPANNER = r"spanners?(?: size)?|sockets?(?: size)?|wrench(?: size)?"
_TORQUE = r"torques?(?: figure| setting| spec)?|how tight"
_DEEP = (
    r"how deep|how much thread(?: engagement)?|how far in|(?:thread |tapping |tapped |engagement )?depth"
    r"|thread engagement"
)
_FACT = rf"{_DRILL}|{_SPANNER}|{_TORQUE}|{_DEEP}"
_BEGINS = r"^(?:(?:so|hi|hello|ok|right|please|need|want|give me|tell me|what|what's|whats|which|is|are|size|the|i) )*"
_AND = r"(?: and| n)(?: (?:the|what|what's|whats|which|is|size|do i go|do i need|should i go))*"
_OF = r"(?: (?:should|do|must) i(?: (?:go|use|need|have|tap it|drill))?)?(?: (?:for|on|of|with|in))"
_METAL = r" (?:in|into)(?: (?:an?|the|some))? (?:ally|ali|alloy|alumini?um|cast iron|iron|steel|mild steel|brass)\b"
_SPAN, _DEPTH = 2, 3
_LAST = (
    *("drill", "hole", "bit", "size", "torque", "torques", "figure", "setting", "spec", "tight", "spanner", "spanners"),
    *("socket", "sockets", "wrench", "deep", "thread", "engagement", "far in", "depth"),
)
_CUES = tuple(f"{one} {join} " for one in _LAST for join in ("and", "n"))


def _kind(fact: str) -> int:
    """Which of two facts is asked first: a torque takes whatever is said of a bolt, a depth the least."""
    if "torque" in fact or "tight" in fact:
        return 0
    if "drill" in fact or "hole" in fact or "bit" in fact:
        return 1
    return _SPAN if fact.startswith(("spanner", "socket", "wrench")) else _DEPTH


def _asked(one: str, other: str, of: str) -> str | None:
    """The one question about a bolt, and then the other; None where both ask for one fact."""
    first, second = sorted((one, other), key=_kind)
    if _kind(first) == _kind(second):
        return None
    metal = ""
    if _kind(second) == _DEPTH:
        first = "tap drill" if first.startswith(("drill", "bit", "hole")) else first
        into = compiled(_METAL).search(of) if _kind(first) == 1 else None
        if into is not None:  # a drill is the same in any
            of, metal = f"{of[: into.start()]}{of[into.end() :]}", into[0]
    told = {_DEPTH: f"how deep{metal}", _SPAN: "what size across flats"}.get(_kind(second), f"what {second}")
    return f"{first if first.startswith('how') else f'what {first}'} for {of} and {told}"


def _in_turn(match: re.Match[str]) -> str:
    """``what spanner and torque for m10 8.8 dry`` is its torque, and what spanner."""
    return _asked(match[1], match[2], match[3]) or match[0]


def _at_the_end(match: re.Match[str]) -> str:
    """``m8 8.8 dry torque and tap drill`` likewise."""
    return _asked(match[2], match[3], match[1]) or match[0]


# A piece that a line must have; the pattern; what is written for it.
SAID: tuple[tuple[str, str, str | Callable[[re.Match[str]], str]], ...] = (
    *((cue, rf"{_BEGINS}({_FACT}){_AND} ({_FACT}){_OF} (.+)$", _in_turn) for cue in _CUES),
    *(
        (
            cue,
            rf"{_BEGINS}((?:an? )?(?:m ?[0-9]|[0-9]+/[0-9]|[a-z]+ (?:eighths?|sixteenths?)|half|quarter)[^?]*?)"
            rf" ({_FACT}){_AND} ({_FACT})(?: (?:please|pls))?$",
            _at_the_end,
        )
        for cue in _CUES
    ),
    (
        "and how much thread",
        r"^(?=.*\b(?:drill|bit|hole|torque|tight)\b)(.*?) and how much thread(?: engagement)?\b",
        r"\1 and how deep",
    ),
    *(
        (
            cue,
            rf"^(?=.*\b(?:torque|tight)\b)(.*?) and (?:what|which) (?:{_SPANNER})$",
            r"\1 and what size across flats",
        )
        for cue in ("what spanner", "what socket", "what wrench", "which spanner", "which socket", "which wrench")
    ),
)
