"""A fixed sample of slips in the safety tables: nearly all are seen by the second reading or by a rule of ``validate``.

``scripts/mutate tables`` tries every slip, names those that nobody sees, each with its reason, and counts the reasons.
Of 39,843 slips in 13 tables it found 99.7 % seen: 99.7 % and more of each kind, but for rows left out, 98.6 %. Of the
119 that nobody saw, 79 were of habits that no document has, 24 of rows read once, 16 of figures from memory. A row left
out of a closed release is also seen by the digest of the release, which is not asked here.
"""

from __future__ import annotations

import csv
import io
import shutil
from collections import Counter
from pathlib import Path

import pytest

from gaugeblock.domains import validate
from gaugeblock.tables.catalogue import refdata_folder
from refdata.mutations import BELOW, KINDS, Bench, Mutation, sample

COUNT, SEED = 1050, 1  # 150 of each kind: of 60, two habits that nobody can read again were by chance more than 2 %
# kind: the least share of the sample that is seen; when it was set, all were but one row left out.
LEAST = {
    "ten times": 0.98,
    "a tenth": 0.98,
    "next row's number": 0.98,
    "low for high": 1.0,
    "another unit": 0.98,
    "row left out": 0.95,
    "row entered twice": 1.0,
}


@pytest.fixture(scope="module")
def bench() -> Bench:
    return Bench()


@pytest.fixture(scope="module")
def every(bench: Bench) -> list[Mutation]:
    return bench.all_mutations()


@pytest.fixture(scope="module")
def seen(bench: Bench, every: list[Mutation]) -> list[tuple[Mutation, str]]:
    chosen = sample(every, COUNT, SEED)
    return list(zip(chosen, bench.seen_by(chosen), strict=True))


@pytest.mark.parametrize("kind", KINDS)
def test_a_slip_of_each_kind_is_seen(seen: list[tuple[Mutation, str]], kind: str) -> None:
    of_kind = [(mutation, who) for mutation, who in seen if mutation.kind == kind]
    missed = [str(mutation) for mutation, who in of_kind if not who]
    assert len(of_kind) == COUNT // len(KINDS)
    assert 1 - len(missed) / len(of_kind) >= LEAST[kind], "\n" + "\n".join(missed)


def test_the_share_of_all_slips_that_is_seen(seen: list[tuple[Mutation, str]]) -> None:
    by = Counter(who for _, who in seen)
    assert 1 - by[""] / len(seen) >= 0.99, dict(by)
    assert by["second reading"] > by["physics"]


def test_the_rules_alone_see_most_slips(bench: Bench, every: list[Mutation]) -> None:
    """Without the second reading, which is looked at first: 0.80 of the sample when this was measured."""
    alone = Counter(bench.seen_by(sample(every, COUNT, SEED), rules_alone=True))
    assert 1 - alone[""] / alone.total() >= 0.78, dict(alone)
    assert min(alone["physics"], alone["schema"], alone["keys"]) > 0


def test_a_row_that_was_not_damaged_is_not_seen(bench: Bench, every: list[Mutation]) -> None:
    rows = [m.row for m in sample(every, 28, SEED)]
    assert set(bench.seen_by([Mutation("none", row, "", (row,)) for row in rows])) == {""}
    assert set(bench.seen_by([Mutation("none", row, "", (row,)) for row in rows], rules_alone=True)) == {""}


def test_the_rules_see_in_memory_what_validate_sees_in_files(
    bench: Bench, every: list[Mutation], tmp_path: Path
) -> None:
    shutil.copytree(refdata_folder(), tmp_path / "refdata")
    chosen = [m for m in sample(every, 70, 3) if not m.left_out][::18]
    before = _faults(tmp_path)
    for mutation, who in zip(chosen, bench.seen_by(chosen, rules_alone=True), strict=True):
        path = tmp_path / "refdata" / f"{mutation.row.table}.csv"
        sound = path.read_bytes()
        lines = sound.decode().splitlines()
        for row in mutation.rows:
            text = io.StringIO()
            csv.writer(text, lineterminator="").writerow(row.cells.values())
            lines[row.line - 1 : row.line] = [text.getvalue()]
        path.write_text("".join(f"{line}\n" for line in lines), encoding="ascii")
        assert bool(_faults(tmp_path) - before) is bool(who), str(mutation)
        path.write_bytes(sound)
    assert {m.kind for m in chosen} <= set(KINDS)
    assert max(m.row.line for m in every) < BELOW


def _faults(folder: Path) -> set[tuple[str, int, str, str]]:
    """What the rules find; that the rows of a closed release were touched at all is not theirs to see."""
    found = validate(str(folder / "refdata"))
    return {(f.file, f.line, f.column, f.rule) for f in found if f.rule != "released_rows_frozen"}
