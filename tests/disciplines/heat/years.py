"""Long runs for the tests: rows as arrays, and the loop handed them."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

from boxwright.disciplines.heat.method import Box, Hours
from boxwright.disciplines.heat.method.boxed import _Work
from boxwright.disciplines.heat.method.network import FIXED

Group = TypeVar("Group", bound=tuple[object, ...])

if TYPE_CHECKING:
    import numpy as np


def arrays(group: Group) -> Group:
    """Return a group of columns with each column an array."""
    import numpy as np

    kinds = [int if name in ("direction", "face") else float for name in group._fields]  # type: ignore[attr-defined]
    return type(group)(
        *(np.array(one, dtype=kind) if isinstance(one, tuple) else one for one, kind in zip(group, kinds, strict=True))
    )


def marched(
    loop: Callable[..., None], box: Box, course: Hours, start: float, humid: float, substeps: int = 2, warm_up: int = 0
) -> np.ndarray:
    """Return the rows of a run in arrays."""
    import numpy as np

    many, places = len(box.faces.inward), len(box.cold.factor)
    work = _Work(*(np.zeros(many) for _ in range(7)), *(np.zeros(places) for _ in range(4)))  # type: ignore[arg-type]
    out = np.zeros((len(course.outside) + 1, FIXED + many + places))
    whole = Box(*(arrays(one) for one in box))  # type: ignore[type-var]
    loop(whole, arrays(course), start, humid, 1.0, substeps, warm_up, work, out)
    return out
