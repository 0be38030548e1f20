"""Text as a person reads it on paper: units with their signs, and no number parted from its unit."""

from __future__ import annotations

import re
from functools import lru_cache

NO_BREAK = "\u00a0"
_UNITS = (
    ("**2", "\u00b2"),
    ("**3", "\u00b3"),
    ("**4", "\u2074"),
    ("lbf*ft", "lbf\u00b7ft"),
    ("lbf*in", "lbf\u00b7in"),
    ("N*m", "N\u00b7m"),
    ("m*K", "m\u00b7K"),
    (" delta_degF", " \u00b0F"),
    (" delta_degC", " \u00b0C"),
    (" degF", " \u00b0F"),
    (" degC", " \u00b0C"),
    (" deg", "\u00b0"),
)
# A number with a unit after it, a mixed fraction, or a range: what must stay on one line.
_NUMBER = r"[0-9][0-9.,/]*"
_TOGETHER = (
    rf"({_NUMBER}(?:[ -]{_NUMBER})?(?: to {_NUMBER}(?:[ -]{_NUMBER})?)?(?: x {_NUMBER})?)"
    r" (in|mm|ft|m|lbf\u00b7ft|lbf\u00b7in|N\u00b7m|lbf|kN|N|ksi|psi|MPa|GPa|bar|kPa|\u00b0F|\u00b0C|%|lb|kg|mph|rpm"
    r"|HRC|HRB|HB|HV|gauge|BWG|AWG|A|V|W|kW|hp|Ah|L|mL|gal|mm2|mm\u00b2|km/h|m/s|ft/s|L/h|gal/h|lb/ft|kg/m)"
    r"(?![A-Za-z])"
)
_MIXED = r"\b([0-9]+)-([0-9]+/[0-9]+)(?= (?:in|deg)\b|\u00b0)"
_SIGNIFICANT = r"(?<![\w.])\.([0-9])"


@lru_cache(maxsize=4096)  # a packet says most texts twice: on the card and at the desk
def capital(text: str) -> str:
    """Text with its first letter large and all others as they are: a unit's letters mean something."""
    return text[:1].upper() + text[1:]


def pretty(text: str) -> str:
    """Text as a person reads it on paper: units with their signs, a zero before a point, mixed fractions with a
    space.
    """
    if "*" in text or " de" in text:  # all that a unit's sign stands for has one of these
        for plain, shown in _UNITS:
            text = text.replace(plain, shown)
    if not any(map(str.isdigit, text)):
        return text
    if "." in text:
        text = re.sub(_SIGNIFICANT, r"0.\1", text)
    if "/" in text:
        text = re.sub(_MIXED, r"\1 \2", text)
    return together(text)


def together(text: str) -> str:
    """Text whose numbers stay with their units, whose fractions and ranges stay whole."""
    return re.sub(_TOGETHER, lambda m: m[0].replace(" ", NO_BREAK), text)
