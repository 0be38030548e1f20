"""Which row governs: every step of the ranking, intervals, missing keys, interpolation, spread, releases, find."""

from __future__ import annotations

import csv
import random
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock import finding
from gaugeblock.errors import Ambiguous, DataError, InputError, LookupMiss
from gaugeblock.figure import Figure
from gaugeblock.finding import SHOWN, find
from gaugeblock.lookup import STEPS, disagreement, look_up, look_up_or_none, same_specificity, spread
from gaugeblock.spreads import apart, spread_ends
from gaugeblock.tables.catalogue import LISTS, columns_of, refdata_folder
from gaugeblock.tables.load import Refdata, refdata
from gaugeblock.tables.releases import released_files

RELEASES = [("0.1.0", "first"), ("0.2.0", "a correction")]
# id: (year, kind); those without a word of their own are handbooks
SOURCES = {
    "OLD": ("1980", "handbook"),
    "NEW": ("2020", "handbook"),
    "AAA": ("2000", "handbook"),
    "BBB": ("2000", "handbook"),
    "NOYEAR": ("", "handbook"),
    "STD": ("1980", "standard"),
    "LAW": ("1980", "regulation"),
    "TM": ("1980", "government handbook"),
    "MAK": ("1980", "maker's sheet"),
    "WEB": ("2020", "reference page"),
}
QUANTITIES = {
    # quantity: (dimension, side, safer, prefers)
    "tightening_torque": ("torque", "target", "none", "maker > published > measured > common practice"),
    "proof_strength": ("stress", "min", "low", "maker > published > measured > common practice"),
    "tightening_torque_maximum": ("torque", "max", "low", "maker > published > measured > common practice"),
    "prevailing_torque_minimum": ("torque", "min", "high", "maker > published > measured > common practice"),
    "nut_factor": ("ratio", "nominal", "none", "measured > maker > published > common practice"),
    "kinematic_viscosity": ("kinematic viscosity", "nominal", "none", "published"),
}


