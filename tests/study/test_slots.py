"""Which slots a study runs, what an edit runs again, and that a warm study is a cold one (I12)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from random import Random

import pytest

from boxwright.model.stage import Done
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Item, Rig
from boxwright.study.once import Once
from boxwright.study.slots import Slot, Study, study
from boxwright.units import Band, exactly
from tests.study.demo import CLEAN, TODAY, clean, demo, slot_of, studied

UNKNOWN = Band(0.0, 0.0, float("inf"), known=False)


def keys(found: Study) -> list[tuple[str, bool, str, str]]:
    return [(slot.stage, slot.is_ticked, slot.load, slot.use) for slot in found.slots]


def with_part(rig: Rig, name: str, change: Callable[[Item], Item]) -> Rig:
    return replace(rig, parts=tuple(change(one) if one.name == name else one for one in rig.parts))


def test_a_study_runs_today_as_ticked_and_the_plan_from_today_on() -> None:
    found = keys(study(demo("whimbrel"), TODAY))
    uses = [("empty", "tow"), ("departure", "tow"), ("going-home", "tow"), ("boat-out", "tow")]
    uses += [("night", "sleep"), ("night", "leave")]
    assert found[:6] == [("liners", True, load, use) for load, use in uses]
    stages = ["liners", "power", "bunk", "heat", "galley", "finish"]
    assert found[6:] == [(stage, False, load, use) for stage in stages for load, use in uses]


def test_a_stage_a_load_and_a_use_can_be_asked_for() -> None:
    rig = demo("whimbrel")
    assert keys(study(rig, TODAY, stage=10, load="departure")) == [("finish", False, "departure", "tow")]
    assert keys(study(rig, TODAY, stage=5, use="sleep")) == [
        ("liners", True, "night", "sleep"),
        ("liners", False, "night", "sleep"),
    ]
    assert len(study(rig, TODAY, all_stages=True).slots) == 6 + 11 * 6


def test_the_answers_are_for_today_as_ticked_or_for_the_plan_of_the_stage_asked_for() -> None:
    rig = demo("whimbrel")
    today = study(rig, TODAY)
    assert (today.stage, today.is_ticked) == ("liners", True)
    assert {slot.is_ticked for slot in today.asked_slots()} == {True}
    finished = study(rig, TODAY, stage=10)
    assert (finished.stage, finished.is_ticked) == ("finish", False)
    assert [slot.load for slot in finished.asked_slots("tow")] == ["empty", "departure", "going-home", "boat-out"]
    assert {finding.stage for finding in finished.findings()} == {"finish"}
    assert {finding.load for finding in finished.findings("tow", "departure")} == {"departure"}


def test_today_and_the_plan_are_shown_side_by_side_with_what_makes_the_difference() -> None:
    found = study(demo("whimbrel"), TODAY).differences
    assert [one.load for one in found if one.use == "tow"] == ["empty", "departure", "going-home", "boat-out"]
    assert all("walls[left].layers[liner]" in one.parts for one in found)
    assert study(clean(), TODAY).differences == ()


def test_a_file_with_no_stage_at_all_is_studied() -> None:
    rig = replace(clean(), stages_in_order=(), header=replace(clean().header, stage_today=0))
    found = study(rig, TODAY)
    assert keys(found)[0] == ("", True, "road", "tow")
    assert all(slot.weight is not None for slot in found.slots)


def test_a_study_of_the_same_rig_runs_nothing() -> None:
    once = Once()
    first = study(demo("whimbrel"), TODAY, once=once)
    once.clear()
    assert study(demo("whimbrel"), TODAY, once=once) == first
    assert once.ran == []


def test_a_mass_edit_of_a_part_runs_only_what_takes_its_mass() -> None:
    """The tongue of the four load states that are towed is weighed again, one of them whole; walls and tanks stay."""
    once, rig = Once(), demo("whimbrel")
    study(rig, TODAY, stage=10, load="departure", once=once)
    once.clear()
    heavier = with_part(rig, "bunk", lambda one: replace(one, mass=exactly(61.0)))
    study(heavier, TODAY, stage=10, load="departure", once=once)
    assert Counter(once.ran) == {
        "weight.offers": 3,  # two states have the same parts aboard
        "study.pooled": 4,
        "study.stood_of": 1,
        "study.heavy_of": 1,
        "study.kept_standing": 1,  # gives the same, so that safety stays
        "study.covered_vents": 1,  # likewise, so that air stays
        "study.strung_of": 1,  # likewise
        "weight.pool_of": 4,  # the slot's own is that of its load state
        "weight.tongue_alone": 4,
        "weight.solve": 1,
        "weight.findings": 1,
        "towing.solve": 1,
        "towing.findings": 1,
        "study.judge": 1,
    }


def test_a_comment_in_the_file_runs_nothing() -> None:
    once = Once()
    first = study(read_rig(CLEAN).rig, TODAY, once=once)
    once.clear()
    assert study(read_rig(CLEAN.replace("parts:", "# measured twice\nparts:")).rig, TODAY, once=once) == first
    assert once.ran == []


def test_a_mass_edit_of_a_part_that_is_not_in_yet_runs_nothing_at_the_stages_before() -> None:
    once, rig = Once(), demo("whimbrel")
    heavier = with_part(rig, "awning", lambda one: replace(one, mass=exactly(30.0)))
    study(rig, TODAY, once=once)
    once.clear()
    study(heavier, TODAY, once=once)
    ran = Counter(once.ran)
    assert ran["weight.solve"] == 6, "six slots of the last stage, the only one it stands in"
    assert ran["frame.offers"] == ran["water.offers"] == ran["study.own_frame"] == 0


def test_slots_that_differ_in_their_use_only_share_their_steps() -> None:
    once = Once()
    found = study(clean(), TODAY, once=once)
    assert len(found.slots) == 12
    assert Counter(once.ran)["weight.solve"] == 8, "four for today, ticked as planned, and four with the shelf in"


def test_a_note_or_an_order_of_the_parts_changes_no_number() -> None:
    rig = demo("whimbrel")
    shuffled = list(rig.parts)
    Random(7).shuffle(shuffled)
    for before, after in zip(
        study(rig, TODAY).slots, study(replace(rig, parts=tuple(shuffled)), TODAY).slots, strict=True
    ):
        assert before.weight == after.weight
        assert set(before.findings) == set(after.findings)
        assert before.verdict.answer == after.verdict.answer


def test_the_order_of_the_slots_changes_no_answer() -> None:
    rig, once = demo("whimbrel"), Once()
    forwards = study(rig, TODAY)
    straight = dict(zip(keys(forwards), forwards.slots, strict=True))
    backwards = study(replace(rig, loads=tuple(reversed(rig.loads))), TODAY, once=once)
    for key, slot in zip(keys(backwards), backwards.slots, strict=True):
        assert slot.weight == straight[key].weight
        assert slot.findings == straight[key].findings


def numbers_of(slot: Slot) -> tuple[float, float]:
    assert slot.weight is not None
    return slot.weight.gross.band.best, slot.weight.tongue.band.best


def test_more_weight_is_never_less_and_ahead_of_the_axles_never_lightens_the_ball() -> None:
    rig = demo("whimbrel")
    gross, tongue = numbers_of(slot_of(studied("whimbrel"), "finish", "departure"))
    axles = sum(place.best for place in rig.trailer.axles.x) / 2.0
    parts = [one for one in rig.parts if one.mass.known and one.place.x.known and not one.is_in_empty_weight]
    for part in parts[::4]:
        heavier = with_part(rig, part.name, lambda one: replace(one, mass=exactly(one.mass.best + 10.0)))
        slot = study(heavier, TODAY, stage=10, load="departure").slots[-1]
        stands = any(one.of == part.of for one in slot.standing.frames)
        more, on_ball = numbers_of(slot)
        assert more == pytest.approx(gross + (10.0 if stands else 0.0))
        place = next((one.place for one in slot.standing.frames if one.of == part.of), part.place)
        if stands and abs(place.x.best - axles) > 0.1:
            assert (on_ball > tongue) == (place.x.best < axles), part.name


def test_a_part_without_a_weight_never_makes_an_answer_better() -> None:
    rig = with_part(clean(), "bed", lambda one: replace(one, mass=UNKNOWN))
    for before, after in zip(study(clean(), TODAY).slots, study(rig, TODAY).slots, strict=True):
        order = ("go", "limits", "ask", "no")
        assert order.index(after.verdict.answer) >= order.index(before.verdict.answer)
        assert len(after.verdict.because) >= len(before.verdict.because)


def edited(rig: Rig, random: Random) -> Rig:
    """Return a rig with one thing changed, as a builder at the keyboard changes it."""
    part = random.choice(rig.parts)
    index = random.randrange(len(rig.loads))
    state = rig.loads[index]
    changes: tuple[Callable[[], Rig], ...] = (
        lambda: with_part(rig, part.name, lambda one: replace(one, mass=random.choice(MASSES))),
        lambda: with_part(rig, part.name, lambda one: replace(one, place=moved(one, random.choice((-0.1, 0.2))))),
        lambda: with_part(
            rig, part.name, lambda one: replace(one, marks=replace(one.marks, done=Done(random.choice(TICKS))))
        ),
        lambda: with_part(
            rig, part.name, lambda one: replace(one, marks=replace(one.marks, stage=random.randrange(11)))
        ),
        lambda: with_load(rig, index, replace(state, out=(*state.out, part.name)[-6:])),
        lambda: with_load(rig, index, replace(state, tanks=(("fresh", random.choice(FILLS)),))),
        lambda: replace(rig, parts=tuple(one for one in rig.parts if one is not part)),
        lambda: replace(rig, parts=demo("whimbrel").parts),
        lambda: replace(
            rig, trailer=rig.trailer.model_copy(update={"coupler_x": exactly(random.choice((-1.3, -1.4)))})
        ),
        lambda: replace(
            rig, measured=rig.measured[: random.randrange(len(rig.measured) + 1)] or demo("whimbrel").measured
        ),
        lambda: replace(rig, layers=demo("whimbrel").layers[: random.randrange(9, 13)]),
        lambda: replace(rig, troubled=random.choice(((), ("parts[bunk]",)))),
    )
    return random.choice(changes)()


MASSES = (
    exactly(5.0),
    exactly(50.0),
    Band(10.0, 8.0, 12.0, spread="interval"),
    Band(9.0, 8.0, 10.0, spread="sigma"),
    UNKNOWN,
)
TICKS = ("yes", "part", "no", "unmarked")
FILLS = (exactly(0.0), exactly(1.0), Band(0.5, 0.25, 0.75, spread="fill"))


def moved(one: Item, by: float) -> object:
    x = one.place.x
    return replace(one.place, x=replace(x, best=x.best + by, low=x.low + by, high=x.high + by))


def with_load(rig: Rig, index: int, state: object) -> Rig:
    return replace(rig, loads=(*rig.loads[:index], state, *rig.loads[index + 1 :]))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "seed", [pytest.param(seed, marks=[pytest.mark.nightly] if seed else []) for seed in range(20)]
)
def test_warm_is_cold_for_any_row_of_edits(seed: int) -> None:
    """The warm study keeps its memo through 50 edits, the cold one has none: 50 edits by day, 950 more by night."""
    random, rig, once = Random(seed), demo("whimbrel"), Once()
    for _ in range(50):
        rig = edited(rig, random)
        stage, load = random.choice((5, 10)), random.choice(rig.loads).name
        assert study(rig, TODAY, stage=stage, load=load, once=once) == study(rig, TODAY, stage=stage, load=load)
