"""Everything without a mouse."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.browser.driven import Desk, Served


def test_a_thing_is_reached_nudged_and_numbered_by_keys_alone(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve("whimbrel")
    desk = show(served)
    page, text = desk.page, served.text
    expect(desk.thing("parts[tools]")).to_be_attached()
    page.keyboard.press("Tab")
    expect(page.get_by_role("link", name="Skip to the sheet")).to_be_focused()
    page.keyboard.press("Enter")
    go_to(desk, "parts[tools]")
    expect(page.locator(".inhand.none")).to_be_visible()  # nothing that was passed is in hand
    page.keyboard.press("Shift+ArrowRight")
    nudged = served.written(lambda now: now != text)
    desk.settled()
    assert page.evaluate("document.activeElement.dataset?.of") == "parts[tools]", "the focus was lost by a nudge"
    page.keyboard.press("Alt+ArrowRight")
    served.written(lambda now: now != nudged)
    page.keyboard.press("Control+z")
    served.written(lambda now: now == nudged)
    page.keyboard.press("Control+z")
    served.written(lambda now: now == text)
    page.keyboard.press("Enter")
    expect(page.locator(".inhand input").first).to_be_focused()
    page.keyboard.press("Control+a")
    page.keyboard.type("20")
    page.keyboard.press("Enter")
    served.written(lambda now: now != text)
    desk.settled()
    assert changed(text, served.text) == [(line_of(text, "tools"), "{x: 20,")]
    page.keyboard.press("Escape")
    assert page.evaluate("document.activeElement.dataset?.of") == "parts[tools]"


def go_to(desk: Desk, of: str) -> None:
    """Go by the keys from what is before the sheet to a thing on it."""
    page = desk.page
    for _ in range(8):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.dataset?.of"):
            break
    for _ in range(120):
        if page.evaluate("document.activeElement.dataset?.of") == of:
            return
        page.keyboard.press("PageDown")
    raise AssertionError(f"{of} was not reached")


def line_of(text: str, name: str) -> str:
    """Return the line of a file that the place of a part is written on."""
    (found,) = [line for line in text.splitlines() if line.strip().startswith(f"{name}:") and "side:" in line]
    return found


def changed(before: str, after: str) -> list[tuple[str, str]]:
    """Return each line that was changed, as it was, with the first entry that it has now."""
    pairs = zip(before.splitlines(), after.splitlines(), strict=True)
    return [(old, new[new.index("{") :].split(" side:")[0]) for old, new in pairs if old != new]


def test_a_sheet_is_one_stop_and_what_is_passed_is_not_taken_in_hand(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    """On a crowded sheet the numbers of a thing are one key away, and Tab does not run through all of it."""
    desk = show(serve("gannet"))
    page = desk.page
    expect(desk.thing("parts[battery]")).to_be_attached()
    stops = "all => all.filter(one => one.tabIndex >= 0).length"
    things = page.locator("svg.sheet:not(.over) g.thing")
    assert things.count() > 100
    assert things.evaluate_all(stops) == 1
    page.locator("svg.sheet:not(.over) g.thing[tabindex='0']").focus()
    first = page.evaluate("document.activeElement.dataset.of")
    page.keyboard.press("PageDown")
    second = page.evaluate("document.activeElement.dataset.of")
    page.keyboard.press("PageDown")
    page.keyboard.press(",")
    assert page.evaluate("document.activeElement.dataset.of") == second != first
    page.keyboard.press("Enter")
    expect(page.locator(".inhand input").first).to_be_focused()
    name = second.partition("[")[2].rstrip("]")
    expect(page.locator(".inhand strong")).to_have_text(name)
    page.keyboard.press("Escape")
    page.keyboard.press("End")
    assert page.evaluate("document.activeElement.dataset.of") not in {first, second}
    expect(page.locator(".inhand strong")).to_have_text(name)
    page.keyboard.press("Tab")
    page.keyboard.press("Shift+Tab")
    assert things.evaluate_all(stops) == 1


def focused(desk: Desk) -> str:
    """Return the words on what has the focus, and nothing where it fell to the page."""
    found: str = desk.page.evaluate(
        "document.activeElement === document.body ? '' : document.activeElement.textContent"
    )
    return found


@pytest.mark.parametrize("size", [(1280, 720), (390, 844)])
def test_what_a_box_of_the_thing_in_hand_means_is_in_sight_at_it(
    serve: Callable[..., Served], show: Callable[..., Desk], size: tuple[int, int]
) -> None:
    desk = show(serve("whimbrel"))
    desk.page.set_viewport_size({"width": size[0], "height": size[1]})
    desk.take("parts[tools]")
    said = desk.page.locator(".inhand p.told")
    for name in ("x", "side", "z"):
        desk.page.locator(".inhand label", has_text=re.compile(f"^{name}$")).locator("input").focus()
        expect(said).to_have_text(re.compile(f"^{name}: ."))
        words, room = said.bounding_box(), desk.page.locator(".inhand").bounding_box()
        assert words is not None and room is not None
        assert words["y"] >= room["y"] and words["y"] + words["height"] <= room["y"] + room["height"], name


def test_the_focus_stays_where_something_was_done(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve("whimbrel")
    desk = show(served)
    page = desk.page
    expect(desk.thing("parts[tools]")).to_be_attached()
    page.get_by_role("button", name="Put a part in").press("Enter")
    expect(page.locator(".putin input").first).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.get_by_role("button", name="Put a part in")).to_be_focused()
    found = desk.finding("nobody wrote what seals gland")
    after_it = found.locator("xpath=following-sibling::*[1]").locator("summary").inner_text()
    found.locator("summary").press("Enter")
    found.get_by_role("button", name="I accept this").press("Enter")
    found.get_by_label("Why, in a few words").fill("looked at it in the rain")
    found.get_by_role("button", name="Write it down").press("Enter")
    served.written(lambda now: "looked at it in the rain" in now)
    expect(page.get_by_text("Accepted by the owner (")).to_be_visible()
    assert page.evaluate("document.activeElement.innerText") == after_it, "on what came up in its place"
    page.get_by_role("button", name="Undo").press("Enter")
    expect(page.get_by_role("button", name="Redo")).to_be_focused()
    page.get_by_role("button", name="Redo").press("Enter")
    expect(page.get_by_role("button", name="Print")).to_be_focused()


@pytest.mark.nightly
def test_the_focus_waits_for_the_smallest_change_and_stays_when_it_is_made(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve("whimbrel")
    desk = show(served)
    page, text = desk.page, served.text
    found = desk.finding("release-ramp is not fitted")
    found.locator("summary").press("Enter")
    found.get_by_role("button", name="Find the smallest change").press("Enter")
    expect(found.locator(".offer, [aria-disabled='true']").first).to_be_focused()
    expect(found.locator(".offer")).to_be_focused(timeout=60_000)  # the proof is a program of its own
    found.get_by_role("button", name="It is built: write it down").press("Enter")
    served.written(lambda now: now != text)
    desk.settled()
    assert page.evaluate("document.activeElement.closest('.findings') !== null"), focused(desk)


def test_a_box_keeps_what_is_typed_in_it_and_writes_it_once(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    """Slowly typed, key by key: nothing is written before the box is left, and the next box begins undisturbed."""
    served = serve("dunlin")
    desk = show(served)
    page, text = desk.page, served.text
    desk.take("parts[lathe]")
    boxes = page.locator(".inhand input")
    expect(boxes.first).to_have_value("900")
    boxes.first.click()
    page.keyboard.press("Control+a")
    page.keyboard.type("640", delay=120)
    page.wait_for_timeout(700)
    assert served.text == text, "what was being typed was written"
    page.keyboard.press("Tab")
    page.keyboard.press("Control+a")
    page.keyboard.type("left+150", delay=120)
    page.keyboard.press("Tab")
    served.written(lambda now: "{x: 640, side: left+150, z: floor, size: 900 x 320 x 420" in now)
    expect(boxes.first).to_have_value("640")
    expect(boxes.nth(1)).to_have_value("left+150")
    expect(desk.banner).to_have_count(0)


def test_undo_in_a_box_takes_back_what_was_typed_in_it_and_not_the_last_change_of_the_file(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve("whimbrel")
    desk = show(served)
    page, text = desk.page, served.text
    expect(desk.thing("parts[tools]")).to_be_attached()
    desk.thing("parts[tools]").focus()
    page.keyboard.press("Shift+ArrowRight")
    nudged = served.written(lambda now: now != text)
    desk.settled()
    page.keyboard.press("Enter")
    box = page.locator(".inhand input").first
    expect(box).to_be_focused()
    before = box.input_value()
    page.keyboard.press("End")
    page.keyboard.type("7")
    expect(box).to_have_value(f"{before}7")
    page.keyboard.press("Control+z")
    expect(box).to_have_value(before)
    page.keyboard.press("Escape")
    desk.settled()
    assert served.text == nudged


def test_quick_nudges_all_count(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve("dunlin")
    desk = show(served)
    desk.thing("parts[lathe]").focus()
    for _ in range(20):
        desk.page.keyboard.press("ArrowLeft")
        desk.page.wait_for_timeout(35)
    served.written(lambda now: "{x: 700, side: right-40" in now)
    expect(desk.banner).to_have_count(0)


def test_a_finding_and_its_line_are_reached_by_keys_alone(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"))
    page = desk.page
    expect(page.locator(".finding").first).to_be_visible()
    page.locator(".finding summary").first.focus()
    page.keyboard.press("Enter")
    expect(page.locator(".finding details").first).to_have_attribute("open", "")
    for _ in range(4):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.textContent.startsWith('Line ')"):
            break
    page.keyboard.press("Enter")
    expect(page.locator(".cm-activeLine")).to_be_visible()
    desk.drawn("file")
    assert page.evaluate("document.activeElement.closest('.cm-editor') !== null")


def test_an_answer_and_a_number_explain_themselves(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    page = desk.page
    page.locator(".answer > button").first.focus()
    page.keyboard.press("Enter")
    expect(page.locator(".answer .why").first).to_contain_text("First:")
    what = page.get_by_role("button", name="On the ball: what it is and how it is worked out", exact=True)
    what.focus()
    page.keyboard.press("Enter")
    expect(page.locator(".figure.shown .steps")).to_contain_text("Source:")
    page.keyboard.press("Escape")
    expect(page.locator(".figure.shown")).to_have_count(0)


def test_a_finding_is_accepted_with_a_note(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve("whimbrel")
    desk = show(served)
    found = desk.finding("nobody wrote what seals gland")
    found.locator("summary").click()
    found.get_by_role("button", name="I accept this").click()
    found.get_by_label("Why, in a few words").fill("looked at it in the rain")
    found.get_by_role("button", name="Write it down").click()
    saved = served.written(lambda now: "looked at it in the rain" in now)
    assert "accepted:" in saved
    expect(desk.page.get_by_text("Accepted by the owner (")).to_be_visible()
