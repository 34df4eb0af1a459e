"""The word ``air``: the plain answer, the tables, the same for programs, and a night that is asked for."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from boxwright.cli.fresh_air import AS_ASKED, at_outside
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.run import main
from boxwright.rig.compose import read_rig

RIGS = Path(__file__).parents[2] / "rigs"
WHIMBREL = str(RIGS / "whimbrel.yaml")
TRIO = str(Path(__file__).parents[1] / "findings" / "air" / "rig.yaml")


def said(capsys: pytest.CaptureFixture[str], *typed: str) -> tuple[int, str]:
    """Return the exit code and what is printed, its spaces as one."""
    code = main(list(typed))
    return code, " ".join(capsys.readouterr().out.split())


def test_the_plain_answer_comes_first_then_the_tables_then_what_was_found(capsys: pytest.CaptureFixture[str]) -> None:
    code, shown = said(capsys, "air", WHIMBREL)
    assert code == 2  # a demo with faults: nobody sleeps in it
    order = ["18 sq in stays open low", "by morning", "WHAT LETS AIR THROUGH", "THE AIR OF 2 ASLEEP", "FINDINGS SLEEP"]
    places = [shown.index(one) for one in order]
    assert places == sorted(places)
    assert "vent-high: height 72 in, high; free area 18 sq in; as it is half done: hole cut" in shown
    assert "ramp" not in shown.partition("THE AIR OF")[0]


def test_where_nobody_sleeps_that_is_said_and_doors_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    _, shown = said(capsys, "air", WHIMBREL, "--use", "leave")
    assert "Nobody sleeps in this load state." in shown and "ramp" in shown.partition("FINDINGS")[0]
    assert "reads 23 % and is rising" in shown


def test_programs_get_the_same_in_si(capsys: pytest.CaptureFixture[str]) -> None:
    main(["air", TRIO, "--json"])
    told = json.loads(capsys.readouterr().out)
    assert told["air"]["free_area_low"]["best"] == pytest.approx(0.02)
    assert told["air"]["sleepers"] == 1
    assert 0.0004 < told["air"]["carbon_dioxide_by_morning"]["best"] < 0.002
    assert all(one["code"].startswith("air/") for one in told["findings"])


def test_a_night_that_is_asked_for_stands_alone() -> None:
    rig = read_rig(Path(WHIMBREL).read_text(encoding="utf-8")).rig
    (only,) = at_outside(rig, "20F").heat.climates
    assert only[0] == AS_ASKED and only[1].coldest_design is not None
    assert only[1].coldest_design.best == pytest.approx(266.483, abs=1e-3)
    assert at_outside(rig, "") is rig
    with pytest.raises(NothingAsked, match="cold"):
        at_outside(rig, "cold")
