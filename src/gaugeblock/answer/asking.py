"""How a spoken line is read: Readers that take words at a place, and the Topic that a wing offers of each answer.

A line is a tuple of words in lower case. A Reader looks at the words from one place on and says how many it takes and
what they mean; it never guesses: what it does not know it leaves, and the line is refused with what was left.
"""

from __future__ import annotations

import re

from gaugeblock.answer.patterns import compiled, first_letters, has_one, part_for, plain_words
from gaugeblock.answer.phrases import spoken
from gaugeblock.answer.said_units import SAYS, millimetres, value_of

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping
    from typing import Protocol

    from gaugeblock.answer.sheet import Sheet
    from gaugeblock.tables.load import Refdata

    class Reader(Protocol):
        """What takes words at a place of a line."""

        def phrases(self, data: Refdata, /) -> Mapping[str, str]:
            """Every phrase that it knows -> what it means."""

        def choices(self, data: Refdata, /) -> tuple[str, ...]:
            """Every value that it can mean, where there are so many and no more."""

        def take(self, words: tuple[str, ...], at: int, data: Refdata, /) -> Iterable[Hit]:
            """What it takes of the words from this place on."""

    Open = tuple[tuple[str, ...], list[dict[str, str]]]

# A number as people type it, and the end of a word.
NUMBER = r"(?:[0-9][0-9]?[ -][0-9]+/[1-9][0-9]*|[0-9]+/[1-9][0-9]*|[0-9]*\.[0-9]+|[0-9]+)"
END = r"(?=[ ]|$)"
_UNKNOWN = frozenset(["?"])  # not looked at
_LONGEST = 8
_MOST_DIGITS = 3  # of a length without a unit


class Hit:
    """Words that a Reader took: how many, the text for the answer, how a person is told, and how sure (0 is surest)."""

    __slots__ = ("count", "doubt", "said", "value")

    def __init__(self, count: int, value: str, said: str = "", doubt: int = 0) -> None:
        self.count = count
        self.value = value
        self.said = said or value
        self.doubt = doubt


class Named:
    """A word of a vocabulary -> its cell; ``lead`` are words that stand before it, which may be ``needed``.

    ``cells`` gives the vocabulary (phrase -> cell); ``tail`` are words that may follow and say no more; ``cue`` are
    pieces of words, one of which a line must have for the vocabulary to be opened at all; before a word of ``unless`` a
    phrase means another thing.
    """

    __slots__ = ("_cells", "_cue", "_firsts", "_lead", "_memo", "_say", "_tail", "_unless", "doubt")

    def __init__(
        self,
        cells: Callable[[Refdata], Mapping[str, str]],
        lead: str = "",
        say: str = "{}",
        tail: str = "",
        doubt: int = 0,
        cue: tuple[str, ...] = (),
        unless: str = "",
    ) -> None:
        self._unless = unless
        self._cells = cells
        self._cue = cue
        self._lead = lead
        self._say = say
        self._tail = tail
        self._memo = ("vocabulary", id(self))
        self._firsts = ("first words", id(self))
        self.doubt = doubt

    def phrases(self, data: Refdata) -> dict[str, str]:
        """Phrase, its hyphens as blanks and its plural, -> cell."""
        got = data._memo.get(self._memo)
        if got is None:
            got = data._memo[self._memo] = spoken(self._cells(data))
        return got  # type: ignore[return-value]

    def _begins(self, data: Refdata) -> frozenset[str]:
        """The first word of each phrase: few words of a line are one of these."""
        got = data._memo.get(self._firsts)
        if got is None:
            got = data._memo[self._firsts] = frozenset(phrase.partition(" ")[0] for phrase in self.phrases(data))
        return got  # type: ignore[return-value]

    def choices(self, data: Refdata) -> tuple[str, ...]:
        """Every cell of the vocabulary, once."""
        return tuple(dict.fromkeys(self.phrases(data).values()))

    def take(self, words: tuple[str, ...], at: int, data: Refdata) -> Iterable[Hit]:
        """The longest phrase at this place."""
        if self._cue and not has_one(" ".join(words), self._cue):
            return
        start = at
        if self._lead:
            found = compiled(f"(?:{self._lead}){END}").match(" ".join(words[at : at + 5]))
            if found is None:
                return
            start += found[0].count(" ") + 1
        phrases = self.phrases(data)
        if start >= len(words) or words[start] not in self._begins(data):
            return
        for end in range(min(len(words), start + _LONGEST), start, -1):
            cell = phrases.get(" ".join(words[start:end]))
            if cell is not None and not (
                self._unless and end < len(words) and compiled(self._unless).match(words[end])
            ):
                count = end - at + self._tail_at(words, end)
                yield Hit(count, cell, self._say.format(cell), self.doubt)
                return

    def _tail_at(self, words: tuple[str, ...], at: int) -> int:
        """How many words at this place say no more of it."""
        if not self._tail or at >= len(words):
            return 0
        found = compiled(f"(?:{self._tail}){END}").match(" ".join(words[at : at + 3]))
        return found[0].count(" ") + 1 if found else 0


