"""A rig laid out for its slots: each is worked out once, what a change leaves alone is not, and none differs (I12)."""

from __future__ import annotations

from collections import Counter
from functools import cache

import pytest

from boxwright.model.load import LoadState
from boxwright.rig.compose import read_rig
from boxwright.rig.rig import Rig
from boxwright.study import slots as slots_of_study
from boxwright.study.bench import Bench
from boxwright.study.moves import Edit
from boxwright.study.once import Once
from boxwright.study.remedy import remedies
from boxwright.study.slots import study
from boxwright.study.standing import Standing, cut
from tests.lanes import every_so_many
from tests.study.demo import RIGS, TODAY

Cut = tuple[int, int, bool, str, str]
"""What was cut: the rig (by its number among those kept alive), stage, as ticked, load state, use."""


def whimbrel() -> Bench:
    return Bench(read_rig((RIGS / "whimbrel.yaml").read_bytes()), TODAY, vehicle="borrowed")


@cache
def many_changes() -> Bench:
    """Return a bench on which one change is tried after the other, as where changes are sought."""
    return whimbrel()


@pytest.fixture
def cuts(monkeypatch: pytest.MonkeyPatch) -> Counter[Cut]:
    found, rigs = Counter[Cut](), list[Rig]()

    def counted(rig: Rig, stage: int, ticked: bool, load: LoadState, use: str, remembered: object) -> Standing:
        if not any(one is rig for one in rigs):
            rigs.append(rig)
        number = next(number for number, one in enumerate(rigs) if one is rig)
        found[number, stage, ticked, load.name, use] += 1
        return cut(rig, stage, ticked, load, use, remembered)  # type: ignore[arg-type]

    monkeypatch.setattr(slots_of_study, "cut", counted)
    return found


EDITS = (
    Edit("loads[departure].tanks.fresh", "1/2"),
    Edit("loads[departure].out", "waders"),
    Edit("parts[waders].x", "60"),
    Edit("tow[borrowed].ball_height", "21"),
    Edit("measured[ticket-empty].tongue", "240"),
    Edit("trailer.coupler_x", "-50"),
    Edit("walls[left].layers[foam].weight", "60"),
    Edit("people[skipper].weight", "230"),
)


@pytest.mark.parametrize("edit", every_so_many(EDITS, 4), ids=lambda edit: edit.path)
def test_slots_of_a_changed_text_are_those_of_a_study_that_knows_nothing(edit: Edit) -> None:
    bench = many_changes()
    before = bench.before
    changed = bench.after([edit])
    assert changed is not None
    cold = study(changed.rig, TODAY, once=Once(), vehicle="borrowed").slots
    warm = [bench.slot_after(changed, slot) for slot in before]
    asked = {(slot.number, slot.is_ticked, slot.load, slot.use) for slot in before}
    assert warm == [
        slot for slot in cold
        if (slot.number, slot.is_ticked, slot.load, slot.use) in asked and not slot.is_for_ticket
    ]  # fmt: skip
    assert warm != list(before)


def test_nothing_is_cut_twice_from_one_text_however_many_changes_are_proved(cuts: Counter[Cut]) -> None:
    bench = whimbrel()
    remedies(bench, bench.reading.rig.stage_number("finish") or 0, False)
    # What stood on a scale is cut once for the scale and once for the slot its ticket is compared in.
    on_the_scale = bench.reading.rig.stage_number("measure")
    assert bench.proofs > 5
    assert {key: count for key, count in cuts.items() if count > 1 and key[1] != on_the_scale} == {}


def test_a_change_of_one_load_state_cuts_and_balances_that_one_alone(cuts: Counter[Cut]) -> None:
    bench = whimbrel()
    before = bench.before
    changed = bench.after([Edit("loads[departure].tanks.fresh", "1/2")])
    assert changed is not None
    cuts.clear()
    bench.once.clear()
    for slot in before:
        if slot.load == "departure":
            bench.slot_after(changed, slot)
    on_the_scale = bench.reading.rig.stage_number("measure")
    assert {load for _, stage, _, load, _ in cuts if stage != on_the_scale} == {"departure"}
    # One for each stage from today on, and one for today as ticked; stages that weigh the same share one.
    assert 0 < bench.once.ran.count("weight.tongue_alone") <= len(bench.stages) + 1


def test_what_a_change_leaves_alone_stays_the_same_object() -> None:
    bench = whimbrel()
    changed = bench.after([Edit("parts[waders].x", "60")])
    assert changed is not None
    rig, old = changed.rig, bench.reading.rig
    assert rig.parts != old.parts
    for name in ("trailer", "tow", "frame", "towing", "header", "loads", "openings", "layers"):
        assert getattr(rig, name) is getattr(old, name), name
