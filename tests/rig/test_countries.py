"""A State or province that there is none of is said with its line, and keeps every answer from being a go.

The codes are those of ISO 3166-2, from memory.
"""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig


def problems(countries: str) -> list[str]:
    read = read_rig(f"boxwright: 1\ncountries: {countries}\n".encode())
    return [one.says for one in read.problems if one.path.startswith("countries")]


@pytest.mark.parametrize("written", ["[US-ZZ]", "[CA-XX]", "[US_NC]", "[EU-XX]", "[US, AU-NY]", "[US-Carolina]"])
def test_a_place_there_is_none_of_is_a_problem(written: str) -> None:
    (says,) = problems(written)
    assert "such as" in says or "no country" in says


@pytest.mark.parametrize("written", ["[us-nc]", "[US-DC]", "[CA-BC]", "[AU-NSW]", "[EU-DE]", "[DE]", "[UK, NZ]"])
def test_a_place_there_is_one_of_is_none(written: str) -> None:
    assert problems(written) == []


def test_the_nearest_code_is_offered() -> None:
    (says,) = problems("[US-WAA]")
    assert "US-WA" in says
