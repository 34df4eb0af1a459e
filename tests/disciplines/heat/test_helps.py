"""What helps: the smallest change does it, a little less does not, and what no amount does is said to be none."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

import pytest

from boxwright.disciplines.heat import helps
from boxwright.disciplines.heat.cold_hours import Inside, Outdoors, Warmth
from boxwright.disciplines.heat.helps import Help, at_lowest, helps_of, is_hot, is_short, mild_night, set_back
from boxwright.disciplines.heat.night import HeldNight, night_of
from boxwright.disciplines.heat.shell import shell_of
from boxwright.exchange import Airflow, Layup, LayupLayer
from boxwright.units import Band, exactly

WANTED = 289.85
SIDES = {
    "left": (0.0, -1.0, 0.0),
    "right": (0.0, 1.0, 0.0),
    "front": (-1.0, 0.0, 0.0),
    "rear": (1.0, 0.0, 0.0),
    "roof": (0.0, 0.0, 1.0),
    "floor": (0.0, 0.0, -1.0),
}
FROST = Outdoors("places[x]", "x", exactly(258.15), exactly(6.0), exactly(2.0))


def plane(wall: str) -> Layup:
    """Return 7 m2 of a wall framed in steel every 16 in, with 1 1/2 in of foam between and a lining over it."""
    layers = (
        LayupLayer(f"walls.{wall}", "foam", "XPS", exactly(0.0381), "bays", True),
        LayupLayer(f"walls.{wall}", "liner", "ply", exactly(0.00635), "all", True),
    )
    skin = "ply 3/4" if wall == "floor" else "white aluminium 0.040"
    return Layup(
        f"walls[{wall}]", wall, "", exactly(7.0), SIDES[wall], exactly(17.0), exactly(0.0), exactly(0.4064),
        exactly(0.0254), exactly(0.0381), exactly(0.00165), "tube", "steel", exactly(0.001), skin, layers,
    )  # fmt: skip


PLANES = tuple(plane(one) for one in SIDES)
FLOW = Airflow("trailer", exactly(0.006), exactly(0.0), exactly(0.0), 0.0, exactly(0.0), exactly(0.0))
ROOM = Inside(shell_of(PLANES, ()), FLOW, 17.0, 2.0, 8.0)


def heater(lowest: float = 900.0, highest: float = 1000.0, switches: bool | None = None) -> Warmth:
    return Warmth("parts[heater]", "heater", exactly(lowest), exactly(highest), WANTED, False, switches)


def night(warmth: Warmth, outdoors: Outdoors = FROST) -> HeldNight:
    return night_of(ROOM, outdoors, warmth, ())


def helped(*held: HeldNight) -> dict[str, Help]:
    return {one.what: one for one in helps_of(ROOM, (), held, PLANES, ())}


def test_a_heater_as_much_larger_as_it_must_be_and_no_more() -> None:
    one = night(heater())
    assert is_short(one)
    found = helped(one)["larger"]
    wanted = heater().wanted
    assert found.after is not None and found.after.coldest.best >= wanted - 0.05
    assert found.after == night(heater(highest=found.amount))
    assert night(heater(highest=found.amount - 60.0)).coldest.best < wanted - 0.05


def test_no_heater_is_large_enough_for_a_cold_that_there_is_not(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(helps, "LARGEST", 1100.0)
    assert helped(night(heater()))["larger"] == Help("larger", 1100.0, night(heater()), None)


def test_foam_over_the_studs_loses_less_and_leaves_floor_and_rest_as_they_are() -> None:
    one = night(heater())
    found = helped(one)["broken"].after
    assert found is not None
    assert found.loss.best < one.loss.best and found.coldest.best > one.coldest.best
    changed = [helps._with_break(each) for each in PLANES]
    assert [each.layers[1].name for each in changed] == ["break"] * 5 + ["liner"]
    assert changed[-1] == PLANES[-1]
    assert [each.layers[-1].name for each in changed] == ["liner"] * 6


def test_what_is_opened_on_a_mild_night_keeps_it_bearable_and_a_little_less_does_not() -> None:
    found = helped(night(heater()))["opened"]
    assert is_hot(found.before)
    assert found.after is not None and not is_hot(found.after)
    less = replace(ROOM, airflow=helps._opened(FLOW, found.amount - 0.003, ROOM.height))
    assert is_hot(night_of(less, mild_night(), found.before.warmth, ()))


@pytest.mark.parametrize("there", [(0.0, 0.0), (0.01, 0.01), (0.004, 0.02)])
def test_as_much_more_low_and_high_as_is_said_does_it_when_it_is_cut(there: tuple[float, float]) -> None:
    """Two openings in a row pass 1 / sqrt(1 / a2 + 1 / b2) of one (by hand): it is each of them that is told."""
    low, high = there
    before = low * high / sqrt(low**2 + high**2) if low else 0.0
    flow = replace(FLOW, vents=exactly(before), rise=exactly(1.0 if low else 0.0))
    mild = at_lowest(replace(ROOM, airflow=flow), (), night(heater()))
    assert mild is not None and is_hot(mild)
    amount = helps.opened(replace(ROOM, airflow=flow), (), mild).amount

    def cut(more: float) -> HeldNight:
        one, other = low + more, high + more
        passes = exactly(one * other / sqrt(one**2 + other**2))
        wider = replace(flow, vents=passes, rise=exactly(1.0))
        return night_of(replace(ROOM, airflow=wider), mild_night(), mild.warmth, ())

    assert not is_hot(cut(amount))
    assert is_hot(cut(amount * 0.8)), "and it is no more than about as much"


def test_more_open_is_beside_what_most_likely_is_and_a_vent_at_one_height_helps_no_other() -> None:
    doubtful = replace(FLOW, vents=Band(0.0, 0.0, 0.01), rise=Band(0.0, 0.0, 1.5), likely=(0.006, 1.5))
    more = helps._opened(doubtful, 0.02, 2.0)
    assert more.likely == pytest.approx((0.006 + 0.02 / sqrt(2.0), 1.5))
    both_ways = replace(FLOW, vents=exactly(0.01), rise=exactly(0.05))
    alone = helps._opened(both_ways, 0.02, 2.0)
    assert alone.likely == pytest.approx((0.02 / sqrt(2.0), 1.0)) and alone.vents.best == alone.likely[0]  # type: ignore[index]
    assert helps._opened(both_ways, 0.0, 2.0) == both_ways


def test_the_likely_night_has_what_most_likely_passes_and_its_ends_have_theirs() -> None:
    doubtful = replace(FLOW, vents=Band(0.0, 0.0, 0.02), rise=Band(0.0, 0.0, 1.5))
    shut, likely = (night_of(replace(ROOM, airflow=one), FROST, heater(), ()) for one in (
        doubtful, replace(doubtful, likely=(0.01, 1.5)),
    ))  # fmt: skip
    assert likely.loss.best > shut.loss.best and likely.coldest.best < shut.coldest.best
    assert (likely.coldest.low, likely.coldest.high) == (shut.coldest.low, shut.coldest.high)


def test_a_smaller_lowest_setting_keeps_it_bearable_and_a_little_more_does_not() -> None:
    one = heater()
    found = helped(night(one))["smaller"]
    assert 0.0 < found.amount < one.lowest.best
    assert found.after is not None and not is_hot(found.after)
    more = at_lowest(ROOM, (), night(replace(one, lowest=exactly(found.amount + 20.0))))
    assert more is not None and is_hot(more)


def test_one_that_goes_off_by_itself_or_whose_lowest_nobody_knows_is_never_too_warm() -> None:
    unsaid = replace(heater(), lowest=Band(0.0, 0.0, 0.0, known=False))
    for one in (heater(switches=True), unsaid):
        assert at_lowest(ROOM, (), night(one)) is None
        assert not {"opened", "smaller"} & helped(night(one)).keys()


def test_of_a_heater_that_most_likely_gives_nothing_no_change_is_told() -> None:
    perhaps = replace(heater(), lowest=Band(0.0, 0.0, 900.0), highest=Band(0.0, 0.0, 4000.0))
    assert is_short(night(perhaps)) and helped(night(perhaps)) == {}


def test_where_all_is_well_nothing_is_told() -> None:
    assert helped(night(heater(200.0, 4000.0, True))) == {}


def test_the_worst_night_of_each_heater_is_helped() -> None:
    milder = replace(FROST, place="y", coldest=exactly(263.15))
    found = helped(night(heater(), milder), night(heater()))
    assert found["larger"].before.outdoors == FROST


def test_a_strip_on_the_studs_saves_some_and_foam_over_them_saves_more() -> None:
    one = night(heater())
    found = helped(one)
    strip, whole = found["stripped"].after, found["broken"].after
    assert strip is not None and whole is not None
    assert one.loss.best > strip.loss.best > whole.loss.best
    assert one.coldest.best < strip.coldest.best < whole.coldest.best
    changed = [helps._with_strip(each) for each in PLANES]
    assert [[layer.name for layer in each.layers] for each in changed[:5]] == [["foam", "strip", "liner"]] * 5
    assert changed[-1] == PLANES[-1], "the floor stays as it is"
    assert [helps._with_strip(each) for each in changed] == changed
    assert helps.stripped(ROOM, (), one, tuple(changed), ()) is None


def test_a_heater_set_back_while_people_sleep_takes_less_and_the_room_is_colder_by_no_more_than_that() -> None:
    one = night(heater(200.0, 4000.0, True))
    found = set_back(ROOM, (), one)
    assert found is not None and found.after is not None
    after = found.after
    assert 0.5 * one.energy.best < after.energy.best < one.energy.best
    assert WANTED - found.amount - 0.1 <= after.coldest.best < one.coldest.best
    # It is eight to eight; from six on it is warmed again.
    assert after.night.air[0] == pytest.approx(WANTED, abs=0.1)
    assert after.night.air[-1] > after.night.air[9] and after.night.air[-1] == pytest.approx(WANTED, abs=0.5)
    again = night_of(ROOM, FROST, replace(heater(200.0, 4000.0, True), set_back=found.amount), ())
    assert after == again


def test_one_that_is_short_or_cannot_give_less_is_not_set_back() -> None:
    assert set_back(ROOM, (), night(heater())) is None
    fixed = heater(1100.0, 1100.0, False)
    warm_enough = replace(FROST, coldest=exactly(275.0))
    assert set_back(ROOM, (), night(fixed, warm_enough)) is None
