"""The bare trailer and what pulls it, as the rig file says them."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import AfterValidator, AliasChoices, BeforeValidator, Field

from boxwright.model.each import Alone
from boxwright.model.entry import Day, Entry, Names, YesNo, read_names
from boxwright.units import Band, KilogramBand, MetreBand, PascalBand, RatioBand, Unit

Current = Annotated[Band, Unit("A", "current", bare="A", doubtful=True)]
Kilonewtons = Annotated[Band, Unit("N", "force", bare="kN", doubtful=True)]
Rate = Annotated[Band, Unit("N/m", "stiffness", bare="N/m", doubtful=True)]


def read_each(given: Any) -> Any:
    """Return a text without its word ``each``: here the number is always per piece."""
    text = str(given).strip()
    return text.removesuffix("each").strip() if isinstance(given, str) else given


EachKilogram = Annotated[KilogramBand, BeforeValidator(read_each)]
Bands = Annotated[tuple[MetreBand, ...], BeforeValidator(read_names)]
Masses = Annotated[tuple[KilogramBand, ...], BeforeValidator(read_names)]


def read_named(given: Any) -> Any:
    """Return the pairs of a map, so that an entry stays hashable."""
    return tuple(given.items()) if isinstance(given, dict) else given


Fuses = Annotated[tuple[tuple[str, Current], ...], BeforeValidator(read_named)]


class Body(Entry):
    """The box from stud face to stud face, deck to bows."""

    length: MetreBand | None = Field(None, description="inside length, stud face to stud face, such as 168")
    width: MetreBand | None = Field(None, description="inside width, stud face to stud face")
    height: MetreBand | None = Field(None, description="height from the deck to the roof bows")


class Outside(Entry):
    """The outside of the whole trailer."""

    length: MetreBand | None = Field(None, description="length of the box outside")
    width: MetreBand | None = Field(None, description="width of the box outside")
    over_fenders: MetreBand | None = Field(None, description="greatest width, over fenders or mudguards")
    height: MetreBand | None = Field(None, description="height above the ground, level")
    length_overall: MetreBand | None = Field(None, description="from the coupler's nose to the rearmost lamp")


class Axles(Entry):
    """The running gear."""

    kind: str = Field("", description="leaf with equaliser, rubber torsion, ...")
    x: Bands = Field((), description="place of each axle behind the front stud face, such as [83, 117]")
    gawr: Masses = Field(
        (),
        validation_alias=AliasChoices("gawr", "rating"),
        description="rated load of each axle from its plate, such as [3500, 3500]",
    )
    track: MetreBand | None = Field(None, description="tyre middle to tyre middle across one axle")
    rate: Rate | None = Field(None, description="spring rate of one axle (both wheels) of a torsion tandem, 150000 N/m")


class Empty(Entry):
    """The trailer's own weight as delivered; left out where a ticket at the first stage gives it."""

    weight: KilogramBand | None = Field(None, description="weight of the empty trailer")
    tongue: KilogramBand | None = Field(
        None, validation_alias=AliasChoices("tongue", "nose"), description="empty weight on the ball"
    )
    cg_z: MetreBand | None = Field(None, description="height of its centre of gravity above the deck, about 22")
    includes: Names = Field((), description="parts that are inside the empty weight, such as [rear-lamps]")
    how: str = Field("", description="weighed, plate, guess")


class Tyres(Entry):
    """The tyres as marked on the sidewall."""

    size: str = Field("", description="as on the sidewall, such as ST205/75R15")
    load: EachKilogram | None = Field(None, description="rated load of one tyre at its pressure, 1820 each")
    at: PascalBand | None = Field(None, description="pressure that belongs to the load, 50 psi")
    pressure: PascalBand | None = Field(None, description="pressure as pumped now, cold")
    date: str = Field("", description="the four figures of the date code, week and year, such as 1325")
    count: int | None = Field(None, description="how many stand on the road")
    spare: YesNo = None


class Brakes(Entry):
    """The trailer's brakes; ``brakes: none`` is read as kind none."""

    kind: str = Field("", description="none, electric, surge, ...")
    axles: int | None = Field(None, description="on how many axles")
    breakaway: YesNo = Field(None, description="is a breakaway switch fitted")
    breakaway_battery: Day = Field(None, description="day the breakaway battery was last tested")


class Coupler(Entry):
    """The coupling head as stamped."""

    ball: MetreBand | None = Field(None, description="ball size stamped on it, such as 2 5/16 in or 50 mm")
    rating: KilogramBand | None = Field(None, description="rating stamped on it")
    nose_max: KilogramBand | None = Field(
        None,
        validation_alias=AliasChoices("tongue_max", "nose_max"),
        description="greatest static load on it, if stamped (S value)",
    )
    d_value: Kilonewtons | None = Field(None, description="D value stamped on it, 9.3 kN")


