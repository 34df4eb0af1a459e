"""A view on a screen: nothing in a rig file is taken for markup, names never lie on each other, measures are true."""

from __future__ import annotations

import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.drawing import Arc, Dimension, Leader, Line, Mark, Shape, Symbol, Text, View
from boxwright.drawing.mark import Fill, Point
from boxwright.render.screen import LETTER, SCREEN, Drawn, Dress, drawn
from boxwright.render.screen_measures import led, measured
from boxwright.render.screen_names import Placed, named
from boxwright.render.screen_plane import Box, apart
from tests.web.labels import outside, over_each_other

POISON = "<img src=x onerror=alert(1)>&\"' ]]> \u202e<script>"
ELEMENTS = {"svg", "g", "title", "polygon", "path", "circle", "text", "tspan"}
SPACE = "{http://www.w3.org/2000/svg}"


def box(left: float, low: float, right: float, high: float, of: str, fill: Fill = "wood") -> Shape:
    return Shape(((left, low), (right, low), (right, high), (left, high)), "visible", of, fill)


def name(at: Point, words: str, of: str) -> Text:
    return Text(at, words, of, "small", may_move=False)


def parsed(picture: Drawn) -> ElementTree.Element:
    """Return a picture read as the browser reads it."""
    return ElementTree.fromstring(f'<svg xmlns="http://www.w3.org/2000/svg">{picture.svg}</svg>')


def view(*marks: Mark) -> View:
    return View("Plan", "from above", marks)


def one_of_everything(words: str, of: str) -> View:
    return view(
        box(0.0, 0.0, 2.0, 1.0, of),
        name((1.0, 0.5), words, of),
        Line((0.0, 0.0), (2.0, 1.0), "hidden", of),
        Arc((1.0, 0.5), 0.4, 0.0, 4.0, "dimension", of),
        Text((0.1, 2.0), words, of),
        Symbol((0.5, 0.5), "fault", of),
        Symbol((0.5, 0.4), "datum", of),
        Symbol((0.5, 0.3), "screw", of),
        Symbol((-0.5, 0.3), "front", of, "left"),
        Dimension((0.0, 0.0), (2.0, 0.0), words, of, "below"),
        Dimension((0.0, 0.0), (0.0, 1.0), words, of, "right", is_running=True),
        Leader((1.5, 0.8), words, of),
    )


def test_nothing_written_in_a_rig_becomes_markup() -> None:
    dress = Dress(names={POISON: POISON}, movable=frozenset({POISON}), layers={POISON: POISON}, kinds={})
    root = parsed(drawn(one_of_everything(POISON, POISON), dress))
    assert {one.tag.removeprefix(SPACE) for one in root.iter()} <= ELEMENTS
    shown = [text for one in root.iter() for text in (one.text or "",) if "img" in text]
    assert shown and all("<img src=x onerror=alert(1)>" in text for text in shown)
    allowed = {"data-of", "data-layer", "class", "tabindex", "role", "aria-label", "x", "y", "cx", "cy", "r", "d", "dy",
               "points", "font-size", "text-anchor", "transform"}  # fmt: skip
    assert {key for one in root.iter() for key in one.attrib} <= allowed, "no style, no handler, no address"
    assert all("\u202e" not in value for one in root.iter() for value in (*one.attrib.values(), one.text or ""))


@given(st.text(max_size=60), st.text(max_size=30))
def test_any_words_make_a_picture_a_browser_can_read(words: str, of: str) -> None:
    dress = Dress(names={of: words}, movable=frozenset({of}), layers={of: words})
    root = parsed(drawn(one_of_everything(words, of), dress))
    assert {one.tag.removeprefix(SPACE) for one in root.iter()} <= ELEMENTS


def test_each_thing_is_one_group_that_can_be_drawn_alone() -> None:
    marks = (
        box(0.0, 0.0, 1.0, 1.0, "parts[a]"),
        box(2.0, 0.0, 3.0, 1.0, "parts[b]"),
        name((0.5, 0.5), "a", "parts[a]"),
    )
    picture = drawn(view(*marks), Dress(names={"parts[a]": "a"}, movable=frozenset({"parts[a]"})))
    root = parsed(picture)
    assert [one.get("data-of") for one in root] == list(picture.groups) == ["parts[a]", "parts[b]"]
    assert (root[0].get("tabindex"), root[0].get("role"), root[0].get("aria-label")) == ("0", "button", "a")
    assert root[1].get("tabindex") is None
    assert picture.svg == "".join(picture.groups.values())


def test_a_picture_is_in_millimetres_with_up_above() -> None:
    picture = drawn(view(box(0.5, 0.25, 1.0, 0.75, "parts[a]")), Dress())
    points = parsed(picture)[0][0].get("points")
    assert points == "500,-250 1000,-250 1000,-750 500,-750"
    left, top, wide, high = picture.box
    assert left < 500 and left + wide > 1000 and top < -750 and top + high > -250


