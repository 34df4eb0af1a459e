"""Everything without a mouse."""

from __future__ import annotations

from collections.abc import Callable

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
    for _ in range(120):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.dataset?.of === 'parts[tools]'"):
            break
    assert page.evaluate("document.activeElement.dataset.of") == "parts[tools]"
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
    for _ in range(120):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.matches('.inhand input')"):
            break
    page.keyboard.press("Control+a")
    page.keyboard.type("20")
    page.keyboard.press("Enter")
    served.written(lambda now: "tools:" in now and "{x: 20," in now)


def test_a_box_keeps_what_is_typed_in_it_and_writes_it_once(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    """Slowly typed, key by key: nothing is written before the box is left, and the next box begins undisturbed."""
    served = serve("dunlin")
    desk = show(served)
    page, text = desk.page, served.text
    desk.thing("parts[lathe]").focus()
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
