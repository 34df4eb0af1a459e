"""The page of a night with a logger: what is measured, what was worked out beside it, and the nights by both."""

from __future__ import annotations

import json
import re
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest

from boxwright.cli import logged_page
from boxwright.cli.asked import Answered, Question, answered
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import text_of
from boxwright.cli.warm import in_words
from tests.disciplines.heat.nights import HOUR, RoomOfTwo, night_of_two

RIG = Path(__file__).parents[2] / "rigs" / "whimbrel.yaml"
BTU_PER_HOUR_AND_F = 5.678263 * 9.290304e-2
"""W/K, by the U value and the square foot printed in NIST SP 811 (from memory)."""


@pytest.fixture(scope="module")
def whimbrel() -> Answered:
    return answered(Question(str(RIG), "finish", "", "sleep"), date(2026, 5, 2))


def written(folder: Path, loss: float, has_heat: bool = True) -> str:
    """Write the night of a room that loses so much, and return its path."""
    night = night_of_two(lambda second: 30.0 * loss if second < 6.0 * HOUR else 0.0, RoomOfTwo(loss))
    begin = datetime(2026, 1, 5, 20)
    rows = [
        f"{begin + timedelta(seconds=when)},{warm - 273.15:.2f},{cold - 273.15:.2f},{heat:.0f}"
        for when, warm, cold, heat in zip(night.times, night.inside, night.outside, night.heat, strict=True)
    ]
    rows.insert(0, "time,inside (C),outside (C),heat (W)")
    path = folder / "night.csv"
    path.write_text("\n".join(one if has_heat else one.rpartition(",")[0] for one in rows) + "\n", encoding="utf-8")
    return str(path)


def said(told: logged_page.Told, answer: Answered) -> str:
    return " ".join(" ".join(text_of(line).split()) for line in logged_page.lines(told, answer.units, 200))


def test_what_was_measured_stands_beside_what_was_worked_out_and_the_nights_go_by_it(
    whimbrel: Answered, tmp_path: Path
) -> None:
    told = said(logged_page.worked(whimbrel, written(tmp_path, 50.0), ""), whimbrel)
    assert "night.csv: 73 readings in 12 h. The room loses" in told
    measured = re.search(r"loses (\d+) Btu/h per F \((\d+) to (\d+)\), air counted in", told)
    assert measured
    best, low, high = (float(one) * BTU_PER_HOUR_AND_F for one in measured.groups())
    assert best == pytest.approx(50.0, rel=0.05) and low < 50.0 < high
    assert "the trailer as planned at stage finish" in told and "Both can be true." in told
    assert "the room is no one mass. It is shown, and not used." in told
    assert "Sand Point AK, 12 F outside with heater: as measured the room comes to" in told
    assert "as worked out 56 F (44 to 62)" in told
    assert "Never a flame that is not vented." in told


@pytest.mark.parametrize(
    ("loss", "says"),
    [(140.0, "It loses more than that can be"), (18.0, "It loses less than that can be")],
)
def test_a_night_that_contradicts_what_was_worked_out_is_told(
    whimbrel: Answered, tmp_path: Path, loss: float, says: str
) -> None:
    assert says in said(logged_page.worked(whimbrel, written(tmp_path, loss), ""), whimbrel)


def test_a_night_without_heat_tells_no_loss(whimbrel: Answered, tmp_path: Path) -> None:
    told = logged_page.worked(whimbrel, written(tmp_path, 50.0, has_heat=False), "0W")
    assert "not what it loses" in said(told, whimbrel)
    assert told.after == ()


def test_programs_get_the_same_in_si(whimbrel: Answered, tmp_path: Path) -> None:
    shown = json.loads(json.dumps(logged_page.as_json(logged_page.worked(whimbrel, written(tmp_path, 50.0), ""))))
    assert shown["how"] == "two slopes" and shown["loss"]["low"] < 50.0 < shown["loss"]["high"]
    assert [one["of"] for one in shown["nights"]] == ["places[Greensboro NC]", "places[Sand Point AK]"]


