"""The commands over all domains: ``find``, ``sources``, ``packet``, ``new``, ``audit``, ``validate``."""

from __future__ import annotations

from gaugeblock.answer.command import common_options, parser_of
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Mapping
    from types import SimpleNamespace
    from typing import Any

    from gaugeblock.differences import Difference

# Lines that an answer may fill.
_SCREEN = 15


def find(argv: list[str]) -> int:
    """Run ``gaugeblock find``; the exit code."""
    parser = parser_of("find", "Every table and rule that has all the words.", "gaugeblock find spark plug 14 mm")
    parser.add_argument("text", metavar="TEXT", nargs="+", help="words, all of which must be there")
    parser.add_argument("--list", action="store_true", help="every hit that it keeps, not one screen of them")
    common_options(parser, unit=False)
    a = parser.parse_args(argv)
    from gaugeblock import finding
    from gaugeblock.tables.load import refdata

    data = refdata(a.data_release)
    found = finding.find(" ".join(a.text), data=data, whole=a.list)
    if a.json:
        import json

        print(json.dumps(found.as_dict(), ensure_ascii=False, indent=2))
    else:
        print(found.text(whole=a.list))
    return 0


def sources(argv: list[str]) -> int:
    """Run ``gaugeblock sources``; the exit code."""
    parser = parser_of("sources", "The publications behind the tables.", "gaugeblock sources SHIGLEY9")
    parser.add_argument(
        "words",
        metavar="WORD",
        nargs="*",
        help="only those whose id or title has all the words; an id alone shows its figures and what rests on them",
    )
    parser.add_argument("--list", action="store_true", help="all of it, not one screen")
    common_options(parser, unit=False)
    a = parser.parse_args(argv)
    from gaugeblock import finding
    from gaugeblock.tables.load import refdata

    data = refdata(a.data_release)
    rows: list[dict[str, Any]] = [dict(row) for row in finding.sources(a.words, data=data)]
    named = [row for row in rows if len(a.words) == 1 and row["id"].casefold() == a.words[0].casefold()]
    for row in named:
        from gaugeblock.audit.publication import publication

        row.update(publication(row["id"], data))
    rows = named or rows
    if a.json:
        import json

        print(json.dumps({"data_release": data.release, "sources": rows}, ensure_ascii=False, indent=2))
    else:
        print("\n".join(_sources(rows, a.words, a.list)))
    return 0


def _sources(rows: list[dict[str, Any]], words: list[str], is_whole: bool) -> list[str]:
    """The publications as a person reads them: those that most figures rest on first where they are many."""
    from gaugeblock.answer.text import width, wrap

    wide = width()
    if not rows:
        return wrap(f"No source has all of: {' '.join(words)}.", 0, 2, wide=wide)
    told = []
    for row in rows:
        year = f", {row['year']}" if row["year"] else ""
        note = f"; {row['note']}" if row["note"] else ""
        text = f"{row['id']:<14} {row['title']}{year} ({row['kind']}); {row['rows']} figures{note}"
        told.append(wrap(text, 0, 4, wide=wide))
        if "figures" in row:
            from gaugeblock.audit.publication import lines_of

            lines = [*told[0], *lines_of(row)]
            left = len(lines) - _SCREEN
            if is_whole or left <= 0:
                return lines
            return [*lines[: _SCREEN - 1], *wrap(f"... and {left + 1} lines more: --list", 0, 2, wide=wide)]
    if is_whole or sum(map(len, told)) <= _SCREEN:
        return [line for text in told for line in text]
    order = sorted(range(len(rows)), key=lambda n: -int(rows[n]["rows"]))
    lines = wrap(f"{len(rows)} publications; those that most figures rest on:", 0, 2, wide=wide)
    shown = 0
    for n in order:
        row = rows[n]
        tail = f"; {row['rows']} figures"
        name = f"{row['id']:<14} {row['title']}"
        room = wide - len(tail)
        if len(lines) + 1 >= _SCREEN:
            break
        lines.append((name if len(name) <= room else f"{name[: room - 3].rstrip()}...") + tail)
        shown += 1
    return [*lines, *wrap(f"... and {len(rows) - shown} more: add a word, or --list", 0, 2, wide=wide)]


