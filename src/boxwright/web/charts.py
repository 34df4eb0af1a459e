"""Two charts where people would rather look than read: the load on the ball over the stages, and what weighs."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import isfinite

from boxwright.exchange import Mass
from boxwright.study.slots import Slot as WorkedSlot
from boxwright.units import HeaderUnits, shown_unit
from boxwright.web import contract

GROUPS = (
    ("Empty trailer", "trailer"),
    ("Foam and linings", "walls["),
    ("Doors and windows", "openings["),
    ("Built in", "parts["),
    ("People", "people["),
)
"""What masses are told together, by the start of their path; cargo and fluids of parts stand apart."""
CARGO, FLUIDS, OTHER = "Cargo", "Water and fuel", "Other"
NOTHING = 1e-9


def tongue_chart(slots: Sequence[WorkedSlot], hitch: float | None, units: HeaderUnits) -> contract.Chart | None:
    """Return the load on the ball of every towed load state, through the stages as planned.

    ``slots`` are those of the plan; ``hitch`` the least rating (kg) of coupler and vehicle, None where none is known.
    """
    towed = [slot for slot in slots if slot.use == "tow" and not slot.is_ticked and slot.weight is not None]
    stages = list(dict.fromkeys(slot.stage for slot in towed))
    loads = list(dict.fromkeys(slot.load for slot in towed))
    if not stages or not loads:
        return None
    unit, scale = shown_unit("mass", units)
    at = {(slot.stage, slot.load): slot for slot in towed}
    series = []
    for load in loads:
        own = [at.get((stage, load)) for stage in stages]
        bands = [slot.weight.tongue.band if slot is not None and slot.weight is not None else None for slot in own]
        best = [scale.from_si(one.best) if one is not None and isfinite(one.best) else None for one in bands]
        low = [scale.from_si(one.low) if one is not None and isfinite(one.low) else None for one in bands]
        high = [scale.from_si(one.high) if one is not None and isfinite(one.high) else None for one in bands]
        texts = [
            f"{stage}, {load}: {value:,.0f} {unit}" if value is not None else f"{stage}, {load}: not known"
            for stage, value in zip(stages, best, strict=True)
        ]
        series.append(contract.Series(label=load, y=best, low=low, high=high, texts=texts))
    limits = []
    if hitch is not None:
        says = f"least rating {scale.from_si(hitch):,.0f} {unit}"
        limits.append(contract.Limit(label=says, y=scale.from_si(hitch), kind="stop"))
    limits.append(contract.Limit(label="below this the ball lifts", y=0.0, kind="stop"))
    return contract.Chart(
        name="tongue",
        title="Load on the ball through the stages, one line for each load state",
        form="through",
        unit=unit,
        labels=stages,
        series=series,
        limits=limits,
        of=[f"stages[{stage}]" for stage in stages],
        says=_spoken(series, stages, unit),
    )


def _spoken(series: Iterable[contract.Series], stages: Sequence[str], unit: str) -> str:
    said = []
    for one in series:
        known = [(value, stage) for value, stage in zip(one.y, stages, strict=True) if value is not None]
        if known:
            (least, first), (most, last) = min(known), max(known)
            said.append(f"{one.label}: from {least:,.0f} {unit} ({first}) to {most:,.0f} {unit} ({last})")
    return "; ".join(said) or "nothing is known of the load on the ball"


def weight_chart(slot: WorkedSlot, units: HeaderUnits, cargo: frozenset[str]) -> contract.Chart | None:
    """Return what all that the trailer weighs is made of, group by group, as steps that add up."""
    if not slot.masses:
        return None
    unit, scale = shown_unit("mass", units)
    sums: dict[str, float] = {}
    for mass in slot.masses:
        if isfinite(mass.kg.best):
            group = _group(mass, cargo)
            sums[group] = sums.get(group, 0.0) + mass.kg.best
    order = [name for name, _ in GROUPS[:-1]] + [CARGO, FLUIDS, "People", OTHER]
    shown = [(name, sums[name]) for name in order if sums.get(name, 0.0) > NOTHING]
    labels, bottoms, tops, texts, total = [], [], [], [], 0.0
    for name, kg in shown:
        labels.append(name)
        bottoms.append(scale.from_si(total))
        total += kg
        tops.append(scale.from_si(total))
        texts.append(f"{name}: {scale.from_si(kg):,.0f} {unit}")
    labels.append("All up")
    bottoms.append(0.0)
    tops.append(scale.from_si(total))
    texts.append(f"all up: {scale.from_si(total):,.0f} {unit}")
    limits = []
    plate = slot.towing.trailer.gvwr if slot.towing is not None else None
    if plate is not None and plate.known:
        value = scale.from_si(plate.best)
        limits.append(contract.Limit(label=f"plate {value:,.0f} {unit}", y=value, kind="stop"))
    series = [contract.Series(label="weight", y=list(tops), low=list(bottoms), high=list(tops), texts=texts)]
    says = f"{'; '.join(texts)}. What has no weight written is not in it."
    return contract.Chart(
        name="weights",
        title=f"What it weighs, load {slot.load}",
        form="fall",
        unit=unit,
        labels=labels,
        series=series,
        limits=limits,
        of=[""] * len(labels),
        says=says,
    )


def _group(mass: Mass, cargo: frozenset[str]) -> str:
    if mass.what == "fluid":
        return FLUIDS
    if mass.of in cargo:
        return CARGO
    return next((name for name, start in GROUPS if mass.of.startswith(start)), OTHER)


def least_rating(slot: WorkedSlot) -> float | None:
    """Return the least rating (kg) of what carries the ball, None where none is written."""
    if slot.towing is None:
        return None
    ratings = [slot.towing.trailer.coupler.nose_max, *(one.vehicle.tongue for one in slot.towing.behind[:1])]
    known = [one.best for one in ratings if one is not None and one.known]
    return min(known, default=None)
