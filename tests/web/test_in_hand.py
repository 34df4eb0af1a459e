"""The night beside the screens: it follows a vent in a hand once the hand rests, and is what the drop will say."""

from __future__ import annotations

import asyncio
import json
import re
import shutil
from pathlib import Path
from typing import Any

import pytest

from boxwright.web import contract, things
from boxwright.web.contract import CONTRACT, Cancel, Hello, Move, Slot
from boxwright.web.in_hand import HAND_RESTS
from boxwright.web.night import night_beside
from boxwright.web.tab import Tab
from boxwright.web.workroom import Workroom
from tests.web.apart import apart, until
from tests.web.live import ROOT
from tests.web.test_workroom import TODAY, Clock

VENT = "openings[vent-low]"
UP = 600.0
"""How far (mm) the low vent is moved up: a third of what its air rises by."""
TOWED, SLEPT = Slot(stage="finish", load="departure"), Slot(stage="finish", load="night")


@pytest.fixture
def room(tmp_path: Path) -> Workroom:
    path = tmp_path / "rig.yaml"
    shutil.copy(ROOT / "rigs" / "whimbrel.yaml", path)
    return Workroom(tmp_path, path, TODAY, Clock())


def hello(screen: str = "elevations", slot: Slot = TOWED) -> Hello:
    return Hello(t="hello", seq=1, base=0, contract=CONTRACT, screen=screen, slot=slot)


def move(seq: int, up: float = UP) -> Move:
    return Move(t="move", seq=seq, base=0, of=VENT, z_mm=up)


def said(tab: Tab) -> list[dict[str, Any]]:
    return [one for one in map(json.loads, tab.told) if one["t"] in {"numbers", "night"}]


def after(room: Workroom, *messages: contract.Up, rests: float = 0.0, until_told: int) -> list[dict[str, Any]]:
    """Return the numbers a page is told of its messages, until there are so many and a hand rested so long."""

    async def working() -> list[dict[str, Any]]:
        tab = Tab()
        serving = asyncio.create_task(room.serve(tab))
        for number, message in enumerate(messages, start=1):
            tab.put(message)
            await until(lambda number=number: len(said(tab)) >= min(number, until_told))  # type: ignore[misc]
        await until(lambda: len(said(tab)) >= until_told)
        await asyncio.sleep(rests)
        tab.end()
        await serving
        return said(tab)

    return apart(working())


def texts(figures: list[dict[str, Any]] | list[contract.Figure]) -> list[tuple[str, str]]:
    pairs = [(one.key, one.text, one.band) if isinstance(one, contract.Figure) else (one["key"], one["text"],
             one["band"]) for one in figures]  # fmt: skip
    return [(key, f"{text} ({band})") for key, text, band in pairs]


def test_the_night_follows_as_soon_as_the_hand_rests_and_is_what_the_drop_will_say(room: Workroom) -> None:
    assert room.desk is not None
    settled, preview, followed = after(room, hello(), move(2), until_told=3)
    assert [one[0] for one in texts(settled["night"])] == ["room-at-coldest", "held-down-to", "carbon-dioxide"]
    assert (preview["preview"], preview["night"]) == (True, None), "what is not worked out is not shown"
    assert (followed["t"], followed["seq"], followed["rev"]) == ("night", 2, 0)
    assert texts(followed["figures"]) != texts(settled["night"])
    session = room.desk.session
    session.move(VENT, (0.0, 0.0, UP / 1000.0), 0, 0.0)
    assert texts(followed["figures"]) == texts(night_beside("elevations", session.seen(TOWED)))


def test_a_higher_vent_passes_less_air_for_warmth_and_breath(room: Workroom) -> None:
    """By hand: the air that rises goes with the root of the height between the vents, so less of it comes in.

    The room is the warmer for it and its air the staler. Source: the stack equation of the chapter on air.
    """
    settled, _, followed = after(room, hello(), move(2, 150.0), until_told=3)
    before, now = ({one["key"]: one for one in found} for found in (settled["night"], followed["figures"]))
    assert int(now["carbon-dioxide"]["text"].replace(",", "")) > int(before["carbon-dioxide"]["text"].replace(",", ""))
    assert int(now["held-down-to"]["text"]) <= int(before["held-down-to"]["text"])


def test_where_the_night_is_what_is_looked_at_it_follows_the_hand_at_once(room: Workroom) -> None:
    settled, preview = after(room, hello(slot=SLEPT), move(2), rests=3.0 * HAND_RESTS, until_told=2)
    assert texts(preview["night"]) != texts(settled["night"])


def test_a_hand_that_let_go_waits_for_no_night(room: Workroom) -> None:
    told = after(room, hello(), move(2), Cancel(t="cancel", seq=3, base=0), rests=3.0 * HAND_RESTS, until_told=3)
    assert [(one["t"], one["preview"]) for one in told] == [("numbers", False), ("numbers", True), ("numbers", False)]


@pytest.mark.parametrize("screen", ["plan", "weight"])
def test_beside_a_screen_about_something_else_no_night_is_worked_out(room: Workroom, screen: str) -> None:
    settled, preview = after(room, hello(screen), move(2), rests=3.0 * HAND_RESTS, until_told=2)
    assert (settled["night"], preview["night"]) == ([], [])


def test_each_number_of_the_night_opens_its_working(room: Workroom) -> None:
    assert room.desk is not None
    seen = room.desk.session.seen(TOWED)
    for one in night_beside("heat", seen):
        steps = things.worked(seen, one.path)
        assert steps and all(step.formula and step.source for step in steps), one.path
    (coldest,) = things.worked(seen, "room-at-coldest Sand Point AK")
    lines = seen.reading.document.text.splitlines()
    named = re.search(r"parts\[heater\] \(line (\d+)\)", coldest.source)
    assert named is not None and lines[int(named[1]) - 1].startswith("  heater:")


def test_the_coldest_of_all_places_is_the_one_that_is_shown(room: Workroom) -> None:
    """Sand Point, at 12 F, gets colder than Greensboro at 18 F: one that is held never hides another."""
    assert room.desk is not None
    coldest, held = night_beside("heat", room.desk.session.seen(TOWED))[:2]
    assert coldest.path == "room-at-coldest Sand Point AK" and coldest.band.endswith("Sand Point AK")
    assert held.path == "held-down-to Sand Point AK"
