"""The words of a remedy: what to do, in the builder's own units, and what is said where nothing can be done."""

from __future__ import annotations

from collections.abc import Sequence

from boxwright.finding import Finding
from boxwright.study.spoken import listed
from boxwright.units import HeaderUnits, show

DIRECTIONS = (("forward", "rearward"), ("to the left", "to the right"))
OPENING_WAYS = {"x": DIRECTIONS[0], "side": DIRECTIONS[1], "z": ("down", "up")}


def moved(name: str, shift: float, axis: int, key: str, text: str, header: HeaderUnits, is_lifted: bool = False) -> str:
    """Return a move: what, how far, which way, whether past what stands between, and how its new place is written."""
    past = ", lifted past what stands between" if is_lifted else ""
    return f"{name} {show(abs(shift), 'm', header, cuts=True)} {DIRECTIONS[axis][shift > 0.0]}{past} ({key}: {text})"


def moving(moves: Sequence[str]) -> str:
    """Return several moves as one thing to do."""
    return "Move " + ", and ".join(moves)


def out_for_the_night(names: Sequence[str]) -> str:
    """Return that some things are to be put outside before somebody goes to bed."""
    return f"Take {' and '.join(names)} out of the trailer for the night"


def filled(name: str, level: str, was: str, kg: float, is_towed: bool, header: HeaderUnits) -> str:
    """Return that a tank is to be carried at another level; ``was`` is empty where nobody has written its level."""
    how = level if level in {"full", "empty"} else f"at {level}"
    now = f"instead of {was}" if was else "where its level is not said now"
    more = f", {show(abs(kg), 'kg', header)} {'more' if kg > 0.0 else 'less'}" if was else ""
    return f"{'Carry' if is_towed else 'Keep'} {name} {how} {now} ({name}: {level}{more})"


def pumped(name: str, other: str, volume: float, level: str, other_level: str, header: HeaderUnits) -> str:
    """Return that water is to be taken from one tank to another, and how full both are then."""
    return f"Pump {show(volume, 'volume', header)} from {name} into {other} ({name}: {level}, {other}: {other_level})"


def emptied_too(names: Sequence[str], tanks: Sequence[str], kg: float, header: HeaderUnits) -> str:
    """Return that tanks are to be emptied, and something is to stay behind."""
    emptying = f"mpty {_listed(tanks)} before leaving"
    if not names:
        return f"E{emptying} ({show(kg, 'kg', header)} less)"
    return f"Leave {_listed(names)} behind, and e{emptying} ({show(kg, 'kg', header)})"


def left(names: Sequence[str], kg: float, header: HeaderUnits) -> str:
    """Return that something is to stay behind."""
    return f"Leave {_listed(names)} behind ({show(kg, 'kg', header)})"


def or_carried(says: str, count: int, vehicle: str) -> str:
    """Return that what is to stay behind may as well go in the tow vehicle, of which that was proved."""
    them = "it" if count == 1 else "them"
    return says.replace(" behind", f" behind, or carry {them} in {vehicle}", 1)


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def weigh_first(name: str, kg: float, header: HeaderUnits) -> str:
    """Return what to weigh first, with the mass from which it alone decides."""
    return f"Weigh {name} first: by itself it crosses the limit from {show(kg, 'kg', header)} on"


def then_weigh(name: str, kg: float, header: HeaderUnits) -> str:
    """Return what to weigh after a change that leaves a question, with the mass from which the answer turns."""
    return f"then weigh {name} first: by itself it crosses the limit from {show(kg, 'kg', header)} on"


def then_weigh_all(limit: float, unit: str, is_least: bool, header: HeaderUnits) -> str:
    """Return that the loaded trailer is to be weighed after a change whose doubt still reaches the limit."""
    return f"then weigh it loaded first, axles and tongue: {show(limit, unit, header)} is {_asked(is_least)}"


def _asked(is_least: bool) -> str:
    return "needed" if is_least else "allowed"


def legs_lowered() -> str:
    """Return that the rear legs come down before anybody boards, or before it is left."""
    return "Put the rear legs down before anybody boards or leaves it (legs: down)"


def kept_coupled() -> str:
    """Return that the trailer stays hitched, with somebody in it or with nobody."""
    return "Keep it coupled to the tow vehicle (coupled: yes)"


def range_looked_over(finding: Finding, best: float, is_least: bool, header: HeaderUnits) -> str:
    """Return the definite no: the best that can be reached beside what is needed."""
    reached, needed = (show(value, finding.unit, header) for value in (best, finding.limit or 0.0))
    return (
        "Not by moving, leaving, emptying or filling anything that may be: the best that can be reached is "
        f"{reached}; {needed} is {_asked(is_least)}"
    )


