"""Rule 14: in `solve` and `findings` no bare number is compared with, added to or taken from a quantity.

A limit is a row of a table with its source, or a named tolerance. Whole numbers to 12, halves, powers and indices are
free, since those count things.
"""

from __future__ import annotations

import ast
from pathlib import Path

from tests.houserules.tree import PACKAGE, Module, modules, plant

WATCHED = frozenset({"solve", "findings"})


def number(node: ast.expr) -> float | None:
    """Return the value of a literal number, with its sign, or None."""
    if isinstance(node, ast.UnaryOp) and isinstance(node.op, (ast.USub, ast.UAdd)):
        return number(node.operand)
    if isinstance(node, ast.Constant) and isinstance(node.value, (int, float)) and not isinstance(node.value, bool):
        return abs(float(node.value))
    return None


def is_free(value: float) -> bool:
    """Return whether a literal only counts: a whole number to 12, or one half."""
    return value == 0.5 or (value <= 12 and value.is_integer())


def bare_limits(module: Module) -> list[str]:
    """Return the literals of a module that stand in a comparison, a sum or a difference."""
    inside_subscript = {
        inside for node in ast.walk(module.tree) if isinstance(node, ast.Subscript) for inside in ast.walk(node.slice)
    }
    found = []
    for node in ast.walk(module.tree):
        sides: list[ast.expr] = []
        if isinstance(node, ast.Compare):
            sides = [node.left, *node.comparators]
        elif isinstance(node, ast.BinOp) and isinstance(node.op, (ast.Add, ast.Sub)):
            sides = [node.left, node.right]
        elif isinstance(node, ast.AugAssign) and isinstance(node.op, (ast.Add, ast.Sub)):
            sides = [node.value]
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in {"min", "max"}:
            sides = node.args
        values = [number(side) for side in sides if side not in inside_subscript]
        found += [
            f"{module.place}: line {node.lineno}: {value:g}"
            for value in values
            if value is not None and not is_free(value)
        ]  # type: ignore[attr-defined]
    return found


def unsourced_limits(root: Path) -> list[str]:
    """Return the bare limits in the solve and findings files of every discipline."""
    return [line for module in modules(root) if module.part_of_slice in WATCHED for line in bare_limits(module)]


def test_no_limit_is_a_bare_number() -> None:
    assert unsourced_limits(PACKAGE) == []


def test_a_planted_bare_limit_is_found(tmp_path: Path) -> None:
    plant(
        tmp_path,
        "disciplines/air/findings.py",
        "TOLERANCE = 1e-9\n"
        "a = share < 0.1\n"
        "b = mass + 13\n"
        "c = mass * 0.3 > 12\n"
        "d = x[14] < TOLERANCE\n"
        "e -= 9.81\n"
        "f = max(0.25, share)\n"
        "g = width / 2 - 0.5 + n ** 20\n",
    )
    plant(tmp_path, "disciplines/air/method.py", "a = share < 0.1\n")
    found = [line.rsplit(": ", 1)[1] for line in unsourced_limits(tmp_path)]
    assert sorted(found) == ["0.1", "0.25", "13", "9.81"]
