"""What makes cold: how much of it counts, what its warm side asks for, and where it is said to breathe."""

from __future__ import annotations

import pytest

from boxwright.disciplines.heat.cooling import asks_for, cold_of, is_outside, standing_cooler, water_of
from boxwright.disciplines.heat.feeds import NO_FEED, Feed, Limit, Stands
from boxwright.disciplines.heat.parts import Cooler, PlannedCooler
from boxwright.disciplines.heat.result import StandingCooler
from boxwright.exchange import Opening
from boxwright.units import Band, exactly
from tests.disciplines.heat.test_findings import edited, worked

PLATE = exactly(1500.0)
MAINS = Feed(("mains",), "outside", limits=(Limit("wires[shore]", "the wire shore", "wire", exactly(2300.0)),),
             volts=exactly(230.0))  # fmt: skip


def standing(
    heat: Band | None, is_certain: bool = True, breathes: Stands = "yes", feed: Feed = MAINS
) -> StandingCooler:
    return StandingCooler(
        PlannedCooler("parts[ac]", "ac", Cooler(heat=heat, draw=exactly(5.0))), is_certain, breathes, feed
    )


def test_what_counts_in_a_hot_box_is_less_than_the_plate_says() -> None:
    cold = cold_of((standing(PLATE),))
    assert cold is not None
    assert (cold.low, cold.best, cold.high) == pytest.approx((1125.0, 1350.0, 1500.0))
    perhaps = cold_of((standing(PLATE), standing(PLATE, is_certain=False)))
    assert perhaps is not None
    assert (perhaps.low, perhaps.best, perhaps.high) == pytest.approx((1125.0, 2700.0, 3000.0))
    assert cold_of(()) is None and cold_of((standing(None),)) is None


@pytest.mark.parametrize(("breathes", "feed", "works"), [
    ("yes", MAINS, "yes"), ("perhaps", MAINS, "perhaps"), ("no", MAINS, "no"), ("yes", NO_FEED, "perhaps"),
    ("yes", Feed(("panel",), "unfed"), "perhaps"), ("yes", Feed(("cell",), "battery", "no", "cell"), "no"),
    ("perhaps", Feed(("cell",), "battery", "no", "cell"), "no"),
])  # fmt: skip
def test_a_cooler_that_breathes_nowhere_or_is_fed_by_nothing_cools_nothing(
    breathes: Stands, feed: Feed, works: Stands
) -> None:
    one = standing(PLATE, breathes=breathes, feed=feed)
    cold = cold_of((one,))
    assert one.works == works
    assert (cold is None) == (works == "no")
    assert cold is None or (cold.low > 0.0) == (works == "yes")


@pytest.mark.parametrize(("cools", "breathes"), [
    (Cooler(of="split", hatch="none"), "yes"), (Cooler(hatch="none"), "no"), (Cooler(), "perhaps"),
    (Cooler(hatch="lid"), "no"), (Cooler(hatch="window"), "yes"), (Cooler(hatch="window", returns=True), "no"),
    (Cooler(hatch="window", heat=PLATE, passes=exactly(0.13)), "perhaps"),
    (Cooler(hatch="window", heat=PLATE, passes=exactly(0.14)), "yes"), (Cooler(hatch="door"), "perhaps"),
    (Cooler(hatch="window", heat=PLATE, passes=Band(0.15, 0.13, 0.2)), "perhaps"),
    (Cooler(hatch="window", heat=Band(1500.0, 1000.0, 3000.0), passes=exactly(0.14)), "yes"),
    (Cooler(hatch="door", heat=PLATE, passes=exactly(0.13)), "perhaps"), (Cooler(hatch="None"), "no"),
])  # fmt: skip
def test_a_warm_side_breathes_through_what_stands(cools: Cooler, breathes: Stands) -> None:
    """By hand: its warm air asks for 0.138 m2."""
    there = tuple(opened(name, is_certain=name == "window") for name in ("window", "door"))
    assert standing_cooler(PlannedCooler("parts[ac]", "ac", cools), True, there, MAINS).breathes == breathes


def opened(name: str, is_certain: bool) -> Opening:
    nothing = exactly(0.5)
    return Opening(
        f"openings[{name}]",
        name,
        "left",
        nothing,
        nothing,
        nothing,
        (0.0, -1.0, 0.0),
        None,
        True,
        True,
        is_certain,
        False,
    )


def test_more_cold_asks_for_more_area_and_makes_more_water() -> None:
    # By hand: 2 x 1500 x 1.33 / (1206 x 12 x 2) m2; 1500 x 0.3 / 2.454 MJ/kg.
    area, water = asks_for(PLATE), water_of(PLATE)
    assert area.best == pytest.approx(0.13785, rel=1e-3) and area.low < area.best < area.high
    assert water.best == pytest.approx(1.8337e-4, rel=1e-3) and water.low < water.best < water.high
    assert asks_for(exactly(3000.0)).best == pytest.approx(2.0 * area.best)


@pytest.mark.parametrize(("word", "outside"), [("split", True), ("Mini  Split", True), ("window", False), ("", False)])
def test_only_a_split_has_its_warm_side_outside_by_itself(word: str, outside: bool) -> None:
    assert is_outside(Cooler(of=word)) is outside


AC = "ac: {x: 2000, side: left, z: 1200, size: 400 x 400 x 300, weight: 20, stage: shell, done: yes, cools: {CASE}}"
FULL = "of: window, heat: 1500 W, draw: 3 A, fed_by: mains, hatch: window, passes: 2000 cm2, drains: below floor"


def kinds(cools: str, use: str = "sleep") -> list[tuple[str, str]]:
    cable = ("wires:\n", "wires:\n  cable: {from: mains, to: ac, breaker: 16 A, volts: 230, stage: shell, done: yes}\n")
    found = worked(edited(("# one more", AC.replace("CASE", cools)), cable), use)
    return [(one.code, one.kind) for one in found if one.code.startswith("heat/cooler")]


def test_a_split_is_asked_for_its_water_alone() -> None:
    assert kinds("of: split, heat: 1500 W, draw: 3 A, fed_by: mains") == [("heat/cooler-water", "unknown")]
    assert kinds("of: split, heat: 1500 W, draw: 3 A, fed_by: mains, drains: below floor") == []


def test_a_hatch_that_does_not_stand_and_air_that_comes_back_are_put_right() -> None:
    assert kinds(FULL.replace("hatch: window", "hatch: elsewhere")) == [("heat/cooler-hatch", "fix")]
    assert kinds(f"{FULL}, returns: yes") == [("heat/cooler-breathes", "fix")]
    assert kinds(f"{FULL}, returns: no") == []


def test_free_area_is_judged_by_the_worst_of_it_and_only_where_people_are() -> None:
    assert kinds(FULL.replace("2000 cm2", "1000..2000 cm2")) == [("heat/cooler-breathes", "advice")]
    assert kinds(FULL.replace("2000 cm2", "unknown")) == [("heat/cooler-breathes", "unknown")]
    assert kinds(FULL.replace("heat: 1500 W, ", "")) == [("heat/cooler-breathes", "unknown")]
    assert kinds("1500 W", "leave") == []


def test_a_plate_alone_is_read_as_its_heat() -> None:
    bare = edited(("# one more", AC.replace("{CASE}", "1500 W")))
    codes = {one.code for one in worked(bare, "sleep")}
    assert {"heat/cooler-hatch", "heat/cooler-water"} <= codes
