"""Convert the weight entries of the researched sheet of checks into `checks/statics.toml`, in the one check format.

    python tools/adopt_checks.py SHEET.toml > src/boxwright/disciplines/weight/checks/statics.toml

The sheet counts x from the ball, y to the left and z from the ground, with units in the names of its keys. Here x is
rearward of the front stud face, y to the right and z above the deck: the ball is put at COUPLER_X and the deck at
DECK, so that no datum is zero by chance. Turning y round changes the sign of yaw products of inertia; the entries of
weight hold none. An id is kept; where one entry of the sheet has several answers, each further one adds a word to it.
"""

from __future__ import annotations

import sys
import tomllib
from collections.abc import Callable, Iterator, Mapping
from decimal import Decimal
from pathlib import Path
from typing import Any

COUPLER_X = Decimal("-1.25")
DECK = Decimal("0.5")
Entry = dict[str, Any]
Check = tuple[str, str, Mapping[str, object], Mapping[str, object] | str, str]


def exact(number: object) -> Decimal:
    """Return a number of the sheet as it is written."""
    return Decimal(str(number))


def unit(number: object, symbol: str) -> str:
    """Return a number with its unit; worked-out numbers are cut to ten digits."""
    value = number if isinstance(number, Decimal) else exact(number)
    text = format(round(value, 10).normalize(), "f")
    return f"{text} {symbol}".strip()


def kg(number: object) -> str:
    """Return a mass in text."""
    return unit(number, "kg")


def m(number: object) -> str:
    """Return a length in text."""
    return unit(number, "m")


def x_of(number: object) -> str:
    """Return a place behind the ball as a place behind the front stud face."""
    return m(exact(number) + COUPLER_X)


def z_of(number: object) -> str:
    """Return a height above the ground as a height above the deck."""
    return m(exact(number) - DECK)


BALL = x_of(0)


def roll_up(entry: Entry) -> Iterator[Check]:
    """Yield the checks of the entry that adds up five cuboids on one axle."""
    given, expect = entry["inputs"], entry["expect"]
    items = [[exact(cell) for cell in item] for item in given["items_kg_x_y_z_lx_ly_lz_m"]]
    masses, total = [item[0] for item in items], sum((item[0] for item in items), Decimal(0))
    places = {
        "x": [item[1] + COUPLER_X for item in items],
        "y": [-item[2] for item in items],
        "z": [item[3] - DECK for item in items],
    }
    sizes = dict(zip("xyz", ([item[i] for item in items] for i in (4, 5, 6)), strict=True))
    middle = {
        axis: sum((mass * place for mass, place in zip(masses, row, strict=True)), Decimal(0)) / total
        for axis, row in places.items()
    }
    wanted = {"x": x_of(expect["cg_x_m"]), "y": m(-exact(expect["cg_y_m"])), "z": z_of(expect["cg_z_m"])}
    listed = [kg(mass) for mass in masses]
    yield "", "total_mass", {"masses": listed}, kg(expect["mass_kg"]), "0.001 kg"
    for axis, row in places.items():
        given_here = {"masses": listed, "places": [m(place) for place in row]}
        yield f"centre-{axis}", "centre", given_here, wanted[axis], "0.0001 m"
    for name, one, other in (("ixx", "y", "z"), ("iyy", "x", "z"), ("izz", "x", "y")):
        arguments: dict[str, object] = {"masses": listed}
        for argument, axis in (("first", one), ("second", other)):
            arguments[argument] = [m(place - middle[axis]) for place in places[axis]]
        arguments |= {"first_sizes": [m(s) for s in sizes[one]], "second_sizes": [m(s) for s in sizes[other]]}
        yield name, "moment_of_inertia", arguments, unit(expect[f"{name}_kgm2"], "kg m2"), "0.01 kg m2"
    axle = {"centre_x": m(middle["x"]), "axle_x": x_of(given["axle_x_m"]), "coupler_x": BALL}
    yield "tongue", "tongue_mass", {"mass": kg(total), **axle}, kg(expect["tongue_kg"]), "0.001 kg"
    yield "axle", "group_mass", {"mass": kg(total), **axle}, kg(expect["axle_kg"]), "0.001 kg"
    share = {"tongue": kg(expect["tongue_kg"]), "mass": kg(total)}
    yield "share", "tongue_share", share, unit(expect["tongue_share"], ""), "0.00001"
    wheels = {
        "axle_mass": kg(expect["axle_kg"]),
        "roll_mass": kg(total),
        "centre_y": m(middle["y"]),
        "track": m(given["track_m"]),
    }
    for side in ("left", "right"):
        yield side, f"{side}_wheels_mass", wheels, kg(expect[f"wheel_{side}_kg"]), "0.001 kg"


