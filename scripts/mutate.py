"""Changes one line of the program at a time and asks whether a test notices. Run by scripts/mutate.

A copy of the checkout is changed, never the checkout. Each test is run once with the functions noted that it calls; a
changed line is judged by the tests that call its function, the quickest first, and where those pass by the tests of its
room, of the laws and of the printed answers. One process at a time: a child that is forked for each change, so that
the libraries are loaded once.
"""

from __future__ import annotations

import argparse
import ast
import compileall
import cProfile
import itertools
import json
import os
import py_compile
import random
import shutil
import signal
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
SOURCE = ROOT / "src" / "gaugeblock"
ROOMS = ("calc", "lookup.py", "spreads.py", "figure.py", "answer", "fasteners", "tubes", "lines", "driveline", "wiring")
ROOMS += ("audit", "packet")
COPIED = ("src", "tests", "refdata", "reports", "scripts", "pyproject.toml", "README.md", "CHANGELOG.md")
# They start processes and a browser, look at the source or build a wheel; a changed number shows before them.
LEFT_OUT: tuple[str, ...] = ("tests/packaging", "tests/hardening", "tests/test_house.py")
LEFT_OUT += ("tests/packet/test_browser.py",)
LEFT_OUT += ("tests/packet/test_accessible.py", "tests/test_readme.py", "tests/refdata", "tests/book")
# They ask thousands of lines each, which take minutes; what they see others see by a line.
LEFT_OUT += ("tests/cli/test_on_a_screen.py", "tests/laws/test_one_screen.py", "tests/laws/test_opposites.py")
LEFT_OUT += ("tests/ask/test_nothing_dropped.py", "tests/ask/test_any_order.py", "tests/ask/test_reading.py")
LEFT_OUT += ("tests/ask/test_beside.py", "tests/plain/test_leaving.py", "tests/tables/test_sabotage.py")
SECONDS = 40.0  # of tests, as they were timed, that judge one change at first
LAWS = ("tests/laws", "tests/published")
QUESTIONS = ("tests/ask", "tests/plain")  # of the topics, whose slots and weights stand outside of all functions

COMPARED = {
    ast.Lt: ("<", "<="),
    ast.LtE: ("<=", "<"),
    ast.Gt: (">", ">="),
    ast.GtE: (">=", ">"),
    ast.Eq: ("==", "!="),
    ast.NotEq: ("!=", "=="),
    ast.Is: ("is", "is not"),
    ast.IsNot: ("is not", "is"),
    ast.In: ("in", "not in"),
    ast.NotIn: ("not in", "in"),
}
WORKED = {
    ast.Add: ("+", "-"),
    ast.Sub: ("-", "+"),
    ast.Mult: ("*", "/"),
    ast.Div: ("/", "*"),
    ast.Pow: ("**", "*"),
    ast.And: ("and", "or"),
    ast.Or: ("or", "and"),
}


class Change:
    """One line changed: from column ``start`` to ``end`` stands ``new``; ``function`` is the first line of its own."""

    def __init__(self, file: str, line: int, start: int, end: int, new: str, kind: str, function: int) -> None:
        self.file, self.line, self.start, self.end = file, line, start, end
        self.new, self.kind, self.function = new, kind, function

    def applied(self, text: str) -> str:
        """The text of the file with the change in it."""
        lines = text.splitlines(keepends=True)
        raw = lines[self.line - 1].encode()
        lines[self.line - 1] = (raw[: self.start] + self.new.encode() + raw[self.end :]).decode()
        return "".join(lines)

    def compiles(self) -> bool:
        """Whether it is still a program."""
        try:
            compile(self.applied((SOURCE / self.file).read_text(encoding="utf-8")), self.file, "exec")
        except SyntaxError:
            return False
        return True


