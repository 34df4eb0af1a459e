"""What stands on the card of a bay: what is clear, and what openings leave of it to be filled."""

from __future__ import annotations

import pytest

from tests.book.drawn import DEMOS, demo, drawn


def cards(name: str) -> dict[str, list[tuple[str, ...]]]:
    """Return the rows of the cards of a demo by the name of their bay."""
    sheet = next(one for one in drawn(demo(name))[0] if one.name == "bay-cards")
    return {one.title.partition(":")[0].removeprefix("Bay "): list(one.rows) for one in sheet.grids}


def of(rows: list[tuple[str, ...]], kind: str) -> list[str]:
    """Return the words of the rows of a kind."""
    return [row[2] for row in rows if row[1] == kind]


def test_a_doorway_is_no_bay_to_be_filled() -> None:
    # By hand: the door is 31 wide from stud face to stud face and 72 high, its header 1 in, the wall 78: 5 above.
    rows = cards("whimbrel")["right 1-3"]
    assert of(rows, "Piece") == ["31 x 5 above side-door; found ______"] and not of(rows, "Height")
    assert [one for one in of(rows, "Layer") if "XPS" in one] == ["foam XPS 1 1/2 in, cut to the pieces"]


def test_bays_behind_a_ramp_are_cut_by_it_and_by_its_jambs() -> None:
    found = cards("whimbrel")
    # By hand: ramp 3 to 77, jambs 1 in wide at 2 1/2 and 77 1/2, so 1 1/2 from B0's face at 1/2 to the jamb at 2.
    first = of(found["rear 0-1"], "Piece")
    assert first == ["1 1/2 x 78 beside ramp; found ______", "12 1/2 x 5 above ramp; found ______"]
    assert of(found["rear 2-3"], "Piece") == ["15 x 5 above ramp; found ______"]


def test_a_window_within_a_bay_is_taken_off_its_foam_and_one_not_cut_yet_is_not() -> None:
    found = cards("whimbrel")
    window = [one for one in of(found["left 6-7"], "Layer") if "XPS" in one]
    assert window and window[0].endswith("less window-left")
    planned = [row for rows in found.values() for row in of(rows, "Opening") if row.startswith("window-right")]
    assert planned and all("not cut" in one for one in planned)
    assert not any("less window-right" in row[2] for rows in found.values() for row in rows)


@pytest.mark.parametrize("name", DEMOS)
def test_what_nobody_ordered_is_not_said_to_be_ordered_and_nothing_is_narrower_than_nothing(name: str) -> None:
    for bay, rows in cards(name).items():
        clear = of(rows, "Clear")[0]
        assert not clear.startswith("-"), (bay, clear)
        if bay.startswith(("front", "rear")):
            assert "not ordered" in clear


def test_foam_between_studs_is_to_be_taped_before_the_photo() -> None:
    found = cards("whimbrel")
    assert of(found["left 0-1"], "Photo") == ["bare ____ wired ____ foamed, taped ____"]
    assert of(found["rear 0-1"], "Photo") == ["bare ____ wired ____ foamed ____"]
