"""Every screen, light and dark, at a desk and on a phone: nothing shuts anybody out; kept to be looked at."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect

from tests.browser.conftest import DESKTOP, PHONE
from tests.browser.driven import ROOT, Desk, Served

AXE = ROOT / "web" / "node_modules" / "axe-core" / "axe.min.js"
SHOTS = Path(__file__).parent / "shots"
SERIOUS = {"serious", "critical"}
BEYOND = "all => all.filter(one => one.getBoundingClientRect().right > innerWidth + 1).map(one => one.textContent)"


# By day every screen is looked at in the light at a desk, and every third one in the dark on a phone.
BY_NIGHT = pytest.mark.nightly
LOOKS = [
    pytest.param("light", DESKTOP, 1, id="light at a desk"),
    pytest.param("dark", PHONE, 3, id="dark on a phone, every third screen"),
    pytest.param("dark", PHONE, 1, id="dark on a phone", marks=BY_NIGHT),
    pytest.param("dark", DESKTOP, 1, id="dark at a desk", marks=BY_NIGHT),
    pytest.param("light", PHONE, 1, id="light on a phone", marks=BY_NIGHT),
]


@pytest.mark.parametrize(("theme", "size", "each"), LOOKS)
def test_no_screen_shuts_anybody_out(
    serve: Callable[..., Served], browser: Browser, theme: str, size: tuple[int, int], each: int
) -> None:
    served = serve("whimbrel")
    context = browser.new_context(viewport={"width": size[0], "height": size[1]}, color_scheme=theme, locale="en-US")
    desk = Desk(context.new_page(), served).open()
    found = []
    expect(desk.page.locator(".rail a").first).to_be_attached()
    links = desk.page.locator(".rail a").evaluate_all("all => all.map(one => one.hash.slice(1))")
    assert {"plan", "weight", "book"} <= set(links), "every screen the rail has is looked at"
    for screen in links[::each]:
        if screen != "plan":
            desk.go(screen)
        expect(desk.page.locator("#figure-tongue")).to_be_attached()
        desk.page.evaluate("document.fonts.ready")
        SHOTS.mkdir(exist_ok=True)
        desk.page.screenshot(path=SHOTS / f"{screen}-{theme}-{size[0]}.png")
        wide = desk.page.evaluate("document.documentElement.scrollWidth - innerWidth")
        if wide > 0:
            found.append(f"{screen}: {wide} px wider than the screen")
        beyond = desk.page.locator(".answer").evaluate_all(BEYOND)
        if beyond:
            found.append(f"{screen}: out of sight: {beyond}")
        found += [f"{screen}: {one}" for one in against(desk)]
    context.close()
    assert not found + desk.faults, "\n".join(found + desk.faults)


def against(desk: Desk) -> list[str]:
    """Return what axe finds serious; nothing where its file is not at hand, and the story says so."""
    if not AXE.is_file():
        pytest.skip("axe-core is not at hand (npm ci in web/): NO screen was looked at for accessibility")
    if not desk.page.evaluate("typeof axe === 'object'"):
        desk.page.evaluate(AXE.read_text(encoding="utf-8"))
    found = desk.page.evaluate(
        "axe.run(document, {runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa', "
        "'best-practice'], "
        "rules: {'label-content-name-mismatch': {enabled: true}}})"
        ".then((all) => all.violations.map((one) => ({id: one.id, impact: one.impact, "
        "nodes: one.nodes.slice(0, 3).map((node) => node.target.join(' ') + ' ' + (node.any[0]?.message ?? ''))})))"
    )
    return [f"{one['impact']} {one['id']}: {one['nodes']}" for one in found if one["impact"] in SERIOUS]


def test_the_first_page_shuts_nobody_out(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve())
    expect(desk.page.get_by_role("heading", name="Whose trailer is it?")).to_be_visible()
    SHOTS.mkdir(exist_ok=True)
    desk.page.screenshot(path=SHOTS / "first-light-1280.png", full_page=True)
    found = against(desk)
    desk.page.get_by_role("button", name="Dark", exact=True).click()
    desk.page.screenshot(path=SHOTS / "first-dark-1280.png", full_page=True)
    found += against(desk)
    desk.page.set_viewport_size({"width": PHONE[0], "height": PHONE[1]})
    desk.page.screenshot(path=SHOTS / "first-light-390.png")
    assert desk.page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    assert not found, "\n".join(found)


def test_what_comes_later_on_the_weight_screen_moves_nothing(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"), "weight")
    page = desk.page
    weighs = page.locator("figure.chart").filter(has_text="What it weighs").first
    expect(weighs.locator("svg")).to_be_visible()
    desk.at_rest()
    before = weighs.bounding_box()
    expect(page.locator("figure.chart", has_text="Load on the ball").locator("svg").first).to_be_visible()
    assert weighs.bounding_box() == before


OUT_OF_LINE = """all => all.filter((cell) => {
  const words = document.createRange();
  words.selectNodeContents(cell);
  const names = cell.getBoundingClientRect().x + 96;
  return [...words.getClientRects()].some((one) => one.width > 0 && one.x < names);
}).map((cell) => `${cell.dataset.column}: ${cell.textContent}`)"""


def test_no_word_of_a_cell_stands_among_the_names_of_the_columns_on_a_phone(
    serve: Callable[..., Served], browser: Browser
) -> None:
    served = serve("whimbrel")
    context = browser.new_context(viewport={"width": PHONE[0], "height": PHONE[1]}, locale="en-US")
    desk = Desk(context.new_page(), served).open("weight")
    cells = desk.page.locator(".table.many td", has=desk.page.locator("button ~ button"))
    expect(cells.first).to_be_attached()
    found = desk.page.locator(".table.many td").evaluate_all(OUT_OF_LINE)
    context.close()
    assert found == []
