"""What can be fetched by address: the page, its files, a screen, a thing, the schema. And the socket."""

from __future__ import annotations

import asyncio
import gzip
import json
import logging
import re
from collections.abc import Awaitable, Callable
from contextlib import suppress
from functools import cache
from importlib.resources import files
from pathlib import Path

from pydantic import ValidationError
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import JSONResponse, PlainTextResponse, RedirectResponse, Response
from starlette.routing import Route, WebSocketRoute
from starlette.websockets import WebSocket, WebSocketDisconnect

from boxwright.rig.schema import rig_schema as schema_of_rigs
from boxwright.web import things
from boxwright.web.contract import Leaving, No, Slot
from boxwright.web.file_routes import of_the_file
from boxwright.web.gate import Door
from boxwright.web.gestures import Refused
from boxwright.web.said import holds_half_a_character, understood
from boxwright.web.solid_routes import of_the_solids
from boxwright.web.tab import Tab
from boxwright.web.workroom import Workroom

LOG = logging.getLogger(__name__)
DIST = Path(str(files("boxwright.web"))) / "dist"
KINDS = {".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8",
         ".css": "text/css; charset=utf-8", ".woff2": "font/woff2", ".txt": "text/plain; charset=utf-8"}  # fmt: skip
MOST_MESSAGE = 1_000_000
MOST_TAKEN = 8_000_000
"""Characters of a message that is still read so far as to be answered that it is too long; beyond, the line ends."""
TOO_LONG = f"that is more than {MOST_MESSAGE // 1_000_000} MB at once; it was not taken"
HALF = "it holds half a character, which no file can hold; it was not taken"
MOST_A_SECOND = 120
_NUMBER = re.compile(r'"seq": ?(\d{1,9})\b')
LAST_WORDS = 1.0
"""How long (s) a page that takes no more is still listened to."""
PACKED = 6
"""How hard what is made for a page is packed: a plan of 1,000 parts takes 5 ms beside the loop, and a fifth less."""
LONG = "public, max-age=31536000, immutable"


def assets() -> dict[str, Path]:
    """Return the files of the page by the address they are fetched at: nothing else is ever read for a browser."""
    if not DIST.is_dir():
        return {}
    return {
        f"/{path.relative_to(DIST).as_posix()}": path
        for path in sorted(DIST.rglob("*"))
        if path.is_file() and path.suffix in KINDS
    }


@cache
def packed(path: Path) -> bytes:
    """Return a file of the page packed for the way to the browser."""
    return gzip.compress(path.read_bytes(), mtime=0)


def application(room: Workroom, door: Door, clock: Callable[[], float]) -> Starlette:
    """Return the application behind the gate."""
    known = assets()

    async def enter(request: Request) -> Response:
        if request.method == "HEAD":
            return Response()  # what looks a link over before it is followed must not use it up
        if door.is_held(request.headers.get("cookie", "")):
            return RedirectResponse("/", status_code=303)
        if not door.opens(request.query_params.get("t", "")):
            says = "This link has been used or is too old. Start boxwright open again, or go back to the open page."
            return PlainTextResponse(says, status_code=403)
        return RedirectResponse("/", status_code=303, headers={"set-cookie": door.cookie()})

    async def asset(request: Request) -> Response:
        path = known.get("/index.html" if request.url.path == "/" else request.url.path)
        if path is None:
            return PlainTextResponse("not found", status_code=404)
        cache = LONG if "/assets/" in request.url.path else "no-cache"
        headers = {"cache-control": cache, "vary": "accept-encoding"}
        is_small = "gzip" in request.headers.get("accept-encoding", "") and path.suffix != ".woff2"
        if is_small:
            headers["content-encoding"] = "gzip"
        return Response(packed(path) if is_small else path.read_bytes(), media_type=KINDS[path.suffix], headers=headers)

    async def leave(request: Request) -> Response:
        try:
            last = Leaving.model_validate_json(await request.body())
        except ValidationError:
            return PlainTextResponse("that is no last word", status_code=400)
        await room.left_with(last)
        return Response(status_code=204)

    async def rig_schema(request: Request) -> Response:
        return _as_json(request, json.dumps(schema_of_rigs()))

    async def socket(ws: WebSocket) -> None:
        await _spoken(ws, room, clock)

    return Starlette(
        routes=[
            Route("/enter", enter),
            *_of_the_rig(room),
            *of_the_file(lambda: room.desk),
            *of_the_solids(lambda: room.desk.session if room.desk is not None else None, asked_of),
            Route("/schema", rig_schema),
            Route("/leave", leave, methods=["POST"]),
            WebSocketRoute("/ws", socket),
            Route("/{path:path}", asset),
        ]
    )


def _as_json(request: Request, text: str) -> Response:
    """Return a text of JSON, packed where the browser can unpack it: a drawing becomes a fifth of its length."""
    headers = {"cache-control": "no-cache", "vary": "accept-encoding"}
    body = text.encode()
    if "gzip" in request.headers.get("accept-encoding", ""):
        body, headers["content-encoding"] = gzip.compress(body, compresslevel=PACKED, mtime=0), "gzip"
    return Response(body, media_type="application/json", headers=headers)


