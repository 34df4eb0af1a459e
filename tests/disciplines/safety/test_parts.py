"""How safety's keys may be written."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest
from pydantic import ValidationError

from boxwright.disciplines.safety.parts import Facet


def test_a_month_of_expiry_is_its_first_day() -> None:
    assert Facet.model_validate({"expires": "2031-02"}).expires == date(2031, 2, 1)


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("CO", ("CO",)),
        ("co", ("CO",)),
        ("smoke", ("smoke",)),
        (["CO", "smoke"], ("CO", "smoke")),
        ("CO, gas", ("CO", "gas")),
    ],
)
def test_an_alarm_warns_of_something_known(written: Any, read: tuple[str, ...]) -> None:
    assert Facet.model_validate({"alarm": written}).alarm == read


@pytest.mark.parametrize(("written", "read"), [("wanted", "wanted"), ("yes", "yes"), ("True", "yes"), ("no", "no")])
def test_a_way_out_is_wanted_or_is_one(written: str, read: str) -> None:
    assert Facet.model_validate({"egress": written}).egress == read


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ({"alarm": "loud"}, 'cannot read what the alarm warns of "loud"; write it as CO, smoke, gas or [CO, smoke]'),
        ({"egress": "perhaps"}, 'cannot read the way out "perhaps"; write it as wanted, yes, no or unknown'),
        ({"expires": "next year"}, 'cannot read the date "next year"; write it as year-month-day'),
    ],
)
def test_what_cannot_be_read_is_said(keys: dict[str, Any], words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        Facet.model_validate(keys)
    assert words in str(caught.value)
