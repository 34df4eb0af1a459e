"""The records disciplines give each other. Frozen, compared by value, SI, no methods beyond trivial properties.

Each record has ``of``, the rig path it is about. A record stands here only while two readers need it.
"""

from __future__ import annotations

from datetime import date
from typing import Literal

from boxwright.records import dataclass
from boxwright.units import Band, HeaderUnits

Vector = tuple[float, float, float]
What = Literal["dry", "contents", "fluid", "structure", "people"]
ASLEEP_FROM = 20
"""The hour of the day the first hour of every `Night` begins at: people are inside from eight in the evening."""


@dataclass(frozen=True, slots=True)
class Mass:
    """A mass and where its middle is: kg; x rearward of the front stud face, y right of centre, z above the deck (m).

    ``size`` (length, width, height in m) is that of the uniform cuboid with the same own inertia. ``group`` names
    values that err together (guesses of one kind); empty where the value errs alone.
    """

    of: str
    what: What
    group: str
    kg: Band
    x: Band
    y: Band
    z: Band
    size: Vector


@dataclass(frozen=True, slots=True)
class Axle:
    """One axle: its place (m) and its rated load as a mass (kg), ``None`` where the plate was not given."""

    x: Band
    rated_mass: Band | None


@dataclass(frozen=True, slots=True)
class Box:
    """The trailer as a body on wheels: lengths in m in the rig's datum; deck, ball and wheels over the ground."""

    of: str
    inside: Vector
    outside: Vector
    front_x: float
    rear_x: float
    deck_height: Band
    coupler_x: Band
    coupler_height: Band
    axles: tuple[Axle, ...]
    running_gear: Literal["single", "equalised", "independent"]
    axle_rate: Band
    track: Band
    wheel_radius: Band
    jack_x: Band
    legs_x: tuple[Band, ...]


@dataclass(frozen=True, slots=True)
class Measured:
    """One reading typed by the builder. ``value`` is SI (kg for every scale); ``what`` says which number it is.

    A scale ticket gives several of these with one ``of``: "axles", "axle 1", "tongue", "total", "left", "right".
    ``plank`` holds what a tongue weight by bathroom scale and plank was worked out from: reading, bare plank (kg),
    block to scale, block to ball (m).
    """

    of: str
    what: str
    value: Band
    on: date | None
    stage: str
    load: str
    how: str
    part: str = ""
    plank: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Balance:
    """Where the weight goes in one slot: loads as masses (kg, newton / 9.80665), the centre of gravity in m."""

    of: str
    gross: Band
    tongue: Band
    tongue_share: Band
    on_wheels: Band
    centre_x: Band
    centre_y: Band
    centre_z: Band


@dataclass(frozen=True, slots=True)
class AxleLoad:
    """What one axle carries, as a mass (kg), with its left and right wheels."""

    of: str
    axle: int
    kg: Band
    left: Band
    right: Band


@dataclass(frozen=True, slots=True)
class Clearance:
    """How far one thing is from another (m), below zero when it is in it, and when: travel, night or work.

    ``side`` is the side of a hole, width or height, of which a leaf that strikes something leaves so much.
    """

    of: str
    to: str
    metre: Band
    when: str
    side: str = ""


@dataclass(frozen=True, slots=True)
class Context:
    """What a slot is asked for. A discipline receives only the fields it names; the stage is never passed.

    ``vehicle`` names the tow vehicle asked for; empty for the first of the file.
    """

    use: str
    load: str
    countries: tuple[str, ...]
    judged_on: date
    shown_in: HeaderUnits
    vehicle: str = ""


@dataclass(frozen=True, slots=True)
class Fixing:
    """A hinge or the screws of a part, wherever they bite: lengths in m in the rig's datum.

    ``wall`` is the wall or edge that is written, empty where none is. ``points`` are the places along the trailer as
    they are written; on the front and rear walls those from the left stud face. ``low`` and ``high`` are the corners
    of the part as it is used, infinite where nobody wrote its place. ``into`` names what is to be bitten: studs, bows,
    or a backing. ``doubts`` are how far each point may be off as it is written, in the order of ``points``; empty where
    none is in doubt.
    """

    of: str
    part: str
    what: Literal["hinge", "screws"]
    wall: str
    points: tuple[float, ...]
    count: int | None
    shank: Band | None
    length: Band | None
    into: str
    low: Vector
    high: Vector
    doubts: tuple[float, ...] = ()


