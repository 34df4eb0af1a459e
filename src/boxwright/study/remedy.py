"""The smallest change that clears a finding: by closed form, then proved by a study of every slot.

A change is offered only if the rig file, with exactly its splices, no longer has the finding in its slot and has no
stop, limit or unknown anywhere that it did not have before. Nothing here extrapolates: what is not proved is not said.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from typing import Literal

from boxwright.finding import Finding, Kind
from boxwright.rig.compose import Composer, Reading
from boxwright.rig.document import Document
from boxwright.rig.splice import Splice, apply, splice, splice_new, tree_at
from boxwright.study.lever import Lever, Pull, break_even, lever_of, pull_of
from boxwright.study.moves import (
    Candidate,
    Edit,
    Movable,
    Rooms,
    left_behind,
    movables,
    other_standing,
    pairs,
    single_moves,
    whole_range,
)
from boxwright.study.once import Once
from boxwright.study.packing import least_effort
from boxwright.study.remedy_words import moving, nothing_found, range_looked_over, weigh_first, with_weight
from boxwright.study.rewritten import rounded_shift
from boxwright.study.slots import Slot, Study, study
from boxwright.units import HeaderUnits

CURED: tuple[Kind, ...] = ("stop", "fix", "limit")
MOST = 8
TRIED = 12
"""How many changes are tried for one finding; each trial is a study of one slot."""
PROOFS, PROOFS_OF_ALL = 4, 16
"""How many are proved in every slot for one finding, at first sight and where all changes are asked for."""
A_LITTLE_MORE = 1.1
"""How much farther is gone where a move is a little too short: a share's doubt moves with the share."""
AXES: dict[str, tuple[Literal[0, 1], ...]] = {
    "tongue": (0,), "share": (0,), "nose": (0,), "wheels": (0,), "axle": (0,), "left": (1,), "gross": (),
}  # fmt: skip
"""The axes along which moving a part changes a load."""


@dataclass(frozen=True, slots=True)
class Fix:
    """A proved change: the finding it clears and where, what to do, the splices, and its effort (kg m).

    ``is_whole`` is False where what nobody has weighed could still cross the limit.
    """

    code: str
    where: str
    stage: str
    load: str
    use: str
    says: str
    edits: tuple[Edit, ...]
    effort: float
    moves: int
    leaves: bool
    is_whole: bool


@dataclass(frozen=True, slots=True)
class Remedies:
    """What can be done: the proved changes, the least effort first, and findings with none, each with a sentence."""

    fixes: tuple[Fix, ...]
    without: tuple[tuple[Finding, str], ...]


