"""Cause: why a shaft cannot be passed as it stands, and what settles it."""

from __future__ import annotations

from gaugeblock.answer.question import ASK_MAKER, FILL_IN, MEASURE, Question
from gaugeblock.value import Value, put


class Cause(Value):
    """``why`` it is open, ``do`` what settles it, ``kind`` and ``key`` of the question that closes it; ``fails``
    past a limit.
    """

    __slots__ = ("do", "fails", "key", "kind", "text", "why")

    why: str
    do: str
    kind: str
    text: str
    key: str
    fails: bool

    def __init__(self, why: str, do: str, kind: str, text: str, key: str, *, fails: bool = False) -> None:
        put(self, "why", why)
        put(self, "do", do)
        put(self, "kind", kind)
        put(self, "text", text)
        put(self, "key", key)
        put(self, "fails", fails)

    def question(self, *checks: str) -> Question:
        """The question that closes it."""
        return Question(self.kind, self.text, self.key, checks)


_CERTIFICATE = "What yield strength does the certificate of the shaft's steel state?"


def torque_missing() -> Cause:
    """No torque was given."""
    why = "the torque asked of the shaft is not given"
    return Cause(why, "Say what torque the shaft must carry.", FILL_IN, "What torque must the shaft carry?", "torque")


def diameter_missing() -> Cause:
    """No diameter was given."""
    why = "the shaft's diameter is not given"
    do = "Measure the shaft where it is smallest."
    return Cause(why, do, MEASURE, "What is the shaft's smallest diameter?", "diameter")


def no_yield() -> Cause:
    """The tables have no yield strength."""
    why = "no yield strength is published for this steel, treatment and temper"
    return Cause(why, "Ask the maker of the shaft for its certificate.", ASK_MAKER, _CERTIFICATE, "yield_strength")


def yields() -> Cause:
    """Past the torsional yield."""
    do = "Use a thicker shaft, a stronger steel or less torque."
    text = "Which shaft is fitted instead: what diameter, or what steel?"
    return Cause("the surface yields", do, FILL_IN, text, "diameter", fails=True)


def may_yield(word: str) -> Cause:
    """Past the torsional yield by a figure that does not decide: typical, recalled, a habit."""
    return Cause(
        "the surface yields",
        f"By its {word} strength this shaft yields. The certificate of its steel decides, or another shaft.",
        ASK_MAKER,
        _CERTIFICATE,
        "yield_strength",
        fails=True,
    )


def typical() -> Cause:
    """The strength is a typical one."""
    return Cause(
        "typical is not guaranteed: the shaft maker's certificate or a hardness test of this shaft decides",
        "The shaft maker's certificate or a hardness test of this shaft decides.",
        MEASURE,
        "How hard is this shaft? Or what does the certificate of its steel state? The strength here is typical.",
        "hardness",
    )


def recalled(word: str) -> Cause:
    """The strength is from memory, or habit."""
    return Cause(
        f"the strength is {word}: the certificate of its steel decides",
        f"The strength is {word}. The certificate of the shaft's steel decides.",
        ASK_MAKER,
        _CERTIFICATE,
        "yield_strength",
    )


def other_section(section: str) -> Cause:
    """The strength is published for another section than this shaft's."""
    return Cause(
        f"the strength is published for section {section}, not for this diameter; strength falls as the section grows",
        "The certificate of the shaft's steel decides: strength falls as the bar grows.",
        ASK_MAKER,
        _CERTIFICATE,
        "yield_strength",
    )


def smaller_section(section: str) -> Cause:
    """Past yield, on a figure for a larger bar."""
    return Cause(
        f"past it, and the figure is for section {section}; a smaller bar may be stronger, and none is published",
        "The certificate of the shaft's steel decides: a smaller bar may be stronger.",
        ASK_MAKER,
        _CERTIFICATE,
        "yield_strength",
    )


def stricter(text: str) -> Cause:
    """Another source of the same keys gives less than the stress."""
    return Cause(
        f"another source of the same keys gives only {text}",
        f"Another source gives only {text}. The certificate of the shaft's steel decides.",
        ASK_MAKER,
        _CERTIFICATE,
        "yield_strength",
    )


def softer(text: str) -> Cause:
    """The measured hardness is worth far less than the treatment named."""
    return Cause(
        f"the table's {text} is not borne out: find out why it is softer before it carries anything",
        "Find out why this shaft is softer than its treatment makes it, before it carries anything.",
        MEASURE,
        "How hard is the shaft where its metal is sound? Its maker knows how it was treated.",
        "hardness",
    )


def case_unknown() -> Cause:
    """A case-hardened shaft of which the case is not known."""
    return Cause(
        "that is the case: compare stress and strength at the case-core junction; case depth and core hardness of "
        "this shaft are not known",
        "Give the depth of the case and the hardness of the core: below the case the steel is softer.",
        ASK_MAKER,
        "How deep is the case of the shaft, and how hard is its core?",
        "case_depth",
    )


def doubtful(said: str, key: str) -> Cause:
    """What was typed is not plausible."""
    return Cause(said, said, FILL_IN, said, key)
