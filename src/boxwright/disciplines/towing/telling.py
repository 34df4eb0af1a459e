"""How the rules of towing judge a number against a rating or a rule, and the words in which it is told."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from math import isfinite

from boxwright.disciplines.towing.law import Placed
from boxwright.disciplines.towing.result import Reading
from boxwright.disciplines.towing.sourced import PACKAGE
from boxwright.finding import Finding, Kind, listed
from boxwright.records import dataclass
from boxwright.source import Source, load_sources
from boxwright.units import Band, HeaderUnits, exactly, show, show_band

OWN_PLATE = "own-plate"
OWN_PAPERS = "own-papers"


@cache
def sources_named() -> dict[str, Source]:
    """Return the sources of the rules and tables by their key, read when the first rule speaks."""
    return load_sources(PACKAGE, with_checks=False)


@dataclass(frozen=True, slots=True)
class Question:
    """What a rule asks of one number: whose it is, in words, and what follows where it is out.

    ``rating_path`` is where the rating belongs in the rig file, ``read_it`` where a person finds it. ``least`` turns
    the rule round: the number must not be below the limit. ``words`` stand behind the sentence of a breach. ``is_read``
    says that somebody read the limit from a plate, so that a doubt of it is settled by reading it again.
    ``shown_as`` is the unit of the sentence where it is not the builder's own, such as the kN of a stamp.
    """

    code: str
    where: str
    number: str
    limit: str
    rating_path: str
    read_it: str
    unit: str = "kg"
    shown_as: str = ""
    kind: Kind = "stop"
    source: str = OWN_PLATE
    lever: str = ""
    act: str = ""
    words: str = ""
    least: bool = False
    could_stop: bool = True
    is_read: bool = True

    @property
    def said_in(self) -> str:
        """Return the unit in which the sentence says the number."""
        return self.shown_as or self.unit


def judged(asked: Question, reading: Reading, limit: Band | None, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield what is to be said of a number beside its limit; nothing where the whole band is inside.

    The best value or a permitted extreme outside is a breach, whatever has no weight yet; only the bad end outside,
    or anything unknown, is a question.
    """
    if limit is None or not limit.known:
        yield without_rating(asked, reading, shown_in)
        return
    margin = reading.best - limit.best if asked.least else limit.best - reading.best
    if is_breached(reading, limit, asked.least):
        yield _finding(asked, asked.kind, _breach(asked, reading, limit, shown_in), reading, limit, margin)
    elif is_open(reading, limit, asked.least):
        yield _finding(asked, "unknown", _question(asked, reading, limit, shown_in), reading, limit, margin)


def is_breached(reading: Reading, limit: Band, least: bool = False) -> bool:
    """Return whether a number is outside its limit by its best value or a permitted extreme."""
    if not is_answered(reading):
        return False
    if least:
        return min(reading.best, reading.permitted_low) < limit.best
    return max(reading.best, reading.permitted_high) > limit.best


def is_answered(reading: Reading) -> bool:
    """Return whether anything at all is known of a number."""
    return isfinite(reading.band.low) or isfinite(reading.band.high)


def is_open(reading: Reading, limit: Band, least: bool = False) -> bool:
    """Return whether a number may be outside its limit, by its doubt or by what is unknown.

    What has no weight leaves one end of a band endless; where it is the other end, the number still holds.
    """
    band = reading.band
    return band.low < limit.high if least else band.high > limit.low


def is_doubt_of_limit(asked: Question, reading: Reading, limit: Band) -> bool:
    """Return whether a number would hold if only its limit were known for sure, so that weighing settles nothing."""
    return asked.is_read and limit.low < limit.high and not is_open(reading, exactly(limit.best), asked.least)


def without_rating(asked: Question, reading: Reading | None, shown_in: HeaderUnits) -> Finding:
    """Return the question for a rating that nobody wrote: where to read it and where to write it."""
    now = f", and {asked.number} is {shown(reading, asked.said_in, shown_in)}" if reading is not None else ""
    return Finding(
        asked.code,
        asked.where,
        "unknown",
        f"{asked.limit} is not written{now}; read it {asked.read_it} and write it as {asked.rating_path}",
        number=_number(reading.best) if reading is not None else None,
        unit=asked.unit,
        source=asked.source,
        lever=asked.rating_path,
        act=f"Read {asked.limit} {asked.read_it}",
        minutes=MINUTES_TO_READ,
        could_stop=asked.could_stop,
        uses=("tow",),
        because=(asked.rating_path,),
    )


MINUTES_TO_READ = 2
MINUTES_TO_LOOK = 5
MINUTES_ON_A_PUBLIC_SCALE = 30


