"""What stands: a tick is a fact, a stage is a plan, half a tick is doubt."""

import pytest

from boxwright.model.stage import Done, Marks, read_done, stands

TODAY = 5


@pytest.mark.parametrize(
    ("stage", "until", "tick", "follows", "planned_today", "today"),
    [
        (3, None, "yes", False, "yes", "yes"),
        (3, None, "part", False, "yes", "perhaps"),
        (3, None, "no", False, "yes", "no"),
        (3, None, "unmarked", False, "yes", "perhaps"),
        (5, None, "unmarked", False, "yes", "perhaps"),
        (6, None, "unmarked", False, "no", "no"),
        (6, None, "yes", False, "no", "yes"),
        (6, None, "part", False, "no", "perhaps"),
        (None, None, "unmarked", False, "yes", "yes"),
        (1, 4, "yes", False, "no", "no"),
        (1, 5, "yes", False, "yes", "yes"),
        (1, None, "unmarked", True, "yes", "yes"),
        (6, None, "unmarked", True, "no", "no"),
        (1, None, "no", True, "yes", "no"),
    ],
)
def test_what_stands(stage, until, tick, follows, planned_today, today):
    marks = Marks(stage, until, Done(tick), follows_load=follows)
    assert stands(marks, TODAY, ticked=False) == planned_today
    assert stands(marks, TODAY, ticked=True) == today


def test_the_unplanned_never_stands_by_plan():
    assert stands(Marks(0, None, Done(), planned=False), 9, ticked=False) == "no"
    assert stands(Marks(0, None, Done(), planned=False), 9, ticked=True) == "no"


def test_ticks_are_read_in_the_builders_words():
    assert read_done("yes 2026-04-18") == Done("yes", read_done("2026-04-18").on)
    assert read_done("part").tick == "part" and read_done("no").tick == "no"
    with pytest.raises(ValueError, match="yes 2026-04-18"):
        read_done("nearly")


def test_what_belongs_to_no_stage_and_has_no_tick_is_there_without_doubt() -> None:
    assert stands(Marks(None, None, Done()), TODAY, ticked=True) == "yes"
    assert stands(Marks(None, TODAY - 1, Done()), TODAY, ticked=True) == "no"
    assert stands(Marks(None, None, Done("part")), TODAY, ticked=True) == "perhaps"
    assert stands(Marks(None, None, Done(), planned=False), TODAY, ticked=True) == "no"
