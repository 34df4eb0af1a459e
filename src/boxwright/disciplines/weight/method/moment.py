"""The one unit the formulas of weight need beyond those everybody has: a moment of masses."""

from __future__ import annotations

from typing import Annotated

from boxwright.units import Unit

KilogramMetre = Annotated[float, Unit("kg*m", "moment")]
