"""The wheel carries tables and templates: installed outside the checkout it looks up, finds and makes a packet."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def run(installed: Path, cwd: Path, *argv: str) -> subprocess.CompletedProcess[str]:
    code = (
        "import sys, gaugeblock.cli; print(gaugeblock.__file__, file=sys.stderr);"
        f" sys.exit(gaugeblock.cli.main({list(argv)!r}))"
    )
    environment = {**os.environ, "PYTHONPATH": str(installed)}
    return subprocess.run(
        [sys.executable, "-c", code], cwd=cwd, env=environment, capture_output=True, text=True, timeout=120, check=False
    )


def test_looks_up_from_its_own_tables(installed: Path, tmp_path: Path) -> None:
    done = run(installed, tmp_path, "torque", "3/8-16", "--grade", "SAE J429 5", "--condition", "dry", "--json")
    assert done.returncode == 0, done.stderr
    assert done.stderr.startswith(str(installed))
    assert json.loads(done.stdout)["figures"][0]["value"] == 31


def test_makes_the_same_packet_as_the_checkout(installed: Path, tmp_path: Path) -> None:
    done = run(installed, tmp_path, "packet", str(ROOT / "reports" / "examples" / "demo.toml"), "--out", "out")
    assert done.returncode == 1, done.stderr
    for name in ("packet.md", "packet.html", "packet.json"):
        assert (tmp_path / "out" / name).read_bytes() == (ROOT / "reports" / "examples" / "demo" / name).read_bytes()


def test_validates_its_own_tables(installed: Path, tmp_path: Path) -> None:
    done = run(installed, tmp_path, "validate")
    assert done.returncode == 0, done.stdout


def test_the_wheel_says_which_data_it_carries(installed: Path, tmp_path: Path) -> None:
    import gaugeblock
    from gaugeblock.tables.load import refdata

    (metadata,) = installed.glob("*.dist-info/METADATA")
    text = metadata.read_text(encoding="utf-8")
    assert f"Version: {gaugeblock.__version__}\n" in text
    assert f"data release {refdata().release}" in text
    done = run(installed, tmp_path, "--version")
    assert done.stdout.startswith(f"gaugeblock {gaugeblock.__version__}, data release {refdata().release}")


def test_the_version_stands_in_the_change_log() -> None:
    import gaugeblock

    assert (
        f"### {gaugeblock.__version__}\n" in (ROOT / "CHANGELOG.md").read_text(encoding="utf-8").split("## Program")[1]
    )
