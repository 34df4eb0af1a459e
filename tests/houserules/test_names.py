"""Rules 1 and 6: no module, package or class is named for being nothing in particular."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.houserules.tree import PACKAGE, ROOT, classes, modules, plant

NEVER_A_SUFFIX = frozenset(
    """utils util helpers helper common misc core base shared lib tools stuff types constants functions manager handler
    processor engine service controller factory wrapper adapter impl data info abstract interface api v2 new old temp
    """.split()
)


def last_word(name: str) -> str:
    """Return the last word of a name in snake_case or CamelCase, in small letters."""
    return re.findall(r"[A-Z]+(?![a-z])\d*|[A-Z]?[a-z]+\d*|\d+", name)[-1].lower() if re.search(r"\w", name) else ""


def badly_named_modules(root: Path) -> list[str]:
    """Return the modules and folders whose name ends in a word that says nothing."""
    named = {module.path for module in modules(root)} | {module.path.parent for module in modules(root)} - {root}
    return sorted(
        path.relative_to(root).as_posix()
        for path in named
        if path.stem != "__init__" and last_word(path.stem) in NEVER_A_SUFFIX
    )


def badly_named_classes(root: Path) -> list[str]:
    """Return the classes whose name ends in a word that says nothing."""
    return [
        f"{module.place}: {found.name}"
        for module in modules(root)
        for found in classes(module)
        if last_word(found.name) in NEVER_A_SUFFIX
    ]


@pytest.mark.parametrize("folder", [PACKAGE, ROOT / "tests", ROOT / "benchmarks"], ids=lambda folder: folder.name)
def test_no_module_and_no_class_is_named_for_nothing(folder: Path) -> None:
    assert badly_named_modules(folder) == []
    assert badly_named_classes(folder) == []


def test_a_planted_name_is_found(tmp_path: Path) -> None:
    plant(tmp_path, "wire_utils.py", "class FuseManager: ...\nclass Fuse: ...\n")
    plant(tmp_path, "common/fuse.py", "class HTTPHandler: ...\n")
    assert badly_named_modules(tmp_path) == ["common", "wire_utils.py"]
    assert badly_named_classes(tmp_path) == ["common/fuse.py: HTTPHandler", "wire_utils.py: FuseManager"]
