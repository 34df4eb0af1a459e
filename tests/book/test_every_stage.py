"""At every stage of the demo rigs no label of a printed page lies on another, on an edge, or outside the page."""

from __future__ import annotations

import pytest

from boxwright.book.sheets import sheets_of, title_of
from boxwright.drawing.layout import laid_out
from boxwright.drawing.paper import PAPERS
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.book.drawn import DAY, demo
from tests.drawing.judge import faults

MOST_STAGES = 4
"""So many stages are looked at of a rig that has more parts than anybody builds."""


@pytest.mark.nightly
@pytest.mark.parametrize("name", ["whimbrel", "dunlin", "gannet"])
def test_every_page_of_every_stage_is_legible(name: str) -> None:
    rig = read_rig(demo(name).encode()).rig
    stages = range(len(rig.stages_in_order))
    found, count = [], 0
    for stage in stages if name != "gannet" else stages[:: len(stages) // MOST_STAGES]:
        studied = study(rig, DAY, stage=stage, ticked=False)
        slot = next(iter(studied.asked_slots()), None)
        title = title_of(rig, "as planned", DAY.isoformat(), rig.header.units)
        for sheet in sheets_of(rig, slot, studied.findings(), (), "as planned", rig.header.units):
            for paper in ("letter", "a4"):
                pages = laid_out(sheet, PAPERS[paper], title)
                count += len(pages)
                found += [f"{rig.stages_in_order[stage].name}, {sheet.name}: {one}" for one in faults(sheet, pages)]
    assert found == [] and count > 100
