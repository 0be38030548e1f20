"""A bound book served from its folder: on this machine alone, with the types that a browser needs."""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
import threading
import urllib.error
import urllib.request
from pathlib import Path

import pytest

from gaugeblock.book.serve import server
from gaugeblock.cli import main
from gaugeblock.errors import InputError


def test_a_folder_without_a_book_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(InputError, match="no shop book"):
        server(str(tmp_path), "127.0.0.1", 0)
    assert main(["book", str(tmp_path), "--serve"]) == 2
    assert "scripts/book" in capsys.readouterr().err
    assert main(["book", str(tmp_path)]) == 0
    assert "No shop book" in capsys.readouterr().out


def test_a_port_that_is_taken_is_told(folder: Path) -> None:
    with server(str(folder), "127.0.0.1", 0) as running:
        with pytest.raises(InputError, match="cannot be served"):
            server(str(folder), "127.0.0.1", running.server_address[1])
        with pytest.raises(InputError, match="cannot be served"):
            server(str(folder), "127.0.0.1", 99999)


def test_files_have_their_types_and_nothing_outside_is_given(folder: Path) -> None:
    with server(str(folder), "127.0.0.1", 0) as running:
        threading.Thread(target=running.serve_forever, daemon=True).start()
        home = f"http://127.0.0.1:{running.server_address[1]}/"
        types = {
            "": "text/html",
            "runtime/pyodide.mjs": "text/javascript",
            "book.webmanifest": "application/manifest+json",
        }
        for name, wanted in types.items():
            with urllib.request.urlopen(home + name, timeout=10) as got:
                assert got.headers.get_content_type() == wanted
        for name in ("../pyproject.toml", "%2e%2e/pyproject.toml", "nothing"):
            with pytest.raises(urllib.error.HTTPError, match="404") as told:
                urllib.request.urlopen(home + name, timeout=10)
            told.value.close()
        running.shutdown()


def test_it_says_where_it_is_and_stops_by_hand(folder: Path) -> None:
    command = [sys.executable, "-m", "gaugeblock", "book", str(folder), "--serve", "--port", "0"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env={**os.environ}) as process:
        assert process.stdout is not None
        said = process.stdout.readline()
        found = re.search(r"http://127\.0\.0\.1:\d+/", said)
        assert found is not None, said
        with urllib.request.urlopen(found[0], timeout=10) as got:
            assert b"Shop book" in got.read()
        process.send_signal(signal.SIGINT)
        assert process.wait(20) == 0
