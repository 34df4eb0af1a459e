"""What a change does: answers and numbers before and after, findings gone and new, each in a line or two."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from boxwright.book.numbers import KIND_NAMES, USE_NAMES
from boxwright.cli.asked import Answered, slot_of, state_of, verdict_of
from boxwright.cli.check import ANSWER_STYLES, LEAD, finding_lines, weight_rows
from boxwright.cli.edits import Written
from boxwright.cli.screen import Line, Span, aligned, clean, hanging, plain, wrapped
from boxwright.finding import USES, Finding
from boxwright.study.bench import CURED
from boxwright.study.slots import Slot, Study

MOST_FINDINGS = 7
Mark = tuple[str, str, str]
Key = tuple[int, bool, str, str]
NOWHERE: Key = (0, False, "", "")


def answer_lines(before: Answered, after: Answered, columns: int) -> list[Line]:
    """Return the answer for each use, before and after."""
    lines: list[Line] = []
    for use in USES:
        old, new = verdict_of(before, use), verdict_of(after, use)
        lead: Line = (
            Span(USE_NAMES[use].ljust(7), "head"),
            Span(new.answer.upper().ljust(8), ANSWER_STYLES[new.answer]),
        )
        why = new.says[0] if new.says else "every rule that was judged holds"
        if old.answer != new.answer:
            lines += hanging(lead, f"(was {old.answer}) {why}", columns)
        elif old.says != new.says:
            lines += hanging(lead, "as before, for other reasons: " + why, columns)
        else:
            lines += hanging(lead, "as before", columns)
    return lines


def number_lines(before: Slot | None, after: Slot | None, answer: Answered, columns: int) -> list[Line]:
    """Return the weights that changed, before and after."""
    old, new = (state_of(slot) if slot is not None else None for slot in (before, after))
    if old is None or new is None or after is None:
        return []
    rows = [
        [name, was, now]
        for (name, was), (_, now) in zip(weight_rows(old, answer.units), weight_rows(new, answer.units), strict=False)
        if was != now
    ]
    head = plain(f"WEIGHT  load {after.load}", "head")
    if not rows:
        return [(), head, plain("  no weight changes")]
    narrow = [plain("  " + row) for row in aligned([["", "before", "after"], *rows], right=(1, 2), gap=3)]
    if all(sum(len(span.text) for span in line) <= columns for line in narrow):
        return [(), head, *narrow]
    stacked = [hanging(plain(f"  {name.ljust(16)}"), f"{was} -> {now}", columns) for name, was, now in rows]
    return [(), head, *(line for group in stacked for line in group)]


def later_number_lines(sweeps: tuple[Study, Study], before: Answered, after: Answered, columns: int) -> list[Line]:
    """Return the weights that change at the last stage of the plan, in the load state of the answer."""
    asked = slot_of(before, before.use)
    if asked is None:
        return []
    old, new = (
        [slot for slot in found.planned() if (slot.load, slot.use) == (asked.load, asked.use)] for found in sweeps
    )
    if not old or not new or (old[-1].number == asked.number and not asked.is_ticked):
        return []
    lines = number_lines(old[-1], new[-1], after, columns)
    head = plain(f"WEIGHT  load {new[-1].load}, planned at stage {new[-1].stage}", "head")
    return [(), head, *lines[2:]]


def finding_changes(before: Study, after: Study, answer: Answered, columns: int, is_by_slot: bool = True) -> list[Line]:
    """Return the findings that are gone from some slot and those that are new in one, each once, the asked stage first.

    Two studies of different stages have no slots in common: without ``is_by_slot`` all of each are one.
    """
    old, new = (_places(found, answer, is_by_slot) for found in (before, after))
    gone, came = _lost(old, new), _lost(new, old)
    lines: list[Line] = []
    if gone:
        lines += [(), plain("GONE", "head")]
        for finding, slots in gone[: _most(gone)]:
            lead = Span(f"  {KIND_NAMES[finding.kind]}".ljust(LEAD), finding.kind)
            lines += hanging((lead,), f"{finding.says} ({_slot_words(finding, slots)})", columns)
        lines += _more(gone)
    if came:
        lines += [(), plain("NEW", "head")]
        for finding, slots in came[: _most(came)]:
            lines += finding_lines(finding, columns, lambda path: answer.reading.document.spot(path).line)
            lines += hanging(plain(" " * LEAD), f"at {_slot_words(finding, slots)}", columns, "dim")
        lines += _more(came)
    return lines or [(), plain("No finding comes or goes.")]


def _places(found: Study, answer: Answered, is_by_slot: bool) -> dict[Mark, dict[Key, Finding]]:
    """Return every finding by rule, place and kind, with the slots it is said in, those of the asked stage first."""
    said: dict[Mark, dict[Key, Finding]] = {}
    here = slot_of(answer, answer.use)
    asked = (answer.study.number, answer.study.is_ticked, here.load if here is not None else "")
    for slot in sorted(found.slots, key=lambda one: ((one.number, one.is_ticked) != asked[:2], one.load != asked[2])):
        for finding in slot.findings:
            key = (slot.number, slot.is_ticked, slot.load, slot.use) if is_by_slot else NOWHERE
            said.setdefault((finding.code, finding.where, finding.kind), {}).setdefault(key, finding)
    return said


def _lost(old: dict[Mark, dict[Key, Finding]], new: dict[Mark, dict[Key, Finding]]) -> list[tuple[Finding, int]]:
    """Return each finding said in slots of one study and not there in the other, in how many; breaches first."""
    lost = [(mark, [key for key in slots if key not in new.get(mark, {})]) for mark, slots in old.items()]
    found = [(old[mark][keys[0]], len(keys)) for mark, keys in lost if keys]
    return sorted(found, key=lambda one: one[0].kind not in CURED)


def _most(found: Sequence[tuple[Finding, int]]) -> int:
    """Return how many are shown: a few, and every breach among them, which stand first."""
    return max(MOST_FINDINGS, sum(one.kind in CURED for one, _ in found))


def reworded_lines(before: Study, after: Study, places: Iterable[str], columns: int) -> list[Line]:
    """Return the findings about some places that stay and say something else, old sentence and new."""
    old, new, about = _said(before), _said(after), tuple(places)
    lines: list[Line] = []
    for mark, finding in new.items():
        if mark in old and old[mark].says != finding.says and finding.where.startswith(about) and about:
            lines += hanging((Span(f"  {KIND_NAMES[finding.kind]}".ljust(LEAD), finding.kind),), finding.says, columns)
            lines += hanging(plain(" " * LEAD), f"was: {old[mark].says}", columns, "dim")
    return [(), plain("SAID OTHERWISE", "head"), *lines] if lines else []


def _said(found: Study) -> dict[Mark, Finding]:
    """Return every finding by its rule, its place and its kind, the first slot's words for each."""
    said: dict[Mark, Finding] = {}
    for slot in found.slots:
        for finding in slot.findings:
            said.setdefault((finding.code, finding.where, finding.kind), finding)
    return said


