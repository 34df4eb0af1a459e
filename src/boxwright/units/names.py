"""Numbers with their unit in the type: ``length: Metre``. A method and a rig field use the same names.

``Metre`` is a plain float to the type checker; at run time pydantic finds in it how text becomes that float. A name
with ``Band`` is a doubtful number. ``VoltNamed`` and its like are for keys that name their unit (``volts: 12.8``), so
that a bare number needs no header.
"""

from __future__ import annotations

from typing import Annotated, Any

from boxwright.records import dataclass
from boxwright.units.band import Band, HeaderUnits
from boxwright.units.quantity import quantity_named
from boxwright.units.reading import read_band, read_exact


@dataclass(frozen=True, slots=True)
class Unit:
    """The unit of an annotated number: ``Annotated[float, Unit("m", "length")]``.

    ``symbol`` is the SI symbol as pint reads it. ``quantity`` names the line of the header that gives a bare number
    its unit. ``bare`` is the unit a bare number has because its key names it (``volts: 12.8``). ``doubtful`` numbers
    are bands. pydantic takes its reader from here through a plain-dict core schema, so nothing of pydantic is imported.
    """

    symbol: str
    quantity: str
    bare: str | None = None
    doubtful: bool = False

    def __get_pydantic_core_schema__(self, source: Any, handler: Any) -> dict[str, Any]:
        """Return the plain-dict schema by which pydantic reads a scalar through this unit."""
        return {"type": "function-plain", "function": {"type": "with-info", "function": self._read}}

    def __get_pydantic_json_schema__(self, schema: Any, handler: Any) -> dict[str, Any]:
        """Return what a rig file may hold here: text, or a number, with examples of how it is written."""
        return {"type": ["string", "number", "boolean"], "examples": list(self.examples)}

    @property
    def examples(self) -> tuple[str, ...]:
        """Return a few ways the number may be written."""
        offered = quantity_named(self.quantity).offered
        number = "0.35" if self.quantity == "ratio" else "12"
        plain = (number,) if self.bare or quantity_named(self.quantity).bare else ()
        units = tuple(dict.fromkeys((self.bare, *offered) if self.bare else offered))
        written = tuple(f"{'35' if unit == '%' else '12'} {unit}" for unit in units[:2])
        if not self.doubtful:
            return plain + written
        spans = () if self.quantity == "wire" else (f"40..55 {units[0]}", f"about 45 {units[0]}")
        return (*plain, *written, *spans, "unknown")

    def _read(self, given: Any, info: Any) -> Any:
        header = (info.context or {}).get("header", HeaderUnits())
        text = "" if given is None else str(given)
        if self.doubtful:
            return given if isinstance(given, Band) else read_band(text, self.quantity, header, self.bare)
        return given if isinstance(given, float) else read_exact(text, self.quantity, header, self.bare)


Metre = Annotated[float, Unit("m", "length")]
Kilogram = Annotated[float, Unit("kg", "mass")]
Newton = Annotated[float, Unit("N", "force")]
Pascal = Annotated[float, Unit("Pa", "pressure")]
Kelvin = Annotated[float, Unit("K", "temperature")]
Watt = Annotated[float, Unit("W", "power")]
WattHour = Annotated[float, Unit("J", "energy")]
"""Written in watt hours, stored in joules."""
Ampere = Annotated[float, Unit("A", "current")]
Volt = Annotated[float, Unit("V", "voltage")]
Ohm = Annotated[float, Unit("ohm", "resistance")]
OhmMetre = Annotated[float, Unit("ohm*m", "resistivity")]
AmpereHour = Annotated[float, Unit("C", "charge")]
"""Written in ampere hours, stored in coulombs (ampere seconds)."""
CubicMetre = Annotated[float, Unit("m**3", "volume")]
CubicMetrePerSecond = Annotated[float, Unit("m**3/s", "flow")]
SquareMetre = Annotated[float, Unit("m**2", "area")]
WireArea = Annotated[float, Unit("m**2", "wire")]
"""Written as a gauge or in mm2, stored as the area of the bare conductor."""
Second = Annotated[float, Unit("s", "time")]
Degree = Annotated[float, Unit("rad", "angle")]
"""Written in degrees, stored in radians."""
Ratio = Annotated[float, Unit("", "ratio")]
Money = Annotated[float, Unit("", "money")]
MetrePerSecond = Annotated[float, Unit("m/s", "speed")]
WattPerSquareMetreKelvin = Annotated[float, Unit("W/m**2/K", "transmittance")]
PerKelvin = Annotated[float, Unit("1/K", "temperature coefficient")]
JoulePerSquareMetre = Annotated[float, Unit("J/m**2", "irradiation")]
NewtonPerMetre = Annotated[float, Unit("N/m", "stiffness")]
KilogramSquareMetre = Annotated[float, Unit("kg*m**2", "inertia")]

MetreBand = Annotated[Band, Unit("m", "length", doubtful=True)]
KilogramBand = Annotated[Band, Unit("kg", "mass", doubtful=True)]
NewtonBand = Annotated[Band, Unit("N", "force", doubtful=True)]
PascalBand = Annotated[Band, Unit("Pa", "pressure", doubtful=True)]
KelvinBand = Annotated[Band, Unit("K", "temperature", doubtful=True)]
WattPerKelvinBand = Annotated[Band, Unit("W/K", "heat loss", doubtful=True)]
WattBand = Annotated[Band, Unit("W", "power", doubtful=True)]
AmpereBand = Annotated[Band, Unit("A", "current", doubtful=True)]
VoltBand = Annotated[Band, Unit("V", "voltage", doubtful=True)]
AmpereHourBand = Annotated[Band, Unit("C", "charge", doubtful=True)]
CubicMetreBand = Annotated[Band, Unit("m**3", "volume", doubtful=True)]
CubicMetrePerSecondBand = Annotated[Band, Unit("m**3/s", "flow", doubtful=True)]
SquareMetreBand = Annotated[Band, Unit("m**2", "area", doubtful=True)]
WireAreaBand = Annotated[Band, Unit("m**2", "wire", doubtful=True)]
SecondBand = Annotated[Band, Unit("s", "time", doubtful=True)]
RatioBand = Annotated[Band, Unit("", "ratio", doubtful=True)]
MoneyBand = Annotated[Band, Unit("", "money", doubtful=True)]

VoltNamed = Annotated[float, Unit("V", "voltage", bare="V")]
AmpereNamed = Annotated[float, Unit("A", "current", bare="A")]
WattNamed = Annotated[float, Unit("W", "power", bare="W")]
AmpereHourNamed = Annotated[float, Unit("C", "charge", bare="Ah")]
HoursNamed = Annotated[float, Unit("s", "time", bare="h")]
VoltBandNamed = Annotated[Band, Unit("V", "voltage", bare="V", doubtful=True)]
AmpereBandNamed = Annotated[Band, Unit("A", "current", bare="A", doubtful=True)]
WattBandNamed = Annotated[Band, Unit("W", "power", bare="W", doubtful=True)]
AmpereHourBandNamed = Annotated[Band, Unit("C", "charge", bare="Ah", doubtful=True)]
HoursBandNamed = Annotated[Band, Unit("s", "time", bare="h", doubtful=True)]
