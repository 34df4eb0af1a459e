"""The two lanes: what runs with every change, and at night what runs long; a test asks here how much of it to run."""

from __future__ import annotations

import os
from collections.abc import Iterable
from typing import Any

import pytest
from hypothesis import HealthCheck, settings

IS_NIGHT = os.environ.get("BOXWRIGHT_TESTS") == "nightly"
BY_NIGHT = 300
SLOW_IS_FINE = (HealthCheck.too_slow, HealthCheck.filter_too_much, HealthCheck.data_too_large)


def examples(by_day: int, by_night: int = BY_NIGHT) -> settings:
    """Return how many generated examples a test runs: the same few by day, many fresh ones at night."""
    return settings(max_examples=by_night if IS_NIGHT else by_day)


def every_so_many(of: Iterable[Any], one_in: int) -> list[Any]:
    """Return what a test is run on, each alone or a tuple of several: one in so many by day, those between at night."""
    rows = [one if type(one) is tuple else (one,) for one in of]
    return [pytest.param(*row, marks=[pytest.mark.nightly] if at % one_in else []) for at, row in enumerate(rows)]
