"""The solid view: its words where nothing can be painted, and one look at what is painted, in a browser of its own."""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
import trimesh
from playwright.sync_api import Browser, Page, Playwright, expect

from boxwright.render.glb import COLOURS
from tests.browser.conftest import ARGUMENTS, CHROMIUM, DESKTOP
from tests.browser.driven import Desk, Served

PAINTING = [*(one for one in ARGUMENTS if one not in {"--disable-gpu", "--use-angle=default"}),
            "--use-angle=swiftshader", "--enable-unsafe-swiftshader"]  # fmt: skip
"""What paints without a card: slow, so that nothing else is driven with it."""
KEEPING = """
const got = HTMLCanvasElement.prototype.getContext;
HTMLCanvasElement.prototype.getContext = function (kind, more) {
  return got.call(this, kind, { ...more, preserveDrawingBuffer: true });
};
"""
"""So that what is painted can be read afterwards."""
SEEN = """
() => {
  const canvas = document.querySelector(".solid canvas"), context = canvas.getContext("webgl2");
  const found = new Uint8Array(canvas.width * canvas.height * 4);
  context.readPixels(0, 0, canvas.width, canvas.height, context.RGBA, context.UNSIGNED_BYTE, found);
  const seen = new Map();
  for (let place = 0; place < found.length; place += 4) {
    const colour = found[place] << 16 | found[place + 1] << 8 | found[place + 2];
    seen.set(colour, (seen.get(colour) ?? 0) + 1);
  }
  return { all: canvas.width * canvas.height, seen: [...seen.entries()] };
}
"""


@pytest.fixture
def painting(playwright: Playwright) -> Iterator[Browser]:
    found = playwright.chromium.launch(executable_path=CHROMIUM, args=PAINTING)
    yield found
    found.close()


def pick(page: Page, name: str) -> None:
    page.get_by_role("navigation", name="What stands").get_by_role("button", name=name, exact=True).click()


def test_without_three_dimensions_the_words_say_it_all(
    serve: Callable[..., Served], browser: Browser, tmp_path: Path
) -> None:
    context = browser.new_context(viewport={"width": DESKTOP[0], "height": DESKTOP[1]}, locale="en-US")
    context.add_init_script("HTMLCanvasElement.prototype.getContext = () => null")  # a browser that has none
    desk = Desk(context.new_page(), serve("whimbrel")).open("solid")
    page = desk.page
    expect(page.locator(".solid .board")).to_contain_text("shows no three dimensions")
    listed = page.get_by_role("navigation", name="What stands")
    expect(listed).to_contain_text("Things (")
    expect(listed.get_by_role("button", name="bunk", exact=True)).to_have_count(0)  # it comes at a later stage
    page.get_by_role("slider", name="Stage").press("End")
    pick(page, "bunk")
    held = page.get_by_role("group", name="bunk")
    expect(held).to_contain_text("stage bunk")
    expect(held).to_contain_text("weighs")
    with page.expect_download() as kept:
        page.get_by_role("link", name="Keep as GLB").click()
    scene = trimesh.load(io.BytesIO(Path(kept.value.path()).read_bytes()), file_type="glb", process=False)
    assert all(one.is_watertight for one in scene.geometry.values()) and len(scene.geometry) > 60
    held.get_by_role("button", name=re.compile(r"Line \d+")).click()
    desk.drawn("file")
    expect(page.locator(".cm-activeLine")).to_contain_text("bunk:")
    context.close()
    assert not desk.faults


def test_the_line_in_hand_is_the_thing_that_is_picked(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve("whimbrel")
    desk = show(served, "file")
    number = next(place for place, line in enumerate(served.text.splitlines(), 1) if line.startswith("  extinguisher:"))
    desk.line(number)
    desk.go("solid")
    expect(desk.page.get_by_role("group", name="extinguisher")).to_be_visible()


def test_a_thing_that_is_taken_out_is_gone_from_the_solids(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve("whimbrel")
    desk = show(served, "solid")
    listed = desk.page.get_by_role("navigation", name="What stands")
    expect(listed.get_by_role("button", name="extinguisher", exact=True)).to_be_visible()
    served.file.write_text(re.sub(r"(?m)^  extinguisher:.*\n", "", served.text), encoding="utf-8")
    expect(listed.get_by_role("button", name="extinguisher", exact=True)).to_have_count(0)


def test_the_trailer_is_painted_cut_and_turned(serve: Callable[..., Served], painting: Browser) -> None:
    """The one story that paints: most of the board is trailer, a section is filled, keys turn it."""
    context = painting.new_context(viewport={"width": DESKTOP[0], "height": DESKTOP[1]}, locale="en-US")
    context.add_init_script(KEEPING)
    desk = Desk(context.new_page(), serve("whimbrel")).open("solid")
    page, canvas = desk.page, desk.page.locator(".solid canvas")
    expect(canvas).to_have_attribute("data-painted", re.compile(r"\d+"))
    whole = painted(page)
    assert 0.2 < whole < 0.9
    page.get_by_role("slider", name="Stage").press("End")
    page.get_by_label("Section").select_option("along")
    expect(page.locator(".bar output").last).to_contain_text("behind the front stud face")
    expect(canvas).to_have_attribute("data-faces", re.compile(r"[1-9]\d*"))
    assert painted(page) < whole  # what lies ahead of the section is gone
    assert filled(page) > 0.002  # and where it was cut it is closed: colours that only cut faces have
    before = page.evaluate(SEEN)["seen"]
    canvas.focus()
    frames = int(canvas.get_attribute("data-painted") or 0)
    page.keyboard.press("ArrowRight")
    expect(canvas).to_have_attribute("data-painted", re.compile(rf"(?!{frames}$)\d+"))
    assert page.evaluate(SEEN)["seen"] != before
    context.close()
    assert not desk.faults


def painted(page: Page) -> float:
    """Return the share of the board that is not bare paper."""
    found = page.evaluate(SEEN)
    return float(1.0 - max(count for _, count in found["seen"]) / found["all"])


def filled(page: Page) -> float:
    """Return the share of the board in the flat colours that only a cut face has: wood and things, 22 % ink."""
    found = page.evaluate(SEEN)
    ink, share = (0x16, 0x21, 0x2B), 0.22
    flat = [tuple(round(255 * one * (1 - share) + dark * share) for one, dark in zip(COLOURS[stuff], ink, strict=True))
            for stuff in ("wood", "thing", "metal", "foam", "cargo")]  # fmt: skip
    near = [count for colour, count in found["seen"]
            if any(max(abs((colour >> by & 255) - one) for by, one in zip((16, 8, 0), cut, strict=True)) <= 1
                   for cut in flat)]  # fmt: skip
    return float(sum(near) / found["all"])
