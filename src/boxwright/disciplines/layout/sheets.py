"""The sheets of layout: the plan."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from boxwright.disciplines.layout.drawn import Planned
    from boxwright.drawing import Sheet

NOTES = (
    "Thin dashes: under the deck, or inside another thing. Dash and two dots: overhead, or where a thing is at another "
    "time. Studs carry their numbers.",
)


def sheets(planned: Planned) -> tuple[Sheet, ...]:
    """Return the sheets of layout: the plan."""
    # What draws is loaded when something is drawn: `check` answers without it.
    from boxwright.disciplines.layout.plan import plan_view
    from boxwright.drawing import Sheet

    return (Sheet("plan", "Plan", (plan_view(planned),), NOTES),)
