"""Tables of what burns: the way of its fuel, air and fumes with what nobody wrote, and how far its fumes end from what.

A heater that runs on electricity has none.
"""

from __future__ import annotations

from dataclasses import replace
from math import inf
from typing import TYPE_CHECKING

from boxwright.disciplines.heat.battery import taken_at, whole_of
from boxwright.disciplines.heat.burner import air_share
from boxwright.disciplines.heat.burning import burns_of
from boxwright.disciplines.heat.electricity import lasts
from boxwright.disciplines.heat.findings.burner import corners_of
from boxwright.disciplines.heat.findings.fumes import UPWARD, gap_between, intake_gap
from boxwright.disciplines.heat.findings.stated import filling_hours, heat_by_hours, hours_by_burn, is_counted
from boxwright.disciplines.heat.fuel_way import Piece, way_of
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.parts import Noise
from boxwright.disciplines.heat.result import Result, StandingHeater
from boxwright.disciplines.heat.sound import QUIET, heard
from boxwright.disciplines.heat.telling import above_sea, full_in_words, warm
from boxwright.exchange import ElectricLoad, Opening
from boxwright.units import Band, HeaderUnits, show, show_band

if TYPE_CHECKING:
    from boxwright.drawing import Grid

NOBODY = "nobody wrote"
Row = tuple[str, str, str]


def burner_grids(
    heater: StandingHeater, openings: tuple[Opening, ...], held: tuple[HeldNight, ...], shown_in: HeaderUnits
) -> tuple[Grid, ...]:
    """Return the tables of one heater; none where it burns nothing."""
    from boxwright.drawing import Grid

    if heater.runs == "electric":
        return ()
    planned = heater.planned
    rows = [*_fuel(heater, shown_in), *_fumes(heater, shown_in), *_up_there(heater, held, shown_in)]
    grids = [Grid(f"Fuel, air and fumes of {planned.name}", ("", "", ""), tuple(rows), (planned.of,) * len(rows))]
    way = _way(heater, shown_in)
    if way:
        columns = ("From tank to burner", "Lies", "Above the deck", "Where it is opened runs out")
        grids.append(Grid(f"The way of the fuel of {planned.name}", columns, way, (planned.of,) * len(way)))
    apart, of = _apart(heater, openings, shown_in)
    if apart:
        heads = ("From the end of the exhaust to", "At least", "At most")
        grids.append(Grid(f"How far the fumes of {planned.name} end from what opens", heads, apart, of))
    return tuple(grids)


def electricity(result: Result, shown_in: HeaderUnits) -> tuple[Grid, ...]:
    """Return what each heater takes of electricity in each night; none where no heater takes any."""
    from boxwright.drawing import Grid

    heaters = {one.planned.of: one for one in result.heaters}
    loads = [one for one in result.loads if one.of in heaters]
    if not loads:
        return ()
    rows = tuple(
        (
            f"{load.when}, {heaters[load.of].planned.name}",
            " from ".join(heaters[load.of].feed.way) or "not written",
            show_band(load.watt, "power", shown_in),
            _starts(load, shown_in),
            show_band(load.joule, "energy", shown_in),
            _lasting(load, result, shown_in),
        )
        for load in loads
    )
    columns = ("Place, heater", "Fed by", "While it runs", "Starts", "All night", "Its battery")
    of = tuple(one.of for one in loads)
    return (Grid("What heaters take of electricity in that night", columns, rows, of),)


def _lasting(load: ElectricLoad, result: Result, shown_in: HeaderUnits) -> str:
    """Return what its battery gives and how long that lasts all that hangs on it; nothing where none feeds it."""
    hung = next((one for one in result.batteries if load.of in one.heaters), None)
    if hung is None:
        return ""
    if not hung.holds.known:
        return f"{NOBODY} what it holds"
    whole = whole_of(hung, taken_at(hung, result.loads, load.when))
    gives = show_band(replace(hung.holds, assumed=False), "energy", shown_in)
    full = full_in_words(hung.charge)
    long = show_band(lasts(hung.holds, whole), "time", shown_in)
    return f"{full} gives {gives}, lasts {long} with all that hangs on it"


