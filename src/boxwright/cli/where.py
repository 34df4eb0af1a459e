"""The page of ``boxwright where``: what is at one spot of a wall, how far the metal is, what runs behind."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from math import inf

from boxwright.cli.asked import Answered, Question, answered, slot_of
from boxwright.cli.rig_file import NothingAsked, must_be_one_of
from boxwright.cli.screen import Line, clean, hanging, plain
from boxwright.disciplines.frame.looked import Near, Reached, Spot
from boxwright.disciplines.frame.result import Result, Wall
from boxwright.disciplines.frame.spot import spot
from boxwright.model.place import Written, resolve
from boxwright.units import HeaderUnits, show, show_band

HOW = (
    "write it as left x=72 z=30, or at front and rear side=left+20 z=30, on roof and floor x=72 side=centre, on a "
    "slanted wall of the nose side=left+5 z=30 or x=-5 z=30"
)
KEYS = ("x", "side", "z")
FLAT = ("roof", "floor")
NEAR_A_WIRE = 0.05
"""Metres from a spot within which a wire is named; a loom sags and a builder's clip is not where it was drawn."""
CAUTIONS = (
    "Look behind before you drill: brake and lamp wires run where no file says. Disconnect shore power, the battery "
    "and the tow vehicle first. A magnet on the wall outranks every number here."
)


def where(
    question: Question, wall: str, typed: Sequence[str], today: date, columns: int
) -> tuple[list[Line], Answered]:
    """Return the page of a spot, and the answer it comes from."""
    answer = answered(question, today)
    slot = slot_of(answer, answer.use)
    result = slot.frame if slot is not None else None
    if slot is None or result is None or not result.walls:
        body = "{length: .., width: .., height: ..}"
        raise NothingAsked(f"nobody wrote how large the box is; write trailer: {{body: {body}}}")
    word = "roof" if wall.lower() == "ceiling" else wall.lower()
    name = must_be_one_of(word, [one.name for one in result.walls], "wall")
    plane = result.wall(name)
    assert plane is not None
    along, up = _place(plane, typed, answer)
    found = spot(result, plane, along, up, answer.reading.rig.surfaces, slot.standing.frames)
    units = answer.units
    rig = answer.reading.rig.header.name or "this rig"
    plane_words = name if name in ("roof", "floor") else f"{name} wall"
    title = f"{rig}: {plane_words}, {_at(plane, along, up, units)}, stage {slot.stage}"
    lines = [plain(clean(title), "head"), ()]
    for sentence in (*_said(found, result, units), *_runs(result, found, units)):
        lines += hanging(plain("  "), clean(sentence), columns)
    lines += [(), *hanging((), CAUTIONS, columns, "dim")]
    return lines, answer


def _place(wall: Wall, typed: Sequence[str], answer: Answered) -> tuple[float, float]:
    """Return where a spot is, along its wall and up it, from words such as ``x=72``."""
    given: dict[str, str] = {}
    for word in typed:
        key, sign, text = word.partition("=")
        if not sign or key.strip() not in KEYS:
            raise NothingAsked(f'cannot read the spot "{clean(word)}"; {HOW}')
        given[key.strip()] = text.strip()
    wanted = ("x", "side") if wall.name in ("roof", "floor") else ("x", "z") if wall.inward[0] == 0.0 else ("side", "z")
    if wall.name.startswith("nose") and given.get("x"):
        wanted = ("x", "z")
    missing = [key for key in wanted if not given.get(key)]
    if missing:
        raise NothingAsked(f"where along {missing[0]}? {HOW}")
    rig = answer.reading.rig
    words = Written(x=given.get("x", ""), side=given.get("side", ""), z=given.get("z", ""))
    place, problems = resolve(words, (0.0, 0.0, 0.0), rig.surfaces, rig.header.units, None)
    if problems:
        raise NothingAsked(str(problems[0][1]))
    if wall.name in ("roof", "floor"):
        return place.x.best, place.y.best
    if wall.name.startswith("nose"):
        return _slanted(wall, 0, place.x.best) if given.get("x") else _slanted(wall, 1, place.y.best), place.z.best
    return (place.x.best if wall.inward[0] == 0.0 else place.y.best), place.z.best


def _slanted(wall: Wall, axis: int, at: float) -> float:
    """Return how far along a slanted wall, from its corner of the body, a place is that is given by x or across."""
    run = wall.end[axis] - wall.start[axis]
    return (at - wall.start[axis]) / run * (wall.high - wall.low) if run != 0.0 else inf


