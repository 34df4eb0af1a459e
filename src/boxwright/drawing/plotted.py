"""What a chart is drawn of: its lines or bars, its limits, and how large it stands on paper."""

from __future__ import annotations

from typing import Literal

from boxwright.records import dataclass

WIDE, HIGH = 0.160, 0.085
"""How large (m) a chart is drawn on paper, without what is written beside it."""
LONG, LOW = 0.220, 0.065
"""How large one is drawn of which several stand under each other over the same hours."""


@dataclass(frozen=True, slots=True)
class Series:
    """One line, or the bars of a fall. ``best`` has infinity where nothing is known; ``low`` and ``high`` its doubt.

    Of a fall each bar reaches from ``low`` to ``high``.
    """

    label: str
    best: tuple[float, ...]
    low: tuple[float, ...]
    high: tuple[float, ...]
    texts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Bound:
    """A limit across a chart, in the unit of its numbers."""

    label: str
    at: float
    stops: bool = True


@dataclass(frozen=True, slots=True)
class Chart:
    """Numbers in ``unit`` over ``labels``: lines ``through`` them, or a ``fall`` of bars that add up to the last one.

    ``of`` is the rig path of each label, ``says`` the whole in words. ``is_fitted``: it begins where its numbers do,
    as temperatures are looked at, and not at nought. ``wide`` and ``high`` are what it takes on paper (m).
    """

    name: str
    title: str
    form: Literal["through", "fall"]
    unit: str
    labels: tuple[str, ...]
    series: tuple[Series, ...]
    bounds: tuple[Bound, ...]
    of: tuple[str, ...]
    says: str
    is_fitted: bool = False
    wide: float = WIDE
    high: float = HIGH
