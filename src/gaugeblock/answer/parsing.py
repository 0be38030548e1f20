"""The parser of the standard library that refuses with our own one message: help, and every line that is not plain."""

from __future__ import annotations

import argparse

from gaugeblock.answer.text import width, wrap
from gaugeblock.errors import InputError

TYPE_CHECKING = False  # as beside it
if TYPE_CHECKING:
    from typing import Any, NoReturn

    from gaugeblock.answer.options import Parser


class Refusing(argparse.ArgumentParser):
    """Refuses with our own one message instead of usage and exit."""

    def parse_args(self, args: Any = None, namespace: Any = None) -> Any:
        """As the library's; ``--grade=--`` gives nothing to an option in some editions of it, and a list in others."""
        for text in args or ():
            if text.startswith("--") and text.endswith("=--"):
                self.error(f"argument {text[:-3]}: expected one argument")
        return super().parse_args(args, namespace)

    def error(self, message: str) -> NoReturn:
        """Refuse what cannot be parsed; InputError says what was wrong and where help is."""
        _, is_missing, names = message.partition("the following arguments are required: ")
        if is_missing:
            asked = [self._asked(name) for name in names.split(", ")]
            why = f"not said: {'; '.join(asked)}"
            do = f"say it, or see {self.prog} --help"
            raise InputError(self.prog.removeprefix("gaugeblock "), "command line", why, (), do)
        raise InputError(self.prog.split(" ")[-1], "command line", message, (), f"see {self.prog} --help")

    def _asked(self, name: str) -> str:
        """An option that was not given, and what it is."""
        for action in self._actions:
            if name in (*action.option_strings, action.metavar):
                return f"{name}, {action.help.replace('%%', '%')}" if action.help else name
        return name


def refusing(told: Parser) -> Refusing:
    """The parser of a command's options."""
    parser = Refusing(
        prog=told.prog,
        description="\n".join(wrap(told.about, 0, 0, wide=width())),
        epilog=f"example:\n  {told.example}",
        allow_abbrev=False,
        formatter_class=_help,
    )
    for names, how in told.told:
        parser.add_argument(*names, **how)
    return parser


def _help(prog: str) -> argparse.HelpFormatter:
    return argparse.RawDescriptionHelpFormatter(prog, width=width())
