"""The workings of what the chapters on heat and air show: each number by its formula, or by what it was summed from."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from boxwright.disciplines.air import method as air_method
from boxwright.disciplines.air import sourced as air
from boxwright.disciplines.air.breathing import PRESSURE
from boxwright.disciplines.air.result import DampNight, WetPlace
from boxwright.disciplines.heat import method as heat_method
from boxwright.disciplines.heat.burner import FUELS, fuel_named
from boxwright.disciplines.heat.burning import burns_as_counted, burns_of, fuel_of_night
from boxwright.disciplines.heat.cold_hours import ASLEEP_HOURS
from boxwright.disciplines.heat.findings.stated import filling_hours, hours_by_burn, is_counted
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.parts import COLDEST_NIGHT
from boxwright.disciplines.heat.result import Result as HeatResult
from boxwright.disciplines.heat.result import StandingHeater
from boxwright.disciplines.heat.room import HEAT_OF_AIR
from boxwright.disciplines.heat.shell import by_members
from boxwright.disciplines.heat.telling import source_of
from boxwright.study.slots import Slot
from boxwright.study.step import Step, Told
from boxwright.study.working_heaters import of_heaters
from boxwright.study.working_night import heat_of_the_hours, through_the_night, water_of_the_hour, wet_by_the_hour
from boxwright.study.working_section import of_sections
from boxwright.units import Band, HeaderUnits, show, shown_unit
from boxwright.units.quantity import scale_of

Steps = tuple[Step | Told, ...]
Named = Iterator[tuple[str, Steps]]
HOUR = 3600.0
HOW = {
    "stored": "its section, stored",
    "zone": "the zone method",
    "layers": "its layers",
    "bare": "its bare sheet",
    "edge": "a member each",
    "as written": "what is written",
}
"""What a face was worked out by, in words; what fills a hole counts as the range of its kind."""


def of_heat(slot: Slot) -> dict[str, Steps]:
    """Return the steps behind what the chapter on heat shows of a slot, at the best values."""
    result = slot.heat
    if result is None or not result.volume.known:
        return {}
    found: dict[str, Steps] = {"loss": (_losses(result),), "loss-by-members": (_by_members(result),)}
    for one in result.held:
        name = name_of_night(result, one)
        heater = next((h for h in result.heaters if one.warmth is not None and h.planned.of == one.warmth.of), None)
        found |= {f"{what} {name}": steps for what, steps in _of_night(one, heater, result)}
    for heater in result.heaters:
        steps = _filling(heater)
        if steps:
            found[f"a-filling {heater.planned.name}"] = steps
        burnt = _filling_burnt(heater)
        if burnt:
            found[f"a-filling-burnt {heater.planned.name}"] = burnt
    return found | of_heaters(result) | of_sections(result)


def name_of_night(result: HeatResult, one: HeldNight) -> str:
    """Return what the numbers of a night are asked for by: its place, and its heater where there are several."""
    heaters = {each.warmth.of for each in result.held if each.warmth is not None}
    return f"{one.outdoors.place} {one.warmth.name}" if one.warmth and len(heaters) > 1 else one.outdoors.place


def _losses(result: HeatResult) -> Told:
    """Return the sum of what all faces lose."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        lines = ["loss = sum of area * transmittance of each face, by the film of the air alone"]
        for one in sorted(result.shell.faces, key=lambda face: -face.by_air.best * face.area.best):
            area, through = one.area.best, one.by_air.best
            how = HOW.get(one.how, f"the range of a {one.how}")
            lines.append(
                f"  {one.name}: {_large(area, units)} * {_four(through, 'transmittance', units)}"
                f" = {_four(area * through, 'heat loss', units)}, by {how}, {one.of}"
            )
        lines.append(f"  = {show(result.shell.by_air.best, 'W/K', units)}")
        return (*lines, "  (sum; each face by its layers: heat RIG --section WALL shows how)")

    return Told(says)


def _large(area: float, units: HeaderUnits) -> str:
    """Return an area to four figures in the unit that a transmittance is for."""
    square = "ft2" if "ft2" in shown_unit("transmittance", units)[0] else "m2"
    return f"{scale_of(square).from_si(area):.4g} {square}"


