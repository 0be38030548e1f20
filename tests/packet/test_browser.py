"""The demo packet in a real browser: it asks for nothing, prints on Letter and A4, and fits a phone."""

from __future__ import annotations

import html
import json
import re
import shutil
import subprocess
from itertools import pairwise
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PAGE = ROOT / "reports" / "examples" / "demo" / "packet.html"
PAPERS = {"Letter": (612, 792), "A4": (595, 842)}
MM = 72 / 25.4
# Liberation Sans Bold: a digit is 0.70 em high, ascent and descent together 1.117 em (what pdftotext boxes).
DIGIT_SHARE = 0.70 / 1.117


def browser() -> str:
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    assert found, "chromium is needed: scripts/test installs it"
    return found


def run(folder: Path, *arguments: str) -> str:
    quiet = [
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ]
    command = [
        browser(),
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        *quiet,
        f"--user-data-dir={folder / 'profile'}",
        *arguments,
    ]
    done = subprocess.run(command, capture_output=True, text=True, timeout=120, check=True)
    return done.stdout


@pytest.fixture(scope="module", params=sorted(PAPERS))
def printed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[str, Path]:
    paper = str(request.param)
    folder = tmp_path_factory.mktemp(f"print-{paper}")
    copy = folder / "page.html"
    copy.write_text(
        PAGE.read_text(encoding="utf-8").replace("</style>", f"@page {{ size: {paper} }}</style>"), encoding="utf-8"
    )
    run(
        folder,
        "--generate-pdf-document-outline",
        "--no-pdf-header-footer",
        f"--print-to-pdf={folder / 'page.pdf'}",
        copy.as_uri(),
    )
    return paper, folder / "page.pdf"


def printed_pages(page: str, folder: Path, paper: str = "Letter") -> list[str]:
    """The text of each sheet of a page, printed."""
    file = folder / "page.html"
    file.write_text(page.replace("</style>", f"@page {{ size: {paper} }}</style>"), encoding="utf-8")
    run(folder, "--no-pdf-header-footer", f"--print-to-pdf={folder / 'page.pdf'}", file.as_uri())
    command = ["pdftotext", "-layout", str(folder / "page.pdf"), "-"]
    text = subprocess.run(command, capture_output=True, text=True, timeout=60, check=True).stdout
    return text.split("\f")[:-1]


def words_of(pdf: Path) -> list[list[tuple[float, float, float, float, str]]]:
    """Each page's words with their boxes in points."""
    out = subprocess.run(
        ["pdftotext", "-bbox", str(pdf), "-"], capture_output=True, text=True, timeout=60, check=True
    ).stdout
    pages = []
    for page in out.split("<page ")[1:]:
        found = re.findall(r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*?)</word>', page)
        pages.append([(float(a), float(b), float(c), float(d), html.unescape(w)) for a, b, c, d, w in found])
    return pages


def test_prints_on_its_paper_with_the_running_foot(printed: tuple[str, Path]) -> None:
    paper, pdf = printed
    info = subprocess.run(["pdfinfo", str(pdf)], capture_output=True, text=True, timeout=60, check=True).stdout
    size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+)", info)
    assert size is not None
    assert (float(size[1]), float(size[2])) == pytest.approx(PAPERS[paper], abs=1)
    pages = words_of(pdf)
    digest = json.loads((PAGE.parent / "packet.json").read_text(encoding="utf-8"))["document"]["digest"][:12]
    for number, words in enumerate(pages, 1):
        text = " ".join(w for *_, w in words)
        assert f"sheet {number} / {len(pages)}" in text
        assert digest in text
        assert "0042" in text
        assert "revision B" in text


def outline_of(pdf: Path) -> list[tuple[int, int, str]]:
    """The outline of a PDF: how deep, on which page, and the words of each entry."""
    command = ["pdftohtml", "-xml", "-i", "-stdout", str(pdf)]
    out = subprocess.run(command, capture_output=True, text=True, timeout=60, check=True).stdout
    entries, deep = [], 0
    for opens, closes, page, text in re.findall(r'(<outline>)|(</outline>)|<item page="(\d+)">(.*?)</item>', out):
        deep += bool(opens) - bool(closes)
        if text:
            entries.append((deep, int(page), html.unescape(text).replace("\u00a0", " ")))
    return entries


