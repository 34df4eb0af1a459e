"""An open rig beside its file: when it is written, when both are joined, when the owner is asked."""

from __future__ import annotations

import os
from datetime import date
from pathlib import Path

import pytest

from boxwright.web import desk as desk_module
from boxwright.web.contract import TextChange, Typed
from boxwright.web.desk import RETRY, WAIT, Desk
from boxwright.web.gestures import Refused
from boxwright.web.keeping import CannotKeep, ChangedMeanwhile, hash_of

TODAY = date(2026, 11, 28)
RESTED = WAIT + 0.01
TEXT = """\
boxwright: 1
rig: Desk
units: {length: in, weight: lb}
stages: {all: {what: everything}}
parts:
  bench: {x: 40, side: left+1, z: floor, size: 30 x 20 x 18, weight: 30, stage: all}
  # a line between
  # and another
  crate: {x: 90, side: left+4, z: floor, size: 6 x 6 x 6, weight: 5, stage: all}
"""


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "rig.yaml"
    path.write_bytes(TEXT.encode())
    return path


def changed(desk: Desk, path: str, value: str, at: float) -> None:
    """Make a change as a page does."""
    desk.must_take()
    desk.session.set(path, value, desk.session.rev, at)
    desk.touched(at)


def with_weights(bench: str = "30", crate: str = "5") -> str:
    return TEXT.replace("weight: 30", f"weight: {bench}").replace("weight: 5", f"weight: {crate}")


def kept(desk: Desk, at: float) -> None:
    """Do what the loop does when the file is due."""
    assert desk.is_due(at)
    desk.look(at)
    if desk.is_due(at):
        desk.write()


def test_a_change_is_written_when_the_hand_rests(file: Path) -> None:
    desk = Desk(file, TODAY)
    assert desk.told().state == "step"
    changed(desk, "parts[bench].weight", "31", 10.0)
    assert desk.told().state == "dirty"
    assert not desk.is_due(10.0 + WAIT - 0.01)
    changed(desk, "parts[bench].weight", "32", 10.3)
    assert not desk.is_due(10.5)
    kept(desk, 10.3 + RESTED)
    assert file.read_text() == with_weights("32")
    assert desk.told().state == "step"


def test_a_change_taken_back_before_it_is_written_writes_nothing(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)
    desk.session.undo()
    desk.touched(1.1)
    assert desk.told().state == "step"
    assert not desk.is_due(100.0)


def test_a_session_that_ends_at_once_loses_no_change(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)  # and no more is heard of it
    again = Desk(file, TODAY)
    assert again.session.text == TEXT
    assert again.left == with_weights("31")
    again.recover(True, 0.0)
    assert again.session.text == with_weights("31")
    kept(again, RESTED)
    assert file.read_text() == with_weights("31")
    again.session.undo()
    assert again.session.text == TEXT
    with pytest.raises(Refused):
        again.recover(True, 0.0)


def test_what_was_left_can_be_left(file: Path) -> None:
    changed(Desk(file, TODAY), "parts[bench].weight", "31", 1.0)
    again = Desk(file, TODAY)
    assert again.recover(False, 0.0) is None
    assert again.told().state == "step"
    assert Desk(file, TODAY).left is None
    assert with_weights("31") in {one.read_text() for one in (file.parent / ".boxwright/past").iterdir()}


def test_a_text_that_does_not_read_is_kept_beside_the_file(file: Path) -> None:
    desk = Desk(file, TODAY)
    end = len(TEXT)
    desk.session.type([TextChange(start=end, end=end, insert='  lid: {x: "4\n')], 0, 1.0)
    desk.touched(1.0)
    kept(desk, 1.0 + RESTED)
    assert desk.told().state == "broken"
    assert file.read_text() == TEXT
    assert Desk(file, TODAY).left == TEXT + '  lid: {x: "4\n'
    desk.session.undo()
    desk.touched(3.0)
    assert desk.told().state == "step"


def test_a_change_on_the_disk_is_taken_over_as_one_step(file: Path) -> None:
    desk = Desk(file, TODAY)
    file.write_text(with_weights("44"))
    told, change = desk.look(1.0)
    assert told is not None and told.state == "step"
    assert change is not None and (change.old, change.new) == ("30", "44")
    desk.session.undo()
    desk.touched(2.0)
    assert desk.session.text == TEXT
    kept(desk, 2.0 + RESTED)
    assert file.read_text() == TEXT


