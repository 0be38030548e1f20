"""What is asked of a hose, a tube or a fuel beside its heat, as people say it: its pressure, where it ignites."""

from __future__ import annotations

from gaugeblock.answer.asking import Shaped, always, amount

_PRESSURES = ("psi", "ksi", "bar", "mpa", "pascal", "gpa", "msi", "n/mm", "newton")
FACTS = {
    "fact": (
        Shaped(
            r"burst(?:s|ing)?(?: (?:pressure|strength|psi|at|rating))*|blows? (?:apart|up)",
            always("burst pressure"),
            "its burst pressure",
            cue=("burst", "blow"),
        ),
        Shaped(
            r"(?:max(?:imum)? |safe |top |highest )*(?:(?:working|operating|rated|service) )?(?:pressures?|psi)"
            r"(?: (?:rating|rated|limit|max(?:imum)?))?|(?:how (?:much|many)|what) (?:pressure|psi|bar)",
            always("working pressure"),
            "its working pressure",
            doubt=1,
            cue=("pressure", "psi", "bar"),
        ),
        Shaped(
            r"auto[- ]?ignit(?:ion|es?)(?: (?:points?|temp(?:erature)?s?))?|ignit(?:ion|es?)(?: (?:points?"
            r"|temp(?:erature)?s?))?"
            r"|catch(?:es)? (?:fire|light)",
            always("ignition"),
            "where it ignites",
            cue=("ignit", "catch"),
        ),
        Shaped(r"flash ?points?", always("flash point"), "its flash point", cue=("flash",)),
    ),
    "pressure": (
        amount(
            "stress",
            before=r"(?:at|to|for|of|with|under|on|stands?|takes?|holds?|hold up(?: to)?)(?: about| up to)?",
            say="at {}",
            cue=_PRESSURES,
        ),
        amount("stress", say="at {}", doubt=1, cue=_PRESSURES),
    ),
}
