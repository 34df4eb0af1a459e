"""Wire sizes: a gauge (AWG) or a cross-section (mm2), as the area of the bare conductor.

A gauge is turned into an area by the formula the gauge is defined with: diameter = 0.005 in * 92^((36 - n) / 39),
ASTM B258 (from memory); 1/0 to 4/0 are n = 0 to -3. Both kinds have a sane range: 35 is hardly a gauge, 0.05 mm2
hardly a wire.
"""

from __future__ import annotations

import math
import re

from boxwright.units.band import CannotRead, HeaderUnits
from boxwright.units.numeral import read_numeral

_THICKEST, _THINNEST = -3, 22
_SMALLEST, _LARGEST = 0.2, 200.0
"""Square millimetres: from a thermostat wire to a starter cable (common practice, no source)."""

_GAUGE_UNITS = frozenset({"awg", "ga", "ga.", "gauge", "gage", "g"})
_AREA_UNITS = frozenset({"mm2", "mm^2", "sqmm", "sq mm", "square mm", "mmq", "qmm"})
_SLASHED = re.compile(r"([1-4])/0")
_ZEROS = re.compile(r"0{1,4}")
_SIZE = re.compile(r"#?\s*([0-9]+/[0-9]+|[0-9.,]+)\s*([A-Za-z][A-Za-z0-9 ^.]*)?")


def gauge_area(gauge: int) -> float:
    """Return the cross-section in m2 of a solid conductor of a gauge; 0 is 1/0 and -3 is 4/0."""
    diameter = 0.005 * 0.0254 * math.pow(92.0, (36.0 - gauge) / 39.0)
    return math.pi / 4.0 * diameter**2


def gauge_name(gauge: int) -> str:
    """Return how a gauge is written: ``12``, ``4/0``."""
    return f"{1 - gauge}/0" if gauge <= 0 else str(gauge)


def nearest_gauge(area: float) -> int:
    """Return the gauge whose area (m2) is nearest, between 22 and 4/0."""
    return min(range(_THICKEST, _THINNEST + 1), key=lambda gauge: abs(math.log(gauge_area(gauge) / area)))


def read_wire(text: str, header: HeaderUnits, bare: str | None) -> float:
    """Return the cross-section in m2 of a wire written as ``12``, ``12 AWG``, ``16 ga``, ``2/0`` or ``2.5 mm2``."""
    found = _SIZE.fullmatch(text)
    unit = (found[2] or bare or header.wire or "").strip().lower() if found else ""
    if found is None or (unit and unit not in _GAUGE_UNITS | _AREA_UNITS):
        raise CannotRead(text, "the wire size", '"12 AWG" or "4 mm2"')
    size = found[1]
    gauge = _gauge(size)
    if not unit and ("/" in size or _ZEROS.fullmatch(size)):
        unit = "awg"
    if not unit:
        raise CannotRead(text, "the wire size", f'"{size} AWG" or "{size} mm2", or give wire: AWG in the units line')
    if unit in _GAUGE_UNITS:
        if gauge is None or not _THICKEST <= gauge <= _THINNEST:
            raise CannotRead(text, "the wire gauge", _both_readings(size, gauge, as_gauge=True))
        return gauge_area(gauge)
    number = read_numeral(size)
    if number is None or not _SMALLEST <= number.value <= _LARGEST:
        raise CannotRead(text, "the wire cross-section", _both_readings(size, gauge, as_gauge=False))
    return number.value / 1e6


def _gauge(size: str) -> int | None:
    slashed = _SLASHED.fullmatch(size)
    if slashed:
        return 1 - int(slashed[1])
    if _ZEROS.fullmatch(size):
        return 1 - len(size)
    return int(size) if size.isdigit() and len(size) <= 4 else None


def _both_readings(size: str, gauge: int | None, as_gauge: bool) -> str:
    """Return what a size out of range would be as a gauge and as a cross-section."""
    number = read_numeral(size)
    area = number.value if number else 0.0
    as_area = f'"{size} mm2"' if _SMALLEST <= area <= _LARGEST else "a cross-section of 0.2 to 200 mm2"
    sane_gauge = gauge is not None and _THICKEST <= gauge <= _THINNEST
    as_awg = f'"{size} AWG"' if sane_gauge else "a gauge of 22 to 4/0 AWG"
    if as_gauge and gauge is not None and 0 < gauge <= 60:
        as_awg += f" ({gauge} AWG would be {gauge_area(gauge) * 1e6:.3g} mm2)"
    if not as_gauge and area > _LARGEST:
        as_awg += f" ({area:g} mm2 would be thicker than 4/0 AWG, {gauge_area(_THICKEST) * 1e6:.0f} mm2)"
    return f"{as_area} or {as_awg}"
