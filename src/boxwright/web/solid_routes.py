"""What is fetched of the solids: the model for the page, the faces of a section, a file to keep."""

from __future__ import annotations

import asyncio
import gzip
import json
from collections.abc import Callable
from math import isfinite

from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route

from boxwright import HOW_TO_ADD
from boxwright.render.extra import MissingExtra
from boxwright.web.contract import Slot
from boxwright.web.session import Session
from boxwright.web.solid import Solids, Wanted, axis_of, wanted_of

GLB = "model/gltf-binary"
FARTHEST = 1e5
"""Where a section may lie at most (mm)."""


def of_the_solids(open_rig: Callable[[], Session | None], slot_of: Callable[[Request], Slot]) -> list[Route]:
    """Return the routes of the solid view. What takes long is built beside the loop, so that no drag waits for it."""
    solids, one_at_a_time = Solids(), asyncio.Lock()

    def asked(request: Request) -> tuple[Session, Wanted] | None:
        session = open_rig()
        if session is None:
            return None
        wanted = wanted_of(session, session.seen(slot_of(request)), request.query_params.get("use", ""))
        return (session, wanted) if wanted is not None else None

    async def built(request: Request, make: Callable[[Session, Wanted], Response]) -> Response:
        found = asked(request)
        if found is None:
            return PlainTextResponse("there is nothing solid to show", status_code=404)
        try:
            async with one_at_a_time:
                return await asyncio.to_thread(make, *found)
        except MissingExtra as missing:
            says = f"The solid view needs {missing.package}; {HOW_TO_ADD}"
            return PlainTextResponse(says, status_code=501)

    async def scene(request: Request) -> Response:
        def make(session: Session, wanted: Wanted) -> Response:
            paths = {one.solid.of for one in solids.built(wanted).shapes}
            lines = {of: session.document.spot(of).line for of in paths}
            return _packed(request, solids.scene(wanted, lines), GLB)

        return await built(request, make)

    async def file(request: Request) -> Response:
        def make(_: Session, wanted: Wanted) -> Response:
            headers = {"content-disposition": 'attachment; filename="solids.glb"', "cache-control": "no-cache"}
            return Response(solids.file(wanted), media_type=GLB, headers=headers)

        return await built(request, make)

    async def cut(request: Request) -> Response:
        axis, at_mm = axis_of(request.query_params.get("axis", "")), _number(request.query_params.get("at", ""))
        if axis is None or at_mm is None:
            return PlainTextResponse("a section has an axis and a place", status_code=400)

        def make(_: Session, wanted: Wanted) -> Response:
            return _packed(request, json.dumps(solids.cut(wanted, axis, at_mm)).encode(), "application/json")

        return await built(request, make)

    return [Route("/solid/scene", scene), Route("/solid/file", file), Route("/solid/cut", cut)]


def _number(text: str) -> float | None:
    try:
        found = float(text)
    except ValueError:
        return None
    return found if isfinite(found) and abs(found) <= FARTHEST else None


def _packed(request: Request, content: bytes, kind: str) -> Response:
    headers = {"cache-control": "no-cache", "vary": "accept-encoding"}
    if "gzip" in request.headers.get("accept-encoding", ""):
        content, headers["content-encoding"] = gzip.compress(content, compresslevel=1, mtime=0), "gzip"
    return Response(content, media_type=kind, headers=headers)
