"""The words of a remedy: what to do, in the builder's own units, and what is said where nothing can be done."""

from __future__ import annotations

from collections.abc import Sequence

from boxwright.finding import Finding
from boxwright.units import HeaderUnits, show

DIRECTIONS = (("forward", "rearward"), ("to the left", "to the right"))


def moved(name: str, shift: float, axis: int, key: str, text: str, header: HeaderUnits) -> str:
    """Return a move: what, how far, which way, and how its new place is written."""
    return f"{name} {show(abs(shift), 'm', header, cuts=True)} {DIRECTIONS[axis][shift > 0.0]} ({key}: {text})"


def moving(moves: Sequence[str]) -> str:
    """Return several moves as one thing to do."""
    return "Move " + ", and ".join(moves)


def emptied(name: str, kg: float, header: HeaderUnits) -> str:
    """Return that a tank is to be emptied."""
    return f"Empty {name} before leaving ({show(kg, 'kg', header)} less)"


def left(names: Sequence[str], kg: float, header: HeaderUnits) -> str:
    """Return that something is to stay behind."""
    listed = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
    them = "it" if len(names) == 1 else "them"
    return f"Leave {listed} behind, or carry {them} in the tow vehicle ({show(kg, 'kg', header)})"


def weigh_first(name: str, kg: float, header: HeaderUnits) -> str:
    """Return what to weigh first, with the mass from which it alone decides."""
    return f"Weigh {name} first: by itself it crosses the limit from {show(kg, 'kg', header)} on"


def legs_lowered() -> str:
    """Return that the rear legs come down before anybody boards."""
    return "Put the rear legs down before anybody boards (legs: down)"


def kept_coupled() -> str:
    """Return that the trailer stays hitched while somebody is in it."""
    return "Leave it coupled to the tow vehicle while anybody is aboard (coupled: yes)"


def range_looked_over(finding: Finding, best: float, is_least: bool, header: HeaderUnits) -> str:
    """Return the definite no: the best that can be reached beside what is needed."""
    reached, needed = (show(value, finding.unit, header) for value in (best, finding.limit or 0.0))
    return (
        "Not by moving, leaving or emptying anything that may be moved: the best that can be reached is "
        f"{reached}; {needed} is {'needed' if is_least else 'allowed'}"
    )


def nothing_found() -> str:
    """Return the plain no where a load alone could be put right, but no change tried did so without harm."""
    return "No move, leaving behind or emptying tried is enough without a new stop, limit or question in some slot"


def with_weight(says: str, added: float | None, header: HeaderUnits) -> str:
    """Return a no with what weight at the front wall would be enough, where any would."""
    if added is None:
        return says
    return f"{says}; {show(added, 'kg', header)} more at the front wall would be, if all ratings still hold"