class Shaped:
    """A pattern of words -> the text of ``value(match)``; None of it leaves the words.

    ``cue`` are pieces of words, one of which a line must have for the pattern to be tried at all: it saves the time of
    patterns that are seldom meant.
    """

    __slots__ = ("_compiled", "_cue", "_first", "_pattern", "_say", "_value", "doubt")

    def __init__(
        self,
        pattern: str,
        value: Callable[[re.Match[str]], str | None],
        say: str = "{}",
        doubt: int = 0,
        cue: tuple[str, ...] = (),
    ) -> None:
        self._pattern = pattern
        self._cue = cue
        self._compiled: re.Pattern[str] | None = None
        self._first: frozenset[str] | None = _UNKNOWN
        self._value = value
        self._say = say
        self.doubt = doubt

    def phrases(self, _data: Refdata) -> dict[str, str]:
        """The plain words of the pattern, so that one that is nearly typed is known."""
        return dict.fromkeys(plain_words(self._pattern), "")

    def choices(self, _data: Refdata) -> tuple[str, ...]:
        """What it always means, where it means one thing."""
        return (self._value.text,) if isinstance(self._value, always) else ()

    def may_begin(self, letter: str) -> bool:
        """Whether what the pattern matches can begin with a letter."""
        if self._first is _UNKNOWN:
            self._first = first_letters(self._pattern)
        return self._first is None or letter in self._first

    def take(self, words: tuple[str, ...], at: int, _data: Refdata) -> Iterable[Hit]:
        """What the pattern matches at this place, to the end of a word."""
        text = " ".join(words[at : at + 14])
        if self._cue and not has_one(text, self._cue):
            return
        if self._compiled is None:  # to make it takes longer than to see that it cannot begin here
            if not self.may_begin(text[0]):
                return
            self._compiled = re.compile(f"(?:{self._pattern}){END}")
        found = self._compiled.match(text)
        value = None if found is None else self._value(found)
        if found is not None and value is not None:
            yield Hit(found[0].count(" ") + 1, value, self._say.format(value), self.doubt)


