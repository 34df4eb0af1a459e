"""Tickets, scales and planks as records: what was typed under ``measured:``, each reading with its doubt."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from boxwright.disciplines.weight.readings import instrument_doubt, plank_reading, scale_pads_reading
from boxwright.exchange import Measured
from boxwright.model.measured import MeasuredWords, Plank
from boxwright.model.stage import Stage
from boxwright.rig.validate import Mistake, nearest, spellings, validate
from boxwright.units import COVERAGE, Band, HeaderUnits

WEIGHINGS = ("ticket", "weighbridge", "scale", "plank")
"""Kinds of reading that must give a weight."""

OTHER_READINGS = ("tape", "seen", "moisture", "logged")
"""Kinds of reading that give no weight."""

LOGGED, LOGGED_KEYS = "logged", ("loses", "reckoned", "inside", "outside")
"""The kind of reading that a logger's night gives, and what it must have."""

WEIGHING_KEYS = ("axles", "tongue", "total", "left", "right", "hitched", "alone", "plank", "part", "weight")
PADS = {
    "hitched": (3, "three numbers, [steer axle, drive axle, trailer axles]"),
    "alone": (2, "two numbers, [steer axle, drive axle]"),
}


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
        known, wrong = _known_keys(tree, path)
        words, unreadable = validate(MeasuredWords, known, path, units)
        wrong += unreadable
        if words is not None:
            _check_names(words, path, stages, loads, names, mistakes)
            given_by_it = _readings(words, path)
            wrong += _incomplete(words, path)
            if not given_by_it and not wrong:
                wrong += _without_reading(words, path)
            if stages and not words.stage and any(one.what != "part" for one in given_by_it):
                says = f"it is not said at which stage this was weighed; write stage: {stages[0].name}, or another"
                wrong.append(Mistake(path, says + " of the stages; until then it is compared with nothing"))
            found += given_by_it
        mistakes += wrong
    return tuple(found)


def _known_keys(tree: Any, path: str) -> tuple[Any, list[Mistake]]:
    """Return an entry without the keys nobody knows, and a mistake for each of those."""
    if not isinstance(tree, Mapping):
        return tree, []
    known = [key for choices in spellings(MeasuredWords).values() for key in choices]
    mistakes: list[Mistake] = []
    for key in tree:
        if key in known:
            continue
        guess = nearest(key, known)
        says = f'no key "{key}" is known here; '
        if key in Plank.model_fields:
            says += "a plank's own keys stand together; write plank: {reading: .., to_scale: .., to_ball: ..}"
        elif guess:
            says += f'did you mean "{guess}"?'
        else:
            says += f"known are {', '.join(known)}; of a plank, write plank: {{reading: .., to_scale: .., to_ball: ..}}"
        mistakes.append(Mistake(f"{path}.{key}", says, is_key=True))
    return {key: value for key, value in tree.items() if key in known}, mistakes


def _incomplete(words: MeasuredWords, path: str) -> list[Mistake]:
    """Return what was begun and gives no reading as it stands: scale pads and weighed parts."""
    mistakes: list[Mistake] = []
    for key, other in (("hitched", "alone"), ("alone", "hitched")):
        given, (count, how) = getattr(words, key), PADS[key]
        if given is not None and len(given) != count:
            mistakes.append(Mistake(f"{path}.{key}", f"{key} has {len(given)} of {count} numbers; write {how}"))
        if given is not None and getattr(words, other) is None:
            says = f"{key} gives no reading without {other}; write {other}: {PADS[other][1]}"
            mistakes.append(Mistake(f"{path}.{key}", says))
    if words.part and words.weight is None:
        says = f"nothing says what {words.part} weighs; write weight: beside part: {words.part}"
        mistakes.append(Mistake(f"{path}.part", says))
    if words.loses is not None or words.what.strip().lower() == LOGGED:
        lacks = [key for key in LOGGED_KEYS if (given := getattr(words, key)) is None or not given.known]
        if lacks:
            says = f"a logged night wants {', '.join(lacks)} as well, and is not used without: write it with boxwright"
            mistakes.append(Mistake(path, f"{says} heat RIG --logged FILE --keep"))
    if words.weight is not None and not words.part:
        says = "nothing says what has this weight; write part: and its name, or total: for the whole trailer"
        mistakes.append(Mistake(f"{path}.weight", says))
    return mistakes


def _without_reading(words: MeasuredWords, path: str) -> list[Mistake]:
    """Return what is wrong with an entry that gives no weight, where it was meant to give one."""
    kind = words.what.strip().lower()
    is_begun = any(getattr(words, key) not in (None, "") for key in WEIGHING_KEYS)
    if "plank" in kind:
        says = f"{words.what} gives no weight; write plank: {{reading: .., to_scale: .., to_ball: ..}}"
        return [Mistake(path, says)]
    if is_begun or any(word in kind for word in WEIGHINGS):
        says = f"{words.what or 'this entry'} gives no weight; write axles: .., tongue: .. or total: .. of the trailer"
        return [Mistake(path, says + ", or part: .., weight: .. of one part")]
    guess = nearest(kind, (*WEIGHINGS, *OTHER_READINGS)) if kind and kind not in OTHER_READINGS else ""
    if not guess:
        return []
    return [Mistake(f"{path}.what", f'no reading "{words.what}" is known; did you mean "{guess}"?')]


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
