"""The records of towing: what is compared with ratings and rules, each number with its band."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Protocol

from boxwright.disciplines.towing.law import Law
from boxwright.disciplines.towing.parts import Fits
from boxwright.model.trailer import TowVehicle, Trailer
from boxwright.records import dataclass
from boxwright.units import Band


class Answer(Protocol):
    """One answer of weight as towing takes it: its band, and its best value at the load state's permitted extremes."""

    @property
    def band(self) -> Band:
        """Return the answer with all its doubt."""

    @property
    def permitted_low(self) -> float:
        """Return the best value at the lowest permitted extreme."""

    @property
    def permitted_high(self) -> float:
        """Return the best value at the highest permitted extreme."""

    @property
    def unknown(self) -> tuple[str, ...]:
        """Return the paths of what has no number."""


class Weighed(Protocol):
    """What weight has worked out for one slot, as far as towing takes it; weight's own result is one."""

    @property
    def gross(self) -> Answer:
        """Return the weight of the trailer with all in it."""

    @property
    def tongue(self) -> Answer:
        """Return the load on the ball."""

    @property
    def share(self) -> Answer:
        """Return the load on the ball as a share of the gross weight."""

    @property
    def on_wheels(self) -> Answer:
        """Return the load on all wheels."""

    @property
    def axles(self) -> tuple[Answer, ...]:
        """Return the load on each axle, front to rear."""

    @property
    def axles_left(self) -> tuple[Answer, ...]:
        """Return the load on the left wheels of each axle."""

    @property
    def axles_right(self) -> tuple[Answer, ...]:
        """Return the load on the right wheels of each axle."""

    @property
    def left(self) -> Answer:
        """Return the load on all left wheels."""

    @property
    def right(self) -> Answer:
        """Return the load on all right wheels."""

    @property
    def centre_z(self) -> Answer:
        """Return the height of the centre of gravity above the deck."""


@dataclass(frozen=True, slots=True)
class Reading:
    """A number to be judged, in SI. ``missing`` are the rig paths without which it has no upper or lower end.

    ``unplaced`` are those of them whose weight is known and whose place is not.
    """

    band: Band
    permitted_low: float
    permitted_high: float
    missing: tuple[str, ...] = ()
    unplaced: tuple[str, ...] = ()

    @property
    def best(self) -> float:
        """Return the best value."""
        return self.band.best

    def plus(self, band: Band) -> Reading:
        """Return the reading with a doubtful number added; the ends add straight, which is the wider answer."""
        own = self.band
        total = replace(
            own,
            best=own.best + band.best,
            low=own.low + band.low,
            high=own.high + band.high,
            known=own.known and band.known,
            spread="interval" if band.low < band.high else own.spread,
            assumed=own.assumed or band.assumed,
        )
        return replace(
            self,
            band=total,
            permitted_low=self.permitted_low + band.best,
            permitted_high=self.permitted_high + band.best,
        )

    def times(self, factor: float) -> Reading:
        """Return the reading multiplied by a number above zero."""
        own = self.band
        scaled = replace(own, best=own.best * factor, low=own.low * factor, high=own.high * factor)
        return replace(
            self,
            band=scaled,
            permitted_low=self.permitted_low * factor,
            permitted_high=self.permitted_high * factor,
        )


@dataclass(frozen=True, slots=True)
class Wheel:
    """What one wheel carries: axle counted from 1, side left or right. Twin tyres share it."""

    axle: int
    side: str
    reading: Reading


@dataclass(frozen=True, slots=True)
class Extent:
    """How far the trailer reaches in one direction (m), and the part that reaches furthest; the trailer if empty."""

    band: Band
    of: str


@dataclass(frozen=True, slots=True)
class LowPoint:
    """Something that hangs below the deck: its height over the ground (m), and the angles it clears (rad).

    ``departure`` is None ahead of the rear wheels, ``breakover`` behind the front ones. ``is_least`` says that the
    tow vehicle's half of the breakover angle is missing, so that the true angle is larger.
    """

    of: str
    height: Band
    departure: Band | None
    breakover: Band | None
    is_least: bool


@dataclass(frozen=True, slots=True)
class Shifted:
    """Where the load on the ball goes with weight-distribution bars (kg).

    The vehicle's front axle loses ``front_slack`` without them and ``front`` with them; ``rear`` is what its rear axle
    gains with them, ``wheels`` what the trailer's wheels gain.
    """

    front_slack: Band
    front: Band
    rear: Band
    wheels: Band


@dataclass(frozen=True, slots=True)
class Behind:
    """The trailer behind one tow vehicle. Each reading is None where the paths in ``missing`` are not written.

    ``in_vehicle`` is what counts against the payload, ``together`` the whole combination (kg). ``pitch`` is rise over
    run, nose up above zero. ``slowing`` in m/s2, ``grip`` force over load on the driven wheels, ``rear_gain`` what the
    ball adds to the vehicle's rear axle (kg), ``needed_d_value`` what both ask of their coupling (N),
    ``shifted`` what its bars do.
    """

    of: str
    name: str
    vehicle: TowVehicle
    in_vehicle: Reading | None
    payload: Band | None
    together: Reading | None
    pitch: Band | None
    slowing: Band | None
    grip: Band | None
    rear_gain: Band | None
    needed_d_value: Reading | None
    shifted: Shifted | None
    lowest: tuple[LowPoint, ...]


@dataclass(frozen=True, slots=True)
class Offers:
    """What towing gives the others before anybody has solved: nothing."""


@dataclass(frozen=True, slots=True)
class Result:
    """The trailer of one slot beside its plates, its tow vehicles and the law of its route.

    ``braked_axles`` is None where nobody wrote it, 0 for no brakes. ``tongues`` are the load on the ball in every load
    state it is towed in. ``rollover`` is a share of gravity, winds in m/s; each is None where something is missing.
    ``fits`` are the owner's own limits by the name of the place.
    """

    of: str
    trailer: Trailer
    trailer_class: str
    beds: tuple[str, ...]
    has_chocks: bool
    judged_on: date
    law: Law
    home: str
    gross: Reading
    tongue: Reading
    share: Reading
    on_wheels: Reading
    axles: tuple[Reading, ...]
    wheels: tuple[Wheel, ...]
    left: Reading
    right: Reading
    centre_z: Reading
    tongues: tuple[tuple[str, Reading], ...]
    braked_axles: int | None
    tyre_load: Band | None
    width: Extent
    height: Extent
    length: Extent
    rollover: Band | None
    parked_wind: Band | None
    towing_wind: Band | None
    fits: tuple[tuple[str, Fits], ...]
    behind: tuple[Behind, ...]