FLOOR = "floor"
"""Where the way of somebody begins who lies in no bed; no path, since what nothing carries has an empty one."""


@dataclass(frozen=True, slots=True)
class Aisle:
    """The widest way somebody can take from a sleeping place (``of``) to an opening (``leads_to``): lengths in m.

    Where nobody lies in a bed it begins on free floor, ``FLOOR``; it is 0 wide where there is none to stand on.

    ``width`` is the side of the square that can be moved all the way and out through the opening's own width: never
    more than is free. Its low end takes all that is in doubt as in the way, its high end nothing of it; not known
    where the bed, the room or the opening has no place. ``height`` is the least headroom on that way.

    Where the way lets nobody through, ``blocked_by`` is a least set of things that would have to go, cargo first. A
    second way between the same two climbs on what is built in, and is wider. ``over`` are things one has to step or
    climb over. ``unsure`` are things of which nobody knows where they stand. ``past`` are openings that this way
    cannot but go by. ``sleepers`` are the people of the rig who sleep there.
    """

    of: str
    leads_to: str
    width: Band
    height: Band
    blocked_by: tuple[str, ...]
    over: tuple[str, ...]
    unsure: tuple[str, ...]
    past: tuple[str, ...]
    sleepers: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LayupLayer:
    """One layer of a plane of the box, as it stands in a slot. ``material`` is as written; ``thick`` in m.

    ``where``: "all" over everything, "bays" between the members only, "members" over them only. ``is_certain`` is
    False where nobody ticked it, so that it may as well be missing. ``resistance`` (m2K/W) is that of its label.
    """

    of: str
    name: str
    material: str
    thick: Band | None
    where: Literal["all", "bays", "members"]
    is_certain: bool
    resistance: Band | None = None


@dataclass(frozen=True, slots=True)
class Layup:
    """One plane of the box as framed and as far as it is built, or one bay of it that is written apart.

    ``wall``: left, right, front, rear, roof, floor, nose-left, nose-right; ``bay`` is empty for the whole of it.
    ``area`` (m2) is that of the plane less its openings and the bays written apart. ``outward`` is the unit vector out
    of the room (x rearward, y right, z up). ``members`` is how many metres of stud, bow, cross-member, jamb or header
    lie in that area, not known where nobody wrote them, ``edge`` how many of post, plate and rail around it, half of
    its outline at least; ``spacing`` their middles apart as ordered or taped. ``skin`` is the outer skin's thickness
    and ``skin_of`` what is written of it, such as "aluminium 0.040"; of the floor those of its deck. ``layers`` are
    from the skin inwards, what stands
    only. A wheel box is a plane of its own, by its name in ``bay``.
    """

    of: str
    wall: str
    bay: str
    area: Band
    outward: Vector
    members: Band
    edge: Band
    spacing: Band | None
    member_face: Band | None
    member_depth: Band | None
    member_gauge: Band | None
    member_shape: str
    member_material: str
    skin: Band | None
    skin_of: str
    layers: tuple[LayupLayer, ...]


@dataclass(frozen=True, slots=True)
class Opening:
    """A hole through the skin that is cut or stands in a slot: lengths in m, ``area`` in m2, of the rough opening.

    ``bottom`` and ``top`` are above the deck. ``transmittance`` (W/m2K) is that of the unit as written, None where
    nobody wrote it. ``has_unit`` says that something fills it; ``is_leaf`` that it is a door or a ramp, hinged in the
    hole itself. ``is_certain`` is False where it stands perhaps; ``is_open`` where it is cut and nothing fills it yet.
    ``low`` and ``high`` are two corners that lie across from each other (x, y, z), None where its place is not known.
    """

    of: str
    name: str
    wall: str
    area: Band
    bottom: Band
    top: Band
    outward: Vector
    transmittance: Band | None
    has_unit: bool
    is_leaf: bool
    is_certain: bool
    is_open: bool
    low: Vector | None = None
    high: Vector | None = None


