"""Where what a working names stands in the file: each rig path in a text is followed by its line."""

from __future__ import annotations

import re

from boxwright.rig.document import Document
from boxwright.rig.spelled import as_written

_PATH = re.compile(r"\b[a-z_]+(?:\[[^\]]+\])?(?:\.[a-z_]+(?:\[[^\]]+\])?)+|\b[a-z_]+\[[^\]]+\]")


def with_lines(texts: tuple[str, ...], document: Document) -> tuple[str, ...]:
    """Return texts in which each path that is written in a file has its line behind it."""

    def placed(found: re.Match[str]) -> str:
        path = as_written(document, found[0])
        is_written = document.extent(path, exact=True) is not None
        return f"{found[0]} (line {document.spot(path).line})" if is_written else found[0]

    return tuple(_PATH.sub(placed, text) for text in texts)
