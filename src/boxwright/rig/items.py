"""One named thing of the file: its keys parted by owner, its place resolved, its weight and its stages understood."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import inf, isfinite
from typing import Any

from boxwright.disciplines.layout.parts import Facet as LayoutFacet
from boxwright.disciplines.structure.parts import Facet as StructureFacet
from boxwright.exchange import Vector
from boxwright.model.entry import Entry
from boxwright.model.part import PartWords
from boxwright.model.place import (
    ANYWHERE,
    Place,
    Surfaces,
    Written,
    folded_up,
    of_sides,
    resolve,
    shifted,
    side_word,
    turned_with,
)
from boxwright.model.stage import UNMARKED, Done, Marks, Stage
from boxwright.records import dataclass
from boxwright.rig.keys import OWNER_OF_KEY, WRITTEN
from boxwright.rig.rig import Item
from boxwright.rig.validate import Mistake, nearest, spellings, validate
from boxwright.units import Band, CannotRead, HeaderUnits, read_sides, show

NO_SIZE: Vector = (0.0, 0.0, 0.0)
NOWHERE = Place(ANYWHERE, ANYWHERE, ANYWHERE, NO_SIZE)
UNKNOWN_MASS = Band(0.0, 0.0, float("inf"), known=False)
NEVER = frozenset({"unplanned", "never", "later"})
KINDS = ("cargo", "backing", "spread")
"""Kinds that are judged otherwise than a built-in part."""

AS_BUILT_KEYS = ("x", "side", "z", "wall", "size", "weight")
"""What may have come out otherwise than planned."""

UNWRITTEN = PartWords()
UNKNOWN = frozenset({"unknown", "?"})
UNSIZED = 2.5
"""The longest a thing without a size is taken to be (m), a bed or a sheet: its middle lies up to half of this, or half
of the room, behind the edge that was written."""


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What an item is read against: the header's units, the planes of the box, the stages, the trailer's ends (m)."""

    header: HeaderUnits
    surfaces: Surfaces
    stages: tuple[Stage, ...]
    front_end: float
    rear_end: float


def compose_item(
    section: str,
    name: str,
    tree: Any,
    own_model: type[Entry] | None,
    around: Surroundings,
    parent: Item | None,
    weighed: Band | None,
) -> tuple[Item, list[Mistake]]:
    """Return one item as far as it can be read, and what was wrong with it. An item never vanishes."""
    path = f"{section}[{name}]"
    own, words, facets, mistakes = read_keys(path, tree, own_model, around.header)
    words, wrong = _with_kind(words, path)
    mistakes += wrong
    marks, wrong = marks_of(words, path, around.stages)
    mistakes += wrong
    place, wrong = place_of(words, own, path, around, parent, _around_blocks(facets))
    mistakes += wrong
    mass, wrong = mass_of(words, path, weighed, around.header)
    mistakes += wrong
    if getattr(own, "by", "") and words.done == UNMARKED:  # what the trailer's builder made came with the trailer
        marks = replace(marks, done=Done("yes"))
    is_open = not words.stage and marks.done.tick == "unmarked"
    if section == "parts" and around.stages and is_open and words.kind != "cargo":  # cargo follows the load state
        says = f"it is not said when {name} goes in; write stage: {around.stages[0].name}, or another of the stages"
        mistakes.append(Mistake(path, says))
    item = Item(section, name, path, words, marks, own, facets, place, mass)
    item, wrong = _posed(item, around, parent)
    return item, mistakes + wrong


