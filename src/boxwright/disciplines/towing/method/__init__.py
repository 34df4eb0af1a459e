"""Every formula of the towing chapter, and nothing else: floats and tuples of floats in, float out.

Public names are re-exported here, so that a formula is found by its name whatever file it stands in.
"""

from boxwright.disciplines.towing.method.clearance import (
    breakover_angle,
    departure_angle,
    pitched_height,
)
from boxwright.disciplines.towing.method.coupling import (
    chain_strength,
    class_four_strength,
    d_value,
    front_axle_change,
    heaviest_by_d_value,
    least_rating,
    nose_pitch,
    rear_axle_change,
    restoring_moment,
    trailer_axle_change,
    v_value,
)
from boxwright.disciplines.towing.method.dimensions import STANDARD_GRAVITY
from boxwright.disciplines.towing.method.grade import (
    chock_ratio,
    chocked_grade,
    extra_fuel,
    extra_road_force,
    front_axle_on_grade,
    grade_force,
    grade_power,
    grip_needed,
    rear_axle_on_grade,
    slope_force,
)
from boxwright.disciplines.towing.method.overturning import (
    resultant_wind,
    rollover_speed,
    rollover_threshold,
    unloading_wind,
    wind_angle,
)
from boxwright.disciplines.towing.method.ratings import (
    combination_mass,
    front_axle_mass,
    heaviest_by_factor,
    rear_axle_mass,
    share_of_tow_axles,
    vehicle_mass,
)
from boxwright.disciplines.towing.method.stopping import (
    deceleration,
    mean_deceleration,
    stopping_distance,
)
from boxwright.disciplines.towing.method.tyres import (
    load_at_pressure,
    load_of_index,
    p_metric_load,
    passenger_tyre_on_trailer,
    pressure_for_load,
)
from boxwright.units import OutOfRange

__all__ = [
    "STANDARD_GRAVITY",
    "OutOfRange",
    "breakover_angle",
    "chain_strength",
    "chock_ratio",
    "chocked_grade",
    "class_four_strength",
    "combination_mass",
    "d_value",
    "deceleration",
    "departure_angle",
    "extra_fuel",
    "extra_road_force",
    "front_axle_change",
    "front_axle_mass",
    "front_axle_on_grade",
    "grade_force",
    "grade_power",
    "grip_needed",
    "heaviest_by_d_value",
    "heaviest_by_factor",
    "least_rating",
    "load_at_pressure",
    "load_of_index",
    "mean_deceleration",
    "nose_pitch",
    "p_metric_load",
    "passenger_tyre_on_trailer",
    "pitched_height",
    "pressure_for_load",
    "rear_axle_change",
    "rear_axle_mass",
    "rear_axle_on_grade",
    "restoring_moment",
    "resultant_wind",
    "rollover_speed",
    "rollover_threshold",
    "share_of_tow_axles",
    "slope_force",
    "stopping_distance",
    "trailer_axle_change",
    "unloading_wind",
    "v_value",
    "vehicle_mass",
    "wind_angle",
]
