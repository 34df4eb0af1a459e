"""What makes cold in the room: how much of it counts in a hot box, what its warm side asks for, what water it makes."""

from __future__ import annotations

from dataclasses import replace

from boxwright.disciplines.heat.feeds import OF_VOLTS, WORST_FIRST, Feed, Stands
from boxwright.disciplines.heat.material import columns, interval
from boxwright.disciplines.heat.parts import Cooler, PlannedCooler
from boxwright.disciplines.heat.result import Fault, StandingCooler
from boxwright.disciplines.heat.room import HEAT_OF_AIR
from boxwright.exchange import Opening
from boxwright.units import Band

NUMBERS: dict[str, Band] = {name: interval(*row) for name, row in columns("cooler_numbers").items()}
LATENT = columns("cooler_latent")["water at 20 C"][0]
BY_ITSELF = frozenset({"split", "roof", "outside", "mini split", "mini-split"})
"""Words for one whose warm side is outside by itself."""
NO_HATCH = frozenset({"none", "no", "nothing", "in the room"})
BREATHES: dict[Fault, Stands] = {
    "breathes in the room": "no",
    "hatch not there": "no",
    "air comes back": "no",
    "hatch not written": "perhaps",
    "passes too little": "perhaps",
    "numbers not written": "yes",
}
"""Whether a warm side still breathes outside. One whose warm air comes back cools less and less: it does not."""
BOTH_WAYS = 2.0
"""What goes in has to come out again."""


def cold_of(coolers: tuple[StandingCooler, ...]) -> Band | None:
    """Return the cold (W) of all that works in a hot box; None where nothing cools or nobody wrote how much.

    What perhaps works, for its feed or where it breathes is not known, makes none at the low end.
    """
    share = NUMBERS["of its plate"]
    best = low = high = 0.0
    is_known = False
    for one in coolers:
        heat = one.planned.cools.heat
        if heat is None or not heat.known or one.works == "no":
            continue
        is_known = True
        best, high = best + heat.best * share.best, high + heat.high * share.high
        low += heat.low * share.low if one.works == "yes" else 0.0
    return Band(best, low, high, spread="interval", assumed=True) if is_known else None


def all_at_once(coolers: tuple[StandingCooler, ...]) -> tuple[StandingCooler, ...]:
    """Return what cools, of which those may stop that one thing on their ways has too little for all together."""
    found = []
    for one in coolers:
        worst: Stands = "yes"
        beside: tuple[str, ...] = ()
        for limit in one.feed.limits if one.works != "no" else ():
            fed = [each for each in coolers if each.works != "no" and limit.of in {by.of for by in each.feed.limits}]
            taken = [want.high for each in fed if (want := each.wanted.by(each.feed)) is not None]
            if limit.kind != "site" and len(taken) > 1 and limit.gives.known and sum(taken) > limit.gives.low:
                worst, beside = "perhaps", tuple(each.planned.name for each in fed if each is not one)
        found.append(replace(one, at_once=worst, beside=beside) if beside else one)
    return tuple(found)


def standing_cooler(
    planned: PlannedCooler, is_certain: bool, openings: tuple[Opening, ...], feed: Feed
) -> StandingCooler:
    """Return a cooler as it stands in a slot: what feeds it, and whether its warm side breathes outside."""
    faults = faults_of(planned.cools, openings)
    through = next((one for one in openings if one.name == planned.cools.hatch.strip()), None)
    is_sure = is_outside(planned.cools) or (through is not None and through.is_certain)
    breathes = min(("yes" if is_sure else "perhaps", *(BREATHES[one] for one in faults)), key=WORST_FIRST.index)
    return StandingCooler(planned, is_certain, breathes, feed, faults)


def faults_of(cools: Cooler, openings: tuple[Opening, ...]) -> tuple[Fault, ...]:
    """Return what is wrong with how a warm side breathes, or not written of it; nothing where it stands outside."""
    if is_outside(cools):
        return ()
    found: list[Fault] = []
    word, heat, passes = cools.hatch.strip(), cools.heat, cools.passes
    if word.lower() in NO_HATCH:
        return ("breathes in the room",)
    if not word:
        found.append("hatch not written")
    elif word not in {one.name for one in openings}:
        found.append("hatch not there")
    if cools.returns:
        found.append("air comes back")
    if heat is None or not heat.known or passes is None or not passes.known:
        found.append("numbers not written")
    elif passes.low < asks_for(heat).best:
        found.append("passes too little")
    return tuple(found)


def is_outside(cooler: Cooler) -> bool:
    """Return whether the warm side of a cooler stands outside by itself."""
    return " ".join(OF_VOLTS.sub("", cooler.of.lower()).split()) in BY_ITSELF


def asks_for(heat: Band) -> Band:
    """Return the free area (m2) its warm air asks for, in and out together, by what its plate says it takes out."""
    gives, warms, blows = NUMBERS["heat for cold"], NUMBERS["warms its air"], NUMBERS["through a grille"]
    ends = (
        (heat.best, gives.best, warms.best, blows.best),
        (heat.low, gives.low, warms.high, blows.high),
        (heat.high, gives.high, warms.low, blows.low),
    )
    best, low, high = (BOTH_WAYS * cold * more / (HEAT_OF_AIR * warmer * speed) for cold, more, warmer, speed in ends)
    return Band(best, low, high, spread="interval", assumed=True)


def water_of(heat: Band) -> Band:
    """Return the most water (kg/s) it makes in damp air, while it runs without a stop."""
    wet = NUMBERS["of it wet"]
    best, low, high = (getattr(heat, end) * getattr(wet, end) / LATENT for end in ("best", "low", "high"))
    return Band(best, low, high, spread="interval", assumed=True)
