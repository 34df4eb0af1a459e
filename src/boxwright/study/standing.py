"""What stands: the rig cut to one stage, one load state and one use (DESIGN 5, "What stands").

Everything a discipline sees of the rig comes from here, so a part that is not in yet weighs nothing, warms nothing
and saves nobody; and a part nobody has ticked is there perhaps, as a weight between nothing and all of it.
"""

from __future__ import annotations

from dataclasses import replace
from math import isfinite
from typing import Literal

from boxwright.disciplines.frame.parts import Layer as LayerWords
from boxwright.disciplines.frame.parts import Opening, StandingLayer, StandingOpening
from boxwright.disciplines.water.parts import Facet as WaterFacet
from boxwright.disciplines.water.parts import StandingTank
from boxwright.finding import Use
from boxwright.model.load import UNNAMED, LoadState
from boxwright.model.part import Frame
from boxwright.model.place import ANYWHERE, Place, Surfaces, shifted
from boxwright.model.stage import Marks, Stands, stands
from boxwright.model.trailer import Person
from boxwright.records import dataclass
from boxwright.rig.rig import Item, Rig
from boxwright.units import Band, exactly

Pose = Literal["asleep", "folded", "written"]
Remembered = dict[tuple[str, str, Pose, bool], tuple[Item, Frame]]

NOTHING = exactly(0.0)
WHOLE = exactly(1.0)
PERHAPS = Band(0.5, 0.0, 1.0, spread="perhaps")
UNKNOWN_MASS = Band(0.0, 0.0, float("inf"), known=False)
PROTECTING = ("safety", "heat")
"""Folders whose facets mark a part that burns something, warns, or lets somebody out."""


@dataclass(frozen=True, slots=True)
class Standing:
    """What is there in one slot. Paths are in file order.

    ``wires`` are the paths of those that stand, each with whether for certain. ``holes`` are the paths of openings
    that are cut and not known to be finished. ``perhaps`` are the paths of what is there perhaps; ``protecting`` those
    of them that burn, warn or let out. ``unnamed_tanks`` are standing tanks of which the load state does not say how
    full they are. ``missing`` are paths of what the plan has at this stage and the ticks deny.
    ``charges`` are how full the load state has each battery it names as it gets dark. ``inside`` are those of the rig's
    people whom the load state names, all of them where it names nobody: whom beds, seats and the room have to suit.
    """

    frames: tuple[Frame, ...]
    people: tuple[Frame, ...]
    layers: tuple[StandingLayer, ...]
    openings: tuple[StandingOpening, ...]
    tanks: tuple[StandingTank, ...]
    wires: tuple[tuple[str, bool], ...]
    holes: tuple[str, ...]
    perhaps: tuple[str, ...]
    protecting: tuple[str, ...]
    unnamed_tanks: tuple[str, ...]
    missing: tuple[str, ...]
    charges: tuple[tuple[str, Band], ...] = ()
    inside: tuple[tuple[str, Person], ...] = ()


def cut(
    rig: Rig, stage: int, ticked: bool, load: LoadState, use: Use, remembered: Remembered | None = None
) -> Standing:
    """Return what stands at a stage, as planned or as ticked, in one load state and for one use.

    ``remembered`` keeps the frames between studies, so that an unchanged part stays the same object.
    """
    remembered = {} if remembered is None else remembered
    perhaps, protecting, missing = list[str](), list[str](), list[str]()

    def there(of: str, marks: Marks) -> Stands:
        answer = stands(marks, stage, ticked)
        if answer == "perhaps":
            perhaps.append(of)
        elif answer == "no" and ticked and stands(marks, stage, False) == "yes":
            missing.append(of)
        return answer

    def stood(item: Item) -> Stands:
        answer = there(item.of, item.marks)
        if answer == "perhaps" and any(folder in PROTECTING for folder, _ in item.facets):
            protecting.append(item.of)
        return answer

    frames: list[Frame] = []
    tanks: list[StandingTank] = []
    for item in rig.parts:
        if not _is_aboard(item, load, use):
            continue
        answer = stood(item)
        if answer == "no":
            continue
        frames.append(_frame(item, answer, _pose(item, use), load.carries(item.name), remembered))
        tank = _tank(item, frames[-1], load) if item.facets else None
        if tank is not None:
            tanks.append(tank)
    openings = tuple(
        StandingOpening(item.of, item.own, item.place, _share(answer))
        for item in rig.openings
        if (answer := stood(item)) != "no" and isinstance(item.own, Opening)
    )
    layers = tuple(
        StandingLayer(layer.of, layer.wall, layer.name, layer.own, _share(answer))
        for layer in rig.layers
        if (answer := there(layer.of, layer.marks)) != "no" and isinstance(layer.own, LayerWords)
    )
    finished = {one.of for one in openings if one.share == WHOLE}
    is_cut_by_now = stage >= rig.header.stage_today
    wires = tuple((item.of, answer == "yes") for item in rig.wires if (answer := stood(item)) != "no")
    for item in rig.straps:
        stood(item)
    return Standing(
        tuple(frames),
        people_inside(rig, load, use, tuple(frames)),
        layers,
        openings,
        tuple(tanks),
        wires,
        tuple(item.of for item in rig.openings if is_cut_by_now and _is_cut(item) and item.of not in finished),
        tuple(perhaps), tuple(protecting), tuple(tank.of for tank in tanks if tank.fill == UNNAMED), tuple(missing),
        load.charges, _bedded(rig.people, load.people),
    )  # fmt: skip


