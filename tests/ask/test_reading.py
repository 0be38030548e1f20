"""Reading a line: no word that could change the number is dropped, no negation is lost, nothing crashes."""

from __future__ import annotations

import contextlib
import io
import re

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gaugeblock import domains
from gaugeblock.answer.asking import Shaped
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import Table
from gaugeblock.cli import main
from gaugeblock.errors import GaugeblockError, InputError
from gaugeblock.fasteners.torque import torque
from gaugeblock.plain.answer import answer, ask
from gaugeblock.plain.chatter import CHATTER, TURNING
from gaugeblock.plain.reading import read
from gaugeblock.plain.understand import understood
from gaugeblock.plain.words import words_of
from gaugeblock.tables.load import refdata

DATA = refdata()
TOPICS = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
KNOWN = sorted({word for topic in TOPICS for word in topic.vocabulary(DATA)})
LINES = [
    "3/8-16 grade 8 dry",
    "m10 10.9 oiled",
    "dot 4 wet",
    "1 3/4 .120 dom on a 6 inch die",
    "wheel nuts 12 by 1.5",
    "42 hrc in ksi",
    "3.55 gears 28 inch tires at 60 mph",
    "1 1/2 schedule 40 pipe",
]
laws = settings(deadline=None, max_examples=300, suppress_health_check=[HealthCheck.too_slow])


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("Three eighths-16, grade EIGHT; no insert?", "3/8-16 grade 8 no insert"),
        ("one and three quarter inch", "1 3/4 inch"),
        ("half inch", "1/2 inch"),
        ("ten point nine", "10.9"),
        ("point one two oh wall", ".120 wall"),
        ("two hundred fifty f", "250 f"),
        ("1½ in", "1 1/2 in"),
        ("1,500 lbf*ft", "1500 lbf*ft"),
        ("w/antiseize", "with antiseize"),
        ("one point five ten point nine", "1.5 10.9"),
        ("forty-three forty steel", "4340 steel"),
        ("inch and a half pipe", "1 1/2 inch pipe"),
    ],
)
def test_words(line: str, words: str) -> None:
    assert " ".join(words_of(line)) == words


# --- nothing is dropped
# ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("section of 2 in tube .120 wall", "tube section: 2 in OD, .120 in wall, tube"),
        ("section of 3/4 tube .065 wall", "tube section: 3/4 in OD, .065 in wall, tube"),
        ("section of 1.75 tube .120 wall", "tube section: 1.75 in OD, .120 in wall, tube"),
        ("section of 44.5 mm tube 3 mm wall", "tube section: 44.5 mm OD, 3 mm wall, tube"),
        ("clips brake line .9 m long", "clips of a line: .9 m, brake"),
        ("driveshaft 3 in od 1/8 wall steel 48 in long", "propeller shaft: tube 3 in, 1/8 in wall, steel, 48 in long"),
        ("driveshaft 3 in od 1/8 in wall steel 48 in long", "propeller shaft: tube 3 in, 1/8 in wall, steel, 48 in"),
        (
            "100 lbs on the pedal ratio 6 master 1 in",
            "brake circuit: 1 in master cylinder, 100 lbf on the pedal, pedal 6",
        ),
    ],
)
def test_a_bare_number_has_the_unit_that_a_shop_means(
    line: str, words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["ask", *line.split()])
    said = capsys.readouterr()
    assert (said.out + said.err).casefold().startswith(f"read as {words}".casefold())


def test_chatter_is_no_word_of_any_vocabulary() -> None:
    harmless = {"vehicle", "car", "cars", "an", "check", "make"}  # never read as an option by themselves
    for topic in TOPICS:
        for key, readers in topic.slots.items():
            for reader in readers:
                if not isinstance(reader, Shaped):
                    lost = {p for p in reader.phrases(DATA) if p in CHATTER} - harmless
                    assert lost == set(), (topic, key, lost)


def test_a_cue_hides_no_phrase_of_its_vocabulary() -> None:
    """A vocabulary that is opened by a piece of a word alone has that piece in every phrase."""
    for topic in TOPICS:
        for readers in topic.slots.values():
            for reader in readers:
                if type(reader).__name__ == "Named" and reader._cue:
                    hidden = [p for p in reader.phrases(DATA) if not any(cue in p for cue in reader._cue)]
                    assert hidden == []


def test_what_turns_a_word_is_no_chatter() -> None:
    assert not CHATTER & TURNING
    turning = "used old new or but-not only half stainless left reverse cracked without never plated coated galvanised"
    assert not CHATTER & set(turning.split())


