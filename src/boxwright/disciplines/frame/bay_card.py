"""A card for each bay between two studs: what must be in it before it is closed. Other chapters add their lines."""

from __future__ import annotations

from boxwright.disciplines.frame.bay_pieces import Left, left_of
from boxwright.disciplines.frame.behind import runs_in
from boxwright.disciplines.frame.build_up import fill_of
from boxwright.disciplines.frame.drawn import UNSAID, Drawn, Eye
from boxwright.disciplines.frame.result import Bay, Wall
from boxwright.drawing import TO_TICK, Grid, Sheet

WALLS = ("left", "right", "front", "rear", "nose-left", "nose-right")
NOTES = (
    "A bay may be closed when every box is ticked. Where a wire or a pipe runs, no screw goes deeper than the lining.",
    "Wires and pipes stand at their height by the written route; with a ? where the route does not say that it runs so "
    "far.",
    "Photograph it bare, wired and foamed, with the tape in the picture, hooked at the scribed 0.",
)
LINE = 46
"""So many letters of what to keep clear of stand on a line: two cards stand side by side."""
Row = tuple[str, str, str]


def bay_cards(drawn: Drawn) -> Sheet:
    """Return the cards of all bays of the walls."""
    grids = []
    for bay in drawn.frame.bays:
        wall = drawn.frame.wall(bay.wall)
        if wall is not None and wall.name in WALLS:
            grids.append(_card(drawn, bay, wall))
    return Sheet("bay-cards", "Bay cards", (), NOTES, tuple(grids))


def _card(drawn: Drawn, bay: Bay, wall: Wall) -> Grid:
    ruler, zero = drawn.ruler, Eye(wall, True).zero
    low, high = bay.low.best, bay.high.best
    title = f"Bay {bay.name}: {ruler.mark(low - zero)} to {ruler.mark(high - zero)}"
    left = left_of(drawn, bay, wall)
    rows: list[tuple[Row, str]] = [((TO_TICK, "Clear", f"{_clear(drawn, bay)}; found ______"), bay.of)]
    if not left.is_divided:
        rows.append(((TO_TICK, "Height", f"{ruler.full(wall.top - wall.foot)}; found ______"), wall.of))
    rows += [((TO_TICK, "Piece", f"{words}; found ______"), wall.of) for words in _pieces(drawn, left)]
    for hole in drawn.holes_of(wall.name):
        if hole.low < high and hole.high > low:
            where = f"{ruler.mark(hole.low - zero)} to {ruler.mark(hole.high - zero)}"
            where += "" if hole.is_cut else " not cut"
            rows.append(((TO_TICK, "Opening", f"{hole.name} {where}; seal {hole.seal or '______'}"), hole.of))
    for one in drawn.frame.backings:
        if one.wall == wall.name and one.low < high and one.high > low:
            what = f"{one.name} {ruler.full(one.thick)}, z {ruler.mark(one.bottom)} to {ruler.mark(one.top)}"
            rows.append(((TO_TICK, "Backing", what), one.of))
    rows += [((TO_TICK, one.kind, one.words), one.of) for one in drawn.cards if one.bay == bay.name]
    for name in (f"bay {bay.name}", bay.name):
        built = drawn.buildup(wall.name, "bay", name)
        if built is not None:
            break
    else:
        built = drawn.buildup(wall.name, "bay")
    for piece in built.layers if built is not None else ():
        if piece.name != "skin":
            if piece.where == "bays" and left.is_divided and not left.pieces:
                continue
            cut = _cut(drawn, bay, wall, left) if piece.where == "bays" else piece.where
            what = f"{piece.name} {piece.material} {ruler.thickness(piece.thick)}, {cut}"
            rows.append(((TO_TICK if piece.there != "yes" else "in", "Layer", what), piece.of))
    rows += [(("-", "Keep out", words), bay.of) for words in _keep_out(drawn, bay, wall)]
    # Air that gets behind loose foam brings its water to the skin, so that foam in a bay is taped to its studs.
    foamed = built is not None and any(one.where == "bays" and fill_of(one) == "foam" for one in built.layers)
    photo = "bare ____ wired ____ foamed, taped ____" if foamed else "bare ____ wired ____ foamed ____"
    rows.append((("", "Photo", photo), bay.of))
    rows.append(((TO_TICK, "May close", "signed ________ date ________"), bay.of))
    return Grid(title, ("", "", ""), tuple(row for row, _ in rows), tuple(of for _, of in rows))


def _clear(drawn: Drawn, bay: Bay) -> str:
    """Return how wide a bay is: with its doubt, and without where the place of its studs was left open."""
    ruler = drawn.ruler
    if bay.is_built:
        return f"{ruler.span(bay.clear)} taped"
    if bay.clear.low <= 0.0:
        return f"about {ruler.full(bay.clear.best)}, not ordered"
    return f"{ruler.span(bay.clear)} ordered"


def _pieces(drawn: Drawn, left: Left) -> list[str]:
    """Return the pieces that openings leave of a bay they divide, width first."""
    if not left.is_divided:
        return []
    mark = drawn.ruler.mark
    return [f"{mark(one.high - one.low)} x {mark(one.top - one.bottom)} {one.where}" for one in left.pieces]


def _cut(drawn: Drawn, bay: Bay, wall: Wall, left: Left) -> str:
    """Return what a layer between the studs is cut to."""
    if left.is_divided:
        return "cut to the pieces"
    mark = drawn.ruler.mark
    less = f" less {', '.join(one.name for one in left.within)}" if left.within else ""
    return f"{mark(bay.high.best - bay.low.best)} x {mark(wall.top - wall.foot)}{less}"


def _keep_out(drawn: Drawn, bay: Bay, wall: Wall) -> list[str]:
    """Return short lines of what runs through a bay, by its height; a question mark where it may not reach so far."""
    at: dict[str, list[str]] = {}
    found = runs_in(drawn, wall.name, (bay.low.best, bay.high.best), (wall.foot, wall.top))
    for run, is_sure in sorted(found, key=lambda one: (one[0].up is None, one[0].up or 0.0)):
        height = f"z {drawn.ruler.mark(run.up)}" if run.up is not None else f"z {UNSAID}"
        at.setdefault(height, []).append(run.name if is_sure else f"{run.name}?")
    lines = [""]
    for height, names in [*at.items(), ("found z", ["______"])]:
        for number, name in enumerate(names):
            joined = f"{lines[-1]}, {name if number else f'{height} {name}'}" if lines[-1] else f"{height} {name}"
            lines = [*lines[:-1], joined] if len(joined) <= LINE else [*lines, f"{height} {name}"]
    return lines