def amount(
    dimension: str,
    before: str = "",
    after: str = "",
    bare: str = "",
    say: str = "{}",
    doubt: int = 0,
    cue: tuple[str, ...] = (),
    followed: str = "",
    most: float = 0,
    least: float = 0,
) -> Shaped:
    """A number with its unit between words that mark it: ``before`` and ``after`` are patterns, needed where given.

    ``followed`` is what must come after it and is read for itself; ``bare`` is the unit of a number that has none;
    without it a number needs its unit. A length of more than ``most`` millimetres is none of this, nor one of less than
    ``least``; any other amount has at ``least`` so many of its first unit.
    """
    spoken = "|".join(f"(?P<u{i}>{says})" for i, says in enumerate(SAYS[dimension].values()))
    unit = f"(?: ?(?:{spoken}))" + ("?" if bare or dimension == "length" else "")
    pattern = (f"(?:{before}) " if before else "") + rf"(?P<number>-?{NUMBER}){unit}"
    pattern += (f" (?:{after})" if after else "") + (f"(?= (?:{followed}))" if followed else "")
    names = list(SAYS[dimension])

    def value(match: re.Match[str]) -> str | None:
        unit = next((u for i, u in enumerate(names) if match[f"u{i}"]), bare)
        if not unit and dimension == "length" and ("/" in match["number"] or match["number"][0] == "."):
            unit = "in"  # nobody writes millimetres so
        is_said = any(match[f"u{i}"] for i in range(len(names)))
        if dimension == "length" and not is_said and match["number"].isdigit() and len(match["number"]) > _MOST_DIGITS:
            return None  # a steel's number, and no length
        if dimension != "length":
            is_less = least and (unit != names[0] or value_of(match["number"]) < least)
            return f"{match['number']} {unit}" if unit and not is_less else None
        if (most and unit and millimetres(match["number"], unit) > most) or (
            least and (not unit or millimetres(match["number"], unit) < least)
        ):
            return None
        return f"{match['number']} {unit}" if unit else None

    return Shaped(pattern, value, say, doubt, cue)


class always:  # noqa: N801 - it stands where a function does
    """What a pattern means whatever it matched."""

    __slots__ = ("text",)

    def __init__(self, text: str) -> None:
        self.text = text

    def __call__(self, _: re.Match[str]) -> str:
        return self.text


def words_of(domain: str, column: str, *tables: str, bare: bool = True) -> Callable[[Refdata], dict[str, str]]:
    """The vocabulary of a key column: what words.csv lists for it, and the cells of these tables."""

    def cells(data: Refdata) -> dict[str, str]:
        columns = [data.table(table).column(column) for table in tables]
        found = dict(data.words(domain, column))
        found.update((w, c) for cells in columns for w, c in cells.items() if w not in ("any", "not stated"))
        return {w: c for w, c in found.items() if bare or not w.replace(".", "").isdigit()}

    return cells


_FEW_LINES = 3  # after so many the whole pattern is made once


