"""A real server on a free port, spoken to as a browser does: one request, one socket, everything by its own bytes."""

from __future__ import annotations

import http.client
import json
import re
import signal
import socket
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from websockets.sync.client import ClientConnection, connect

from boxwright.web.contract import CONTRACT
from boxwright.web.routes import MOST_A_SECOND
from tests.warm import workbench

ROOT = Path(__file__).resolve().parents[2]
Told = dict[str, Any]
LEAST_BETWEEN = 1.1 / MOST_A_SECOND
"""How long (s) a page waits between messages, so that it is not shut out on a quick computer."""
PATIENCE = 60.0
"""How long (s) anything may take before a test gives up: other work may run beside it."""


class Server:
    """``boxwright open`` in a process of its own."""

    def __init__(self, path: Path | None, folder: Path, *, is_cold: bool = False) -> None:
        self.errors = (folder / "errors.txt").open("w+")
        words = [*([path.name] if path else []), "--no-browser"]
        self.process = workbench(words, folder, self.errors, is_cold=is_cold)
        self.link = self._link()
        found = re.search(r":(\d+)(/enter\?t=\S+)", self.link)
        assert found is not None
        self.port, self.entry = int(found[1]), found[2]
        self.host = f"127.0.0.1:{self.port}"
        self.cookie = ""

    def _link(self) -> str:
        assert self.process.stdout is not None
        for line in self.process.stdout:
            if "http://" in line:
                return line.strip()
        raise AssertionError(f"no link was printed: {self.said()}")

    def said(self) -> str:
        """Return what the server wrote about failures."""
        self.errors.flush()
        return Path(self.errors.name).read_text()

    def get(self, path: str, method: str = "GET", **headers: str) -> http.client.HTTPResponse:
        """Return the answer to one request; with the cookie unless another is given."""
        link = http.client.HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE)
        sent = {"Cookie": self.cookie, **{key.replace("_", "-"): value for key, value in headers.items()}}
        link.request(method, path, headers={key: value for key, value in sent.items() if value})
        return link.getresponse()

    def post(self, path: str, body: str, headers: dict[str, str]) -> int:
        """Return the status of what is posted; with the cookie unless another is given."""
        link = http.client.HTTPConnection("127.0.0.1", self.port, timeout=PATIENCE)
        link.request("POST", path, body, {"Cookie": self.cookie, **headers})
        return link.getresponse().status

    def enter(self) -> None:
        """Swap the link for the cookie."""
        answer = self.get(self.entry)
        assert (answer.status, answer.getheader("location")) == (303, "/")
        self.cookie = str(answer.getheader("set-cookie")).partition(";")[0]

    def json(self, path: str) -> Any:
        """Return what is fetched by address."""
        answer = self.get(path)
        assert answer.status == 200, (path, answer.status)
        return json.loads(answer.read())

    def raw(self, data: bytes) -> bytes:
        """Send bytes as they are and return the first of the answer."""
        with socket.create_connection(("127.0.0.1", self.port), timeout=PATIENCE) as link:
            link.sendall(data)
            return link.recv(4096)

    def stop(self, how: signal.Signals = signal.SIGTERM) -> None:
        """End it, gently or at once."""
        if self.process.poll() is None:
            self.process.send_signal(how)
        self.process.wait(PATIENCE)
        if self.process.stdout is not None:
            self.process.stdout.close()


class Page:
    """One tab: says hello, numbers its messages, and remembers what it was told last of each kind."""

    def __init__(self, server: Server, screen: str = "plan", load: str = "", stage: str = "") -> None:
        self.server, self.seq, self.rev = server, 0, 0
        self.slot = {"stage": stage, "load": load, "vehicle": ""}
        self.screen = screen
        self.told: dict[str, Told] = {}
        self.every: list[Told] = []
        self.text = ""
        self._said_at = 0.0
        self._opened = joined(server, f"http://{server.host}")
        self.link: ClientConnection = self._opened.__enter__()
        self.say("hello", contract=CONTRACT, screen=screen, slot=self.slot, locale="en")
        self.until(lambda one: one["t"] == ("numbers" if self.told["state"]["has_file"] else "state"))

    def say(self, kind: str, **fields: Any) -> int:
        """Send a message and return its number."""
        self.seq += 1
        time.sleep(max(0.0, self._said_at + LEAST_BETWEEN - time.monotonic()))
        self._said_at = time.monotonic()
        self.link.send(json.dumps({"t": kind, "seq": self.seq, "base": self.rev, **fields}))
        return self.seq

    def hear(self, timeout: float = PATIENCE) -> Told:
        """Return the next thing told."""
        one: Told = json.loads(self.link.recv(timeout=timeout))
        self.told[one["t"]] = one
        self.every.append(one)
        if "rev" in one and one["t"] != "patch":
            self.rev = max(self.rev, one["rev"])
        if one["t"] == "text":
            self._follow(one)
        return one

    def _follow(self, one: Told) -> None:
        if one["text"] is not None:
            self.text = one["text"]
        for change in one["changes"]:
            units = self.text.encode("utf-16-le")
            new = change["insert"].encode("utf-16-le")
            self.text = (units[: 2 * change["start"]] + new + units[2 * change["end"] :]).decode("utf-16-le")
        if one["changes"] or one["text"] is not None:
            assert len(self.text.encode("utf-16-le")) // 2 == one["length"]

    def until(self, is_meant: Callable[[Told], bool]) -> Told:
        """Hear until something is told; returns it."""
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end:
            one = self.hear()
            if is_meant(one):
                return one
        raise AssertionError("never told")

    def do(self, kind: str, **fields: Any) -> Told:
        """Send a message and return the numbers, or the refusal, that answer it."""
        seq = self.say(kind, **fields)
        return self.until(lambda one: one["t"] in {"numbers", "no"} and one["seq"] == seq)

    def figure(self, key: str) -> str:
        """Return a number as it was last told."""
        return str(next(one["text"] for one in self.told["numbers"]["figures"] if one["key"] == key))

    def close(self) -> None:
        """Close the tab."""
        self._opened.__exit__(None, None, None)


def joined(server: Server, origin: str | None, cookie: str | None = None) -> connect:
    """Return a socket that opens in a ``with``."""
    return connect(
        f"ws://{server.host}/ws",
        origin=origin,  # type: ignore[arg-type]
        additional_headers={"Cookie": server.cookie if cookie is None else cookie},
        open_timeout=PATIENCE,
        max_size=None,
    )


@contextmanager
def serving(path: Path | None, folder: Path, *, is_cold: bool = False) -> Iterator[Server]:
    """Serve a rig while a test runs; ends it, and shows what it said of failures."""
    server = Server(path, folder, is_cold=is_cold)
    try:
        server.enter()
        yield server
    finally:
        server.stop()
        server.errors.close()


def eventually(is_so: Callable[[], bool]) -> bool:
    """Return whether something becomes so."""
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        if is_so():
            return True
        time.sleep(0.02)
    return is_so()
