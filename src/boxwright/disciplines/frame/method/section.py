"""Area and second moment of the sections a frame is made of: rectangular tube, channel, Z, angle.

``breadth`` lies along the axis that the second moment is about, ``depth`` across it.
"""

from __future__ import annotations

from math import pi
from typing import Annotated

from boxwright.units import Metre, OutOfRange, SquareMetre, Unit

KilogramPerCubicMetre = Annotated[float, Unit("kg/m**3", "density")]
KilogramPerMetre = Annotated[float, Unit("kg/m", "mass per length")]
MetreToTheFourth = Annotated[float, Unit("m**4", "second moment")]


def rounded_area(breadth: Metre, depth: Metre, corner: Metre) -> SquareMetre:
    """Return the area of a rectangle with rounded corners.

    Formula: area = breadth * depth - (4 - pi) * corner**2
    Valid: corner from zero to half the shorter side
    Source: aisc-v16 HSS2X1X1/8, column A, as the difference of two of these
    Departs: nothing
    Assumes: quarter circles at all four corners
    """
    OutOfRange.unless_between("corner", corner, 0.0, min(breadth, depth) / 2)
    return breadth * depth - (4 - pi) * corner**2


def rounded_second_moment(breadth: Metre, depth: Metre, corner: Metre) -> MetreToTheFourth:
    """Return the second moment of area of a rectangle with rounded corners about its middle, parallel to breadth.

    Formula: moment = (breadth - 2 * corner) * depth**3 / 12 + corner * (depth - 2 * corner)**3 / 6 + corner**4 * (pi
        / 4 - 16 / (9 * pi)) + pi * corner**2 * (depth / 2 - corner + 4 * corner / (3 * pi))**2
    Valid: corner from zero to half the shorter side
    Source: aisc-v16 HSS2X1X1/8, column I, as the difference of two of these
    Departs: nothing
    Assumes: quarter circles at all four corners
    """
    OutOfRange.unless_between("corner", corner, 0.0, min(breadth, depth) / 2)
    straight = (breadth - 2 * corner) * depth**3 / 12 + corner * (depth - 2 * corner) ** 3 / 6
    arm = depth / 2 - corner + 4 * corner / (3 * pi)
    return straight + corner**4 * (pi / 4 - 16 / (9 * pi)) + pi * corner**2 * arm**2


def tube_area(breadth: Metre, depth: Metre, gauge: Metre, corner: Metre) -> SquareMetre:
    """Return the area of metal in a rectangular tube.

    Formula: area = breadth * depth - (4 - pi) * corner**2 - (breadth - 2 * gauge) * (depth - 2 * gauge) + (4 - pi)
        * max(corner - gauge, 0 * gauge)**2
    Valid: gauge above zero and below half the shorter side; corner, outside, from zero to half the shorter side
    Source: aisc-v16 HSS2X2X1/8, HSS2X1X1/8 and HSS3X2X1/8, column A
    Departs: nothing
    Assumes: one gauge all round, inner corners rounded by corner less gauge
    """
    OutOfRange.unless_between("gauge", gauge, 1e-6, min(breadth, depth) / 2)
    inner = max(corner - gauge, 0.0)
    return rounded_area(breadth, depth, corner) - rounded_area(breadth - 2 * gauge, depth - 2 * gauge, inner)


def tube_second_moment(breadth: Metre, depth: Metre, gauge: Metre, corner: Metre) -> MetreToTheFourth:
    """Return the second moment of area of a rectangular tube about its middle, parallel to breadth.

    Formula: moment = rounded_second_moment(breadth, depth, corner) - rounded_second_moment(breadth - 2 * gauge, depth
        - 2 * gauge, max(corner - gauge, 0 * gauge))
    Valid: gauge above zero and below half the shorter side; corner, outside, from zero to half the shorter side
    Source: aisc-v16 HSS2X2X1/8, HSS2X1X1/8 and HSS3X2X1/8, column I
    Departs: nothing
    Assumes: one gauge all round, inner corners rounded by corner less gauge
    """
    OutOfRange.unless_between("gauge", gauge, 1e-6, min(breadth, depth) / 2)
    hole = rounded_second_moment(breadth - 2 * gauge, depth - 2 * gauge, max(corner - gauge, 0.0))
    return rounded_second_moment(breadth, depth, corner) - hole


