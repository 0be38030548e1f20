"""How people say how much thread is engaged."""

from __future__ import annotations

from gaugeblock.answer.asking import NUMBER, Shaped, amount
from gaugeblock.fasteners.own_words import TappedPlate

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from gaugeblock.answer.asking import Reader

_OF_THREAD = (
    r"engaged|engagement|(?:of )?(?:good |sound )?threads? (?:left|engaged)|of (?:good |sound )?threads?"
    r"|of engagement|thread engagement"
)
# Said in so many words, beside a part that has a figure of its own.
DEEP = amount("length", after=rf"(?:deep|{_OF_THREAD})", say="{} engaged", cue=("deep", "engag", "thread"))
ENGAGED: tuple[Reader, ...] = (
    Shaped(
        rf"(?P<n>{NUMBER}) ?(?P<u>mm|inch(?:es)?|in|\")(?= of (?:an? )?(?:m ?[0-9]|[0-9]+/[0-9]+))",
        lambda m: f"{m['n']} {'mm' if m['u'] == 'mm' else 'in'}",
        "{} engaged",
        doubt=2,
        cue=(" of ",),
    ),
    Shaped(
        r"(?:(?:that |which |and )?(?:only|just) )?(?:goes|screws|threads|reaches|gets|got|has|have|is"
        r"|winds)(?: (?:in|only"
        rf"|just|about))* (?P<n>{NUMBER}) ?(?P<u>mm|inch(?:es)?|in|\")(?: (?:of thread|in|deep|down))?"
        r"(?= (?:into|in) (?:the |my |an? )?[a-z])",
        lambda m: f"{m['n']} {'mm' if m['u'] == 'mm' else 'in'}",
        "{} engaged",
        cue=("goes", "screws", "threads", "reaches", "gets", "got", "has", "have", "is", "winds"),
    ),
    Shaped(  # of so many inches no hole is deep
        r"(?:(?:in |into )?(?:an? |the )?(?:tapped )?(?:holes?|threads?) )?(?:are |is |only |about )*"
        r"(?P<n>[5-9]|[1-5][0-9]) deep",
        lambda m: f"{m['n']} mm",
        "{} engaged",
        doubt=1,
        cue=("deep",),
    ),
    TappedPlate(),
    amount(
        "length",
        before=r"(?:there is |there's |has |have |got )?(?:only|just|about|barely)",
        after=rf"(?:deep|{_OF_THREAD})",
        say="{} engaged",
        cue=("deep", "engag", "thread"),
    ),
    amount(
        "length",
        after=rf"(?:deep|{_OF_THREAD}|in)",
        say="{} engaged",
        cue=("deep", "engag", "thread", " in"),
    ),
    amount(
        "length",
        before=r"(?:engagement|engaged|screwed in|goes in|thread engagement)(?: of| is)?",
        say="{} engaged",
        doubt=30,  # engagement 3/8 is the thread, where no other is said
        cue=("engag", "screwed in", "goes in"),
    ),
)
