"""What a form puts down is what the command line puts down; what cannot be read is refused and changes nothing."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

import pytest

from boxwright.book.readings import EXAMPLES, put_down, typed_readings, with_rest
from boxwright.book.starter import starter
from boxwright.web.forms import KINDS, measures, put_measures, put_reading, readings
from boxwright.web.gestures import Refused
from boxwright.web.session import Session
from tests.web.live import ROOT

TODAY = date(2026, 11, 28)
SAME: dict[str, tuple[dict[str, str], str]] = {
    "ticket": ({"axles": "1725", "tongue": "235", "stage": "measure"}, "ticket axles=1725 tongue=235"),
    "scale": ({"tongue": "235", "with": "bathroom scale", "stage": "safe"}, "scale tongue=235"),
    "plank": ({"reading": "62", "to_scale": "48", "to_ball": "12", "stage": "safe"},
              "plank reading=62 to_scale=48 to_ball=12"),
    "part": ({"of": "boat", "weight": "112 lb", "note": "wet"}, "part boat=112 lb"),
    "studs": ({"of": "left", "values": "7=112 3/8 8=128 1/16 9=removed"}, "studs left 7=112 3/8 8=128 1/16 9=removed"),
    "bows": ({"values": "0=0  1=16 1/8"}, "bows 0=0 1=16 1/8"),
    "cross-members": ({"values": "0=2 1=18", "with": "tape"}, "cross-members 0=2 1=18"),
    "opening": ({"of": "side-door", "front": "16 5/8", "rear": "47 5/8"}, "opening side-door front=16 5/8 rear=47 5/8"),
    "body": ({"of": "inside", "length": "168", "width-front": "79 7/8", "diagonal-2": "186 1/4"},
             "body inside length=168 width-front=79 7/8 diagonal-2=186 1/4"),
    "moisture": ({"at": "floor x160 right", "wood": "19 %"}, "moisture at=floor x160 right wood=19 %"),
}  # fmt: skip


@pytest.fixture
def session() -> Session:
    return Session((ROOT / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8"), TODAY)


@pytest.mark.parametrize("kind", SAME)
def test_a_form_puts_down_what_the_command_line_does(session: Session, kind: str) -> None:
    values, line = SAME[kind]
    rest = dict.fromkeys(("with", "within", "stage", "load", "note"), "") | {"date": TODAY.isoformat()} | values
    typed = [with_rest(one, rest) for one in typed_readings(line.split(" "), session.reading.rig)]
    wanted = put_down(session.reading, typed)[0].document.text
    made = put_reading(session, kind, values).text
    assert made == wanted
    assert made != session.text
    before = session.text
    session.become(put_reading(session, kind, values), 1.0)
    session.undo()
    assert session.text == before


def test_every_kind_of_reading_but_one_is_asked_and_only_what_can_be_read() -> None:
    assert set(SAME) == set(KINDS)
    assert set(EXAMPLES) - set(KINDS) == {"weighbridge"}  # a ticket under another name
    whimbrel = Session((ROOT / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8"), TODAY)
    assert [one.name for one in readings(whimbrel)] == list(KINDS)
    bare = Session(starter("Fern", {"country": "US-NC"}), TODAY)
    assert {"part", "opening"} & {one.name for one in readings(bare)} == set()
    ticket = next(one for one in readings(whimbrel) if one.name == "ticket")
    stage = next(one for one in ticket.fields if one.name == "stage")
    assert stage.text == "foam" or stage.text in {one.name for one in stage.options}
    assert not any(one.name == "stage" for form in readings(bare) if form.name == "studs" for one in form.fields)


@pytest.mark.parametrize(
    ("kind", "values", "says"),
    [
        ("ticket", {}, "no value"),
        ("ticket", {"axles": "heavy", "stage": "measure"}, "heavy"),
        ("studs", {"of": "left", "values": "112 3/8"}, "no value"),
        ("studs", {"of": "ceiling", "values": "7=112"}, "ceiling"),
        ("part", {"of": "no such", "weight": "3"}, "no such"),
        ("part", {"of": "boat"}, "no value"),
        ("opening", {"of": "side-door", "front": "[1, 2"}, "front"),
        ("ticket", {"axles": "1725", "stage": "never"}, "never"),
        ("nothing", {"axles": "1725"}, "nothing"),
        ("moisture", {"at": "x: {", "wood": "unknown"}, "no reading"),
    ],
)
def test_what_cannot_be_read_is_refused(session: Session, kind: str, values: Mapping[str, str], says: str) -> None:
    with pytest.raises(Refused, match=says):
        put_reading(session, kind, values)


def test_hostile_text_is_one_value(session: Session) -> None:
    made = put_reading(
        session, "scale", {"tongue": "235", "stage": "safe", "note": "x}, parts: {a: {weight: 1}} # \n- b"}
    )
    again = Session(made.text, TODAY)
    assert [one.name for one in again.reading.rig.parts] == [one.name for one in session.reading.rig.parts]
    assert "x}, parts: {a: {weight: 1}} # - b" in str(again.document.tree["measured"])


def test_first_measures_are_asked_until_they_are_written() -> None:
    session = Session("", TODAY)
    (form,) = measures(session)
    assert form.fields[0].name == "units"
    session.become(put_measures(session, {"units": "metric", "length": "3660", "width": "1950", "height": "1990"}), 1.0)
    assert session.reading.rig.trailer.body.length is not None
    assert session.reading.rig.trailer.body.length.best == pytest.approx(3.66)
    assert {"units", "length"} & {one.name for one in measures(session)[0].fields} == set()
    session.undo()
    assert session.text == ""
    with pytest.raises(Refused, match="quite long"):
        put_measures(session, {"length": "quite long"})
    whimbrel = Session((ROOT / "rigs" / "whimbrel.yaml").read_text(encoding="utf-8"), TODAY)
    assert measures(whimbrel) == []
