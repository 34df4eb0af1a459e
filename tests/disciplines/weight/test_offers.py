"""From the frames of what stands to masses, and the grids that show a result."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boxwright.disciplines.weight import offers, sheets
from boxwright.exchange import Measured
from boxwright.model.part import Frame
from boxwright.model.place import Place
from boxwright.units import HeaderUnits, exactly
from tests.disciplines.weight.rigs import SHELL, UNKNOWN_MASS, mass, perhaps, sigma, solved

HEADER = HeaderUnits(length="in", weight="lb")
PLACE = Place(exactly(1.0), exactly(-0.5), exactly(0.4), (0.6, 0.4, 0.9))
CABINET = Frame("cabinet", "parts[cabinet]", PLACE, sigma(30.0, 3.0), exactly(12.0), "", "furniture", "yes")


def test_a_frame_gives_its_dry_weight_and_its_contents_at_one_place() -> None:
    dry, contents = offers((CABINET,), ()).masses
    assert (dry.of, dry.what, dry.kg, dry.group, dry.size) == (
        "parts[cabinet]",
        "dry",
        CABINET.dry,
        "furniture",
        PLACE.size,
    )
    assert (contents.of, contents.what, contents.kg) == ("parts[cabinet]", "contents", exactly(12.0))
    assert (dry.x, dry.y, dry.z) == (contents.x, contents.y, contents.z) == (PLACE.x, PLACE.y, PLACE.z)


def test_people_are_people_and_what_weighs_nothing_is_left_out() -> None:
    lamp = replace(CABINET, of="parts[lamp]", dry=exactly(0.0), contents=None)
    owner = replace(CABINET, of="people[owner]", dry=exactly(80.0), contents=None)
    found = offers((lamp,), (owner,)).masses
    assert [(one.of, one.what) for one in found] == [("people[owner]", "people")]


def test_what_has_no_weight_or_stands_perhaps_stays() -> None:
    lost = replace(CABINET, of="parts[lost]", dry=UNKNOWN_MASS, contents=None)
    maybe = replace(CABINET, of="parts[maybe]", dry=perhaps(8.0), contents=None, stands="perhaps")
    assert [one.kg for one in offers((lost, maybe), ()).masses] == [UNKNOWN_MASS, perhaps(8.0)]


def test_no_two_masses_share_a_path_and_a_kind() -> None:
    others = tuple(replace(CABINET, of=f"parts[{i}]") for i in range(4))
    pairs = [(one.of, one.what) for one in offers((CABINET, *others), ()).masses]
    assert len(set(pairs)) == len(pairs) == 10


def test_the_grids_show_every_load_with_the_path_it_is_about() -> None:
    read = Measured("measured[t]", "total", sigma(1000.0, 5.0), None, "", "", "scale")
    found = solved(SHELL, mass("battery", sigma(21.0, 2.0), 0.3), mass("boat", UNKNOWN_MASS, 3.9), measured=(read,))
    loads, scale, widened = sheets(found, HEADER)
    for grid in (loads, scale, widened):
        assert len(grid.of) == len(grid.rows)
        assert {len(row) for row in grid.rows} == {len(grid.columns)}
    cells = {row[0]: row for row in loads.rows}
    assert cells["All that it weighs"][1:] == ("2,030 lb", "at least 2,026 lb", "parts[boat]")
    assert [row[0] for row in widened.rows] == ["parts[boat]", "parts[battery]"]
    assert widened.rows[0][1:] == ("not known", "")
    assert widened.columns[1].endswith(", lb") and not any("lb" in row[1] for row in widened.rows)
    assert scale.of == ("measured[t]",)


@pytest.mark.parametrize("name", ["On the ball", "Share of it on the ball"])
def test_what_cannot_be_said_is_never_shown_as_zero(name: str) -> None:
    from tests.disciplines.weight.rigs import UNKNOWN_PLACE, box_of

    (loads, *_) = sheets(solved(SHELL, box=box_of(coupler_x=UNKNOWN_PLACE)), HEADER)
    cells = {row[0]: row for row in loads.rows}
    assert cells[name][1] == cells[name][2] == "unknown"
    assert cells[name][3] == "the place of the ball"
