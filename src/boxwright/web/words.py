"""The words of the trade on a screen, each with one line that says what it is; all others are plain."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache

from boxwright.web import contract

WORDS: dict[str, str] = {
    "all up": "All that the trailer weighs with what is in it.",
    "ball": "The knob at the rear of the tow vehicle on which the front of the trailer rests.",
    "bay": "The room in a wall between one stud and the next.",
    "bay card": "What must be in a bay before it is closed, to be taped on the wall there.",
    "beside": "How far the edge of a hole is from the nearest member on each side of it.",
    "bow": "One of the ribs that bear the roof, from the left wall to the right.",
    "burner": "Where fuel burns in a heater.",
    "cargo": "What is carried and not built in.",
    "change-over": "Turning what is set up for the road into what is set up for the night, and back.",
    "cross-section": "The trailer as if it were sawn through from left to right.",
    "current": "How much electricity flows, in amperes.",
    "cuts": "The members a hole would cut.",
    "cycling": "Going off and on by itself, because the least heat of a heater is more than the room loses.",
    "dew point": "How cold a thing may be before the damp of the air settles on it.",
    "doubt": "How far a number may be off, by what is written of it.",
    "entry": "One reading of a tape, a scale or the eye, as it was put down.",
    "face": "A wall, the roof or the floor, as warmth goes through it.",
    "framing": "The bars that carry skin and floor.",
    "free area": "What is left of an opening for air to go through.",
    "headroom": "The free height over the floor or over a bed.",
    "hole": "A page for one opening: its place, its size, what is behind it.",
    "humidity": "How damp the air is; at 100 % water settles from it.",
    "layer": "One of the sheets of a wall, from the skin to the room: skin, foam, liner.",
    "load": "What is aboard on one kind of trip: things, water, people.",
    "members": "Studs, bows and the bars of the floor.",
    "order sheet": "What the trailer's builder is to build, with boxes for the answer.",
    "overhead": "What hangs higher than a head.",
    "receiving sheet": "What to measure on the day the trailer comes, with what was ordered beside it.",
    "revision": "The letter of an order: it changes whenever what was asked changes.",
    "rough": "The size of the hole itself; what goes into it is a little smaller.",
    "sawn": "Whether the hole is in the wall already.",
    "sections": "A wall as if it were sawn through level: what lies behind what.",
    "sill": "The lower edge of an opening.",
    "skin": "The outer sheet of the trailer.",
    "stage": "A step of the build that ends with a trailer that can be used.",
    "story stick": "A strip of paper at full size with every stud on it, to be held against the wall.",
    "stud": "One of the upright bars in a wall.",
    "swings": "Which way a leaf opens.",
    "tank": "What holds water or fuel.",
    "tape plan": "What stands on the floor, as measures from the front and from the left.",
    "ticked": "Said to be in place by whoever looked: done: yes.",
    "tow": "The answer whether it may go on the road so.",
    "walk round": "What to look at before every trip, in order.",
    "way out": "An opening that somebody inside can open and get through.",
}
"""Every word of the trade that stands in a heading or as the label of a number."""
SEVERAL = {"way out": "ways out"}
"""What several are called, where that is not the word with an s."""


@cache
def _pattern(word: str) -> re.Pattern[str]:
    several = re.escape(SEVERAL.get(word, f"{word}s"))
    return re.compile(rf"(?<![\w-])(?:{re.escape(word)}|{several})(?![\w-])", re.IGNORECASE)


def words_in(labels: Iterable[str]) -> list[contract.Labelled]:
    """Return the words of the trade in some labels, each with its line, in the order of the alphabet."""
    text = "\n".join(labels)
    found = [word for word in WORDS if _pattern(word).search(text)]
    return [contract.Labelled(label=word[:1].upper() + word[1:], text=WORDS[word]) for word in found]


def without_words(label: str) -> str:
    """Return what is left of a label without the words of the trade."""
    for word in sorted(WORDS, key=len, reverse=True):
        label = _pattern(word).sub(" ", label)
    return label


def labels_of(
    pictures: Iterable[contract.Picture],
    tables: Iterable[contract.Table],
    charts: Iterable[contract.Chart],
    pages: Iterable[contract.Page],
) -> Iterator[str]:
    """Yield every heading and every label of a number of a screen."""
    for picture in pictures:
        yield picture.title
        yield from (one.label for one in picture.layers)
    for table in tables:
        yield table.title
        yield from table.columns
    yield from (one.title for one in charts)
    yield from (one.title for one in pages)
