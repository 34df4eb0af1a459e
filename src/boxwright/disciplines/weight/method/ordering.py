"""Where the axle belongs: for the order that cannot be taken back."""

from __future__ import annotations

from typing import NamedTuple

from boxwright.units import Kilogram, Metre, OutOfRange, Ratio


class Window(NamedTuple):
    """The places between which the axle may stand; not open where the states exclude each other."""

    low: Metre
    high: Metre
    is_open: bool


def axle_place(body: Kilogram, centre_x: Metre, running_gear: Kilogram, target: Ratio, coupler_x: Metre) -> Metre:
    """Return the axle place at which the ball carries a target share of the whole weight.

    ``body`` and its centre are without the running gear, which moves with the axle and stands over it.

    Formula: axle_x = coupler_x + (centre_x - coupler_x) / (1 - target * (body + running_gear) / body)
    Valid: a body above zero; a target so small that the axle still carries something of the body
    Source: first-principles section 8
    Departs: nothing
    Assumes: the running gear's own centre is at the axle
    """
    OutOfRange.unless_positive("body", body)
    carried = 1 - target * (body + running_gear) / body
    OutOfRange.unless_positive("target", carried)
    return coupler_x + (centre_x - coupler_x) / carried


def axle_window(
    bodies: tuple[Kilogram, ...],
    centres_x: tuple[Metre, ...],
    running_gear: Kilogram,
    least: Ratio,
    most: Ratio,
    coupler_x: Metre,
) -> Window:
    """Return the axle places that keep the share between two ends in every load state.

    Each state gives an interval of places; the axle must stand in all of them.

    Satisfies: result.low - max(axle_place(b, x, running_gear, least, coupler_x) for b, x in zip(bodies,
        centres_x)); result.high - min(axle_place(b, x, running_gear, most, coupler_x) for b, x in zip(bodies,
        centres_x))
    Valid: as ``axle_place``, one centre for each state
    Source: first-principles section 8
    Departs: nothing
    Assumes: as ``axle_place``
    """
    states = tuple(zip(bodies, centres_x, strict=True))
    low = max(axle_place(body, x, running_gear, least, coupler_x) for body, x in states)
    high = min(axle_place(body, x, running_gear, most, coupler_x) for body, x in states)
    return Window(low, high, low <= high)


def habit_share(box: Metre, drawbar: Metre, fraction: Ratio) -> Ratio:
    """Return the share on the ball of an evenly loaded box with its axle at a fraction of its length.

    With a fraction of 0.6 it is the 60/40 habit. Furniture is not spread evenly: a start, not an answer.

    Formula: share = (fraction - 0.5) * box / (drawbar + fraction * box)
    Valid: box and drawbar above zero
    Source: sixty-forty
    Departs: nothing
    Assumes: weight spread evenly over the box, none on the drawbar
    """
    OutOfRange.unless_positive("box", box)
    OutOfRange.unless_positive("drawbar", drawbar)
    return (fraction - 0.5) * box / (drawbar + fraction * box)
