"""The sheet of a section: how warm each place of a wall is across a stud, and how far each rule of the hand is off."""

from __future__ import annotations

from dataclasses import replace
from math import ceil, floor

from boxwright.disciplines.heat.across import SAME, Across
from boxwright.disciplines.heat.across_field import INSIDE, OUTSIDE, Solved, coldest_inside, isotherm
from boxwright.disciplines.heat.as_built import MEMBERS, as_built, end_of, is_labelled, size_of
from boxwright.disciplines.heat.cold import members_named, named
from boxwright.disciplines.heat.material import read_material
from boxwright.disciplines.heat.plane import house_film, plane_of
from boxwright.disciplines.heat.telling import is_in_feet, r_unit, r_value, sources_named
from boxwright.drawing import Grid, Leader, Line, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.mark import Fill, Mark, Point
from boxwright.exchange import Layup
from boxwright.units import Band, HeaderUnits, show, show_band, shown_unit

SHOWN = 0.085
"""How far to each side of the middle of the member is drawn at most (m)."""
ASIDE = 0.01
"""How far beside the wall its temperatures are written, at full size (m)."""
TICK = 0.003
"""How far beside the wall a line of one temperature goes on towards what is written of it (m)."""
APART = 0.004
"""How far apart two temperatures are written at least, at full size (m)."""
LINES = 8
"""About how many lines of one temperature are drawn."""
STEPS = (1.0, 2.0, 4.0, 5.0, 10.0)
SHEET = 0.003
"""Below this (m) a thickness is told in its own figures."""
NONE = "–"
"""In a cell that holds nothing: an empty one is room for a pencil."""
UNBRIDGED = {
    "bare": "Nothing here keeps heat so far, so there are no lines of temperature to draw. The members stand in the "
    "room like fins: what they add is counted by a rule of thumb.",
    "layers": "No member bridges what lies here so far: lines of temperature would run level, so none is drawn.",
}
"""Why a section has no lines of temperature, by how it is built."""
KINDS: dict[str, Fill] = {"foam": "foam", "wool": "foam", "board": "wood", "sheet": "skin", "metal": "skin"}


def section_name(layup: Layup) -> str:
    """Return the name of the sheet of a plane's section."""
    return f"section-{(layup.bay or layup.wall).replace(' ', '-')}"


def section_shown(layup: Layup) -> Across | None:
    """Return the section of a plane as it is drawn: with every layer that may be there; None where nothing is cut."""
    built = as_built(layup, "best", house_film(layup.wall), True)
    return built.across if built.kind in ("framed", "timber") else None


def shown_of(across: Across) -> float:
    """Return how far to each side of the middle of the member is drawn: no further than to the middle of its bay."""
    return min(SHOWN, across.spacing / 2.0)


def section_sheet(layup: Layup, solved: Solved, shown_in: HeaderUnits) -> Sheet:
    """Return the section of a plane with its lines of temperature, and what each rule makes of it."""
    title = f"Section of the {named(layup)} across one of its {members_named(layup.wall)}"
    view = View(
        named(layup).capitalize(),
        f"room {_warm(INSIDE, shown_in)}, outside {_warm(OUTSIDE, shown_in)}",
        (*_materials(layup, solved.across), *_warmth(layup, solved, shown_in)),
    )
    notes = (
        _how_close(layup, solved.across, shown_in),
        "A clean section: no screws, no gap where the lining touches. Corners and the bottom rail are colder still.",
        f"Room {_warm(INSIDE, shown_in)}, outside {_warm(OUTSIDE, shown_in)}: at other temperatures each line lies at "
        "the same share of the way.",
    )
    grids = (methods(layup, solved, shown_in), taken(layup, shown_in))
    return Sheet(section_name(layup), title, (view,), notes, grids)


