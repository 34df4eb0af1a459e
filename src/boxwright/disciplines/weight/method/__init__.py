"""Every formula of the weight chapter, and nothing else: floats and tuples of floats in, float or NamedTuple out.

Public names are re-exported here, so that a formula is found by its name whatever file it stands in.
"""

from boxwright.disciplines.weight.method.balance import (
    ball_pitch,
    centre,
    cross_slope_shift,
    group_mass,
    left_wheels_mass,
    moment_of_inertia,
    pitched_tongue_mass,
    product_of_inertia,
    right_wheels_mass,
    tongue_mass,
    tongue_share,
    total_mass,
)
from boxwright.disciplines.weight.method.fills import WorstShare, highest_share, lowest_share
from boxwright.disciplines.weight.method.moving import Moves, least_move, mass_to_add
from boxwright.disciplines.weight.method.ordering import Window, axle_place, axle_window, habit_share
from boxwright.disciplines.weight.method.parked import (
    block_height,
    jack_mass,
    nose_change,
    tip_margin,
    tip_person_mass,
)
from boxwright.disciplines.weight.method.reconciling import Reconciled, misfit_limit_of_two, reconcile
from boxwright.disciplines.weight.method.tandem import (
    TorsionLoads,
    equaliser_front_mass,
    equaliser_group_x,
    torsion_tandem,
)
from boxwright.disciplines.weight.method.weighing import (
    agreement,
    centre_z_by_lift,
    centre_z_uncertainty,
    plank_tongue,
    plank_uncertainty,
    step_uncertainty,
    ticket_centre_uncertainty,
    ticket_centre_x,
    ticket_mass,
    ticket_mass_uncertainty,
    ticket_overhang,
    ticket_tongue,
    ticket_tongue_uncertainty,
)
from boxwright.units import OutOfRange

__all__ = [
    "Moves",
    "OutOfRange",
    "Reconciled",
    "TorsionLoads",
    "Window",
    "WorstShare",
    "agreement",
    "axle_place",
    "axle_window",
    "ball_pitch",
    "block_height",
    "centre",
    "centre_z_by_lift",
    "centre_z_uncertainty",
    "cross_slope_shift",
    "equaliser_front_mass",
    "equaliser_group_x",
    "group_mass",
    "habit_share",
    "highest_share",
    "jack_mass",
    "least_move",
    "left_wheels_mass",
    "lowest_share",
    "mass_to_add",
    "misfit_limit_of_two",
    "moment_of_inertia",
    "nose_change",
    "pitched_tongue_mass",
    "plank_tongue",
    "plank_uncertainty",
    "product_of_inertia",
    "reconcile",
    "right_wheels_mass",
    "step_uncertainty",
    "ticket_centre_uncertainty",
    "ticket_centre_x",
    "ticket_mass",
    "ticket_mass_uncertainty",
    "ticket_overhang",
    "ticket_tongue",
    "ticket_tongue_uncertainty",
    "tip_margin",
    "tip_person_mass",
    "tongue_mass",
    "tongue_share",
    "torsion_tandem",
    "total_mass",
]
