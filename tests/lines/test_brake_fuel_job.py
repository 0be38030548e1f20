"""Brakes and fuel in a job: every kind of item has its sheet and its card, and what is wrong is its question."""

from __future__ import annotations

import pytest

from gaugeblock.domains import hooks, parse_job
from gaugeblock.errors import JobError
from gaugeblock.packet.build import build
from gaugeblock.tables.load import refdata

DATA = refdata()
HEAD = '[job]\nowner = "B. Sample"\nidentification = "trial no. 9"\nstatus = "draft"\n\n[shop]\nname = "lean-to"\n'
CIRCUIT = {"kind": "drum", "force": "100 lbf", "ratio": "6", "master": "1 in", "bore": "7/8 in", "wheels": "2"}
SUPPLY = {"power": "400 hp", "consumption": "0.5 lb/(hp*h)"}


def item(table, **keys):
    """The one item of a job."""
    text = "".join(f'{k} = "{v}"\n' for k, v in {"name": "the one", **keys}.items())
    job = parse_job(f"{HEAD}\n[[{table}]]\n{text}", hooks=hooks(DATA))
    return build(job, DATA, "test").items[0]


@pytest.mark.parametrize(
    ("table", "keys", "kind"),
    [
        ("brakes", CIRCUIT, "use"),
        ("brakes", CIRCUIT | {"travel": "3 mm", "stroke": "0.2 in"}, "stop"),
        ("brakes", CIRCUIT | {"rated": "500 psi"}, "stop"),
        ("brakes", CIRCUIT | {"hose": "13 in", "droop": "14 in", "lock": "12 in"}, "stop"),
        ("brakes", CIRCUIT | {"was": "3/4 in"}, "ask"),
        ("brakes", {"kind": "hand brake", "force": "300 N", "ratio": "6"}, "use"),
        ("brakes", {"kind": "hand brake"}, "none"),
        ("brakes", {"kind": "flexible hose", "hose": "16 in", "droop": "14 in", "lock": "13 in"}, "use"),
        ("brakes", {"kind": "flexible hose", "hose": "13 in", "droop": "14 in", "lock": "13 in"}, "stop"),
        ("brakes", {"kind": "balance"}, "none"),
        ("brakes", {}, "none"),
        ("fuel", SUPPLY, "use"),
        ("fuel", {"power": "400 hp"}, "ask"),
        ("fuel", {"injectors": "8", "injector": "42 lb/h", "duty": "80 %"}, "use"),
        ("fuel", SUPPLY | {"pump": "20 gal/h"}, "stop"),
        ("fuel", SUPPLY | {"pressure": "58 psi", "rated": "50 psi"}, "stop"),
        ("fuel", {}, "none"),
    ],
)
def test_every_kind_of_item_is_decided_and_has_its_card(table, keys, kind):
    got = item(table, **keys)
    assert got.sheet.decision.kind == kind
    assert any(box.label.startswith("by") or box.label.startswith("tried by") for box in got.card.boxes)


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        (
            {"kind": "hand brake", "force": "300 N", "ratio": "6", "cables": "2", "lever": "150 mm"},
            {"force of the foot or hand": "300 N", "whole way of the lever": "150 mm", "cables": "2"},
        ),
        (
            {"kind": "flexible hose", "hose": "16 in", "droop": "14 in", "lock": "13 in"},
            {"free length of the hose": "16 in", "way at full droop": "14 in", "way at full lock": "13 in"},
        ),
        (CIRCUIT, {"kind": "drum", "bore of the master cylinder": "1 in", "bore of the pistons": "7/8 in"}),
    ],
)
def test_the_facts_of_a_brake_are_those_of_its_kind(keys, said):
    got = item("brakes", **keys)
    facts = {row.label: row.text for row in got.facts}
    assert said.items() <= facts.items()
    assert {text for key, text in keys.items() if key != "kind"} <= set(facts.values())


@pytest.mark.parametrize(
    ("table", "keys", "key"),
    [
        ("brakes", CIRCUIT | {"bore": "elephant"}, "bore"),
        ("brakes", CIRCUIT | {"pistons": "many"}, "pistons"),
        ("brakes", CIRCUIT | {"force": "4000 lbf"}, "force"),
        ("brakes", {"kind": "flexible hose", "droop": "14 in"}, "lock"),
        ("fuel", {"power": "400 V"}, "power"),
        ("fuel", SUPPLY | {"consumption": "5 lb/(hp*h)"}, "consumption"),
    ],
)
def test_what_cannot_be_meant_is_the_question_of_its_item(table, keys, key):
    got = item(table, **keys)
    assert got.sheet.decision.kind == "none"
    assert key in [q.key for q in got.sheet.questions]


@pytest.mark.parametrize(("table", "key"), [("brakes", "kind"), ("fuel", "fuel"), ("fuel", "system")])
def test_a_word_that_is_none_of_the_choices_is_refused_with_them(table, key):
    with pytest.raises(JobError, match="lemonade"):
        item(table, **{key: "lemonade"})


def test_the_card_of_a_circuit_carries_its_leak_test_and_the_bleeding_order():
    notes = " ".join(item("brakes", **CIRCUIT).card.notes)
    assert "125 lbf" in notes
    assert "10 s" in notes
    assert "right rear" in notes
