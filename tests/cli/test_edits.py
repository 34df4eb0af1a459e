"""``try`` and ``set``: an edit in memory, an edit on disk, and every edit that is refused in words."""

from __future__ import annotations

import json
import os
import re
from pathlib import Path

import pytest

from boxwright.cli import main
from boxwright.cli.edits import edited
from boxwright.cli.meaning import bare_numbers
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.saving import saved
from boxwright.rig.compose import read_rig
from boxwright.rig.splice import tree_at
from tests.study.demo import CLEAN, RIGS

REFUSED = 3


@pytest.fixture
def rig(tmp_path: Path) -> Path:
    """Return a rig file of its own for one test."""
    path = tmp_path / "rig.yaml"
    path.write_bytes(CLEAN.encode())
    return path


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = main([str(word) for word in words])
    shown = capsys.readouterr()
    return code, shown.out, shown.err


def new_value(typed: str, path: str, text: str = CLEAN) -> object:
    return tree_at(edited(read_rig(text), [typed]).reading.document, path)


@pytest.mark.parametrize(
    ("typed", "path", "value"),
    [
        ("chest.x=84", "parts[chest].x", "84"),
        ("parts[chest].x=84", "parts[chest].x", "84"),
        ("chest.x+6in", "parts[chest].x", "66"),
        ("chest.x + 6", "parts[chest].x", "66"),
        ("chest.x-1ft", "parts[chest].x", "48"),
        ("chest.x+25.4 mm", "parts[chest].x", "61"),
        ("chest.side-4", "parts[chest].side", "centre-14"),
        ("can.side+1/2", "parts[can].side", "left+9 1/2"),
        ("alarm.weight=about 2", "parts[alarm].weight", "about 2"),
        ("chest.note=tools, mostly: blunt", "parts[chest].note", "tools, mostly: blunt"),
        ("loads[road].tanks.can=empty", "loads[road].tanks.can", "empty"),
        ("trailer.gvwr=6800", "trailer.gvwr", "6800"),
    ],
)
def test_an_edit_is_understood(typed: str, path: str, value: str) -> None:
    # A foot is 12 in and an inch 25.4 mm, exact by definition (international yard of 1959, from memory).
    assert new_value(typed, path) == value


def test_a_place_relative_to_another_part_stays_relative() -> None:
    cup = "  cup: {rides_on: chest, x: +3, side: +0, z: +20, weight: 1, stage: shell}\n"
    text = CLEAN.replace("  shelf: {", cup + "  shelf: {")
    assert new_value("cup.x+2", "parts[cup].x", text) == "+5"


def test_a_place_moved_to_before_another_part_stays_relative_to_it() -> None:
    cup = "  cup: {rides_on: chest, x: +3, side: +0, z: +20, size: 4 x 4 x 4, weight: 1, stage: shell}\n"
    text = CLEAN.replace("  shelf: {", cup + "  shelf: {")
    assert new_value("cup.x-5", "parts[cup].x", text) == "+-2"
    made = edited(read_rig(text), ["cup.x-5"]).reading
    places = {item.name: item.place for item in made.rig.parts}
    assert places["chest"].low_edge(0).best - places["cup"].low_edge(0).best == pytest.approx(2 * 0.0254)


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("chst.x+6", 'did you mean "chest.x"?'),
        ("chest.x+six", 'cannot read the length "six"'),
        ("chest.x=", "says no new value"),
        ("chest", "cannot read the edit"),
        ("chest.weight+4", "only a place can be moved by a step"),
        ("bed.tie.wll+3", "only a place"),
        ("chest.z+\x1b[31m6", "cannot read the length"),
        ("chest=5", "which value"),
    ],
)
def test_an_edit_that_cannot_be_made_is_refused_in_words(typed: str, says: str) -> None:
    with pytest.raises(NothingAsked) as caught:
        edited(read_rig(CLEAN), [typed])
    assert says in str(caught.value)
    assert "\x1b" not in str(caught.value)