def bare_sheet(layup: Layup, shown_in: HeaderUnits) -> Sheet:
    """Return the section of a plane that no member bridges: what stands there, and what that lets through.

    There is no field to work out: bare members are as cold as their skin, and layers on each other have level lines.
    """
    film = house_film(layup.wall)
    built, planed = as_built(layup, "best", film, True), plane_of(layup)
    stands = built.across
    if built.kind == "bare":
        stands = replace(stands, depth=end_of(size_of(layup.member_depth), "best", False, MEMBERS["depth"]))
    coldest = OUTSIDE + (1.0 - film * planed.bay.best) * (INSIDE - OUTSIDE)
    rows = tuple(
        (name, show_band(one, "W/m2K", shown_in), _resists(one, shown_in))
        for name, one in (("between the members", planed.bay), ("with the members", planed.transmittance))
    )
    rows += (("coldest inside", _warm(coldest, shown_in), NONE),)
    columns = ("Where", "U", f"R, {r_unit(shown_in)}")
    grids = (Grid("What it lets through", columns, rows, (layup.of,) * len(rows)), taken(layup, shown_in))
    title = f"Section of the {named(layup)}"
    title += f" across one of its {members_named(layup.wall)}" if built.kind == "bare" else ""
    where = f"room {_warm(INSIDE, shown_in)}, outside {_warm(OUTSIDE, shown_in)}"
    view = View(named(layup).capitalize(), where, _materials(layup, stands))
    return Sheet(section_name(layup), title, (view,), (UNBRIDGED[built.kind],), grids)


def _resists(through: Band, shown_in: HeaderUnits) -> str:
    low, high = (r_value(one, shown_in) for one in (through.high, through.low))
    return low if low == high else f"{low} to {high}"


def _how_close(layup: Layup, across: Across, shown_in: HeaderUnits) -> str:
    """Return how far apart the members of the section stand, and whether somebody wrote it."""
    members, apart = members_named(layup.wall).capitalize(), show(across.spacing, "length", shown_in)
    written = layup.spacing
    if written is None or not written.known or written.best <= 0.0:
        return f"{members} every {apart}, as nobody wrote how far apart they stand."
    if across.spacing > written.best + SAME:
        closer = show(written.best, "length", shown_in)
        return f"{members} every {closer} leave no bay to cut through: the section is of some every {apart}."
    return f"{members} every {apart}."


def methods(layup: Layup, solved: Solved, shown_in: HeaderUnits) -> Grid:
    """Return the transmittance by the field, by the stored sections and by each rule of the hand, and how far off."""
    field, hand = solved.field, solved.hand
    rows = [("field of temperature", field.transmittance)]
    if solved.stored is not None:
        rows.append(("stored sections", solved.stored))
    rows += [
        ("zone method", hand.zone),
        ("mean of both bounds", hand.combined),
        ("planes of one temperature", hand.planes),
        ("straight through", hand.parallel),
    ]
    shown = tuple(
        (
            name,
            show(value, "W/m2K", shown_in),
            r_value(value, shown_in),
            _off(value / field.transmittance - 1.0) if at else NONE,
        )
        for at, (name, value) in enumerate(rows)
    )
    last = (
        ("temperature factor", f"{field.factor:.2f}", NONE, NONE),
        ("coldest inside", _warm(field.coldest_inside, shown_in), NONE, NONE),
    )
    grid = (*shown, *last)
    return Grid("What it lets through", ("By", "U", f"R, {r_unit(shown_in)}", "Off"), grid, (layup.of,) * len(grid))


