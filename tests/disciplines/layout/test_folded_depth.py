"""How far a folded bed stands out is as much in doubt as it is written to be: what may be in its way is asked."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.disciplines.layout.knots import told
from tests.disciplines.layout.small_rigs import TODAY, mirrored, rig_of

POST = "  post: {x: 60, side: left+%s, z: %s, size: 4 x 4 x 4, weight: 1, stage: lined, done: yes}\n"
SPACE, NIGHT = "layout/one-space", "layout/sleeping-place"


def deep(depth: str) -> tuple[tuple[str, str], ...]:
    return (("folded_depth: 4", f"folded_depth: {depth}"),)


@pytest.mark.parametrize(("depth", "kinds"), [("5", []), ("2..8", ["unknown"]), ("7..9", ["fix"]), ("8", ["fix"])])
def test_what_stands_before_a_folded_bed_is_asked_for_as_far_as_that_may_come(depth: str, kinds: list[str]) -> None:
    assert [kind for kind, _ in told(SPACE, deep(depth), POST % (6, 30), "tow")] == kinds


def test_a_bed_of_unknown_folded_depth_is_asked_for_and_never_taken_as_flat() -> None:
    assert told("layout/opening-unsaid", deep("unknown"), "", "tow") == [("unknown", "parts[bed]")]


@pytest.mark.parametrize(("depth", "kinds"), [("8", []), ("2..14", ["unknown"]), ("14", ["stop"])])
def test_what_is_met_only_where_the_bed_is_folded_deeper_is_asked_for_at_night(depth: str, kinds: list[str]) -> None:
    # by hand: 28 in up and 12 in out is 30 in from the hinge, beyond the edge of the leaf as it turns
    assert [kind for kind, _ in told(NIGHT, deep(depth), POST % (12, 54.5))] == kinds


def test_what_lies_on_a_bed_is_as_far_from_its_wall_as_that() -> None:
    rug = "  rug: {rides_on: bed, x: +8, side: +2, z: +2, size: 14 x 14 x 14, weight: 1, kind: cargo}\n"
    shelf = POST.replace("post", "shelf") % (6, 40)
    both = rug + shelf.replace("x: 60", "x: 40")
    found = told(SPACE, (*deep("2..8"),), both, "tow")
    assert found and {kind for kind, _ in found} == {"unknown"}


@pytest.mark.parametrize(
    ("old", "new", "says", "act"),
    [
        ("folded_depth: 120", "folded_depth: unknown", "how far bunk stands out from its wall", "write folded_depth"),
        ("x: 2600, width: 700", "x: 2600, width: unknown", "how large the hole of door is", "write its width"),
        ("x: 2600, width: 700", "x: unknown, width: 700", "or where it is in its wall", "its place in the wall"),
        (
            "hinge: front, opens: out",
            "hinge: left, opens: out",
            "the hinge of door is no edge",
            "Write the edge door is hinged on",
        ),
    ],
)
def test_what_is_missing_is_what_is_asked_for(old: str, new: str, says: str, act: str) -> None:
    for text in (rig_of(), mirrored(rig_of())):
        for use in ("tow", "sleep") if "folded" in old else ("sleep",):
            there = text.replace(old, new)
            assert there != text
            found = study(read_rig(there).rig, TODAY).findings(use)  # type: ignore[arg-type]
            ((words, todo),) = {(one.says, one.act) for one in found if one.code == "layout/opening-unsaid"}
            assert says in words and act in (todo or "")
            assert not [one for one in found if one.code == "layout/place-unknown"]
