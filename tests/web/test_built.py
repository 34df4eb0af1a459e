"""The page that is served is the page that is written: built anew from its sources it is the same, byte for byte.

Only who changes the page needs node. Without it, or without ``npm ci`` in ``web``, these are left out by name.
"""

from __future__ import annotations

import gzip
import json
import re
import shutil
import subprocess
from pathlib import Path

import pytest

from tests.houserules.tree import PACKAGE, ROOT

WEB = ROOT / "web"
DIST = PACKAGE / "web" / "dist"
TOOLS = WEB / "node_modules" / ".bin"
MOST_BYTES = 120_000
"""What may come over the line before the page can be used, fonts among it."""

with_node = pytest.mark.skipif(
    shutil.which("node") is None or not (TOOLS / "vite").exists(),
    reason="no node, or no npm ci in web: whether the built page is that of its sources was NOT tested",
)


def run(tool: str, *words: str) -> None:
    """Run a tool of the page's own packages; what it says is shown where it fails."""
    ran = subprocess.run([str(TOOLS / tool), *words], cwd=WEB, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stdout + ran.stderr


def content(folder: Path) -> dict[str, bytes]:
    """Return every file of a folder by its path."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@with_node
def test_the_page_built_anew_is_the_page_that_is_served(tmp_path: Path) -> None:
    run("vite", "build", "--outDir", str(tmp_path / "dist"), "--logLevel", "warn")
    anew, served = content(tmp_path / "dist"), content(DIST)
    assert sorted(anew) == sorted(served), "run `npm run build` in web and commit what it writes"
    assert [name for name in anew if anew[name] != served[name]] == []


@with_node
def test_the_sources_of_the_page_hold_together() -> None:
    run("tsc", "--noEmit")


@with_node
def test_the_hand_the_outbox_and_the_choice_of_two_texts() -> None:
    run("vitest", "run", "--reporter=dot")


def test_what_is_fetched_before_the_first_use_is_small() -> None:
    """The page names its entry and its style; the style names the fonts. Nothing else comes before it is used."""
    index = (DIST / "index.html").read_text(encoding="utf-8")
    named = re.findall(r'(?:src|href)="/(assets/[^"]+)"', index)
    (style,) = (DIST / name for name in named if name.endswith(".css"))
    fonts = set(re.findall(r"url\(/(assets/[^)]+)\)", style.read_text(encoding="utf-8")))
    assert len(fonts) == 3
    assert sum(sent(DIST / name) for name in {"index.html", *named, *fonts}) < MOST_BYTES


def test_the_licences_of_what_the_page_carries_come_along() -> None:
    lock = json.loads((WEB / "package-lock.json").read_text(encoding="utf-8"))["packages"]
    told = (DIST / "licences.txt").read_text(encoding="utf-8")
    carried = [f"{place.removeprefix('node_modules/')} {one['version']}" for place, one in lock.items()
               if place and not one.get("dev")]  # fmt: skip
    assert len(carried) > 10
    assert [one for one in carried if f"\n{one}\n" not in told] == []
    assert "SIL OPEN FONT LICENSE" in told and "MIT" in told


def sent(path: Path) -> int:
    """Return how many bytes of a file come over the line: all but fonts are packed on the way."""
    data = path.read_bytes()
    return len(data if path.suffix == ".woff2" else gzip.compress(data))


def test_nothing_built_is_left_over_or_fetched_from_elsewhere() -> None:
    """Every file is named by another; no address of another place is asked for by the page or its style."""
    files = content(DIST)
    words = b"".join(data for name, data in files.items() if not name.endswith(".woff2"))
    alone = {"index.html", "licences.txt"}
    assert [name for name in files if name not in alone and Path(name).name.encode() not in words] == []
    for name, data in files.items():
        if name.endswith((".html", ".css")):
            assert re.findall(rb"https?://|//[a-z]|url\((?!/assets/)", data) == [], name
