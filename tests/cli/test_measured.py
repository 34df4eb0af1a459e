"""``measured``: a reading entered from the command line, what it says beside the plan, and what is refused."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

import pytest

from boxwright.cli import main
from boxwright.cli.asked import Answered, Question, answered
from boxwright.cli.measuring import Told, entered, entries_of
from boxwright.cli.rig_file import NothingAsked
from boxwright.rig.compose import Reading, read_rig
from tests.cli.by_hand import POUND
from tests.study.demo import RIGS

REFUSED = 3
TODAY = "2026-05-02"
OPTIONS = {"--with": "instrument", "--within": "within", "--stage": "stage", "--load": "load", "--note": "note",
           "--photo": "photo", "--date": "on"}  # fmt: skip


@pytest.fixture
def rig(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a copy of a demo rig for one test; its own date is 2026-05-02."""
    monkeypatch.chdir(tmp_path)  # a long path is wrapped at 80 columns, and a command is looked for in one piece
    path = Path("whimbrel.yaml")
    path.write_bytes((RIGS / "whimbrel.yaml").read_bytes())
    return path


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    code = main([str(word) for word in words])
    shown = capsys.readouterr()
    return code, " ".join(shown.out.split()), " ".join(shown.err.split())


@cache
def held(on: str) -> Answered:
    """Return what is answered of the demo rig, before anything is read on some day."""
    return answered(Question(str(RIGS / "whimbrel.yaml"), on=on), date(2026, 5, 2))


def read(words: list[str]) -> tuple[Reading, Reading]:
    """Return the demo rig before and after a reading, from the words of a command line with its options."""
    typed, options = list(words), dict[str, str]()
    for option, name in OPTIONS.items():
        if option in typed:
            at = typed.index(option)
            options[name] = typed[at + 1]
            del typed[at : at + 2]
    before = held(options.pop("on", ""))
    return before.reading, entered(before.reading, entries_of(before, typed, Told(**options))).reading


def new_lines(text: str) -> list[str]:
    """Return the lines a text has now and the demo has not; asserts that every other line is as it was."""
    before, after = (RIGS / "whimbrel.yaml").read_text().splitlines(), text.splitlines()
    kept = [line for line in after if line in before]
    assert kept == before
    return [line.strip() for line in after if line not in before]


@pytest.mark.parametrize(
    ("words", "lines"),
    [
        (
            ["studs", "left", "7=112", "1/2", "8=128 1/16", "--with", "tape", "--within", "1/8"],
            [f"studs-left-2:  {{date: {TODAY}, what: tape, studs: left, values: {{7: 112 1/2, 8: 128 1/16}},"
             " within: 1/8}"],
        ),
        (
            ["studs", "left", "L3=removed", "4=64"],
            [f"studs-left-2:  {{date: {TODAY}, what: tape, studs: left, values: {{4: 64}}}}",
             f"studs-left-seen: {{date: {TODAY}, what: seen, studs: left, values: {{3: removed}}}}"],
        ),
        (
            ["part", "boat=112", "deck-chairs=9 1/2 each", "--with", "luggage scale"],
            [f"boat-scale-2:  {{date: {TODAY}, what: scale, with: luggage scale, part: boat, weight: 112}}",
             f"deck-chairs-scale: {{date: {TODAY}, what: scale, with: luggage scale, part: deck-chairs,"
             " weight: 9 1/2 each}"],
        ),
        (
            ["ticket", "axles=1725", "tongue=240", "--stage", "measure", "--note", "wind, rain", "--within", "20"],
            [f"ticket:        {{date: {TODAY}, what: ticket, stage: measure, axles: 1725, tongue: 240, within: 20,"
             ' note: "wind, rain"}'],
        ),
        (
            ["ticket", "axles=900,910", "tongue=240", "--load", "departure"],
            [f"ticket:        {{date: {TODAY}, what: ticket, stage: liners, load: departure, axles: [900, 910],"
             " tongue: 240}"],
        ),
        (
            ["plank", "reading=62", "to_scale=48", "to_ball=12"],
            [f"tongue-plank:  {{date: {TODAY}, what: plank, stage: liners, plank: {{reading: 62, to_scale: 48,"
             " to_ball: 12}}"],
        ),
        (
            ["opening", "side-door", "front=16 5/8", "rear=47 5/8", "--photo", "12", "--date", "2026-01-19"],
            ["side-door-tape: {date: 2026-01-19, what: tape, opening: side-door, values: {front: 16 5/8,"
             " rear: 47 5/8}, photo: 12}"],
        ),
        (
            ["body", "length=167 7/8", "diagonal-1=186"],
            [f"box-inside:    {{date: {TODAY}, what: tape, body: inside, values: {{length: 167 7/8,"
             " diagonal-1: 186}}"],
        ),
        (["bows", "1=16 1/8"], [f"bows:          {{date: {TODAY}, what: tape, bows: roof, values: {{1: 16 1/8}}}}"]),
        (
            ["cross-members", "0=2"],
            [f"cross-members: {{date: {TODAY}, what: tape, cross_members: floor, values: {{0: 2}}}}"],
        ),
        (
            ["moisture", "at=floor x160 right", "wood=21 %"],
            [f"moisture:      {{date: {TODAY}, what: moisture, at: floor x160 right, wood: 21 %}}"],
        ),
    ],
    ids=lambda one: one[0] if isinstance(one, list) else "",
)  # fmt: skip
def test_a_reading_becomes_a_new_line_and_every_older_one_stays(words: list[str], lines: list[str]) -> None:
    before, after = read(words)
    assert new_lines(after.document.text) == lines
    assert after.problems == before.problems


