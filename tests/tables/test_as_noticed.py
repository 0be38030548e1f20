"""Each physics rule notices as many damaged figures as it did, until a rule is changed that was meant to be."""

from __future__ import annotations

from gaugeblock import domains
from gaugeblock.tables import physics
from tables.as_noticed import bands, counted, kept

# They look at units, at keys and at which of the cells a number stands in.
OF_OTHERS = {
    "single_number_stands_in_value",
    "temperature_unit_is_that_of_its_source",
    "unit_is_one_that_sources_print",
    "unit_is_that_of_its_source",
    "wall_under_half_the_diameter",
}

# Their table came after the release whose rows are damaged: tests/fasteners/test_hexagon_physics.py damages its own.
OF_LATER_TABLES = {
    "hexagon_rises_with_its_thread",
    "hexagon_suits_its_thread",
    "nut_is_no_smaller_than_its_bolt",
}


def test_the_rules_notice_what_they_noticed_and_let_pass_what_they_did() -> None:
    assert [*counted(), *bands()] == kept(), "where it was meant: scripts/bless, and read the difference"


def test_every_rule_of_numbers_notices_something() -> None:
    noticed = {line.partition(":")[0] for line in kept()}
    assert {rule.__name__ for rule in (*physics.RULES, *domains.physics())} - noticed == OF_OTHERS | OF_LATER_TABLES
