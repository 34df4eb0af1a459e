"""How the frame's keys may be written."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest
from pydantic import ValidationError

from boxwright.disciplines.frame.parts import Framing, Layer, Opening, Wall
from boxwright.units import HeaderUnits

HEADER = {"header": HeaderUnits(length="in", weight="lb", money="USD")}
INCH, POUND = 0.0254, 0.45359237
"""Metres and kilograms, international yard and pound agreement of 1959 (from memory)."""


def opening(**keys: Any) -> Opening:
    return Opening.model_validate(keys, context=HEADER)


def test_studs_may_be_their_spacing_alone() -> None:
    alone = Framing.model_validate({"studs": "16"}, context=HEADER).studs
    full = Framing.model_validate({"studs": {"face": "1", "depth": "1 1/2", "every": "16"}}, context=HEADER).studs
    assert alone is not None and alone.every is not None and alone.every.best == pytest.approx(16 * INCH)
    assert full is not None and full.depth is not None and full.depth.best == pytest.approx(1.5 * INCH)


def test_a_wall_keeps_the_order_of_its_layers() -> None:
    wall = Wall.model_validate(
        {"layers": {"foam": {"of": "XPS", "thick": "1 1/2"}, "liner": {"of": "ply", "weight": "60"}}}, context=HEADER
    )
    assert [name for name, _ in wall.layers] == ["foam", "liner"]
    assert wall.layers[1][1].weight is not None and wall.layers[1][1].weight.best == pytest.approx(60 * POUND)


def test_sealant_and_unit_may_be_one_value_alone() -> None:
    unknown, named = opening(sealant="unknown").sealant, opening(sealant={"of": "butyl", "on": "2026-03-14"}).sealant
    assert unknown is not None and unknown.of == "unknown" and unknown.on is None
    assert named is not None and named.on == date(2026, 3, 14)
    unit = opening(unit="11").unit
    assert unit is not None and unit.weight is not None and unit.weight.best == pytest.approx(11 * POUND)
    assert opening().unit is None


def test_a_unit_clamps_between_two_thicknesses() -> None:
    unit = opening(unit={"U": "2.8 W/m2K", "clamps": {"lowest": "1", "highest": "1 3/4"}, "cost": "160"}).unit
    assert unit is not None and unit.clamps is not None and unit.clamps.highest is not None
    assert unit.clamps.highest.best == pytest.approx(1.75 * INCH)
    assert unit.transmittance is not None and unit.transmittance.best == pytest.approx(2.8)


@pytest.mark.parametrize(
    ("model", "keys", "words"),
    [
        (Layer, {"thick": "thin"}, 'cannot read the length "thin"; write it as'),
        (Wall, {"layers": "foam"}, 'cannot read the layers "foam"; write them as layers:'),
        (Opening, {"cut": "nearly"}, 'cannot read yes or no "nearly"; write it as yes, no or unknown'),
        (Opening, {"unit": {"weight": "heavy"}}, 'cannot read the mass "heavy"; write it as'),
    ],
)
def test_what_cannot_be_read_is_said(model: type[Layer], keys: dict[str, Any], words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        model.model_validate(keys, context=HEADER)
    assert words in str(caught.value)
