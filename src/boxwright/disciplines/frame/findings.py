"""Rules of frame: none yet, so a verdict that rests on them says that frame has not judged."""

from __future__ import annotations

from boxwright.finding import Finding


def findings() -> tuple[Finding, ...]:
    """Return what frame has to say."""
    return ()
