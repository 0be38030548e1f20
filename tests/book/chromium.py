"""Chromium driven by its own protocol over a pipe: a page to act on, what it asked the network for, what it shows."""

from __future__ import annotations

import base64
import contextlib
import fcntl
import json
import os
import select
import shutil
import signal
import subprocess
import threading
import time
from collections.abc import Iterator
from pathlib import Path
from types import TracebackType
from typing import Any, Self

FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
    "--remote-debugging-pipe",
)


class Chromium:
    """One browser with its own profile. Every target that a page opens (its workers too) is attached and listened
    to.
    """

    def __init__(self, profile: Path) -> None:
        found = shutil.which("chromium") or shutil.which("chromium-browser")
        assert found, "chromium is needed: scripts/test installs it"
        to_read, to_write = os.pipe()
        from_read, from_write = os.pipe()

        # the protocol reads from 3 and writes to 4, which the pipe's own ends must not be
        ends = [fcntl.fcntl(end, fcntl.F_DUPFD_CLOEXEC, 10) for end in (to_read, from_write)]
        shell = f'exec "$0" "$@" 3<&{ends[0]} 4>&{ends[1]}'
        command = ["bash", "-c", shell, found, *FLAGS, f"--user-data-dir={profile}", "about:blank"]
        quiet = subprocess.DEVNULL
        self.process = subprocess.Popen(
            command, pass_fds=ends, start_new_session=True, stdin=quiet, stdout=quiet, stderr=quiet
        )
        for end in (to_read, from_write, *ends):
            os.close(end)
        self.out, self.into = to_write, from_read
        self.held = b""
        self.count = 0
        self.events: list[dict[str, Any]] = []
        self.sessions: dict[str, str] = {}
        self.requests: list[str] = []
        self.page = ""
        self.home = ""

    def __enter__(self) -> Self:
        targets = self.call("Target.getTargets")["targetInfos"]
        target = next(t for t in targets if t["type"] == "page")["targetId"]
        self.page = self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        self._listen(self.page)
        self.call("Page.enable", session=self.page)
        self.call("Runtime.enable", session=self.page)
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        with contextlib.suppress(Exception):
            self.call("Browser.close")
        try:
            self.process.wait(20)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()
        os.close(self.out)
        os.close(self.into)

    def _listen(self, session: str) -> None:
        self.call("Network.enable", session=session)
        how = {"autoAttach": True, "waitForDebuggerOnStart": True, "flatten": True}
        self.call("Target.setAutoAttach", session=session, **how)

    def call(self, method: str, session: str = "", **parameters: Any) -> dict[str, Any]:
        """What the browser answers to one call; AssertionError with its words where it refuses."""
        number = self._send(method, session, parameters)
        while True:
            message = self._next(120)
            if message.get("id") == number:
                assert "error" not in message, (method, message["error"])
                return message["result"]  # type: ignore[no-any-return]
            self._heard(message)

    def _send(self, method: str, session: str, parameters: dict[str, Any]) -> int:
        self.count += 1
        message: dict[str, Any] = {"id": self.count, "method": method, "params": parameters}
        if session:
            message["sessionId"] = session
        data = json.dumps(message).encode() + b"\0"
        while data:
            data = data[os.write(self.out, data) :]
        return self.count

    def _next(self, seconds: float) -> dict[str, Any]:
        end = time.monotonic() + seconds
        while b"\0" not in self.held:
            ready, _, _ = select.select([self.into], [], [], max(0.0, end - time.monotonic()))
            assert ready, "the browser says nothing"
            got = os.read(self.into, 1 << 20)
            assert got, "the browser has ended"
            self.held += got
        one, _, self.held = self.held.partition(b"\0")
        return json.loads(one)  # type: ignore[no-any-return]

    def _heard(self, message: dict[str, Any]) -> None:
        method, said = message.get("method"), message.get("params", {})
        if method == "Network.requestWillBeSent":
            self.requests.append(said["request"]["url"])
        elif method == "Target.attachedToTarget":
            session = said["sessionId"]
            self.sessions[session] = said["targetInfo"]["type"]
            how = {"autoAttach": True, "waitForDebuggerOnStart": True, "flatten": True}
            self._send("Network.enable", session, {})
            self._send("Target.setAutoAttach", session, how)
            self._send("Runtime.runIfWaitingForDebugger", session, {})
        elif method in ("Runtime.exceptionThrown", "Runtime.consoleAPICalled"):
            self.events.append(message)

    def run(self, script: str) -> Any:
        """What an expression gives on the page, a promise waited for."""
        how = {"awaitPromise": True, "returnByValue": True, "userGesture": True}
        got = self.call("Runtime.evaluate", self.page, expression=script, **how)
        assert "exceptionDetails" not in got, got["exceptionDetails"].get("exception", got["exceptionDetails"])
        return got["result"].get("value")

    def until(self, script: str, seconds: float = 60) -> Any:
        """The first value of an expression that is true; AssertionError when none comes."""
        end = time.monotonic() + seconds
        while True:
            with contextlib.suppress(AssertionError):
                if got := self.run(script):
                    return got
            assert time.monotonic() < end, (script, self.run("document.body.innerText")[:900], self.faults())
            time.sleep(0.05)

    def faults(self) -> list[str]:
        """What the page threw."""
        return [
            e["params"]["exceptionDetails"].get("exception", {}).get("description", str(e))
            for e in self.events
            if e["method"] == "Runtime.exceptionThrown"
        ]

    def open(self, address: str) -> None:
        """Go to an address."""
        self.call("Page.navigate", self.page, url=address)

    def screen(self, width: int, height: int = 844, dark: bool = False) -> None:
        """A screen of this size in px, light or dark, with touch where it is a phone's."""
        how = {"width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 700}
        self.call("Emulation.setDeviceMetricsOverride", self.page, **how)
        self.call("Emulation.setTouchEmulationEnabled", self.page, enabled=width < 700)
        scheme = [{"name": "prefers-color-scheme", "value": "dark" if dark else "light"}]
        self.call("Emulation.setEmulatedMedia", self.page, media="", features=scheme)

    @contextlib.contextmanager
    def slowed(self, share: int) -> Iterator[None]:
        """All of the browser at one part in ``share`` of the speed: it is held for the rest of every 40 ms."""
        ended = threading.Event()

        def hold() -> None:
            while not ended.is_set():
                os.killpg(self.process.pid, signal.SIGSTOP)
                time.sleep(0.04 * (1 - 1 / share))
                os.killpg(self.process.pid, signal.SIGCONT)
                time.sleep(0.04 / share)

        thread = threading.Thread(target=hold)
        thread.start()
        try:
            yield
        finally:
            ended.set()
            thread.join()

    def memory(self) -> float:
        """Megabytes that the largest process of a page holds for itself alone."""
        held = []
        for process in self.call("SystemInfo.getProcessInfo")["processInfo"]:
            if process["type"] == "renderer":
                rollup = Path(f"/proc/{process['id']}/smaps_rollup").read_text(encoding="utf-8")
                held.append(sum(int(x.split()[1]) for x in rollup.splitlines() if x.startswith("Private_")))
        return max(held) / 1000

    def key(self, name: str, code: int = 0, text: str = "") -> None:
        """One key of the keyboard, down and up."""
        parts = {"key": name, "windowsVirtualKeyCode": code, **({"text": text} if text else {})}
        self.call("Input.dispatchKeyEvent", self.page, type="keyDown", **parts)
        self.call("Input.dispatchKeyEvent", self.page, type="keyUp", **parts)

    def swipe(self, element: str) -> None:
        """A thumb drawn over an element to the left, for most of its width."""
        left, top, width = self.run(f"(r => [r.left, r.top, r.width])({element}.getBoundingClientRect())")
        places = [(left + width * (0.9 - 0.05 * step), top + 60) for step in range(17)]
        for kind, (x, y) in zip(("touchStart", *["touchMove"] * 16), places, strict=True):
            self.call("Input.dispatchTouchEvent", self.page, type=kind, touchPoints=[{"x": x, "y": y}])
        self.call("Input.dispatchTouchEvent", self.page, type="touchEnd", touchPoints=[])

    def type(self, text: str) -> None:
        """Text as a keyboard gives it."""
        self.call("Input.insertText", self.page, text=text)

    def picture(self, file: Path) -> None:
        """What the screen shows, as a PNG."""
        got = self.call("Page.captureScreenshot", self.page, format="png")["data"]
        file.write_bytes(base64.b64decode(got))
