"""Convert the frame entries of the researched sheet of checks into `checks/framing.toml` and `checks/sections.toml`.

    python tools/adopt_frame_checks.py SHEET.toml framing > src/boxwright/disciplines/frame/checks/framing.toml
    python tools/adopt_frame_checks.py SHEET.toml sections > src/boxwright/disciplines/frame/checks/sections.toml

The sheet has units in the names of its keys; here they stand behind the numbers. An id is kept; where one entry has
several answers, each further one adds a word to it. An entry that compares positions is a test of its own, not a check.
"""

from __future__ import annotations

import sys
import tomllib
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

Entry = dict[str, Any]
Check = tuple[str, str, Mapping[str, object], str, str]


def inch(number: object) -> str:
    """Return a length of the sheet in text."""
    return f"{number} in"


def caught(entry: Entry) -> Iterator[Check]:
    """Yield the check of the members a span catches at one phase."""
    given = entry["inputs"]
    arguments = {
        "span": inch(given["hinge_in"]),
        "pitch": inch(given["pitch_in"]),
        "phase": inch(given["phase_in"]),
        "edge": inch(given["edge_in"]),
    }
    yield "", "members_in_span", arguments, str(entry["expect"]["studs"]), "0"


def window(entry: Entry) -> Iterator[Check]:
    """Yield the checks at both ends of each window of phases that catches four."""
    given, expect = entry["inputs"], entry["expect"]
    for edge, first, last in zip(given["edge_in"], expect["phase_from_in"], expect["phase_to_in"], strict=True):
        for word, phase in (("from", first), ("to", last)):
            arguments = {
                "span": inch(given["hinge_in"]), "pitch": inch(given["pitch_in"]),
                "phase": inch(phase), "edge": inch(edge),
            }  # fmt: skip
            yield f"{word}-{edge:g}", "members_in_span", arguments, "4", "0"


def started(entry: Entry) -> Iterator[Check]:
    """Yield the check of a span that starts somewhere along a row of members."""
    given = entry["inputs"]
    phase = (given["first_centre_in"] - given["start_in"]) % given["pitch_in"]
    arguments = {
        "span": inch(given["hinge_in"]), "pitch": inch(given["pitch_in"]),
        "phase": inch(phase), "edge": inch(given["edge_in"]),
    }  # fmt: skip
    yield "", "members_in_span", arguments, str(entry["expect"]["studs"]), "0"


def counts(entry: Entry) -> Iterator[Check]:
    """Yield the checks of the fewest members for several usable lengths."""
    given = entry["inputs"]
    for usable, low in zip(given["usable_in"], entry["expect"]["count_low"], strict=True):
        arguments = {"span": inch(usable), "pitch": inch(given["pitch_in"]), "edge": "0 in"}
        yield f"{usable:g}", "fewest_in_span", arguments, str(low), "0"


def fewest(entry: Entry) -> Iterator[Check]:
    """Yield the check of the fewest members a hinge catches at any phase."""
    given = entry["inputs"]
    arguments = {
        "span": inch(given["hinge_in"]), "pitch": inch(given["pitch_in"]), "edge": inch(given["edge_in"])
    }  # fmt: skip
    yield "", "fewest_in_span", arguments, str(entry["expect"]["counts"][0]), "0"


def header(entry: Entry) -> Iterator[Check]:
    """Yield the checks of both bearings of a header."""
    given, expect = entry["inputs"], entry["expect"]
    first, last = given["bearing_in"]
    loads = [f"{load} lbf" for load in given["loads_lb"]]
    for word, offsets, wanted in (
        ("", [at - first for at in given["at_in"]], expect["R1_lb"]),
        ("last", [last - at for at in given["at_in"]], expect["R2_lb"]),
    ):
        arguments = {"span": inch(last - first), "loads": loads, "offsets": [inch(one) for one in offsets]}
        yield word, "first_bearing", arguments, f"{round(wanted, 9)} lbf", "0.0001 %"


def tube(entry: Entry) -> Iterator[Check]:
    """Yield the checks of a rectangular tube: area, and second moment about both axes."""
    given, expect = entry["inputs"], entry["expect"]
    deep, wide = inch(given["depth_in"]), inch(given["width_in"])
    common = {"gauge": inch(given["design_wall_in"]), "corner": inch(given["outside_corner_radius_in"])}
    within = f"{entry['tolerance']['rel'] * 100:g} %"
    yield "area", "tube_area", {"breadth": wide, "depth": deep, **common}, f"{expect['area_in2']} in2", within
    for word, breadth, depth, key in (("deep", wide, deep, "Ix_in4"), ("wide", deep, wide, "Iy_in4")):
        arguments = {"breadth": breadth, "depth": depth, **common}
        yield word, "tube_second_moment", arguments, f"{expect[key]} in4", within


