"""Rules of air: none yet, so a verdict that rests on them says that air has not judged."""

from __future__ import annotations

from boxwright.disciplines.air.solve import Result
from boxwright.finding import Finding
from boxwright.units import HeaderUnits


def findings(result: Result, shown_in: HeaderUnits) -> tuple[Finding, ...]:
    """Return what air has to say of one slot."""
    return ()
