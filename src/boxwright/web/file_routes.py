"""What is fetched of the rig file: its earlier texts, what is asked in forms, and the text to be saved elsewhere."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import JSONResponse, PlainTextResponse, Response
from starlette.routing import Route

from boxwright.web import earlier, forms
from boxwright.web.contract import LeftText
from boxwright.web.desk import Desk
from boxwright.web.offsets import shown_text


def of_the_file(opened: Callable[[], Desk | None]) -> list[Route]:
    """Return what is fetched of the file; ``opened`` returns the open one, None while there is none."""

    async def earlier_texts(request: Request) -> Response:
        desk, name = opened(), request.query_params.get("name", "")
        if desk is None:
            return _nothing()
        past, text = desk.keeper.past, desk.session.text
        if not name:
            every = await asyncio.to_thread(earlier.listed, past, text)
            return JSONResponse([one.model_dump() for one in every])
        found = await asyncio.to_thread(earlier.difference, past, name, text)
        return JSONResponse(None if found is None else found.model_dump())

    async def asked_forms(request: Request) -> Response:
        desk = opened()
        if desk is None:
            return _nothing()
        found = (forms.measures if request.query_params.get("of") == "measures" else forms.readings)(desk.session)
        return JSONResponse([one.model_dump() for one in found])

    async def whole_text(request: Request) -> Response:
        desk = opened()
        if desk is None:
            return _nothing()
        named = f"attachment; filename*=UTF-8''{quote(desk.keeper.path.name)}"
        headers = {"content-disposition": named, "cache-control": "no-store"}
        return Response(desk.session.text.encode(), media_type="application/octet-stream", headers=headers)

    async def what_is_left(request: Request) -> Response:
        desk = opened()
        if desk is None or desk.left is None:
            return _nothing()
        left = desk.offered()
        found = LeftText(text=shown_text(left.text), is_sure=left.is_sure, rev=left.rev)
        return JSONResponse(found.model_dump())

    routes = {"/left": what_is_left, "/earlier": earlier_texts, "/forms": asked_forms, "/text": whole_text}
    return [Route(path, answer) for path, answer in routes.items()]


def _nothing() -> Response:
    return PlainTextResponse("no rig is open", status_code=404)
