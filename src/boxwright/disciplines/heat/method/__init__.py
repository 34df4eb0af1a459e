"""Every formula of the chapter on heat, and nothing else: floats and tuples of floats in, float or NamedTuple out.

Public names are re-exported here, so that a formula is found by its name whatever file it stands in.
"""

from boxwright.disciplines.heat.method.field import SectionField, section_field
from boxwright.disciplines.heat.method.section import (
    air_layer_resistance,
    even_planes,
    layers_transmittance,
    mean_of_bounds,
    parallel_path,
    still_air_convection,
    stud_cavity_resistance,
    zone_method,
    zone_width,
)

__all__ = [
    "SectionField",
    "air_layer_resistance",
    "even_planes",
    "layers_transmittance",
    "mean_of_bounds",
    "parallel_path",
    "section_field",
    "still_air_convection",
    "stud_cavity_resistance",
    "zone_method",
    "zone_width",
]