def _four(value: float, quantity: str, units: HeaderUnits) -> str:
    """Return a number to four figures, so that a sum can be added up again."""
    unit, scale = shown_unit(quantity, units)
    return f"{scale.from_si(value):.4g} {unit}"


def _by_members(result: HeatResult) -> Told:
    """Return the sum of what studs, bows and edges add."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        each = [(one.name, by_members(one).best) for one in result.shell.faces]
        lines = ["loss by members = sum of what the members of each face add to its bays"]
        lines += [f"  {name}: {show(lost, 'W/K', units)}" for name, lost in each if lost > 0.0]
        lines.append(f"  = {show(sum(lost for _, lost in each), 'W/K', units)}")
        return (*lines, "  (sum; each by the section of its face)")

    return Told(says)


def _of_night(one: HeldNight, heater: StandingHeater | None, result: HeatResult) -> Iterator[tuple[str, Steps]]:
    """Give the steps behind what is shown of one night."""
    yield "room-at-coldest", (through_the_night(one, result),)
    yield "loss-with-air", (_with_air(one),)
    warmth = one.warmth
    if warmth is None:
        return
    loss, gains = one.loss.best, one.gains.best
    if warmth.highest.known:
        given = (("inside", warmth.wanted), ("heat", warmth.highest.best + gains), ("loss", loss))
        held = Step(heat_method.held_outside, given, "temperature")
        ends: Steps = (_no_colder(),) if held.result() < COLDEST_NIGHT else ()
        yield "held-down-to", (_with_air(one), _gains(one, warmth.highest.best), held, *ends)
    if warmth.lowest.known:
        given = (("inside", warmth.wanted), ("heat", warmth.lowest.best + gains), ("loss", loss))
        yield "too-warm-above", (_gains(one, warmth.lowest.best), Step(heat_method.held_outside, given, "temperature"))
        out = (("outside", one.outdoors.coldest.best), ("heat", warmth.lowest.best + gains), ("loss", loss))
        yield "at-lowest", (_gains(one, warmth.lowest.best), Step(heat_method.drifts_to, out, "temperature"))
    burnt = fuel_of_night(one, heater) if heater is not None else None
    if heater is None or burnt is None:
        return
    burns, fuel = burns_of(heater.planned.heater), fuel_named(heater.planned.heater.of)
    if burns is not None and burns.is_counted and burns.lowest is not None and burns.highest is not None:
        yield (
            "fuel",
            (
                heat_of_the_hours(one),
                _counted(one, burns.lowest, burns.highest, burnt),
            ),
        )
    elif fuel in FUELS and one.energy.best > 0.0:
        yield "fuel", (heat_of_the_hours(one), *_fuel(one, fuel))


def _no_colder() -> Told:
    def says(units: HeaderUnits) -> tuple[str, ...]:
        return (
            f"shown: {show(COLDEST_NIGHT, 'temperature', units)}, the coldest night that is worked out",
            "  (the formulas of moist air end there)",
        )

    return Told(says)


def _with_air(one: HeldNight) -> Told:
    """Return what is lost with the air that comes in, besides the faces."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        flow = sum(one.night.flow) / len(one.night.flow)
        return (
            "loss = faces + heat of air * outdoor air, the mean of the night",
            f"  faces: {show(one.shell.best, 'W/K', units)}",
            f"  heat of air: {HEAT_OF_AIR:.4g} J/m3K * {flow:.4g} m3/s ({show(flow, 'flow', units)})"
            f" = {show(HEAT_OF_AIR * flow, 'W/K', units)}",
            f"  = {show(one.loss.best, 'W/K', units)}",
            "  (sum; heat-sheet network, hourly)",
        )

    return Told(says)


def _gains(one: HeldNight, setting: float) -> Told:
    """Return the heat of a setting with what people give, less what goes to the clear sky."""

    setting_of = f"; the setting: {one.warmth.of} of the rig" if one.warmth is not None else ""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        return (
            "heat = heat of the setting + what people give, less what goes to the clear sky",
            f"  {setting:.6g} W + {one.gains.best:.6g} W = {show(setting + one.gains.best, 'power', units)}",
            f"  (sum; heat-sheet sky{setting_of})",
        )

    return Told(says)