def packet(argv: list[str]) -> int:
    """Run ``gaugeblock packet``; the exit code."""
    parser = parser_of(
        "packet",
        "The spec packet of a job: packet.md, packet.html, packet.json.",
        "gaugeblock packet JOB.toml --out packets/roadster\n"
        '  gaugeblock packet JOB.toml --out packets/wheels --sheet "wheel nuts"',
    )
    parser.add_argument("job", metavar="JOB.toml", help="the job file (see: gaugeblock new)")
    parser.add_argument(
        "--out", required=True, metavar="DIR", help="folder for the three files; made when its parent exists"
    )
    parser.add_argument("--cards", action="store_true", help="the cards alone, for the wall")
    parser.add_argument("--sheet", metavar="NAME", help="one item alone: its card, its desk sheet and its drawings")
    common_options(parser, unit=False)
    a = parser.parse_args(argv)
    from gaugeblock.packet import make
    from gaugeblock.packet.chosen import Scope

    made = make.make_packet(a.job, a.out, a.data_release, Scope(a.cards, a.sheet))
    if a.json:
        import json

        print(json.dumps(made.summary(), ensure_ascii=False, indent=2))
    else:
        print(made.text())
    return 1 if made.stops else 0


def new(argv: list[str]) -> int:
    """Run ``gaugeblock new``; the exit code."""
    parser = parser_of("new", "A commented starter of a job file.", "gaugeblock new roadster.toml")
    parser.add_argument("job", metavar="JOB.toml", help="the file to write; it must not exist yet")
    a = parser.parse_args(argv)
    from gaugeblock import domains
    from gaugeblock.job.starter import starter

    starter(a.job, domains.tables())
    print(f"{a.job} written; fill it in, then: gaugeblock packet {a.job} --out DIR")
    return 0


def audit(argv: list[str]) -> int:
    """Run ``gaugeblock audit``; the exit code."""
    parser = parser_of(
        "audit",
        "What is published, read, remembered, habit; over the tables or one packet.",
        "gaugeblock audit packets/roadster/packet.json",
    )
    parser.add_argument("packet", metavar="packet.json", nargs="?", help="a packet; without it, the tables")
    parser.add_argument(
        "--fail-on", metavar="KIND", action="append", default=[], help="exit 1 when there is a finding of this kind"
    )
    parser.add_argument("--list", action="store_true", help="every table and every finding, not the summary")
    common_options(parser, unit=False)
    a = parser.parse_args(argv)
    from gaugeblock.audit.kinds import KINDS

    for kind in a.fail_on:
        if kind not in KINDS:
            from gaugeblock.tables.near import nearest

            near = nearest(kind, list(KINDS)) or KINDS
            raise InputError(kind[:60], "--fail-on", "not a kind of finding", near, "use one of these")
    kinds = _audited_tables(a) if a.packet is None else _audited_packet(a)
    return 1 if any(kinds.get(kind) for kind in a.fail_on) else 0


def _audited_tables(a: SimpleNamespace) -> Mapping[str, int]:
    """Print the audit of the tables; how many findings of each kind there are."""
    from gaugeblock.audit import report, tables
    from gaugeblock.tables.load import refdata

    data = refdata(a.data_release)
    if not (a.json or a.list):
        told = tables.tally(data)
        print(report.summary(told))
        kinds: Mapping[str, int] = told["kinds"]
        return kinds
    found = tables.audit_refdata(data)
    if a.json:
        import json

        print(json.dumps(found, ensure_ascii=False, indent=2))
    else:
        print(report.report(found, None))
        print(report.to_read(tables.tally(data)))
    counts: Mapping[str, int] = found["counts"]
    return counts


