"""What a change that is offered claims: that something is built is never for a button alone to say; and how it is
sought before anybody asks, by a process that ends with the page's own."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from datetime import date
from pathlib import Path

import pytest

from boxwright.web import seeking
from boxwright.web.seeking import Kept, sought, sought_ahead

TEXT = (Path(__file__).parents[2] / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8")
TODAY = date(2026, 11, 28)


@pytest.mark.parametrize(
    ("code", "where", "is_of_the_built"),
    [
        ("safety/release-not-fitted", "parts[release-ramp]", True),
        ("safety/fuel-inside", "parts[boat-fuel]", False),
    ],
)
def test_a_change_that_writes_something_as_built_says_so(code: str, where: str, is_of_the_built: bool) -> None:
    found = sought(TEXT, (code, where, "", "night", "sleep"), "", TODAY)
    assert found.edits
    assert found.is_of_the_built is is_of_the_built
    assert is_of_the_built == any(value == "yes" for path, value in found.edits if path.endswith(".done"))


def test_a_release_that_is_planned_for_a_later_stage_is_a_plan_to_be_written() -> None:
    found = sought(TEXT, ("safety/release-not-fitted", "parts[release-ramp]", "finish", "night", "sleep"), "", TODAY)
    assert found.edits == (("parts[release-ramp].stage", "finish"),)
    assert not found.is_of_the_built


FUEL = ("safety/fuel-inside", "parts[boat-fuel]", "", "night", "leave")
SHARE = ("towing/tongue-share", "trailer.coupler", "safe", "departure", "tow")
LIKE = (
    ("safety/opens-from-inside", "openings[ramp]", "", "night", "sleep"),
    ("safety/two-ways-out", "openings[ramp]", "", "night", "sleep"),
)


@pytest.fixture
def kept(monkeypatch: pytest.MonkeyPatch) -> Kept:
    """Nothing kept of what another test has sought."""
    kept = Kept()
    monkeypatch.setattr(seeking, "_KEPT", kept)
    return kept


def test_what_is_kept_of_one_search_changes_no_other(kept: Kept, monkeypatch: pytest.MonkeyPatch) -> None:
    heavier = TEXT.replace("weight: 84,", "weight: 104,")
    assert heavier != TEXT
    asked = [(TEXT, FUEL), (TEXT, SHARE), (heavier, SHARE), (heavier, FUEL), (TEXT, SHARE)]
    one_after_another = [sought(text, one, "", TODAY) for text, one in asked]
    for (text, one), found in zip(asked, one_after_another, strict=True):
        monkeypatch.setattr(seeking, "_KEPT", Kept())
        assert sought(text, one, "", TODAY) == found
    assert one_after_another[1] != one_after_another[2], "another weight is left behind"


def test_behind_another_vehicle_and_on_another_day_it_is_sought_anew(kept: Kept) -> None:
    sought(TEXT, FUEL, "", TODAY)
    first = kept.bench(TEXT, "", TODAY)
    assert kept.bench(TEXT, "", TODAY) is first and kept.found
    assert kept.bench(TEXT, "borrowed", TODAY) is not first and not kept.found
    assert kept.bench(TEXT, "", TODAY).vehicle == ""
    assert kept.bench(TEXT, "borrowed", TODAY).vehicle == "borrowed"
    assert kept.bench(TEXT, "borrowed", date(2026, 11, 29)).today == date(2026, 11, 29)


def test_what_was_sought_ahead_is_there_when_it_is_asked_for(kept: Kept, monkeypatch: pytest.MonkeyPatch) -> None:
    bench = kept.bench(TEXT, "", TODAY)
    pieces = 1
    while not sought_ahead(TEXT, "", LIKE, "", TODAY):
        pieces += 1
    assert pieces == len(bench.stages) + len(LIKE), "a stage or a finding at a time"
    bench.once.clear()
    found = [sought(TEXT, one, "", TODAY) for one in LIKE]
    assert found[0].edits == found[1].edits and found[0].edits
    assert bench.once.ran == [], "nothing is worked out any more"
    monkeypatch.setattr(seeking, "_KEPT", Kept())
    assert [sought(TEXT, one, "", TODAY) for one in LIKE] == found


PAGE = """
import time
from boxwright.web.seeking import Seekers
if __name__ == "__main__":
    import os
    print(Seekers()().submit(os.getpid).result(), flush=True)
    time.sleep(600)
"""


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="a program is killed otherwise there")
def test_the_process_that_seeks_ends_with_the_page_even_where_that_is_killed(tmp_path: Path) -> None:
    script = tmp_path / "page.py"
    script.write_text(PAGE)
    with subprocess.Popen([sys.executable, str(script)], stdout=subprocess.PIPE, stderr=subprocess.DEVNULL) as page:
        assert page.stdout is not None
        seeker = int(page.stdout.readline())
        assert _is_there(seeker)
        page.kill()
    until = time.monotonic() + 60.0
    while _is_there(seeker):
        assert time.monotonic() < until, "it goes on without a page"
        time.sleep(0.02)


def _is_there(process: int) -> bool:
    """Return whether a process runs; one that has ended and is only not yet taken off the list does not."""
    state = Path(f"/proc/{process}/stat")
    if state.parent.parent.joinpath("self").exists():
        try:
            return state.read_text().rpartition(")")[2].split()[0] != "Z"
        except OSError:
            return False
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True
