"""The line between page and program: lost at the worst moment, back too soon, an answer that comes too late."""

from __future__ import annotations

import json
from collections.abc import Callable
from contextlib import suppress
from typing import Any

from playwright.sync_api import Error, Route, WebSocketRoute, expect

from tests.browser.driven import Desk, Served
from tests.browser.test_rig_file import SMALL

FAR = 254.0
MOVED = "bench: {x: 50,"


class Line:
    """What goes between one page and its program, as a test wants it: passed on, held back, or lost."""

    def __init__(self, desk: Desk) -> None:
        self.said: list[dict[str, Any]] = []
        self.kept_back: list[str | bytes] = []
        self.loses_said, self.loses_told, self.holds = "", False, False
        self._way: WebSocketRoute | None = None
        desk.may_lose = True
        desk.page.route_web_socket("**/ws", self._opened)

    def _opened(self, way: WebSocketRoute) -> None:
        there = way.connect_to_server()
        self._way = way

        def says(text: str | bytes) -> None:
            one = json.loads(text)
            self.said.append(one)
            if one["t"] != self.loses_said:
                there.send(text)

        def tells(text: str | bytes) -> None:
            if self.holds:
                self.kept_back.append(text)
            elif not self.loses_told:
                way.send(text)

        way.on_message(says)
        there.on_message(tells)

    def tells(self, one: dict[str, Any]) -> None:
        """Tell the page something that its program never said."""
        assert self._way is not None
        self._way.send(json.dumps(one))

    def cut(self) -> None:
        """Let the line break."""
        assert self._way is not None
        self.loses_said, self.loses_told = "", False
        self._way.close(code=1011, reason="lost")

    def let_go(self) -> None:
        """Pass on what was held back, in its order."""
        assert self._way is not None
        self.holds = False
        while self.kept_back:
            self._way.send(self.kept_back.pop(0))

    def count(self, kind: str) -> int:
        """Return how many messages of a kind the page sent."""
        return sum(one["t"] == kind for one in self.said)


def until(desk: Desk, is_so: Callable[[], bool]) -> None:
    """Wait until something is so, while what goes over the line is passed on."""
    for _ in range(600):
        if is_so():
            return
        desk.page.wait_for_timeout(25)
    raise AssertionError(f"it never became so: {desk.served.text}")


def opened(served: Served, show: Callable[..., Desk]) -> tuple[Desk, Line]:
    desk = show(served)
    line = Line(desk)
    desk.page.reload()
    expect(desk.thing("parts[bench]")).to_be_attached()
    desk.at_rest()  # numbers and findings still to come would move the sheet under the hand
    return desk, line


