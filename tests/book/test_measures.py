"""First measures written into a file come to the same rig as a starter that was begun with them."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from boxwright.book.measures import still_asked, with_measures
from boxwright.book.new_text import QUESTIONS
from boxwright.book.starter import NotUnderstood, starter
from boxwright.rig.compose import read_rig
from boxwright.rig.document import Document
from boxwright.rig.keys import KNOWN_KEYS
from boxwright.rig.read import read_document

INCH = {"length": "12 ft", "width": "77", "height": "6' 6\"", "coupler": "48 1/2", "axle": "80, 115 1/4",
        "gvwr": "7000", "gawr": "3500 lb", "empty": "about 1900",
        "tongue": "45..55 kg", "studs": "16 +-1/4"}  # fmt: skip
METRIC = {"length": "3660", "width": "1.95 m", "height": "1990", "coupler": "1230", "axle": "2040", "gvwr": "750",
          "gawr": "750", "empty": "310", "tongue": "28", "studs": "406"}  # fmt: skip


def document(text: str) -> Document:
    return read_document(text, known_keys=KNOWN_KEYS)


def measured(text: str, given: Mapping[str, str]) -> str:
    return with_measures(document(text), read_rig(text).rig, given).text


@pytest.mark.parametrize(("country", "given"), [("US-NC", INCH), ("UK", METRIC)])
def test_the_rig_is_that_of_a_starter_begun_with_them(country: str, given: Mapping[str, str]) -> None:
    bare = starter("Fern", {"country": country})
    assert [one.asked.word for one in still_asked(document(bare))] == [one.word for one in QUESTIONS]
    text = measured(bare, given)
    wanted = starter("Fern", {"country": country, **given})
    ours, theirs = read_rig(text), read_rig(wanted)
    assert [one.says for one in ours.problems if one.kind == "problem"] == []
    assert ours.rig.trailer.axles.x == theirs.rig.trailer.axles.x
    assert ours.rig.trailer.axles.gawr == theirs.rig.trailer.axles.gawr
    for what in ("body", "coupler_x", "gvwr", "empty"):
        assert getattr(ours.rig.trailer, what) == getattr(theirs.rig.trailer, what)
    assert ours.rig.frame == theirs.rig.frame
    assert still_asked(document(text)) == ()
    assert [line for line in text.splitlines() if line.lstrip().startswith("#")] == [
        line for line in bare.splitlines() if line.lstrip().startswith("#")
    ]


@pytest.mark.parametrize(("begun", "given"), [("", {"country": "UK", **METRIC}), ("boxwright: 1\nrig: Fern\n", INCH)])
def test_an_empty_file_is_begun_with_its_units(begun: str, given: Mapping[str, str]) -> None:
    text = measured(begun, given)
    country = "UK" if given is not INCH else "US-NC"
    wanted = starter("Fern", {**given, "country": country})
    ours, theirs = read_rig(text).rig, read_rig(wanted).rig
    assert ours.header.units == theirs.header.units
    assert ours.trailer.body == theirs.trailer.body
    assert ours.trailer.axles.x == theirs.trailer.axles.x
    assert ours.frame.framing is not None and theirs.frame.framing is not None
    assert ours.frame.framing.studs == theirs.frame.framing.studs
    assert text.startswith(begun)


def test_only_what_is_given_is_written_and_only_what_is_open_is_asked() -> None:
    bare = starter("Fern", {"country": "US-NC"})
    text = measured(bare, {"length": " 144 ", "width": "", "height": "unknown"})
    assert text == bare.replace("length: unknown", "length: 144", 1)
    assert "length" not in [one.asked.word for one in still_asked(document(text))]
    short = "boxwright: 1\nunits: {length: in, weight: lb}\nframe: {studs: 16}\ntrailer: {axles: {x: [unknown, 80]}}\n"
    assert {"studs", "axle"} & {one.asked.word for one in still_asked(document(short))} == set()
    assert "studs: 24" in measured(short, {"studs": "24"})


@pytest.mark.parametrize(
    ("given", "says"),
    [
        ({"length": "quite long"}, "quite long"),
        ({"width": "-4"}, "below nothing"),
        ({"axle": "80, far"}, "far"),
        ({"axle": "80"}, "2 values"),
        ({"country": "Mars"}, "MARS"),
    ],
)
def test_what_cannot_be_understood_is_said(given: Mapping[str, str], says: str) -> None:
    text = "boxwright: 1\nunits: {length: in, weight: lb}\ntrailer: {axles: {x: [unknown, unknown]}}\n"
    with pytest.raises(NotUnderstood, match=says):
        measured(text, given)
