"""One page as a PNG: the picture of it, and how large it is meant to be."""

from __future__ import annotations

import struct
import zlib

from boxwright.drawing.page import Page
from boxwright.render.typeset import typeset

_HEADER_END = 33
"""The signature and the first chunk, IHDR, of every PNG file (ISO/IEC 15948 `from memory`)."""

_PER_METRE = 1
"""The unit of the chunk pHYs: points to the metre."""


def png_of(page: Page, dpi: float = 144.0) -> bytes:
    """Return a page as the bytes of a PNG file, which says how large it is: printed so, it is true to scale."""
    if not dpi > 0.0:
        raise ValueError(f"no picture has {dpi} points to the inch")
    picture = typeset([page], page.title, "png", dpi)
    points = round(dpi / 0.0254)
    content = b"pHYs" + struct.pack(">IIB", points, points, _PER_METRE)
    size = struct.pack(">I", len(content) - len(b"pHYs"))
    chunk = size + content + struct.pack(">I", zlib.crc32(content))
    return picture[:_HEADER_END] + chunk + picture[_HEADER_END:]
