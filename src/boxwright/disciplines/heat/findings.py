"""Rules of heat: none yet, so a verdict that rests on them says that heat has not judged."""

from __future__ import annotations

from boxwright.disciplines.heat.solve import Result
from boxwright.finding import Finding
from boxwright.units import HeaderUnits


def findings(result: Result, shown_in: HeaderUnits) -> tuple[Finding, ...]:
    """Return what heat has to say of one slot."""
    return ()
