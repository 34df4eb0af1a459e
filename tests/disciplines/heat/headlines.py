"""The headlines of a slot's nights, and what its findings have against its heaters, for the tests of both."""

from __future__ import annotations

from boxwright.cli.held_words import night_in_words
from boxwright.disciplines.heat.bearing import holds
from boxwright.finding import Finding
from boxwright.study.slots import Slot
from boxwright.units import HeaderUnits

UNDOES_NOTHING = {"heat/held", "heat/too-warm-at-lowest", "heat/loud-at-night", "heat/fuel-reach"}
"""Rules that leave the room as warm as it is; the first two are told by the headline's own numbers."""


def against(slot: Slot) -> list[Finding]:
    """Return what of a slot stands against its heaters, or may, whatever the headline makes of it."""
    heaters = {one.warmth.of for one in slot.heat.held if one.warmth is not None} if slot.heat is not None else set()
    heard = [one for one in slot.findings if one.code.startswith("heat/") and one.code not in UNDOES_NOTHING]
    about = [one for one in heard if not heaters.isdisjoint({one.where, *one.because})]
    asked = [one for one in about if one.kind == "unknown" and (one.could_stop or one.could_limit or one.protects)]
    return [one for one in about if one.kind in ("stop", "limit")] + asked


def headlines(slot: Slot) -> list[tuple[str, str]]:
    """Return what each night is called, for people and for programs."""
    held = slot.heat.held if slot.heat is not None else ()
    return [(night_in_words(one, slot.findings, HeaderUnits()), holds(one, slot.findings)) for one in held]
