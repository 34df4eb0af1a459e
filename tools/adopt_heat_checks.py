"""Convert the wall sections of the researched sheet of checks into `checks/sections.toml` of heat.

    python tools/adopt_heat_checks.py SHEET.toml > src/boxwright/disciplines/heat/checks/sections.toml

The sheet has units in the names of its keys; here they stand behind the numbers. An id is kept; where one entry has
several answers, each further one adds a word to it. The drawing of a trailer wall in columns and rows is the sheet's,
by half a stud spacing between two lines of symmetry.
"""

from __future__ import annotations

import json
import sys
import tomllib
from collections.abc import Callable, Iterator, Mapping
from itertools import pairwise
from pathlib import Path
from typing import Any

Entry = dict[str, Any]
Check = tuple[str, str, Mapping[str, object], object, object]

FIELD = "section_field"


def millimetres(numbers: list[float]) -> list[str]:
    """Return lengths in text."""
    return [f"{number:.10g} mm" for number in numbers]


def conducting(rows: list[list[float]]) -> list[list[str]]:
    """Return rows of conductivities in text."""
    return [[f"{number:.10g} W/mK" for number in row] for row in rows]


def column(entry: Entry) -> Iterator[Check]:
    """Yield the half square column of the standard: the exact series at 28 places."""
    sheet = Path(sys.argv[1]).parent / entry["inputs"]["file"]
    exact = json.loads(sheet.read_text(encoding="utf-8"))["exact"]
    # Rows of the standard run down from the hot top; ours run from the cold outside, which is its bottom.
    places = [[250.0 * (across + 1), 250.0 * (7 - row)] for row in range(7) for across in range(4)]
    given = {
        "widths": millimetres([250.0] * 4),
        "depths": millimetres([250.0] * 8),
        "conductivities": conducting([[1.0] * 4] * 8),
        "outside": ["0 degC", "1e-9 m2K/W"],
        "inside": ["20 degC", "1e-9 m2K/W"],
        "left": ["0 degC", "1e-9 m2K/W"],
        "asked": [millimetres(place) for place in places],
        "finest": "5 mm",
    }
    yield "", FIELD, given, {"asked": [f"{one} degC" for row in exact for one in row]}, "0.01 K"


def folded(entry: Entry) -> Iterator[Check]:
    """Yield the sheet of metal folded into insulation of the standard: nine temperatures and the heat."""
    one, expect = entry["inputs"], entry["expect"]
    lines = one["layers_y_mm"]
    filled, metal = one["insulation_W_mK"], one["aluminium_W_mK"]
    wood, stone = one["wood_W_mK"], one["concrete_W_mK"]
    web, wide = one["web_x_mm"], one["wood_x_mm"]
    named = {place: value for place, value in expect.items() if place != "q_W_per_m"}
    places = [[float(text.replace("_", ".")) for text in place[3:].split("_y")] for place in named]
    given = {
        "widths": millimetres([web, wide - web, one["width_mm"] - wide]),
        "depths": millimetres([after - before for before, after in pairwise(lines)]),
        "conductivities": conducting(
            [[stone] * 3, [wood, wood, filled], [metal, metal, filled], [metal, filled, filled], [metal] * 3]
        ),
        "outside": [f"{one['Te_C']} degC", f"{one['Rse_m2K_W']} m2K/W"],
        "inside": [f"{one['Ti_C']} degC", f"{one['Rsi_m2K_W']} m2K/W"],
        "asked": [millimetres(place) for place in places],
    }
    answers = {"asked": [f"{value} degC" for value in named.values()], "inward": f"{expect['q_W_per_m']} W/m"}
    yield "", FIELD, given, answers, {"asked": "0.1 K", "inward": "0.1 W/m"}


