"""The charts of weight: the load on the ball through the stages, and what all that it weighs is made of."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from math import isfinite

from boxwright.drawing.chart import UNKNOWN, Bound, Chart, Series
from boxwright.exchange import Mass
from boxwright.units import Band, HeaderUnits, shown_unit

GROUPS = (
    ("Empty trailer", "trailer"),
    ("Foam, linings", "walls["),
    ("Openings", "openings["),
    ("Built in", "parts["),
)
"""What masses are told together, by the start of their path; cargo, fluids and people stand apart."""
CARGO, FLUIDS, PEOPLE, OTHER = "Cargo", "Water, fuel", "People", "Other"
NOTHING = 1e-9
LIFTS = "below this the ball lifts"


def tongue_chart(bands: Mapping[tuple[str, str], Band], hitch: float | None, shown_in: HeaderUnits) -> Chart | None:
    """Return the load on the ball of every load state through the stages, with its doubt.

    ``bands`` are the loads by stage and load state, in order; ``hitch`` the least rating (kg) of what carries the
    ball, None where none is known.
    """
    stages, loads = (tuple(dict.fromkeys(key[index] for key in bands)) for index in (0, 1))
    if not stages:
        return None
    unit, scale = shown_unit("mass", shown_in)

    def shown(value: float | None) -> float:
        return scale.from_si(value) if value is not None and isfinite(value) else UNKNOWN

    series = []
    for load in loads:
        own = [bands.get((stage, load)) for stage in stages]
        best = tuple(shown(one.best if one is not None and _has_end(one) else None) for one in own)
        low = tuple(shown(one.low if one is not None else None) for one in own)
        high = tuple(shown(one.high if one is not None else None) for one in own)
        texts = tuple(
            f"{stage}, {load}: {_words(*value, unit)}"
            for stage, value in zip(stages, zip(best, low, high, strict=True), strict=True)
        )
        series.append(Series(load, best, low, high, texts))
    bounds = [Bound(LIFTS, 0.0)]
    if hitch is not None:
        bounds.append(Bound(f"least rating {shown(hitch):,.0f} {unit}", shown(hitch)))
    title = "Load on the ball through the stages, one line for each load state"
    of = tuple(f"stages[{stage}]" for stage in stages)
    return Chart(
        "tongue", title, "through", unit, stages, tuple(series), tuple(bounds), of, _spoken(series, stages, unit)
    )


def _has_end(band: Band) -> bool:
    """Return whether either end is known: drawn without one, a load would look like an answer."""
    return isfinite(band.low) or isfinite(band.high)


def _words(best: float, low: float, high: float, unit: str) -> str:
    if not isfinite(best):
        return "not known"
    if not (isfinite(low) and isfinite(high)):
        ends = f"at least {low:,.0f}" if isfinite(low) else f"at most {high:,.0f}" if isfinite(high) else "no end known"
        return f"{best:,.0f} {unit} ({ends})"
    return f"{best:,.0f} {unit} ({low:,.0f} to {high:,.0f})" if high - low > NOTHING else f"{best:,.0f} {unit}"


def _spoken(series: Iterable[Series], stages: Sequence[str], unit: str) -> str:
    said = []
    for one in series:
        known = [(value, stage) for value, stage in zip(one.best, stages, strict=True) if isfinite(value)]
        if known:
            (least, first), (most, last) = min(known), max(known)
            said.append(f"{one.label}: from {least:,.0f} {unit} ({first}) to {most:,.0f} {unit} ({last})")
    return "; ".join(said) or "nothing is known of the load on the ball"


def weights_chart(
    masses: Iterable[Mass], cargo: frozenset[str], plate: float | None, load: str, shown_in: HeaderUnits
) -> Chart | None:
    """Return what all that the trailer weighs is made of, group by group, as steps that add up.

    ``cargo`` are the paths of what is carried; ``plate`` is the greatest mass (kg) the plate allows, None if unknown.
    """
    unit, scale = shown_unit("mass", shown_in)
    sums: dict[str, float] = {}
    unweighed = 0
    for mass in masses:
        if not isfinite(mass.kg.best):
            continue
        unweighed += not mass.kg.known
        group = _group(mass, cargo)
        sums[group] = sums.get(group, 0.0) + mass.kg.best
    order = [*(name for name, _ in GROUPS), CARGO, FLUIDS, PEOPLE, OTHER]
    steps = [(name, sums[name]) for name in order if sums.get(name, 0.0) > NOTHING]
    if not steps:
        return None
    labels, low, high, texts, total = [], [], [], [], 0.0
    for name, kg in steps:
        labels.append(name)
        low.append(scale.from_si(total))
        total += kg
        high.append(scale.from_si(total))
        texts.append(f"{name}: {scale.from_si(kg):,.0f} {unit}")
    labels, low, high = [*labels, "All up"], [*low, 0.0], [*high, scale.from_si(total)]
    texts.append(f"all up: {scale.from_si(total):,.0f} {unit}")
    bounds = [Bound(f"plate {scale.from_si(plate):,.0f} {unit}", scale.from_si(plate))] if plate is not None else []
    missing = f"; {unweighed} without a weight not counted" if unweighed else ""
    bars = Series("weight", tuple(high), tuple(low), tuple(high), tuple(texts))
    title = f"What it weighs, load {load}"
    of = ("",) * len(labels)
    return Chart(
        "weights", title, "fall", unit, tuple(labels), (bars,), tuple(bounds), of, f"{'; '.join(texts)}{missing}"
    )


def _group(mass: Mass, cargo: frozenset[str]) -> str:
    if mass.what == "fluid":
        return FLUIDS
    if mass.of.startswith("people["):
        return PEOPLE
    if mass.of in cargo:
        return CARGO
    return next((name for name, start in GROUPS if mass.of.startswith(start)), OTHER)
