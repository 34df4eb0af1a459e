"""The source tree as the house rules read it: every module with its syntax tree, never imported."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "src" / "boxwright"


@dataclass(frozen=True)
class Module:
    """One Python file: where it is, and its place inside the package with slashes."""

    path: Path
    place: str

    @property
    def tree(self) -> ast.Module:
        """Return its syntax tree, read when it is first looked into: most tests are listed by their places alone."""
        return parsed(self.path)

    @property
    def layer(self) -> str:
        """Return the top-level module or folder it belongs to, without its ending."""
        return self.place.split("/")[0].removesuffix(".py")

    @property
    def part_of_slice(self) -> str:
        """Return ``method``, ``solve``, ... for a file of a discipline; a folder ``method/`` counts as one file."""
        pieces = self.place.split("/")
        if pieces[0] != "disciplines" or len(pieces) < 3:
            return ""
        return pieces[2].removesuffix(".py")


@cache
def parsed(path: Path) -> ast.Module:
    """Return the syntax tree of a file."""
    return ast.parse(path.read_text(encoding="utf-8"), filename=path.name)


def modules(root: Path = PACKAGE) -> tuple[Module, ...]:
    """Return every module under a folder, in the order of their names."""
    paths = sorted(path for path in root.rglob("*.py") if "__pycache__" not in path.parts)
    return tuple(Module(path, path.relative_to(root).as_posix()) for path in paths)


def functions(module: Module) -> Iterator[tuple[str, ast.FunctionDef | ast.AsyncFunctionDef]]:
    """Yield the functions of a module and the methods of its classes with their dotted names; none that are nested."""
    yield from _functions_in(module.tree.body, "")


def _functions_in(body: list[ast.stmt], prefix: str) -> Iterator[tuple[str, ast.FunctionDef | ast.AsyncFunctionDef]]:
    for node in body:
        if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef)):
            yield prefix + node.name, node
        elif isinstance(node, ast.ClassDef):
            yield from _functions_in(node.body, f"{prefix}{node.name}.")


def classes(module: Module) -> Iterator[ast.ClassDef]:
    """Yield every class of a module."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.ClassDef):
            yield node


def is_public(dotted: str) -> bool:
    """Return whether no piece of a dotted name begins with an underscore."""
    return not any(piece.startswith("_") for piece in dotted.split("."))


def docstring_nodes(tree: ast.AST) -> set[ast.AST]:
    """Return the string nodes that are docstrings, of modules, classes, functions and attributes."""
    found: set[ast.AST] = set()
    for node in ast.walk(tree):
        for statement in getattr(node, "body", []) if not isinstance(node, (ast.Lambda, ast.IfExp)) else []:
            if isinstance(statement, ast.Expr) and isinstance(statement.value, ast.Constant):
                found.add(statement.value)
    return found


def plant(root: Path, place: str, text: str) -> Path:
    """Write a file with a breach into a tree that a test owns; return the root."""
    path = root / place
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return root
