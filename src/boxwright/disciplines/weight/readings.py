"""Readings of instruments: what a scale may be off, what two tickets or a plank say of the tongue, with their doubt."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt
from typing import NamedTuple

from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.sourced import LENGTH_WITHIN, WITHIN, WITHIN_SHARE
from boxwright.units import COVERAGE, Band, exactly


class Pads(NamedTuple):
    """What the pads of a public scale say: the trailer's axles and its tongue."""

    axles: Band
    tongue: Band


def instrument_doubt(instrument: str, value: Band) -> Band:
    """Return a reading with the half-width its instrument usually has, marked assumed.

    A name that holds a known one counts as it ("public scale, cash 12"); any other gets the widest line of the table.
    """
    words = instrument.strip().lower()
    fitting = [name for name in WITHIN if name and name in words]
    name = max(fitting, key=len) if fitting else ""
    half = max(WITHIN[name], WITHIN_SHARE[name] * value.best)
    return replace(value, low=max(0.0, value.best - half), high=value.best + half, spread="sigma", assumed=True)


def scale_pads_reading(hitched: list[Band], alone: list[Band]) -> Pads:
    """Return axles and tongue from two tickets: steer, drive and trailer axles hitched; steer and drive alone."""
    readings = (hitched[0], hitched[1], alone[0], alone[1])
    tongue = method.ticket_tongue(*(reading.best for reading in readings))
    doubt = sqrt(sum(reading.standard_uncertainty**2 for reading in readings))
    return Pads(hitched[2], _sigma(tongue, doubt, readings))


def plank_reading(reading: Band, bare: Band | None, to_scale: Band, to_ball: Band) -> Band:
    """Return the tongue weight by bathroom scale and plank; a length without doubt has that of a plank laid by tape."""
    bare = bare if bare is not None else exactly(0.0)
    scale_arm, ball_arm = _read_by_tape(to_scale), _read_by_tape(to_ball)
    tongue = method.plank_tongue(reading.best, bare.best, scale_arm.best, ball_arm.best)
    doubt = method.plank_uncertainty(
        reading.best - bare.best,
        scale_arm.best,
        ball_arm.best,
        sqrt(reading.standard_uncertainty**2 + bare.standard_uncertainty**2),
        scale_arm.standard_uncertainty,
        ball_arm.standard_uncertainty,
    )
    return _sigma(tongue, doubt, (reading, bare, scale_arm, ball_arm))


def _read_by_tape(length: Band) -> Band:
    if length.spread != "exact":
        return length
    half = LENGTH_WITHIN["plank"]
    return replace(length, low=length.best - half, high=length.best + half, spread="sigma", assumed=True)


def _sigma(best: float, doubt: float, parts: tuple[Band, ...]) -> Band:
    """Return a worked-out reading with its half-width at 95 %; unknown where one of its parts is."""
    half = COVERAGE * doubt
    is_known, is_assumed = all(part.known for part in parts), any(part.assumed for part in parts)
    return Band(best, best - half, best + half, is_known, "sigma" if half > 0.0 else "exact", is_assumed)
