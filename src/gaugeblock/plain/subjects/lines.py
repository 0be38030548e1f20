"""What rules alone have of flares, brake nuts and fuel hoses."""

from __future__ import annotations

import re

from gaugeblock.plain.subjects.general import told_by_subject
from gaugeblock.plain.subjects.subject import Subject, shelved

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.found import Found
    from gaugeblock.plain.subjects.subject import Groups
    from gaugeblock.tables.load import Refdata

_NO_HEAT = r"temp\w*|hot|heat|deg[cf]|limit|pressure|torque"
_LENGTH = r"[0-9./]+ ?(?:mm|cm|in|inch|inches|ft|feet|foot|m|met(?:re|er)s?|\")"


def _of_pipe_clips(line: str, data: Refdata) -> tuple[tuple[str, ...], Groups]:
    """How far apart a brake or a fuel line is held, whatever its size and metal, and what its clips are like."""
    of = "fuel" if re.search(r"\b(?:fuel|petrol|gasoline|gas)\b", line) and "brake" not in line else "brake"
    every = shelved(f"{of} line support spacing", "lines/supports", ("vehicle",), data)
    pipes = [(entry, figures) for entry, figures in every if entry.key[1].startswith(f"{of} line")]
    return ("brake and fuel line clips",), pipes


_SUBJECTS = (
    Subject(
        "how far apart clips of a brake or a fuel line are",
        (
            r"how (?:often|far apart|close together)|far apart|spac(?:ing|ed)|every how (?:much|many|far|often)"
            r"|intervals?"
            r"|distance between|gap between|between (?:the )?(?:clips|clamps|supports|fixings|saddles)",
            r"(?:p-? ?)?clip(?:s|ped|ping)?|p-? ?clamps?|supports?|supported|secur(?:e|ed|ing)|fasten(?:ed|ing"
            r"|ings|ers)?"
            r"|saddles?|fixings?|brackets?",
            r"(?:brakes?|fuel|petrol|gasoline|gas|bundy|kunifer)(?: (?:supply|feed|return|steel|copper|nickel|alloy"
            r"|aluminium|aluminum|hard|rigid|metal))* (?:lines?|pipes?|hoses?|pipework|piping|tub(?:es?|ing))"
            r"|brake clips|brake flexis?",
        ),
        (),
        unless=(
            r"torque|tight\w*|aircraft|boats?|marine|hangers?|worm|t-?bolt|lpg|propane|cng|wires?|wiring|looms?|harness"
            rf"|cables?|how many|exhaust|manifold|downpipe|bolts?|every [0-9./]+|at [0-9./]+|{_LENGTH} (?:apart"
            rf"|spacing|long"
            rf"|of|run|between)|run (?:is|of) {_LENGTH}"
        ),
        forbids=True,
        shown=_of_pipe_clips,
    ),
    Subject(
        "aluminium tube as a brake line",
        (r"alumini?um|ally|alloy", r"brakes?", r"lines?|pipes?|tub(?:es?|ing)"),
        ("hydraulic brake line, aluminium",),
        unless=r"torque|tight\w*|lbs?|lbf|nm|clips?|clamps?|far apart|caliper|bracket|master|drums?|nickel|psi|bar",
    ),
    Subject(
        "fuel hose and ethanol",
        (
            r"e ?-?85|ethanol|methanol|flex"
            r" ?fuel",
            r"hoses?|rubber|seals?",
            r"for|ok|okay|safe|with|what|which|stand\w*|swells?|in",
        ),
        ("E85 and ethanol in fuel hose", "ethanol blends over 10 %"),
        unless=_NO_HEAT + r"|size|bore|inch|hp|kw|pump|flow",
    ),
    Subject(
        "flares of 37 and 45 degrees together",
        (r"37", r"45", r"flare\w*|fittings?|nuts?|seats?|cones?|unions?"),
        ("37 and 45 degree flares", "37 and 45 degrees"),
        unless=r"torque|tight\w*|lbs?|lbf|nm|size",
    ),
    Subject(
        "a bubble and a double flare, each in its own port",
        (
            r"bubble|iso|din",
            r"double|sae|inverted|45",
            r"ports?|seats?|cones?|into|fit(?:s|ting)?|same|instead|mix\w*|seal\w*|go in|work",
        ),
        ("bubble and double flare",),
        unless=r"torque|tight\w*|lbs?|lbf|nm|size|thread|which|m ?10|3/8-24",
    ),
    Subject(
        "rubber of seals in fuel",
        (
            r"which rubber|what rubber|rubber|kind of seals?|what (?:seals?|o-?rings?)|which (?:seals?|o-?rings?)",
            r"o-?rings?|seals?|gaskets?",
            r"fuel|petrol|gas(?:oline)?|e ?(?:5|10|85)|diesel",
        ),
        ("EPDM rubber and oil or fuel", "fluorocarbon rubber and brake fluid"),
        unless=_NO_HEAT + r"|size|bore|hp|pump|flow|exhaust|head",
        forbids=True,
    ),
    Subject(
        "M10x1 and 3/8-24 brake nuts",
        (r"m ?10 ?(?:x|by) ?1(?:\.0)?|10 ?(?:by|x) ?1(?:\.0)?", r"3/8-24"),
        ("brake nut in the wrong port", "port thread"),
        unless=r"torque|tight\w*|lbs?|lbf|nm|drill|grade|8\.8|10\.9",
    ),
)


def told(_question: str, words: tuple[str, ...], data: Refdata) -> Found | None:
    """The rules that say all of what a line on flares, brake nuts and fuel hoses is about; None for any other."""
    return told_by_subject(words, data, _SUBJECTS)
