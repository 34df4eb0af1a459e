"""A number is coloured by the gravest of what is said about it, whatever comes first."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations

from boxwright.finding import Finding
from boxwright.study.slots import study
from boxwright.units import HeaderUnits
from boxwright.web.figures import GRAVEST, figures
from tests.study.demo import TODAY, clean

UNITS = HeaderUnits(length="in", weight="lb")
CODES = ("towing/tongue-over-rating", "towing/ball-load-too-small", "towing/payload")


def test_of_all_that_is_said_about_a_number_the_gravest_colours_it() -> None:
    slot = study(clean(), TODAY, use="tow").asked_slots("tow")[0]
    for three in permutations(GRAVEST, 3):
        said = tuple(Finding(code, "trailer", kind, "said") for code, kind in zip(CODES, three, strict=True))
        shown = {one.key: one.kind for one in figures(replace(slot, findings=said), UNITS)}
        assert shown["tongue"] == min(three, key=("stop", "unknown", "limit", "fix", "advice").index)
        assert shown["gross"] is None
