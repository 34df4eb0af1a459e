"""The solids as they are fetched: the scene, the faces of a section, the file to keep; and what is refused."""

from __future__ import annotations

import json
import struct
from math import fsum
from typing import Any

import httpx
import pytest
from starlette.applications import Starlette
from starlette.requests import Request

from boxwright import HOW_TO_ADD
from boxwright.render.extra import MissingExtra
from boxwright.web.contract import Slot
from boxwright.web.session import Session
from boxwright.web.solid_routes import of_the_solids
from tests.render.solid import scene_of, text_of
from tests.web.apart import apart
from tests.web.test_screens import BARE, DAY

INCH = 0.0254


def slot_of(request: Request) -> Slot:
    return Slot(stage=request.query_params.get("stage", ""), load=request.query_params.get("load", ""))


class Page:
    """What fetches from the solids of a session, one address at a time."""

    def __init__(self, session: Session | None) -> None:
        self._app = Starlette(routes=of_the_solids(lambda: session, slot_of))

    def get(self, path: str, **more: Any) -> httpx.Response:
        async def fetched() -> httpx.Response:
            async with httpx.AsyncClient(transport=httpx.ASGITransport(self._app), base_url="http://here") as way:
                return await way.get(path, **more)

        return apart(fetched())


def client(session: Session | None) -> Page:
    return Page(session)


@pytest.fixture(scope="module")
def whimbrel() -> Page:
    return client(Session(text_of("whimbrel").decode(), DAY))


def extras_of(content: bytes) -> dict[str, dict[str, object]]:
    """Return what the nodes of a file carry along, by their names."""
    (length,) = struct.unpack_from("<I", content, 12)
    tree = json.loads(content[20 : 20 + length])
    return {node["name"]: node.get("extras", {}) for node in tree["nodes"]} | {"": tree["scenes"][0]["extras"]}


def test_the_scene_holds_all_stages_with_lines_and_words(whimbrel: Page) -> None:
    answer = whimbrel.get("/solid/scene")
    assert (answer.status_code, answer.headers["content-type"]) == (200, "model/gltf-binary")
    extras = extras_of(answer.content)
    lines = text_of("whimbrel").decode().splitlines()
    line = extras["parts[bunk]"]["line"]
    assert isinstance(line, int) and lines[line - 1].startswith("  bunk:")
    assert "weighs " in str(extras["parts[bunk]"]["says"])
    assert "as drawn, of its stock" in str(extras["walls[left].layers[liner]"]["says"])
    assert extras[""]["is_ticked"] is True and extras[""]["rev"] == 0
    assert extras["parts[bunk]"]["stage"] == extras[""]["stages"].index("bunk")  # type: ignore[attr-defined]


def test_the_file_to_keep_holds_what_stands_only(whimbrel: Page) -> None:
    answer = whimbrel.get("/solid/file", params={"stage": "foam"})
    assert "attachment" in answer.headers["content-disposition"]
    nodes = set(scene_of(answer.content).graph.nodes)
    assert "walls[left].layers[foam]" in nodes and "parts[bunk]" not in nodes


def test_what_is_aboard_is_what_the_load_state_looked_at_carries(whimbrel: Page) -> None:
    def aboard(load: str) -> set[str]:
        return set(scene_of(whimbrel.get("/solid/file", params={"load": load, "use": "tow"}).content).graph.nodes)

    assert "parts[tools]" in aboard("departure")
    assert "parts[tools]" not in aboard("empty")


