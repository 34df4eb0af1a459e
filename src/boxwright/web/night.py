"""The night beside the screens it is about: how cold the room gets, what that holds down to, its air by morning."""

from __future__ import annotations

from boxwright.disciplines.air.telling import ppm, ppm_band
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.telling import between
from boxwright.finding import Kind
from boxwright.study.slots import Slot as WorkedSlot
from boxwright.study.working_words import name_of_night
from boxwright.units import HeaderUnits
from boxwright.web import contract, terms
from boxwright.web.figures import GRAVEST, NOT_KNOWN, night_slot
from boxwright.web.session import Seen

SCREENS = frozenset({"elevations", "heat", "air"})
"""The screens that vents, foam and settings are looked at on."""


def night_beside(screen: str, seen: Seen) -> list[contract.Figure]:
    """Return the numbers of the night that stand beside a screen: none where it is about something else."""
    slot = night_slot(seen) if screen in SCREENS else None
    return figures_of_night(slot, seen.reading.rig.header.units) if slot is not None else []


def figures_of_night(slot: WorkedSlot, units: HeaderUnits) -> list[contract.Figure]:
    """Return how cold the room gets in the worst night that is written, and what the air comes to by morning."""
    found: list[contract.Figure] = []
    if slot.heat is not None and slot.heat.held:
        found += _of_the_coldest(slot, slot.heat.held, units)
    breathing = slot.air.breathing if slot.air is not None else None
    if breathing is not None and slot.use == "sleep":
        best, unit = ppm(breathing.morning.best).rsplit(" ", 1)
        spread = ppm_band(breathing.morning)
        found.append(contract.Figure(key="carbon-dioxide", label="CO2 by morning", text=best, unit=unit,
                                     band=spread.removesuffix(f" {unit}") if " to " in spread else "",
                                     kind=_gravest(slot, "air/fresh-air"), path="carbon-dioxide",
                                     explains=terms.NIGHT["carbon-dioxide"]))  # fmt: skip
    return found


def _of_the_coldest(slot: WorkedSlot, nights: tuple[HeldNight, ...], units: HeaderUnits) -> list[contract.Figure]:
    """Return the numbers of the night in which the room may get coldest: one that is fine never hides another."""
    assert slot.heat is not None
    worst = min(nights, key=lambda one: (one.coldest.low, one.coldest.best))
    named = name_of_night(slot.heat, worst)
    kind = _gravest(slot, "heat/held")
    found = [_warmth("room-at-coldest", "Coldest inside", between(worst.coldest, units), named, kind)]
    if worst.holds_down_to is not None and worst.warmth is not None:
        told = between(worst.holds_down_to, units) if worst.warmth.highest.known else ""
        found.append(_warmth("held-down-to", "Held down to", told, named, kind))
    return found


def _warmth(key: str, label: str, told: str, named: str, kind: Kind | None) -> contract.Figure:
    """Return a temperature as a figure; ``told`` has its doubt in brackets, and is empty where it is not known."""
    number, _, spread = told.partition(" (")
    text, unit = number.rsplit(" ", 1) if number else (NOT_KNOWN, "")
    band = ", ".join(one for one in (spread.removesuffix(")"), named) if one)
    return contract.Figure(key=key, label=label, text=text, unit=unit, band=band, kind=kind,
                           path=f"{key} {named}" if number else "", explains=terms.NIGHT[key])  # fmt: skip


def _gravest(slot: WorkedSlot, code: str) -> Kind | None:
    kinds = [one.kind for one in slot.findings if one.code == code]
    return min(kinds, key=GRAVEST.__getitem__, default=None)
