"""The order, the reply beside each of its lines, and what is checked on delivery."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from math import hypot

import pytest

from boxwright.disciplines.frame.ordering import AskedOpening, Order, Reply, order_lines
from boxwright.disciplines.frame.receiving import differing, expected
from boxwright.disciplines.frame.result import Member, Result, Roof
from boxwright.disciplines.frame.tapes import Read
from boxwright.rig.compose import read_rig
from boxwright.rig.taped import lengths_read
from boxwright.units import Band, HeaderUnits, exactly
from tests.rig.fuzz_mutations import rig_text

INCHES = HeaderUnits("in", "lb", "F", "gal", "AWG", "USD", "US")
INCH = 0.0254


def read_reply(given: object) -> Reply:
    return Reply.model_validate(given, context={"header": INCHES})


def read_order(given: object) -> Order:
    return Order.model_validate(given, context={"header": INCHES})


@pytest.mark.parametrize(
    ("given", "answer"),
    [
        ({"answer": "yes"}, "yes"),
        ({"answer": "NO"}, "no"),
        ({"x": "17"}, "changed"),
        ({"answer": "yes", "price": "95"}, "yes"),
        ({"note": "will say on Monday"}, ""),
        ({"answer": "unknown"}, ""),
    ],
)
def test_a_reply_is_yes_no_or_the_builders_own_value(given: dict[str, str], answer: str) -> None:
    assert read_reply(given).answer == answer


def test_a_reply_alone_and_an_option_in_short_are_read() -> None:
    bare = {"what": "no lining", "price": "-180", "reply": "yes"}
    order = read_order({"options": {"bare": bare}, "reply": "2025-10-27"})
    ((name, option),) = order.options
    assert (name, option.price, option.reply and option.reply.answer) == ("bare", exactly(-180.0), "yes")
    assert order.reply is not None and order.reply.date == date(2025, 10, 27)
    hash(order)


def test_each_value_of_a_reply_stands_beside_what_was_asked_and_overwrites_nothing() -> None:
    reply = read_reply({"x": "17", "width": "31", "was": {"width": "30"}, "note": "jambs"})
    door = AskedOpening("openings[door]", "door", "trailer builder", (("x", exactly(16.5 * INCH)),), reply)
    mine = AskedOpening("openings[hole]", "hole", "", (), None)
    (line,) = order_lines(None, [door, mine])
    assert (line.name, line.answer, line.note) == ("door", "changed", "jambs")
    x, width = line.replied
    assert (x.key, x.asked, x.was) == ("x", exactly(16.5 * INCH), "")
    assert isinstance(x.given, Band) and x.given.best == pytest.approx(17 * INCH)
    assert (width.asked, width.was) == (None, "30")


def test_an_option_may_ask_for_a_value_of_the_file() -> None:
    order = read_order({"options": {"studs": {"asks": "frame.studs.every", "reply": {"value": "24"}}}})
    (line,) = order_lines(order, [], (("frame.studs.every", "16"),))
    assert [(one.asked, one.given) for one in line.replied] == [("16", "24")]


@pytest.mark.parametrize(
    ("written", "path"),
    [
        ("reply: {x: far}", "frame.order.options.bare.reply.x"),
        ("price: cheap", "frame.order.options.bare.price"),
        ("reply: perhaps", "frame.order.options.bare.reply"),
        ("colour: red", "frame.order.options.bare.colour"),
    ],
)
def test_a_mistake_in_one_option_names_its_line_and_costs_no_other(written: str, path: str) -> None:
    head = "units: {length: in, money: USD}\nframe:\n  order:\n    revision: B\n    options:\n      spare: {price: 9}\n"
    text = f"{head}      bare: {{{written}}}\n"
    reading = read_rig(text)
    said = [one for one in reading.problems if one.path.startswith(path)]
    assert said and said[0].line == 7
    framing = reading.rig.frame.framing
    assert framing is not None
    order = framing.order
    assert order is not None and order.revision == "B" and dict(order.options)["spare"].price == exactly(9.0)


def stud(number: int, built: float | None = None) -> Member:
    """Return a stud of a left wall with studs every 16 in."""
    place = number * 16 * INCH
    taped, on = (None, None) if built is None else (exactly(built * INCH), date(2026, 1, 19))
    return Member(
        "frame.studs", f"L{number}", "stud", "left", number, place, taped, exactly(place), taped is not None,
        "measured[studs-left]", on, exactly(INCH), None, "up", 0.0, 2.0, (),
    )  # fmt: skip


EMPTY = Result("frame", (), (), (), Roof("flat", 2.0, 0.0, 0.0), None, (), (), (), (), (), (), ())


def test_every_ordered_value_is_on_the_list_with_a_tolerance_or_as_a_stamp() -> None:
    rig = read_rig(rig_text("whimbrel")).rig
    found = expected(rig.trailer, replace(EMPTY, members=(stud(0), stud(7))))
    groups = list(dict.fromkeys(one.group for one in found))
    assert groups == ["box", "studs left", "running gear", "weights", "plates and stamps", "works", "tight", "sound",
                      "papers"]  # fmt: skip
    assert all(one.mark == "common practice, no source" for one in found if one.within is not None)
    assert all(one.how for one in found if one.quantity == "look")
    assert len({(one.group, one.what) for one in found}) == len(found)
    diagonals = [one for one in found if "diagonal" in one.what]
    # By hand: the diagonal of a floor of 168 x 80 in is the root of 168^2 + 80^2 = 186.08 in.
    assert [one.value and one.value.best / INCH for one in diagonals] == [pytest.approx(hypot(168, 80))] * 2
    gvwr = next(one for one in found if one.of == "trailer.gvwr")
    assert gvwr.value is not None and gvwr.value.best == pytest.approx(7000 * 0.45359237)


def test_what_was_read_stands_beside_it_and_the_newest_counts() -> None:
    rig = read_rig(rig_text("whimbrel")).rig
    older = Read("studs", "left", "7", exactly(112.1 * INCH), date(2026, 1, 19), "measured[a]")
    newer = Read("studs", "left", "7", exactly(112.5 * INCH), date(2026, 2, 19), "measured[b]")
    for readings in ((older, newer), (newer, older)):
        found = expected(rig.trailer, replace(EMPTY, members=(stud(7),)), readings)
        line = next(one for one in found if one.what == "stud 7")
        # By hand: 0.5 in is 12.7 mm, more than the 6 mm of the table.
        assert (line.entry, line.passes) == ("measured[b]", False)
        assert differing(found) == (line,)
    near = expected(rig.trailer, replace(EMPTY, members=(stud(7),)), (older,))
    assert next(one for one in near if one.what == "stud 7").passes is True
    assert next(one for one in near if one.what == "inside width, mid").passes is None


def test_what_the_frame_holds_as_built_counts_where_no_reading_is_given() -> None:
    rig = read_rig(rig_text("whimbrel")).rig
    line = next(one for one in expected(rig.trailer, replace(EMPTY, members=(stud(7, built=112.375),)))
                if one.what == "stud 7")  # fmt: skip
    assert (line.entry, line.passes) == ("measured[studs-left]", False)


def test_the_empty_weight_is_held_beside_the_first_ticket() -> None:
    rig = read_rig(rig_text("whimbrel").replace("empty: {cg_z", "empty: {weight: 1900, tongue: 230, cg_z")).rig
    found = {one.what: one for one in expected(rig.trailer, EMPTY, (), rig.measured)}
    weight = found["empty weight, unhitched"]
    # By hand: 1725 + 235 = 1960 lb stand against 1900 lb; 3 % of that are 57 lb.
    assert weight.read is not None and weight.read.best == pytest.approx(1960 * 0.45359237)
    assert weight.passes is False
    assert found["on the ball, empty and level"].passes is True


def test_lengths_are_read_from_every_kind_of_entry() -> None:
    document = read_rig(
        "units: {length: in}\nmeasured:\n"
        "  a: {date: 2026-01-19, what: tape, studs: left, values: {7: 112 3/8, 8: removed}}\n"
        "  b: {date: never, what: tape, opening: door, values: {front: 17}}\n"
        "  c: {what: tape, body: inside, values: {length: 168}}\n"
        "  d: {what: moisture, wood: 12 %}\n  e: {bows: roof, values: 3}\n"
    ).document
    found = lengths_read(document.tree, INCHES)
    assert [(one.kind, one.subject, one.key, one.on) for one in found] == [
        ("studs", "left", "7", date(2026, 1, 19)),
        ("studs", "left", "8", date(2026, 1, 19)),
        ("opening", "door", "front", None),
        ("body", "inside", "length", None),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("written", "answer", "note"),
    [
        ("no, 2 in rearward", "no", "2 in rearward"),
        ("yes, but 2 in rearward", "changed", "but 2 in rearward"),
        ("yes", "yes", ""),
    ],
)
def test_a_reply_in_words_is_never_a_plain_yes(written: str, answer: str, note: str) -> None:
    reply = Reply.model_validate({"answer": written})
    assert (reply.answer, reply.note) == (answer, note)