def shown(reading: Reading, unit: str, shown_in: HeaderUnits) -> str:
    """Return a reading in the builder's units, with its doubt."""
    return show_band(reading.band, unit, shown_in)


def name_of(path: str) -> str:
    """Return the builder's words for what a rig path names: ``left liner`` for a layer of the left wall."""
    if path == "trailer.empty":
        return "the empty trailer"
    words = [piece.split("]")[0] for piece in path.split("[")[1:]]
    return " ".join(words) or path


def in_words(path: str, name: str = "") -> str:
    """Return what a rig path holds as a sentence says it; ``name`` is the tow vehicle's, where it is about one."""
    words = IN_WORDS.get(path.partition("].")[2] or path)
    return path if words is None else f"{words} of {name}" if name and "]." in path else words


IN_WORDS = {
    "trailer.axles.track": "the track of the axles",
    "trailer.deck_height": "the height of the deck",
    "trailer.coupler_height": "the height of the coupler",
    "trailer.coupler_x": "the place of the coupler",
    "trailer.axles.x": "the place of the axles",
    "trailer.axles.rate": "the spring rate of the axles",
    "trailer.outside.over_fenders": "the width over the fenders",
    "trailer.outside.height": "the height over all",
    "trailer.outside.length": "the length of the body",
    "trailer.outside.length_overall": "the length over all",
    "ball_height": "the height of the ball",
    "bars.restores": "the restoring share of the bars",
    "wheelbase": "the wheelbase",
    "overhang": "how far the ball is behind the rear axle",
}
"""What the sentences of towing call the measures they ask for."""


def read_how(placed: Placed) -> str:
    """Return how a rule's own text was read, in brackets, with the document."""
    return f"{sources_named()[placed.rule.source].work}; {placed.rule.read_as}"


def legal_kind(placed: Placed) -> Kind:
    """Return what a broken rule is: a stop only where its text was read, a question where it could be one."""
    if placed.rule.kind == "stop":
        return "stop" if placed.rule.was_read else "unknown"
    return placed.rule.kind


def worth_asking(rules: list[Placed]) -> list[Placed]:
    """Return the rules for which a doubt is asked about: where a breach only advises, a doubt is not even that."""
    return [one for one in rules if one.rule.kind != "advice"]


def leading(broken_rules: list[Placed]) -> Placed:
    """Return the rule that decides of several broken ones: one that stops before one that asks, then the strictest."""
    order: list[Kind] = ["stop", "unknown", "limit", "advice"]
    return min(broken_rules, key=lambda one: order.index(legal_kind(one)))


def broken(
    code: str,
    where: str,
    says: str,
    broken_rules: list[Placed],
    act: str,
    number: float | None = None,
    limit: float | None = None,
    unit: str = "",
) -> Finding:
    """Return one finding for all rules of the route that are broken, the strictest first in ``broken_rules``.

    ``says`` tells of the ``leading`` one, which decides the kind; ``limit`` is its limit in the unit of ``number``.
    """
    first = leading(broken_rules)
    kind = legal_kind(first)
    said = f"{first.place} {first.rule.limit_text}"
    others = dict.fromkeys(f"{one.place} {one.rule.limit_text}" for one in broken_rules)
    also = f"; also {listed([one for one in others if one != said])}" if others.keys() - {said} else ""
    unread = "" if first.rule.was_read else "; that is too little to stop by, so read the rule before you rely on it"
    return Finding(
        code,
        where,
        kind,
        f"{says}{also} ({read_how(first)}){unread}",
        number=number,
        limit=limit,
        margin=limit - number if limit is not None and number is not None else None,
        unit=unit,
        source=first.rule.source,
        lever=where,
        act=act if kind == "stop" else f"{act}, or read the rule of {first.place} in its own words",
        could_stop=first.rule.kind == "stop",
        uses=("tow",),
        because=(where,),
    )


def missing(code: str, where: str, says: str, act: str, could_stop: bool, source: str) -> Finding:
    """Return the question for something nobody wrote."""
    return Finding(
        code,
        where,
        "unknown",
        says,
        source=source,
        lever=where,
        act=act,
        minutes=MINUTES_TO_LOOK,
        could_stop=could_stop,
        uses=("tow",),
        because=(where,),
    )


def advice(
    code: str,
    where: str,
    says: str,
    number: float,
    limit: float,
    unit: str,
    source: str,
    lever: str,
    act: str,
    kind: Kind = "advice",
) -> Finding:
    """Return a finding that leaves the judgement to the owner."""
    margin = limit - number
    return Finding(
        code, where, kind, says, number, limit, margin, unit, source, lever, act=act, uses=("tow",), because=(where,)
    )


