"""The words in which heat tells what it found, and where each number of its tables comes from."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import TYPE_CHECKING

from boxwright.disciplines.heat.material import PACKAGE
from boxwright.finding import Finding, Use, listed
from boxwright.source import Source, load_sources, load_table
from boxwright.units import Band, HeaderUnits, show, show_band, shown_unit, unit_scale

if TYPE_CHECKING:
    from boxwright.disciplines.heat.feeds import Feed, Limit
    from boxwright.disciplines.heat.proved import Proof

SLEEP: tuple[Use, ...] = ("sleep",)
WORK: tuple[Use, ...] = ("work",)
LEAVE: tuple[Use, ...] = ("leave",)
OWN_RULE = "own-rule"
METRES_IN_A_FOOT = 0.3048
IN_WORDS: dict[str, str] = {
    "shut": "shut",
    "opened": "windows and lids open",
    "fans": "windows and lids open, fans on",
    "doors": "doors open as well",
    "cooled": "shut and cooled",
}
"""The ways to air or cool the room on a hot day."""


def source_of(table: str, name: str) -> str:
    """Return the source of one row of a table."""
    return next(row.source for row in load_table(PACKAGE, table).rows if row.cells[0] == name)


@cache
def sources_named() -> dict[str, Source]:
    """Return the sources of the rules and tables by their key, read when the first rule speaks."""
    return load_sources(PACKAGE, with_checks=False)


A_COLD_NIGHT, A_HOT_DAY = 263.15, 308.15
"""K: examples of what is written of a place, whole in either degrees: -10 C and 14 F, 35 C and 95 F."""


def warm(kelvin: float, shown_in: HeaderUnits) -> str:
    """Return a temperature in the user's units."""
    return show(kelvin, "temperature", shown_in)


STAYS_IN = 318.15
"""K, 45 C: hotter nobody stays in it, so that how much hotter tells nothing (common practice, no source)."""


def as_warm_as(kelvin: float, shown_in: HeaderUnits) -> str:
    """Return how warm a room gets that is shut while its heater runs, no further than anybody stays in it."""
    return f"hotter than {warm(STAYS_IN, shown_in)}" if kelvin > STAYS_IN else f"as warm as {warm(kelvin, shown_in)}"


def is_in_feet(shown_in: HeaderUnits) -> bool:
    """Return whether areas are shown in square feet, and insulation by the R value of labels there."""
    return shown_unit("length", shown_in)[0] in ("in", "ft")


def r_unit(shown_in: HeaderUnits) -> str:
    """Return the unit an R value is shown in."""
    return "ft2 F h/Btu" if is_in_feet(shown_in) else "m2K/W"


def r_value(transmittance: float, shown_in: HeaderUnits) -> str:
    """Return the R value of what lets so much through (W/m2K), without its unit."""
    scale = unit_scale(r_unit(shown_in))
    resists = 1.0 / transmittance
    return f"{scale.from_si(resists):.1f}" if is_in_feet(shown_in) and scale is not None else f"{resists:.2f}"


def large_area(area: float, shown_in: HeaderUnits) -> str:
    """Return the area of a wall: in square feet where lengths are in inches or feet, else in square metres."""
    if is_in_feet(shown_in):
        return show(area, "ft2", shown_in)
    return f"{area:.1f} m2"


def loss_span(band: Band, shown_in: HeaderUnits) -> str:
    """Return a loss in whole units with its ends, such as ``41 W/K (31 to 67)``."""
    unit, scale = shown_unit("heat loss", shown_in)
    best, low, high = (f"{scale.from_si(one):.0f}" for one in (band.best, band.low, band.high))
    return f"{best} {unit} ({low} to {high})"


def thin(metres: float, shown_in: HeaderUnits) -> str:
    """Return how thick a layer is: in inches where lengths are in inches or feet, else in millimetres."""
    return show(metres, "length", replace(shown_in, length="in" if is_in_feet(shown_in) else "mm"))


def above_sea(metres: float, shown_in: HeaderUnits) -> str:
    """Return a height above the sea: in whole feet where lengths are in inches or feet, else in metres."""
    if is_in_feet(shown_in):
        return f"{metres / METRES_IN_A_FOOT:,.0f} ft"
    return f"{metres:,.0f} m"


def proof_in_words(proof: Proof, shown_in: HeaderUnits) -> str:
    """Return what a logged night told of the room beside what is worked out, and which of both is taken."""
    proved, worked = proof.proved, proof.worked
    named = ", ".join(word for word in (proved.on.isoformat() if proved.on else "", proved.log) if word)
    head = f"Measured by a logged night{f' ({named})' if named else ''}:"
    if proved.loss is None or worked is None:
        return f"{head} its entry lacks something, so it is not used."
    loss, own = (show_band(_bare(one), "heat loss", shown_in) for one in (proved.loss, worked))
    said = f"{head} {loss}, air counted in; computed for the same night {own}."
    if not proof.is_same_build:
        return f"{said} It was logged of another build, for which something else was computed: log one of this build."
    if proof.inside is None:
        return f"{said} That is no more than its air alone would take, so it is not used."
    if not proof.agrees:
        return f"{said} Both cannot be true: nights reach from one to the other."
    return f"{said} All nights are told by what was measured."


def _bare(band: Band) -> Band:
    return Band(band.best, band.low, band.high, band.known, "interval")