def inertia(entry: Entry) -> Iterator[Check]:
    """Yield the check of two point masses and a plate."""
    given = entry["inputs"]
    half = exact(given["separation_m"]) / 2
    arguments = {
        "masses": [kg(given["point_kg"]), kg(given["point_kg"]), kg(given["plate_kg"])],
        "first": [m(-half), m(half), "0 m"],
        "second": ["0 m", "0 m", "0 m"],
        "first_sizes": ["0 m", "0 m", m(given["plate_lx_m"])],
        "second_sizes": ["0 m", "0 m", m(given["plate_ly_m"])],
    }
    yield "", "moment_of_inertia", arguments, unit(entry["expect"]["izz_kgm2"], "kg m2"), "0.000001 kg m2"


def hitch_height(entry: Entry) -> Iterator[Check]:
    """Yield the checks of a trailer level and with its nose up."""
    given = entry["inputs"]
    axle_z = exact(given["wheel_centre_z_m"])
    arguments = {
        "mass": kg(given["mass_kg"]),
        "axle_behind_centre": m(exact(given["axle_x_m"]) - exact(given["cg_x_m"])),
        "centre_above_axle": m(exact(given["cg_z_m"]) - axle_z),
        "lever": m(given["axle_x_m"]),
        "ball_above_axle": m(exact(given["ball_z_level_m"]) - axle_z),
    }
    up, level = {**arguments, "pitch": unit(given["pitch_deg"], "deg")}, {**arguments, "pitch": "0 deg"}
    yield "", "pitched_tongue_mass", up, kg(entry["expect"]["tongue_kg"]), "0.001 kg"
    yield "level", "pitched_tongue_mass", level, kg(entry["expect"]["tongue_level_kg"]), "0.001 kg"


def torsion(entry: Entry) -> Iterator[Check]:
    """Yield the checks of a torsion tandem with its ball raised."""
    given, expect = entry["inputs"], entry["expect"]
    arguments = {
        "mass": kg(given["mass_kg"]),
        "centre_x": x_of(given["cg_x_m"]),
        "coupler_x": BALL,
        "axles_x": [x_of(given["axle1_x_m"]), x_of(given["axle2_x_m"])],
        "axle_rate": unit(given["axle_rate_each_N_per_m"], "N/m"),
        "ball_raise": m(given["ball_raise_m"]),
    }
    wanted = {
        "axles": [kg(expect["front_axle_kg"]), kg(expect["rear_axle_kg"])],
        "tongue": kg(expect["tongue_kg"]),
        "pitch": unit(expect["pitch_nose_up_deg"], "deg"),
    }
    within = '{axles = "0.01 kg", tongue = "0.01 kg", pitch = "0.0001 deg"}'
    yield "", "torsion_tandem", arguments, wanted, within
    middle = (exact(given["axle1_x_m"]) + exact(given["axle2_x_m"])) / 2
    group = exact(given["mass_kg"]) * exact(given["cg_x_m"]) / middle
    arms = {"group": kg(group), "front_arm": "0.42 m", "rear_arm": "0.42 m"}
    yield "equalised", "equaliser_front_mass", arms, kg(expect["equalised_axle_each_kg"]), "0.01 kg"


