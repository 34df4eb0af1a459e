"""The earlier texts of the rig file, for its screen: a line about each, and how one differs from the text as it is."""

from __future__ import annotations

import re
import time
from collections.abc import Iterator, Sequence
from difflib import SequenceMatcher
from functools import lru_cache
from itertools import pairwise
from typing import Literal

from boxwright.web.contract import Difference, DifferentLine, EarlierText
from boxwright.web.past import Earlier, Past

AROUND = 2
"""Lines shown before and after what differs."""
MOST_SHOWN = 1500
"""Lines of a difference that are shown; more are no help to anybody."""
MOST_COMPARED = 4_000_000
"""Lines of one side times lines of the other beyond which they are not looked through for what they have in common."""
MOST_NAMED = 3
KILO = 1000
_KEY = re.compile(r"""\s*(?:- )?["']?([^\s"'#:{}][^"':{}]*?)["']?\s*:""")
Span = tuple[str, int, int, int, int]


def listed(past: Past, now_text: str) -> list[EarlierText]:
    """Return the earlier texts, the newest first, each with what was changed when another took its place."""
    every = past.every()
    names = [one.name for one in every]
    texts = [_text(past, name) for name in names]
    said = [_changed(then, after) for then, after in pairwise([*texts, now_text])]
    return [
        EarlierText(name=one.name, until=until_words(one.at, time.time()), says=says, size=_size(one))
        for one, says in zip(reversed(every), reversed(said), strict=True)
    ]


def difference(past: Past, name: str, now_text: str) -> Difference | None:
    """Return how an earlier text differs from the text as it is; None where it is not kept any more."""
    data = past.read(name)
    if data is None:
        return None
    then, now = data.decode("utf-8", "replace").splitlines(), now_text.splitlines()
    lines = list(_lines(then, now, _spans(then, now)))
    if len(lines) > MOST_SHOWN:
        lines = [
            *lines[:MOST_SHOWN],
            DifferentLine(side="gap", line=0, text=f"and {len(lines) - MOST_SHOWN} lines more"),
        ]
    return Difference(name=name, lines=lines)


def until_words(at: float, now: float) -> str:
    """Return the time at which a text was replaced, by the clock on the wall."""
    then, today = time.localtime(at), time.localtime(now)
    if then[:3] == today[:3]:
        return time.strftime("today %H:%M:%S", then)
    if then[:3] == time.localtime(now - 86_400.0)[:3]:
        return time.strftime("yesterday %H:%M", then)
    return time.strftime("%Y-%m-%d %H:%M", then)


def _size(one: Earlier) -> str:
    return f"{one.length / KILO:,.1f} kB" if one.length >= KILO else f"{one.length} bytes"


def _text(past: Past, name: str) -> str:
    return (past.read(name) or b"").decode("utf-8", "replace")


@lru_cache(maxsize=512)
def _changed(before: str, after: str) -> str:
    """Return in a few words what one text has that another has not."""
    then, now = before.splitlines(), after.splitlines()
    spans = [one for one in _spans(then, now) if one[0] != "equal"]
    lines = [line for _, a, b, c, d in spans for line in (*now[c:d], *then[a:b])]
    count = sum(max(b - a, d - c) for _, a, b, c, d in spans)
    if not count:
        return "nothing but how a line ends" if before != after else "nothing"
    found = dict.fromkeys(key[1].strip() for line in lines if (key := _KEY.match(line)))
    named = ", ".join(list(found)[:MOST_NAMED]) + (" and more" if len(found) > MOST_NAMED else "")
    amount = "one line" if count == 1 else f"{count} lines"
    return f"{named}: {amount}" if named else f"{amount}, notes or spacing"


def _spans(then: Sequence[str], now: Sequence[str]) -> list[Span]:
    """Return what two texts share and where they differ, line by line."""
    most = min(len(then), len(now))
    start = next((at for at in range(most) if then[at] != now[at]), most)
    end = next((at for at in range(most - start) if then[-1 - at] != now[-1 - at]), most - start)
    middle = then[start : len(then) - end], now[start : len(now) - end]
    inner: Sequence[Span]
    if len(middle[0]) * len(middle[1]) > MOST_COMPARED:
        inner = [("replace", 0, len(middle[0]), 0, len(middle[1]))]
    else:
        inner = SequenceMatcher(None, *middle, autojunk=False).get_opcodes()
    shifted = [(tag, a + start, b + start, c + start, d + start) for tag, a, b, c, d in inner]
    head, tail = (len(then) - end, len(then)), (len(now) - end, len(now))
    whole = [("equal", 0, start, 0, start), *shifted, ("equal", *head, *tail)]
    return [one for one in whole if one[1] < one[2] or one[3] < one[4]]


def _lines(then: Sequence[str], now: Sequence[str], spans: Sequence[Span]) -> Iterator[DifferentLine]:
    for number, (tag, a, b, c, d) in enumerate(spans):
        if tag != "equal":
            paired = b - a == d - c
            yield from (_line("then", at, then, now[c + at - a] if paired else "") for at in range(a, b))
            yield from (_line("now", at, now, then[a + at - c] if paired else "") for at in range(c, d))
            continue
        head = 0 if number == 0 else min(AROUND, d - c)
        tail = 0 if number == len(spans) - 1 else min(AROUND, d - c - head)
        yield from (DifferentLine(side="both", line=at + 1, text=now[at]) for at in range(c, c + head))
        if d - c > head + tail:
            yield DifferentLine(side="gap", line=0, text=f"{d - c - head - tail} lines the same")
        yield from (DifferentLine(side="both", line=at + 1, text=now[at]) for at in range(d - tail, d))


def _line(side: Literal["then", "now"], at: int, lines: Sequence[str], other: str) -> DifferentLine:
    """Return a line in three pieces: as in the other line, different, and again as in the other."""
    text = lines[at]
    most = min(len(text), len(other))
    start = next((one for one in range(most) if text[one] != other[one]), most)
    end = next((one for one in range(most - start) if text[-1 - one] != other[-1 - one]), most - start)
    stop = len(text) - end
    return DifferentLine(side=side, line=at + 1, text=text[start:stop], before=text[:start], after=text[stop:])