def _starts(load: ElectricLoad, shown_in: HeaderUnits) -> str:
    """Return how often a heater starts and what it takes then; nothing for one that has no start."""
    if load.starts.high <= 0.0:
        return ""
    low, high = round(load.starts.low), round(load.starts.high)
    often = f"{low}" if low == high else f"{low} to {high}"
    return f"{often}{', each' if high > 1 else ''} at {show_band(load.surge, 'power', shown_in)}"


def _fuel(heater: StandingHeater, shown_in: HeaderUnits) -> list[Row]:
    planned, tank = heater.planned, heater.tank
    rows: list[Row] = []
    if tank is not None:
        under, over, burner = (
            show(one.best, "length", shown_in) for one in (tank.low, tank.high, planned.place.low_edge(2))
        )
        rows.append(("tank", tank.name, f"{under} to {over} above the deck; burner at {burner}"))
    else:
        rows.append(("tank", f"{NOBODY} which", "write it first in path"))
    lasting = filling_hours(heater)
    if lasting is not None:
        flat_out, slow = (show_band(each, "time", shown_in) for each in lasting)
        by = "by its pump as counted" if is_counted(heater) else "by what is in the fuel"
        rows.append(("a filling", f"{flat_out} flat out, {slow} at its lowest", by))
    burnt = hours_by_burn(heater)
    if burnt is not None and not is_counted(heater):
        each = (("flat out", burnt.flat_out), ("at its lowest", burnt.slow))
        told = ", ".join(f"{show_band(one, 'time', shown_in)} {at}" for at, one in each if one is not None)
        rows.append(("a filling burnt", told, "by what it is said to burn"))
    said, heat = planned.heater.lasts, heat_by_hours(heater)
    if said is not None and heat is not None:
        hours, comes_to = show(said.best, "time", shown_in), show_band(replace(heat, assumed=False), "power", shown_in)
        rows.append(("said to last", hours, f"{comes_to} of heat"))
    burns = burns_of(planned.heater)
    if burns is not None:
        both = (("flat out", burns.highest), ("at its lowest", burns.lowest))
        told = ", ".join(f"{show(rate.best, 'fuel flow', shown_in)} {at}" for at, rate in both if rate is not None)
        if told:
            rows.append(("burns", told, "as its pump was counted" if burns.is_counted else "as it is said to"))
    return rows


def _way(heater: StandingHeater, shown_in: HeaderUnits) -> tuple[tuple[str, str, str, str], ...]:
    """Return the pieces between tank and burner: where each lies, how high, and what runs out where it is opened."""
    return tuple(
        (
            piece.written,
            piece.where if piece.where != "unknown" else f"{NOBODY} where",
            show_band(piece.level, "length", shown_in) if piece.level.known else "",
            _opened(piece) if piece.is_opened else "",
        )
        for piece in way_of(heater, shown_in)
    )


def _opened(piece: Piece) -> str:
    """Return what runs out of a piece that is opened."""
    if piece.runs is False:
        return "higher than the fuel: little runs out"
    flows = "what is in the line, its valve shut" if piece.is_shut_off else "the tank, by its siphon"
    if piece.where == "outside":
        return f"{flows}, on the ground"
    into = "into the room" if piece.where == "in the room" else f"{NOBODY} whereto"
    return f"{flows}, {into}" + ("" if piece.runs else "; perhaps")


