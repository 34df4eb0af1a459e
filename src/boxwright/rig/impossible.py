"""What is written of the frame and cannot be: a spacing of nothing, a stud beyond its wall, a reading that is none."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from difflib import get_close_matches

from boxwright.disciplines import frame
from boxwright.disciplines.frame.bands import above_nothing
from boxwright.disciplines.frame.box import inside_of
from boxwright.disciplines.frame.holes import is_backwards, wall_name
from boxwright.disciplines.frame.members import MOST, amiss_of
from boxwright.disciplines.frame.sourced import LIMITS
from boxwright.disciplines.frame.tapes import REMOVED
from boxwright.disciplines.frame.walls import walls_of
from boxwright.disciplines.layout.parts import Facet
from boxwright.model.trailer import Trailer
from boxwright.rig.document import Tree
from boxwright.rig.rig import Item
from boxwright.rig.taped import KINDS, length_read
from boxwright.rig.validate import Mistake
from boxwright.units import HeaderUnits

WALLS = ("left", "right", "front", "rear", "nose-left", "nose-right")
EDGES = ("front", "rear", "left", "right", "bottom", "top")
ROWS = {"bows": "roof", "cross_members": "floor"}
NUMBERED = ("studs", "bows", "cross_members")
SAYS = {
    "every": "this spacing is narrower than one member, or longer than the wall, and no row is made of it; "
    "write it centre to centre, as 16 in inches or 400 in millimetres",
    "first": "the first member would stand beyond its wall, and no row is made of it; write its centre, such as 0",
    "last": "the closing member would stand beyond its wall or ahead of the first, and no row is made of it; "
    "write its centre, such as 167 1/4",
    "extra": "a member here would stand beyond its wall and is left out; write centres on the wall, such as [41]",
    "removed": "a number here is of no member of that wall; members are counted from 0, such as [2]",
    "doubled": "a number here is of no member of that wall; members are counted from 0, such as [5]",
}
SAYS["cross_members"] = SAYS["every"]


def impossible(section: frame.Section, trailer: Trailer) -> tuple[Mistake, ...]:
    """Return what is written of the shell and cannot be; nothing where the body's measures are not known."""
    inside = inside_of(trailer)
    if inside is None:
        return tuple(_no_measure(trailer))
    walls = walls_of(section, inside)
    paths = dict.fromkeys(path for wall in walls for path in amiss_of(section, wall))
    found = [Mistake(path, SAYS[path.rpartition(".")[2]]) for path in paths]
    nose = section.framing.nose if section.framing is not None else None
    if nose is not None:
        if above_nothing(nose.length) is None and not (nose.length is not None and not nose.length.known):
            says = "a nose needs a length of more than nothing; write it as nose: {length: 24, tip: 12}"
            found.append(Mistake("frame.nose", says))
        tip = nose.tip
        if tip is not None and tip.known and not 0.0 <= tip.best <= inside[1]:
            says = "the tip of a nose is at most as wide as the body, and 0 where it is sharp; write it as tip: 12"
            found.append(Mistake("frame.nose.tip", says))
    found += _no_openings(section)
    there = {wall.name for wall in walls}
    for one in section.openings:
        name = wall_name(one.wall)
        if name is not None and name not in there:
            says = f"this trailer has no {name} wall as its nose is written; write another wall, or the nose"
            found.append(Mistake(f"{one.of}.wall", says))
    return tuple(found)


def _no_openings(section: frame.Section) -> Iterator[Mistake]:
    """Yield the sizes of openings that are nothing or less, and the clamping ranges that end before they begin."""
    for one in section.openings:
        for key in ("width", "height", "across"):
            size = getattr(one.opening, key)
            if size is not None and size.known and above_nothing(size) is None:
                says = f"a {key} of nothing or less is no opening, and it is not judged; write it as {key}: 14 1/4"
                yield Mistake(f"{one.of}.{key}", says)
        wall = wall_name(one.wall)
        if wall in ("roof", "floor") and one.opening.height is not None and one.opening.across is None:
            says = f"a hole in the {wall} has no height: it is so long as its width says, and this is not taken; "
            says += "write how far it goes across the trailer, as across: 14 1/4"
            yield Mistake(f"{one.of}.height", says)
        clamps = one.opening.unit.clamps if one.opening.unit is not None else None
        if clamps is not None and is_backwards(clamps):
            says = "the thinnest wall it clamps is thicker than the thickest, so that it fits none; "
            says += "write it as clamps: {lowest: 1, highest: 1 3/4}"
            yield Mistake(f"{one.of}.unit.clamps", says)


