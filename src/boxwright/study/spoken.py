"""Rig paths as a person says them, for sentences."""

from __future__ import annotations

import re
from collections.abc import Sequence

from boxwright.finding import listed as in_a_row

NAMELESS = ("parts", "measured", "people", "loads", "tow")
"""Sections whose things go by their name alone."""
ONE_OF = {"openings": "opening", "wires": "wire", "straps": "strap", "pipes": "pipe"}
MOST_LISTED = 4


def named(path: str) -> str:
    """Return a rig path as a person says it: a part by its name, a layer by its wall, another thing by its kind."""
    layer = re.fullmatch(r"walls\[(.+?)\]\.layers\[(.+)\]", path)
    if layer:
        return f"{layer[1]} {layer[2]}"
    thing = re.fullmatch(r"(\w+)\[(.+)\]", path)
    if thing and thing[1] in NAMELESS:
        return thing[2]
    return f"{ONE_OF[thing[1]]} {thing[2]}" if thing and thing[1] in ONE_OF else path


def listed(paths: Sequence[str]) -> str:
    """Return some paths as they are said in a row, the first few by name and the others by their count."""
    return in_a_row((named(path) for path in paths), MOST_LISTED)