def test_a_gesture_the_program_never_got_is_told_it_once_more(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk, line = opened(served, show)
    line.loses_said = "drop"
    desk.drag("parts[bench]", FAR)
    until(desk, lambda: line.count("drop") == 1)
    line.cut()
    until(desk, lambda: line.count("drop") == 2)
    until(desk, lambda: MOVED in served.text)
    expect(desk.banner).to_have_count(0)


def test_a_gesture_whose_answer_was_lost_is_not_made_twice(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk, line = opened(served, show)
    desk.thing("parts[bench]").focus()
    line.loses_told = True
    for _ in range(2):  # by the keys: the second waits for the answer to the first
        desk.page.keyboard.press("Shift+ArrowRight")
    until(desk, lambda: line.count("drop") == 1)
    until(desk, lambda: served.text != SMALL)
    once = served.text
    line.cut()
    until(desk, lambda: line.count("drop") == 2)
    until(desk, lambda: served.text not in {SMALL, once})
    desk.settled()
    undo = desk.page.get_by_role("button", name="Undo")
    undo.click()
    until(desk, lambda: served.text == once)
    undo.click()
    until(desk, lambda: served.text == SMALL)
    expect(undo).to_be_disabled()


def test_a_gesture_a_killed_program_may_have_had_is_asked_about(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk, line = opened(served, show)
    line.loses_said = "drop"
    desk.drag("parts[bench]", FAR)
    until(desk, lambda: line.count("drop") == 1)
    served.kill()
    line.cut()
    expect(desk.banner).to_contain_text("Not connected")
    served.start()
    desk.page.context.new_page().goto(served.link)
    expect(desk.banner).to_contain_text("a change of parts[bench] was on its way")
    expect(desk.page.locator("svg.over g")).to_have_count(0)
    assert line.count("drop") == 1 and served.text == SMALL


def test_nobody_takes_hold_before_the_program_is_known(serve: Callable[..., Served], show: Callable[..., Desk]) -> None:
    served = serve(text=SMALL)
    desk, line = opened(served, show)
    desk.drag("parts[bench]", FAR)
    until(desk, lambda: MOVED in served.text)
    desk.settled()
    served.kill()
    expect(desk.banner).to_contain_text("Not connected")
    line.holds, said = True, len(line.said)
    served.start()
    link = desk.page.context.new_page()
    link.goto(served.link)
    link.close()
    until(desk, lambda: bool(line.kept_back))
    expect(desk.banner).to_contain_text("Not connected")
    desk.drag("parts[bench]", -FAR)  # nobody is there to take it: it moves the sheet, and no thing
    assert [one["t"] for one in line.said[said:]] == ["hello"]
    line.let_go()
    expect(desk.banner).to_have_count(0)
    expect(desk.thing("parts[bench]")).to_be_attached()  # drawn anew: before, there is no sheet to be looked at whole
    desk.page.keyboard.press("0")
    desk.drag("parts[bench]", -FAR)
    until(desk, lambda: "bench: {x: 40," in served.text)


def test_a_screen_that_comes_late_is_not_shown_under_another_stage(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve("whimbrel")
    desk = show(served)
    desk.look_at(stage="finish")
    expect(desk.thing("parts[galley]")).to_be_attached()
    late: list[Route] = []
    desk.page.route("**/screen/plan?stage=safe*", lambda route: late.append(route))
    desk.look_at(stage="safe")
    until(desk, lambda: bool(late))
    with desk.page.expect_response("**/screen/plan?stage=liners*"):
        desk.look_at(stage="liners")
    answer = {"name": "plan", "title": "Late", "explains": "", "rev": 0, "pictures": [], "charts": [], "tables": [],
              "notes": ["too late"], "pages": [], "findings": [], "empty": "too late", "act": ""}  # fmt: skip
    for one in late:
        with suppress(Error):  # nobody waits for it any more
            one.fulfill(json=answer)
    with desk.page.expect_response("**/screen/plan?stage=finish*"):  # and by then the late one was heard, or never is
        desk.look_at(stage="finish")
    expect(desk.thing("parts[galley]")).to_be_attached()
    expect(desk.page.get_by_text("too late")).to_have_count(0)


def test_a_screen_made_of_an_older_text_is_asked_for_once_more(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk = show(served)
    expect(desk.thing("parts[bench]")).to_be_attached()
    asked: list[str] = []

    def hold_the_first(route: Route) -> None:
        asked.append(route.request.url)
        if len(asked) > 1:
            route.continue_()
            return
        answer = route.fetch()
        desk.page.keyboard.press("Control+z")
        served.written(lambda now: now == SMALL)
        route.fulfill(response=answer)

    desk.thing("parts[bench]").focus()
    desk.page.keyboard.press("Shift+ArrowRight")
    served.written(lambda now: now != SMALL)
    desk.settled()
    desk.page.route("**/screen/weight?*", hold_the_first)
    desk.go("weight")
    until(desk, lambda: len(asked) >= 2)
    expect(desk.page.get_by_role("button", name="Redo")).to_be_enabled()


def test_the_smallest_change_is_sought_once_however_often_it_is_asked_for(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    desk = show(serve("whimbrel"))
    line = Line(desk)
    desk.page.reload()
    found = desk.finding("release-ramp is not fitted")
    found.locator("summary").click()
    line.holds = True
    found.get_by_role("button", name="Find the smallest change").click()
    being = found.get_by_role("button", name="Proving changes")
    being.press("Enter")
    being.press("Enter")
    desk.page.wait_for_timeout(200)
    assert line.count("seek") == 1
    line.let_go()
    expect(found.locator(".offer")).to_be_visible()


def test_a_text_that_has_gone_another_way_is_asked_for_anew_and_not_while_somebody_types(
    serve: Callable[..., Served], show: Callable[..., Desk]
) -> None:
    served = serve(text=SMALL)
    desk, line = opened(served, show)
    desk.go("file")
    expect(desk.page.locator(".cm-content")).to_be_visible()
    begun = line.count("hello")

    def told(length: int, text: str | None = None) -> int:
        """Tell the page how long the program's text is, and return how often it has asked for that since."""
        line.tells({"t": "text", "rev": 0, "length": length, "changes": [], "text": text, "by_another": False})
        desk.page.wait_for_timeout(300)
        return line.count("hello") - begun

    assert told(len(SMALL)) == 0, "it is as long as it should be"
    assert told(len(SMALL) + 1, SMALL) == 0, "a whole text is believed, or it would be asked for without end"
    assert told(len(SMALL) + 1) == 1
    assert told(len(SMALL)) == 1
    line.holds = True
    desk.page.locator(".cm-content").press("Control+End")
    desk.page.keyboard.type("# more")
    assert told(len(SMALL) + 1) == 1, "what is typed is not answered yet: nobody knows how long the text should be"
    line.let_go()
    served.written(lambda now: now.endswith("# more"))
