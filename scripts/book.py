"""Binds the shop book: Python for the browser, the program with its tables, and the page, as one static folder.

The runtime is one package of npm, fetched at one version and taken only when its bytes have the digest below.
"""

from __future__ import annotations

import argparse
import base64
import gzip
import hashlib
import io
import json
import re
import shutil
import struct
import subprocess
import sys
import tarfile
import tempfile
import zipfile
import zlib
from pathlib import Path

from gaugeblock.book.plain_page import plain_page
from gaugeblock.tables.load import refdata

ROOT = Path(__file__).resolve().parents[1]
PAGE = ROOT / "reports" / "book"
KEPT = ROOT / "build"
VERSION = "314.0.7"
SHA512 = "0YvXxEhfEdpLfb/XkM2BFAeMROq0iMUX2bzzH9pOttyMcWkwq+HbE5uyuGD82LN7y2q+SNvi/6V5JEsOlD2R1A=="
# What the browser runs; the wasm travels packed, because a plain host packs nothing.
RUNTIME = ("pyodide.mjs", "pyodide.asm.mjs", "python_stdlib.zip")
PACKED, LOCK = "pyodide.asm.wasm", "pyodide-lock.json"
# Where the modules stand in the browser: worker.js unpacks the program there.
LIBRARY, SITE = "/lib/python314.zip", "/book"
# A file of the archive has this date, so that the same program gives the same bytes.
DATE = (2026, 1, 1, 0, 0, 0)


def runtime() -> bytes:
    """The package as npm gives it, fetched once and kept; SystemExit when its bytes are not those expected."""
    file = KEPT / f"pyodide-{VERSION}.tgz"
    if not file.exists() or not _is_right(file.read_bytes()):
        npm = shutil.which("npm")
        if npm is None:
            raise SystemExit("npm is needed to fetch Python for the browser; install it and run this again")
        KEPT.mkdir(exist_ok=True)
        with tempfile.TemporaryDirectory() as empty:
            command = [npm, "pack", f"pyodide@{VERSION}", "--silent", f"--pack-destination={KEPT}"]
            subprocess.run(command, check=True, stdout=subprocess.DEVNULL, timeout=300, cwd=empty)
    found = file.read_bytes()
    if not _is_right(found):
        file.unlink()
        raise SystemExit(
            f"pyodide {VERSION} is not the file that was expected: its digest is another; nothing is bound"
        )
    return found


def _is_right(found: bytes) -> bool:
    return base64.b64encode(hashlib.sha512(found).digest()).decode() == SHA512


def unpacked(package: bytes) -> dict[str, bytes]:
    """The files of the runtime that a browser needs, by their names in the book."""
    files = {}
    with tarfile.open(fileobj=io.BytesIO(package)) as tar:
        for name in (*RUNTIME, PACKED, LOCK):
            handle = tar.extractfile(f"package/{name}")
            assert handle is not None
            files[f"runtime/{name}"] = handle.read()
    files[f"runtime/{PACKED}.packed"] = gzip.compress(files.pop(f"runtime/{PACKED}"), 9, mtime=0)
    # The list of what could be loaded from elsewhere is left empty: nothing can be.
    lock = json.loads(files[f"runtime/{LOCK}"])
    files[f"runtime/{LOCK}"] = json.dumps({**lock, "packages": {}}, sort_keys=True).encode()
    return files


# Modules of Python that neither the runtime nor the program has a use for on a phone.
UNUSED = (
    *("_pyrepl", "doctest", "imaplib", "mailbox", "pdb", "poplib", "smtplib", "unittest", "wsgiref", "xmlrpc"),
    *("ftplib", "multiprocessing", "optparse", "pickletools"),
)
# Of its encodings those of single countries and of old machines, but the one that an archive's names may have.
CODE_PAGES = re.compile(
    r"encodings/(?:cp(?!437|125[02])|mac_|iso8859_(?!1\.)|koi8|kz1048|ptcp154|hp_roman8|tis_620|palmos)"
)


def without_unused(library: bytes) -> bytes:
    """Python's own modules but for those that nothing here uses."""
    with zipfile.ZipFile(io.BytesIO(library)) as archive:
        kept = [n for n in archive.namelist() if not n.endswith("/")]
        kept = [n for n in kept if n.partition("/")[0].partition(".")[0] not in UNUSED and not CODE_PAGES.match(n)]
        return zipped({name: archive.read(name) for name in kept})


# What only checks or closes the tables has no use on a phone.
LEFT_OUT = {
    f"gaugeblock/{n}.py" for n in ("closing", "tables/schema", "tables/validate", "plain/completion", "book/serve")
}


def program() -> bytes:
    """The program and its tables as one archive."""
    source = ROOT / "src" / "gaugeblock"
    inside = {
        f"gaugeblock/{p.relative_to(source)}": p for p in source.rglob("*") if p.suffix in (".py", ".csv", ".txt")
    }
    inside = {n: p for n, p in inside.items() if n not in LEFT_OUT}
    tables = ROOT / "refdata"
    inside |= {f"gaugeblock/_refdata/{p.relative_to(tables)}": p for p in tables.rglob("*") if p.is_file()}
    return zipped({name: path.read_bytes() for name, path in inside.items()})


