"""The built wheel in an environment of its own, with what it declares from the package index and nothing of ours."""

from __future__ import annotations

import os
import subprocess
import sys
import venv
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.nightly
def test_the_wheel_answers_in_a_bare_environment(tmp_path: Path) -> None:
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(tmp_path), str(ROOT)]
    subprocess.run(build, capture_output=True, check=True)
    (wheel,) = tmp_path.glob("*.whl")
    venv.create(tmp_path / "bare", with_pip=True)
    programs = tmp_path / "bare" / ("Scripts" if os.name == "nt" else "bin")
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    install = [str(programs / "python"), "-m", "pip", "install", "--quiet", str(wheel)]
    subprocess.run(install, cwd=tmp_path, env=environment, check=True)
    for words, codes in (
        (["check", str(ROOT / "rigs" / "whimbrel.yaml")], (0, 1, 2)),
        (["explain", "weight/tips-up"], (0,)),
        (["explain", "weight"], (0,)),
        (["check-methods"], (0,)),
        (["schema", "--answers"], (0,)),
    ):
        command = [str(programs / "boxwright"), *words]
        came = subprocess.run(command, cwd=tmp_path, env=environment, capture_output=True, text=True, check=False)
        assert (came.returncode in codes, came.stderr) == (True, "") and len(came.stdout) > 200
