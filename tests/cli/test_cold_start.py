"""What a start of `check` takes, counted: modules, tables, commands, readers of entries. No clock, so no machine."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]
RIGS = [ROOT / "rigs" / f"{name}.yaml" for name in ("whimbrel", "dunlin")]
MOST_MODULES = 700
"""It was 665 before a check told of the hot day, of what feeds a heater and of a night that was logged: 691 then;
what a folding bed takes with it, what hangs on a battery and what may stand far off made 700 of it."""
MOST_COMPILED = 456
"""Functions of records, of three for each kind: what is neither made nor compared nor hashed is not compiled. A panel
of the mains has room before it, written or not: that made 456 of 455 where nothing else wants any."""
MOST_FILES_OF_TABLES = 32
"""Every file of tables, and the rules of the two countries each is driven in; those of the other four stay shut."""
MOST_READERS = 40
"""Of 80 kinds of entry."""
NOT_TO_DRAW_WITH = ("boxwright.drawing", "boxwright.render", "boxwright.book.sheets", "boxwright.book.plan",
                    "boxwright.book.charts", "boxwright.web", "typst", "ezdxf", "highspy", "rich")  # fmt: skip

WATCH = """
import json, sys, tomllib
parsed = []
whole = tomllib.loads
tomllib.loads = lambda text: parsed.append(text) or whole(text)
import typer.main
built = []
command = typer.main.get_command_from_info
typer.main.get_command_from_info = lambda **given: built.append(given) or command(**given)
from boxwright.cli import main
code = main(sys.argv[1:])
from boxwright.model.entry import Entry
def below(kind):
    for one in kind.__subclasses__():
        yield one
        yield from below(one)
kinds = set(below(Entry))
records = {
    one for module in list(sys.modules.values()) if module.__name__.startswith("boxwright")
    for one in vars(module).values() if isinstance(one, type) and hasattr(one, "__dataclass_fields__")
}
compiled = [
    one for record in records for one in (record.__init__, record.__eq__, record.__hash__)
    if getattr(getattr(one, "__code__", None), "co_filename", "") == "<string>"
]
counted = {
    "code": code, "modules": sorted(sys.modules), "tables": len(parsed), "commands": len(built),
    "records": len(records), "compiled": len(compiled),
    "readers": sum(one.__pydantic_complete__ for one in kinds), "kinds": len(kinds),
}
sys.stderr.write(json.dumps(counted))
"""


def counted(*words: str) -> dict[str, Any]:
    came = subprocess.run([sys.executable, "-c", WATCH, *words], capture_output=True, text=True, check=True)
    found: dict[str, Any] = json.loads(came.stderr)
    return found


@pytest.mark.parametrize("path", RIGS, ids=lambda path: path.stem)
def test_check_loads_reads_and_builds_only_what_it_answers_with(path: Path) -> None:
    found = counted("check", str(path))
    assert found["code"] in (0, 1, 2)
    assert len(found["modules"]) <= MOST_MODULES
    assert [one for one in found["modules"] if one.startswith(NOT_TO_DRAW_WITH)] == []
    assert found["tables"] <= MOST_FILES_OF_TABLES
    assert found["commands"] == 1
    assert 0 < found["compiled"] <= MOST_COMPILED < 2 * found["records"]
    assert 0 < found["readers"] <= MOST_READERS < found["kinds"]


def test_a_process_of_its_own_leaves_with_the_answer_and_all_of_its_words() -> None:
    words = ["check", str(RIGS[0]), "--all"]
    alone = subprocess.run([sys.executable, "-m", "boxwright", *words], capture_output=True, text=True, check=False)
    inside = "import sys; from boxwright.cli import main; sys.exit(main(sys.argv[1:]))"
    within = subprocess.run([sys.executable, "-c", inside, *words], capture_output=True, text=True, check=False)
    assert (alone.returncode, alone.stdout, alone.stderr) == (within.returncode, within.stdout, within.stderr)
    assert len(alone.stdout) > 1_000
