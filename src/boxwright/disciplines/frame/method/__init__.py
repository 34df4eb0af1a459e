"""Every formula of the frame chapter, and nothing else: floats and tuples of floats in, float out.

Public names are re-exported here, so that a formula is found by its name whatever file it stands in.
"""

from boxwright.disciplines.frame.method.framing import (
    edge_distance,
    fewest_in_span,
    first_bearing,
    height_for_tilted,
    members_in_span,
    screw_length,
)
from boxwright.disciplines.frame.method.layers import mean_square, plate_mass, tyre_diameter, uniform_length
from boxwright.disciplines.frame.method.section import (
    angle_area,
    angle_second_moment,
    channel_area,
    channel_second_moment,
    mass_per_length,
    rounded_area,
    rounded_second_moment,
    tube_area,
    tube_second_moment,
)
from boxwright.units import OutOfRange

__all__ = [
    "OutOfRange",
    "angle_area",
    "angle_second_moment",
    "channel_area",
    "channel_second_moment",
    "edge_distance",
    "fewest_in_span",
    "first_bearing",
    "height_for_tilted",
    "mass_per_length",
    "mean_square",
    "members_in_span",
    "plate_mass",
    "rounded_area",
    "rounded_second_moment",
    "screw_length",
    "tube_area",
    "tube_second_moment",
    "tyre_diameter",
    "uniform_length",
]
