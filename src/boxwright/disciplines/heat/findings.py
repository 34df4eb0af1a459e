"""Rules of heat: none yet, so a verdict that rests on them says that heat has not judged."""

from __future__ import annotations

from boxwright.finding import Finding


def findings() -> tuple[Finding, ...]:
    """Return what heat has to say."""
    return ()
