"""What heat knows of one slot: the shell, its heaters with what burns and where it goes, its nights."""

from __future__ import annotations

from typing import Literal

from boxwright.disciplines.heat.battery import Drained, Hung
from boxwright.disciplines.heat.cold_hours import Inside, Outdoors
from boxwright.disciplines.heat.day import DayRun
from boxwright.disciplines.heat.feeds import (
    NO_FEED,
    UNSAID,
    WORST_FIRST,
    Feed,
    Stands,
    Wanted,
    enough,
    suits,
    takes_electricity,
    wanted_by,
    wanted_by_cooler,
)
from boxwright.disciplines.heat.fuel_piece import Where
from boxwright.disciplines.heat.hot import HotDay
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.parts import FuelTank, PlannedCooler, PlannedHeater
from boxwright.disciplines.heat.proved import Proof
from boxwright.disciplines.heat.shell import Shell
from boxwright.exchange import ElectricLoad, Moisture, Night, Opening, Vector
from boxwright.records import dataclass
from boxwright.units import Band

Runs = Literal["burns", "electric", "unknown"]
Vented = Literal["out", "in the room", "unknown"]
Fault = Literal[
    "breathes in the room",
    "hatch not written",
    "hatch not there",
    "air comes back",
    "numbers not written",
    "passes too little",
]


MOST_COLD_OF_A_WATT = columns("cooler_numbers")["cold of a watt"][2]


@dataclass(frozen=True, slots=True)
class StandingHeater:
    """A heater that stands, or stands perhaps, in a slot.

    ``runs``: what it is by the word for its fuel. ``vented`` and ``takes_air``: where its exhaust ends and its
    combustion air comes from. ``ends_low`` and ``ends_high`` are the corners of the box the exhaust may end in (m),
    None where it does not end outside; ``inlet_low`` and ``inlet_high`` those of the box its combustion air may come in
    at. ``tank`` is what it draws from, None where none is named or stands; ``feed`` what feeds it with electricity.
    ``tank_named`` is the name of the tank its path begins with, empty where it begins with another piece. ``where`` is
    the side of the shell it stands on; ``burns_by_itself`` says that what it burns needs no fan, and none is written.
    """

    planned: PlannedHeater
    is_certain: bool
    runs: Runs
    vented: Vented
    takes_air: Vented
    ends_low: Vector | None
    ends_high: Vector | None
    tank: FuelTank | None
    inlet_low: Vector | None = None
    inlet_high: Vector | None = None
    feed: Feed = NO_FEED
    tank_named: str = ""
    where: Where = "unknown"
    burns_by_itself: bool = False

    @property
    def takes_electricity(self) -> bool:
        """Return whether it wants electricity, or may, as far as anybody wrote."""
        return takes_electricity(self.runs, self.planned.heater, self.feed, self.burns_by_itself)

    @property
    def is_fed(self) -> bool:
        """Return whether all that is written to feed it surely stands and gives enough, or it wants nothing."""
        if not self.takes_electricity:
            return True
        is_right = self.feed.stands == self.enough == self.suits == "yes"
        return self.feed.ends == "unsaid" or is_right

    @property
    def wanted(self) -> Wanted:
        """Return the most it takes at once, as written."""
        return wanted_by(self.runs, self.planned.heater, self.planned.count)

    @property
    def enough(self) -> Stands:
        """Return whether what feeds it gives on all it takes at once."""
        return enough(self.wanted, self.feed) if self.takes_electricity else "yes"

    @property
    def suits(self) -> Stands:
        """Return whether it is made for what feeds it: the mains, or a battery."""
        return suits(self.wanted, self.feed) if self.takes_electricity else "yes"


