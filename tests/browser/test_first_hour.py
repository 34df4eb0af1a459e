"""The first hour of somebody who has read nothing: from an empty folder to a rig put right and printed."""

from __future__ import annotations

import io
from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, expect
from pypdf import PdfReader

from tests.browser.driven import RIGS, Desk, Served, program
from tests.browser.test_rig_file import SMALL


def test_a_demo_is_opened_as_a_copy_of_ones_own(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve()
    desk = show(served)
    expect(desk.page.get_by_role("heading", name="Whose trailer is it?")).to_be_visible()
    desk.page.get_by_role("button", name="Dunlin").focus()
    desk.page.keyboard.press("Enter")
    expect(desk.page.locator(".answers .answer")).to_have_count(4)
    expect(desk.page.locator("g.thing").first).to_be_attached()
    expect(desk.page.locator("main")).to_be_focused()  # what was pressed is gone: the keys go on at the sheet
    assert (served.folder / "dunlin.yaml").read_bytes() == (RIGS / "dunlin.yaml").read_bytes()


def test_a_demo_never_takes_the_place_of_a_file(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve()
    (served.folder / "dunlin.yaml").write_text("mine", encoding="utf-8")
    desk = show(served)
    desk.page.get_by_role("button", name="Dunlin").click()
    expect(desk.page.locator(".disk")).to_contain_text("dunlin-2.yaml")
    assert (served.folder / "dunlin.yaml").read_text(encoding="utf-8") == "mine"


def test_a_start_from_nothing_known_shows_a_bare_box(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve()
    desk = show(served)
    desk.page.get_by_role("button", name="Begin my rig file").click()
    expect(desk.page.locator(".answers .answer")).to_have_count(4)
    assert (served.folder / "rig.yaml").is_file()
    expect(desk.page.locator(".answer.go")).to_have_count(0)


def test_what_cannot_be_understood_is_asked_again(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve()
    desk = show(served)
    desk.page.locator('input[name="length"]').fill("quite long")
    desk.page.get_by_role("button", name="Begin my rig file").click()
    box = desk.page.locator('input[name="length"]')
    told = desk.page.locator("label", has=box).get_by_role("alert")
    expect(told).to_contain_text('"quite long"')
    expect(desk.page.get_by_role("alert")).to_have_count(1)
    expect(box).to_be_focused()
    expect(box).to_have_attribute("aria-invalid", "true")
    expect(desk.page.locator("[aria-invalid]")).to_have_count(1)
    expect(box).to_have_value("quite long")
    where, under = box.bounding_box(), told.bounding_box()
    assert where is not None and under is not None
    assert 0 <= under["y"] - where["y"] - where["height"] < 12, "it is told at its box"
    assert 0 <= where["y"] < 720 - where["height"], "and the box is in sight"
    assert not list(served.folder.glob("*.yaml"))
    box.fill("12 ft")
    other = desk.page.locator('input[name="width"]')
    other.fill("wide enough")
    desk.page.get_by_role("button", name="Begin my rig file").click()
    expect(desk.page.locator("label", has=other).get_by_role("alert")).to_contain_text('"wide enough"')
    expect(desk.page.get_by_role("alert")).to_have_count(1)
    expect(other).to_be_focused()
    other.fill("6 ft")
    desk.page.get_by_role("button", name="Begin my rig file").click()
    expect(desk.page.locator(".answers .answer")).to_have_count(4)


def test_the_first_hour(serve: Callable[..., Served], show: Callable[..., Desk], context: BrowserContext) -> None:
    """Answers, a few things put in and dragged, an opening, the order sheet, a tape and a scale."""
    served = serve()
    desk = show(served)
    page = desk.page
    for name, typed in ANSWERS.items():
        page.locator(f'input[name="{name}"]').fill(typed)
    page.get_by_role("button", name="Begin my rig file").click()
    served.rig = "fern.yaml"
    expect(page.locator(".rig")).to_have_text("Fern")
    expect(desk.figure("tongue")).to_contain_text("180")
    expect(page.locator("svg.sheet").first).to_contain_text("144 in")
    # Things go in beside the plan; what is not known of one is left out.
    for name, entries in THINGS.items():
        put_in(desk, "Put a part in", {"name": name, **entries})
        expect(desk.thing(f"parts[{name}]")).to_be_attached()
    desk.settled()
    assert program("check", served.rig, folder=served.folder).returncode in {0, 1, 2}
    ball = desk.number("tongue")
    x, y, scale = desk.press("parts[battery]")
    page.mouse.move(x + 1500 / scale, y, steps=8)
    expect(page.locator(".figures.preview")).to_have_count(1)
    expect(desk.figure("tongue")).not_to_have_text(f"{ball:,.0f} lb")
    page.mouse.up()
    desk.settled()
    assert desk.number("tongue") < ball
    # A door is dragged along its wall until it stands where it should, and the order sheet is there to print.
    desk.go("elevations")
    put_in(desk, "Put an opening in", DOOR)
    before = served.written(lambda now: "door:" in now)
    expect(desk.thing("openings[door]")).to_be_attached()
    desk.settled()
    desk.drag("openings[door]", 200)
    served.written(lambda now: now != before)
    desk.go("book")
    page.locator("details.printed summary", has_text="Right wall, outside").click()
    expect(page.locator(".page svg").first).to_be_visible()
    # Minutes 40 to 60: a taped stud and a weighed ball are put down; what was planned becomes as built.
    desk.go("records")
    for kind, values in READINGS.items():
        put_down(desk, kind, values)
    saved = served.written(lambda now: "studs: left" in now and "tongue: 190" in now)
    desk.settled()
    expect(page.locator("main")).to_contain_text("public scale")
    page.get_by_role("button", name="Undo").click()
    served.written(lambda now: "studs: left" not in now)
    page.get_by_role("button", name="Redo").click()
    served.written(lambda now: now == saved)
    found = served.checked()
    assert not [one for one in found["problems"] if one["kind"] == "problem"], found["problems"]


def put_in(desk: Desk, words: str, entries: dict[str, str]) -> None:
    """Put a thing in by the form beside the sheet."""
    desk.page.get_by_role("button", name=words).click()
    form = desk.page.get_by_role("form", name=words)
    for name, typed in entries.items():
        form.locator(f'input[name="{name}"]').fill(typed)
    form.get_by_role("button", name="Put it in").click()
    expect(form).to_have_count(0)


def test_what_cannot_be_put_in_stays_in_its_form(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL)
    desk = show(served)
    desk.page.get_by_role("button", name="Put a part in").click()
    form = desk.page.get_by_role("form", name="Put a part in")
    for name, typed in (("name", "bench"), ("x", "12"), ("weight", "30")):
        form.locator(f'input[name="{name}"]').fill(typed)
    form.get_by_role("button", name="Put it in").click()
    expect(form.get_by_role("alert")).to_contain_text("bench")
    expect(form.locator('input[name="x"]')).to_have_value("12")
    form.locator('input[name="name"]').fill("chest")
    form.get_by_role("button", name="Put it in").click()
    expect(form).to_have_count(0)
    assert "chest: {x: 12" in served.written(lambda now: "chest" in now)


ANSWERS = {
    "name": "fern", "country": "US-NC", "length": "12 ft", "width": "77 in", "height": "78 in", "coupler": "48 in",
    "axle": "80 in", "gvwr": "3500 lb", "gawr": "3500 lb", "empty": "1500 lb", "tongue": "180 lb",
    "studs": "16",
}  # fmt: skip
THINGS = {
    "bed": {"x": "60", "side": "left", "z": "floor+18", "size": "75 x 54 x 4", "weight": "80"},
    "battery": {"x": "4", "side": "right-2", "size": "13 x 7 x 9", "weight": "30"},
    "water": {"x": "10", "side": "left+2", "size": "18 x 18 x 12"},
    "cargo-box": {"x": "100", "side": "right-4", "size": "30 x 20 x 18", "weight": "120"},
}
DOOR = {"name": "door", "wall": "right", "x": "30", "z": "0", "width": "32", "height": "72"}
READINGS = {
    "ticket": {"axles": "1320", "tongue": "190", "with": "public scale", "stage": "measure"},
    "studs": {"of": "left", "values": "0=0 1=16 1/8 2=32", "date": "2026-11-20"},
}


def put_down(desk: Desk, kind: str, values: dict[str, str]) -> None:
    """Put a reading down in the form of its kind."""
    desk.page.get_by_role("button", name="Put a reading down").click()
    desk.page.get_by_label("What was read").select_option(kind)
    form = desk.page.locator("form.asked")
    for name, typed in values.items():
        field = form.locator(f'[name="{name}"]')
        if field.evaluate("one => one.tagName") == "SELECT":
            field.select_option(typed)
        else:
            field.fill(typed)
    form.get_by_role("button", name="Put it down").click()
    expect(form).to_have_count(0)


def test_a_bare_file_asks_its_first_measures(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text="# mine\n")
    desk = show(served)
    form = desk.page.get_by_role("form", name="First measures")
    form.locator('input[name="length"]').fill("quite long")
    form.locator('input[name="width"]').fill("77")
    form.get_by_role("button", name="Write them down").click()
    expect(form.get_by_role("alert")).to_contain_text("quite long")
    expect(form.locator('input[name="width"]')).to_have_value("77")
    assert served.text == "# mine\n"
    for name, typed in (("length", "12 ft"), ("height", "78"), ("coupler", "48"), ("axle", "80"), ("studs", "16")):
        form.locator(f'input[name="{name}"]').fill(typed)
    form.get_by_role("button", name="Write them down").click()
    expect(desk.page.locator("svg.sheet").first).to_contain_text("144 in")
    desk.settled()
    assert served.text.startswith("# mine\n")
    expect(desk.page.get_by_role("button", name="First measures: 4 still asked")).to_be_visible()
    desk.page.get_by_role("button", name="Undo").click()
    served.written(lambda now: now == "# mine\n")


def test_a_reading_that_cannot_be_read_stays_in_its_form(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"), "records")
    desk.page.get_by_role("button", name="Put a reading down").click()
    form = desk.page.locator("form.asked")
    form.locator('input[name="axles"]').fill("heavy")
    form.locator('input[name="note"]').fill("in the rain")
    form.get_by_role("button", name="Put it down").click()
    expect(form.get_by_role("alert")).to_contain_text("heavy")
    expect(form.locator('input[name="note"]')).to_have_value("in the rain")
    form.locator('input[name="note"]').press("Escape")
    expect(form).to_have_count(0)
    expect(desk.page.get_by_role("button", name="Put a reading down")).to_be_focused()


@pytest.mark.nightly
def test_two_seeded_problems_are_put_right(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve("whimbrel")
    first = served.text
    desk = show(served)
    page = desk.page
    # By dragging: behind the borrowed pickup the finished trailer is too heavy on the ball.
    page.get_by_role("combobox", name="Behind").select_option("borrowed")
    desk.look_at(stage="finish", load="departure")
    stop = page.locator(".findings .finding.stop", has_text="over the limit of borrowed of 480 lb")
    desk.all_findings()
    expect(stop).to_have_count(1)
    for of in ("parts[fridge]", "parts[tools]", "parts[field-boxes]"):
        if stop.count():
            steps = served.text
            desk.drag(of, 2200)
            served.written(lambda now, steps=steps: now != steps)
            desk.settled()
    desk.all_findings()
    expect(stop).to_have_count(0)
    dragged = served.text
    # By the offered change: going home the ball is light while the front is still empty.
    page.get_by_role("combobox", name="Behind").select_option("pickup")
    desk.look_at(stage="foam", load="going-home")
    light = desk.finding("below the least share")
    expect(light).to_be_visible()
    light.locator("summary").click()
    light.get_by_role("button", name="Find the smallest change").click()
    expect(light.locator(".offer code")).to_contain_text("parts[", timeout=60_000)  # proved by a program of its own
    light.get_by_role("button", name="Make this change").click()
    put_right = served.written(lambda now: now != dragged)
    desk.settled()
    desk.all_findings()
    expect(page.locator(".findings > ul > .finding", has_text="below the least share")).to_have_count(0)
    # Undo and redo over both.
    undo, redo = page.get_by_role("button", name="Undo"), page.get_by_role("button", name="Redo")
    undo.click()
    served.written(lambda now: now == dragged)
    while undo.is_enabled():
        before = served.text
        undo.click()
        served.written(lambda now, before=before: now != before)
    assert served.text == first
    while redo.is_enabled():
        before = served.text
        redo.click()
        served.written(lambda now, before=before: now != before)
    assert served.text == put_right
    # Saved: ended, opened again, the same.
    desk.settled()
    desk.may_lose = True
    served.stop()
    served.start()
    page.goto(served.link)
    expect(page.locator("g.thing").first).to_be_attached()
    assert served.text == put_right


def test_the_window_is_moved_off_the_stud(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve("whimbrel")
    desk = show(served, "elevations")
    page = desk.page
    window = "openings[window-right]"
    expect(desk.finding("cuts the stud R7")).to_be_visible()
    desk.take(window)
    box = page.get_by_role("group", name="window-right: its numbers").first
    box.get_by_label("width", exact=True).fill("14")
    box.get_by_label("width", exact=True).press("Enter")
    served.written(lambda now: "x: 102, width: 14" in now)
    desk.settled()
    screen = page.evaluate("fetch('/screen/elevations').then((found) => found.json())")
    right = next(one["right"] for one in screen["pictures"] if window in one["movable"])
    text = served.text
    desk.drag(window, (290 if right == "+x" else -290))
    served.written(lambda now: now != text)
    desk.settled()
    desk.all_findings()
    expect(page.locator(".findings .finding", has_text="window-right from")).to_have_count(0)


def test_the_plan_and_a_sheet_of_the_book_print(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    desk = show(serve("whimbrel"))
    expect(desk.thing("parts[tools]")).to_be_attached()
    desk.at_rest()
    reasons = desk.page.locator(".answer .because").all_text_contents()
    assert len(reasons) == 4 and all(reasons)
    for size in ("A4", "Letter"):
        (plan,) = printed(desk, size)
        for reason in reasons:
            assert "".join(reason.split()) in "".join(plan.split()), "an answer on paper says why, whole"
        assert "tools" in plan and "On the ball" in plan
    desk.go("book")
    desk.page.locator("details.printed summary", has_text="Right wall, outside").click()
    expect(desk.page.locator(".page svg").first).to_be_visible()
    expect(desk.page.locator(".acts [role=status]")).to_be_empty()
    sheets = printed(desk, "Letter")
    assert len(sheets) == desk.page.locator(".page svg").count()
    assert "corner = 168" in sheets[0] and "On the ball" not in sheets[0]


def test_a_book_with_no_sheet_open_prints_what_to_do_and_opens_all_at_once(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve(text=SMALL), "book")
    expect(desk.page.locator("details.printed").first).to_be_attached()
    (only,) = printed(desk, "Letter")
    assert "No sheet is open here" in only
    desk.page.route("**/page/*", lambda route: None)
    desk.page.get_by_role("button", name="Open all the sheets").click()
    sheets = desk.page.locator("details.printed")
    opened = sheets.count()
    expect(desk.page.locator(".acts [role=status]")).to_contain_text(f"{opened} open sheets are being drawn")
    assert f"{opened} open sheets are not drawn" in printed(desk, "Letter")[0]
    desk.page.unroute("**/page/*")  # lets go what is held, too
    expect(desk.page.locator(".acts [role=status]")).to_be_empty()
    expect(desk.page.locator("details.printed[open] .page")).not_to_have_count(0)
    expect(desk.page.locator("details.printed[open]")).to_have_count(sheets.count())
    expect(desk.page.locator("details.printed > .empty")).to_have_count(0)
    pages = printed(desk, "Letter")
    assert len(pages) == desk.page.locator("details.printed .page").count()
    assert not [one for one in pages if "No sheet is open" in one or "not drawn" in one or not one.strip()]
    desk.page.get_by_role("button", name="Close them").click()
    expect(desk.page.locator("details.printed[open]")).to_have_count(0)


def printed(desk: Desk, size: str) -> list[str]:
    """Return the words on each page as it is printed."""
    data = desk.page.pdf(format=size, landscape=True, print_background=False)
    return [page.extract_text() for page in PdfReader(io.BytesIO(data)).pages]
