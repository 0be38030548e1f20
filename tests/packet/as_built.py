"""What the packets of the test builds were when they were last read: decisions, numbers, pages, and how high each card.

``as_built.txt`` holds it; a change that was meant is written by ``scripts/bless``. Words may change and nothing here
does, but where they make a card higher.
"""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING

from gaugeblock import domains
from gaugeblock.job.starter import starter_text
from gaugeblock.packet import cards, first, make, render, worklist
from gaugeblock.packet.build import Packet, build
from gaugeblock.packet.chosen import Scope
from gaugeblock.tables.load import refdata
from laws.as_told import holes, numbers, of_sheet, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterator

TESTS = Path(__file__).parents[1]
KEPT = Path(__file__).parent / "as_built.txt"
_DRAWN = re.compile(r"<(style|svg)\b.*?</\1>", re.DOTALL)
_MARKS = re.compile(r"\b[0-9a-f]{12,}\b")  # digests


STARTER = Path("starter")  # with every key that it explains, and no item an example


def builds() -> list[Path]:
    """The jobs of the tests, and the starter."""
    return [
        STARTER,
        *sorted(TESTS.glob("builds/*.toml")),
        *sorted(TESTS.glob("packet/builds/*.toml")),
        TESTS / "laws/trial.toml",
    ]


def named(job: Path) -> str:
    """A build by its place under the tests."""
    return "starter" if job == STARTER else job.relative_to(TESTS).as_posix()


def kept() -> dict[str, list[str]]:
    """What is kept, by build."""
    found: dict[str, list[str]] = {}
    for line in KEPT.read_text(encoding="utf-8").splitlines():
        if line.startswith("build "):
            found[line.removeprefix("build ")] = []
        elif line and found:
            found[list(found)[-1]].append(line)
    return found


def built(job: Path) -> list[str]:
    """What a packet shows."""
    made = _started() if job == STARTER else make.make(str(job))
    view = render.view_of(made, Scope())
    front = view["first"]
    out = [
        f"first page: {front.stops} stop, {front.asks} ask, {front.ready} ready, {len(front.sheets)} sheets,"
        f" {'close' if front.is_compact else 'roomy'}",
        *(f"  {group.head}: {', '.join(f'{_row(row)} mm' for row in group.rows)}" for group in front.groups),
        *(f"  stop {row.number}: {first._stop_height(row):.2f} mm" for row in front.stopped),
    ]
    out += [f"list: {', '.join(f'{worklist._height(line):.2f}' for line in page)} mm" for page in view["lists"]]
    heights = {card.number: cards._height(card) for page in view["cards"] for card in page}
    for number, (item, sheet) in enumerate(zip(made.items, made.record["sheets"], strict=True), 1):
        page = view["page_of"].get(number)
        out.append(f"{number}. {item.name}" + (f": page {page}, {heights[number]:.2f} mm" if page else ""))
        out += of_sheet(sheet)
        for drawing in item.sheet.drawings:
            out += wrapped(f"drawing {drawing.title}: {_ink(drawing.svg)}")
    for name, scope in (("whole", Scope()), ("cards", Scope(True)), ("last", Scope(sheet=made.items[-1].name))):
        files = render.render(made, scope)
        out += holes(files["packet.md"].decode())
        out += wrapped(f"{name}, text {_numbers(files['packet.md'].decode())}")
        page = _DRAWN.sub("", files["packet.html"].decode())
        out += wrapped(f"{name}, page {_numbers(page)}")
        out += wrapped(f"{name}, built of {_parts(page)}")
    return out


def _parts(page: str) -> str:
    """How many there are of each element and of each class of a page."""
    found = Counter(re.findall(r"<([a-z0-9]+)", page))
    found.update(f".{name}" for names in re.findall(r'class="([^"]*)"', page) for name in names.split())
    return ", ".join(f"{count} {name}" for name, count in sorted(found.items()))


def _started() -> Packet:
    text = re.sub(r"(?m)^#(?=[\[\]a-z]|  \{)", "", starter_text(domains.tables())).replace("EXAMPLE ", "")
    data = refdata()
    return build(domains.parse_job(text, hooks=domains.hooks(data)), data, "test")


def _ink(svg: str) -> str:
    """What a drawing says, how many there are of its elements, and what its coordinates come to."""
    said = numbers(" ".join(re.findall(r">([^<>]+)<", svg)))
    elements = Counter(re.findall(r"<([a-z]+)", svg))
    ink = sum(float(number) for number in re.findall(r"[0-9]+(?:\.[0-9]+)?", re.sub(r">[^<>]+<", "><", svg)))
    return f"{', '.join(f'{count} {name}' for name, count in sorted(elements.items()))}; {ink:.0f}; {said}"


def _row(row: object) -> str:
    return f"{first._row_height(row, first._ROOMY):.2f} or {first._row_height(row, first._CLOSE):.2f}"  # type: ignore[arg-type]


def _numbers(text: str) -> str:
    return numbers(_MARKS.sub("", text))


def _blocks() -> Iterator[str]:
    yield "# What the packets of the test builds were when they were last read (see as_built.py); by scripts/bless."
    for job in builds():
        yield "\n".join([f"build {named(job)}", *built(job)])


if __name__ == "__main__":
    KEPT.write_text("\n\n".join(_blocks()) + "\n", encoding="utf-8")
