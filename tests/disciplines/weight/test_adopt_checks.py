"""The adopting script turns the sheet's axes and keeps its ids."""

from __future__ import annotations

import importlib.util
import tomllib
from types import ModuleType

import pytest

from boxwright.source import load_checks
from tests.houserules.tree import ROOT


def adopting() -> ModuleType:
    """Return the script as a module."""
    spec = importlib.util.spec_from_file_location("adopt_checks", ROOT / "tools" / "adopt_checks.py")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


SHEET = {
    "check": [
        {"id": "t-other", "discipline": "towing", "inputs": {}, "expect": {}},
        {
            "id": "w-rollup-1",
            "discipline": "weight",
            "what": "two parts",
            "method": "sec 1.1: in words",
            "inputs": {
                "items_kg_x_y_z_lx_ly_lz_m": [
                    [10.0, 2.0, 0.4, 1.0, 1.0, 1.0, 1.0],
                    [30.0, 4.0, 0.0, 1.0, 1.0, 1.0, 1.0],
                ],
                "axle_x_m": 4.0,
                "track_m": 2.0,
            },
            "expect": {
                "mass_kg": 40.0,
                "cg_x_m": 3.5,
                "cg_y_m": 0.1,
                "cg_z_m": 1.0,
                "ixx_kgm2": 0.0,
                "iyy_kgm2": 0.0,
                "izz_kgm2": 0.0,
                "tongue_kg": 5.0,
                "tongue_share": 0.125,
                "axle_kg": 35.0,
                "wheel_left_kg": 19.5,
                "wheel_right_kg": 15.5,
            },
        },
    ]
}


def test_places_are_turned_to_the_rigs_axes() -> None:
    """By hand: the ball goes to x = -1.25, the deck is 0.5 over the ground, left becomes negative."""
    adopted = {one["id"]: one for one in tomllib.loads(adopting().adopt(SHEET))["check"]}
    assert all(name.startswith("w-rollup-1") for name in adopted)
    assert adopted["w-rollup-1-centre-x"]["given"]["places"] == ["0.75 m", "2.75 m"]
    assert adopted["w-rollup-1-centre-x"]["expect"] == "2.25 m"
    assert adopted["w-rollup-1-centre-y"]["given"]["places"] == ["-0.4 m", "0 m"]
    assert adopted["w-rollup-1-centre-y"]["expect"] == "-0.1 m"
    assert adopted["w-rollup-1-centre-z"]["expect"] == "0.5 m"
    assert adopted["w-rollup-1-tongue"]["given"] == {
        "mass": "40 kg",
        "centre_x": "2.25 m",
        "axle_x": "2.75 m",
        "coupler_x": "-1.25 m",
    }
    assert adopted["w-rollup-1-left"]["given"]["centre_y"] == "-0.1 m"
    assert {one["kind"] for one in adopted.values()} == {"hand"}


def test_an_entry_nobody_can_convert_is_a_mistake() -> None:
    with pytest.raises(KeyError, match="w-new"):
        adopting().adopt({"check": [{"id": "w-new", "discipline": "weight"}]})


def test_every_entry_of_the_sheet_was_adopted() -> None:
    ids = {check.id for check in load_checks("boxwright.disciplines.weight")}
    assert set(adopting().CONVERTERS) - ids <= {"w-states-1", "w-worst-state-1"}, "these two have a word after their id"
    assert {"w-states-1-loaded-share", "w-worst-state-1-max", "w-worst-state-1-min"} <= ids
