"""The command line: which command runs what, and how it ends.

Exit 0 done; 1 done, and a check is not ok; 2 refused: standard output empty, one message on standard error; 3 a fault
of the program itself; 130 stopped by hand. What a command says is kept until it has ended, and written at once.
"""

from __future__ import annotations

import io
import os
import sys

from gaugeblock.errors import GaugeblockError, InputError, hidden, visible

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from typing import Any

# Commands over all domains, after those of each domain.
GENERAL = {
    "ask": "any question in plain words",
    "find": "all words, over every table and rule",
    "new": "a commented starter of a job file",
    "packet": "the spec packet of a job, to print and sign",
    "audit": "what is published, from memory, habit; what disagrees",
    "compare": "what changed between two data releases",
    "sources": "the publications behind the tables",
    "export": "the tables for other programs: SQLite, Parquet, Data Package",
    "book": "the program as a page for a phone, shown in a browser",
    "validate": "every rule over every table",
    "completion": "a script for bash, zsh or fish that completes commands",
}
# What has been done when a command of these ends, whether it can still be told or not.
_DONE = {
    "packet": "the packet is written",
    "new": "the job file is written",
    "export": "the file is written",
}
STOPPED = 130


def _about() -> dict[str, str]:
    """Command -> one line about it."""
    from gaugeblock import domains

    return {"ask": GENERAL["ask"], **{name: about for name, (_, _, about) in domains.commands().items()}, **GENERAL}


def _overview() -> str:
    from gaugeblock.answer.text import width, wrap
    from gaugeblock.tables.load import refdata

    lines = [
        *wrap("gaugeblock: figures for building a vehicle, each with its source.", 0, 2, wide=width()),
        f"Data release {refdata().release}.",
        "",
    ]
    wide = width()
    lines += [part for name, about in _about().items() for part in wrap(about, 0, 13, f"  {name:<10} ", wide=wide)]
    ways = {
        "gaugeblock": "alone, at a terminal: a line to ask in",
        "gaugeblock COMMAND --help": "options and a worked example",
        "gaugeblock 3/8 grade 8": "words that begin with no command are a question",
    }
    end = [part for way, about in ways.items() for part in wrap(about, 0, 30, f"  {way:<27} ", wide=wide)]
    return "\n".join([*lines, "", *end])


def _version() -> str:
    from gaugeblock import __version__
    from gaugeblock.tables.load import refdata

    data = refdata()
    return f"gaugeblock {__version__}, data release {data.release}{' (draft)' if data.is_draft else ''}"


def _run(name: str, argv: list[str]) -> int:
    """Run one command. One that works on a job is given the reader, which knows the tables of all domains."""
    if name == "ask":
        from gaugeblock.plain.command import ask

        return ask(argv)
    if name == "completion":
        return _completion(argv)
    if name in GENERAL:
        from gaugeblock import commands

        return int(getattr(commands, name)(argv))
    from gaugeblock import domains

    wing, module, _ = domains.commands()[name]
    run = getattr(wing.module(module), name)
    return int(run(argv, domains.read_job) if name in wing.job_commands else run(argv))


def _command(argv: list[str]) -> int:
    """Run what was typed; its exit code."""
    for text in argv:
        _plain(text)
    if not argv:
        raise InputError("(nothing)", "command", "no command was given", list(_about())[:5], "see gaugeblock --help")
    if argv[0] in ("-h", "--help"):
        print(_overview())
        return 0
    if argv == ["--version"]:
        print(_version())
        return 0
    if argv[0] in _about():
        return _said_or_run(argv)
    return _asked(argv)


def _completion(argv: list[str]) -> int:
    """Print the script with which a shell completes commands and options."""
    from gaugeblock.answer.command import parser_of
    from gaugeblock.plain.completion import SHELLS, script

    about = "Commands and their options completed by the tab key, for a shell that reads the script."
    parser = parser_of("completion", about, "gaugeblock completion bash")
    parser.add_argument("shell", metavar="SHELL", help=", ".join(SHELLS))
    a = parser.parse_args(argv)
    print(script(a.shell, _about(), lambda line: _run(line[0], line[1:])), end="")
    return 0


def _said_or_run(argv: list[str]) -> int:
    """Run a command; a line without options that it cannot read may be a question that begins with its name."""
    is_plain = len(argv) > 2 and argv[0] != "ask" and not any(word[:1] == "-" for word in argv)
    try:
        return _run(argv[0], argv[1:])
    except InputError as error:
        if not is_plain or error.where != "command line":
            raise
        return _run("ask", argv)


def _asked(argv: list[str]) -> int:
    """Words that begin with no command are a question; what is none either is told the nearest commands."""
    from difflib import get_close_matches

    near = get_close_matches(argv[0][:60], _about(), n=5, cutoff=0.4)
    try:
        if argv[0][:1] == "-":
            raise InputError(argv[0][:60], "command", "no such command", near, "see gaugeblock --help")
        return _run("ask", argv)
    except InputError as error:
        if len([word for word in argv if word[:1] != "-"]) > 1 or not argv[0].isalpha():
            raise
        do = "see gaugeblock --help, or ask in plain words"
        raise InputError(argv[0][:60], "command", f"no such command; {error.why}", near or list(_about()), do) from None


