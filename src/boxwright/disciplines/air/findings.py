"""Rules of air: none yet, so a verdict that rests on them says that air has not judged."""

from __future__ import annotations

from boxwright.finding import Finding


def findings() -> tuple[Finding, ...]:
    """Return what air has to say."""
    return ()
