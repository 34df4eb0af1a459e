"""What stands beside every screen: the four answers, the numbers, the balance and the findings, ready to be shown."""

from __future__ import annotations

from collections.abc import Iterable
from math import isclose, isfinite

from boxwright.book.answer import slot_of, verdict_of
from boxwright.book.numbers import mass, share
from boxwright.book.questions import blanks_of
from boxwright.book.worded import in_words
from boxwright.disciplines.weight.result import Output
from boxwright.exchange import Box
from boxwright.finding import USES, Finding, Kind, Use
from boxwright.rig.compose import Reading
from boxwright.rig.spelled import as_written
from boxwright.study.remedy import may_be_cured
from boxwright.study.slots import Slot as WorkedSlot
from boxwright.study.verdict import NOT_JUDGED
from boxwright.units import Band, HeaderUnits, shown_unit
from boxwright.web import contract, terms
from boxwright.web.session import Seen

MILLIMETRES = 1000.0
SAME = 1e-9
"""Two numbers nearer than this, as a share, are one."""
NOT_KNOWN = "not known yet"
"""Stands in place of a number of which nothing is known."""
MOST_REASONS = 5
"""How many reasons stand under an answer; the findings tell the rest."""
MOST_IN_HAND = 12
"""How many findings follow the hand: what is graver comes first."""
GRAVEST: dict[Kind, int] = {"stop": 0, "unknown": 1, "limit": 2, "fix": 3, "advice": 4}
SCREEN_OF_SECTION = {"openings": "elevations", "frame": "frame", "walls": "frame", "stages": "stages",
                     "measured": "records", "wires": "power", "pipes": "water"}  # fmt: skip


def numbers_of(seen: Seen, seq: int, rev: int, preview: bool) -> contract.Numbers:
    """Return everything beside the screen. In a ``preview`` what takes longer than a hand's patience is left out."""
    slot = asked_slot(seen)
    units = seen.reading.rig.header.units
    findings = None if slot is None else shown_findings(slot_findings(seen), seen, is_settled=not preview)
    return contract.Numbers(
        t="numbers",
        seq=seq,
        rev=rev,
        preview=preview,
        slot=seen.slot,
        answers=answers(seen) if not preview else _answers_of_load(seen),
        of=f"Numbers of load {slot.load}" if slot is not None and slot.load != seen.slot.load else "",
        figures=figures(slot, units) if slot is not None else [],
        balance=balance(slot, units) if slot is not None else None,
        findings=(findings or [])[: MOST_IN_HAND if preview else None],
        accepted=shown_findings(accepted_findings(seen), seen, kept=True) if not preview else None,
        problems=problems(seen.reading) if not preview else None,
        stale=["answers", "charts"] if preview else [],
    )


def asked_slot(seen: Seen) -> WorkedSlot | None:
    """Return the slot whose numbers are shown: that of towing, in the load state looked at."""
    found = slot_of(seen.study, "tow", seen.slot.load)
    if found is not None and (not seen.slot.load or found.load == seen.slot.load):
        return found
    slots = seen.study.asked_slots("", seen.slot.load)
    return slots[0] if slots else found


def night_slot(seen: Seen) -> WorkedSlot | None:
    """Return the slot somebody sleeps in: in the load state looked at if it is for that, else in its worst."""
    return slot_of(seen.study, "sleep", seen.slot.load)


def answers(seen: Seen) -> list[contract.Answer]:
    """Return the answer for each use, in words."""
    return [_answer(seen, use) for use in USES]


def _answers_of_load(seen: Seen) -> list[contract.Answer]:
    """Return only the answers that the load state in hand is judged for: the others wait until the hand lets go."""
    return [_answer(seen, use) for use in USES if seen.study.asked_slots(use)]


def _answer(seen: Seen, use: Use) -> contract.Answer:
    verdict = verdict_of(seen.study, use, seen.slot.load)
    says = [in_words(one) for one in verdict.says] or list(verdict.because) or ["every rule that was judged holds"]
    if verdict.load and verdict.load != seen.slot.load:
        says[0] = f"{says[0]} (load {verdict.load})"
    more = len(says) - MOST_REASONS
    if more > 0:
        # However much is found, what nobody judged is never among what is only counted.
        not_judged = [one for one in says[MOST_REASONS - 1 :] if one.startswith(NOT_JUDGED)]
        says = [*says[: MOST_REASONS - len(not_judged)], *not_judged, f"and {more} more"]
    return contract.Answer(use=use, label=terms.USES[use][0], word=verdict.answer, says=says, act=in_words(verdict.act),
                           questions=[in_words(one) for one in verdict.questions],
                           explains=f"{terms.USES[use][1]} {terms.ANSWERS[verdict.answer]}")  # fmt: skip


