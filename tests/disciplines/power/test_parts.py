"""How power's keys may be written."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import ValidationError

from boxwright.disciplines.power.parts import Facet, Habit, Wire
from boxwright.units import HeaderUnits

IMPERIAL = {"header": HeaderUnits(length="in", temperature="F", wire="AWG")}
METRIC = {"header": HeaderUnits(length="mm", temperature="C", wire="mm2")}


def facet(**keys: Any) -> Facet:
    return Facet.model_validate(keys, context=IMPERIAL)


def wire(**keys: Any) -> Wire:
    return Wire.model_validate(keys, context=IMPERIAL)


def test_a_draw_is_amperes_or_watts_of_the_line_or_of_one() -> None:
    amps, each, watts = facet(draw="4.2 A").draw, facet(draw="0.25 A each").draw, facet(draw="60 W").draw
    assert amps is not None and amps.amps is not None and amps.amps.best == 4.2 and not amps.is_each
    assert each is not None and each.amps is not None and each.amps.best == 0.25 and each.is_each
    assert watts is not None and watts.watts is not None and watts.watts.best == 60.0 and watts.amps is None
    doubt = facet(draw="2..5 A each").draw
    assert doubt is not None and doubt.amps is not None and (doubt.amps.low, doubt.amps.high) == (2.0, 5.0)
    unknown = facet(draw="unknown").draw
    assert unknown is not None and unknown.amps is not None and not unknown.amps.known


def test_hours_are_seconds() -> None:
    hours = facet(hours="6").hours
    assert hours is not None and hours.best == 6 * 3600.0
    habit = Habit.model_validate({"at": "sockets", "draw": "5 A", "hours": "0.5"}, context=IMPERIAL)
    assert habit.hours is not None and habit.hours.best == 1800.0


def test_a_battery_is_read_as_its_label_says() -> None:
    battery = facet(battery={"kind": "LiFePO4", "volts": "12.8", "Ah": "200", "charge_above": "32 F"}).battery
    assert battery is not None and battery.volts is not None and battery.amp_hours is not None
    assert battery.volts.best == 12.8
    assert battery.amp_hours.best == 200 * 3600.0
    assert battery.charge_above is not None and battery.charge_above.best == pytest.approx(273.15)


def test_a_panel_loses_volts_with_warmth() -> None:
    panel = facet(panel={"watts": "200", "Voc": "24.3", "Isc": "10.4", "Voc_coeff": "-0.28 %/C"}).panel
    assert panel is not None and panel.voltage_coefficient is not None
    assert panel.voltage_coefficient.best == pytest.approx(-0.0028)


@pytest.mark.parametrize("written", ["100", "100 A", {"amps": "100", "kind": "class T", "at": "battery"}])
def test_a_fuse_may_be_its_rating_alone(written: Any) -> None:
    fuse = wire(fuse=written).fuse
    assert fuse is not None and fuse.amps is not None and fuse.amps.best == 100.0
    assert fuse.at == ("battery" if isinstance(written, dict) else "")


def test_no_fuse_an_unknown_fuse_and_an_unwritten_one_differ() -> None:
    none, unknown = wire(fuse="none").fuse, wire(fuse="unknown").fuse
    assert none is not None and none.kind == "none" and none.amps is None
    assert unknown is not None and unknown.kind == "" and unknown.amps is not None and not unknown.amps.known
    assert wire().fuse is None


def test_a_wire_size_may_be_called_gauge_or_size() -> None:
    gauge, size = wire(gauge="12").gauge, wire(size="12").gauge
    assert gauge is not None and gauge == size
    assert gauge.best == pytest.approx(3.31e-6, rel=0.002)  # 12 AWG is 3.31 mm2, ASTM B258 (from memory)
    metric = Wire.model_validate({"gauge": "2.5"}, context=METRIC).gauge
    assert metric is not None and metric.best == pytest.approx(2.5e-6)


@pytest.mark.parametrize(
    ("model", "keys", "words"),
    [
        (Facet, {"draw": "4.2"}, 'cannot read the draw "4.2"; write it as "4.2 A" or "4.2 W"'),
        (Facet, {"draw": "a lot"}, 'cannot read the current "a lot"; write it as'),
        (Facet, {"battery": {"volts": "twelve"}}, 'cannot read the voltage "twelve"; write it as'),
        (Facet, {"rcd": "maybe"}, 'cannot read yes or no "maybe"; write it as yes, no or unknown'),
        (Wire, {"fuse": "15000"}, "0.5 A to 400 A"),
        (Wire, {"fuse": "0.1 A"}, "0.5 A to 400 A"),
        (Wire, {"gauge": "35"}, "cannot read the wire gauge"),
    ],
)
def test_what_cannot_be_read_is_said(model: type[Facet], keys: dict[str, Any], words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        model.model_validate(keys, context=IMPERIAL)
    assert words in str(caught.value)
