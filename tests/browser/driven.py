"""The workbench as somebody uses it: a program of its own with a rig in a folder, and a page in a real browser."""

from __future__ import annotations

import json
import os
import re
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from playwright.sync_api import BrowserContext, ConsoleMessage, Locator, Page, Request, expect
from typer.testing import CliRunner

import boxwright
from boxwright.cli.commands import app
from tests.warm import Copy, workbench

ROOT = Path(__file__).resolve().parents[2]
SOURCES = Path(boxwright.__file__).resolve().parents[1]
RIGS = ROOT / "rigs"
LINK = re.compile(r"http://127\.0\.0\.1:(\d+)/enter\?t=\S+")
LB = 0.45359237
PATIENCE = 45_000
"""How long (ms) a page may take on a busy machine; nothing is timed here."""
OF_A_LOST_LINE = ("ERR_CONNECTION_RE", "ERR_CONTENT_LENGTH_MISMATCH", "ERR_EMPTY_RESPONSE", "ERR_INCOMPLETE_CHUNKED")
"""How the browser names an answer that was cut off: refused, reset, or ended on its way with the program."""
expect.set_options(timeout=PATIENCE)


def program(*words: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run one command of the program in a folder and return what it said."""
    return subprocess.run([sys.executable, "-m", "boxwright", *words], cwd=folder, env=_env(), text=True, timeout=120,
                          capture_output=True, check=False)  # fmt: skip


def _env() -> dict[str, str]:
    return {**os.environ, "PYTHONPATH": str(SOURCES), "PYTHONUNBUFFERED": "1", "COLUMNS": "200"}


class Served:
    """``boxwright open`` as a process of its own, until it is stopped."""

    def __init__(self, folder: Path, rig: str = "") -> None:
        self.folder, self.rig = folder, rig
        self.port, self.link = 0, ""
        self.process: subprocess.Popen[str] | Copy | None = None
        self.start()

    @property
    def file(self) -> Path:
        """Return the path of the rig file."""
        return self.folder / self.rig

    @property
    def text(self) -> str:
        """Return what the file holds now, exactly."""
        return self.file.read_bytes().decode()

    def start(self) -> None:
        """Start it, on the port it had before if it ran before."""
        words = [*([self.rig] if self.rig else []), "--no-browser", *(["--port", str(self.port)] if self.port else [])]
        self.process = workbench(words, self.folder, is_cold=bool(self.port))
        said = []
        assert self.process.stdout is not None
        for line in self.process.stdout:
            said.append(line)
            if found := LINK.search(line):
                self.link, self.port = found.group(0), int(found.group(1))
                return
        raise AssertionError(f"boxwright open ended and gave no link:\n{''.join(said)}")

    def kill(self) -> None:
        """End it as a power cut would."""
        assert self.process is not None
        self.process.send_signal(signal.SIGKILL)
        self.process.wait(PATIENCE / 1000)

    def stop(self) -> None:
        """End it as its owner does."""
        assert self.process is not None
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGINT)
            try:
                self.process.wait(PATIENCE / 1000)
            except subprocess.TimeoutExpired:
                self.kill()
        if self.process.stdout is not None:
            self.process.stdout.close()

    def written(self, is_so: Callable[[str], bool]) -> str:
        """Wait until the file is as it should be and return its text."""
        until = time.monotonic() + PATIENCE / 1000
        while not is_so(self.text):
            assert time.monotonic() < until, "the file was not written as it should be"
            time.sleep(0.05)
        return self.text

    def checked(self, *, stage: str = "", load: str = "") -> dict[str, Any]:
        """Return what ``boxwright check --json`` says of the saved file, in this process: it is not about the start."""
        words = ["check", str(self.file), "--json"]
        words += (["--stage", stage] if stage else []) + (["--load", load] if load else [])
        found: dict[str, Any] = json.loads(CliRunner().invoke(app, words).stdout)
        return found


class Desk:
    """One page of the workbench, with the words a test says what a hand does in."""

    def __init__(self, page: Page, served: Served) -> None:
        self.page, self.served = page, served
        self.may_lose = False
        """Whether the program is ended on purpose, so that the browser tells of a line that is gone."""
        self.faults: list[str] = []
        page.on("console", self._said)
        page.on("pageerror", lambda error: self.faults.append(f"page error: {error}"))
        page.on("request", self._asked)
        page.on("requestfinished", self._asked)

    def _said(self, message: ConsoleMessage) -> None:
        is_lost = any(word in message.text for word in ("WebSocket", "403", *OF_A_LOST_LINE))
        if "GL Driver Message" in message.text:  # a computer without a card paints slowly, and its browser says so
            return
        if message.type in {"error", "warning"} and not (self.may_lose and is_lost):
            self.faults.append(f"console {message.type}: {message.text}")

    def _asked(self, request: Request) -> None:
        if not request.url.startswith((f"http://127.0.0.1:{self.served.port}/", "data:", "blob:")):
            self.faults.append(f"foreign request: {request.url}")

    # ------------------------------------------------------------------ going somewhere

    def open(self, screen: str = "plan") -> Desk:
        """Open the page by the printed link, or again by its address."""
        self.page.goto(self.served.link)
        if screen != "plan":
            self.go(screen)
        return self

    def go(self, screen: str) -> None:
        """Choose a screen from the rail."""
        if self.page.evaluate("innerWidth") <= 760:
            self.page.get_by_role("button", name="Screens", exact=True).click()
        self.page.locator(f'.rail a[href="#{screen}"]').click()
        self.drawn(screen)

    def drawn(self, screen: str) -> None:
        """Wait until a screen is there."""
        expect(self.page.locator(f'.rail a[href="#{screen}"]')).to_have_attribute("aria-current", "page")
        expect(self.page.locator("main .empty", has_text="Being worked out")).to_have_count(0)
        if screen == "file":
            expect(self.page.locator(".cm-content")).to_be_visible()

    def look_at(self, *, stage: str | None = None, load: str | None = None) -> None:
        """Choose what stands and what is aboard."""
        if stage is not None:
            self.page.get_by_role("combobox", name="As of").select_option(stage)
        if load is not None:
            self.page.get_by_role("combobox", name="Loaded").select_option(load)

    # ------------------------------------------------------------------ things on the sheet

    def thing(self, of: str) -> Locator:
        """Return a thing on the sheet, the one below the lifted layer."""
        return self.page.locator(f'svg.sheet:not(.over) g.thing[data-of="{of}"]').first

    def take(self, of: str) -> None:
        """Take a thing in hand by the keys; the focus goes on to its numbers."""
        self.thing(of).focus()
        self.thing(of).press("Enter")
        expect(self.page.locator(".inhand input:focus")).to_have_count(1)

    def grip(self, of: str) -> tuple[float, float, float]:
        """Return a spot (px) where a hand can take hold of a thing, and millimetres in a pixel there."""
        expect(self.thing(of)).to_be_attached()
        expect(self.page.locator("#figure-tongue")).to_be_attached()
        expect(self.page.locator(".findings .finding, .findings .holds").first).to_be_attached()
        until = time.monotonic() + PATIENCE / 1000
        # A sheet changes its size while the rest of its page comes in: it lies still once it reads the same again.
        before, found = None, self.page.evaluate(GRIP, of)
        while (found is None or found != before) and time.monotonic() < until:
            self.page.wait_for_timeout(50)
            before, found = found, self.page.evaluate(GRIP, of)
        assert found, f"{of} cannot be taken hold of anywhere"
        return found["x"], found["y"], found["scale"]

    def press(self, of: str) -> tuple[float, float, float]:
        """Put the hand down on a thing."""
        x, y, scale = self.grip(of)
        self.page.mouse.move(x, y)
        self.page.mouse.down()
        return x, y, scale

    def drag(self, of: str, right_mm: float, up_mm: float = 0.0, *, steps: int = 8) -> None:
        """Drag a thing along the picture and let go."""
        x, y, scale = self.press(of)
        self.page.mouse.move(x + right_mm / scale, y - up_mm / scale, steps=steps)
        self.page.mouse.up()

    # ------------------------------------------------------------------ what the page says

    def figure(self, key: str) -> Locator:
        """Return a number beside the sheet."""
        return self.page.locator(f"#figure-{key}")

    def number(self, key: str) -> float:
        """Return a number beside the sheet as it reads now."""
        found = re.search(r"-?[\d,]+(\.\d+)?", self.figure(key).inner_text().replace("−", "-"))
        assert found, key
        return float(found.group(0).replace(",", ""))

    def settled(self) -> None:
        """Wait until no preview is shown and the file is written."""
        expect(self.page.locator(".figures.preview")).to_have_count(0)
        expect(self.page.locator(".disk")).to_contain_text("in step with the disk")

    def at_rest(self) -> None:
        """Wait until numbers, findings and letters are there: on a busy machine they come one after the other."""
        expect(self.page.locator("#figure-tongue")).to_be_attached()
        expect(self.page.locator(".findings .finding, .findings .holds").first).to_be_attached()
        self.settled()
        self.page.evaluate("document.fonts.ready")

    def all_findings(self) -> Locator:
        """Show every finding and return them."""
        expect(self.page.locator(".findings .finding, .findings .holds").first).to_be_attached()
        more = self.page.locator(".findings > button")
        if more.count() and more.get_attribute("aria-expanded") == "false":
            more.click()
        return self.page.locator(".findings > ul > .finding")

    def finding(self, says: str) -> Locator:
        """Return the finding that says something."""
        self.all_findings()
        return self.page.locator(".findings > ul > .finding", has_text=says).first

    @property
    def banner(self) -> Locator:
        """Return the line above the sheet that tells what stands in the way."""
        return self.page.locator(".banner")

    @property
    def editor(self) -> Locator:
        """Return the lines of the text that is being edited."""
        return self.page.locator(".cm-content")

    def type_at(self, before: str, typed: str, *, rubbed_out: int = 0) -> None:
        """Click behind a stretch of the text, rub out and type."""
        spot = self.page.evaluate(BEHIND, before)
        assert spot, f"{before!r} is not in sight in the editor"
        self.page.mouse.click(spot["x"], spot["y"])
        for _ in range(rubbed_out):
            self.page.keyboard.press("Backspace")
        self.page.keyboard.type(typed)

    def line(self, number: int) -> None:
        """Bring a line of the text into sight by way of the editor's own search for it."""
        self.page.evaluate("document.querySelector('.cm-content').focus()")
        self.page.keyboard.press("Control+Alt+g")
        field = self.page.locator(".cm-dialog input, .cm-gotoLine input")
        field.fill(str(number))
        field.press("Enter")


GRIP = """
(of) => {
  const group = document.querySelector(`svg.sheet:not(.over) g.thing[data-of="${of}"]`);
  if (!group) return null;
  group.scrollIntoView({ block: "nearest" });
  const scale = 1 / group.ownerSVGElement.getScreenCTM().a;
  for (const one of [...group.querySelectorAll("*"), group]) {
    const box = one.getBoundingClientRect();
    const spots = [[.5, .5], [.2, .5], [.8, .5], [.5, .15], [.5, .85], [.1, .1], [.9, .9], [.1, .9], [.9, .1]];
    for (const [right, down] of spots) {
      const x = box.x + box.width * right, y = box.y + box.height * down;
      if (document.elementFromPoint(x, y)?.closest("g.thing") === group) return { x, y, scale };
    }
  }
  return null;
}
"""
BEHIND = """
(text) => {
  const lines = document.querySelectorAll(".cm-line");
  for (const line of lines) {
    const at = line.textContent.indexOf(text);
    if (at < 0) continue;
    let left = at + text.length;
    const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (left <= node.length) {
        const range = document.createRange();
        range.setStart(node, Math.max(left - 1, 0));
        range.setEnd(node, left);
        const boxes = range.getClientRects();
        const box = boxes[boxes.length - 1];
        return { x: box.right, y: box.y + box.height / 2 };
      }
      left -= node.length;
    }
  }
  return null;
}
"""


def close(context: BrowserContext) -> None:
    """Close every page of a context."""
    for page in context.pages:
        page.close()
    context.close()
