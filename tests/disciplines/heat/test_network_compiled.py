"""The loop of the box through time compiled: the same as plain; and against the exact solution of its own network."""

from __future__ import annotations

import pytest

pytest.importorskip("numpy", reason="numpy is not installed: no rows for a compiled year")
pytest.importorskip("numba", reason="numba is not installed: no year is compiled")

import numpy as np

from boxwright.disciplines.heat.method import Box, Cold, Heater, Hours, Panes, box_through_time
from boxwright.disciplines.heat.method.network import _march
from boxwright.model.compiled import compiled
from tests.disciplines.heat.rooms import NO_COLD, NO_HEATER, demo, faces, hours, room
from tests.disciplines.heat.years import marched

COUNT = 400


def busy() -> tuple[Box, Hours]:
    """Return a box and hours in which everything happens: sun, frost, cycling, full power, opened, cooled, water."""
    box = demo(0.85, 0.6, Heater(600.0, 900.0, True, 700.0))
    whole = box.room._replace(
        to_air=0.2, to_furnishing=0.8, leak=0.01, stack=0.0145, leak_wind=0.0174, vents=0.01, rise=2.0, vent_wind=0.3,
        opened=0.01, open_above=297.15,
    )  # fmt: skip
    box = box._replace(
        room=whole, panes=Panes((3.0, 2.0), (0.3, 0.5), (1, 2)), cold=Cold((0.4, 0.7), (1.0, 3.0), (2.5, 2.5), (-1, 1))
    )
    turns = np.arange(COUNT)
    day, weeks = np.sin((turns % 24 - 9) / 24 * 2 * np.pi), np.sin(turns / COUNT * 2 * np.pi)
    outside = 278.15 + 6.0 * day - 20.0 * weeks
    columns = {"outside": outside, "sky": outside - 12.0, "wind": 2.0 + day, "humidity": 0.002 + 0.001 * day}
    sun = tuple((800.0 * max(0.0, float(one)),) * 5 for one in day)
    course = hours(
        COUNT, sun=sun, warm=291.15, cool=299.15, gains=120.0, radiant=20.0, fan=0.001, vapour=4e-5,
        **{name: tuple(float(one) for one in column) for name, column in columns.items()},
    )  # fmt: skip
    return box, course


def test_compiled_and_plain_say_the_same() -> None:
    box, course = busy()
    plain = box_through_time(box, course, (288.15, 0.004), 2, 1.0, 24)
    rows = marched(compiled(_march), box, course, 288.15, 0.004, 2, 24)
    columns = (plain.air, plain.furnishing, plain.heat, plain.cooling, plain.band, plain.humidity)
    for number, column in enumerate(columns):
        np.testing.assert_allclose(rows[:-1, number], column, rtol=1e-9, atol=1e-9)
    np.testing.assert_allclose(rows[:-1, 7], plain.flow, rtol=1e-9)
    np.testing.assert_allclose(rows[:-1, 8:14], plain.faces, rtol=1e-9)
    np.testing.assert_allclose(rows[:-1, 14:], plain.settled, rtol=1e-9, atol=1e-12)
    assert rows[-1, 0] < 1e-9 and plain.residual < 1e-9
    # All that can happen has happened, or this would compare little.
    assert all(spent > 0.0 for number, spent in enumerate(plain.banded) if number != 2)
    assert max(plain.cooling) > 0.0 and max(max(row) for row in plain.settled) > 0.0
    assert max(plain.flow) > 3.0 * min(plain.flow)


def rates(outside: float, gain: float) -> object:
    """Return the rate of change of air, furnishings and two masses, and of a constant one behind them."""
    rows = np.zeros((5, 5))
    rows[0] = [-(6.0 + 80.0 + 42.0), 80.0, 30.0, 12.0, 6.0 * outside + gain]
    rows[1, :2] = [80.0, -80.0]
    for number, (way, inward) in enumerate(((50.0, 30.0), (100.0, 12.0)), 2):
        rows[number, 0], rows[number, number], rows[number, 4] = inward, -(way + inward), way * outside
    return rows / np.array([[2e5], [9e5], [8e4], [3e5], [1.0]])


def test_the_loop_comes_to_the_exact_solution_of_its_network_at_the_order_of_its_rule() -> None:
    linear = pytest.importorskip("scipy.linalg", reason="scipy is not installed: no matrix exponential to compare with")
    each = [{"behind": 0.02, "inward": 30.0, "capacity": 8e4}, {"behind": 0.01, "inward": 12.0, "capacity": 3e5}]
    whole = room(air=2e5, furnishing=9e5, coupling=80.0)
    box = Box(whole, faces(*each), Panes((6.0,), (0.0,), (-1,)), NO_COLD, NO_HEATER)
    outside = tuple(273.15 + 8.0 * ((hour * 7) % 5 - 2) for hour in range(72))
    gains = tuple(100.0 * ((hour * 3) % 7) for hour in range(72))
    state = np.array([285.15, 285.15, *((way * outside[0] + inward * 285.15) / (way + inward)
                                        for way, inward in ((50.0, 30.0), (100.0, 12.0))), 1.0])  # fmt: skip
    exact = []
    for out, gain in zip(outside, gains, strict=True):
        # The rates stay the same within an hour, so that each hundredth of it is the same step.
        step, within = linear.expm(rates(out, gain) * 36.0), [state]
        for _ in range(100):
            within.append(step @ within[-1])
        exact.append(np.trapezoid(within, dx=0.01, axis=0))
        state = within[-1]

    def missed(substeps: int, weight: float) -> float:
        found = box_through_time(box, hours(72, outside=outside, gains=gains), (285.15, 0.004), substeps, weight)
        course = np.column_stack((found.air, found.furnishing, np.array(found.faces)))
        return float(abs(course - np.array(exact)[:, :4]).max())

    for weight, order in ((1.0, 2.0), (0.5, 4.0)):
        assert missed(8, weight) / missed(16, weight) == pytest.approx(order, rel=0.1)
    assert missed(16, 0.5) < 0.005
