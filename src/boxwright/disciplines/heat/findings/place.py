"""What is asked of a place where the trailer stands: its coldest night, its hottest day."""

from __future__ import annotations

from boxwright.disciplines.heat.telling import OWN_RULE
from boxwright.finding import Finding, Use


def asked_of_place(code: str, of: str, says: str, act: str, uses: tuple[Use, ...]) -> Finding:
    """Return the question of a rule about a place, ``of`` its path; ``places`` where none is written."""
    return Finding(
        code, of, "unknown", says, source=OWN_RULE, lever=of, act=f"{act}, from records of its weather", minutes=10,
        could_stop=False, uses=uses, because=(of,),
    )  # fmt: skip