def _fuel(one: HeldNight, fuel: str) -> Steps:
    """Return the fuel of a night by its heat."""
    content, efficiency, *_ = FUELS[fuel]
    given = (("heat", one.energy.best / (ASLEEP_HOURS * HOUR)), ("efficiency", efficiency), ("content", content))
    burnt = Step(heat_method.fuel_burnt, given, "fuel flow")

    def says(units: HeaderUnits) -> tuple[str, ...]:
        volume = burnt.result() * ASLEEP_HOURS * HOUR
        return (
            f"fuel = flow * {ASLEEP_HOURS} h",
            f"  = {show(volume, 'volume', units)}",
            f"  (product; efficiency and energy of {fuel}: {source_of('fuel', fuel)})",
        )

    return burnt, Told(says)


def _counted(one: HeldNight, lowest: Band, highest: Band, burnt: Band) -> Told:
    """Return the fuel of a night by the strokes of the pump at both settings."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        return (
            "fuel = what the pump moved at both settings, straight between them by the heat of the night",
            f"  counted {show(lowest.best, 'fuel flow', units)} at its lowest,"
            f" {show(highest.best, 'fuel flow', units)} at its highest; mean heat of the night"
            f" {show(one.energy.best / (ASLEEP_HOURS * HOUR), 'power', units)}",
            f"  = {show(burnt.best, 'volume', units)}",
            "  (strokes counted for a minute, times what each moves)",
        )

    return Told(says)


def _filling(heater: StandingHeater) -> Steps:
    """Return how long a filling lasts at both settings; nothing where a number of it is not known."""
    facet, tank = heater.planned.heater, heater.tank
    if filling_hours(heater) is None or tank is None:
        return ()
    counted = burns_as_counted(facet.counted)
    if counted is not None and counted.highest is not None and counted.lowest is not None:
        rates = (counted.highest.best, counted.lowest.best)
        return tuple(
            Step(heat_method.filling_lasts, (("volume", tank.volume.best), ("flow", rate)), "time") for rate in rates
        )
    content, efficiency, *_ = FUELS[fuel_named(facet.of)]
    steps: list[Step | Told] = []
    for heat in (one.best for one in (facet.highest, facet.lowest) if one is not None):
        given = (("heat", heat), ("efficiency", efficiency), ("content", content))
        burnt = Step(heat_method.fuel_burnt, given, "fuel flow")
        lasts = (("volume", tank.volume.best), ("flow", burnt.result()))
        steps += [burnt, Step(heat_method.filling_lasts, lasts, "time")]
    return tuple(steps)


def _filling_burnt(heater: StandingHeater) -> Steps:
    """Return how long a filling lasts by what is said to be burnt; nothing where that was counted, or is not said."""
    said, tank = burns_of(heater.planned.heater), heater.tank
    if said is None or tank is None or is_counted(heater) or hours_by_burn(heater) is None:
        return ()
    rates = (one.best for one in (said.highest, said.lowest) if one is not None)
    return tuple(
        Step(heat_method.filling_lasts, (("volume", tank.volume.best), ("flow", rate)), "time") for rate in rates
    )


def of_air(slot: Slot) -> dict[str, Steps]:
    """Return the steps behind what the chapter on air shows of a slot, at the best values."""
    result = slot.air
    if result is None:
        return {}
    found: dict[str, Steps] = {"free-area": (_free_area(slot),)}
    breathing, airflow = result.breathing, result.airflow
    if breathing is not None:
        through = _through(slot, air.KEPT_AT - air.WARMER)
        breath = (("source", air.CARBON_DIOXIDE.best * result.sleepers), ("flow", breathing.flow.best),
                  ("room", breathing.room), ("lasts", air.NIGHT), ("outdoors", air.OUTDOORS))  # fmt: skip
        forever = tuple((name, inf if name == "lasts" else value) for name, value in breath)
        found |= {
            "outdoor-air": through,
            "carbon-dioxide": (
                *through,
                *_breathed(result.sleepers, breathing.flow.best),
                Step(air_method.gathered, breath, "ratio"),
            ),
            "carbon-dioxide-at-last": (
                *through,
                *_breathed(result.sleepers, breathing.flow.best),
                Step(air_method.gathered, forever, "ratio"),
            ),
            "air-wanted": (_wanted(result.sleepers),),
        }
        if airflow.vents.best > 0.0 and result.mild is not None:
            found |= _mild(slot)
    for night in result.nights:
        found |= dict(_of_damp_night(night, slot.heat))
    return found


def _free_area(slot: Slot) -> Told:
    """Return the sum of what stays open low and high."""

    def says(units: HeaderUnits) -> tuple[str, ...]:
        assert slot.air is not None
        lines = ["free area = sum of what stays open, low and high; what stands perhaps counts at its high end alone"]
        for one in slot.air.vents:
            if one.stays_open:
                counts = one.free.best if one.there == "yes" else 0.0
                lines.append(
                    f"  {one.planned.name}, {'low' if one.is_low else 'high'}: {show(counts, 'area', units)},"
                    f" {one.planned.of}"
                )
        low, high = slot.air.low.best, slot.air.high.best
        lines.append(f"  = {show(low, 'area', units)} low, {show(high, 'area', units)} high")
        return (*lines, "  (sum of the rig's own free_area:)")

    return Told(says)


def _through(slot: Slot, outside: float) -> tuple[Step, ...]:
    """Return what comes in through cracks and vents by warmth alone."""
    assert slot.air is not None and slot.air.breathing is not None
    airflow, inside = slot.air.airflow, air.KEPT_AT
    cracks = (("leak", airflow.leak.best), ("stack", slot.air.breathing.stack), ("wind", 0.0),
              ("difference", inside - outside), ("speed", 0.0))  # fmt: skip
    vents = (("area", airflow.vents.best), ("discharge", air.DISCHARGE), ("height", airflow.rise.best),
             ("inside", inside), ("outside", outside))  # fmt: skip
    return Step(air_method.leaked, cracks, "flow"), Step(air_method.risen, vents, "flow")


def _breathed(sleepers: int, flow: float) -> tuple[Told, ...]:
    """Return the air that comes in by both ways together, and what those asleep breathe out."""

    def both(units: HeaderUnits) -> tuple[str, ...]:
        return (
            "flow = through cracks + through vents",
            f"  = {flow:.6g} m3/s = {show(flow, 'flow', units)}",
            "  (sum)",
        )

    def out(units: HeaderUnits) -> tuple[str, ...]:
        each = air.CARBON_DIOXIDE.best
        return (
            "source = carbon dioxide of a sleeper * people asleep",
            f"  {each:.6g} m3/s * {sleepers}",
            f"  = {each * sleepers:.6g} m3/s",
            f"  ({air.source_of('sleeper', 'carbon dioxide')})",
        )

    return Told(both), Told(out)


def _wanted(sleepers: int) -> Told:
    def says(units: HeaderUnits) -> tuple[str, ...]:
        each, whole = air.A_PERSON, air.A_PERSON * sleepers
        return (
            "air wanted = air of a person * people asleep",
            f"  {show(each, 'flow', units)} * {sleepers} = {show(whole, 'flow', units)}",
            f"  ({air.source_of('air', 'a person')})",
        )

    return Told(says)


def _mild(slot: Slot) -> dict[str, Steps]:
    """Return the steps of a mild and wet night: what keeps it dry, what comes in, and what it comes to."""
    assert slot.air is not None and slot.air.mild is not None
    sleepers, mild = slot.air.sleepers, slot.air.mild
    full = air_method.saturation_pressure(air.KEPT_AT)
    outdoors = Step(air_method.humidity_ratio, (
        ("vapour_pressure", air.MILD_HUMIDITY * air_method.saturation_pressure(air.MILD)), ("pressure", PRESSURE)
    ), "ratio")  # fmt: skip
    wanted = Step(air_method.humidity_ratio, (("vapour_pressure", air.WANTED * full), ("pressure", PRESSURE)), "ratio")
    density = air_method.air_density(air.KEPT_AT, outdoors.result(), PRESSURE)
    vapour = air.BREATH.best * sleepers
    gained = wanted.result() - outdoors.result()
    found: dict[str, Steps] = {"air-mild-and-wet": _through(slot, air.MILD)}
    if gained > 0.0:
        dried = (("vapour", vapour), ("density", density), ("gained", gained))
        found["air-that-keeps-dry"] = (outdoors, wanted, Step(air_method.air_to_dry, dried, "flow"))
    ratio = outdoors.result() + vapour / (density * mild.flow.best)
    room = Step(air_method.vapour_pressure, (("humidity_ratio", ratio), ("pressure", PRESSURE)), "pressure")

    def says(units: HeaderUnits) -> tuple[str, ...]:
        share = min(room.result() / full, 1.0)
        return (
            "humidity = vapour pressure / that of full air, at most 1",
            f"  {room.result():.6g} Pa / {full:.6g} Pa = {share * 100.0:.3g} %",
            "  (quotient; psychrometrics of the chapter on air)",
        )

    found["humidity-mild-and-wet"] = (outdoors, room, Told(says))
    return found


def _of_damp_night(night: DampNight, heat: HeatResult | None) -> Named:
    """Give the steps behind what is shown of the damp of one night."""
    held = next((one for one in heat.held if (one.night.place, one.night.heater) == (night.place, night.heater)),
                None) if heat is not None else None  # fmt: skip
    vapour = sum(one.kg_per_second.best for one in heat.moisture) if heat is not None else 0.0
    where = name_of_night(heat, held) if heat is not None and held is not None else night.place
    if night.humidity:
        last = len(night.humidity) - 1
        pressure = night.humidity[last] * air_method.saturation_pressure(night.air[last])
        full = Step(air_method.saturation_pressure, (("temperature", night.air[last]),), "pressure")
        came = water_of_the_hour(held, heat) if heat is not None and held is not None else ()
        steps: Steps = (
            *came,
            full,
            _share(pressure, full, "humidity in the last hour = vapour pressure / that of full air"),
        )
        if pressure > 0.0:
            steps += (Step(air_method.dew_point, (("vapour_pressure", pressure),), "temperature"),)
        yield f"humidity {where}", steps
    gear = night.gear
    if gear is not None:
        given = (("water", 1.0), ("flow", gear.flow), ("density", gear.density), ("gained", gear.gained))
        yield f"gear-dries {where}", (Step(air_method.dried_after, given, "time"),)
    for wet in night.wet:
        if wet.hours > 0:
            yield f"{wet.name} {where}", _wet(night, wet, vapour)


def _share(pressure: float, full: Step, title: str) -> Told:
    def says(units: HeaderUnits) -> tuple[str, ...]:
        share = pressure / full.result()
        return (
            title,
            f"  {pressure:.6g} Pa / {full.result():.6g} Pa = {share * 100.0:.3g} %",
            "  (quotient; hour by hour: box_through_time)",
        )

    return Told(says)


def _wet(night: DampNight, wet: WetPlace, vapour: float) -> Steps:
    """Return how cold a place gets, from which humidity on it drips, and what air keeps it dry."""
    factor = min(max(wet.cold.factor.best, 0.0), 1.0)
    colds = [outside + factor * (inside - outside) for outside, inside in zip(night.outside, night.air, strict=True)]
    hour = min(range(len(colds)), key=colds.__getitem__)
    given = (("factor", factor), ("inside", night.air[hour]), ("outside", night.outside[hour]))
    surface = Step(air_method.surface_temperature, given, "temperature")
    limits = [
        min(air_method.saturation_pressure(cold) / air_method.saturation_pressure(inside), 1.0)
        for cold, inside in zip(colds, night.air, strict=True)
    ]
    driest = min(range(len(limits)), key=limits.__getitem__)
    holds = Step(air_method.saturation_pressure, (("temperature", colds[driest]),), "pressure")
    full = Step(air_method.saturation_pressure, (("temperature", night.air[driest]),), "pressure")
    title = "begins to drip from = what the air at the surface holds / what that of the room holds"
    found: Steps = (surface, holds, full, _share(holds.result(), full, title))
    if wet.drier is not None:
        kept = (("vapour", vapour), ("density", wet.drier.density), ("gained", wet.drier.gained))
        found += (Step(air_method.air_to_dry, kept, "flow"),)
    return (*found, wet_by_the_hour(wet))
