"""Print how long a hand waits for the workbench, in a real Chromium: drag to numbers, frames, opening, bytes, memory.

A latency runs from the time stamp of the pointer's event to the numbers in the page; the newest event before a preview
was sent is the one it answers. Nothing here fails: these numbers are looked at.

Usage: python benchmarks/workbench.py [--moves 250]     (needs the test extra, and chromium)
"""

from __future__ import annotations

import argparse
import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from math import sqrt
from pathlib import Path
from statistics import median, quantiles
from typing import NamedTuple

from playwright.sync_api import Browser, Page, sync_playwright

ROOT = Path(__file__).resolve().parents[1]
LINK = re.compile(r"http://127\.0\.0\.1:\d+/enter\?t=\S+")
ARGUMENTS = (
    "--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking "
    "--disable-component-update --disable-sync --use-angle=default"
).split()
REACH = 260.0
"""How far (px) the thing is drawn to and fro."""

WATCH = """
(() => {
  const seen = { waits: [], frames: [], usable: 0 };
  window.seen = seen;
  let moved = 0, before = 0;
  const sent = new Map(), answered = [];
  addEventListener("pointermove", (event) => (moved = event.timeStamp), true);
  // Heard before the page hears it: what it changes then is seen as the answer to this message.
  window.WebSocket = class extends WebSocket {
    constructor(...words) {
      super(...words);
      this.addEventListener("message", (event) => {
        const told = JSON.parse(event.data);
        if (told.t === "numbers" && told.preview) answered.push(told.seq);
      });
    }
    send(text) {
      const said = JSON.parse(text);
      if (said.t === "move") sent.set(said.seq, moved);
      super.send(text);
    }
  };
  new MutationObserver((changes) => {
    if (!seen.usable && document.querySelector("svg.sheet g.thing") && document.querySelector("#figure-tongue"))
      seen.usable = performance.now();
    const isAside = (one) => (one.target.parentElement ?? one.target).closest?.(".aside");
    if (!answered.length || !changes.some(isAside)) return;
    const now = performance.now();
    for (const seq of answered.splice(0)) if (sent.has(seq)) seen.waits.push(now - sent.get(seq));
  }).observe(document, { subtree: true, childList: true, characterData: true });
  const frame = (now) => {
    if (before) seen.frames.push(now - before);
    before = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
})()
"""
GRIP = """
() => {
  for (const group of document.querySelectorAll('svg.sheet:not(.over) g.thing[data-of^="parts["]')) {
    const box = group.querySelector(".ln").getBoundingClientRect();
    const x = box.x + box.width / 2, y = box.y + box.height / 2;
    if (box.width > 15 && document.elementFromPoint(x, y)?.closest("g.thing") === group) return [x, y];
  }
}
"""
"""Where a hand can take hold of a part."""


class Seen(NamedTuple):
    """What one rig gave: latencies and frames (ms), opening cold and warm (ms), bytes, memory (MB)."""

    waits: list[float]
    frames: list[float]
    first: float
    again: float
    size: int
    memory: float


def yardstick() -> float:
    """Return the CPU time (ms) of 100,000 square roots here and now: how slow the machine is at this moment."""
    started = time.process_time()
    for number in range(100_000):
        sqrt(number)
    return (time.process_time() - started) * 1000.0


def p95(values: list[float]) -> float:
    """Return the value that 95 of 100 stay under."""
    return quantiles(values, n=20)[-1]


def opened(browser: Browser, link: str) -> tuple[Page, float, float, int]:
    """Open the page twice in one browser; return it, how long each took, and the bytes of the first time."""
    context = browser.new_context(viewport={"width": 1280, "height": 720})
    context.add_init_script(WATCH)
    page = context.new_page()
    sizes: list[float] = []
    session = context.new_cdp_session(page)
    session.on("Network.loadingFinished", lambda one: sizes.append(one["encodedDataLength"]))
    session.send("Network.enable")
    page.goto(link)
    page.locator("#figure-tongue").wait_for()
    page.locator("g.thing").first.wait_for()
    first, size = page.evaluate("seen.usable"), int(sum(sizes))
    page.reload()
    page.locator("#figure-tongue").wait_for()
    page.locator("g.thing").first.wait_for()
    return page, first, page.evaluate("seen.usable"), size


