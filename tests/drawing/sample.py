"""A sheet such as a trailer builder gets: a side wall with its studs, a door, a window, its layers and its notes."""

from __future__ import annotations

from boxwright.drawing import TO_TICK, Dimension, Grid, Leader, Line, Mark, Shape, Sheet, Symbol, Text, View
from boxwright.drawing.mark import Fill, LineKind, Point
from boxwright.drawing.paper import TitleBlock

IN = 0.0254
TITLE = TitleBlock(
    rig="Whimbrel",
    subject="as it stands today: liners, half done",
    revision="D",
    on="2026-05-02",
    units="inches, fractions to 1/16",
    cautions=(
        "The tool computes from what it was told; scales, tape and the local authority outrank it.",
        "Mains, gas and structural welding by licensed or competent people under local code.",
        "Nobody rides in the trailer; never sleep with a running engine or flame.",
    ),
    is_imperial=True,
)


def inches(value: float) -> str:
    """Return a length in inches and sixteenths, as it is written on a tape."""
    whole, sixteenths = divmod(round(value * 16), 16)
    below = 16
    while sixteenths and sixteenths % 2 == 0:
        sixteenths, below = sixteenths // 2, below // 2
    pieces = [f"{whole}"] if whole or not sixteenths else []
    return " ".join([*pieces, f"{sixteenths}/{below}"] if sixteenths else pieces)


def rectangle(x: float, z: float, wide: float, high: float, line: LineKind, of: str, fill: Fill = "none") -> Shape:
    """Return an upright rectangle, given in inches by its left lower corner."""
    corners: tuple[Point, ...] = ((x, z), (x + wide, z), (x + wide, z + high), (x, z + high))
    return Shape(tuple((a * IN, b * IN) for a, b in corners), line, of, fill)


def at(x: float, z: float) -> Point:
    """Return a point given in inches."""
    return x * IN, z * IN


def wall() -> View:
    """Return the left wall from outside: front to the left, a stud every 16 in, a door and a window."""
    long, high = 168.0, 78.0
    marks: list[Mark] = [rectangle(0, 0, long, high, "visible", "walls.left")]
    studs = [number * 16.0 for number in range(11)]
    for number, x in enumerate(studs):
        of = f"frame.studs.left.{number}"
        marks.append(rectangle(max(0.0, x - 0.5), 0, 1 if x else 0.5, high, "hidden", of, "metal"))
        marks.append(Dimension(at(0, 0), at(x, 0), inches(x), of, "below", 0, True))
        marks.append(Text(at(x, high + 3), f"L{number}", of, "small"))
    for name, x, z, wide, tall, word in (
        ("side-door", 17, 2, 30, 72, "side door 30 x 72"),
        ("left-window", 97, 38, 30, 18, "window 30 x 18"),
    ):
        of = f"openings.{name}"
        marks.append(rectangle(x, z, wide, tall, "cut", of, "hole"))
        marks.append(Text(at(x + wide / 2, z + tall / 2), word, of))
        marks.append(Dimension(at(0, high), at(x, high), inches(x), of, "above", 0))
        marks.append(Dimension(at(x, high), at(x + wide, high), inches(wide), of, "above", 0))
        marks.append(Dimension(at(x, z), at(x, z + tall), inches(tall), of, "right", 0))
        marks.append(Dimension(at(x, 0), at(x, z), inches(z), of, "right", 0))
    marks.append(Dimension(at(0, 0), at(0, high), inches(high), "trailer.body.height", "left", 0))
    marks.append(Dimension(at(0, high), at(long, high), inches(long), "trailer.body.length", "above", 1))
    marks.append(rectangle(128, 27, 38, 6, "hidden", "bunk-backing", "backing"))
    marks.append(Leader(at(140, 30), "backing 3/4 ply, 6 high, for the bunk hinges", "bunk-backing"))
    cut = "stud L7 is cut: header and sill, or slide 1/2 in rearward"
    marks.append(Leader(at(112, 38), cut, "openings.left-window"))
    marks.append(Symbol(at(112, 47), "fault", "openings.left-window"))
    marks.append(Symbol(at(12, -8), "front", "trailer", "left"))
    marks.append(Symbol(at(0, 0), "datum", "trailer"))
    marks.append(Line(at(0, 36), at(long, 36), "centre", "level-line"))
    marks.append(Text(at(160, 36), "level line 36", "level-line", "small"))
    for x in (130, 134, 146, 150, 160, 164):
        marks.append(Symbol(at(x, 30), "screw", "bunk-backing"))
    datum = "the front wall's stud face and the deck"
    return View("Left wall, outside", "seen from the street side", tuple(marks), datum)


def sheet() -> Sheet:
    """Return the sample sheet."""
    layers = Grid(
        "Layers, from the skin inwards",
        ("layer", "of", "thick", "stands", "checked"),
        (
            ("skin", "aluminium", "0.040", "yes", TO_TICK),
            ("foam", "XPS between studs", "1 1/2", "yes, 2026-04-18", TO_TICK),
            ("strip", "foam tape over studs", "1/4", "yes, 2026-04-19", TO_TICK),
            ("liner", "ply", "1/4", "front half up to stud 6", TO_TICK),
        ),
        ("walls.left.layers.skin", "walls.left.layers.foam", "walls.left.layers.strip", "walls.left.layers.liner"),
    )
    notes = (
        "Studs are drawn as built where a tape entry stands, else as ordered.",
        "Do not cut a stud that is not marked.",
    )
    return Sheet("left-outside", "Left wall, outside", (wall(),), notes, (layers,))
