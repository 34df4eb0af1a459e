"""Dragging on the plan: the numbers follow the hand, and afterwards are those of the command line."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.browser.driven import LB, Desk, Served
from tests.browser.test_rig_file import SMALL
from tests.disciplines.layout.small_rigs import DONE, rig_of, thing

FRIDGE = "parts[fridge]"
KEYS = {"tongue": "tongue_kg", "gross": "gross_kg"}


@pytest.fixture
def desk(serve: Callable[..., Served], show: Callable[..., Desk]) -> Desk:
    found = show(serve("whimbrel"))
    today = found.figure("tongue").inner_text()
    found.look_at(stage="finish", load="departure")
    expect(found.figure("tongue")).not_to_have_text(today)
    expect(found.thing(FRIDGE)).to_be_attached()
    return found


def test_numbers_follow_the_hand_and_end_as_the_command_line_has_them(desk: Desk) -> None:
    before = desk.number("tongue")
    text = desk.served.text
    x, y, scale = desk.press(FRIDGE)
    desk.page.mouse.move(x + 300 / scale, y, steps=6)
    expect(desk.page.locator(".figures.preview")).to_have_count(1)
    expect(desk.figure("tongue")).not_to_have_text(f"at most {before:.0f}")
    expect(desk.page.locator("dl.held")).to_contain_text("Moved")
    expect(desk.thing(FRIDGE)).to_have_class(re.compile("ghost"))
    expect(desk.page.locator("svg.over g.held")).to_have_count(1)
    assert desk.number("tongue") < before
    assert desk.served.text == text, "a preview touched the file"
    desk.page.mouse.up()
    saved = desk.served.written(lambda now: now != text)
    desk.settled()
    expect(desk.page.locator("svg.over g")).to_have_count(0)
    changed = [one for one in zip(text.splitlines(), saved.splitlines(), strict=True) if one[0] != one[1]]
    assert len(changed) == 1 and changed[0][1].strip().startswith("fridge:")
    state = desk.served.checked(stage="finish", load="departure")["states"][0]
    for key, name in KEYS.items():
        told = state[name]  # where an unknown may take away, the upper end is what is shown
        shown = told["high"] if told["low"] is None and told["high"] is not None else told["best"]
        assert desk.number(key) == round(shown / LB), key
    share = state["tongue_share"]  # of two ends the lower one comes first
    assert desk.number("share") == round((share["best"] if share["known"] else share["low"]) * 100, 1)
    for number, axle in enumerate(state["axles_kg"], start=1):
        assert desk.number(f"axle-{number}") == round(axle["best"] / LB)


def test_escape_puts_it_back(desk: Desk) -> None:
    before, text = desk.figure("tongue").inner_text(), desk.served.text
    x, y, scale = desk.press(FRIDGE)
    desk.page.mouse.move(x + 400 / scale, y, steps=4)
    expect(desk.figure("tongue")).not_to_have_text(before)
    desk.page.keyboard.press("Escape")
    expect(desk.figure("tongue")).to_have_text(before)
    expect(desk.page.locator("svg.over g")).to_have_count(0)
    expect(desk.page.locator(".ghost")).to_have_count(0)
    desk.page.mouse.up()
    desk.settled()
    assert desk.served.text == text


def test_a_lost_line_puts_it_back(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve(text=SMALL))
    desk.may_lose = True
    before = desk.figure("tongue").inner_text()
    x, y, scale = desk.press("parts[bench]")
    desk.page.mouse.move(x + 400 / scale, y, steps=4)
    expect(desk.page.locator("svg.over g.held")).to_have_count(1)
    expect(desk.figure("tongue")).not_to_have_text(before)
    desk.served.kill()
    expect(desk.banner).to_contain_text("Not connected")
    expect(desk.page.locator("svg.over g")).to_have_count(0)
    expect(desk.page.locator(".ghost")).to_have_count(0)
    expect(desk.figure("tongue")).to_have_text(before)
    desk.page.mouse.up()
    assert desk.served.text == SMALL


def test_it_catches_on_a_stud_and_says_so(desk: Desk) -> None:
    x, y, scale = desk.press(FRIDGE)
    said = set()
    for step in range(1, 60):
        desk.page.mouse.move(x + step * 10 / scale, y)
        desk.page.evaluate("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
        said.add(desk.page.locator(".picture .note").inner_text())
    assert any("stud" in one for one in said), said
    desk.page.keyboard.press("Escape")
    desk.page.mouse.up()


def test_a_new_place_can_be_typed_turned_copied_and_taken_back(desk: Desk) -> None:
    text = desk.served.text
    desk.take(FRIDGE)
    box = desk.page.get_by_role("group", name="fridge: its numbers")
    box.get_by_label("x", exact=True).fill("60 1/2")
    box.get_by_label("x", exact=True).press("Enter")
    assert "fridge:          {x: 60 1/2, side: right-1" in desk.served.written(lambda now: "x: 60 1/2" in now)
    box.get_by_role("button", name="Turn").click()
    desk.served.written(lambda now: "size: 16 x 25 x 18" in now)
    box.get_by_role("button", name="Copy").click()
    desk.served.written(lambda now: "fridge-2:" in now)
    # It lies where the fridge lies: the hand goes on with the copy, and the keys too.
    expect(desk.page.get_by_role("group", name="fridge-2: its numbers")).to_be_visible()
    expect(desk.thing("parts[fridge-2]")).to_be_focused()
    desk.take(FRIDGE)
    for _ in range(3):
        desk.page.get_by_role("button", name="Undo").click()
    desk.served.written(lambda now: now == text)
    box.get_by_label("x", exact=True).fill("a bit further")
    box.get_by_label("x", exact=True).press("Enter")
    expect(box.locator(".wrong")).to_contain_text("a bit further")


def test_what_rides_on_a_bed_and_the_way_of_the_bed_follow_the_hand(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    lamp = thing("lamp", "+100", "+100", "+50", "300 x 300 x 60", f"rides_on: bunk, {DONE}")
    desk = show(serve(text=rig_of(lamp)))
    bunk, others = "parts[bunk]", ("parts[lamp]", "parts[bunk].down")
    x, y, scale = desk.press(bunk)
    over = desk.page.locator("svg.over")
    was = {of: desk.page.locator(f'svg.sheet:not(.over) g[data-of="{of}"]').bounding_box() for of in others}
    desk.page.mouse.move(x + 400 / scale, y, steps=4)
    expect(over.locator("g.held")).to_have_count(1)
    for of in others:
        expect(over.locator(f'g.along[data-of="{of}"]')).to_have_count(1)
        expect(desk.page.locator(f'svg.sheet:not(.over) g.ghost[data-of="{of}"]')).to_have_count(1)
        now, before = over.locator(f'g[data-of="{of}"]').bounding_box(), was[of]
        assert now is not None and before is not None
        assert now["x"] - before["x"] == pytest.approx(400 / scale, abs=0.1 * 400 / scale)
        assert now["y"] == pytest.approx(before["y"], abs=2.0)
    text = desk.served.text
    desk.page.mouse.up()
    saved = desk.served.written(lambda now: now != text)
    desk.settled()
    expect(over.locator("g")).to_have_count(0)
    expect(desk.page.locator(".ghost")).to_have_count(0)
    changed = [one for one in zip(text.splitlines(), saved.splitlines(), strict=True) if one[0] != one[1]]
    assert [after.strip().partition(":")[0] for _, after in changed] == ["bunk"]  # a place with a plus goes along
