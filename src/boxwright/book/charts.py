"""The charts of a rig, and the sheets they are printed on."""

from __future__ import annotations

from collections.abc import Sequence

from boxwright.disciplines.weight.charts import tongue_chart, weights_chart
from boxwright.drawing import Sheet
from boxwright.drawing.chart import Chart, charted
from boxwright.rig.rig import Rig
from boxwright.study.slots import Slot
from boxwright.units import Band, HeaderUnits

TITLES = {"tongue": "Load on the ball", "weights": "What it weighs"}


def charts_of(rig: Rig, slot: Slot, planned: Sequence[Slot], units: HeaderUnits) -> tuple[Chart, ...]:
    """Return the charts of a slot; ``planned`` are the slots of the plan, stage by stage, as far as worked out."""
    loads: dict[tuple[str, str], Band] = {}
    for one in planned:
        if one.use == "tow" and not one.is_ticked and not one.is_for_ticket and one.weight is not None:
            loads.setdefault((one.stage, one.load), one.weight.tongue.band)
    cargo = frozenset(item.of for item in rig.parts if item.words.kind == "cargo")
    plate = slot.towing.trailer.gvwr if slot.towing is not None else None
    allowed = plate.best if plate is not None and plate.known else None
    gross = slot.weight.gross.band if slot.weight is not None else None
    found = (
        tongue_chart(loads, least_rating(slot), units),
        weights_chart(slot.masses, cargo, allowed, slot.load, gross, units),
    )
    return tuple(one for one in found if one is not None)


def chart_sheets(rig: Rig, slot: Slot, planned: Sequence[Slot], units: HeaderUnits) -> tuple[Sheet, ...]:
    """Return each chart as a sheet to be printed."""
    charts = charts_of(rig, slot, planned, units)
    return tuple(Sheet(one.name, TITLES[one.name], (charted(one),), (one.says + ".",)) for one in charts)


def least_rating(slot: Slot) -> float | None:
    """Return the least rating (kg) of what carries the ball, None where none is written."""
    if slot.towing is None:
        return None
    ratings = [slot.towing.trailer.coupler.nose_max, *(one.vehicle.tongue for one in slot.towing.behind[:1])]
    known = [one.best for one in ratings if one is not None and one.known]
    return min(known, default=None)
