"""What logged nights proved, as it stands under ``measured``: an entry that cannot be read is told elsewhere."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from boxwright.disciplines.heat.parts import ProvedLoss
from boxwright.model.measured import MeasuredWords
from boxwright.rig.validate import validate
from boxwright.units import HeaderUnits


def losses_proved(tree: Mapping[str, Any], units: HeaderUnits) -> tuple[ProvedLoss, ...]:
    """Return every loss of the room that was measured, in the order of the file."""
    entries = tree.get("measured")
    found: list[ProvedLoss] = []
    for name, entry in entries.items() if isinstance(entries, Mapping) else ():
        if not isinstance(entry, Mapping) or "loses" not in entry:
            continue
        words, _ = validate(MeasuredWords, dict(entry), f"measured[{name}]", units)
        if words is not None:
            given = (words.loses, words.reckoned, words.inside, words.outside)
            known = [one if one is not None and one.known else None for one in given]
            found.append(ProvedLoss(f"measured[{name}]", words.date, words.log, *known))
    return tuple(found)
