"""What the page asks in forms: the first measures of a trailer, and a reading of a scale, a tape or a meter."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from boxwright.book.measures import needs_units, still_asked, with_measures
from boxwright.book.readings import EXAMPLES, STAGED, WALLS, put_down, typed_readings, with_rest
from boxwright.book.starter import NotUnderstood
from boxwright.rig.document import Document
from boxwright.rig.rig import Rig
from boxwright.web.contract import Choice, Form, FormField
from boxwright.web.gestures import Refused
from boxwright.web.session import Session

MOST_TYPED = 400
OF, VALUES = "of", "values"
"""What a reading is of, and places by number, as ``7=112 3/8 8=128 1/16``."""
NUMBERED = "the number from the front, from 0, and its place: 7=112 3/8 8=128 1/16; 9=removed where one is missing"


class Kind(NamedTuple):
    """A kind of reading as it is asked: its name, what it is, and its fields with their explanations."""

    label: str
    explains: str
    fields: tuple[tuple[str, str, str], ...]


KINDS = {
    "ticket": Kind("Scale ticket", "a public scale, the wheels on the platform", (
        ("axles", "On the axles", "the wheels of the trailer on the platform, ball on the hitch"),
        ("tongue", "On the ball", "where it was weighed too"),
        ("total", "Trailer alone", "unhitched, wheels and jack on the platform"),
    )),
    "scale": Kind("Scale under the ball", "a bathroom scale or a ball scale, trailer level", (
        ("tongue", "On the ball", "what it reads"),
    )),
    "plank": Kind("Plank and scale", "a plank over a pipe and a scale, for more than the scale takes", (
        ("reading", "Scale reads", "with the ball on the plank"),
        ("to_scale", "Pipe to scale", "along the plank"),
        ("to_ball", "Pipe to ball", "along the plank"),
        ("bare", "Scale reads without the ball", "the plank's own weight on it"),
    )),
    "part": Kind("A part on a scale", "what one thing weighs", (
        (OF, "Which part", "as it is called in the rig"),
        ("weight", "It weighs", "of the whole line"),
    )),
    "studs": Kind("Studs by the tape", "where the studs of a wall are", (
        (OF, "Which wall", "seen from inside, looking forward"),
        (VALUES, "Studs", f"middle of each, behind the front wall: {NUMBERED}"),
    )),
    "bows": Kind("Roof bows by the tape", "where the bows are", (
        (VALUES, "Bows", f"middle of each, behind the front wall: {NUMBERED}"),
    )),
    "cross-members": Kind("Cross-members by the tape", "where the beams under the floor are", (
        (VALUES, "Cross-members", f"middle of each, behind the front wall: {NUMBERED}"),
    )),
    "opening": Kind("An opening by the tape", "where a door or a window came to be", (
        (OF, "Which opening", "as it is called in the rig"),
        ("front", "Front edge", "behind the front wall"),
        ("rear", "Rear edge", "behind the front wall"),
        ("left", "Left edge", "from the left wall, where it is in the front or the rear wall"),
        ("right", "Right edge", "from the left wall, where it is in the front or the rear wall"),
        ("bottom", "Lower edge", "above the deck"),
        ("top", "Upper edge", "above the deck"),
    )),
    "body": Kind("The box by the tape", "its measures as it came", (
        (OF, "Which side", "inside or outside"),
        ("length", "Length", "front to rear"),
        ("width-front", "Width at the front", "left to right"),
        ("width-rear", "Width at the rear", "left to right"),
        ("height-left", "Height, left", "deck to bow"),
        ("height-right", "Height, right", "deck to bow"),
        ("diagonal-1", "One diagonal of the floor", "front left to rear right"),
        ("diagonal-2", "The other diagonal", "front right to rear left"),
    )),
    "moisture": Kind("How wet wood is", "a moisture meter pressed into wood", (
        ("at", "Where", "floor x160 right"),
        ("wood", "It reads", "19 %"),
    )),
}  # fmt: skip
REST = (
    ("with", "Read with", "the instrument, such as public scale, bathroom scale, tape"),
    ("within", "Good to", "how far off it may be, such as 2 lb; left out: as is usual for it"),
    ("stage", "At stage", "how far the trailer was built when it was weighed"),
    ("load", "Load state", "what was aboard"),
    ("date", "Date", "2026-11-28; left out: today"),
    ("note", "Note", "anything else worth keeping"),
)
FIRST = frozenset({"length", "width", "height", "coupler", "axle"})
"""Without these nothing is drawn and nothing balances."""
NEEDED = frozenset({OF, VALUES, "weight", "reading", "to_scale", "to_ball", "at", "wood"})


# ---------------------------------------------------------------------- readings


def readings(session: Session) -> list[Form]:
    """Return a form for each kind of reading that can be put down for this rig."""
    rig = session.reading.rig
    found = []
    for kind, asked in KINDS.items():
        options = _options(kind, rig)
        if any(name == OF for name, _, _ in asked.fields) and not options:
            continue  # there is nothing yet that could be read
        fields = [_field(name, label, says, options if name == OF else []) for name, label, says in asked.fields]
        found.append(Form(name=kind, label=asked.label, explains=asked.explains, fields=fields + _rest(kind, session)))
    return found


def _options(kind: str, rig: Rig) -> list[str]:
    of = {
        "part": [one.name for one in rig.parts],
        "opening": [one.name for one in rig.openings],
        "studs": list(WALLS),
        "body": ["inside", "outside"],
    }
    return of.get(kind, [])


def _rest(kind: str, session: Session) -> list[FormField]:
    rig = session.reading.rig
    stages = [one.name for one in rig.stages_in_order]
    today = stages[rig.header.stage_today] if stages else ""
    options = {"stage": stages, "load": ["", *(one.name for one in rig.loads)]}
    begun = {"stage": today, "date": session.today.isoformat()}
    asked = [one for one in REST if kind in STAGED or one[0] not in options]
    return [_field(name, label, says, options.get(name, []), begun.get(name, "")) for name, label, says in asked
            if name not in options or len(options[name]) > 0]  # fmt: skip


def _field(name: str, label: str, explains: str, options: Sequence[str], text: str = "") -> FormField:
    choices = [Choice(name=one, label=one or "not said") for one in options]
    return FormField(name=name, label=label, explains=explains, text=text, options=choices, is_needed=name in NEEDED)


def put_reading(session: Session, kind: str, values: Mapping[str, str]) -> Document:
    """Return the document with a reading from a form as an entry of its own; what cannot be read is refused."""
    if kind not in KINDS:
        raise Refused(f'there is no reading "{kind}"')
    typed = {key: " ".join(text[:MOST_TYPED].split()) for key, text in values.items()}
    given = {key: text for key, text in typed.items() if text}
    known = [name for name, _, _ in KINDS[kind].fields]
    of, pairs = given.get(OF, ""), [f"{key}={given[key]}" for key in known if key in given and key not in {OF, VALUES}]
    if kind == "part":
        words = [kind, f"{of}={given.get('weight', '')}"]
    else:
        words = [kind, *([of] if of else []), *given.get(VALUES, "").split(), *pairs]
    rest = {"date": given.get("date", session.today.isoformat())}
    rest |= {key: given.get(key, "") for key in ("with", "within", "stage", "load", "note")}
    try:
        if not pairs and VALUES not in given:
            raise NotUnderstood(f"the reading says no value; at the command line it is written {EXAMPLES[kind]}")
        entries = [with_rest(one, rest) for one in typed_readings(words, session.reading.rig)]
        return put_down(session.reading, entries)[0].document
    except NotUnderstood as reason:
        raise Refused(str(reason)) from None


# ---------------------------------------------------------------------- first measures


def measures(session: Session) -> list[Form]:
    """Return the form of the measures that nobody has written yet; none where all are, or parts stand in a box."""
    asked = still_asked(session.document)
    if session.reading.rig.parts and not FIRST & {one.asked.word for one in asked}:
        return []
    fields = [
        FormField(name=one.asked.word, label=f"{one.asked.question[:1].upper()}{one.asked.question[1:]}",
                  explains=f"read it: {one.asked.read_it}")
        for one in asked
    ]  # fmt: skip
    if not fields:
        return []
    if needs_units(session.document):
        options = [Choice(name="us", label="inches and pounds"), Choice(name="metric", label="millimetres, kilograms")]
        fields.insert(0, FormField(name="units", label="Bare numbers are in", explains="any value may carry its own",
                                   text="us", options=options))  # fmt: skip
    says = "Leave out what you do not know yet. 12 ft, 6' 5 3/4\", 2.5 m, about 45, 40..55 are read too."
    return [Form(name="measures", label="First measures", explains=says, fields=fields)]


def put_measures(session: Session, values: Mapping[str, str]) -> Document:
    """Return the document with measures from the form; what cannot be read is refused."""
    typed = {key: text[:MOST_TYPED] for key, text in values.items()}
    try:
        return with_measures(session.document, session.reading.rig, typed)
    except NotUnderstood as reason:
        raise Refused(str(reason)) from None
