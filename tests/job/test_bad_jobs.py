"""Job files that must be refused: each case names the key, the line and a word of the reason."""

from __future__ import annotations

from pathlib import Path

import pytest

from gaugeblock.domains import parse_job, read_job
from gaugeblock.errors import JobError, Problem
from gaugeblock.job.read import PROBLEMS_LIMIT, SIZE_LIMIT

F = '[[fasteners]]\nname = "A"\n'
T = '[[tubes]]\nname = "T"\n'
L = '[[lines]]\nname = "L"\n'
D = '[[driveline]]\nname = "D"\n'

# id, text of the file, key path, line, a word of the message
CASES: list[tuple[str, str, str, int | None, str]] = [
    # keys
    ("unknown key", F + 'gradee = "5"', "fasteners[1].gradee (A)", 3, "nearest: grade"),
    ("unknown key with nothing near", F + "zzzz = 1", "fasteners[1].zzzz (A)", 3, "no such key in [[fasteners]]"),
    ("unknown blank key", F + 'foo = ""', "fasteners[1].foo (A)", 3, "no such key"),
    ("unknown table", "[cars]\nx = 1", "cars", 1, "no such key in the top"),
    ("misspelt table", '[[fastener]]\nname = "A"', "fastener", 1, "nearest: fasteners"),
    ("title key at the top", 'owner = "A"', "owner", 1, "move it under [job]"),
    ("unknown key of the title", '[job]\nownr = "A"', "job.ownr", 2, "nearest: owner"),
    (
        "unknown key of the maker",
        F + '[fasteners.maker]\ntork = "1 N*m"',
        "fasteners[1].maker.tork (A)",
        4,
        "nearest: torque",
    ),
    (
        "unknown key of a bend",
        T + 'bends = [{ angle = "9 deg", bow = 1 }]',
        "tubes[1].bends[1].bow (T)",
        3,
        "no such key",
    ),
    ("key of the model, not of the file", L + 'hose_class = "A"', "lines[1].hose_class (L)", 3, "no such key"),
    ("as done is no job key", F + 'as_done = "30 lbf*ft"', "fasteners[1].as_done (A)", 3, "no such key"),
    ("quoted key with a control character", F + '"a\\u0007b" = 1', 'fasteners[1]."a\\u0007b" (A)', 3, "no such key"),
    ("name missing", '[[fasteners]]\nthread = "3/8-16 UNC"', "fasteners[1].name", 1, "is missing"),
    ("name blank", '[[fasteners]]\nname = "  "', "fasteners[1].name", 2, "is missing"),
    ("name twice", F + '\n[[fasteners]]\nname = "a"', "fasteners[2].name (a)", 5, "give each item its own name"),
    ("name twice but for blanks", F + '[[fasteners]]\nname = " A "', "fasteners[2].name (A)", 4, "see line 1"),
    ("die twice", '[[shop.dies]]\nname = "d"\n[[shop.dies]]\nname = "d"', "shop.dies[2].name (d)", 4, "given twice"),
    ("key twice", F + 'grade = "5"\ngrade = "8"', "fasteners[1].grade", 4, "first in line 3"),
    (
        "key twice in braces",
        F + "maker = { torque = '1 N*m', torque = '2 N*m' }",
        "fasteners[1].maker.torque",
        3,
        "given twice",
    ),
    ("table twice", '[job]\nowner = "A"\n[job]\nrevision = "B"', "job", 3, "first in line 1"),
    # types
    ("count as text", F + 'count = "4"', "fasteners[1].count (A)", 3, "a whole number is wanted, not text"),
    ("count with a point", F + "count = 4.0", "fasteners[1].count (A)", 3, "not a number with a point"),
    ("count true", F + "count = true", "fasteners[1].count (A)", 3, "not true or false"),
    ("count zero", F + "count = 0", "fasteners[1].count (A)", 3, "from 1 to 999"),
    ("count below zero", F + "count = -4", "fasteners[1].count (A)", 3, "from 1 to 999"),
    ("count of a thousand", F + "count = 1000", "fasteners[1].count (A)", 3, "from 1 to 999"),
    ("name a number", "[[fasteners]]\nname = 7", "fasteners[1].name", 2, 'write "7"'),
    ("grade a number", F + "grade = 8.8", "fasteners[1].grade (A)", 3, "text is wanted, not a number"),
    ("grade a list", F + 'grade = ["5"]', "fasteners[1].grade (A)", 3, "not a list"),
    ("grade a table", F + "[fasteners.grade]\nx = 1", "fasteners[1].grade (A)", 3, "not a table"),
    ("length without quotes", F + "engagement = 0.5", "fasteners[1].engagement (A)", 3, 'write "0.5 in"'),
    ("length true", F + "engagement = true", "fasteners[1].engagement (A)", 3, "not true or false"),
    ("passes as text", F + 'passes = "50 %"', "fasteners[1].passes (A)", 3, "a list is wanted"),
    ("maker as a number", F + "maker = 30", "fasteners[1].maker (A)", 3, "a table is wanted"),
    ("one bracket", '[fasteners]\nname = "A"', "fasteners", 1, "two brackets"),
    ("list of text for items", 'fasteners = ["A"]', "fasteners[1]", 1, "a table is wanted"),
    ("text for items", 'tubes = "none"', "tubes", 1, "[[tubes]]"),
    ("two brackets for the title", '[[job]]\nowner = "A"', "job", 1, "write [job]"),
    ("date without quotes", "[job]\nissued = 2031-05-17", "job.issued", 2, "as text"),
    ("revision a number", "[job]\nrevision = 2", "job.revision", 2, 'write "2"'),
    ("bend as text", T + 'bends = ["90 deg"]', "tubes[1].bends[1] (T)", 3, "a table is wanted"),
    # units, sizes, numbers
    ("length without a unit", F + 'engagement = "12"', "fasteners[1].engagement (A)", 3, "a length needs its unit"),
    ("length in a torque unit", F + 'engagement = "12 N*m"', "fasteners[1].engagement (A)", 3, "N*m is a torque"),
    ("torque in an unknown unit", F + 'prevailing = "3 ftlbz"', "fasteners[1].prevailing (A)", 3, "nearest: lbf*ft"),
    (
        "torque in a length unit",
        F + 'maker = { torque = "30 ft" }',
        "fasteners[1].maker.torque (A)",
        3,
        "ft is a length",
    ),
    (
        "unit in another case",
        F + 'maker = { torque = "30 NM" }',
        "fasteners[1].maker.torque (A)",
        3,
        "not a unit of torque",
    ),
    ("torque upside down", F + 'maker = { torque = "40 to 30 N*m" }', "fasteners[1].maker.torque (A)", 3, "upper end"),
    ("passes alike", F + 'passes = ["50 %", "50 %"]', "fasteners[1].passes[2] (A)", 3, "not more than the pass before"),
    (
        "shank over grip",
        F + 'grip = { length = "1 in", shank = "1-1/8 in", metal = "steel" }',
        "fasteners[1].grip.shank (A)",
        3,
        "longer than the grip",
    ),
    ("passes that fall", F + 'passes = ["80 %", "50 %"]', "fasteners[1].passes[2] (A)", 3, "not more than the pass"),
    (
        "passes beside the maker's stages",
        F + 'passes = ["50 %"]\nmaker = { torque = "22 N*m + 90 deg" }',
        "fasteners[1].passes (A)",
        3,
        "the maker's stages are the passes",
    ),
    (
        "maker low over high",
        F + 'maker = { low = "9 N*m", high = "8 N*m" }',
        "fasteners[1].maker.high (A)",
        3,
        "high is below low",
    ),
    ("decimal comma", T + 'od = "44,5 mm"', "tubes[1].od (T)", 3, "a comma in a number"),
    ("thousands comma", L + 'pressure = "1,200 psi"', "lines[1].pressure (L)", 3, "no thousands mark"),
    ("division by zero", T + 'od = "1/0 in"', "tubes[1].od (T)", 3, "division by zero"),
    ("length zero", T + 'od = "0 mm"', "tubes[1].od (T)", 3, "more than 0"),
    ("length below zero", T + 'wall = "-.120 in"', "tubes[1].wall (T)", 3, "more than 0"),
    ("kerf below zero", '[shop]\nkerf = "-1 mm"', "shop.kerf", 2, "0 or more"),
    ("number with an exponent", T + 'od = "1e3 mm"', "tubes[1].od (T)", 3, "e3 mm"),
    ("number not a number", T + 'od = "nan mm"', "tubes[1].od (T)", 3, "not a number"),
    ("number of a hundred digits", T + f'od = "{"9" * 70} mm"', "tubes[1].od (T)", 3, "not a number"),
    ("digits of another script", T + 'od = "\u0661\u0662 mm"', "tubes[1].od (T)", 3, "not a number"),
    ("only a unit", T + 'od = "in"', "tubes[1].od (T)", 3, "not a number"),
    ("feet and inches in one", T + 'end = "12ft-3in"', "tubes[1].end (T)", 3, "not a unit of length"),
    ("angle zero", T + 'bends = [{ angle = "0 deg" }]', "tubes[1].bends[1].angle (T)", 3, "more than 0"),
    ("angle over a turn", T + 'bends = [{ angle = "361 deg" }]', "tubes[1].bends[1].angle (T)", 3, "full turn"),
    (
        "angle in degrees Celsius",
        T + 'bends = [{ angle = "9 degC" }]',
        "tubes[1].bends[1].angle (T)",
        3,
        "degC is a temperature",
    ),
    ("below absolute zero", L + 'temperature = "-500 degF"', "lines[1].temperature (L)", 3, "absolute zero"),
    ("temperature without a unit", L + 'temperature = "250"', "lines[1].temperature (L)", 3, "needs its unit"),
    ("pass without a percent sign", F + 'passes = ["0.5"]', "fasteners[1].passes[1] (A)", 3, "a percentage is wanted"),
    ("pass over 100 %", F + 'passes = ["50 %", "101 %"]', "fasteners[1].passes[2] (A)", 3, "more than 100 %"),
    (
        "passes falling",
        F + 'passes = [\n"80 %",\n"50 %"]',
        "fasteners[1].passes[2] (A)",
        5,
        "not more than the pass before",
    ),
    ("pass blank", F + 'passes = ["50 %", ""]', "fasteners[1].passes[2] (A)", 3, "not a number"),
    ("wrench without steps", '[shop]\nwrenches = ["5 to 80 lbf*ft"]', "shop.wrenches[1]", 2, "not a wrench range"),
    ("wrench upside down", '[shop]\nwrenches = ["80 to 5 N*m by 1"]', "shop.wrenches[1]", 2, "below the high end"),
    ("wrench without a unit", '[shop]\nwrenches = ["5 to 80 by 1"]', "shop.wrenches[1]", 2, "needs its unit"),
    ("wrench step too large", F + 'wrench = "5 to 80 N*m by 90"', "fasteners[1].wrench (A)", 3, "step"),
    ("wrench step zero", F + 'wrench = "5 to 80 N*m by 0"', "fasteners[1].wrench (A)", 3, "step"),
    ("found in an unknown unit", D + 'as_found = "0.007 zoll"', "driveline[1].as_found (D)", 3, "'zoll' is not a unit"),
    ("left without a unit", D + 'as_left = "0.007"', "driveline[1].as_left (D)", 3, "the unit is missing"),
    # words of a short list, dates
    ("status unknown", '[job]\nstatus = "done"', "job.status", 2, "not one of the words"),
    ("status near", '[job]\nstatus = "for built"', "job.status", 2, "nearest: for build"),
    ("units unknown", '[shop]\nunits = "imperial"', "shop.units", 2, "metric, inch"),
    ("service of a line", L + 'service = "breaks"', "lines[1].service (L)", 3, "nearest: brake"),
    ("service of a fastener", F + 'service = "vehicel"', "fasteners[1].service (A)", 3, "vehicle"),
    ("joint unknown", F + 'joint = "glued"', "fasteners[1].joint (A)", 3, "reused, permanent"),
    ("measured by guess", L + 'temperature_by = "guess"', "lines[1].temperature_by (L)", 3, "crayon"),
    ("kind unknown", D + 'kind = "axle"', "driveline[1].kind (D)", 3, "shaft, setup"),
    ("date of no calendar", '[job]\nissued = "2031-02-30"', "job.issued", 2, "not a date of the calendar"),
    ("date another way round", '[job]\nissued = "17.05.2031"', "job.issued", 2, "2031-05-17"),
    # one key against another
    (
        "part with a grade",
        F + 'part = "spark plug"\ngrade = "5"',
        "fasteners[1].grade (A)",
        4,
        "takes no thread or grade",
    ),
    (
        "thread with a seat",
        F + 'thread = "3/8-16 UNC"\nseat = "taper"',
        "fasteners[1].seat (A)",
        4,
        "belongs to a part",
    ),
    (
        "die that is not there",
        '[[shop.dies]]\nname = "big"\n' + T + 'die = "bigg"',
        "tubes[1].die (T)",
        5,
        "nearest: big",
    ),
    ("die without dies", T + 'die = "d"', "tubes[1].die (T)", 3, "no die of this name"),
    (
        "die and radius",
        '[[shop.dies]]\nname = "d"\n' + T + 'die = "d"\nradius = "6 in"',
        "tubes[1].radius (T)",
        6,
        "see line 5",
    ),
    (
        "shaft with a step",
        D + 'kind = "shaft"\nstep = "backlash"',
        "driveline[1].step (D)",
        4,
        "does not belong to a shaft",
    ),
    (
        "set-up with a steel",
        D + 'kind = "setup"\nsteel = "4340"',
        "driveline[1].steel (D)",
        4,
        "does not belong to a setup",
    ),
    # text
    ("line break", F + 'where = "a\\nb"', "fasteners[1].where (A)", 3, "a line break at character 2"),
    ("line break at the end", F + 'where = """\na\n"""', "fasteners[1].where (A)", 3, "a line break"),
    ("tab", F + 'where = "a\\tb"', "fasteners[1].where (A)", 3, "a tab"),
    ("bell", F + 'where = "a\\u0007"', "fasteners[1].where (A)", 3, "U+0007"),
    ("escape sequence", '[[fasteners]]\nname = "\\u001b[31mred"', "fasteners[1].name (\\u001b[31mred)", 2, "U+001B"),
    ("null in text", F + 'where = "\\u0000"', "fasteners[1].where (A)", 3, "U+0000"),
    ("C1 control", F + 'where = "\\u0085"', "fasteners[1].where (A)", 3, "U+0085"),
    ("reading direction turned", F + 'where = "\\u202e13"', "fasteners[1].where (A)", 3, "U+202E"),
    ("control character in a measure", T + 'od = "1 in\\u0000"', "tubes[1].od (T)", 3, "U+0000"),
    ("text too long", F + f'where = "{"x" * 501}"', "fasteners[1].where (A)", 3, "501 characters"),
    ("name too long", f'[[tubes]]\nname = "{"x" * 81}"', f"tubes[1].name ({'x' * 40}...)", 2, "81 characters"),
    ("markup too long", f'[job]\nvehicle = "{"<b>" * 200}"', "job.vehicle", 2, "600 characters"),
    ("measure of a million characters", T + f'od = "{" " * 900_000}1x"', "tubes[1].od (T)", 3, "1x: 1 is a ratio"),
    # TOML
    ("text without quotes", F + "grade = SAE", "fasteners[1].grade", 3, "text stands in quotes"),
    ("no equals sign", F + "grade", "TOML", 3, "a key without ="),
    ("no value", F + "grade =\n", "fasteners[1].grade", 3, "no value that can be read"),
    ("quote not closed", F + 'grade = "5\ncount = 4\n', "fasteners[1].grade", 3, "not closed on its line"),
    ("long text not closed", F + 'where = """a\nb\n', "TOML", 4, "not closed"),
    ("list not closed", F + 'passes = ["50 %"\n', "fasteners[1].passes[1]", 3, "list is not closed"),
    ("bracket not closed", '[[fasteners]\nname = "A"', "TOML", 1, "not closed"),
    ("two on a line", '[job] owner = "A"', "job.owner", 1, "something follows"),
    ("backslash", F + 'where = "a\\qb"', "fasteners[1].where", 3, "backslash"),
    ("date that does not exist", "[job]\nissued = 2031-02-30", "job.issued", 2, "date that does not exist"),
    ("table over a key", '[job]\nowner = "A"\n[job.owner]\nx = 1', "job.owner", 3, "given twice"),
    ("stray word", "hello", "TOML", 1, "a key without ="),
    ("empty", "", "file", None, "nothing in it"),
    ("only remarks", "# nothing\n\n", "file", None, "nothing in it"),
    # too much
    ("deep lists", "a = " + "[" * 100_000, "a" + "[1]" * 8, 1, "nested more than 8 deep"),
    ("deep tables in braces", "a = " + "{a = " * 50_000, ".".join("a" * 9), 1, "nested more than 8 deep"),
    ("deep lists that are closed", "\na = " + "[" * 9 + "]" * 9, "a" + "[1]" * 8, 2, "nested"),
    ("long dotted key", "a" + ".a" * 450_000 + " = 1", "file", 1, "dotted key of more than 8 parts"),
    ("long dotted table", F + "[a" + ".a" * 450_000 + "]", "file", 3, "dotted key"),
    ("long key", "a" * 900_000 + " = 1", "file", 1, "a key of 900000 characters"),
    ("long quoted key", f'"{"a" * 101}" = 1', "file", 1, "a key of 101 characters"),
    (
        "number of a million digits",
        F + "count = " + "9" * 900_000,
        "fasteners[1].count",
        3,
        "900000 characters without quotes",
    ),
    ("a hundred thousand values", "a = [" + "1," * 100_000 + "]", "a[30000]", 1, "more than 30000 values"),
    (
        "a thousand and one items",
        F + "".join(f'[[lines]]\nname = "{i}"\n' for i in range(1001)),
        "lines",
        3,
        "1001 items",
    ),
]

