"""What stands in place of the rig file when it is looked at again."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from boxwright.web.desk import Desk
from tests.web.test_desk import TEXT, TODAY, changed


@pytest.fixture
def file(tmp_path: Path) -> Path:
    found = tmp_path / "rig.yaml"
    found.write_text(TEXT, encoding="utf-8", newline="")
    return found


@pytest.mark.parametrize("what", ["a pipe", "five megabytes"])
def test_what_stands_in_place_of_the_file_is_named_and_not_written_over(file: Path, what: str) -> None:
    desk = Desk(file, TODAY)
    file.unlink()
    if what == "a pipe":
        os.mkfifo(file)
    else:
        file.write_bytes(b"#" * 5_000_000)
    says = "rig.yaml is no plain file" if what == "a pipe" else "rig.yaml is longer than 4 MB"
    told, _ = desk.look(1.0)
    assert told is not None and told.says == f"{says}; what you have is kept here"
    changed(desk, "parts[bench].weight", "31", 2.0)
    assert desk.told().says == f"{says}; what you have is kept here"
    again = desk.write(is_again=True)
    assert (again.state, again.says.partition(" and is")[::2]) == (
        "gone", (says, " not written over: move it away first, then write it again; what you have is kept here"),
    )  # fmt: skip
    assert desk.look(3.0) == (None, None)
    file.unlink()
    told, _ = desk.look(4.0)
    assert told is not None and told.says == "rig.yaml is no longer there; what you have is kept here"
