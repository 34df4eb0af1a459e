"""A card for each bay between two studs: what must be in it before it is closed. Other chapters add their lines."""

from __future__ import annotations

from boxwright.disciplines.frame.behind import runs_in
from boxwright.disciplines.frame.drawn import Drawn, Eye
from boxwright.disciplines.frame.result import Bay, Wall
from boxwright.drawing import TO_TICK, Grid, Sheet

WALLS = ("left", "right", "front", "rear", "nose-left", "nose-right")
NOTES = (
    "A bay may be closed when every box is ticked. Where a wire or a pipe runs, no screw goes deeper than the lining.",
    "Wires and pipes stand at their height by the written route; with a ? where the route does not say that it runs so "
    "far.",
    "Photograph it bare, wired and foamed, with the tape in the picture, hooked at the scribed 0.",
)
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
    taped = "taped" if bay.is_built else "ordered"
    rows: list[tuple[Row, str]] = [
        ((TO_TICK, "Clear", f"{ruler.thickness(bay.clear)} {taped}; found ______"), bay.of),
        ((TO_TICK, "Height", f"{ruler.full(wall.top - wall.foot)}; found ______"), wall.of),
    ]
    for hole in drawn.holes_of(wall.name):
        if hole.low < high and hole.high > low:
            where = f"{ruler.mark(hole.low - zero)} to {ruler.mark(hole.high - zero)}"
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
            cut = (
                f"{ruler.mark(high - low)} x {ruler.mark(wall.top - wall.foot)}"
                if piece.where == "bays"
                else piece.where
            )
            what = f"{piece.name} {piece.material} {ruler.thickness(piece.thick)}, {cut}"
            rows.append(((TO_TICK if piece.there != "yes" else "in", "Layer", what), piece.of))
    rows.append((("", "Keep out", f"{_runs(drawn, bay, wall)}found z ______"), bay.of))
    rows.append((("", "Photo", "bare ____ wired ____ foamed ____"), bay.of))
    rows.append(((TO_TICK, "May close", "signed ________ date ________"), bay.of))
    return Grid(title, ("", "", ""), tuple(row for row, _ in rows), tuple(of for _, of in rows))


def _runs(drawn: Drawn, bay: Bay, wall: Wall) -> str:
    """Return what runs through a bay by its route; a question mark where it may not reach so far."""
    along, up = (bay.low.best, bay.high.best), (wall.foot, wall.top)
    found = [
        f"{run.what} {run.name}" + (f" at {drawn.ruler.mark(run.up)}" if run.up is not None else "")
        + ("" if is_sure else "?")
        for run, is_sure in runs_in(drawn, wall.name, along, up)
    ]  # fmt: skip
    return f"{', '.join(found)}; " if found else ""
