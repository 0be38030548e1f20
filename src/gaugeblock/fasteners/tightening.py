"""How people ask to tighten: the words that name it and say no more of it."""

from __future__ import annotations

TIGHTEN = (
    r"(?:what |whats )?tension(?:ed|ing)?(?: (?:is|on|for|to|up|it|them|do i|put))*(?! nut)|"
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
    r" values?)?|torquing|bolting|bolted(?! joints?)|tork|torgue|tighten(?:ed|ing)?(?: down)?|tightness|how tight"
    r"|(?:ft|foot|inch|in)[- ]?(?:lbs?|pounds?)|newton met(?:re|er)s?|nm|set(?:ting)?|snug"
)
# What is asked of a clamp force beside the torque that gives it.
OUTCOME = (
    r"(?:(?:what|how much|which) )?clamp(?:ing)?(?: load| force)?(?: (?:did|does|do|would|will|am|is|was)(?: (?:that"
    r"|this|it|i|we|he"
    r"))?(?: (?:actually|really))?(?: (?:give|gave|get|got|getting|have|make|put on|giving|come to))?(?: me)?)(?= |$)"
    r"|(?:(?:what|how much)(?:'?s| is| are)?(?: (?:the|my|its))?) clamp(?:ing)?(?: load| force)?(?= |$)"
    r"(?! bolts?| screws?| nuts?)|(?:the |my )?clamp(?:ing)? (?:load|force)$"
    r"|(?:(?:will|would|does|can|could|might) )?(?:i|it|that|they) (?:sn[a]p|br[e]ak|str[e]tch)(?: (?:it|them))?"
    r"|(?:what|how much|how many) (?:percent|per cent|%|share)(?: of)?(?: the)? proof|(?:of|over|under) (?:the )?proof"
    r"|(?:(?:what|how much|how many|in) )?(?:kn|kilonewtons?)(?: (?:of )?(?:squeeze|clamp\w*|pull))?"
    r"|(?:(?:what|how much) )?squeeze(?: is (?:that|it)| (?:does|do|did|will) (?:that|it|i)(?: (?:give|get|make))?)?"
    r"|over ?stretch(?:ed|es)?(?: (?:it|them|the bolts?))?"
    r"|(?:what|how much) (?:did|does|do|will|would) (?:the|that|each|my) (?:bolts?|studs?|screws?)"
    r"(?: (?:actually|really))? (?:see|feel)"
    r"|(?:is|was) (?:that|it|this) (?:enough|plenty|too much|sufficient)(?: of)?(?: clamp(?:ing)?(?: load| force)?)?"
    r"|(?:will|would|does|do)(?= .*\bhold(?: |$))|hold(?= (?:an? |the |my )?(?:grade|class|[0-9]+\.[0-9]|bolt|stud"
    r"|m[0-9]))"
)
# What a torque that was told comes to in the bolt.
CLAMPS = (
    r"squeeze|kn|kilonewtons?|clamp|clamping|clamp load|over ?stretch\w*|bolt see|bolts see|bolt actually see"
    r"|bolt really see|bolt feel"
)
# Whether threads strip, which hangs on how much of them is engaged.
_BOLT = r"(?:the |my )?(?:bolts?|studs?|screws?)"
_HOLDER = (
    r"(?: (?:ally|alloy|alumini?um|metal|steel|iron|casting|threads?|holes?|head|block|plate|sheet|boss|case|housing))?"
)
_LETS_GO = r"(?:strips?|p[u]lls?(?: out)?|l[e]ts? go|gives? (?:way|up|out))"
STRIPS = (
    r"(?:or )?(?:will|would|do|does|can|could|might|is)(?: (?:the|my|an?|it|they|that|this|going to|gonna))+"
    rf"{_HOLDER} {_LETS_GO}(?: (?:out|first))?"
    rf"(?: before {_BOLT}"
    r"(?: (?:l[e]ts? go|breaks?|snaps?|gives?(?: way)?|fails?|does|do|sh[e]ars?))?)?"
    rf"|which (?:one )?(?:{_LETS_GO}|goes|fails|breaks) first"
    rf"|{_BOLT} or (?:the )?(?:casting|threads?|hole|metal|block|plate|iron|alloy|boss|case)"
    r"|(?:going to )?str[i]ps?(?: out)?(?= |$)"
)
# What a bolt holds together, which changes nothing of its torque.
ROUND_A_BOLT = (
    r"(?:fitting|holding|clamping|joining)(?= (?:an?|the|my|some|new|down|on|up|it|them|[0-9m]))"
    r"|(?:through|between|clamping|joining|holding)(?: (?:the|an?|both|2|my))*(?: steel)? (?:flanges?|plates?"
    r"|brackets?)"
    r"|(?:winch |base |mounting |motor |backing )?plates?"
    r"|(?:at )?full (?:whack|torque)|take(?= (?:real|proper|full|any) torque)|(?:real|proper|full) torque"
    r"|(?:thermostat |water pump |alternator )?boss(?:es)?|tapped(?= (?:an?|in|into|the|some) )"
    r"|(?:but |and )?mine(?= (?:have|has|are|is|got|go|went|dry|oiled|greased|plated) ?)|(?:to )?run (?:them|it|em)"
    r"|(?:what |which )?setting(?: on the (?:wrench|clicker))?"
)
