"""How full a tank or a battery is, as written in a load state: always a share of what it holds."""

from __future__ import annotations

import pytest

from boxwright.model.load import read_fill
from boxwright.units import CannotRead


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [("full", 1.0, 1.0), ("3/4", 0.75, 0.75), ("30 %", 0.3, 0.3), ("1/4..1/2", 0.25, 0.5), ("unknown", 0.0, 1.0)],
)
def test_a_share_is_read(text: str, low: float, high: float) -> None:
    fill = read_fill(text)
    assert (fill.low, fill.high) == (low, high)


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("0.2 l", "; 0.2 l in what holds 2 l is 10 %"),
        ("2 gal", "; 2 gal in what holds 20 gal is 10 %"),
        ("10 kg", "; 10 kg in what holds 100 kg is 10 %"),
        ("120 %", ""),
        ("-1/4", ""),
    ],
)
def test_an_amount_is_never_taken_for_per_cent(text: str, hint: str) -> None:
    """0.2 l in a tank of 2 l is a tenth, and not 0.2 %: by hand."""
    with pytest.raises(CannotRead) as refused:
        read_fill(text)
    assert str(refused.value) == (f'cannot read how full it is "{text}"; write it as full, empty, 3/4 or 40 %{hint}')