class Bench:
    """A rig on the bench: its text, its study, and the memos that make a trial of a changed text cheap.

    ``proofs`` counts the studies of every slot made to prove a change.
    """

    def __init__(
        self,
        reading: Reading,
        today: date,
        shown_in: HeaderUnits | None = None,
        judged_on: date | None = None,
        once: Once | None = None,
        vehicle: str = "",
    ) -> None:
        self.reading, self.today, self.vehicle = reading, today, vehicle
        self.shown_in, self.judged_on = shown_in, judged_on
        self.once = once if once is not None else Once()
        self.composer = Composer()
        self.proofs = 0
        self._before: Study | None = None
        self._before_in: dict[str, Study] = {}
        self._rooms: Rooms | None = None
        self._looks_back = False

    def look_at(self, number: int) -> None:
        """Take the stages before today into every proof where the stage asked about is one of them."""
        if number < self.reading.rig.header.stage_today and not self._looks_back:
            self._looks_back, self._before, self._rooms = True, None, None
            self._before_in.clear()

    @property
    def units(self) -> HeaderUnits:
        """Return the units everything is said in."""
        return self.shown_in or self.reading.rig.header.units

    @property
    def before(self) -> Study:
        """Return the study of every slot from today on, as the text stands."""
        if self._before is None:
            self._before = self._studied(self.reading)
        return self._before

    @property
    def rooms(self) -> Rooms:
        """Return where parts are free to go in the slots of the study."""
        if self._rooms is None:
            self._rooms = Rooms(self.reading.rig, self.before)
        return self._rooms

    def loose(self, slot: Slot, lever: Lever) -> list[Movable]:
        """Return the parts of a slot that may be moved along the axes that change a load."""
        rig = self.reading.rig
        return [one for axis in AXES[lever.load] for one in movables(rig, self.rooms, slot, axis, self.units)]

    def after(self, edits: Iterable[Edit]) -> Reading | None:
        """Return the reading of the text with some edits, None where one cannot be written or is not understood."""
        document = edited_by(self.reading.document, edits)
        if document is None:
            return None
        reading = self.composer.compose(document)
        return reading if len(reading.problems) <= len(self.reading.problems) else None

    def slot_after(self, reading: Reading, slot: Slot) -> Slot | None:
        """Return one slot of a changed text."""
        found = study(reading.rig, self.today, stage=slot.number, load=slot.load, use=slot.use, once=self.once,
                      shown_in=self.shown_in, judged_on=self.judged_on, vehicle=self.vehicle)  # fmt: skip
        return next((one for one in found.slots if key_of(one) == key_of(slot)), None)

    def is_proved(self, reading: Reading, finding: Finding, slot: Slot, edits: tuple[Edit, ...]) -> bool:
        """Return whether a changed text clears a finding in its slot and adds no stop, limit or unknown anywhere.

        What goes wrong mostly does so in another load state of the same stage, so that stage is looked at first; a
        change of one load state changes no other, and only its slots are looked at.
        """
        only = self._only_load(edits)
        if only is None:
            here = study(reading.rig, self.today, stage=slot.number, once=self.once, shown_in=self.shown_in,
                         judged_on=self.judged_on, vehicle=self.vehicle)  # fmt: skip
            if _added(self.before, {key_of(one): one for one in here.slots}, finding):
                return False
        self.proofs += 1
        before = self._before_of(only)
        after = {key_of(one): one for one in self._studied(reading, only).slots}
        if {key_of(one) for one in before.slots} - after.keys():
            return False
        return not _stands(finding, after[key_of(slot)]) and not _added(before, after, finding)

    def _before_of(self, load: str | None) -> Study:
        """Return the study of the slots of one load state as the text stands; of all where none is named."""
        if load is None:
            return self.before
        if load not in self._before_in:
            self._before_in[load] = self._studied(self.reading, load)
        return self._before_in[load]

    def _only_load(self, edits: Iterable[Edit]) -> str | None:
        """Return the load state that edits alone bear on, None where they bear on more.

        What one state puts on the ball bears on the swing over all states, and that is said in its own slots too. A
        state that stood on a scale bears on the trailer's own weight, and so on everything.
        """
        names = {state.name for state in self.reading.rig.loads for edit in edits
                 if edit.path.startswith(f"loads[{state.name}].")}  # fmt: skip
        if len(names) != 1 or not all(edit.path.startswith("loads[") for edit in edits):
            return None
        (name,) = names
        return None if any(one.load == name for one in self.reading.rig.measured) else name

    def _studied(self, reading: Reading, load: str | None = None) -> Study:
        return study(reading.rig, self.today, load=load, once=self.once, all_stages=self._looks_back,
                     shown_in=self.shown_in, judged_on=self.judged_on, vehicle=self.vehicle)  # fmt: skip


def key_of(slot: Slot) -> tuple[int, bool, str, str]:
    """Return what tells a slot from all others of its study."""
    return slot.number, slot.is_ticked, slot.load, slot.use


def _stands(finding: Finding, slot: Slot) -> Finding | None:
    """Return the finding as it is said in a slot, at least as grave as it was; None where it is cleared."""
    for one in (*slot.findings, *slot.accepted):
        if (one.code, one.where) == (finding.code, finding.where) and not (
            one.kind == "unknown" and finding.kind != "unknown"
        ):
            return one
    return None


def _added(before: Study, after: dict[tuple[int, bool, str, str], Slot], cured: Finding) -> bool:
    """Return whether any slot has a stop, limit or unknown it had not."""
    return any(_adds(slot, after[key_of(slot)], cured) for slot in before.slots if key_of(slot) in after)


def _adds(slot: Slot, after: Slot, cured: Finding) -> bool:
    """Return whether a slot has a stop, limit or unknown it had not; a stop that becomes a question adds none."""
    had = {(one.code, one.where, one.kind) for one in slot.findings}
    graver = {(one.code, one.where) for one in slot.findings if one.kind in {"stop", "limit", "fix"}}
    for one in after.findings:
        if one.kind == "advice" or (one.code, one.where, one.kind) in had:
            continue
        if not (one.kind in {"unknown", "limit"} and (one.code, one.where) in graver) or one.code != cured.code:
            return True
    return False


def edited_by(document: Document, edits: Iterable[Edit]) -> Document | None:
    """Return the document with edits made, each by a proved splice; None where one is refused."""
    for edit in edits:
        one = spliced(document, edit)
        if not isinstance(one, Splice):
            return None
        document = apply(document, [one])
    return document


