"""What of the findings of a night may undo that its room is held: no answer is better than what is said against it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from boxwright.disciplines.heat.findings.night import NEAR
from boxwright.disciplines.heat.night import HeldNight
from boxwright.finding import Finding

Holds = Literal["yes", "perhaps", "no"]
TOLD = frozenset({"heat/held", "heat/too-warm-at-lowest", "heat/loud-at-night", "heat/fuel-reach"})
"""Rules that undo nothing: the night's own numbers tell them, or they leave the room as warm as it is."""

OF_THE_ROOM = frozenset({"air/leaf-not-shut"})
"""Rules that undo every night in the room, whatever warms it."""


def undone_by(one: HeldNight, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return what stands against a heater holding its room in a night, or may: worst first, each rule once."""
    if one.warmth is None or not one.warmth.of:
        return ()
    about = (one.warmth.of, one.outdoors.of)
    bearing = [each for each in findings if _may_undo(each) and (each.code in OF_THE_ROOM or _is_about(each, about))]
    # What another place is too high for says nothing of this one.
    bearing = [each for each in bearing if _is_of_this_place(each, one.outdoors.of)]
    by_rule = {each.code: each for each in sorted(bearing, key=lambda each: -_weight(each))}
    return tuple(sorted(by_rule.values(), key=_weight))


def holds(one: HeldNight, findings: Iterable[Finding]) -> Holds:
    """Return whether a heater holds what is wanted: surely, perhaps, or not."""
    if one.warmth is None or not one.warmth.highest.known or one.coldest.best < one.warmth.wanted - NEAR:
        return "no"
    is_sure = one.coldest.low >= one.warmth.wanted - NEAR and not undone_by(one, findings)
    return "yes" if is_sure else "perhaps"


def _is_about(finding: Finding, paths: tuple[str, ...]) -> bool:
    """Return whether a finding is about one of some things, or about a key of it."""
    return any(path == of or path.startswith(f"{of}.") for path in (finding.where, *finding.because) for of in paths)


def _may_undo(finding: Finding) -> bool:
    is_heat = finding.code.startswith(("heat/", "rig/")) and finding.code not in TOLD
    is_heat = is_heat or finding.code in OF_THE_ROOM
    if not is_heat or (finding.uses and "sleep" not in finding.uses):
        return False
    if finding.kind == "unknown":
        return finding.could_stop or finding.could_limit or finding.protects
    return finding.kind in ("stop", "limit")


def _is_of_this_place(finding: Finding, place: str) -> bool:
    places = [path for path in finding.because if path.startswith("places[")]
    return not places or place in places


def _weight(finding: Finding) -> int:
    """Return the order what stands against a night is told in."""
    if finding.kind == "stop":
        return 0
    return 1 if finding.protects else 2 if finding.kind == "limit" else 3


__all__ = ["Holds", "holds", "undone_by"]
