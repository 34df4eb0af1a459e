"""Who waits in the trailer, such as a dog, is no sleeper of whom a bed is asked, unless one is written."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.safety.test_findings import JUDGED_ON, RIG, edited

OWNER = "  owner: {weight: 80, height: 1750, sleeps: bed}"
WITH_IT = ("people: [owner], for: [sleep, leave]", "people: [owner, rex], for: [sleep, leave]")
ASKED = {"safety/who-sleeps-where", "layout/body-height-unknown"}


def asked(rex: str) -> set[str]:
    """Return which of the two questions are put about it."""
    text = edited((OWNER, f"{OWNER}\n  rex: {{weight: 25{rex}}}"), WITH_IT)
    assert read_rig(text).problems == ()
    found = study(read_rig(text).rig, JUDGED_ON).findings("sleep")
    return {one.code for one in found if one.code in ASKED and "rex" in one.says}


@pytest.mark.parametrize(
    ("rex", "codes"),
    [
        (", waits: yes", set()),
        (", waits: no", ASKED),
        (", waits: unknown", ASKED),
        ("", ASKED),
        (", waits: yes, sleeps: bed", {"layout/body-height-unknown"}),
    ],
)
def test_of_a_dog_no_bed_is_asked(rex: str, codes: set[str]) -> None:
    assert WITH_IT[0] in RIG
    assert asked(rex) == codes
