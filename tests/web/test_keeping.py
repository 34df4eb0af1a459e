"""The file on the disk: never half written, never written over what somebody else wrote, nothing replaced is lost."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

import boxwright
from boxwright.web import keeping
from boxwright.web.keeping import MOST_BYTES, CannotKeep, ChangedMeanwhile, Keeper

SOURCES = Path(boxwright.__file__).resolve().parents[1]


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "rig.yaml"
    path.write_text("rig: one\n")
    return path


def opened(path: Path) -> Keeper:
    keeper = Keeper(path)
    keeper.opened()
    return keeper


def past(path: Path) -> set[str]:
    return {one.read_text() for one in (path.parent / ".boxwright" / "past").glob("*.yaml")}


def test_the_text_that_is_replaced_is_kept(file: Path) -> None:
    keeper = opened(file)
    for count in range(1, 4):
        keeper.keep(f"rig: {count}\n")
    assert file.read_text() == "rig: 3\n"
    assert past(file) == {"rig: one\n", "rig: 1\n", "rig: 2\n"}


def test_the_text_at_opening_outlives_many_saves(file: Path) -> None:
    keeper = opened(file)
    for count in range(70):
        keeper.keep(f"rig: {count}\n")
    assert past(file) == {"rig: one\n", *(f"rig: {count}\n" for count in range(69))}


@pytest.mark.parametrize("mode", [0o600, 0o640, 0o644])
def test_what_is_kept_beside_is_for_the_same_eyes(file: Path, mode: int) -> None:
    file.chmod(mode)
    keeper = opened(file)
    keeper.keep("rig: two\n")
    keeper.jot("rig: three\n")
    opened(file).left("rig: two\n")
    keeper.set_aside("rig: four\n")
    file.unlink()
    keeper.keep("rig: five\n", is_again=True)
    keeper.set_aside("rig: six\n")
    kept = [one for one in (file.parent / ".boxwright").rglob("*") if one.is_file()]
    assert {one.suffixes[-1] for one in kept} == {".yaml", ".left", ".unsaved", ".lock", ".of"}
    assert {one.stat().st_mode & 0o777 for one in [file, *kept]} == {mode}


def test_what_somebody_else_wrote_is_not_written_over(file: Path) -> None:
    keeper = opened(file)
    file.write_text("rig: theirs\n")
    with pytest.raises(ChangedMeanwhile) as told:
        keeper.keep("rig: mine\n")
    assert told.value.data == b"rig: theirs\n"
    assert file.read_text() == "rig: theirs\n"


def test_a_file_that_has_vanished_is_written_again_only_when_asked(file: Path) -> None:
    keeper = opened(file)
    file.unlink()
    with pytest.raises(CannotKeep, match="no longer there"):
        keeper.keep("rig: mine\n")
    assert not file.exists()
    keeper.keep("rig: mine\n", is_again=True)
    assert file.read_text() == "rig: mine\n"


def test_a_crash_while_writing_leaves_the_old_text(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    keeper = opened(file)

    def full(path: Path, data: bytes, mode: int | None) -> None:
        path.with_name(path.name + ".new").write_bytes(data[:4])
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(keeping, "replaced", full)
    with pytest.raises(CannotKeep, match="no space left"):
        keeper.keep("rig: mine\n")
    assert file.read_text() == "rig: one\n"
    monkeypatch.undo()
    keeper.keep("rig: mine\n")
    assert file.read_text() == "rig: mine\n"


def test_the_file_keeps_its_permissions_and_its_link(tmp_path: Path) -> None:
    (tmp_path / "kept").mkdir()
    real = tmp_path / "kept" / "rig.yaml"
    real.write_text("rig: one\n")
    real.chmod(0o640)
    link = tmp_path / "link.yaml"
    link.symlink_to(real)
    keeper = opened(link)
    keeper.keep("rig: two\n")
    assert link.is_symlink()
    assert real.read_text() == "rig: two\n"
    assert real.stat().st_mode & 0o777 == 0o640
    assert (tmp_path / "kept" / ".boxwright").is_dir()


@pytest.mark.parametrize("what", ["folder", "pipe", "long", "missing", "loop"])
def test_what_is_no_rig_file_is_not_opened(tmp_path: Path, what: str) -> None:
    path = tmp_path / "rig.yaml"
    if what == "folder":
        path.mkdir()
    elif what == "pipe":
        os.mkfifo(path)
    elif what == "long":
        path.write_bytes(b"#" * (MOST_BYTES + 1))
    elif what == "loop":
        (tmp_path / "other").symlink_to(path)
        path.symlink_to(tmp_path / "other")
    with pytest.raises((CannotKeep, OSError, RuntimeError)):
        Keeper(path).opened()


def test_a_second_session_waits_for_the_first(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first, second = opened(file), opened(file)
    monkeypatch.setattr(keeping, "LOCK_PAUSE", 0.0)
    with first._locked(), pytest.raises(CannotKeep, match="another session"):
        second.keep("rig: second\n")
    assert file.read_text() == "rig: one\n"
    second.keep("rig: second\n")
    with pytest.raises(ChangedMeanwhile):
        first.keep("rig: first\n")


HOLDS = """
import sys, time
from pathlib import Path
from boxwright.web.keeping import Keeper
with Keeper(Path(sys.argv[1]))._locked():
    print("held", flush=True)
    time.sleep(600)
"""


def test_the_lock_of_a_program_that_was_killed_stands_in_nobodys_way(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    keeper = opened(file)
    command = [sys.executable, "-c", HOLDS, str(file)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env={"PYTHONPATH": str(SOURCES)}) as other:
        assert other.stdout is not None and other.stdout.readline() == "held\n"
        monkeypatch.setattr(keeping, "LOCK_TRIES", 1)
        with pytest.raises(CannotKeep, match="another session"):
            keeper.keep("rig: two\n")
        other.kill()
        other.wait()
        keeper.keep("rig: two\n")
    assert file.read_text() == "rig: two\n"


def test_a_lock_file_that_was_left_lying_is_held_by_nobody(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    keeper = opened(file)
    monkeypatch.setattr(keeping, "LOCK_TRIES", 1)
    keeper.path.parent.joinpath(".boxwright").mkdir()
    (file.parent / ".boxwright" / "rig.yaml.lock").touch()
    keeper.keep("rig: two\n")
    keeper.keep("rig: three\n")
    assert file.read_text() == "rig: three\n"


def test_what_was_not_written_is_offered_once_and_never_lost(file: Path) -> None:
    keeper = opened(file)
    keeper.jot("rig: typed\n")
    again = opened(file)
    assert again.left("rig: one\n") == "rig: typed\n"
    again.jot("rig: newer\n")  # what is typed now does not push out what was left
    third = opened(file)
    assert third.left("rig: one\n") == "rig: newer\n"
    assert "rig: typed\n" in past(file)
    third.put_by()
    assert opened(file).left("rig: one\n") is None
    assert past(file) == {"rig: typed\n", "rig: newer\n"}


def test_what_was_written_after_all_is_not_offered(file: Path) -> None:
    keeper = opened(file)
    keeper.jot("rig: two\n")
    keeper.keep("rig: two\n")
    assert opened(file).left("rig: two\n") is None
    keeper.jot("rig: two\n")
    assert opened(file).left("rig: two\n") is None


def test_two_rigs_in_one_folder_keep_apart(file: Path) -> None:
    other = file.with_name("other.yaml")
    other.write_text("rig: other\n")
    opened(file).jot("rig: typed\n")
    assert opened(other).left("rig: other\n") is None
    assert opened(file).left("rig: one\n") == "rig: typed\n"