def _plain(text: str) -> None:
    """InputError for text with marks that cannot be seen, except where a file has such a name."""
    found = hidden(text)
    if found is not None and ("\0" in text or not os.path.lexists(text)):
        why = f"a character that cannot be seen, U+{ord(found[0]):04X}, at character {found.start() + 1}"
        raise InputError(text, "command line", why, (), "type it again without it")


def main(argv: list[str] | None = None) -> int:
    """Run one command; the exit code."""
    argv = sys.argv[1:] if argv is None else argv
    if not argv and sys.stdin is not None and sys.stdin.isatty() and sys.stdout is not None and sys.stdout.isatty():
        from gaugeblock.plain.prompt import talk

        return talk(run=main)
    out, kept = sys.stdout, io.StringIO()
    helped = False
    try:
        if out is None or out.closed:
            why = "it is closed, so that no answer can be printed"
            raise InputError("standard output", "", why, (), "leave it open, or send it to a file")
        sys.stdout = kept
        try:
            code = _command(argv)
        except SystemExit as ended:  # --help ends by itself
            code, helped = int(ended.code or 0), True
        finally:
            sys.stdout = out
        code = _write(out, kept.getvalue(), code, argv)
    except GaugeblockError as error:
        from gaugeblock.answer.refusal import told

        code = _say(error.as_dict(), "" if _wants_json(argv) else told(error), argv, 2)
    except KeyboardInterrupt:
        text = "stopped; files that were being written are whole: the earlier ones or the new ones"
        code = _say(_parts("stopped", "", text, "run it again"), text, argv, STOPPED)
    except OSError as error:
        why = f"the system refuses: {error}"
        code = _say(_parts("output", "files", why, "see to that, and run it again"), f"files: {why}", argv, 2)
    except Exception as error:  # the last net: a traceback helps nobody at the bench
        code = _fault(error, argv)
    if helped:
        raise SystemExit(code)
    return code


def _write(out: Any, text: str, code: int, argv: list[str]) -> int:
    """Write what a command said; the exit code, which stays the command's own where something has been done."""
    try:
        out.write(visible(text, None, keep="\n"))
        out.flush()  # what cannot be written is told here, not by the interpreter as it ends
    except BrokenPipeError:
        return code  # who reads has seen enough
    except (OSError, UnicodeEncodeError) as error:
        done = _DONE.get(argv[0]) if argv else None
        if done is not None:
            why = f"{done}, but what was to be said cannot be printed: {error}"
            return _say(_parts("output", "output", why, "look into the folder"), f"output: {why}", argv, code)
        why, do = f"cannot be written here: {error}", "print to a file that holds UTF-8 and has room"
        return _say(_parts("output", "output", why, do), f"output: {why}; {do}", argv, 2)
    return code


def _parts(code: str, where: str, why: str, do: str) -> dict[str, object]:
    return {"code": code, "asked": "", "where": where, "why": visible(why, 600), "nearest": [], "do": do}


def _wants_json(argv: list[str]) -> bool:
    """Whether ``--json`` stands among the options; what comes after ``--`` is none."""
    return "--json" in (argv[: argv.index("--")] if "--" in argv else argv)


def _say(parts: dict[str, object], text: str, argv: list[str], code: int) -> int:
    """One message on standard error, where there is one; the exit code."""
    if _wants_json(argv):
        import json

        text = json.dumps({"error": parts}, ensure_ascii=False)
    try:
        if sys.stderr is not None and not sys.stderr.closed:
            print(visible(text, None, keep="\n"), file=sys.stderr)
            sys.stderr.flush()
    except (OSError, ValueError):
        pass  # nobody can be told
    return code


def _fault(error: Exception, argv: list[str]) -> int:
    """A fault of the program: told in one line with its place, never as a traceback."""
    at = error.__traceback__
    while at is not None and at.tb_next is not None:
        at = at.tb_next
    name = at.tb_frame.f_code.co_filename.replace(os.sep, "/").rpartition("/gaugeblock/")[2] if at is not None else ""
    place = f"{'/'.join(name.split('/')[-3:])} line {at.tb_lineno}" if at is not None else "unknown"
    why = visible(f"{type(error).__name__}: {error}", 300)
    typed = visible(" ".join(argv), 300)
    do = (
        "this is a fault of the program, and says nothing about the figures asked for; please report this message, and"
        " the job file if there is one"
    )
    parts: dict[str, object] = {"code": "fault", "asked": typed, "where": place, "why": why, "nearest": [], "do": do}
    return _say(parts, f"gaugeblock {typed}: {why} ({place}); {do}", argv, 3)


def entry() -> None:
    """The console script: one command, then the process ends, so collecting cycles or taking objects apart is time
    lost: measured, a sixth of an answer's time and a fifth of a packet's.
    """
    import gc

    gc.disable()
    try:
        code = main()
    except SystemExit as ended:
        code = int(ended.code or 0)
    except KeyboardInterrupt:
        code = STOPPED
    os._exit(code)
