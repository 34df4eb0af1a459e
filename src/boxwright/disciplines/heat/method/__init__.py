"""Every formula of the chapter on heat, and nothing else: floats and tuples of floats in, float or NamedTuple out.

Public names are re-exported here, so that a formula is found by its name whatever file it stands in.
"""

from boxwright.disciplines.heat.method.field import (
    SectionField,
    section_field,
)
from boxwright.disciplines.heat.method.fuel import (
    Burnt,
    Cycling,
    burnt,
    cycling,
    drifts_to,
    energy_per_volume,
    filling_lasts,
    fuel_burnt,
    heat_of_filling,
    held_outside,
    thin_air,
)
from boxwright.disciplines.heat.method.network import (
    Box,
    Cold,
    Course,
    Faces,
    Heater,
    Hours,
    Panes,
    Room,
    box_through_time,
)
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
from boxwright.disciplines.heat.method.sky import (
    cloud_factor,
    sky_emittance,
    sky_radiation,
    sky_temperature,
    sol_air,
    warm_sky_emittance,
)

__all__ = [
    "Box",
    "Burnt",
    "Cold",
    "Course",
    "Cycling",
    "Faces",
    "Heater",
    "Hours",
    "Panes",
    "Room",
    "SectionField",
    "air_layer_resistance",
    "box_through_time",
    "burnt",
    "cloud_factor",
    "cycling",
    "drifts_to",
    "energy_per_volume",
    "even_planes",
    "filling_lasts",
    "fuel_burnt",
    "heat_of_filling",
    "held_outside",
    "layers_transmittance",
    "mean_of_bounds",
    "parallel_path",
    "section_field",
    "sky_emittance",
    "sky_radiation",
    "sky_temperature",
    "sol_air",
    "still_air_convection",
    "stud_cavity_resistance",
    "thin_air",
    "warm_sky_emittance",
    "zone_method",
    "zone_width",
]
