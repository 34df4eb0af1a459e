"""The tables of the documents name what there is."""

from __future__ import annotations

import ast

import pytest

from tests.houserules.test_docstrings import is_rule
from tests.houserules.test_folders import folders
from tests.houserules.tree import PACKAGE, ROOT, functions, is_public, modules


def rows(name: str) -> list[list[str]]:
    """Return the cells of a document's table, without its head."""
    lines = (ROOT / "docs" / name).read_text(encoding="utf-8").splitlines()
    cells = [[cell.strip() for cell in line.strip("|").split("|")] for line in lines if line.startswith("| ")]
    return cells[1:]


def finding_codes() -> set[str]:
    """Return the code of every rule there is: its folder and the name of its function."""
    return {
        f"{module.place.split('/')[1]}/{name.replace('_', '-')}"
        for module in modules(PACKAGE)
        if module.part_of_slice == "findings"
        for name, node in functions(module)
        if is_public(name) and is_rule(node)
    }


NEEDS = rows("checks_of_needs.md")


def test_every_check_asked_for_has_its_row() -> None:
    assert [row[0] for row in NEEDS] == [f"C{number:02d}" for number in range(1, 71)]
    assert {row[2] for row in NEEDS} <= set(folders(PACKAGE))
    assert {row[3] for row in NEEDS} <= {"yes", "part", "no"}


@pytest.mark.parametrize("row", NEEDS, ids=lambda row: row[0])
def test_a_check_called_built_has_findings_that_exist(row: list[str]) -> None:
    codes = {code.strip(" `") for code in row[4].split(",") if code.strip()}
    assert codes <= finding_codes()
    assert bool(codes) == (row[3] != "no")


def test_every_rule_stands_in_the_chapter_of_its_folder() -> None:
    for code in finding_codes():
        folder, word = code.split("/")
        text = (PACKAGE / "disciplines" / folder / "README.md").read_text(encoding="utf-8")
        assert word in text or word.replace("-", "_") in text, code


def test_every_invariant_stands_in_the_architecture_once() -> None:
    text = (ROOT / "ARCHITECTURE.md").read_text(encoding="utf-8")
    assert [f"I{number}" for number in range(1, 22)] == [
        line.split("**")[1] for line in text.splitlines() if line.startswith("- **I")
    ]


def test_every_house_rule_named_in_contributing_is_a_file_of_tests() -> None:
    text = (ROOT / "CONTRIBUTING.md").read_text(encoding="utf-8")
    named = {word.strip("`") for line in text.splitlines() for word in line.split() if word.startswith("`test_")}
    files = {path.stem for path in (ROOT / "tests" / "houserules").glob("test_*.py")}
    assert named <= files
    assert all(ast.get_docstring(ast.parse((ROOT / "tests/houserules" / f"{name}.py").read_text())) for name in named)
