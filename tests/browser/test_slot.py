"""What is open on a page goes with the stage, load state and vehicle somebody looks at: never the papers of another."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import expect

from tests.browser.driven import Desk, Served


def test_an_open_paper_and_an_open_working_go_with_the_stage(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"))
    desk.go("book")
    paper = desk.page.locator("details.printed", has_text="Weight and balance").first
    paper.locator("summary").click()
    expect(paper.locator(".page").first).to_contain_text("stage liners")
    desk.page.get_by_role("button", name="All up: what it is and how it is worked out").click()
    steps = desk.page.locator(".figure.shown .steps code").last
    before = steps.inner_text()
    desk.look_at(stage="finish")
    expect(paper.locator(".page").first).to_contain_text("stage finish")
    expect(paper).not_to_contain_text("stage liners")
    expect(desk.page.locator(".figure.shown .steps code").last).not_to_have_text(before)
