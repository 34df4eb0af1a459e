"""The sample page as it was last looked at. `python tools/goldens.py` writes both files anew: look at the picture.

The SVG must be the same to the last character. The PNG depends on the release of its renderer, so its sum counts only
under the release that stands beside it; that of the SVG always, so that nobody mends one without the other.
"""

from __future__ import annotations

import hashlib
import tomllib
from importlib.metadata import version

import pytest

from boxwright.render.png import png_of
from boxwright.render.svg import svg_of
from tests.houserules.tree import ROOT
from tests.render.by_hand import page

GOLDEN = ROOT / "tests" / "golden"
SVG, LIST = GOLDEN / "by-hand.svg", GOLDEN / "looked-at.toml"
DPI = 144.0


def sums() -> dict[str, str]:
    """Return what the list should say now."""
    return {
        "svg": hashlib.sha256(svg_of(page()).encode("utf-8")).hexdigest(),
        "png": hashlib.sha256(png_of(page(), DPI)).hexdigest(),
        "renderer": f"typst {version('typst')}",
    }


def test_the_sample_is_drawn_as_it_was_looked_at() -> None:
    assert svg_of(page()) == SVG.read_text(encoding="utf-8")


def test_the_picture_of_it_was_looked_at() -> None:
    said, now = tomllib.loads(LIST.read_text(encoding="utf-8"))["by-hand"], sums()
    assert said["svg"] == now["svg"]
    if said["renderer"] != now["renderer"]:
        pytest.skip(f"looked at under {said['renderer']}, here is {now['renderer']}")
    assert said["png"] == now["png"]
