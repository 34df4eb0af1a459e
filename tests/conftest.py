"""How long the generated tests run: a few repeatable examples in the fast lane, many fresh ones at night."""

from __future__ import annotations

import gc
import os
import sys

import pytest
from hypothesis import is_hypothesis_test, settings

from boxwright.cli.run import OBJECTS_BEFORE_COLLECTING
from tests.lanes import BY_NIGHT, IS_NIGHT, SLOW_IS_FINE

settings.register_profile("fast", max_examples=25, deadline=None, derandomize=True, suppress_health_check=SLOW_IS_FINE)
settings.register_profile("nightly", max_examples=BY_NIGHT, deadline=None, suppress_health_check=SLOW_IS_FINE)
settings.load_profile("nightly" if IS_NIGHT else "fast")
gc.set_threshold(OBJECTS_BEFORE_COLLECTING)  # as the program does

# The tests start the program a hundred times: what it compiles is kept, whatever the shell says.
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
sys.dont_write_bytecode = False


def pytest_collection_finish() -> None:
    """Search what was loaded and listed for rubbish no more: it stays until the end, and there is a lot of it."""
    gc.freeze()


@pytest.hookimpl(tryfirst=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Run every generated test at night too, where it makes up more."""
    for item in items:
        if IS_NIGHT and is_hypothesis_test(getattr(item, "function", None)):
            item.add_marker("nightly")
