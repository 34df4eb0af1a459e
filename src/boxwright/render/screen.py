"""One view as the text of an SVG for a screen: millimetres of the rig, one group for each thing, colours by the page.

The page restyles it: classes say what kind of line and fill, widths are in millimetres of the screen whatever the zoom.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field

from boxwright.drawing import Arc, Dimension, Leader, Line, Mark, Shape, Symbol, Text, View
from boxwright.drawing.mark import Point
from boxwright.records import dataclass
from boxwright.render.screen_measures import Written, led, measured
from boxwright.render.screen_names import Placed, named
from boxwright.render.screen_plane import MILLIMETRES, Box, across, pair, spread_over, words_at
from boxwright.render.svg import escaped, number

LETTER = 0.018
"""The height of ordinary letters as a share of the width of the view: it reads where the whole view fits a screen."""
SCREEN = 0.5
"""How high a drawing on a screen is beside its width, at most."""
MARGIN = 0.03
ROUNDS = 2
HIDDEN = 0.2
"""The height of letters without room, as a share of ordinary ones: they are never shown."""
EMPTY: Mapping[str, str] = {}


@dataclass(frozen=True, slots=True)
class Dress:
    """How things are shown, by rig path: their names, their layers and their kinds (a class of the page's style).

    ``movable`` are groups a hand and a keyboard can reach; ``aside`` are layers that are not shown at first, so that
    the picture need not make room for them. ``carried_by`` tells what a thing stands in or on, and moves with.
    """

    names: Mapping[str, str] = field(default_factory=dict)
    movable: frozenset[str] = frozenset()
    layers: Mapping[str, str] = field(default_factory=dict)
    kinds: Mapping[str, str] = field(default_factory=dict)
    aside: frozenset[str] = frozenset()
    carried_by: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Drawn:
    """A view drawn for a screen: its groups by rig path in the order they are drawn, and the box they fill (mm)."""

    groups: Mapping[str, str]
    box: tuple[float, float, float, float]

    @property
    def svg(self) -> str:
        """Return all groups as they stand in the picture."""
        return "".join(self.groups.values())


def drawn(view: View, dress: Dress) -> Drawn:
    """Return a view drawn for a screen."""
    marks: dict[str, list[Mark]] = {}
    for mark in view.marks:
        marks.setdefault(mark.of, []).append(mark)
    shown = [one for of, own in marks.items() if dress.layers.get(of, "") not in dress.aside for one in own]
    core = _extent(shown)
    letter = _letter(shown, core)
    ordered = dict(sorted(marks.items(), key=_is_signed))
    places = named(ordered, letter)
    groups = {of: _group(of, own, dress, places, letter) for of, own in ordered.items()}
    for one in shown:
        place = places.get(one) if isinstance(one, Text) else None
        core = core.over(place.box) if place is not None else core
    box = core
    for what, written in _beside(shown, core, letter):
        box = box.over(written.box)
        for of, svg in written.groups.items():
            on = _on(dress.layers.get(of, ""))
            groups[f"{of}.{what}"] = f'<g data-of="{escaped(of)}.{what}" class="measures"{on}>{svg}</g>'
    # What is told of a fault is read over all else, the lines of the measures too.
    groups |= {of: groups.pop(of) for of, own in ordered.items() if _is_signed((of, own))}
    room = MARGIN * max(box.width, box.height)
    return Drawn(groups, (box.left - room, box.top - room, box.width + 2.0 * room, box.height + 2.0 * room))


def _letter(shown: Sequence[Mark], core: Box) -> float:
    """Return the height of letters.

    What stands beside makes the picture larger, and a larger picture on the same screen wants larger letters: twice
    round is near enough.
    """
    box, letter = core, 0.0
    for _ in range(ROUNDS):
        letter = LETTER * max(box.width, box.height / SCREEN)
        for _, written in _beside(shown, core, letter):
            box = box.over(written.box)
    return letter


def _beside(shown: Sequence[Mark], core: Box, letter: float) -> list[tuple[str, Written]]:
    """Return what is written beside a view that fills ``core``."""
    rows = [one for one in shown if isinstance(one, Dimension)]
    notes = [one for one in shown if isinstance(one, Leader)]
    return [("measures", measured(rows, core, letter)), ("notes", led(notes, core, letter, bool(rows)))]


def _group(of: str, marks: Sequence[Mark], dress: Dress, places: Mapping[Text, Placed | None], letter: float) -> str:
    body = "".join(_mark(mark, places, letter) for mark in marks)
    name = dress.names.get(of, "")
    is_movable = of in dress.movable
    classes = " ".join(one for one in ("thing" if is_movable else "", dress.kinds.get(of, "")) if one)
    hold = f' tabindex="0" role="button" aria-label="{escaped(_called(name or of, marks))}"' if is_movable else ""
    dressed = f' class="{classes}"' if classes else ""
    on = _on(dress.layers.get(of, ""))
    on += f' data-on="{escaped(dress.carried_by[of])}"' if of in dress.carried_by else ""
    title = f"<title>{escaped(name)}</title>" if name else ""
    return f'<g data-of="{escaped(of)}"{dressed}{hold}{on}>{title}{body}</g>'


def _called(name: str, marks: Sequence[Mark]) -> str:
    """Return what a thing is called by who hears it: all that is written on it, so that it is the same thing aloud."""
    said = [one.words for one in marks if isinstance(one, Text) and one.words != name]
    return " ".join(said) if any(one.startswith(name) for one in said) else " ".join([name, *said])


def _is_signed(group: tuple[str, Sequence[Mark]]) -> bool:
    """Return whether a group tells of a fault: those lie over all else."""
    return any(isinstance(one, Symbol) and one.kind == "fault" for one in group[1])


def _on(layer: str) -> str:
    return f' data-layer="{escaped(layer)}"' if layer else ""


def _mark(mark: Mark, places: Mapping[Text, Placed | None], letter: float) -> str:
    match mark:
        case Shape():
            points = " ".join(pair(one) for one in mark.points)
            return f'<polygon points="{points}" class="ln {mark.line} fill-{mark.fill}"/>'
        case Line():
            return f'<path d="M{pair(mark.start)}L{pair(mark.end)}" class="ln {mark.line}"/>'
        case Arc():
            return f'<path d="{_arc(mark)}" class="ln {mark.line}"/>'
        case Text():
            return _words(mark, places[mark], letter)
        case Symbol():
            return _symbol(mark, letter)
        case Dimension() | Leader():
            return ""


def _words(mark: Text, place: Placed | None, letter: float) -> str:
    """Return a text in its place; one without room is hidden there, for the page to put a number in its stead."""
    if place is None:
        return words_at((mark.words,), across(mark.at), letter * HIDDEN, False, "middle", "free keyed")
    kind = ("free" if place.is_free else f"on-{place.on}") + (" near" if place.is_near else "")
    words = words_at(place.lines, (place.x, place.y), place.size, place.is_turned, "middle", kind)
    if place.lead is None:
        return words
    x, y, to_x, to_y = map(number, place.lead)
    return f'<path d="M{x},{y}L{to_x},{to_y}" class="ln dimension"/>{words}'


def _symbol(mark: Symbol, letter: float) -> str:
    x, y = across(mark.at)
    if mark.kind == "fault":
        half = letter * 0.8
        corners = " ".join(
            f"{number(x + right)},{number(y + down)}" for right, down in ((0.0, -half), (-half, half), (half, half))
        )
        return f'<polygon points="{corners}" class="ln visible fault"/>'
    if mark.kind == "datum":
        return _roundel(x, y, letter * 0.55)
    if mark.kind == "screw":
        return f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(letter * 0.25)}" class="ln visible screw"/>'
    turned = {"left": 0, "right": 180, "above": 90, "below": 270}[mark.towards]
    reach, wide = number(letter * 1.6), number(letter * 1.4)
    arrow = f"M{number(x)},{number(y)}l{reach},-{number(letter * 0.7)}v{wide}z"
    return f'<path d="{arrow}" class="front" transform="rotate({turned} {number(x)} {number(y)})"/>'


def _roundel(x: float, y: float, radius: float) -> str:
    """Return a circle quartered in black and white: the sign for a point that is measured from or to."""
    r = number(radius)
    dark = f"M{number(x)},{number(y)}h{r}a{r},{r} 0 0 0 -{r},-{r}zm0,0h-{r}a{r},{r} 0 0 0 {r},{r}z"
    circle = f'<circle cx="{number(x)}" cy="{number(y)}" r="{r}" class="ln visible datum"/>'
    return f'{circle}<path d="{dark}" class="front"/>'


def _arc(mark: Arc) -> str:
    ends = []
    for angle in (mark.start, mark.start + mark.sweep):
        ends.append((mark.centre[0] + mark.radius * math.cos(angle), mark.centre[1] + mark.radius * math.sin(angle)))
    is_large, is_clockwise = int(abs(mark.sweep) > math.pi), int(mark.sweep < 0.0)
    radius = number(mark.radius * MILLIMETRES)
    return f"M{pair(ends[0])}A{radius} {radius} 0 {is_large} {is_clockwise} {pair(ends[1])}"


def _extent(marks: Iterable[Mark]) -> Box:
    """Return the box everything drawn fills."""
    points: list[Point] = []
    for mark in marks:
        match mark:
            case Shape():
                points += mark.points
            case Line():
                points += (mark.start, mark.end)
            case Arc():
                points += _along(mark)
            case Text() | Symbol():
                points.append(mark.at)
            case Dimension() | Leader():
                pass
    return spread_over(points)


def _along(mark: Arc) -> list[Point]:
    """Return points along an arc, close enough together to tell its extent."""
    steps = 8
    angles = [mark.start + mark.sweep * step / steps for step in range(steps + 1)]
    return [
        (mark.centre[0] + mark.radius * math.cos(one), mark.centre[1] + mark.radius * math.sin(one)) for one in angles
    ]
