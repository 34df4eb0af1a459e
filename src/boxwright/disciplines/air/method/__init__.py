"""Every formula of the chapter on air, and nothing else: floats and tuples of floats in, float or NamedTuple out.

Public names are re-exported here, so that a formula is found by its name whatever file it stands in.
"""

from boxwright.disciplines.air.method.condensation import (
    Settled,
    curve_over_ice,
    curve_over_water,
    factor_needed,
    highest_humidity,
    pane_factor,
    settled_in_wall,
    surface_temperature,
    wall_saturation_pressure,
)
from boxwright.disciplines.air.method.exchange import (
    air_to_dry,
    air_to_thin,
    breathed_out,
    dried_after,
    gathered,
    in_series,
    leaked,
    risen,
)
from boxwright.disciplines.air.method.psychrometrics import (
    air_density,
    dew_point,
    humidity_ratio,
    over_ice,
    over_water,
    saturation_pressure,
    standard_pressure,
    vapour_pressure,
    wet_bulb_humidity,
)

__all__ = [
    "Settled",
    "air_density",
    "air_to_dry",
    "air_to_thin",
    "breathed_out",
    "curve_over_ice",
    "curve_over_water",
    "dew_point",
    "dried_after",
    "factor_needed",
    "gathered",
    "highest_humidity",
    "humidity_ratio",
    "in_series",
    "leaked",
    "over_ice",
    "over_water",
    "pane_factor",
    "risen",
    "saturation_pressure",
    "settled_in_wall",
    "standard_pressure",
    "surface_temperature",
    "vapour_pressure",
    "wall_saturation_pressure",
    "wet_bulb_humidity",
]