# ------------------------------------------------------------------ numbers


def figures(slot: WorkedSlot, units: HeaderUnits) -> list[contract.Figure]:
    """Return the numbers always in sight: the whole, the ball, its share, each axle, the sides, the room left."""
    result = slot.weight
    if result is None:
        return []
    said = slot.findings
    found = [
        _figure("tongue", "On the ball", result.tongue, mass(result.tongue.band, units), said, "tongue"),
        _figure("share", "Share on the ball", result.share, share(result.share.band, units), said, "share"),
        _figure("gross", "All up", result.gross, mass(result.gross.band, units), said, "gross"),
    ]
    names = ["On the axle"] if len(result.axles) == 1 else [f"On axle {n}" for n in range(1, len(result.axles) + 1)]
    for index, (label, axle) in enumerate(zip(names, result.axles, strict=True), start=1):
        found.append(_figure(f"axle-{index}", label, axle, mass(axle.band, units), said, "axle"))
    found.append(_sides(result.left, result.right, units, said))
    room = _room(slot, units, said)
    return [*found, room] if room is not None else found


ABOUT: dict[str, tuple[str, ...]] = {
    "tongue": ("towing/tongue-over-rating", "towing/ball-load-too-small", "towing/payload"),
    "share": ("towing/tongue-share",),
    "gross": ("towing/gross-over-plate", "towing/coupler-over-rating", "towing/tow-rating", "towing/combination"),
    "axle": ("towing/axle-overloaded", "towing/wheels-over-axles", "towing/tyre-overloaded"),
    "sides": ("weight/sides-differ",),
    "room": ("towing/gross-over-plate",),
}
"""Which findings colour which number."""


def _kind(said: Iterable[Finding], about: str) -> Kind | None:
    kinds = [one.kind for one in said if one.code in ABOUT[about]]
    return min(kinds, key=GRAVEST.__getitem__, default=None)


def _figure(key: str, label: str, output: Output, text: str, said: tuple[Finding, ...], about: str) -> contract.Figure:
    number, _, band = text.partition(" (")
    amount, unit = _apart(number)
    band = "" if amount == NOT_KNOWN else band
    return contract.Figure(key=key, label=label, text=amount, unit=unit, band=band.removesuffix(")"),
                           kind=_kind(said, about), path=output.name.replace(" ", "-"),
                           explains=terms.FIGURES[about])  # fmt: skip


def _apart(number: str) -> tuple[str, str]:
    """Return a shown amount as its figures and its unit; ``+ ?`` stands for what has no number and stays behind."""
    if number == "unknown":
        return NOT_KNOWN, ""
    best, open_end, _ = number.partition(" + ?")
    amount, _, unit = best.rpartition(" ")
    if open_end and amount == "0":
        return NOT_KNOWN, ""
    return (amount + (" + ?" if open_end else ""), unit) if amount else (number, "")


def _sides(left: Output, right: Output, units: HeaderUnits, said: tuple[Finding, ...]) -> contract.Figure:
    """Return how much heavier one side is, as its wheels carry it."""
    unit, scale = shown_unit("mass", units)
    difference = right.band.best - left.band.best
    if not (isfinite(left.band.low) and isfinite(right.band.low)):
        text, word, band = NOT_KNOWN, "", ""
    else:
        band = "" if left.band.known and right.band.known else "as far as known"
        text, word = f"{scale.from_si(abs(difference)):,.0f}", f"{unit} {'right' if difference > 0.0 else 'left'}"
    return contract.Figure(key="sides", label="Heavier side", text=text, unit=word, band=band,
                           kind=_kind(said, "sides"), explains=terms.FIGURES["sides"])  # fmt: skip


