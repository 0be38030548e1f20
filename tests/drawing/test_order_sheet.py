"""The page for another shop: what is not to be made as it stands says so over all else, with every reason."""

from __future__ import annotations

import re

import pytest

from gaugeblock import domains, refdata
from gaugeblock.answer.pretty import pretty
from gaugeblock.drawing.order_sheet import HEIGHT, WIDTH, order_sheet
from gaugeblock.packet.build import build

SHAFT = """
[[shafts]]
name = "rear shaft"
od = "76 mm"
wall = "2 mm"
material = "steel"
length = "1750 mm"
speed = "5625 rpm"
shafts_side = ["4 deg", "9 deg", "2 deg"]
phasing = "in phase"
bump = "1730 mm"
"""


def texts(page: str) -> list[tuple[float, str]]:
    found = re.findall(r'<text x="[^"]+" y="([^"]+)"[^>]*>([^<]*)<', page)
    return [(float(y), words) for y, words in found]


@pytest.mark.parametrize("reasons", [1, 4])
def test_the_reasons_stand_over_the_order_and_nothing_runs_into_them(reasons: int) -> None:
    hold = ("DO NOT MAKE YET", [f"Reason {n} of this order, told in a sentence." for n in range(reasons)])
    rows = [("", "A", "B", "C"), ("1", "2", "3", "4")]
    plain, held = (
        order_sheet("one", [("a", "b"), ("c", "")], rows, lambda w, h: f"<svg>{w} {h}</svg>", ["note"], hold=h)
        for h in (("", ()), hold)
    )
    assert not any("Reason" in words for _, words in texts(plain))
    at = {words: y for y, words in texts(held)}
    last = max(y for words, y in at.items() if words.startswith("Reason"))
    assert at["DO NOT MAKE YET"] < last < at["ORDER: BEND ONE TUBE"] - 3
    assert max(y for y, _ in texts(held)) < HEIGHT
    assert WIDTH < HEIGHT


def test_a_shaft_that_whips_is_no_order() -> None:
    (item,) = build(domains.parse_job(SHAFT), refdata(), "test").items
    page = next(d.svg for d in item.sheet.drawings if "order" in d.title)
    words = [w for _, w in texts(page)]
    assert words[0] == "DO NOT MAKE YET"
    said = " ".join(words).casefold()
    stops = [c for c in item.sheet.checks if c.stops]
    assert len(stops) > 1
    for check in stops:
        assert pretty(check.reason)[:30].casefold() in said