class Book:
    """A small refdata folder that rows are written into."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        for name, columns in released_files().items():
            self._write(name, ",".join(columns) + "\n")
        self._write("releases", ",".join(LISTS["releases"]) + "\n")
        for version, about in RELEASES:
            self.line("releases", version=version, date="2026-11-25", summary=about)
        for id, (year, kind) in SOURCES.items():
            self.line("sources", id=id, title=f"Manual {id}", year=year, kind=kind, since="0.1.0")
        for name, (dimension, side, safer, prefers) in QUANTITIES.items():
            self.line(
                "quantities",
                quantity=name,
                dimension=dimension,
                side=side,
                safer=safer,
                prefers=prefers,
                hazard="none",
                definition=name,
                words=name.replace("_", " "),
                since="0.1.0",
            )
        self.line("formulas", name="linear_interpolation", domain="any", expression="y", basis="derived", since="0.1.0")

    def _write(self, name: str, text: str) -> None:
        path = self.folder / f"{name}.csv"
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="ascii")

    def line(self, table: str, /, **cells: str) -> None:
        columns = LISTS.get(table.rsplit("/", 1)[-1]) or columns_of(table)
        assert set(cells) <= set(columns)
        with (self.folder / f"{table}.csv").open("a", newline="", encoding="ascii") as handle:
            csv.writer(handle, lineterminator="\n").writerow([cells.get(c, "") for c in columns])

    def torque(self, value: str, **cells: str) -> None:
        """A row of fasteners/torques for 3/8-16 UNC grade 5 dry, with what is told apart."""
        row = {
            "thread": "3/8-16 UNC",
            "standard": "SAE J429",
            "grade": "5",
            "condition": "dry",
            "nut": "any",
            "service": "any",
            "quantity": "tightening_torque",
            "value": value,
            "unit": "lbf*ft",
            "basis": "published",
            "source": "NEW",
            "locator": "p. 1",
            "checked": "primary",
            "since": "0.1.0",
        }
        self.line("fasteners/torques", **{**row, **cells})

    def proof(self, value: str, size: str, **cells: str) -> None:
        """A row of fasteners/grades, proof strength of SAE J429 5 over a range of sizes."""
        row = {
            "standard": "SAE J429",
            "grade": "5",
            "size": size,
            "quantity": "proof_strength",
            "value": value,
            "unit": "ksi",
            "basis": "published",
            "source": "NEW",
            "locator": "p. 1",
            "checked": "primary",
            "since": "0.1.0",
        }
        self.line("fasteners/grades", **{**row, **cells})

    def air(self, value: str, temperature: str, **cells: str) -> None:
        """A row of lines/air, which is interpolated over temperature."""
        row = {
            "fluid": "air",
            "temperature": temperature,
            "quantity": "kinematic_viscosity",
            "value": value,
            "unit": "mm**2/s",
            "basis": "published",
            "source": "NEW",
            "locator": "p. 1",
            "checked": "primary",
            "since": "0.1.0",
        }
        self.line("lines/air", **{**row, **cells})

    def data(self, release: str | None = None) -> Refdata:
        return Refdata(str(self.folder), release)

    def governing(self, quantity: str = "tightening_torque", **keys: str) -> Figure:
        asked = {"thread": "3/8-16 UNC", "standard": "SAE J429", "grade": "5", "condition": "dry", **keys}
        return look_up("fasteners/torques", quantity, data=self.data(), **asked)

    def proof_at(self, size: str) -> Figure:
        return look_up(
            "fasteners/grades", "proof_strength", data=self.data(), standard="SAE J429", grade="5", size=size
        )


@pytest.fixture
def book(tmp_path: Path) -> Book:
    return Book(tmp_path)


# --- each step decides in a case --------------------------------------------------------------------------------------


def test_one_row_alone_is_the_only_row(book: Book) -> None:
    book.torque("31")
    figure = book.governing()
    assert (figure.text, figure.chosen_by, figure.others) == ("31", "only row", ())


STEP_CASES = [
    # step, the row that governs, the row that does not (written first, so that order never helps)
    ("standing", {"value": "31", "source": "OLD", "checked": "memory"}, {"value": "99", "standing": "misprint"}),
    ("standing", {"value": "31", "source": "OLD", "checked": "memory"}, {"value": "99", "standing": "superseded"}),
    ("standing", {"value": "31", "source": "OLD", "checked": "memory"}, {"value": "99", "standing": "withdrawn"}),
    ("service", {"value": "31", "source": "OLD", "checked": "memory"}, {"value": "99", "service": "aircraft"}),
    ("service", {"value": "31", "source": "OLD", "checked": "memory"}, {"value": "99", "service": "heavy truck"}),
    ("specificity", {"value": "31", "service": "vehicle", "checked": "memory", "source": "OLD"}, {"value": "99"}),
    ("basis", {"value": "31", "basis": "maker", "source": "OLD", "checked": "memory"}, {"value": "99"}),
    ("basis", {"value": "31", "source": "OLD", "checked": "memory"}, {"value": "99", "basis": "measured"}),
    (
        "basis",
        {"value": "31", "source": "OLD", "checked": "memory"},
        {"value": "99", "basis": "common practice", "source": "", "locator": ""},
    ),
    ("checked", {"value": "31", "source": "OLD"}, {"value": "99", "checked": "quoted"}),
    ("weight", {"value": "31", "source": "OLD", "checked": "quoted"}, {"value": "99", "checked": "memory"}),
    ("weight", {"value": "31", "source": "STD", "checked": "quoted"}, {"value": "99"}),
    ("weight", {"value": "31", "source": "TM", "checked": "quoted"}, {"value": "99", "source": "MAK"}),
    ("weight", {"value": "31", "source": "MAK", "checked": "quoted"}, {"value": "99", "source": "WEB"}),
    (
        "checked",
        {"value": "31", "source": "OLD", "checked": "quoted"},
        {"value": "99", "source": "STD", "checked": "memory"},
    ),
    (
        "safer end",
        {"value": "31", "source": "LAW", "quantity": "tightening_torque_maximum"},
        {"value": "99", "source": "STD", "quantity": "tightening_torque_maximum"},
    ),
    ("edition", {"value": "31", "source": "NEW"}, {"value": "99", "source": "OLD"}),
    ("edition", {"value": "31", "source": "OLD"}, {"value": "99", "source": "NOYEAR"}),
    ("source id", {"value": "31", "source": "AAA"}, {"value": "99", "source": "BBB"}),
]


@pytest.mark.parametrize(("step", "wins", "loses"), STEP_CASES)
def test_the_step_that_decides_is_named(book: Book, step: str, wins: dict[str, str], loses: dict[str, str]) -> None:
    book.torque(**loses)
    book.torque(**wins)
    figure = book.governing(wins.get("quantity", "tightening_torque"))
    assert (figure.text, figure.chosen_by) == ("31", step)
    assert [(o.text, o.chosen_by) for o in figure.others] == [("99", step)]


def test_every_step_is_in_the_cases() -> None:
    assert {step for step, _, _ in STEP_CASES} == set(STEPS)


@pytest.mark.parametrize(
    ("quantity", "text"), [("tightening_torque_maximum", "30"), ("prevailing_torque_minimum", "40")]
)
def test_the_safer_end_governs_where_the_quantity_has_one(book: Book, quantity: str, text: str) -> None:
    """The lower of two limits not to pass, the higher of two to reach; the newer edition does not help."""
    other = {"30": "40", "40": "30"}[text]
    book.torque(other, quantity=quantity, source="NEW")
    book.torque(text, quantity=quantity, source="OLD")
    figure = book.governing(quantity)
    assert (figure.text, figure.chosen_by) == (text, "safer end")


def test_the_safer_end_is_compared_across_units(book: Book) -> None:
    book.torque("35", quantity="tightening_torque_maximum", source="NEW")
    book.torque("400", quantity="tightening_torque_maximum", source="OLD", unit="lbf*in")  # 33.3 lbf*ft
    assert book.governing("tightening_torque_maximum").text == "400"


def test_measured_comes_first_where_the_quantity_prefers_it(book: Book) -> None:
    row = {
        "surface": "bare steel",
        "lubricant": "none",
        "quantity": "nut_factor",
        "unit": "1",
        "locator": "p. 1",
        "checked": "primary",
        "since": "0.1.0",
    }
    book.line("fasteners/nut_factors", **row, value="0.2", basis="published", source="NEW")
    book.line("fasteners/nut_factors", **row, value="0.17", basis="measured", source="OLD")
    figure = look_up("fasteners/nut_factors", "nut_factor", data=book.data(), surface="bare steel", lubricant="none")
    assert (figure.text, figure.chosen_by) == ("0.17", "basis")


def test_an_earlier_step_is_stronger_than_all_later_ones(book: Book) -> None:
    book.torque("99", basis="maker", checked="primary", source="NEW")
    book.torque("31", service="vehicle", basis="common practice", checked="memory", source="", locator="")
    figure = book.governing()
    assert (figure.text, figure.chosen_by) == ("31", "specificity")


@pytest.mark.parametrize("standing", ["misprint", "superseded", "withdrawn"])
def test_a_row_of_a_standing_never_governs_not_even_alone(book: Book, standing: str) -> None:
    book.torque("99", standing=standing)
    with pytest.raises(LookupMiss) as caught:
        book.governing()
    assert "only a misprint, superseded or withdrawn row" in caught.value.why
    assert [(f.text, f.standing, f.chosen_by) for f in caught.value.informs] == [("99", standing, "standing")]


def test_a_row_of_another_service_alone_informs_and_is_refused(book: Book) -> None:
    book.torque("99", service="aircraft")
    with pytest.raises(LookupMiss) as caught:
        book.governing()
    assert "no published source" in caught.value.why
    assert "aircraft" in caught.value.why
    assert [f.text for f in caught.value.informs] == ["99"]
    assert book.governing(service="aircraft").text == "99"


def test_a_service_that_is_none_is_refused(book: Book) -> None:
    book.torque("31")
    with pytest.raises(LookupMiss) as caught:
        book.governing(service="vehcle")
    assert "vehicle" in caught.value.nearest


# --- intervals --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("size", "text"),
    [
        ("1/4 in", "85"),
        ("1 in", "85"),
        ("1.0001 in", "74"),
        ("1 1/2 in", "74"),
        ("25.4 mm", "85"),
        ("25.41 mm", "74"),
        ("6.35 mm", "85"),
    ],
)
def test_over_leaves_its_end_out_and_to_takes_its_end_in(book: Book, size: str, text: str) -> None:
    book.proof("85", "1/4 to 1 in")
    book.proof("74", "over 1 to 1 1/2 in")
    assert book.proof_at(size).text == text


@pytest.mark.parametrize("size", ["0.2499 in", "1.5001 in", "6.349 mm"])
def test_outside_every_range_is_refused_with_the_ranges(book: Book, size: str) -> None:
    book.proof("85", "1/4 to 1 in")
    book.proof("74", "over 1 to 1 1/2 in")
    with pytest.raises(LookupMiss) as caught:
        book.proof_at(size)
    assert set(caught.value.nearest) == {"SAE J429 | 5 | 1/4 to 1 in", "SAE J429 | 5 | over 1 to 1 1/2 in"}


def test_open_ranges_hold_their_side_only(book: Book) -> None:
    book.proof("58", "to 16 mm")
    book.proof("60", "over 16 mm")
    assert [book.proof_at(s).text for s in ("1 mm", "16 mm", "16.001 mm", "900 mm")] == ["58", "58", "60", "60"]


def test_a_point_then_the_narrower_range_then_an_open_one_then_any(book: Book) -> None:
    rows = [("any", "1"), ("over 1/4 in", "2"), ("1/4 to 1 1/2 in", "3"), ("3/8 to 5/8 in", "4"), ("1/2 in", "5")]
    book.proof("9", "over 100 in")  # what a size is, is read from the ranges of the column
    for n, (size, value) in enumerate(rows):
        book.proof(value, size)
        figure = book.proof_at("1/2 in")
        assert figure.text == value
        assert [o.text for o in figure.others] == [v for _, v in reversed(rows[:n])]
        assert all(o.chosen_by == "specificity" for o in figure.others)
    assert book.proof_at("0.3 in").text == "3"
    assert book.proof_at("2 in").text == "2"
    assert book.proof_at("0.1 in").text == "1"


def test_the_widest_range_with_two_ends_is_narrower_than_one_with_one(book: Book) -> None:
    book.proof("58", "over 16 mm")
    book.proof("60", "10 to 900000 mm")
    assert book.proof_at("20 mm").text == "60"


def test_of_two_rows_that_each_leave_one_key_open_the_one_that_names_the_earlier_key_governs(book: Book) -> None:
    """Whichever is better checked: the condition of a thread counts before its nut."""
    book.torque("31", condition="dry", nut="any", checked="memory")
    book.torque("40", condition="any", nut="prevailing", checked="primary")
    figure = book.governing(nut="prevailing")
    assert figure.text == "31"
    assert [(o.text, o.chosen_by) for o in figure.others] == [("40", "specificity")]


def test_the_narrower_range_wins_over_a_better_checked_wider_one(book: Book) -> None:
    book.proof("85", "1/4 to 1 in", checked="primary")
    book.proof("80", "3/4 to 1 in", checked="memory", source="OLD")
    assert book.proof_at("7/8 in").text == "80"
    assert book.proof_at("1/2 in").text == "85"


@pytest.mark.parametrize("size", ["3/8 lbf", "three eighths", "3/8 furlong", "0.375"])
def test_a_size_that_cannot_be_read_is_refused(book: Book, size: str) -> None:
    book.proof("85", "1/4 to 1 in")
    with pytest.raises(InputError):
        book.proof_at(size)


def test_a_size_is_read_where_every_row_is_for_any_size(book: Book) -> None:
    book.proof("85", "any")
    assert book.proof_at("1/2 in").text == "85"


# --- missing keys -----------------------------------------------------------------------------------------------------


def test_a_missing_key_is_never_any_and_the_choices_are_told(book: Book) -> None:
    book.torque("31", nut="plain nut")
    book.torque("33", nut="flange nut")
    with pytest.raises(Ambiguous) as caught:
        book.governing()
    assert caught.value.why == "the answer depends on nut"
    assert set(caught.value.nearest) == {"plain nut", "flange nut"}
    assert book.governing(nut="Flange Nut").text == "33"


def test_two_missing_keys_are_told_together(book: Book) -> None:
    book.torque("31", nut="plain nut")
    book.torque("33", nut="flange nut", grade="8")
    with pytest.raises(Ambiguous) as caught:
        look_up(
            "fasteners/torques",
            "tightening_torque",
            data=book.data(),
            thread="3/8-16 UNC",
            standard="SAE J429",
            condition="dry",
        )
    assert caught.value.why == "the answer depends on grade and nut"
    assert set(caught.value.nearest) == {"5 / plain nut", "8 / flange nut"}


def test_a_row_of_any_answers_whatever_that_key_is(book: Book) -> None:
    book.torque("31")
    assert book.governing().text == "31"
    assert book.governing(nut="castle nut").text == "31"


def test_a_missing_size_is_asked_for(book: Book) -> None:
    book.proof("85", "1/4 to 1 in")
    with pytest.raises(Ambiguous) as caught:
        look_up("fasteners/grades", "proof_strength", data=book.data(), standard="SAE J429", grade="5")
    assert caught.value.nearest == ("1/4 to 1 in",)


def test_unknown_tables_quantities_and_keys_are_refused(book: Book) -> None:
    book.torque("31")
    with pytest.raises(LookupMiss):
        look_up("fasteners/torque", "tightening_torque", data=book.data())
    with pytest.raises(LookupMiss) as caught:
        book.governing("tightening_tork")
    assert caught.value.nearest == ("tightening_torque",)
    with pytest.raises(InputError) as wrong:
        book.governing(colour="red")
    assert "thread" in wrong.value.nearest


def test_what_has_no_answer_is_none_for_look_up_or_none(book: Book) -> None:
    book.torque("31", nut="plain nut")
    book.proof("85", "1/4 to 1 in")
    data = book.data()
    assert look_up_or_none("fasteners/torques", "tightening_torque", data=data, thread="3/8-16 UNC") is None
    with pytest.raises(InputError):
        look_up_or_none("fasteners/grades", "proof_strength", data=data, standard="SAE J429", grade="5", size="x")


def test_typed_words_reach_their_cell(book: Book) -> None:
    book.torque("31")
    book.line("words", domain="fasteners", word="clean", column="condition", cell="dry", since="0.1.0")
    assert book.governing(condition="CLEAN").text == "31"
    with pytest.raises(LookupMiss):
        book.governing(condition="greasy")


# --- interpolation ----------------------------------------------------------------------------------------------------


def _air(book: Book, temperature: str) -> Figure:
    return look_up("lines/air", "kinematic_viscosity", data=book.data(), fluid="air", temperature=temperature)


def test_between_two_printed_points_it_is_linear_and_derived_from_both(book: Book) -> None:
    book.air("13", "0 degC")
    book.air("15", "20 degC")
    book.air("19", "60 degC")
    printed = _air(book, "20 degC")
    assert (printed.text, printed.basis, printed.rule) == ("15", "published", None)
    between = _air(book, "30 degC")
    assert between.value == pytest.approx(16, rel=1e-12)
    assert (between.basis, between.chosen_by) == ("derived", "interpolated")
    assert [f.text for f in between.inputs] == ["15", "19"]
    assert between.rule is not None
    assert between.key["temperature"] == "30 degC"
    assert _air(book, "86 degF").value == pytest.approx(16, rel=1e-9)


@pytest.fixture(scope="module")
def air_data(tmp_path_factory: pytest.TempPathFactory) -> Refdata:
    """Air at 0 and 100 degC, opened once for all examples."""
    book = Book(tmp_path_factory.mktemp("air"))
    book.air("13", "0 degC")
    book.air("23", "100 degC")
    return book.data()


@given(thousandths=st.integers(min_value=0, max_value=100_000))
def test_interpolation_is_on_the_line_between_its_two_points(air_data: Refdata, thousandths: int) -> None:
    at = f"{thousandths // 1000}.{thousandths % 1000:03d} degC"
    got = look_up("lines/air", "kinematic_viscosity", data=air_data, fluid="air", temperature=at)
    assert got.typical == pytest.approx(13 + thousandths / 10_000, rel=1e-9)
    assert (got.basis == "derived") is (0 < thousandths < 100_000)


@pytest.mark.parametrize("temperature", ["-0.1 degC", "60.1 degC", "500 degF"])
def test_outside_the_printed_points_nothing_is_extrapolated(book: Book, temperature: str) -> None:
    book.air("13", "0 degC")
    book.air("19", "60 degC")
    with pytest.raises(LookupMiss):
        _air(book, temperature)


def test_points_of_two_sources_are_not_joined(book: Book) -> None:
    book.air("13", "0 degC", source="OLD")
    book.air("19", "60 degC", source="NEW")
    with pytest.raises(LookupMiss):
        _air(book, "30 degC")


def test_the_closest_pair_of_one_source_is_used_and_no_misprint(book: Book) -> None:
    book.air("13", "0 degC")
    book.air("99", "29 degC", standing="misprint")
    book.air("19", "60 degC")
    book.air("15.5", "25 degC", source="OLD")
    book.air("16.5", "35 degC", source="OLD")
    between = _air(book, "30 degC")
    assert [f.source for f in between.inputs] == ["OLD", "OLD"]
    assert between.value == pytest.approx(16)
    assert [f.text for f in _air(book, "20 degC").inputs] == ["13", "19"]


@pytest.mark.parametrize(("radius", "diameter", "value"), [("0.03", "1.5", 2.0), ("0.02", "1.3", 2.1)])
def test_one_of_two_axes_is_interpolated_at_a_printed_point_of_the_other(
    book: Book, radius: str, diameter: str, value: float
) -> None:
    book.line(
        "quantities",
        quantity="stress_concentration_factor",
        dimension="ratio",
        side="max",
        safer="high",
        prefers="published",
        hazard="none",
        definition="Kt",
        since="0.1.0",
    )
    for r, d, kt in (("0.02", "1.1", "2.0"), ("0.02", "1.5", "2.2"), ("0.05", "1.5", "1.6")):
        book.line(
            "driveline/stress_concentration",
            feature="shoulder fillet",
            loading="torsion",
            radius_ratio=r,
            diameter_ratio=d,
            quantity="stress_concentration_factor",
            value=kt,
            unit="1",
            basis="published",
            source="NEW",
            locator="p. 1",
            checked="primary",
            since="0.1.0",
        )
    figure = look_up(
        "driveline/stress_concentration",
        "stress_concentration_factor",
        data=book.data(),
        feature="shoulder fillet",
        loading="torsion",
        radius_ratio=radius,
        diameter_ratio=diameter,
    )
    assert figure.value == pytest.approx(value)


# --- spread and disagreement ------------------------------------------------------------------------------------------


def test_the_spread_is_the_envelope_of_the_rows_as_specific_as_the_governing_one(book: Book) -> None:
    book.torque("31", service="vehicle")
    book.torque("29", service="vehicle", checked="quoted", source="OLD")
    book.torque("", low="400", high="420", unit="lbf*in", service="vehicle", checked="memory", source="AAA")
    book.torque("5", source="BBB")  # of any service: less specific
    book.torque("90", service="aircraft", source="BBB")
    book.torque("95", service="vehicle", standing="misprint", source="BBB")
    figure = book.governing()
    assert figure.text == "31"
    assert {o.text for o in same_specificity(figure)} == {"29", "400 to 420"}
    assert spread(figure) == pytest.approx((29, 35))


def test_only_what_lies_beyond_the_governing_row_sets_an_end_of_the_spread(book: Book) -> None:
    book.torque("31")
    book.torque("31", source="OLD")
    book.torque("30", checked="memory", source="AAA")
    assert [o.text for o in spread_ends(book.governing())] == ["30"]
    book.torque("33", checked="memory", source="BBB")
    assert sorted(o.text for o in spread_ends(book.governing())) == ["30", "33"]


def test_the_spread_of_one_row_is_its_own_ends(book: Book) -> None:
    book.torque("31", low="28", high="33")
    assert spread(book.governing()) == (28, 33)
    book2 = Book(book.folder)
    book2.torque("31")
    assert spread(book2.governing()) == (31, 31)


@pytest.mark.parametrize(("other", "apart"), [("31.6", None), ("31.7", (31.0, 31.7)), ("26", (26.0, 31.0))])
def test_sources_disagree_when_only_edition_decides_and_over_2_percent(
    book: Book, other: str, apart: tuple[float, float] | None
) -> None:
    book.torque("31", source="NEW")
    book.torque(other, source="OLD")
    figure = book.governing()
    assert figure.chosen_by == "edition"
    assert disagreement(figure) == apart


def test_sources_disagree_by_source_id_too_and_across_units(book: Book) -> None:
    book.torque("31", source="AAA")
    book.torque("372", source="BBB", unit="lbf*in")
    assert disagreement(book.governing()) is None
    book.torque("30", source="NOYEAR")
    assert disagreement(book.governing()) == pytest.approx((30, 31))


@pytest.mark.parametrize(
    ("step", "other"),
    [
        ("checked", {"checked": "quoted", "source": "OLD"}),
        ("weight", {"source": "WEB"}),
        ("basis", {"basis": "common practice", "source": "", "locator": "", "checked": ""}),
    ],
)
def test_sources_disagree_whichever_step_decided(book: Book, step: str, other: dict[str, str]) -> None:
    book.torque("31")
    book.torque("20", **other)
    figure = book.governing()
    assert (figure.text, figure.chosen_by) == ("31", step)
    assert disagreement(figure) == (20, 31)


def test_a_row_that_is_less_specific_or_of_another_service_is_no_disagreement(book: Book) -> None:
    book.torque("31", service="vehicle")
    book.torque("20")
    book.torque("99", service="aircraft")
    assert disagreement(book.governing()) is None


# --- releases ---------------------------------------------------------------------------------------------------------


def test_a_release_gives_the_row_that_lived_in_it(book: Book) -> None:
    book.torque("13", until="0.2.0")
    book.torque("31", since="0.2.0")
    asked = {"thread": "3/8-16 UNC", "standard": "SAE J429", "grade": "5", "condition": "dry"}
    for release, text in (("0.1.0", "13"), ("0.2.0", "31"), (None, "31")):
        data = book.data(release)
        figure = look_up("fasteners/torques", "tightening_torque", data=data, **asked)
        assert (figure.text, figure.others) == (text, ())
    assert book.data().release == "0.2.0"
    with pytest.raises(InputError) as caught:
        book.data("0.9.0")
    assert caught.value.nearest == ("0.2.0", "0.1.0")


def test_the_tables_of_the_program_keep_what_was_corrected() -> None:
    """5/8-11 grade 1 or 2 dry: 63 lbf*ft in 0.1.0, 83 from 0.2.0 on, the 63 kept as a misprint."""
    asked = {"thread": "5/8-11 UNC", "standard": "SAE J429", "grade": "1 or 2", "condition": "dry"}
    old = look_up("fasteners/torques", "tightening_torque", data=Refdata(release="0.1.0"), **asked)
    new = look_up("fasteners/torques", "tightening_torque", data=Refdata(release="0.2.0"), **asked)
    assert (old.text, old.source) == ("63", "TM316")
    assert (new.text, new.source) == ("83", "TM238")
    assert [(o.text, o.standing) for o in new.others if o.standing] == [("63", "misprint")]


@pytest.mark.parametrize(
    ("thread", "then", "now"),
    [("M8x1", "memory", "quoted"), ("M10x1.25", "memory", "quoted"), ("M10x1", "memory", "quoted")],
)
def test_a_change_of_how_it_was_checked_is_a_new_row(thread: str, then: str, now: str) -> None:
    for release, checked in (("0.1.0", then), ("0.2.0", now)):
        figure = look_up("fasteners/threads", "tensile_stress_area", data=Refdata(release=release), thread=thread)
        assert (figure.checked, figure.evidence.checked) == (checked, checked)


def test_a_damaged_number_is_told_with_its_line(book: Book) -> None:
    book.torque("31 or so")
    with pytest.raises(DataError) as caught:
        book.governing()
    assert "line 2, column value" in caught.value.where


# --- find -------------------------------------------------------------------------------------------------------------


def test_find_puts_whole_words_before_parts_and_key_before_the_rest(book: Book) -> None:
    book.torque("1", thread="1-8 UNC", condition="oiled", note="from a drybox")  # a part of a word, in the rest
    book.torque("2", thread="1/2-13 UNC", condition="drybox")  # a part of a word, in the key
    book.torque("3", thread="3/8-16 UNC", condition="oiled", note="not dry")  # a whole word, in the rest
    book.torque("4", thread="1/4-20 UNC", condition="dry")  # a whole word, in the key
    book.torque("5", thread="5/8-11 UNC", condition="oiled")  # nothing
    cells = [figures[0].text for _, figures in find("DRY", data=book.data()).groups]
    assert cells == ["4", "3", "2", "1"]


def test_find_wants_all_words_and_puts_the_governing_figure_first(book: Book) -> None:
    book.torque("26", source="OLD")
    book.torque("31", source="NEW")
    book.torque("40", grade="8")
    found = find("3/8-16 dry 5", data=book.data())
    assert [[f.text for f in figures] for _, figures in found.groups] == [["31"]]
    assert [o.text for o in found.groups[0][1][0].others] == ["26"]
    assert (found.more, found.nearest) == (0, ())


def test_find_shows_twenty_keys_and_counts_the_rest(book: Book) -> None:
    for n in range(23):
        book.torque(str(n + 1), thread=f"M{n + 1}x1")
    found = find("dry", data=book.data())
    assert (len(found.groups), found.more) == (SHOWN, 3)
    assert SHOWN == 20
    *hits, more, _ = found.text(columns=80).splitlines()
    assert len(hits) == 13  # one line a hit, one screen of them
    assert more == "... and 10 more: add a word, or --list"
    assert len(find("dry", data=book.data(), whole=True).text(columns=80, whole=True).splitlines()) == 23 + 1
    assert len(found.as_dict()["keys"]) == 20  # type: ignore[arg-type]


def test_find_of_nothing_is_an_empty_answer_with_the_nearest_keys(book: Book) -> None:
    book.torque("31", condition="cadmium plated")
    found = find("cadmum platd", data=book.data())
    assert found.groups == ()
    assert found.as_dict()["figures"] == []
    assert "cadmium plated" in found.nearest


@pytest.mark.parametrize("text", ["", "   ", '"', "x " * 200])
def test_find_without_words_or_with_too_many_is_refused(book: Book, text: str) -> None:
    with pytest.raises(InputError):
        find(text, data=book.data())


def test_find_reads_a_statement_without_a_number(book: Book) -> None:
    book.line(
        "fasteners/rules",
        topic="reuse",
        subject="cotter pin",
        service="any",
        jurisdiction="any",
        statement="a cotter pin is never used twice",
        basis="published",
        source="NEW",
        locator="p. 2",
        checked="primary",
        severity="injury",
        since="0.1.0",
    )
    found = find("cotter twice", data=book.data())
    assert [e.rule is not None for e, _ in found.groups] == [True]
    assert "never used twice" in found.text()


def test_find_in_the_tables_of_the_program_finds_a_plug_first() -> None:
    found = find("spark plug 14 mm", data=Refdata(refdata_folder()))
    assert found.groups
    assert found.groups[0][0].label.startswith("spark plug")
    assert all("spark plug" in entry.label for entry, _ in found.groups)


@pytest.mark.parametrize(
    ("values", "ends"),
    [
        ([(100.0, "mm"), (102.0, "mm")], None),
        ([(100.0, "mm"), (102.1, "mm")], (100.0, 102.1)),
        ([(1.0, "in"), (25.4, "mm")], None),
        ([(1.0, "in"), (26.0, "mm")], (1.0, pytest.approx(26 / 25.4))),
        ([(0.0, "mm"), (0.1, "mm")], (0.0, 0.1)),
        ([(-40.0, "degC"), (-40.0, "degF")], None),
        ([(-1.0, "mm"), (1.0, "mm")], (-1.0, 1.0)),
    ],
)
def test_numbers_over_two_percent_apart_disagree(values, ends):
    assert apart(values) == ends


@pytest.mark.parametrize("columns", [40, 80, 100])
@pytest.mark.parametrize("words", ["wire", "spark plug", "brake fluid", "hanger", "header", "zzzz"])
def test_find_prints_one_line_a_hit_no_wider_than_the_screen(words: str, columns: int) -> None:
    found = find(words)
    lines = found.text(columns=columns).splitlines()
    assert [line for line in lines if len(line) > columns] == []
    assert len(lines) <= len(found.groups) * (1 if columns >= 80 else 4) + 6


@pytest.mark.parametrize(
    ("words", "table"),
    [("wire", "wiring/"), ("header", "lines/"), ("spark plug", "fasteners/"), ("gauges", "tubes/gauges")],
)
def test_find_begins_with_the_table_that_the_word_is_of(words: str, table: str) -> None:
    assert find(words).groups[0][0].table.startswith(table)


def test_find_puts_a_road_vehicles_rows_first() -> None:
    services = [figures[0].key.get("service", "any") for entry, figures in find("spark plug").groups if figures]
    own = [s in ("any", "vehicle", "one vehicle") for s in services]
    assert own == sorted(own, reverse=True)
    assert own[0]


def test_find_leaves_out_no_table_that_has_the_words() -> None:
    """What the text of a whole file is asked first never loses a key that a search of every key finds."""
    data = refdata()
    shelves = finding.shelves(data)
    texts = {shelf: [" ".join([*entry.named, entry.rest]) for entry in shelf.entries] for shelf in shelves}
    words = sorted({word for said in texts.values() for text in said for word in text.split()})
    drawn = random.Random(1).sample(words, 150)
    missed = [
        (word, shelf.name)
        for word in [*drawn, *(w[1:4] for w in drawn[:50] if len(w) > 3)]
        for shelf in shelves
        if any(word in text for text in texts[shelf]) and not shelf.may_hold([word])
    ]
    assert missed == []
    assert not all(shelf.may_hold(["spark", "plug"]) for shelf in shelves)  # and most files are left unread
