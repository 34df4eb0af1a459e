"""The numbers of every chart: under a pointer, under the keys, under a thumb, and as a table."""

from __future__ import annotations

import re
from collections.abc import Callable
from itertools import pairwise
from math import hypot

import pytest
from playwright.sync_api import Browser, Locator, expect

from tests.browser.driven import Desk, Served
from tests.lanes import every_so_many

SEVERAL = "Load on the ball"
LAST_STAGE = "finish"
FALL = "What it weighs"
NIGHT = "The coldest night"
DAMP = "Humidity of a night"


def chart(desk: Desk, title: str) -> Locator:
    """Return a chart once it is drawn."""
    found = desk.page.locator("figure.chart", has_text=title).first
    expect(found.locator("[data-point]").first).to_be_attached()
    if title == SEVERAL:  # drawn as far as it is worked out, stage by stage: it stands once the last stage is there
        expect(found.locator(f"[data-point][aria-label^='{LAST_STAGE}, ']").first).to_be_attached()
    return found


def told(found: Locator) -> str:
    """Return the number that stands under a chart."""
    return found.locator("p.told").inner_text()


def all_told(found: Locator, index: int) -> str:
    """Return what is told at a point: its own number, and those whose dots cover it, the place said once."""
    places = found.locator("[data-point]").evaluate_all(
        "all => all.map(one => [one.getAttribute('aria-label'), one.cx?.baseVal.value, one.cy?.baseVal.value])"
    )
    name, x, y = places[index]
    others = [one for one, at, up in places if one != name and x is not None and hypot(at - x, up - y) < 4.0]
    return "; ".join([name, *(one.removeprefix(name.partition(", ")[0] + ", ") for one in others)])


def row(found: Locator, at: str) -> list[str]:
    """Return what the table of a chart says of one place along it."""
    return found.locator("tbody tr", has=found.page.locator("th", has_text=re.compile(f"^{at}$"))).locator(
        "td"
    ).all_inner_texts()  # fmt: skip


def pointed_at(found: Locator, index: int) -> None:
    """Move the pointer 11 px beside a point of a chart: as far as a target of 24 px reaches."""
    box = found.locator("[data-point]").nth(index).bounding_box()
    assert box is not None
    found.page.mouse.move(box["x"] + box["width"] / 2 + 8, box["y"] + box["height"] / 2 + 7)


@pytest.mark.parametrize(
    ("screen", "title"), every_so_many([("weight", SEVERAL), ("weight", FALL), ("heat", NIGHT), ("air", DAMP)], 2)
)
def test_a_chart_tells_its_numbers_under_a_pointer_and_under_the_keys(
    serve: Callable[..., Served], show: Callable[..., Desk], screen: str, title: str
) -> None:
    desk = show(serve("whimbrel"), screen)
    found = chart(desk, title)
    desk.at_rest()
    names = found.locator("[data-point]").evaluate_all("all => all.map(one => one.getAttribute('aria-label'))")
    assert len(set(names)) == len(names) > 5, "each number says what it is of"
    expect(found.locator("[data-point][tabindex='0']")).to_have_count(1)
    before = found.locator("summary").bounding_box()
    found.scroll_into_view_if_needed()
    pointed_at(found, 1)
    assert told(found) == all_told(found, 1)
    desk.page.mouse.move(2, 2)
    assert told(found).startswith("Point at the chart")
    found.locator("[data-point]").first.focus()
    assert told(found) == all_told(found, 0)
    desk.page.keyboard.press("ArrowRight")
    assert told(found) == all_told(found, 1)
    expect(found.locator("[data-point]").nth(1)).to_be_focused()
    expect(found.locator("[data-point][tabindex='0']")).to_have_count(1)
    desk.page.keyboard.press("Tab")
    expect(found.locator("summary")).to_be_focused()
    desk.page.keyboard.press("Shift+Tab")
    expect(found.locator("[data-point]").nth(1)).to_be_focused()
    after = found.locator("summary").bounding_box()
    assert before is not None and after is not None
    assert before["height"] == after["height"], "nothing under the chart gave way"


