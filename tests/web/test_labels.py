"""On every picture of the demo rigs no two labels lie on each other, and none leaves the picture."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import pytest

from boxwright.book.plan import ASIDE
from boxwright.render.screen import Drawn
from boxwright.web import contract, screens
from boxwright.web.session import Session
from tests.book.test_sheets import LOADS, WRONG, wrong
from tests.web.labels import labels, outside, over_each_other
from tests.web.live import ROOT

DAY = date(2026, 5, 2)
DEMOS = ("whimbrel", "dunlin", "gannet")
DRAWN_ON = ("plan", "elevations", "sections", "frame", "layout", "safety")


WRONG_RIGS = [wrong(what, shape) for what in WRONG for shape in ("wheel boxes", "nose")]
CROWDED = """
parts:
""" + "\n".join(
    f"  thing-{row}-{at}: {{x: {200 + 90 * at}, side: left+{100 + 90 * row}, z: {row * 60}, size: 80 x 80 x 50}}"
    for row in range(9)
    for at in range(20)
)


def session_of(demo: str) -> Session:
    return Session((ROOT / "rigs" / f"{demo}.yaml").read_text(encoding="utf-8"), DAY)


def pictures(session: Session, stage: str) -> Iterator[tuple[str, Drawn]]:
    """Yield every picture of every screen at a stage, each view once."""
    seen = session.seen(contract.Slot(stage=stage))
    for name in DRAWN_ON:
        for key, layered in screens._views(name, seen).items():
            yield f"{stage or 'today'}: {name}, {key}", screens._drawn(name, key, seen, layered)


def faults(session: Session, stages: list[str], least: int = 50) -> list[str]:
    found, count = [], 0
    for stage in stages:
        for what, drawn in pictures(session, stage):
            count += len(labels(drawn))
            found += [f"{what}: {one}" for one in over_each_other(drawn, ASIDE)]
            found += [f"{what}: {one!r} leaves the picture" for one in outside(drawn, ASIDE)]
    assert count > least
    return found


@pytest.mark.parametrize("demo", DEMOS[:2])
def test_today_and_at_the_end_no_label_lies_on_another_or_leaves_its_picture(demo: str) -> None:
    session = session_of(demo)
    last = session.reading.rig.stages_in_order[-1].name
    assert faults(session, ["", last]) == []


@pytest.mark.nightly
@pytest.mark.parametrize("demo", DEMOS)
def test_at_every_stage_no_label_lies_on_another_or_leaves_its_picture(demo: str) -> None:
    session = session_of(demo)
    assert faults(session, ["", *(one.name for one in session.reading.rig.stages_in_order)]) == []


@pytest.mark.parametrize("text", WRONG_RIGS, ids=str.__len__)
def test_a_rig_that_is_wrong_is_drawn_as_clearly(text: str) -> None:
    assert faults(Session(text, DAY), [""], least=20) == []


def test_a_crowd_of_things_is_drawn_as_clearly() -> None:
    text = wrong("a door in a wheel box").replace(LOADS, CROWDED + "\n" + LOADS)
    session = Session(text, DAY)
    assert len(session.reading.rig.parts) == 180
    assert faults(session, [""]) == []
