"""How people ask to tighten: the words that name it and say no more of it."""

from __future__ import annotations

TIGHTEN = (
    r"(?:do|should|must|can|shall) (?:i|we|you) (?:nip|pinch|pull|do|wind|lean on|torque|run|take|crank|reef)(?: (?:it"
    r"|them|em|'em|these|those|this|that|on))*(?: (?:up|down))?(?: to)?|nip(?:ped|ping)?(?: (?:it|them|em|these"
    r"|up))+(?: to)?|"
    r"(?:(?:do|should|must|would|can) (?:i|you|we) )?(?:knock|reduce|lower|drop|cut|bring|take)(?: the| my| its)*"
    r" torque(?: figure| down| back| off)?(?: (?:and )?(?:by )?how much)?|"
    r"(?:set|drop|back|wind|turn|bring)(?: (?:the|my) (?:torque )?(?:wrench|clicker|spanner))?(?: (?:off|down))*"
    r" to(?= |$)|"
    r"(?:torque )?(?:wrench|clicker)|torque wrench|(?:how )?tite(?:n(?:ed)?)?|crank(?:ed)?(?: down)?|(?:wh?at'?s?"
    r" )?(?:the )?(?:tightening"
    r" |clamp(?:ing)? )?torque(?:s|d)?(?: specs?| settings?|"
    r" figures?|"
    r" values?)?|torquing|bolting|tork|torgue|tighten(?:ed|ing)?(?: down)?|tightness|how tight"
    r"|(?:ft|foot|inch|in)[- ]?(?:lbs?|pounds?)|newton met(?:re|er)s?|nm|set(?:ting)?|snug"
)
# What is asked of a clamp force beside the torque that gives it.
OUTCOME = (
    r"(?:(?:what|how much|which) )?clamp(?:ing)?(?: load| force)?(?: (?:did|does|do|would|will|am|is|was)(?: (?:that"
    r"|this|it|i|we|he"
    r"))?(?: (?:actually|really))?(?: (?:give|gave|get|got|getting|have|make|put on|giving|come to))?(?: me)?)(?= |$)"
    r"|(?:what|how much) clamp(?:ing)?(?: load| force)?(?= |$)(?! bolts?| screws?| nuts?)"
    r"|(?:is|was) (?:that|it|this) (?:enough|plenty|too much|sufficient)(?: of)?(?: clamp(?:ing)?(?: load| force)?)?"
    r"|(?:will|would|does|do)(?= .*\bhold(?: |$))|hold(?= (?:an? |the |my )?(?:grade|class|[0-9]+\.[0-9]|bolt|stud"
    r"|m[0-9]))"
)
# Whether threads strip, which hangs on how much of them is engaged.
STRIPS = (
    r"(?:or )?(?:will|would|do|does|can|could|might|is)(?: (?:the|my|an?|it|they|that|this|going to|gonna))+"
    r"(?: (?:ally|alloy|alumini?um|metal|casting|threads?|holes?|head|block))?"
    r" (?:strips?|p[u]lls?(?: out)?|l[e]ts? go|gives? way)(?: (?:out|first))?"
    r"(?: before (?:the |my )?(?:bolts?|studs?|screws?)"
    r"(?: (?:l[e]ts? go|breaks?|snaps?|gives?(?: way)?|fails?|does|do|sh[e]ars?))?)?"
)
