"""The walk round before the road: each line ticked, crossed or open by what the rules have found."""

from __future__ import annotations

from typing import Literal

from boxwright.disciplines.towing.sourced import WALK
from boxwright.finding import Finding
from boxwright.records import dataclass

BROKE_OFF = "towing/could-not-be-worked-out"
"""Where towing itself broke off nothing of it was judged, so that no line may be ticked."""

Mark = Literal["ticked", "crossed", "open", "by hand"]


@dataclass(frozen=True, slots=True)
class WalkLine:
    """One line in walking order. ``because`` holds the sentences of the findings that cross it or leave it open.

    ``by hand`` marks a line that no rule decides: somebody must look.
    """

    name: str
    says: str
    mark: Mark
    because: tuple[str, ...]


def walk_round(findings: tuple[Finding, ...]) -> tuple[WalkLine, ...]:
    """Return the lines of the walk in walking order; ``findings`` are those of every discipline, for one slot."""
    return tuple(_line(name, says, codes, findings) for name, says, codes in WALK)


def _line(name: str, says: str, codes: tuple[str, ...], findings: tuple[Finding, ...]) -> WalkLine:
    bearing = [one for one in findings if one.code in codes or (codes and one.code == BROKE_OFF)]
    crossed = tuple(one.says for one in bearing if one.kind in ("stop", "fix", "limit"))
    left_open = tuple(one.says for one in bearing if one.kind == "unknown")
    mark: Mark = "crossed" if crossed else "open" if left_open else "ticked" if codes else "by hand"
    return WalkLine(name, says, mark, crossed + left_open)