def test_changes_of_different_lines_are_joined(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)
    file.write_text(with_weights(crate="9"))
    kept(desk, 1.0 + RESTED)  # the look joins them, and the joined text rests again before it is written
    assert desk.session.text == with_weights("31", "9")
    kept(desk, 1.0 + 2 * RESTED)
    assert file.read_text() == with_weights("31", "9")


def conflict(file: Path) -> Desk:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)
    file.write_text(with_weights("44"))
    told, change = desk.look(1.1)
    assert change is None
    assert told is not None and told.state == "conflict"
    assert told.text == with_weights("44")
    assert told.hash == hash_of(with_weights("44").encode())
    return desk


def test_changes_of_the_same_line_are_a_conflict_and_nothing_is_written(file: Path) -> None:
    desk = conflict(file)
    changed(desk, "parts[bench].weight", "33", 2.0)
    assert not desk.is_due(100.0)
    assert file.read_text() == with_weights("44")
    assert desk.session.text == with_weights("33")
    assert Desk(file, TODAY).left == with_weights("33")


@pytest.mark.parametrize("wanted", [with_weights("31"), with_weights("44"), with_weights("40")])
def test_a_conflict_ends_with_the_text_that_is_wanted(file: Path, wanted: str) -> None:
    desk = conflict(file)
    told = desk.told()
    desk.resolve(wanted, told.hash, 3.0)
    desk.write()
    assert desk.told().state == "step"
    assert file.read_text() == wanted
    kept_texts = {one.read_text() for one in (file.parent / ".boxwright/past").iterdir()}
    assert with_weights("44") in kept_texts


def test_a_third_change_starts_the_choice_over(file: Path) -> None:
    desk = conflict(file)
    stale = desk.told().hash
    file.write_text(with_weights("55"))
    with pytest.raises(ChangedMeanwhile):
        desk.resolve(with_weights("31"), stale, 3.0)
    told = desk.told()
    assert told.state == "conflict"
    assert told.text == with_weights("55")
    assert file.read_text() == with_weights("55")
    desk.resolve(with_weights("31"), told.hash, 4.0)
    desk.write()
    assert file.read_text() == with_weights("31")


def test_a_conflict_is_over_when_the_other_takes_their_change_back(file: Path) -> None:
    desk = conflict(file)
    file.write_text(TEXT)
    told, change = desk.look(2.0)
    assert told is not None and told.state == "dirty"
    assert change is None
    kept(desk, 2.0 + RESTED)
    assert file.read_text() == with_weights("31")


def test_without_a_conflict_there_is_none_to_end(file: Path) -> None:
    desk = Desk(file, TODAY)
    with pytest.raises(Refused):
        desk.resolve(TEXT, desk.told().hash, 1.0)


def test_a_file_that_vanishes_is_told_of_once_and_written_again_when_asked(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)
    file.unlink()
    told, _ = desk.look(1.1)
    assert told is not None and told.state == "gone"
    assert desk.look(1.2) == (None, None)
    changed(desk, "parts[bench].weight", "32", 2.0)
    assert not desk.is_due(100.0)
    assert not file.exists()
    assert desk.write(is_again=True).state == "step"
    assert file.read_text() == with_weights("32")


def test_a_file_that_comes_back_is_taken_up_again(file: Path) -> None:
    desk = Desk(file, TODAY)
    aside = file.rename(file.with_name("aside"))
    desk.look(1.0)
    changed(desk, "parts[bench].weight", "31", 2.0)
    aside.rename(file)
    told, _ = desk.look(3.0)
    assert told is not None and told.state == "dirty"
    kept(desk, 3.0 + RESTED)
    assert file.read_text() == with_weights("31")


def test_a_file_that_cannot_be_written_is_tried_again_after_a_rest(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)

    def full(text: str, is_again: bool) -> None:
        raise CannotKeep("the disk is full")

    monkeypatch.setattr(desk.keeper, "keep", full)
    desk.look(2.0)
    told = desk.write()
    assert told.state == "stuck"
    assert told.says.startswith("the disk is full. It is tried again") and "beside the file" in told.says
    assert Desk(file, TODAY).left == with_weights("31")
    assert not desk.is_due(2.0 + RETRY - 0.1)
    monkeypatch.undo()
    kept(desk, 2.0 + RETRY)
    assert desk.told().state == "step"
    assert file.read_text() == with_weights("31")


@pytest.mark.parametrize("reason", [PermissionError(13, "Permission denied"), OSError(28, "No space left on device"),
                                    OSError(30, "Read-only file system")])  # fmt: skip
