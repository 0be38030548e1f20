"""A book bound once for all of these tests, and a browser that has opened it once."""

from __future__ import annotations

import subprocess
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from book.chromium import Chromium
from gaugeblock.book.serve import server

ROOT = Path(__file__).resolve().parents[2]
RUNS = "document.getElementById('speaks').textContent.startsWith('Data release')"


@pytest.fixture(scope="session")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    at = tmp_path_factory.mktemp("book") / "book"
    subprocess.run([sys.executable, str(ROOT / "scripts" / "book.py"), f"--out={at}"], check=True, timeout=300)
    return at


@pytest.fixture(scope="session")
def book(folder: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Chromium]:
    """A browser with the book open, loaded once over the network that is gone since."""
    with server(str(folder), "127.0.0.1", 0) as running:
        threading.Thread(target=running.serve_forever, daemon=True).start()
        with Chromium(tmp_path_factory.mktemp("profile")) as browser:
            browser.home = f"http://127.0.0.1:{running.server_address[1]}/"
            browser.screen(390)
            browser.open(browser.home)
            browser.until(RUNS)
            browser.until("navigator.serviceWorker.ready.then(r => r.active.state === 'activated')")
            running.shutdown()
            running.server_close()
            browser.open(browser.home)
            browser.until(RUNS)
            yield browser
