"""From a document's tree to a `Rig`: every entry to its owner, every place resolved, every mistake with its line."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import partial
from typing import Any, Literal, TypeVar

from boxwright.disciplines.frame.parts import Framing, is_wall
from boxwright.disciplines.frame.parts import Layer as LayerWords
from boxwright.disciplines.frame.tapes import Read
from boxwright.disciplines.water.parts import Facet as WaterFacet
from boxwright.disciplines.water.sourced import DENSITY
from boxwright.exchange import Measured
from boxwright.finding import Problem
from boxwright.model.entry import Day, Entry
from boxwright.model.load import LoadState
from boxwright.model.place import Surfaces
from boxwright.model.stage import Stage
from boxwright.model.trailer import Person, TowVehicle, Trailer
from boxwright.rig.again import Again
from boxwright.rig.airing import wood_read
from boxwright.rig.carrying_in import Carried
from boxwright.rig.far_out import check_far_out, check_on_the_floor, ends_of_trailer
from boxwright.rig.fitting import Known, fitted_of
from boxwright.rig.guessed import section_unknown
from boxwright.rig.head import check_left_behind, home_words, map_at, read_header, read_loads, read_stages, read_units
from boxwright.rig.impossible import impossible, turning_and_sliding, unread_lengths
from boxwright.rig.items import Surroundings, compose_item, marks_of, read_keys
from boxwright.rig.kept import Known as KnownKept
from boxwright.rig.kept import kept_of
from boxwright.rig.keys import ITEM_SECTIONS, KNOWN_KEYS, NAMED, OWNER_OF_SECTION, facet_models
from boxwright.rig.proved import losses_proved
from boxwright.rig.read import Document, read_document
from boxwright.rig.readings import read_measured
from boxwright.rig.rig import Accepted, Item, Layer, Rig
from boxwright.rig.sections import PlaceWords, inside_of, sections_of, shell_of
from boxwright.rig.taped import lengths_read
from boxwright.rig.validate import Mistake, nearest, spellings, validate
from boxwright.units import Band, CannotRead, HeaderUnits, exactly, read_any

E = TypeVar("E", bound=Entry)


@dataclass(frozen=True, slots=True)
class Reading:
    """What a text gave: the rig, what was wrong with the text, and the document to find lines in."""

    rig: Rig
    problems: tuple[Problem, ...]
    document: Document


class AcceptedWords(Entry):
    """A finding the owner accepts: its code, where it stands, why, since when, and the number it had then."""

    code: str
    where: str = ""
    note: str = ""
    on: Day = None
    number: str = ""


@dataclass(slots=True)
class _Section:
    """A section while its items are read. No function that knows itself does it: such a one holds its whole text until
    memory is tidied, and while a hand moves none is."""

    name: str
    tree: Mapping[str, Any]
    around: Surroundings
    weighed: Mapping[str, Band]
    included: frozenset[str]
    mistakes: list[Mistake]
    done: dict[str, Item] = field(default_factory=dict)
    open_names: list[str] = field(default_factory=list)


@dataclass(slots=True)
class Composer:
    """Composes documents, and remembers each item so that an edit elsewhere reads nothing again."""

    _items: dict[tuple[str, str], tuple[Any, tuple[Item, list[Mistake]]]] = field(default_factory=dict)
    _fitted: Known = field(default_factory=dict)
    _kept: KnownKept = field(default_factory=dict)
    _again: Again = field(default_factory=Again)
    _carried: Carried = field(default_factory=Carried)
    _around: Surroundings | None = None

    def compose(self, document: Document) -> Reading:
        """Return the rig of a document. Never fails: what cannot be read is said and left unknown."""
        tree, mistakes, again = document.tree, list[Mistake](), self._again
        mistakes += [Mistake(key, section_unknown(key), is_key=True) for key in tree if key not in OWNER_OF_SECTION]
        units = read_units(tree, home_words(tree), mistakes)
        steps, of_stages = again("stages", (tree.get("stages"), units), partial(_stages, tree, units), mistakes)
        header = read_header(tree, steps, units, mistakes)
        trailer = again("trailer", (tree.get("trailer"), units), partial(_trailer, tree, units), mistakes)
        names = {name for section in ITEM_SECTIONS for name in map_at(tree, section, [])}
        mistakes += _not_included(trailer, names)
        layers = again("walls", (tree.get("walls"), units, steps), partial(_layers, tree, units, steps), mistakes)
        framing = again("frame", (tree.get("frame"), units), partial(_framing, tree, units), mistakes)
        surfaces = inside_of(trailer, framing, layers, units)
        people = again("people", (tree.get("people"), units), partial(_named, tree, "people", Person, units), mistakes)
        sleepers = tuple(name for name, _ in people)
        loads = again("loads", (tree.get("loads"), units, names, sleepers),
                      partial(read_loads, tree, units, names, sleepers), mistakes)  # fmt: skip
        given = (units, steps, [load.name for load in loads], names)
        measured = again("measured", (tree.get("measured"), *given), partial(_measured, tree, *given), mistakes)
        around = self._same(Surroundings(units, surfaces, steps, *ends_of_trailer(trailer)))
        items = {section: self._section(document, section, around, measured, trailer, mistakes)
                 for section in ITEM_SECTIONS}  # fmt: skip
        check_left_behind(loads, (item for section in items.values() for item in section), mistakes)
        _check_parts(items["parts"], people, trailer, loads, surfaces, framing, mistakes)
        places = again("places", (tree.get("places"), units), partial(_places, tree, units), mistakes)
        named = {key: again(key, (tree.get(key), units), partial(_named, tree, key, model, units), mistakes)
                 for key, model in NAMED.items() if key not in ITEM_SECTIONS and key != "walls"}  # fmt: skip
        tow = again("tow", (tree.get("tow"), units), partial(_named, tree, "tow", TowVehicle, units), mistakes)
        accepted = _accepted(tree, units, mistakes)
        taped, cut = tree.get("measured"), tuple(map_at(tree, "openings", []))
        readings = again("taped", (taped, cut, units), partial(_lengths, tree, units), mistakes)
        shell, unread = shell_of(framing, items, layers, readings, units, len(steps), trailer, self._carried)
        mistakes += [Mistake(path, says) for path, says in unread]
        mistakes += again("impossible", (shell, trailer), lambda _: impossible(shell, trailer), [])
        mistakes += turning_and_sliding(items["openings"])
        fitted = fitted_of(items["parts"], items["openings"], surfaces, units, self._fitted)
        kept = kept_of(items, layers, people, surfaces, units, self._kept)
        wood, proved = wood_read(tree, units), losses_proved(tree, units)
        # Everything is read by now: what is read below this line would keep its mistakes to itself.
        problems = _problems(document, mistakes)
        troubled = {mistake.path for mistake in mistakes if mistake.kind == "problem"} | document.troubled
        rig = Rig(
            header=header,
            trailer=trailer,
            tow=tow,
            people=people,
            stages_in_order=steps,
            loads=loads,
            surfaces=surfaces,
            layers=layers,
            measured=measured,
            accepted=accepted,
            troubled=tuple(sorted(troubled)),
            parts=items["parts"],
            openings=items["openings"],
            wires=items["wires"],
            straps=items["straps"],
            pipes=items["pipes"],
            **sections_of(named, items, of_stages, places, shell, fitted, kept, wood, proved, units.words, troubled),
        )
        return Reading(rig, problems, document)

    def _same(self, around: Surroundings) -> Surroundings:
        """Return equal surroundings as the one object, so that what an item was read against is one look to compare."""
        if around != self._around or self._around is None:
            self._around = around
        return self._around

    def _section(
        self,
        document: Document,
        section: str,
        around: Surroundings,
        measured: tuple[Measured, ...],
        trailer: Trailer,
        mistakes: list[Mistake],
    ) -> tuple[Item, ...]:
        """Return every item of a section, parents first in the reading but in file order in the answer."""
        tree = map_at(document.tree, section, mistakes)
        weighed = _weighed(measured) if section == "parts" else {}
        one = _Section(section, tree, around, weighed, frozenset(trailer.empty.includes), mistakes)
        return tuple([self._item(name, one) for name in tree])

    def _item(self, name: str, one: _Section) -> Item:
        """Return an item, what it is in or stands on read before it."""
        if name in one.done:
            return one.done[name]
        one.open_names.append(name)
        parent, kg, is_in_empty = self._parent(name, one), one.weighed.get(name), name in one.included
        held = (one.tree[name], one.around, parent, kg, is_in_empty)
        known = self._items.get((one.name, name))
        if known is not None and known[0] == held:  # a tuple takes what is the same object for equal at once
            item, wrong = known[1]
        else:
            own_model = None if one.name == "parts" else NAMED[one.name]
            item, wrong = compose_item(one.name, name, one.tree[name], own_model, one.around, parent, kg)
            if is_in_empty:
                item = _in_empty_weight(item)
            self._items[one.name, name] = (held, (item, wrong))
        one.mistakes.extend(wrong)
        one.open_names.remove(name)
        one.done[name] = item
        return item

    def _parent(self, name: str, one: _Section) -> Item | None:
        """Return the part this one is in or stands on; a name that is nothing, or a ring of parts, is a mistake."""
        given = one.tree[name]
        if not isinstance(given, Mapping):
            return None
        for key in ("inside", "rides_on"):
            word = given.get(key)
            if not isinstance(word, str) or not word:
                continue
            path = f"{one.name}[{name}].{key}"
            if word in one.open_names:
                one.mistakes.append(Mistake(path, f'"{word}" is itself in or on "{name}"; only one of them can be'))
            elif word in one.tree:
                return self._item(word, one)
            else:
                guess = nearest(word, one.tree)
                says = f'there is no part "{word}"' + (f'; did you mean "{guess}"?' if guess else "")
                one.mistakes.append(Mistake(path, says))
        return None


def read_rig(data: bytes | str) -> Reading:
    """Return what a rig file says; total: any bytes give a rig and the problems with them."""
    return Composer().compose(read_document(data, known_keys=KNOWN_KEYS))


def _in_empty_weight(item: Item) -> Item:
    """Return a part whose weight the trailer's own empty weight already holds."""
    return replace(item, mass=exactly(0.0), is_in_empty_weight=True)