class Jack(Entry):
    """The tongue jack."""

    rating: KilogramBand | None = Field(None, description="rated load of the jack")
    x: MetreBand | None = Field(None, description="place of the jack's foot; negative ahead of the front wall")


class Chains(Entry):
    """Safety chains or the secondary cable."""

    kind: str = Field("", description="chain or cable")
    count: int | None = None
    rating: EachKilogram | None = Field(None, description="rating of one, 5000 each")
    fitted: YesNo = None


class Legs(Entry):
    """Corner legs (steadies) under the body."""

    x: Bands = Field((), description="places of the legs, such as [4, 164]")
    rating: EachKilogram | None = None


def read_kind(given: Any) -> Any:
    """Return ``{"kind": word}`` for a bare word such as ``brakes: none``."""
    return {"kind": given} if isinstance(given, str) else given


class Trailer(Entry):
    """The trailer as its plate, its tape and its maker say it."""

    body: Body = Body()
    outside: Outside = Outside()
    deck_height: MetreBand | None = Field(None, description="ground to the top of the deck, level")
    coupler_x: MetreBand | None = Field(None, description="ball centre; negative, ahead of the front wall")
    coupler_height: MetreBand | None = Field(None, description="ground to the ball centre with the trailer level")
    axles: Axles = Axles()
    gvwr: KilogramBand | None = Field(
        None, validation_alias=AliasChoices("gvwr", "mam", "atm"), description="greatest mass on the plate"
    )
    gtm: KilogramBand | None = Field(None, description="greatest mass on the wheels, where the plate gives it apart")
    empty: Empty = Empty()
    tyres: Tyres = Tyres()
    brakes: Annotated[Brakes, BeforeValidator(read_kind)] = Brakes()
    coupler: Coupler = Coupler()
    jack: Jack = Jack()
    chains: Chains | None = Field(None, validation_alias=AliasChoices("chains", "secondary"))
    legs: Legs = Legs()
    lamps: Names = Field((), description="the lamps fitted, such as [tail, stop, turn]")
    socket: str = Field("", description="7-way, 13-pin, ...")
    note: str = ""


def at_most_all(given: Band) -> Band:
    """Return a share as it is; more than the whole is a mistake, such as 50 for 50 %."""
    if given.known and given.best > 1.0:
        raise ValueError("bars can restore no more than all of it; write it as 50 %")
    return given


class Bars(Entry):
    """Weight-distribution bars between tow vehicle and trailer; ``bars: yes`` is read as fitted."""

    fitted: YesNo = Field(None, description="are they fitted, such as yes")
    restores: Annotated[RatioBand, AfterValidator(at_most_all)] | None = Field(
        None, description="how much of the load the ball took off the front axle they bring back, such as 50 %"
    )


class TowVehicle(Entry):
    """One vehicle that may pull the trailer, by its own papers."""

    what: str = Field("", description="what it is, in words")
    rating: KilogramBand | None = Field(None, description="tow rating, braked")
    unbraked: KilogramBand | None = Field(None, description="tow limit of an unbraked trailer")
    tongue: KilogramBand | None = Field(
        None, validation_alias=AliasChoices("tongue", "nose_max"), description="greatest load on its hitch"
    )
    payload: KilogramBand | None = Field(None, description="payload from the door jamb")
    gcwr: KilogramBand | None = Field(None, description="gross combination rating")
    gvwr: KilogramBand | None = Field(None, description="its own greatest mass")
    kerb: KilogramBand | None = Field(None, description="its own mass as it stands, full tank, no people")
    rear_axle: KilogramBand | None = Field(None, description="rated load of its rear axle")
    wheelbase: MetreBand | None = None
    overhang: MetreBand | None = Field(None, description="rear axle to ball centre")
    people_and_gear: KilogramBand | None = Field(None, description="what rides in it")
    bars: Annotated[Bars, Alone("fitted")] | None = Field(
        None, description="weight-distribution bars, such as {restores: 50 %}, yes or no"
    )
    ball_height: MetreBand | None = Field(None, description="ground to the ball centre, loaded")
    d_value: Kilonewtons | None = Field(None, description="D value on the plate of its tow bar, 11 kN")
    fuses: Fuses = Field((), description="its trailer fuses, such as {tail: 15 A}")
    note: str = ""


class Person(Entry):
    """One person who travels or sleeps with the rig."""

    weight: KilogramBand | None = None
    height: MetreBand | None = None
    sleeps: str = Field("", description="the bed, by its part name")
    waits: YesNo = Field(
        None, description="waits in the trailer while it is left and cannot get out, as a dog does: yes or no"
    )

    @property
    def needs_a_bed(self) -> bool:
        """Return whether somebody is to have a bed: one who waits, as a dog does, lies anywhere unless one is written.

        A dog is let out by those who sleep there.
        """
        return bool(self.sleeps) or self.waits is not True
