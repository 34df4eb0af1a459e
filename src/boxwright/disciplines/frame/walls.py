"""The planes of the shell: four walls, roof and floor, the slanted walls of a nose, and what of it stands inside."""

from __future__ import annotations

from math import hypot, sqrt
from typing import cast

from boxwright.disciplines.frame.bands import known
from boxwright.disciplines.frame.parts import Framing, Section
from boxwright.disciplines.frame.result import Intrusion, Nose, Roof, Tube, Wall, WallName
from boxwright.exchange import Vector

LETTERS: dict[WallName, str] = {
    "left": "L",
    "right": "R",
    "front": "F",
    "rear": "B",
    "roof": "T",
    "floor": "U",
    "nose-left": "NL",
    "nose-right": "NR",
}
"""How members are numbered on the wall itself; B is the back, T the top, U underneath."""

SIDES = ("left", "right")


def walls_of(section: Section, inside: Vector) -> tuple[Wall, ...]:
    """Return every wall of a body of known length, width and height."""
    length, width, height = inside
    half = width / 2.0
    roof = roof_of(section.framing, height)
    eaves = height - roof.rise if 0.0 <= roof.rise < height else height
    nose = nose_of(section.framing)
    found = [
        _wall(section, roof, "left", (0.0, length), eaves, ((0.0, -half), (length, -half)), (0.0, 1.0)),
        _wall(section, roof, "right", (0.0, length), eaves, ((0.0, half), (length, half)), (0.0, -1.0)),
        _wall(section, roof, "rear", (-half, half), height, ((length, -half), (length, half)), (-1.0, 0.0)),
    ]
    if nose is None:
        found.append(_wall(section, roof, "front", (-half, half), height, ((0.0, -half), (0.0, half)), (1.0, 0.0)))
    else:
        found += _nose_walls(section, roof, nose, half)
    for name, tube in (("roof", section.bow_tube), ("floor", section.cross_tube)):
        ends = ((0.0, -half), (length, -half))
        up = (-half, half)
        found.append(_plane(section, roof, cast(WallName, name), tube, (0.0, length), up, ends, (0.0, 0.0)))
    return tuple(found)


def _wall(
    section: Section,
    roof: Roof,
    name: WallName,
    along: tuple[float, float],
    top: float,
    ends: tuple[tuple[float, float], tuple[float, float]],
    inward: tuple[float, float],
) -> Wall:
    return _plane(section, roof, name, section.stud_tube, along, (0.0, top), ends, inward)


def _plane(
    section: Section,
    roof: Roof,
    name: WallName,
    tube: Tube,
    along: tuple[float, float],
    up: tuple[float, float],
    ends: tuple[tuple[float, float], tuple[float, float]],
    inward: tuple[float, float],
) -> Wall:
    taped = [one for one in section.readings if one.kind == "studs" and one.subject == name]
    newest = max(taped, key=lambda one: (one.on is not None, one.on), default=None)
    skin = section.skin if name != "floor" else None
    return Wall(
        of=f"frame.studs.{name}" if name in ("left", "right", "front", "rear") else "frame",
        name=name,
        letter=LETTERS[name],
        low=along[0],
        high=along[1],
        foot=up[0],
        top=up[1],
        start=ends[0],
        end=ends[1],
        inward=inward,
        tube=tube,
        skin=skin,
        is_taped=newest is not None,
        taped_by=newest.how if newest is not None else "",
        taped_on=newest.on if newest is not None else None,
        roof=roof,
    )


def _nose_walls(section: Section, roof: Roof, nose: Nose, half: float) -> list[Wall]:
    """Return the slanted walls of a nose, each counted from its corner of the body, and its blunt tip."""
    tip = nose.tip / 2.0
    run, rise = nose.length, half - tip
    slant = hypot(run, rise)
    inward = (rise / slant, run / slant)
    found: list[Wall] = []
    for name, sign in (("nose-left", -1.0), ("nose-right", 1.0)):
        ends = ((0.0, sign * half), (-run, sign * tip))
        across = (inward[0], -sign * inward[1])
        found.append(_wall(section, roof, cast(WallName, name), (0.0, slant), roof.height, ends, across))
    if tip > 0.0:
        found.append(_wall(section, roof, "front", (-tip, tip), roof.height, ((-run, -tip), (-run, tip)), (1.0, 0.0)))
    return found


def roof_of(framing: Framing | None, height: float) -> Roof:
    """Return the shape of the roof; where only a rise is written it is arched, where only a radius, rounded."""
    bows = framing.bows if framing is not None else None
    rise = known(bows.rise) if bows is not None else None
    radius = known(bows.radius) if bows is not None else None
    word = bows.shape.strip().lower() if bows is not None else ""
    if word.startswith("arch") or (not word and rise is not None):
        return Roof("arched", height, rise.best if rise is not None else 0.0, 0.0)
    if word.startswith("round") or (not word and radius is not None):
        return Roof("rounded", height, 0.0, radius.best if radius is not None else 0.0)
    return Roof("flat", height, 0.0, 0.0)


