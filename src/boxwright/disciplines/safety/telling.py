"""The words in which safety tells what it found, and how a rule of a country counts."""

from __future__ import annotations

from boxwright.disciplines.safety.sourced import sources_named
from boxwright.finding import Finding, Kind, Use
from boxwright.source import Rule

SLEEP: tuple[Use, ...] = ("sleep",)
LEAVE: tuple[Use, ...] = ("leave",)
OWN_RULE = "own-rule"
OWN_LABEL = "own-label"
ONLY_RECALLED = ("from memory", "common practice, no source")


def name_of(path: str) -> str:
    """Return the builder's word for what a rig path names."""
    return path[path.rindex("[") + 1 :].split("]")[0] if "[" in path else path


def listed(names: list[str] | tuple[str, ...]) -> str:
    """Return names as a list in words."""
    if len(names) < 2:
        return "".join(names)
    return ", ".join(names[:-1]) + f" and {names[-1]}"


def kind_of(rule: Rule) -> Kind:
    """Return what a broken rule of a country is: what somebody read, if only as a quotation, may stop."""
    if rule.kind == "stop":
        return "unknown" if rule.read_as in ONLY_RECALLED else "stop"
    return rule.kind


def cited(rule: Rule) -> str:
    """Return the document of a rule and how its text was read."""
    return f"{sources_named()[rule.source].work.partition(':')[0]}; {rule.read_as}"


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
