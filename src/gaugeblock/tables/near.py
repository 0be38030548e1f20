"""What to offer for a word that is none of a vocabulary: what it means, what resembles it, what there is; never its
opposite, and never what it denies.

Words of ``words.csv`` say what a word is ``related`` to in a key column, and what it is the ``opposite`` of.
"""

from __future__ import annotations

import re
from functools import lru_cache

from gaugeblock.errors import Offers
from gaugeblock.negation import affirmed, denied, says

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from gaugeblock.tables.load import Refdata

_MANY, _SHARE = 20, 0.05  # a word of this share of many choices says little: bolt, nut
_WHOLE, _WORD = 0.78, 0.8
_LEAST, _STARTS = 3, 4
_FEW = 24


def alike(text: str, choices: Iterable[str], count: int = 5) -> list[str]:
    """The choices that look most like ``text``, letter by letter, best first."""
    from difflib import get_close_matches

    folded: dict[str, str] = {}
    for choice in choices:
        folded.setdefault(choice.casefold(), choice)
    found = [folded[m] for m in get_close_matches(text.casefold(), folded, n=count, cutoff=0.45)]
    if len(found) < count:
        wanted = text.casefold().replace("-", " ").replace(",", " ").split()
        more = [c for f, c in folded.items() if c not in found and any(f.startswith(w) for w in wanted)]
        found += more[: count - len(found)]
    return found


def nearest(text: str, choices: Iterable[str], count: int = 5) -> list[str]:
    """The choices that are near to ``text`` in meaning as far as letters tell, best first; none where none is.

    Near is what is nearly spelled so, what has all its words, or what is the same kind of thing and shares a word
    that few choices have. What has a digit is compared letter by letter. What ``text`` denies is never near.
    """
    base = denied(text)
    pool = dict.fromkeys(c for c in choices if not (base and says(c, base)))
    if re.search("[0-9]", text):
        return alike(text, pool, count)
    text = affirmed(text) or text
    typed = _words(text)
    if not typed:
        return []
    words = {choice: _words(choice) for choice in pool}
    means = choices if isinstance(choices, dict) else {}
    often: dict[str, set[str]] = {}
    for choice, own in words.items():
        for word in own:
            often.setdefault(word, set()).add(means.get(choice, choice))
    many = len({means.get(choice, choice) for choice in pool})
    few = max(2, _SHARE * many) if many >= _MANY else many
    rare = [w for w in dict.fromkeys(typed) if len(w) >= _LEAST and len(often.get(w, ())) <= few]
    scored = [(score, c) for c, own in words.items() if (score := _score(text, typed, rare, c, own))]
    scored.sort(key=lambda s: -s[0])
    return [c for _, c in scored[:count]]


@lru_cache(4096)
def _words(text: str) -> tuple[str, ...]:
    return tuple(re.findall("[a-z]+", text.casefold().replace("-", " ")))


def _score(text: str, typed: tuple[str, ...], rare: list[str], choice: str, own: tuple[str, ...]) -> float:
    """How near a choice is; 0 where it is not near."""
    from difflib import SequenceMatcher

    found = {w: best for w in rare if (best := max((_same(w, o) for o in own), default=0.0))}
    kinds = _words(choice.partition(",")[0])[-1:]
    is_kind = bool(typed and kinds and _same(typed[-1], kinds[0]))
    rest = [w for w in rare if w != typed[-1]]
    most = typed[-1] in found or sum(w in found for w in rest) * 2 > len(rest)
    has_all = all(any(_same(w, o) for o in own) for w in typed if len(w) >= _LEAST)
    is_near = bool(found) and (has_all or (is_kind and most))
    if not is_near and 2 * min(len(text), len(choice)) < _WHOLE * (len(text) + len(choice)):
        return 0.0  # too unlike in length
    pair = SequenceMatcher(None, text.casefold(), choice.casefold())
    if not is_near and (pair.quick_ratio() < _WHOLE or pair.ratio() < _WHOLE):
        return 0.0
    return sum(found.values()) + is_kind + pair.ratio()


@lru_cache(8192)
def _same(typed: str, word: str) -> float:
    """1 for one word, less where one begins with the other or is nearly it, 0 for two words."""
    if typed == word:
        return 1.0
    if typed[:1] != word[:1] or min(len(typed), len(word)) < _STARTS:
        return 0.0
    if word.startswith(typed):
        return 0.6
    from difflib import SequenceMatcher

    ratio = SequenceMatcher(None, typed, word).ratio()
    return ratio / 2 if ratio >= _WORD else 0.0


