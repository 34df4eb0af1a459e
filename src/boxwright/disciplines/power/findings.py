"""Rules of power: none yet, so a verdict that rests on them says that power has not judged."""

from __future__ import annotations

from boxwright.finding import Finding


def findings() -> tuple[Finding, ...]:
    """Return what power has to say."""
    return ()