def _audited_packet(a: SimpleNamespace) -> Mapping[str, int]:
    """Print the audit of a packet and whether it is still good; how many findings of each kind there are."""
    from gaugeblock.answer.text import width, wrap
    from gaugeblock.audit import report
    from gaugeblock.audit.packets import audit_packet
    from gaugeblock.packet import still
    from gaugeblock.packet.record import read_record
    from gaugeblock.tables.load import refdata

    record = read_record(a.packet)
    found = audit_packet(record)
    found["still"] = still.still_good(record, refdata(a.data_release))
    if a.json:
        import json

        print(json.dumps(found, ensure_ascii=False, indent=2))
    else:
        said = still.report(found["still"])
        told = [line for t in said.splitlines() for line in wrap(t.strip(), 2 * (t[:1] == " "), 4, wide=width())]
        print("\n".join([*told, *([""] if told else []), report.report(found, None if a.list else 40)]))
    counts: Mapping[str, int] = found["counts"]
    return counts


def compare(argv: list[str]) -> int:
    """Run ``gaugeblock compare``; the exit code."""
    parser = parser_of(
        "compare", "What changed between two data releases, and why.", "gaugeblock compare 0.6.0 0.7.0 brake fluid"
    )
    parser.add_argument("earlier", metavar="EARLIER", help="a data release: 0.6.0")
    parser.add_argument("later", metavar="LATER", help="a later one: 0.7.0")
    parser.add_argument("words", metavar="WORD", nargs="*", help="only what has all the words")
    parser.add_argument("--all", action="store_true", help="every one, what was added too")
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    a = parser.parse_args(argv)
    from gaugeblock import differences
    from gaugeblock.tables.lines import version_key
    from gaugeblock.tables.load import refdata

    earlier, later = refdata(a.earlier), refdata(a.later)
    if version_key(earlier.release) >= version_key(later.release):
        raise InputError(a.later, "compare", f"not later than {a.earlier}", (), "name the earlier release first")
    found = differences.between(earlier, later)
    if a.words:
        wanted = [word.casefold() for word in a.words]
        found = [d for d in found if all(w in f"{d.table} {d.label} {d.quantity}".casefold() for w in wanted)]
    if a.json:
        import json

        out = {"earlier": a.earlier, "later": a.later, "differences": [d.as_dict() for d in found]}
        print(json.dumps(out, ensure_ascii=False, indent=2))
        return 0
    from gaugeblock.answer.text import width, wrap

    wide = width()
    counts = {
        kind: sum(d.kind == kind for d in found)
        for kind in (differences.CHANGED, differences.CLOSED, differences.ADDED)
    }
    told = ", ".join(f"{n} {kind}" for kind, n in counts.items())
    print("\n".join(wrap(f"From data release {a.earlier} to {a.later}: {told}.", 0, 2, wide=wide)))
    shown = [d for d in found if a.all or a.words or d.kind != differences.ADDED]
    said = [_difference(d, wide) for d in shown]
    room = _SCREEN - 3
    for n, lines in enumerate(said):
        room -= len(lines)
        if room < 0 and not a.all:
            print("\n".join(wrap(f"... and {len(said) - n} more: add a word, or --all", 0, 2, wide=wide)))
            break
        print("\n".join(lines))
    return 0


def _difference(d: Difference, wide: int) -> list[str]:
    """What changed of one figure, from what to what, and why."""
    from gaugeblock.answer.text import wrap

    one = d.as_dict()
    name = ", ".join(part for part in d.label.split(" | ") if part not in ("any", "not stated"))
    lines = wrap(f"{name}: {d.quantity.replace('_', ' ')}", 0, 2, wide=wide)
    lines += wrap(f"{one['before'] or 'none'} -> {one['after'] or 'none'}", 4, 6, wide=wide)
    for what, text in (("why", d.why), ("note", d.note)):
        lines += wrap(f"{what}: {text}", 4, 6, wide=wide) if text else []
    return lines


