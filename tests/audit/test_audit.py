"""The audit of the tables: its summary fits a screen and counts what its list finds; what to read next is unread."""

from __future__ import annotations

import json
import re
from collections import Counter
from pathlib import Path

import pytest

from gaugeblock.audit import digest, tables
from gaugeblock.audit.packets import audit_packet, audit_record
from gaugeblock.audit.tables import audit_refdata, read_next, tally
from gaugeblock.cli import main
from gaugeblock.errors import InputError
from gaugeblock.packet import make
from gaugeblock.packet.record import read_record
from gaugeblock.tables.load import Refdata, refdata

ROOT = Path(__file__).resolve().parents[2]


def run(capsys: pytest.CaptureFixture[str], *argv: str) -> tuple[int, str, str]:
    code = main(list(argv))
    got = capsys.readouterr()
    return code, got.out, got.err


def test_the_audit_fits_a_screen_and_says_what_to_read_next(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "audit")
    assert code == 0
    assert len(out.splitlines()) <= 24
    assert re.search(r"Read next: .*: [0-9]+ answers(, [0-9]+ of them can hurt)?\.", " ".join(out.split()))
    _, whole, _ = run(capsys, "audit", "--list")
    assert "fasteners/torques" in whole
    _, text, _ = run(capsys, "audit", "--json")
    found = json.loads(text)
    ranks = [one["figures"] + 2 * one["hurt"] for one in found["read_next"]]
    assert ranks == sorted(ranks, reverse=True)
    assert all(0 <= one["hurt"] <= one["figures"] for one in found["read_next"])
    sources = {row["source"] for row in found["read_next"]}
    assert "" not in sources
    assert sources <= set(refdata().listing("sources"))


@pytest.mark.parametrize("release", [None, "0.6.0"])
def test_the_summary_of_an_audit_counts_what_its_list_finds(release: str | None) -> None:
    data = refdata(release)
    short, whole = tally(data), audit_refdata(data)
    kinds = Counter(f["kind"] for f in whole["findings"])
    assert {k: n for k, n in short["kinds"].items() if n} == kinds
    assert kinds == {k: n for k, n in whole["counts"].items() if k in kinds}
    assert short["tables"] == whole["tables"]
    assert short["read_next"] == whole["read_next"]
    assert sum(t["rows"] for t in short["tables"]) == sum(len(t.rows) for t in data.all_tables())


def test_what_was_read_is_not_on_the_list_of_what_to_read() -> None:
    """A look-up of each place on the list gives a figure that was not read."""
    data = refdata()
    places = {(one["source"], one["place"]) for one in read_next(data)}
    read = {(r["source"], r["locator"]) for r in data.table("fasteners/torques").rows if r["checked"] == "primary"}
    quoted = {(r["source"], r["locator"]) for r in data.table("fasteners/torques").rows if r["checked"] == "quoted"}
    assert not places & (read - quoted - _elsewhere(data))


def _elsewhere(data: Refdata) -> set[tuple[str, str]]:
    rows = [row for table in data.all_tables() if table.name != "fasteners/torques" for row in table.rows]
    return {(row["source"], row["locator"]) for row in rows}


def test_sheets_that_are_put_into_text_once_are_the_text_that_the_encoder_makes() -> None:
    sheets = make.make(str(ROOT / "reports" / "examples" / "demo.toml")).record["sheets"]
    assert digest.encoded_sheets(sheets) == digest.encoded({"sheets": sheets})["sheets"][1:-1]


def test_a_publication_shows_its_figures_and_what_rests_on_them(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, "sources", "TM238", "--list")
    assert code == 0
    assert "3/8-16 UNC | SAE J429 | 5 | dry: 31 lbf*ft" in out
    assert [line for line in out.splitlines() if len(line) > 80] == []
    _, short, _ = run(capsys, "sources", "TM238")
    assert short.count("\n") <= 15
    assert "--list" in short
    _, text, _ = run(capsys, "sources", "tm238", "--json")
    (one,) = json.loads(text)["sources"]
    rows = [row for table in refdata().all_tables() for row in table.rows if row["source"] == "TM238"]
    assert len(one["figures"]) == len(rows) == int(one["rows"])
    resting = sum(f["answers"] for f in one["figures"])
    assert 0 < resting < len(rows)
    assert f"{resting} answers rest on it" in " ".join(out.split())
    assert all((f["instead"] is None) or not f["answers"] for f in one["figures"])
    _, text, _ = run(capsys, "sources", "SHIGLEY9", "--json")
    assert "torque_from_preload" in json.loads(text)["sources"][0]["formulas"]
    _, listed, _ = run(capsys, "sources", "torque", "manual")
    assert "answers rest" not in listed