def test_what_is_shown_on_demand_needs_no_room() -> None:
    near, far = box(0.0, 0.0, 1.0, 1.0, "parts[a]"), box(9.0, 0.0, 10.0, 1.0, "parts[a].open")
    layers = {"parts[a].open": "moves"}
    small = drawn(view(near, far), Dress(layers=layers, aside=frozenset({"moves"})))
    assert small.box == drawn(view(near), Dress()).box
    assert 'data-layer="moves"' in small.groups["parts[a].open"]
    assert drawn(view(near, far), Dress(layers=layers)).box[2] > 9000


def test_a_picture_of_nothing_still_has_a_size() -> None:
    assert drawn(view(), Dress()).box[2:] == drawn(view(box(0.0, 0.0, 0.1, 0.1, "a")), Dress()).box[2:]


# ---------------------------------------------------------------------- names


def places(*marks: Mark, letter: float = 100.0) -> dict[str, Placed | None]:
    groups: dict[str, list[Mark]] = {}
    for mark in marks:
        groups.setdefault(mark.of, []).append(mark)
    return {text.words: place for text, place in named(groups, letter).items()}


def test_a_name_stands_in_the_middle_of_its_thing() -> None:
    found = places(box(0.0, 0.0, 2.0, 1.0, "a"), name((1.0, 0.5), "bench", "a"))["bench"]
    assert found is not None and (found.x, found.y, found.is_turned) == (1000.0, -500.0, False)


def test_a_name_goes_where_its_thing_can_be_seen() -> None:
    under, over = box(0.0, 0.0, 2.0, 2.0, "a"), box(0.4, 0.4, 1.6, 1.6, "b")
    found = places(under, name((1.0, 1.0), "boat", "a"), over, name((1.0, 1.0), "wheels", "b"))
    boat, wheels = found["boat"], found["wheels"]
    assert boat is not None and wheels is not None
    assert not boat.box.meets(Box(400.0, -1600.0, 1600.0, -400.0)), "it would lie under what stands on it"
    assert (wheels.x, wheels.y) == (1000.0, -1000.0)


def test_a_name_turns_or_breaks_before_it_shrinks_and_is_left_out_at_last() -> None:
    tall = places(box(0.0, 0.0, 0.25, 2.0, "a"), name((0.125, 1.0), "spare-wheel", "a"))["spare-wheel"]
    assert tall is not None and tall.is_turned
    square = places(box(0.0, 0.0, 0.5, 0.5, "a"), name((0.25, 0.25), "launch-wheels", "a"))["launch-wheels"]
    assert square is not None and square.lines == ("launch-", "wheels")
    tiny = places(box(0.0, 0.0, 0.1, 0.1, "a"), name((0.05, 0.05), "smoke-alarm", "a"))["smoke-alarm"]
    assert tiny is not None and tiny.size < 30.0 and tiny.is_near, "it is read when somebody comes closer"
    assert not tall.is_near and not square.is_near
    assert places(box(0.0, 0.0, 0.04, 0.04, "a"), name((0.02, 0.02), "smoke-alarm", "a"))["smoke-alarm"] is None


def test_no_words_lie_on_a_sign_and_a_fault_lies_over_all_else() -> None:
    sign = Symbol((1.0, 0.5), "datum", "cg")
    found = places(box(0.0, 0.0, 2.0, 1.0, "a"), name((1.0, 0.5), "duffels", "a"), sign)["duffels"]
    assert found is not None and not found.box.meets(Box(920.0, -580.0, 1080.0, -420.0))
    fault = (Symbol((1.0, 0.5), "fault", "f"), Text((1.0, 0.5), "fault 3", "f"))
    assert list(drawn(view(*fault, box(0.0, 0.0, 2.0, 1.0, "ladder")), Dress()).groups) == ["ladder", "f"]
    row = Dimension((0.0, 0.5), (2.0, 0.5), "2 in", "ladder", "right")
    with_row = drawn(view(*fault, row, box(0.0, 0.0, 2.0, 1.0, "ladder")), Dress())
    assert list(with_row.groups) == ["ladder", "ladder.measures", "f"], "the lines of a measure cross no fault's words"


def test_words_beside_a_sign_take_the_side_that_is_free() -> None:
    first, other = Symbol((1.0, 1.0), "fault", "f"), Symbol((1.3, 1.0), "fault", "g")
    found = places(first, Text((1.0, 1.0), "fault 3", "f", "small"), other)["fault 3"]
    assert found is not None and found.box.right < 1000.0


