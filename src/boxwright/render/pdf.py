"""Pages as one PDF: each at its own size and true to scale, its words to be searched and copied."""

from __future__ import annotations

from collections.abc import Sequence

from boxwright.drawing.page import Page
from boxwright.render.typeset import typeset


def pdf_of(pages: Sequence[Page], title: str = "") -> bytes:
    """Return pages as the bytes of a PDF file, under a title or that of the first page."""
    if not pages:
        raise ValueError("a PDF file has at least one page, and none was given")
    return typeset(pages, title or pages[0].title, "pdf")
