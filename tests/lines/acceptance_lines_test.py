"""Look-ups a shop makes of the lines tables: a figure, a refusal with the nearest keys, or "no published source"."""

from __future__ import annotations

import pytest

from gaugeblock.errors import Ambiguous, LookupMiss
from gaugeblock.lines.heat import heat
from gaugeblock.lookup import look_up

# (item, class, state, quantity, text as its source prints it, unit)
MATERIALS = [
    ("PTFE hose", None, None, "temperature_maximum", "232", "degC"),
    ("SAE J30 R6", None, None, "temperature_maximum", "100", "degC"),
    ("R7", None, None, "temperature_maximum", "125", "degC"),
    ("R9", None, None, "temperature_maximum", "150", "degC"),
    ("fuel hose", "SAE J30 R14 T2", None, "temperature_maximum", "135", "degC"),
    ("nylon fuel line", None, "continuous", "temperature_maximum", "90", "degC"),
    ("nylon fuel line", None, "peak", "temperature_maximum", "115", "degC"),
    ("nylon fuel line", None, "continuous", "working_pressure_maximum", "450", "kPa"),
    ("NBR", None, None, "temperature_maximum", "125", "degC"),
    ("EPDM", None, None, "temperature_maximum", "140", "degC"),
    ("HNBR", None, None, "temperature_maximum", "160", "degC"),
    ("brake hose", "1/8 in or less", None, "burst_pressure_minimum", "7000", "psi"),
    ("brake hose", None, None, "proof_pressure_minimum", "4000", "psi"),
    ("409 tube", "409", "continuous", "oxidation_temperature_maximum", "675", "degC"),
    ("rubber hose, wire braid", "MIL-H-8794 size -6", None, "working_pressure_maximum", "2000", "psi"),
]
MATERIALS_REFUSED = [
    ("fuel hose", None, None, Ambiguous, "SAE J30 R6"),
    ("fuel hose", "R5", None, LookupMiss, "SAE J30 R6"),
    ("silicone hose", None, None, Ambiguous, "expansion joint"),
]
FLUIDS_AND_FUELS = [
    ("dot 3", "dry", "boiling_point_minimum", "205", "degC"),
    ("DOT3", "wet", "boiling_point_minimum", "140", "degC"),
    ("DOT 4", "dry", "boiling_point_minimum", "230", "degC"),
    (
        "DOT 4",
        "used fluid",
        "boiling_point_minimum",
        "155",
        "degC",
    ),  # an agency letter, read; the standard prints 155 degC
    ("DOT 5.1", "wet", "boiling_point_minimum", "180", "degC"),
    ("class 6 brake fluid", "wet", "boiling_point_minimum", "165", "degC"),
    ("glycol brake fluid", "3 % water", "vapour_lock_temperature", "145", "degC"),
    ("petrol", None, "boiling_point", "80 to 437", "degF"),
    ("petrol", None, "flash_point", "-45", "degF"),
    ("petrol", "US summer", "vapour_pressure_maximum", "9.0", "psi"),
    ("gasoline", "ASTM D4814 vapour lock class 4", "vapour_lock_temperature_minimum", "42", "degC"),
    ("E85", "ASTM D5798", "ethanol_content", "51 to 83", "%"),
    ("ethanol", None, "boiling_point", "172", "degF"),
    ("diesel", "No. 2", "flash_point", "140 to 176", "degF"),
    ("ATF", None, "hot_surface_ignition_temperature", "580 to 1120", "degF"),
]
FLUIDS_REFUSED = [
    ("DOT 6", "wet", LookupMiss, "DOT 5"),
    ("DOT 4", "boiled", LookupMiss, "dry"),
    ("E15", None, LookupMiss, "E10"),
]
# What has no limit, or more than one by its state: (item, class, kind of the decision, candidates, words of what to do)
NOT_ONE = [
    ("DOT 4", None, "ask", ["155", "230"], "new from a sealed can"),
    ("nylon fuel line", None, "ask", ["90", "115"], "continuous or intermittent"),
    ("PTFE", None, "ask", ["232"], "shop habit"),
    ("copper nickel brake line", None, "none", [], "Ask the maker"),
    ("brake fluid", None, "none", [], "class"),
    ("petrol", None, "none", [], "for information"),
]
CLEARANCES_AND_SUPPORTS = [
    (
        "lines/clearances",
        "clearance_minimum",
        {"jurisdiction": "Maryland", "subject": "brake pipe to exhaust"},
        "1.5",
        "in",
    ),
    ("lines/clearances", "clearance_minimum", {"jurisdiction": "MD", "subject": "fuel pipe to exhaust"}, "1.5", "in"),
    (
        "lines/clearances",
        "clearance_minimum",
        {"jurisdiction": "NSW", "subject": "brake line to wheel or tyre"},
        "10",
        "mm",
    ),
    (
        "lines/clearances",
        "clearance_minimum",
        {"jurisdiction": "ANDRA", "subject": "fuel part to flywheel or bellhousing"},
        "152",
        "mm",
    ),
    ("lines/supports", "support_spacing_maximum", {"subject": "brake pipe", "size": "3/16 in"}, "300", "mm"),
    ("lines/supports", "support_spacing_maximum", {"subject": "fuel lines", "size": "3/8 in"}, "300", "mm"),
    ("lines/supports", "support_spacing_maximum", {"subject": "lpg line", "size": "8 mm"}, "600", "mm"),
    (
        "lines/supports",
        "support_spacing_maximum",
        {"subject": "steel tube", "size": "3/16 in", "service": "aircraft"},
        "14",
        "in",
    ),
    (
        "lines/supports",
        "support_spacing_maximum",
        {"subject": "aluminum tube", "size": "3/8", "service": "aircraft"},
        "16.5",
        "in",
    ),
    (
        "lines/supports",
        "support_spacing_maximum",
        {"subject": "fixed fuel pipe", "size": "8 mm", "service": "marine"},
        "500",
        "mm",
    ),
    (
        "lines/clearances",
        "clearance_minimum",
        {"jurisdiction": "IL", "subject": "fuel line to exhaust, school bus", "service": "heavy truck"},
        "300",
        "mm",
    ),
]
CLEARANCES_REFUSED = [
    (
        "lines/clearances",
        "clearance_minimum",
        {"jurisdiction": "Illinois", "subject": "fuel line to exhaust, school bus"},
        LookupMiss,
        "no published source",
    ),
    (
        "lines/clearances",
        "clearance_minimum",
        {"jurisdiction": "Maryland", "subject": "clutch line to exhaust"},
        LookupMiss,
        "not a key",
    ),
    (
        "lines/clearances",
        "clearance_minimum",
        {"jurisdiction": "Texas", "subject": "brake line to exhaust"},
        LookupMiss,
        "not a key",
    ),
    (
        "lines/supports",
        "support_spacing_maximum",
        {"subject": "steel tube", "size": "7/16 in", "service": "aircraft"},
        LookupMiss,
        "no published figure",
    ),
]
EMISSIVITY_AND_SOURCES = [
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "stainless", "surface": "typical, polished", "temperature": "326.85 degC"},
        "0.19",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "stainless", "surface": "typical, highly oxidised", "temperature": "526.85 degC"},
        "0.67",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "cast iron", "surface": "oxidised", "temperature": "260 degC"},
        "0.66",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "iron and steel", "surface": "oxidized", "temperature": "400 degC"},
        "0.8",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "iron and steel", "surface": "hot rolled", "temperature": "130 degC"},
        "0.6",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "aluminised", "surface": "new hot-dip", "temperature": "300 degC"},
        "0.15 to 0.35",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "aluminum", "surface": "bright foil", "temperature": "26.85 degC"},
        "0.07",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "aluminium", "surface": "highly polished", "temperature": "200 degC"},
        "0.04 to 0.06",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "ceramic coating", "surface": "as applied", "temperature": "500 degC"},
        "0.5 to 0.9",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "lacquer", "surface": "matt black", "temperature": "100 degC"},
        "0.97",
    ),
    ("lines/heat_sources", "surface_temperature", {"part": "headers", "state": "running"}, "400"),
    ("lines/heat_sources", "internal_temperature", {"part": "cat", "state": "not stated"}, "1600"),
    (
        "lines/heat_sources",
        "exhaust_gas_temperature",
        {"part": "exhaust gas at port, petrol engine", "state": "full load"},
        "750 to 950",
    ),
]
EMISSIVITY_REFUSED = [
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "stainless", "surface": "typical, polished", "temperature": "900 degC"},
        "no published figure",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "titanium", "surface": "polished", "temperature": "300 degC"},
        "not a key",
    ),
    (
        "lines/emissivity",
        "total_emissivity",
        {"material": "cast iron", "temperature": "260 degC"},
        "depends on surface",
    ),
    ("lines/heat_sources", "surface_temperature", {"part": "turbocharger", "state": "running"}, "not a key"),
    (
        "lines/heat_sources",
        "surface_temperature",
        {"part": "catalytic converter", "state": "fault"},
        "no published source",
    ),
]


