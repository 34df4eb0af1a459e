"""Pages set by typst, true to size, with our lettering and nothing of the machine it runs on.

The text handed to typst as program is always the same, below. Everything of a page travels as data: its SVG, its size
and its title. So nothing that somebody writes in a rig file is ever taken for markup, and no file is read.
"""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import cache
from typing import TYPE_CHECKING, Literal

from boxwright.drawing.letters import printable
from boxwright.drawing.page import Page
from boxwright.render.extra import MissingExtra
from boxwright.render.lettering import FONTS
from boxwright.render.svg import plain_svg_of

if TYPE_CHECKING:
    import typst

_PROGRAM = b"""
#let pages = json(bytes(sys.inputs.pages))
#set document(title: sys.inputs.title, date: none)
#set page(margin: 0pt)
#for one in pages {
  page(width: one.width * 1mm, height: one.height * 1mm, {
    place(hide(heading(one.title)))
    place(image(bytes(one.svg), format: "svg", width: 100%, height: 100%, alt: one.title))
  })
}
"""


def typeset(pages: Sequence[Page], title: str, form: Literal["pdf", "png"], dpi: float = 144.0) -> bytes:
    """Return pages as one PDF, or one page as a PNG. No clock is read: the same pages give the same bytes."""
    fonts = _fonts()
    import typst

    told = [
        {"width": one.width, "height": one.height, "title": printable(one.title), "svg": plain_svg_of(one)}
        for one in pages
    ]
    return typst.compile(
        _PROGRAM,
        format=form,
        ppi=dpi,
        font_paths=fonts,
        sys_inputs={"pages": json.dumps(told), "title": printable(title)},
    )


@cache
def _fonts() -> typst.Fonts:
    """Return our two fonts and no other, so that every machine sets the same page."""
    try:
        import typst
    except ImportError as missing:
        raise MissingExtra("book", "typst") from missing
    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(FONTS)])