@dataclass(frozen=True, slots=True)
class StandingCooler:
    """What makes cold, and whether it surely stands.

    ``breathes``: whether its warm side does so outside; ``feed`` what feeds it with electricity. ``faults`` are what is
    wrong with how it breathes, or not written of it. ``lasts`` says whether its battery lasts a hot day,
    ``at_once`` whether what feeds it gives enough for all that cools by it together: ``beside`` names the others.
    """

    planned: PlannedCooler
    is_certain: bool
    breathes: Stands
    feed: Feed
    faults: tuple[Fault, ...] = ()
    lasts: Stands = "yes"
    at_once: Stands = "yes"
    beside: tuple[str, ...] = ()

    @property
    def fed(self) -> Stands:
        """Return whether it is fed with all it takes; perhaps where nobody wrote by what."""
        if self.feed.ends in ("unsaid", "unfed"):
            return "perhaps"
        return min(self.feed.stands, self.enough, self.suits, key=WORST_FIRST.index)

    @property
    def suits(self) -> Stands:
        """Return whether it is made for what feeds it: the mains, or a battery."""
        return suits(self.wanted, self.feed)

    @property
    def wanted(self) -> Wanted:
        """Return the most it takes at once, as written."""
        return wanted_by_cooler(self.planned.cools, self.planned.count)

    @property
    def enough(self) -> Stands:
        """Return whether what feeds it gives on all it takes at once, as far as both are written."""
        return enough(self.wanted, self.feed)

    @property
    def is_unsaid(self) -> bool:
        """Return whether nobody wrote what it takes, or what the cable from outside gives that feeds it."""
        return self.feed.is_sure and (self.wanted == UNSAID or self.feed.is_bare)

    @property
    def works(self) -> Stands:
        """Return whether it makes cold: no better than the worst of where it stands, breathes and is fed from."""
        itself: Stands = "yes" if self.is_certain and not self.is_contradicted else "perhaps"
        return min(itself, self.breathes, self.fed, self.lasts, self.at_once, key=WORST_FIRST.index)

    @property
    def is_contradicted(self) -> bool:
        """Return whether it is written to make more cold than comes of what it is written to take."""
        want, heat = self.wanted.by(self.feed), self.planned.cools.heat
        return want is not None and heat is not None and heat.known and heat.low > MOST_COLD_OF_A_WATT * want.high


@dataclass(frozen=True, slots=True)
class HotHours:
    """The hottest day of those in the room: its run in the best way there is, and how warm (K) it is for them.

    ``when``: "bedtime" for those who sleep in it, "work" for those who work in it, whose hottest hour counts, "left"
    for those who wait in it while it is left.
    ``is_plugged_in`` says that a cable from outside feeds what cools it. ``unfed`` are the fans to which no wire surely
    stands: they may not run.
    """

    hot: HotDay
    run: DayRun
    warm: Band
    when: Literal["bedtime", "work", "left"]
    is_plugged_in: bool = False
    unfed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ColdWork:
    """The coldest hour of work (K) on the coldest day of a place; ``heater`` is what warms it, empty for nothing."""

    outdoors: Outdoors
    heater: str
    name: str
    cold: Band


@dataclass(frozen=True, slots=True)
class Result:
    """What heat has worked out in one slot. ``held`` are the nights of people asleep, by place and heater.

    ``use`` is empty where nothing is judged. ``volume`` (m3) is that of the room, not known where the body is not.
    ``placeless`` says that no place of the rig has a coldest night. ``inside`` and ``moisture`` are what other nights
    than those are worked out of. ``left`` are the places' nights with nobody in and the heater off, where the trailer
    is left, ``left_waiting`` those with who waits in it; ``cold_work`` are the coldest days of those who work in it;
    ``drained`` are the batteries that what cools may empty on the hot day; ``waters`` are the tanks in which water may
    be. ``loads`` are what the heaters take of electricity in those nights, ``batteries`` what hangs on those that feed
    them. ``proof`` is what a logged night told of the room: ``inside`` has the loss of that, ``shell`` the one worked
    out. ``hot`` is the hottest day of those in it, ``has_hot_day`` says that some place tells how hot it gets.
    ``no_night`` and ``no_hot_day`` are the names of the places of which nobody wrote how cold or how hot it gets.
    ``waiting`` are the names of those who wait in it while it is left, each with whether that is written for
    certain.
    """

    of: str
    use: str
    sleepers: int
    shell: Shell
    volume: Band
    heaters: tuple[StandingHeater, ...]
    coolers: tuple[StandingCooler, ...]
    openings: tuple[Opening, ...]
    held: tuple[HeldNight, ...]
    placeless: bool
    inside: Inside
    moisture: tuple[Moisture, ...]
    left: tuple[HeldNight, ...] = ()
    waters: tuple[FuelTank, ...] = ()
    loads: tuple[ElectricLoad, ...] = ()
    batteries: tuple[Hung, ...] = ()
    proof: Proof | None = None
    hot: HotHours | None = None
    has_hot_day: bool = False
    no_night: tuple[str, ...] = ()
    no_hot_day: tuple[str, ...] = ()
    waiting: tuple[tuple[str, bool], ...] = ()
    left_waiting: tuple[HeldNight, ...] = ()
    cold_work: tuple[ColdWork, ...] = ()
    drained: tuple[Drained, ...] = ()

    @property
    def is_peopled(self) -> bool:
        """Return whether somebody sleeps or works in it."""
        return self.use in ("sleep", "work") and any(one.of == "people" for one in self.moisture)

    @property
    def nights(self) -> tuple[Night, ...]:
        """Return the nights hour by hour."""
        return tuple(one.night for one in self.held)
