"""How a shown number came about: the formula as its method states it, the numbers put in, the result, the source.

No formula is written here. Each comes from the docstring of the method that computes it, and the method itself is run
on the numbers shown, so that what is printed is what was done.
"""

from __future__ import annotations

import inspect
import re

from boxwright.disciplines.weight import method
from boxwright.disciplines.weight.geometry import Geometry, measures_of
from boxwright.disciplines.weight.result import Compared, Result
from boxwright.exchange import Mass
from boxwright.study.own_units import own, put_in, units_of
from boxwright.study.slots import Slot
from boxwright.study.step import Method, Step, Told
from boxwright.study.working_words import of_air, of_heat
from boxwright.units import COVERAGE, HeaderUnits, show

__all__ = ["NoSuchNumber", "Step", "labels_of", "lines", "number_steps", "numbers", "result_of", "working"]

SI = {
    "mass": "kg", "length": "m", "angle": "rad", "ratio": "", "flow": "m**3/s", "temperature": "K", "pressure": "Pa",
    "area": "m**2", "time": "s", "fuel flow": "m**3/s", "transmittance": "W/m**2/K",
    "": "",
}  # fmt: skip
"""The SI unit of what comes out."""
SAID_TOO = frozenset({"ratio", "flow", "fuel flow", "time", "transmittance"})
"""What comes out and is said in the unit of the trade as well."""
_LABEL = re.compile(r"^(Formula|Satisfies|Source): ")


class NoSuchNumber(ValueError):
    """A number that has no working in this slot; ``known`` are those that have one."""

    def __init__(self, number: str, known: tuple[str, ...]) -> None:
        super().__init__(f'no working is known for "{number}"; there is one for {", ".join(known)}')
        self.number, self.known = number, known


def numbers(slot: Slot) -> tuple[str, ...]:
    """Return the numbers of a slot that have a working."""
    return tuple(_steps(slot))


def number_steps(slot: Slot, *wanted: str) -> tuple[Step, ...]:
    """Return the steps behind some numbers of a slot, each once; none of a number that has no working."""
    steps = _steps(slot)
    found: list[Step] = []
    for number in wanted:
        found += [step for step in steps.get(number, ()) if isinstance(step, Step) and step not in found]
    return tuple(found)


def working(slot: Slot, number: str, shown_in: HeaderUnits | None = None) -> tuple[str, ...]:
    """Return the working of one number of a slot, line by line, in the units of the rig's header."""
    steps = _steps(slot)
    if number not in steps:
        raise NoSuchNumber(number, tuple(steps))
    units = shown_in or HeaderUnits()
    return tuple(line for step in steps[number] for line in _in_print(step, units))


def _in_print(step: Step | Told, shown_in: HeaderUnits) -> tuple[str, ...]:
    return step.says(shown_in) if isinstance(step, Told) else lines(step, shown_in)


def lines(step: Step, shown_in: HeaderUnits) -> tuple[str, ...]:
    """Return one step in print: formula, numbers, formula with the numbers in it, result, source."""
    labels = labels_of(step.method)
    formula = labels.get("Formula", "")
    units = units_of(step.method)
    single = {name: value for name, value in step.given if isinstance(value, float)}
    lists = [(name, value) for name, value in step.given if isinstance(value, tuple)]
    found = [formula] if formula else [f"0 = {residual.strip()}" for residual in labels["Satisfies"].split(";")]
    found += [f"  {name} = {own(value, units[name], shown_in, name)}" for name, value in single.items()]
    for index, row in enumerate(step.rows):
        members = ", ".join(own(value[index], units[name], shown_in, name) for name, value in lists)
        found.append(f"  {row}: {members}")
    found += [f"  {name} = {', '.join(own(one, units[name], shown_in, name) for one in value)}" for name, value in lists
              if not step.rows]  # fmt: skip
    with_numbers = put_in(step.method, formula, dict(step.given), shown_in)
    found += [f"  {with_numbers}"] if with_numbers else []
    told = result_of(step, shown_in)
    found.append(f"  {step.part} = {told}".replace("   =", "  ="))
    found.append(f"  ({step.method.__name__}: {labels.get('Source', '')})")
    return tuple(found)


def result_of(step: Step, shown_in: HeaderUnits) -> str:
    """Return what came out of a step: in SI as well where it is a quantity no header names a unit for."""
    result = step.result()
    told = own(result, SI[step.quantity], shown_in)
    if step.quantity in SAID_TOO:
        bare = f"{result:.6g} {SI[step.quantity]}".strip()
        shown = show(result, step.quantity, shown_in)
        return bare if shown == bare else f"{bare} = {shown}"
    return told


def labels_of(documented: Method) -> dict[str, str]:
    """Return the formula (or what the result satisfies) and the source from a method's docstring."""
    found: dict[str, str] = {}
    label = ""
    for line in (inspect.getdoc(documented) or "").splitlines():
        match = _LABEL.match(line)
        if match:
            label = match[1]
            found[label] = line[match.end() :].strip()
        elif label and line.startswith(" "):
            found[label] += " " + line.strip()
        else:
            label = ""
    return found


def _steps(slot: Slot) -> dict[str, tuple[Step | Told, ...]]:
    """Return the steps behind each number of a slot."""
    return {**_of_weight(slot), **of_heat(slot), **of_air(slot)}