def torsion_flat(entry: Entry) -> Iterator[Check]:
    """Yield the checks of a torsion tandem whose rear axle carries nothing."""
    given, expect = entry["inputs"], entry["expect"]
    axle = {"centre_x": x_of(given["cg_x_m"]), "axle_x": x_of(given["axle1_x_m"]), "coupler_x": BALL}
    arguments = {"mass": kg(given["mass_kg"]), **axle}
    yield "", "group_mass", arguments, kg(expect["front_axle_kg"]), "0.01 kg"
    yield "tongue", "tongue_mass", arguments, kg(expect["tongue_kg"]), "0.01 kg"


def states(entry: Entry) -> Iterator[Check]:
    """Yield the checks of five load states: mass, tongue weight and share of each."""
    given, expect = entry["inputs"], entry["expect"]
    for state in ("empty", "staged_floor", "loaded", "arrived", "cargo_rolled"):
        items = [[exact(cell) for cell in item] for item in given[state]]
        mass = sum(item[0] for item in items)
        middle = sum(item[0] * item[1] for item in items) / mass
        name = state.replace("_", "-")
        yield (
            f"{name}-mass",
            "total_mass",
            {"masses": [kg(i[0]) for i in items]},
            kg(expect[f"{state}_mass_kg"]),
            "0.001 kg",
        )
        axle = {"centre_x": x_of(middle), "axle_x": x_of(given["axle_x_m"]), "coupler_x": BALL}
        yield f"{name}-tongue", "tongue_mass", {"mass": kg(mass), **axle}, kg(expect[f"{state}_tongue_kg"]), "0.001 kg"
        share = {"tongue": kg(expect[f"{state}_tongue_kg"]), "mass": kg(mass)}
        yield f"{name}-share", "tongue_share", share, unit(expect[f"{state}_share"], ""), "0.00001"


def worst_state(entry: Entry) -> Iterator[Check]:
    """Yield the checks of the highest and the lowest share over all fills."""
    given, expect = entry["inputs"], entry["expect"]
    axle = exact(given["axle_x_m"])
    base, place = (exact(cell) for cell in given["base_kg_x"][0])
    arguments = {
        "tongue": kg(base * (1 - place / axle)),
        "mass": kg(base),
        "shares": [unit(1 - exact(x) / axle, "") for _, x in given["variable_max_kg_x"]],
        "most": [kg(most) for most, _ in given["variable_max_kg_x"]],
    }
    for name, method in (("max", "highest_share"), ("min", "lowest_share")):
        fills = [kg(fill) for fill in expect[f"{name}_at_fill_kg"]]
        wanted = {"share": unit(expect[f"{name}_share"], ""), "fills": fills}
        yield name, method, arguments, wanted, '{share = "0.00001", fills = "0.001 kg"}'


def least_move(entry: Entry) -> Iterator[Check]:
    """Yield the check of the moves with the least effort, enough or not."""
    given, expect = entry["inputs"], entry["expect"]
    items = given["items_kg_maxfwd_m_maxaft_m_costfactor"]
    arguments = {
        "mass": kg(given["mass_kg"]),
        "tongue": kg(given["tongue_kg"]),
        "lever": m(given["axle_x_m"]),
        "target": unit(given["target_share"], ""),
        "items": [kg(item[0]) for item in items],
        "forward": [m(item[1]) for item in items],
        "rearward": [m(item[2]) for item in items],
        "efforts": [unit(item[3], "") for item in items],
    }
    wanted: dict[str, object] = {"needed": unit(expect["required_moment_kgm"], "kg m")}
    if "moves_m" in expect:
        wanted |= {"moves": [m(move) for move in expect["moves_m"]], "effort": unit(expect["cost_kgm"], "kg m")}
        wanted |= {"is_enough": True}
    else:
        wanted |= {"reached": unit(expect["available_moment_kgm"], "kg m"), "tongue": kg(expect["best_tongue_kg"])}
        wanted |= {"is_enough": expect["feasible"]}
    yield "", "least_move", arguments, wanted, "0.001"


