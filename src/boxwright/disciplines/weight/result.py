"""The records weight gives: every answer with its band, what is unknown in it, and what widens it most."""

from __future__ import annotations

from datetime import date
from typing import Literal

from boxwright.disciplines.weight.linear import Share
from boxwright.exchange import AxleLoad, Balance, Mass
from boxwright.finding import Use
from boxwright.records import dataclass
from boxwright.units import Band


@dataclass(frozen=True, slots=True)
class Offers:
    """The masses of the parts, ready to be pooled with those other disciplines offer."""

    masses: tuple[Mass, ...]


@dataclass(frozen=True, slots=True)
class Output:
    """One answer. ``half_width`` is its 95 % half-width by the parts' and the trailer's doubts, in quadrature.

    ``band.low`` and ``band.high`` hold, beyond that, everything that is open: fills, parts that stand perhaps, and
    what is unknown. ``permitted_low`` and ``permitted_high`` are the best value at the load state's permitted extremes.
    ``unknown`` names what has no number, by rig path. ``band.known`` is False where there is any.
    """

    of: str
    name: str
    unit: str
    band: Band
    half_width: float
    permitted_low: float
    permitted_high: float
    unknown: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Unweighed:
    """A part whose weight nobody wrote: what each kilogram of it does to the tongue weight, at the least and most."""

    of: str
    what: str
    tongue_low: float
    tongue_high: float


@dataclass(frozen=True, slots=True)
class Perhaps:
    """A part that stands perhaps: what it weighs if it is there (kg), and what it then does to the tongue weight."""

    of: str
    kg: float
    tongue: float


@dataclass(frozen=True, slots=True)
class Tip:
    """The trailer uncoupled, legs up or down, with everybody who may board at its rear end.

    ``margin`` is the moment (kg m) that keeps the nose down; below zero it tips; ``alone`` is the same with nobody in
    it. ``person`` is the one person at the rear wall, alone in the trailer, who lifts the nose (kg); None where the
    rear end is not behind the pivot.
    """

    legs_are_down: bool
    pivot_x: float
    margin: Output
    alone: Output
    person: Output | None

    def holds(self, use: Use) -> Output:
        """Return the margin that counts in a use: nobody is in what is left."""
        return self.alone if use == "leave" else self.margin


@dataclass(frozen=True, slots=True)
class Parked:
    """How the trailer stands while somebody is in it. ``is_coupled`` and ``legs_are_down`` are None if not written.

    ``legs_up`` and ``legs_down`` are the two ways to stand uncoupled; the second is None where the legs' places are
    not known. ``ball`` is what the ball carries with everybody at the rear end while coupled; below zero it is pulled.
    """

    is_coupled: bool | None
    legs_are_down: bool | None
    people: Band
    legs_up: Tip
    legs_down: Tip | None
    ball: Output
    jack: Output


@dataclass(frozen=True, slots=True)
class Compared:
    """Plan against scale. ``agreement`` above 1 is a disagreement; endless where neither has any doubt.

    ``gap`` is measured less planned, beyond what is open. ``weigh_next`` names the parts with the largest share of the
    plan's variance.
    """

    of: str
    what: str
    part: str
    planned: Output
    measured: Band
    gap: float
    agreement: float
    weigh_next: tuple[str, ...]
    on: date | None
    how: str
    plank: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Result:
    """Where the weight of one slot goes. Loads are masses (kg); lengths in m in the rig's datum; axles front to rear.

    ``inertia`` is about the centre of gravity, best value: roll, pitch, yaw (kg m2). ``tongue_widened_by`` lists what
    widens the tongue's band, the widest first. ``assumed`` names the trailer's measures that were taken from its kind.
    """

    of: str
    running_gear: Literal["single", "equalised", "independent"]
    gross: Output
    tongue: Output
    share: Output
    on_wheels: Output
    axles: tuple[Output, ...]
    axles_left: tuple[Output, ...]
    axles_right: tuple[Output, ...]
    left: Output
    right: Output
    centre_x: Output
    centre_y: Output
    centre_z: Output
    inertia: tuple[float, float, float]
    tongue_widened_by: tuple[Share, ...]
    unweighed: tuple[Unweighed, ...]
    unplaced: tuple[str, ...]
    perhaps: tuple[Perhaps, ...]
    unnamed_tanks: tuple[str, ...]
    assumed: tuple[str, ...]
    parked: Parked | None
    compared: tuple[Compared, ...]
    balance: Balance
    axle_loads: tuple[AxleLoad, ...]
