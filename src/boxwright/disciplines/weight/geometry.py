"""How ball, axles and wheels share a load, as sums over the parts; and what is doubtful or assumed in the trailer.

The formulas stay in ``method``: here they are asked what one kilogram at a few places gives, which is all there is to
know of a formula that is linear.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from math import inf
from typing import Literal, NamedTuple

from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.linear import GROSS, Coefficients
from boxwright.disciplines.weight.sourced import ASSUMED
from boxwright.exchange import Box
from boxwright.records import dataclass
from boxwright.units import Band

NOTHING = Coefficients(0.0)
NO_TRACK = Band(1.0, 1.0, 1.0)
"""Stands for a track nobody knows where nothing hangs on it: what the sides carry is then not answered at all."""


@dataclass(frozen=True, slots=True)
class Geometry:
    """The measures of the trailer that decide who carries what, each one number (m; N/m)."""

    running_gear: Literal["single", "equalised", "independent"]
    coupler_x: float
    axles_x: tuple[float, ...]
    track: float
    ball_raise: float
    ball_above_axle: float
    axle_z: float
    axle_rate: float
    lifted: tuple[int, ...] = ()

    @property
    def carrying(self) -> tuple[int, ...]:
        """Return the axles that stand on the ground, counted from 0."""
        return tuple(i for i in range(len(self.axles_x)) if i not in self.lifted)

    @property
    def pivot_x(self) -> float:
        """Return what the trailer tips back over with its legs up: an equalised group tips over its middle."""
        if self.running_gear == "independent":
            return max(self.axles_x)
        return sum(self.axles_x) / len(self.axles_x)


class Doubt(NamedTuple):
    """A doubtful measure: its rig path, its band, and the trailer with it at either end."""

    path: str
    band: Band
    low: Geometry
    high: Geometry


class Measures(NamedTuple):
    """The trailer at its best values, its doubtful measures, what is missing, and what was assumed.

    ``sides_missing`` is what only the split between left and right wheels is missing.
    """

    best: Geometry | None
    doubts: tuple[Doubt, ...]
    missing: tuple[str, ...]
    assumed: tuple[str, ...]
    sides_missing: tuple[str, ...] = ()

    def lifting(self, best: Geometry, axle: int) -> Measures:
        """Return the same trailer with one more axle off the ground."""
        lifted = (*best.lifted, axle)
        doubts = tuple(
            doubt._replace(low=replace(doubt.low, lifted=lifted), high=replace(doubt.high, lifted=lifted))
            for doubt in self.doubts
        )
        return self._replace(best=replace(best, lifted=lifted), doubts=doubts)


class Loads(NamedTuple):
    """Who carries what, as sums over the parts."""

    tongue: Coefficients
    on_wheels: Coefficients
    axles: tuple[Coefficients, ...]
    axles_left: tuple[Coefficients, ...]
    axles_right: tuple[Coefficients, ...]
    left: Coefficients
    right: Coefficients


def measures_of(box: Box, ball_height: Band) -> Measures:
    """Return the trailer's measures; heights are above the ground, as the rig file has them.

    A place of coupler or axle that is not known is missing, for nothing can be said without it; a track without any
    width to take it from only leaves the sides open. Heights, spring rate
    and track are taken from the kind of trailer where they are not known: wide, marked, and named.
    """
    missing = [] if _is_known(box.coupler_x) else ["trailer.coupler_x"]
    if not box.axles or not all(_is_known(axle.x) for axle in box.axles):
        missing.append("trailer.axles.x")
    bands, assumed = _heights(box, ball_height)
    if _is_known(box.track):
        bands["track"] = ("trailer.axles.track", box.track)
    elif box.outside[1] > 0.0:
        bands["track"] = ("trailer.axles.track", _times(ASSUMED["track"], box.outside[1]))
        assumed.append("trailer.axles.track")
    if missing:
        return Measures(None, (), tuple(missing), tuple(assumed))
    sides = () if "track" in bands else ("trailer.axles.track",)
    bands.setdefault("track", ("trailer.axles.track", NO_TRACK))
    bands["coupler_x"] = ("trailer.coupler_x", box.coupler_x)
    at = {name: band.best for name, (_, band) in bands.items()}
    best = Geometry(
        running_gear=box.running_gear,
        coupler_x=at["coupler_x"],
        axles_x=tuple(axle.x.best for axle in box.axles),
        track=at["track"],
        ball_raise=at["ball_raise"],
        ball_above_axle=at["ball_above_axle"],
        axle_z=at["axle_z"],
        axle_rate=at["axle_rate"],
    )
    doubts = [
        Doubt(path, band, replace(best, **{name: band.low}), replace(best, **{name: band.high}))  # type: ignore[arg-type]
        for name, (path, band) in bands.items()
        if band.low != band.high
    ]
    doubts += [
        Doubt(f"trailer.axles.x[{i}]", axle.x, _with_axle(best, i, axle.x.low), _with_axle(best, i, axle.x.high))
        for i, axle in enumerate(box.axles)
        if axle.x.low != axle.x.high
    ]
    return Measures(best, tuple(doubts), (), tuple(assumed), sides)


def _heights(box: Box, ball_height: Band) -> tuple[dict[str, tuple[str, Band]], list[str]]:
    """Return the measures that follow from heights, and the paths of those that had to be assumed."""
    assumed: list[str] = []
    bands: dict[str, tuple[str, Band]] = {}
    tow, coupler, deck, tyres = "tow.ball_height", "trailer.coupler_height", "trailer.deck_height", "trailer.tyres.size"
    for name, (upper_path, upper), (lower_path, lower) in (
        ("ball_raise", (tow, ball_height), (coupler, box.coupler_height)),
        ("ball_above_axle", (coupler, box.coupler_height), (tyres, box.wheel_radius)),
        ("axle_z", (tyres, box.wheel_radius), (deck, box.deck_height)),
    ):
        unknown = [path for path, band in ((upper_path, upper), (lower_path, lower)) if not _is_known(band)]
        bands[name] = (unknown[0], ASSUMED[name]) if unknown else (upper_path, _difference(upper, lower))
        if name == "ball_raise":
            assumed += unknown
    if _is_known(box.axle_rate):
        bands["axle_rate"] = ("trailer.axles.rate", box.axle_rate)
    else:
        bands["axle_rate"] = ("trailer.axles.rate", ASSUMED["axle_rate"])
        if box.running_gear == "independent":
            assumed.append("trailer.axles.rate")
    return bands, assumed


def _is_known(band: Band) -> bool:
    return band.known and band.high != inf and band.low != -inf


def _difference(upper: Band, lower: Band) -> Band:
    """Return one height over another; the doubts of both add straight, which is never too narrow."""
    low, high = upper.low - lower.high, upper.high - lower.low
    return Band(upper.best - lower.best, low, high, spread="exact" if low == high else "interval")


def _times(band: Band, factor: float) -> Band:
    return replace(band, best=band.best * factor, low=band.low * factor, high=band.high * factor)


def _with_axle(geometry: Geometry, index: int, place: float) -> Geometry:
    places = (*geometry.axles_x[:index], place, *geometry.axles_x[index + 1 :])
    return replace(geometry, axles_x=places)


@lru_cache(maxsize=512)
def loads_of(geometry: Geometry) -> Loads:
    """Return who carries what, as sums over the parts."""
    if geometry.running_gear == "independent" and len(geometry.carrying) > 1:
        tongue, axles = _torsion_loads(geometry)
    else:
        tongue = _pitched_tongue(geometry)
        share = 1.0 / len(geometry.carrying)
        each = GROSS.plus(tongue, -1.0)
        each = Coefficients(*(share * part for part in each))
        axles = tuple(each if i in geometry.carrying else NOTHING for i in range(len(geometry.axles_x)))
    left, right = _sides(geometry, axles)
    none = NOTHING
    return Loads(tongue, GROSS.plus(tongue, -1.0), axles, left, right, sum_of(left, none), sum_of(right, none))


def sum_of(parts: tuple[Coefficients, ...], start: Coefficients) -> Coefficients:
    """Return several sums over the parts added to one."""
    for part in parts:
        start = start.plus(part)
    return start


def _pitched_tongue(geometry: Geometry) -> Coefficients:
    """Return the ball's load where axle or group acts at one place, the nose up or down with the ball."""
    places = [geometry.axles_x[i] for i in geometry.carrying]
    middle = sum(places) / len(places)
    lever = middle - geometry.coupler_x
    pitch = method.ball_pitch(geometry.ball_raise, lever, geometry.ball_above_axle)

    def tongue(x: float, z: float) -> float:
        return method.pitched_tongue_mass(1.0, middle - x, z - geometry.axle_z, lever, geometry.ball_above_axle, pitch)

    base = tongue(0.0, 0.0)
    return Coefficients(base, tongue(1.0, 0.0) - base, 0.0, tongue(0.0, 1.0) - base)