def add_mass(entry: Entry) -> Iterator[Check]:
    """Yield the check of a mass to add."""
    given = entry["inputs"]
    arguments = {
        "mass": kg(given["mass_kg"]),
        "tongue": kg(given["tongue_kg"]),
        "place_x": x_of(given["add_x_m"]),
        "axle_x": x_of(given["axle_x_m"]),
        "coupler_x": BALL,
        "target": unit(given["target_share"], ""),
    }
    yield "", "mass_to_add", arguments, kg(entry["expect"]["add_kg"]), "0.01 kg"


def tickets(entry: Entry) -> Iterator[Check]:
    """Yield the checks of three scale tickets, with what each answer may be off."""
    given, expect = entry["inputs"], entry["expect"]
    pads = {name: kg(given[f"{name}_kg"]) for name in ("hitched_steer", "hitched_drive", "solo_steer", "solo_drive")}
    tongue, axles = kg(expect["tongue_kg"]), kg(given["hitched_trailer_axles_kg"])
    place = {"axle_x": x_of(given["axle_x_m"]), "coupler_x": BALL}
    steer = {name: pads[name] for name in ("hitched_steer", "solo_steer")}
    overhang = {**steer, "wheelbase": m(given["wheelbase_m"]), "tongue": tongue}
    sigma = kg(expect["sigma_reading_kg"])
    spread = {
        "tongue": tongue,
        "axles": axles,
        "lever": m(given["axle_x_m"]),
        "tongue_uncertainty": kg(expect["sigma_tongue_kg"]),
        "axles_uncertainty": sigma,
    }
    mass = {"tongue": tongue, "mass": kg(expect["trailer_mass_kg"])}
    yield "", "ticket_tongue", pads, tongue, "0.001 kg"
    yield "mass", "ticket_mass", {"tongue": tongue, "axles": axles}, mass["mass"], "0.001 kg"
    yield "share", "tongue_share", mass, unit(expect["share"], ""), "0.00001"
    yield "centre", "ticket_centre_x", {"tongue": tongue, "axles": axles, **place}, x_of(expect["cg_x_m"]), "0.0001 m"
    yield "overhang", "ticket_overhang", overhang, m(expect["overhang_from_steer_unload_m"]), "0.0001 m"
    yield "step", "step_uncertainty", {"step": unit(given["scale_step_lb"], "lb")}, sigma, "0.0001 kg"
    doubt = {"reading": sigma}
    yield "tongue-doubt", "ticket_tongue_uncertainty", doubt, kg(expect["sigma_tongue_kg"]), "0.0002 kg"
    yield "mass-doubt", "ticket_mass_uncertainty", doubt, kg(expect["sigma_mass_kg"]), "0.0002 kg"
    yield "centre-doubt", "ticket_centre_uncertainty", spread, m(expect["sigma_cg_x_m"]), "0.00001 m"


def centre_height(entry: Entry) -> Iterator[Check]:
    """Yield the checks of a centre's height by a lifted nose."""
    given, expect = entry["inputs"], entry["expect"]
    shared = {"mass": kg(given["mass_kg"]), "lever": m(given["axle_x_m"])}
    lift = {"lift": unit(given["tilt_deg"], "deg")}
    arguments = {
        **shared,
        "axle_z": z_of(given["wheel_centre_z_m"]),
        "support_z": z_of(given["nose_support_z_m"]),
        "level_tongue": kg(given["tongue_level_kg"]),
        "lifted_tongue": kg(given["tongue_tilted_kg"]),
        **lift,
    }
    yield "", "centre_z_by_lift", arguments, z_of(expect["cg_z_m"]), "0.0001 m"
    doubt = {**shared, "reading": kg(given["sigma_each_reading_kg"]), **lift}
    yield "doubt", "centre_z_uncertainty", doubt, m(expect["sigma_z_from_readings_m"]), "0.0001 m"


