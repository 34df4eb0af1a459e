"""Rule 13: the import contracts of pyproject.toml hold, and each of them can be broken."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from tests.houserules.tree import PACKAGE, ROOT, plant

LINT = Path(sys.executable).with_name("lint-imports")
SLICE = ("parts", "method", "solve", "findings", "sheets")


def lint(source: Path) -> subprocess.CompletedProcess[str]:
    """Return what the contracts say of the package in a source folder."""
    environment = {**os.environ, "PYTHONPATH": str(source), "COLUMNS": "200"}
    command = [str(LINT), str(ROOT / "pyproject.toml"), "--no-cache"]
    return subprocess.run(
        command, env=environment, cwd=source, capture_output=True, text=True, timeout=120, check=False
    )


def layer_names() -> list[str]:
    """Return the top-level modules that the layers contract names."""
    with (ROOT / "pyproject.toml").open("rb") as text:
        contracts = tomllib.load(text)["tool"]["importlinter"]["contracts"]
    layers = next(contract["layers"] for contract in contracts if contract["id"] == "layers")
    return [name for layer in layers for name in layer.split(" | ")]


def skeleton(source: Path) -> Path:
    """Write a package of empty layers with two empty disciplines into a source folder; return the folder."""
    for name in layer_names():
        plant(source, f"boxwright/{name}/__init__.py", "")
    for folder in ("air", "heat"):
        for name in ("__init__", *SLICE):
            plant(source, f"boxwright/disciplines/{folder}/{name}.py", "")
    return plant(source, "boxwright/__init__.py", "")


def broken(report: subprocess.CompletedProcess[str]) -> list[str]:
    """Return the names of the contracts that a report calls broken."""
    lines = [line for line in report.stdout.splitlines() if line.endswith(" BROKEN")]
    return [line.removesuffix(" BROKEN") for line in lines]


def test_the_contracts_hold(tmp_path: Path) -> None:
    shutil.copytree(PACKAGE, tmp_path / "boxwright", ignore=shutil.ignore_patterns("__pycache__"))
    for name in layer_names():  # a layer that nobody has needed yet stands in as an empty one
        if not (PACKAGE / f"{name}.py").exists() and not (PACKAGE / name / "__init__.py").exists():
            plant(tmp_path, f"boxwright/{name}/__init__.py", "")
    report = lint(tmp_path)
    assert report.returncode == 0, report.stdout + report.stderr


def test_an_empty_package_breaks_no_contract(tmp_path: Path) -> None:
    report = lint(skeleton(tmp_path))
    assert report.returncode == 0, report.stdout + report.stderr


LAYERS = "Each layer imports only from layers below it"
PURE_METHOD = "Formulas know nothing of the rig, records, findings, drawings or files"


@pytest.mark.parametrize(
    ("place", "text", "contract"),
    [
        ("disciplines/air/solve.py", "import boxwright.study\n", LAYERS),
        ("units/__init__.py", "import boxwright.source\n", LAYERS),
        ("disciplines/air/solve.py", "import boxwright.disciplines.heat\n", "No discipline imports another"),
        ("disciplines/air/parts.py", "from . import solve\n", "Inside a discipline, imports run one way"),
        ("disciplines/air/method.py", "import boxwright.exchange\n", PURE_METHOD),
        ("disciplines/air/method.py", "import pathlib\n", PURE_METHOD),
        ("model/__init__.py", "import yaml\n", "Text, files and HTTP stay at the edges"),
    ],
)
def test_a_planted_import_breaks_its_contract(tmp_path: Path, place: str, text: str, contract: str) -> None:
    plant(skeleton(tmp_path), f"boxwright/{place}", text)
    assert broken(lint(tmp_path)) == [contract]


def test_a_new_module_must_be_given_a_layer(tmp_path: Path) -> None:
    plant(skeleton(tmp_path), "boxwright/hatch.py", "")
    report = lint(tmp_path)
    assert report.returncode == 1
    assert "hatch" in report.stdout