def drawn(one: Entry) -> tuple[list[float], list[float], list[list[float]]]:
    """Return widths and depths (mm) and conductivities of a trailer wall over half a stud spacing."""
    wall, half, pitch = one["tube_wall_mm"], one["tube_face_mm"] / 2.0, one["pitch_mm"] / 2.0
    metal, foam, air = one["tube_W_mK"], one["xps_W_mK"], one["tube_air_W_mK"]
    widths = [half - wall, wall, pitch - half]
    depths = [one["skin_mm"], wall, one["tube_through_wall_mm"] - 2.0 * wall, wall]
    rows = [[one["skin_W_mK"]] * 3, [metal, metal, foam], [air, metal, foam], [metal, metal, foam]]
    if "strip_on_stud_mm" in one:
        depths.append(one["strip_on_stud_mm"])
        rows.append([one["strip_W_mK"], one["strip_W_mK"], one["air_layer_beside_strip_W_mK"]])
    if "continuous_xps_inside_mm" in one:
        depths.append(one["continuous_xps_inside_mm"])
        rows.append([foam] * 3)
    if one["ply_mm"]:
        depths.append(one["ply_mm"])
        rows.append([one["ply_W_mK"]] * 3)
    return widths, depths, rows


def section(one: Entry) -> dict[str, object]:
    """Return the drawing of a trailer wall as arguments."""
    widths, depths, rows = drawn(one)
    return {
        "widths": millimetres(widths), "depths": millimetres(depths), "conductivities": conducting(rows)
    }  # fmt: skip


def wall(entry: Entry) -> Iterator[Check]:
    """Yield the checks of a trailer wall: the whole, its coldest inside place, and the part between studs."""
    one, expect = entry["inputs"], entry["expect"]
    films = {
        "outside": [f"{one['Te']} degC", f"{one['Rse']} m2K/W"], "inside": [f"{one['Ti']} degC", f"{one['Rsi']} m2K/W"]
    }  # fmt: skip
    answers = {
        "transmittance": f"{expect['U_W_m2K']} W/m2K",
        "factor": f"{expect['fRsi']}",
        "coldest_inside": f"{expect['Tsi_stud_C']} degC",
    }
    within = {"transmittance": "1 %", "factor": "0.01", "coldest_inside": "0.2 K"}
    yield "", FIELD, {**section(one), **films}, answers, within
    _, depths, rows = drawn(one)
    plain = {
        "depths": millimetres(depths),
        "conductivities": conducting([[row[-1] for row in rows]])[0],
        "films": f"{one['Rse'] + one['Rsi']:.10g} m2K/W",
    }
    yield "between-studs", "layers_transmittance", plain, f"{expect['U_centre_W_m2K']} W/m2K", "0.1 %"


def by_hand(entry: Entry) -> Iterator[Check]:
    """Yield the hand rules on the bare metal path and on half an inch of foam over it."""
    expect = entry["expect"]
    for place, name in enumerate(("wall.S16", "wall.break_half_inch")):
        one = SHEET[name]["inputs"]
        word, films = name.removeprefix("wall."), f"{one['Rse'] + one['Rsi']:.10g} m2K/W"
        lower, upper = (f"{expect[key][place]} W/m2K" for key in ("U_parallel", "U_isothermal_planes"))
        yield f"parallel-{word}", "parallel_path", {**section(one), "films": films}, lower, "0.1 %"
        yield f"planes-{word}", "even_planes", {**section(one), "films": films}, upper, "0.1 %"
        both = {"lower": lower, "upper": upper}
        yield f"mean-{word}", "mean_of_bounds", both, f"{expect['U_iso6946_combined'][place]} W/m2K", "0.1 %"
        # The zone of half a stud: half the face and the cover once.
        cover = max(one["ply_mm"] + one.get("continuous_xps_inside_mm", 0.0), 12.7)
        zone = {"zone": f"{one['tube_face_mm'] / 2.0 + cover:.10g} mm", **section(one), "films": films}
        yield f"zone-{word}", "zone_method", zone, f"{expect['U_zone'][place]} W/m2K", "0.1 %"


