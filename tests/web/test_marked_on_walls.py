"""What is marked on the walls of a screen is told in words under them."""

from __future__ import annotations

import re

from tests.web.test_screens import opened, shown, text_of


def test_each_number_of_a_fault_on_the_elevations_is_told_under_them() -> None:
    session, screens = opened(text_of("whimbrel"))
    found = shown(session, screens, "elevations")
    drawn = "".join(one.svg for one in found.pictures)
    marked = {number for text in re.findall(r"fault ([\d, ]+)", drawn) for number in text.split(", ")}
    told = {match[1] for note in found.notes if (match := re.match(r"Fault (\d+): .+", note))}
    assert marked and marked <= told
    assert all(note.startswith("Fault ") for note in found.notes), "the rest is said of the paper it stands on"
    assert not [note for note in shown(session, screens, "plan").notes if note.startswith("Fault")]