def _slot_words(finding: Finding, slots: int) -> str:
    more = f", and {slots - 1} more {'state' if slots == 2 else 'states'}" if slots > 1 else ""
    return f"stage {finding.stage}, load {finding.load}{more}"


def _more(findings: Sequence[tuple[Finding, int]]) -> list[Line]:
    hidden = len(findings) - _most(findings)
    return [plain(f"  and {hidden} more", "dim")] if hidden > 0 else []


def written_lines(written: Iterable[Written], columns: int) -> list[Line]:
    """Return which value becomes which."""
    lines: list[Line] = []
    for one in written:
        was = f"{clean(one.before)} -> " if one.before is not None else "(not written) -> "
        lines += hanging(plain(f"  {clean(one.path)}: "), was + clean(one.after), columns)
    return lines


def changed_page(
    title: str, written: Iterable[Written], before: Answered, after: Answered, sweeps: tuple[Study, Study], columns: int
) -> list[Line]:
    """Return the page of a change: what is written, the answers, the numbers, the findings."""
    lines = [*(plain(piece, "head") for piece in wrapped(title, columns)), *written_lines(written, columns), ()]
    lines += answer_lines(before, after, columns)
    lines += number_lines(slot_of(before, before.use), _same_slot(before, after), after, columns)
    lines += later_number_lines(sweeps, before, after, columns)
    lines += finding_changes(*sweeps, after, columns)
    troubles = [one for one in after.reading.problems if one not in before.reading.problems and one.kind == "problem"]
    if troubles and len(after.reading.problems) > len(before.reading.problems):
        lines += [(), plain("CANNOT BE READ", "head")]
        for one in troubles:
            lines += hanging(plain("  "), f"line {one.line}: {one.says}", columns)
    return lines


def _same_slot(before: Answered, after: Answered) -> Slot | None:
    """Return the slot after the change in the load state the answer was given in before it."""
    asked = slot_of(before, before.use)
    if asked is None:
        return None
    return next(iter(after.study.asked_slots(asked.use, asked.load)), None)