def _of_weight(slot: Slot) -> dict[str, tuple[Step, ...]]:
    """Return the steps behind what the trailer weighs."""
    if slot.weight is None or slot.box is None:
        return {}
    result, masses = slot.weight, tuple(mass for mass in slot.masses if mass.kg.best > 0.0)
    found: dict[str, tuple[Step, ...]] = {"gross": (_gross(masses),)} if masses else {}
    for axis in "xyz" if masses else "":
        found[f"cg-{axis}"] = (_centre(masses, axis),)
    geometry = measures_of(slot.box, slot.ball_height).best
    if geometry is not None and masses:
        found |= _loads(result, geometry)
    for one in result.compared:
        name = one.of if f"{one.of}" not in found else f"{one.of} {one.what}"
        found[name] = (*_by_plank(one), _agreement(one))
    return found


def _rows(masses: tuple[Mass, ...]) -> tuple[str, ...]:
    return tuple(f"{mass.of} {mass.what}" for mass in masses)


def _heaviest_first(masses: tuple[Mass, ...]) -> tuple[Mass, ...]:
    return tuple(sorted(masses, key=lambda mass: (-mass.kg.best, mass.of, mass.what)))


def _gross(masses: tuple[Mass, ...]) -> Step:
    ordered = _heaviest_first(masses)
    return Step(method.total_mass, (("masses", tuple(mass.kg.best for mass in ordered)),), "mass", _rows(ordered))


def _centre(masses: tuple[Mass, ...], axis: str) -> Step:
    ordered = _heaviest_first(masses)
    places = {"x": [m.x for m in ordered], "y": [m.y for m in ordered], "z": [m.z for m in ordered]}[axis]
    given = (
        ("masses", tuple(mass.kg.best for mass in ordered)),
        ("places", tuple(place.best for place in places)),
    )
    return Step(method.centre, given, "length", _rows(ordered))


def _loads(result: Result, geometry: Geometry) -> dict[str, tuple[Step, ...]]:
    """Return the steps behind what ball, axles and wheels carry."""
    mass, wheels = result.gross.band.best, result.on_wheels.band.best
    sides = (("axle_mass", wheels), ("roll_mass", mass), ("centre_y", result.centre_y.band.best),
             ("track", geometry.track))  # fmt: skip
    found: dict[str, tuple[Step, ...]] = {
        "share": (Step(method.tongue_share, (("tongue", result.tongue.band.best), ("mass", mass)), "ratio"),),
        "on-wheels": (Step(method.ticket_mass, (("tongue", result.tongue.band.best), ("axles", wheels)), "mass"),),
        "left": (Step(method.left_wheels_mass, sides, "mass"),),
        "right": (Step(method.right_wheels_mass, sides, "mass"),),
    }
    carrying = tuple(index for index, axle in enumerate(result.axles) if axle.band.best != 0.0)
    if geometry.running_gear == "independent" and len(carrying) > 1:
        return found | _torsion(result, geometry, carrying)
    found["tongue"] = _pitched(result, geometry, carrying or tuple(range(len(geometry.axles_x))))
    if len(carrying) == 2:
        halves = (("group", wheels), ("front_arm", 1.0), ("rear_arm", 1.0))
        found |= {f"axle-{index + 1}": (Step(method.equaliser_front_mass, halves, "mass"),) for index in carrying}
    elif len(carrying) == 1:
        found[f"axle-{carrying[0] + 1}"] = found["on-wheels"]
    return found


def _pitched(result: Result, geometry: Geometry, carrying: tuple[int, ...]) -> tuple[Step, ...]:
    """Return the nose's pitch, then the ball's load at that pitch."""
    middle = sum(geometry.axles_x[index] for index in carrying) / len(carrying)
    lever = middle - geometry.coupler_x
    pitch = Step(
        method.ball_pitch,
        (("ball_raise", geometry.ball_raise), ("lever", lever), ("ball_above_axle", geometry.ball_above_axle)),
        "angle",
    )
    given = (
        ("mass", result.gross.band.best),
        ("axle_behind_centre", middle - result.centre_x.band.best),
        ("centre_above_axle", result.centre_z.band.best - geometry.axle_z),
        ("lever", lever),
        ("ball_above_axle", geometry.ball_above_axle),
        ("pitch", pitch.result()),
    )
    return pitch, Step(method.pitched_tongue_mass, given, "mass")


def _torsion(result: Result, geometry: Geometry, carrying: tuple[int, ...]) -> dict[str, tuple[Step, ...]]:
    given = (
        ("mass", result.gross.band.best),
        ("centre_x", result.centre_x.band.best),
        ("coupler_x", geometry.coupler_x),
        ("axles_x", tuple(geometry.axles_x[index] for index in carrying)),
        ("axle_rate", geometry.axle_rate),
        ("ball_raise", geometry.ball_raise),
    )
    found: dict[str, tuple[Step, ...]] = {"tongue": (Step(method.torsion_tandem, given, "mass", part="tongue"),)}
    for place, index in enumerate(carrying):
        found[f"axle-{index + 1}"] = (Step(method.torsion_tandem, given, "mass", part=f"axle {place + 1}"),)
    return found


def _by_plank(one: Compared) -> tuple[Step, ...]:
    """Return the lever arithmetic of a tongue weight read by bathroom scale and plank."""
    if not one.plank:
        return ()
    names = ("reading", "bare_reading", "scale_arm", "ball_arm")
    return (Step(method.plank_tongue, tuple(zip(names, one.plank, strict=True)), "mass"),)


def _agreement(one: Compared) -> Step:
    """Return how plan and scale are compared: the plan at its nearest to the reading, over what both may err."""
    reading = one.measured.best
    given = (
        ("planned", reading - one.gap),
        ("measured", reading),
        ("planned_doubt", one.planned.half_width),
        ("measured_doubt", COVERAGE * one.measured.standard_uncertainty),
    )
    return Step(method.agreement, given, "")