def test_try_shows_before_and_after_and_touches_nothing(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = rig.read_bytes(), sorted(os.listdir(rig.parent))
    code, out, err = run(capsys, "try", str(rig), "chest.x+24in", "--load", "road")
    assert (code, err) == (2, "")
    # By moments 50 lb moved 24 in rearward take 50 * 24 / 152 = 7.9 lb off the ball (statics, from memory).
    row = next(line for line in out.splitlines() if line.strip().startswith("on the ball"))
    was, now = (int(number) for number in re.findall(r"(\d+)(?: \+- \d+)? lb", row)[:2])
    assert 7 <= was - now <= 9
    assert "parts[chest].x: 60 -> 84" in out
    assert max(map(len, out.splitlines())) <= 80
    assert (rig.read_bytes(), sorted(os.listdir(rig.parent))) == before


def test_try_says_which_finding_comes_and_which_goes(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "try", str(rig), "chest.weight=900", "chest.x=135")
    assert "NEW" in out and "weight/tongue-lifts" in out
    rig.write_text(CLEAN.replace("x: 60, side: centre-10, z: 0, size: 30 x 20 x 20, weight: 50",
                                 "x: 135, side: centre-10, z: 0, size: 30 x 20 x 20, weight: 900"))  # fmt: skip
    _, out, _ = run(capsys, "try", str(rig), "chest.x=60")
    assert "GONE" in out and "pulls its coupling up" in out


def test_set_changes_exactly_the_value_and_keeps_the_text_before(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "set", str(rig), "chest.x+6in", "alarm.weight=2")
    assert (code, err) == (2, "")
    expected = CLEAN.replace("chest: {x: 60,", "chest: {x: 66,").replace("x 5, weight: 1,", "x 5, weight: 2,")
    assert rig.read_bytes() == expected.encode()
    assert rig.with_name("rig.yaml~").read_bytes() == CLEAN.encode()
    assert sorted(os.listdir(rig.parent)) == ["rig.yaml", "rig.yaml~"]
    marked = out.splitlines()
    assert any("- chest: {x: 60" in line for line in marked) and any("+ chest: {x: 66" in line for line in marked)


def test_set_keeps_line_ends_and_byte_order_mark(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rig.write_bytes(b"\xef\xbb\xbf" + CLEAN.replace("\n", "\r\n").encode())
    code, _, err = run(capsys, "set", str(rig), "chest.x=66")
    assert (code, err) == (2, "")
    expected = CLEAN.replace("chest: {x: 60,", "chest: {x: 66,").replace("\n", "\r\n").encode()
    assert rig.read_bytes() == b"\xef\xbb\xbf" + expected


@pytest.mark.parametrize(
    ("old", "new", "edit", "says"),
    [
        ("chest: {x: 60,", "chest: {x: 60, x: 61,", "chest.x=66", "not sound"),
        ("chest: {x: 60,", "chest: {x: 60, [", "chest.x=66", ""),
        ("parts:\n", "parts:\n  - [\n", "chest.x=66", "cannot be read as a whole"),
        ("", "", "chest.x=banana", "nothing was written"),
        ("", "", "chest.x=84}, ghost: {x: 1", ""),
    ],
)
def test_set_refuses_where_the_text_is_or_would_be_damaged(
    rig: Path, capsys: pytest.CaptureFixture[str], old: str, new: str, edit: str, says: str
) -> None:
    text = CLEAN.replace(old, new) if old else CLEAN
    rig.write_text(text)
    code, out, err = run(capsys, "set", str(rig), edit)
    assert code == REFUSED and not out
    assert says in " ".join(err.split())
    assert rig.read_text() == text
    assert os.listdir(rig.parent) == ["rig.yaml"]


def test_a_pipe_is_not_written_into(capsys: pytest.CaptureFixture[str]) -> None:
    for word in ("try", "set"):
        code, _, err = run(capsys, word, "-", "chest.x=1")
        assert code == REFUSED and "pipe" in err


def test_a_file_somebody_else_changed_is_not_written_over(rig: Path) -> None:
    with pytest.raises(NothingAsked, match="in the meantime"):
        saved(str(rig), b"what was read before", "new")
    assert rig.read_bytes() == CLEAN.encode()


def test_a_file_held_open_by_something_is_tried_again(rig: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    tries: list[int] = []
    real = os.replace

    def held(beside: Path, path: Path) -> None:
        tries.append(1)
        if len(tries) < 3:
            raise PermissionError(13, "held open")
        real(beside, path)

    monkeypatch.setattr("boxwright.book.saving.os.replace", held)
    monkeypatch.setattr("boxwright.book.saving.PAUSE", 0.0)
    saved(str(rig), CLEAN.encode(), "new text")
    assert (len(tries), rig.read_text()) == (3, "new text")


def test_a_link_is_written_through(rig: Path, tmp_path: Path) -> None:
    link = tmp_path / "link.yaml"
    link.symlink_to(rig)
    saved(str(link), CLEAN.encode(), "new text")
    assert link.is_symlink() and rig.read_text() == "new text"


def test_the_first_fix_of_check_can_be_typed_and_cures(
    rig: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(rig.parent)
    rig.write_text(CLEAN.replace("x: 60, side: centre-10, z: 0, size: 30 x 20 x 20, weight: 50",
                                 "x: 135, side: centre-10, z: 0, size: 30 x 20 x 20, weight: 900"))  # fmt: skip
    _, out, _ = run(capsys, "check", rig.name, "--all")
    assert "Stop" in out and "Move chest" in out
    command = " ".join(out.split()).partition(f"boxwright try {rig.name} ")[2].partition('"')[2].partition('"')[0]
    assert command.startswith("chest.x=")
    run(capsys, "set", rig.name, command)
    _, out, _ = run(capsys, "check", rig.name, "--all")
    assert "pulls its coupling up" not in out


def test_an_edit_of_a_demo_rig_fits_the_page(capsys: pytest.CaptureFixture[str]) -> None:
    _, out, err = run(capsys, "try", str(RIGS / "whimbrel.yaml"), "bunk.x+6in", "boat.side-2")
    assert not err and max(map(len, out.splitlines())) <= 80
    assert "planned at stage finish" in out


def test_a_stage_that_is_over_is_checked_like_any_other() -> None:
    for stage in ("safe", "foam", "finish"):
        words = ["check", str(RIGS / "whimbrel.yaml"), "--stage", stage, "--load", "departure"]
        assert main(words) == 2


def test_the_answer_is_for_the_vehicle_that_is_asked_for(capsys: pytest.CaptureFixture[str]) -> None:
    words = ["check", str(RIGS / "whimbrel.yaml"), "--stage", "finish", "--load", "departure", "--all"]

    def on_the_road() -> str:
        return capsys.readouterr().out.partition("FINDINGS  TOW")[2].partition("FINDINGS  ")[0]

    assert main([*words, "--vehicle", "borrowed"]) == 2
    assert "Stop " in on_the_road()
    assert main(words) == 2
    found = on_the_road()
    assert "Unknown " in found and "Stop " not in found
    assert main([*words, "--vehicle", "borowed"]) == 3
    assert "borrowed" in capsys.readouterr().err


def test_the_walk_round_is_one_page_and_names_what_stands_against_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["towing", str(RIGS / "dunlin.yaml"), "--walk", "--load", "home-poor"]) == 2
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == "WALK ROUND BEFORE THE ROAD"
    assert len(lines) <= 66, "more than one sheet at 6 lines to the inch on 11 in"
    assert sum("[ ]" in line for line in lines) == 15
    assert any("NO: the gross weight, without brakes" in line for line in lines)


def test_a_remedy_is_in_the_answer_for_machines(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rig.write_text(CLEAN.replace("chest: {x: 60,", "chest: {x: 136,").replace("weight: 50,", "weight: 900,"))
    main(["check", str(rig), "--json"])
    found = json.loads(capsys.readouterr().out)["findings"]
    assert any("chest" in one["remedy"] for one in found if one["kind"] in {"stop", "limit"}), found


def test_another_unit_in_the_header_is_refused_unless_it_is_meant(
    rig: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = rig.read_bytes()
    for word in ("try", "set"):
        code, _, err = run(capsys, word, str(rig), "units.length=mm")
        says = " ".join(err.split())
        assert code == REFUSED and rig.read_bytes() == before
        assert "trailer.body.length is 168 in now, and would be 168 mm" in says and "--anyway" in says
        count = re.search(r"none of the (\d+) bare numbers", says)
        assert count is not None
        assert int(count[1]) == len(bare_numbers(read_rig(CLEAN), "length"))
    code, out, _ = run(capsys, "set", str(rig), "units.length=mm", "--anyway")
    assert code != REFUSED and "would be 168 mm" in " ".join(out.split())
    assert b"length: mm" in rig.read_bytes()


def test_bare_numbers_are_those_that_take_their_unit_from_the_header() -> None:
    assert bare_numbers(read_rig(CLEAN), "volume") == ["parts[can].tank.volume"]
    with_unit = read_rig(CLEAN.replace("volume: 5}", "volume: 5 gal}"))
    assert bare_numbers(with_unit, "volume") == []
    one_more = read_rig(CLEAN.replace("  can: {x: 66", "  box: {x: 66, side: left, z: 10 mm}\n  can: {x: 66"))
    assert len(bare_numbers(one_more, "length")) == len(bare_numbers(read_rig(CLEAN), "length")) + 1
    weights = bare_numbers(read_rig(CLEAN), "weight")
    assert {"people[owner].weight", "trailer.gvwr", "parts[bed].weight"} <= set(weights)
    assert "trailer.tyres.date" not in weights and "tow[pickup].overhang" not in weights


@pytest.mark.parametrize("typed", ["units.length=in", "units.weight=lb", "trailer.gvwr=6900", "units.temperature=F"])
def test_what_changes_no_meaning_needs_no_word(typed: str, rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "try", str(rig), typed)[0] != REFUSED


def test_another_home_makes_another_gallon(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, "try", str(rig), "countries=[UK]")
    assert code == REFUSED
    code, _, err = run(capsys, "set", str(rig), "countries[0]=UK")
    assert code == REFUSED and "parts[can].tank.volume" in " ".join(err.split())
