"""The charts of weight say what the numbers say: in the units asked for, unknown as unknown, nothing lost."""

from __future__ import annotations

from math import inf, isfinite

import pytest

from boxwright.disciplines.weight.charts import LIFTS, tongue_chart, weights_chart
from boxwright.exchange import Mass
from boxwright.units import Band, HeaderUnits, exactly

METRIC = HeaderUnits(length="mm", weight="kg", words="UK")
POUNDS = HeaderUnits(length="in", weight="lb", words="US")
POUND = 0.45359237
UNSAID = Band(0.0, 0.0, inf, known=False)


def mass(of: str, kg: Band, what: str = "dry") -> Mass:
    return Mass(of, what, "", kg, exactly(0.0), exactly(0.0), exactly(0.0), (0.0, 0.0, 0.0))  # type: ignore[arg-type]


def test_each_load_state_is_a_line_in_the_order_of_the_plan() -> None:
    bands = {
        ("safe", "empty"): exactly(100.0),
        ("safe", "full"): Band(60.0, 50.0, 70.0),
        ("roof", "empty"): exactly(120.0),
    }
    chart = tongue_chart(bands, 75.0, METRIC)
    assert chart is not None
    assert chart.labels == ("safe", "roof") and chart.of == ("stages[safe]", "stages[roof]")
    empty, full = chart.series
    assert (empty.label, empty.best) == ("empty", (100.0, 120.0))
    assert (full.low[0], full.best[0], full.high[0]) == (50.0, 60.0, 70.0)
    assert not isfinite(full.best[1]) and full.texts[1] == "roof, full: not known"
    assert full.texts[0] == "safe, full: 60 kg (50 to 70)" and empty.texts[0] == "safe, empty: 100 kg"
    assert [(one.label, one.at) for one in chart.bounds] == [(LIFTS, 0.0), ("least rating 75 kg", 75.0)]
    assert "empty: from 100 kg (safe) to 120 kg (roof)" in chart.says


def test_numbers_stand_in_the_units_of_the_file() -> None:
    chart = tongue_chart({("safe", "empty"): exactly(100.0 * POUND)}, None, POUNDS)
    assert chart is not None and chart.unit == "lb"
    assert chart.series[0].best[0] == pytest.approx(100.0) and len(chart.bounds) == 1


def test_an_open_end_is_said_and_not_drawn() -> None:
    chart = tongue_chart({("safe", "empty"): Band(100.0, 90.0, inf, known=False)}, None, METRIC)
    assert chart is not None
    assert chart.series[0].texts == ("safe, empty: 100 kg (at least 90)",)
    assert not isfinite(chart.series[0].high[0])
    assert tongue_chart({}, 75.0, METRIC) is None


def test_a_load_of_which_no_end_is_known_is_never_drawn_as_a_nought() -> None:
    chart = tongue_chart({("safe", "empty"): Band(0.0, -inf, inf, known=False)}, None, METRIC)
    assert chart is not None and not isfinite(chart.series[0].best[0])
    assert chart.series[0].texts == ("safe, empty: not known",)


def test_what_it_weighs_is_parted_by_kind_and_adds_up() -> None:
    masses = (
        mass("trailer", exactly(500.0)),
        mass("walls[left].ply", exactly(20.0)),
        mass("openings[door]", exactly(15.0)),
        mass("parts[bench]", exactly(30.0)),
        mass("parts[boat]", exactly(50.0)),
        mass("parts[fresh]", exactly(75.0), "fluid"),
        mass("people[skipper]", exactly(80.0)),
        mass("frame", exactly(2.0)),
        mass("parts[deck-chairs]", UNSAID),
    )
    chart = weights_chart(
        masses, frozenset({"parts[boat]"}), 1200.0, "departure", Band(772.0, 760.0, inf, known=False), METRIC
    )
    assert chart is not None
    (bars,) = chart.series
    steps = dict(zip(chart.labels, (high - low for low, high in zip(bars.low, bars.high, strict=True)), strict=True))
    assert steps == {"Empty trailer": 500.0, "Foam, linings": 20.0, "Openings": 15.0, "Built in": 30.0, "Cargo": 50.0,
                     "Water, fuel": 75.0, "People": 80.0, "Other": 2.0, "All up": 772.0}  # fmt: skip
    assert chart.bounds[0].label == "plate 1,200 kg"
    assert chart.says.endswith("; 1 without a weight not counted"), (
        "what nobody weighed is said, never taken as nothing"
    )
    assert weights_chart((), frozenset(), None, "empty", None, METRIC) is None


def test_each_group_and_the_whole_tell_their_doubt_and_no_unknown_weight_looks_known() -> None:
    masses = (
        mass("trailer", Band(500.0, 480.0, 530.0)),
        mass("parts[bench]", Band(30.0, 25.0, 40.0)),
        mass("parts[bed]", Band(20.0, 18.0, 22.0)),
        mass("parts[boat]", Band(50.0, 45.0, inf, known=False)),
        mass("people[skipper]", UNSAID),
    )
    known = weights_chart(masses[:3], frozenset(), None, "all", Band(550.0, 528.0, 581.0), METRIC)
    assert known is not None
    assert known.series[0].texts == (
        "Empty trailer: 500 kg (480 to 530)", "Built in: 50 kg (43 to 62)", "all up: 550 kg (528 to 581)",
    )  # fmt: skip
    chart = weights_chart(masses, frozenset({"parts[boat]"}), None, "all", Band(600.0, 568.0, inf, known=False), METRIC)
    assert chart is not None
    assert chart.labels == ("Empty trailer", "Built in", "Cargo", "People", "All up")
    assert chart.series[0].texts[2:] == ("Cargo: at least 45 kg", "People: at least 0 kg", "all up: at least 568 kg")
    alone = weights_chart(masses, frozenset(), None, "all", None, POUNDS)
    assert alone is not None and alone.series[0].texts[-1] == "all up: at least 1,252 lb", (480 + 25 + 18 + 45) / POUND
