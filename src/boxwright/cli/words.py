"""The words a command line may begin with."""

from __future__ import annotations

CHAPTERS = (
    "frame",
    "layout",
    "structure",
    "weight",
    "towing",
    "heat",
    "air",
    "power",
    "water",
    "safety",
    "cutting",
    "stages",
)
"""One word for each discipline folder, in the order of the book."""

COMMANDS = (
    "check",
    "next",
    "try",
    "set",
    "measured",
    "where",
    "compare",
    "changeover",
    "draw",
    "open",
    "since",
    "new",
    "explain",
    "working",
    "schema",
    "trace",
    "check-methods",
)
"""The commands that are no chapter; `README.md` beside this file says what each gives."""
WORDS = (*COMMANDS, *CHAPTERS)
