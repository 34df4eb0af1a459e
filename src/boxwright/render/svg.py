"""One page as one SVG: true to size in millimetres, black on white unless whoever shows it restyles it.

Colours come from CSS variables (`--paper`, `--ink`, `--line-hidden`, `--fill-foam` ...) that fall back to ink, so that
a browser may give them and a printer need not. Every mark carries the rig path it is about as `data-of`.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import cache, lru_cache
from itertools import groupby
from typing import get_args

from boxwright.drawing.letters import EM, UNKNOWN, can_be_shown, printable, text_width
from boxwright.drawing.mark import Fill, LineKind, Point
from boxwright.drawing.page import Curve, Page, Stroke, Words
from boxwright.drawing.paper import WIDTH_OF, dashes
from boxwright.render.lettering import FAMILY

_ESCAPES = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;"})

_WHOLE_TURN = 2.0 * math.pi


def svg_of(page: Page) -> str:
    """Return a page as the text of an SVG file, ending with a line end. The same page gives the same text."""
    return _written(page, is_plain=False)


def plain_svg_of(page: Page) -> str:
    """Return a page as an SVG for a typesetter that has our lettering and no other, and knows no CSS variables."""
    return _written(page, is_plain=True)


def _written(page: Page, is_plain: bool) -> str:
    width, height = number(page.width), number(page.height)
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}" xml:space="preserve" class="bw-page" data-sheet="{escaped(page.name)}" '
        f'data-page="{page.number}" data-pages="{page.count}">',
        f"<title>{escaped(page.title)}</title>",
        f"<style>{stylesheet(is_plain)}</style>",
        *([] if is_plain else [f'<rect class="bw-paper" width="{width}" height="{height}"/>']),
        *_strokes(page.strokes),
        *(_curve(one) for one in page.curves),
        *(_text(one, is_plain) for one in page.words if one.text.strip()),
        "</svg>",
    ]
    return "\n".join(parts) + "\n"


# The same paths, places and widths stand on every page: each is put into words once.
@lru_cache(maxsize=20_000)
def escaped(text: str) -> str:
    """Return a text as it may stand in an element or an attribute: nothing in it is taken for markup."""
    return printable(text).translate(_ESCAPES)


@lru_cache(maxsize=50_000)
def number(value: float) -> str:
    """Return a length in at most three decimals, the one way it is ever written."""
    text = f"{value:.3f}"
    if text[-1] not in "0123456789":
        raise ValueError(f"a page cannot hold the number {value}")
    text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


@cache
def stylesheet(is_plain: bool) -> str:
    """Return the styles of all kinds of line and fill; each name begins with bw-, so that none meets a page's own."""

    def ink(variable: str, otherwise: str = "") -> str:
        if is_plain:
            return otherwise or "#000"
        return f"var(--{variable},{otherwise or 'var(--ink,#000)'})"

    rules = [
        f".bw-paper{{fill:{ink('paper', '#fff')}}}",
        ".bw-l{fill:none;stroke-linecap:round;stroke-linejoin:round}",
        f".bw-t{{font-family:'{FAMILY}',sans-serif;font-kerning:none;font-variant-ligatures:none;fill:{ink('letters')}}}",
        ".bw-b{font-weight:bold}",
    ]
    for kind in get_args(LineKind):
        pattern = " ".join(number(one) for one in dashes(kind))
        dashed = f";stroke-dasharray:{pattern};stroke-linecap:butt" if pattern else ""
        rules.append(f".bw-{kind}{{stroke:{ink(f'line-{kind}')};stroke-width:{number(WIDTH_OF[kind])}{dashed}}}")
    for fill in get_args(Fill):
        if fill == "doubt":
            rules.append(f".bw-fill-doubt{{fill:{ink('fill-doubt')};fill-opacity:.12;stroke:none}}")
        elif fill != "none":
            rules.append(f".bw-fill-{fill}{{fill:{ink(f'fill-{fill}', '' if fill == 'ink' else 'none')}}}")
    return "".join(rules)


def path_of(points: tuple[Point, ...], is_closed: bool) -> str:
    """Return the path through points, in the words of SVG."""
    start, *others = (f"{number(x)} {number(y)}" for x, y in points)
    return f"M{start}" + "".join(f"L{one}" for one in others) + ("Z" if is_closed else "")


def arc_path(curve: Curve) -> str:
    """Return the path of part of a circle; more than half is drawn in two, since one arc cannot end where it began."""
    sweep = max(-_WHOLE_TURN, min(_WHOLE_TURN, curve.sweep))
    steps = 2 if abs(sweep) > math.pi else 1
    radius, turn = number(curve.radius), int(sweep < 0.0)
    text = "M" + _on_circle(curve, curve.start)
    for step in range(1, steps + 1):
        text += f"A{radius} {radius} 0 0 {turn} {_on_circle(curve, curve.start + sweep * step / steps)}"
    return text


def _on_circle(curve: Curve, angle: float) -> str:
    """Return a point of a circle: up on paper is down in numbers."""
    x, y = curve.centre
    return f"{number(x + curve.radius * math.cos(angle))} {number(y - curve.radius * math.sin(angle))}"


def _strokes(strokes: tuple[Stroke, ...]) -> Iterator[str]:
    """Yield the strokes in their order. Neighbours alike in all but their points, as hatching is, share an element."""
    for (line, fill, of, belongs), alike in groupby(strokes, lambda one: (one.line, one.fill, one.of, one.belongs)):
        paths = [path_of(one.points, one.is_closed) for one in alike]
        # Filled shapes stay apart: where two of them overlap in one element, the overlap could come out empty.
        for path in ["".join(paths)] if fill == "none" else paths:
            filled = "" if fill == "none" else f" bw-fill-{fill}"
            yield _path(path, f"bw-l bw-{line} bw-of-{belongs}{filled}", of)


def _curve(curve: Curve) -> str:
    """Return the element of part of a circle."""
    return _path(arc_path(curve), f"bw-l bw-{curve.line} bw-of-{curve.belongs}", curve.of)


def _path(path: str, classes: str, of: str) -> str:
    return f'<path class="{classes}" data-of="{escaped(of)}" d="{path}"/>'


def _text(words: Words, is_plain: bool) -> str:
    """Return the element of a text.

    Where the reader's machine chooses the font, the text is held to its measured width, so that it cannot meet its
    neighbour. With our lettering it has that width, and a character that we lack is shown as missing.
    """
    text = printable(words.text)
    x, y = (number(along) for along in words.at)
    bold = " bw-b" if words.is_bold else ""
    turned = f' transform="rotate(-90 {x} {y})"' if words.is_turned else ""
    if is_plain:
        held = ""
        text = "".join(one if can_be_shown(one, words.is_bold) else UNKNOWN for one in text)
    else:
        width = number(text_width(text, words.height, words.is_bold))
        held = f' textLength="{width}" lengthAdjust="spacingAndGlyphs"'
    return (
        f'<text class="bw-t bw-of-{words.belongs}{bold}" data-of="{escaped(words.of)}" x="{x}" y="{y}"{turned} '
        f'font-size="{number(words.height * EM)}"{held}>{escaped(text)}</text>'
    )