def test_the_pdf_has_an_outline_of_parts_and_items_and_a_title(printed: tuple[str, Path]) -> None:
    pdf = printed[1]
    entries, pages = outline_of(pdf), words_of(pdf)
    record = json.loads((PAGE.parent / "packet.json").read_text(encoding="utf-8"))
    assert [text for deep, _, text in entries if deep == 1] == ["Spec packetframe no. 0042"]
    assert [text.split(":")[0] for deep, _, text in entries if deep == 2] == [
        "Stop",
        "Ask first",
        "Every figure of the build",
        "At the car",
        "At the desk",
        "Drawings at full size",
        "How far to trust this packet",
        "Sources",
    ]
    items = [text for deep, _, text in entries if deep == 3]
    cards = PAGE.read_text(encoding="utf-8").count('<article class="card')
    names = [s["name"] for s in record["sheets"]]
    assert items[:cards] == names[:cards]
    assert items[cards : cards + len(names)] == names
    for _, page, text in entries:
        if text in names:
            assert text.split()[0] in {word for *_, word in pages[page - 1]}, text
    info = subprocess.run(["pdfinfo", str(pdf)], capture_output=True, text=True, timeout=60, check=True).stdout
    assert re.search(r"Title: +Spec packet frame no. 0042, revision B\n", info)
    assert re.search(r"Tagged: +yes", info)


def test_the_drawings_of_the_demo_are_printed_at_full_size(printed: tuple[str, Path]) -> None:
    """One thing that is too wide for its page, anywhere, makes the browser print all pages smaller: the scales of the
    wrap strip show it. An inch is 72 points, and 60 mm are 60 mm.
    """
    (strip,) = [words for words in words_of(printed[1]) if {"wrap", "80"} <= {w[4] for w in words}]
    (level,) = [w[0] for w in strip if w[4] == "80"]
    middle = {w[4]: (w[1] + w[3]) / 2 for w in strip if abs(w[0] - level) < 1}
    assert abs(middle["1"] - middle["3"]) == pytest.approx(144, abs=0.3)
    assert abs(middle["20"] - middle["80"]) == pytest.approx(60 * MM, abs=0.3)


def test_nothing_is_cut_off(printed: tuple[str, Path]) -> None:
    paper, pdf = printed
    width, height = PAPERS[paper]
    for words in words_of(pdf):
        for left, top, right, bottom, word in words:
            assert left >= 8 * MM, word
            assert right <= width - 8 * MM, word
            assert top >= 5 * MM, word
            assert bottom <= height - 5 * MM, word


def test_the_number_on_a_card_is_8_mm_high(printed: tuple[str, Path]) -> None:
    record = json.loads((PAGE.parent / "packet.json").read_text(encoding="utf-8"))
    tall = [
        w for page in words_of(printed[1]) for w in page if (w[3] - w[1]) * DIGIT_SHARE >= 8 * MM and w[4][0].isdigit()
    ]
    cards_with_number = PAGE.read_text(encoding="utf-8").count('<div class="big">')
    assert cards_with_number >= 9
    assert len(tall) >= cards_with_number
    assert len(record["sheets"]) >= cards_with_number


# The browser calls home on its own; the page itself holds no address at all (test_packet), so these hide nothing.
OWN_HOSTS = (".google.com", ".googleapis.com", ".gvt1.com", ".gstatic.com")


def addresses_asked_by(page: Path, folder: Path) -> set[str]:
    """What opening a page makes the browser ask the network for, its own calls home left out."""
    log = folder / "net.json"
    run(folder, f"--log-net-log={log}", f"--screenshot={folder / 'page.png'}", page.as_uri())
    assert (folder / "page.png").stat().st_size > 10_000
    found = re.findall(r'"url":"((?:https?|wss?|ftp)://([^/"]+)[^"]*)"', log.read_text(encoding="utf-8"))
    return {url for url, host in found if not host.endswith(OWN_HOSTS)}


