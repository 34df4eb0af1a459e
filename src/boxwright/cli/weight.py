"""The page of ``boxwright weight``: every stage and load state in a table, and what to weigh next."""

from __future__ import annotations

from collections.abc import Sequence

from boxwright.book.numbers import mass, mass_unit, narrow, share
from boxwright.cli.check import CLOSING
from boxwright.cli.screen import Line, Span, aligned, columns_of, hanging, plain, wrapped
from boxwright.cli.shown import State, Weighed
from boxwright.units import HeaderUnits

INDENT = "    "


def page(weighed: Weighed, columns: int) -> list[Line]:
    """Return the lines of the page."""
    unit = mass_unit(weighed.units)
    title = f"{weighed.rig}: weights in {unit}, share of the gross on the ball in %; judged on {weighed.date}"
    lines = [plain(piece, "head") for piece in wrapped(title, columns)]
    problems = sum(problem.kind == "problem" for problem in weighed.problems)
    if problems:
        text = f"{problems} problem{'s' if problems > 1 else ''} in the text: boxwright check {weighed.path}"
        lines += [(), *(plain(piece, "unknown") for piece in wrapped(text, columns))]
    if weighed.ticked:
        lines += [(), plain("TODAY AS TICKED", "head"), *table(weighed.ticked, weighed.units, columns)]
    if weighed.planned:
        lines += [(), plain("AS PLANNED, AT THE END OF EACH STAGE", "head")]
        lines += table(weighed.planned, weighed.units, columns)
    lines += _unlisted([*weighed.ticked, *weighed.planned], columns)
    lines += _paragraph("WEIGH THESE NEXT  they widen the band on the ball most", weighed.weigh_next, columns)
    lines += _paragraph("EACH WHEEL, AND INERTIA", weighed.wheels, columns)
    lines += _paragraph("PARKED", weighed.parked, columns)
    lines += _paragraph("COMPARED WITH WHAT WAS MEASURED", weighed.compared, columns)
    return [*lines, (), *(plain(piece, "dim") for piece in wrapped(CLOSING, columns))]


def _paragraph(head: str, sentences: Sequence[str], columns: int) -> list[Line]:
    if not sentences:
        return []
    lines: list[Line] = [(), plain(head, "head")]
    for sentence in sentences:
        lines += hanging((Span("  "),), sentence, columns)
    return lines


def _unlisted(states: Sequence[State], columns: int) -> list[Line]:
    names = dict.fromkeys(name for state in states for name in state.unlisted)
    if not names:
        return []
    text = f"what has no weight written: {', '.join(names)}; the number before it is without them"
    return [(), *hanging((Span("  ?  ", "unknown"),), text, columns)]


def table(states: Sequence[State], units: HeaderUnits, columns: int) -> list[Line]:
    """Return the rows of a table, on one line each where the screen is wide enough, else on two."""
    axles = max((len(state.axles) for state in states), default=0)
    head = ["load", "gross", "ball", "share", "wheels", *(f"axle {index}" for index in range(1, axles + 1))]
    rows = [[*head, "left", "right", "unlisted"], *(_cells(state, units, axles) for state in states)]
    each, gap = 1, 2
    texts = aligned(rows, right=range(1, len(rows[0])), gap=gap)
    while _are_too_wide(texts, columns) and (each, gap) != (2, 1):
        if each == 1:
            rows, each = _doubled(rows, head.index("wheels") + 1), 2
        else:
            gap = 1
        texts = aligned(rows, right=range(1, len(rows[0]) + 1), gap=gap)
    lines = [plain(INDENT + text, "dim") for text in texts[:each]]
    stage = ""
    for index, state in enumerate(states, start=1):
        if state.stage != stage:
            stage = state.stage
            lines.append(plain(f"  stage {stage}", "head"))
        lines += [plain(INDENT + text) for text in texts[index * each : (index + 1) * each]]
    return lines


def _are_too_wide(texts: Sequence[str], columns: int) -> bool:
    return any(columns_of(text) + len(INDENT) > columns for text in texts)


def _cells(state: State, units: HeaderUnits, axles: int) -> list[str]:
    first, wheels = (state.gross, state.tongue), (state.on_wheels, *state.axles)
    cells = [state.load, *(narrow(mass(band, units)) for band in first), narrow(share(state.share, units))]
    cells += [narrow(mass(band, units)) for band in wheels] + [""] * (axles - len(state.axles))
    cells += [narrow(mass(band, units)) for band in (state.left, state.right)]
    return [*cells, str(len(state.unlisted)) if state.unlisted else ""]


def _doubled(rows: list[list[str]], cut: int) -> list[list[str]]:
    """Return each row as two, the second half below the first."""
    return [half for row in rows for half in (row[:cut], ["", *row[cut:]])]
