"""Numbers as a page shows them. 1 lb = 0.45359237 kg and 1 in = 25.4 mm, exact by definition (from memory)."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.book.numbers import METRIC, US, mass, named, narrow, place, share
from boxwright.units import Band, exactly
from tests.cli.by_hand import pounds

INCH = 0.0254
OPEN = float("inf")


@pytest.mark.parametrize(
    ("band", "shown", "in_a_table"),
    [
        (pounds(343), "343 lb", "343"),
        (pounds(343, 20), "343 +- 20 lb", "343+-20"),
        (replace(pounds(343, 20), spread="interval"), "343 lb (323 to 363)", "323..363"),
        (replace(pounds(3412, 60), high=OPEN, known=False), "3,412 lb + ? (at least 3,352)", "3,412+?"),
        (replace(pounds(320, 25), low=-OPEN, known=False), "at most 345 lb", "<=345"),
        (replace(pounds(320, 25), known=False), "295 to 345 lb", "295..345"),
        (Band(0.0, -OPEN, OPEN, known=False), "unknown", "unknown"),
        (pounds(-5), "-5 lb", "-5"),
    ],
)
def test_a_mass_shows_its_doubt(band: Band, shown: str, in_a_table: str) -> None:
    assert mass(band, US) == shown
    assert narrow(shown) == in_a_table


def test_a_share_is_in_tenths_of_a_per_cent() -> None:
    assert share(Band(0.1037, 0.0978, 0.1096, spread="sigma"), US) == "10.4 +- 0.6 %"
    assert share(Band(0.1032, -0.369, 0.111, known=False, spread="interval"), US) == "-36.9 to 11.1 %"
    assert narrow("-36.9 to 11.1 %") == "-36.9..11.1"


def test_the_centre_of_gravity_is_told_from_marks_a_tape_can_be_held_to() -> None:
    x = Band(84.3 * INCH, 83.3 * INCH, 156.0 * INCH, known=False, spread="interval")
    y = Band(-0.2 * INCH, -1.9 * INCH, 37.7 * INCH, spread="interval")
    z = Band(-2.0 * INCH, -2.5 * INCH, -1.5 * INCH, spread="sigma")
    assert place((x, y, z), US) == [
        "83.3 to 156.0 in behind the front stud face",
        "0.2 in left of the centreline (1.9 left of to 37.7 right of it)",
        "2.0 +- 0.5 in below the deck",
    ]
    across = replace(y, known=False)
    assert place((x, across, z), US)[1] == "1.9 in left of the centreline to 37.7 in right of it"
    anywhere = Band(0.0, -15.0, 15.0, known=False, spread="interval")
    assert place((anywhere, across, z), US)[0] == "unknown how far behind or ahead of the front stud face"
    assert place((exactly(2.14), exactly(0.01), exactly(0.5)), METRIC) == [
        "2140 mm behind the front stud face",
        "10 mm right of the centreline",
        "500 mm above the deck",
    ]


@pytest.mark.parametrize(
    ("path", "says"),
    [
        ("parts[bunk]", "bunk"),
        ("walls[left].layers[foam]", "left foam"),
        ("openings[vent-high]", "opening vent-high"),
        ("trailer.empty", "trailer.empty"),
        ("parts[bunk].hinge", "parts[bunk].hinge"),
    ],
)
def test_a_path_is_said_as_a_person_says_it(path: str, says: str) -> None:
    assert named(path) == says