def changes_of(path: Path, name: str) -> Iterator[Change]:
    """Every change of one file, in its order."""
    text = path.read_text(encoding="utf-8")
    lines = text.splitlines()
    for node, function in _walk(ast.parse(text), 0):
        for line, start, end, new, kind in _of(node, lines):
            yield Change(name, line, start, end, new, kind, function)


def _walk(node: ast.AST, function: int) -> Iterator[tuple[ast.AST, int]]:
    """The nodes that run, each with the first line of the function it stands in (0 outside of all)."""
    if isinstance(node, ast.FunctionDef):
        function = min([node.lineno, *(d.lineno for d in node.decorator_list)])
    yield node, function
    for field, value in ast.iter_fields(node):
        if field in ("annotation", "returns", "decorator_list", "bases"):
            continue
        for child in value if isinstance(value, list) else [value]:
            if isinstance(child, ast.AST) and not _stands_still(child):
                yield from _walk(child, function)


def _stands_still(node: ast.AST) -> bool:
    """What does not run: types, texts that document, lists of slots, refusals, whose words other tests hold, and that a
    zip is strict, which guards what cannot be.
    """
    if isinstance(node, ast.keyword) and node.arg == "strict":
        return True
    if isinstance(node, ast.If) and isinstance(node.test, ast.Name) and node.test.id == "TYPE_CHECKING":
        return True
    if isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
        return node.targets[0].id in ("TYPE_CHECKING", "__slots__")
    is_text = isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
    return is_text or isinstance(node, ast.Raise | ast.Import | ast.ImportFrom)


def _of(node: ast.AST, lines: list[str]) -> Iterator[tuple[int, int, int, str, str]]:
    line = getattr(node, "lineno", 0)
    if not line or node.end_lineno != line:  # type: ignore[attr-defined]
        return
    start, end = node.col_offset, node.end_col_offset  # type: ignore[attr-defined]
    if isinstance(node, ast.Compare):
        for left, op, right in zip([node.left, *node.comparators], node.ops, node.comparators, strict=False):
            yield from _sign(lines, line, left, right, COMPARED[type(op)], "comparison")
    elif isinstance(node, ast.BinOp) and type(node.op) in WORKED:
        yield from _sign(lines, line, node.left, node.right, WORKED[type(node.op)], "operator")
    elif isinstance(node, ast.BoolOp):
        for left, right in zip(node.values, node.values[1:], strict=False):
            yield from _sign(lines, line, left, right, WORKED[type(node.op)], "boolean")
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.Not | ast.USub):
        yield line, start, node.operand.col_offset, "", "boolean" if isinstance(node.op, ast.Not) else "operator"
    elif isinstance(node, ast.Constant) and isinstance(node.value, bool):
        yield line, start, end, str(not node.value), "boolean"
    elif isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        yield line, start, end, repr(node.value + 1 if node.value < 10 else node.value * 1.01), "constant"
    elif isinstance(node, ast.Return) and node.value is not None and not _is_none(node.value):
        yield line, start, end, "return None", "return"
    elif isinstance(node, ast.Expr) and isinstance(node.value, ast.Call):
        yield line, start, end, "pass", "call"


def _is_none(node: ast.AST) -> bool:
    return isinstance(node, ast.Constant) and node.value is None


def _sign(
    lines: list[str], line: int, left: ast.expr, right: ast.expr, signs: tuple[str, str], kind: str
) -> Iterator[tuple[int, int, int, str, str]]:
    """Where the sign between two parts stands, and the other one."""
    if left.end_lineno != line or right.lineno != line:
        return
    at = left.end_col_offset or 0
    between = lines[line - 1].encode()[at : right.col_offset].decode()
    if signs[0] in between:
        start = at + between.index(signs[0])
        yield line, start, start + len(signs[0]), signs[1], kind


