"""One page as a DXF file (R2010): real size in millimetres, the first view's zero at (0, 0), x to the right, y up.

The page is drawn over its scale, its frame with it, so that a length taken anywhere in a view is the real one. There is
a layer for each kind of line, with its width and its dashes. A dimension is a real one: it measures, and says the words
of the page. Every entity carries the rig path it is about as extended data of the application BOXWRIGHT.
"""

from __future__ import annotations

import io
import math
import re
from collections import defaultdict
from collections.abc import Iterator
from typing import TYPE_CHECKING, get_args

from boxwright.drawing.letters import printable
from boxwright.drawing.mark import LineKind, Point
from boxwright.drawing.page import Belongs, Box, Curve, Page, PlacedDimension, Stroke, Words
from boxwright.drawing.paper import SMALL, WIDTH_OF, dashes
from boxwright.render.extra import MissingExtra
from boxwright.render.lettering import font_path

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.entities.dxfgfx import DXFGraphic
    from ezdxf.layouts.layout import Modelspace

APPLICATION = "BOXWRIGHT"
LAYER_OF: dict[LineKind, str] = {
    "cut": "CUT",
    "visible": "VISIBLE",
    "hidden": "HIDDEN",
    "centre": "CENTRE",
    "phantom": "PHANTOM",
    "dimension": "THIN",
}
PLACE_OF: dict[Belongs, str] = {"border": "BORDER", "grid": "TABLE"}
"""Layers of what belongs to no view; its lines keep the width of their kind."""
TEXT, DIMENSIONS = "TEXT", "DIMENSIONS"

_BOLD, _REGULAR = "BOXWRIGHT_BOLD", "BOXWRIGHT"
_BLACK_OR_WHITE = 7
_R2010, _MILLIMETRES, _METRIC = "R2010", 4, 1
_LONGEST_STRING = 250
"""A string of extended data holds 255 bytes; a longer path is carried in pieces."""
_STRING = 1000
_DASHES_RUN_ON = 128
"""The flag of an outline whose dashes run on around its corners instead of beginning again at each."""
_NO_DAY, _NO_GUID = "2451544.5", "{00000000-0000-0000-0000-000000000000}"
_CLOCK = {"$TDCREATE": _NO_DAY, "$TDUPDATE": _NO_DAY, "$FINGERPRINTGUID": _NO_GUID, "$VERSIONGUID": _NO_GUID}
"""What stands in the header for the day of writing: the first of January 2000, as a Julian day; and for chance."""
_STAMP = re.compile(r"\n[0-9.a-z]+ @ \d{4}-\d\d-\d\dT[0-9:.+]+\n")
_TICK, _BEYOND, _OFF, _GAP = 1.25, 1.5, 1.0, 0.6
"""Of a dimension on paper: half a tick, extension line beyond it and off the point, text above the line."""
_STRAIGHT = 0.3
_ABOVE_LINE, _AT_ITS_END = 1, 0


def dxf_of(page: Page) -> bytes:
    """Return a page as the bytes of a DXF file. The same page gives the same bytes; no clock is read into them."""
    _ezdxf()
    plot = Plot(page)
    plot.draw()
    stream = io.StringIO()
    plot.doc.write(stream)
    return without_clock(stream.getvalue()).encode("utf-8")


def without_clock(text: str) -> str:
    """Return a file without what its library took from the clock and from chance."""
    head, section, rest = text.partition("\n  0\nENDSEC\n")
    body, objects, last = rest.rpartition("\n  2\nOBJECTS\n")
    for name, value in _CLOCK.items():
        head = re.sub(rf"(\n\{name}\n *\d+\n)[^\n]*", rf"\g<1>{value}", head)
    return head + section + body + objects + re.sub(_STAMP, f"\n{APPLICATION}\n", last)


def carried_words(text: str) -> str:
    """Return a text as it may stand anywhere in the file; a code for a character is taken apart by a thin space."""
    text = printable(text).replace("^", "^ ")
    for code in ("\\U+", "\\u+", "\\M+", "\\m+"):
        text = text.replace(code, f"\\\u2009{code[1:]}")
    return text


def line_words(text: str) -> str:
    """Return a text as it may stand in a line of text: there also two percent signs begin a code."""
    text = carried_words(text)
    while "%%" in text:
        text = text.replace("%%", "%\u2009%")
    return text


def paragraph_words(text: str) -> str:
    """Return a text as it may stand in a dimension: there also a backslash, braces and brackets are codes."""
    text = line_words(text)
    text = "".join(f"\\{one}" if one in "\\{}" else one for one in text)
    return text.replace("<>", "<{}>").replace("[]", "[{}]") or " "


def _ezdxf() -> None:
    """Find ezdxf, or say which extra brings it."""
    try:
        import ezdxf  # noqa: F401
    except ImportError as missing:
        raise MissingExtra("book", "ezdxf") from missing