def spliced(document: Document, edit: Edit) -> Splice | None:
    """Return the splice of an edit: a value changed, a key added, or a name added to a list."""
    before, extent = tree_at(document, edit.path), document.extent(edit.path, exact=True)
    if isinstance(before, tuple) and extent is not None:
        at = extent.end - 1 if document.text[extent.end - 1 : extent.end] == "]" else -1
        if at < 0:
            return None
        one = Splice(at, at, f"{', ' if before else ''}{edit.value}")
        return one if tree_at(apply(document, [one]), edit.path) == (*before, edit.value) else None
    if edit.path.endswith(".out") and isinstance(before, str) and extent is not None:
        one = Splice(extent.value, extent.end, f"[{document.text[extent.value : extent.end]}, {edit.value}]")
        return one if tree_at(apply(document, [one]), edit.path) == (before, edit.value) else None
    write = splice_new if extent is None else splice
    made = write(document, edit.path, edit.value)
    return made if isinstance(made, Splice) else None


def remedies(
    bench: Bench,
    number: int,
    is_ticked: bool,
    *,
    use: str = "",
    load: str = "",
    everything: bool = False,
    per_finding: int = 1,
    found: Study | None = None,
) -> Remedies:
    """Return what clears the findings of a stage, at most eight changes, the least effort first.

    ``everything`` looks at advice too, seeks more than one change for each finding, and asks the linear programme.
    ``found`` is a study of the stage that is there already: without anything to cure in it no other is made.
    """
    bench.look_at(number)
    fixes: list[Fix] = []
    without: list[tuple[Finding, str]] = []
    done: set[tuple[str, str, str]] = set()
    for finding, slot in _wanted(found or bench.before, number, is_ticked, use, load, everything):
        mark = (finding.code, finding.where, slot.load)
        if mark in done:
            continue
        done.add(mark)
        lever = lever_of(finding, slot)
        if lever is None:
            continue
        cures = list(fixes_of(bench, finding, slot, lever, everything, MOST if everything else per_finding))
        fixes += cures
        says = said_without(bench, finding, lever, slot) if not cures else ""
        if says:
            without.append((finding, says))
    ranked = sorted({(one.edits, one.code, one.where): one for one in fixes}.values(), key=_rank)
    return Remedies(tuple(ranked[:MOST]), tuple(without))


def _rank(fix: Fix) -> tuple[float, int, bool, str]:
    return round(fix.effort, 3), fix.moves, fix.leaves, fix.says


def _wanted(
    found: Study, number: int, is_ticked: bool, use: str, load: str, everything: bool
) -> Iterator[tuple[Finding, Slot]]:
    """Yield the findings to be cured, each with its slot, the gravest first."""
    kinds: tuple[Kind, ...] = (*CURED, "unknown", "advice") if everything else (*CURED, "unknown")
    for kind in kinds:
        for slot in found.slots:
            is_asked = (slot.number, slot.is_ticked) == (number, is_ticked)
            if is_asked and use in {"", slot.use} and load in {"", slot.load}:
                yield from ((one, slot) for one in slot.findings if one.kind == kind)


def fixes_of(
    bench: Bench, finding: Finding, slot: Slot, lever: Lever, everything: bool = False, most: int = 1
) -> Iterator[Fix]:
    """Yield the proved changes that clear one finding in its slot, the least effort first."""
    for candidate in other_standing(finding, slot):
        fix = _proved(bench, finding, slot, candidate)
        if fix is not None:
            yield fix
            most -= 1
        if most == 0:
            return
    pull = pull_of(finding, lever, slot)
    if pull is None or finding.kind == "unknown":
        return
    rig, units = bench.reading.rig, bench.units
    loose = bench.loose(slot, lever)
    count, proofs = 0, bench.proofs + (PROOFS_OF_ALL if everything else PROOFS)
    tried: set[tuple[Edit, ...]] = set()
    needs = (more * need for need in (pull.wanted, pull.at_least) for more in (1.0, A_LITTLE_MORE) if need > 0.0)
    for need in dict.fromkeys(needs):
        made = single_moves(loose, lever, pull, need, units)
        made += left_behind(rig, slot, lever, pull, need, units)
        made += pairs(loose, lever, pull, need, units)
        if everything:
            made += _packed(lever, pull, need, loose, units)
        for candidate in sorted(made, key=lambda one: one.rank)[:TRIED]:
            if candidate.edits in tried:
                continue
            tried.add(candidate.edits)
            fix = _proved(bench, finding, slot, candidate)
            if fix is not None:
                yield fix
                count += 1
            if count >= most or bench.proofs >= proofs:
                return
        if count:
            return


def _proved(bench: Bench, finding: Finding, slot: Slot, candidate: Candidate) -> Fix | None:
    """Return a candidate as a fix if the study of its own slot, and then of all slots, bears it out."""
    reading = bench.after(candidate.edits)
    if reading is None:
        return None
    alone = bench.slot_after(reading, slot)
    if alone is None or _stands(finding, alone) is not None or _adds(slot, alone, finding):
        return None
    if not bench.is_proved(reading, finding, slot, candidate.edits):
        return None
    is_whole = not any((one.code, one.where) == (finding.code, finding.where) for one in alone.findings)
    return Fix(
        code=finding.code,
        where=finding.where,
        stage=slot.stage,
        load=slot.load,
        use=slot.use,
        says=candidate.says,
        edits=candidate.edits,
        effort=round(candidate.effort, 6),
        moves=candidate.moves,
        leaves=candidate.leaves,
        is_whole=is_whole,
    )


