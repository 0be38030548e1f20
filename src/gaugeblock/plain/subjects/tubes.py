"""What rules alone say of tubes and exhausts, however it is asked: springback, a half turn, what hangs free."""

from __future__ import annotations

from gaugeblock.plain.subjects.general import told_by_subject
from gaugeblock.plain.subjects.subject import Subject, shelved

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.found import Found
    from gaugeblock.plain.subjects.subject import Groups
    from gaugeblock.tables.load import Refdata


def _of_a_slip(_line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """The row of a sliding joint, which says what holds it."""
    return (), shelved("slip joint header collector", "exhaust/joints", ("slip joint",), data)


_SUBJECTS = (
    Subject(
        "a tube in a pipe shoe",
        (
            r"(?:shoe|former|die|bender)s?(?: \w+){0,3} (?:[0-9./]+ )*(?:inch )?pipe|pipe (?:shoe|former|die|bender)s?",
            r"tub(?:e|es|ing)|od",
            r"fit(?:s|ting)?|do it|sloppy|flatten\w*|kink\w*|same|work|ok|okay|can|will",
        ),
        ("pipe bender and tube",),
        forbids=True,
    ),
    Subject(
        "a line that is bent again",
        (
            r"(?:brake|fuel|hydraulic|copper[- ]nickel|cupro\w*) (?:\w+ )?(?:lines?|pipes?|tub(?:e|es|ing))",
            r"(?:re-?)?bent (?:it )?(?:again|back|twice|straight)|re-?bend\w*|bend (?:it )?(?:again|back|twice)"
            r"|straighten\w*",
        ),
        ("line bent again",),
        unless=r"radius|torque",
        forbids=True,
    ),
    Subject(
        "the tube of a roll cage",
        (
            r"roll[- ]?(?:cages?|bars?|hoops?)|safety cages?|cages?",
            r"tub(?:e|es|ing)|materials?|steel|erw|dom|cds|chromoly|4130|wall|thick\w*|size|gauge|pipe",
            r"what|which|min(?:imum)?|ok|okay|legal|allowed|can|should|need\w*|use|required|spec|rules?|how|size|wall",
        ),
        ("tube of a roll cage",),
        unless=r"[0-9]+/[0-9]+|0?\.[0-9]+|die"
        r"|bend\w*|radius|cope[sd]?|notch\w*|weld\w*|weigh\w*|heavy|mass|springback|length|mm|inch(?:es)?|load"
        r"|(?:hole|clearance)|bolts?|pad(?:s|ding)?",
    ),
    Subject(
        "setback of a half turn",
        (r"set ?backs?", r"180|half turn|u[- ]?bend|full turn"),
        ("setback near 180 degrees",),
        unless=r"radius|clr|die|former|center ?line|centre ?line|[0-9.]+ (?:in|inch|mm)",
        forbids=True,
    ),
    Subject(
        "springback of a tube",
        (
            r"spring ?back|springs? back",
            r"chro-?mo\w*|4130|dom|erw|mild|steel|stainless|304|alumini?um|tub(?:e|es|ing)|how much|typical\w*",
        ),
        ("springback",),
        r"spring ?back|springs? back|chro-?mo\w*|4130|dom|erw|mild|steel|stainless|304|alumini?um|tub(?:e|es|ing)"
        r"|more|less|than|how much|typical\w*|bend\w*|amount|many|degrees?|expect|allow|chart|table|usual",
        unless=r"pulled?|got|came|set|test|sprang|relax\w*|opens?|opened|to get|finish\w*|(?:deg|degrees?) (?:set|got)",
    ),
    Subject(
        "springback of a tube of some size",
        (
            r"(?:how much|how far) (?:does|will|do|would|can|did|is)\b.*\bsprings? ?back|how much (?:of )?spring ?back",
            r"[0-9./]+",
        ),
        ("springback",),
        r"[0-9./]+|x|by|wall|od|in|inch|mm|degrees?|deg|bends?|radius|clr|die|former|cent(?:re|er) ?line|tub(?:e|es"
        r"|ing)"
        r"|chro-?mo\w*|dom|erw|cds|mild|steel|stainless|alumini?um|after|pull\w*|expect|when|round|gauge|bwg",
        unless=r"got|came|set|test|sprang|relax\w*|opened|to get|measured|pulled|to bend|let go",
    ),
    Subject(
        "wall of a tube after bending",
        (
            r"thin(?:s|ner|ning|ned)?|stretch\w*",
            r"bends?|bending|bent",
            r"outside|outer|back|heel|wall|tub(?:e|es|ing)",
        ),
        ("wall after bending",),
        r"thin(?:s|ner|ning|ned)?|stretch\w*|bends?|bending|bent|outside|outer|back|heel|wall|tub(?:e|es|ing)"
        r"|out|inside|get"
        r"|side|any",
        unless=r"[0-9.]+",
    ),
    Subject(
        "fixed and free parts of an exhaust",
        (
            r"bolted(?: up)?|solid(?:ly)?|rigid(?:ly)?|hung|hang|rubber",
            r"exhausts?|down ?pipes?|front pipe|system",
            r"engine (?:rocks|moves|twists|shakes|rolls)|rocks on|moves on|flex(?:es)?",
        ),
        ("fixed point", "flexible joint place"),
    ),
    Subject(
        "plug leads and the header",
        (
            r"leads?|(?:plug|ignition) wires?|boots?",
            r"sleeves?|socks?",
            r"pipe|headers?|primar(?:y|ies)|manifolds?|tubes?",
            r"lie|lay|touch(?:es|ing)?|against|rest|sit on",
        ),
        ("spark plug lead routing, custom engines",),
    ),
    Subject(
        "what holds a slip joint at a collector",
        (
            r"collectors?|headers?",
            r"slip(?:[ -](?:fits?|joints?|ons?))?|sliding joints?",
            r"sealants?|sealer|paste|(?:no|without(?: an?)?) clamp|springs?|tabs?|hold(?:s|ing)?|held|fasten\w*",
        ),
        (),
        unless=r"torque|size|gap|clearance|how (?:much|far|deep|tight)|overlap",
        shown=_of_a_slip,
    ),
)


def told(_question: str, words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line on tubes and exhausts is about; None for any other."""
    return told_by_subject(words, data, _SUBJECTS)
