"""The gate every request passes before anything else sees it: who may speak to this program, and how much.

A page of another site can make a browser send requests to this computer. So exactly the host names this program was
started under are answered (a name that was made to point here is not among them), a page must come from here too, and
whoever speaks must hold the cookie that the printed link gave out once.
"""

from __future__ import annotations

import hmac
import secrets
import time
from collections.abc import Callable
from contextlib import suppress

from starlette.datastructures import Headers
from starlette.types import ASGIApp, Message, Receive, Scope, Send

MOST_BODY = 2_000_000
TOKEN_LIFE = 600.0
"""How long (s) the printed link opens the door."""
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; "
    "font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; "
    "frame-ancestors 'none'"
)
"""What the page may load; styles of its own elements are set by the editor."""
HEADERS = (
    (b"content-security-policy", POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
)
READING = frozenset({"GET", "HEAD"})


class Door:
    """The one link that lets a browser in, and the cookie it is swapped for. ``clock`` counts seconds."""

    def __init__(self, port: int, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._token, self._made = secrets.token_urlsafe(24), clock()
        self._is_used = False
        self._cookie = secrets.token_urlsafe(24)
        self.cookie_name = f"boxwright-{port}"

    @property
    def token(self) -> str:
        """Return the token of the printed link."""
        return self._token

    def opens(self, token: str) -> bool:
        """Return whether a token opens the door; it does so once, and not for long."""
        is_right = hmac.compare_digest(token.encode(), self._token.encode())
        if not is_right or self._is_used or self._clock() - self._made > TOKEN_LIFE:
            return False
        self._is_used = True
        return True

    def cookie(self) -> str:
        """Return the header that gives the cookie out."""
        return f"{self.cookie_name}={self._cookie}; HttpOnly; SameSite=Strict; Path=/"

    def is_held(self, header: str) -> bool:
        """Return whether a request's cookies hold the right one."""
        # Taken apart by hand: cookies are shared by all programs of this computer, whatever another has put in them.
        held = [one.partition("=") for one in header.split(";")]
        ours = [value.strip() for name, _, value in held if name.strip() == self.cookie_name]
        return any(hmac.compare_digest(value.encode("latin-1", "replace"), self._cookie.encode()) for value in ours)


class Gate:
    """Wraps the whole application. ``port`` is known once the socket is bound."""

    def __init__(self, app: ASGIApp, door: Door, port: int) -> None:
        self._app, self._door = app, door
        self._hosts = frozenset({f"127.0.0.1:{port}", f"localhost:{port}", f"[::1]:{port}"})
        self._origins = frozenset(f"http://{host}" for host in self._hosts)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request that may not pass with a status and no word more; hand on every other."""
        if scope["type"] not in {"http", "websocket"}:
            await self._app(scope, receive, send)
            return
        status = self._refused(scope)
        if scope["type"] == "websocket":
            if status:
                await send({"type": "websocket.close", "code": 1008})
                return
            await self._app(scope, receive, send)
            return
        if status:
            await _answer(send, status)
            return
        way = _Way(receive, send)
        with suppress(TooLong):
            await self._app(scope, way.receive, way.send)

    def _refused(self, scope: Scope) -> int:
        """Return the status a request is refused with, 0 where it may pass."""
        headers = Headers(scope=scope)
        hosts = headers.getlist("host")
        if len(hosts) != 1:
            return 400
        if hosts[0].lower() not in self._hosts:
            return 403
        is_socket = scope["type"] == "websocket"
        method = scope.get("method", "GET")
        origins = headers.getlist("origin")
        if (is_socket or method not in READING) and len(origins) != 1:
            return 403
        if any(origin not in self._origins for origin in origins):
            return 403
        is_entry = not is_socket and scope["path"] == "/enter"
        if headers.get("sec-fetch-site", "none") not in {"same-origin", "none"} and not is_entry:
            return 403
        length = headers.get("content-length", "0")
        if not length.isdecimal() or int(length) > MOST_BODY:
            return 413
        if not is_entry and not self._door.is_held("; ".join(headers.getlist("cookie"))):
            return 403
        return 0


class TooLong(Exception):
    """A body that went on beyond what is taken."""


class _Way:
    """The way of one request in and of its answer out. A chunked body says no length before, so it is counted here.

    Where it grows too long it is answered here, and what the application still says of it is not sent.
    """

    def __init__(self, receive: Receive, send: Send) -> None:
        self._receive, self._send = receive, send
        self._taken = 0
        self._is_begun = self._is_over = False

    async def receive(self) -> Message:
        """Hand on a piece of the body."""
        message = await self._receive()
        self._taken += len(message.get("body", b""))
        if self._taken > MOST_BODY:
            if not self._is_begun:
                await _answer(self._send, 413)
            self._is_over = True
            raise TooLong
        return message

    async def send(self, message: Message) -> None:
        """Hand on a piece of the answer, with the headers every answer has."""
        if self._is_over:
            return
        if message["type"] == "http.response.start":
            self._is_begun = True
            message = {**message, "headers": [*message.get("headers", []), *HEADERS]}
        await self._send(message)


async def _answer(send: Send, status: int) -> None:
    headers = [(b"content-type", b"text/plain"), (b"content-length", b"0"), *HEADERS]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": b""})
