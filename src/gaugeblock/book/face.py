"""The one door of the shop book: a request as JSON in, an answer as JSON out. Every number of the page comes from
here.
"""

from __future__ import annotations

import contextlib
import io
import json
from typing import TYPE_CHECKING

from gaugeblock.errors import GaugeblockError, InputError
from gaugeblock.tables.load import refdata

if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from gaugeblock.tables.load import Refdata

METRIC = {"": None, "inch": False, "metric": True}


class Book:
    """Answers the page's requests: ``command`` runs a command line as the terminal does.

    A request names what it wants in ``do``; what else it holds is said at each answer. A refusal is an answer too, in
    ``error``, and so is a fault of the program.
    """

    def __init__(self, command: Callable[[list[str]], int], data: Refdata | None = None) -> None:
        self.command = command
        self.data = data or refdata()

    def take(self, request: str) -> str:
        """The answer to one request, both as JSON."""
        asked = json.loads(request)
        try:
            told = self._answer(asked)
        except GaugeblockError as error:
            from gaugeblock.book.words import refusal

            told = {"is": "refused", "error": error.as_dict(), "told": refusal(error)}
        return json.dumps(told, ensure_ascii=False, default=vars)

    def _answer(self, asked: dict[str, Any]) -> dict[str, Any]:
        do = asked["do"]
        if do == "run":
            return self._run(asked["argv"])
        metric = METRIC[asked.get("units", "")]
        if do == "about":
            from gaugeblock.book import words

            return words.about(self.data)
        if do == "ask":
            from gaugeblock.book import question

            return question.answer(asked, metric, self.data)
        if do == "complete":
            from gaugeblock.book import completing

            return {"is": "words", "lines": completing.lines(asked["text"], self.data)}
        if do in ("start", "ready", "domains", "table", "sources", "source", "audit"):
            from gaugeblock.book import shelves

            return getattr(shelves, do)(asked, metric, self.data)  # type: ignore[no-any-return]
        if do in ("job", "done", "taken", "starter", "record"):
            from gaugeblock.book import bench

            return getattr(bench, do)(asked, metric, self.data)  # type: ignore[no-any-return]
        raise InputError(do, "page", "the program knows no such request", (), "load the page again")

    def _run(self, argv: list[str]) -> dict[str, Any]:
        """A command line: how it ends and what it prints, as at a terminal."""
        out, bad = io.StringIO(), io.StringIO()
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(bad):
            try:
                code = self.command(argv)
            except SystemExit as ended:
                code = int(ended.code or 0)
        return {"is": "run", "code": code, "out": out.getvalue(), "err": bad.getvalue()}
