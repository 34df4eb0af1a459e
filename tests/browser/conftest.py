"""A real Chromium and a real program for every story. Without Chromium the stories are left out by name."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Playwright, sync_playwright

from tests.browser.driven import RIGS, Desk, Served

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or ""
ARGUMENTS = (
    "--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking "
    "--disable-component-update --disable-sync --use-angle=default"
).split()
DESKTOP, PHONE = (1280, 720), (390, 844)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Leave the stories out, and say why, where there is no browser."""
    if CHROMIUM:
        return
    here = Path(__file__).parent
    for item in items:
        if here in item.path.parents:
            item.add_marker(pytest.mark.skip(reason="no chromium on this computer: NOTHING of the page was tested"))


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    with sync_playwright() as found:
        yield found


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    found = playwright.chromium.launch(executable_path=CHROMIUM, args=ARGUMENTS)
    yield found
    found.close()


@pytest.fixture
def serve(tmp_path: Path) -> Iterator[Callable[..., Served]]:
    """Start the program on a copy of a demo rig, on a text, or on nothing; ended with the test."""
    running: list[Served] = []

    def started(demo: str = "", *, text: str | bytes = "", name: str = "rig.yaml") -> Served:
        rig = ""
        if demo:
            rig = f"{demo}.yaml"
            shutil.copy(RIGS / rig, tmp_path / rig)
        elif text:
            rig = name
            (tmp_path / rig).write_bytes(text.encode() if isinstance(text, str) else text)
        running.append(Served(tmp_path, rig))
        return running[-1]

    yield started
    for one in running:
        one.stop()


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """Return a browser of its own for one story: its cookies, its storage."""
    width, height = DESKTOP
    found = browser.new_context(viewport={"width": width, "height": height}, color_scheme="light", locale="en-US")
    yield found
    found.close()


@pytest.fixture
def show(context: BrowserContext) -> Iterator[Callable[..., Desk]]:
    """Open a page of a program; a console error, a page error or a foreign request fails the story."""
    shown: list[Desk] = []

    def opened(served: Served, screen: str = "plan") -> Desk:
        desk = Desk(context.new_page(), served)
        shown.append(desk)
        return desk.open(screen)

    yield opened
    faults = [fault for one in shown for fault in one.faults]
    assert not faults, "\n".join(faults)
