"""The house: imports run downward, a domain knows no other, files and functions stay small, the formatter decides."""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

from gaugeblock import domains

ROOT = Path(__file__).resolve().parents[1]
SRC = ROOT / "src" / "gaugeblock"
WINGS = tuple(wing.name for wing in domains.WINGS)

# Rooms from the ground up; a room may import from those below it and from itself. What stands in one line is one floor.
FLOORS: tuple[tuple[str, ...], ...] = (
    ("value", "negation"),
    ("errors",),
    ("unit_table",),
    ("units",),
    ("figure", "registry"),
    ("tables",),
    ("spreads", "asked"),
    ("ranking",),
    ("lookup", "frames", "span", "known", "listed", "typed"),
    ("calc",),
    ("drawing",),
    ("answer",),
    ("job", "finding", "found", "shelf"),
    ("bodies", "space", "warmth"),
    WINGS,
    ("domains",),
    ("audit", "closing", "differences", "exports"),
    ("packet",),
    ("plain",),
    ("book",),
    ("commands",),
    ("cli", "__main__"),
)
LEVEL = {room: n for n, floor in enumerate(FLOORS) for room in floor}
# The package's own face names what it shows for a type checker; what prints asks for the version.
OPEN = {"__init__"}


def modules() -> list[Path]:
    return sorted(SRC.rglob("*.py"))


def room(path: Path) -> str:
    return path.relative_to(SRC).parts[0].removesuffix(".py")


