"""The D value: the lesser stamp of coupling head and tow bar, beside what both masses ask of it."""

from __future__ import annotations

from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from tests.findings.towing.held import said_of
from tests.study.demo import RIGS

VAN = {"trailer.gvwr": "2000 kg", "tow.pickup.gvwr": "3500 kg"}
"""Source: d-value-page, a buying guide's worked example: a van of 3.5 t with 2 t of trailer asks for 12.5 kN."""


def d_values(edits: dict[str, object]) -> list[Finding]:
    return [one for one in said_of(edits) if one.code == "towing/d-value"]


def test_the_published_pair_asks_for_what_the_guide_says() -> None:
    assert d_values({**VAN, "tow.pickup.d_value": "12.5"}) == []
    (found,) = d_values({**VAN, "tow.pickup.d_value": "12.4"})
    assert found.kind == "stop" and found.unit == "N" and found.limit == 12400.0
    assert found.number is not None and abs(found.number - 12500.0) < 50.0
    assert "12.5 kN" in found.says and "12.4 kN" in found.says


def test_the_lesser_stamp_counts_and_is_what_to_change() -> None:
    (found,) = d_values({**VAN, "tow.pickup.d_value": "13 kN", "trailer.coupler.d_value": "9300 N"})
    assert found.lever == "trailer.coupler.d_value" and "the coupler" in found.says and found.limit == 9300.0
    (found,) = d_values({**VAN, "tow.pickup.d_value": "9.3 kN", "trailer.coupler.d_value": "13 kN"})
    assert found.lever == "tow[pickup].d_value"


def test_an_overloaded_trailer_counts_with_what_it_weighs() -> None:
    """9.81 * 3.5 * 2.5 / 6.0 = 14.31 kN for 2.5 t on a plate of 2 t."""
    (found,) = d_values({**VAN, "gross": "2500 kg", "tongue": "300 kg", "tow.pickup.d_value": "14.2 kN"})
    assert found.kind == "stop"
    assert d_values({**VAN, "gross": "2500 kg", "tongue": "300 kg", "tow.pickup.d_value": "14.4 kN"}) == []


def test_without_a_plate_what_has_no_weight_asks() -> None:
    edits = {**VAN, "trailer.gvwr": "", "gross": "at least 1500 kg", "tongue": "unknown", "tow.pickup.d_value": "13 kN"}
    (found,) = d_values(edits)
    assert found.kind == "unknown" and found.could_stop and found.because == ("parts[crate]",)
    assert d_values({**edits, "trailer.gvwr": "2000 kg"}) == []


def test_newtons_read_as_kilonewtons_clear_nothing() -> None:
    (found,) = d_values({**VAN, "tow.pickup.d_value": "12500"})
    assert found.kind == "unknown" and found.could_stop and "read it again" in found.says
    (found,) = d_values({**VAN, "tow.pickup.d_value": "unknown"})
    assert found.kind == "unknown" and found.could_stop


def test_the_rig_file_carries_both_stamps() -> None:
    text = (RIGS / "dunlin.yaml").read_text(encoding="utf-8")
    written = text.replace("rating: 1500, unbraked", "d_value: 11 kN, rating: 1500, unbraked")
    reading = read_rig(written)
    ((_, estate),) = [pair for pair in reading.rig.tow if pair[0] == "estate"]
    assert estate.d_value is not None and estate.d_value.best == 11000.0
    assert len(reading.problems) == len(read_rig(text).problems)