def taken(layup: Layup, shown_in: HeaderUnits) -> Grid:
    """Return what each layer was taken to be: read as, thickness, what it conducts, and how that was seen."""
    given = [("skin", layup.skin_of, layup.skin, layup.of)]
    given += [("member", layup.member_material, layup.member_gauge, layup.of)]
    given += [(one.name, one.material, one.thick, one.of) for one in layup.layers]
    labels = {one.of: one.resistance for one in layup.layers if one.resistance is not None and is_labelled(one)}
    rows: list[tuple[str, ...]] = []
    for name, written, thick, of in given:
        made = read_material(written, name if name not in ("skin", "member") else "")
        size = _thick(thick, shown_in)
        if of in labels:
            rows.append((name, written or name, size, show_band(labels[of], "insulation", shown_in), "its label"))
        elif made is None:
            rows.append((name, f'"{written}"' if written else "not written", size, "not known", NONE))
        elif made.kind == "air":
            rows.append((name, made.name, size, "as a layer of still air", sources_named()[made.source].seen))
        else:
            span = _conducts(made.conductivity, shown_in)
            rows.append((name, made.name, size, span, sources_named()[made.source].seen))
    return Grid(
        "What it was worked out with", ("Layer", "Read as", "Thick", "Conducts", "Seen"), tuple(rows),
        tuple(of for *_, of in given),
    )  # fmt: skip


def _conducts(through: Band, shown_in: HeaderUnits) -> str:
    """Return a conductivity with its doubt, in the unit of the leaflets where the rig is at home."""
    ends = [show(end, "conductivity", shown_in) for end in (through.best, through.low, through.high)]
    unit = shown_unit("conductivity", shown_in)[0]
    best, low, high = (one.removesuffix(unit).strip() for one in ends)
    return f"{best} ({low} to {high}) {unit}"


def _thick(thick: Band | None, shown_in: HeaderUnits) -> str:
    """Return a thickness as it is cut in inches; in millimetres, and of a sheet, in its own figures."""
    if thick is None or not thick.known:
        return "not written"
    return show_band(thick, "length", shown_in, cuts=thick.best > SHEET and is_in_feet(shown_in))


def _off(share: float) -> str:
    return "0 %" if round(share * 100.0) == 0 else f"{share * 100.0:+.0f} %"


def _materials(layup: Layup, across: Across) -> tuple[Mark, ...]:
    """Return the layers and the member as they lie."""
    half, deep, wide = across.face / 2.0, across.skin[0], shown_of(across)
    marks: list[Mark] = []
    if layup.wall != "floor":
        marks += _block(-wide, wide, 0.0, deep, "skin", layup.of)
        marks.append(Leader((wide * 0.8, deep / 2.0), f"skin {layup.skin_of}".strip(), layup.of))
    top = deep + across.depth
    names = _names(layup)
    foot = deep
    for (thick, _), (name, fill, of) in zip(across.filling, names["bays"], strict=False):
        marks += _block(-wide, -half, foot, foot + thick, fill, of)
        marks += _block(half, wide, foot, foot + thick, fill, of)
        marks.append(Leader((-wide * 0.85, foot + thick / 2.0), name, of))
        foot += thick
    marks += _member(layup, across, deep, top) if across.depth > 0.0 else []
    foot = top
    for (thick, _), (name, fill, of) in zip(across.over, names["members"], strict=False):
        marks += _block(-half, half, foot, foot + thick, fill, of)
        marks.append(Leader((-half * 0.7, foot + thick / 2.0), name, of))
        foot += thick
    for (thick, _), (name, fill, of) in zip(across.inner, names["all"], strict=False):
        marks += _block(-wide, wide, foot, foot + thick, fill, of)
        marks.append(Leader((wide * 0.85, foot + thick / 2.0), name, of))
        foot += thick
    marks.append(Text((wide * 0.7, foot + 0.008), "ROOM", layup.of, "small"))
    marks.append(Text((wide * 0.7, -0.008), "OUTSIDE", layup.of, "small"))
    return tuple(marks)


def _names(layup: Layup) -> dict[str, list[tuple[str, Fill, str]]]:
    found: dict[str, list[tuple[str, Fill, str]]] = {"bays": [], "members": [], "all": []}
    if layup.wall == "floor":
        found["all"].append((f"deck {layup.skin_of}".strip(), "wood", layup.of))
    for one in layup.layers:
        made = read_material(one.material, one.name)
        name = one.material if one.material and one.material != one.name else ""
        is_known = one.thick is not None and one.thick.known and one.thick.best > 0.0
        if not is_known or (made is None and not is_labelled(one)):
            continue
        kind = made.kind if made is not None else ""
        found[one.where].append((f"{one.name} {name}".strip(), KINDS.get(kind, "none"), one.of))
    return found