def _stages(
    tree: Mapping[str, Any], units: HeaderUnits, mistakes: list[Mistake]
) -> tuple[tuple[Stage, ...], tuple[tuple[str, str, Entry], ...]]:
    """Return the stages in their order, and what others have on them: stage, folder, facet."""
    read = read_stages(tree, units, mistakes)
    return read.stages, read.facets


def _trailer(tree: Mapping[str, Any], units: HeaderUnits, mistakes: list[Mistake]) -> Trailer:
    """Return the bare trailer; what of it is needed and not written, or contradicts itself, is a mistake."""
    trailer, wrong = validate(Trailer, tree.get("trailer"), "trailer", units)
    trailer = trailer or Trailer()
    mistakes += wrong + _missing_measures(trailer) + _contradicting_axles(trailer)
    return trailer


def _measured(
    tree: Mapping[str, Any],
    units: HeaderUnits,
    steps: tuple[Stage, ...],
    loads: Iterable[str],
    names: Iterable[str],
    mistakes: list[Mistake],
) -> tuple[Measured, ...]:
    """Return every weight that was read; what should be one and is none is a mistake."""
    return read_measured(map_at(tree, "measured", mistakes), units, steps, loads, names, mistakes)


def _lengths(tree: Mapping[str, Any], units: HeaderUnits, mistakes: list[Mistake]) -> tuple[Read, ...]:
    """Return every length that was read; what should be one and is none is a mistake."""
    mistakes += unread_lengths(tree, units)
    return lengths_read(tree, units)