def test_where_nothing_can_be_written_it_is_said_and_the_text_is_held(
    file: Path, monkeypatch: pytest.MonkeyPatch, reason: OSError
) -> None:
    desk = Desk(file, TODAY)
    opening = os.open

    def refusing(path: str, flags: int, *rest: int, **more: int) -> int:
        if flags & (os.O_WRONLY | os.O_RDWR):
            raise reason
        return opening(path, flags, *rest, **more)

    monkeypatch.setattr(os, "open", refusing)
    changed(desk, "parts[bench].weight", "31", 1.0)
    desk.look(2.0)
    told = desk.write()
    assert told.state == "stuck"
    assert str(reason.strerror).lower() in told.says and "save a copy elsewhere" in told.says
    changed(desk, "parts[bench].weight", "32", 3.0)  # work goes on
    assert desk.told().state == "stuck"
    assert file.read_text() == TEXT
    monkeypatch.undo()
    kept(desk, 2.0 + RETRY)
    assert desk.told().state == "step"
    assert file.read_text() == with_weights("32")


def test_a_file_that_cannot_be_written_again_is_said_to_be_gone_and_why(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = Desk(file, TODAY)
    file.unlink()
    desk.look(1.0)

    def refusing(path: str, *rest: int, **more: int) -> int:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "open", refusing)
    told = desk.write(is_again=True)
    assert told.state == "gone" and "permission denied" in told.says
    monkeypatch.undo()
    assert desk.write(is_again=True).state == "step"
    assert file.read_text() == TEXT


def test_a_file_of_another_encoding_is_shown_and_not_changed(tmp_path: Path) -> None:
    file = tmp_path / "rig.yaml"
    file.write_bytes(TEXT.replace("Desk", "Café").encode("latin-1"))
    desk = Desk(file, TODAY)
    assert desk.told().state == "read-only"
    with pytest.raises(Refused, match="UTF-8"):
        changed(desk, "parts[bench].weight", "31", 1.0)
    file.write_bytes(TEXT.encode("latin-1"))
    told, change = desk.look(2.0)
    assert change is not None
    assert told is not None and told.state == "read-only"


def test_a_file_somebody_turned_into_no_text_is_a_conflict(file: Path) -> None:
    desk = Desk(file, TODAY)
    file.write_bytes(b"\xff\xfe\x00")
    told, change = desk.look(1.0)
    assert change is None
    assert told is not None and told.state == "conflict"
    assert desk.session.text == TEXT


def test_a_file_with_line_ends_of_two_characters_keeps_them(tmp_path: Path) -> None:
    file = tmp_path / "rig.yaml"
    file.write_bytes(TEXT.replace("\n", "\r\n").encode())
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)
    file.write_bytes(with_weights("44").replace("\n", "\r\n").encode())
    desk.look(1.1)
    told = desk.told()
    assert told.state == "conflict"
    assert told.text is not None and "\r" not in told.text
    desk.resolve(with_weights("50"), told.hash, 2.0)
    desk.write()
    assert file.read_bytes() == with_weights("50").replace("\n", "\r\n").encode()


