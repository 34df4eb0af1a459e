"""Tickets, scales and planks as records: what was typed under ``measured:``, each reading with its doubt."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from boxwright.disciplines.weight.readings import instrument_doubt, plank_reading, scale_pads_reading
from boxwright.exchange import Measured
from boxwright.model.measured import MeasuredWords
from boxwright.model.stage import Stage
from boxwright.rig.validate import Mistake, nearest, validate
from boxwright.units import COVERAGE, Band, HeaderUnits


def read_measured(
    given: Mapping[str, Any],
    units: HeaderUnits,
    stages: tuple[Stage, ...],
    loads: Iterable[str],
    names: Iterable[str],
    mistakes: list[Mistake],
) -> tuple[Measured, ...]:
    """Return every reading of a weight; readings of other things are kept in the text and await their discipline."""
    loads, names = set(loads), set(names)
    found: list[Measured] = []
    for name, tree in given.items():
        path = f"measured[{name}]"
        words, wrong = validate(MeasuredWords, tree, path, units)
        mistakes += wrong
        if words is None:
            continue
        _check_names(words, path, stages, loads, names, mistakes)
        found += _readings(words, path)
    return tuple(found)


def _check_names(
    words: MeasuredWords,
    path: str,
    stages: tuple[Stage, ...],
    loads: set[str],
    names: set[str],
    mistakes: list[Mistake],
) -> None:
    known_stages = {stage.name for stage in stages} | {str(stage.index) for stage in stages}
    for key, word, known in (
        ("stage", words.stage, known_stages),
        ("load", words.load, loads),
        ("part", words.part, names),
    ):
        if word and word not in known:
            guess = nearest(word, known)
            says = f'"{word}" is no {key} of this file' + (f'; did you mean "{guess}"?' if guess else "")
            mistakes.append(Mistake(f"{path}.{key}", says))


def _readings(words: MeasuredWords, path: str) -> list[Measured]:
    """Return the readings of one entry."""
    instrument = words.with_ or words.what

    def reading(what: str, value: Band) -> Measured:
        return Measured(path, what, value, words.date, words.stage, words.load, instrument, words.part)

    def doubted(value: Band) -> Band:
        if value.spread != "exact" or not value.known:
            return value
        if words.within is not None:
            return with_half_width(value, words.within.best, assumed=False)
        return instrument_doubt(instrument, value)

    found: list[Measured] = []
    for index, axle in enumerate(words.axles or ()):
        found.append(reading("axles" if len(words.axles or ()) == 1 else f"axle {index + 1}", doubted(axle)))
    if len(words.axles or ()) > 1:
        found.append(reading("axles", added([doubted(axle) for axle in words.axles or ()])))
    for what, value in (("tongue", words.tongue), ("total", words.total), ("left", words.left), ("right", words.right)):
        if value is not None:
            found.append(reading(what, doubted(value)))
    if words.hitched is not None and words.alone is not None and len(words.hitched) == 3 and len(words.alone) == 2:
        pads = scale_pads_reading([doubted(x) for x in words.hitched], [doubted(x) for x in words.alone])
        found += [reading("axles", pads.axles), reading("tongue", pads.tongue)]
    if words.plank is not None:
        plank = words.plank
        bare = plank.bare.best if plank.bare is not None else 0.0
        found.append(
            replace(
                reading("tongue", plank_reading(doubted(plank.reading), plank.bare, plank.to_scale, plank.to_ball)),
                plank=(plank.reading.best, bare, plank.to_scale.best, plank.to_ball.best),
            )
        )
    if words.weight is not None and words.part:
        found.append(reading("part", doubted(words.weight)))
    has_total = any(one.what == "total" for one in found)
    axles = [one.value for one in found if one.what == "axles"]
    tongue = [one.value for one in found if one.what == "tongue"]
    if not has_total and axles and tongue:
        found.append(reading("total", added([axles[0], tongue[0]])))
    return found


def with_half_width(value: Band, half_width: float, assumed: bool) -> Band:
    """Return a reading with its half-width at 95 %."""
    low = max(value.best - half_width, 0.0)
    return replace(value, low=low, high=value.best + half_width, spread="sigma", assumed=assumed)


def added(bands: list[Band]) -> Band:
    """Return the sum of independent readings, their standard uncertainties in quadrature."""
    best = sum(band.best for band in bands)
    half = COVERAGE * sum(band.standard_uncertainty**2 for band in bands) ** 0.5
    is_known, is_assumed = all(band.known for band in bands), any(band.assumed for band in bands)
    return Band(best, best - half, best + half, is_known, "sigma" if half else "exact", is_assumed)
