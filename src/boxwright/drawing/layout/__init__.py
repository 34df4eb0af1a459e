"""Sheets laid out on paper: what stands on a page is settled here, so that every writer shows the same."""

from __future__ import annotations

from boxwright.drawing.layout.pages import laid_out, pages_of

__all__ = ["laid_out", "pages_of"]