class Plot:
    """A page on its way into a document."""

    def __init__(self, page: Page) -> None:
        """Take a page; its views share one scale."""
        scales = {view.scale for view in page.views} or {1.0}
        if len(scales) > 1:
            raise ValueError(f"the views of a page share one scale, and {sorted(scales)} were given")
        (scale,) = scales
        self.page = page
        self.factor = 1.0 / scale
        self.zero = page.views[0].origin if page.views else (0.0, page.height)
        self.measures = [words for words in page.words if words.belongs == "dimension"]
        self.doc = _document(self.factor)
        self.space: Modelspace = self.doc.modelspace()

    def real(self, point: Point) -> Point:
        """Return where a point of the paper lies, real size."""
        return (point[0] - self.zero[0]) * self.factor, (self.zero[1] - point[1]) * self.factor

    def draw(self) -> None:
        """Draw all of the page; what a real dimension says is not said again by lines and texts."""
        page = self.page
        said = defaultdict(list)
        for dimension in page.dimensions:
            said[dimension.of].append(printable(dimension.words))
        for stroke in page.strokes:
            if stroke.belongs != "dimension":
                self.stroke(stroke)
        for curve in page.curves:
            if curve.belongs != "dimension":
                self.curve(curve)
        for words in page.words:
            text = printable(words.text)
            is_said = words.belongs == "dimension" and any(text in one for one in said[words.of])
            if text.strip() and not is_said:
                self.text(words)
        for dimension in page.dimensions:
            self.dimension(dimension)
        self.frame()

    def frame(self) -> None:
        """Say how large the page is, and show all of it when the file is opened."""
        low, high = self.real((0.0, self.page.height)), self.real((self.page.width, 0.0))
        self.space.dxf.extmin, self.space.dxf.extmax = (*low, 0.0), (*high, 0.0)
        # The library leaves out an extent that begins at zero.
        self.doc.header["$EXTMIN"], self.doc.header["$EXTMAX"] = self.space.dxf.extmin, self.space.dxf.extmax
        self.space.dxf.limmin, self.space.dxf.limmax = low, high
        middle = (low[0] + high[0]) / 2, (low[1] + high[1]) / 2
        self.doc.set_modelspace_vport(height=1.05 * (high[1] - low[1]), center=middle)

    def stroke(self, stroke: Stroke) -> None:
        """Draw a line, an outline, or a solid."""
        points = [self.real(point) for point in stroke.points]
        attributes = _attributes(stroke.line, stroke.belongs)
        if stroke.fill == "ink" and stroke.is_closed:
            hatch = self.space.add_hatch(color=_BLACK_OR_WHITE, dxfattribs=attributes)
            hatch.paths.add_polyline_path(points, is_closed=True)
            _carry(hatch, stroke.of)
        if len(points) == 2 and not stroke.is_closed:
            _carry(self.space.add_line(points[0], points[1], dxfattribs=attributes), stroke.of)
        else:
            outline = self.space.add_lwpolyline(points, close=stroke.is_closed, dxfattribs=attributes)
            outline.dxf.flags |= _DASHES_RUN_ON
            _carry(outline, stroke.of)

    def curve(self, curve: Curve) -> None:
        """Draw a circle or part of one."""
        centre, radius = self.real(curve.centre), curve.radius * self.factor
        attributes = _attributes(curve.line, curve.belongs)
        if abs(curve.sweep) >= 2.0 * math.pi - 1e-9:
            _carry(self.space.add_circle(centre, radius, dxfattribs=attributes), curve.of)
            return
        ends = sorted((curve.start, curve.start + curve.sweep))
        start, end = (math.degrees(one) for one in ends)
        _carry(self.space.add_arc(centre, radius, start, end, dxfattribs=attributes), curve.of)

    def text(self, words: Words) -> None:
        """Write a line of text from the left end of its baseline."""
        drawn = self.space.add_text(
            line_words(words.text),
            height=words.height * self.factor,
            rotation=90.0 if words.is_turned else 0.0,
            dxfattribs={"layer": TEXT, "style": _BOLD if words.is_bold else _REGULAR},
        )
        drawn.set_placement(self.real(words.at))
        _carry(drawn, words.of)

    def dimension(self, placed: PlacedDimension) -> None:
        """Draw a dimension that measures: across or up between its ends, or from the zero of a running row."""
        is_across = placed.side in ("above", "below")
        words = self._words_of(placed)
        override = {
            "dimtxt": words.height if words else SMALL,
            "dimtad": _AT_ITS_END if placed.is_running else _ABOVE_LINE,
        }
        text, attributes = paragraph_words(placed.words), {"layer": DIMENSIONS}
        start, end, base = self.real(placed.start), self.real(placed.end), self.real(placed.line_at)
        if placed.is_running:
            drawn = self.space.add_ordinate_dim(
                end,
                self._lead(placed, words),
                dtype=1 if is_across else 0,
                origin=start,
                text=text,
                dimstyle=APPLICATION,
                override=override,
                dxfattribs=attributes,
            )
        else:
            drawn = self.space.add_linear_dim(
                base,
                start,
                end,
                angle=0.0 if is_across else 90.0,
                text=text,
                dimstyle=APPLICATION,
                override=override,
                dxfattribs=attributes,
            )
            if words:
                drawn.set_location(self.real(_middle(words.box)))
        drawn.render()
        if drawn.dimension.dxf.get("text_midpoint") is None:  # of one without words; readers ask for it all the same
            drawn.dimension.dxf.text_midpoint = (*base, 0.0)
        _carry(drawn.dimension, placed.of)

    def _words_of(self, placed: PlacedDimension) -> Words | None:
        """Return the text of the page that says a dimension, where it is in one line."""
        text = printable(placed.words)
        alike = [one for one in self.measures if one.of == placed.of and printable(one.text) == text]
        return min(alike, key=lambda one: math.dist(_middle(one.box), placed.line_at), default=None)

    def _lead(self, placed: PlacedDimension, words: Words | None) -> Point:
        """Return from the measured point to where its text begins, real size."""
        is_across = placed.side in ("above", "below")
        x, y = placed.line_at
        if words is not None:
            box, half = words.box, words.height / 2
            if is_across:
                x, y = words.at[0] - half, box.bottom + _GAP if placed.side == "above" else box.top - _GAP
            else:
                x, y = box.right + _GAP if placed.side == "left" else box.left - _GAP, words.at[1] - half
        (x1, y1), (x2, y2) = self.real(placed.end), self.real((x, y))
        # Where the text was not pushed aside, the lead is straight.
        near = _STRAIGHT * self.factor
        return (0.0 if is_across and abs(x2 - x1) < near else x2 - x1), (
            0.0 if not is_across and abs(y2 - y1) < near else y2 - y1
        )


