"""What a finding can be cured by: which load must rise or fall, by how much, and what each kilogram does to it.

A finding names its lever in two words, a load and a direction: ``tongue up``, ``tongue down``, ``gross down``,
``left down``, ``nose down``. Where it says it in other words, the load follows from its code. A rating is a limit
from above; for a share the direction follows from the side of the limit its number is on.
"""

from __future__ import annotations

from math import isfinite
from typing import Literal, NamedTuple

from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.geometry import loads_of, measures_of
from boxwright.disciplines.weight.linear import GROSS, Coefficients
from boxwright.disciplines.weight.result import Output
from boxwright.finding import Finding
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits, read_exact, shown_unit

Load = Literal["tongue", "share", "gross", "wheels", "axle", "wheel", "left", "nose"]

LOAD_OF: dict[str, Load] = {
    "weight/tongue-lifts": "tongue",
    "weight/sides-differ": "left",
    "weight/tips-up": "nose",
    "towing/tongue-share": "share",
    "towing/tongue-over-rating": "tongue",
    "towing/payload": "tongue",
    "towing/gross-over-plate": "gross",
    "towing/coupler-over-rating": "gross",
    "towing/tow-rating": "gross",
    "towing/unbraked-limit": "gross",
    "towing/combination": "gross",
    "towing/wheels-over-axles": "wheels",
    "towing/tyre-overloaded": "wheel",
    "towing/axle-overloaded": "axle",
}
"""The load a rule is about, for findings that name their lever in other words."""

WORDS: dict[str, Load] = {
    "tongue": "tongue", "share": "share", "gross": "gross", "wheels": "wheels", "left": "left", "nose": "nose",
}  # fmt: skip

MARGIN = 1e-6
"""How far beyond a limit a change aims, of the change itself: a value on the limit is not inside it."""

SHARE_STEP = 0.001
"""One step of a share as it is shown: a tenth of a per cent."""


class Lever(NamedTuple):
    """The load that must change, and whether it must rise; of which axle, and of a wheel on which side."""

    load: Load
    is_up: bool
    axle: int = 0
    side: str = ""

    @property
    def words(self) -> str:
        """Return the lever as a finding writes it."""
        return f"{self.load} {'up' if self.is_up else 'down'}"


class Pull(NamedTuple):
    """What one kilogram, and a kilogram metre along x and y, does to the load of a lever; and what is wanted of it.

    ``wanted`` is how much the load must change to clear the finding whatever the doubt, ``at_least`` how much so that
    it is a question and no breach any more. Both count in the lever's direction. ``is_open`` says that something nobody
    has weighed reaches across the limit: no change of what is weighed clears the finding for certain. ``times`` is how
    many of the finding's number the load is: two where twin tyres share a wheel's.
    """

    per: Coefficients
    wanted: float
    at_least: float
    is_open: bool = False
    times: float = 1.0

    def by_moving(self, axis: int, is_up: bool) -> float:
        """Return how much a kilogram metre along x (0) or y (1) moves the load in the wanted direction."""
        return (self.per.per_x, self.per.per_y)[axis] * (1.0 if is_up else -1.0)


def lever_of(finding: Finding, slot: Slot) -> Lever | None:
    """Return the lever of a finding, None where no load can clear it."""
    word, _, direction = finding.lever.partition(" ")
    if word in WORDS and direction in {"up", "down"}:
        return Lever(WORDS[word], direction == "up")
    load = LOAD_OF.get(finding.code)
    if load is None or slot.weight is None:
        return None
    if load == "wheel":
        wheels = slot.towing.wheels if slot.towing is not None else ()
        worst = max(wheels, key=lambda wheel: (wheel.reading.best, wheel.reading.band.high), default=None)
        return Lever("wheel", False, worst.axle - 1, worst.side) if worst is not None else None
    if load == "left":
        return Lever("left", slot.weight.left.band.best < slot.weight.right.band.best)
    if load == "nose" or finding.code == "weight/tongue-lifts":
        return Lever(load, True)
    if finding.number is None or finding.limit is None:
        return None
    is_up = load == "share" and is_least(finding)
    axle = finding.where.partition("gawr[")[2].partition("]")[0]
    return Lever(load, is_up, int(axle) if axle.isdigit() else 0)


def is_least(finding: Finding) -> bool:
    """Return whether the limit of a finding is a least; all ratings are limits from above, a share has one at each end.

    What is within both limits but in doubt is told apart by the margin, which is positive on the safe side.
    """
    if finding.number is None or finding.limit is None:
        return False
    is_below = finding.number < finding.limit
    return is_below if finding.margin is None else (finding.margin < 0.0) == is_below


