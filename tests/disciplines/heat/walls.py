"""Walls for the tests of the shell: the trailer wall of the project's sheet on heat, as the frame hands it over."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from boxwright.exchange import Layup, LayupLayer
from boxwright.units import Band, exactly

INCH = 0.0254
Where = Literal["all", "bays", "members"]


def layer(name: str, of: str, thick: float | None, where: Where, is_certain: bool = True) -> LayupLayer:
    """Return a layer ``thick`` inches thick; None where nobody wrote how thick."""
    size = exactly(thick * INCH) if thick is not None else None
    return LayupLayer(f"walls[left].layers[{name}]", name, of, size, where, is_certain)


FOAM = layer("foam", "XPS", 1.5, "bays")
STRIP = layer("strip", "foam tape", 0.25, "members")
LINER = layer("liner", "ply", 0.25, "all")
BREAK = layer("break", "XPS", 0.5, "all")


def wall(*layers: LayupLayer, of: str = "walls[left]", name: str = "left") -> Layup:
    """Return ten square metres of wall: steel tube 1 x 1 1/2 x 16 ga every 16 in, aluminium skin of 0.040 in."""
    return Layup(
        of, name, "", exactly(10.0), (0.0, -1.0, 0.0), exactly(10.0 / (16 * INCH)), exactly(0.0), exactly(16 * INCH),
        exactly(1 * INCH), exactly(1.5 * INCH), exactly(0.065 * INCH), "tube", "steel", exactly(0.04 * INCH),
        "aluminium 0.040", layers,
    )  # fmt: skip


def mirrored(layup: Layup) -> Layup:
    """Return the same wall on the other side."""
    x, y, z = layup.outward
    return replace(layup, of="walls[right]", wall="right", outward=(x, -y, z))


def doubtful(band: Band) -> bool:
    """Return whether the ends of a number lie around its best value and apart."""
    return band.low < band.best < band.high
