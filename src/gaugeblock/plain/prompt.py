"""The line to ask in: what ``gaugeblock`` alone opens at a terminal."""

from __future__ import annotations

import contextlib
import os

from gaugeblock.answer.command import print_table
from gaugeblock.answer.opening import spoken
from gaugeblock.answer.refusal import told
from gaugeblock.answer.sheet import Sheet
from gaugeblock.answer.table import Table
from gaugeblock.answer.text import fitted
from gaugeblock.errors import GaugeblockError
from gaugeblock.found import Found
from gaugeblock.plain.answer import answer_or_rules, read_or_answered
from gaugeblock.plain.command import print_answer_of
from gaugeblock.plain.given import Answer
from gaugeblock.plain.reading import Reading
from gaugeblock.plain.understand import answer_to
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable

HELP = """\
Ask as you would say it: 3/8 grade 8    How it was read stands first.
  why                     everything behind the last answer
  again in N*m            the last answer in another unit
  same but oiled          the last question with that in place of what it had
  compare condition       the last question for every usual value of a key
  find spark plug         all words, over every table and rule
  to packet build.toml    put it into a job file
  quit"""
_END = ("quit", "exit", "q", "bye")
_HISTORY = 500


class Prompt:
    """A conversation: one line in, one answer out; the last question and its answer are kept."""

    def __init__(self, data: Refdata | None = None, run: Callable[[list[str]], int] | None = None) -> None:
        """``run`` runs a command line, for those who type one here."""
        self.data = data or refdata()
        self._run = run
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
        elif word == "again" or (word == "in" and self.answer is not None and " " not in rest):
            self._again(rest if word == "again" else text)
        elif word == "compare":
            self._compare(rest.strip())
        elif text.casefold() == "to packet" or text.casefold().startswith("to packet "):
            self._keep(text[len("to packet") :].strip())
        elif self._run is not None and (word in ("find", "sources") or " --" in text):
            self._command(text)
        else:
            self._ask(text)

    def _ask(self, text: str) -> None:
        """Answer a question. Rules, rows and conversions have no more to show: the answer before them is kept."""
        read_as = self._followed(text) or read_or_answered(text, self.data)
        found = read_as if isinstance(read_as, Answer) else answer_or_rules(text, read_as, self.data)
        if isinstance(read_as, Answer) or isinstance(found.found, Found):
            print_answer_of(found)
            return
        self.reading, self.answer = read_as, found
        self._show()

    def _followed(self, text: str) -> Reading | None:
        """The last question with what this line puts in place of it; None for a line that is a question itself."""
        from gaugeblock.plain.follow import followed
        from gaugeblock.plain.words import words_of

        return None if self.reading is None else followed(words_of(text), self.reading, self.data)

    def _again(self, rest: str) -> None:
        """The last answer in another unit."""
        unit = rest.split(" ", 1)[1].strip() if rest.casefold().startswith("in ") else ""
        if not unit and self.answer is not None:
            print("In which unit? again in N*m")
            return
        self._show(unit=unit)

    def _compare(self, key: str) -> None:
        """The last question for every usual value of one of its keys."""
        if self.reading is None:
            print("Nothing was asked yet.")
        elif not key:
            keys = ", ".join(spoken(k) for k in self.reading.topic.slots)
            print("\n".join(fitted(f"Compare what? Of a {self.reading.topic.noun}: {keys}.", 0, 2)))
        else:
            found = answer_to(self.reading, key, self.data)
            print_table(found.found, False, None, found.read_as) if isinstance(found.found, Table) else None

    def _keep(self, path: str) -> None:
        """Put the last question into a job file."""
        if self.reading is None:
            print("Nothing was asked yet.")
        elif not path:
            print("Into which job file? to packet build.toml")
        else:
            from gaugeblock.plain.keep import keep

            print(f'Added to {path} as "{keep(self.reading, path, self.data)}".')

    def _command(self, text: str) -> None:
        """A command line, for those who type one here."""
        from shlex import split

        try:
            argv = split(text)
        except ValueError:
            argv = text.split()
        if self._run is not None:
            self._run(argv)

    def _show(self, why: bool = False, unit: str | None = None) -> None:
        unit = unit or (self.answer.unit if self.answer is not None else "") or None
        if self.answer is None:
            print("Nothing was asked yet.")
        else:
            print_answer_of(self.answer, False, unit, why)


def talk(ask: Callable[[str], str] = input, run: Callable[[list[str]], int] | None = None) -> int:
    """Ask and answer until the line ends; the exit code."""
    prompt = Prompt(run=run)
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
    readline.set_completer_delims(" =")
    readline.parse_and_bind("tab: complete")
    try:
        yield
    finally:
        with contextlib.suppress(OSError):
            os.makedirs(os.path.dirname(path), mode=0o700, exist_ok=True)
            readline.write_history_file(path)


def _completer(prompt: Prompt) -> Callable[[str, int], str | None]:
    """What the tab key offers, one after another."""

    def complete(text: str, state: int) -> str | None:
        import readline

        known = _next_words(prompt, readline.get_line_buffer().casefold())
        fits = [w for w in known if w.casefold().startswith(text.casefold())]
        return fits[state] + " " if state < len(fits) else None

    return complete


def _next_words(prompt: Prompt, line: str) -> list[str]:
    """What may stand next: the keys of the last question after ``compare``, units after ``again in``, files after
    ``to packet``, else every word that a topic knows; found when it is first asked for.
    """
    if line.startswith("compare ") and prompt.reading is not None:
        return [spoken(k).replace(" ", "_") for k in prompt.reading.topic.slots]
    if line.startswith("again in ") and prompt.answer is not None:
        return _units(prompt.answer)
    if line.startswith("to packet "):
        return sorted(name for name in os.listdir() if name.endswith(".toml"))
    known = prompt.data._memo.get("words to type")
    if known is None:
        from gaugeblock import domains

        topics = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
        words = {w for t in topics for w in t.vocabulary(prompt.data) if _is_typed(w)}
        known = prompt.data._memo["words to type"] = sorted({*words, "why", "again in", "compare", "to packet", "find"})
    return known  # type: ignore[return-value]


def _is_typed(word: str) -> bool:
    """Whether somebody would look for a word by its beginning: not ``grade8.8``, which has a number glued on."""
    return len(word) > 2 and not (word[0].isalpha() and any(mark.isdigit() for mark in word))


def _units(answer: Answer) -> list[str]:
    """The units in which an answer can be shown again."""
    from gaugeblock import units

    found = answer.found
    sheets = [found] if isinstance(found, Sheet) else [n.sheet for n in found.lines] if isinstance(found, Table) else []
    dims = dict.fromkeys(units.dimension(f.unit) for sheet in sheets for f in sheet.decision.figures)
    return [unit for dim in dims for unit in units.spellings(dim)]


def _history() -> str:
    home = os.environ.get("XDG_STATE_HOME") or os.path.join(os.path.expanduser("~"), ".local", "state")
    return os.path.join(home, "gaugeblock", "asked")