@laws
@given(
    line=st.sampled_from(LINES),
    word=st.sampled_from(sorted({*KNOWN, "purple", "titanium", "cracked", "reverse"})),
    at=st.integers(0, 9),
)
def test_an_added_word_is_read_or_named_or_changes_nothing(line: str, word: str, at: int) -> None:
    """Each word stands in an option, names the topic, is chatter, or is told as not understood."""
    words = list(words_of(line))
    words.insert(min(at, len(words)), word)
    reading = understood(tuple(words), DATA)
    topic = reading.topic
    if word in CHATTER or reading.mended:
        return
    named = any(word in left.split() for left in reading.unread)
    in_signal = any(topic.signal(tuple(words), i) for i in range(len(words)) if word in words[i : i + 4])
    without = read(words_of(line), topic, DATA)
    assert named or in_signal or reading.values != without.values or _repeats(word, reading.said)


def _repeats(word: str, said: dict[str, str]) -> bool:
    return any(word in text.casefold() or text.casefold() in word for text in said.values()) or bool(said)


@laws
@given(
    line=st.sampled_from(LINES),
    turn=st.sampled_from(["not", "without", "never", "no", "or", "except", "isn't", "unless"]),
    at=st.integers(0, 9),
)
def test_a_negation_is_never_lost(line: str, turn: str, at: int) -> None:
    words = list(words_of(line))
    words.insert(min(at, len(words)), turn)
    try:
        got = answer(" ".join(words))
    except GaugeblockError:
        return
    plain = answer(line)
    assert got.read_as != plain.read_as, f"{' '.join(words)} was read as {line}"


@pytest.mark.parametrize(
    "line",
    [
        "3/8-16 grade 5 not oiled",
        "3/8-16 grade 5 without anti-seize",
        "3/8-16 titanium bolt",
        "dot 4 brake fluid, not the wet figure",
    ],
)
def test_what_cannot_be_honoured_is_refused_by_name(line: str) -> None:
    with pytest.raises(InputError) as refused:
        ask(line)
    assert "not understood" in refused.value.why


# --- what it says
# ------------------------------------------------------------------------------------------------------


def test_the_answer_is_that_of_the_command() -> None:
    got = ask("3/8-16 grade 8 anti-seize into aluminum")
    same = torque("3/8-16", grade="SAE J429 8", condition="anti-seize", into="aluminium")
    assert isinstance(got, Sheet)
    assert got.decision == same.decision
    assert (
        answer("3/8-16 grade 8 anti-seize into aluminum").read_as
        == "torque: 3/8-16, SAE J429 8, anti-seize, into aluminium"
    )


def test_open_keys_give_a_table_and_its_rows_are_the_commands_answers() -> None:
    got = ask("3/8 grade 8")
    assert isinstance(got, Table)
    assert got.open == ("thread", "condition")
    for line in got.lines:
        same = torque(line.key["thread"], grade="8", condition=line.key["condition"])
        assert line.sheet.decision == same.decision
    assert got.as_dict()["table"]["open"] == ["thread", "condition"]  # type: ignore[index]


@pytest.mark.parametrize("columns", [40, 60, 80, 100])
@pytest.mark.parametrize("line", ["3/8 grade 8", "m8", "fuel hose", "16 gauge", "1541", "1020 dom", "4340"])
def test_a_table_is_no_wider_than_the_screen_and_prints_every_number_in_its_own_dimension(
    line: str, columns: int
) -> None:
    got = ask(line)
    assert isinstance(got, Table)
    text = got.text(columns=columns)
    assert [shown for shown in text.splitlines() if len(shown) > columns] == []
    units = set(re.findall(r"[0-9] (lbf\*ft|lbf\*in|N\*m|degC|degF|ksi|MPa|in|mm)\b", text))
    assert units
    if line in ("3/8 grade 8", "m8"):
        assert units <= {"lbf*ft", "lbf*in", "N*m"}


def test_a_word_that_is_nearly_typed_is_said() -> None:
    got = answer("torqe 3/8-16 grade 8 dry into magnesiumm no insert 1 inch deep")
    assert '"magnesiumm" as magnesium' in got.read_as


def test_first_words_that_are_no_command_are_a_question(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["3/8-16", "grade", "5", "dry"]) == 0
    assert "31 lbf*ft" in capsys.readouterr().out


@laws
@given(
    st.text(max_size=80)
    | st.lists(st.sampled_from([*KNOWN, "3/8", "5", "-", "x", "1/0", "m", '"', "250"]), max_size=12).map(" ".join)
)
def test_no_line_ends_in_a_fault(line: str) -> None:
    out, bad = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(bad):
        code = main(["ask", "--json", "--", line])
    assert code in (0, 1, 2), bad.getvalue()
    assert (code == 2) == (out.getvalue() == "")
