"""The wheel of the checkout, built and unpacked once for all tests of this folder."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="session")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    pip = [sys.executable, "-m", "pip", "--quiet", "--disable-pip-version-check"]
    subprocess.run(
        [*pip, "wheel", "--no-deps", "--no-build-isolation", "-w", str(folder), str(ROOT)], check=True, timeout=300
    )
    (wheel,) = folder.glob("*.whl")
    target = folder / "site"
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(target)
    return target