def _member(layup: Layup, across: Across, deep: float, top: float) -> list[Mark]:
    half, sheet = across.face / 2.0, across.sheet
    word = members_named(layup.wall).removesuffix("s")
    said = f"{word} {layup.member_material}".strip()
    lead: Mark = Leader((half - min(sheet, half) / 2.0, deep + (top - deep) * 0.7), said, layup.of)
    if across.is_solid or sheet >= half:
        return [*_block(-half, half, deep, top, "wood" if across.is_solid else "metal", layup.of), lead]
    return [
        *_block(-half, half, deep, deep + sheet, "metal", layup.of),
        *_block(-half, half, top - sheet, top, "metal", layup.of),
        *_block(-half, -half + sheet, deep + sheet, top - sheet, "metal", layup.of),
        *_block(half - sheet, half, deep + sheet, top - sheet, "metal", layup.of),
        lead,
    ]


def _block(left: float, right: float, foot: float, top: float, fill: Fill, of: str) -> list[Mark]:
    return [Shape(((left, foot), (right, foot), (right, top), (left, top)), "visible", of, fill)]


def _warmth(layup: Layup, solved: Solved, shown_in: HeaderUnits) -> tuple[Mark, ...]:
    """Return lines of one temperature on both sides of the member, and the coldest place inside."""
    marks: list[Mark] = []
    labelled, wide = -APART, shown_of(solved.across)
    for level in _levels(shown_in):
        pieces = [_clipped(*one, wide) for one in isotherm(solved.field, level) if _is_in_wall(one, solved.across)]
        if not pieces:
            continue
        for start, end in pieces:
            marks.append(Line(start, end, "cut", layup.of))
            marks.append(Line((-start[0], start[1]), (-end[0], end[1]), "cut", layup.of))
        outmost = max((point for piece in pieces for point in piece), key=lambda point: point[0])
        if outmost[0] >= wide - SAME and outmost[1] - labelled >= APART:
            labelled = outmost[1]
            marks.append(Line((wide, outmost[1]), (wide + TICK, outmost[1]), "dimension", layup.of))
            marks.append(Text((wide + ASIDE, outmost[1]), _warm(level, shown_in), layup.of, "small", may_move=False))
    place = coldest_inside(solved.field)
    marks.append(Symbol(place, "fault", layup.of))
    says = f"coldest {_warm(solved.field.coldest_inside, shown_in)}"
    return (*marks, Leader((place[0], place[1]), says, layup.of))


def _is_in_wall(piece: tuple[Point, Point], across: Across) -> bool:
    """Return whether a piece of a line lies in the wall: beside a strip that nothing covers is the room itself."""
    near = min(one[0] for one in piece)
    if across.inner or not across.over:
        return near < shown_of(across)
    top, wide = across.skin[0] + across.depth, shown_of(across)
    return near < wide and not (max(one[1] for one in piece) > top + SAME and near >= across.face / 2.0 - SAME)


def _clipped(start: Point, end: Point, wide: float) -> tuple[Point, Point]:
    """Return a piece of a line as far as it is shown."""
    (near, low), (far, high) = sorted((start, end))
    if far <= wide:
        return start, end
    return (near, low), (wide, low + (high - low) * (wide - near) / (far - near))


def _levels(shown_in: HeaderUnits) -> tuple[float, ...]:
    """Return temperatures (K) that are whole steps in the user's own scale."""
    scale = shown_unit("temperature", shown_in)[1]
    low, high = scale.from_si(OUTSIDE), scale.from_si(INSIDE)
    step = next((one for one in STEPS if (high - low) / one <= LINES + 1), STEPS[-1])
    return tuple(scale.to_si(number * step) for number in range(floor(low / step) + 1, ceil(high / step)))


def _warm(kelvin: float, shown_in: HeaderUnits) -> str:
    return show(kelvin, "temperature", shown_in)