def test_a_very_long_file_is_judged_but_changed_elsewhere(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(desk_module, "MOST_TEXT", len(TEXT) - 1)
    desk = Desk(file, TODAY)
    assert len(desk.session.reading.rig.parts) == 2
    with pytest.raises(Refused, match="1 MB"):
        desk.must_not_grow(1)
    desk.must_not_grow(-1)
    desk.must_not_grow(0)


def put_in(text: str, before: str, typed: str) -> TextChange:
    """Return what an editor sends where something is typed before a stretch of text."""
    at = text.index(before)
    return TextChange(start=at, end=at, insert=typed)


def after(text: str, change: TextChange) -> str:
    return text[: change.start] + change.insert + text[change.end :]


SENT = put_in(TEXT, ", stage: all}\n  #", "1")
ONCE = after(TEXT, SENT)
WAITS = put_in(ONCE, ", stage: all}\n  #", "2")
TWICE = after(ONCE, WAITS)


@pytest.mark.parametrize("has_come_in", [False, True])
@pytest.mark.parametrize("is_known_by_rev", [False, True])
def test_what_was_typed_and_not_answered_is_taken_up_once(file: Path, has_come_in: bool, is_known_by_rev: bool) -> None:
    desk = Desk(file, TODAY)
    if has_come_in:
        desk.session.type([SENT], 0, 1.0)
    typed = Typed(base=0, known=None if is_known_by_rev else TEXT, under=[SENT], waits=[WAITS])
    for _ in range(3):  # said again and again, it is taken up once
        desk.rejoined(typed, 2.0)
    assert desk.session.text == TWICE
    assert desk.left is None
    kept(desk, 2.0 + RESTED)
    assert file.read_text() == TWICE


def test_what_was_typed_is_joined_with_what_others_did_elsewhere(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[crate].weight", "9", 1.0)
    desk.rejoined(Typed(known=TEXT, under=[SENT], waits=[WAITS]), 2.0)
    assert desk.session.text == with_weights("3012", "9")
    desk.session.undo()
    assert desk.session.text == with_weights("30", "9")


def test_what_was_typed_in_a_line_that_was_changed_is_kept_for_its_owner(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "44", 1.0)
    assert desk.rejoined(Typed(known=TEXT, under=[SENT], waits=[WAITS]), 2.0) is None
    assert desk.session.text == with_weights("44")
    assert desk.left == TWICE
    kept(desk, 2.0 + RESTED)
    again = Desk(file, TODAY)  # and it outlives the program
    assert again.left == TWICE
    with pytest.raises(Refused, match="look at both first"):
        again.recover(True, 3.0)
    again.recover(True, 3.0, TWICE, again.session.rev)
    assert again.session.text == TWICE
    again.session.undo()
    assert again.session.text == with_weights("44")


def test_typing_goes_on_from_what_a_killed_program_left(file: Path) -> None:
    first = Desk(file, TODAY)
    first.session.type([SENT], 0, 1.0)
    first.touched(1.0)  # and no more is heard of it
    again = Desk(file, TODAY)
    assert again.left == ONCE
    again.rejoined(Typed(known=TEXT, under=[SENT], waits=[WAITS]), 2.0)
    assert again.left == TWICE
    assert again.session.text == TEXT


def test_typing_counts_as_an_editor_does(tmp_path: Path) -> None:
    file = tmp_path / "rig.yaml"
    text = TEXT.replace("Desk", "\U0001f6fb desk").replace("\n", "\r\n")
    file.write_bytes(text.encode())
    shown = text.replace("\r\n", "\n")
    at = len(shown[: shown.index(", stage: all}\n  #")].encode("utf-16-le")) // 2
    waits = [TextChange(start=at, end=at, insert="7\n  ")]
    desk = Desk(file, TODAY)
    desk.rejoined(Typed(base=0, under=[], waits=waits), 1.0)
    assert desk.session.text == text.replace("weight: 30", "weight: 307\r\n  ")


def test_an_earlier_text_is_brought_back_as_one_step(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)
    kept(desk, 1.0 + RESTED)
    changed(desk, "parts[crate].weight", "9", 3.0)
    kept(desk, 3.0 + RESTED)
    oldest = desk.keeper.past.every()[0]
    desk.bring_back(oldest.name, 5.0)
    desk.touched(5.0)
    assert desk.session.text == TEXT
    kept(desk, 5.0 + RESTED)
    assert file.read_text() == TEXT
    desk.session.undo()
    assert desk.session.text == with_weights("31", "9")
    with pytest.raises(Refused, match="not kept"):
        desk.bring_back("../rig.yaml", 6.0)


def test_what_is_changed_while_the_text_is_put_down_is_put_down_next(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)
    put = desk.begun()
    changed(desk, "parts[bench].weight", "32", 2.0)
    assert not desk.is_due(100.0)
    failed = desk.put(put)
    assert desk.look(2.1) == (None, None)  # what stands there is our own
    assert Desk(file, TODAY).left == with_weights("32")
    assert desk.ended(put, failed).state == "dirty"
    kept(desk, 2.0 + RESTED)
    assert file.read_text() == with_weights("32")


def test_a_newer_text_is_not_lost_to_one_that_could_not_be_put_down(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    desk = Desk(file, TODAY)

    def full(text: str, is_again: bool) -> None:
        raise CannotKeep("the disk is full")

    monkeypatch.setattr(desk.keeper, "keep", full)
    changed(desk, "parts[bench].weight", "31", 1.0)
    put = desk.begun()
    changed(desk, "parts[bench].weight", "32", 1.1)
    desk.ended(put, desk.put(put))
    assert Desk(file, TODAY).left == with_weights("32")


def test_a_change_taken_back_while_it_is_put_down_is_taken_back_on_the_disk_too(file: Path) -> None:
    desk = Desk(file, TODAY)
    changed(desk, "parts[bench].weight", "31", 1.0)
    put = desk.begun()
    desk.session.undo()
    desk.touched(1.1)
    desk.ended(put, desk.put(put))
    assert file.read_text() == with_weights("31")
    assert Desk(file, TODAY).left == TEXT
    kept(desk, 1.1 + RESTED)
    assert file.read_text() == TEXT
