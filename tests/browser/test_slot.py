"""What is open on a page goes with the stage, load state, vehicle and text somebody looks at: never another's papers.

And what cannot be fetched is not shown as it was before: it goes blank and says why.
"""

from __future__ import annotations

import json
import re
import signal
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Route, expect

from tests.browser.driven import Desk, Served
from tests.lanes import every_so_many

VAN = "  van: {what: van (demo), rating: 2000, unbraked: 750, nose_max: 90, kerb: 2100, ball_height: 520}\n"
PAPERS = ("Weight and balance", "Walk round before the road")
UNKNOWN_ROOM = "nobody has measured what is left"


def open_all(desk: Desk) -> None:
    """Open two papers, a working, and how a finding was reached that every text here has."""
    desk.go("book")
    for title in PAPERS:
        desk.page.locator("details.printed", has_text=title).first.locator("summary").click()
    desk.page.get_by_role("button", name="On the ball: what it is and how it is worked out", exact=True).click()
    desk.finding(UNKNOWN_ROOM).locator("summary").first.click()
    desk.finding(UNKNOWN_ROOM).get_by_role("button", name="How it was reached").click()


def shown(desk: Desk) -> dict[str, str]:
    """Wait until nothing open is being fetched and return what is shown."""
    papers = desk.page.locator("details.printed[open]")
    expect(papers).to_have_count(len(PAPERS))
    expect(desk.page.locator("details.printed.old, details.printed[open] > .empty")).to_have_count(0)
    expect(papers.last.locator(".page")).not_to_have_count(0)
    expect(desk.page.locator(".figure.shown .steps code").last).to_be_attached()
    expect(desk.page.locator(".reached", has_text="Working it out")).to_have_count(0)
    found = {title: papers.nth(at).text_content() or "" for at, title in enumerate(PAPERS)}
    found["working"] = desk.page.locator(".figure.shown .steps").inner_text()
    reached = desk.page.locator("details[open] > .reached")
    found["reached"] = reached.inner_text() if reached.count() else ""
    return found


def must_be_as_opened_anew(desk: Desk, before: dict[str, str], changed: str) -> None:
    """Hold what is open against the same opened on a fresh page, and what must have changed against what was."""
    expect(desk.page.locator(".figures.preview")).to_have_count(0)
    desk.page.wait_for_timeout(300)  # what is fetched anew has begun to be
    now = shown(desk)
    assert before[changed] != now[changed]
    desk.page.reload()
    open_all(desk)
    anew = shown(desk)
    # A finding of another choice is another: what was open of it is closed with it.
    assert now == (anew if now["reached"] else {**anew, "reached": ""})


