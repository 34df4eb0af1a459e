"""The words of a picture as they lie on a screen: a box for each, read from the picture itself."""

from __future__ import annotations

import re
from typing import NamedTuple
from xml.etree import ElementTree

from boxwright.render.screen import Drawn
from boxwright.render.screen_plane import LINE, Box, width_of

TOUCH = 0.05
"""Boxes that share less than this, over the height of their letters, only touch."""


class Label(NamedTuple):
    """One text of a picture: what it says, of what, the box it covers, the height of its letters."""

    words: str
    of: str
    box: Box
    size: float


def labels(drawn: Drawn, hidden: frozenset[str] = frozenset()) -> list[Label]:
    """Return the texts of a picture but those of hidden layers, and those that are left to the key of the page."""
    root = ElementTree.fromstring(f"<svg>{drawn.svg}</svg>")
    found = []
    for group in root:
        if group.get("data-layer", "") in hidden:
            continue
        for text in group.iter("text"):
            if "keyed" not in (text.get("class") or "").split():
                found.append(_label(text, group.get("data-of") or ""))
    return found


def _label(text: ElementTree.Element, of: str) -> Label:
    lines = [one.text or "" for one in text.iter("tspan")] or [text.text or ""]
    x, y, size = (float(text.get(name) or 0.0) for name in ("x", "y", "font-size"))
    wide, high = max(width_of(one, size) for one in lines), size * (LINE * (len(lines) - 1) + 0.8)
    before = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.get("text-anchor") or "middle"] * wide
    box = Box(x - before, y - high / 2.0, x - before + wide, y + high / 2.0)
    if re.match(r"rotate\(-90", text.get("transform") or ""):
        box = Box(x - high / 2.0, y - (wide - before), x + high / 2.0, y + before)
    return Label(" ".join(lines), of, box, size)


def over_each_other(drawn: Drawn, hidden: frozenset[str] = frozenset()) -> list[str]:
    """Return the texts of a picture that lie on another."""
    ordered = sorted(labels(drawn, hidden), key=lambda one: one.box.left)
    found = []
    for place, one in enumerate(ordered):
        for other in ordered[place + 1 :]:
            if other.box.left >= one.box.right:
                break
            touch = TOUCH * min(one.size, other.size)
            grown = Box(one.box.left + touch, one.box.top + touch, one.box.right - touch, one.box.bottom - touch)
            if grown.meets(other.box):
                found.append(f"{one.words!r} on {other.words!r}")
    return found


def outside(drawn: Drawn, hidden: frozenset[str] = frozenset()) -> list[str]:
    """Return the texts that reach out of the picture."""
    left, top, wide, high = drawn.box
    return [
        one.words
        for one in labels(drawn, hidden)
        if one.box.left < left or one.box.top < top or one.box.right > left + wide or one.box.bottom > top + high
    ]