def test_words_know_what_they_lie_on() -> None:
    on = places(box(0.0, 0.0, 2.0, 1.0, "a", "metal"), name((1.0, 0.5), "tank", "a"))["tank"]
    over = places(box(0.0, 0.0, 2.0, 1.0, "a", "none"), name((1.0, 0.5), "solar", "a"))["solar"]
    assert on is not None and over is not None and (on.on, on.is_free, over.is_free) == ("metal", False, True)


def test_a_measure_is_never_torn() -> None:
    found = places(box(0.0, 0.0, 0.7, 0.7, "a"), name((0.35, 0.35), "roof-fan 14 1/4 x 14 1/4", "a"))
    placed = found["roof-fan 14 1/4 x 14 1/4"]
    assert placed is None or placed.lines in {("roof-fan 14 1/4 x 14 1/4",), ("roof-fan", "14 1/4 x 14 1/4")}


def test_words_in_the_open_stand_beside_their_sign() -> None:
    sign, words = Symbol((1.0, 1.0), "fault", "f"), Text((1.0, 1.0), "fault 3", "f", "small")
    found = places(sign, words)["fault 3"]
    assert found is not None and found.is_free and found.box.left > 1000.0


SIZES = st.floats(0.05, 3.0)
THINGS = st.lists(st.tuples(st.floats(0.0, 6.0), st.floats(0.0, 2.0), SIZES, SIZES), min_size=1, max_size=40)


@given(THINGS)
def test_no_name_lies_on_another_nor_outside_its_thing_nor_under_a_later_one(things: list[tuple[float, ...]]) -> None:
    marks: list[Mark] = []
    for number, (x, y, wide, high) in enumerate(things):
        of = f"parts[{number}]"
        marks += [box(x, y, x + wide, y + high, of), name((x + wide / 2.0, y + high / 2.0), f"thing-{number}", of)]
    found = [one for one in places(*marks).items() if one[1] is not None]
    for index, (words, place) in enumerate(found):
        assert place is not None
        for _, other in found[index + 1 :]:
            assert other is not None and not place.box.meets(other.box)
        own = int(words.removeprefix("thing-"))
        for later, (x, y, wide, high) in enumerate(things):
            around = Box(1000.0 * x, -1000.0 * (y + high), 1000.0 * (x + wide), -1000.0 * y)
            if later > own:
                assert not place.box.meets(around)
            elif later == own:
                assert around.left - 1.0 <= place.box.left and place.box.right <= around.right + 1.0


# ---------------------------------------------------------------------- measures


@given(st.lists(st.floats(-1000.0, 1000.0), max_size=30), st.floats(1.0, 50.0))
def test_places_moved_apart_keep_their_order_and_their_middle(wanted: list[float], pitch: float) -> None:
    ordered = sorted(wanted)
    found = apart(ordered, pitch)
    assert len(found) == len(ordered)
    assert all(other - one >= pitch - 1e-6 for one, other in pairwise(found))
    assert sum(found) == pytest.approx(sum(ordered), abs=1e-6 * (1 + len(ordered)) * 1000.0)


def test_places_far_enough_apart_stay() -> None:
    assert apart([0.0, 10.0, 25.0], 5.0) == [0.0, 10.0, 25.0]


def test_a_row_of_studs_reads_at_its_studs() -> None:
    core = Box(0.0, -2000.0, 4000.0, 0.0)
    row = [Dimension((0.0, 2.0), (at, 2.0), f"{at}", "frame.studs", "above", is_running=True) for at in (0.4, 0.8, 3.6)]
    written = measured(row, core, 60.0)
    places = [float(one) for one in re.findall(r'<text[^>]* x="([-\d.]+)"', written.groups["frame.studs"])]
    assert places == [400.0, 800.0, 3600.0]
    assert written.box.top < core.top and written.box.bottom == core.bottom


def test_a_tight_row_turns_and_its_words_keep_apart() -> None:
    core = Box(0.0, -2000.0, 4000.0, 0.0)
    row = [Dimension((0.0, 0.0), (at, 0.0), "159 1/16", "o", "below", is_running=True) for at in (1.0, 1.01, 1.02, 3.0)]
    svg = measured(row, core, 60.0).groups["o"]
    places = [float(one) for one in re.findall(r'<text[^>]* x="([-\d.]+)"', svg)]
    assert svg.count("rotate(-90") == 4
    assert all(other - one >= 60.0 * 0.85 for one, other in pairwise(places))
    assert places[-1] == 3000.0


