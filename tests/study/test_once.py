"""`Once` changes what is run, never what comes out (I12)."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from hypothesis import given
from hypothesis import strategies as st

from boxwright.study.once import LONG, Failed, Once


@dataclass(frozen=True, slots=True)
class Load:
    of: str
    kg: float


@dataclass(frozen=True, slots=True)
class Truck:
    name: str
    loads: tuple[Load, ...]
    colour: str = field(default="", compare=False)


def of_truck(truck: Truck) -> Load:
    return total(truck.loads)


def total(loads: tuple[Load, ...]) -> Load:
    return Load("total", sum(load.kg for load in loads))


def is_heavy(whole: Load, limit: float) -> tuple[str, ...]:
    return ("too heavy",) if whole.kg > limit else ()


def fail(loads: tuple[Load, ...]) -> Load:
    raise ValueError(f"no idea about {len(loads)} loads")


def flow(once: Once, loads: tuple[Load, ...], limit: float) -> object:
    return once(is_heavy, once(total, loads), limit)


def test_the_same_arguments_run_nothing() -> None:
    once = Once()
    once.enter("today")
    first = flow(once, (Load("bed", 20.0),), 10.0)
    assert once.ran == ["study.total", "study.is_heavy"]
    once.clear()
    assert flow(once, (Load("bed", 20.0),), 10.0) is first
    assert once.ran == []


def test_another_slot_takes_the_answer_from_the_pool() -> None:
    once = Once()
    once.enter("today")
    first = flow(once, (Load("bed", 20.0),), 10.0)
    once.clear()
    once.enter("tomorrow")
    assert flow(once, (Load("bed", 20.0),), 10.0) is first
    assert once.ran == []


def test_an_equal_answer_stops_what_follows() -> None:
    once = Once()
    once.enter("today")
    flow(once, (Load("bed", 20.0), Load("box", 5.0)), 10.0)
    once.clear()
    flow(once, (Load("bed", 5.0), Load("box", 20.0)), 10.0)
    assert once.ran == ["study.total"]


def test_an_answer_that_comes_back_is_the_old_object() -> None:
    once = Once()
    once.enter("today")
    old = once(total, (Load("bed", 20.0),))
    assert once(total, (Load("bed", 12.0), Load("box", 8.0))) is old


def test_a_step_that_raises_gives_a_failed_answer_and_what_takes_it_is_not_run() -> None:
    once = Once()
    once.enter("today")
    answer = once(is_heavy, once(fail, (Load("bed", 20.0),)), 10.0)
    assert isinstance(answer, Failed)
    assert answer.says == "ValueError: no idea about 1 loads"
    assert "no idea about" in answer.traceback
    assert once.ran == ["study.fail"]


def test_times_come_from_the_callers_clock() -> None:
    ticks = iter(range(100))
    once = Once(clock=lambda: float(next(ticks)))
    once.enter("today")
    flow(once, (Load("bed", 20.0),), 10.0)
    assert [(ran.slot, ran.step, ran.seconds) for ran in once.times] == [
        ("today", "study.total", 1.0),
        ("today", "study.is_heavy", 1.0),
    ]


def test_the_pool_is_bounded_by_twice_the_slots() -> None:
    once = Once()
    once.enter("only")
    for kg in range(50):
        once(total, (Load("bed", float(kg)),))
    assert [len(answers) for answers in once._pool.values()] == [2]


loads = st.lists(st.builds(Load, st.sampled_from("ab"), st.sampled_from([0.0, 1.0, 2.0, -0.0])), max_size=3).map(tuple)


@given(st.lists(st.tuples(st.sampled_from(["one", "two", "three"]), loads, st.sampled_from([0.5, 2.5])), max_size=40))
def test_warm_is_cold(edits: list[tuple[str, tuple[Load, ...], float]]) -> None:
    warm = Once()
    for slot, these, limit in edits:
        warm.enter(slot)
        cold = Once()
        cold.enter(slot)
        assert flow(warm, these, limit) == flow(cold, these, limit)


def test_a_record_with_a_long_row_is_told_apart_by_all_that_is_in_it_and_by_nothing_else() -> None:
    def truck(last: float, name: str = "van", colour: str = "") -> Truck:
        rows = [*(Load(str(at), 1.0) for at in range(LONG)), Load("last", last)]
        return Truck(name, tuple(rows), colour)

    once = Once()
    once.enter("today")
    assert once(of_truck, truck(1.0)) == Load("total", LONG + 1.0)
    once.clear()
    once.enter("tomorrow")
    once(of_truck, truck(1.0, colour="red"))
    assert once.ran == []
    assert once(of_truck, truck(2.0)) == Load("total", LONG + 2.0)
    once(of_truck, replace(truck(2.0), name="lorry"))
    assert len(once.ran) == 2
