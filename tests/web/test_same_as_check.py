"""The page and ``boxwright check`` answer alike, whatever they are asked."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from itertools import product
from typing import NamedTuple

import pytest

from boxwright.book.worded import in_words
from boxwright.cli.asked import Question, answered, checked
from boxwright.finding import USES
from boxwright.rig.compose import read_rig
from boxwright.web.contract import Slot
from boxwright.web.figures import numbers_of
from boxwright.web.session import Session
from tests.web.live import ROOT

DEMOS = ("whimbrel", "dunlin", "gannet")
TODAY = date(2026, 6, 1)


class Looked(NamedTuple):
    """What a tab looks at, and a use it is judged for."""

    stage: str
    load: str
    vehicle: str
    use: str


def text_of(demo: str) -> str:
    return (ROOT / "rigs" / f"{demo}.yaml").read_text(encoding="utf-8")


def every_look(demo: str) -> Iterator[Looked]:
    """Yield every stage with every load state, tow vehicle and use; today as ticked is the stage without a name."""
    rig = read_rig(text_of(demo)).rig
    stages = ("", *(one.name for one in rig.stages_in_order))
    loads = [("", use) for use in USES] + [(one.name, use) for one in rig.loads for use in one.uses]
    vehicles = [name for name, _ in rig.tow] or [""]
    for stage, (load, use), vehicle in product(stages, loads, vehicles):
        yield Looked(stage, load, vehicle, use)


def must_be_alike(demo: str, session: Session, look: Looked) -> None:
    path = str(ROOT / "rigs" / f"{demo}.yaml")
    told = checked(answered(Question(path, look.stage, look.load, look.use, vehicle=look.vehicle), TODAY))
    shown = numbers_of(session.seen(Slot(stage=look.stage, load=look.load, vehicle=look.vehicle)), 0, 0, preview=False)
    assert {one.use: one.word for one in shown.answers} == {one.use: one.answer for one in told.verdicts}, look
    assert {one.use: one.act for one in shown.answers} == {one.use: in_words(one.act) for one in told.verdicts}, look
    assert shown.findings is not None and shown.accepted is not None
    for page, line in ((shown.findings, told.findings), (shown.accepted, told.accepted)):
        assert {(one.code, one.where, one.kind, one.says) for one in page} == {
            (one.code, one.where, one.kind, in_words(one.says)) for one in line
        }, look
        assert [told.line_of(one.where) for one in page] == [one.line for one in page], look


@pytest.mark.parametrize("demo", DEMOS)
def test_page_and_check_answer_alike_today_and_at_the_stages_beside_first_and_last(demo: str) -> None:
    session = Session(text_of(demo), TODAY)
    rig = session.reading.rig
    names, now = [one.name for one in rig.stages_in_order], rig.header.stage_today
    some = {"", names[0], names[now], names[min(now + 1, len(names) - 1)], names[-1]}
    looks = [one for one in every_look(demo) if not one.load and one.use == "tow" and one.stage in some]
    assert len(looks) >= 4
    for look in looks:
        must_be_alike(demo, session, look)


@pytest.mark.parametrize("demo", DEMOS[:1])
def test_page_and_check_answer_alike_in_every_load_state(demo: str) -> None:
    """Behind one vehicle each, the first and the last by turns; the whole of it by night."""
    session = Session(text_of(demo), TODAY)
    vehicles = [name for name, _ in session.reading.rig.tow] or [""]
    looks = [one for one in every_look(demo) if not one.stage]
    for number, (load, use) in enumerate(dict.fromkeys((one.load, one.use) for one in looks)):
        must_be_alike(demo, session, Looked("", load, vehicles[-(number % 2)], use))


@pytest.mark.nightly
@pytest.mark.parametrize("demo", DEMOS)
def test_page_and_check_answer_alike_everywhere(demo: str) -> None:
    session = Session(text_of(demo), TODAY)
    for look in every_look(demo):
        must_be_alike(demo, session, look)


@pytest.mark.parametrize("demo", DEMOS)
def test_a_stage_asked_for_by_name_is_the_plan_even_where_it_is_todays(demo: str) -> None:
    rig = read_rig(text_of(demo)).rig
    name, path = rig.stages_in_order[rig.header.stage_today].name, str(ROOT / "rigs" / f"{demo}.yaml")
    assert checked(answered(Question(path), TODAY)).is_ticked
    named = checked(answered(Question(path, name), TODAY))
    assert not named.is_ticked
    assert not any("perhaps" in one.code for one in named.findings)
