"""The quantities a rig file speaks of: their SI unit, the header line of a bare number's unit, their words."""

from __future__ import annotations

from boxwright.records import dataclass
from boxwright.units.band import HeaderUnits
from boxwright.units.scale import Dimension, Scale, unit_scale


@dataclass(frozen=True, slots=True)
class Quantity:
    """One quantity. ``si`` is its SI unit; ``header`` its line in the ``units:`` of a rig file, empty where none.

    ``bare`` is the unit of a bare number where the quantity itself leaves no choice. ``offered`` are the units an
    error sentence shows. ``may_be_negative`` is False where a number below zero, or an unknown one, has zero as its
    lower end.
    """

    name: str
    said: str
    si: str
    offered: tuple[str, ...]
    header: str = ""
    bare: str | None = None
    may_be_negative: bool = False

    @property
    def dimension(self) -> Dimension:
        """Return the powers of the SI base units."""
        return scale_of(self.si).dimension


def scale_of(unit: str, words: str = "US") -> Scale:
    """Return the scale of a unit the program itself names; an unknown one is a bug."""
    scale = unit_scale(unit, words)
    if scale is None:
        raise ValueError(f'"{unit}" is no unit')
    return scale


_QUANTITIES = (
    Quantity("length", "the length", "m", ("in", "mm"), header="length", may_be_negative=True),
    Quantity("mass", "the mass", "kg", ("kg", "lb"), header="weight"),
    Quantity("temperature", "the temperature", "K", ("F", "C"), header="temperature"),
    Quantity("volume", "the volume", "m3", ("gal", "l"), header="volume"),
    Quantity("wire", "the wire size", "m2", ("AWG", "mm2"), header="wire"),
    Quantity("money", "the price", "1", ("USD", "EUR"), header="money", may_be_negative=True),
    Quantity("power", "the power", "W", ("W", "kW")),
    Quantity("energy", "the energy", "J", ("Wh", "kWh")),
    Quantity("current", "the current", "A", ("A",)),
    Quantity("voltage", "the voltage", "V", ("V",)),
    Quantity("charge", "the charge", "A s", ("Ah",)),
    Quantity("resistance", "the resistance", "ohm", ("ohm", "mohm")),
    Quantity("resistivity", "the resistivity", "ohm m", ("ohm m",)),
    Quantity("pressure", "the pressure", "Pa", ("psi", "bar")),
    Quantity("flow", "the air flow", "m3/s", ("cfm", "m3/h")),
    Quantity("fuel flow", "the fuel burnt", "m3/s", ("gal/h", "l/h")),
    Quantity("strokes", "the strokes counted", "1/s", ("1/min",)),
    Quantity("area", "the area", "m2", ("sq in", "cm2")),
    Quantity("angle", "the angle", "rad", ("deg",), may_be_negative=True),
    Quantity("ratio", "the share", "1", ("%",), bare="1"),
    Quantity("time", "the time", "s", ("h", "min"), bare="h"),
    Quantity("speed", "the speed", "m/s", ("mph", "km/h")),
    Quantity("irradiation", "the sun of a day", "J/m2", ("kWh/m2",)),
    Quantity("transmittance", "the U value", "W/m2K", ("W/m2K",)),
    Quantity("conductivity", "the conductivity", "W/mK", ("W/mK",)),
    Quantity("heat loss", "the heat lost for each degree", "W/K", ("W/K", "Btu/h per F")),
    Quantity("insulation", "the R value", "m2K/W", ("ft2 F h/Btu", "m2K/W")),
    Quantity("temperature coefficient", "the temperature coefficient", "1/K", ("%/C",), may_be_negative=True),
    Quantity("force", "the force", "N", ("N", "lbf"), may_be_negative=True),
    Quantity("stiffness", "the spring rate", "N/m", ("N/m",)),
    Quantity("inertia", "the moment of inertia", "kg m2", ("kg m2",)),
)

_ALSO = {
    "weight": "mass",
    "hours": "time",
    "U": "transmittance",
    "fuel_flow": "fuel flow",
    "temperature_coefficient": "temperature coefficient",
}
_BY_NAME = {quantity.name: quantity for quantity in _QUANTITIES}

QUANTITIES: tuple[str, ...] = tuple(_BY_NAME)
"""The names ``read_exact`` and ``read_band`` take; ``weight``, ``hours`` and ``U`` are read as well."""

DIMENSIONS: dict[str, Dimension] = {quantity.name: quantity.dimension for quantity in _QUANTITIES}


def header_unit(kind: Quantity, header: HeaderUnits) -> str | None:
    """Return the unit the header gives a bare number of a quantity; None where it gives none or one of another kind."""
    unit: str | None = getattr(header, kind.header) if kind.header else None
    if unit is None or kind.name in ("wire", "money"):
        return unit
    scale = unit_scale(unit, header.words)
    return unit if scale and scale.dimension == DIMENSIONS[kind.name] else None


def quantity_named(name: str) -> Quantity:
    """Return a quantity by its name; an unknown name is a bug of the caller."""
    return _BY_NAME[_ALSO.get(name, name)]