def full_in_words(charge: Band | None) -> str:
    """Return how full a battery is at dusk, such as ``60 % full``: full where nobody wrote it."""
    if charge is None or charge.low >= 1.0:
        return "full"
    low, high = round(charge.low * 100.0), round(charge.high * 100.0)
    return f"{high} % full" if low == high else f"{low} to {high} % full"


def between(band: Band, shown_in: HeaderUnits) -> str:
    """Return a temperature with its doubt, such as ``58 F (49 to 62)``; alone where there is none to speak of."""
    best, low, high = (warm(one, shown_in) for one in (band.best, band.low, band.high))
    if low == high:
        return best
    unit = best.rpartition(" ")[2]
    return f"{best} ({low.removesuffix(f' {unit}')} to {high.removesuffix(f' {unit}')})"


def waits(waiting: tuple[tuple[str, bool], ...]) -> str:
    """Return who waits in it while it is left, or may: each name with whether that is written for certain."""
    verb, names = ("waits" if len(waiting) == 1 else "wait"), listed(name for name, _ in waiting)
    if not any(sure for _, sure in waiting):
        return f"nobody wrote whether {names} {verb} in it while it is left"
    return f"{names} {verb} in it while it is left"


def asked_of_place(code: str, of: str, says: str, act: str, uses: tuple[Use, ...]) -> Finding:
    """Return the question of a rule about a place, ``of`` its path; ``places`` where none is written."""
    return Finding(
        code, of, "unknown", says, source=OWN_RULE, lever=of, act=f"{act}, from records of its weather", minutes=10,
        could_stop=False, uses=uses, because=(of,),
    )  # fmt: skip


CUTS_OFF = {
    "wire": "its fuse or breaker cuts it off",
    "inverter": "it switches off",
    "battery": "it cuts itself off",
    "charger": "it gives no more",
    "site": "its breaker trips",
}
"""What a thing does of which more is taken than it gives."""
PLATES = {"inverter": "inverter: 1000 W", "battery": "max_amps: 100 under battery", "charger": "amps: 30 under charger"}
"""How it is written what such a thing gives."""


LARGER = {
    "wire": "a wire and a fuse",
    "inverter": "an inverter",
    "battery": "a battery",
    "charger": "a charger",
    "site": "a supply",
}
"""What to fit in the place of one that gives too little."""


def too_little(
    name: str, takes: str, limit: Limit, feed: Feed, is_surely: bool, may_run_lower: bool, shown_in: HeaderUnits
) -> tuple[str, str]:
    """Return what is said of a thing on a way that gives too little or perhaps does, and what to do about it.

    ``may_run_lower`` says that what it feeds is an electric heater, which runs from any plug and on a lower setting.
    """
    most, by = limit.gives, limit.name
    if limit.kind == "site":
        why = "by its name" if limit.amps is not None else "what the largest usual supply gives"
        says = f"{takes}, and {by} gives no more than {show(most.high, 'power', shown_in)}, {why}: {CUTS_OFF['site']}"
        return says, _less_of(name, limit, feed) if may_run_lower else f"Take one that takes less than {by} gives"
    if not most.known and not is_surely:
        at_once = " without a break" if limit.kind == "battery" else ""
        lacks = f"how large the fuse or breaker of {by} is" if limit.kind == "wire" else f"what {by} gives{at_once}"
        return f"{takes}, and nobody wrote {lacks}", _asks(limit)
    gives = show_band(most, "power", shown_in) if most.known else f"no more than {show(most.high, 'power', shown_in)}"
    lost = ", what an inverter loses taken off" if limit.is_before_inverter else ""
    says = f"{takes}, and {by} gives {gives} without a break{lost}"
    if limit.is_volts_taken and not is_surely:
        says += ", for nobody wrote of how many volts it is"
        return says, f"Write the volts of {by}: volts: 120, or volts: 230"
    says += f": {'' if is_surely else 'perhaps '}{CUTS_OFF[limit.kind]}"
    if not is_surely and most.low < most.high and not limit.is_before_inverter:
        return says, _asks(limit)
    act = _less_of(name, limit, feed) if may_run_lower else f"Fit {LARGER[limit.kind]} made for what {name} takes"
    return says, f"{act}; never put a larger fuse on the same wire" if limit.kind == "wire" else act


def _asks(limit: Limit) -> str:
    """Return how to find out what a thing on a way gives, and how it is written."""
    if limit.kind == "wire":
        return f"Read what is printed on the fuse or breaker of {limit.name}, and write it there: fuse: 15 A"
    return f"Read on the plate of {limit.name} what it gives without a break, and write {PLATES[limit.kind]}"


def asks_site(name: str, feed: Feed) -> str:
    """Return how it is written what a cable from outside gives: on its wire, else by one to what it feeds first."""
    onto, last = feed.way[-2] if len(feed.way) > 1 else name, feed.way[-1]
    act = "Read the breaker of the site and what the cable is made for, and write the smaller of both"
    if feed.wires:
        return f"{act} on the wire {feed.wires[-1]}: breaker: 16 A, volts: 230"
    return f"{act} on its wire, such as {{from: {last}, to: {onto}, breaker: 16 A, volts: 230, done: yes}}"


def _less_of(name: str, limit: Limit, feed: Feed) -> str:
    """Return what to do where a thing on the way gives too little."""
    less = f"take one that takes less than {limit.name} gives"
    act = f"Run {name} on a lower setting and write that as its highest, or {less}"
    if feed.ends != "outside":
        act = f"Feed {name} by a cable from outside and write its wire with its breaker, or {less}"
    return act
