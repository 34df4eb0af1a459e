"""How a finding was reached: what the rule asks, number, limit and margin, what is written, each formula with numbers.

The same for page and command line. Nothing is worked out here: the numbers are the finding's own, those of weight as
`working` shows them, and those of the formulas that ran for the slot (`traced`).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import fields, is_dataclass, replace
from functools import cache, lru_cache
from math import isclose, isfinite

from boxwright.book.rules import methods_named, methods_of, rule_of, sources_named
from boxwright.book.traced import Call, Number
from boxwright.book.written import SAME, PutIn, Written
from boxwright.finding import Finding
from boxwright.records import dataclass
from boxwright.rig.document import Document
from boxwright.source import load_checks
from boxwright.study.lever import lever_of
from boxwright.study.own_units import own, part_named, put_in, units_of
from boxwright.study.slots import Slot
from boxwright.study.working import Step, labels_of, number_steps, result_of
from boxwright.units import Band, HeaderUnits, show, show_band

MOST_STEPS, MOST_DEEP = 8, 3
"""How many formulas are shown, and how far back from a number."""
SAID_AS = {"Lever": "What clears it"}
"""The label of a rule that is a word of ours, as it is said to whoever builds."""
MOST_KEPT = 1 << 14
"""How many numbers are kept as they read: a rig has some thousands, and every finding asks for all of them."""
TYPED = 5
"""Figures somebody may type."""
DOUBT = ("+-", " to ", "at least", "at most")
TELLING = 3
"""Digits a number in a sentence must have to be known again."""


@dataclass(frozen=True, slots=True)
class Worked:
    """One formula with its numbers: as its method states it, what was put in, the same with numbers, what came out."""

    formula: str
    given: tuple[PutIn, ...]
    with_numbers: str
    result: str
    source: str
    checks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Reason:
    """How a finding was reached. ``compared`` are number, limit and margin in words; ``rule`` the labels of its rule.

    ``written`` is what the rig file says of the things it is about, each with its line; what is not written says so.
    """

    code: str
    rule: tuple[tuple[str, str], ...]
    compared: tuple[tuple[str, str], ...]
    written: tuple[PutIn, ...]
    steps: tuple[Worked, ...]
    sources: tuple[str, ...]


def reason_of(
    finding: Finding, slot: Slot, document: Document, calls: Iterable[Call], shown_in: HeaderUnits, of_file: HeaderUnits
) -> Reason:
    """Return how a finding was reached; ``calls`` are the formulas that ran for its slot."""
    labelled = rule_of(finding.code)
    labels = labelled.labels if labelled is not None else ()
    rule = tuple((SAID_AS.get(label, label), text) for label, text in labels if label != "Methods")
    written = Written(document, finding, of_file)
    steps = tuple(_steps(finding, slot, tuple(calls), written, shown_in))
    folder = finding.code.partition("/")[0]
    named = f"{finding.source} {labelled.label('Source') if labelled is not None else ''}"
    return Reason(
        code=finding.code,
        rule=rule,
        compared=_once(_compared(finding, slot, written, shown_in)),
        written=tuple(written.lines()),
        steps=steps,
        sources=tuple(sources_named(named, folder)),
    )


def _once(compared: Iterable[tuple[str, str]]) -> tuple[tuple[str, str], ...]:
    """Return what is compared, each amount under the first name it goes by."""
    by_text: dict[str, str] = {}
    for what, text in compared:
        by_text.setdefault(text, what)
    return tuple((what, text) for text, what in by_text.items())


def in_print(reason: Reason) -> tuple[str, ...]:
    """Return a reason line by line, a step ending with its source in brackets as in every working."""
    found = [f"{label}: {text}" for label, text in reason.rule]
    found += [f"{what}: {text}" for what, text in reason.compared]
    found += [f"  {_in_print(one)}" for one in reason.written]
    for step in reason.steps:
        found += [step.formula, *(f"  {_in_print(one)}" for one in step.given)]
        found += [f"  {step.with_numbers}"] if step.with_numbers else []
        found += [f"  = {step.result}", f"  ({step.source})"]
    return (*found, *(f"Source: {one}" for one in reason.sources))


def _in_print(one: PutIn) -> str:
    line = f", line {one.line}" if one.line is not None else ""
    where = f" ({one.path}{line})" if one.path and one.path != one.name else f" (line {one.line})" if line else ""
    return f"{one.name} = {one.text}{where}"


# ------------------------------------------------------------------ number, limit, margin


def _compared(finding: Finding, slot: Slot, written: Written, shown_in: HeaderUnits) -> Iterator[tuple[str, str]]:
    """Yield number, doubt, limit and margin as far as the finding has them."""
    if finding.number is not None:
        yield "Number", _shown(finding.number, finding.unit, shown_in)
        doubt = _doubt(finding, slot)
        if doubt is not None:
            yield "With all doubt", show_band(doubt, finding.unit or "ratio", shown_in)
            if finding.limit is not None and isfinite(doubt.low) and finding.limit > doubt.low:
                yield "From its least to the limit", show(finding.limit - doubt.low, finding.unit, shown_in)
    if finding.limit is not None:
        at = written.of_value(finding.limit, finding.unit)
        where = f", as written at {at.path}, line {at.line}: {at.text}" if at is not None else ""
        yield "Limit here", _shown(finding.limit, finding.unit, shown_in) + where
    if finding.margin is not None and isfinite(finding.margin):
        side = "inside" if finding.margin > 0.0 else "over" if finding.margin < 0.0 else "on the limit"
        yield "Margin", f"{_shown(abs(finding.margin), _apart(finding.unit), shown_in)} {side}"
    elif finding.number is not None and finding.limit is not None and finding.margin is None:
        yield "Apart", _shown(abs(finding.number - finding.limit), _apart(finding.unit), shown_in)
    yield from finding.besides
    yield from _recorded(finding, slot, shown_in)


def _apart(unit: str) -> str:
    """Return what a difference of two numbers of a unit is shown as: of two temperatures it has no zero."""
    return "temperature difference" if unit == "K" else unit


def _shown(value: float, unit: str, shown_in: HeaderUnits) -> str:
    """Return a number as it is said; a length as it is cut as well."""
    said, cut = show(value, unit, shown_in), show(value, unit, shown_in, cuts=True)
    if said == cut or cut.startswith("0 "):
        return said
    return f"{cut} ({said})" if "." in said else cut


def _recorded(finding: Finding, slot: Slot, shown_in: HeaderUnits) -> Iterator[tuple[str, str]]:
    """Yield what was worked out before of the things a finding is about and is named in its sentence."""
    of = {finding.where, *finding.because}
    results = [getattr(slot, one.name) for one in fields(slot) if one.name not in {"standing", "verdict", "findings"}]
    found: dict[str, str] = {}
    numbers: list[tuple[str, float]] = []
    for result in results:
        _numbers_of(result, of, "", False, numbers)
    for label, value in numbers:
        for text in (show(value, "m", shown_in, cuts=True), show(value, "m", shown_in), show(value, "kg", shown_in)):
            if sum(letter.isdigit() for letter in text) > 1 and f" {text}" in f" {finding.says}":
                found.setdefault(text, label)
    if any(word in finding.says for word in DOUBT):
        named: dict[Band, str] = {}
        for label, band in (pair for result in results for pair in _bands_of(result, "", [])):
            named.setdefault(band, label)
        for band, label in named.items():
            for text in _doubtful(band, shown_in):
                if text in finding.says:
                    found.setdefault(text, label)
    for text, label in found.items():
        yield label.replace("_", " ").strip(), text


@lru_cache(MOST_KEPT)
def _doubtful(band: Band, shown_in: HeaderUnits) -> tuple[str, ...]:
    """Return how a number reads with its doubt, in whatever unit a sentence may name it."""
    texts = (show_band(band, unit, shown_in) for unit in ("kg", "m", "ratio", "rad", "m/s"))
    return tuple(text for text in texts if any(word in text for word in DOUBT))


@cache
def _names(kind: type) -> tuple[str, ...]:
    """Return the names of the fields of a kind of record; none of anything else."""
    return tuple(one.name for one in fields(kind)) if is_dataclass(kind) else ()


def _bands_of(record: object, label: str, found: list[tuple[str, Band]]) -> list[tuple[str, Band]]:
    """Note every doubtful number of a record and of all within it, by their names; returns what was noted."""
    if isinstance(record, Band):
        found.append((label, record))
    elif isinstance(record, tuple):
        for one in record:
            _bands_of(one, label, found)
    else:
        kind: type = type(record)
        for name in _names(kind):
            own = label if name in {"band", "reading"} else f"{label} {name}"
            _bands_of(getattr(record, name), own, found)
    return found


def _numbers_of(record: object, of: set[str], label: str, is_asked: bool, found: list[tuple[str, float]]) -> None:
    """Note the numbers of every record that is of one of some paths, and of all within it, by their names."""
    if isinstance(record, Band):
        if is_asked:
            found += [(label, record.best), (f"{label}, at least", record.low), (f"{label}, at most", record.high)]
    elif isinstance(record, float):
        if is_asked:
            found.append((label, record))
    elif isinstance(record, tuple):
        for one in record:
            _numbers_of(one, of, label, is_asked, found)
    else:
        kind: type = type(record)
        names = _names(kind)
        is_asked = is_asked or bool(names and getattr(record, "of", "") in of)
        for name in names:
            _numbers_of(getattr(record, name), of, f"{label} {name}", is_asked, found)


def _doubt(finding: Finding, slot: Slot) -> Band | None:
    """Return the number of weight a finding speaks of with its doubt, where it is that number."""
    for _, band in _bands_of(slot.weight, "", []):
        if finding.number and isclose(band.best, finding.number, rel_tol=SAME) and band.low != band.high:
            return band
    return None


# ------------------------------------------------------------------ formulas


def _steps(
    finding: Finding, slot: Slot, calls: tuple[Call, ...], written: Written, shown_in: HeaderUnits
) -> Iterator[Worked]:
    """Yield the formulas behind a finding, those that others took their numbers from first."""
    made = [_of_step(step, written, shown_in) for step in _of_weight(finding, slot)]
    for call in _behind(finding, calls, shown_in):
        made.append(_of_call(call, written, shown_in))
    yield from list(dict.fromkeys(made))[:MOST_STEPS]


def _of_weight(finding: Finding, slot: Slot) -> tuple[Step, ...]:
    """Return the steps of the weight a finding speaks of: that of its lever, where its number is that or any."""
    lever = lever_of(finding, slot)
    if lever is None:
        return ()
    named = {"share": ("tongue", "share"), "wheels": ("on-wheels",), "axle": (f"axle-{lever.axle + 1}",),
             "left": ("left", "right"), "wheel": (f"axle-{lever.axle + 1}",)}  # fmt: skip
    return number_steps(slot, *named.get(lever.load, (lever.load,)))


def _behind(finding: Finding, calls: tuple[Call, ...], shown_in: HeaderUnits) -> list[Call]:
    """Return the formulas behind the numbers of a finding, the earlier first: those its rule ran, or names.

    Of these the ones that gave a number of the finding; where none did, the first the rule ran itself.
    """
    folder, _, name = finding.code.partition("/")
    rule, named = name.replace("-", "_"), methods_named(finding.code)
    own = [call for call in calls if call.folder == folder and (call.rule == rule or call.name in named)]
    wanted = [value for value in (finding.number, finding.limit, finding.margin) if value]
    found = [call for call in own if _gives(call, wanted) or _is_said(call, own, finding.says, shown_in)]
    found = found or [call for call in own if call.rule == rule][:1]
    for _ in range(MOST_DEEP):
        taken = [value for call in found for _, given in call.given for value in _flat(given) if _is_worked_out(value)]
        earlier = [call for call in calls if call not in found and _gives(call, taken)]
        if not earlier:
            break
        found = earlier[:MOST_STEPS] + found
    return found


def _is_worked_out(value: float) -> bool:
    """Return whether a number has more figures than anybody types: only then is it known again with certainty."""
    return all(len(f"{value / unit:.9g}".strip("-0.").replace(".", "")) > TYPED for unit in (1.0, 0.0254, 0.45359237))


def _gives(call: Call, wanted: Iterable[float]) -> bool:
    return any(isclose(value, one, rel_tol=SAME) for _, value in call.gave if value not in {0.0, 1.0} for one in wanted)


def _is_said(call: Call, calls: list[Call], says: str, shown_in: HeaderUnits) -> bool:
    """Return whether a sentence names what a formula gave, and no other formula gave the same."""
    units = _units(call)
    for part, value in call.gave:
        text = show(value, units.get(part or "return", ""), shown_in)
        if sum(letter.isdigit() for letter in text) >= TELLING and f" {text}" in says:
            same = {(one.name, one.given) for one in calls if _gives(one, (value,))}
            return len(same) == 1
    return False


def _flat(value: Number) -> tuple[float, ...]:
    return value if isinstance(value, tuple) else (float(value),)


def _units(call: Call) -> dict[str, str]:
    method = methods_of(call.folder).get(call.name)
    return units_of(method) if method is not None else {}


def _of_call(call: Call, written: Written, shown_in: HeaderUnits) -> Worked:
    """Return a formula that ran, with its numbers in the builder's units."""
    method = methods_of(call.folder)[call.name]
    labels, units = labels_of(method), units_of(method)
    given = [_given(name, value, units.get(name, ""), written, shown_in) for name, value in call.given]
    gave = [f"{part} = " * bool(part) + own(value, units.get(part_named(part), ""), shown_in, part)
            for part, value in call.gave]  # fmt: skip
    formula = labels.get("Formula", "")
    return Worked(
        formula=formula or f"0 = {labels.get('Satisfies', '')}",
        given=tuple(given),
        with_numbers=put_in(method, formula, dict(call.given), shown_in),
        result=", ".join(gave),
        source=f"{call.name}: {labels.get('Source', '')}",
        checks=_checks(call.folder, call.name),
    )


