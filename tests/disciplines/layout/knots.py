"""The small rig of the findings of layout with some words changed, and what is said of it."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

KNOT = Path(__file__).parents[3] / "tests" / "findings" / "layout" / "rig.yaml"
JUDGED_ON = date(2026, 6, 1)
Edits = tuple[tuple[str, str], ...]


@cache
def said(edits: Edits = (), more: str = "", use: str = "sleep") -> tuple[Finding, ...]:
    """Return what layout says of the small rig with some words changed and some parts more, once each."""
    text = KNOT.read_text(encoding="utf-8")
    for old, new in edits:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    rig = read_rig(text.replace("  beam:", f"{more}  beam:", 1))
    assert [one.says for one in rig.problems if one.kind == "problem"] == []
    found = [one for one in study(rig.rig, JUDGED_ON).findings(use) if one.code.startswith("layout/")]
    return tuple({(one.code, one.where, one.says): one for one in found}.values())


def told(code: str, edits: Edits = (), more: str = "", use: str = "sleep") -> list[tuple[str, str]]:
    """Return the kind and the place of what one rule says of it."""
    return sorted((str(one.kind), one.where) for one in said(edits, more, use) if one.code == code)


def words(code: str, edits: Edits = (), more: str = "", use: str = "sleep") -> str:
    """Return what one rule says of it, one after the other."""
    return "; ".join(one.says for one in said(edits, more, use) if one.code == code)