# id, bytes of the file, line, a word of the message
BYTES: list[tuple[str, bytes, int | None, str]] = [
    ("byte-order mark", b"\xef\xbb\xbf[job]\n", 1, "byte-order mark"),
    ("UTF-16", "[job]\n".encode("utf-16"), 1, "UTF-16"),
    ("Latin-1", '[job]\n# r\u00f6d\nowner = "\u00e9"'.encode("latin-1"), 2, "byte 0xF6"),
    ("half a character", '[job]\nowner = "\u00e9'.encode()[:-1], 2, "not UTF-8"),
    ("surrogate as bytes", b'[job]\nowner = "\xed\xa0\x80"\n', 2, "not UTF-8"),
    ("carriage returns alone", b'[job]\rowner = "A"\r', 1, "carriage return"),
    ("one carriage return alone", b'[job]\r\nowner = "A"\r\n\r# x\n', 3, "carriage return"),
    ("null byte", b'[job]\nowner = "A\x00"\n', 2, "U+0000 in column 11"),
    ("form feed", b"[job]\n\x0c\n", 2, "U+000C"),
    ("delete in a remark", b"[job]\n# \x7f\n", 2, "U+007F"),
    ("a picture", b"\x89PNG\r\n\x1a\n\x00\x00", 1, "not UTF-8"),
    ("too large", b"#" * (SIZE_LIMIT + 1), None, "larger than 1000000 bytes"),
]


