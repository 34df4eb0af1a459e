"""Story sticks are cut out: what is written on a strip must lie on it, whatever else stands there."""

from __future__ import annotations

import pytest

from boxwright.drawing.paper import PAPERS, PaperName
from tests.book.drawn import DEMOS, demo, pages


@pytest.mark.parametrize("name", DEMOS)
@pytest.mark.parametrize("paper", sorted(PAPERS))
def test_the_words_of_a_strip_lie_on_it(name: str, paper: PaperName) -> None:
    seen = 0
    for sheet, printed in pages(demo(name), paper):
        if not sheet.name.startswith("story-"):
            continue
        for page in printed:
            strips = [one.points for one in page.strokes if one.belongs == "view" and one.is_closed]
            words = [one for one in page.words if one.belongs == "view" and one.text.startswith(("S ", "O ", "0"))]
            for word in words:
                box = word.box
                on = [
                    strip
                    for strip in strips
                    if min(x for x, _ in strip) < box.left and box.right < max(x for x, _ in strip)
                    and min(y for _, y in strip) < box.top and box.bottom < max(y for _, y in strip)
                ]  # fmt: skip
                assert on, (page.name, word.text)
            seen += len(words)
    assert seen > 20


def test_no_word_of_a_strip_is_broken_into_lines() -> None:
    for sheet, printed in pages(demo("whimbrel"), "letter"):
        if sheet.name.startswith("story-"):
            said = {one.text for page in printed for one in page.words}
            assert any((one.startswith("S ") and one[-1].isdigit()) or one.endswith("not taped") for one in said)
            assert not {"not taped", "taped"} & said