def _minutes_to_weigh(reading: Reading) -> int:
    """Return how long a weighing takes: each part at home, or the loaded trailer on a public scale."""
    return MINUTES_TO_LOOK * len(reading.missing) if reading.missing else MINUTES_ON_A_PUBLIC_SCALE


def _finding(asked: Question, kind: Kind, says: str, reading: Reading, limit: Band, margin: float) -> Finding:
    is_question = kind == "unknown"
    is_to_read = is_question and is_doubt_of_limit(asked, reading, limit)
    act = f"Read {asked.limit} {asked.read_it} again" if is_to_read else settled_by(reading)
    minutes = MINUTES_TO_READ if is_to_read else _minutes_to_weigh(reading)
    return Finding(
        asked.code,
        asked.where,
        kind,
        says,
        number=_number(reading.best),
        limit=limit.best,
        margin=_number(margin),
        unit=asked.unit,
        source=asked.source,
        lever=asked.rating_path if is_to_read else asked.lever,
        act=act if is_question else asked.act,
        minutes=minutes if is_question else None,
        could_stop=asked.could_stop and asked.kind == "stop",
        uses=("tow",),
        because=(asked.rating_path or asked.where,) if is_to_read else reading.missing or (asked.where,),
    )


def _number(value: float) -> float | None:
    """Return a number for a finding, which holds no endless one."""
    return value if isfinite(value) else None


def _breach(asked: Question, reading: Reading, limit: Band, shown_in: HeaderUnits) -> str:
    side = "below" if asked.least else "over"
    out = _out_by(asked, abs(limit.best - reading.best), shown_in)
    inside = (reading.best - limit.best) * (1.0 if asked.least else -1.0) >= 0.0
    far = "at a permitted fill" if inside else f"by {out}"
    worst = reading.permitted_low if asked.least else reading.permitted_high
    number = show(worst if inside else reading.best, asked.said_in, shown_in)
    if not inside and reading.band.known:
        number = shown(reading, asked.said_in, shown_in)
    elif reading.missing:
        what = "place" if set(reading.missing) == set(reading.unplaced) else "weight"
        number = f"{number} without {lacking(reading)}, of unknown {what}"
    # What has no weight yet and sits where it lightens may bring the number back: nobody is to unload before it weighs.
    good_end = reading.band.high if asked.least else reading.band.low
    hope = "; what has no weight yet could bring it back, so weigh that first" if not isfinite(good_end) else ""
    most = show_band(limit, asked.said_in, shown_in)
    return f"{asked.number} is {number}, {side} {asked.limit} of {most} {far}{asked.words}{hope}"


def _out_by(asked: Question, far: float, shown_in: HeaderUnits) -> str:
    """Return how far a number is out; of a share no more digits than a scale could tell."""
    if asked.said_in != "ratio":
        return show(far, asked.said_in, shown_in)
    return show(round(far, SHARE_DECIMALS), "ratio", shown_in) if round(far, SHARE_DECIMALS) else "less than 0.1 %"


SHARE_DECIMALS = 3
"""A tenth of a per cent."""


def _question(asked: Question, reading: Reading, limit: Band, shown_in: HeaderUnits) -> str:
    now, most = shown(reading, asked.said_in, shown_in), show_band(limit, asked.said_in, shown_in)
    ends = f"{asked.number} is {now} and {asked.limit} {most}"
    if is_doubt_of_limit(asked, reading, limit):
        return f"{ends}; the doubt is in what was read, so read it again before you rely on it"
    if reading.missing:
        return f"{ends}; nobody can say which side it is on while {lacking(reading)} {_has(reading)} no number"
    return f"{ends}; the doubt reaches across, so weigh before you rely on it"


def _has(reading: Reading) -> str:
    return "has" if len(reading.missing) == 1 else "have"


def lacking(reading: Reading) -> str:
    """Return the names of what a number lacks, as a list in words."""
    return listed([IN_WORDS.get(path) or name_of(path) for path in reading.missing])


def settled_by(reading: Reading) -> str:
    """Return what to do for what a number lacks: measure a measure or a place, weigh everything else."""
    measured = [IN_WORDS[path] for path in reading.missing if path in IN_WORDS]
    measured += [f"where {name_of(path)} stands" for path in reading.unplaced]
    weighed = [name_of(path) for path in reading.missing if path not in IN_WORDS and path not in reading.unplaced]
    if measured and weighed:
        return f"Measure {listed(measured)}, and weigh {listed(weighed)}"
    if measured:
        return f"Measure {listed(measured)}"
    return f"Weigh {listed(weighed)}" if weighed else "Weigh the loaded trailer: axles and tongue"