def test_it_is_written_into_the_file(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    words = ["studs", "left", "7=112", "1/2", "8=128 1/16", "--with", "tape", "--within", "1/8"]
    _, _, err = run(capsys, "measured", str(rig), *words)
    assert not err
    line = (
        f"studs-left-2:  {{date: {TODAY}, what: tape, studs: left, values: {{7: 112 1/2, 8: 128 1/16}}, within: 1/8}}"
    )
    assert new_lines(rig.read_text()) == [line]


def test_try_shows_and_writes_nothing(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = rig.read_bytes()
    _, out, err = run(capsys, "measured", str(rig), "studs", "left", "7=112 1/2", "--try")
    assert not err and rig.read_bytes() == before and not rig.with_name("whimbrel.yaml~").exists()
    # By hand: stud 7 of a wall with studs every 16 in stands at 112 in.
    assert "stud 7 left: 112 1/2 in; held to be 112 in: 1/2 in rearward" in out
    assert "studs-left (2026-01-19) read 112 3/8; both are kept, the newer one counts" in out


def test_a_weight_is_not_adopted_by_itself(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "measured", str(rig), "part", "bunk=150", "--with", "luggage scale")
    now = read_rig(rig.read_bytes()).rig
    bunk = next(item for item in now.parts if item.name == "bunk")
    assert bunk.mass.best == pytest.approx(144 * POUND)
    assert f"to go on with it: boxwright set {rig} bunk.weight=150 bunk.how=weighed" in out
    assert "6 lb heavier" in out
    run(capsys, "set", str(rig), "bunk.weight=150", "bunk.how=weighed")
    bunk = next(item for item in read_rig(rig.read_bytes()).rig.parts if item.name == "bunk")
    assert bunk.mass.best == pytest.approx(150 * POUND)


def test_a_part_whose_weight_is_its_reading_takes_the_new_one_and_nothing_is_offered(
    rig: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    _, out, _ = run(capsys, "measured", str(rig), "part", "boat=118")
    assert "boat-scale (2026-03-30) read 112; both are kept" in out and "to go on with it" not in out
    boat = next(item for item in read_rig(rig.read_bytes()).rig.parts if item.name == "boat")
    assert boat.mass.best == pytest.approx(118 * POUND)


def test_a_reading_counts_at_once_where_the_line_says_unknown(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "measured", str(rig), "part", "deck-chairs=19")
    chairs = next(item for item in read_rig(rig.read_bytes()).rig.parts if item.name == "deck-chairs")
    assert chairs.mass.known and chairs.mass.best == pytest.approx(19 * POUND)
    assert "deck-chairs.weight=19" not in out


def test_the_edges_of_an_opening_are_held_beside_the_plan(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    _, out, _ = run(capsys, "measured", str(rig), "opening", "side-door", "front=16 5/8", "rear=47 1/2", "--try")
    assert "side-door front: 16 5/8 in; held to be 16 1/2 in: 1/8 in rearward" in out
    assert "side-door rear: 47 1/2 in; held to be 47 1/2 in, as read" in out
    assert '"side-door.as_built.x=16 5/8"' in out
    # By hand: the ramp is 74 in wide in the middle of 80 in between the studs, so it begins 3 in from the left wall.
    _, out, _ = run(capsys, "measured", str(rig), "opening", "ramp", "left=3", "right=77", "--try")
    assert "ramp left: 3 in; held to be 3 in, as read" in out
    assert "ramp right: 77 in; held to be 77 in, as read" in out


def test_a_ticket_stands_beside_what_was_worked_out(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    words = ("measured", str(rig), "ticket", "axles=2500", "tongue=300", "--load", "departure")
    _, out, _ = run(capsys, *words)
    assert "BESIDE WHAT WAS WORKED OUT ticket: axles, stage liners, load departure worked out" in out


def test_the_stage_of_a_ticket_of_another_day_is_asked(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, _, err = run(capsys, "measured", str(rig), "ticket", "axles=1725", "--date", "2026-01-18")
    assert code == REFUSED and "--stage measure" in err


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["stud", "left", "7=112"], 'did you mean "studs"'),
        (["weather", "7=112"], "write one of ticket"),
        (["studs", "left"], "says no value"),
        (["studs", "lefft", "7=112"], 'did you mean "left"'),
        (["studs", "left", "seven=112"], "count from 0"),
        (["studs", "left", "7="], "says no value"),
        (["studs", "left", "7=112", "7=113"], "typed twice"),
        (["studs", "left", "7=a lot"], "cannot read the length"),
        (["studs", "left", "7=unknown"], "no reading"),
        (["part", "bote=112"], 'did you mean "boat"'),
        (["part", "boat=8 stone"], 'cannot read the mass "8 stone"'),
        (["part", "boat=-8"], "below zero"),
        (["ticket", "axels=1725"], 'did you mean "axles"'),
        (["ticket", "empty", "axles=1725"], '"empty" stands between'),
        (["plank", "reading=62"], "lacks to_scale, to_ball"),
        (["opening", "side-doors", "front=16"], 'did you mean "side-door"'),
        (["opening", "side-door", "fornt=16"], 'did you mean "front"'),
        (["body", "length-middle=168"], "place of the length"),
        (["moisture", "wood=21 %"], "say where"),
        (["ticket", "hitched=1,2", "--stage", "measure"], "nothing was entered"),
        (["ticket", "axles=1725", "--stage", "mesure"], 'did you mean "measure"'),
        (["ticket", "axles=1725", "--within", "much"], "nothing was entered"),
        (["part", "boat=112", "--note", "a\x00b"], "cannot be shown"),
    ],
    ids=" ".join,
)
def test_what_cannot_be_read_is_refused_in_words(words: list[str], says: str) -> None:
    with pytest.raises(NothingAsked) as caught:
        read(words)
    assert says in str(caught.value)
