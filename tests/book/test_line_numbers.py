"""A path in a working has the line it stands on behind it, counted here by hand; one nobody wrote has none."""

from __future__ import annotations

from boxwright.book.line_numbers import with_lines
from boxwright.rig.keys import KNOWN_KEYS
from boxwright.rig.read import read_document

TEXT = """\
boxwright: 1
rig: Plain
trailer:
  mam: 1000 kg
places:
  my field: {coldest_design: -5 C}
parts:
  heater: {weight: 4 kg}
walls:
  left:
    layers:
      foam: {of: XPS}
"""
DOCUMENT = read_document(TEXT, known_keys=KNOWN_KEYS)


def told(text: str) -> str:
    return with_lines((text,), DOCUMENT)[0]


def test_each_path_has_its_line() -> None:
    assert told("  (run; places[my field], parts[heater] of the rig)") == (
        "  (run; places[my field] (line 6), parts[heater] (line 8) of the rig)"
    )
    assert told("  walls[left].layers[foam] dry: 3 kg") == "  walls[left].layers[foam] (line 12) dry: 3 kg"


def test_a_key_by_another_of_its_names_is_found_on_its_line() -> None:
    assert told("  trailer.gvwr: 1000 kg") == "  trailer.gvwr (line 4): 1000 kg"


def test_what_is_not_written_and_what_is_no_path_stay_as_they_are() -> None:
    for text in ("  parts[stove] dry: 3 kg", "  = 12.5 kg", "flow = heat / (efficiency * content)",
                 "  by heat.md, e.g. so", "  trailer.axles: 3 kg"):  # fmt: skip
        assert told(text) == text
