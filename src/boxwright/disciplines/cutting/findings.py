"""Rules of cutting: none yet, so a verdict that rests on them says that cutting has not judged."""

from __future__ import annotations

from boxwright.finding import Finding


def findings() -> tuple[Finding, ...]:
    """Return what cutting has to say."""
    return ()
