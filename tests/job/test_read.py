"""Reading good and half-filled jobs, and finding the line of every key."""

from __future__ import annotations

import subprocess
import sys
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gaugeblock.domains import parse_job, read_job, tables
from gaugeblock.errors import JobError, Problem
from gaugeblock.fasteners.job import Fastener
from gaugeblock.job.locate import Outline
from gaugeblock.job.model import job_model
from gaugeblock.job.part import Refused
from gaugeblock.job.values import kind_of, measure, plain_text
from gaugeblock.job.wrench import read_wrench
from gaugeblock.units import Measure, parse_measure

WHOLE = """\
[job]
owner = "A. Sample"
issued = "2031-05-17"
status = "for build"
[shop]
units = "inch"
wrenches = ["10 to 80 ft-lb by 1"]
[[shop.dies]]
name = "die A"
radius = '6"'
start_mark = "0 in"
[[fasteners]]
name = "hub <b>bolts</b> & nuts"
thread = "3/8-16 UNC"
engagement = ".625"
passes = ["50 %", "100 percent"]
count = 12
[fasteners.maker]
torque = "40 Nm"
[[fasteners]]
name = "plugs"
part = "spark plug"
[[tubes]]
name = "hoop"
od = "1-3/4 in"
die = "DIE  A"
bends = [{ straight = "0 in", angle = "90 deg", turn = "-45 deg" }]
[[lines]]
name = "brake"
class = "3"
temperature = "-40 F"
gap = "0 mm"
[[driveline]]
name = "backlash"
kind = "setup"
as_found = "pattern on the toe"
as_left = "0.007 in"
maker = { low = "0.005 in", high = "0.20 mm" }
"""


def length(text: str) -> Measure:
    return parse_measure(text, "length")


def test_a_whole_job_comes_back_as_written_with_units_in_their_closed_spelling() -> None:
    job = parse_job(WHOLE)
    assert (job.title.owner, job.title.status) == ("A. Sample", "for build")
    assert [w.text for w in job.shop.wrenches] == ["10 to 80 ft-lb by 1"]
    assert job.shop.dies[0].radius == length("6 in")
    first = job.fasteners[0]
    assert first.name == "hub <b>bolts</b> & nuts"
    assert (first.engagement, [str(p) for p in first.passes], first.count) == (length(".625 in"), ["50 %", "100 %"], 12)
    assert first.maker is not None
    assert first.maker.torque.text == "40 N*m"
    assert job.fasteners[1].part == "spark plug"
    assert (str(job.tubes[0].od), str(job.tubes[0].bends[0].turn)) == ("1-3/4 in", "-45 deg")
    line = job.lines[0]
    assert (line.hose_class, str(line.temperature), str(line.gap)) == ("3", "-40 degF", "0 mm")
    assert (job.driveline[0].as_found, job.driveline[0].as_left) == ("pattern on the toe", length("0.007 in"))


def test_only_the_name_of_an_item_must_be_there() -> None:
    text = "".join(f'[[{d}]]\nname = "x"\n' for d in ("fasteners", "tubes", "lines", "driveline", "shop.dies"))
    job = parse_job(text)
    assert job.title.owner is None
    assert job.fasteners == (Fastener(name="x"),)
    assert (job.fasteners[0].grade, job.fasteners[0].count, job.fasteners[0].service) == (None, None, "vehicle")


@pytest.mark.parametrize("blank", ["", "  ", "\u00a0"])
def test_a_blank_text_is_a_missing_key(blank: str) -> None:
    keys = "".join(f'{key} = "{blank}"\n' for key in ("thread", "engagement", "wrench", "service", "count", "maker"))
    assert parse_job(f'[[fasteners]]\nname = "x"\n{keys}[[lines]]\nname = "y"\nclass = "{blank}"') == parse_job(
        '[[fasteners]]\nname = "x"\n[[lines]]\nname = "y"'
    )


def test_blanks_around_a_text_are_dropped_and_markup_stays() -> None:
    assert parse_job('[job]\nvehicle = "  <i>red</i> {{ x }} "').title.vehicle == "<i>red</i> {{ x }}"


def test_the_same_file_gives_an_equal_job_and_its_own_keys_back() -> None:
    job = parse_job(WHOLE)
    assert parse_job(WHOLE) == job
    again = job.as_dict()
    assert again["lines"][0]["class"] == "3"
    refused: list[Refused] = []
    assert job_model(tables(), [name for name, items in again.items() if items]).read(again, (), refused) == job
    assert refused == []


def test_a_job_is_frozen() -> None:
    job = parse_job(WHOLE)
    with pytest.raises(AttributeError, match="frozen"):
        setattr(job.fasteners[0], "thread", "other")  # noqa: B010 - what a caller may try


