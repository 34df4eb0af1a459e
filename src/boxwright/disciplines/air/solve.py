"""What air offers before anything is warm, and what it works out of the nights heat gives it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from boxwright.disciplines.air.breathing import breathed, breathed_at_work, mild_night
from boxwright.disciplines.air.damp import damp_night, wood_by_place
from boxwright.disciplines.air.given_off import given_off
from boxwright.disciplines.air.parts import Section
from boxwright.disciplines.air.result import Locker, Result, There, Vent
from boxwright.disciplines.air.sourced import rules_at_home
from boxwright.disciplines.air.vents import airflow_of, summed, vents_of
from boxwright.exchange import Airflow, Layup, Moisture, Night, Opening
from boxwright.records import dataclass

__all__ = ["Offers", "Result", "lined_share", "offers", "solve"]

Stands = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Offers:
    """How the air of the room can change, and what makes it damp; ``vents`` are what it was worked out of."""

    airflow: Airflow
    moisture: tuple[Moisture, ...]
    vents: tuple[Vent, ...] = ()


def lined_share(layups: tuple[Layup, ...]) -> float:
    """Return the share of walls and ceiling that a lining surely covers: the tightness of the room goes by it."""
    planes = [one for one in layups if one.wall != "floor" and one.area.known]
    whole = sum(one.area.best for one in planes)
    lined = sum(
        one.area.best for one in planes if any(layer.where == "all" and layer.is_certain for layer in one.layers)
    )
    return lined / whole if whole > 0.0 else 0.0


def offers(
    own: Section,
    standing: Stands,
    openings: tuple[Opening, ...],
    lined: float,
    people: int,
    use: str,
    covered: tuple[tuple[str, str], ...] = (),
) -> Offers:
    """Return how the air of the room can change in one slot, and what makes it damp.

    ``standing`` pairs the path of each vent, fan and flame that stands with "yes" or "perhaps"; ``lined`` is what
    `lined_share` gives; ``people`` are who is inside, asleep or at work by the use; ``covered`` are holes that have a
    thing close before them, with its name.
    """
    vents = vents_of(own, standing, openings, dict(covered))
    damp = given_off(own.damp, dict(standing), people if use == "sleep" else 0, people if use == "work" else 0)
    return Offers(airflow_of(vents, openings, lined, use == "sleep"), damp, vents)


def _lockers(own: Section, there: dict[str, str]) -> Iterator[Locker]:
    """Return what gas cylinders stand in, as far as it stands."""
    for one in own.vents:
        if one.holds and one.of in there:
            length, width, _ = one.place.size
            stands: There = "yes" if there[one.of] == "yes" else "perhaps"
            yield Locker(one, stands, one.facet.free_area, length * width)


def solve(
    own: Section,
    offered: Offers,
    standing: Stands,
    layups: tuple[Layup, ...],
    nights: tuple[Night, ...],
    people: int,
    use: str,
    countries: tuple[str, ...],
    judged_on: date,
) -> Result:
    """Return what air has worked out in one slot; of ``standing`` it takes the flames."""
    there, sleepers, workers = dict(standing), people if use == "sleep" else 0, people if use == "work" else 0
    fixed = tuple(one for one in offered.vents if one.stays_open)
    airy = frozenset(one.planned.of for one in fixed)
    return Result(
        of="trailer",
        use=use,
        sleepers=sleepers,
        airflow=offered.airflow,
        vents=offered.vents,
        low=summed(tuple(one for one in fixed if one.is_low)),
        high=summed(tuple(one for one in fixed if not one.is_low)),
        breathing=breathed_at_work(own, offered.airflow, workers, there)
        if workers
        else breathed(own, offered.airflow, sleepers),
        mild=mild_night(own, offered.airflow, sleepers, workers),
        nights=tuple(damp_night(one, offered.moisture, layups, airy) for one in nights),
        flames=tuple((one, "yes" if there[one.of] == "yes" else "perhaps") for one in own.flames if one.of in there),
        wood=wood_by_place(own.wood),
        lockers=tuple(_lockers(own, there)),
        moisture=offered.moisture,
        on_gas=tuple(one for one in own.on_gas if one.of in there),
        rules=rules_at_home(countries, judged_on),
        country=countries[0].upper().partition("-")[0] if countries else "",
        workers=workers,
    )
