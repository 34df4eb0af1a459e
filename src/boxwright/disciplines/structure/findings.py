"""Rules of structure: none yet, so a verdict that rests on them says that structure has not judged."""

from __future__ import annotations

from boxwright.finding import Finding


def findings() -> tuple[Finding, ...]:
    """Return what structure has to say."""
    return ()
