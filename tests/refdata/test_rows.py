"""Every row of every table: one test a table, which lists each failing row with its line and what to do.

The decoys below them are rows that each schema must refuse.
"""

from __future__ import annotations

import csv
import os
from typing import TYPE_CHECKING

import pytest

from gaugeblock.domains import validate
from gaugeblock.tables import schema
from gaugeblock.tables.catalogue import KEY_DIMENSIONS, LISTS, ROW_COLUMNS, TABLES, keys_of, refdata_folder
from gaugeblock.tables.releases import released_files

if TYPE_CHECKING:
    from gaugeblock.tables.fault import Fault

FILES = [f"{name}.csv" for name in (*released_files(), "releases")]
VERSIONS = {"0.1.0": 0, "0.2.0": 1}


@pytest.fixture(scope="module")
def by_file() -> dict[str, list[Fault]]:
    found: dict[str, list[Fault]] = {file: [] for file in FILES}
    for fault in validate():
        found[fault.file].append(fault)
    return found


@pytest.mark.parametrize("file", FILES)
def test_each_row_is_sound(by_file: dict[str, list[Fault]], file: str) -> None:
    faults = by_file[file]
    assert not faults, "\n" + "\n".join(map(str, faults))


SHARED = dict(
    zip(
        ROW_COLUMNS,
        ("proof_strength", "85", "", "", "ksi", "", "published", "J429", "table 1", "primary", "", "0.1.0", "", ""),
        strict=True,
    )
)


def rules_of(made: schema.Schema, cells: dict[str, str]) -> set[str]:
    found = schema.faults_of(made, list(cells), [list(cells.values())], [("decoy.csv", 2)])
    return {fault.rule for fault in found}


def shared_rules(**changes: str) -> set[str]:
    made = schema.shared_schema({"proof_strength": "stress"}, {"J429"}, VERSIONS)
    return rules_of(made, SHARED | changes)


def test_the_sound_row_passes() -> None:
    assert shared_rules() == set()


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({"value": ""}, "no_number"),
        ({"value": "85 ksi"}, "number_grammar"),
        ({"value": "8.5e1"}, "number_grammar"),
        ({"value": "085"}, "number_grammar"),
        ({"value": "8,5"}, "decimal_comma"),
        ({"value": "", "low": "9", "high": "8"}, "low_above_high"),
        ({"low": "86"}, "value_outside_ends"),
        ({"unit": "kpsi"}, "unknown_unit"),
        ({"unit": "lbf*ft"}, "wrong_dimension"),
        ({"quantity": "proof"}, "unknown_quantity"),
        ({"source": ""}, "missing_source"),
        ({"source": "J430"}, "unknown_source"),
        ({"locator": ""}, "missing_locator"),
        ({"checked": ""}, "missing_checked"),
        ({"checked": "seen"}, "checked_word"),
        ({"basis": "maker", "source": ""}, "missing_source"),
        ({"basis": "measured", "locator": ""}, "missing_locator"),
        ({"basis": "guess"}, "basis_word"),
        ({"standing": "wrong"}, "standing_word"),
        ({"since": ""}, "unknown_release"),
        ({"since": "0.2.0", "until": "0.1.0"}, "since_after_until"),
        ({"until": "0.1.0"}, "since_after_until"),
    ],
)
def test_a_decoy_of_the_shared_columns_is_refused(changes: dict[str, str], rule: str) -> None:
    assert rule in shared_rules(**changes)


def test_common_practice_needs_no_source() -> None:
    assert shared_rules(basis="common practice", source="", locator="", checked="") == set()


def key_rules(table: str, **changes: str) -> set[str]:
    cells = {k.name: _sound(k.name, k.match) for k in keys_of(table)} | changes
    return rules_of(schema.key_schema(table), cells)


def _sound(name: str, match: str) -> str:
    if match == "exact":
        return {"thread": "3/8-16 UNC", "service": "vehicle"}.get(name, "dry")
    unit = {"length": " in", "temperature": " degF", "power": " hp", "volume": " L"}.get(
        KEY_DIMENSIONS.get(name, ""), ""
    )
    return f"2{unit}"


@pytest.mark.parametrize("table", TABLES)
def test_each_key_schema_passes_a_sound_key_and_refuses_decoys(table: str) -> None:
    assert key_rules(table) == set()
    for key in keys_of(table):
        assert "blank_cell" in key_rules(table, **{key.name: ""})
        assert "looks_like_a_date" in key_rules(table, **{key.name: "8-Mar"})
        assert ("any_not_allowed" in key_rules(table, **{key.name: "any"})) is not key.any_allowed
        if key.match != "exact":
            assert "interval_grammar" in key_rules(table, **{key.name: "about 2 in"})
        if key.name in KEY_DIMENSIONS and key.match != "exact":
            assert "interval_dimension" in key_rules(table, **{key.name: "2 N*m"})
        if key.name == "service":
            assert "service_word" in key_rules(table, service="spaceship")
        if key.name == "thread":
            assert "thread_grammar" in key_rules(table, thread="3/8 x 16")


@pytest.mark.parametrize(
    "cell", ["8-Mar", "Mar-8", "mar-08", "8 Mar", "2026-03-08", "03/08/2026", "3/8/26", "8-Mar-26", "Mar-2016"]
)
def test_what_a_spreadsheet_makes_of_a_size_is_seen(cell: str) -> None:
    assert schema.DATE.fullmatch(cell)