@pytest.mark.parametrize("case", MATERIALS)
def test_a_material_or_hose_class(case):
    item, klass, state, quantity, text, unit = case
    figure = heat(item, klass=klass, state=state).figure(quantity)
    assert (figure.text, figure.unit) == (text, unit)


@pytest.mark.parametrize(("item", "klass", "state", "error", "near"), MATERIALS_REFUSED)
def test_a_material_that_is_refused(item, klass, state, error, near):
    with pytest.raises(error) as refusal:
        heat(item, klass=klass, state=state)
    assert near in refusal.value.nearest


@pytest.mark.parametrize(("item", "state", "quantity", "text", "unit"), FLUIDS_AND_FUELS)
def test_a_fluid_or_fuel(item, state, quantity, text, unit):
    figure = heat(item, state=state).figure(quantity)
    assert (figure.text, figure.unit) == (text, unit)


@pytest.mark.parametrize(("item", "state", "error", "near"), FLUIDS_REFUSED)
def test_a_fluid_that_is_refused(item, state, error, near):
    with pytest.raises(error) as refusal:
        heat(item, state=state)
    assert near in refusal.value.nearest


@pytest.mark.parametrize(("item", "klass", "kind", "texts", "words"), NOT_ONE)
def test_what_has_no_one_limit_asks_or_says_that_nobody_has_it(item, klass, kind, texts, words):
    decision = heat(item, klass=klass).decision
    assert (decision.kind, [f.text for f in decision.figures]) == (kind, texts)
    assert words in decision.do


@pytest.mark.parametrize(("table", "quantity", "keys", "text", "unit"), CLEARANCES_AND_SUPPORTS)
def test_a_clearance_or_support(table, quantity, keys, text, unit):
    figure = look_up(table, quantity, **keys)
    assert (figure.text, figure.unit) == (text, unit)


@pytest.mark.parametrize(("table", "quantity", "keys", "error", "why"), CLEARANCES_REFUSED)
def test_a_clearance_or_support_that_is_refused(table, quantity, keys, error, why):
    with pytest.raises(error, match=why) as refusal:
        look_up(table, quantity, **keys)
    assert refusal.value.nearest


@pytest.mark.parametrize(("table", "quantity", "keys", "text"), EMISSIVITY_AND_SOURCES)
def test_an_emissivity_or_heat_source(table, quantity, keys, text):
    assert look_up(table, quantity, **keys).text == text


@pytest.mark.parametrize(("table", "quantity", "keys", "why"), EMISSIVITY_REFUSED)
def test_an_emissivity_or_heat_source_that_is_refused(table, quantity, keys, why):
    with pytest.raises(LookupMiss, match=why) as refusal:
        look_up(table, quantity, **keys)
    assert refusal.value.nearest