def _torsion_loads(geometry: Geometry) -> tuple[Coefficients, tuple[Coefficients, ...]]:
    """Return the loads of ball and axles where every axle has springs of its own."""
    places = tuple(geometry.axles_x[i] for i in geometry.carrying)

    def loads(mass: float, x: float) -> tuple[float, ...]:
        found = method.torsion_tandem(mass, x, geometry.coupler_x, places, geometry.axle_rate, geometry.ball_raise)
        return found.tongue, *found.axles

    unloaded, at_zero, at_one = loads(0.0, 0.0), loads(1.0, 0.0), loads(1.0, 1.0)
    tongue, *carried = (
        Coefficients(zero - none, one - zero, constant=none)
        for none, zero, one in zip(unloaded, at_zero, at_one, strict=True)
    )
    standing = dict(zip(geometry.carrying, carried, strict=True))
    return tongue, tuple(standing.get(i, NOTHING) for i in range(len(geometry.axles_x)))


def _sides(
    geometry: Geometry, axles: tuple[Coefficients, ...]
) -> tuple[tuple[Coefficients, ...], tuple[Coefficients, ...]]:
    """Return the left and right wheels of each axle; the axles that carry hold the roll in equal parts."""
    roll = 1.0 / len(geometry.carrying)
    per_y = method.right_wheels_mass(0.0, roll, 1.0, geometry.track)
    left, right = [], []
    for index, axle in enumerate(axles):
        half = Coefficients(*(part / 2 for part in axle))
        lean = Coefficients(0.0, per_y=per_y if index in geometry.carrying else 0.0)
        left.append(half.plus(lean, -1.0))
        right.append(half.plus(lean))
    return tuple(left), tuple(right)
