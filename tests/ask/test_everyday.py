"""Everyday words: left out and said, so none may mean something, nor hide a slip of a word that does."""

from __future__ import annotations

from pathlib import Path

import pytest

from gaugeblock import domains
from gaugeblock.plain.answer import answer
from gaugeblock.plain.chatter import CHATTER, PLACE, PLAIN, STORY, TURNING
from gaugeblock.plain.everyday import everyday_file, is_everyday
from gaugeblock.plain.mending import distance
from gaugeblock.tables.load import refdata

DATA = refdata()
WORDS = Path(everyday_file()).read_text(encoding="ascii").split()
TOPICS = [t for wing in domains.WINGS if wing.hints for t in wing.module("ask").TOPICS]
# Said so often that they are kept, though one letter makes another word of them.
KEPT = {
    *("boy", "game", "games", "keen", "lets", "men", "party", "sale", "sing", "song", "songs", "started"),
    *("loves", "loving", "breeding"),
    *("tale", "teams", "took", "weary", "meet", "meets", "stance", "whose"),
}

# Read first where they mean something: CREW tube, factory new, the others as part of a longer phrase.
READ_FIRST = {"crew", "factory", "lets", "letting", "marked", "requires", "took"}


def _vocabulary() -> set[str]:
    """Every word that an option of any topic knows, and every living word of the list that people type."""
    known = {
        w for t in TOPICS for readers in t.slots.values() for r in readers for p in r.phrases(DATA) for w in p.split()
    }
    return known | {w for line in DATA.lines("words").all() if not line[5] for w in line[1].casefold().split()}


def test_the_list_is_in_order_and_has_no_word_of_another() -> None:
    assert sorted(set(WORDS)) == WORDS
    assert all(is_everyday(word) for word in WORDS)
    assert not set(WORDS) & (CHATTER | PLACE | STORY | TURNING | PLAIN)
    assert not is_everyday("stainless\nteacher")


def test_none_means_something_or_is_one_slip_from_what_does() -> None:
    known = _vocabulary()
    assert known & set(WORDS) <= READ_FIRST
    long = [k for k in known if len(k) > 3 and k.isalpha()]
    by_first: dict[str, list[str]] = {}
    for one in long:
        by_first.setdefault(one[0], []).append(one)
    near = {w for w in WORDS for k in by_first.get(w[0], ()) if abs(len(k) - len(w)) < 2 and distance(w, k, 1) < 2}
    assert near <= KEPT | READ_FIRST


@pytest.mark.parametrize("word", WORDS[::97])
def test_one_beside_a_bolt_or_a_part_changes_nothing_and_is_said(word: str) -> None:
    for line in ("3/8-16 grade 8 oiled", "spark plug 14 mm taper seat aluminium"):
        plain, told = answer(line), answer(f"{word} {line}")
        assert told.found == plain.found
        assert word in told.read_as
