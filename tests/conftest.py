"""How long the generated tests run: a few repeatable examples in the fast lane, many fresh ones at night."""

from __future__ import annotations

import os

from hypothesis import HealthCheck, settings

slow_is_fine = [HealthCheck.too_slow, HealthCheck.filter_too_much, HealthCheck.data_too_large]
settings.register_profile("fast", max_examples=25, deadline=None, derandomize=True, suppress_health_check=slow_is_fine)
settings.register_profile("nightly", max_examples=2_000, deadline=None, suppress_health_check=slow_is_fine)
settings.load_profile(os.environ.get("BOXWRIGHT_TESTS", "fast"))