def dragged(page: Page, moves: int) -> tuple[list[float], list[float]]:
    """Drag a part to and fro at 60 moves a second; return the latencies and the frames."""
    time.sleep(1.0)
    x, y = page.evaluate(GRIP)
    page.mouse.move(x, y)
    page.mouse.down()
    page.evaluate("seen.waits.length = seen.frames.length = 0")
    due = time.perf_counter()
    for step in range(moves):
        way = abs((step / 40.0) % 2.0 - 1.0) - 1.0
        page.mouse.move(x - way * REACH, y + step % 3)
        due += 1.0 / 60.0
        time.sleep(max(0.0, due - time.perf_counter()))
    waits, frames = page.evaluate("[seen.waits, seen.frames]")
    page.keyboard.press("Escape")
    page.mouse.up()
    return waits, frames


def measured(browser: Browser, rig: Path, moves: int) -> Seen:
    """Serve a copy of a rig, open it, drag a part of it."""
    with tempfile.TemporaryDirectory() as folder:
        shutil.copy(rig, folder)
        served = subprocess.Popen([sys.executable, "-m", "boxwright", "open", rig.name, "--no-browser"], text=True,
                                  cwd=folder, env={**os.environ, "PYTHONUNBUFFERED": "1", "COLUMNS": "200"},
                                  stdout=subprocess.PIPE)  # fmt: skip
        try:
            assert served.stdout is not None
            link = next(found.group(0) for line in served.stdout if (found := LINK.search(line)))
            page, first, again, size = opened(browser, link)
            waits, frames = dragged(page, moves)
            status = Path(f"/proc/{served.pid}/status").read_text(encoding="utf-8")
            memory = next(int(line.split()[1]) for line in status.splitlines() if line.startswith("VmRSS")) / 1024.0
            page.context.close()
        finally:
            served.terminate()
            served.wait(10)
    return Seen(waits, frames, first, again, size, memory)


def main() -> None:
    """Measure the two rigs and print a table."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--moves", type=int, default=250)
    moves = parser.parse_args().moves
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        thousand = Path(folder) / "gannet.yaml"
        with thousand.open("w", encoding="utf-8") as file:
            make = [sys.executable, str(ROOT / "rigs" / "make_gannet.py"), "--parts", "1000"]
            subprocess.run(make, check=True, stdout=file)
        chromium = shutil.which("chromium") or shutil.which("chromium-browser")
        browser = playwright.chromium.launch(executable_path=chromium, args=ARGUMENTS)
        print(f"Yardstick (100,000 square roots): {yardstick():.2f} ms CPU; load {os.getloadavg()[0]:.1f}\n")
        print("| what | Whimbrel | 1,000 parts | target |")
        print("|---|---|---|---|")
        one = measured(browser, ROOT / "rigs" / "whimbrel.yaml", moves)
        other = measured(browser, thousand, moves)
        browser.close()
    for what, show, target in ROWS:
        print(f"| {what} | {show(one)} | {show(other)} | {target} |")


ROWS: tuple[tuple[str, Callable[[Seen], str], str], ...] = (
    ("drag to numbers in the page, median ms", lambda seen: f"{median(seen.waits):.1f}", "25"),
    ("the same, p95 ms", lambda seen: f"{p95(seen.waits):.1f}", "50; 1,000 parts 100"),
    ("previews answered", lambda seen: str(len(seen.waits)), ""),
    ("time between frames while dragging, p95 ms", lambda seen: f"{p95(seen.frames):.1f}", "17"),
    ("open to usable, first time, ms", lambda seen: f"{seen.first:.0f}", ""),
    ("open to usable, again, ms", lambda seen: f"{seen.again:.0f}", "1,000"),
    ("bytes before first use, kB", lambda seen: f"{seen.size / 1000:.0f}", "120"),
    ("memory of the program, MB", lambda seen: f"{seen.memory:.0f}", "150"),
)

if __name__ == "__main__":
    main()