def validate(argv: list[str]) -> int:
    """Run ``gaugeblock validate``; the exit code."""
    parser = parser_of("validate", "Every rule over every table; all faults at once.", "gaugeblock validate")
    parser.add_argument(
        "folder", metavar="DIR", nargs="?", help="another refdata folder; without it, the program's own"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    a = parser.parse_args(argv)
    from gaugeblock import domains
    from gaugeblock.tables import validate as rules

    checked = domains.check(a.folder)
    if a.json:
        import json

        names = ("file", "line", "column", "rule", "found", "do")
        faults = [dict(zip(names, f.parts, strict=True)) for f in checked.faults]
        print(
            json.dumps(
                {"rows": checked.rows, "tables": checked.tables, "releases": checked.releases, "faults": faults},
                indent=2,
            )
        )
    else:
        print(rules.report(checked))
    return 1 if checked.faults else 0


def book(argv: list[str]) -> int:
    """Run ``gaugeblock book``; the exit code."""
    import contextlib
    import sys

    parser = parser_of(
        "book",
        "The shop book, which scripts/book binds: the program as a page for a phone.",
        "gaugeblock book\n  gaugeblock book --serve",
    )
    parser.add_argument("folder", metavar="DIR", nargs="?", default="book", help="the folder of the book (book)")
    parser.add_argument("--serve", action="store_true", help="show it in a browser of this machine")
    parser.add_argument("--host", default="127.0.0.1", metavar="ADDRESS", help="another address of this machine")
    parser.add_argument("--port", type=int, default=8000, metavar="N", help="the port (8000)")
    a = parser.parse_args(argv)
    from gaugeblock.book import serve

    if not a.serve:
        is_there = serve.is_book(a.folder)
        has = f"{a.folder} holds a shop book. Show it with --serve."
        print(has if is_there else f"No shop book is in {a.folder} yet. Bind one with scripts/book.")
        return 0
    with serve.server(a.folder, a.host, a.port) as running, contextlib.suppress(KeyboardInterrupt):
        host, port = running.server_address[:2]
        # said before it ends, so past what is kept until a command has ended
        print(f"open http://{host!s}:{port}/ and stop with Ctrl-C", file=sys.__stdout__, flush=True)
        running.serve_forever()
    return 0


def export(argv: list[str]) -> int:
    """Run ``gaugeblock export``; the exit code."""
    parser = parser_of(
        "export", "The tables of one data release for other programs.", "gaugeblock export --sqlite figures.sqlite"
    )
    parser.add_argument("--sqlite", metavar="FILE", help="a new SQLite file with every table of the release")
    parser.add_argument(
        "--parquet", metavar="DIR", help="a new folder with a Parquet file for every table (needs gaugeblock[parquet])"
    )
    parser.add_argument("--datapackage", action="store_true", help="print the Data Package descriptor of the tables")
    parser.add_argument("--data-release", metavar="V", help="use the tables of an earlier data release")
    a = parser.parse_args(argv)
    from gaugeblock import exports
    from gaugeblock.tables.load import refdata

    data = refdata(a.data_release)
    if sum((a.sqlite is not None, a.parquet is not None, a.datapackage)) != 1:
        ways = ("--sqlite", "--parquet", "--datapackage")
        raise InputError("export", "command line", "say what is wanted", ways, "name one")
    if a.datapackage:
        import json

        print(json.dumps(exports.descriptor(data), ensure_ascii=False, indent=2))
        return 0
    count = exports.to_sqlite(a.sqlite, data) if a.parquet is None else exports.to_parquet(a.parquet, data)
    print(f"{count} rows of data release {data.release} written to {a.sqlite or a.parquet}.")
    return 0
