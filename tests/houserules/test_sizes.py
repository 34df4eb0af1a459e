"""Rule 7: a file has at most 500 lines, a function 60 (a procedure of a method 80, a formula 25), a chapter 120.

A docstring does not count: it is asked for, so it must not cost.
"""

from __future__ import annotations

import ast
from pathlib import Path

from tests.houserules.tree import PACKAGE, ROOT, Module, functions, modules, plant

FILE, FUNCTION, PROCEDURE, FORMULA, CHAPTER = 500, 60, 80, 25, 120


def code_lines(node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Return the lines of a function without its docstring and its decorators."""
    first = node.body[0]
    is_docstring = ast.get_docstring(node) is not None and isinstance(first, ast.Expr)
    documented = (first.end_lineno or 0) - first.lineno + 1 if is_docstring else 0
    return (node.end_lineno or 0) - node.lineno + 1 - documented


def longest_allowed(module: Module, node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Return how many lines of code a function may have."""
    text = ast.get_docstring(node) or ""
    if module.part_of_slice == "method" and "Satisfies:" in text:
        return PROCEDURE
    if module.part_of_slice == "method" and "Formula:" in text:
        return FORMULA
    return 120 if module.place == "study/flow.py" else FUNCTION


def too_long(root: Path) -> list[str]:
    """Return the files, functions and chapter texts that are too long, each with its lines."""
    breaches = []
    for module in modules(root):
        lines = len(module.path.read_text(encoding="utf-8").splitlines())
        most = 120 if module.place == "study/flow.py" else FILE
        if lines > most:
            breaches.append(f"{module.place}: {lines} lines")
        for name, node in functions(module):
            if code_lines(node) > longest_allowed(module, node):
                breaches.append(f"{module.place}: {name} has {code_lines(node)} lines")
    for path in sorted(root.rglob("README.md")):
        lines = len(path.read_text(encoding="utf-8").splitlines())
        if lines > CHAPTER and "disciplines" in path.parts:
            breaches.append(f"{path.relative_to(root).as_posix()}: {lines} lines")
    return breaches


def test_nothing_is_too_long() -> None:
    assert too_long(PACKAGE) == []
    assert too_long(ROOT / "tests") == []


def test_what_is_planted_too_long_is_found(tmp_path: Path) -> None:
    body = "    x = 1\n"
    plant(tmp_path, "long.py", "y = 2\n" * (FILE + 1))
    plant(tmp_path, "model/part.py", "def f():\n" + body * FUNCTION + "def g():\n" + body * (FUNCTION - 1))
    labelled = '    """Return.\n\n    Formula: a = b\n    """\n'
    plant(tmp_path, "disciplines/air/method.py", "def f():\n" + labelled + body * FORMULA)
    plant(tmp_path, "disciplines/air/README.md", "word\n" * (CHAPTER + 1))
    assert too_long(tmp_path) == [
        "disciplines/air/method.py: f has 26 lines",
        "long.py: 501 lines",
        "model/part.py: f has 61 lines",
        "disciplines/air/README.md: 121 lines",
    ]