def the_problem(error: JobError) -> Problem:
    assert len(error.problems) == 1, str(error)
    return error.problems[0]


def test_there_are_sixty_cases_and_each_is_another() -> None:
    assert len({text for _, text, *_ in CASES} | {raw for _, raw, *_ in BYTES}) == len(CASES) + len(BYTES) > 60


@pytest.mark.parametrize(("text", "path", "line", "word"), [c[1:] for c in CASES], ids=[c[0] for c in CASES])
def test_a_bad_job_is_refused_with_key_line_and_reason(
    tmp_path: Path, text: str, path: str, line: int | None, word: str
) -> None:
    file = tmp_path / "bad.toml"
    file.write_bytes(text.encode())
    with pytest.raises(JobError) as refused:
        read_job(file)
    problem = the_problem(refused.value)
    message = str(refused.value)
    assert (problem.path, problem.line) == (path, line)
    assert word in message
    assert message.startswith(f"{file}: ")
    assert len(message) < 1000
    assert message.isprintable()


@pytest.mark.parametrize(("raw", "line", "word"), [c[1:] for c in BYTES], ids=[c[0] for c in BYTES])
def test_bytes_that_are_no_job_are_refused(tmp_path: Path, raw: bytes, line: int | None, word: str) -> None:
    file = tmp_path / "bad.toml"
    file.write_bytes(raw)
    with pytest.raises(JobError) as refused:
        read_job(file)
    problem = the_problem(refused.value)
    assert (problem.path, problem.line) == ("file", line)
    assert word in str(refused.value)


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("", "no file name"),
        ("none.toml", "no such file"),
        ("none/none.toml", "no such file"),
        (".", "a folder, not a file"),
        ("good.toml/job.toml", "cannot be read: not a directory"),
        ("x" * 300 + ".toml", "cannot be read: file name too long"),
        ("a\0b", "cannot be read: embedded null byte"),
        ("a\x1b[31m", "\\u001b[31m: file: no such file"),
        ("\udcff", "no such file"),
        ("/dev/null", "not an ordinary file"),
        ("loop", "cannot be read: too many levels"),
    ],
)
def test_paths_that_are_no_job_file_are_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, word: str
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("good.toml").write_text('[job]\nowner = "A"\n')
    Path("loop").symlink_to("loop")
    with pytest.raises(JobError) as refused:
        read_job(name)
    assert the_problem(refused.value).path == "file"
    assert word in str(refused.value)
    str(refused.value).encode()


