"""A night is run for what it rests on and nothing else: not where a thing is moved, always where foam or a vent is."""

from __future__ import annotations

from boxwright.disciplines.heat import night
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study.once import Once
from boxwright.study.slots import Study, study
from tests.study.demo import RIGS, TODAY

TEXT = (RIGS / "whimbrel.yaml").read_text(encoding="utf-8")


def whimbrel(old: str = "", new: str = "") -> Rig:
    assert TEXT.count(old) == 1 or not old, old
    return read_rig(TEXT.replace(old, new) if old else TEXT).rig


def runs_after(old: str, new: str) -> tuple[list[str], int]:
    """Return the steps an edit runs in a sleep slot at the last stage, and how many nights it works out anew."""
    once = Once()

    def worked(rig: Rig) -> Study:
        return study(rig, TODAY, stage=len(rig.stages_in_order) - 1, use="sleep", once=once)

    night._runs.cache_clear()
    worked(whimbrel())
    once.clear()
    before = night._runs.cache_info().misses
    worked(whimbrel(old, new))
    return list(once.ran), night._runs.cache_info().misses - before


def test_moving_a_part_runs_no_night() -> None:
    steps, nights = runs_after("galley:          {x: 50,", "galley:          {x: 49,")
    assert "layout.solve" in steps, "what was moved is looked at"
    assert "heat.solve" not in steps and nights == 0


def test_weight_of_a_part_runs_no_night() -> None:
    assert runs_after("weight: 74, stage: galley, carcass", "weight: 75, stage: galley, carcass")[1] == 0


def test_moving_the_fuel_asks_of_its_height_again_but_runs_no_night() -> None:
    assert (
        runs_after("heater-fuel:     {x: -30, side: centre, z: 0,", "heater-fuel:     {x: -30, side: centre, z: 1,")[1]
        == 0
    )


def test_foam_a_setting_and_a_place_each_run_their_nights() -> None:
    # Two places have a coldest night; one heater stands.
    foam = runs_after("foam:  {of: XPS, thick: 1 1/2, between: bows", "foam:  {of: XPS, thick: 1, between: bows")
    assert foam[1] == 2 and "heat.solve" in foam[0]
    assert runs_after("highest: 2000 W, burn", "highest: 2200 W, burn")[1] == 2
    assert runs_after("coldest_design: 12,", "coldest_design: 10,")[1] == 1, "the other place's stays"