def channel_area(flange: Metre, depth: Metre, flange_gauge: Metre, web_gauge: Metre) -> SquareMetre:
    """Return the area of a channel or a Z of two flanges and a web.

    Formula: area = 2 * flange * flange_gauge + (depth - 2 * flange_gauge) * web_gauge
    Valid: flange wider than the web is thick; depth above twice the flange's gauge
    Source: aisc-v16 C3X4.1, column A
    Departs: fillets and the taper of rolled flanges are left out
    Assumes: three rectangles
    """
    OutOfRange.unless_between("flange_gauge", flange_gauge, 0.0, depth / 2)
    OutOfRange.unless_between("web_gauge", web_gauge, 0.0, flange)
    return 2 * flange * flange_gauge + (depth - 2 * flange_gauge) * web_gauge


def channel_second_moment(flange: Metre, depth: Metre, flange_gauge: Metre, web_gauge: Metre) -> MetreToTheFourth:
    """Return the second moment of area of a channel or a Z about its middle, parallel to the flanges.

    Formula: moment = (flange * depth**3 - (flange - web_gauge) * (depth - 2 * flange_gauge)**3) / 12
    Valid: flange wider than the web is thick; depth above twice the flange's gauge
    Source: aisc-v16 C3X4.1, column Ix
    Departs: fillets and the taper of rolled flanges are left out
    Assumes: three rectangles
    """
    OutOfRange.unless_between("flange_gauge", flange_gauge, 0.0, depth / 2)
    OutOfRange.unless_between("web_gauge", web_gauge, 0.0, flange)
    return (flange * depth**3 - (flange - web_gauge) * (depth - 2 * flange_gauge) ** 3) / 12


def angle_area(breadth: Metre, depth: Metre, gauge: Metre) -> SquareMetre:
    """Return the area of an angle.

    Formula: area = gauge * (breadth + depth - gauge)
    Valid: gauge above zero and below the shorter leg
    Source: aisc-v16 L2X2X3/16, column A
    Departs: the fillet is left out
    Assumes: two rectangles
    """
    OutOfRange.unless_between("gauge", gauge, 1e-6, min(breadth, depth))
    return gauge * (breadth + depth - gauge)


def angle_second_moment(breadth: Metre, depth: Metre, gauge: Metre) -> MetreToTheFourth:
    """Return the second moment of area of an angle about the axis through its centroid parallel to the breadth leg.

    Formula: moment = (gauge * depth**3 + (breadth - gauge) * gauge**3) / 3 - (gauge * depth**2 / 2 + (breadth - gauge)
        * gauge**2 / 2)**2 / (gauge * (breadth + depth - gauge))
    Valid: gauge above zero and below the shorter leg
    Source: aisc-v16 L2X2X3/16, column Ix
    Departs: the fillet is left out
    Assumes: two rectangles
    """
    OutOfRange.unless_between("gauge", gauge, 1e-6, min(breadth, depth))
    static = gauge * depth**2 / 2 + (breadth - gauge) * gauge**2 / 2
    about_leg = (gauge * depth**3 + (breadth - gauge) * gauge**3) / 3
    return about_leg - static**2 / (gauge * (breadth + depth - gauge))


def mass_per_length(area: SquareMetre, density: KilogramPerCubicMetre) -> KilogramPerMetre:
    """Return what a metre of a section weighs.

    Formula: mass = area * density
    Valid: one section along the whole length
    Source: aisc-v16 HSS2X2X1/8, nominal weight
    Departs: nothing
    Assumes: one density all through
    """
    return area * density
