"""How the nose lifts is told without a number that could be taken for a safe weight."""

from __future__ import annotations

import pytest

from tests.cli.test_fresh_air import WHIMBREL, said


@pytest.mark.parametrize(
    ("use", "told"),
    [("sleep", "at the latest, and perhaps with far less"), ("leave", "at the latest, and perhaps with far less")],
)
def test_an_upper_end_is_no_safe_weight(capsys: pytest.CaptureFixture[str], use: str, told: str) -> None:
    _, shown = said(capsys, "weight", WHIMBREL)
    line = " ".join(shown.split()).partition(f"night ({use}), uncoupled, legs up:")[2].partition("night (")[0]
    assert told in line
    assert "at most" not in line