def pull_of(finding: Finding, lever: Lever, slot: Slot) -> Pull | None:
    """Return what moves the load of a lever, None where coupler or axles have no place or nothing is needed."""
    if slot.weight is None or slot.box is None:
        return None
    geometry = measures_of(slot.box, slot.ball_height).best
    if geometry is None:
        return None
    try:
        loads = loads_of(geometry)
    except method.OutOfRange:
        return None
    weight, limit = slot.weight, finding.limit or 0.0
    if lever.axle >= len(weight.axles):
        return None
    if lever.load == "left":
        per = loads.left.plus(loads.right, -1.0)
        gap = abs(weight.left.band.best - weight.right.band.best) - limit
        return _pull(per, gap, gap)
    if lever.load == "nose":
        tip = _tip(slot)
        if tip is None:
            return None
        # The margin is weight times how far it is ahead of the pivot: each metre rearward takes a kilogram metre off.
        return _pull(Coefficients(0.0, -1.0), *_short(tip.band.low, tip, 0.0, True))
    if lever.load == "wheel":
        is_left, axle = lever.side == "left", lever.axle
        wheel = (weight.axles_left if is_left else weight.axles_right)[axle]
        times = max(1, round(wheel.band.best / finding.number)) if finding.number else 1
        short = _short(wheel.band.high, wheel, limit * times, False)
        found = _pull((loads.axles_left if is_left else loads.axles_right)[axle], *short)
        return found._replace(times=float(times)) if found is not None else None
    output, per = {
        "tongue": (weight.tongue, loads.tongue),
        "share": (weight.share, _of_share(loads.tongue, weight.share.band.best, weight.gross.band.best)),
        "gross": (weight.gross, GROSS),
        "wheels": (weight.on_wheels, loads.on_wheels),
        "axle": (weight.axles[lever.axle], loads.axles[lever.axle]),
    }[lever.load]
    limit += _beside(finding, output)
    return _pull(per, *_short(output.band.low if lever.is_up else output.band.high, output, limit, lever.is_up))


def _beside(finding: Finding, output: Output) -> float:
    """Return what a rule's own number has beside the load: people in the vehicle, the vehicle itself; taken off."""
    return 0.0 if finding.number is None else output.band.best - finding.number


def _of_share(tongue: Coefficients, share: float, gross: float) -> Coefficients:
    """Return what each kilogram does to the tongue's share of the weight, at the best values."""
    if gross <= 0.0:
        return Coefficients(0.0)
    return Coefficients(*(part / gross for part in tongue._replace(per_kg=tongue.per_kg - share, constant=0.0)))


def _tip(slot: Slot) -> Output | None:
    parked = slot.weight.parked if slot.weight is not None else None
    if parked is None:
        return None
    tip = parked.legs_down if parked.legs_are_down and parked.legs_down is not None else parked.legs_up
    return tip.holds(slot.use)


def _short(bad_end: float, output: Output, limit: float, is_up: bool) -> tuple[float, float, bool]:
    """Return how far the bad end of a band, and its best value at the permitted extremes, are outside a limit.

    The third says that what has no weight takes the bad end with it: there it is left out, and the doubt of all else
    is kept.
    """
    sign = 1.0 if is_up else -1.0
    edge = output.permitted_low if is_up else output.permitted_high
    short = sign * (limit - edge)
    whole = sign * (limit - bad_end)
    weighed = short + output.half_width
    is_open = not isfinite(whole) or (not output.band.known and whole > weighed + MARGIN * abs(weighed))
    return (weighed if is_open else whole), short, is_open


def aims(pull: Pull, lever: Lever, header: HeaderUnits) -> tuple[float, ...]:
    """Return how much a change of a load aims at, inside the limit by a margin, what clears it for certain first.

    The margin is one step of the number as it is shown: what is moved to stand on the limit itself is not inside it.
    """
    step = SHARE_STEP
    if lever.load != "share":
        step = read_exact(f"1 {shown_unit('mass', header)[0]}", "mass", header) * pull.times
    return tuple(dict.fromkeys(end + step for end in (pull.wanted, pull.at_least) if end > 0.0))


def _pull(per: Coefficients, wanted: float, at_least: float, is_open: bool = False) -> Pull | None:
    if wanted <= 0.0 and at_least <= 0.0:
        return None
    return Pull(per, max(wanted, at_least) * (1.0 + MARGIN), max(at_least, 0.0) * (1.0 + MARGIN), is_open)


class BreakEven(NamedTuple):
    """The mass of an unweighed part at which a limit is crossed (kg); above it where ``is_from``, else below."""

    of: str
    kg: float
    is_from: bool


def break_even(finding: Finding, lever: Lever, slot: Slot) -> tuple[BreakEven, ...]:
    """Return, for each part nobody has weighed, from which mass on it alone would cross the limit, the least first.

    With the load at its best value Q, the limit L and c what each kilogram of the part gives, the mass is (L - Q) / c;
    of a share s of the gross weight G, (s G - T) / (c - s).
    """
    if slot.weight is None or slot.box is None or finding.limit is None:
        return ()
    geometry = measures_of(slot.box, slot.ball_height).best
    if geometry is None:
        return ()
    tongue = loads_of(geometry).tongue
    gross, ball = slot.weight.gross.band.best, slot.weight.tongue.band.best
    found = []
    for mass in slot.masses:
        if mass.kg.known or not (mass.x.known and mass.z.known):
            continue
        own = tongue.at((mass.x.best, mass.y.best, mass.z.best))
        short, gives = {
            "tongue": (finding.limit - ball, own),
            "share": (finding.limit * gross - ball, own - finding.limit),
            "gross": (finding.limit - gross, 1.0),
            "wheels": (finding.limit - (gross - ball), 1.0 - own),
        }.get(lever.load, (0.0, 0.0))
        if gives and short / gives > 0.0:
            found.append(BreakEven(mass.of, short / gives, True))
    return tuple(sorted(found, key=lambda one: (one.kg, one.of)))