def reconcile(entry: Entry) -> Iterator[Check]:
    """Yield the check of plan and tickets brought together, or found too far apart."""
    given, expect = entry["inputs"], entry["expect"]
    axle = exact(given["axle_x_m"])
    arguments = {
        "planned": [kg(mass) for mass in given["prior_kg"]],
        "planned_uncertainties": [kg(sigma) for sigma in given["prior_sigma_kg"]],
        "rows": [["1"] * len(given["x_m"]), [unit(1 - exact(x) / axle, "") for x in given["x_m"]]],
        "readings": [kg(given["measured_mass_kg"]), kg(given["measured_tongue_kg"])],
        "reading_uncertainties": [kg(given["measured_mass_sigma_kg"]), kg(given["measured_tongue_sigma_kg"])],
    }
    if "posterior_kg" not in expect:
        yield "", "reconcile", arguments, {"misfit": unit(expect["chi2_2dof"], "")}, "0.01"
        limit = {"confidence": "0.95"}
        yield "limit", "misfit_limit_of_two", limit, unit(expect["limit_95"], ""), "0.001"
        return
    wanted = {
        "masses": [kg(mass) for mass in expect["posterior_kg"]],
        "uncertainties": [kg(sigma) for sigma in expect["posterior_sigma_kg"]],
        "misfit": unit(expect["chi2_2dof"], ""),
    }
    within = '{masses = "0.001 kg", uncertainties = "0.001 kg", misfit = "0.0001"}'
    yield "", "reconcile", arguments, wanted, within


def jack(entry: Entry) -> Iterator[Check]:
    """Yield the check of a tongue jack behind the ball."""
    given = entry["inputs"]
    places = {"centre_x": x_of(given["cg_x_m"]), "axle_x": x_of(given["axle_x_m"]), "jack_x": x_of(given["jack_x_m"])}
    yield "", "jack_mass", {"mass": kg(given["mass_kg"]), **places}, kg(entry["expect"]["jack_kg"]), "0.001 kg"


def tip_back(entry: Entry) -> Iterator[Check]:
    """Yield the check of the person who lifts the nose."""
    given = entry["inputs"]
    arguments = {
        "mass": kg(given["mass_kg"]),
        "centre_x": x_of(given["cg_x_m"]),
        "pivot_x": x_of(given["axle_x_m"]),
        "person_x": x_of(given["person_x_m"]),
    }
    yield "", "tip_person_mass", arguments, kg(entry["expect"]["person_limit_kg"]), "0.001 kg"


def level(entry: Entry) -> Iterator[Check]:
    """Yield the checks of blocks under one side and of the nose's change."""
    given, expect = entry["inputs"], entry["expect"]
    side = {"track": m(given["track_m"]), "slope": unit(given["cross_slope_deg"], "deg")}
    nose = {"lever": m(given["ball_to_axle_m"]), "slope": unit(given["long_slope_deg"], "deg")}
    yield "", "block_height", side, m(expect["side_block_m"]), "0.00001 m"
    yield "nose", "nose_change", nose, m(expect["nose_change_m"]), "0.00001 m"


def axle_place(entry: Entry) -> Iterator[Check]:
    """Yield the checks of an axle's place for a share, and of the tongue weight it gives."""
    given, expect = entry["inputs"], entry["expect"]
    arguments = {
        "body": kg(given["body_kg"]),
        "centre_x": x_of(given["body_cg_x_m"]),
        "running_gear": kg(given["running_gear_kg"]),
        "target": unit(given["target_share"], ""),
        "coupler_x": BALL,
    }
    yield "", "axle_place", arguments, x_of(expect["axle_x_m"]), "0.0001 m"
    axle = {"centre_x": x_of(given["body_cg_x_m"]), "axle_x": x_of(expect["axle_x_m"]), "coupler_x": BALL}
    yield "tongue", "tongue_mass", {"mass": kg(given["body_kg"]), **axle}, kg(expect["tongue_kg"]), "0.01 kg"


