"""The checks of every method, run on this machine: what a source says, what comes out here, how far they may differ."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from importlib import import_module

from boxwright.book.rules import source_text
from boxwright.cli.screen import Line, Span, Style, hanging, plain, wrapped
from boxwright.records import dataclass
from boxwright.source import RESULT, Check, Source, load_checks, load_sources
from boxwright.units import unit_scale, unit_written

KINDS = ("published", "independent", "hand")


@dataclass(frozen=True, slots=True)
class Outcome:
    """One check after it ran. ``got`` pairs each expectation with what came out, in the source's own unit.

    ``lacks`` is the library that is not installed here and without which it could not be run; empty where it ran.
    """

    folder: str
    check: Check
    source: Source
    got: tuple[tuple[str, str], ...]
    misses: tuple[str, ...]
    lacks: str = ""

    @property
    def is_failed(self) -> bool:
        """Return whether the check fails where it should hold: a disputed one is shown, not counted."""
        return bool(self.misses) and not self.check.disputed


def run_all(folders: Iterable[str]) -> list[Outcome]:
    """Return the outcome of every check of the named chapters."""
    return [outcome for folder in folders for outcome in run_folder(folder)]


def run_folder(folder: str) -> list[Outcome]:
    """Return the outcome of every check of one chapter."""
    package = f"boxwright.disciplines.{folder}"
    methods, sources = import_module(f"{package}.method"), load_sources(package)
    return [
        ran(folder, check, sources[check.source], getattr(methods, check.method, None))
        for check in load_checks(package)
    ]


def ran(folder: str, check: Check, source: Source, method: Callable[..., object] | None) -> Outcome:
    """Return the outcome of one check of a method."""
    if method is None:
        return Outcome(folder, check, source, (), (f"there is no method {check.method}",))
    try:
        result = method(**check.arguments())
    except ModuleNotFoundError as missing:
        return Outcome(folder, check, source, (), (), missing.name or "a library")
    except (TypeError, ValueError, ArithmeticError) as reason:
        return Outcome(folder, check, source, (), (f"{check.method} could not be run: {reason}",))
    results = results_of(check, result)
    got = tuple((wanted.name, _in_unit_of(wanted.written, results.get(wanted.name))) for wanted in check.expect)
    return Outcome(folder, check, source, got, check.misses(results))


def results_of(check: Check, result: object) -> dict[str, object]:
    """Return what a method gave by the names the check expects: fields of a named result, or the one number."""
    named = getattr(result, "_asdict", None)
    if named is not None:
        return dict(named())
    return {check.expect[0].name if len(check.expect) == 1 else RESULT: result}


def _in_unit_of(written: str, got: object) -> str:
    """Return a value as the source writes it: seven figures, in its unit."""
    if isinstance(got, (tuple, list)):
        return _listed(written, got)
    if isinstance(got, bool) or not isinstance(got, (int, float)):
        return str(got)
    unit = unit_written(written)
    scale = unit_scale(unit) if unit else None
    return f"{scale.from_si(float(got)) if scale else float(got):.7g} {unit}".strip()


def _listed(written: str, values: Sequence[object]) -> str:
    """Return several values, each in the unit the source gives the one at its place."""
    units = written.strip("[] ").split(", ")
    each = units if len(units) == len(values) else [""] * len(values)
    return "[" + ", ".join(_in_unit_of(one, value) for one, value in zip(each, values, strict=True)) + "]"


def page(outcomes: Sequence[Outcome], columns: int) -> list[Line]:
    """Return one entry per check, grouped by method, and the count at the end."""
    lines: list[Line] = []
    method = ""
    for outcome in sorted(outcomes, key=lambda outcome: (outcome.folder, outcome.check.method, outcome.check.id)):
        name = f"{outcome.folder} {outcome.check.method}"
        if name != method:
            method = name
            lines.append(plain(name, "head"))
        lines += outcome_lines(outcome, columns)
    return [*lines, *([()] if lines else []), *_count(outcomes, columns)]


def outcome_lines(outcome: Outcome, columns: int) -> list[Line]:
    """Return one check in a few lines: its verdict and kind, what is expected and what came out."""
    word, style = _word(outcome)
    check = outcome.check
    lines = hanging((Span(f"  {word}".ljust(11), style),), f"{check.id} ({check.kind})", columns)
    got = dict(outcome.got)
    for wanted in check.expect:
        name = "" if wanted.name == RESULT else f"{wanted.name} "
        came = f"got {got.get(wanted.name, 'nothing')}"
        if outcome.lacks:
            came = f"not run, for {outcome.lacks} is not installed"
        text = f"{name}expected {wanted.written}, {came}, within {check.within}"
        lines += hanging((Span(" " * 11),), text, columns)
    for miss in outcome.misses:
        lines += hanging((Span(" " * 11),), miss, columns)
    if check.disputed:
        lines += hanging((Span(" " * 11),), f"disputed: {check.disputed}", columns)
    return lines


def _word(outcome: Outcome) -> tuple[str, Style]:
    if outcome.check.disputed:
        return "disputed", "unknown"
    if outcome.lacks:
        return "not run", "unknown"
    return ("FAILS", "stop") if outcome.misses else ("holds", "go")


def _count(outcomes: Sequence[Outcome], columns: int) -> list[Line]:
    failed = sum(outcome.is_failed for outcome in outcomes)
    kinds = ", ".join(f"{sum(one.check.kind == kind for one in outcomes)} {kind}" for kind in KINDS)
    disputed = sum(bool(outcome.check.disputed) for outcome in outcomes)
    left = sum(bool(outcome.lacks) for outcome in outcomes)
    text = f"{len(outcomes)} checks ({kinds}): {len(outcomes) - failed - disputed - left} hold, {failed} fail"
    text += f", {disputed} disputed" if disputed else ""
    text += f", {left} not run for want of a library" if left else ""
    return [plain(piece, "stop" if failed else "head") for piece in wrapped(text + ".", columns)]


def worked_example(outcome: Outcome, columns: int) -> list[Line]:
    """Return one check as an example to follow: where it comes from, what goes in, what comes out."""
    check, source = outcome.check, outcome.source
    lines = outcome_lines(outcome, columns)
    given = ", ".join(f"{one.name} = {one.written}" for one in check.given)
    lines[1:1] = [
        *hanging((Span(" " * 11),), f"from {source_text(source)}, {check.place}", columns),
        *hanging((Span(" " * 11),), f"given {given}", columns),
    ]
    if check.note:
        lines += hanging((Span(" " * 11),), f"note: {check.note}", columns, "dim")
    return lines