def test_numbers_that_lie_on_one_another_are_all_told(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"), "weight")
    found = chart(desk, SEVERAL)
    desk.at_rest()
    every = [all_told(found, index) for index in range(found.locator("[data-point]").count())]
    index, wanted = max(enumerate(every), key=lambda one: one[1].count("; "))
    assert wanted.count("; ") >= 1, "no two lie on one another: another chart is needed here"
    found.locator("[data-point]").nth(index).focus()
    assert told(found) == wanted


def test_a_pointer_is_told_before_the_focus_and_the_focus_again_once_it_is_gone(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"), "weight")
    found = chart(desk, FALL)
    desk.at_rest()
    found.scroll_into_view_if_needed()
    names = found.locator("[data-point]").evaluate_all("all => all.map(one => one.getAttribute('aria-label'))")
    found.locator("[data-point]").first.focus()
    pointed_at(found, 2)
    assert told(found) == names[2]
    desk.page.mouse.move(2, 2)
    assert told(found) == names[0]


def test_the_keys_go_from_one_line_to_another_at_the_same_place(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    found = chart(show(serve("whimbrel"), "heat"), NIGHT)
    found.locator("[data-point='1-0']").focus()
    assert told(found).startswith("20 h, outside: ")
    found.page.keyboard.press("ArrowDown")  # at eight in the evening it is warmer outside than in the room
    assert told(found).startswith("20 h, room: ")
    found.page.keyboard.press("ArrowUp")
    found.page.keyboard.press("End")
    assert re.match(r"[78] h, outside: ", told(found))


def test_the_table_under_a_chart_says_what_its_points_say(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"), "air")
    found = chart(desk, DAMP)
    found.locator("summary").click()
    assert found.locator("thead th").all_inner_texts() == ["At", "The room"]
    assert found.locator("tbody th").first.inner_text() == "20 h"
    found.locator("[data-point]").nth(2).focus()
    assert [told(found)] == [f"22 h, the room: {one}" for one in row(found, "22 h")]


def test_a_thumb_beside_a_point_is_told_its_number(serve: Callable[..., Served], browser: Browser) -> None:
    served = serve("whimbrel")
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True, locale="en-US")
    desk = Desk(context.new_page(), served).open("weight")
    found = chart(desk, FALL)
    desk.at_rest()
    found.scroll_into_view_if_needed()
    one = found.locator("[data-point]").nth(2)
    box = one.locator("rect").bounding_box()
    assert box is not None
    desk.page.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] + 12)
    assert told(found) == one.get_attribute("aria-label")
    context.close()
    assert not desk.faults


def test_a_bar_stands_where_its_numbers_are(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    found = chart(show(serve("whimbrel"), "weight"), FALL)
    boxes = [one.bounding_box() for one in found.locator(".bar rect").all()]
    assert len(boxes) > 4
    whole = boxes[-1]
    assert whole is not None
    for before, after in pairwise(boxes[:-1]):
        assert before is not None and after is not None
        assert abs(after["y"] + after["height"] - before["y"]) < 4, "each bar begins where the one before it ends"
        assert after["height"] < whole["height"]


@pytest.mark.parametrize("width", [1280, 390])
def test_a_night_is_drawn_high_enough_to_be_read(
    serve: Callable[..., Served], show: Callable[..., Desk], width: int
) -> None:
    """Lines of two numbers at the axis that are nearer than 25 px are hard to tell apart."""
    desk = show(serve("whimbrel"), "heat")
    found = chart(desk, NIGHT)
    desk.page.set_viewport_size({"width": width, "height": 900})
    desk.at_rest()
    lines = found.locator(".tick path").evaluate_all("all => all.map(one => one.getBoundingClientRect().y).sort()")
    ups = sorted(lines)
    assert ups[-1] - ups[0] > 240.0 and min(more - less for less, more in pairwise(ups)) > 25.0
