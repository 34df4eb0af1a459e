"""Three rigs made wrong by hand, each of its kind: the first fix a tower is shown cures it, and it stays cured."""

from __future__ import annotations

from pathlib import Path

import pytest
from typer.testing import CliRunner

from boxwright.cli.commands import app
from boxwright.cli.fixes import typed
from boxwright.rig.compose import read_rig
from boxwright.study.remedy import Fix, remedies
from boxwright.study.slots import Study, study
from tests.study.demo import TODAY
from tests.study.test_remedy import applied, bench

WRONG = Path(__file__).parent / "rigs"
RIGS = {
    "light-tongue": ("towing/tongue-share", "limit", "out"),
    "one-side": ("towing/tyre-overloaded", "stop", "market"),
    "over-tongue": ("towing/tongue-over-rating", "stop", "wet"),
}
"""What is wrong with each: the rule it breaks, how gravely, and in which load state."""


def text_of(name: str) -> str:
    return (WRONG / f"{name}.yaml").read_text(encoding="utf-8")


def studied(text: str) -> Study:
    return study(read_rig(text).rig, TODAY, all_stages=True)


def said(text: str) -> dict[tuple[object, ...], str]:
    """Return everything but advice that is said of a rig at any stage, in any load state and use."""
    return {
        (slot.number, slot.is_ticked, slot.load, slot.use, one.code, one.where): one.kind
        for slot in studied(text).slots
        for one in slot.findings
        if one.kind != "advice"
    }


def breaks(text: str, code: str, load: str) -> set[str]:
    """Return how gravely a rig breaks a rule in a load state, at any stage from today on."""
    return {kind for (*_, at, _, one, _), kind in said(text).items() if (one, at) == (code, load)}


def first_of(name: str) -> tuple[str, Fix]:
    """Return a rig's text, and the first change offered for the load state that is wrong."""
    text = text_of(name)
    return text, remedies(bench(text), 0, True, use="tow", load=RIGS[name][2]).fixes[0]


@pytest.mark.parametrize("name", RIGS)
def test_each_rig_is_read_without_a_problem_and_is_wrong_in_the_way_it_is_meant_to_be(name: str) -> None:
    code, kind, load = RIGS[name]
    assert not [one for one in read_rig(text_of(name)).problems if one.kind == "problem"]
    assert kind in breaks(text_of(name), code, load)


@pytest.mark.parametrize("name", RIGS)
def test_the_first_fix_cures_the_rig_and_it_stays_cured_at_every_later_stage(name: str) -> None:
    code, _, load = RIGS[name]
    text, fix = first_of(name)
    cured = applied(text, fix.edits)
    assert fix.is_whole
    assert not fix.leaves, "what is aboard is wanted where it goes: it is moved before it is left behind"
    assert breaks(cured, code, load) == set()
    before, after = said(text), said(cured)
    assert set(after) <= set(before)
    assert all(after[mark] == before[mark] for mark in after)
    assert not [one for one in remedies(bench(cured), 0, True, use="tow", load=load).fixes if one.code == code]


@pytest.mark.parametrize("name", RIGS)
def test_the_first_fix_is_the_least_of_its_kind(name: str) -> None:
    """Half the way of its last move is not enough: the distance is what is needed, rounded as a tape is read."""
    code, _, load = RIGS[name]
    text, fix = first_of(name)
    rig = read_rig(text).rig
    *others, last = fix.edits
    key, item = last.path.rpartition(".")[2], next(one for one in rig.parts if last.path.startswith(f"{one.of}."))
    there = next(one for one in read_rig(applied(text, fix.edits)).rig.parts if one.of == item.of)
    axis = "x" if key == "x" else "y"
    ends = [getattr(one.place, axis).best for one in (item, there)]
    middle = sum(ends) / 2.0 + item.place.size[0 if axis == "x" else 1] / 2.0 * (-1.0 if axis == "x" else 0.0)
    halfway = f"{middle * 1000.0:.0f} mm" if axis == "x" else f"mid {middle * 1000.0:.0f} mm"
    edited = applied(text, (*others, last._replace(value=halfway)))
    assert breaks(edited, code, load)


@pytest.mark.parametrize("name", RIGS)
def test_what_check_shows_first_can_be_typed_behind_set(name: str, tmp_path: Path) -> None:
    load = RIGS[name][2]
    rig = tmp_path / "rig.yaml"
    rig.write_text(text_of(name), encoding="utf-8")
    run, asked = CliRunner(), ["--date", TODAY.isoformat()]
    shown = " ".join(run.invoke(app, ["check", str(rig), "--load", load, *asked]).output.split())
    _, fix = first_of(name)
    assert f"1 {' '.join(fix.says.split())}" in shown
    edits = typed(fix).strip('"').split('" "')
    assert run.invoke(app, ["set", str(rig), *edits, *asked]).exit_code in {0, 1, 2}
    assert rig.read_text(encoding="utf-8") == applied(text_of(name), fix.edits)
