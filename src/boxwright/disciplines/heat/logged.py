"""A night with a logger: what the room really loses, from a heat that is known, beside what was worked out."""

from __future__ import annotations

from dataclasses import replace
from itertools import product
from typing import Literal

from boxwright.disciplines.heat.cold_hours import Inside, Outdoors, Warmth
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.method import (
    OneMass,
    drifting_loss,
    one_mass,
    straight_through,
    two_slope_loss,
)
from boxwright.disciplines.heat.night import HeldNight, night_of
from boxwright.disciplines.heat.room import NIGHT
from boxwright.disciplines.heat.shell import Face, Shell
from boxwright.records import dataclass
from boxwright.units import Band, OutOfRange, exactly

SHARES: dict[str, float] = {name: row[0] for name, row in columns("logged_shares").items()}
HOURS: dict[str, float] = {name: row[0] for name, row in columns("logged_hours").items()}
OVER: dict[str, float] = {name: row[0] for name, row in columns("logged_over").items()}
SURE = 2.0
"""Standard errors on either side that count as known."""
STRONG = 20_000.0
"""W, more than any room asks for: a heater that held what was logged."""
How = Literal["two slopes", "held even", "cooled alone", "too short", "too even"]


@dataclass(frozen=True, slots=True)
class LoggedNight:
    """Readings of one night by the time (s) since the first: K inside and outside, W of heat from each to the next.

    ``doubt`` is how far the heat may be off, as a share.
    """

    came_from: str
    times: tuple[float, ...]
    inside: tuple[float, ...]
    outside: tuple[float, ...]
    heat: tuple[float, ...]
    doubt: float


@dataclass(frozen=True, slots=True)
class NightLoss:
    """What a night tells. ``loss`` (W/K) is None where it tells none; ``lasts`` is the time (s) of cooling by itself.

    ``over`` is how much warmer (K) the room was in the hours that were used. ``one`` is one mass fitted to the whole
    night, None where it cannot be; ``is_one_mass`` whether the room behaved as one.
    """

    how: How
    loss: Band | None
    over: float
    lasts: float | None
    one: OneMass | None

    @property
    def is_one_mass(self) -> bool:
        """Return whether readings lie about one mass as readings err, each by itself."""
        return self.one is not None and self.one.alike < SHARES["errs alike"]


def night_loss(night: LoggedNight, capacity: Band) -> NightLoss:
    """Return what a night tells of the loss; ``capacity`` (J/K) is what the room is reckoned to hold."""
    try:
        one = one_mass(night.times, night.inside, night.outside, night.heat)
    except OutOfRange:
        one = None
    if max(night.heat) <= 0.0:
        return _cooled(night)
    split = _split(night)
    if split is not None:
        return _by_two_slopes(night, split, one)
    if _span(night) < HOURS["held even"]:
        return NightLoss("too short", None, 0.0, None, one)
    return _by_even_heat(night, capacity, one)


def _span(night: LoggedNight) -> float:
    return night.times[-1] - night.times[0]


def _mean_heat(night: LoggedNight, first: int, last: int) -> float:
    """Return the mean heat between two readings."""
    given = sum(night.heat[at] * (night.times[at + 1] - night.times[at]) for at in range(first, last))
    return given / (night.times[last] - night.times[first])


def _split(night: LoggedNight) -> int | None:
    """Return the reading between two heats that differ most; None where no two do that last long enough."""
    best, found = 0.0, None
    last = len(night.times) - 1
    for at in range(1, last):
        if min(night.times[at] - night.times[0], night.times[last] - night.times[at]) < HOURS["a slope"]:
            continue
        before, after = _mean_heat(night, 0, at), _mean_heat(night, at, last)
        apart = abs(before - after) / max(before, after, 1e-9)
        if apart > best:
            best, found = apart, at
    return found if best >= SHARES["heats that differ"] else None


def _window(night: LoggedNight, last: int, lasting: float) -> int:
    """Return the first reading of the hours that end with one."""
    return next(at for at in range(last + 1) if night.times[last] - night.times[at] <= lasting)


def _phase(night: LoggedNight, last: int, lasting: float) -> tuple[float, float, float, float]:
    """Return heat, slope, doubt of the slope and how much warmer it was, of the hours that end with a reading."""
    first = _window(night, last, lasting)
    times, inside = night.times[first : last + 1], night.inside[first : last + 1]
    straight = straight_through(times, inside)
    outside = night.outside[first : last + 1]
    over = straight.middle - sum(outside) / len(outside)
    return _mean_heat(night, first, last), straight.slope, straight.doubt, over