def read_keys(
    path: str, tree: Any, own_model: type[Entry] | None, header: HeaderUnits
) -> tuple[Entry | None, PartWords, tuple[tuple[str, Entry], ...], list[Mistake]]:
    """Return an item's keys read by their owners; a bad facet costs that facet only."""
    mistakes: list[Mistake] = []
    if not isinstance(tree, Mapping):
        if tree is not None:
            says = f'"{str(tree)[:40]}" stands where the keys of a thing are expected; write it as {{x: 3, weight: 20}}'
            mistakes.append(Mistake(path, says))
        tree = {}
    own_keys = {key for choices in spellings(own_model).values() for key in choices} if own_model else set()
    parted: dict[str, dict[str, Any]] = {}
    for key, value in tree.items():
        owner = "own" if key in own_keys else OWNER_OF_KEY.get(key, "")
        if owner:
            parted.setdefault(owner, {})[key] = value
            continue
        from boxwright.rig.guessed import key_in_words  # only a file with such a mistake pays for it

        says = f'no key "{key}" is known here; {key_in_words(key, (*own_keys, *OWNER_OF_KEY))}'
        mistakes.append(Mistake(f"{path}.{key}", says, is_key=True))
    words, wrong = validate(PartWords, parted.pop("model", {}), path, header)
    mistakes += wrong
    own: Entry | None = None
    if own_model is not None:
        own, wrong = validate(own_model, parted.pop("own", {}), path, header)
        mistakes += wrong
    facets: list[tuple[str, Entry]] = []
    for folder in WRITTEN:
        if folder in parted:
            facet, wrong = validate(WRITTEN[folder].Facet, parted[folder], path, header)
            mistakes += wrong
            if facet is not None:
                facets.append((folder, facet))
    return own, words or PartWords(), tuple(facets), mistakes


def _with_kind(words: PartWords, path: str) -> tuple[PartWords, list[Mistake]]:
    """Return the words with a known kind in small letters; a kind that is nearly one is a mistake."""
    kind = words.kind.strip().lower()
    if kind in KINDS:
        return (words if kind == words.kind else words.model_copy(update={"kind": kind})), []
    guess = nearest(kind, KINDS) if kind else ""
    if not guess:
        return words, []
    return words, [Mistake(f"{path}.kind", f'no kind "{words.kind}" is known; did you mean "{guess}"?')]


def stage_index(word: str, stages: tuple[Stage, ...]) -> int | None:
    """Return the number of a stage written by name or number, or None."""
    for stage in stages:
        if word in (stage.name, str(stage.index)):
            return stage.index
    return None


def marks_of(words: PartWords, path: str, stages: tuple[Stage, ...]) -> tuple[Marks, list[Mistake]]:
    """Return when a thing is there."""
    mistakes: list[Mistake] = []

    def number(key: str, word: str) -> int | None:
        if not word or not stages:
            return None
        found = stage_index(word, stages)
        if found is None:
            guess = nearest(word, [stage.name for stage in stages])
            listed = f'did you mean "{guess}"?' if guess else "stages are " + ", ".join(stage.name for stage in stages)
            mistakes.append(Mistake(f"{path}.{key}", f'no stage "{word}" is known; {listed}'))
        return found

    # A stage of the file may have one of these names; then it is that stage.
    is_planned = words.stage not in NEVER or stage_index(words.stage, stages) is not None
    stage = number("stage", words.stage) if is_planned else None
    until = number("until", words.until)
    if stage is not None and until is not None and until < stage:
        says = f"it is to leave at {words.until}, before it comes at {words.stage}; write a later stage for until"
        mistakes.append(Mistake(f"{path}.until", says))
    follows = words.kind == "cargo" or until is not None or not stages  # a file without stages is not a plan
    return Marks(stage, until, words.done, is_planned, follows), mistakes


def mass_of(words: PartWords, path: str, weighed: Band | None, header: HeaderUnits) -> tuple[Band, list[Mistake]]:
    """Return what the whole line weighs (kg): as built, else as written, else as weighed, else unknown."""
    mistakes: list[Mistake] = []
    count = words.count or len(words.at) or 1
    if words.at and words.count and words.count != len(words.at):
        says = f"count says {words.count} and at names {len(words.at)} places; count wins"
        mistakes.append(Mistake(f"{path}.count", says))
    if words.weight is not None and words.each is not None:
        mistakes.append(Mistake(f"{path}.each", "each says again what weight already says; weight wins"))
    built, wrong = _as_built(words, path, header)
    mistakes += wrong
    weights = [one for one in (built.weight, words.weight) if one is not None]
    said = [times(one.value, count) if one.is_each else one.value for one in weights]
    said += [times(words.each, count)] if words.each is not None else []
    # An unknown is no answer: a weighing, or the plan's weight behind an unknown as built, is a better one.
    known = [one for one in (*said, *([weighed] if weighed is not None else [])) if one.known]
    return (known or said or [UNKNOWN_MASS])[0], mistakes