def _of_step(step: Step, written: Written, shown_in: HeaderUnits) -> Worked:
    """Return a step of the working of weight; a list of masses is told thing by thing, with what is written of it."""
    labels, units = labels_of(step.method), units_of(step.method)
    single = {name: value for name, value in step.given if isinstance(value, float)}
    given = [_given(name, value, units[name], written, shown_in) for name, value in single.items()]
    many = [(name, value) for name, value in step.given if isinstance(value, tuple)]
    for index, row in enumerate(step.rows):
        path = row.partition(" ")[0]
        text = ", ".join(own(value[index], units[name], shown_in, name) for name, value in many)
        given.append(replace(written.about(path), name=row, text=text))
    if not step.rows:
        given += [_given(name, value, units[name], written, shown_in) for name, value in many]
    formula = labels.get("Formula", "")
    name = getattr(step.method, "__name__", "")
    return Worked(
        formula=formula or f"0 = {labels.get('Satisfies', '')}",
        given=tuple(given),
        with_numbers=put_in(step.method, formula, dict(step.given), shown_in),
        result=f"{step.part} = " * bool(step.part) + result_of(step, shown_in),
        source=f"{name}: {labels.get('Source', '')}",
        checks=_checks("weight", name),
    )


def _given(name: str, value: Number, unit: str, written: Written, shown_in: HeaderUnits) -> PutIn:
    text = ", ".join(own(one, unit, shown_in, name) for one in _flat(value))
    at = written.of_value(value, unit) if isinstance(value, float) else None
    return PutIn(name, text, at.path, at.line) if at is not None else PutIn(name, text)


def _checks(folder: str, name: str) -> tuple[str, ...]:
    """Return the published checks of a method: where each stands."""
    found = load_checks(f"boxwright.disciplines.{folder}")
    return tuple(f"{one.source}, {one.place}" for one in found if name in (one.method, *one.covers))
