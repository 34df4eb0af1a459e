"""The wheel carries everything: built, unpacked elsewhere and run, it answers as the checkout does."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from tests.houserules.tree import PACKAGE, ROOT

TRAVELS = frozenset({".py", ".toml", ".md", ".json", ".ttf", ".txt", ".html", ".js", ".css", ".woff2"})


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with the contents of the wheel; built with what is installed, so that no network is needed."""
    place = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(place), str(ROOT)]
    subprocess.run(command, capture_output=True, check=True)
    (wheel,) = place.glob("*.whl")
    with zipfile.ZipFile(wheel) as content:
        content.extractall(place / "unpacked")
    return place / "unpacked"


def files_of(folder: Path) -> set[str]:
    """Return the files of a package that have to travel."""
    found = (path.relative_to(folder) for path in folder.rglob("*") if path.suffix in TRAVELS)
    return {path.as_posix() for path in found if "__pycache__" not in path.parts}


def test_every_file_of_the_package_is_in_the_wheel(unpacked: Path) -> None:
    assert files_of(unpacked / "boxwright") == files_of(PACKAGE)


@pytest.mark.parametrize(
    "words", [("check", str(ROOT / "rigs" / "whimbrel.yaml")), ("explain", "weight/tips-up"), ("schema",)]
)
def test_the_wheel_answers_without_the_checkout(unpacked: Path, words: tuple[str, ...]) -> None:
    run = (
        "import sys, boxwright; from boxwright.cli import main\n"
        f"assert boxwright.__file__.startswith({str(unpacked)!r})\n"
        "sys.exit(main())"
    )
    environment = {**os.environ, "PYTHONPATH": str(unpacked), "COLUMNS": "80"}
    command = [sys.executable, "-c", run, *words]
    came = subprocess.run(command, cwd=unpacked, env=environment, capture_output=True, text=True, check=False)
    assert came.stderr == ""
    assert came.returncode in (0, 1, 2)
    assert len(came.stdout) > 200


def test_the_demo_rigs_come_along(unpacked: Path) -> None:
    come = {path.name: path.read_bytes() for path in (unpacked / "boxwright" / "rigs").glob("*")}
    assert come == {path.name: path.read_bytes() for path in (ROOT / "rigs").glob("*.yaml")}