def _by_two_slopes(night: LoggedNight, split: int, one: OneMass | None) -> NightLoss:
    lasting = HOURS["a slope"]
    first, second = _phase(night, split, lasting), _phase(night, len(night.times) - 1, lasting)
    over = (first[3] + second[3]) / 2.0
    if min(first[3], second[3]) < OVER["at least"]:
        return NightLoss("too even", None, over, None, one)

    def loss(off: tuple[float, ...]) -> float:
        slopes = [phase[1] + SURE * sign * phase[2] for phase, sign in zip((first, second), off, strict=True)]
        return two_slope_loss(first[0], second[0], slopes[0], slopes[1], first[3], second[3])

    try:
        ends = [loss(off) for off in product((-1.0, 0.0, 1.0), repeat=2)]
        best = loss((0.0, 0.0))
    except OutOfRange:
        return NightLoss("too even", None, over, None, one)
    return NightLoss("two slopes", _doubted(best, ends, SHARES["two slopes"], night.doubt), over, None, one)


def _by_even_heat(night: LoggedNight, capacity: Band, one: OneMass | None) -> NightLoss:
    heat, slope, doubt, over = _phase(night, len(night.times) - 1, HOURS["held even"])
    if over < OVER["at least"]:
        return NightLoss("too even", None, over, None, one)
    ends = [
        drifting_loss(heat, over, holds, slope + SURE * sign * doubt)
        for holds, sign in product((capacity.low, capacity.best, capacity.high), (-1.0, 1.0))
    ]
    best = drifting_loss(heat, over, capacity.best, slope)
    return NightLoss("held even", _doubted(best, ends, SHARES["held even"], night.doubt), over, None, one)


def _cooled(night: LoggedNight) -> NightLoss:
    """Return how fast the room cools by itself, which tells nothing of its loss alone."""
    _, slope, _, over = _phase(night, len(night.times) - 1, HOURS["a slope"])
    lasts = -over / slope if slope < 0.0 < over else None
    return NightLoss("cooled alone", None, over, lasts, None)


def _doubted(best: float, ends: list[float], share: float, heat: float) -> Band:
    """Return a loss with all its doubt added: that of the slopes, of the way it is told by, and of the heat."""
    off = share + heat
    low, high = min(*ends, best) * (1.0 - off), max(*ends, best) * (1.0 + off)
    return Band(best, max(low, 0.0), high, spread="interval")


def worked_out(inside: Inside, night: LoggedNight) -> HeldNight:
    """Return the same night as it is worked out: as cold outside, and held as warm as it was."""
    cold, warm = (sum(values) / len(values) for values in (night.outside, night.inside))
    return worked_at(inside, night.came_from, cold, warm)


def worked_at(inside: Inside, name: str, cold: float, warm: float) -> HeldNight:
    """Return a night as cold outside, and held as warm inside (K), as it is worked out."""
    outdoors = Outdoors("", name, exactly(cold), exactly(0.0), NIGHT["wind"])
    return night_of(inside, outdoors, Warmth("", "", exactly(0.0), exactly(STRONG), warm, False, True), ())


def as_measured(inside: Inside, worked: HeldNight, loss: Band) -> Inside | None:
    """Return the room with what was measured shared out between shell and air; None where none can.

    A night tells both together. On a windier one more of it blows through, so at the end of most loss the air has as
    much of it as the least shell leaves, and at the end of least loss the least there may be.
    """
    shell, flow = inside.shell, inside.airflow
    air = {end: getattr(worked.loss, end) - getattr(worked.shell, end) for end in ("low", "best", "high")}
    if shell.by_air.best <= 0.0:
        return None
    most = max(min(air["high"], loss.high - shell.by_air.low), air["best"])
    share = most / air["high"] if air["high"] > 0.0 else 1.0
    wanted = {"low": loss.low - air["low"], "best": loss.best - air["best"], "high": loss.high - most}
    if min(wanted.values()) <= 0.0:
        return None

    def capped(band: Band) -> Band:
        return replace(band, high=max(band.high * share, band.best))

    capped_flow = replace(flow, leak=capped(flow.leak), vents=capped(flow.vents), rise=capped(flow.rise))
    scaled = _scaled(shell, {end: value / getattr(shell.by_air, end) for end, value in wanted.items()})
    return replace(inside, shell=scaled, airflow=capped_flow)


def _scaled(shell: Shell, share: dict[str, float]) -> Shell:
    def times(band: Band) -> Band:
        ends = {end: getattr(band, end) * each for end, each in share.items()}
        low, high = min(ends.values()), max(ends.values())
        return Band(ends["best"], low, high, band.known, "interval", band.assumed)

    def face(one: Face) -> Face:
        return replace(one, by_air=times(one.by_air))

    return replace(shell, faces=tuple(face(one) for one in shell.faces), by_air=times(shell.by_air))