def _middle(box: Box) -> Point:
    return (box.left + box.right) / 2, (box.top + box.bottom) / 2


def _attributes(line: LineKind, belongs: Belongs) -> dict[str, str | int]:
    """Return the layer of a line, and its own width where the layer does not give it."""
    if belongs not in PLACE_OF:
        return {"layer": LAYER_OF[line]}
    return {"layer": PLACE_OF[belongs], "lineweight": _weight(line), "linetype": _line_type(line)}


def _weight(line: LineKind) -> int:
    """Return a line's width in hundredths of a millimetre, as the format counts it."""
    return round(100.0 * WIDTH_OF[line])


def _line_type(line: LineKind) -> str:
    return LAYER_OF[line] if dashes(line) else "CONTINUOUS"


def _carry(entity: DXFGraphic, of: str) -> None:
    """Write the rig path an entity is about on it, in pieces where it is long."""
    pieces = list(_pieces(carried_words(of))) or [""]
    entity.set_xdata(APPLICATION, [(_STRING, piece) for piece in pieces])


def _pieces(text: str) -> Iterator[str]:
    """Yield a text in pieces that are short enough in bytes; no character is cut."""
    piece, size = "", 0
    for one in text:
        length = len(one.encode())
        if size + length > _LONGEST_STRING:
            yield piece
            piece, size = "", 0
        piece += one
        size += length
    if piece:
        yield piece


def _document(factor: float) -> Drawing:
    """Return an empty document with our layers, dashes, lettering and manner of dimensions."""
    from ezdxf.filemanagement import new

    doc = new(_R2010, setup=False)
    header = doc.header
    header["$INSUNITS"], header["$MEASUREMENT"], header["$LWDISPLAY"] = _MILLIMETRES, _METRIC, 1
    header["$LTSCALE"] = header["$DIMSCALE"] = factor
    doc.appids.add(APPLICATION)
    for style, is_bold in ((_REGULAR, False), (_BOLD, True)):
        doc.styles.add(style, font=font_path(is_bold).name)
    for kind in get_args(LineKind):
        pattern = dashes(kind)
        if pattern:
            # The format wants the length of the whole pattern first, gaps as negative lengths.
            steps = [length if place % 2 == 0 else -length for place, length in enumerate(pattern)]
            doc.linetypes.add(LAYER_OF[kind], [sum(pattern), *steps], description=f"{kind} line")
        doc.layers.add(LAYER_OF[kind], color=_BLACK_OR_WHITE, linetype=_line_type(kind), lineweight=_weight(kind))
    for name in (*PLACE_OF.values(), TEXT, DIMENSIONS):
        doc.layers.add(name, color=_BLACK_OR_WHITE, lineweight=_weight("dimension"))
    manner = doc.dimstyles.add(APPLICATION)
    manner.update_dxf_attribs(
        {
            "dimscale": factor,
            "dimtxsty": _REGULAR,
            "dimtxt": SMALL,
            "dimtsz": _TICK,
            "dimexe": _BEYOND,
            "dimexo": _OFF,
            "dimgap": _GAP,
            "dimtad": _ABOVE_LINE,
            "dimtih": 0,
            "dimtoh": 0,
            "dimtmove": 2,
            "dimlwd": _weight("dimension"),
            "dimlwe": _weight("dimension"),
        }
    )
    return doc
