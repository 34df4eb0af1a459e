"""Rules of the electricity a heater wants: what feeds it, and what it takes while it runs and starts."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.telling import OWN_RULE, SLEEP, source_of
from boxwright.finding import Finding
from boxwright.units import HeaderUnits, show_band


def feed_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask what feeds a heater that runs on electricity, where somebody sleeps by it.

    Asks: what it is plugged into, or wired to
    Limit: none
    Source: own-rule
    Lever: fed_by of the heater
    """
    for one in result.heaters if result.use == "sleep" else ():
        facet, name, where = one.planned.heater, one.planned.name, one.planned.of
        if one.runs != "electric" or facet.fed_by.strip().lower() not in ("", "unknown", "?"):
            continue
        takes = f" its {show_band(facet.highest, 'power', shown_in)}" if facet.highest and facet.highest.known else ""
        yield Finding(
            "heat/feed-not-known", where, "unknown", f"nobody wrote what feeds {name}{takes}: without it, it warms"
            " nothing", source=OWN_RULE, lever=where, act="Look what it is plugged into, and write fed_by: inlet-30A"
            " of the heater", minutes=5, could_stop=False, uses=SLEEP, because=(where,),
        )  # fmt: skip


def draw_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask what a heater that burns takes of electricity, while it runs and while it starts.

    Asks: the current of its fan and pump, and of its glow pin
    Limit: none; 10 to 40 W and 80 to 120 W are taken (common practice)
    Source: heater-practice
    Lever: draw and start of the heater
    """
    for one in result.heaters if result.use == "sleep" else ():
        facet, name, where = one.planned.heater, one.planned.name, one.planned.of
        missing = [
            words
            for words, amps in (("while it runs", facet.draw), ("while it starts", facet.start))
            if amps is None or not amps.known
        ]
        if one.runs != "burns" or not missing:
            continue
        yield Finding(
            "heat/draw-not-known", where, "unknown", f"nobody wrote what {name} takes of electricity"
            f" {' and '.join(missing)}; without it its fan stops and its fire goes out", lever=where,
            source=source_of("takes", "running"), act="Read both on its plate, and write draw: 1.2 A and start: 9 A of"
            " the heater; one that takes none has draw: 0 A and start: 0 A", minutes=5, could_stop=False,
            could_limit=False, uses=SLEEP, because=(where,),
        )  # fmt: skip


__all__ = ["draw_not_known", "feed_not_known"]
