"""What the page may ask the program, and what it is told: every request, without a browser."""

from __future__ import annotations

import json
from typing import Any

import pytest

from gaugeblock.book import shelves
from gaugeblock.book.completing import lines
from gaugeblock.book.face import Book
from gaugeblock.cli import main
from gaugeblock.tables.load import refdata


def told(**request: Any) -> dict[str, Any]:
    return dict(json.loads(Book(main).take(json.dumps(request))))


@pytest.mark.parametrize("question", [q for asked in shelves.EXAMPLES.values() for q in asked])
def test_every_question_that_is_offered_is_answered(question: str) -> None:
    got = told(do="ask", text=question)
    assert got["is"] in ("sheet", "table")
    assert got["release"].startswith(f"data release {refdata().release}")
    assert "maker" in got["governs"]


def test_a_refusal_is_told_whole_and_an_unknown_request_is_refused() -> None:
    got = told(do="ask", text="3/8-16 grade 55 dry")
    assert got["is"] == "refused"
    assert "55" in got["told"]["why"][0]
    assert told(do="dance")["is"] == "refused"
    assert told(do="job", text="[[fasteners]]\nname = 3\n")["is"] == "refused"


def test_every_table_is_shown_with_all_its_figures() -> None:
    for domain in told(do="domains")["domains"]:
        for shelf in domain["tables"]:
            groups = told(do="table", table=shelf["table"])["groups"]
            assert sum(len(g["rows"]) for g in groups) == shelf["figures"], shelf["table"]
            assert all(r["number"] and r["trust"] for g in groups for r in g["rows"]), shelf["table"]


def test_what_is_said_by_pressing_changes_the_answer_and_is_taken_back() -> None:
    text = "3/8-16 grade 8 anti-seize into aluminum"
    first = told(do="ask", text=text)
    one, two = first["card"]["figures"]
    pressed = told(do="ask", text=text, also=two["also"])
    assert pressed["card"]["kind"] == "use"
    assert pressed["card"]["figures"][0]["value"] == two["value"] != one["value"]
    assert told(do="ask", text=text, also=dict.fromkeys(two["also"], "")) == first
    maker = told(do="ask", text="3/8-16 grade 5 dry", also={"maker": "36 lbf*ft"})
    assert maker["card"]["figures"][0]["value"] == "36"
    assert "MAKER" in maker["card"]["trust"]["word"]


def test_words_that_may_follow() -> None:
    data = refdata()
    assert "spark plug " in [line["text"] for line in lines("spark p", data)]
    assert [line["say"] for line in lines("3/8-16 grade 5 ", data)] == ["dry", "oiled", "anti-seize"]
    assert lines("28 A", data) == lines("", data) == []


def test_the_trust_words_the_sources_and_the_audit_are_those_of_the_tables() -> None:
    assert {w["word"] for w in told(do="about")["trust"]} >= {
        "PUBLISHED",
        "MAKER",
        "SHOP",
        "GIVEN",
        "HABIT",
        "CALCULATED",
    }
    assert [s["id"] for s in told(do="source", ids=["TM238"])["sources"]] == ["TM238"]
    audit = told(do="audit")
    counted = {d["say"]: sum(b["figures"] for b in d["by"]) for d in audit["domains"]}
    assert counted == {d["say"]: d["figures"] for d in audit["domains"]}
    assert counted["fasteners"] == sum(len(t.rows) for t in refdata().all_tables() if t.name.startswith("fasteners/"))


def test_rows_that_were_looked_through_show_what_they_are_and_where_they_stand() -> None:
    got = told(do="ask", text="cv joint max angle")
    row = got["rows"][0]
    assert row["names"][-1] == "working angle maximum"
    assert row["number"] == "10\u00b0"
    assert row["word"] == ""  # a word would stand in place of the number
    assert row["said"].startswith("printed as less than 10. VSM-4X4-2007")
    assert row["also"] is None  # there is no more to say of it


def test_two_things_set_against_each_other_are_rows() -> None:
    got = told(do="ask", text="3/8-16 grade 5 vs grade 8 dry")
    assert [row["number"] for row in got["rows"]] == ["31\u00a0lbf\u00b7ft", "44\u00a0lbf\u00b7ft"]


def test_a_part_of_another_name_is_told_whose_figure_it_is() -> None:
    got = told(do="ask", text="steering box bolt torque")
    assert got["word"] == "NO FIGURE"
    assert got["read_as"] == "torque: steering box bolt"