def _fumes(heater: StandingHeater, shown_in: HeaderUnits) -> list[Row]:
    """Return what is written of exhaust, air and plate, and what is not."""
    facet = heater.planned.heater
    exhaust, intake = facet.exhaust, facet.intake
    if exhaust is None:
        rows: list[Row] = [("exhaust", f"{NOBODY} where", "")]
    else:
        below = f", below {exhaust.below}" if exhaust.below else ""
        longest = _measure(exhaust.longest, shown_in)
        falls = {True: "falls all the way", False: "does not fall all the way", None: f"{NOBODY} whether it falls"}
        falls[None] = "a chimney" if " ".join(exhaust.out.lower().split()) in UPWARD else falls[None]
        rows = [
            ("exhaust", f"out {exhaust.out}{below}" if exhaust.out else f"{NOBODY} where", falls[exhaust.falls]),
            ("its length", _measure(exhaust.length, shown_in), f"its leaflet lets it be: {longest}"),
            ("to what burns", _measure(exhaust.clear, shown_in), "at the nearest, all along it"),
        ]
    rows.append(("burner's air", f"from {intake.out}" if intake is not None else f"{NOBODY} whence", ""))
    rows += _heard(facet.noise, shown_in)
    plate = facet.plate
    is_known = plate is not None and plate.known
    rows.append(("its plate", f"gets {warm(plate.best, shown_in)}" if plate is not None and is_known else NOBODY, ""))
    return rows


def _heard(noise: Noise | None, shown_in: HeaderUnits) -> list[Row]:
    """Return how loud it is at the pillow and at the neighbour's, beside what leaves people asleep there."""
    rows: list[Row] = []
    if noise is not None:
        for row, distance in (("at the pillow", noise.pillow), ("at the neighbour's", noise.neighbour)):
            level = heard(noise, distance)
            told = f"{level.best:.0f} dB, {_measure(distance, shown_in)} away" if level is not None else NOBODY
            rows.append((f"heard {row}", told, f"nothing between; {QUIET[row]:.0f} dB leave people asleep there"))
    return rows


def _up_there(heater: StandingHeater, held: tuple[HeldNight, ...], shown_in: HeaderUnits) -> list[Row]:
    """Return what a burner gives at each place by how high it lies."""
    rows: list[Row] = []
    for one in held:
        warmth, height = one.warmth, one.outdoors.height
        share = air_share(height)
        if warmth is None or warmth.of != heater.planned.of:
            continue
        if height is None or share is None:
            rows.append((f"at {one.outdoors.place}", f"{NOBODY} how high it lies", ""))
            continue
        gives = f"gives up to {show_band(warmth.highest, 'power', shown_in)}" if warmth.highest.known else ""
        air = f"gets {share.best * 100:.0f} % of the air it gets by the sea"
        rows.append((f"at {one.outdoors.place}, {above_sea(height.best, shown_in)}", gives, air))
    return rows


def _measure(band: Band | None, shown_in: HeaderUnits) -> str:
    return show_band(band, "length", shown_in) if band is not None and band.known else NOBODY


def _apart(
    heater: StandingHeater, openings: tuple[Opening, ...], shown_in: HeaderUnits
) -> tuple[tuple[Row, ...], tuple[str, ...]]:
    """Return how far the exhaust ends from the burner's own air and from each opening, the nearest first."""
    if heater.ends_low is None or heater.ends_high is None:
        return (), ()
    ends = (heater.ends_low, heater.ends_high)
    gaps: list[tuple[str, str, Band | None]] = []
    for one in openings:
        corners = corners_of(one)
        gaps.append((one.of, one.name, gap_between(ends, corners) if corners is not None else None))
    gaps.sort(key=lambda each: each[2].low if each[2] is not None else 0.0)
    gaps.insert(0, (heater.planned.of, "its own combustion air", intake_gap(heater)))
    rows = tuple((name, *_least_and_most(gap, shown_in)) for _, name, gap in gaps)
    return rows, tuple(of for of, _, _ in gaps)


def _least_and_most(gap: Band | None, shown_in: HeaderUnits) -> tuple[str, str]:
    if gap is None or not gap.high < inf:
        return f"{NOBODY} where it is", ""
    return show(gap.low, "length", shown_in), show(gap.high, "length", shown_in)