def _of_the_rig(room: Workroom) -> list[Route]:
    """Return what is fetched of the open rig: screens, printed pages, a thing in hand, how a number comes about."""

    async def screen(request: Request) -> Response:
        if room.desk is None:
            return PlainTextResponse("no rig is open", status_code=404)
        asked = (room.desk.session, request.path_params["name"], asked_of(request))
        found = await room.making.screen(*asked, _waits(request))
        if found is None:
            return PlainTextResponse("no such screen", status_code=404)
        return await asyncio.to_thread(lambda: _as_json(request, found.model_dump_json()))

    async def page(request: Request) -> Response:
        if room.desk is None:
            return PlainTextResponse("no rig is open", status_code=404)
        asked = (room.desk.session, request.path_params["name"], asked_of(request))
        found = await room.making.pages(*asked, _waits(request))
        return JSONResponse([one.model_dump() for one in found])

    async def thing(request: Request) -> Response:
        if room.desk is None:
            return PlainTextResponse("no rig is open", status_code=404)
        try:
            found = things.thing(room.desk.session, request.query_params.get("of", ""))
        except Refused:
            return JSONResponse(None)  # it was taken out a moment ago, and the page asks before it hears of it
        return Response(found.model_dump_json(), media_type="application/json")

    async def working(request: Request) -> Response:
        if room.desk is None:
            return PlainTextResponse("no rig is open", status_code=404)
        found = things.worked(room.desk.session.seen(asked_of(request)), request.query_params.get("number", ""))
        return JSONResponse([one.model_dump() for one in found])

    async def reason(request: Request) -> Response:
        if room.desk is None:
            return PlainTextResponse("no rig is open", status_code=404)
        asked, session = request.query_params, room.desk.session
        words = (asked.get("code", ""), asked.get("where", ""), asked.get("says", ""))
        found = things.reason(session, session.seen(asked_of(request)), *words)
        return JSONResponse(found.model_dump() if found is not None else None)

    return [
        Route("/screen/{name}", screen),
        Route("/page/{name}", page),
        Route("/thing", thing),
        Route("/working", working),
        Route("/reason", reason),
    ]


def _waits(request: Request) -> Callable[[], Awaitable[bool]]:
    """Return what tells whether somebody still waits for the answer to a request."""

    async def waits() -> bool:
        return not await request.is_disconnected()

    return waits


def asked_of(request: Request) -> Slot:
    """Return the slot a request names."""
    asked = request.query_params
    return Slot(stage=asked.get("stage", ""), load=asked.get("load", ""), vehicle=asked.get("vehicle", ""))


async def _spoken(ws: WebSocket, room: Workroom, clock: Callable[[], float]) -> None:
    """Speak with one page until it goes; a page that breaks the rules, or whose message broke us, is let go of.

    It comes back by itself and is told everything anew.
    """
    await ws.accept()
    tab = Tab()
    hearing, speaking = asyncio.create_task(_heard(ws, tab, clock)), asyncio.create_task(tab.speak(ws.send_text))
    ways = [hearing, speaking, asyncio.create_task(room.serve(tab))]
    try:
        done, _ = await asyncio.wait(ways, return_when=asyncio.FIRST_COMPLETED)
        if speaking in done and speaking.exception() is not None:  # it listens no more; what it said may still come
            await asyncio.wait({hearing}, timeout=LAST_WORDS)
    finally:
        hearing.cancel()
        speaking.cancel()
        tab.end()
        await tab.is_gone.wait()
    failed = next((one.exception() for one in done if not one.cancelled() and one.exception() is not None), None)
    if isinstance(failed, WebSocketDisconnect):
        return
    if failed is not None:
        LOG.error("a page was let go of after a failure", exc_info=failed)
    with suppress(RuntimeError, WebSocketDisconnect):  # it may have gone by itself just now
        await ws.close(code=1008 if failed is None else 1011)


async def _heard(ws: WebSocket, tab: Tab, clock: Callable[[], float]) -> None:
    """Take messages in until one breaks the rules: too many, too long, or not of the contract."""
    since, count = clock(), 0
    while True:
        message = await ws.receive()
        if message["type"] == "websocket.disconnect":
            raise WebSocketDisconnect(message.get("code", 1000))
        now, text = clock(), message.get("text")
        if now - since >= 1.0:
            since, count = now, 0
        count += 1
        if text is not None and len(text) > MOST_MESSAGE:
            tab.tell(No(t="no", seq=_number_of(text), why=TOO_LONG))
            continue
        said = understood(text) if text is not None else None
        if said is None and text is not None and count <= MOST_A_SECOND and holds_half_a_character(text):
            tab.tell(No(t="no", seq=_number_of(text), why=HALF))
            continue
        if count > MOST_A_SECOND or said is None or not tab.put(said):
            return


def _number_of(text: str) -> int:
    """Return the number of a message that is too long to be read, 0 where it is not found at either end."""
    found = _NUMBER.search(text[:100]) or _NUMBER.search(text[-100:])
    return int(found[1]) if found else 0
