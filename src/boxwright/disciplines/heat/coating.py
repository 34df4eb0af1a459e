"""What the outside of a plane does with sun and sky, by the words that are written of its skin."""

from __future__ import annotations

import re

from boxwright.disciplines.heat.material import columns, interval
from boxwright.exchange import Layup, Vector
from boxwright.records import dataclass
from boxwright.units import Band

COLOURS = {tuple(name.split()): row for name, row in columns("colours").items()}
UNSAID = columns("colour_unsaid")
_WORDS = re.compile(r"[a-z]+")


@dataclass(frozen=True, slots=True)
class Coat:
    """How much of the sun a face takes, and how well it radiates; ``colour`` is empty where nobody wrote one."""

    colour: str
    absorptance: Band
    emittance: Band


def coat_of(layup: Layup) -> Coat:
    """Return the coat of a plane: by the colour in the text of its skin, else anything from white to dark."""
    words = tuple(_WORDS.findall(layup.skin_of.lower()))
    found = [
        (len(name), at, name) for at in range(len(words)) for name in COLOURS if words[at : at + len(name)] == name
    ]
    if layup.wall == "floor" or not found:
        return COAT_UNSAID
    name = max(found)[2]
    row = COLOURS[name]
    return Coat(" ".join(name), interval(*row[:3]), interval(*row[3:]))


def sky_share(outward: Vector) -> float:
    """Return how much of what a face looks at is sky: half of it upright, none of it down."""
    return (1.0 + outward[2]) / 2.0


COAT_UNSAID = Coat("", interval(*UNSAID["absorptance"]), interval(*UNSAID["emittance"]))
