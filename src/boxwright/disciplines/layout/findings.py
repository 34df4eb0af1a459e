"""Rules of layout: none yet, so a verdict that rests on them says that layout has not judged."""

from __future__ import annotations

from boxwright.finding import Finding


def findings() -> tuple[Finding, ...]:
    """Return what layout has to say."""
    return ()
