"""One step of a working: a method run on numbers, or what is told in words where no one formula does it."""

from __future__ import annotations

from collections.abc import Callable

from boxwright.disciplines.weight import method
from boxwright.records import dataclass
from boxwright.units import HeaderUnits

Number = float | tuple[float, ...]
Method = Callable[..., object]


@dataclass(frozen=True, slots=True)
class Told:
    """A step in words, by the units they are shown in: a sum, a product, or a run through hours; the source last."""

    says: Callable[[HeaderUnits], tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Step:
    """One method run on numbers, and what quantity comes out (empty for a bare number).

    ``rows`` names the members of arguments that are lists. ``part`` is which part of a result of several is meant.
    """

    method: Method
    given: tuple[tuple[str, Number], ...]
    quantity: str
    rows: tuple[str, ...] = ()
    part: str = ""

    def result(self) -> float:
        """Return what the method makes of the numbers."""
        found = self.method(**dict(self.given))
        if isinstance(found, method.TorsionLoads):
            found = found.tongue if self.part == "tongue" else found.axles[int(self.part.removeprefix("axle ")) - 1]
        if not isinstance(found, float):
            raise TypeError(f"{self.method.__name__} gave {found!r}, which is no number")
        return found