def nothing_found() -> str:
    """Return the plain no where a load alone could be put right, but no change tried did so without harm."""
    tried = "No move, leaving behind, emptying or filling tried"
    return f"{tried} is enough without a new stop, limit or question in some slot"


def with_weight(says: str, added: float | None, header: HeaderUnits) -> str:
    """Return a no with what weight at the front wall would be enough, where any would."""
    if added is None:
        return says
    return f"{says}; {show(added, 'kg', header)} more at the front wall would be, if all ratings still hold"


def opening_moved(name: str, ways: Sequence[tuple[str, str, float]], where: str, header: HeaderUnits) -> str:
    """Return where an opening goes: how far and which way along each axis, how its place is written, and where that is.

    A way is its key, the new text and the shift (m).
    """
    said = " and ".join(
        f"{show(abs(shift), 'm', header, cuts=True)} {OPENING_WAYS[key][shift > 0.0]}, to "
        f"{'z ' if key == 'z' else ''}{text}"
        for key, text, shift in ways
    )
    return f"Move {name} {said}: {where}"


def between(members: tuple[str, str]) -> str:
    """Return the bay a clear place is in, by the members on both sides."""
    return f"between {members[0]} and {members[1]}"


def inside_wall(wall: str) -> str:
    """Return that a place is within its wall."""
    return f"inside the {wall} wall"


def fasteners_moved(what: str, name: str, moves: Sequence[tuple[float, float]], header: HeaderUnits) -> str:
    """Return which fasteners of a part go where, each onto metal of its own."""
    said = ", ".join(
        f"{show(old, 'm', header, cuts=True)} to {show(new, 'm', header, cuts=True)}" for old, new in moves
    )
    return f"Move the {what} of {name} from {said}"


def pattern_slid(what: str, name: str, shift: float, header: HeaderUnits) -> str:
    """Return how far and which way all fasteners of a part go as one."""
    return f"Slide the {what} of {name} {show(abs(shift), 'm', header, cuts=True)} {DIRECTIONS[0][shift > 0.0]} as one"


def part_slid(what: str, name: str, shift: float, text: str, header: HeaderUnits) -> str:
    """Return how far and which way a part goes together with its fasteners, and how its new place is written."""
    far = f"{show(abs(shift), 'm', header, cuts=True)} {DIRECTIONS[0][shift > 0.0]}"
    return f"Slide {name} with its {what} {far} as one (x: {text})"


def backing_needed(name: str, backing: str, places: Sequence[float], header: HeaderUnits) -> str:
    """Return what holds fasteners that no metal is free for: the backing behind the part, or one to be put there."""
    at = " and ".join(show(place, "m", header, cuts=True) for place in places)
    strip = f"screw into {backing} there" if backing else "put a backing strip there"
    its = "its fasteners" if len(places) > 1 else "its fastener"
    return f"No metal within the ends of {name} is free for {its} at {at}: {strip}"


def then_done(act: str) -> str:
    """Return what to do after a change that leaves a question: what the question itself asks to be done."""
    return f"then {act[:1].lower()}{act[1:]}" if act else ""


def look_and_tick(paths: Sequence[str]) -> str:
    """Return what to do about things that are there perhaps."""
    each = "it" if len(paths) == 1 else "each"
    return f"Look whether {listed(paths)} {'is' if len(paths) == 1 else 'are'} in, and tick {each}: done: yes or no"


def release_fitted(name: str, stage: str, is_now: bool) -> str:
    """Return that a release is to be fitted, and how that is written."""
    return f"Fit {name} now, and tick it (done: yes)" if is_now else f"Fit {name} at stage {stage} (stage: {stage})"


def release_made(name: str) -> str:
    """Return that an opening is to get a release inside."""
    return f"Fit a release inside {name} that opens it while it is barred outside (release: inside)"


def put_out_at_night(name: str) -> str:
    """Return that a thing is to stand outside while somebody sleeps."""
    return f"Put {name} outside for the night (when_sleeping: out)"


def taken_out(name: str, load: str) -> str:
    """Return that a thing is not to be aboard in a load state."""
    return f"Take {name} out before the trailer is left (out: of load {load})"


def brought_at(names: Sequence[str], stage: str) -> str:
    """Return that some things are to be brought in at an earlier stage, while there is a way."""
    return f"Bring {_listed(names)} in at stage {stage}, while there is a way"


def hole_closed(name: str) -> str:
    """Return that an opening is to be finished."""
    return f"Fit what goes into {name}, seal it and tick it (done: yes)"
