"""The words in which safety tells what it found, and how a rule of a country counts."""

from __future__ import annotations

from boxwright.disciplines.safety.parts import Way
from boxwright.disciplines.safety.sourced import BINDING, MEASURED_BY, ONLY_RECALLED, Law, sources_named
from boxwright.finding import Finding, Kind, Use
from boxwright.source import Rule
from boxwright.units import HeaderUnits, show

SLEEP: tuple[Use, ...] = ("sleep",)
LEAVE: tuple[Use, ...] = ("leave",)
WORK: tuple[Use, ...] = ("work",)
OWN_RULE = "own-rule"
OWN_LABEL = "own-label"


def length(metres: float, shown_in: HeaderUnits) -> str:
    """Return a length as a tape shows it: to a sixteenth of an inch or a millimetre."""
    return show(metres, "length", shown_in, cuts=True)


def some_of(metres: float, shown_in: HeaderUnits) -> str:
    """Return how much is left of something, as a tape shows it; nothing where that is less than a mark."""
    return "nothing" if length(metres, shown_in) == length(0.0, shown_in) else length(metres, shown_in)


def name_of(path: str) -> str:
    """Return the builder's word for what a rig path names."""
    return path[path.rindex("[") + 1 :].split("]")[0] if "[" in path else path


def stopper(path: str, way: Way) -> str:
    """Return the builder's word for what ends the way of a leaf: a thing, a face, or the studs of the wall it is in.

    Studs of which nobody knows where they are stand under the path of the opening itself.
    """
    if path == way.of or path.startswith("frame.studs"):
        return f"the studs of the {way.wall} wall"
    return f"the frame of the {way.wall} wall" if path.startswith("frame") else name_of(path)


def kind_of(rule: Rule) -> Kind:
    """Return what a broken rule of a country is: what somebody read, if only as a quotation, may stop."""
    if rule.kind == "stop":
        return "unknown" if rule.read_as in ONLY_RECALLED else "stop"
    return rule.kind


def cited(rule: Rule) -> str:
    """Return the document of a rule and how its text was read."""
    return f"{sources_named()[rule.source].work.partition(':')[0]}; {rule.read_as}"


def place_of(rule: Rule) -> str:
    """Return where a rule holds, as it is written under countries: AU-NSW, or US for all of it."""
    return rule.country if rule.where == "national" else f"{rule.country}-{rule.where}"


def asked_by(law: Law, asks: str, what: str = "one") -> str:
    """Return who asks for a thing, of the countries of the route, to stand behind what is said; empty where none."""
    said = []
    for one in law.asking(asks):
        verb = "asks for" if one.binding in BINDING else "advises"
        said.append(f"{place_of(one)} {verb} {what}{', ' if one.note else ''}{one.note} ({cited(one)})")
    return f"; {'; '.join(said)}" if said else ""


def measured_elsewhere(law: Law) -> str:
    """Return that a measure is one of the United States, where the home is another country; empty at home there."""
    home = law.country
    return "" if home == MEASURED_BY else f" (a measure of the United States, for want of one of {home or 'the home'})"


def stop(code: str, where: str, says: str, act: str, minutes: int, lever: str = "", source: str = OWN_RULE) -> Finding:
    """Return what forbids sleeping."""
    return Finding(
        code, where, "stop", says, source=source, lever=lever, act=act, minutes=minutes, protects=True, uses=SLEEP,
        because=(where,),
    )  # fmt: skip


def question(
    code: str,
    where: str,
    says: str,
    act: str,
    minutes: int,
    lever: str = "",
    source: str = OWN_RULE,
    protects: bool = True,
) -> Finding:
    """Return what must be known before anybody sleeps; one that ``protects`` is a no until then."""
    return Finding(
        code, where, "unknown", says, source=source, lever=lever, act=act, minutes=minutes, protects=protects,
        uses=SLEEP, because=(where,),
    )  # fmt: skip


def advice(code: str, where: str, says: str, act: str, minutes: int, source: str, lever: str = "") -> Finding:
    """Return what is the owner's judgement."""
    return Finding(
        code, where, "advice", says, source=source, lever=lever, act=act, minutes=minutes, uses=SLEEP, because=(where,)
    )