def _as_built(words: PartWords, path: str, header: HeaderUnits) -> tuple[PartWords, list[Mistake]]:
    """Return what is written of a thing as built; a key that cannot differ from the plan is a mistake."""
    if not words.as_built:
        return UNWRITTEN, []
    mistakes: list[Mistake] = []
    for key, _ in words.as_built:
        if key not in AS_BUILT_KEYS:
            guess = nearest(key, AS_BUILT_KEYS)
            says = f'no key "{key}" is known in as_built; '
            says += f'did you mean "{guess}"?' if guess else f"write {', '.join(AS_BUILT_KEYS)}"
            mistakes.append(Mistake(f"{path}.as_built.{key}", says, is_key=True))
    known = {key: text for key, text in words.as_built if key in AS_BUILT_KEYS}
    built, wrong = validate(PartWords, known, f"{path}.as_built", header)
    return built or UNWRITTEN, mistakes + wrong


def times(band: Band, count: int) -> Band:
    """Return a band of the whole line for a band of one piece."""
    return replace(band, best=band.best * count, low=band.low * count, high=band.high * count)


def place_of(
    words: PartWords,
    own: Entry | None,
    path: str,
    around: Surroundings,
    parent: Item | None,
    blocks: Vector | None = None,
) -> tuple[Place, list[Mistake]]:
    """Return where a thing is, with every axis that could not be read left open within the trailer's ends.

    ``blocks`` is how large it is by the boxes it is made up of, where no size is written.
    """
    mistakes: list[Mistake] = []
    written = dict(words.as_built)
    size_path = f"{path}.as_built" if "size" in written else path
    size, off, is_sized, wrong = _size(written.get("size", words.size), words, own, size_path, around)
    mistakes += wrong
    if blocks is not None and not written.get("size", words.size):
        size, is_sized = blocks, True
    asked = Written(
        x=written.get("x", words.x),
        side=written.get("side", words.side),
        z=written.get("z", words.z),
        wall=written.get("wall", words.wall),
        at=words.at,
    )
    place, wrong_keys = resolve(asked, size, around.surfaces, around.header, parent.place if parent else None)
    for key, problem in wrong_keys:
        mistakes.append(Mistake(f"{path}.as_built.{key}" if key in written else f"{path}.{key}", str(problem)))
    place = of_sides(place, off)
    if not is_sized and not words.at and place.x.known and not asked.x.startswith("mid"):
        edge = place.x
        half = min(max(around.surfaces.rear - edge.best, 0.0), UNSIZED) / 2.0
        middle = replace(edge, best=edge.best + half / 2.0, high=edge.high + half, spread="interval", assumed=True)
        place = replace(place, x=middle)
        if any(side.strip() in UNKNOWN for side in written.get("size", words.size).lower().split("x")):
            place = replace(place, x=replace(place.x, known=False))
        elif path.startswith("parts[") and words.kind != "spread" and not wrong:
            far = show(half, "length", around.header)
            says = f"no size is written, so its middle may lie up to {far} behind its front edge"
            mistakes.append(Mistake(path, f"{says}; write it as size: length x width x height"))
    return replace(place, x=_within_ends(place.x, around)), mistakes


def _around_blocks(facets: tuple[tuple[str, Entry], ...]) -> Vector | None:
    """Return how large a thing is by the boxes it fills, from its own front, left and under edge; None without any."""
    blocks = [one for _, facet in facets if isinstance(facet, LayoutFacet) for one in facet.blocks]
    ends = [
        [_most(edge) + side for edge, side in zip((one.x, one.side, one.z), one.size, strict=True)] for one in blocks
    ]
    if not ends or not all(isfinite(end) for far in ends for end in far):
        return None
    return max(far[0] for far in ends), max(far[1] for far in ends), max(far[2] for far in ends)


def _most(edge: Band | None) -> float:
    """Return how far from its own edge a box of a thing begins at most; 0 where that is not written."""
    return 0.0 if edge is None else edge.high if edge.known else inf


def _within_ends(x: Band, around: Surroundings) -> Band:
    """Return an open place along the trailer as somewhere between its coupler and its rear end."""
    if x.known or x.high < float("inf"):
        return x
    middle = (around.front_end + around.rear_end) / 2.0
    return Band(middle, around.front_end, around.rear_end, known=False, spread="interval", assumed=True)


