"""What a plug of the trailer carries of what comes in from outside, for a heater that is borrowed for a night."""

from __future__ import annotations

from collections.abc import Mapping

from boxwright.disciplines.heat.feeds import HIGHEST_OF_A_BATTERY, Feed, Limit, ways_up
from boxwright.disciplines.heat.parts import Section


def plugged_in(own: Section) -> Limit | None:
    """Return the weakest fuse or breaker between outside and the plug of the trailer that carries most.

    A plug is where a wire of the mains ends and what lies there is nothing that takes, charges or gives; where there is
    none, any end of such a wire counts as one. None where nobody wrote a fuse or a breaker on the way to one.
    """
    all_there = dict.fromkeys([one.of for one in own.sources] + [one.of for one in own.leads], "yes")
    ways = {name: _from_outside(name, own, all_there) for name in dict.fromkeys(one.ends for one in own.leads)}
    onward = {one.starts for one in own.leads if ways[one.ends]}
    ends = [name for name, found in ways.items() if found and name not in onward]
    taken = {*(one.name for one in own.heaters), *(one.name for one in own.coolers), *(one.name for one in own.draws)}
    taken |= {one.name for one in own.sources if not (one.charges is one.gives is one.rated is None)}
    plugs = [name for name in ends if name not in taken] or ends
    each = [
        min((one for one in way.limits if one.kind != "site"), key=lambda one: one.gives.low, default=None)
        for name in plugs
        for way in ways[name]
    ]
    bounded = [one for one in each if one is not None]
    return max(bounded, key=lambda one: one.gives.low, default=None) if len(bounded) == len(each) else None


def _from_outside(name: str, own: Section, there: Mapping[str, str]) -> list[Feed]:
    """Return the ways by which the mains come to a thing."""
    ways = ways_up(name, own, there)
    return [one for one in ways if one.ends == "outside" and one.volts.best > HIGHEST_OF_A_BATTERY]
