"""Where on a wall a finding of the frame is shown: the sign of a fault with the number it has on every sheet."""

from __future__ import annotations

from boxwright.disciplines.frame.drawn import Drawn, Eye
from boxwright.disciplines.frame.result import Fastening, Hole, Member
from boxwright.drawing import Grid, Mark, Symbol, Text
from boxwright.finding import Finding
from boxwright.records import dataclass

KINDS = {"stop": "Stop", "limit": "Limit", "fix": "Fix", "unknown": "Not known", "advice": "Advice"}


@dataclass(frozen=True, slots=True)
class Fault:
    """A finding at a place of a wall (m)."""

    number: int
    finding: Finding
    wall: str
    along: float
    up: float


def placed_faults(drawn: Drawn) -> tuple[Fault, ...]:
    """Return the findings that have a place on a wall."""
    found = []
    for number, finding in drawn.faults():
        place = _place(drawn, finding)
        places = [place] if place is not None else _ends(drawn, finding)
        found += [Fault(number, finding, *one) for one in places]
    return tuple(found)


def is_about(where: str, of: str) -> bool:
    """Return whether a rig path is that of a thing or of something in it."""
    return bool(of) and (where == of or where.startswith((f"{of}.", f"{of}[")))


def _place(drawn: Drawn, finding: Finding) -> tuple[str, float, float] | None:
    where = finding.where
    for hole in drawn.frame.holes:
        if is_about(where, hole.of) and hole.is_placed:
            return _at_hole(hole)
    for one in drawn.frame.fastenings:
        if is_about(where, one.of) and one.points:
            return _at_fastening(drawn, one)
    for fault in drawn.frame.faults:
        if where in (fault.of, fault.other):
            wall = drawn.frame.wall(fault.wall)
            return fault.wall, fault.value, _middle(wall.foot, wall.top) if wall is not None else 0.0
    for member in drawn.frame.members:
        if where == member.seen_in != "" and _is_off(member):
            return _at_member(member)
    for inside in drawn.frame.intrusions:
        if is_about(where, inside.of):
            return "floor", _middle(inside.low[0], inside.high[0]), _middle(inside.low[1], inside.high[1])
    for backing in drawn.frame.backings:
        if is_about(where, backing.of):
            return backing.wall, _middle(backing.low, backing.high), _middle(backing.bottom, backing.top)
    return None


def _ends(drawn: Drawn, finding: Finding) -> list[tuple[str, float, float]]:
    """Return where a fault of all bows is seen: at the top of both end walls, in the middle."""
    if not is_about(finding.where, "frame.bows"):
        return []
    ends = [one for one in drawn.frame.walls if one.name in ("front", "rear")]
    return [(one.name, _middle(one.low, one.high), one.top) for one in ends]


def _middle(low: float, high: float) -> float:
    return (low + high) / 2.0


def _at_hole(hole: Hole) -> tuple[str, float, float]:
    """Return where a fault of an opening is seen: at a member that it cuts, else at its upper edge."""
    along = next((cut.at.best for cut in hole.members_cut), _middle(hole.low, hole.high))
    return hole.wall, along, hole.top


def _at_fastening(drawn: Drawn, one: Fastening) -> tuple[str, float, float]:
    point = next((point for point in one.points if not point.catches), one.points[0])
    wall = drawn.frame.wall(one.wall)
    up = point.up if point.up is not None else _middle(wall.foot, wall.top) if wall is not None else 0.0
    return one.wall, point.at, up


def _is_off(member: Member) -> bool:
    """Return whether a member was found elsewhere than ordered: what a finding about a whole tape is most about."""
    return member.planned is not None and member.built is not None and member.built.best != member.planned


def _at_member(member: Member) -> tuple[str, float, float]:
    middle = _middle(member.low, member.high)
    return (member.wall, member.at.best, middle) if member.runs == "up" else (member.wall, middle, member.at.best)


def fault_marks(faults: tuple[Fault, ...], eye: Eye) -> list[Mark]:
    """Return the signs of the faults of a wall, each with its number."""
    together: dict[tuple[float, float], list[Fault]] = {}
    for one in faults:
        if one.wall == eye.wall.name:
            together.setdefault((one.along, one.up), []).append(one)
    marks: list[Mark] = []
    for (along, up), here in together.items():
        at, where = eye.at(along, up), here[0].finding.where
        numbers = ", ".join(str(one.number) for one in here)
        marks += [Symbol(at, "fault", where), Text(at, f"fault {numbers}", where, "small")]
    return marks


def fault_notes(faults: tuple[Fault, ...], wall: str) -> tuple[str, ...]:
    """Return the words of the faults of a wall."""
    return tuple(f"Fault {one.number}: {one.finding.says}" for one in faults if one.wall == wall)


def fault_grid(drawn: Drawn) -> Grid:
    """Return all that the frame has found wrong or open, with the number each has on the drawings."""
    faults = drawn.faults()
    rows = tuple((str(number), KINDS[one.kind], one.says, one.act or one.remedy, one.where) for number, one in faults)
    return Grid("", ("No.", "Kind", "What", "Do", "In the file"), rows, tuple(one.where for _, one in faults))
