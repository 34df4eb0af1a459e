"""Rules of water: none yet, so a verdict that rests on them says that water has not judged."""

from __future__ import annotations

from boxwright.finding import Finding


def findings() -> tuple[Finding, ...]:
    """Return what water has to say."""
    return ()