def _named(
    tree: Mapping[str, Any], section: str, model: type[E], units: HeaderUnits, mistakes: list[Mistake]
) -> tuple[tuple[str, E], ...]:
    """Return the entries of a map of named things that take no facets."""
    found: list[tuple[str, E]] = []
    for name, given in map_at(tree, section, mistakes).items():
        entry, wrong = validate(model, given, f"{section}[{name}]", units)
        mistakes += wrong
        if entry is not None:
            found.append((name, entry))
    return tuple(found)


def _layers(
    tree: Mapping[str, Any], units: HeaderUnits, stages: tuple[Stage, ...], mistakes: list[Mistake]
) -> tuple[Layer, ...]:
    """Return every layer of every wall, each with when it goes in."""
    found: list[Layer] = []
    for wall, given in map_at(tree, "walls", mistakes).items():
        path = f"walls[{wall}]"
        if not isinstance(given, Mapping):
            mistakes.append(Mistake(path, "a wall takes layers; write it as {layers: {foam: {of: XPS, thick: 1 in}}}"))
            continue
        rest = {key: value for key, value in given.items() if key != "layers"}
        _, wrong = validate(NAMED["walls"], rest, path, units)
        mistakes += wrong
        layers = given.get("layers")
        if layers is not None and not isinstance(layers, Mapping):
            says = "layers takes a map by name; write it as layers: {foam: {of: XPS, thick: 1 in}}"
            mistakes.append(Mistake(f"{path}.layers", says))
        if not is_wall(wall):
            says = f'no wall "{wall}" is known; write left, right, front, rear, ceiling, floor, all or bay left 4-5'
            mistakes.append(Mistake(path, says, is_key=True))
        for name, layer in layers.items() if isinstance(layers, Mapping) else ():
            own, words, _, wrong = read_keys(f"{path}.layers[{name}]", layer, LayerWords, units)
            mistakes += wrong
            marks, wrong = marks_of(words, f"{path}.layers[{name}]", stages)
            mistakes += wrong
            if own is not None:
                found.append(Layer(f"{path}.layers[{name}]", wall, name, marks, own, words.now.strip()))
    return tuple(found)


