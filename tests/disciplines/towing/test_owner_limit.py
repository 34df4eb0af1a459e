"""The owner's own garage, ferry and driveway: each measure of each place, and what sticks out of the trailer."""

from __future__ import annotations

from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from tests.findings.towing.held import said_of
from tests.study.demo import RIGS


def owner_limits(edits: dict[str, object]) -> list[Finding]:
    return [one for one in said_of(edits) if one.code == "towing/owner-limit"]


def test_each_measure_of_each_place_is_told_apart() -> None:
    """The small rig is 101 in wide, 98 in high and 226 in long."""
    tight = {"width": "100 in", "height": "97 in", "length": "225 in"}
    found = owner_limits({"fits.garage": tight, "fits.ferry": {"length": "240 in", "width": "96 in"}})
    assert [one.where for one in found] == [
        "places[garage].fits.width", "places[garage].fits.height", "places[garage].fits.length",
        "places[ferry].fits.width",
    ]  # fmt: skip
    assert {one.kind for one in found} == {"advice"}
    assert all(one.margin is not None and abs(one.margin + 0.0254) < 1e-9 for one in found[:3])


def test_a_part_on_the_roof_names_itself_and_is_what_to_move() -> None:
    """A box of 10 in on a roof 98 - 18.5 = 79.5 in over the deck makes 108 in."""
    roof = {"size": "20 in x 20 in x 10 in", "front": "40 in", "left": "-10 in", "under": "79.5 in"}
    (found,) = owner_limits({"parts.roof-box": roof, "fits.garage": {"height": "100 in"}})
    assert found.lever == "parts[roof-box]" and found.act == "Move or take off roof-box" and "108 in" in found.says


def test_doubt_across_the_limit_and_an_unknown_limit_ask_and_can_stop_nothing() -> None:
    for edits in (
        {"fits.garage": {"height": "96..99 in"}, "trailer.outside.height": "97 in"},
        {"fits.garage": {"height": "unknown"}},
        {"fits.garage": {"height": "98 in"}, "trailer.outside.height": "97 +-2 in"},
    ):
        (found,) = owner_limits(edits)
        assert found.kind == "unknown" and not found.could_stop


def test_a_place_of_the_rig_file_carries_its_fit_beside_its_climate() -> None:
    text = (RIGS / "dunlin.yaml").read_text(encoding="utf-8")
    written = text.replace("coldest_design: -3,", "coldest_design: -3, fits: {width: 1800, height: 2 m},")
    reading = read_rig(written)
    ((place, fits),) = reading.rig.towing.fits
    assert place == "Shropshire fair field" and fits.length is None
    assert fits.width is not None and abs(fits.width.best - 1.8) < 1e-9
    assert reading.rig.heat == read_rig(text).rig.heat and reading.problems == read_rig(text).problems


def test_a_misspelt_measure_of_a_place_is_said() -> None:
    text = (RIGS / "dunlin.yaml").read_text(encoding="utf-8")
    problems = read_rig(text.replace("coldest_design: -3,", "coldest_design: -3, fits: {wide: 1800},")).problems
    assert any("wide" in one.says or "wide" in one.path for one in problems)
