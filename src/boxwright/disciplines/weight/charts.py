"""The charts of weight: the load on the ball through the stages, and what all that it weighs is made of."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from math import inf, isfinite

from boxwright.drawing.chart import UNKNOWN, Bound, Chart, Series
from boxwright.exchange import Mass
from boxwright.units import Band, HeaderUnits, shown_unit
from boxwright.units.scale import Scale

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
    masses: Iterable[Mass],
    cargo: frozenset[str],
    plate: float | None,
    load: str,
    gross: Band | None,
    shown_in: HeaderUnits,
) -> Chart | None:
    """Return what all that the trailer weighs is made of, group by group, as steps that add up.

    ``cargo`` are the paths of what is carried; ``plate`` is the greatest mass (kg) the plate allows, None if unknown.
    ``gross`` is all that it weighs (kg) as weight works it out, None where it does not. A group is told from the least
    to the most of all its things, each at its end: wider than the doubt of the whole, in which they seldom err alike.
    """
    unit, scale = shown_unit("mass", shown_in)
    groups: dict[str, list[Band]] = {}
    for mass in masses:
        groups.setdefault(_group(mass, cargo), []).append(mass.kg)
    sums = {name: _added(bands) for name, bands in groups.items()}
    order = [*(name for name, _ in GROUPS), CARGO, FLUIDS, PEOPLE, OTHER]
    steps = [
        (name, sums[name]) for name in order if name in sums and (sums[name].best > NOTHING or not sums[name].known)
    ]
    if not any(kg.best > NOTHING for _, kg in steps):
        return None
    low, high, texts, total = [], [], [], 0.0
    for name, kg in steps:
        low.append(scale.from_si(total))
        total += kg.best
        high.append(scale.from_si(total))
        texts.append(f"{name}: {_told(kg, scale, unit)}")
    whole = gross if gross is not None and isfinite(gross.best) else _added([kg for _, kg in steps])
    texts.append(f"all up: {_told(whole, scale, unit)}")
    labels = (*(name for name, _ in steps), "All up")
    bounds = (Bound(f"plate {scale.from_si(plate):,.0f} {unit}", scale.from_si(plate)),) if plate is not None else ()
    unweighed = sum(not band.known for bands in groups.values() for band in bands)
    missing = f"; {unweighed} without a weight not counted" if unweighed else ""
    bars = Series("weight", (*high, scale.from_si(total)), (*low, 0.0), (*high, scale.from_si(total)), tuple(texts))
    title = f"What it weighs, load {load}"
    return Chart(
        "weights", title, "fall", unit, labels, (bars,), bounds, ("",) * len(labels), "; ".join(texts) + missing
    )


def _added(bands: Iterable[Band]) -> Band:
    """Return the masses of a group together, from all at their least to all at their most; one unknown has no most."""
    bands = tuple(bands)
    best, low, high = (sum(end for end in ends if isfinite(end)) for ends in zip(
        *((one.best, one.low, one.high) for one in bands), strict=True
    ))  # fmt: skip
    is_known = all(one.known for one in bands)
    return Band(best, low, high if is_known else inf, known=is_known)


def _told(kg: Band, scale: Scale, unit: str) -> str:
    """Return a mass in words with its doubt, none where its ends read the same."""
    best, low, high = (scale.from_si(end) if isfinite(end) else end for end in (kg.best, kg.low, kg.high))
    if not isfinite(high):
        return f"at least {low:,.0f} {unit}"
    ends = f"{low:,.0f} to {high:,.0f}"
    return f"{best:,.0f} {unit}" + (f" ({ends})" if f"{low:,.0f}" != f"{high:,.0f}" else "")


def _group(mass: Mass, cargo: frozenset[str]) -> str:
    if mass.what == "fluid":
        return FLUIDS
    if mass.of.startswith("people["):
        return PEOPLE
    if mass.of in cargo:
        return CARGO
    return next((name for name, start in GROUPS if mass.of.startswith(start)), OTHER)