def _missing_measures(trailer: Trailer) -> list[Mistake]:
    """Return what of the bare trailer must be written before any weight has a place."""
    body = trailer.body
    needed = {
        "body.length": (body.length, "body: {length: 168, width: 80, height: 78}"),
        "body.width": (body.width, "body: {length: 168, width: 80, height: 78}"),
        "body.height": (body.height, "body: {length: 168, width: 80, height: 78}"),
        "coupler_x": (trailer.coupler_x, "coupler_x: -52, the ball's centre ahead of the front wall"),
        "axles.x": (trailer.axles.x or None, "axles: {x: [83, 117]}, behind the front wall"),
    }
    return [
        Mistake(f"trailer.{key}", f"the trailer's {key} is not written; write it as {how}")
        for key, (value, how) in needed.items()
        if value is None
    ]


AXLES_IN_WORDS = {
    "equaliser": (2, 9),
    "equalizer": (2, 9),
    "tandem": (2, 2),
    "twin axle": (2, 2),
    "triple": (3, 3),
    "single axle": (1, 1),
}
"""Words of ``axles.kind`` that say how many axles there are: at least, at most."""


def _contradicting_axles(trailer: Trailer) -> list[Mistake]:
    """Return what names another number of axles than ``axles.x`` has places."""
    axles, tyres = trailer.axles, trailer.tyres.count
    count, kind = len(axles.x), axles.kind.lower()
    if not count:
        return []
    places = f"axles.x names {count} axle{'s' if count > 1 else ''}"
    how = "write one place in axles.x for each axle, such as x: [83, 117]"
    mistakes: list[Mistake] = []
    if axles.gawr and len(axles.gawr) != count:
        says = f"gawr rates {len(axles.gawr)}, but {places}; {how}, and in gawr one rating for each"
        mistakes.append(Mistake("trailer.axles.gawr", says))
    for word, (least, most) in AXLES_IN_WORDS.items():
        if word in kind and not least <= count <= most:
            mistakes.append(Mistake("trailer.axles.kind", f'kind says "{word}", but {places}; {how}'))
    on_each = 4 if "dual wheels" in kind else 2
    if tyres is not None and tyres != on_each * count:
        says = f"tyres.count says {tyres} on the road, but {places}, {on_each} tyres each; {how}"
        says += "; where four stand on one axle, write dual wheels in axles.kind" if tyres == 4 * count else ""
        mistakes.append(Mistake("trailer.tyres.count", says))
    return mistakes


def _not_included(trailer: Trailer, names: Iterable[str]) -> list[Mistake]:
    """Return what is said to be inside the empty weight and is nothing in this file: it would weigh twice, unsaid."""
    names = set(names)
    mistakes: list[Mistake] = []
    for index, name in enumerate(trailer.empty.includes):
        if name not in names:
            guess = nearest(name, names)
            says = f'there is no part "{name}" to be inside the empty weight; '
            says += f'did you mean "{guess}"?' if guess else "write the name of a part, such as includes: [rear-lamps]"
            mistakes.append(Mistake(f"trailer.empty.includes[{index}]", says))
    return mistakes


def _places(tree: Mapping[str, Any], units: HeaderUnits, mistakes: list[Mistake]) -> tuple[tuple[str, Entry], ...]:
    """Return what the disciplines read of every place, so that a mistake in one is said at once."""
    found: list[tuple[str, Entry]] = []
    owned: set[str] = set()
    for name, given in map_at(tree, "places", mistakes).items():
        keys = dict(given) if isinstance(given, Mapping) else {}
        for model in facet_models("places").values():
            own = {key for choices in spellings(model).values() for key in choices}
            owned |= own
            facet_keys = {key: keys.pop(key) for key in list(keys) if key in own}
            facet, wrong = validate(model, facet_keys, f"places[{name}]", units)
            mistakes += wrong
            if facet is not None:
                found.append((name, facet))
        words, wrong = validate(PlaceWords, keys, f"places[{name}]", units, owned)
        mistakes += wrong
        if words is not None:
            found.append((name, words))
    return tuple(found)