def test_the_faces_of_a_section_have_the_area_of_what_is_cut(whimbrel: Page) -> None:
    scene, cut = whimbrel.get("/solid/scene"), whimbrel.get("/solid/cut", params={"axis": "x", "at": 60 * 25.4})
    found = cut.json()
    assert found["says"] == "60 in behind the front stud face"
    pieces = {extras.get("piece"): name for name, extras in extras_of(scene.content).items()}
    areas = {pieces[one["piece"]]: area(one["corners"]) for one in found["faces"]}
    # by hand: half an inch of deck from stud face to stud face, and a quarter of an inch of liner on its left wall
    assert areas["deck floor"] == pytest.approx(80 * 0.5 * INCH**2, rel=1e-4)
    assert areas["liner left"] == pytest.approx(78 * 0.25 * INCH**2, rel=1e-4)
    assert all(
        one["corners"][0::3] == pytest.approx([60 * INCH] * (len(one["corners"]) // 3)) for one in found["faces"]
    )
    assert all(len(one["outline"]) % 6 == 0 for one in found["faces"])


def area(corners: list[float]) -> float:
    """Return the area of triangles that lie square to x."""
    places = [(corners[at + 1], corners[at + 2]) for at in range(0, len(corners), 3)]
    threes = zip(places[0::3], places[1::3], places[2::3], strict=True)
    return fsum(abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2.0 for a, b, c in threes)


@pytest.mark.parametrize(
    ("axis", "at", "says"),
    [("x", -500, "ahead of the front stud face"), ("y", 0, "in the middle"), ("y", -300, "left of the middle"),
     ("z", 500, "above the deck"), ("z", -50, "under the deck")],
)  # fmt: skip
def test_where_a_section_lies_is_said(axis: str, at: float, says: str, whimbrel: Page) -> None:
    found = whimbrel.get("/solid/cut", params={"axis": axis, "at": at}).json()
    assert says in found["says"]
    assert found["faces"] or at == -500


def test_the_pose_is_that_of_the_use(whimbrel: Page) -> None:
    wide = {}
    for use in ("tow", "sleep"):
        content = whimbrel.get("/solid/scene", params={"use": use}).content
        bunk = next(one for name, one in scene_of(content).geometry.items() if name == "bunk")
        wide[use] = bunk.bounds[1][1] - bunk.bounds[0][1]
    assert wide["tow"] < 0.2 * wide["sleep"]  # folded up against its wall, and lying across the room


def test_what_is_aboard_is_that_of_the_use(whimbrel: Page) -> None:
    there = {}
    for use in ("tow", "sleep"):
        for path in ("scene", "file"):
            nodes = extras_of(whimbrel.get(f"/solid/{path}", params={"use": use}).content)
            there[use, path] = "parts[boat]" in nodes
    # as the file says it, the boat lies in the aisle on the road and outside while somebody sleeps
    assert there == {("tow", "scene"): True, ("tow", "file"): True, ("sleep", "scene"): False, ("sleep", "file"): False}


def test_an_edit_gives_the_solids_of_the_new_text() -> None:
    text = text_of("whimbrel").decode()
    session = Session(text, DAY)
    page = client(session)
    before = scene_of(page.get("/solid/scene").content).geometry["extinguisher"].bounds[0][0]
    session.set("parts[extinguisher].x", "60", session.rev, 1.0)
    after = page.get("/solid/scene")
    assert scene_of(after.content).geometry["extinguisher"].bounds[0][0] == pytest.approx(before + 10 * INCH, rel=1e-5)
    assert extras_of(after.content)[""]["rev"] == session.rev


@pytest.mark.parametrize(
    "query", ["", "?axis=w&at=1", "?axis=x", "?axis=x&at=nan", "?axis=x&at=1e300", "?axis=x&at=../"]
)
def test_a_section_that_is_none_is_refused(query: str, whimbrel: Page) -> None:
    assert whimbrel.get(f"/solid/cut{query}").status_code == 400


@pytest.mark.parametrize("path", ["/solid/scene", "/solid/file", "/solid/cut?axis=x&at=1"])
@pytest.mark.parametrize("session", [None, Session(BARE, DAY)])
def test_without_a_body_there_is_nothing_to_show(path: str, session: Session | None) -> None:
    assert client(session).get(path).status_code == 404


def test_without_the_package_the_page_says_what_to_type(monkeypatch: pytest.MonkeyPatch) -> None:
    def fails(*_: object) -> None:
        raise MissingExtra("solid", "manifold3d")

    monkeypatch.setattr("boxwright.render.shape._three", fails)
    answer = client(Session(text_of("whimbrel").decode(), DAY)).get("/solid/scene")
    assert answer.status_code == 501 and HOW_TO_ADD in answer.text
