"""What helps where a night is too cold or too warm: each change worked out as a night of its own, never extrapolated.

A change is the smallest that does it, found by halving; a run just short of it does not do it.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import sqrt
from typing import Literal

from boxwright.disciplines.heat.cold_hours import Inside, Outdoors, Warmth
from boxwright.disciplines.heat.findings.night import NEAR
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.night import HeldNight, night_of
from boxwright.disciplines.heat.room import NIGHT
from boxwright.disciplines.heat.shell import shell_of
from boxwright.exchange import Airflow, Layup, LayupLayer, Moisture, Opening
from boxwright.records import dataclass
from boxwright.units import Band, exactly

What = Literal["larger", "broken", "stripped", "opened", "smaller", "set back"]
MILD = columns("milder")["a mild night"][0]
"""Outside (K) on the night a low setting is tried in."""
LARGEST, WIDEST = columns("helps_most")["a heater"][0], columns("helps_widest")["a window"][0]
BREAK_THICK = columns("helps_break")["foam over the studs"][0]
STRIP_THICK = columns("helps_break")["a strip on the studs"][0]
SET_BACK = columns("helps_warm")["set back"][0]
"""K lower while people sleep."""
TOO_WARM = columns("helps_warm")["over what is wanted"][0]
"""K over what is wanted at which people open a window."""
HALVINGS = 8
SAVES_NOTHING = 0.995
"""Of a loss: what leaves as much of it saves nothing that is worth a word."""
NOTHING = exactly(0.0)
WHOLLY = 0.05
"""Within this (K) a heater named as large enough reaches what is wanted, so that both read alike when shown."""


@dataclass(frozen=True, slots=True)
class Help:
    """A change and the night it makes.

    ``what``: a "larger" heater or a "smaller" lowest setting (``amount`` in W), foam over the studs that breaks their
    way ("broken", m thick), a strip of it on each stud ("stripped", m), more that is "opened" (m2 low and as much
    high), a heater "set back" (K) while people sleep. ``after`` is the night with it, None where no amount does it.
    """

    what: What
    amount: float
    before: HeldNight
    after: HeldNight | None


def mild_night() -> Outdoors:
    """Return the mild night: as warm outside as heaters are too large for."""
    return Outdoors("", "a mild night", exactly(MILD), NIGHT["swing"], NIGHT["wind"])


def helps_of(
    inside: Inside,
    moisture: tuple[Moisture, ...],
    held: tuple[HeldNight, ...],
    layups: tuple[Layup, ...],
    openings: tuple[Opening, ...],
) -> tuple[Help, ...]:
    """Return what helps in the worst of some nights, for each heater: when it is too cold, and when it is mild."""
    found: list[Help] = []
    worst: dict[str, HeldNight] = {}
    for one in held:
        # Of one that most likely gives nothing, for it or its feed may not stand, no change of the room helps.
        if one.warmth is not None and one.warmth.highest.known and one.warmth.highest.best > 0.0:
            known = worst.get(one.warmth.of)
            worst[one.warmth.of] = one if known is None or one.coldest.best < known.coldest.best else known
    for one in worst.values():
        if is_short(one):
            strip = stripped(inside, moisture, one, layups, openings)
            found += [strip] if strip is not None else []
            found += [broken(inside, moisture, one, layups, openings), larger(inside, moisture, one)]
        mild = at_lowest(inside, moisture, one)
        if mild is not None and is_hot(mild):
            found += [opened(inside, moisture, mild), smaller(inside, moisture, mild)]
    return tuple(found)


def is_short(one: HeldNight) -> bool:
    """Return whether a night is most likely colder inside than is wanted."""
    return one.warmth is not None and one.coldest.best < one.warmth.wanted - NEAR


def is_hot(one: HeldNight) -> bool:
    """Return whether a night is most likely warmer inside than people bear."""
    return one.warmth is not None and one.warmest.best > one.warmth.wanted + TOO_WARM


def at_lowest(inside: Inside, moisture: tuple[Moisture, ...], one: HeldNight) -> HeldNight | None:
    """Return the mild night with the heater left at its lowest; None where it goes off by itself, or has no lowest."""
    warmth = one.warmth
    if warmth is None or warmth.switches is True or not warmth.lowest.known or warmth.lowest.best <= 0.0:
        return None
    return night_of(inside, mild_night(), _left_at(warmth, warmth.lowest), moisture)


def _left_at(warmth: Warmth, heat: Band) -> Warmth:
    return replace(warmth, lowest=heat, highest=heat, switches=False)


def broken(
    inside: Inside,
    moisture: tuple[Moisture, ...],
    one: HeldNight,
    layups: tuple[Layup, ...],
    openings: tuple[Opening, ...],
) -> Help:
    """Return the night with foam over the studs of every wall and over the bows, below the lining."""
    changed = tuple(_with_break(layup) for layup in layups)
    after = night_of(replace(inside, shell=shell_of(changed, openings)), one.outdoors, one.warmth, moisture)
    return Help("broken", BREAK_THICK, one, after)


def _is_bare_sheet(layup: Layup) -> bool:
    """Return whether a plane has no members, as a wheel box; of one whose members nobody wrote it is not known."""
    return layup.member_face is None and layup.members.known and layup.members.best <= 0.0


def _with_break(layup: Layup) -> Layup:
    """Return a plane with foam over all its members, below what covers it; floors and bare sheet stay as they are."""
    if layup.wall == "floor" or _is_bare_sheet(layup):
        return layup
    first = next((at for at, each in enumerate(layup.layers) if each.where == "all"), len(layup.layers))
    foam = LayupLayer(layup.of, "break", "XPS", exactly(BREAK_THICK), "all", True)
    kept = [each for each in layup.layers[:first] if each.where != "members"]
    return replace(layup, layers=(*kept, foam, *layup.layers[first:]))


def stripped(
    inside: Inside,
    moisture: tuple[Moisture, ...],
    one: HeldNight,
    layups: tuple[Layup, ...],
    openings: tuple[Opening, ...],
) -> Help | None:
    """Return the night with a strip of foam on each stud and bow, below the lining; None where that saves nothing."""
    changed = tuple(_with_strip(layup) for layup in layups)
    shell = shell_of(changed, openings)
    if changed == layups or shell.by_air.best >= shell_of(layups, openings).by_air.best * SAVES_NOTHING:
        return None
    after = night_of(replace(inside, shell=shell), one.outdoors, one.warmth, moisture)
    return Help("stripped", STRIP_THICK, one, after)


def _with_strip(layup: Layup) -> Layup:
    """Return a plane with a strip of foam on its members; floors, bare sheet and what is broken stay as they are."""
    is_broken = any(each.where == "members" for each in layup.layers)
    if layup.wall == "floor" or _is_bare_sheet(layup) or is_broken:
        return layup
    first = next((at for at, each in enumerate(layup.layers) if each.where == "all"), len(layup.layers))
    strip = LayupLayer(layup.of, "strip", "XPS", exactly(STRIP_THICK), "members", True)
    return replace(layup, layers=(*layup.layers[:first], strip, *layup.layers[first:]))


def set_back(inside: Inside, moisture: tuple[Moisture, ...], one: HeldNight) -> Help | None:
    """Return the night with the heater set lower while people sleep; None where it saves nothing or it is short."""
    warmth = one.warmth
    if warmth is None or not warmth.highest.known or is_short(one):
        return None
    after = night_of(inside, one.outdoors, replace(warmth, set_back=SET_BACK), moisture)
    return Help("set back", SET_BACK, one, after) if after.energy.best < one.energy.best else None


def larger(inside: Inside, moisture: tuple[Moisture, ...], one: HeldNight) -> Help:
    """Return the night with the smallest heater that most likely holds what is wanted."""
    warmth = one.warmth
    assert warmth is not None

    def tried(watt: float) -> HeldNight:
        return night_of(inside, one.outdoors, replace(warmth, highest=exactly(watt)), moisture)

    def holds(night: HeldNight) -> bool:
        return night.coldest.best >= warmth.wanted - WHOLLY

    watt, after = _smallest(tried, holds, warmth.highest.best, LARGEST)
    return Help("larger", watt, one, after)


def opened(inside: Inside, moisture: tuple[Moisture, ...], mild: HeldNight) -> Help:
    """Return the mild night with as little more opened as keeps the room from being too warm at the lowest setting."""

    def tried(area: float) -> HeldNight:
        wider = replace(inside, airflow=_opened(inside.airflow, area, inside.height))
        return night_of(wider, mild.outdoors, mild.warmth, moisture)

    area, after = _smallest(tried, lambda night: not is_hot(night), 0.0, WIDEST)
    return Help("opened", area, mild, after)


def _opened(airflow: Airflow, area: float, height: float) -> Airflow:
    """Return the airflow with as much more open low as high: half the room's height apart, where vents are no higher.

    Two alike in a row pass as much as one of their area by the root of two; beside what is open low and high they pass
    no less than that more. A vent at one height alone passes both ways, and is left out of account.
    """
    if area <= 0.0:
        return airflow
    vents, rise, pair, apart = airflow.vents, airflow.rise, area / sqrt(2.0), height / 2.0
    passes, over = airflow.likely or (vents.best, rise.best)
    kept = vents if rise.best >= apart else NOTHING
    more = Band(kept.best + pair, kept.low + pair, kept.high + pair, vents.known, vents.spread)
    likely = (passes + pair, over) if over >= apart else (pair, apart)
    return replace(airflow, vents=more, rise=exactly(max(rise.best, apart)), likely=likely)


def smaller(inside: Inside, moisture: tuple[Moisture, ...], mild: HeldNight) -> Help:
    """Return the mild night with the largest lowest setting at which the room is not too warm."""
    warmth = mild.warmth
    assert warmth is not None

    def tried(less: float) -> HeldNight:
        heat = exactly(warmth.lowest.best - less)
        return night_of(inside, mild.outdoors, _left_at(warmth, heat), moisture)

    less, after = _smallest(tried, lambda night: not is_hot(night), 0.0, warmth.lowest.best)
    return Help("smaller", warmth.lowest.best - less, mild, after)


def _smallest(
    tried: Callable[[float], HeldNight], holds: Callable[[HeldNight], bool], least: float, most: float
) -> tuple[float, HeldNight | None]:
    """Return the smallest amount that does it, and its night; the most there is and no night where none does."""
    best = tried(most)
    if not holds(best):
        return most, None
    for _ in range(HALVINGS):
        middle = (least + most) / 2.0
        night = tried(middle)
        if holds(night):
            most, best = middle, night
        else:
            least = middle
    return most, best
