"""Which rules bind where: the places of a route, what each asks, and the strictest of one asking.

A rule says in ``asks`` what it compares; behind a comma it names the only class it binds (``camper``, ``cargo``,
``commercial``). The askings that towing judges stand below; any other is shown, never judged.
"""

from __future__ import annotations

from datetime import date
from functools import lru_cache

from boxwright.disciplines.towing.sourced import PACKAGE
from boxwright.records import dataclass
from boxwright.source import Rule, load_rules

UNBRAKED_UP_TO = "unbraked gross up to"
UNBRAKED_BELOW = "unbraked gross below"
UNBRAKED_PLATE = "unbraked plate up to"
UNBRAKED_ON_WHEELS = "unbraked on wheels up to"
UNBRAKED_SHARE = "unbraked share of tow vehicle"
UNBRAKED_SHARE_BY_PLATE = f"{UNBRAKED_SHARE} by plate"
UNBRAKED_SHARE_ON_WHEELS = f"{UNBRAKED_SHARE} on wheels"
ALL_WHEELS_ABOVE = "all wheels braked above"
ALL_WHEELS_FROM = "all wheels braked from"
SURGE_UP_TO = "surge brake gross up to"
BREAKAWAY_FROM = "breakaway from"
BREAKAWAY_ABOVE = "breakaway above"
BREAKAWAY_OF_BRAKED = "breakaway of braked"
SECONDARY = "secondary link"
SECONDARY_UNLESS_BREAKAWAY = "secondary link without breakaway"
CHAIN_COUNT = "number of chains"
CHAIN_COUNT_HEAVY = ("number of chains from 2000 kg", "number of chains from 2500 kg")
CHAINS_TOGETHER = "chains together, share of gross"
EACH_CHAIN = "each chain, share of gross"
EACH_CHAIN_HEAVY = "each chain from 2000 kg, share of gross"
SPEED = "towing speed"
WIDTH, HEIGHT, LENGTH, BODY_LENGTH = "overall width", "overall height", "overall length", "body length"
LEAST_BALL_LOAD, ENOUGH_BALL_LOAD = "least load on the ball as a share of gross", "load on the ball that is enough"
ENOUGH_BALL_LOAD_HEAVY = f"{ENOUGH_BALL_LOAD} from 3500 kg"
CHOCKS = "two wheel chocks above plate"
PASSENGER_TYRES = "passenger tyre divided by"

TOLD_ONLY = frozenset(
    {
        # duties of the tow vehicle's maker, not of who tows
        "tow vehicle's vertical rating, share of its heaviest trailer",
        "tow vehicle's vertical rating, share of its own mass",
        # what the file says nothing of: the tow vehicle's axles and tyres, dampers, how long a battery holds
        "tow vehicle's rear axle over its rating by",
        "tow vehicle's rear tyres over their rating by",
        "mass factor for 100 km/h, unbraked or undamped",
        "mass factor for 100 km/h",
        "unbraked share of tow vehicle's axles",
        "breakaway holds",
        # reach no trailer of this kind, or only advise what another rule demands
        "red and white tape from plate",
        "trailer tyres (ST) up to plate",
        "unbraked share of tow vehicle, advised",
    }
)
"""Askings that are kept with their source for whoever reads the tables, and that no finding judges."""

CLASSES = ("cargo", "camper")
STRICTER_CLASS = "camper"
"""Where the class is not known, the trailer is judged as the class that is asked for more."""


@dataclass(frozen=True, slots=True)
class Placed:
    """One rule as it binds in one place of the route, such as ``US-NC``."""

    place: str
    country: str
    rule: Rule


@dataclass(frozen=True, slots=True)
class Law:
    """Every rule of the route. ``unheard`` are countries without any rule here, ``bare`` places none of whose own rules
    says when a trailer needs brakes.

    ``unnamed`` are countries whose States or provinces make the law, written without one.
    """

    placed: tuple[Placed, ...]
    unheard: tuple[str, ...]
    bare: tuple[str, ...]
    unnamed: tuple[str, ...]

    def asking(self, asks: str, trailer_class: str) -> tuple[Placed, ...]:
        """Return the rules that ask one thing of a trailer of a class, the smallest limit first."""
        wanted = (asks, f"{asks}, {trailer_class}")
        found = [one for one in self.placed if one.rule.asks in wanted]
        return tuple(sorted(found, key=lambda one: (one.rule.limit or 0.0, one.place)))


STATES_DECIDE = ("US", "CA")
"""Countries whose States or provinces make the rules of light trailers."""


@lru_cache(maxsize=8)
def law_of(countries: tuple[str, ...], judged_on: date) -> Law:
    """Return what binds on a route as of a day; a rule of the building of a trailer binds at home only."""
    driven_in = tuple(code.upper().partition("-")[0] for code in countries)
    in_force = tuple(rule for rule in load_rules(PACKAGE, driven_in) if rule.is_in_force(judged_on))
    heard = {rule.country for rule in in_force}
    placed: list[Placed] = []
    bare: list[str] = []
    unheard: list[str] = []
    unnamed: list[str] = []
    for index, code in enumerate(dict.fromkeys(countries)):
        country, _, part = code.upper().partition("-")
        if country not in heard:
            unheard.append(code)
            continue
        own = [rule for rule in in_force if rule.country == country and rule.where == part]
        if part and not any(rule.asks.startswith("unbraked") for rule in own):
            bare.append(code)
        if not part and country in STATES_DECIDE:
            unnamed.append(code)
        national = [rule for rule in in_force if rule.country == country and rule.where == "national"]
        placed += [Placed(code, country, rule) for rule in (*national, *own) if index == 0 or rule.applies != "built"]
    return Law(tuple(placed), tuple(unheard), tuple(bare), tuple(unnamed))
