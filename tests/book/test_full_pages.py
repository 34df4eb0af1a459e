"""No page of a set is nearly empty: what goes on to a second page is worth one."""

from __future__ import annotations

import pytest

from boxwright.drawing.page import Page
from boxwright.drawing.paper import PAPERS, PaperName
from tests.book.drawn import DEMOS, demo, pages

LEAST = 0.25
"""The share of the room over the title block that is used on every page after a sheet's first."""


KEYS_ALONE = frozenset({"plan-2"})
"""A key that finds no room beside a drawing that fills its page."""


def used(page: Page) -> float:
    """Return the share of a page over its title block that a frame round all that stands on it takes."""
    border = [point for one in page.strokes if one.belongs == "border" and one.line == "cut" for point in one.points]
    left, right = min(x for x, _ in border), max(x for x, _ in border)
    top, foot = min(y for _, y in border), max(y for _, y in border)
    rules = [one.points[0][1] for one in page.strokes if one.belongs == "border" and one.line == "visible"
             and one.points[0][0] == left and one.points[-1][0] == right]  # fmt: skip
    foot = min([*rules, foot])
    boxes = [one.box for one in page.words if one.belongs != "border"]
    points = [point for one in page.strokes if one.belongs != "border" for point in one.points]
    xs = [*(one.left for one in boxes), *(one.right for one in boxes), *(x for x, _ in points)]
    ys = [*(one.top for one in boxes), *(one.bottom for one in boxes), *(y for _, y in points)]
    return (max(xs) - min(xs)) * (max(ys) - min(ys)) / ((right - left) * (foot - top))


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_no_page_after_the_first_of_a_sheet_is_nearly_empty(name: str, paper: PaperName) -> None:
    every = [page for _, printed in pages(demo(name), paper) for page in printed[1:]]
    shares = [(round(used(page), 3), page.name) for page in every if page.name not in KEYS_ALONE]
    assert len(shares) > 10
    assert min(shares) >= (LEAST, ""), sorted(shares)[:4]
