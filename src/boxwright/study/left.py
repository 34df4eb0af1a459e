"""What to leave behind, or carry in the tow vehicle: cargo, and tanks emptied with it. Candidates, none proved yet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import inf
from typing import NamedTuple

from boxwright.exchange import Mass
from boxwright.rig.rig import Rig
from boxwright.study.fills import held, may_be_emptied
from boxwright.study.lever import Lever, Pull
from boxwright.study.moves import Candidate, Edit, families_of
from boxwright.study.remedy_words import emptied_too, left
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits

MOST_LEFT = 4
"""How many things may be left behind or emptied together; more is another journey, not a fix."""


def left_behind(rig: Rig, slot: Slot, lever: Lever, pull: Pull, need: float, header: HeaderUnits) -> list[Candidate]:
    """Return what cargo to leave behind so that the load changes enough.

    Each alone; and the fewest pieces of cargo and tanks to be emptied together, with the one that does most in it or
    left out. A tank alone is for `fills`.
    """
    sign = 1.0 if lever.is_up else -1.0
    whole = slot.weight.gross.band.best if lever.load == "share" and slot.weight is not None else inf
    pieces = [*cargo_of(rig, slot), *_tanks(slot)]
    able = [(gain, piece) for piece in pieces if (gain := _gain(piece.masses, sign, pull, whole)) > 0.0]
    able.sort(key=lambda pair: (-pair[0], pair[1].names))
    made = [_left([piece], slot, rig, header) for gain, piece in able if gain >= need and not piece.is_tank]
    together = {tuple(_fewest(able[start:], need)) for start in range(len(able))} - {()}
    made += [_left(pieces, slot, rig, header) for pieces in sorted(together) if len(pieces) > 1]
    return made


class Piece(NamedTuple):
    """A piece of cargo with all that rides in or on it, or what is in a tank: their names and masses."""

    names: tuple[str, ...]
    masses: tuple[Mass, ...]
    is_tank: bool = False


def _tanks(slot: Slot) -> Iterator[Piece]:
    """Yield what is in each tank that may be emptied and is not cargo itself, as much as it holds for certain."""
    for tank in slot.standing.tanks:
        mass = held(tank, tank.fill.best) if tank.fill.low == tank.fill.high and may_be_emptied(tank) else None
        if mass is not None and mass.kg.known and mass.x.known:
            yield Piece((tank.name,), (mass,), True)


def cargo_of(rig: Rig, slot: Slot) -> Iterator[Piece]:
    """Yield every piece of cargo aboard that can be left behind with all in and on it, its weight known."""
    families = families_of(rig)
    items = {item.of: item for item in rig.parts}
    for item in rig.parts:
        members = families[item.of]
        masses = tuple(mass for mass in slot.masses if mass.of in members)
        if item.words.kind != "cargo" or not masses or not all(mass.kg.known for mass in masses):
            continue
        aboard = tuple(dict.fromkeys(items[of].name for of in members if any(mass.of == of for mass in masses)))
        if all(items[of].words.kind == "cargo" for of in members):
            yield Piece(aboard, masses)


def _fewest(able: list[tuple[float, Piece]], need: float) -> list[Piece]:
    """Return the pieces that together are enough, those that do most first; none where more than a few would be."""
    taken: list[tuple[float, Piece]] = []
    for gain, piece in able:
        if any(set(piece.names) & set(other.names) for _, other in taken):
            continue
        taken.append((gain, piece))
        short = need - sum(one for one, _ in taken)
        if short <= 0.0:
            spare = [pair for pair in taken if pair[0] <= -short]
            if spare:
                taken.remove(min(spare, key=lambda pair: pair[0]))
            return [piece for _, piece in taken]
        if len(taken) == MOST_LEFT:
            break
    return []


def _left(pieces: Iterable[Piece], slot: Slot, rig: Rig, header: HeaderUnits) -> Candidate:
    """Return the candidate that leaves some cargo behind, and empties some tanks."""
    pieces = list(pieces)
    names = [name for piece in pieces if not piece.is_tank for name in piece.names]
    tanks = [name for piece in pieces if piece.is_tank for name in piece.names]
    masses = [mass for piece in pieces for mass in piece.masses]
    edits = tuple(Edit(f"loads[{slot.load}].out", name) for name in names)
    edits += tuple(Edit(f"loads[{slot.load}].tanks.{name}", "empty") for name in tanks)
    kg = sum(mass.kg.best for mass in masses)
    says = emptied_too(names, tanks, kg, header) if tanks else left(names, kg, header)
    cargo = sum(mass.kg.best for piece in pieces if not piece.is_tank for mass in piece.masses)
    return Candidate(says, edits, _carried(masses, rig), len(pieces), True, (len(names), cargo))


def _gain(masses: Iterable[Mass], sign: float, pull: Pull, whole: float) -> float:
    """Return how much the load changes in the wanted direction when some masses are taken out.

    Of a share, ``whole`` is the weight it is a share of, which shrinks with them; of a load it is endless.
    """
    masses = tuple(masses)
    rest = 1.0 - sum(mass.kg.best for mass in masses) / whole
    return -sign / rest * sum(mass.kg.best * pull.per.at((mass.x.best, mass.y.best, mass.z.best)) for mass in masses)


def _carried(masses: Iterable[Mass], rig: Rig) -> float:
    """Return the effort of carrying masses out at the rear end, and along the trailer to the tow vehicle (kg m).

    What is let out of a tank only goes out.
    """
    along = rig.surfaces.rear - rig.surfaces.front
    return sum(
        mass.kg.best * (abs(rig.surfaces.rear - mass.x.best) + (along if mass.what != "fluid" else 0.0))
        for mass in masses
        if mass.x.known
    )