@pytest.mark.parametrize(
    "cell",
    ["3/8-16 UNC", "1-1/8-12 UNF", "#10-24 UNC", "M10x1.5", "7/8-18", "1-14 UNS", "3/8 in", "16 ga", "march fit"],
)
def test_what_is_no_date_is_let_be(cell: str) -> None:
    assert not schema.DATE.fullmatch(cell)


@pytest.mark.parametrize(
    "cell",
    ["3/8-16 UNC", "1-1/8-12 UNF", "#10-24 UNC", "1-14 UNS", "1-8 8UN", "M10x1.5", "M6x1", "M36x4", "#12-28 UNF"],
)
def test_thread_designations_pass(cell: str) -> None:
    assert schema.THREAD.fullmatch(cell)


@pytest.mark.parametrize(
    "cell",
    [
        "3/8 UNC",
        "3/8-16",
        "3/8-16UNC",
        "2/8-16 UNC",
        "1 1/8-12 UNF",
        "M10",
        "M10 x 1.5",
        "M10x1,5",
        "#11-24 UNC",
        "8-Mar",
    ],
)
def test_other_notations_of_threads_are_refused(cell: str) -> None:
    assert not schema.THREAD.fullmatch(cell)


LIST_DECOYS = [
    (
        "sources",
        {"id": "A", "title": "T", "kind": "standard", "year": "1998", "since": "0.1.0"},
        {"year": "98"},
        "year_grammar",
    ),
    ("sources", {"id": "A", "title": "T", "kind": "standard", "since": "0.1.0"}, {"kind": "web page"}, "kind_word"),
    ("sources", {"id": "A", "title": "T", "kind": "standard", "since": "0.1.0"}, {"title": ""}, "blank_cell"),
    ("sources", {"id": "A", "title": "T", "kind": "standard", "since": "0.1.0"}, {"url": "see page"}, "url_grammar"),
    (
        "rules",
        {
            "topic": "t",
            "statement": "s",
            "service": "any",
            "basis": "common practice",
            "severity": "note",
            "since": "0.1.0",
        },
        {"severity": "bad"},
        "severity_word",
    ),
    (
        "rules",
        {
            "topic": "t",
            "statement": "s",
            "service": "any",
            "basis": "common practice",
            "severity": "note",
            "since": "0.1.0",
        },
        {"basis": "published"},
        "missing_source",
    ),
    (
        "words",
        {"domain": "tubes", "word": "w", "column": "c", "cell": "x", "since": "0.1.0"},
        {"domain": "pipes"},
        "domain_word",
    ),
    (
        "formulas",
        {"name": "a_b", "domain": "any", "expression": "a", "basis": "derived", "since": "0.1.0"},
        {"name": "A-b"},
        "name_grammar",
    ),
    ("releases", {"version": "0.1.0", "date": "2026-11-25", "summary": "s"}, {"date": "25.11.2026"}, "date_grammar"),
    ("releases", {"version": "0.1.0", "date": "2026-11-25", "summary": "s"}, {"version": "1.0"}, "version_grammar"),
    ("releases", {"version": "0.1.0", "date": "2026-11-25", "summary": "s"}, {"sha256": "abc"}, "digest_grammar"),
]
_QUANTITY = {
    "quantity": "torque_a",
    "dimension": "torque",
    "side": "max",
    "safer": "none",
    "prefers": "maker > published",
    "step": "1 N*m",
    "hazard": "none",
    "may": "limit",
    "definition": "d",
    "since": "0.1.0",
}
LIST_DECOYS += [
    ("quantities", _QUANTITY, changes, rule)
    for changes, rule in [
        ({"quantity": "Torque"}, "name_grammar"),
        ({"dimension": "twist"}, "unknown_dimension"),
        ({"side": "upper"}, "side_word"),
        ({"safer": "both"}, "safer_word"),
        ({"prefers": "maker, published"}, "prefers_grammar"),
        ({"step": "1 psi"}, "step_grammar"),
        ({"hazard": "some"}, "hazard_word"),
        ({"may": "decide"}, "may_word"),
        ({"definition": ""}, "blank_cell"),
    ]
]


@pytest.mark.parametrize(("name", "sound", "changes", "rule"), LIST_DECOYS)
def test_a_decoy_of_a_list_is_refused(name: str, sound: dict[str, str], changes: dict[str, str], rule: str) -> None:
    def rules(cells: dict[str, str]) -> set[str]:
        return rules_of(schema.list_schema(name, {"A"}, VERSIONS), dict.fromkeys(LISTS[name], "") | cells)

    assert rules(sound) == set()
    assert rule in rules(sound | changes)


def test_words_of_one_column_stand_together() -> None:
    """A look-up reads the stretch of lines from the first word of a column to its last: one astray is read with all
    that stand between, and every answer takes longer.
    """
    with open(os.path.join(refdata_folder(), "words.csv"), encoding="utf-8", newline="") as handle:
        kinds = [(row["domain"], row["column"]) for row in csv.DictReader(handle)]
    begins = [kind for kind, before in zip(kinds, [("", ""), *kinds], strict=False) if kind != before]
    assert [kind for kind in begins if begins.count(kind) > 1] == []
