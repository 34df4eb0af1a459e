"""The rule of a logged night: what it told of the room beside what is worked out."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.heat.proved import Proof
from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.telling import OWN_RULE, SLEEP
from boxwright.finding import Finding
from boxwright.units import Band, HeaderUnits, show_band


def logged_apart(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say where the loss of a logged night and the one worked out for it cannot both be true, or ask what it lacks.

    Asks: what a logged night told, what was worked out for it then, how warm it was inside and outside
    Limit: the most and the least that is worked out for the same night
    Source: own-rule; the readings' own doubt as the page of logged nights has it
    Lever: the entry under measured, or what is written of foam, cracks and vents
    """
    proof = result.proof if result.use in SLEEP else None
    if proof is None:
        return
    name, where = proof.proved.of.removeprefix("measured[").rstrip("]"), proof.proved.of
    loss, worked = proof.proved.loss, proof.worked
    if loss is None or worked is None:
        yield Finding(
            "heat/logged-apart", where, "unknown", f"{name} does not say all of the night it was read in, so it is not"
            " used: nobody can say whether the room loses what is worked out", source=OWN_RULE, lever=where,
            act="Type boxwright heat RIG --logged FILE --keep: it writes all of it", minutes=5, could_stop=False,
            could_limit=False, uses=SLEEP, because=(where,),
        )  # fmt: skip
    elif proof.is_same_build and not proof.agrees:
        yield _apart(proof, name, loss, worked, shown_in)


def _apart(proof: Proof, name: str, loss: Band, worked: Band, shown_in: HeaderUnits) -> Finding:
    where, is_more = proof.proved.of, loss.low > worked.high
    read, reckoned = (show_band(one, "heat loss", shown_in) for one in (loss, worked))
    says = f"{name} read that the room loses {read}; worked out for the same night it is {reckoned}: one of the two is"
    says += " wrong, and nights are told for both"
    look = "air that blows in, and foam that is not there" if is_more else "heat that ran beside the one that was read"
    limit = worked.high if is_more else worked.low
    return Finding(
        "heat/logged-apart", where, "unknown", says, loss.best, limit, -abs(loss.best - limit), "W/K", OWN_RULE, where,
        act=f"Look for {look}; log a second night, or take {name} out of measured", minutes=30, could_stop=False,
        uses=SLEEP, because=(where, "walls"),
    )  # fmt: skip


__all__ = ["logged_apart"]
