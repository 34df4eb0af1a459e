"""The file under the page: written by somebody else, gone, not to be written, left by a program that was killed."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import expect

from tests.browser.driven import Desk, Served
from tests.browser.test_rig_file import SMALL, show_second


def test_other_lines_changed_on_the_disk_are_taken_in(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL)
    desk = show(served, "file")
    served.file.write_text(SMALL.replace("weight: 5", "weight: 6"), encoding="utf-8")
    expect(desk.editor).to_contain_text("weight: 6")
    desk.type_at("weight: 30", "31", rubbed_out=2)
    saved = served.written(lambda now: "weight: 31" in now)
    assert saved == SMALL.replace("weight: 5", "weight: 6").replace("weight: 30", "weight: 31")


def in_conflict(served: Served, desk: Desk) -> str:
    """Change the same lines here and on the disk, and return what is on the disk."""
    desk.type_at("weight: 5", "8", rubbed_out=1)
    served.written(lambda now: "weight: 8" in now)
    # While the text does not read it is not written, however long that takes.
    desk.type_at("weight: 30", "[", rubbed_out=0)
    expect(desk.page.locator(".disk")).to_contain_text("does not read as a whole")
    theirs = SMALL.replace("weight: 30", "weight: 33").replace("weight: 5", "weight: 9")
    served.file.write_text(theirs, encoding="utf-8")
    expect(desk.page.get_by_role("region", name="Two versions of the file")).to_be_visible()
    return theirs


def test_the_same_lines_changed_in_both_are_for_the_owner(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = show(served, "file")
    theirs = in_conflict(served, desk)
    view = desk.page.get_by_role("region", name="Two versions of the file")
    write = view.get_by_role("button", name="Write what is chosen")
    expect(write).to_be_disabled()
    expect(view.locator("fieldset")).to_have_count(2)
    view.locator("fieldset", has_text="weight: 33").get_by_role("button", name="Take disk").click()
    expect(write).to_be_disabled()
    view.locator("fieldset", has_text="weight: 9").get_by_role("button", name="Keep mine").click()
    assert served.text == theirs, "nothing may be written before every block is decided"
    write.click()
    saved = served.written(lambda now: now != theirs)
    assert saved == SMALL.replace("weight: 30", "weight: 33").replace("weight: 5", "weight: 8")
    expect(view).to_have_count(0)
    expect(desk.editor).to_contain_text("weight: 33")


def test_a_third_change_begins_anew(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL)
    desk = show(served, "file")
    theirs = in_conflict(served, desk)
    third = theirs.replace("weight: 33", "weight: 37")
    served.file.write_text(third, encoding="utf-8")
    view = desk.page.get_by_role("region", name="Two versions of the file")
    expect(view).to_contain_text("weight: 37")
    expect(view.get_by_role("button", name="Write what is chosen")).to_be_disabled()
    assert served.text == third


def test_a_file_that_is_gone_is_written_again_when_asked(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = show(served)
    expect(desk.thing("parts[bench]")).to_be_attached()
    served.file.unlink()
    expect(desk.banner).to_contain_text("no longer there")
    desk.page.get_by_role("button", name="Write it again").click()
    expect(desk.banner).to_have_count(0)
    assert served.text == SMALL


def test_bytes_that_are_no_text_are_shown_and_not_written(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    data = SMALL.replace("Small", "Caf\xe9").encode("latin-1")
    served = serve(text=data)
    desk = show(served)
    expect(desk.page.locator(".disk")).to_contain_text("not UTF-8")
    banner = desk.page.locator(".banner")
    expect(banner).to_contain_text("Nothing can be changed")
    expect(banner.get_by_role("link", name="Save a copy elsewhere")).to_be_visible()
    desk.drag("parts[bench]", 254)
    assert served.file.read_bytes() == data


def test_a_folder_that_takes_nothing_is_said(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL)
    desk = show(served)
    expect(desk.thing("parts[bench]")).to_be_attached()
    in_the_way = served.folder / ".boxwright"  # where texts are kept beside the file: forbidden to every account alike
    in_the_way.write_text("in the way", encoding="utf-8")
    desk.drag("parts[bench]", 254)
    expect(desk.banner).to_contain_text("could not be written")
    expect(desk.banner).to_contain_text("kept in this page and its program only")
    with desk.page.expect_download() as saved:
        desk.page.get_by_role("link", name="Save a copy elsewhere").click()
    assert saved.value.suggested_filename == "rig.yaml"
    copy = saved.value.path().read_text(encoding="utf-8")
    assert copy != SMALL and copy.count("\n") == SMALL.count("\n")
    assert served.text == SMALL
    in_the_way.unlink()
    served.written(lambda now: now == copy)
    expect(desk.banner).to_have_count(0)


def test_killed_and_started_again_it_takes_up_where_it_was(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = show(served)
    desk.drag("parts[bench]", 254)
    saved = served.written(lambda now: now != SMALL)
    desk.may_lose = True
    served.kill()
    expect(desk.banner).to_contain_text("Not connected")
    expect(desk.page.get_by_role("button", name="Undo")).to_be_disabled()
    assert served.text == saved
    served.start()
    other = Desk(desk.page.context.new_page(), served)
    other.page.goto(served.link)
    expect(other.thing("parts[bench]")).to_be_attached()
    expect(desk.banner).to_have_count(0)
    desk.drag("parts[bench]", -254)
    served.written(lambda now: now != saved)
    assert not other.faults


def test_what_was_dropped_just_before_the_kill_is_not_lost(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = show(served)
    desk.may_lose = True
    desk.drag("parts[bench]", 254)
    expect(desk.page.get_by_role("button", name="Undo")).to_be_enabled()
    served.kill()
    expect(desk.banner).to_contain_text("Not connected")
    served.start()
    other = Desk(desk.page.context.new_page(), served)
    other.page.goto(served.link)
    expect(other.thing("parts[bench]")).to_be_attached()
    if served.text == SMALL:  # killed before it was written: what was done stands beside the file and is offered
        expect(other.page.get_by_text("an earlier session left changes")).to_be_visible()
        other.page.get_by_role("button", name="Take them").click()
    saved = served.written(lambda now: now != SMALL)
    assert "bench: {x: 40," not in saved


def test_two_tabs_are_one_rig(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL)
    desk = show(served)
    other = show_second(desk)
    expect(other.thing("parts[bench]")).to_be_attached()
    place = "g => g.getBBox().x"
    before = other.thing("parts[bench]").evaluate(place)
    desk.drag("parts[bench]", 254)
    served.written(lambda now: now != SMALL)
    for one in (desk, other):
        expect(one.page.get_by_role("button", name="Undo")).to_be_enabled()
        one.settled()
    assert desk.figure("tongue").inner_text() == other.figure("tongue").inner_text()
    other.page.wait_for_timeout(300)
    assert other.thing("parts[bench]").evaluate(place) > before
    other.page.get_by_role("button", name="Undo").click()
    served.written(lambda now: now == SMALL)
    expect(desk.page.get_by_role("button", name="Undo")).to_be_disabled()
    assert not other.faults


def test_an_edit_of_what_another_tab_took_out_is_refused_with_why(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = show(served)
    other = show_second(desk)
    expect(other.thing("parts[crate]")).to_be_attached()
    x, y, scale = other.press("parts[crate]")
    other.page.mouse.move(x + 254 / scale, y, steps=3)
    desk.thing("parts[crate]").focus()
    desk.page.keyboard.press("Delete")
    saved = served.written(lambda now: "crate" not in now)
    other.page.mouse.move(x + 300 / scale, y, steps=3)
    other.page.mouse.up()
    expect(other.banner).to_contain_text("crate")
    expect(other.page.locator("svg.over g")).to_have_count(0)
    assert served.text == saved


def test_typing_and_dragging_at_the_same_moment_harm_neither(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = show(served, "file")
    other = show_second(desk)
    expect(other.thing("parts[bench]")).to_be_attached()
    desk.type_at("z: floor, size: 6", "", rubbed_out=1)
    for number, typed in enumerate("123456789"):
        desk.page.keyboard.type(typed)
        if number % 3 == 1:
            other.thing("parts[bench]").focus()
            other.page.keyboard.press("Shift+ArrowRight")
            desk.editor.focus()
    saved = served.written(lambda now: "size: 123456789 x 6" in now)
    desk.settled()
    assert saved.count("bench: {x: ") == 1 and "bench: {x: 40," not in saved
    expect(desk.page.locator(".cm-line", has_text="bench:")).to_have_text(
        next(one for one in served.text.splitlines() if "bench:" in one)
    )
    assert not other.faults