def _size(
    text: str, words: PartWords, own: Entry | None, path: str, around: Surroundings
) -> tuple[Vector, Vector, bool, list[Mistake]]:
    """Return the sides of a thing (m), how far each may be other, whether they are known, and what was wrong."""
    hole = _opening_size(words, own, around.header)
    if hole is not None:
        return hole, NO_SIZE, True, []
    if not text or text.strip().lower() in UNKNOWN:
        return NO_SIZE, NO_SIZE, False, []
    try:
        return (*_sides(text, around.header), [])
    except CannotRead as problem:
        says = str(problem)
        if own is not None and "width" in type(own).model_fields:
            along, _, up = text.partition(" x ")
            says = f"a hole has no size but a width and a height; write it as width: {along}, height: {up or '..'}"
        return NO_SIZE, NO_SIZE, False, [Mistake(f"{path}.size", says)]


def _sides(text: str, header: HeaderUnits) -> tuple[Vector, Vector, bool]:
    """Return the sides of a thing, how far each may be other, and whether they are known, all three of them."""
    length, width, height = read_sides(text, header)
    if not (length.known and width.known and height.known):
        return NO_SIZE, NO_SIZE, False
    off = [max(side.high - side.best, side.best - side.low) for side in (length, width, height)]
    return (length.best, width.best, height.best), (off[0], off[1], off[2]), True


def _opening_size(words: PartWords, own: Entry | None, header: HeaderUnits) -> tuple[float, float, float] | None:
    """Return the box of an opening: its width runs along its wall, a hole in the roof or the floor lies flat."""
    width, height, across = (getattr(own, key, None) for key in ("width", "height", "across"))
    if not any(isinstance(extent, Band) for extent in (width, height, across)):
        return None
    along, up, over = (extent.best if isinstance(extent, Band) else 0.0 for extent in (width, height, across))
    wall = side_word(words.wall.strip(), header.words) if words.wall else ""
    if wall in {"left", "right"}:
        return (along, 0.0, up)
    if wall in {"front", "rear"}:
        return (0.0, along, up)
    return (along, over, up)


def _posed(item: Item, around: Surroundings, parent: Item | None) -> tuple[Item, list[Mistake]]:
    """Return the item with its places on the road and at night, where they differ from the one written."""
    words, mistakes = item.words, []
    if words.folds == "up":
        built = item.facet("structure")
        edge = built.hinge.edge if isinstance(built, StructureFacet) and built.hinge is not None else ""
        edge = side_word(edge.strip(), around.header.words) if edge.strip() else ""
        item = replace(item, folded=folded_up(item.place, words.folded_depth, around.surfaces, edge))
    elif words.folds:
        says = f'folds "{words.folds}" is not understood; write it as folds: up'
        mistakes.append(Mistake(f"{item.of}.folds", says))
    elif parent is not None and parent.folded is not None:
        item = replace(item, folded=turned_with(item.place, parent.place, parent.folded))
    night = words.when_sleeping
    if night is not None and not night.out:
        size, off = item.place.size, item.place.off
        if night.size and night.size.strip().lower() not in UNKNOWN:
            try:
                sides, ends, is_sized = _sides(night.size, around.header)
                size, off = (sides, ends) if is_sized else (size, off)
            except CannotRead as problem:
                mistakes.append(Mistake(f"{item.of}.when_sleeping.size", str(problem)))
        asked = Written(night.x, night.side, night.z, night.wall)
        place, wrong = resolve(asked, size, around.surfaces, around.header, None, "when_sleeping.")
        mistakes += [Mistake(f"{item.of}.{key}", str(problem)) for key, problem in wrong]
        place = of_sides(place, off)
        item = replace(item, asleep=replace(place, x=_within_ends(place.x, around)))
    elif parent is not None and parent.asleep is not None:
        here, there = parent.place, parent.asleep
        moved = replace(
            item.place,
            x=shifted(item.place.x, there.x.best - here.x.best),
            y=shifted(item.place.y, there.y.best - here.y.best),
            z=shifted(item.place.z, there.z.best - here.z.best),
        )
        item = replace(item, asleep=moved)
    leaves = (night is not None and night.out) or (parent is not None and parent.leaves_at_night)
    return replace(item, leaves_at_night=leaves), mistakes
