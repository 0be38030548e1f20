"""Laws of the ranking, over every row of every table as they stand."""

from __future__ import annotations

import pytest

from gaugeblock import units
from gaugeblock.answer.making import derived
from gaugeblock.figure import weakness
from gaugeblock.lookup import STEPS, disagreement, figure_of, govern_rows, same_specificity
from gaugeblock.tables.catalogue import LIGHTEST, SOURCE_WEIGHTS, TABLES
from gaugeblock.tables.load import Refdata, Row, refdata


def groups(data: Refdata, table: str) -> list[list[Row]]:
    """The rows of one table that share key and quantity, more than one of them."""
    found: dict[tuple[str, ...], list[Row]] = {}
    for row in data.table(table).rows:
        found.setdefault((*row.key, row["quantity"]), []).append(row)
    return [rows for rows in found.values() if len(rows) > 1 and any(not r.standing for r in rows)]


def weight_of(row: Row, data: Refdata) -> int:
    """As DESIGN has it: the kind of the source, one lower from memory; without a source the last."""
    kind = data.source(row["source"])["kind"] if row["source"] else ""
    return (SOURCE_WEIGHTS[kind] if kind else LIGHTEST) + (row["checked"] == "memory")


@pytest.mark.parametrize("table", TABLES)
def test_nothing_heavier_of_the_same_basis_is_passed_over(table: str) -> None:
    data = refdata()
    for rows in groups(data, table):
        order = data.quantity(rows[0]["quantity"])["prefers"].split(" > ")
        best = govern_rows(rows, data)
        ranks = {
            figure_of(r, data).id: (order.index(r["basis"]) if r["basis"] in order else len(order), weight_of(r, data))
            for r in rows
            if not r.standing
        }
        assert ranks[best.id] == min(ranks.values()), f"{best.id} governs over {ranks}"


@pytest.mark.parametrize("table", TABLES)
def test_each_other_says_the_step_it_lost_at(table: str) -> None:
    data = refdata()
    for rows in groups(data, table):
        best = govern_rows(rows, data)
        assert len(best.others) == len(rows) - 1
        assert all(o.chosen_by in STEPS for o in best.others)
        assert best.chosen_by == best.others[0].chosen_by


@pytest.mark.parametrize("table", TABLES)
def test_two_percent_apart_is_a_disagreement_whichever_step_decided(table: str) -> None:
    data = refdata()
    for rows in groups(data, table):
        best = govern_rows(rows, data)
        alike = [best, *same_specificity(best)]
        assert len(alike) == sum(not r.standing for r in rows)
        numbers = [units.from_base(units.to_base(f.typical, f.unit), best.unit) for f in alike]
        least = min(abs(n) for n in (min(numbers), max(numbers)))
        found = disagreement(best)
        assert (found is not None) == (max(numbers) - min(numbers) > 0.02 * least * (1 + 1e-9)), best.id
        if found is not None:
            assert list(found) == pytest.approx([min(numbers), max(numbers)])


def test_every_kind_of_source_has_a_weight() -> None:
    data = refdata()
    kinds = {data.source(r["source"])["kind"] for t in data.all_tables() for r in t.rows if r["source"]}
    assert kinds <= set(SOURCE_WEIGHTS)
    assert set(SOURCE_WEIGHTS.values()) == {0, 1, 2, 3}


@pytest.mark.parametrize(
    ("rule", "basis", "checked"),
    [
        ("tensile_from_brinell", "common practice", "quoted"),
        ("bolt_load_in_service", "published", "memory"),
        ("linear_interpolation", "published", "primary"),
    ],
)
def test_what_is_worked_out_is_as_weak_as_the_weaker_of_rule_and_number(rule: str, basis: str, checked: str) -> None:
    data = refdata()
    number = govern_rows([next(r for r in data.table("fasteners/torques").rows if r["checked"] == "primary")], data)
    made = derived(rule, number.quantity, number.typical, number.unit, (number,), data)
    assert (number.evidence.basis, number.evidence.checked) == ("published", "primary")
    assert (made.evidence.basis, made.evidence.checked) == (basis, checked)
    weak = number.replace(id="habit", basis="common practice", checked="")
    assert derived(rule, number.quantity, 1.0, number.unit, (weak,), data).evidence.basis == "common practice"


def test_what_was_read_is_stronger_than_what_was_quoted_and_that_than_memory_and_habit() -> None:
    ranks = [weakness("published", "primary"), weakness("published", "quoted"), weakness("published", "memory")]
    ranks.append(weakness("common practice", "primary"))
    assert ranks == sorted(set(ranks))
    assert weakness("stated", "") == weakness("measured", "primary") == ranks[0]
