"""What is typed is kept: the tab closed at once, the line lost, an answer about something else, too much at once."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from playwright.sync_api import expect

from tests.browser.driven import Desk, Served
from tests.browser.test_rig_file import SMALL, show_second, typing_while_it_changes_on_the_disk
from tests.lanes import every_so_many

PAUSE = (
    "{ const after = setTimeout; window.setTimeout = (does, by, ...more) => by === 150 ? 0 : after(does, by, ...more) }"
)
"""Lets a page never come to send by itself what is typed: as if all that follows came at once."""
TYPED = SMALL.replace("weight: 30", "weight: 35")


def typing(served: Served, show: Callable[..., Desk]) -> Desk:
    """Type something that is not sent yet."""
    desk = show(served)
    desk.page.add_init_script(PAUSE)
    desk.page.reload()
    desk.go("file")
    desk.type_at("weight: 30", "35", rubbed_out=2)
    expect(desk.editor).to_contain_text("weight: 35")
    return desk


@pytest.mark.parametrize("how", every_so_many(["closed", "left", "loaded anew"], 2))
def test_what_was_typed_when_the_tab_was_closed_is_there(
    serve: Callable[..., Served], show: Callable[..., Desk], how: str
) -> None:
    served = serve(text=SMALL)
    desk = typing(served, show)
    other = show_second(desk)
    assert served.text == SMALL
    if how == "closed":
        desk.page.close(run_before_unload=True)
    elif how == "left":
        desk.page.goto("about:blank")
    else:
        desk.page.reload()
        expect(desk.editor).to_contain_text("weight: 35")
    served.written(lambda now: now == TYPED)
    other.go("file")
    expect(other.editor).to_contain_text("weight: 35")
    other.page.get_by_role("button", name="Undo").click()
    served.written(lambda now: now == SMALL)
    assert not other.faults


def test_what_was_typed_when_the_line_was_lost_is_there(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = typing(served, show)
    desk.may_lose = True
    served.kill()
    expect(desk.banner).to_contain_text("Not connected")
    assert served.text == SMALL
    served.start()
    other = Desk(desk.page.context.new_page(), served)
    other.page.goto(served.link)
    served.written(lambda now: now == TYPED)
    expect(desk.editor).to_contain_text("weight: 35")
    expect(desk.banner).to_have_count(0)


def test_what_was_typed_when_both_program_and_tab_were_closed_is_there(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = typing(served, show)
    desk.may_lose = True
    served.kill()
    expect(desk.banner).to_contain_text("Not connected")
    context = desk.page.context
    desk.page.goto("about:blank")
    served.start()
    other = Desk(context.new_page(), served)
    other.page.goto(served.link)
    served.written(lambda now: now == TYPED)
    assert not other.faults


def test_an_answer_about_something_else_takes_no_typing_away(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = typing(served, show)
    desk.page.evaluate("location.hash = 'plan'")
    expect(desk.thing("parts[crate]")).to_be_attached()
    other = show_second(desk)
    desk.press("parts[crate]")
    other.thing("parts[crate]").focus()
    other.page.keyboard.press("Delete")
    served.written(lambda now: "crate" not in now)
    desk.page.mouse.up()
    desk.go("file")
    expect(desk.editor).to_contain_text("weight: 35")
    assert "weight: 35" in served.written(lambda now: "weight: 35" in now)
    assert not other.faults


def test_typing_that_meets_a_change_of_the_same_line_is_offered(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = typing(served, show)
    other = show_second(desk)
    desk.may_lose = True
    served.kill()
    expect(desk.banner).to_contain_text("Not connected")
    theirs = SMALL.replace("weight: 30", "weight: 44")
    served.file.write_text(theirs, encoding="utf-8")
    served.start()
    desk.page.context.new_page().goto(served.link)
    expect(desk.banner).to_contain_text("what was typed")
    assert served.text == theirs
    desk.page.get_by_role("button", name="Take them").click()
    view = desk.page.get_by_role("region", name="Two versions of the file")
    expect(view.locator("fieldset")).to_have_count(1)
    # What stands here is the other program's: nobody calls it theirs.
    stands = view.locator("fieldset div", has=desk.page.get_by_role("button", name="Keep what stands here"))
    expect(stands).to_contain_text("weight: 44")
    expect(view.get_by_role("button", name="Keep mine")).to_have_count(0)
    view.get_by_role("button", name="Take what was left").click()
    view.get_by_role("button", name="Write what is chosen").click()
    served.written(lambda now: now == TYPED)
    expect(view).to_have_count(0)
    desk.page.get_by_role("button", name="Undo").click()
    served.written(lambda now: now == theirs)
    other.faults.clear()  # its line was lost on purpose too


def test_more_than_a_rig_can_hold_is_not_put_in(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL)
    desk = show(served, "file")
    desk.editor.focus()
    desk.page.keyboard.press("Control+End")
    desk.page.evaluate("""() => {
      const data = new DataTransfer();
      data.setData("text/plain", "# a note\\n".repeat(150_000));
      document.activeElement.dispatchEvent(new ClipboardEvent("paste", { clipboardData: data, bubbles: true }));
    }""")
    expect(desk.banner).to_contain_text("longer than a rig file can be")
    desk.type_at("weight: 30", "35", rubbed_out=2)
    served.written(lambda now: now == TYPED)
    expect(desk.page.locator(".disk")).to_contain_text("in step")


def test_an_earlier_text_is_looked_at_and_brought_back(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL)
    desk = show(served, "file")
    open_it = desk.page.get_by_role("button", name="Earlier texts")
    open_it.click()
    expect(desk.page.locator(".earlier")).to_contain_text("None yet")
    desk.page.get_by_role("button", name="Back to the text").click()
    expect(open_it).to_be_focused()
    for before, typed in (("weight: 30", "35"), ("weight: 35", "38")):
        desk.type_at(before, typed, rubbed_out=2)
        served.written(lambda now, typed=typed: f"weight: {typed}" in now)
    desk.settled()
    latest = served.text
    open_it.click()
    texts = desk.page.locator(".earlier .texts button")
    expect(texts).to_have_count(2)
    texts.last.click()
    shown = desk.page.locator(".difference")
    expect(shown.locator("li.then")).to_contain_text("weight: 30")
    expect(shown.locator("li.now")).to_contain_text("weight: 38")
    expect(shown.locator("li.then mark")).to_have_text("0")
    shown.get_by_role("button", name="Bring this text back").click()
    served.written(lambda now: now == SMALL)
    expect(desk.editor).to_contain_text("weight: 30")
    desk.page.get_by_role("button", name="Undo").click()
    served.written(lambda now: now == latest)


def test_taking_up_what_was_left_undoes_nothing_done_since(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL + "# bolts: 10\n")
    desk = show(served, "file")
    typing_while_it_changes_on_the_disk(served, desk)
    take = desk.page.get_by_role("button", name="Take them")
    expect(take).to_be_visible()
    desk.type_at("weight: 30", "38", rubbed_out=2)
    served.written(lambda now: "weight: 38" in now)
    take.click()
    view = desk.page.get_by_role("region", name="Two versions of the file")
    expect(view.locator("fieldset")).to_have_count(1)
    expect(view).to_contain_text("# bolts: 107")
    view.get_by_role("button", name="Take what was left").click()
    view.get_by_role("button", name="Write what is chosen").click()
    saved = served.written(lambda now: "# bolts: 107" in now)
    assert "weight: 38" in saved
    expect(view).to_have_count(0)
    expect(take).to_have_count(0)
