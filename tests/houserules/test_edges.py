"""Rule 12, I16 and I20: who may print, open, write, speak HTTP, and speak to the builder."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from tests.houserules.test_purity import called
from tests.houserules.tree import PACKAGE, Module, docstring_nodes, functions, modules, plant

MAY_PRINT = frozenset({"cli"})
MAY_OPEN = frozenset({"rig", "source", "render", "book", "web", "cli"})
MAY_WRITE = frozenset({"render", "book", "web", "cli"})
MAY_SPEAK_HTTP = frozenset({"web"})
OPENS = frozenset({"open", "read_text", "read_bytes"})
WRITES = frozenset({"write_text", "write_bytes", "mkdir", "unlink", "rename", "replace_file", "rmtree", "copyfile"})
HTTP = frozenset({"http", "starlette", "uvicorn", "urllib", "socket", "websockets"})

AT_THE_SEAM = frozenset({"model", "units"})
PYDANTIC_CALLS = re.compile(r"_*read|__get_pydantic")
"""What pydantic calls with whatever the text made of a value: readers, and the hooks of an annotated type."""


def out_of_place(root: Path) -> list[str]:
    """Return prints, bare excepts, opened and written files and HTTP where they do not belong."""
    found = []
    for module in modules(root):
        for node in ast.walk(module.tree):
            found += [f"{module.place}: {what}" for what in _breaches(module.layer, node)]
    return found


def _breaches(layer: str, node: ast.AST) -> list[str]:
    if isinstance(node, ast.ExceptHandler) and node.type is None:
        return ["bare except"]
    if isinstance(node, (ast.Import, ast.ImportFrom)) and layer not in MAY_SPEAK_HTTP:
        names = [node.module or ""] if isinstance(node, ast.ImportFrom) else [alias.name for alias in node.names]
        return [f"speaks HTTP by {name}" for name in names if name.split(".")[0] in HTTP]
    if not isinstance(node, ast.Call):
        return []
    name = called(node)
    if name == "print" and layer not in MAY_PRINT:
        return ["prints"]
    if (name in WRITES or (name == "open" and _opens_to_write(node))) and layer not in MAY_WRITE:
        return [f"writes by {name}()"]
    return [f"opens by {name}()"] if name in OPENS and layer not in MAY_OPEN else []


def _opens_to_write(node: ast.Call) -> bool:
    positional = node.args[1:] if isinstance(node.func, ast.Name) else node.args  # open(path, mode); path.open(mode)
    given = [*positional, *(keyword.value for keyword in node.keywords)]
    modes = [one.value for one in given if isinstance(one, ast.Constant) and isinstance(one.value, str)]
    return any(re.fullmatch(r"[rwaxbt+]{1,3}", mode) and set(mode) & set("wax+") for mode in modes)


def uses_of_any(root: Path) -> list[str]:
    """Return where ``Any`` is said below ``web``.

    Free are ``rig``, which carries the text's tree to pydantic, ``records``, which makes records of any kind, and in
    ``model`` and ``units`` what pydantic calls.
    """
    found = []
    for module in modules(root):
        if module.layer in {"web", "cli", "rig", "records"}:
            continue
        seam = [node for name, node in functions(module) if PYDANTIC_CALLS.match(name.split(".")[-1])]
        allowed = {inside for node in seam for inside in ast.walk(node)} if module.layer in AT_THE_SEAM else set()
        said = [node for node in ast.walk(module.tree) if isinstance(node, ast.Name) and node.id == "Any"]
        found += [f"{module.place}: line {node.lineno} says Any" for node in said if node not in allowed]
    return sorted(found)


SILENT = frozenset({"exchange", "drawing", "study"})
MAY_SPEAK = frozenset(
    {
        "rig_findings",
        "verdict",
        "remedy_words",
        "working_words",
        "working_heaters",
        "working_night",
        "working_section",
        "arrange",
        "foot",
        "tiles",
    }
)
"""The modules of the study whose records are what is said."""
SILENT_IN_A_SLICE = frozenset({"method", "solve"})


def is_said(text: str) -> bool:
    """Return whether a text is a sentence to somebody: five words or more."""
    return len(re.findall(r"[A-Za-z]{2,}", text)) >= 5


def sentences(root: Path) -> list[str]:
    """Return texts addressed to the builder where only records and numbers belong.

    What an exception carries is for whoever mends a bug, and is not counted.
    """
    found = []
    for module in modules(root):
        is_silent = module.layer in SILENT and module.path.stem not in MAY_SPEAK
        if is_silent or module.part_of_slice in SILENT_IN_A_SLICE:
            free = docstring_nodes(module.tree) | _raised(module)
            for node, text in texts(module.tree):
                if node not in free and is_said(text):
                    found.append(f"{module.place}: line {node.lineno} says {text!r}")
    return found


def _raised(module: Module) -> set[ast.AST]:
    """Return everything inside a raise statement or inside a class of exceptions."""
    roots = [
        node
        for node in ast.walk(module.tree)
        if isinstance(node, ast.Raise) or (isinstance(node, ast.ClassDef) and _is_exception(node))
    ]
    return {inside for root in roots for inside in ast.walk(root)}


def _is_exception(node: ast.ClassDef) -> bool:
    return any(ast.unparse(base).endswith(("Error", "Exception")) for base in node.bases)


def texts(tree: ast.AST) -> Iterator[tuple[ast.expr, str]]:
    """Yield every text of a tree once; an f-string is one text, without what is put in."""
    inner = {piece for node in ast.walk(tree) if isinstance(node, ast.JoinedStr) for piece in node.values}
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            yield node, " ".join(str(piece.value) for piece in node.values if isinstance(piece, ast.Constant))
        elif isinstance(node, ast.Constant) and isinstance(node.value, str) and node not in inner:
            yield node, node.value


def test_printing_opening_writing_and_http_stay_where_they_belong() -> None:
    assert out_of_place(PACKAGE) == []


def test_nothing_is_of_any_type_below_the_web() -> None:
    assert uses_of_any(PACKAGE) == []


def test_sentences_stand_in_findings_and_at_the_edges() -> None:
    assert sentences(PACKAGE) == []


def test_what_is_planted_out_of_place_is_found(tmp_path: Path) -> None:
    plant(tmp_path, "model/a.py", "print(1)\ntry: pass\nexcept: pass\n")
    plant(tmp_path, "rig/b.py", "open('x')\nopen('x', 'wb')\nimport http.client\n")
    plant(tmp_path, "units.py", "path.read_text()\n")
    plant(tmp_path, "cli/c.py", "print(1)\npath.open('w')\n")
    assert sorted(out_of_place(tmp_path)) == [
        "model/a.py: bare except",
        "model/a.py: prints",
        "rig/b.py: speaks HTTP by http.client",
        "rig/b.py: writes by open()",
        "units.py: opens by read_text()",
    ]


def test_a_planted_any_is_found(tmp_path: Path) -> None:
    text = "from typing import Any\ndef f(x: Any): ...\ndef read_x(x: Any): ...\n"
    for place in ("model/a.py", "study/a.py", "rig/a.py"):
        plant(tmp_path, place, text)
    assert uses_of_any(tmp_path) == [
        "model/a.py: line 2 says Any",
        "study/a.py: line 2 says Any",
        "study/a.py: line 3 says Any",
    ]


def test_a_planted_sentence_is_found(tmp_path: Path) -> None:
    text = '"""A docstring may say what it likes."""\nsays = f"the tongue carries {x} and that is too much"\n'
    plant(tmp_path, "disciplines/air/solve.py", text + 'raise ValueError("a bug is told to who mends it")\n')
    plant(tmp_path, "disciplines/air/findings.py", text)
    assert len(sentences(tmp_path)) == 1