def _room(slot: WorkedSlot, units: HeaderUnits, said: tuple[Finding, ...]) -> contract.Figure | None:
    plate = slot.towing.trailer.gvwr if slot.towing is not None else None
    if plate is None or not plate.known or slot.weight is None:
        return None
    gross = slot.weight.gross.band
    left = Band(plate.best - gross.best, plate.best - gross.high, plate.best - gross.low, gross.known, gross.spread)
    number, _, band = mass(left, units).partition(" (")
    text, unit = _apart(number)
    return contract.Figure(key="room", label="Room to the plate", text=text, unit=unit, band=band.removesuffix(")"),
                           kind=_kind(said, "room"), explains=terms.FIGURES["room"])  # fmt: skip


# ------------------------------------------------------------------ balance


def balance(slot: WorkedSlot, units: HeaderUnits) -> contract.Balance | None:
    """Return the trailer as a beam; None where its measures or weights are not known."""
    box, result = slot.box, slot.weight
    if box is None or result is None or not box.coupler_x.known or not box.axles:
        return None
    if not all(axle.x.known for axle in box.axles):
        return None
    if not all(_is_answered(one.band) for one in (result.gross, result.tongue, result.centre_x, *result.axles)):
        return None
    up = [contract.Reaction(label="ball", x_mm=box.coupler_x.best * MILLIMETRES, kg=result.tongue.band.best,
                            text=_short(result.tongue.band, units))]  # fmt: skip
    for index, (axle, load) in enumerate(zip(box.axles, result.axles, strict=False), start=1):
        up.append(contract.Reaction(label=f"axle {index}", x_mm=axle.x.best * MILLIMETRES, kg=load.band.best,
                                    text=_short(load.band, units)))  # fmt: skip
    down = contract.Reaction(label="all", x_mm=result.centre_x.band.best * MILLIMETRES, kg=result.gross.band.best,
                             text=_short(result.gross.band, units), is_down=True)  # fmt: skip
    return contract.Balance(
        front_mm=box.front_x * MILLIMETRES,
        rear_mm=box.rear_x * MILLIMETRES,
        coupler_mm=box.coupler_x.best * MILLIMETRES,
        reactions=[*up, down],
        says=_balance_in_words(box, result.gross.band, up, units),
    )


def _is_answered(band: Band) -> bool:
    """Return whether anything at all is known of a number: one without either end is never drawn as nothing."""
    return isfinite(band.best) and (isfinite(band.low) or isfinite(band.high))


def _short(band: Band, units: HeaderUnits) -> str:
    unit, scale = shown_unit("mass", units)
    if not band.known:
        return mass(band, units).partition(" (")[0].replace(f" {unit} + ?", f" + ? {unit}")
    return f"{scale.from_si(band.best):,.0f} {unit}"


def _balance_in_words(box: Box, gross: Band, up: list[contract.Reaction], units: HeaderUnits) -> str:
    held = ", ".join(f"{one.label} {one.text}" for one in up)
    return f"Balance: {_short(gross, units)} in all; carried by {held}"


# ------------------------------------------------------------------ findings


def slot_findings(seen: Seen) -> tuple[Finding, ...]:
    """Return the findings shown: of the slot that speaks for each use."""
    slots = [slot_of(seen.study, use, seen.slot.load) for use in USES]
    return tuple(dict.fromkeys(one for slot in slots if slot is not None for one in slot.findings))


def accepted_findings(seen: Seen) -> tuple[Finding, ...]:
    """Return the findings the owner has accepted, of the same slots."""
    slots = [slot_of(seen.study, use, seen.slot.load) for use in USES]
    return tuple(dict.fromkeys(one for slot in slots if slot is not None for one in slot.accepted))


def shown_findings(
    findings: tuple[Finding, ...], seen: Seen, kept: bool = False, is_settled: bool = True
) -> list[contract.ShownFinding]:
    """Return findings as they are shown: said once however many uses they bear on, the gravest first.

    What takes longer than a hand's patience is left out unless it is settled.
    """
    once: dict[tuple[str, str, str], contract.ShownFinding] = {}
    for one in sorted(findings, key=lambda one: (GRAVEST[one.kind], not one.could_stop)):
        key = (one.code, one.where, one.says)
        if key not in once:
            once[key] = _shown(one, seen, kept, is_settled)
    return list(once.values())


def key_of(finding: Finding, seen: Seen) -> str:
    """Return what tells a finding from all others: what was proved for it is never offered for another."""
    return key_for(finding.code, finding.where, finding.load, finding.use, seen)


