"""Which parts to move how far, all at once: the least weight times distance, as a linear programme.

Only run when asked for: the solver takes longer to load than everything else together.
"""

from __future__ import annotations

from collections.abc import Sequence

SMALL = 1e-5
"""What a part costs more than the one before it in the list, of its effort: equal efforts then move few parts."""


def least_effort(
    weights: Sequence[float],
    ways: Sequence[tuple[float, float]],
    gains: Sequence[Sequence[float]],
    needs: Sequence[float],
) -> tuple[float, ...] | None:
    """Return how far each part goes (m, with its sign) so that every need is met with the least weight times distance.

    ``ways`` are the farthest each may go either way, the first not above and the second not below zero;
    ``gains[row][part]`` is what one metre of it gives to ``needs[row]``. None where the needs cannot all be met.
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
    # Each part is two variables, how far it goes each way: the solver knows no absolute value.
    for index, (kg, (least, most)) in enumerate(zip(weights, ways, strict=True)):
        for column, way in ((2 * index, most), (2 * index + 1, -least)):
            solver.addVar(0.0, way)
            solver.changeColCost(column, kg * (1.0 + SMALL * index))
    for row, need in zip(gains, needs, strict=True):
        taking = [index for index, gain in enumerate(row) if gain]
        columns = [column for index in taking for column in (2 * index, 2 * index + 1)]
        factors = [factor for index in taking for factor in (row[index], -row[index])]
        solver.addRow(need, kHighsInf, len(columns), columns, factors)
    solver.run()
    if solver.getModelStatus() != HighsModelStatus.kOptimal:
        return None
    found = solver.getSolution().col_value
    return tuple(float(found[2 * index]) - float(found[2 * index + 1]) for index in range(len(weights)))
