"""Rules of heat: the coldest night, what burns and where its fumes go, the shell.

A rule of the warmth limits and never stops; a missing fact on fumes is a no while somebody sleeps.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from boxwright.disciplines.heat.findings.burner import (
    combustion_air,
    exhaust,
    exhaust_near_opening,
    fuel_not_known,
    unvented,
    wrong_fuel,
)
from boxwright.disciplines.heat.findings.cooler import (
    battery_for_the_day,
    cooler_breathes,
    cooler_feed,
    cooler_hatch,
    cooler_water,
)
from boxwright.disciplines.heat.findings.feed import (
    battery_for_the_night,
    draw_not_known,
    feed_not_known,
    feed_stands,
    feed_too_small,
    feed_volts,
)
from boxwright.disciplines.heat.findings.fitting import exhaust_under_floor, opening_not_placed, pump_angle
from boxwright.disciplines.heat.findings.frost import frost, left_in_cold
from boxwright.disciplines.heat.findings.fumes import (
    exhaust_clear,
    exhaust_falls,
    exhaust_length,
    exhaust_near_intake,
    hot_plate,
)
from boxwright.disciplines.heat.findings.hard_places import fuel_thickens, height_not_known, too_high
from boxwright.disciplines.heat.findings.hot import hot_not_known, left_in_heat, too_hot
from boxwright.disciplines.heat.findings.night import (
    cold_at_work,
    fuel_for_the_night,
    heat_not_known,
    held,
    night_not_known,
    room_not_known,
    settings_crossed,
    too_warm_at_lowest,
)
from boxwright.disciplines.heat.findings.noise import loud_at_night
from boxwright.disciplines.heat.findings.proved import logged_apart
from boxwright.disciplines.heat.findings.shell import (
    bare_plane,
    colour_not_known,
    foam_too_thick,
    frame_not_known,
    hole_not_known,
    material_not_known,
    metal_bridge,
    no_thickness,
    thickness_not_known,
)
from boxwright.disciplines.heat.findings.stated import counted_burn, stated_burn, stated_hours
from boxwright.disciplines.heat.findings.way import fuel_drains_in, fuel_reach, fuel_valve, line_bore, pump_lift
from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.telling import WORK
from boxwright.finding import Finding
from boxwright.units import HeaderUnits

__all__ = [
    "bare_plane",
    "battery_for_the_day",
    "battery_for_the_night",
    "cold_at_work",
    "colour_not_known",
    "combustion_air",
    "cooler_breathes",
    "cooler_feed",
    "cooler_hatch",
    "cooler_water",
    "counted_burn",
    "draw_not_known",
    "exhaust",
    "exhaust_clear",
    "exhaust_falls",
    "exhaust_length",
    "exhaust_near_intake",
    "exhaust_near_opening",
    "exhaust_under_floor",
    "feed_not_known",
    "feed_stands",
    "feed_too_small",
    "feed_volts",
    "findings",
    "foam_too_thick",
    "frame_not_known",
    "frost",
    "fuel_drains_in",
    "fuel_for_the_night",
    "fuel_not_known",
    "fuel_reach",
    "fuel_thickens",
    "fuel_valve",
    "heat_not_known",
    "height_not_known",
    "held",
    "hole_not_known",
    "hot_not_known",
    "hot_plate",
    "left_in_cold",
    "left_in_heat",
    "line_bore",
    "logged_apart",
    "loud_at_night",
    "material_not_known",
    "metal_bridge",
    "night_not_known",
    "no_thickness",
    "opening_not_placed",
    "pump_angle",
    "pump_lift",
    "room_not_known",
    "settings_crossed",
    "stated_burn",
    "stated_hours",
    "thickness_not_known",
    "too_high",
    "too_hot",
    "too_warm_at_lowest",
    "unvented",
    "wrong_fuel",
]

RULES: tuple[Callable[[Result, HeaderUnits], Iterator[Finding]], ...] = (
    unvented,
    fuel_not_known,
    wrong_fuel,
    exhaust,
    combustion_air,
    exhaust_near_opening,
    exhaust_under_floor,
    opening_not_placed,
    exhaust_near_intake,
    exhaust_falls,
    exhaust_length,
    exhaust_clear,
    hot_plate,
    night_not_known,
    room_not_known,
    hot_not_known,
    too_hot,
    left_in_heat,
    left_in_cold,
    cold_at_work,
    heat_not_known,
    height_not_known,
    feed_not_known,
    feed_stands,
    feed_too_small,
    feed_volts,
    battery_for_the_night,
    draw_not_known,
    settings_crossed,
    held,
    logged_apart,
    too_high,
    too_warm_at_lowest,
    fuel_for_the_night,
    fuel_thickens,
    stated_burn,
    counted_burn,
    stated_hours,
    fuel_valve,
    fuel_drains_in,
    fuel_reach,
    pump_angle,
    pump_lift,
    line_bore,
    loud_at_night,
    frost,
    cooler_hatch,
    cooler_feed,
    battery_for_the_day,
    cooler_breathes,
    cooler_water,
    material_not_known,
    thickness_not_known,
    no_thickness,
    foam_too_thick,
    bare_plane,
    metal_bridge,
    frame_not_known,
    hole_not_known,
    colour_not_known,
)


OF_FUMES = (
    fuel_not_known,
    exhaust,
    combustion_air,
    exhaust_near_opening,
    exhaust_near_intake,
    exhaust_falls,
    exhaust_length,
    exhaust_clear,
    hot_plate,
)
"""What is asked of a heater with a sleeper beside it and holds as well for who works beside it."""


def findings(result: Result, shown_in: HeaderUnits) -> tuple[Finding, ...]:
    """Return what all rules of heat have to say of one slot."""
    return (*(finding for rule in RULES for finding in rule(result, shown_in)), *_fumes_at_work(result, shown_in))


def _fumes_at_work(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Give what is said of a heater to who works beside it: awake they may still leave, so a stop is a limit."""
    if result.use != "work":
        return
    beside = replace(result, use="sleep")
    for finding in (one for rule in OF_FUMES for one in rule(beside, shown_in)):
        kind = "limit" if finding.kind == "stop" else finding.kind
        yield replace(finding, kind=kind, protects=False, uses=WORK)