@pytest.mark.parametrize(
    ("label", "value", "changed"),
    every_so_many([("As of", "finish", "working"), ("Loaded", "empty", "working"), ("Behind", "van", "working")], 3),
)
def test_what_is_open_goes_with_stage_load_state_and_vehicle(
    label: str, value: str, changed: str, serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve("dunlin")
    text = served.text.replace("\nframe:\n", f"{VAN}\nframe:\n", 1).replace(
        "nose_max: 75}", "nose_max: 75}\n  coupler_height: 430", 1
    )
    served.file.write_text(text, encoding="utf-8")
    desk = show(served)
    expect(desk.page.get_by_role("combobox", name="Behind")).to_be_visible()
    open_all(desk)
    before = shown(desk)
    desk.page.get_by_role("combobox", name=label).select_option(value)
    must_be_as_opened_anew(desk, before, changed)


def test_what_is_open_goes_with_the_text(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    """A heavier sleeper is another weight, and a line above is another line of whatever is told with its line."""
    served = serve("dunlin")
    desk = show(served)
    open_all(desk)
    before = shown(desk)
    heavier = served.text.replace("mam: 750 ", "mam: 740 ", 1).replace("weight: 84", "weight: 95", 1)
    assert heavier.count("\n") == served.text.count("\n") and heavier != served.text
    served.file.write_text(f"# one line more\n{heavier}", encoding="utf-8")
    expect(desk.page.locator("details[open] > .reached")).not_to_have_text(before["reached"])
    must_be_as_opened_anew(desk, before, "reached")


# ------------------------------------------------------------------ what cannot be fetched


def no_more(desk: Desk, of: str, status: int = 0) -> None:
    """Have every request for something fail from now on, on the line or by the program's own word."""

    def fails(route: Route) -> None:
        if status:
            route.fulfill(status=status, body="no")
        else:
            route.abort()

    desk.page.route(re.compile(of), fails)


def forgive(desk: Desk) -> None:
    """Take what the browser itself says of requests that were made to fail for no fault of the page."""
    desk.faults[:] = [one for one in desk.faults if "Failed to load resource" not in one]


@pytest.mark.parametrize("status", every_so_many([0, 500], 2))
def test_a_paper_that_cannot_be_fetched_goes_blank_and_says_why(
    status: int, serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("dunlin"))
    open_all(desk)
    shown(desk)
    no_more(desk, r"/(page|working|reason)\b", status)
    served = desk.served
    served.file.write_text(f"# one line more\n{served.text}", encoding="utf-8")
    papers = desk.page.locator("details.printed[open]")
    for at in range(len(PAPERS)):
        expect(papers.nth(at)).to_contain_text("Not shown: the program")
        expect(papers.nth(at).locator(".page")).to_have_count(0)
    expect(desk.page.locator(".figure.shown .steps")).to_contain_text("Not shown: the program")
    expect(desk.finding(UNKNOWN_ROOM).locator(".reached")).to_contain_text("Not shown: the program")
    desk.page.unroute_all()
    served.file.write_text(served.text.removeprefix("# one line more\n"), encoding="utf-8")
    shown(desk)
    forgive(desk)


def test_a_screen_that_cannot_be_fetched_goes_blank_says_why_and_comes_again(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("dunlin"))
    desk.go("weight")
    expect(desk.page.locator("main table >> visible=true").first).to_be_visible()
    no_more(desk, r"/screen/")
    desk.look_at(stage="finish")
    expect(desk.page.locator("main .empty")).to_contain_text("Not shown: the program did not answer")
    expect(desk.page.locator("main table")).to_have_count(0)
    desk.page.unroute_all()
    desk.page.get_by_role("button", name="Try again").click()
    expect(desk.page.locator("main table >> visible=true").first).to_be_visible()
    forgive(desk)


def test_the_solids_of_another_stage_are_not_left_standing(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("dunlin"))
    desk.go("solid")
    expect(desk.page.locator(".solid canvas, .solid svg").first).to_be_attached()
    no_more(desk, r"/solid/scene")
    desk.look_at(stage="finish")
    expect(desk.page.locator("main .empty")).to_contain_text("Not shown: the program did not answer")
    expect(desk.page.locator(".solid")).to_have_count(0)
    desk.page.unroute_all()
    desk.look_at(stage="shelves")
    expect(desk.page.locator(".solid .bars output").first).to_have_text("shelves")
    forgive(desk)


# ------------------------------------------------------------------ what the tab kept


@pytest.mark.parametrize(
    "kept",
    every_so_many(
        [
            json.dumps({"stage": "no-such-stage", "load": "no-such-load", "vehicle": "no-such-vehicle"}),
            json.dumps({"stage": "finish", "load": 7, "of another kind": True}),
            "{half a text",
        ],
        2,
    ),
)
def test_a_choice_that_the_tab_kept_and_that_is_not_there_any_more_is_dropped(
    kept: str, serve: Callable[..., Served], show: Callable[..., Desk], tmp_path: Path
) -> None:
    desk = show(serve("dunlin"))
    desk.settled()
    desk.page.evaluate("(kept) => sessionStorage.setItem('slot', kept)", kept)
    desk.page.reload()
    desk.settled()
    desk.drawn("plan")
    wanted = "finish" if "finish" in kept else ""
    expect(desk.page.get_by_role("combobox", name="As of")).to_have_value(wanted)
    expect(desk.page.get_by_role("combobox", name="Loaded")).to_have_value("")
    assert desk.number("gross") > 0


def test_no_number_stands_under_a_choice_it_was_not_worked_out_for(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve("whimbrel")
    desk = show(served)
    desk.look_at(stage="finish")
    assert served.process is not None
    finish = desk.figure("tongue").inner_text()
    served.process.send_signal(signal.SIGSTOP)
    try:
        desk.page.get_by_label("As of", exact=True).select_option("measure")
        expect(desk.page.get_by_text("Working it out for what was chosen")).to_be_visible()
        expect(desk.figure("tongue")).to_be_hidden()
        expect(desk.page.locator(".answers .word").first).to_be_hidden()
        expect(desk.page.locator(".findings .finding").first).to_be_hidden()
        expect(desk.page.get_by_label("As of", exact=True)).to_be_visible()
    finally:
        served.process.send_signal(signal.SIGCONT)
    expect(desk.figure("tongue")).to_be_visible()
    assert desk.figure("tongue").inner_text() != finish
    expect(desk.page.locator(".answers .word").first).to_be_visible()
    served.kill()
    expect(desk.page.get_by_label("As of", exact=True)).to_be_disabled()