def zipped(files: dict[str, bytes]) -> bytes:
    """An archive, the same bytes for the same files."""
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as archive:
        for name, content in sorted(files.items()):
            archive.writestr(zipfile.ZipInfo(name, DATE), content, zipfile.ZIP_DEFLATED, 9)
    return held.getvalue()


def compiled(package: bytes, archives: dict[str, tuple[bytes, str]]) -> dict[str, bytes]:
    """Archives with their modules compiled for the browser's Python, which stand in the folder named beside each.

    What was compiled is kept in build/. Without a node that runs the package they are left as text, and it is said.
    """
    script = Path(__file__).with_name("compiled.mjs")
    digest = hashlib.sha256(package + script.read_bytes())
    ready: dict[str, bytes] = {}
    kept: dict[str, Path] = {}
    for name, (held, _) in archives.items():
        own = digest.copy()
        own.update(held)
        kept[name] = KEPT / f"{own.hexdigest()[:24]}.zip"
        if kept[name].exists():
            ready[name] = kept[name].read_bytes()
    with tempfile.TemporaryDirectory() as at:
        left = {n: (Path(at, f"{i}.zip"), *a) for i, (n, a) in enumerate(archives.items()) if n not in ready}
        if left:
            with tarfile.open(fileobj=io.BytesIO(package)) as tar:
                tar.extractall(at, filter="data")
            for file, held, _ in left.values():
                file.write_bytes(held)
            command = ["node", str(script), str(Path(at, "package"))]
            command += [f"{file}={folder}" for file, _, folder in left.values()]
            try:
                subprocess.run(command, capture_output=True, text=True, timeout=600, check=True)
            except (OSError, subprocess.SubprocessError) as error:
                why = str(getattr(error, "stderr", None) or error).strip()[-300:]
                print(f"modules are left as text, so the book starts slower: {why}")
                return {name: held for name, (held, _) in archives.items()}
        for name, (file, _, _) in left.items():
            with zipfile.ZipFile(file) as archive:
                ready[name] = zipped({n: archive.read(n) for n in archive.namelist()})
            kept[name].write_bytes(ready[name])
    return ready


def picture(size: int, margin: float) -> bytes:
    """The sign of the book as a PNG: three gauge blocks in a pile and one to be pressed, ``margin`` of it left free."""
    bars = ((120, 176, 255, 255, 255), (196, 282, 255, 255, 255), (302, 322, 255, 255, 255), (342, 392, 255, 207, 26))
    inner = size * (1 - 2 * margin)
    left, right = (size * margin + inner * x / 512 for x in (96, 416))
    rows = []
    for y in range(size):
        at = (y - size * margin) / inner * 512
        colour = next((bytes(c) for top, bottom, *c in bars if top <= at < bottom), b"\0\0\0")
        row = b"".join(colour if left <= x < right else b"\0\0\0" for x in range(size))
        rows.append(b"\0" + row)
    head = struct.pack(">IIBBBBB", size, size, 8, 2, 0, 0, 0)
    parts = ((b"IHDR", head), (b"IDAT", zlib.compress(b"".join(rows), 9)), (b"IEND", b""))
    made = [struct.pack(">I", len(d)) + k + d + struct.pack(">I", zlib.crc32(k + d)) for k, d in parts]
    return b"\x89PNG\r\n\x1a\n" + b"".join(made)


def bound() -> dict[str, bytes]:
    """Every file of the book."""
    package = runtime()
    files = unpacked(package)
    modules = "runtime/python_stdlib.zip"
    files[modules] = without_unused(files[modules])
    files |= compiled(package, {modules: (files[modules], LIBRARY), "program.zip": (program(), SITE)})
    files |= {p.name: p.read_bytes() for p in PAGE.iterdir() if p.is_file() and p.name != "sw.js"}
    files["tables.html"] = plain_page(refdata()).encode()
    files["icon.png"] = picture(512, 0.0)
    files["icon-mask.png"] = picture(512, 0.12)
    edition = hashlib.sha256(b"".join(hashlib.sha256(files[n]).digest() for n in sorted(files))).hexdigest()[:16]
    # The plain tables are for a phone that cannot run the program: who needs them fetches them.
    listed = json.dumps(["./", *sorted(files.keys() - {"tables.html"})])
    worker = (PAGE / "sw.js").read_text(encoding="utf-8")
    files["sw.js"] = worker.replace("@EDITION@", edition).replace("@FILES@", listed).encode()
    return files


def main() -> None:
    """Bind the book into a folder, all or nothing."""
    parser = argparse.ArgumentParser(description="Binds the shop book into a static folder.")
    parser.add_argument("--out", default=str(ROOT / "book"), metavar="DIR", help="the folder, made anew (book)")
    folder = Path(parser.parse_args().out)
    if folder.exists() and not (folder / "sw.js").exists() and any(folder.iterdir()):
        raise SystemExit(f"{folder} holds something else; name another folder with --out")
    files = bound()
    fresh = folder.with_name(f"{folder.name}.new")
    shutil.rmtree(fresh, ignore_errors=True)
    for name, content in files.items():
        path = fresh / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    shutil.rmtree(folder, ignore_errors=True)
    fresh.rename(folder)
    size = sum(map(len, files.values()))
    print(f"{folder}: {len(files)} files, {size / 1e6:.1f} MB")
    print("see it here:  .venv/bin/gaugeblock book --serve")
    print("put it up:    copy the folder to any static host; over https it is kept on the phone and needs no network")


if __name__ == "__main__":
    sys.exit(main())
