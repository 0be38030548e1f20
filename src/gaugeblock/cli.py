"""The command line: which command runs what, and how it ends.

Exit 0 done; 1 done, and a check is not ok; 2 refused: standard output empty, one message on standard error.
"""

from __future__ import annotations

import sys

from gaugeblock import domains
from gaugeblock.errors import GaugeblockError, InputError

# Commands over all domains, after those of each domain.
GENERAL = {
    "find": "all words, over every table and rule",
    "new": "a commented starter of a job file",
    "packet": "the spec packet of a job, to print and sign",
    "audit": "what is published, from memory, habit; what disagrees",
    "sources": "the publications behind the tables",
    "validate": "every rule over every table",
}


def _about() -> dict[str, str]:
    """Command -> one line about it."""
    return {**{name: about for name, (_, _, about) in domains.commands().items()}, **GENERAL}


def _overview() -> str:
    from gaugeblock.tables.load import refdata

    lines = ["gaugeblock: figures for building a vehicle, each with its source; data release " + refdata().release, ""]
    lines += [f"  {name:<10} {about}" for name, about in _about().items()]
    return "\n".join([*lines, "", "  gaugeblock COMMAND --help   options and a worked example"])


def _run(name: str, argv: list[str]) -> int:
    """Run one command. One that works on a job is given the reader, which knows the tables of all domains."""
    if name in GENERAL:
        from gaugeblock import commands

        return int(getattr(commands, name)(argv))
    wing, module, _ = domains.commands()[name]
    run = getattr(wing.module(module), name)
    return int(run(argv, domains.read_job) if name in wing.job_commands else run(argv))


def main(argv: list[str] | None = None) -> int:
    """Run one command; the exit code."""
    argv = sys.argv[1:] if argv is None else argv
    try:
        if not argv:
            raise InputError(
                "(nothing)", "command", "no command was given", list(_about())[:5], "see gaugeblock --help"
            )
        if argv[0] in ("-h", "--help"):
            print(_overview())
            code = 0
        elif argv[0] in _about():
            code = _run(argv[0], argv[1:])
        else:
            from difflib import get_close_matches

            near = get_close_matches(argv[0], _about(), n=5, cutoff=0.4) or list(_about())
            raise InputError(argv[0][:60], "command", "no such command", near, "see gaugeblock --help")
        sys.stdout.flush()  # what cannot be written is told here, not by the interpreter as it ends
        return code
    except GaugeblockError as error:
        if "--json" in argv:
            import json

            print(json.dumps({"error": error.as_dict()}, ensure_ascii=False), file=sys.stderr)
        else:
            print(error, file=sys.stderr)
        return 2
    except BrokenPipeError:
        sys.stderr.close()
        return 0
    except (OSError, UnicodeEncodeError) as error:
        print(f"output: cannot be written here: {error}; print to a file that holds UTF-8", file=sys.stderr)
        return 2


def entry() -> None:
    """The console script: one command, then the process ends, so collecting cycles or taking objects apart is time lost."""
    import gc
    import os

    gc.disable()
    code = main()
    if not sys.stderr.closed:
        sys.stderr.flush()
    os._exit(code)
