"""Which parts to move how far, all at once: the least weight times distance, as a linear programme.

Only run when asked for: the solver takes longer to load than everything else together.
"""

from __future__ import annotations

from collections.abc import Sequence

SMALL = 1e-3
"""What a part costs more than the one before it in the list, of its effort: equal efforts then move few parts."""


def least_effort(
    weights: Sequence[float], ways: Sequence[float], gains: Sequence[Sequence[float]], needs: Sequence[float]
) -> tuple[float, ...] | None:
    """Return how far each part goes (m) so that every need is met with the least weight times distance, or None.

    ``ways`` are how far each may go; ``gains[row][part]`` is what one metre of it gives to ``needs[row]``.
    """
    from highspy import Highs, HighsModelStatus, kHighsInf

    class Silent(Highs):
        """The solver, told to be silent before it announces itself on standard output."""

        def enableCallbacks(self) -> None:
            """Listen to the solver, silently."""
            self.silent()
            super().enableCallbacks()  # type: ignore[no-untyped-call]

    if not weights:
        return None
    solver = Silent()  # type: ignore[no-untyped-call]
    solver.setOptionValue("threads", 1)
    for index, (kg, way) in enumerate(zip(weights, ways, strict=True)):
        solver.addVar(0.0, way)
        solver.changeColCost(index, kg * (1.0 + SMALL * index))
    for row, need in zip(gains, needs, strict=True):
        taking = [index for index, gain in enumerate(row) if gain]
        solver.addRow(need, kHighsInf, len(taking), taking, [row[index] for index in taking])
    solver.run()
    if solver.getModelStatus() != HighsModelStatus.kOptimal:
        return None
    return tuple(float(value) for value in solver.getSolution().col_value)
