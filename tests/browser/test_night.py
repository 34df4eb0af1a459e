"""A vent in the hand: the night beside the elevations waits while it moves, follows as it rests, and is then kept."""

from __future__ import annotations

import re
from collections.abc import Callable

from playwright.sync_api import expect

from tests.browser.driven import Desk, Served

VENT = "openings[vent-low]"


def test_the_night_follows_a_vent_that_a_hand_holds(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    desk.look_at(stage="finish", load="departure")
    desk.go("elevations")
    night, air = desk.page.get_by_role("region", name="The night"), desk.figure("carbon-dioxide")
    expect(night).to_contain_text("Sand Point AK")
    before, text = air.inner_text(), desk.served.text
    x, y, scale = desk.press(VENT)
    desk.page.mouse.move(x, y - 150 / scale, steps=6)
    expect(air).not_to_have_text(before)
    expect(night).to_have_attribute("aria-busy", "false")
    expect(night.locator(".figures.preview:not(.old)")).to_have_count(1)
    followed = air.inner_text()
    assert desk.served.text == text, "nothing was let go of yet"
    desk.page.mouse.up()
    desk.served.written(lambda now: now != text)
    desk.settled()
    expect(air).to_have_text(followed)
    night.get_by_role("button", name="Coldest inside").click()
    expect(night.locator(".steps")).to_contain_text(re.compile("room at its coldest =.*hour by hour"))
    desk.go("plan")
    expect(night).to_have_count(0)