def test_opening_the_page_asks_for_nothing(tmp_path: Path) -> None:
    assert addresses_asked_by(PAGE, tmp_path) == set()


def test_a_page_that_asks_would_be_seen(tmp_path: Path) -> None:
    copy = tmp_path / "asks.html"
    image = '<img src="http://gaugeblock.invalid/x.png"></body>'
    copy.write_text(PAGE.read_text(encoding="utf-8").replace("</body>", image), encoding="utf-8")
    assert addresses_asked_by(copy, tmp_path) == {"http://gaugeblock.invalid/x.png"}


def test_fits_a_phone(tmp_path: Path) -> None:
    """In a frame 390 px wide nothing is wider than the frame."""
    outer = tmp_path / "phone.html"
    outer.write_text(
        f'<iframe id="f" src="{PAGE.as_uri()}" style="width:390px;height:800px;border:0"></iframe><script>'
        "onload = () => { const d = document.getElementById('f').contentDocument.documentElement;"
        " document.title = d.scrollWidth + ' ' + d.clientWidth; }</script>",
        encoding="utf-8",
    )
    dom = run(tmp_path, "--allow-file-access-from-files", "--virtual-time-budget=5000", "--dump-dom", outer.as_uri())
    found = re.search(r"<title>(\d+) (\d+)</title>", dom)
    assert found is not None, dom[:400]
    assert int(found[1]) <= int(found[2])


# A number, or the end of a mixed fraction or of a range, and the unit that it must stand beside.
NUMBER = re.compile(r"[(~]?[-\u2212]?\d[\d.,/]*")
UNIT = re.compile(
    r"(?:in|mm|ft|m|lbf\u00b7ft|lbf\u00b7in|N\u00b7m|lbf|kN|N|ksi|psi|MPa|GPa|bar|\u00b0F|\u00b0C|%|lb|kg|A|V)[).,;:]*"
)
FRACTION = re.compile(r"\d+/\d+")


def parted(words: list[tuple[float, float, float, float, str]]) -> list[str]:
    """The numbers of a page whose unit, or whose fraction, stands at the beginning of the next line."""
    found = []
    for (_, top, right, bottom, word), (start, upper, _, lower, following) in pairwise(words):
        pair = UNIT.fullmatch(following) or (FRACTION.match(following) and word.isdigit())
        level = min(bottom, lower) - max(top, upper) > 0.3 * min(bottom - top, lower - upper)
        # letters that are turned in a drawing have boxes of different heights
        turned = abs((bottom - top) - (lower - upper)) > 0.1
        if NUMBER.fullmatch(word) and pair and not level and not turned and start < right and upper > top:
            found.append(f"{word} {following}")
    return found


def test_no_number_is_parted_from_its_unit_on_paper(printed: tuple[str, Path]) -> None:
    pages = words_of(printed[1])
    together = sum(bool(NUMBER.fullmatch(a[4]) and UNIT.fullmatch(b[4])) for words in pages for a, b in pairwise(words))
    assert together > 200
    assert [pair for words in pages for pair in parted(words)] == []


def test_a_number_parted_on_paper_would_be_seen(tmp_path: Path) -> None:
    page = '<p style="width: 60px; font: 20px sans-serif">about 1 3/4 in, then 250 mm</p>'
    file = tmp_path / "narrow.html"
    file.write_text(f"<!DOCTYPE html><title>narrow</title>{page}", encoding="utf-8")
    run(tmp_path, "--no-pdf-header-footer", f"--print-to-pdf={tmp_path / 'narrow.pdf'}", file.as_uri())
    (words,) = words_of(tmp_path / "narrow.pdf")
    assert parted(words) == ["3/4 in,", "250 mm"]