def zone(entry: Entry) -> Iterator[Check]:
    """Yield the width of the zone of a worked example."""
    one = entry["inputs"]
    given = {"face": f"{one['m_in']} in", "cover": f"{one['d_in']} in"}
    yield "", "zone_width", given, f"{entry['expect']['w_A_in']} in", "0.001 in"


def between_steel(entry: Entry) -> Iterator[Check]:
    """Yield what insulation between steel studs is worth."""
    one = entry["inputs"]
    given = {"nominal": f"{one['R_cavity_h_ft2_F_Btu']} ft2.h.F/Btu", "factor": f"{one['Fc']}"}
    yield "", "stud_cavity_resistance", given, f"{entry['expect']['R_effective']} ft2.h.F/Btu", "0.05 ft2.h.F/Btu"


def air_layer(entry: Entry) -> Iterator[Check]:
    """Yield the air layer of the standard, heat across the horizontal, by the table's rounded answer."""
    given = {"convection": "1.25 W/m2K", "warm_emittance": "0.9", "cold_emittance": "0.9"}
    yield "", "air_layer_resistance", given, "0.18 m2K/W", "0.005 m2K/W"
    yield "convection", "still_air_convection", {"depth": f"{entry['inputs']['d_m']} m"}, "1.25 W/m2K", "0.005 W/m2K"


ADOPTED: dict[str, tuple[Callable[[Entry], Iterator[Check]], str, str, str]] = {
    "cond.iso10211.case1": (column, "iso-10211", "annex A, case 1", "published"),
    "cond.iso10211.case2": (folded, "iso-10211", "annex A, case 2", "published"),
    **{
        f"wall.{name}": (wall, "heat-sheet", f"trailer wall, {name}", "hand")
        for name in (
            "S16", "S16.Rsi25", "break_half_inch", "break_quarter_inch", "strip_quarter", "strip_quarter.Rsi25",
            "bare", "alu_tube", "24in",
        )
    },
    "wall.methods": (by_hand, "heat-sheet", "hand methods on two trailer walls", "hand"),
    "wall.zone_width": (zone, "ashrae-zone", "worked example, figure 9.7", "published"),
    "wall.steel_fc": (between_steel, "ashrae-90-1", "appendix A, 3.5 in studs at 16 in, R-13", "published"),
    "wall.iso6946_airlayer": (air_layer, "iso-6946", "table 8, 25 mm", "published"),
}  # fmt: skip
COVERS = {"zone_method": "even_planes", "parallel_path": "layers_transmittance"}
SHEET: dict[str, Entry] = {}


def written(value: object) -> str:
    """Return a value as TOML."""
    if isinstance(value, list):
        return "[" + ", ".join(written(item) for item in value) + "]"
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{key} = {written(item)}" for key, item in value.items()) + "}"
    return f'"{value}"'


def block(name: str, check: Check, source: str, place: str, kind: str) -> str:
    """Return one check as the text of its block."""
    word, method, given, expect, within = check
    lines = [
        "[[check]]",
        f'id = "{name}{"-" if word else ""}{word}"',
        f'method = "{method}"',
        *([f'covers = ["{COVERS[method]}"]'] if method in COVERS else []),
        f'source = "{source}"',
        f'place = "{place}"',
        f'kind = "{kind}"',
        f"given = {written(given)}",
        f"expect = {written(expect)}",
        f"within = {written(within)}",
    ]
    return "\n".join(lines)


def adopt() -> str:
    """Return the text of the adopted checks."""
    head = "# Adopted by tools/adopt_heat_checks.py from the project's sheet on heat; do not edit by hand."
    blocks = [
        block(name, check, source, place, kind)
        for name, (convert, source, place, kind) in ADOPTED.items()
        for check in convert(SHEET[name])
    ]
    return "\n\n".join([head, *blocks]) + "\n"


if __name__ == "__main__":
    text = Path(sys.argv[1]).read_text(encoding="utf-8")
    SHEET.update((entry["id"], entry) for entry in tomllib.loads(text)["check"])
    sys.stdout.write(adopt())
