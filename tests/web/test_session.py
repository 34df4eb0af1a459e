"""The text is the only state: every change can be taken back, and whoever follows the changes holds the same text."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from boxwright.web.contract import Slot, TextChange
from boxwright.web.gestures import Refused
from boxwright.web.offsets import shown_text, to_editor, to_text
from boxwright.web.session import MOST_REMEMBERED, MOST_UNDO, PAUSE, Change, Session, _between

TODAY = date(2026, 11, 28)
WHIMBREL = (Path(__file__).resolve().parents[2] / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8")
TEXT = """\
boxwright: 1
rig: Sesión 🚐
units: {length: in, weight: lb}
trailer:
  body: {length: 168, width: 80, height: 78}
stages: {all: {what: everything}}
parts:
  bench: {x: 40, side: left+1, z: floor, size: 30 x 20 x 18, weight: 30, stage: all} # 🪑 ours
  crate: {inside: bench, x: +2, side: +4, z: +1, size: 6 x 6 x 6, weight: 5, stage: all}
  mug: {x: 90, side: left+4, z: floor, size: 6 x 6 x 6, weight: 1, stage: all}
loads:
  road: {cargo: all, for: [tow]}
"""


def opened(text: str = TEXT) -> Session:
    return Session(text, TODAY)


def typed(
    session: Session, start: int, end: int, insert: str, at: float = 0.0, base: int | None = None
) -> list[Change]:
    """Type as an editor does: counted in its own way."""
    change = TextChange(start=start, end=end, insert=insert)
    return session.type([change], session.rev if base is None else base, at)


def test_one_gesture_is_one_step_back_and_forth() -> None:
    session = opened()
    session.move("parts[bench]", (0.0254, 0.0254, 0.0254), 0, 1.0)
    moved = session.text
    assert session.depth == (1, 0)
    session.undo()
    assert (session.text, session.depth) == (TEXT, (0, 1))
    session.redo()
    assert (session.text, session.depth) == (moved, (1, 0))
    session.undo()
    session.set("parts[mug].weight", "2", session.rev, 2.0)
    assert session.depth == (1, 0)
    with pytest.raises(Refused):
        session.redo()


def test_a_gesture_that_changes_nothing_is_no_step() -> None:
    session = opened()
    session.move("parts[bench]", (0.0001, 0.0, 0.0), 0, 1.0)
    session.set("parts[mug].weight", "1", 0, 1.0)
    assert (session.rev, session.depth) == (0, (0, 0))


def test_typing_is_grouped_until_it_rests() -> None:
    session = opened()
    end = to_editor(TEXT, len(TEXT))
    for number, letter in enumerate("# note"):
        typed(session, end + number, end + number, letter, at=number * PAUSE)
    typed(session, end + 6, end + 6, "!", at=5 * PAUSE + PAUSE + 0.01)
    assert session.text == TEXT + "# note!"
    session.undo()
    assert session.text == TEXT + "# note"
    session.undo()
    assert session.text == TEXT


def test_a_gesture_between_keys_ends_the_group() -> None:
    session = opened()
    typed(session, 0, 0, "#", at=0.1)
    session.set("parts[mug].weight", "2", session.rev, 0.2)
    typed(session, 1, 1, "!\n", at=0.3)
    session.undo()
    session.undo()
    assert session.text == "#" + TEXT


def test_so_many_steps_can_be_taken_back_and_no_more() -> None:
    session = opened()
    for number in range(MOST_UNDO + 5):
        session.set("parts[mug].weight", str(number + 2), session.rev, float(number))
    assert session.depth == (MOST_UNDO, 0)
    for _ in range(MOST_UNDO):
        session.undo()
    assert "weight: 6," in session.text
    with pytest.raises(Refused):
        session.undo()


def test_a_preview_changes_nothing_and_says_what_the_drop_will_say() -> None:
    session = opened(WHIMBREL)
    shift = (0.254, 0.0508, 0.0)
    slot = Slot(load="departure")
    before = session.seen(slot).study
    shown = session.preview("parts[galley]", shift, 0, slot)
    assert (session.text, session.rev) == (WHIMBREL, 0)
    assert session.seen(slot).study == before
    session.move("parts[galley]", shift, 0, 0.0)
    dropped = session.seen(slot).study
    for use in ("tow",):
        assert shown.study.asked_slots(use, "departure") == dropped.asked_slots(use, "departure")
    assert shown.study.asked_slots() != before.asked_slots("tow", "departure")


@pytest.mark.parametrize("stage", ["", "liners", "finish", "no such stage"])
def test_what_is_seen_is_what_check_says_of_the_same_text(stage: str) -> None:
    session = opened(WHIMBREL)
    session.move("parts[galley]", (0.254, 0.0, 0.0), 0, 0.0)
    seen = session.seen(Slot(stage=stage)).study
    rig = read_rig(session.text).rig
    whole = study(rig, TODAY)
    number = rig.stage_number(stage) if stage else None
    is_ticked = number is None
    number = rig.header.stage_today if number is None else number
    assert (seen.number, seen.is_ticked) == (number, is_ticked)
    expected = [one for one in whole.slots
                if (one.number, one.is_ticked) == (number, is_ticked) and not one.is_for_ticket]  # fmt: skip
    assert list(seen.asked_slots()) == expected
    assert expected


# ---------------------------------------------------------------------- edits that come late


def test_a_late_edit_of_something_else_is_taken() -> None:
    session = opened()
    session.set("parts[mug].weight", "2", 0, 0.0)
    session.move("parts[bench]", (0.0254, 0.0, 0.0), 0, 0.0)
    assert "bench: {x: 41" in session.text and "weight: 2" in session.text


@pytest.mark.parametrize(
    "late",
    [
        lambda session: session.set("parts[mug].weight", "3", 0, 0.0),
        lambda session: session.move("parts[mug]", (0.1, 0.0, 0.0), 0, 0.0),
        lambda session: session.preview("parts[mug]", (0.1, 0.0, 0.0), 0, Slot()),
        lambda session: session.copy("parts[mug]", "", 0, 0.0),
        lambda session: session.take_out("parts[mug]", 0, 0.0),
        lambda session: session.rename("parts[mug]", "cup", 0, 0.0),
        lambda session: session.turn("parts[mug]", 0, 0.0),
    ],
)
def test_a_late_edit_of_what_was_changed_is_refused(late: Callable[[Session], object]) -> None:
    session = opened()
    session.set("parts[mug].weight", "2", 0, 0.0)
    text, rev = session.text, session.rev
    with pytest.raises(Refused, match="meantime"):
        late(session)
    assert (session.text, session.rev) == (text, rev)


def test_an_edit_that_comes_far_too_late_is_refused() -> None:
    session = opened()
    for number in range(MOST_REMEMBERED + 1):
        session.set("parts[mug].weight", str(number + 2), session.rev, 0.0)
    for base in (0, -1, session.rev + 1):
        with pytest.raises(Refused, match="too long ago"):
            session.move("parts[bench]", (0.1, 0.0, 0.0), base, 0.0)


def test_late_typing_finds_its_place() -> None:
    session = opened()
    at = to_editor(TEXT, TEXT.index("ours"))
    session.set("parts[mug].weight", "2000", 0, 0.0)  # behind it
    typed(session, 0, 0, "# first\n")  # before it
    typed(session, at, at + 4, "mine", base=0)
    assert session.text == "# first\n" + TEXT.replace("ours", "mine").replace("weight: 1,", "weight: 2000,")


def test_late_typing_in_what_was_changed_is_refused() -> None:
    session = opened()
    at = to_editor(TEXT, TEXT.index("weight: 1,") + 8)
    session.set("parts[mug].weight", "22", 0, 0.0)
    with pytest.raises(Refused, match="meantime"):
        typed(session, at - 2, at + 1, "x", base=0)


def test_a_digit_typed_before_a_number_another_program_has_changed_is_refused() -> None:
    session = opened()
    at = to_editor(TEXT, TEXT.index("weight: 30,") + 8)
    session.take(TEXT.replace("weight: 30,", "weight: 35,"), 0.0)
    with pytest.raises(Refused, match="meantime"):
        typed(session, at, at, "1", base=0)  # 135 would be nobody's
    with pytest.raises(Refused, match="meantime"):
        typed(session, at + 20, at + 20, " soon", base=0)  # elsewhere in that line
    other = to_editor(TEXT, TEXT.index("weight: 1,") + 8)
    typed(session, other, other, "2", base=0)
    assert session.text == TEXT.replace("weight: 30,", "weight: 35,").replace("weight: 1,", "weight: 21,")


def test_of_two_things_typed_at_one_place_the_one_that_came_first_stands_first() -> None:
    session = opened()
    at = to_editor(TEXT, TEXT.index("ours"))
    typed(session, at, at, "all ", base=0)
    typed(session, at, at, "of it ", base=0)
    assert "all of it ours" in session.text


def test_typing_over_itself_is_refused() -> None:
    session = opened()
    changes = [TextChange(start=0, end=10, insert="a"), TextChange(start=5, end=12, insert="b")]
    for one in (changes, changes[::-1], [TextChange(start=9, end=3, insert="c")]):
        with pytest.raises(Refused):
            session.type(one, 0, 0.0)
    assert session.text == TEXT


# ---------------------------------------------------------------------- counting as an editor does

PIECES = st.lists(st.sampled_from(["a", "\n", "\r\n", "\r", "é", "🚐", "\ufeff", "𝔞", "  k: {x: 1}\n"]), max_size=30)


@given(PIECES, st.integers(0, 60))
def test_places_are_found_again(pieces: list[str], offset: int) -> None:
    text = "".join(pieces)
    offset = min(offset, len(text))
    if text[offset - 1 : offset + 1] == "\r\n":
        offset -= 1
    counted = to_editor(text, offset)
    assert to_text(text, counted) == offset
    assert counted == len(shown_text(text[:offset]).encode("utf-16-le")) // 2


class Editor:
    """An editor that is told of changes as a page is: its text is kept in units of two bytes."""

    def __init__(self, text: str) -> None:
        self.units = shown_text(text).encode("utf-16-le")

    def take(self, change: TextChange) -> None:
        new = change.insert.encode("utf-16-le")
        self.units = self.units[: 2 * change.start] + new + self.units[2 * change.end :]

    @property
    def text(self) -> str:
        return self.units.decode("utf-16-le")


OF = st.sampled_from(
    ["parts[bench]", "parts[crate]", "parts[mug]", "parts[none]", "parts", "", "trailer", "parts[mug-2]"]
)
PATHS = st.sampled_from(
    ["parts[bench].weight", "parts[mug].x", "parts[mug].note", "trailer.body.length", "rig", "parts",
     "parts[none].x", "", "units", "parts[crate].at[0]", "loads[road].cargo"]
)  # fmt: skip
WORDS = st.sampled_from(
    ["1", "left+3", "", "a: b", "[1, 2]", "{", '"', "🚐", "x # y", "- 1", "&a", "*a", "12\n  more: 1", "mug", "bench",
     "\r\n", "\x00", "'", "yes", "!!python/object:os.system"]
)  # fmt: skip
STEPS = st.tuples(
    st.sampled_from(["move", "set", "add", "copy", "out", "rename", "turn", "type", "undo", "redo", "accept", "take"]),
    OF, PATHS, WORDS, st.integers(0, 400), st.integers(0, 12), st.integers(0, 3),
)  # fmt: skip


def done(session: Session, step: tuple[str, str, str, str, int, int, int]) -> list[Change]:
    """Do one step of a page."""
    kind, of, path, word, start, length, ago = step
    base = max(session.rev - ago, 0)
    shift = ((start - 200) / 500.0, (length - 6) / 100.0, 0.0)
    if kind == "type":
        return typed(session, start, start + length, word, base=base)
    if kind in {"undo", "redo"}:
        return session.undo() if kind == "undo" else session.redo()
    made: dict[str, Callable[[], Change | None]] = {
        "move": lambda: session.move(of, shift, base, 0.0),
        "set": lambda: session.set(path, word, base, 0.0),
        "add": lambda: session.add(path, word, {"x": word, "size": "1 x 1 x 1"}, 0.0),
        "copy": lambda: session.copy(of, word, base, 0.0),
        "out": lambda: session.take_out(of, base, 0.0),
        "rename": lambda: session.rename(of, word, base, 0.0),
        "turn": lambda: session.turn(of, base, 0.0),
        "accept": lambda: session.accept(word, of, word, "", 0.0),
        "take": lambda: session.take(TEXT, 0.0),
    }
    change = made[kind]()
    return [change] if change is not None else []


@given(st.lists(STEPS, min_size=1, max_size=12), st.booleans())
def test_whatever_a_page_does_everybody_holds_the_same_text(
    steps: list[tuple[str, str, str, str, int, int, int]], is_two_character: bool
) -> None:
    first = TEXT.replace("\n", "\r\n") if is_two_character else TEXT
    session = opened(first)
    editor = Editor(first)
    for step in steps:
        before, rev = session.text, session.rev
        try:
            made = done(session, step)
        except Refused:
            assert (session.text, session.rev) == (before, rev)
            continue
        for change in session.for_editor(made, before):
            editor.take(change)
        assert editor.text == shown_text(session.text)
        assert session.reading.problems == read_rig(session.text).problems
        assert repr(session.reading.rig) == repr(read_rig(session.text).rig)  # what is not a number equals nothing
    while session.depth[0]:
        session.undo()
    if len(steps) < MOST_UNDO:
        assert session.text == first


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_what_differs_ends_before_the_end_of_its_line(ends: str) -> None:
    """Else what somebody types at the end of that line would be carried into the next one."""
    before, after = f"x: 10{ends}y: 20{ends}", f"x: 55{ends}y: 20{ends}"
    assert _between(before, after) == Change(3, "10", "55")


def test_a_line_end_of_two_characters_is_never_cut_through() -> None:
    change = _between("x: 1\r\ny: 2\r\n", "x: 1\ny: 2\r\n")
    assert change == Change(4, "\r\n", "\n")


BODY = "  body: {length: 168, width: 80, height: 78}\n"
OUTSIDE = TEXT.replace(BODY, f"{BODY}  coupler_x: -40\n  outside: {{width: 84, height: 96}}\n")


@pytest.mark.parametrize(
    ("shift", "goes"),
    [
        ((-2.9, 0.0, 0.0), True),
        ((-3.7, 0.0, 0.0), False),
        ((4.6, 0.0, 0.0), False),
        ((0.0, 2.6, 0.0), True),
        ((0.0, 4.0, 0.0), False),
        ((0.0, 0.0, 4.0), False),
    ],
)
def test_a_thing_dropped_far_outside_stays_where_it_was(shift: tuple[float, float, float], goes: bool) -> None:
    session = opened(OUTSIDE)
    if goes:
        session.move("parts[bench]", shift, 0, 1.0)
        assert not any("outside the trailer" in one.says for one in session.reading.problems)
        return
    with pytest.raises(Refused, match="bench would lie outside the trailer by more than a metre"):
        session.move("parts[bench]", shift, 0, 1.0)
    assert (session.text, session.depth) == (OUTSIDE, (0, 0))


def test_a_thing_far_outside_may_come_back_inward_and_go_no_further_out() -> None:
    session = opened(OUTSIDE.replace("mug: {x: 90", "mug: {x: 900"))
    with pytest.raises(Refused, match="mug would lie outside"):
        session.move("parts[mug]", (0.5, 0.0, 0.0), 0, 1.0)
    session.move("parts[mug]", (-0.5, 0.0, 0.0), 0, 1.0)
    session.move("parts[mug]", (0.0, 0.3, 0.0), session.rev, 1.0)


def test_what_rides_in_a_thing_is_not_taken_far_outside_with_it() -> None:
    session = opened(OUTSIDE.replace("side: +4, z: +1", "side: +4, z: +40"))
    assert not any("outside the trailer" in one.says for one in session.reading.problems)
    with pytest.raises(Refused, match="crate would lie outside"):
        session.move("parts[bench]", (0.0, 0.0, 2.8), 0, 1.0)
    session.move("parts[bench]", (0.0, 0.0, 2.0), 0, 1.0)


SET_DOWN = OUTSIDE.replace(
    "mug: {x: 90, side: left+4, z: floor, size: 6 x 6 x 6, weight: 1,",
    "mug: {x: 90, side: left-100, z: -20, size: 6 x 6 x 6, weight: 1, kind: cargo,",
).replace("road: {cargo: all,", "camp: {cargo: all, for: [sleep]}\n  road: {cargo: all, out: mug,")


def test_what_is_set_down_beside_the_trailer_is_moved_there_and_is_not_lifted_up_there() -> None:
    session = opened(SET_DOWN)
    assert not any("outside the trailer" in one.says for one in session.reading.problems)
    session.move("parts[mug]", (0.0, -1.0, 0.0), 0, 1.0)
    with pytest.raises(Refused, match="mug would lie outside the trailer"):
        session.move("parts[mug]", (0.0, 0.0, 1.0), session.rev, 1.0)  # then it no longer stands on the ground
