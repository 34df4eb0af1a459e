"""The words in which layout tells where things are: lengths, angles, moves, names in a row."""

from __future__ import annotations

from collections.abc import Sequence
from math import pi

from boxwright.disciplines.layout.result import Shift
from boxwright.finding import Finding, Use
from boxwright.finding import listed as in_a_row
from boxwright.units import HeaderUnits, read_exact, show

GEOMETRY = "first-principles"
PRACTICE = "fitting-practice"
WAYS = (("forward", "rearward"), ("to the left", "to the right"), ("down", "up"))
AXES = ("of length", "of width", "of height")
MOST_NAMES = 4
DEGREE = pi / 180.0


def length(metres: float, shown_in: HeaderUnits) -> str:
    """Return a length as it is marked out: to a sixteenth of an inch or a millimetre."""
    return show(metres, "length", shown_in, cuts=True)


def whole_sheet(shown_in: HeaderUnits) -> str:
    """Return the size a whole sheet is taken to have, as it is called where one buys it."""
    return "4 x 8 ft" if shown_in.length in {"in", "ft"} else "1220 x 2440 mm"


def sizes(size: Sequence[float], shown_in: HeaderUnits) -> str:
    """Return lengths in a row, such as those of a box, with their unit once where they share it."""
    words = [length(side, shown_in) for side in size]
    if len({word.rpartition(" ")[2] for word in words}) == 1:
        words = [*(word.rpartition(" ")[0] for word in words[:-1]), words[-1]]
    return " x ".join(words)


def angle(turned: float, shown_in: HeaderUnits) -> str:
    """Return an angle as it is written."""
    return show(turned, "angle", shown_in)


def got_to(reached: float, whole: float, turns: bool, shown_in: HeaderUnits) -> str:
    """Return how far something gets before it is stopped: at once where that is less than half a degree, or a mark."""
    if turns:
        told = f"after {angle(reached, shown_in)} of {angle(whole, shown_in)}"
        return "at once" if reached < DEGREE / 2.0 else told
    if length(reached, shown_in) == length(0.0, shown_in):
        return "at once"
    return f"after {length(reached, shown_in)} of {length(whole, shown_in)}"


def listed(names: Sequence[str]) -> str:
    """Return names in a row, of many the first ones and how many more."""
    return in_a_row(names, MOST_NAMES)


def rounded_up(metres: float, shown_in: HeaderUnits) -> float:
    """Return a length taken on to the next whole mark of a tape, so that what is moved by it is clear."""
    step = read_exact("1/16 in" if shown_in.length in {"in", "ft"} else "1 mm", "length", shown_in)
    count = abs(metres) / step
    whole = int(count)
    whole += count - whole > 1e-6
    return whole * step


def moving(shift: Shift | None, shown_in: HeaderUnits) -> str:
    """Return the least move in words, empty where there is none."""
    if shift is None:
        return ""
    by, way = length(rounded_up(shift.by, shown_in), shown_in), WAYS[shift.axis][shift.by > 0.0]
    return f"Move {shift.name} {by} {way}: in this load state it is clear of everything there"


def lever(shift: Shift | None) -> str:
    """Return the path and the way of the least move, empty where there is none."""
    if shift is None:
        return ""
    return f"{shift.of}.{('x', 'side', 'z')[shift.axis]} {'up' if shift.by > 0.0 else 'down'}"


def asking(
    code: str, where: str, says: str, act: str, uses: tuple[Use, ...], because: tuple[str, ...] = (),
    could_stop: bool = False, could_limit: bool = False,
) -> Finding:  # fmt: skip
    """Return a question: what cannot be judged, and what to write or to measure."""
    return Finding(
        code, where, "unknown", says, source=GEOMETRY, act=act, minutes=5, could_stop=could_stop,
        could_limit=could_stop or could_limit, uses=uses, because=because,
    )  # fmt: skip


def name_of(path: str) -> str:
    """Return the name in a path."""
    return path.partition("[")[2].removesuffix("]")
