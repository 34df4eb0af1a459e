"""The R value of a label in a rig: taken before the material's own, and refused with its place where it is nothing."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from boxwright.finding import Finding
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study

RIG = (Path(__file__).parents[2] / "findings" / "heat" / "rig.yaml").read_text(encoding="utf-8")
FOAM = "foam: {of: XPS, thick: 38, between: studs"


def said(foam: str) -> tuple[Finding, ...]:
    """Return what heat says of the small rig with another foam between its studs."""
    assert RIG.count(FOAM) == 1
    found = study(read_rig(RIG.replace(FOAM, foam)).rig, date(2026, 6, 1)).findings("sleep")
    return tuple(one for one in found if one.code.startswith("heat/"))


@pytest.mark.parametrize("label", ["R 0", "0 m2K/W"])
def test_a_label_of_nothing_is_told_where_it_stands_and_the_material_counts(label: str) -> None:
    (found,) = said(f"{FOAM}, resistance: {label}")
    assert (found.code, found.kind, found.where) == ("heat/no-thickness", "fix", "walls[all].layers[foam]")
    assert "R value of nothing" in found.says and found.lever == "walls[all].layers[foam].resistance"


def test_a_material_nobody_knows_is_not_asked_for_where_its_label_is_copied() -> None:
    unknown = "foam: {of: moon cheese, thick: 38, between: studs"
    assert [one.code for one in said(unknown)][:1] == ["heat/material-not-known"]
    assert said(f"{unknown}, resistance: 1.3 m2K/W") == ()
