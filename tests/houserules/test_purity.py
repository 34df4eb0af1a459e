"""I1: between text and answer nothing is opened, no clock is read, nothing is random, no order is accidental."""

from __future__ import annotations

import ast
from pathlib import Path

from tests.houserules.tree import PACKAGE, Module, modules, plant

PURE = frozenset({"exchange", "finding", "model", "drawing", "disciplines", "study"})
IMPURE_IMPORTS = frozenset(
    {"time", "random", "secrets", "uuid", "socket", "os", "urllib", "http", "subprocess", "tempfile"}
)
IMPURE_CALLS = frozenset({"open", "input", "now", "today", "utcnow", "getenv", "read_text", "read_bytes", "write_text",
                          "write_bytes"})  # fmt: skip


def impure_lines(module: Module) -> list[str]:
    """Return what a module does that a study must not do."""
    found = []
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Import):
            names = [alias.name.split(".")[0] for alias in node.names]
            found += [f"imports {name}" for name in names if name in IMPURE_IMPORTS]
        elif isinstance(node, ast.ImportFrom) and (node.module or "").split(".")[0] in IMPURE_IMPORTS:
            found.append(f"imports {node.module}")
        elif isinstance(node, ast.Call):
            name = called(node)
            found += [f"calls {name}()"] if name in IMPURE_CALLS else []
            if name in {"tuple", "list", "join", "enumerate", "next", "iter"} and any(is_set(one) for one in node.args):
                found.append("takes the order of a set")
        elif isinstance(node, (ast.For, ast.comprehension)) and is_set(node.iter):
            found.append("goes through a set")
    return [f"{module.place}: {what}" for what in found]


def called(node: ast.Call) -> str:
    """Return the last name of what is called."""
    if isinstance(node.func, ast.Attribute):
        return node.func.attr
    return node.func.id if isinstance(node.func, ast.Name) else ""


def is_set(node: ast.expr) -> bool:
    """Return whether an expression is, as it stands, a set."""
    if isinstance(node, ast.Call):
        return called(node) in {"set", "frozenset", "intersection", "union", "difference"}
    return isinstance(node, (ast.Set, ast.SetComp))


def impure(root: Path) -> list[str]:
    """Return every impurity in the layers that a study runs through."""
    return [line for module in modules(root) if module.layer in PURE for line in impure_lines(module)]


def test_a_study_touches_nothing_outside_its_arguments() -> None:
    assert impure(PACKAGE) == []


def test_planted_impurities_are_found(tmp_path: Path) -> None:
    plant(tmp_path, "study/a.py", "import os.path, math\nfrom random import random\nday = date.today()\n")
    plant(tmp_path, "disciplines/air/solve.py", "with open('x') as text: pass\nfor name in {'a', 'b'}: pass\n")
    plant(tmp_path, "model/b.py", "x = [a for a in set(b)]\ny = tuple(frozenset(b))\nz = sorted(set(b))\n")
    plant(tmp_path, "rig/read.py", "import os\n")
    assert impure(tmp_path) == [
        "disciplines/air/solve.py: goes through a set",
        "disciplines/air/solve.py: calls open()",
        "model/b.py: takes the order of a set",
        "model/b.py: goes through a set",
        "study/a.py: imports os",
        "study/a.py: imports random",
        "study/a.py: calls today()",
    ]