def test_all_problems_are_told_at_once_in_the_order_of_the_file() -> None:
    text = """\
[job]
issued = "soon"
status = "done"
[[fasteners]]
name = "rear hub"
count = "five"
engagement = "12"
tork = 1
[fasteners.maker]
torque = "30 ft"
[[fasteners]]
name = "rear hub"
part = "plug"
thread = "14 mm"
[[tubes]]
od = "-1 in"
die = "x"
"""
    with pytest.raises(JobError) as refused:
        parse_job(text, "car.toml")
    assert [(p.line, p.path) for p in refused.value.problems] == [
        (2, "job.issued"),
        (3, "job.status"),
        (6, "fasteners[1].count (rear hub)"),
        (7, "fasteners[1].engagement (rear hub)"),
        (8, "fasteners[1].tork (rear hub)"),
        (10, "fasteners[1].maker.torque (rear hub)"),
        (12, "fasteners[2].name (rear hub)"),
        (14, "fasteners[2].thread (rear hub)"),
        (15, "tubes[1].name"),
        (16, "tubes[1].od"),
        (17, "tubes[1].die"),
    ]
    assert str(refused.value).startswith("car.toml: 11 problems\n  line 2: job.issued: soon: not a date")
    told = refused.value.as_dict()["problems"]
    assert isinstance(told, list)
    assert told[2]["why"] == "a whole number is wanted, not text"


def test_very_many_problems_are_cut_and_counted() -> None:
    with pytest.raises(JobError) as refused:
        parse_job("[job]\n" + "".join(f"key{i} = {i}\n" for i in range(700)))
    assert len(refused.value.problems) == PROBLEMS_LIMIT + 1
    assert refused.value.problems[-1].why == f"{700 - PROBLEMS_LIMIT} more problems are not told here"


def test_the_worst_files_of_the_allowed_size_are_answered() -> None:
    """Each of these makes one careless step of a scanner or parser take minutes."""
    quotes = '"""\\' * 240_000
    for text in (
        "a" + ".a" * 490_000,
        "[" * 990_000,
        '"' * 990_001,
        quotes,
        "'" * 990_001,
        "x=[" + "[],".join(" " * 300_000),
        "[[a]]\n" * 160_000,
        "\n" * 990_000,
        "#" * 990_000,
        "a=" * 490_000,
        "a={b=" * 190_000,
        "a='\\" * 240_000,
    ):
        with pytest.raises(JobError):
            parse_job(text)