def test_line_ends_of_both_kinds_read_the_same(tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    file.write_bytes(WHOLE.replace("\n", "\r\n").encode())
    assert read_job(file) == read_job(str(file)) == parse_job(WHOLE)


def test_hooks_see_every_item_and_their_problems_get_path_and_line() -> None:
    seen = []

    def grades(item: Fastener) -> list[Problem]:
        seen.append(item.name)
        return [Problem("grade", None, "no such grade", ("SAE J429 5",))] if item.grade == "55" else []

    text = (
        '[[fasteners]]\nname = "a"\ngrade = "55"\n[[fasteners]]\nname = "b"\ncount = "x"\n[[fasteners]]\nname = "c"\n'
    )
    with pytest.raises(JobError) as refused:
        parse_job(text, hooks={"fasteners": grades})
    assert seen == ["a", "b", "c"]
    assert [str(p) for p in refused.value.problems] == [
        "line 3: fasteners[1].grade (a): no such grade; nearest: SAE J429 5",
        "line 6: fasteners[2].count (b): a whole number is wanted, not text; write it without quotes, as 4",
    ]
    assert parse_job('[[fasteners]]\nname = "a"', hooks={"fasteners": grades, "tubes": grades}).fasteners


def test_a_hook_may_name_the_item_itself_or_a_key_below_it() -> None:
    def maker(item: Fastener) -> list[Problem]:
        return [Problem("maker.source", None, "is missing"), Problem("", None, "odd")]

    with pytest.raises(JobError) as refused:
        parse_job('[[fasteners]]\nname = "a"\n[fasteners.maker]\ntorque = "1 N*m"', hooks={"fasteners": maker})
    assert [(p.line, p.path) for p in refused.value.problems] == [
        (1, "fasteners[1] (a)"),
        (3, "fasteners[1].maker.source (a)"),
    ]


def test_reading_a_job_loads_none_of_the_heavy_libraries() -> None:
    code = (
        "import sys, gaugeblock.job.read, gaugeblock.job.starter, gaugeblock.job.output;"
        "sys.exit(any(m in sys.modules for m in ('pydantic', 'pandas', 'numpy', 'jinja2', 'pint')))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


# --- lines -----------------------------------------------------------------------------------------------------------

HARD = '''\
# [not.a.table]
top = 1
"quoted.key" = "# no remark" # a remark
'single "q"' = """
[x]
y = 1 \\""" ""\\
"""
raw = \'\'\'
a = 1 \\\'\'\'\'
a.b . "c" = 2
list = [ # remark with ]
  "]", \'[\',
  [1,
   2], # }
  { k = "}", l.m = [3] },
]
when = 1979-05-27 07:32:00
[ one . two ]
z = 1.5e3
[[many]]
n = 1
[[many]]
n = 2
[many.sub]
s = ""
[[many.deep]]
d = {}
[[many.deep]]
d = []
"e\\u0041" = 1
'''


def paths_of(value: Any, path: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """Every path of what the TOML parser made."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return ([path] if path else []) + [p for k, v in inner for p in paths_of(v, (*path, k))]


def test_hard_toml_is_located_key_by_key() -> None:
    lines = Outline(HARD).lines
    assert set(lines) == set(paths_of(tomllib.loads(HARD)))
    expected = {
        ("top",): 2,
        ("quoted.key",): 3,
        ('single "q"',): 4,
        ("raw",): 8,
        ("a", "b", "c"): 10,
        ("list",): 11,
        ("list", 0): 12,
        ("list", 1): 12,
        ("list", 2): 13,
        ("list", 2, 1): 14,
        ("list", 3, "k"): 15,
        ("list", 3, "l", "m", 0): 15,
        ("when",): 17,
        ("one", "two"): 18,
        ("one", "two", "z"): 19,
        ("many",): 20,
        ("many", 0): 20,
        ("many", 0, "n"): 21,
        ("many", 1): 22,
        ("many", 1, "sub", "s"): 25,
        ("many", 1, "deep", 0): 26,
        ("many", 1, "deep", 1, "d"): 29,
        ("many", 1, "deep", 1, "eA"): 30,
    }
    assert {path: lines[path] for path in expected} == expected


KEYS = st.one_of(
    st.from_regex(r"\A[A-Za-z0-9_-]{1,6}\Z"),
    st.text(st.characters(codec="utf-8", exclude_categories=["Cc", "Cs"]), max_size=4),
)
SCALARS = st.one_of(
    st.integers(-(10**9), 10**9),
    st.booleans(),
    st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), max_size=8),
)
VALUES = st.recursive(
    SCALARS, lambda v: st.one_of(st.lists(v, max_size=3), st.dictionaries(KEYS, v, max_size=3)), max_leaves=6
)


def quoted(text: str) -> str:
    """A TOML basic string."""
    safe = text.replace("\\", "\\\\").replace('"', '\\"')
    return '"' + "".join(c if c >= " " and c != "\x7f" else f"\\u{ord(c):04X}" for c in safe) + '"'


class Writer:
    """Writes values as TOML in many styles, and keeps the line of every path it writes."""

    def __init__(self, draw: st.DrawFn) -> None:
        self.draw = draw
        self.text = ""
        self.lines: dict[tuple[str | int, ...], int] = {}

    def put(self, text: str) -> None:
        self.text += text

    def gap(self, newline: bool) -> None:
        self.put(self.draw(st.sampled_from(["", " ", "\t", *(["\n", " # ] } \" '\n", "\r\n"] if newline else [])])))

    def note(self, path: tuple[str | int, ...]) -> None:
        self.lines[path] = self.text.count("\n") + 1

    def value(self, value: Any, path: tuple[str | int, ...], inline: bool) -> None:
        if isinstance(value, dict):
            self.put("{")
            for number, (key, inner) in enumerate(value.items()):
                self.put(", " if number else " ")
                self.pair(key, inner, path, True)
            self.put(" }")
        elif isinstance(value, list):
            self.put("[")
            for number, inner in enumerate(value):
                self.put("," if number else "")
                self.gap(True)
                self.note((*path, number))
                self.value(inner, (*path, number), inline)
                self.gap(True)
            self.put("]")
        elif isinstance(value, bool):
            self.put(str(value).lower())
        elif isinstance(value, int):
            self.put(str(value))
        elif "'" not in value and value.isprintable() and self.draw(st.booleans()):
            self.put(f"'{value}'")
        elif self.draw(st.booleans()):
            self.put('""' + quoted(value).replace("\\u000A", "\n") + '""')
        else:
            self.put(quoted(value))

    def pair(self, key: str, value: Any, path: tuple[str | int, ...], inline: bool) -> None:
        self.note((*path, key))
        bare = key and key.isascii() and key.replace("_", "a").replace("-", "a").isalnum()
        self.put(key if bare and self.draw(st.booleans()) else quoted(key))
        self.gap(False)
        self.put("=")
        self.gap(False)
        self.value(value, (*path, key), inline)


@st.composite
def documents(draw: st.DrawFn) -> tuple[str, dict[tuple[str | int, ...], int]]:
    writer = Writer(draw)
    for key, value in draw(st.dictionaries(KEYS, VALUES, max_size=4)).items():
        writer.pair(key, value, (), False)
        writer.put("\n")
        writer.gap(True)
        writer.put("\n")
    for index, table in enumerate(draw(st.lists(st.dictionaries(KEYS, VALUES, max_size=3), max_size=3))):
        writer.lines.setdefault(("items of it",), writer.text.count("\n") + 1)
        writer.note(("items of it", index))
        writer.put('[[ "items of it" ]]\n')
        for key, value in table.items():
            writer.pair(key, value, ("items of it", index), False)
            writer.put("\n")
    return writer.text, writer.lines


@given(documents())
def test_every_key_of_any_document_is_found_on_its_line(document: tuple[str, dict[tuple[str | int, ...], int]]) -> None:
    text, lines = document
    outline = Outline(text)
    assert set(paths_of(tomllib.loads(text))) == set(lines)
    if outline.excess is None:
        assert outline.lines == lines
        assert outline.twice == []


@given(st.text(st.sampled_from("ab.=[]{}\"'#\\, \n\r1"), max_size=60))
def test_no_text_upsets_the_pass_and_nothing_unread_is_parsed(text: str) -> None:
    outline = Outline(text)
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        with pytest.raises(JobError):
            parse_job(text)
        return
    assert outline.excess is None
    assert outline.twice == []
    assert set(outline.lines) == set(paths_of(data))


# --- values ----------------------------------------------------------------------------------------------------------


@given(st.text(max_size=100))
def test_any_text_is_taken_whole_or_refused(text: str) -> None:
    """A job made of any text either keeps it, drops it as blank, or says why not."""
    safe = quoted("".join(c for c in text if not "\ud800" <= c <= "\udfff"))
    told: tuple[Problem, ...] = ()
    try:
        job = parse_job(f"[job]\nvehicle = {safe}\n")
    except JobError as refused:
        told = refused.problems
    else:
        assert job.title.vehicle == (text.strip() or None)
    assert [(p.path, p.line) for p in told] in ([], [("job.vehicle", 2)])


@given(st.integers(1, 10**6), st.integers(0, 3), st.sampled_from(["in", "mm", '"', "feet", "um"]))
def test_a_measure_survives_its_own_text(number: int, places: int, unit: str) -> None:
    got = measure(f"{number / 10**places:.{places}f}{unit}", "length")
    assert measure(got.text, "length") == got
    assert got == length(f"{number / 10**places:.{places}f} {unit}")


def test_wrench_ranges_are_read_exactly() -> None:
    got = read_wrench("1/2 to 80 lbf*ft by .25")
    assert (float(got.low), float(got.high), float(got.step), got.unit) == (0.5, 80, 0.25, "lbf*ft")


def test_each_kind_of_value_has_a_plain_word() -> None:
    values = tomllib.loads("v = [true, 1, 1.5, 'a', [], {}, 2031-05-17, 07:32:00]")["v"]
    assert [kind_of(v) for v in values] == [
        "true or false",
        "a number",
        "a number",
        "text",
        "a list",
        "a table",
        "a date or time without quotes",
        "a date or time without quotes",
    ]


def test_texts_up_to_the_limit_are_taken() -> None:
    assert plain_text("x" * 500) == "x" * 500
