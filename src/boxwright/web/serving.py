"""Starting the workbench: a socket on this computer only, the printed link, and the loops that keep the file."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import os
import signal
import socket
import sys
import time
from collections.abc import Callable, Coroutine, Iterator
from datetime import date
from hashlib import sha256
from pathlib import Path

import uvicorn
from watchfiles import awatch

from boxwright.web.gate import Door, Gate
from boxwright.web.making import SWITCH
from boxwright.web.routes import MOST_TAKEN, application
from boxwright.web.workroom import Workroom

LOG = logging.getLogger(__name__)
LOOPBACK = "127.0.0.1"
AGAIN = 1.0
"""How long (s) a loop that failed rests before it is begun again."""


FIRST_PORT, MANY_PORTS = 20_000, 12_000
"""Where the ports begin that rigs are given, below those a computer hands out by itself, and how many there are."""


def port_of(path: Path) -> int:
    """Return the port a rig is served on unless it is taken: the same each time.

    So a page of it that is still open goes on with the program that is started next, and finds again what it kept.
    """
    return FIRST_PORT + int.from_bytes(sha256(os.fsencode(path.resolve())).digest()[:4]) % MANY_PORTS


def bound(port: int, path: Path | None = None) -> socket.socket:
    """Return a socket that listens on this computer only; port 0 takes that of the rig, else a free one.

    Raises OSError.
    """
    if port == 0 and path is not None:
        with contextlib.suppress(OSError):
            return bound(port_of(path))
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    try:
        listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        listening.bind((LOOPBACK, port))
        listening.listen()  # from now on a browser waits for us instead of being refused
    except OSError:
        listening.close()
        raise
    return listening


def served(path: Path | None, folder: Path, today: date, port: int, started: Callable[[str], None]) -> None:
    """Serve the workbench until it is stopped; ``started`` is told the link. Raises CannotKeep and OSError."""
    listening = bound(port, path)
    sys.setswitchinterval(SWITCH)
    port = listening.getsockname()[1]
    door, clock = Door(port), time.monotonic
    room = Workroom(folder, path, today, clock, date.today)
    gate = Gate(application(room, door, clock), door, port)
    config = uvicorn.Config(gate, log_level="warning", lifespan="off", ws_max_size=MOST_TAKEN, access_log=False,
                            server_header=False, ws="websockets-sansio", timeout_graceful_shutdown=1)  # fmt: skip
    server = _Server(config)

    async def all_of_it() -> None:
        loops = (room.keep, room.idle, lambda: _watched(room))
        keeping = [asyncio.create_task(_kept_going(loop)) for loop in loops]
        started(f"http://{LOOPBACK}:{port}/enter?t={door.token}")
        try:
            await server.serve(sockets=[listening])
        finally:
            for task in keeping:
                task.cancel()
            await room.ended()

    asyncio.run(all_of_it())


class _Server(uvicorn.Server):
    """A server that a signal ends as any other end does: what waits is written first."""

    @contextlib.contextmanager
    def capture_signals(self) -> Iterator[None]:
        """Take the signals that end a program while it serves."""
        ends = [getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)]
        before = {one: signal.signal(one, self.handle_exit) for one in ends}
        try:
            yield
        finally:
            for one, handler in before.items():
                signal.signal(one, handler)


async def _kept_going(loop: Callable[[], Coroutine[None, None, None]]) -> None:
    """Run a loop without end: one that fails is told of and begun again, for the file must be kept whatever else."""
    while True:
        running = asyncio.ensure_future(loop())
        try:
            await asyncio.wait({running})
        finally:
            running.cancel()
        if not running.cancelled():
            LOG.error("begun again after a failure", exc_info=running.exception())
        await asyncio.sleep(AGAIN)


async def _watched(room: Workroom) -> None:
    """Look at the disk as soon as something in the rig's folder changes; the look every two seconds is for the rest."""
    while True:
        while room.desk is None:
            await asyncio.sleep(0.2)
        with contextlib.suppress(OSError, RuntimeError):
            async for _ in awatch(room.desk.keeper.path.parent, recursive=False, debounce=80):
                room.look_now()
        await asyncio.sleep(2.0)