def _at(wall: Wall, along: float, up: float, units: HeaderUnits) -> str:
    """Return a place in words, across the trailer as a tape reads it: from the left stud face."""
    first, second = "x", "z"
    if wall.name.startswith("nose"):
        first = "from its corner of the body"
    elif wall.name in ("roof", "floor"):
        second, up = "from the left stud face", up - wall.foot
    elif wall.name in ("front", "rear"):
        first, along = "from the left stud face", along - wall.low
    return f"{first} {show(along, 'm', units, cuts=True)}, {second} {show(up, 'm', units, cuts=True)}"


def _said(found: Spot, result: Result, units: HeaderUnits) -> Iterator[str]:
    """Yield the sentences of a spot, the most wanted first."""
    sure = "as taped" if found.is_built else "as ordered, not taped"
    if found.what == "outside":
        yield "That is outside the wall."
        return
    if found.what == "opening":
        yield f"There is an opening: {found.name}."
    elif found.what == "member":
        yield f"Metal: {found.name} is behind it ({sure})."
    elif found.what == "edge":
        yield f"Perhaps the edge of {found.name} ({sure}): feel for it with a magnet."
    else:
        yield f"No metal: bay {found.name or 'unknown'} ({sure})."
    for words, near in (("ahead", found.before), ("behind", found.behind)):
        if near is not None:
            yield _near(near, words, units)
    for intrusion in found.intrusions:
        yield f"{intrusion} stands before the wall here: no hand and no screw reaches it from inside."
    if found.backing:
        yield f"Backing: {found.backing} lies behind the lining here."
    for reached in found.reached_along:
        yield f"Tape: {_reached(reached, units)}."
    if found.reached_up is not None:
        yield f"Tape: {_reached(found.reached_up, units)}."
    if found.buildup is not None:
        layers = "; ".join(_layer(one.name, one.material, one.thick, one.there, units) for one in found.buildup.layers)
        yield f"Layers from the skin inwards: {layers or 'none written'}."
        finished = show_band(found.buildup.finished, "m", units, cuts=True)
        now = show_band(found.buildup.standing, "m", units, cuts=True)
        yield f"Skin to the finished face: {finished}; as it stands now {now}."
    for part in found.parts:
        words = {"behind": "behind the lining", "on": "on the wall", "before": "in front of it"}[part.how]
        perhaps = ", perhaps (nobody ticked it)" if part.there == "perhaps" else ""
        yield f"{part.name} is {words}{perhaps}."


def _near(near: Near, words: str, units: HeaderUnits) -> str:
    away = show(abs(near.away.best), "m", units, cuts=True)
    doubt = show((near.away.high - near.away.low) / 2.0, "m", units, cuts=True)
    sure = "taped" if near.is_built else "as ordered"
    return f"Nearest {words}: {near.name}, its middle {away} away, give or take {doubt} ({sure})."


def _reached(reached: Reached, units: HeaderUnits) -> str:
    far = show(abs(reached.distance.best), "m", units, cuts=True)
    return f"{far} from {reached.surface}"


def _layer(name: str, material: str, thick: object, there: str, units: HeaderUnits) -> str:
    how = {"yes": "", "perhaps": ", perhaps in", "later": ", not in yet"}[there]
    size = f" {show_band(thick, 'm', units, cuts=True)}" if thick is not None else ""  # type: ignore[arg-type]
    return f"{name}{size}{f' of {material}' if material else ''}{how}"


def _runs(result: Result, found: Spot, units: HeaderUnits) -> Iterator[str]:
    """Yield what runs past a spot by the routes that are written, and of which wires and pipes nobody wrote one."""
    near: list[str] = []
    for run in result.runs:
        if run.wall != found.wall or not run.low - NEAR_A_WIRE <= found.along <= run.high + NEAR_A_WIRE:
            continue
        name = run.name if run.what == "wire" else f"{run.name} (a pipe)"
        if run.up is None:
            near.append(f"{name} (its route does not say {'where across' if found.wall in FLAT else 'how high'})")
        elif abs(run.up - found.up) <= NEAR_A_WIRE:
            near.append(f"{name} at {show(run.up, 'm', units, cuts=True)}")
    if near:
        yield f"Wires and pipes by their written route: {', '.join(dict.fromkeys(near))}."
    else:
        yield "No wire and no pipe runs here by the routes that are written."
    if result.unrouted:
        yield f"No route is written of {', '.join(result.unrouted)}: they may run here."
    yield f"Not looked at: {', '.join(found.not_looked_at)}."
