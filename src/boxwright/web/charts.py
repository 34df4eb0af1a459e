"""Charts as the page is told of them: what is not known is left out, never a nought."""

from __future__ import annotations

from collections.abc import Iterable
from math import isfinite

from boxwright.drawing.chart import HIGH, Chart, axis
from boxwright.web import contract


def told(chart: Chart) -> contract.Chart:
    """Return a chart as a message."""
    low, high, step = axis(chart)
    return contract.Chart(
        name=chart.name,
        title=chart.title,
        form=chart.form,
        unit=chart.unit,
        labels=list(chart.labels),
        series=[
            contract.Series(
                label=one.label,
                y=_known(one.best),
                low=_known(one.low),
                high=_known(one.high),
                texts=list(one.texts),
            )
            for one in chart.series
        ],
        limits=[
            contract.Limit(label=one.label, y=one.at, kind="stop" if one.stops else "limit") for one in chart.bounds
        ],
        of=list(chart.of),
        says=chart.says,
        low=low,
        high=high,
        step=step,
        share=round(chart.high / HIGH, 3),
    )


def _known(values: Iterable[float]) -> list[float | None]:
    return [value if isfinite(value) else None for value in values]
