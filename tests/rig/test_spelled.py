"""A path is found under whatever word of its key the file uses."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from boxwright.rig.spelled import as_written

TEXT = """\
units: {weight: kg, length: mm}
trailer:
  mam: 750
  axles: {rating: [750]}
  secondary: {rating: 500}
tow:
  car: {nose_max: 60}
parts:
  bed: {x: 10, weight: 20}
"""


@pytest.mark.parametrize(
    ("path", "written"),
    [
        ("trailer.gvwr", "trailer.mam"),
        ("trailer.axles.gawr[0]", "trailer.axles.rating[0]"),
        ("trailer.chains.rating", "trailer.secondary.rating"),
        ("tow[car].tongue", "tow[car].nose_max"),
        ("parts[bed].weight", "parts[bed].weight"),
        ("parts[bed].side", "parts[bed].side"),
        ("parts[chair].x", "parts[chair].x"),
        ("trailer.gtm", "trailer.gtm"),
        ("", ""),
    ],
)
def test_a_path_is_spelled_as_the_file_does(path: str, written: str) -> None:
    assert as_written(read_rig(TEXT).document, path) == written


def test_the_first_word_stands_where_the_file_uses_it() -> None:
    document = read_rig(TEXT.replace("mam", "gvwr")).document
    assert as_written(document, "trailer.gvwr") == "trailer.gvwr"
