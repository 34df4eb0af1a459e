"""Refresh the tour of README.md: run each command it shows and put what it prints into its place.

A place looks like this; with ``first 24 lines`` the rest is left out, and ``...`` says so:

    <!-- tour: boxwright check rigs/whimbrel.yaml (first 24 lines) -->
    ```console
    $ boxwright check rigs/whimbrel.yaml
    what it prints
    ...
    ```

Usage: python tools/tour.py
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
LEFT_OUT = "..."
COLUMNS = "80"

PLACE = re.compile(
    r"<!-- tour: (?P<command>boxwright [^\n]*?)(?: \(first (?P<most>\d+) lines\))? -->\n(?:```console\n.*?\n```\n)?",
    re.DOTALL,
)
BLOCK = re.compile(r"^```console\n(.*?)\n```$", re.DOTALL | re.MULTILINE)


def printed(command: str) -> str:
    """Return what a command prints in a plain terminal of 80 columns, without spaces at the ends of lines."""
    environment = {**os.environ, "COLUMNS": COLUMNS, "NO_COLOR": "1", "PYTHONHASHSEED": "0"}
    words = [sys.executable, "-m", *command.split()]
    run = subprocess.run(words, cwd=ROOT, env=environment, capture_output=True, text=True, check=False)
    if run.stderr:
        raise RuntimeError(f"{command}: {run.stderr}")
    return "\n".join(line.rstrip() for line in run.stdout.splitlines()).strip("\n")


def refreshed(text: str, run: Callable[[str], str]) -> str:
    """Return a document with every place of its tour filled by what its command prints."""

    def filled(place: re.Match[str]) -> str:
        lines = run(place["command"]).splitlines()
        if place["most"] and len(lines) > int(place["most"]):
            lines = [*lines[: int(place["most"])], LEFT_OUT]
        mark = place.group(0).splitlines()[0]
        return "\n".join([mark, "```console", f"$ {place['command']}", *lines, "```", ""])

    return PLACE.sub(filled, text)


def shown(text: str) -> list[tuple[str, list[str]]]:
    """Return each command a document shows at a prompt, with the lines it shows as printed."""
    commands: list[tuple[str, list[str]]] = []
    for block in BLOCK.findall(text):
        for line in block.splitlines():
            if line.startswith("$ "):
                commands.append((line.removeprefix("$ "), []))
            elif commands:
                commands[-1][1].append(line)
    return commands


def is_printed(wanted: list[str], lines: list[str]) -> bool:
    """Return whether shown lines are what was printed; ``...`` alone on a line stands for any number of lines."""
    if LEFT_OUT not in wanted:
        return wanted == lines
    cut = wanted.index(LEFT_OUT)
    if wanted[:cut] != lines[:cut]:
        return False
    rest = wanted[cut + 1 :]
    return any(is_printed(rest, lines[start:]) for start in range(cut, len(lines) + 1))


def main() -> None:
    """Refresh README.md in place."""
    path = ROOT / "README.md"
    path.write_text(refreshed(path.read_text(encoding="utf-8"), printed), encoding="utf-8")


if __name__ == "__main__":
    main()