class Topic:
    """What one answer can be asked: its slots by option, the words that name it, what it must have.

    ``answer`` loads the public answer; ``noun`` is what is looked for; ``signals`` a pattern of the words that name
    the topic and say no more; ``needs`` are options without which there is no answer; ``opens`` says which options
    were left open and every set of values for them; ``settle`` turns what was read into the options of the answer.
    ``joined`` are options that may be said in several places; ``asks_for`` is a pattern of which a line has something
    when it means this topic, and ``is_named`` that it has to; ``asks_back`` a pattern of lines that are asked for what
    they lack before any rule is looked for; ``table`` is the table of a job that has a place for it,
    ``job_keys`` the options that have another name there, with ``[]`` behind it where a list stands there and ``#``
    where a whole number does; ``columns`` are the table and the column that have every value of an option, or what
    finds them. ``unmoved`` are kinds of words that change nothing of the answer (``plain/round_words.py``).
    """

    __slots__ = (
        *("_begun", "_lines", "_part", "_whole"),
        "answer",
        "asks_back",
        "asks_for",
        "columns",
        "is_named",
        "job_keys",
        "joined",
        "needs",
        "noun",
        "opens",
        "settle",
        "signals",
        "slots",
        "table",
        "unmoved",
    )

    def __init__(
        self,
        answer: Callable[[], Callable[..., Sheet]],
        noun: str,
        slots: Mapping[str, tuple[Reader, ...]],
        signals: str,
        needs: tuple[str, ...] = (),
        opens: Callable[[dict[str, str], Refdata], Open | None] | None = None,
        settle: Callable[[dict[str, str], Refdata], dict[str, str]] | None = None,
        joined: tuple[str, ...] = (),
        asks_for: str = "",
        is_named: bool = False,
        table: str = "",
        job_keys: Mapping[str, str] | None = None,
        columns: Mapping[str, tuple[str, str] | Callable[[Refdata], Iterable[str]]] | None = None,
        unmoved: str = "",
        asks_back: str = "",
    ) -> None:
        self.asks_back = asks_back
        self.columns = columns or {}
        self.unmoved = frozenset(unmoved.split())
        self.table = table
        self.job_keys = job_keys or {}
        self.joined = joined
        self.asks_for = asks_for
        self.is_named = is_named
        self.answer = answer
        self.noun = noun
        self.slots = slots
        self.signals = signals
        self.needs = needs
        self.opens = opens
        self.settle = settle
        self._begun: dict[str, tuple[tuple[str, Reader], ...]] = {}
        self._lines = 0
        self._whole: re.Pattern[str] | None = None  # of the words that name it; a line with the part that it needs
        self._part: tuple[tuple[str, ...] | None, re.Pattern[str] | None] = (None, None)

    def __repr__(self) -> str:
        return f"<Topic {self.noun}>"

    def of(self, answer: Callable[..., Sheet], names: Iterable[str]) -> Topic:
        """The same topic with another way to its answer, and with options that are typed and never spoken."""
        other = Topic.__new__(Topic)
        for name in Topic.__slots__:
            setattr(other, name, getattr(self, name))
        other.answer = lambda: answer
        other._begun = {}
        other.slots = {**self.slots, **{name: () for name in names if name not in self.slots}}
        return other

    def call(self, options: Mapping[str, object], data: Refdata) -> Sheet:
        """The Sheet of the answer with these options."""
        return self.answer()(**options, data=data)

    def readers_at(self, letter: str) -> tuple[tuple[str, Reader], ...]:
        """The options with their readers; behind the first lines without patterns that no such word begins."""
        letter = letter if self._whole is not None else ""
        got = self._begun.get(letter)
        if got is None:
            every = ((key, reader) for key, readers in self.slots.items() for reader in readers)
            got = self._begun[letter] = tuple(
                [(k, r) for k, r in every if not letter or type(r) is not Shaped or r.may_begin(letter)]
            )
        return got

    def signal(self, words: tuple[str, ...], at: int) -> int:
        """How many words at this place name the topic."""
        pattern = self._whole
        if pattern is None:
            line, pattern = self._part
            if line is not words:
                pattern = self._made(words)
        found = None if pattern is None else pattern.match(" ".join(words[at : at + 5]))
        return found[0].count(" ") + 1 if found else 0

    def _made(self, words: tuple[str, ...]) -> re.Pattern[str] | None:
        """The pattern of the words that name the topic: of the first lines as much as they can match."""
        self._lines += 1
        if self._lines > _FEW_LINES:
            self._whole = whole = re.compile(f"(?:{self.signals}){END}")
            return whole
        part = part_for(self.signals, " ".join(words))
        pattern = re.compile(f"(?:{part}){END}") if part else None
        self._part = words, pattern
        return pattern

    def is_meant(self, words: tuple[str, ...]) -> bool:
        """Whether a line has a word that names the topic, or one with which it is asked for."""
        if self.asks_for:
            return compiled(rf"(?:\b|^)(?:{self.asks_for})\b").search(" ".join(words)) is not None
        return any(self.signal(words, at) for at in range(len(words)))

    def asks_again(self, words: tuple[str, ...]) -> bool:
        """Whether a line that lacks something is asked for it, whatever the rules have."""
        return bool(self.asks_back) and compiled(rf"(?:\b|^)(?:{self.asks_back})\b").search(" ".join(words)) is not None

    def vocabulary(self, data: Refdata) -> frozenset[str]:
        """Every single word that the topic knows."""
        memo = ("vocabulary of a topic", id(self))
        got = data._memo.get(memo)
        if got is None:
            known = plain_words(f"{self.signals} {self.noun}")
            for readers in self.slots.values():
                for reader in readers:
                    for phrase in reader.phrases(data):
                        known.update(phrase.split())
            got = data._memo[memo] = frozenset(known)
        return got  # type: ignore[return-value]
