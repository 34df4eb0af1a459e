"""``boxwright draw --format glb``: one file of solids, whole or cut; what is asked for wrongly is said."""

from __future__ import annotations

from pathlib import Path

import pytest

from boxwright import HOW_TO_ADD
from boxwright.cli import drawing_files
from boxwright.cli.run import main
from boxwright.render.extra import MissingExtra
from tests.render.solid import scene_of

INCH = 0.0254


def draw(capsys: pytest.CaptureFixture[str], to: Path, *words: str) -> tuple[int, str]:
    code = main(["draw", "rigs/whimbrel.yaml", "--to", str(to), *words])
    printed = capsys.readouterr()
    return code, " ".join((printed.out + printed.err).split())


def test_what_stands_is_written_as_solids(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, said = draw(capsys, tmp_path, "--format", "glb", "--stage", "foam")
    assert code == 0 and "stage foam" in said and "whimbrel.glb" in said
    nodes = set(scene_of((tmp_path / "whimbrel.glb").read_bytes()).graph.nodes)
    assert {"walls[left].layers[foam]", "frame.studs"} <= nodes
    assert not {"walls[left].layers[liner]", "parts[bunk]"} & nodes  # they come later


def test_sheets_and_solids_go_into_one_folder(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert draw(capsys, tmp_path, "--format", "svg,glb", "--sheet", "order")[0] == 0
    assert {"order.svg", "whimbrel.glb"} <= {one.name for one in tmp_path.iterdir()}


@pytest.mark.parametrize(
    ("written", "row", "axis", "at"),
    [
        ("x=60in", 0, 0, 60.0),
        ("x = 60, front", 1, 0, 60.0),
        ("side=5", 0, 1, 5.0),
        ("z=2ft", 1, 2, 24.0),
        ("z=24,over", 0, 2, 24.0),
    ],
)
def test_a_section_keeps_what_lies_on_its_side(
    written: str, row: int, axis: int, at: float, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert draw(capsys, tmp_path, "--format", "glb", "--section", written)[0] == 0
    scene = scene_of((tmp_path / "whimbrel.glb").read_bytes())
    bounds = [one.bounds for one in scene.geometry.values()]  # in the rig's own axes, before the root turns them
    reached = [ends[row][axis] for ends in bounds]
    assert (min(reached) if row == 0 else max(reached)) == pytest.approx(at * INCH, rel=1e-5)
    assert all(one.is_watertight for one in scene.geometry.values())


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--format", "glb", "--section", "60"), "write it as x=60in"),
        (("--format", "glb", "--section", "x=60q"), 'cannot read the length "60q"'),
        (("--format", "glb", "--section", "z=30,front"), "under or over"),
        (("--format", "glb", "--section", "x=90ft"), "nothing is left on that side"),
        (("--section", "x=60"), "add --format glb"),
    ],
)
def test_a_section_that_cannot_be_is_said(
    words: tuple[str, ...], says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, said = draw(capsys, tmp_path, *words)
    assert code == 3 and says in said
    assert list(tmp_path.iterdir()) == []


def test_a_rig_without_a_body_says_what_is_missing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    bare = tmp_path / "bare.yaml"
    bare.write_text("boxwright: 1\nunits: {length: in, weight: lb}\nparts:\n  stool: {weight: 3}\n", encoding="utf-8")
    assert main(["draw", str(bare), "--to", str(tmp_path / "out"), "--format", "glb"]) == 3
    assert "length, width and height" in " ".join(capsys.readouterr().err.split())


def test_without_the_package_the_answer_says_what_to_type(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: object) -> None:
        raise MissingExtra("solid", "manifold3d")

    monkeypatch.setattr("boxwright.render.shape._three", fails)
    code, said = draw(capsys, tmp_path, "--format", "glb")
    assert code == 3 and HOW_TO_ADD in said
    assert drawing_files.LIST not in {one.name for one in tmp_path.iterdir()}


def test_a_thing_that_nobody_can_place_is_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rig = tmp_path / "rig.yaml"
    text = Path("rigs/whimbrel.yaml").read_text(encoding="utf-8")
    rig.write_text(text.replace("parts:\n", "parts:\n  lost-crate: {size: 10 x 10 x 10, weight: 4}\n", 1), "utf-8")
    assert main(["draw", str(rig), "--to", str(tmp_path / "out"), "--format", "glb"]) == 0
    assert "nobody wrote where they are or how large: lost-crate" in " ".join(capsys.readouterr().out.split())