def habit(entry: Entry) -> Iterator[Check]:
    """Yield the check of the 60/40 habit."""
    given = entry["inputs"]
    arguments = {
        "box": m(given["box_m"]),
        "drawbar": m(given["drawbar_m"]),
        "fraction": unit(given["axle_fraction"], ""),
    }
    yield "", "habit_share", arguments, unit(entry["expect"]["share"], ""), "0.00001"


def window(entry: Entry) -> Iterator[Check]:
    """Yield the check of the places an axle may have in every state."""
    given, expect = entry["inputs"], entry["expect"]
    arguments = {
        "bodies": [kg(mass) for mass, _ in given["states_kg_x"]],
        "centres_x": [x_of(place) for _, place in given["states_kg_x"]],
        "running_gear": kg(given["running_gear_kg"]),
        "least": unit(given["min_share"], ""),
        "most": unit(given["max_share"], ""),
        "coupler_x": BALL,
    }
    wanted = {
        "low": x_of(expect["axle_x_min_m"]),
        "high": x_of(expect["axle_x_max_m"]),
        "is_open": expect["feasible"],
    }
    yield "", "axle_window", arguments, wanted, "0.0001 m"


CONVERTERS: dict[str, Callable[[Entry], Iterator[Check]]] = {
    "w-rollup-1": roll_up,
    "w-inertia-cuboid": inertia,
    "w-hitch-height-1": hitch_height,
    "w-torsion-tandem-1": torsion,
    "w-torsion-flat": torsion_flat,
    "w-states-1": states,
    "w-worst-state-1": worst_state,
    "w-least-move-1": least_move,
    "w-least-move-infeasible": least_move,
    "w-add-mass-1": add_mass,
    "w-tickets-1": tickets,
    "w-cgheight-1": centre_height,
    "w-reconcile-1": reconcile,
    "w-reconcile-flag": reconcile,
    "w-tongue-jack": jack,
    "w-tipback-1": tip_back,
    "w-level-1": level,
    "w-axle-place-1": axle_place,
    "w-axle-place-60": habit,
    "w-axle-window-1": window,
}
SOURCES = {"w-cgheight-1": ("axle-lift", "6.5"), "w-axle-place-60": ("sixty-forty", "not applicable")}


def written(value: object) -> str:
    """Return a value as TOML."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, list):
        return "[" + ", ".join(written(item) for item in value) + "]"
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{key} = {written(item)}" for key, item in value.items()) + "}"
    return f'"{value}"'


def block(entry: Entry, check: Check) -> str:
    """Return one check as the text of its block."""
    word, method, given, expect, within = check
    source, place = SOURCES.get(entry["id"], ("first-principles", entry["method"].split(":")[0]))
    limit = within if within.startswith("{") else f'"{within}"'
    if not within.startswith("{") and isinstance(expect, Mapping):
        limit = written(dict.fromkeys(expect, within))
    lines = [
        "[[check]]",
        f'id = "{entry["id"]}{"-" if word else ""}{word}"',
        f'method = "{method}"',
        f'source = "{source}"',
        f'place = "{place}"',
        'kind = "hand"',
        f"given = {written(given)}",
        f"expect = {written(expect)}",
        f"within = {limit}",
        f'note = "{entry["what"].split(":")[0]}"',
    ]
    return "\n".join(lines)


def adopt(sheet: Entry) -> str:
    """Return the text of the adopted checks; an entry nobody can convert yet is a mistake."""
    blocks = [
        "# Adopted by tools/adopt_checks.py from the project's sheet on weight and towing; do not edit by hand.\n"
        f"# Datum: the ball at x = {BALL}, the deck {DECK} m over the ground."
    ]
    for entry in sheet["check"]:
        if entry["discipline"] == "weight":
            blocks += [block(entry, check) for check in CONVERTERS[entry["id"]](entry)]
    return "\n\n".join(blocks) + "\n"


if __name__ == "__main__":
    sys.stdout.write(adopt(tomllib.loads(Path(sys.argv[1]).read_text(encoding="utf-8"))))
