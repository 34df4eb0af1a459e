"""What a logged night has proved of the room: kept in the rig, and taken instead of what is worked out.

It holds for the room as it was built when it was logged: where something else is worked out for it by now, it is told
and not used. Where both cannot be true at once, either may be wrong, and the nights reach from one to the other.
"""

from __future__ import annotations

from datetime import date

from boxwright.disciplines.heat.cold_hours import Inside
from boxwright.disciplines.heat.logged import SHARES, as_measured, worked_at
from boxwright.disciplines.heat.parts import ProvedLoss
from boxwright.records import dataclass
from boxwright.units import Band


@dataclass(frozen=True, slots=True)
class Proof:
    """A loss that was measured (W/K, air counted in) beside the one that is ``worked`` out for the same night.

    ``built`` is the room as it is worked out, ``inside`` the one with the loss that is used, None where the entry lacks
    something or is of another build.
    """

    proved: ProvedLoss
    worked: Band | None
    is_same_build: bool
    built: Inside
    inside: Inside | None

    @property
    def agrees(self) -> bool:
        """Return whether both can be true at once."""
        loss, worked = self.proved.loss, self.worked
        return loss is None or worked is None or (loss.low <= worked.high and worked.low <= loss.high)


def proof_of(every: tuple[ProvedLoss, ...], inside: Inside) -> Proof | None:
    """Return the newest of what was logged that is of the room as it is built; else the newest of all."""
    newest = sorted(every, key=lambda one: one.on or date.min, reverse=True)
    proofs = [_proof(one, inside) for one in newest]
    return next((one for one in proofs if one.is_same_build), proofs[0] if proofs else None)


def _proof(one: ProvedLoss, inside: Inside) -> Proof:
    loss, reckoned = one.loss, one.reckoned
    if loss is None or one.inside is None or one.outside is None or reckoned is None or reckoned.best <= 0.0:
        return Proof(one, None, False, inside, None)
    worked = worked_at(inside, one.log, one.outside.best, one.inside.best)
    if abs(worked.loss.best / reckoned.best - 1.0) > SHARES["same build"]:
        return Proof(one, worked.loss, False, inside, None)
    proof = Proof(one, worked.loss, True, inside, None)
    own = worked.loss
    used = loss
    if not proof.agrees:
        used = Band(loss.best, min(loss.low, own.low), max(loss.high, own.high), spread="interval")
    return Proof(one, own, True, inside, as_measured(inside, worked, used))
