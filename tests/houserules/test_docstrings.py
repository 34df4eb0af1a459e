"""Rules 2 and 3: a public function says in one sentence what it does; a method carries its five labels."""

from __future__ import annotations

import ast
import re
from pathlib import Path

from tests.houserules.tree import PACKAGE, ROOT, functions, is_public, modules, plant

LABELS = ("Valid", "Source", "Departs", "Assumes")
RULE_LABELS = ("Asks", "Limit", "Source", "Lever")


def label(docstring: str, word: str) -> str:
    """Return what stands after a label, its indented lines joined; empty where the label is missing."""
    found = re.search(rf"^{word}:[ \t]*(.*(?:\n[ \t]+.*)*)", docstring, re.MULTILINE)
    return " ".join(found.group(1).split()) if found else ""


def is_sentence(line: str) -> bool:
    """Return whether a line has three words or more, begins with a capital letter and ends with a full stop."""
    return bool(re.match(r"[A-Z]", line)) and line.rstrip().endswith(".") and len(line.split()) >= 3


def without_sentence(root: Path) -> list[str]:
    """Return the public functions whose docstring does not begin with a sentence."""
    return [
        f"{module.place}: {name}"
        for module in modules(root)
        for name, node in functions(module)
        if is_public(name) and not is_sentence((ast.get_docstring(node) or "").split("\n")[0])
    ]


def without_labels(root: Path) -> list[str]:
    """Return the labels that public functions of a method and rules of a findings file lack or leave empty."""
    missing = []
    for module in modules(root):
        for name, node in functions(module):
            text = ast.get_docstring(node) or ""
            wanted: tuple[str, ...] = ()
            if module.part_of_slice == "method" and is_public(name) and "." not in name:
                wanted = LABELS
                if bool(label(text, "Formula")) == bool(label(text, "Satisfies")):
                    missing.append(f"{module.place}: {name} lacks Formula or Satisfies, or has both")
            if module.part_of_slice == "findings" and is_public(name) and is_rule(node):
                wanted = RULE_LABELS
            missing += [f"{module.place}: {name} lacks {word}" for word in wanted if not label(text, word)]
    return missing


def is_rule(node: ast.FunctionDef | ast.AsyncFunctionDef) -> bool:
    """Return whether a function of a findings file is a rule: a generator."""
    return any(isinstance(inside, (ast.Yield, ast.YieldFrom)) for inside in ast.walk(node))


def test_every_public_function_says_what_it_does() -> None:
    assert without_sentence(PACKAGE) == []
    assert without_sentence(ROOT / "benchmarks") == []


def test_every_method_and_every_rule_carries_its_labels() -> None:
    assert without_labels(PACKAGE) == []


def test_a_planted_silence_is_found(tmp_path: Path) -> None:
    plant(tmp_path, "a.py", 'def f(): ...\ndef _g(): ...\ndef h():\n    """Return it at once."""\n')
    plant(tmp_path, "b.py", 'class B:\n    def f(self):\n        """returns it at once"""\n')
    assert without_sentence(tmp_path) == ["a.py: f", "b.py: B.f"]


def test_a_planted_missing_label_is_found(tmp_path: Path) -> None:
    whole = "Formula: a = b\nValid: all\nSource: x\nDeparts: nothing\nAssumes: much,\n    and more"
    assert label(whole, "Assumes") == "much, and more"
    text = f'def f():\n    """Return it at once.\n\n{whole}\n"""\n'
    plant(tmp_path, "disciplines/air/method.py", text)
    assert without_labels(tmp_path) == []
    plant(
        tmp_path, "disciplines/air/method/flow.py", text.replace("Formula: a = b\n", "").replace("Valid: all", "Valid:")
    )
    plant(
        tmp_path, "disciplines/air/findings.py", 'def rule():\n    """Asks: it\nLimit: 1\nSource: x\n"""\n    yield 1\n'
    )
    assert without_labels(tmp_path) == [
        "disciplines/air/findings.py: rule lacks Lever",
        "disciplines/air/method/flow.py: f lacks Formula or Satisfies, or has both",
        "disciplines/air/method/flow.py: f lacks Valid",
    ]
