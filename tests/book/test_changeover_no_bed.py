"""A change-over to a night for which nobody's bed stands yet: from free floor, and never as if all were well."""

from __future__ import annotations

from pathlib import Path

import pytest

from boxwright.book.changeover import ChangeOver
from boxwright.book.changeover_card import card
from boxwright.book.changeover_words import NO_BED, leaving_words
from boxwright.cli.run import main
from tests.book.test_changeover_card import MINI, told, worked

CRATE = "  crate: {x: 11, side: right-1, z: 0, size: 24 x 20 x 60, weight: WEIGHS, kind: cargo}\n"


def bedless(weighs: str = "", more: str = "", text: str = MINI) -> str:
    """Return the room of MINI without its bed; with a crate before its door where its weight is given."""
    text = text.replace("bed:    {x: 80, side: left, z: 10, size: 36 x 70 x 10, weight: 50}", "lamp: {weight: 1}")
    crate = CRATE.replace("WEIGHS", weighs) if weighs else ""
    return text.replace("  chest:", f"{crate}{more}  chest:").replace("cargo: none", "cargo: [crate]")


def words(one: ChangeOver) -> str:
    return next(iter(leaving_words(one, worked(MINI)[0].header.units)))


def test_from_free_floor_it_is_told_and_stays_unknown() -> None:
    one = told(bedless())
    assert one.out is not None and one.out.seconds is not None
    assert (one.out.word, one.out.steps, one.out.ways[0][:2]) == ("unknown", (), ("the floor", "door"))
    # by hand: 20 s to rise, half a metre a second, 10 s for the door, 5 s to go through
    assert one.out.seconds == pytest.approx(20.0 + one.out.ways[0][2] / 0.5 + 10.0 + 5.0)
    assert words(one).startswith(
        "Out in two minutes: not known. No bed that somebody sleeps in is there. From the floor"
    )


def test_a_crate_before_the_door_is_set_aside_first() -> None:
    one = told(bedless("20"))
    assert one.out is not None and one.out.seconds is not None
    assert [(exit.word, exit.by) for exit in one.out.exits] == [("blocked", ("crate",))]
    assert [f"{step.word} {step.name}" for step in one.out.steps] == ["set aside crate"]
    assert one.out.word == "unknown"
    assert "First set crate aside on free floor; then from the floor by door" in words(one)


def test_what_is_built_in_before_the_door_is_a_no() -> None:
    one = told(bedless(more=CRATE.replace("crate:", "tall:").replace("WEIGHS", "20").replace(", kind: cargo", "")))
    assert one.out is not None and (one.out.word, one.out.shut_in) == ("blocked", ("the floor",))
    assert f"NO. {NO_BED} Nobody gets out from free floor" in words(one)
    rows = card(one, worked(MINI)[0].header.units).grids[0].rows
    assert rows[0][0] == "at night" and rows[0][1].startswith("Out in two minutes: NO.")


@pytest.mark.parametrize(("weighs", "word"), [("50", "found"), ("60", "untried"), ("unknown", "untried")])
def test_what_one_cannot_lift_alone_is_asked_for(weighs: str, word: str) -> None:
    """One carries up to 25 kg, 55 lb: common practice, no source; she may drag more, and nobody knows."""
    text = MINI.replace("  chest:", CRATE.replace("WEIGHS", weighs) + "  chest:").replace(
        "cargo: none", "cargo: [crate]"
    )
    one = told(text)
    assert one.out is not None and (one.out.word, one.out.heavy) == (word, ("crate",) if word == "untried" else ())
    two = text.replace("sleeps: bed}}", "sleeps: bed}, two: {weight: 90, height: 60, sleeps: bed}}")
    out = told(two.replace("people: [one]", "people: [one, two]")).out
    assert out is not None and out.word == "found"


@pytest.mark.parametrize(("weighs", "code"), [("", 1), ("20", 2), ("60", 2)])
def test_nobody_is_told_that_all_is_well(tmp_path: Path, weighs: str, code: int) -> None:
    """A crate before the only way out makes it a no, whether or not it can be lifted aside first."""
    path = tmp_path / "bare.yaml"
    path.write_text(bedless(weighs), encoding="utf-8")
    assert main(["changeover", str(path), "travel", "night"]) == code


def test_no_way_from_the_floor_is_a_no(tmp_path: Path) -> None:
    path = tmp_path / "bare.yaml"
    path.write_text(bedless(text=MINI.replace("release: inside", "release: none")), encoding="utf-8")
    assert main(["changeover", str(path), "travel", "night"]) == 2
