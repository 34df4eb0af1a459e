"""What somebody may ask of a page: other colours, more contrast, no motion, twice the size, a narrow screen, paper."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from tests.browser.conftest import PHONE
from tests.browser.driven import Desk, Served
from tests.browser.test_looks import AXE
from tests.lanes import every_so_many

LEAST_PX = 11.0
MM = 96.0 / 25.4
LETTERS = """
() => [...document.querySelectorAll("svg.sheet:not(.over) text")]
  .filter((one) => one.getBoundingClientRect().width > 0)
  .map((one) => parseFloat(getComputedStyle(one).fontSize) * one.ownerSVGElement.getScreenCTM().a)
"""
NAMES = """
() => [...document.querySelectorAll("svg.sheet:not(.over) text")]
  .filter((one) => one.getBoundingClientRect().width > 0 && /[a-z]/.test(one.textContent)).length
"""
"""Names that stand where their things are; one without room is a number of the key."""
SHADE = "(one) => getComputedStyle(document.querySelector(one)).backgroundColor"


@pytest.mark.parametrize("screen", every_so_many(["plan", "elevations", "frame"], 3))
def test_letters_on_a_phone_are_read(serve: Callable[..., Served], show: Callable[..., Desk], screen: str) -> None:
    desk = show(serve("whimbrel"))
    desk.page.set_viewport_size({"width": PHONE[0], "height": PHONE[1]})
    if screen != "plan":
        desk.go(screen)
    expect(desk.page.locator("svg.sheet:not(.over) text").first).to_be_attached()
    desk.page.wait_for_function(f"() => ({LETTERS})().every((one) => one >= {LEAST_PX - 0.1})")
    assert len(desk.page.evaluate(LETTERS)) >= 12, "letters large enough to be read, and enough of them"


def test_what_is_small_is_named_when_somebody_comes_nearer(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"))
    expect(desk.thing("parts[tools]")).to_be_attached()
    few = desk.page.evaluate(NAMES)
    for _ in range(4):
        desk.page.get_by_role("button", name="Closer: Plan").click()
    desk.page.wait_for_function(f"() => ({NAMES})() > {few}")


def test_four_findings_are_read_beside_the_sheet(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    expect(desk.page.locator(".finding summary").nth(3)).to_be_in_viewport(ratio=1.0)
    expect(desk.page.locator(".picture .board")).to_be_in_viewport(ratio=1.0)
    expect(desk.page.locator("#answer-tow")).to_be_in_viewport(ratio=1.0)


def test_a_thumb_reaches_the_screens(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    desk.page.set_viewport_size({"width": PHONE[0], "height": PHONE[1]})
    desk.page.get_by_role("button", name="Screens", exact=True).click()
    expect(desk.page.locator(".rail a").first).to_be_visible()
    boxes = desk.page.locator(".rail a").evaluate_all(
        "all => all.map(one => one.getBoundingClientRect()).map(one => [one.top, one.bottom, one.height])"
    )
    assert boxes and all(high >= 44.0 for _, _, high in boxes)
    assert all(top >= 0.0 and bottom <= PHONE[1] for top, bottom, _ in boxes), "none has to be scrolled to"
    desk.page.get_by_role("button", name="Numbers and findings").click()
    expect(desk.page.locator(".rail")).to_be_hidden()
    expect(desk.page.locator("#figure-tongue")).to_be_in_viewport()


def test_twice_the_size_loses_nothing(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    desk.page.set_viewport_size({"width": 640, "height": 360})
    for screen in ("plan", "weight", "records"):
        if screen != "plan":
            desk.go(screen)
        assert desk.page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0, screen
    desk.go("plan")
    grip = desk.page.get_by_role("button", name="Closer: Plan")
    grip.scroll_into_view_if_needed()
    grip.click()
    assert desk.page.locator(".board").evaluate("one => one.getBoundingClientRect().height") >= 240


def enhanced(page: Page) -> list[str]:
    """Return what has less contrast than 7 to 1."""
    if not AXE.is_file():
        pytest.skip("axe-core is not at hand (npm ci in web/): contrast was NOT measured")
    if not page.evaluate("typeof axe === 'object'"):
        page.evaluate(AXE.read_text(encoding="utf-8"))
    found: list[str] = page.evaluate(
        "axe.run(document, {runOnly: {type: 'rule', values: ['color-contrast-enhanced']}, "
        "rules: {'color-contrast-enhanced': {enabled: true}}}).then((all) => all.violations.flatMap((one) => "
        "one.nodes.map((node) => node.target.join(' ') + ' ' + (node.any[0]?.message ?? ''))))"
    )
    return found


def test_more_contrast_is_given_where_it_is_asked_for(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    expect(desk.page.locator(".finding summary").first).to_be_visible()
    desk.page.emulate_media(contrast="more")
    for _ in range(2):
        assert enhanced(desk.page) == []
        desk.page.locator("header button", has_text=re.compile("^(Dark|Light)$")).click()


def test_colours_of_ones_own_leave_every_state_told(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    expect(desk.page.locator(".finding").first).to_be_visible()
    desk.page.emulate_media(forced_colors="active")
    assert desk.page.evaluate(SHADE, ".rail a[aria-current]") != desk.page.evaluate(SHADE, ".rail"), "where one is"
    edges = "one => getComputedStyle(one).borderTopWidth"
    assert desk.page.locator(".finding").first.evaluate(edges) == "1px"
    line = "one => { const style = getComputedStyle(one); return [style.stroke, style.fill]; }"
    stroke, fill = desk.page.locator(".sheet .thing polygon").first.evaluate(line)
    assert stroke != fill, "a thing can be told from its ground"


def test_nothing_moves_by_itself(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    desk.page.emulate_media(reduced_motion="reduce")
    desk.thing("parts[tools]").focus()
    desk.page.keyboard.press("Shift+ArrowRight")
    desk.settled()
    desk.page.locator(".finding summary").first.click()
    assert desk.page.evaluate("document.getAnimations().length") == 0


def test_the_focus_is_always_seen(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    expect(desk.page.locator(".finding").first).to_be_visible()
    unseen: list[str] = []
    stops = 0
    for _ in range(70):
        desk.page.keyboard.press("Tab")
        if desk.page.evaluate("document.activeElement === document.body"):
            break  # round the end of the page: what comes next is its first stop
        found = desk.page.evaluate(
            "() => { const one = document.activeElement; const style = getComputedStyle(one); "
            "const line = one.querySelector('.ln'); return [one.outerHTML.slice(0, 90), "
            "style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2, "
            "!!line && parseFloat(getComputedStyle(line).strokeWidth) > 3]; }"
        )
        stops += 1
        if not found[1] and not found[2]:
            unseen.append(found[0])
    assert unseen == []
    assert stops >= 25  # a page that lost its stops would show none unseen
    if stops < 70:
        desk.page.keyboard.press("Tab")
        expect(desk.page.locator("a.skip")).to_be_focused()


@pytest.mark.parametrize("theme", every_so_many(["dark", "light"], 2))
def test_paper_is_white_and_to_a_scale_that_is_said(
    serve: Callable[..., Served], show: Callable[..., Desk], theme: str
) -> None:
    desk = show(serve("whimbrel"))
    expect(desk.thing("parts[tools]")).to_be_attached()
    if theme == "dark":
        desk.page.get_by_role("button", name="Dark", exact=True).click()
    whole = desk.page.locator("svg.sheet:not(.over)").get_attribute("viewBox")
    desk.page.get_by_role("button", name="Closer: Plan").click()
    desk.page.emulate_media(media="print")
    desk.page.evaluate("dispatchEvent(new Event('beforeprint'))")
    said = re.search(r"1 : (\d+)", desk.page.locator(".scale").inner_text())
    assert said is not None
    bar = desk.page.locator(".scale i").evaluate("one => one.getBoundingClientRect().width")
    assert bar == pytest.approx(100.0 * MM, abs=0.5)
    drawn = desk.page.locator("svg.sheet:not(.over)").evaluate("one => one.getScreenCTM().a")
    assert 1.0 / drawn * MM == pytest.approx(float(said.group(1)), rel=0.005), "mm of the rig in a mm of paper"
    assert desk.page.evaluate(SHADE, ".app") == "rgb(255, 255, 255)"
    assert desk.page.evaluate("getComputedStyle(document.querySelector('.app')).color") == "rgb(22, 33, 43)"
    wide = desk.page.locator(".sheet .cut").first.evaluate("one => parseFloat(getComputedStyle(one).strokeWidth)")
    assert wide == pytest.approx(0.5 * MM, abs=0.01), "a wide line is 0.5 mm"
    for gone in (".rail", ".foot", "header button", ".zoom", ".inhand"):
        expect(desk.page.locator(gone).first).to_be_hidden()
    desk.page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert desk.page.locator("svg.sheet:not(.over)").get_attribute("viewBox") != whole, "back where one was"