def test_notes_stand_in_a_column_clear_of_the_view() -> None:
    core = Box(0.0, -1000.0, 2000.0, 0.0)
    notes = [Leader((1.0, 0.5), "liner ply 1/4", "a"), Leader((1.0, 0.5), "foam", "b")]
    written = led(notes, core, 60.0, False)
    lefts = [float(re.findall(r'<text[^>]* x="([-\d.]+)"', svg)[0]) for svg in written.groups.values()]
    heights = [float(re.findall(r'<text[^>]* y="([-\d.]+)"', svg)[0]) for svg in written.groups.values()]
    assert all(left > core.right for left in lefts)
    assert abs(heights[0] - heights[1]) > 60.0 * 0.85
    assert written.box.right > max(lefts)


def test_letters_read_where_the_whole_picture_fits_the_screen() -> None:
    flat = drawn(view(box(0.0, 0.0, 8.0, 2.0, "a"), Text((1.0, 3.0), "x", "b")), Dress())
    size = float(re.findall(r'font-size="([\d.]+)"', flat.svg)[0])
    assert size == pytest.approx(8000.0 * LETTER)
    high = drawn(view(box(0.0, 0.0, 1.0, 3.0, "a"), Text((0.5, 2.9), "x", "b")), Dress())
    assert float(re.findall(r'font-size="([\d.]+)"', high.svg)[0]) == pytest.approx(3000.0 * LETTER / SCREEN)


def test_words_in_the_open_are_never_hidden_by_what_is_drawn_later() -> None:
    later = box(0.5, 0.5, 1.5, 1.5, "b")
    found = places(Text((1.0, 1.0), "vent-low", "a"), later)["vent-low"]
    assert found is not None and not found.box.meets(Box(500.0, -1500.0, 1500.0, -500.0))
    first = places(later, Text((1.0, 1.2), "vent-low", "c"))["vent-low"]
    assert first is not None and (first.x, first.y) == (1000.0, -1200.0), "what is drawn earlier hides nothing"


def test_words_that_go_aside_are_led_to_their_point_and_others_are_not() -> None:
    crowd = [Text((1.0, 1.0), f"window-{number}", f"w{number}") for number in range(9)]
    found = [one for one in places(*crowd).values() if one is not None]
    led = [one for one in found if one.lead is not None]
    assert 0 < len(led) < len(found)
    for one in found:
        near = one.box.left - 250.0 <= 1000.0 <= one.box.right + 250.0 and (
            one.box.top - 250.0 <= -1000.0 <= one.box.bottom + 250.0
        )
        assert (one.lead is None) == near or (one.lead is not None and not near)
        if one.lead is not None:
            x, y, to_x, to_y = one.lead
            assert (to_x, to_y) == (1000.0, -1000.0)
            assert one.box.left <= x <= one.box.right and one.box.top <= y <= one.box.bottom
    drawing = drawn(view(*crowd), Dress())
    assert drawing.svg.count('class="ln dimension"') > 0


def test_words_beside_a_sign_avoid_edges_as_far_as_that_goes() -> None:
    sign, edge = Symbol((1.0, 1.0), "fault", "f"), box(1.0, 1.0, 3.0, 2.0, "hole", "none")
    found = places(edge, sign, Text((1.0, 1.0), "fault 1", "f", "small"))["fault 1"]
    assert found is not None and not found.box.meets(Box(1000.0, -1001.0, 3000.0, -999.0))


def test_words_without_room_are_left_to_the_key_and_never_shown_as_words() -> None:
    picture = drawn(
        view(box(0.0, 0.0, 4.0, 2.0, "a"), box(1.0, 1.0, 1.01, 1.01, "b"), name((1.005, 1.005), "co", "b")), Dress()
    )
    (text,) = [one for one in parsed(picture).iter(f"{SPACE}text") if one.text == "co"]
    assert "keyed" in (text.get("class") or "").split()


def test_what_stands_beside_a_view_is_clear_of_words_that_reach_out_of_it() -> None:
    words = Text((1.0, 1.05), "a name that reaches out of the view", "a", may_move=False)
    row = [
        Dimension((0.0, 1.0), (0.1, 1.0), "L0", "f", "above", is_running=True),
        Dimension((0.0, 1.0), (1.0, 1.0), "L1", "f", "above", is_running=True),
    ]
    picture = drawn(view(box(0.0, 0.0, 2.0, 1.0, "a"), words, *row), Dress())
    assert over_each_other(picture) == [] and outside(picture) == []


def test_what_stands_in_or_on_a_thing_says_so_to_the_page_that_moves_it_along() -> None:
    dress = Dress(carried_by={"parts[a]": 'parts["b"]'})
    groups = drawn(view(box(0.0, 0.0, 0.1, 0.1, "parts[a]"), box(0.0, 0.0, 0.1, 0.1, "parts[c]")), dress).groups
    assert ' data-on="parts[&quot;b&quot;]"' in groups["parts[a]"]
    assert "data-on" not in groups["parts[c]"]