def of_kind(text: str, choices: Sequence[str]) -> list[str]:
    """Choices that are few, or those of many that are the same kind of thing: ``bolt`` for a seat belt bolt."""
    if len(choices) <= _FEW or re.search("[0-9]", text):
        return list(choices)
    kind = _words(text)[-1:]
    return [c for c in choices if kind and _words(c.partition(",")[0])[-1:] == kind]


def of_these(text: str, choices: Sequence[str], rest: Iterable[str] | None = None) -> Offers:
    """What to offer for a text that is none of a short list of choices, which are told where none is near."""
    return offers(text, {c: c for c in choices}, choices if rest is None else rest)


def offers(
    text: str, choices: Mapping[str, str], rest: Iterable[str] = (), *, column: str = "", data: Refdata | None = None
) -> Offers:
    """What to offer for a text that is none of ``choices`` (word -> cell): what it is related to, what is near it, then
    the ``rest``, which is what there is.

    ``column`` is the key column with its domain, ``fasteners condition``: words of refdata say there what a word is
    related to, and the opposite of. An opposite is not offered, nor what the text denies.
    """
    related, opposite = _relations(column, data)
    plain = " ".join(text.casefold().split())
    base = denied(plain)
    cells = {word.casefold(): cell for word, cell in choices.items()}
    own, barred = _meant(plain, base, cells, related, opposite)
    if base and data is not None and column:  # a word may be a cell, and be listed for another
        domain, _, name = column.partition(" ")
        barred += [cell for cell in (data.words(domain, name).get(base),) if cell]
    near = [*own, *(choices[n] for n in nearest(text, dict(choices), 8))]

    def stays(cell: str) -> bool:
        return not any(_has(cell, bar) for bar in barred) and not (base and says(cell, base))

    found = [c for c in dict.fromkeys(near) if stays(c)]
    more = [c for c in dict.fromkeys(rest) if c not in found and stays(c)]
    if found and len(more) > _FEW:
        more = []
    return Offers((*found, *more), len(found))


def _relations(column: str, data: Refdata | None) -> tuple[Mapping[str, str], Mapping[str, str]]:
    """What words are related to in a column, and the opposite of."""
    if data is None or not column:
        return {}, {}
    domain, _, name = column.partition(" ")
    return data.words(domain, f"related {name}"), data.words(domain, f"opposite {name}")


def _meant(
    plain: str, base: str, cells: Mapping[str, str], related: Mapping[str, str], opposite: Mapping[str, str]
) -> tuple[list[str], list[str]]:
    """The cells that a text is related to, and those that it is not: its opposites and what it denies."""
    if base:
        meant = _found(base, cells) or _found(base, related)
        own = related.get(plain) or opposite.get(meant.casefold(), "")
        barred = [opposite.get(plain, ""), meant]
    else:
        own = _found(plain, related)
        barred = [opposite.get(_known(plain, opposite), ""), opposite.get(own.casefold(), "")]
    is_listed = plain in related  # what is said of the whole text holds, whatever a piece of it says
    barred = [bar for bar in barred if bar and not (is_listed and bar == own)]
    return [own] if own and own not in barred else [], barred


def _found(plain: str, cells: Mapping[str, str]) -> str:
    """The cell that a text means, or the longest piece of it does; blank where none is known."""
    known = _known(plain, cells)
    return cells[known] if known else ""


def _known(plain: str, known: Mapping[str, str]) -> str:
    """The text, or the longest piece of it, or the word that it nearly is, that is known; blank where none is."""
    words = plain.split()
    for count in range(len(words), 0, -1):
        for at in range(len(words) - count + 1):
            piece = " ".join(words[at : at + count])
            if piece in known:
                return piece
    from difflib import get_close_matches

    plainly = [word for word in known if not denied(word)] if not denied(plain) else known
    return next(iter(get_close_matches(plain, plainly, n=1, cutoff=0.85)), "")


def _has(cell: str, barred: str) -> bool:
    """Whether a cell says what is barred: ``stainless dry`` says dry."""
    return set(_words(barred)) <= set(_words(cell)) if _words(barred) else cell == barred