def channel(entry: Entry) -> Iterator[Check]:
    """Yield the checks of a channel: area and second moment."""
    given, expect = entry["inputs"], entry["expect"]
    arguments = {
        "flange": inch(given["bf_in"]), "depth": inch(given["d_in"]),
        "flange_gauge": inch(given["tf_in"]), "web_gauge": inch(given["tw_in"]),
    }  # fmt: skip
    within = f"{entry['tolerance']['rel'] * 100:g} %"
    yield "area", "channel_area", arguments, f"{expect['area_in2']} in2", within
    yield "deep", "channel_second_moment", arguments, f"{expect['Ix_in4']} in4", within


def angle(entry: Entry) -> Iterator[Check]:
    """Yield the checks of an angle: area and second moment."""
    given, expect = entry["inputs"], entry["expect"]
    leg = inch(given["leg_in"])
    arguments = {"breadth": leg, "depth": leg, "gauge": inch(given["t_in"])}
    within = f"{entry['tolerance']['rel'] * 100:g} %"
    yield "area", "angle_area", arguments, f"{expect['area_in2']} in2", within
    yield "deep", "angle_second_moment", arguments, f"{expect['Ix_in4']} in4", within


FRAMING: dict[str, Callable[[Entry], Iterator[Check]]] = {
    "hinge-60-phi1-edge1": caught,
    "hinge-60-phi11-edge1": caught,
    "hinge-60-phi11.5-edge1": caught,
    "hinge-60-phi0.5-edge1": caught,
    "hinge-60-phi12-edge0": caught,
    "hinge-60-phi12.5-edge0": caught,
    "hinge-60-four-window": window,
    "hinge-at-44": started,
    "hinge-at-36": started,
    "stud-count-property": counts,
    "hinge-range-60": fewest,
    "hinge-range-48": fewest,
    "header-reaction": header,
}
SECTIONS: dict[str, Callable[[Entry], Iterator[Check]]] = {
    "section-hss2x2x1-8": tube,
    "section-hss2x1x1-8": tube,
    "section-hss3x2x1-8": tube,
    "section-c3x4.1": channel,
    "section-l2x2x3-16": angle,
}
COVERS = {"tube_area": "rounded_area", "tube_second_moment": "rounded_second_moment"}
SHEETS = {"framing": (FRAMING, "own-arithmetic", "hand"), "sections": (SECTIONS, "aisc-v16", "published")}


def written(value: object) -> str:
    """Return a value as TOML."""
    if isinstance(value, list):
        return "[" + ", ".join(written(item) for item in value) + "]"
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{key} = {written(item)}" for key, item in value.items()) + "}"
    return f'"{value}"'


def block(entry: Entry, check: Check, source: str, kind: str) -> str:
    """Return one check as the text of its block."""
    word, method, given, expect, within = check
    lines = [
        "[[check]]",
        f'id = "{entry["id"]}{"-" if word else ""}{word}"',
        f'method = "{method}"',
        *([f'covers = ["{COVERS[method]}"]'] if method in COVERS else []),
        f'source = "{source}"',
        f'place = "{entry["source"]["clause_or_table"].replace("n/a", "the sheet of checks")}"',
        f'kind = "{kind}"',
        f"given = {written(given)}",
        f'expect = "{expect}"',
        f'within = "{within}"',
    ]
    return "\n".join(lines)


def adopt(sheet: Entry, name: str) -> str:
    """Return the text of the adopted checks of one of the two files."""
    converters, source, kind = SHEETS[name]
    head = "# Adopted by tools/adopt_frame_checks.py from the project's sheet on structure; do not edit by hand."
    entries = {entry["id"]: entry for entry in sheet["check"]}
    blocks = [
        block(entries[one], check, source, kind)
        for one, convert in converters.items()
        for check in convert(entries[one])
    ]
    return "\n\n".join([head, *blocks]) + "\n"


if __name__ == "__main__":
    sys.stdout.write(adopt(tomllib.loads(Path(sys.argv[1]).read_text(encoding="utf-8")), sys.argv[2]))