def curved_in(
    wall: Wall, along: tuple[float, float], up: tuple[float, float], width: float, flange: float = 0.0
) -> float:
    """Return how far a rectangle of a wall or of the roof reaches into what is round there; nothing where it does not.

    ``width`` is that of the body. An end wall ends under the bow: what reaches beyond is not there. On a side wall, and
    on the roof, a frame with its ``flange`` lies flat only short of a rounded eave.
    """
    roof, half = wall.roof, width / 2.0
    if wall.name in ("front", "rear"):
        ends = (top_at(roof, half, end) for end in along)
        return max(0.0, max(up) - min(ends)) if roof.shape != "flat" else 0.0
    if roof.shape != "rounded" or roof.radius <= 0.0:
        return 0.0
    if wall.name == "roof":
        return max(0.0, max(abs(end) for end in up) + flange - (half - roof.radius))
    if wall.name in ("left", "right"):
        return max(0.0, max(up) + flange - (wall.top - roof.radius))
    return 0.0


def top_at(roof: Roof, half: float, across: float) -> float:
    """Return how high the bows are at a distance from the middle of a body of this half width."""
    off = min(abs(across), half)
    if roof.shape == "arched" and 0.0 < roof.rise < roof.height and half > 0.0:
        radius = (half * half + roof.rise * roof.rise) / (2.0 * roof.rise)
        return roof.height - radius + sqrt(max(radius * radius - off * off, 0.0))
    if roof.shape == "rounded":
        radius = min(max(roof.radius, 0.0), half, roof.height)
        beyond = max(off - (half - radius), 0.0)
        return roof.height - radius + sqrt(max(radius * radius - beyond * beyond, 0.0))
    return roof.height


def reach_at(roof: Roof, half: float, up: float) -> float:
    """Return how far from the middle of a body of this half width the bows are as high as a height, or higher."""
    if up <= top_at(roof, half, half):
        return half
    if up > roof.height:
        return 0.0
    if roof.shape == "arched":
        radius = (half * half + roof.rise * roof.rise) / (2.0 * roof.rise)
        return sqrt(max(radius * radius - (up - roof.height + radius) ** 2, 0.0))
    radius = min(max(roof.radius, 0.0), half, roof.height)
    return half - radius + sqrt(max(radius * radius - (up - roof.height + radius) ** 2, 0.0))


def nose_of(framing: Framing | None) -> Nose | None:
    """Return the nose, where one of known length is written; a tip nobody wrote is sharp."""
    written = framing.nose if framing is not None else None
    length = known(written.length) if written is not None else None
    if written is None or length is None or length.best <= 0.0:
        return None
    tip = known(written.tip)
    return Nose("frame.nose", length.best, max(tip.best, 0.0) if tip is not None else 0.0)


def intrusions_of(framing: Framing | None, inside: Vector) -> tuple[Intrusion, ...]:
    """Return what of the shell stands inside: those whose wall and sizes are written."""
    length, width, _ = inside
    found: list[Intrusion] = []
    for name, one in framing.intrusions if framing is not None else ():
        sizes = [known(size) for size in (one.x, one.length, one.height, one.depth)]
        wall = one.wall.strip().lower()
        if any(size is None for size in sizes) or wall not in ("left", "right", "front", "rear"):
            continue
        at, along, up, deep = (size.best for size in sizes if size is not None)
        z = one.z.best if one.z is not None and one.z.known else 0.0
        half = width / 2.0
        if wall in SIDES:
            edge = -half if wall == "left" else half - deep
            low, high = (at, edge, z), (at + along, edge + deep, z + up)
        else:
            start = 0.0 if wall == "front" else length - deep
            low, high = (start, at - half, z), (start + deep, at - half + along, z + up)
        found.append(Intrusion(f"frame.intrusions[{name}]", name, one.what or "shell", low, high))
    return tuple(found)


def against(intrusion: Intrusion, wall: Wall) -> bool:
    """Return whether an intrusion stands against a wall."""
    if wall.name in SIDES:
        edge = wall.start[1]
        return min(abs(intrusion.low[1] - edge), abs(intrusion.high[1] - edge)) < 1e-6
    if wall.name in ("front", "rear"):
        edge = wall.start[0]
        return min(abs(intrusion.low[0] - edge), abs(intrusion.high[0] - edge)) < 1e-6
    return False


def spanned(intrusion: Intrusion, wall: Wall) -> tuple[float, float, float, float]:
    """Return what an intrusion covers of its wall: along from and to, up from and to."""
    axis = 0 if wall.name in SIDES else 1
    return intrusion.low[axis], intrusion.high[axis], intrusion.low[2], intrusion.high[2]
