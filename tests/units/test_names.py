"""The annotated names: read by pydantic, described by JSON schema, spelled as pint spells them, cheap to import."""

from __future__ import annotations

import math
import subprocess
import sys
from typing import Annotated, get_args

import pint
import pydantic
import pytest

from boxwright import units
from boxwright.units import Band, HeaderUnits, Unit
from boxwright.units.quantity import quantity_named

US = HeaderUnits(length="in", weight="lb", temperature="F", volume="gal", wire="AWG", money="USD")
PINT = pint.UnitRegistry()
NAMES = sorted(name for name in units.__all__ if any(isinstance(part, Unit) for part in get_args(getattr(units, name))))


class Fridge(pydantic.BaseModel):
    weight: units.KilogramBand
    depth: units.Metre = 0.5
    volts: units.VoltNamed = 12.0
    hours: units.HoursBandNamed = Band(0.0, 0.0, 0.0)
    thick: Annotated[Band, Unit("m", "length", bare="mm", doubtful=True)] = Band(0.0, 0.0, 0.0)


def read(**given: object) -> Fridge:
    return Fridge.model_validate(given, context={"header": US})


def test_pydantic_reads_through_the_header() -> None:
    fridge = read(weight="40..60 kg", depth="20", volts=12.8, hours="6", thick="5")
    assert fridge.weight == Band(50.0, 40.0, 60.0, spread="interval")
    assert fridge.depth == pytest.approx(0.508)
    assert fridge.volts == 12.8
    assert fridge.hours.best == 21600.0
    assert fridge.thick.best == 0.005


def test_nothing_written_is_unknown_and_an_si_value_stays() -> None:
    assert read(weight=None).weight == Band(0.0, 0.0, math.inf, known=False)
    assert read(weight=Band(1.0, 1.0, 1.0)).weight == Band(1.0, 1.0, 1.0)
    assert read(weight="1 kg", depth=0.25).depth == 0.25
    assert Fridge.model_validate({"weight": "1 kg", "depth": "2 m"}).depth == 2.0


def test_a_refusal_is_an_error_of_its_field() -> None:
    with pytest.raises(pydantic.ValidationError) as refusal:
        read(weight="8 stone", depth="2 lb")
    assert [error["loc"] for error in refusal.value.errors()] == [("weight",), ("depth",)]
    assert '"51 kg" or "112 lb"' in str(refusal.value)


def test_json_schema_takes_text_and_numbers_with_examples() -> None:
    schema = Fridge.model_json_schema()["properties"]["weight"]
    assert schema["type"] == ["string", "number", "boolean"]
    assert "unknown" in schema["examples"]


@pytest.mark.parametrize("name", NAMES)
def test_symbol_is_the_unit_of_its_quantity(name: str) -> None:
    unit = next(part for part in get_args(getattr(units, name)) if isinstance(part, Unit))
    theirs = PINT.Quantity(1.0, unit.symbol or "1")
    assert theirs.to_base_units().magnitude == 1.0 or unit.symbol in ("kg*m**2",)
    scale = units.unit_scale(quantity_named(unit.quantity).si)
    assert scale is not None and scale.to_si(1.0) == 1.0
    powers = dict(theirs.to_base_units().dimensionality)
    ours = dict(zip(("[length]", "[mass]", "[time]", "[temperature]", "[current]"), scale.dimension, strict=False))
    assert powers == {axis: power for axis, power in ours.items() if power}


@pytest.mark.parametrize("name", NAMES)
def test_every_example_of_a_name_can_be_read(name: str) -> None:
    unit = next(part for part in get_args(getattr(units, name)) if isinstance(part, Unit))
    assert unit.doubtful == name.endswith(("Band", "BandNamed"))
    model = pydantic.create_model("One", value=(getattr(units, name), ...))
    for example in unit.examples:
        read_back = model.model_validate({"value": example}).value  # type: ignore[attr-defined]
        assert isinstance(read_back, Band if unit.doubtful else float), example


def test_units_import_nothing_of_others() -> None:
    ours = "import sys; import boxwright.units; print(*sorted({name.split('.')[0] for name in sys.modules}))"
    loaded = subprocess.run([sys.executable, "-c", ours], capture_output=True, text=True, check=True).stdout.split()
    assert "boxwright" in loaded
    assert not {"pydantic", "pydantic_core", "numpy", "yaml", "pint", "typer", "rich"} & set(loaded)
    inside = "import sys; import boxwright.units; print(*[n for n in sys.modules if n.startswith('boxwright.')])"
    loaded = subprocess.run([sys.executable, "-c", inside], capture_output=True, text=True, check=True).stdout.split()
    assert all(name.startswith(("boxwright.units", "boxwright.records")) for name in loaded)