def _packed(lever: Lever, pull: Pull, need: float, loose: list[Movable], header: HeaderUnits) -> list[Candidate]:
    """Return the moves of least effort together, where the parts as far as they are free to go are enough."""
    able = []
    for one in loose:
        per = pull.by_moving(one.axis, lever.is_up) * one.kg
        far = one.inward(1.0 if per > 0.0 else -1.0) if per else 0.0
        if far:
            able.append((one, per, far))
    able.sort(key=lambda row: (-abs(row[1] * row[2]), row[0].item.of))
    shifts = least_effort(
        [one.kg for one, _, _ in able], [abs(far) for _, _, far in able], [[abs(per) for _, per, _ in able]], [need]
    )
    if shifts is None:
        return []
    says, edits, effort = [], [], 0.0
    for (one, _, far), shift in zip(able, shifts, strict=True):
        if shift > 1e-6:
            rounded = rounded_shift(one.offset, shift if far > 0.0 else -shift)
            rounded = rounded if abs(rounded) <= abs(far) else far
            words, edit = one.moved(rounded, header)
            says.append(words)
            edits.append(edit)
            effort += one.kg * abs(rounded)
    return [Candidate(moving(says), tuple(edits), effort, len(edits))] if edits else []


def said_without(bench: Bench, finding: Finding, lever: Lever, slot: Slot) -> str:
    """Return what is said of a finding without a proved change: a plain no, or what to weigh first.

    Where the ball is too light, it is said what weight at the front wall would be enough, as the last thing to do.
    Nothing is said of a question that no single weight decides, its own ``act`` says what to do; nor where no load
    is outside its limit.
    """
    if finding.kind == "unknown":
        even = break_even(finding, lever, slot)
        of = even[0].of if even else ""
        return weigh_first(of[of.rindex("[") + 1 : -1] if "[" in of else of, even[0].kg, bench.units) if even else ""
    if pull_of(finding, lever, slot) is None:
        return ""
    best = best_reachable(bench, finding, lever, slot)
    says = nothing_found() if best is None else range_looked_over(finding, best, rises(lever), bench.units)
    return with_weight(says, to_add(finding, lever, slot), bench.units)


def best_reachable(bench: Bench, finding: Finding, lever: Lever, slot: Slot) -> float | None:
    """Return the best a number can come to with everything moved, left or emptied, where that is not enough.

    None where it would be enough but for the harm it does elsewhere, and where something nobody has weighed might do.
    The number is that of the worse end of what may happen, as the finding judges it.
    """
    pull = pull_of(finding, lever, slot)
    if pull is None or finding.limit is None or slot.weight is None or not all(mass.kg.known for mass in slot.masses):
        return None
    gain, away = whole_range(
        bench.reading.rig, slot, lever, pull, finding.limit, bench.loose(slot, lever), AXES[lever.load]
    )
    short = pull.at_least - gain
    if not short > 0.0:
        return None
    gross = slot.weight.gross.band.best
    short *= gross / (gross - away) if lever.load == "share" else 1.0
    return finding.limit - short if rises(lever) else finding.limit + short


def rises(lever: Lever) -> bool:
    """Return whether a finding's number has to rise: between the sides it always has to fall."""
    return lever.is_up and lever.load != "left"


def to_add(finding: Finding, lever: Lever, slot: Slot) -> float | None:
    """Return the mass (kg) that would make a light ball heavy enough, put down at the front wall; None for the rest."""
    pull = pull_of(finding, lever, slot)
    if pull is None or lever.load not in {"tongue", "share"} or not lever.is_up:
        return None
    gives = pull.per.at((0.0, 0.0, 0.0))
    return pull.wanted / gives if gives > 0.0 else None


def with_remedies(findings: Iterable[Finding], found: Remedies) -> tuple[Finding, ...]:
    """Return findings with the best proved change, or what is said without one, as their remedy."""
    best: dict[tuple[str, str, str], str] = {}
    for fix in found.fixes:
        best.setdefault((fix.code, fix.where, fix.load), fix.says)
    for finding, says in found.without:
        best.setdefault((finding.code, finding.where, finding.load), says)
    return tuple(
        replace(one, remedy=best[one.code, one.where, one.load]) if (one.code, one.where, one.load) in best else one
        for one in findings
    )
