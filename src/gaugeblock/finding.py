"""Find: all words of a text, over every table and every rule, grouped by key with the governing figure first."""

from __future__ import annotations

from operator import itemgetter

from gaugeblock import lookup
from gaugeblock.errors import InputError
from gaugeblock.found import Found
from gaugeblock.shelf import QUANTITY, REST, is_whole, plain, shelves
from gaugeblock.tables.load import Refdata, refdata

TYPE_CHECKING = False  # typing itself stays off the look-up path
if TYPE_CHECKING:
    from collections.abc import Iterator

    from gaugeblock.figure import Figure
    from gaugeblock.shelf import Entry, Shelf
    from gaugeblock.tables.load import Row

SHOWN = 20
_LONGEST = 200
# What a hit counts: see _score.
Score = tuple[int, bool, int, int]
# Where a word must stand that names a thing.
_NAMED = range(QUANTITY + 1)


def find(text: str, *, data: Refdata | None = None, whole: bool = False, named: bool = False) -> Found:
    """Every key and rule that has all words of ``text``: whole words first, key before quantity before the rest.

    At most 20 keys, then how many more; with ``whole`` every one; with ``named`` those alone whose key, other names or
    quantities have each word whole, and that have no other cell where a word is one. Nothing found is an empty answer
    with the nearest keys.
    InputError for a text without a word, or of over 200 characters.
    """
    data = data or refdata()
    words = plain(text).split() if len(text) <= _LONGEST else []
    if not words:
        raise InputError(text[:40] or "(blank)", "find", "no words, or too many", (), "give one to a few words")
    hits: list[tuple[Score, Entry]] = []
    for shelf in shelves(data):
        if shelf.may_hold(words):
            sought, held = shelf.holding(words)
            for entry in held:
                places = [entry.place(word) for word in sought]
                if not named or (all(place in _NAMED for place in places) and not _is_another(entry, words, places)):
                    hits.append((_score(entry, words, places), entry))
    shown = _first(hits, len(hits) if whole else SHOWN)
    groups = [(entry, _figures(entry, words, data)) for entry in shown]
    near = _nearest(text, words, data) if not (hits or named) else []
    return Found(text, groups, len(hits) - len(shown), near, data)


def rules(data: Refdata) -> Iterator[Entry]:
    """Every rule of every domain."""
    for shelf in shelves(data):
        if shelf.name.endswith("/rules"):
            yield from shelf.entries


def is_there(words: list[str], data: Refdata) -> bool:
    """Whether some key or rule has all these words, whole or begun."""
    wanted = [word for text in words for word in plain(text).split()]
    held = (entry for shelf in shelves(data) if wanted and shelf.may_hold(wanted) for entry in shelf.holding(wanted)[1])
    return any(all(f" {word}" in " ".join([*entry.named, entry.rest]) for word in wanted) for entry in held)


def _is_another(entry: Entry, words: list[str], places: list[int | None]) -> bool:
    """Whether a key has another cell where a word is one, and the word itself in its quantities or its notes alone: a
    dry fluid, of a wet one.
    """
    return any(
        entry.key[at] != "any"
        for word, place in zip(words, places, strict=True)
        if entry.key and (place is None or place >= QUANTITY)
        for at in entry.shelf.places_of(word)
    )


def _first(hits: list[tuple[Score, Entry]], most: int) -> list[Entry]:
    """The hits that come first, those of a table in its order where they count alike."""
    hits.sort(key=itemgetter(0))
    alike: dict[tuple[Score, Shelf], list[Entry]] = {}
    for score, entry in hits:
        alike.setdefault((score, entry.shelf), []).append(entry)
    kept: dict[Shelf, list[Entry]] = {}
    groups: list[list[Entry]] = []
    for (_, shelf), entries in alike.items():
        if sum(map(len, groups)) < most:
            groups.append(entries)
            kept.setdefault(shelf, []).extend(entries)
    for shelf, entries in kept.items():
        shelf.complete(entries)
    return [entry for group in groups for entry in sorted(group, key=lambda e: e.lines[0][0])][:most]


def _score(entry: Entry, words: list[str], places: list[int | None]) -> Score:
    """Words not found whole; a road vehicle's own first; where the words stand (the table's name, key, another word
    for it, quantity, rest), a cell that is just that first; then whether the key has them side by side.
    """
    side, text = 2, " ".join(words)
    if text in entry.text:
        is_cell = f" {text} " in f" {entry.text} " and text in [cell.casefold() for cell in entry.key]
        side = 0 if is_cell else 1 if text in entry.spoken else 2
    at = sum([REST if place is None else place for place in places])
    return places.count(None), entry.is_other, at - (side == 0) * len(words), side


def _figures(entry: Entry, words: list[str], data: Refdata) -> list[Figure]:
    """The figure that governs each quantity of a key, those first that are called by most of the words."""
    by_quantity: dict[str, list[Row]] = {}
    for row in entry.rows:
        by_quantity.setdefault(row.cells["quantity"], []).append(row)

    def called(quantity: str) -> int:
        names = plain(f"{quantity.replace('_', ' ')} {data.quantity(quantity)['words']}")
        return sum(is_whole(word, names) for word in words)

    return [lookup.govern_rows(by_quantity[q], data) for q in sorted(by_quantity, key=called, reverse=True)]


def _nearest(text: str, words: list[str], data: Refdata) -> list[str]:
    cells = {
        cell: cell for table in data.all_tables() for key in table.keys for cell in table.column(key.name).values()
    }
    unknown = [word for word in words if not _is_known(word, data)]
    # words that are known say nothing of a misspelling
    from gaugeblock.tables.near import nearest

    found = nearest(text, cells) if len(unknown) == len(words) else []
    for word in unknown:
        found += [n for n in nearest(word, cells, 3) if n not in found]
    return found[:5]


def _is_known(word: str, data: Refdata) -> bool:
    return any(shelf.holding([word])[1] for shelf in shelves(data) if shelf.may_hold([word]))


def sources(words: list[str], *, data: Refdata | None = None) -> list[dict[str, str]]:
    """The publications whose id or title has all the ``words``, each with how many living figures rest on it.

    A list of texts is wanted: InputError for one text. None found is an empty list.
    """
    data = data or refdata()
    counts: dict[str, int] = {}
    for table in data.all_tables():
        for row in table.rows:
            counts[row.cells["source"]] = counts.get(row.cells["source"], 0) + 1
    wanted = [w.casefold() for w in words]
    out = []
    for id, listed in data.listing("sources").items():
        text = f"{id} {listed['title']} {listed['publisher']}".casefold()
        if all(w in text for w in wanted):
            out.append({**listed, "rows": str(counts.get(id, 0))})
    return out
