"""Shows a bound shop book from its folder, on this machine alone unless another address is named."""

from __future__ import annotations

import functools
import os
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from typing import TYPE_CHECKING

from gaugeblock.errors import InputError

if TYPE_CHECKING:
    from typing import Any

_TYPES = {".mjs": "text/javascript", ".webmanifest": "application/manifest+json", ".svg": "image/svg+xml"}


class Pages(SimpleHTTPRequestHandler):
    """The files of the folder, looked at anew each time, so that a book bound again is seen."""

    def guess_type(self, path: str | os.PathLike[str]) -> str:
        """The type of a file, the same whatever the system knows."""
        return _TYPES.get(os.path.splitext(os.fspath(path))[1]) or super().guess_type(path)

    def end_headers(self) -> None:
        """A browser asks again whether a file is still the same."""
        self.send_header("Cache-Control", "no-cache")
        super().end_headers()

    def log_message(self, format: str, *args: Any) -> None:
        """Nothing is written down of what is asked."""


def is_book(folder: str) -> bool:
    """Whether a shop book is in the folder."""
    return all(os.path.isfile(os.path.join(folder, name)) for name in ("index.html", "sw.js", "program.zip"))


def server(folder: str, host: str, port: int) -> ThreadingHTTPServer:
    """What serves the folder, not yet running. InputError where no book is there, or the address cannot be had."""
    if not is_book(folder):
        raise InputError(folder, "book", "no shop book is in this folder", (), "bind it with scripts/book")
    handler = functools.partial(Pages, directory=folder)
    try:
        return ThreadingHTTPServer((host, port), handler)
    except (OSError, OverflowError) as error:
        why = f"it cannot be served there: {error}"
        raise InputError(f"{host}:{port}", "book", why, (), "name another port or address") from None
