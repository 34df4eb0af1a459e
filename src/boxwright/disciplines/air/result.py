"""What air has worked out in one slot."""

from __future__ import annotations

from typing import Literal

from boxwright.disciplines.air.parts import PlannedFlame, PlannedVent, WoodReading
from boxwright.exchange import Airflow, ColdPlace, Moisture
from boxwright.records import dataclass
from boxwright.source import Rule
from boxwright.units import Band

There = Literal["yes", "perhaps", "no"]


@dataclass(frozen=True, slots=True)
class Vent:
    """One vent, fan, window or door of the plan, as it stands in a slot.

    ``free`` is the area it really passes air through (m2), once it stands; ``middle`` the height of its middle above
    the deck and ``height`` its own (m), ``None`` where nobody knows them. ``is_cut`` says that its hole is open in the
    shell while nothing surely fills it; ``before`` names what stands close before it, empty for nothing.
    """

    planned: PlannedVent
    there: There
    free: Band
    middle: float | None
    height: float
    is_low: bool
    is_cut: bool
    before: str = ""

    @property
    def stays_open(self) -> bool:
        """Return whether nobody can shut it: a vent, or a fan without a lid."""
        fan = self.planned.facet.fan
        return self.planned.kind == "vent" or (fan is not None and fan.lid.strip().lower() == "none")


@dataclass(frozen=True, slots=True)
class Breathing:
    """The air of a mild and still night without heater, the hardest one, or of such a day of work: what comes in, and
    what it comes to.

    ``flow`` is outdoor air (m3/s), ``morning`` and ``steady`` carbon dioxide as a share after the night and after a
    very long one, ``need`` the outdoor air that people ought to have. ``room`` is its volume (m3) and ``stack`` the
    coefficient of warmth at its height.
    """

    flow: Band
    morning: Band
    steady: Band
    need: float
    room: float
    stack: float


@dataclass(frozen=True, slots=True)
class DryingAir:
    """Air that dries: how much comes in (m3/s), its density (kg/m3), what each kilogram of it takes up."""

    flow: float
    density: float
    gained: float


@dataclass(frozen=True, slots=True)
class Settled:
    """What one value nobody wrote would make of a wet place: at its driest so much at the most (kg/m2).

    ``key`` is the key it is written under, ``of`` the path of what it is a key of.
    """

    key: str
    of: str
    over: float


@dataclass(frozen=True, slots=True)
class WetPlace:
    """What settled on one cold place in one night. ``where`` is the rig path its layers are written at.

    ``hours`` it stood wet, ``most`` water at once (kg) and a square metre (kg/m2), the ``coldest`` its surface came to
    (K), ``limit`` the lowest humidity of the room at which it would have begun to drip, ``damp_hours`` the hours its
    own humidity stood where mould grows. ``air`` is the outdoor air that would have kept it dry (m3/s, infinite where
    none does) and ``drier`` that air, ``watt`` the heat that costs beyond what came in anyhow. ``ends`` are the same
    place in the driest night there may be and in the wettest, none where they are not known apart. ``water`` (kg) lies
    on it at the end of each hour, and it stands wet with more than the ``least``.
    """

    cold: ColdPlace
    where: str
    hours: int
    most: float
    over: float
    coldest: float
    limit: float
    damp_hours: int
    air: float
    watt: float
    ends: tuple[WetPlace, ...] = ()
    drier: DryingAir | None = None
    settled: tuple[Settled, ...] = ()
    water: tuple[float, ...] = ()
    least: float = 0.0

    @property
    def every(self) -> tuple[WetPlace, ...]:
        """Return the place as it most likely gets and at both ends of what is not known."""
        return (self, *self.ends)

    @property
    def wettest(self) -> WetPlace:
        """Return the place at its wettest."""
        return max(self.every, key=lambda one: (one.over, one.hours))

    @property
    def driest(self) -> WetPlace:
        """Return the place at its driest."""
        return min(self.every, key=lambda one: (one.over, one.hours))

    @property
    def name(self) -> str:
        """Return what the place is called: an opening by the builder's own word for it."""
        path = self.cold.of
        is_opening = path.startswith("openings[")
        return path.partition("[")[2].rstrip("]") if is_opening else self.cold.what.removeprefix("on ")

    @property
    def kind(self) -> str:
        """Return what the place is without where it is: "the studs" of "on the studs, left wall"."""
        return self.name.partition(",")[0]

    @property
    def is_frost(self) -> bool:
        """Return whether what settled froze."""
        return self.hours > 0 and self.coldest < FREEZING


FREEZING = 273.15
"""K"""


@dataclass(frozen=True, slots=True)
class DampNight:
    """One night as the air of the room felt it: outside and inside (K), relative humidity by the hour.

    ``dries`` is how long (s) a kilogram of water in wet gear takes to leave with the air of a mean hour, infinite where
    it does not; ``gear`` is that air. ``ends`` are the driest night there may be and the wettest, none where they are
    not known apart.
    """

    place: str
    heater: str
    outside: tuple[float, ...]
    air: tuple[float, ...]
    humidity: tuple[float, ...]
    flow: tuple[float, ...]
    dries: float
    wet: tuple[WetPlace, ...]
    ends: tuple[DampNight, ...] = ()
    gear: DryingAir | None = None

    @property
    def every(self) -> tuple[DampNight, ...]:
        """Return the night as it most likely is and at both ends of what is not known."""
        return (self, *self.ends)


@dataclass(frozen=True, slots=True)
class MildNight:
    """A mild, wet night: outdoor air (m3/s) that keeps the room healthy, what the vents give, and what it comes to.

    ``humidity`` is the share the room comes to at that flow, at most 1: then it drips everywhere. ``has_height`` says
    that somebody wrote how high the room is; else it counts as anything a trailer may have.
    """

    need: Band
    flow: Band
    humidity: Band
    has_height: bool = True


@dataclass(frozen=True, slots=True)
class Wood:
    """The newest reading of wood at one place beside the one before it, where there is one."""

    newest: WoodReading
    before: WoodReading | None


@dataclass(frozen=True, slots=True)
class Locker:
    """A part a gas cylinder stands in: how it stands, the free area of its own vents, and its floor (m2)."""

    planned: PlannedVent
    there: There
    free: Band | None
    floor: float


@dataclass(frozen=True, slots=True)
class Result:
    """What air has worked out in one slot.

    ``moisture`` is what makes the air damp. ``on_gas`` is what a gas pipe runs to that stands, or stands perhaps.
    ``low`` and ``high`` are the free areas (m2) that stay open in the lower and the upper half of the room; ``flames``
    burn in it. ``breathing`` and ``mild`` are None where nobody sleeps or works in it, or where the room has no size;
    ``workers`` are who works in it, and then both are of a day of work.
    """

    of: str
    use: str
    sleepers: int
    airflow: Airflow
    vents: tuple[Vent, ...]
    low: Band
    high: Band
    breathing: Breathing | None
    mild: MildNight | None
    nights: tuple[DampNight, ...]
    flames: tuple[tuple[PlannedFlame, There], ...]
    wood: tuple[Wood, ...]
    lockers: tuple[Locker, ...]
    moisture: tuple[Moisture, ...]
    on_gas: tuple[PlannedFlame, ...]
    rules: tuple[Rule, ...]
    country: str
    workers: int = 0
