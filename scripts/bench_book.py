"""Times the shop book in Chromium: first answer, later answers, what travels, what it holds. Run by scripts/bench."""

from __future__ import annotations

import contextlib
import gzip
import json
import re
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT / "tests" / "book"))

from chromium import Chromium  # noqa: E402

from gaugeblock.book.serve import server  # noqa: E402

RUNS = "document.getElementById('speaks').textContent.startsWith('Data release')"
ASK = (
    "(async () => {{ while (!({runs})) await new Promise(r => setTimeout(r, 10)); const box ="
    " document.getElementById('box'); box.value = {question!r}; document.getElementById('ask').requestSubmit(); while"
    " (!document.querySelector('.card')) await new Promise(r => setTimeout(r, 5)); }})()"
)
LATER = (
    "(async () => {{ const e = await import('./engine.js'); const out = []; for (const text of {questions}) {{ const t"
    " = performance.now(); await e.tell({{ do: 'ask', text }}); out.push(performance.now() - t); }} return out; }})()"
)


def first_answer(browser: Chromium, share: int) -> float:
    """Seconds from opening to the first card, everything from the device's own keeping; the middle of three."""
    found = []
    for _ in range(3):
        browser.call("Page.navigate", browser.page, url="about:blank")
        time.sleep(1)
        with browser.slowed(share) if share > 1 else contextlib.nullcontext():
            begin = time.monotonic()
            browser.open(browser.home)
            browser.until("location.protocol === 'http:' && document.getElementById('box') !== null")
            browser.run(ASK.format(runs=RUNS, question="3/8-16 grade 5 dry"))
            found.append(time.monotonic() - begin)
    return statistics.median(found)


def travels(folder: Path) -> float:
    """Megabytes that a host which packs sends for a first visit: what the page keeps, and its worker."""
    kept = re.search(r"FILES = (\[.*?\])", (folder / "sw.js").read_text(encoding="utf-8"))
    assert kept is not None
    names = {"sw.js", "index.html", *json.loads(kept[1])} - {"./"}
    return sum(len(gzip.compress((folder / n).read_bytes(), 6)) for n in names) / 1e6


def main() -> None:
    """Print the table of the shop book."""
    with tempfile.TemporaryDirectory() as at:
        folder = Path(at, "book")
        subprocess.run(
            [sys.executable, str(ROOT / "scripts" / "book.py"), f"--out={folder}"],
            check=True,
            stdout=subprocess.DEVNULL,
        )
        with server(str(folder), "127.0.0.1", 0) as running, Chromium(Path(at, "profile")) as browser:
            threading.Thread(target=running.serve_forever, daemon=True).start()
            browser.home = f"http://127.0.0.1:{running.server_address[1]}/"
            browser.open(browser.home)
            browser.until(RUNS)
            browser.until("navigator.serviceWorker.ready.then(r => r.active.state === 'activated')")
            held = browser.memory()
            full, quarter = first_answer(browser, 1), first_answer(browser, 4)
            sizes = [
                f"{n}/16-{p} grade {g} {c}"
                for n, p in ((4, 20), (5, 18), (6, 16), (7, 14), (8, 13))
                for g in (5, 8)
                for c in ("dry", "oiled")
            ]
            questions = [q.replace("4/16", "1/4").replace("6/16", "3/8").replace("8/16", "1/2") for q in sizes]
            later = statistics.median(browser.run(LATER.format(questions=questions)))
            running.shutdown()
        sent = travels(folder)
    print("| shop book, in Chromium on this machine | measured | goal |\n|---|---|---|")
    print(f"| first answer after opening, from what the device keeps | {full:.1f} s | 3 s |")
    print(f"| the same at a quarter of the speed | {quarter:.1f} s | 6 s |")
    print(f"| later answers, median | {later:.0f} ms | 50 ms |")
    print(f"| what travels, packed | {sent:.1f} MB | 8 MB |")
    print(f"| memory of the page and its program | {held:.0f} MB | 200 MB |")


if __name__ == "__main__":
    main()