@pytest.mark.parametrize(
    ("heat", "says"),
    [("warm", "warm"), ("unknown", "no heat that ran"), ("-5 W", "not below zero"), ("", "does not say what")],
)
def test_what_is_no_heat_is_told(whimbrel: Answered, tmp_path: Path, heat: str, says: str) -> None:
    with pytest.raises(NothingAsked, match=says):
        logged_page.worked(whimbrel, written(tmp_path, 50.0, has_heat=False), heat)


def test_what_it_proved_is_offered_kept_and_shown_beside_what_is_computed(tmp_path: Path) -> None:
    rig = tmp_path / "rig.yaml"
    rig.write_bytes(RIG.read_bytes())
    question, day = Question(str(rig), "finish", "", "sleep"), date(2026, 5, 2)
    path = written(tmp_path, 55.0)
    before = answered(question, day)
    told = logged_page.worked(before, path, "")
    offered = said(told, before)
    told_as = r"with \{(date: 2026-05-02, what: logged, stage: finish, loses: .*?, log: night.csv)\} under"
    entry = re.search(told_as, offered)
    assert entry and offered.count("--keep") == 1
    lines, after = logged_page.keeping(question, path, "", day, 200)
    page = " ".join(text_of(line) for line in lines)
    assert entry[1] in page and "the text before is kept as rig.yaml~" in page
    (one,) = after.reading.rig.heat.proved
    assert told.found.loss is not None and one.loss is not None
    assert one.loss.low <= told.found.loss.low and one.loss.high >= told.found.loss.high, "never rounded inwards"
    assert one.loss.low == pytest.approx(told.found.loss.low, abs=0.11)
    result = next(slot.heat for slot in after.study.slots if slot.use == "sleep" and slot.heat is not None)
    assert result.proof is not None and result.proof.inside is not None
    assert [one.coldest.best for one in result.held] == pytest.approx([one.coldest.best for one in told.after], abs=0.3)
    shown = " ".join(in_words(after, result, result.held))
    assert "Measured by a logged night (2026-05-02, night.csv)" in shown and "computed for the same night" in shown
    # A second night is compared with what is worked out, not with what the first one proved.
    again = logged_page.worked(after, path, "")
    assert again.worked.loss.best == pytest.approx(told.worked.loss.best)


def test_a_night_that_tells_nothing_is_neither_offered_nor_kept(whimbrel: Answered, tmp_path: Path) -> None:
    path = written(tmp_path, 50.0, has_heat=False)
    told = logged_page.worked(whimbrel, path, "0W")
    assert not told.offer and "--keep" not in said(told, whimbrel)
    with pytest.raises(NothingAsked, match="nothing is kept"):
        logged_page.keeping(whimbrel.question, path, "0W", date(2026, 5, 2), 200)


def test_a_night_written_as_loggers_in_the_country_of_the_rig_do_is_the_same_night(
    whimbrel: Answered, tmp_path: Path
) -> None:
    plain = written(tmp_path, 50.0)
    head, *rows = Path(plain).read_text(encoding="utf-8").splitlines()
    first = datetime.fromisoformat(rows[0].partition(",")[0])
    turned = [head]
    for row in rows:
        when, _, rest = row.partition(",")
        # All on one day of which nobody can tell the month, but that the rig is at home in the United States.
        shifted = datetime(2026, 1, 5, 6) + (datetime.fromisoformat(when) - first)
        turned.append(f"{shifted:%m/%d/%Y %I:%M:%S %p},{rest}")
    path = tmp_path / "turned.csv"
    path.write_text("\n".join(turned) + "\n", encoding="utf-8")
    found = logged_page.worked(whimbrel, str(path), "").night
    assert found.times == logged_page.worked(whimbrel, plain, "").night.times