@dataclass(frozen=True, slots=True)
class Airflow:
    """How the air of the room can change in one slot, as far as openings and fans say.

    ``leak`` is the area (m2) of the cracks at 4 Pa. ``vents`` is the one opening (m2) that passes as much as the low
    and the high ones that stand open together, ``rise`` the height between them (m), ``wind_share`` the share of the
    wind's pressure that drives them. ``fan`` is what a fan moves (m3/s) when it runs. ``opened`` is what can be opened
    besides (m2): windows, lids, a door. ``likely`` are the opening and the height of what most likely passes, where
    that is not the best of ``vents``: a vent in doubt is shut for who breathes, which would flatter who wants it warm.
    ``fans`` are the names of what moves air.
    """

    of: str
    leak: Band
    vents: Band
    rise: Band
    wind_share: float
    fan: Band
    opened: Band
    likely: tuple[float, float] | None = None
    fans: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Moisture:
    """Water given off in the room (kg/s) while somebody sleeps, cooks or dries something, and the heat with it (W).

    ``begins`` is the hour of the day it begins at, ``lasts`` for how many it goes on. ``is_unsaid`` says that nobody
    wrote for how long.
    """

    of: str
    kg_per_second: Band
    watt: Band
    when: str
    begins: int = 20
    lasts: int = 12
    is_unsaid: bool = False

    def is_on(self, clock: int) -> bool:
        """Return whether it goes on in an hour of the day."""
        return (clock - self.begins) % 24 < self.lasts


@dataclass(frozen=True, slots=True)
class ColdPlace:
    """A cold place of the room's surface: a stud's face, a window, the skin behind foam, the corner of a floor.

    ``factor`` is its temperature factor: 0 as cold as outside, 1 as warm as the room's air. ``area`` in m2; ``film``
    (W/m2K) that of the air on it. ``reach`` says how the room's damp air gets to it: "open", "behind" a lining that
    lets vapour through, "sealed".
    """

    of: str
    what: str
    factor: Band
    area: Band
    film: float
    reach: Literal["open", "behind", "sealed"]


@dataclass(frozen=True, slots=True)
class ElectricLoad:
    """What something takes of electricity through one night: ``watt`` while it runs, ``joule`` all night.

    ``bus`` is what feeds it as written, empty where nobody wrote it; ``when`` the place of the night. ``surge`` (W) is
    what it takes while it starts, ``starts`` how often it does.
    """

    of: str
    bus: str
    when: str
    watt: Band
    joule: Band
    surge: Band
    starts: Band


@dataclass(frozen=True, slots=True)
class NightEnd:
    """One end of what is not known of a night's damp, by the hour as in `Night`; ``outdoors`` is the humidity there."""

    outside: tuple[float, ...]
    air: tuple[float, ...]
    humidity: tuple[float, ...]
    outdoors: float
    flow: tuple[float, ...]
    water: tuple[tuple[float, ...], ...]


@dataclass(frozen=True, slots=True)
class Narrowed:
    """The wettest night with one thing known that nobody wrote, at the end of it that leaves least wet.

    ``key``: "cooks" of what cooks, "U" of what fills holes; ``of`` are the paths of those nobody wrote it of.
    """

    key: Literal["cooks", "U"]
    of: tuple[str, ...]
    end: NightEnd


@dataclass(frozen=True, slots=True)
class Night:
    """One night in the room hour by hour, at the best values: temperatures in K, humidity in kg per kg of dry air.

    ``heat`` in W, ``flow`` of outdoor air in m3/s; ``water`` (kg) that stands on each of ``cold`` at the end of each
    hour, a row for each hour. ``heater`` is the rig path of what warms it, empty where nothing does. ``ends`` are the
    driest night and the wettest one that it may be; none where nobody worked them out. ``narrowed`` are the wettest one
    again, each with one thing known that nobody wrote.
    """

    of: str
    place: str
    heater: str
    outside: tuple[float, ...]
    air: tuple[float, ...]
    humidity: tuple[float, ...]
    heat: tuple[float, ...]
    flow: tuple[float, ...]
    cold: tuple[ColdPlace, ...]
    water: tuple[tuple[float, ...], ...]
    ends: tuple[NightEnd, ...] = ()
    narrowed: tuple[Narrowed, ...] = ()