def imported(path: Path) -> Iterator[str]:
    """The rooms that a file imports, wherever in it."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module is not None:
            parts = node.module.split(".")
            if parts[0] == "gaugeblock":
                yield from [parts[1]] if len(parts) > 1 else [alias.name for alias in node.names]
        elif isinstance(node, ast.Import):
            yield from (a.name.split(".")[1] for a in node.names if a.name.startswith("gaugeblock."))


def test_every_room_has_its_floor() -> None:
    assert {room(p) for p in modules()} - OPEN <= set(LEVEL)


@pytest.mark.parametrize("path", modules(), ids=lambda p: str(p.relative_to(SRC)))
def test_imports_run_downward_and_no_domain_knows_another(path: Path) -> None:
    here = room(path)
    if here in OPEN:
        return
    upward = [other for other in imported(path) if other in LEVEL and LEVEL[other] > LEVEL[here]]
    across = [other for other in imported(path) if here in WINGS and other in WINGS and other != here]
    assert (upward, across) == ([], [])


@pytest.mark.parametrize("wing", WINGS)
def test_every_domain_has_the_same_rooms(wing: str) -> None:
    for name in ("__init__", "keys", "physics", "job", "page", "commands"):
        at = SRC / wing / name
        assert at.with_suffix(".py").is_file() or (at / "__init__.py").is_file(), f"{wing}/{name}"


def test_only_tables_open_refdata() -> None:
    """Nothing outside tables/ opens a file of refdata."""
    for path in modules():
        if room(path) not in ("tables", "closing"):
            assert "refdata_folder" not in path.read_text(encoding="utf-8"), path


def test_no_file_is_long() -> None:
    long = {str(p.relative_to(ROOT)): n for p in modules() if (n := len(p.read_text().splitlines())) > 400}
    assert long == {}


def test_no_function_is_longer_than_a_screen() -> None:
    long = []
    for path in modules():
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef) and node.end_lineno is not None:
                body = [n for n in node.body if not (isinstance(n, ast.Expr) and isinstance(n.value, ast.Constant))]
                length = node.end_lineno - body[0].lineno + 1 if body else 0
                if length > 60:
                    long.append(f"{path.relative_to(SRC)}:{node.name} {length}")
    assert long == []


def test_arguments_are_few() -> None:
    many = []
    for path in modules():
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef) and node.name != "__init__":
                count = len(node.args.args) + len(node.args.kwonlyargs)
                public = path.stem == node.name or node.name in PUBLIC
                if count > (24 if public else 12):
                    many.append(f"{path.relative_to(SRC)}:{node.name} {count}")
    assert many == []


PUBLIC = tuple(name for wing in domains.WINGS for name in wing.answers)


def test_a_prefix_of_three_files_is_a_folder() -> None:
    shared = []
    for folder in {p.parent for p in modules()}:
        prefixes = Counter(p.stem.split("_")[0] for p in folder.glob("*.py") if not p.stem.startswith("_"))
        shared += [f"{folder.relative_to(SRC)}/{name}" for name, count in prefixes.items() if count >= 3]
    assert shared == []


def test_every_room_has_its_tests() -> None:
    rooms = {p.name for p in SRC.iterdir() if (p / "__init__.py").is_file()}
    assert rooms - {p.name for p in (ROOT / "tests").iterdir() if any(p.rglob("*test*.py"))} == set()


def test_the_formatter_decides() -> None:
    skipped, wide = [], []
    for path in [*modules(), *(ROOT / "tests").rglob("*.py"), *(ROOT / "scripts").glob("*.py")]:
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if "# fmt: " + "skip" in line:
                skipped.append(f"{path.relative_to(ROOT)}:{number}")
            if len(line) > 120 and "# type: ignore" not in line:
                wide.append(f"{path.relative_to(ROOT)}:{number}")
    assert (len(skipped), len(wide)) == (0, 0), (skipped[:20], wide[:20])


def loose(tree: ast.AST) -> Iterator[int]:
    """The lines of strings that are said to nobody: no docstring, and no part of what stands before them."""
    for node in ast.walk(tree):
        body = getattr(node, "body", None)
        for at, one in enumerate(body if isinstance(body, list) else ()):
            is_text = isinstance(one, ast.Expr) and isinstance(one.value, (ast.Constant, ast.JoinedStr))
            if is_text and (at or isinstance(one.value, ast.JoinedStr)):
                yield one.lineno


def test_no_string_is_loose() -> None:
    """The second half of a pattern or a title that was broken in two without brackets is lost in silence."""
    found = {str(p.relative_to(ROOT)): lines for p in modules() if (lines := [*loose(ast.parse(p.read_text()))])}
    assert found == {}
    assert [*loose(ast.parse('a = "b"\n"c"\n'))] == [2]


# What stands in calc/ and no answer uses yet: each with its reason.
WAITING = {
    "mass_per_length": "the mass of a tube, for figures that a builder states",
    "section_modulus": "a tube in bending, for figures that a builder states",
    "anchor_force": "the load on a fixed point of an exhaust, of which no answer tells yet",
    "torque_from_friction": "the whole equation, which the printed rule of the same name shortens",
    "residual": "whether a balance closes, which its tests ask",
    "mirrored": "the mirrored tube, which the law of mirrors asks",
}


def test_no_text_is_lowered_to_begin_with_a_capital() -> None:
    """``capitalize`` makes N*m of a wrench n*m; ``capital`` leaves the letters that mean something."""
    assert [path.name for path in modules() if ".capitalize()" in path.read_text(encoding="utf-8")] == []


def names_in(node: ast.AST) -> Iterator[str]:
    """Every name that is used below a node."""
    if isinstance(node, ast.Name):
        yield node.id
    elif isinstance(node, ast.Attribute):
        yield node.attr
    for child in ast.iter_child_nodes(node):
        yield from names_in(child)


def test_every_function_of_calc_serves_the_program() -> None:
    """None is used by tests alone; those that work a printed rule a second time serve the law of printed formulas."""
    trees = {path: ast.parse(path.read_text(encoding="utf-8")) for path in modules()}
    used = {path: Counter(names_in(tree)) for path, tree in trees.items()}
    law = set(names_in(ast.parse((ROOT / "tests" / "laws" / "test_expressions.py").read_text(encoding="utf-8"))))
    idle = set()
    for path, tree in trees.items():
        for node in ast.walk(tree) if room(path) == "calc" else ():
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("__") and node.name not in law:
                inside = Counter(names_in(node))[node.name]
                if sum(count[node.name] for count in used.values()) <= inside:
                    idle.add(node.name)
    assert not idle - set(WAITING), "take out of calc what the program does not use"
