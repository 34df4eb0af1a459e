"""What safety sees of the plan: ways out, what warns and puts out, what burns, who sleeps where, what is shut off."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.frame.holes import wall_name
from boxwright.disciplines.frame.parts import Opening, OpeningUnit, Sash
from boxwright.disciplines.heat.burner import plain_fuel
from boxwright.disciplines.heat.parts import Facet as HeatFacet
from boxwright.disciplines.layout.parts import Facet as LayoutFacet
from boxwright.disciplines.layout.parts import Slide, Swing
from boxwright.disciplines.layout.sweeps import NEVER_OPENS
from boxwright.disciplines.power.parts import Facet as PowerFacet
from boxwright.disciplines.power.parts import Wire
from boxwright.disciplines.safety.parts import Facet, Half, Hole, Kept, Lead, Section, ShutOff, Sleeper, Way
from boxwright.disciplines.safety.sourced import FUELS, LENGTHS, word_means
from boxwright.disciplines.water.parts import Facet as WaterFacet
from boxwright.model.place import Surfaces, side_word
from boxwright.model.stage import is_as_ticked
from boxwright.model.trailer import Person
from boxwright.rig.rig import Item, Layer
from boxwright.units import Band, CannotRead, HeaderUnits, read_exact

NOTHING_SAID = Facet()
SHORE_VOLTS = 100.0
"""From here on a wire carries what comes from outside by a cable, not from a battery (common practice, no source)."""
NOT_A_WAY = ("no",)
LEAF_SHUT = frozenset({"shut", "closed"})
"""What is written of a leaf that is shut today: it is as ticked."""
MEANT = ("wanted", "yes")
FLAT = ("roof", "floor")
SIDES, ENDS, LEVEL = ("left", "right"), ("front", "rear"), ("top", "bottom")
WIDEWAYS = {"left": ENDS, "right": ENDS, "front": SIDES, "rear": SIDES, "roof": ENDS, "floor": ENDS}
"""Ways along each wall by which a leaf that slides uncovers the width of its hole."""
UPWAYS = {"roof": SIDES, "floor": SIDES}
"""Those by which it uncovers the height, or in roof and floor what the hole is across; elsewhere up and down."""

Known = dict[str, tuple[Item, bool]]


def kept_of(
    items: dict[str, tuple[Item, ...]],
    layers: tuple[Layer, ...],
    people: tuple[tuple[str, Person], ...],
    room: Surfaces,
    units: HeaderUnits,
    known: Known | None = None,
) -> Section:
    """Return what safety sees of the rig, whatever stands; ``known`` keeps which unchanged parts tell it something."""
    known, words = {} if known is None else known, units.words
    slept_on = {person.sleeps for _, person in people if person.sleeps}
    parts, openings = tuple(one for one in items["parts"] if _tells(one, known)), items["openings"]
    return Section(
        ways=tuple(way for one in openings if (way := _way(one, words)) is not None),
        holes=tuple(Hole(one.of, one.name, one.place, one.words.now.strip(), _wall(one, words)) for one in openings),
        kept=tuple(kept for one in parts for kept in _kept(one, middles_of(one, units))),
        beds=tuple(one.of for one in parts if _is_bed_for_a_while(one)),
        counted=tuple(
            (one.of, one.words.count)
            for one in items["parts"]
            if one.words.count is not None and not one.words.at and (one.name in slept_on or _is_bed_for_a_while(one))
        ),
        sleepers=tuple(Sleeper(name, person.sleeps) for name, person in people if person.needs_a_bed),
        shut_offs=tuple(_shut_offs(parts, openings, items["wires"])),
        leads=tuple(_leads(items)),
        halves=tuple(_halves(items["parts"], layers)),
        room=room,
        folding=tuple(one.of for one in items["parts"] if one.words.folds),
        padded=tuple(
            (one.of, thick)
            for one in items["parts"]
            if (one.name in slept_on or _is_bed_for_a_while(one)) and (thick := _mattress(one)) > 0.0
        ),
    )


def _tells(item: Item, known: Known) -> bool:
    """Return whether there is anything in a part that safety looks at; of most there is nothing."""
    had = known.get(item.of)
    if had is None or had[0] is not item:
        is_said = item.facet("safety") is not None or item.facet("heat") is not None or _has_battery(item)
        is_named = word_means(item.name) not in ("", "holder")  # a box or a shelf is judged as nothing
        had = known[item.of] = item, is_said or is_named or _is_bed_for_a_while(item)
    return had[1]


def _facet(item: Item) -> Facet:
    facet = item.facet("safety")
    return facet if isinstance(facet, Facet) else NOTHING_SAID


def _way(item: Item, words: str) -> Way | None:
    """Return an opening as a way out: one that is meant as one, or a leaf large enough that nobody says is none.

    A hole in a wall that a person gets through, with no unit in it, is a doorway though nobody wrote how it opens.
    """
    facet, own = _facet(item), item.own
    if not isinstance(own, Opening) or facet.egress in NOT_A_WAY:
        return None
    moves = item.facet("layout")
    leaf = moves.swing if isinstance(moves, LayoutFacet) else None
    wall = _wall(item, words)
    across = own.across if wall in FLAT else own.height
    is_doorway = not comes_framed(own.unit) and wall not in FLAT and _passes(own.width) and _passes(across)
    is_leaf = leaf is not None or bool(facet.release) or is_doorway
    is_small = any(one is not None and one.known and one.high < LENGTHS["least"] for one in (own.width, across))
    if not facet.egress and (not is_leaf or is_small):
        return None
    slides = moves.slides if isinstance(moves, LayoutFacet) else None
    swing = leaf or (own.unit.swing if own.unit is not None else None)
    is_fixed = swing is not None and swing.opens in NEVER_OPENS and slides is None
    if is_fixed and facet.egress not in MEANT and not facet.release:
        return None
    words_of = (swing.opens, f"hinged {swing.hinge}" if swing.hinge else "") if swing is not None else ()
    turns = " ".join(word for word in words_of if word)
    return Way(
        item.of,
        item.name,
        wall,
        item.place,
        own.width,
        across,
        turns,
        comes_framed(own.unit),
        own.cut,
        _goes(swing) if slides is None else None,
        _slid(slides, wall),
        _is_level(slides, swing, wall),
        facet,
        is_fixed,
        said_otherwise(item, own.cut),
    )


def said_otherwise(item: Item, is_cut: bool | None) -> str:
    """Return what is written of an opening that does not go with its tick, or with its being there from the first."""
    if item.marks.done.tick != "yes" and item.marks.stage is not None:
        return ""
    now = item.words.now.strip()
    if is_cut is False:
        return "cut: no"
    return "" if is_as_ticked(now) or now.lower() in LEAF_SHUT else f"now: {now}"


def _passes(extent: Band | None) -> bool:
    """Return whether a person gets through an extent of a hole, at the least it can be."""
    return extent is not None and extent.known and extent.low >= LENGTHS["pass"]


def _slid(slides: Slide | None, wall: str) -> Band | None:
    """Return how far a leaf slides along its wall, None where nobody wrote it, or it slides no way along that wall."""
    if slides is None or slides.by is None or not slides.by.known or wall not in WIDEWAYS:
        return None
    return slides.by if slides.to in (*WIDEWAYS[wall], *UPWAYS.get(wall, ("up", "down"))) else None


def _is_level(slides: Slide | None, swing: Swing | Sash | None, wall: str) -> bool:
    """Return whether a leaf uncovers the height of its hole, in roof and floor what the hole is across."""
    if slides is not None:
        return slides.to in UPWAYS.get(wall, ("up", "down"))
    return swing is not None and swing.hinge in (SIDES if wall in FLAT else LEVEL)


def _goes(swing: Swing | Sash | None) -> Band | None:
    """Return the angle a leaf opens to, None where nobody wrote how it opens."""
    if swing is None or not (swing.hinge and swing.opens) or swing.to is None or not swing.to.known:
        return None
    return swing.to


def _wall(item: Item, words: str) -> str:
    return (wall_name(side_word(item.words.wall.strip(), words)) or "") if item.words.wall else ""


def _leads(items: dict[str, tuple[Item, ...]]) -> Iterator[Lead]:
    """Yield every wire with what it joins; one that ends at what feeds it too is yielded from there as well."""
    names = {one.name for one in (*items["parts"], *items["openings"])}
    plugs, sources = {one.name for one in items["openings"]}, {one.name for one in items["parts"] if _feeds(one)}
    for item in items["wires"]:
        wire = item.own
        if isinstance(wire, Wire):
            starts, ends = (one if one in names else "" for one in (wire.from_.strip(), wire.to.strip()))
            is_capped = wire.ends.strip().lower() == "capped"
            now, is_shore = item.words.now.strip(), _is_shore(wire)
            is_fed = (starts in plugs, _is_fused(wire, ends), is_shore)
            yield Lead(item.of, item.name, starts, ends, *is_fed, is_capped, now)
            if starts and (ends in sources or (ends in plugs and is_shore)):
                is_fed = (ends in plugs, _is_fused(wire, starts), is_shore)
                yield Lead(item.of, item.name, ends, starts, *is_fed, is_capped, now)


def _is_fused(wire: Wire, far: str) -> bool:
    """Return whether a wire has a fuse to take out, so that its far end is dead: one at that end itself is none."""
    rating = wire.fuse.amps if wire.fuse is not None else None
    if wire.fuse is None or rating is None or not rating.known or _is_shore(wire):
        return False
    return not far or wire.fuse.at.strip() != far


def _feeds(item: Item) -> bool:
    """Return whether a part has current of its own: a battery, or a panel by day."""
    facet = item.facet("power")
    return isinstance(facet, PowerFacet) and (facet.battery is not None or facet.panel is not None)


def _halves(parts: tuple[Item, ...], layers: tuple[Layer, ...]) -> Iterator[Half]:
    """Yield what is ticked as done in part: a hole and a wire are judged by rules of their own."""
    for layer in layers:
        if layer.marks.done.tick == "part":
            yield Half(layer.of, f"{layer.wall} {layer.name}", True, layer.now)
    for item in parts:
        if item.marks.done.tick == "part":
            yield Half(item.of, item.name, False, item.words.now.strip())


def burns_with_a_flame(item: Item) -> bool:
    """Return whether a part, no heater, burns with a flame by what is written, or by its name where nothing is."""
    facet, warm = _facet(item), item.facet("heat")
    if isinstance(warm, HeatFacet) and warm.heater is not None:
        return False
    if facet.burns:
        return FUELS.get(facet.burns.strip().lower(), (True, ""))[1] != "none"
    return not (facet.alarm or facet.release) and word_means(item.name) == "flame"


def comes_framed(unit: OpeningUnit | None) -> bool:
    """Return whether what fills a hole comes in a frame of its own; of a leaf one may write how well it keeps heat."""
    return unit is not None and bool(unit.model_fields_set - {"transmittance", "U"} or not unit.model_fields_set)


def middles_of(item: Item, units: HeaderUnits) -> tuple[float, ...]:
    """Return the places of a counted part along the trailer; one that cannot be read was told where it was read."""
    try:
        return tuple(read_exact(text, "length", units) for text in item.words.at)
    except CannotRead:
        return ()


def _kept(item: Item, middles: tuple[float, ...]) -> Iterator[Kept]:
    """Yield a part as each thing that safety judges it as: what warns or helps may endanger besides."""
    facet, warm = _facet(item), item.facet("heat")
    heater = warm.heater if isinstance(warm, HeatFacet) else None
    by_name = "" if facet.alarm or facet.release else word_means(item.name)
    if facet.alarm:
        yield _as(item, middles, "alarm")
    elif facet.puts_out or by_name == "extinguisher":
        yield _as(item, middles, "extinguisher")
    elif facet.release:
        yield _as(item, middles, "release")
    is_flame = heater is not None or bool(facet.burns) or by_name == "flame"
    burns = facet.burns or (plain_fuel(heater.of) if heater is not None else "")
    if facet.generator in ("yes", "unknown") or (by_name == "generator" and facet.generator != "no"):
        # an engine may heat or cook besides: it stays a flame for all that asks of one
        yield _as(item, middles, "generator", burns or ("unknown" if heater is not None else ""))
    elif is_flame:
        yield _as(item, middles, "flame", burns or "unknown")
    elif by_name == "fuel" and not _has_tank(item):
        yield _as(item, middles, "fuel")


def _has_tank(item: Item) -> bool:
    facet = item.facet("water")
    return isinstance(facet, WaterFacet) and facet.tank is not None


def _as(item: Item, middles: tuple[float, ...], what: str, burns: str = "") -> Kept:
    is_shut_in = item.words.inside.strip() != ""
    return Kept(
        item.of,
        item.name,
        what,
        _facet(item),
        burns.strip().lower(),
        item.words.stage,
        item.marks.planned,
        is_shut_in,
        _wants(item),
        item.words.rides_on.strip(),
        middles,
    )


def _wants(item: Item) -> Band | None:
    moves = item.facet("layout")
    clear = moves.keep_clear if isinstance(moves, LayoutFacet) else None
    return clear.all_round if clear is not None and clear.all_round is not None and clear.all_round.known else None


def _is_bed_for_a_while(item: Item) -> bool:
    """Return whether a part is a stand-in that has a place of its own for the night, such as a cot."""
    return item.words.until != "" and item.asleep is not None


def _mattress(item: Item) -> float:
    """Return how thick the mattress of a bed is (m), nothing where none is written."""
    moves = item.facet("layout")
    return moves.mattress[2] if isinstance(moves, LayoutFacet) and moves.mattress is not None else 0.0


def _shut_offs(parts: tuple[Item, ...], openings: tuple[Item, ...], strung: tuple[Item, ...]) -> tuple[ShutOff, ...]:
    """Return what is turned off in an emergency: what says so itself, else what the plan tells of."""
    wires = [one.own for one in strung if isinstance(one.own, Wire)]
    said = [ShutOff(_facet(one).shuts.strip().lower(), one.name, one.of) for one in parts if _facet(one).shuts]
    told = [
        ShutOff("shore", f"plug out of {one.name}", one.of)
        for one in openings
        if any(wire.from_ == one.name and _is_shore(wire) for wire in wires)
    ]
    for one in parts:
        told += [*_of_battery(one, wires), *_of_fuel(one)]
    have = {one.what for one in said}
    return (*said, *(one for one in told if one.what not in have))


def _of_battery(item: Item, wires: list[Wire]) -> Iterator[ShutOff]:
    if _has_battery(item):
        is_fused = any(wire.fuse is not None and wire.fuse.at == item.name for wire in wires)
        place = f"{item.name}, in {item.words.inside}" if item.words.inside else item.name
        yield ShutOff("battery", f"{'fuses at' if is_fused else 'cable of'} {place}", item.of)


def _has_battery(item: Item) -> bool:
    facet = item.facet("power")
    return isinstance(facet, PowerFacet) and facet.battery is not None


def _of_fuel(item: Item) -> Iterator[ShutOff]:
    facet = item.facet("heat")
    path = facet.heater.path if isinstance(facet, HeatFacet) and facet.heater is not None else ()
    valve = next((word for word in path if "valve" in word.lower()), "")
    if valve:
        yield ShutOff("fuel", f"{valve}, {path[0]}", item.of)


def _is_shore(wire: Wire) -> bool:
    return wire.volts is not None and wire.volts.known and wire.volts.best >= SHORE_VOLTS