def key_for(code: str, where: str, load: str, use: str, seen: Seen) -> str:
    """Return the key of what a rule finds at a place in a load state and use, at the stage and vehicle seen."""
    return " | ".join((code, where, seen.slot.stage, load, use, vehicle_of(seen)))


def vehicle_of(seen: Seen) -> str:
    """Return the tow vehicle everything is judged with; the first where none is chosen."""
    names = [name for name, _ in seen.reading.rig.tow]
    return seen.slot.vehicle if seen.slot.vehicle in names else next(iter(names), "")


def _shown(finding: Finding, seen: Seen, kept: bool, is_settled: bool) -> contract.ShownFinding:
    document = seen.reading.document
    where = as_written(document, finding.where)
    spot = document.spot(where) if finding.where else None
    return contract.ShownFinding(
        key=key_of(finding, seen),
        code=finding.code,
        where=finding.where,
        use=finding.use or "",
        load=finding.load,
        kind=finding.kind,
        word=terms.KINDS[finding.kind][0],
        says=in_words(finding.says),
        act=in_words(finding.act),
        source=finding.source,
        line=spot.line if spot else None,
        column=spot.column if spot else None,
        screen=screen_of(finding),
        remedy=finding.remedy,
        may_seek=is_settled and not kept and _may_be_sought(finding, seen),
        may_accept=not kept and finding.kind != "stop",
        blanks=_blanks(finding, seen) if is_settled and not kept else [],
        explains=terms.KINDS[finding.kind][1],
    )


def _may_be_sought(finding: Finding, seen: Seen) -> bool:
    """Return whether a change that clears a finding can be sought at all."""
    slot = slot_said_in(finding, seen)
    return slot is not None and may_be_cured(finding, slot)


def slot_said_in(finding: Finding, seen: Seen) -> WorkedSlot | None:
    """Return the slot a finding was said in."""
    slots = seen.study.asked_slots(finding.use, finding.load)
    return next((one for one in slots if finding in one.findings or finding in one.accepted), None)


def _blanks(finding: Finding, seen: Seen) -> list[contract.Blank]:
    reading = seen.reading
    misread = {one.path for one in reading.problems if one.kind == "problem"}
    found = []
    units, doubts = reading.rig.header.units, _doubts(finding, slot_said_in(finding, seen))
    for one in blanks_of(finding, reading.document, units, vehicle_of(seen), misread, doubts):
        line, wrong = reading.document.spot(one.path).line, wrong_at(reading, one.path)
        found.append(contract.Blank(path=one.path, label=one.label, text=one.text, unit=one.unit, line=line,
                                    explains=one.explains, example=one.example, wrong=wrong))  # fmt: skip
    return found


def _doubts(finding: Finding, slot: WorkedSlot | None) -> list[str]:
    """Return what makes the number of a finding doubtful, the widest first, where it is a weight worked out."""
    result = slot.weight if slot is not None else None
    if result is None or finding.number is None:
        return []
    outputs = (result.gross, result.tongue, result.share, result.on_wheels, *result.axles, result.left, result.right)
    is_weight = any(isclose(one.band.best, finding.number, rel_tol=SAME) for one in outputs)
    return [one.of for one in result.tongue_widened_by] if is_weight else []


def wrong_at(reading: Reading, path: str) -> str:
    """Return why what is written at a path could not be read, empty where it could."""
    return next((one.says for one in reading.problems if one.path == path and one.kind == "problem"), "")


def screen_of(finding: Finding) -> str:
    """Return the screen a finding's thing is drawn on."""
    section = finding.where.partition("[")[0].partition(".")[0]
    if section == "parts":
        return "plan"
    return SCREEN_OF_SECTION.get(section, finding.code.partition("/")[0])


def problems(reading: Reading) -> list[contract.ShownProblem]:
    """Return what could not be read, with the stretch of text it is about."""
    found = []
    for one in reading.problems:
        extent = reading.document.extent(one.path) if one.path else None
        length = min(extent.end - extent.value, 60) if extent is not None and extent.end > extent.value else 1
        end = one.column + length
        problem = contract.ShownProblem(line=one.line, column=one.column, end_line=one.line, end_column=end,
                                        path=one.path, says=one.says, kind=one.kind)  # fmt: skip
        found.append(problem)
    return found
