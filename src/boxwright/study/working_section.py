"""The working of what a square metre of each plane lets through: its layers, and what its members add."""

from __future__ import annotations

from dataclasses import replace
from math import isclose

from boxwright.disciplines.heat import method
from boxwright.disciplines.heat.across import Across, bay_layers
from boxwright.disciplines.heat.plane import AIR_FILM, BARE, Planed
from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.shell import Face
from boxwright.study.step import Step, Told
from boxwright.units import HeaderUnits, show

Steps = tuple[Step | Told, ...]
BY = {
    "stored": "sections solved beforehand as fields of temperature by ISO 10211, read between",
    "by hand": "zone method, with its error",
    "straight through": "heat going straight through timber",
    "layers": "no member bridges it",
    "bare": "bare members stand in the room like fins: a rule of thumb",
}
"""What the members of a plane were worked out by."""
SAME = 1e-9


def of_sections(result: Result) -> dict[str, Steps]:
    """Return the steps behind the transmittance of each plane, by the film of the air alone, as nights are.

    An edge is told as a member each: it is no plane.
    """
    return {
        f"U {face.name}": _of_plane(face, face.planed)
        for face in result.shell.faces
        if face.planed is not None and face.how != "edge"
    }


def _of_plane(face: Face, planed: Planed) -> Steps:
    across = replace(planed.across, inside_film=AIR_FILM)
    layers = bay_layers(across)
    given = (
        ("depths", tuple(thick for thick, _ in layers)),
        ("conductivities", tuple(through for _, through in layers)),
        ("films", across.films),
    )
    bay = Step(method.layers_transmittance, given, "transmittance", _layer_names(across))
    return bay, _with_members(face, planed, bay.result())


def _layer_names(across: Across) -> tuple[str, ...]:
    """Return what the layers of a bay are called, from outside inwards."""
    filled = [f"filling {number}" for number in range(1, len(across.filling) + 1)]
    covers = [f"lining {number}" for number in range(1, len(across.inner) + 1)]
    between = len(bay_layers(across)) - 1 - len(filled) - len(covers)
    airs = ["still air left in the bay", *["still air beside the strip"] * len(across.over)]
    return ("skin", *filled, *airs[len(airs) - between :], *covers)


def _with_members(face: Face, planed: Planed, bay: float) -> Told:
    """Return the transmittance of a bay and what members add, as the loss of the room takes it."""
    member, metres = planed.member_by_air.best, planed.density.best
    whole = bay * BARE[0] if planed.how == "bare" else bay + member * metres

    def says(units: HeaderUnits) -> tuple[str, ...]:
        told = f"{bay:.6g} W/m2K"
        if planed.how == "bare":
            lines = ["U = bay * what bare members add", f"  {told} * {BARE[0]:.4g} = {whole:.6g} W/m2K"]
        else:
            lines = ["U = bay + member * metres of member in a square metre"]
            lines.append(f"  {told} + {member:.6g} W/mK * {metres:.6g} m/m2 = {whole:.6g} W/m2K")
        if not isclose(whole, planed.by_air.best, rel_tol=SAME):
            lines.append("  taken: the mean of with and without a layer nobody ticked, never less than half the bay")
        best, house = planed.by_air.best, planed.transmittance.best
        lines.append(f"  with the films of a house {house:.6g} W/m2K = {show(house, 'transmittance', units)}")
        lines.append(f"  = {best:.6g} W/m2K = {show(best, 'transmittance', units)}, by the film of the air alone")
        return (*lines, f"  ({BY[planed.how]}; layers as {face.of} has them: heat RIG --section names each)")

    return Told(says)
