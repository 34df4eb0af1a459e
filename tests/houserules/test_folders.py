"""Rule 9 and I17: a discipline is a folder, a field of the rig, a chapter and a command, all of one name."""

from __future__ import annotations

import importlib
import re
import types
import typing
from pathlib import Path

import pytest

from tests.houserules.tree import PACKAGE, plant

SLICE = ("README.md", "__init__.py", "parts.py", "method.py", "solve.py", "findings.py", "sheets.py")
MAY_BE_A_FOLDER = frozenset({"method.py", "findings.py"})
EXPORTS = {"Section", "Facet", "Offers", "Result", "offers", "solve", "findings", "sheets", "CHAPTER"}


def folders(root: Path) -> list[str]:
    """Return the folders of the disciplines."""
    return sorted(path.name for path in (root / "disciplines").iterdir() if path.is_dir() and path.name[0] not in "_.")


def incomplete(root: Path) -> list[str]:
    """Return what the folders of the disciplines lack."""
    lacking = []
    for folder in folders(root):
        there = root / "disciplines" / folder
        for name in SLICE:
            as_folder = there / name.removesuffix(".py") / "__init__.py"
            if not (there / name).exists() and not (name in MAY_BE_A_FOLDER and as_folder.exists()):
                lacking.append(f"{folder}/{name}")
    return lacking


def wrong_exports(folder: str, namespace: types.ModuleType) -> list[str]:
    """Return what a discipline should export and does not, and what it should not and does."""
    exported = set(getattr(namespace, "__all__", ()))
    return [f"{folder}: {name}" for name in sorted(exported ^ EXPORTS)]


def command_table(text: str) -> set[str]:
    """Return the commands named in the first column of a chapter's table."""
    cells = [line.split("|")[1] for line in text.splitlines() if line.startswith("|")]
    return {word for cell in cells for word in re.findall(r"`([a-z][a-z-]*)", cell)}


def commands() -> set[str]:
    """Return the words the command line knows."""
    from typer.main import get_command

    from boxwright.cli.commands import app  # imported late: the other rules hold without a command line

    return set(typing.cast(typing.Any, get_command(app)).commands)


def test_every_discipline_is_whole() -> None:
    assert incomplete(PACKAGE) == []


@pytest.mark.parametrize("folder", folders(PACKAGE))
def test_every_discipline_exports_the_same_nine_names(folder: str) -> None:
    assert wrong_exports(folder, importlib.import_module(f"boxwright.disciplines.{folder}")) == []


def test_every_discipline_is_a_field_of_the_rig() -> None:
    from boxwright.rig.rig import Rig

    sections = {
        name: annotation.__module__.split(".")[2]
        for name, annotation in typing.get_type_hints(Rig).items()
        if getattr(annotation, "__module__", "").startswith("boxwright.disciplines.")
    }
    assert sections == {folder: folder for folder in folders(PACKAGE)}


def test_every_discipline_is_a_chapter_of_its_own_name() -> None:
    chapters = [importlib.import_module(f"boxwright.disciplines.{folder}").CHAPTER for folder in folders(PACKAGE)]
    assert [chapter.word for chapter in chapters] == folders(PACKAGE)
    assert len({chapter.title for chapter in chapters}) == len(chapters)


def test_every_folder_is_a_command_and_every_other_command_stands_in_the_table() -> None:
    table = command_table((PACKAGE / "cli" / "README.md").read_text(encoding="utf-8"))
    assert set(folders(PACKAGE)) <= commands()
    assert commands() - set(folders(PACKAGE)) == table - set(folders(PACKAGE))


def test_what_is_planted_incomplete_is_found(tmp_path: Path) -> None:
    for name in SLICE:
        plant(tmp_path, f"disciplines/air/{name.replace('method.py', 'method/__init__.py')}", "")
    plant(tmp_path, "disciplines/heat/README.md", "")
    assert [line for line in incomplete(tmp_path) if line.startswith("air")] == []
    assert len(incomplete(tmp_path)) == len(SLICE) - 1
    planted = types.ModuleType("air")
    planted.__all__ = [*(EXPORTS - {"solve"}), "extra"]  # type: ignore[attr-defined]
    assert wrong_exports("air", planted) == ["air: extra", "air: solve"]
    assert command_table("| a | b |\n|---|---|\n| `check RIG`, `next RIG` | `not` this |\n") == {"check", "next"}
