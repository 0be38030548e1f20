"""The line to ask in: what ``gaugeblock`` alone opens at a terminal."""

from __future__ import annotations

import contextlib
import os

from gaugeblock.answer.command import print_sheet, print_table
from gaugeblock.answer.refusal import told
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import Table
from gaugeblock.errors import GaugeblockError
from gaugeblock.plain.answer import Answer, answer_to, read_or_converted
from gaugeblock.plain.command import print_conversion
from gaugeblock.plain.reading import Reading
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

HELP = """\
Ask as you would say it: 3/8 grade 8        how it was read stands first, then the answer
  why                                       everything behind the last answer
  again in N*m                              the last answer in another unit
  compare condition                         the last question for every usual value of a key
  to packet build.toml                      put it into a job file
  quit"""
_END = ("quit", "exit", "q", "bye")
_HISTORY = 500


class Prompt:
    """A conversation: one line in, one answer out; the last question and its answer are kept."""

    def __init__(self, data: Refdata | None = None) -> None:
        self.data = data or refdata()
        self.reading: Reading | None = None
        self.answer: Answer | None = None

    def take(self, line: str) -> bool:
        """Answer one line; False when it ends the conversation."""
        text = " ".join(line.split())
        if text.casefold() in _END:
            return False
        if not text:
            return True
        try:
            self._take(text)
        except GaugeblockError as error:
            print(told(error))
        return True

    def _take(self, text: str) -> None:
        word, _, rest = text.partition(" ")
        word = word.casefold()
        if text.casefold() in ("help", "?"):
            print(HELP)
        elif text.casefold() in ("why", "why?"):
            self._show(why=True)
        elif word == "again" and rest.casefold().startswith("in "):
            self._show(unit=rest[3:].strip())
        elif word == "compare" and rest and self.reading is not None:
            found = answer_to(self.reading, rest.strip().replace(" ", "_"), self.data)
            print_table(found.found, False, None, found.read_as) if isinstance(found.found, Table) else None
        elif text.casefold().startswith("to packet ") and self.reading is not None:
            from gaugeblock.plain.keep import keep

            path = text[len("to packet ") :].strip()
            print(f'Added to {path} as "{keep(self.reading, path, self.data)}".')
        else:
            read_as = read_or_converted(text, self.data)
            if not isinstance(read_as, Reading):
                print_conversion(read_as, False, "a conversion")
                return
            self.reading = read_as
            self.answer = answer_to(self.reading, None, self.data)
            self._show()

    def _show(self, why: bool = False, unit: str | None = None) -> None:
        if self.answer is None:
            print("Nothing was asked yet.")
        elif isinstance(self.answer.found, Table):
            print_table(self.answer.found, False, unit, self.answer.read_as, why)
        elif isinstance(self.answer.found, Sheet):
            print_sheet(self.answer.found, False, unit, why, self.answer.read_as)


def talk(ask: Callable[[str], str] = input) -> int:
    """Ask and answer until the line ends; the exit code."""
    prompt = Prompt()
    with _edited(prompt):
        print(HELP)
        while True:
            try:
                line = ask("\n> ")
            except EOFError:
                return 0
            except KeyboardInterrupt:
                print()
                continue
            if not prompt.take(line):
                return 0


@contextlib.contextmanager
def _edited(prompt: Prompt):  # type: ignore[no-untyped-def]
    """History and completion where the system has them; a line is read without them too."""
    try:
        import readline
    except ImportError:
        yield
        return
    path = _history()
    with contextlib.suppress(OSError):
        readline.read_history_file(path)
    readline.set_history_length(_HISTORY)
    readline.set_completer(_completer(prompt))
    readline.set_completer_delims(" ")
    readline.parse_and_bind("tab: complete")
    try:
        yield
    finally:
        with contextlib.suppress(OSError):
            os.makedirs(os.path.dirname(path), mode=0o700, exist_ok=True)
            readline.write_history_file(path)


def _completer(prompt: Prompt) -> Callable[[str, int], str | None]:
    """Every word that a topic knows, in order; found when it is first asked for."""
    known: list[str] = []

    def complete(text: str, state: int) -> str | None:
        if not known:
            from gaugeblock import domains

            topics = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
            known.extend(sorted({w for t in topics for w in t.vocabulary(prompt.data)} | {"why", "again", "compare"}))
        fits = [w for w in known if w.startswith(text.casefold())]
        return fits[state] + " " if state < len(fits) else None

    return complete


def _history() -> str:
    home = os.environ.get("XDG_STATE_HOME") or os.path.join(os.path.expanduser("~"), ".local", "state")
    return os.path.join(home, "gaugeblock", "asked")
