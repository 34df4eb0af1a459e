"""The workbench kept warm: one process loads all of it once, and what a test starts is a copy of that process.

Half of what a story takes would otherwise be the loading of the same modules. A copy has its own folder, output,
socket and end, and is killed like any program. Where a test is about the start itself, it starts the program cold.
"""

from __future__ import annotations

import json
import os
import signal
import socket
import subprocess
import sys
import time
from functools import cache
from pathlib import Path
from typing import IO

SOURCES = Path(__file__).resolve().parents[1] / "src"
MOST_ASKED = 1 << 16


class Copy:
    """A copy of the warm process, with what of a ``Popen`` the tests ask for."""

    def __init__(self, words: list[str], folder: Path, errors: IO[str] | None) -> None:
        reading, writing = os.pipe()
        telling = errors.fileno() if errors is not None else writing
        begun = _said({"words": words, "folder": str(folder)}, writing, telling)
        assert begun is not None
        self.pid = begun
        os.close(writing)
        self.stdout: IO[str] = os.fdopen(reading, "r", encoding="utf-8")
        self.returncode: int | None = None

    def poll(self) -> int | None:
        """Return how it ended, or None while it runs."""
        if self.returncode is None:
            self.returncode = _said({"ended": self.pid})
        return self.returncode

    def send_signal(self, sent: int) -> None:
        """Send a signal to it, if it runs."""
        if self.poll() is None:
            os.kill(self.pid, sent)

    def wait(self, timeout: float) -> int:
        """Wait for its end and return it. Raises TimeoutExpired."""
        until = time.monotonic() + timeout
        while self.poll() is None:
            if time.monotonic() > until:
                raise subprocess.TimeoutExpired("boxwright open", timeout)
            time.sleep(0.01)
        assert self.returncode is not None
        return self.returncode


def workbench(
    words: list[str], folder: Path, errors: IO[str] | None = None, *, is_cold: bool = False
) -> subprocess.Popen[str] | Copy:
    """Start ``boxwright open`` in a folder; what it says of failures goes to a file, or to its output."""
    if not is_cold and hasattr(os, "fork"):
        return Copy(["open", *words], folder, errors)
    command = [sys.executable, "-m", "boxwright", "open", *words]
    telling = subprocess.STDOUT if errors is None else errors
    return subprocess.Popen(command, cwd=folder, env=_environment(), stdout=subprocess.PIPE, stderr=telling, text=True)


def _environment() -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(SOURCES), "PYTHONUNBUFFERED": "1", "COLUMNS": "200"}


@cache
def _warm() -> socket.socket:
    """Return the line to the warm process, which ends when this one does."""
    ours, theirs = socket.socketpair()
    command = [sys.executable, "-P", __file__, str(theirs.fileno())]
    subprocess.Popen(command, env=_environment(), pass_fds=[theirs.fileno()], start_new_session=True)
    theirs.close()
    return ours


def _said(asked: dict[str, object], *files: int) -> int | None:
    line = _warm()
    socket.send_fds(line, [json.dumps(asked).encode()], files)
    answer = line.recv(MOST_ASKED)
    assert answer, "the warm process has ended"
    found: int | None = json.loads(answer)
    return found


def keep_warm(line: socket.socket) -> None:
    """Load the workbench, then make a copy for each line of words asked for; when nobody asks any more, end them."""
    import boxwright.cli.commands
    import boxwright.cli.opening
    import boxwright.web.serving  # noqa: F401

    running: set[int] = set()
    while True:
        data, files, _, _ = socket.recv_fds(line, MOST_ASKED, 2)
        if not data:
            break
        asked = json.loads(data)
        if "ended" in asked:
            pid, status = os.waitpid(asked["ended"], os.WNOHANG)
            running.discard(pid)
            line.send(json.dumps(os.waitstatus_to_exitcode(status) if pid else None).encode())
            continue
        pid = os.fork()
        if not pid:
            line.close()
            become(asked["words"], asked["folder"], files)
        for one in files:
            os.close(one)
        running.add(pid)
        line.send(json.dumps(pid).encode())
    for pid in running:  # whoever ran the tests was ended in the middle of one
        os.kill(pid, signal.SIGKILL)


def become(words: list[str], folder: str, files: list[int]) -> None:
    """Be the program from here on, and leave as it does."""
    from boxwright.cli import main

    os.chdir(folder)
    for number, one in enumerate(files, 1):
        os.dup2(one, number)
    for one in files:
        os.close(one)
    sys.argv = ["boxwright", *words]
    sys.exit(main())


if __name__ == "__main__":
    signal.signal(signal.SIGINT, signal.default_int_handler)
    keep_warm(socket.socket(fileno=int(sys.argv[1])))