class Noting:
    """Notes for each test that passes how long it takes and which functions of the program it calls."""

    def __init__(self, source: Path) -> None:
        self.source = f"{source}{os.sep}"
        self.took: dict[str, float] = {}
        self.calls: dict[str, list[str]] = {}
        self.failed: set[str] = set()

    @pytest.hookimpl(hookwrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        """Watch one test."""
        watch = cProfile.Profile(builtins=False, subcalls=False)
        start = time.process_time()
        watch.enable()
        yield
        watch.disable()
        took = time.process_time() - start
        seen = {e.code for e in watch.getstats() if not isinstance(e.code, str)}
        self.took[item.nodeid] = took
        for code in seen:
            if code.co_filename.startswith(self.source):
                function = f"{_short(code.co_filename, self.source)}:{code.co_firstlineno}"
                self.calls.setdefault(function, []).append(item.nodeid)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """A test that fails without a change cannot judge one."""
        if report.failed:
            self.failed.add(report.nodeid)

    def kept(self) -> str:
        """As JSON: the seconds of each test that passed, and of each function the places of the tests that call it."""
        took = {k: v for k, v in self.took.items() if k not in self.failed}
        at = {k: n for n, k in enumerate(took)}
        calls = {f: sorted({at[k] for k in names if k in at}) for f, names in self.calls.items()}
        return json.dumps({"took": took, "calls": calls})


class Notes:
    """How long each test takes, and which tests call a function."""

    def __init__(self, text: str) -> None:
        read = json.loads(text)
        self.took: dict[str, float] = read["took"]
        names = list(self.took)
        self.calls = {f: [names[n] for n in called] for f, called in read["calls"].items()}


def _short(path: str, source: str) -> str:
    return path.removeprefix(source).replace(os.sep, "/")


class Chosen:
    """Runs the named tests alone, in their order."""

    def __init__(self, names: list[str]) -> None:
        self.order = {name: n for n, name in enumerate(names)}

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Keep what was named."""
        items[:] = sorted((i for i in items if i.nodeid in self.order), key=lambda i: self.order[i.nodeid])


def in_child(tree: Path, arguments: list[str], plugins: list[object], seconds: float, told: Path | None = None) -> int:
    """Run tests in a forked process of its own; its exit code, 99 when it took too long."""
    child = os.fork()
    if child == 0:
        os.setsid()
        os.chdir(tree)
        quiet = os.open(os.devnull if told is None else told, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o644)
        os.dup2(quiet, 1)
        os.dup2(quiet, 2)
        beside = str(Path(__file__).resolve().parent)  # a script there may have the name of a folder of tests
        sys.path[:] = [str(tree / "src"), str(tree / "tests"), *(p for p in sys.path if p != beside)]
        code = 98
        try:
            code = int(pytest.main(["-q", "-p", "no:cacheprovider", *arguments], plugins=plugins))
            for plugin in plugins:
                if isinstance(plugin, Noting):
                    (tree / "notes.json").write_text(plugin.kept(), encoding="utf-8")
        finally:
            os._exit(code)
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            return os.waitstatus_to_exitcode(status)
        time.sleep(0.02)
    os.killpg(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return 99


def copied(tree: Path) -> None:
    """The checkout, its modules compiled so that a changed file is seen by its contents."""
    for name in COPIED:
        at = ROOT / name
        if at.is_dir():
            shutil.copytree(at, tree / name, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(at, tree / name)
    mode = py_compile.PycInvalidationMode.CHECKED_HASH
    compileall.compile_dir(tree / "src", quiet=1, invalidation_mode=mode)


def judged(change: Change, tree: Path, notes: Notes) -> tuple[bool, str]:
    """Whether a test notices a change, and how: first by the tests of its function, then of its room and the laws."""
    took = notes.took
    near = sorted(notes.calls.get(f"{change.file}:{change.function}", []), key=took.__getitem__)
    room = change.file.split("/")[0].removesuffix(".py")
    homes = (f"tests/{room}", f"tests/test_{room}.py", f"src/gaugeblock/{change.file}", *LAWS)
    homes += QUESTIONS if "ask" in change.file else ()
    apart = set(near)
    far = [t for t in took if t.startswith(homes) and t not in apart] if not near or change.function == 0 else []
    first, spent = [], 0.0
    for test in near:
        spent += took[test]
        if spent > SECONDS and first:
            break
        first.append(test)
    rest = [*near[len(first) :][:400], *far]
    for names in (first, rest):
        if not names:
            continue
        files = list(dict.fromkeys(n.split("::")[0] for n in names))
        likely = sum(took[n] for n in names)
        code = in_child(tree, ["-x", *files], [Chosen(names)], 90 + 6 * likely)
        if code not in (0, 5):
            return True, {1: "noticed", 99: "too long"}.get(code, f"ended with {code}")
    return False, f"{len(first) + len(rest)} tests pass" if near or far else "no test calls it"


def main() -> int:
    """Draw changes, judge each, print those that nobody notices."""
    parser = argparse.ArgumentParser(prog="scripts/mutate", description=__doc__)
    parser.add_argument("--count", type=int, default=300, help="how many changes (default 300)")
    parser.add_argument("--skip", type=int, default=0, help="leave out the first of the drawn ones")
    parser.add_argument("--seed", type=int, default=1, help="which sample (default 1)")
    parser.add_argument("--notes", type=Path, help="a file that keeps which test calls what, made when it is missing")
    parser.add_argument("--minutes", type=float, default=1e9, help="stop after these")
    parser.add_argument("rooms", nargs="*", default=ROOMS, help="files and folders of the package")
    a = parser.parse_args()
    files = [
        p for r in a.rooms for p in ([SOURCE / r] if (SOURCE / r).is_file() else sorted((SOURCE / r).rglob("*.py")))
    ]
    every = [c for p in files for c in changes_of(p, p.relative_to(SOURCE).as_posix())]
    random.Random(a.seed).shuffle(every)
    drawn = list(itertools.islice(filter(Change.compiles, every), a.count))
    with tempfile.TemporaryDirectory() as folder:
        tree = Path(folder).resolve() / "copy"
        tree.mkdir()
        copied(tree)
        notes = a.notes if a.notes is not None else tree / "kept.json"
        if not notes.is_file():
            out = [f"--ignore={name}" for name in LEFT_OUT]
            in_child(tree, [*out, "tests", "src"], [Noting(tree / "src" / "gaugeblock")], 7200, tree / "told.txt")
            shutil.copy(tree / "notes.json", notes)
        noted = Notes(notes.read_text(encoding="utf-8"))
        if not noted.took:
            print(f"the tests cannot be run: {(tree / 'told.txt').read_text(encoding='utf-8')[-600:]}", file=sys.stderr)
            return 2
        print(f"{len(every)} changes can be made; seed {a.seed}; {len(noted.took)} tests", flush=True)
        _run(drawn, a.skip, time.monotonic() + 60 * a.minutes, tree, noted)
    return 0


def _run(drawn: list[Change], skip: int, end: float, tree: Path, notes: Notes) -> None:
    seen = survived = 0
    for number, change in enumerate(drawn, 1):
        if number <= skip or time.monotonic() > end:
            continue
        at = tree / "src" / "gaugeblock" / change.file
        whole = at.read_text(encoding="utf-8")
        at.write_text(change.applied(whole), encoding="utf-8")
        start = time.monotonic()
        try:
            noticed, how = judged(change, tree, notes)
        finally:
            at.write_text(whole, encoding="utf-8")
        seen += 1
        survived += not noticed
        line = change.applied(whole).splitlines()[change.line - 1].strip()
        mark = "" if noticed else "SURVIVED "
        took = time.monotonic() - start
        print(f"{number:4} {mark}{change.file}:{change.line} {change.kind}: {line} ({how}, {took:.0f} s)", flush=True)
    share = f", {(seen - survived) / seen:.1%} noticed" if seen else ""
    print(f"{seen} changes, {survived} that nobody noticed{share}")


if __name__ == "__main__":
    sys.exit(main())