def _framing(tree: Mapping[str, Any], units: HeaderUnits, mistakes: list[Mistake]) -> Framing | None:
    framing, wrong = validate(Framing, tree.get("frame"), "frame", units)
    mistakes += wrong
    return framing


def _weighed(measured: tuple[Measured, ...]) -> dict[str, Band]:
    """Return, for each part that was weighed, its newest reading."""
    newest: dict[str, Measured] = {}
    for one in measured:
        if one.what == "part" and (one.part not in newest or (one.on or date.min) >= (newest[one.part].on or date.min)):
            newest[one.part] = one
    return {part: one.value for part, one in newest.items()}


def _check_parts(
    parts: tuple[Item, ...],
    people: tuple[tuple[str, Person], ...],
    trailer: Trailer,
    loads: tuple[LoadState, ...],
    surfaces: Surfaces,
    framing: Framing | None,
    mistakes: list[Mistake],
) -> None:
    """Say what can only be judged once every part is read."""
    _check_sleepers(people, parts, mistakes)
    check_far_out(parts, trailer, loads, mistakes)
    check_on_the_floor(parts, surfaces, _longest_nose(framing), mistakes)
    _check_fluids(parts, mistakes)


def _longest_nose(framing: Framing | None) -> float:
    """Return how far (m) the floor goes on ahead of the front wall at the most; nobody knows how far: without end."""
    nose = framing.nose if framing is not None else None
    if nose is None:
        return 0.0
    return nose.length.high if nose.length is not None and nose.length.known else float("inf")


def _check_sleepers(people: tuple[tuple[str, Person], ...], parts: tuple[Item, ...], mistakes: list[Mistake]) -> None:
    names = {part.name for part in parts}
    for name, person in people:
        if person.sleeps and person.sleeps not in names:
            guess = nearest(person.sleeps, names)
            says = f'there is no part "{person.sleeps}" to sleep on' + (f'; did you mean "{guess}"?' if guess else "")
            mistakes.append(Mistake(f"people[{name}].sleeps", says))


def _check_fluids(parts: tuple[Item, ...], mistakes: list[Mistake]) -> None:
    """Say which tanks hold nothing that is known: their weight is then only known between the lightest and heaviest."""
    for part in parts:
        facet = part.facet("water")
        tank = facet.tank if isinstance(facet, WaterFacet) else None
        if tank is None or " ".join(tank.of.lower().split()) in DENSITY:
            continue
        what = f'"{tank.of}" is no fluid that is known' if tank.of else f"it is not said what {part.name} holds"
        guess = nearest(tank.of, DENSITY) if tank.of else ""
        if guess:
            mistakes.append(Mistake(f"{part.of}.tank", f'{what}; did you mean "{guess}"? Write it as of: {guess}'))
            continue
        known = ", ".join(sorted(DENSITY))
        mistakes.append(Mistake(f"{part.of}.tank", f"{what}; write it as of: water, or another of {known}"))


def _accepted(tree: Mapping[str, Any], units: HeaderUnits, mistakes: list[Mistake]) -> tuple[Accepted, ...]:
    found: list[Accepted] = []
    for name, words in _named(tree, "accepted", AcceptedWords, units, mistakes):
        number: Band | None = None
        if words.number:
            try:
                number = exactly(read_any(words.number))
            except CannotRead as problem:
                mistakes.append(Mistake(f"accepted[{name}].number", str(problem)))
        found.append(Accepted(f"accepted[{name}]", words.code, words.where, words.note, words.on, number))
    return tuple(found)


def _problems(document: Document, mistakes: list[Mistake]) -> tuple[Problem, ...]:
    """Return the reading's own problems and the composer's, in the order of the file."""
    found = list(document.problems)
    for mistake in mistakes:
        spot = document.key_spot(mistake.path) if mistake.is_key else document.spot(mistake.path)
        kind: Literal["problem", "note"] = "note" if mistake.kind == "note" else "problem"
        found.append(Problem(spot.line, spot.column, mistake.path, mistake.says, kind))
    return tuple(sorted(set(found), key=lambda one: (one.line, one.column, one.path, one.says)))