def test_a_publication_says_how_many_answers_rest_on_it_in_good_english() -> None:
    from gaugeblock.audit.publication import lines_of, publication

    data = refdata()
    told = {row[0]: lines_of(publication(row[0], data))[0] for row in data.lines("sources").all()}
    counts = {match[1] for line in told.values() if (match := re.match(r" *([0-9]+) ", line))}
    assert {"1", "2"} <= counts
    for line in told.values():
        count = re.match(r" *([0-9]+) (answers? rests?)", line)
        assert count is not None, line
        assert count[2] == ("answer rests" if count[1] == "1" else "answers rest")


def test_a_disagreement_names_its_sources_and_how_far_apart_they_are() -> None:
    data = refdata()
    rows = [f for f in audit_refdata(data)["findings"] if f["kind"] == "sources disagree"]
    known, named = set(data.listing("sources")), 0
    for row in rows:
        text, sources = row["text"].rsplit(": ", 1)
        assert set(sources.split(", ")) <= known | {"habit"}, row["text"]
        named += sum(name in known for name in sources.split(", "))
        ends = re.search(r"(-?[0-9.e+-]+) to (-?[0-9.e+-]+) \S+(?: \((-?[0-9]+)% apart\))?$", text)
        assert ends is not None, text
        low, high = float(ends[1]), float(ends[2])
        assert low < high
        if low > 0:
            assert int(ends[3]) == pytest.approx((high / low - 1) * 100, abs=0.6 + 0.1 * high / low)
    assert named > len(rows) > 0


def test_a_weak_input_is_called_what_it_is() -> None:
    """A link of common practice, and one that is known from memory, in the audit of a packet."""
    record = make.make(str(ROOT / "reports" / "examples" / "demo.toml")).record
    told = [f["text"] for f in audit_record(record)["findings"] if f["kind"] == "weak input"]
    links = {f["evidence"]["id"]: f["evidence"] for s in record["sheets"] for f in s["figures"] if f["evidence"]}
    seen = set()
    for text in told:
        weak, link = re.search(r"rests on (common practice|memory): (.*)$", text).groups()  # type: ignore[union-attr]
        if link in links:
            assert (links[link]["basis"] == "common practice") == (weak == "common practice")
            seen.add(weak)
    assert seen == {"common practice", "memory"}


@pytest.mark.parametrize(
    ("text", "said"), [('{"a": 1', "ends too early"), ('{"a": ', "ends too early"), ('{"a" 1}      ', "not JSON (line")]
)
def test_a_packet_that_was_cut_off_is_told_from_one_that_is_none(tmp_path: Path, text: str, said: str) -> None:
    packet = tmp_path / "packet.json"
    packet.write_text(text, encoding="utf-8")
    with pytest.raises(InputError, match=re.escape(said)):
        read_record(packet)


@pytest.mark.parametrize("contract", ["1", 3, None, 1.0, True])
def test_a_record_of_another_contract_is_no_packet(contract: object) -> None:
    with pytest.raises(InputError, match=r"not a packet\.json of this program"):
        audit_packet({"contract": contract, "document": {"digest": ""}})


def test_figures_from_nothing_upward_have_no_share(monkeypatch: pytest.MonkeyPatch) -> None:
    data = refdata()
    rows = [row for row in data.table("fasteners/torques").rows if not row.standing][:2]
    for low, told in ((0.0, False), (-4.0, False), (4.0, True)):
        monkeypatch.setattr(tables, "_apart", lambda _rows, low=low: (low, 5.0))
        (found,) = tables._disagreement(rows, data)
        assert ("apart" in found["text"]) == told
