"""One item of a packet alone: its card, its desk sheet and its drawings, with the number and digest of the whole."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from gaugeblock import cli
from gaugeblock.errors import LookupMiss
from gaugeblock.packet import make, render
from gaugeblock.packet.chosen import Scope, chosen

ROOT = Path(__file__).resolve().parents[2]
DEMO = str(ROOT / "reports" / "examples" / "demo.toml")
PACKET = make.make(DEMO)


def test_the_pages_hold_that_item_alone_under_its_own_number() -> None:
    whole = render.render(PACKET)
    files = render.render(PACKET, Scope(sheet="Gearbox  Crossmember"))
    page = files["packet.html"].decode()
    (number,) = chosen(PACKET.items, "gearbox crossmember")
    assert re.findall(r'id="((?:card|desk|drawings)-[0-9]+)"', page) == [
        f"card-{number}",
        f"desk-{number}",
        f"drawings-{number}",
    ]
    assert page.count('class="drawing page') == 4
    assert "READY TO BUILD" not in page
    assert files["packet.json"] == whole["packet.json"]
    assert PACKET.record["document"]["digest"][:12] in page
    assert "wheel nuts" not in files["packet.md"].decode()
    assert not set(re.findall(r'href="#([^"]+)"', page)) - set(re.findall(r'id="([^"]+)"', page))


def test_the_card_alone_with_cards() -> None:
    page = render.render(PACKET, Scope(cards_only=True, sheet="wheel nuts"))["packet.html"].decode()
    assert page.count('<article class="card') == 1
    assert 'id="desk' not in page
    assert not set(re.findall(r'href="#([^"]+)"', page)) - set(re.findall(r'id="([^"]+)"', page))


@pytest.mark.parametrize(
    ("name", "near"),
    [
        ("wheel nut", "wheel nuts"),
        ("crosmember", "gearbox crossmember"),
        ("brake", "brake line nuts"),
        ("", "engine mount brackets to block"),
    ],
)
def test_a_name_that_no_item_has_is_refused_with_the_nearest(name: str, near: str) -> None:
    with pytest.raises(LookupMiss) as caught:
        chosen(PACKET.items, name)
    assert near in caught.value.nearest
    assert len(caught.value.nearest) <= 5


def test_the_command_refuses_with_2_and_writes_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "one"
    assert cli.main(["packet", DEMO, "--out", str(out), "--sheet", "wheel nut"]) == 2
    got = capsys.readouterr()
    assert got.out == ""
    assert "Near it: wheel nuts" in got.err
    assert not out.exists()
    assert cli.main(["packet", DEMO, "--out", str(out), "--sheet", "wheel nut", "--json"]) == 2
    assert "wheel nuts" in json.loads(capsys.readouterr().err)["error"]["nearest"]


def test_the_command_says_what_the_item_comes_to(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["packet", DEMO, "--out", str(tmp_path / "a"), "--sheet", "spark plugs"]) == 0
    assert ". spark plugs: ready.\n" in capsys.readouterr().out
    assert cli.main(["packet", DEMO, "--out", str(tmp_path / "b"), "--sheet", "gearbox crossmember to frame"]) == 1
    assert "STOP" in capsys.readouterr().out


def test_what_is_told_of_one_item_asks_of_that_item_alone(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    name = "header flanges to head"
    assert cli.main(["packet", DEMO, "--out", str(tmp_path / "one"), "--sheet", name]) in (0, 1)
    out = capsys.readouterr().out
    own = {q["text"] for q in PACKET.record["questions"] if name in q["sheets"]}
    others = {q["text"] for q in PACKET.record["questions"]} - own
    assert own
    assert others
    assert all(f"{text} ({name})" in out for text in own)
    assert not any(text in out for text in others)
