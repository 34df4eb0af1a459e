"""What the rules of weight share: how an answer is judged, and the words in which it is told."""

from __future__ import annotations

from math import inf

from boxwright.disciplines.weight.result import Compared, Output, Result, Tip
from boxwright.finding import Finding, Kind
from boxwright.finding import listed as in_a_row
from boxwright.units import Band, HeaderUnits, show, show_band, shown_unit

EQUILIBRIUM = "first-principles section 1.3"
DAY = 86400.0
"""Seconds of a day."""


def above_zero(output: Output) -> Kind | None:
    """Return stop, unknown, or None, for an answer that must stay above zero.

    The best value or a permitted extreme outside is a stop, unless what is unknown could still bring it back; only
    the bad end of the band outside is a question.
    """
    if is_unanswered(output):
        return "unknown"
    if min(output.band.best, output.permitted_low) <= 0.0:
        return "unknown" if output.unknown and output.band.high > 0.0 else "stop"
    return "unknown" if output.band.low <= 0.0 else None


def is_unanswered(output: Output) -> bool:
    """Return whether nothing at all can be said of an answer."""
    return not output.band.known and output.band.low == -inf and output.band.high == inf and not output.half_width


def name_of(path: str) -> str:
    """Return the builder's words for what a rig path names: ``left liner`` for a layer of the left wall."""
    if path == "trailer.empty":
        return "the empty trailer"
    words = [piece.split("]")[0] for piece in path.split("[")[1:]]
    return " ".join(words) or path


MEASURES = {
    "trailer.axles.x": "the place of the axles",
    "trailer.axles.track": "the track of the axles",
    "trailer.axles.rate": "the spring rate of the axles",
    "trailer.coupler_x": "the place of the ball",
    "trailer.coupler_height": "the height of the coupler",
    "trailer.deck_height": "the height of the deck",
    "trailer.tyres.size": "the size of the tyres",
    "tow.ball_height": "the height of the tow vehicle's ball",
}
"""What a sentence calls the measures of trailer and tow vehicle."""


def measure_of(path: str) -> str:
    """Return what a sentence calls a measure; a path without words of its own stays as it is written."""
    return MEASURES.get(path, path)


def is_weighable(path: str) -> bool:
    """Return whether a path names something that can be put on a scale, not a measure of the trailer."""
    return path.startswith("trailer.empty") or not path.startswith(("tow.", "trailer."))


MOST_NAMES = 6
"""How many names a sentence carries; the rest are counted."""


def listed(names: list[str]) -> str:
    """Return names as a list in words, the first few by name and the rest counted."""
    return in_a_row(names, MOST_NAMES)


def weighing(paths: list[str], again: bool = False) -> str:
    """Return how to weigh some things: parts on a scale in the garage, the bare trailer on one for vehicles.

    ``again``: the trailer has a weight, and only a scale with finer steps says more.
    """
    layers = [name_of(path) for path in paths if ".layers[" in path]
    parts = [name_of(path) for path in paths if not path.startswith("trailer.") and ".layers[" not in path]
    each = ", each" if len(parts) > 1 else ""
    ways = [f"weigh {listed(parts)}{each} with a bathroom or luggage scale"] if parts else []
    if layers:
        be, of = ("is", "it") if len(layers) == 1 else ("are", "each")
        ways.append(f"write of what {listed(layers)} {be} and how thick, or weigh a whole sheet of {of}")
    if len(parts) + len(layers) < len(paths):
        finer = " with finer steps" if again else ""
        ways.append(f"weigh the empty trailer and its tongue on a public scale{finer}")
    said = "; ".join(ways)
    return said[:1].upper() + said[1:]


def ten_units(shown_in: HeaderUnits) -> float:
    """Return ten of the builder's units of weight, in kg."""
    return shown_unit("kg", shown_in)[1].to_si(10.0)


def from_to(least: float, most: float, shown_in: HeaderUnits) -> str:
    """Return two weights as a span, or one where they read alike."""
    low, high = show(least, "kg", shown_in), show(most, "kg", shown_in)
    return low if low == high else f"{low} to {high}"


def tipping_sentence(tip: Tip, boarding: Band | None, kind: Kind, shown_in: HeaderUnits) -> str:
    """Return the sentence of a tipping trailer: who is at the rear end, and who alone lifts the nose; None: nobody."""
    legs = "legs down" if tip.legs_are_down else "legs up"
    verb = "tips back" if kind == "stop" else "may tip back"
    if boarding is None:
        return f"uncoupled with its {legs} the trailer {verb} by itself, with nobody in it"
    people = show_band(boarding, "kg", shown_in)
    alone = ""
    if tip.person is not None and tip.person.band.low > 0.0:
        alone = f"; {show(tip.person.band.low, 'kg', shown_in)} at the rear wall can lift the nose"
    return f"uncoupled with its {legs} the trailer {verb} when {people} of people stand at its rear end{alone}"


def disagreement(one: Compared, code: str, where: str, what: str, shown_in: HeaderUnits) -> Finding:
    """Return the finding of a reading that disagrees with its plan; both numbers stay visible."""
    names = listed([name_of(of) for of in one.weigh_next])
    again = f"Weigh {names} next" if names else f"Weigh again, and write the weight of {what} that you believe"
    measured, planned = show_band(one.measured, "kg", shown_in), show_band(one.planned.band, "kg", shown_in)
    return Finding(
        code,
        where,
        "unknown",
        f"{what} was read as {measured}, by plan it is {planned}; {show(abs(one.gap), 'kg', shown_in)} is unexplained",
        number=one.agreement if one.agreement < inf else abs(one.gap),
        limit=1.0 if one.agreement < inf else 0.0,
        margin=1.0 - one.agreement if one.agreement < inf else -abs(one.gap),
        unit="" if one.agreement < inf else "kg",
        source="first-principles section 3.3",
        lever=one.weigh_next[0] if one.weigh_next else where,
        act=again,
        minutes=15,
        uses=("tow",),
        because=one.weigh_next or (where,),
    )


def lifting(
    output: Output, kind: Kind, code: str, says: str, act: str, shown_in: HeaderUnits, result: Result
) -> Finding:
    """Return the finding of a support that carries nothing, or may."""
    doubts = output.unknown or tuple(part.of for part in result.perhaps)
    doubts = doubts or tuple(one.of for one in result.tongue_widened_by)
    best = show(output.band.best, "kg", shown_in)
    is_open = output.band.low == -inf and output.band.high == inf
    over = "by what is known, and nobody can say how far the rest moves it"
    over = over if is_open else f"over all that is open {show_band(output.band, 'kg', shown_in)}"
    return Finding(
        code,
        result.of,
        kind,
        f"{says}: {best}{' ' if is_open else ', '}{over}; it must be above {show(0.0, 'kg', shown_in)}",
        number=output.band.best,
        limit=0.0,
        margin=min(output.band.low, output.permitted_low),
        unit="kg",
        source=EQUILIBRIUM,
        lever="x of the heaviest parts",
        act=act,
        minutes=30,
        uses=("tow",),
        because=doubts,
    )
