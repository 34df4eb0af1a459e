"""What settles behind foam and lining, where nobody sees it: vapour that passes what stands before it, by the hour."""

from __future__ import annotations

from typing import Literal

from boxwright.disciplines.air import method
from boxwright.disciplines.air.sourced import STILL_AIR, vapour_factor
from boxwright.exchange import ColdPlace, Layup
from boxwright.units import Band

Damp = Literal["dry", "best", "wet"]
"""An end of what is not known: the driest night there may be, the most likely one, the wettest."""

HOUR = 3600.0
TIGHT = 1e4
"""m of still air: what a skin of metal holds back (the water settles inside of it in any case)."""
EDGE = 1e-3
"""Resistances are shares of the whole here: films and skin keep this much, so that none is nothing."""
SKIN = "skin behind"
"""How heat names a skin that foam stands before; what else is hidden is a member behind its lining."""


def less_for_wet(band: Band, end: Damp) -> float:
    """Return a value of which less makes it wetter, at one end of what is not known."""
    return {"dry": band.high, "best": band.best, "wet": band.low}[end]


def is_hidden(cold: ColdPlace) -> bool:
    """Return whether damp air of the room reaches a cold place as vapour only, through what stands before it."""
    return cold.reach != "open"


def is_skin(cold: ColdPlace) -> bool:
    """Return whether a hidden place is the skin behind foam."""
    return cold.what.startswith(SKIN)


def vapour_lengths(cold: ColdPlace, layup: Layup, end: Damp = "best") -> tuple[float, ...]:
    """Return as how much still air (m) each layer before a hidden place holds vapour back, from outside inwards.

    A layer that stands perhaps holds back at the dry end alone.
    """
    passed_by = "members" if is_skin(cold) else "bays"
    found = []
    for layer in layup.layers:
        if layer.where == passed_by or not (layer.is_certain or end == "dry"):
            continue
        thick = less_for_wet(layer.thick, end) if layer.thick is not None and layer.thick.known else 0.0
        if thick > 0.0:
            found.append(vapour_factor(layer.material or layer.name) * thick)
    return tuple(found)


def settled_by_hour(
    cold: ColdPlace, layup: Layup, outside: tuple[float, ...], air: tuple[float, ...], vapour: tuple[float, ...],
    outside_vapour: tuple[float, ...], end: Damp = "best",
) -> tuple[float, ...]:  # fmt: skip
    """Return the water (kg/m2) that has settled on a hidden place by the end of each hour; it dries where it can."""
    lengths = vapour_lengths(cold, layup, end)
    if not lengths:
        return ()
    factor = min(max(less_for_wet(cold.factor, end), EDGE), 1.0 - EDGE)
    inward = (1.0 - factor - EDGE / 2.0) / len(lengths)
    resistances = (factor / 2.0, factor / 2.0, *(inward for _ in lengths), EDGE / 2.0)
    stands, found = 0.0, []
    for outdoors, room, inside, around in zip(outside, air, vapour, outside_vapour, strict=True):
        if room > outdoors:
            one = method.settled_in_wall(
                resistances, (TIGHT, *lengths), outdoors, room, around, inside, STILL_AIR, HOUR
            )
            stands = max(stands + one.settles[1], 0.0)
        found.append(stands)
    return tuple(found)