def turning_and_sliding(openings: Iterable[Item]) -> Iterator[Mistake]:
    """Yield the openings whose leaf is said both to turn and to slide: which of the two is meant, nobody can say."""
    for one in openings:
        facet = one.facet("layout")
        if isinstance(facet, Facet) and facet.swing is not None and facet.slides is not None:
            says = "the leaf of an opening either turns or slides, and both are written; leave out swing: or slides:"
            yield Mistake(f"{one.of}.slides", says)


def _no_measure(trailer: Trailer) -> Iterator[Mistake]:
    """Yield the measures of the body that are written, and are nothing or less, or beyond any trailer."""
    for key in ("length", "width", "height"):
        written = getattr(trailer.body, key)
        if written is None or not written.known:
            continue
        if above_nothing(written) is None or written.best > LIMITS["longest_body"]:
            says = f"a body has a {key} of more than nothing, and none has more than 30 m; "
            says += "write it as body: {length: 168, width: 80, height: 78}"
            yield Mistake(f"trailer.body.{key}", says)


def unread_lengths(tree: Mapping[str, Tree], units: HeaderUnits) -> tuple[Mistake, ...]:
    """Return what stands under ``measured`` as the place of a member or the measure of a thing, and gives none."""
    entries, openings = tree.get("measured"), tree.get("openings")
    names = tuple(openings) if isinstance(openings, Mapping) else ()
    found: list[Mistake] = []
    for name, entry in entries.items() if isinstance(entries, Mapping) else ():
        for key in KINDS if isinstance(entry, Mapping) else ():
            values = entry.get("values") if isinstance(entry, Mapping) else None
            if isinstance(entry, Mapping) and key in entry and isinstance(values, Mapping):
                found += _unread(f"measured[{name}]", key, entry[key], values, units)
                found += _of_nothing(f"measured[{name}]", key, entry[key], values, names)
    return tuple(found)


def _unread(path: str, key: str, subject: Tree, values: Mapping[str, Tree], units: HeaderUnits) -> Iterator[Mistake]:
    if key == "studs" and (not isinstance(subject, str) or subject not in WALLS):
        says = f'no wall "{subject}" has studs to tape; write it as studs: left, right, front or rear'
        yield Mistake(f"{path}.studs", says)
    for place, text in values.items():
        if key in NUMBERED and not (place.strip().isdecimal() and int(place) < MOST):
            says = f'"{place}" is no number of a member, and this is not read; they are counted from 0, as 3: 48 1/8'
            yield Mistake(f"{path}.values.{place}", says, is_key=True)
            continue
        word = str(text).strip().lower()
        if word != REMOVED and length_read(text, units) is None:
            how = f"write it as {place}: 48 1/8, or {REMOVED}" if key in NUMBERED else f"write it as {place}: 48 1/8"
            yield Mistake(f"{path}.values.{place}", f'cannot read the length "{text}"; {how}')


def _of_nothing(
    path: str, key: str, subject: Tree, values: Mapping[str, Tree], names: tuple[str, ...]
) -> Iterator[Mistake]:
    """Yield what was read of a thing that is not there: an opening or an edge nobody named so, another row."""
    if key == "opening" and subject not in names:
        near = get_close_matches(str(subject), names, 1)
        how = f"did you mean {near[0]}?" if near else f"write one of {', '.join(names) or 'them under openings'}"
        yield Mistake(f"{path}.opening", f'there is no opening "{subject}", and this is not used; {how}')
    for only in [one for one in (ROWS.get(key),) if one is not None and subject != one]:
        says = f'"{subject}" has no row of these, and this is not used; write it as {key}: {only}'
        yield Mistake(f"{path}.{key}", says)
    if key == "opening":
        for place in values:
            if place.strip() not in EDGES:
                says = f'"{place}" is no edge of an opening, and this is not used; write one of {", ".join(EDGES)}'
                yield Mistake(f"{path}.values.{place}", says, is_key=True)