def _bedded(people: tuple[tuple[str, Person], ...], named: tuple[str, ...]) -> tuple[tuple[str, Person], ...]:
    """Return those inside who are to lie on a bed, sit up and stand: all the load state names, or all there are."""
    return tuple(one for one in people if (not named or one[0] in named) and one[1].needs_a_bed)


def part_there(weight: Band, answer: Stands) -> Band:
    """Return the weight of a part as it counts: all of it, or anything from nothing to all of it.

    An unknown weight stays unknown; it is never taken as nothing.
    """
    if answer == "yes" or not weight.known:
        return weight
    return Band(weight.best / 2.0, 0.0, weight.high, spread="perhaps", assumed=weight.assumed)


def _is_cut(item: Item) -> bool:
    return isinstance(item.own, Opening) and item.own.cut is True


def _is_aboard(item: Item, load: LoadState, use: Use) -> bool:
    if use == "sleep" and item.leaves_at_night:
        return False
    return item.words.kind != "cargo" or load.carries(item.name)


def _pose(item: Item, use: Use) -> Pose:
    """Return how a part lies: as at night for sleeping, folded up for everything else, where it has such a place."""
    if use == "sleep":
        return "asleep" if item.asleep is not None else "written"
    return "folded" if item.folded is not None else "written"


def _place(item: Item, pose: Pose) -> Place:
    if pose == "asleep" and item.asleep is not None:
        return item.asleep
    if pose == "folded" and item.folded is not None:
        return item.folded
    return item.place


def _frame(item: Item, answer: Stands, pose: Pose, holds: bool, remembered: Remembered) -> Frame:
    """Return a part as every discipline may see it, the same object as long as its item is the same."""
    key = (item.of, answer, pose, holds)
    known = remembered.get(key)
    if known is not None and known[0] is item:
        return known[1]
    contents = item.words.contents if holds else None
    dry = NOTHING if item.is_in_empty_weight else part_there(item.mass, answer)
    frame = Frame(
        name=item.name,
        of=item.of,
        place=_place(item, pose),
        dry=dry,
        contents=part_there(contents, answer) if contents is not None else None,
        kind=item.words.kind,
        group=f"guess {item.words.kind}".strip() if item.words.how == "guess" else "",
        stands="perhaps" if answer == "perhaps" else "yes",
    )
    if known is not None and known[1] == frame:
        frame = known[1]
    remembered[key] = (item, frame)
    return frame


def _tank(item: Item, frame: Frame, load: LoadState) -> StandingTank | None:
    for folder, facet in item.facets:
        if folder == "water" and isinstance(facet, WaterFacet) and facet.tank is not None:
            share = _share(frame.stands)
            return StandingTank(item.of, item.name, frame.place, facet.tank, load.fill(item.name), share)
    return None


def _share(answer: Stands) -> Band:
    return PERHAPS if answer == "perhaps" else WHOLE


def people_inside(rig: Rig, load: LoadState, use: Use, frames: tuple[Frame, ...]) -> tuple[Frame, ...]:
    """Return the people of a load state as masses: in bed when sleeping, else anywhere inside; nobody when left."""
    if use == "leave" or not load.people:
        return ()
    beds = {frame.name: frame for frame in frames}
    return tuple(
        _person(name, person, beds.get(person.sleeps) if use == "sleep" else None, rig.surfaces)
        for name, person in rig.people
        if name in load.people
    )


def _person(name: str, person: Person, bed: Frame | None, surfaces: Surfaces) -> Frame:
    weight = person.weight if person.weight is not None else UNKNOWN_MASS
    place = _in_bed(bed.place) if bed is not None else _anywhere_inside(surfaces)
    return Frame(name, f"people[{name}]", place, weight, None, "people", "", "yes")


def _in_bed(bed: Place) -> Place:
    """Return the place of somebody in bed: along its middle, across it up to a quarter of its width off, on top."""
    quarter = bed.size[1] / 4.0
    y = replace(bed.y, low=bed.y.low - quarter, high=bed.y.high + quarter, spread="interval", assumed=True)
    return Place(bed.x, y, shifted(bed.z, bed.size[2] / 2.0), (0.0, 0.0, 0.0))


def _anywhere_inside(surfaces: Surfaces) -> Place:
    def between(low: float, high: float) -> Band:
        if not (isfinite(low) and isfinite(high)):
            return ANYWHERE
        return Band((low + high) / 2.0, low, high, spread="interval", assumed=True)

    return Place(
        between(surfaces.front, surfaces.rear),
        between(surfaces.left, surfaces.right),
        between(surfaces.floor, surfaces.ceiling),
        (0.0, 0.0, 0.0),
    )


def paths(standing: Standing) -> tuple[str, ...]:
    """Return the paths of everything that stands, perhaps or not."""
    return (
        *(frame.of for frame in standing.frames),
        *(opening.of for opening in standing.openings),
        *(layer.of for layer in standing.layers),
    )


def difference(as_ticked: Standing, as_planned: Standing) -> tuple[str, ...]:
    """Return the paths that make today as ticked differ from the plan of the same stage."""
    planned = set(paths(as_planned))
    ahead = (path for path in paths(as_ticked) if path not in planned)
    return tuple(dict.fromkeys((*as_ticked.missing, *as_ticked.perhaps, *ahead)))


def weighed_empty(rig: Rig) -> LoadState:
    """Return the load state of a ticket that names none: nothing aboard, every tank empty."""
    tanks = tuple((item.name, NOTHING) for item in rig.parts if item.facet("water") is not None)
    return LoadState("weighed empty", (), (), tanks, False, (), ("tow",))
