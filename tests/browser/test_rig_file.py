"""The text beside the sheet: typed, marked where it is wrong, and never other than what the hand made of it."""

from __future__ import annotations

import re
from collections.abc import Callable

from playwright.sync_api import Locator, expect

from boxwright.rig.compose import read_rig
from tests.browser.driven import RIGS, Desk, Served

SMALL = """\
boxwright: 1
rig: Small
units: {length: in, weight: lb}
trailer:
  body: {length: 120, width: 72, height: 78}
  coupler_x: -40
  axles: {x: [70], gawr: [3500]}
  empty: {weight: 1200, tongue: 150}
stages: {all: {what: everything}}
parts:
  bench: {x: 40, side: left+1, z: floor, size: 30 x 20 x 18, weight: 30, stage: all}
  # a line of mine between the two
  crate: {x: 90, side: left+4, z: floor, size: 6 x 6 x 6, weight: 5, stage: all}
"""


def test_mistakes_of_the_text_are_counted_at_the_way_to_it_on_every_screen(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL.replace("  axles: {", "  axel: {"))
    desk = show(served)
    # by the command line's own reading: no axle is written, and axel is no key
    count = sum(one.kind == "problem" for one in read_rig(served.text).problems)
    assert count >= 2
    way = desk.page.locator(".rail a[href='#file']")
    expect(way).to_have_text(f"Rig file {count} not read in its text")
    served.file.write_text(SMALL, encoding="utf-8")
    left = sum(one.kind == "problem" for one in read_rig(SMALL).problems)
    expect(way).to_have_text(f"Rig file {left} not read in its text" if left else "Rig file")


