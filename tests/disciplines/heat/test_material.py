"""How the words of a layer are read: tolerant of spelling, wide where they are wide, never guessed."""

from __future__ import annotations

import pytest

from boxwright.disciplines.heat.coating import coat_of, sky_share
from boxwright.disciplines.heat.material import MATERIALS, read_material
from tests.disciplines.heat.walls import wall


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("XPS", "xps"),
        ("1 in XPS", "xps"),
        ("Foam Tape", "foam tape"),
        ("EPS foam", "eps"),
        ("rigid foam", "rigid foam"),
        ("sheep's wool batts", "sheep's wool"),
        ("closed-cell spray foam", "closed cell spray foam"),
        ("poplar ply", "poplar ply"),
        ("hardboard panels", "hardboard"),
        ("aluminium 0.040", "aluminium"),
        ("air gap", "air"),
        ("vinyl on ply", "vinyl and ply"),
    ],
)
def test_words_an_owner_writes_are_read(written: str, name: str) -> None:
    found = read_material(written)
    assert found is not None and found.name == name


def test_a_word_nobody_knows_is_no_material_though_the_layer_has_a_name_that_is_one() -> None:
    assert read_material("unobtainium") is None
    assert read_material("unobtainium", "foam") is None
    assert read_material("", "liner") is None
    named = read_material("", "foam")
    assert named is not None and named.name == "foam"


def test_a_word_for_a_whole_kind_is_as_wide_as_its_kinds() -> None:
    wide = read_material("rigid foam")
    assert wide is not None
    for one in ("xps", "eps", "polyiso", "pir"):
        kind = read_material(one)
        assert kind is not None and wide.conductivity.low <= kind.conductivity.low
        assert kind.conductivity.high <= wide.conductivity.high
    both = read_material("vinyl on ply")
    assert both is not None and (both.conductivity.low, both.conductivity.high) == (0.10, 0.25)


def test_every_material_lies_within_its_own_ends() -> None:
    for one in MATERIALS.values():
        assert 0.0 < one.conductivity.low <= one.conductivity.best <= one.conductivity.high
        assert 1.0 <= one.vapour.low <= one.vapour.best <= one.vapour.high
        assert one.density > 0.0 and one.capacity > 0.0


def test_a_colour_in_the_text_of_the_skin_counts_and_none_is_anything_from_white_to_dark() -> None:
    from dataclasses import replace

    white = coat_of(replace(wall(), skin_of="white aluminium 0.040"))
    black, unsaid = coat_of(replace(wall(), skin_of="black steel")), coat_of(wall())
    assert white.colour == "white" and white.absorptance.high < black.absorptance.low
    assert unsaid.colour == "" and unsaid.absorptance.low <= white.absorptance.low
    assert unsaid.absorptance.high >= black.absorptance.best
    grey = coat_of(replace(wall(), skin_of="light grey steel"))
    assert grey.colour == "light grey"


def test_a_roof_sees_the_whole_sky_a_wall_half_and_a_floor_none() -> None:
    assert [sky_share((0.0, 0.0, up)) for up in (1.0, 0.0, -1.0)] == [1.0, 0.5, 0.0]
