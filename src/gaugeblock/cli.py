"""The command line: which command runs what, and how it ends.

Exit 0 done; 1 done, and a check is not ok; 2 refused: standard output empty, one message on standard error.
"""

from __future__ import annotations

import sys

from gaugeblock.errors import GaugeblockError, InputError

# The one list that maps commands to what runs them: module under gaugeblock.commands, and one line about it.
COMMANDS = {
    "torque": ("fasteners", "what to tighten a thread to, and the clamp it gives"),
    "part": ("fasteners", "what to tighten a plug, line nut, clamp or wheel nut to"),
    "bend": ("tubes", "does this tube take that bend"),
    "tube": ("tube", "from what a tube must clear to marks on a straight stick"),
    "heat": ("lines", "what a line, hose, fluid or fuel stands"),
    "route": ("lines", "lines past hot parts: cool enough, allowed, held, joined"),
    "steel": ("driveline", "does a shaft of this steel carry that torque"),
    "gauge": ("tubes", "a gauge number as a wall"),
    "pipe": ("tubes", "a nominal pipe size as a diameter"),
    "material": ("tubes", "what a tube's material guarantees"),
    "flare": ("tubes", "a flare: its wall limit, nut and port thread"),
    "hardness": ("driveline", "a hardness on other scales and as strength"),
    "spline": ("driveline", "the sizes of a spline"),
    "setup": ("driveline", "one step of an axle's set-up"),
    "joint": ("driveline", "joint angles: how uneven they drive"),
    "find": ("general", "all words, over every table and rule"),
    "new": ("general", "a commented starter of a job file"),
    "packet": ("general", "the spec packet of a job, to print and sign"),
    "audit": ("general", "what is published, from memory, habit; what disagrees"),
    "sources": ("general", "the publications behind the tables"),
    "validate": ("general", "every rule over every table"),
}


def _overview() -> str:
    from gaugeblock.tables.load import refdata

    lines = ["gaugeblock: figures for building a vehicle, each with its source; data release " + refdata().release, ""]
    lines += [f"  {name:<10} {about}" for name, (_, about) in COMMANDS.items()]
    return "\n".join([*lines, "", "  gaugeblock COMMAND --help   options and a worked example"])


def _run(name: str, argv: list[str]) -> int:
    module = __import__(f"gaugeblock.commands.{COMMANDS[name][0]}", fromlist=[name])
    return int(getattr(module, name)(argv))


def main(argv: list[str] | None = None) -> int:
    """Run one command; the exit code."""
    argv = sys.argv[1:] if argv is None else argv
    try:
        if not argv:
            raise InputError(
                "(nothing)", "command", "no command was given", list(COMMANDS)[:5], "see gaugeblock --help"
            )
        if argv[0] in ("-h", "--help"):
            print(_overview())
            code = 0
        elif argv[0] in COMMANDS:
            code = _run(argv[0], argv[1:])
        else:
            from difflib import get_close_matches

            near = get_close_matches(argv[0], COMMANDS, n=5, cutoff=0.4) or list(COMMANDS)
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
