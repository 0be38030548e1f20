"""What the page says by itself: which data it speaks from, how far a word is to be trusted, and a refusal."""

from __future__ import annotations

from typing import TYPE_CHECKING

import gaugeblock
from gaugeblock.answer.pretty import capital, pretty
from gaugeblock.errors import JobError

if TYPE_CHECKING:
    from typing import Any

    from gaugeblock.errors import GaugeblockError
    from gaugeblock.tables.load import Refdata

GOVERNS = "The part maker\u2019s figure governs if you have it."
TRUST = (
    ("PUBLISHED", "A standard, regulation, handbook or manual, with its place. It says whether that text was read."),
    ("MAKER", "The part maker\u2019s own sheet for that part. It wins."),
    ("SHOP", "Measured here, with a tool."),
    ("GIVEN", "Typed in, not measured."),
    ("HABIT", "Common practice. No publication was found."),
    ("CALCULATED", "Worked out by a named formula. The next word is its weakest input."),
    ("from memory", "Nobody has read the publication for this figure yet. Look it up before you rely on it."),
)


def release(data: Refdata) -> str:
    """Which data release speaks, in words."""
    return f"data release {data.release}{', a draft' if data.is_draft else ''}"


def about(data: Refdata) -> dict[str, Any]:
    """The program, its data release, and the trust words."""
    words = [{"word": word, "means": means} for word, means in TRUST]
    return {
        "is": "about",
        "program": f"gaugeblock {gaugeblock.__version__}",
        "release": release(data),
        "governs": GOVERNS,
        "trust": words,
    }


def refusal(error: GaugeblockError) -> dict[str, Any]:
    """A refusal for a reader: what is wrong, what is near it as answers to tap, and what to do."""
    if isinstance(error, JobError):
        return {"why": [pretty(line.strip()) for line in str(error).splitlines()], "near": [], "do": ""}
    where = f"{_sentence(error.where)} " if error.where.startswith("read as ") else ""
    why = f"{where}{_sentence(error.why if where else f'{error.asked}: {error.why}')}"
    return {"why": [pretty(why)], "near": list(error.nearest), "do": pretty(_sentence(error.do))}


def _sentence(text: str) -> str:
    text = text.strip()
    text = capital(text)
    return text if not text or text[-1] in ".?!" else f"{text}."