def test_a_mistake_is_marked_on_its_line_and_the_numbers_follow(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve("whimbrel")
    desk = show(served, "file")
    desk.page.get_by_role("combobox", name="As of").select_option("finish")
    desk.page.locator(".rail a[href='#plan']").click()
    desk.take("parts[fridge]")
    desk.page.get_by_role("button", name="Line 144").click()
    expect(desk.page.locator(".cm-activeLine")).to_contain_text("fridge:")
    before = desk.number("gross")
    desk.type_at("weight: 41", "141", rubbed_out=2)
    served.written(lambda now: "weight: 141" in now)
    expect(desk.figure("gross")).to_contain_text(f"{before + 100:,.0f}")
    desk.type_at("weight: 141", "heavy", rubbed_out=3)
    expect(desk.page.locator(".cm-lintRange-error")).to_have_count(1)
    assert "fridge" in desk.page.locator(".cm-line", has=desk.page.locator(".cm-lintRange-error")).inner_text()
    # A line put in above: the mark goes down with its line.
    desk.page.keyboard.press("Control+Home")
    desk.page.keyboard.type("# a note of mine\n")
    desk.line(145)
    expect(desk.page.locator(".cm-lintRange-error")).to_have_count(1)
    assert "fridge" in desk.page.locator(".cm-line", has=desk.page.locator(".cm-lintRange-error")).inner_text()


def test_the_editor_follows_a_drag_and_an_undo(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve("whimbrel")
    desk = show(served)
    other = show_second(desk)
    other.go("file")
    desk.drag("parts[tools]", 254)
    saved = served.written(lambda now: now != (RIGS / "whimbrel.yaml").read_text(encoding="utf-8"))
    line = next(one for one in saved.splitlines() if one.strip().startswith("tools:"))
    number = saved.splitlines().index(line) + 1
    other.line(number)
    expect(other.page.locator(".cm-activeLine")).to_have_text(line)
    desk.page.get_by_role("button", name="Undo").click()
    expect(other.page.locator(".cm-activeLine")).not_to_have_text(line)
    served.written(lambda now: now == (RIGS / "whimbrel.yaml").read_text(encoding="utf-8"))
    assert not other.faults


def show_second(desk: Desk) -> Desk:
    """Open the same rig in a second tab of the same browser."""
    other = Desk(desk.page.context.new_page(), desk.served)
    other.page.goto(f"http://127.0.0.1:{desk.served.port}/")
    return other


def test_line_ends_of_another_system_stay(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL.replace("\n", "\r\n"))
    desk = show(served, "file")
    desk.type_at("weight: 30", "35", rubbed_out=2)
    saved = served.written(lambda now: "weight: 35" in now)
    assert saved == SMALL.replace("weight: 30", "weight: 35").replace("\n", "\r\n")
    desk.go("plan")
    desk.drag("parts[crate]", -254)
    saved = served.written(lambda now: "x: 90" not in now)
    assert saved.count("\r\n") == saved.count("\n")
    expect(desk.page.locator(".disk")).to_contain_text("in step")


def test_hostile_names_stay_text(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    evil = "<img src=x onerror=document.title=1>"
    text = SMALL.replace("  bench:", f'  "{evil}":').replace("rig: Small", f'rig: "{evil} ]]> \u202e&lt;b&gt;"')
    desk = show(serve(text=text))
    expect(desk.page.locator(".rig")).to_contain_text("<img src=x")
    for screen in ("elevations", "weight", "towing", "stages", "records", "book", "file", "plan"):
        desk.go(screen)
        expect(desk.page.locator("main img:not(.cm-widgetBuffer), header img, aside img")).to_have_count(0)
    expect(desk.page.locator("svg.sheet").first).to_contain_text("<img")
    assert desk.page.title() != "1"


def test_a_rig_that_does_not_read_still_opens(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL.replace("weight: 30", "weight: [30"))
    text = served.text
    desk = show(served, "file")
    expect(desk.page.locator(".cm-lintRange-error").first).to_be_attached()
    expect(desk.page.locator(".answers .answer.go")).to_have_count(0)
    desk.type_at("weight: [30", "", rubbed_out=3)
    desk.page.keyboard.type("30")
    assert served.written(lambda now: now != text) == SMALL


def test_words_are_offered_from_what_a_rig_may_hold(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve(text=SMALL), "file")
    desk.editor.focus()
    desk.page.keyboard.press("Control+End")
    desk.page.keyboard.type("meas")
    expect(desk.page.locator(".cm-tooltip-autocomplete")).to_contain_text("measured")
    desk.page.wait_for_timeout(200)  # the list is not open to a key that was on its way before it came
    desk.page.keyboard.press("Enter")
    expect(desk.editor).to_contain_text("measured")


def typing_while_it_changes_on_the_disk(served: Served, desk: Desk) -> Locator:
    """Type at the end of a line, without a rest, until another program's number stands in it; returns the line."""
    desk.type_at("# bolts: 10", "")
    line = desk.page.locator(".cm-line", has_text="# bolts:")
    served.file.write_text(SMALL + "# bolts: 55\n", encoding="utf-8")
    for _ in range(400):  # without a rest, so that nothing of it is sent before the disk is heard of
        desk.page.keyboard.press("7")
        if "55" in line.inner_text():
            break
    return line


def test_typing_not_sent_yet_is_not_joined_with_what_another_program_wrote_there(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL + "# bolts: 10\n")
    desk = show(served, "file")
    line = typing_while_it_changes_on_the_disk(served, desk)
    expect(desk.banner).to_contain_text("what was typed meets changes of the same lines")
    assert re.fullmatch(r"# bolts: 557{0,3}", line.inner_text())
    assert re.fullmatch(r"# bolts: 557{0,3}\n", served.text.removeprefix(SMALL))


def test_a_cursor_at_the_end_of_a_line_stays_there(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL + "# bolts: 10\n")
    desk = show(served, "file")
    desk.type_at("# bolts: 10", "")
    served.file.write_text(SMALL + "# bolts: 55\n", encoding="utf-8")
    expect(desk.page.locator(".cm-line", has_text="# bolts: 55")).to_be_visible()
    desk.page.keyboard.type("9")
    served.written(lambda now: now == SMALL + "# bolts: 559\n")
