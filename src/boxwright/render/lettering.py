"""Where the lettering of drawings lies: two small free fonts, their licence beside them."""

from __future__ import annotations

from pathlib import Path

FONTS = Path(__file__).parent / "fonts"
FAMILY = "DejaVu Sans"


def font_path(is_bold: bool) -> Path:
    """Return the file of the regular or the bold font."""
    return FONTS / ("DejaVuSans-Bold.ttf" if is_bold else "DejaVuSans.ttf")
