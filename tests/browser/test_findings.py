"""Findings in the browser: how one was reached, what it asks to be written, and the change that was proved for it."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, expect

from tests.browser.driven import Desk, Served


def opened(desk: Desk, words: str) -> Locator:
    """Open a finding by its words, all of them being shown."""
    every = desk.page.locator(".findings > button")
    if every.get_attribute("aria-expanded") == "false":
        every.click()
    found = desk.page.locator(".findings .finding", has_text=words).first
    if found.locator("details").first.get_attribute("open") is None:
        found.locator("summary").first.click()
    return found


def test_a_finding_tells_how_it_was_reached_and_takes_its_answer(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve("whimbrel")
    desk = show(served)
    found = opened(desk, "deck-chairs is of unknown weight")
    found.get_by_role("button", name="How it was reached").click()
    reached = found.get_by_role("group", name="How it was reached")
    expect(reached).to_contain_text("does every part that stands have a weight")
    expect(reached).to_contain_text("weight of deck-chairs = unknown")

    box = found.get_by_label(re.compile("^weight of deck-chairs"))
    box.fill("banana")
    found.get_by_role("button", name="Write it").click()
    expect(found.locator(".blank .wrong")).to_contain_text('cannot read the mass "banana"')
    expect(box).to_have_attribute("aria-invalid", "true")
    box.fill("14")
    found.get_by_role("button", name="Write it").click()
    expect(desk.page.locator(".findings .finding", has_text="deck-chairs is of unknown weight")).to_have_count(0)
    served.written(lambda text: "weight: 14" in text and "banana" not in text)

    share = opened(desk, "the share of the weight on the ball")
    share.get_by_role("button", name="How it was reached").click()
    expect(share.locator(".step").last).to_contain_text("share = tongue / mass")


def at_stage(desk: Desk, stage: str) -> None:
    """Look at a stage that weighs otherwise, and wait for its findings: those of before are no longer there to open."""
    before = desk.figure("gross").inner_text()
    desk.page.get_by_label("As of", exact=True).select_option(stage)
    expect(desk.figure("gross")).not_to_have_text(before)


@pytest.mark.nightly
def test_a_change_that_was_proved_at_one_stage_is_not_offered_at_another(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"))
    at_stage(desk, "finish")
    found = opened(desk, "boat-fuel holds petrol inside with a sleeper")
    found.get_by_role("button", name="Find the smallest change").click()
    # The proof runs in a process of its own, which takes its time to start beside another browser.
    expect(found.get_by_role("button", name="Make this change")).to_be_visible(timeout=60_000)
    at_stage(desk, "heat")
    expect(desk.page.get_by_role("button", name="Make this change")).to_have_count(0)
    there = opened(desk, "boat-fuel holds petrol inside with a sleeper")
    expect(there.get_by_role("button", name="Find the smallest change")).to_be_visible()
    expect(there.get_by_role("button", name="Make this change")).to_have_count(0)


def test_what_is_written_as_built_is_for_the_owner_to_say(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"))
    found = opened(desk, "release-ramp is not fitted")
    found.get_by_role("button", name="Find the smallest change").click()
    expect(found.locator(".offer")).to_contain_text("Build it first", timeout=60_000)
    expect(found.get_by_role("button", name="It is built: write it down")).to_be_visible()
    expect(found.get_by_role("button", name="Make this change")).to_have_count(0)


def test_each_box_has_a_name_of_its_own_however_often_its_value_is_asked_for(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"), "weight")
    desk.at_rest()
    expect(desk.page.locator("main .blank input").first).to_be_attached()
    asked = desk.page.locator(".blank label").all_inner_texts()
    assert len(set(asked)) < len(asked), "some value is asked for in more than one place"
    ids = desk.page.locator("[id]").evaluate_all("all => all.map(one => one.id)")
    assert sorted(ids) == sorted(set(ids))
    beside = "all => all.every(one => one.control === one.parentElement.querySelector('input'))"
    assert desk.page.locator(".blank label").evaluate_all(beside)
