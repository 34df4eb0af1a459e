"""Shares of the body held against others: a public model of walking, and a table of measured people, each as quoted.

The model (a repository of a walking robot) gives lengths as shares of the height: shank 0.2493, thigh 0.2425, head
0.1168, a trunk 0.45 m wide at 1.741 m; another one a foot 0.039 high. The table (a course page of a university, 2016)
gives middle men of 1.759 m and women of 1.618 m: shoulder 1.444 and 1.314 m, sitting 0.927 and 0.853 m.
"""

from __future__ import annotations

import pytest

from boxwright.disciplines.layout.body_sizes import SHARE
from boxwright.disciplines.layout.sleepers import lying
from tests.disciplines.layout.test_ways import BED

SHANK, THIGH, HEAD, FOOT = 0.2493, 0.2425, 0.1168, 0.039


@pytest.mark.parametrize(
    ("name", "share"),
    [
        ("knee", SHANK + FOOT),
        ("hip", SHANK + THIGH + FOOT),
        ("chin", 1.0 - HEAD),
        ("shoulder", 1.444 / 1.759),
        ("shoulder", 1.314 / 1.618),
        ("shoulder width", 0.45 / 1.741),
        ("sitting", 0.927 / 1.759),
        ("sitting", 0.853 / 1.618),
    ],
)
def test_a_share_is_within_two_hundredths_of_what_others_give(name: str, share: float) -> None:
    assert SHARE[name] == pytest.approx(share, rel=0.02)


def test_who_lies_there_is_as_wide_at_the_hips_as_by_hand() -> None:
    """1.8 m tall: hips 0.191 of that, 0.3438 m; no other source was found for this share."""
    ((_, (_, _, legs)),) = lying(BED, {"one": 1.8})
    assert legs.size[1] == pytest.approx(0.3438)
