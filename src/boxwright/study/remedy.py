"""The smallest change that clears a finding: by closed form, then proved by a study of every slot.

A change is offered as a cure only if the rig file, with exactly its splices, no longer has the finding in its slot and
has no stop, limit or unknown anywhere that it did not have before. A change that turns a breach into a question is no
cure; where it is known what then decides, it is offered behind all cures, with what to weigh. Nothing here
extrapolates: what is not proved is not said.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from boxwright.finding import Finding, Kind
from boxwright.records import dataclass
from boxwright.rig.compose import Reading
from boxwright.study.arranged import Row, arranged, axes_of, needed
from boxwright.study.bench import (
    CURED,
    GRAVITY,
    SOUGHT,
    Bench,
    Mark,
    Proof,
    adds_nothing,
    is_kept,
    leaves_question,
    stands,
)
from boxwright.study.clash_moves import MET, clash_moves
from boxwright.study.clear_place import PLACED, clear_place_moves, nothing_clear
from boxwright.study.fills import fills
from boxwright.study.left import left_behind
from boxwright.study.lever import Lever, Pull, aims, lever_of, pull_of
from boxwright.study.moves import Candidate, Edit, other_standing, pairs, single_moves
from boxwright.study.reach import said_without, what_decides
from boxwright.study.remedy_words import or_carried, then_done
from boxwright.study.slots import Slot, Study
from boxwright.study.way_changes import CHANGED, way_changes

MOST, CURES = 8, 4
"""How many changes are offered in all, and for one finding where all are asked for."""
TRIED = 12
"""How many changes are tried for one finding; each trial is a study of one slot."""
PROOFS, PROOFS_OF_ALL = 4, 8
"""How many are proved in every slot for one finding, at first sight and where all changes are asked for."""
HARDLY_MORE = 1.25
"""How many times the effort of a change is hardly more, where the greater one clears more."""
A_LITTLE_MORE = 1.1
"""How much farther is gone where a move is a little too short: a share's doubt moves with the share."""


LIFTS, SHARE = "weight/tongue-lifts", "towing/tongue-share"


@dataclass(frozen=True, slots=True)
class Fix:
    """A proved change: the finding it is for and where, what to do, the splices, and its effort (kg m).

    ``then`` says what to weigh after it where it leaves a question: it is no cure then. ``clears`` are the finding it
    cures and all breaches of the stage that are gone with it, in whatever load state; ``kind`` is the gravest of them.
    """

    code: str
    where: str
    kind: Kind
    stage: str
    load: str
    use: str
    says: str
    edits: tuple[Edit, ...]
    effort: float
    moves: int
    leaves: bool
    then: str
    clears: tuple[Mark, ...]

    @property
    def is_whole(self) -> bool:
        """Return whether nothing is left to be weighed: only then is it a cure."""
        return not self.then


@dataclass(frozen=True, slots=True)
class Remedies:
    """What can be done: the proved changes, cures and least effort first; findings with none, each with a sentence."""

    fixes: tuple[Fix, ...]
    without: tuple[tuple[Finding, str], ...]


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
    chapter: str = "",
) -> Remedies:
    """Return what clears the findings of a stage, at most eight changes: of the gravest, and the least effort, first.

    A finding that is gone with the change found for a graver one needs none of its own, where only one is asked for.
    ``everything`` looks at advice too, seeks more than one change for each finding, and asks the linear programme.
    ``found`` is a study of the stage that is there already: without anything to cure in it no other is made.
    ``chapter`` looks at the findings of one discipline only.
    """
    bench.look_at(number)
    slots = found.slots if found is not None else bench.stage_before(number, is_ticked)
    asked = _wanted(slots, number, is_ticked, use, load, everything)
    wanted = [pair for pair in asked if not chapter or pair[0].code.startswith(f"{chapter}/")]
    fixes: list[Fix] = list(_for_all(bench, wanted)) if everything else []
    without: list[tuple[Finding, str]] = []
    done: set[Mark] = set()
    for finding, slot in wanted:
        # The frame says the same in every load state: once is enough.
        mark = (finding.code, finding.where, "" if finding.code in PLACED else slot.load)
        if mark in done or (not everything and any(mark in fix.clears for fix in fixes)):
            continue
        done.add(mark)
        lever = lever_of(finding, slot)
        if lever is None and finding.code not in PLACED | CHANGED | MET:
            continue
        cures = list(fixes_of(bench, finding, slot, lever, everything, CURES if everything else per_finding))
        fixes += cures
        says = said_of_none(bench, finding, lever, slot) if not cures else ""
        if says:
            without.append((finding, says))
    return Remedies(chosen(fixes), tuple(without))


def may_be_cured(finding: Finding, slot: Slot) -> bool:
    """Return whether a change that clears a finding can be sought, because something that can be moved bears on it.

    A question is answered by what it asks for, never by a change.
    """
    if finding.kind == "unknown" or is_kept(finding):
        return False
    if finding.code in PLACED:
        return finding.kind == "fix"
    if finding.code in CHANGED | MET:
        return finding.kind in CURED
    lever = lever_of(finding, slot)
    return lever is not None and pull_of(finding, lever, slot) is not None


def said_of_none(bench: Bench, finding: Finding, lever: Lever | None, slot: Slot) -> str:
    """Return what is said of a finding without a proved change: what was tried, or what it takes instead."""
    if lever is None:
        return nothing_clear(bench, finding, slot)
    return said_without(bench, finding, lever, slot)


def chosen(fixes: Iterable[Fix]) -> tuple[Fix, ...]:
    """Return the changes to be offered, in order: the best for each finding, then what else is little work."""
    # What is found for several findings is said of the gravest, which is looked at first.
    ranked = sorted({one.edits: one for one in reversed(tuple(fixes))}.values(), key=_rank)
    ranked = [fix for fix in ranked if not any(_spares(other, fix) for other in ranked)]
    first: dict[Mark, Fix] = {}
    for fix in ranked:
        first.setdefault((fix.code, fix.where, fix.load), fix)
    wanted = [*first.values(), *(fix for fix in ranked if fix not in first.values())]
    return tuple(sorted(wanted[:MOST], key=_rank))


def _spares(other: Fix, fix: Fix) -> bool:
    """Return whether a change is not worth offering beside another that clears more at hardly more effort.

    A ball that only just stays down sways: no effort is too much to give it the least share it should carry as well.
    """
    is_little = other.effort <= HARDLY_MORE * fix.effort
    is_little |= fix.code == LIFTS and not other.leaves and any(code == SHARE for code, _, _ in other.clears)
    return is_little and other.is_whole and fix.is_whole and set(fix.clears) < set(other.clears)


def _rank(fix: Fix) -> tuple[bool, int, float, int, bool, str]:
    return not fix.is_whole, -GRAVITY[fix.kind], round(fix.effort, 3), fix.moves, fix.leaves, fix.says


def _wanted(
    slots: Iterable[Slot], number: int, is_ticked: bool, use: str, load: str, everything: bool
) -> Iterator[tuple[Finding, Slot]]:
    """Yield the findings to be cured, each with its slot, the gravest first."""
    asked = [
        slot
        for slot in slots
        if (slot.number, slot.is_ticked) == (number, is_ticked) and not slot.is_for_ticket
        and use in {"", slot.use} and load in {"", slot.load}
    ]  # fmt: skip
    for kind in (*CURED, "unknown", "advice"):
        for slot in asked:
            for one in slot.findings:
                if one.kind == kind and (everything or kind != "advice" or one.code in SOUGHT):
                    yield one, slot


def _for_all(bench: Bench, wanted: Iterable[tuple[Finding, Slot]]) -> Iterator[Fix]:
    """Yield the one arrangement that clears everything moving can clear, in every load state the stage is towed in."""
    moved: list[tuple[Finding, Slot, Lever, Pull]] = []
    for finding, slot in wanted:
        lever = lever_of(finding, slot) if slot.use == "tow" and finding.kind != "unknown" else None
        pull = pull_of(finding, lever, slot) if lever is not None and lever.load != "gross" else None
        if lever is not None and pull is not None:
            moved.append((finding, slot, lever, pull))
    graver = [one for one in moved if one[0].kind in CURED]
    for some, whole in ((moved, True), (graver, True), (graver, False)):
        units, end_of = bench.reading.rig.header.units, 0 if whole else -1
        ends = [(aims(pull, lever, units) or (0.0,))[end_of] for _, _, lever, pull in some]
        needs = [needed(at, lever, pull, end) for (_, at, lever, pull), end in zip(some, ends, strict=True)]
        must = [row for row in needs if row.need > 0.0]
        for candidate in _arranged(bench, some[0][1], must, [lever for _, _, lever, _ in some]) if must else ():
            fix = _proved(bench, *some[0][:2], candidate)
            if fix is not None:
                yield fix
                return


def _arranged(bench: Bench, slot: Slot, must: list[Row], levers: list[Lever]) -> list[Candidate]:
    """Return the arrangement that meets some needs, over all load states in which the stage is towed."""
    here = bench.stage_before(slot.number, slot.is_ticked)
    towed = [one for one in here if one.use == "tow" and not one.is_for_ticket]
    return arranged(bench, towed, must, axes_of(levers))


def fixes_of(
    bench: Bench, finding: Finding, slot: Slot, lever: Lever | None, everything: bool = False, most: int = 1
) -> Iterator[Fix]:
    """Yield the proved changes that clear one finding in its slot, the least effort first.

    Behind them comes what leaves a question, where there are not enough cures.
    """
    search = _Search(bench, finding, slot, most)
    search.through((*other_standing(finding, slot), *clear_place_moves(bench, finding, slot)))
    search.through(way_changes(bench.reading.rig, finding, slot))
    search.through(clash_moves(bench, finding, slot))
    pull = pull_of(finding, lever, slot) if lever is not None else None
    if lever is not None and pull is not None and finding.kind != "unknown":
        search.is_open = pull.is_open
        search.last = bench.proofs + (PROOFS_OF_ALL if everything else PROOFS)
        # The margin is a step of the file's own units: what is moved is the same in whatever units it is shown.
        wanted = aims(pull, lever, bench.reading.rig.header.units)
        needs = (more * need for need in wanted for more in (1.0, A_LITTLE_MORE))
        for need in dict.fromkeys(needs):
            if search.is_over or (search.cures and not search.is_near):
                break
            search.through(_changes(bench, slot, lever, pull, need, everything))
    yield from sorted(search.cures, key=_rank)[:most]
    # Advice is not worth a question that was none before.
    if finding.kind != "advice":
        yield from search.questions[: max(0, most - len(search.cures))]


class _Search:
    """The search for what clears one finding: what was tried, and what came of it."""

    def __init__(self, bench: Bench, finding: Finding, slot: Slot, most: int) -> None:
        self.bench, self.finding, self.slot, self.most = bench, finding, slot, most
        self.cures: list[Fix] = []
        self.questions: list[Fix] = []
        self.is_open, self.last = False, bench.proofs + PROOFS
        self._has_near_move = False
        self._tried: set[tuple[Edit, ...]] = set()

    @property
    def is_over(self) -> bool:
        """Return whether enough was found, or tried. What nobody has weighed leaves no hope of a cure."""
        enough = len(self.cures) >= self.most and not self.is_near
        return enough or (self.is_open and len(self.questions) >= self.most) or self.bench.proofs >= self.last

    @property
    def is_near(self) -> bool:
        """Return whether a move a little farther may spare leaving something behind: a shorter one all but did."""
        return self._has_near_move and all(fix.leaves for fix in self.cures)

    def through(self, candidates: Iterable[Candidate]) -> None:
        """Try some changes, those of least effort first."""
        for candidate in sorted(candidates, key=lambda one: one.rank)[:TRIED]:
            if self.is_over:
                return
            is_spared = candidate.leaves and len(self.cures) >= self.most
            if candidate.edits not in self._tried and not is_spared:
                self._tried.add(candidate.edits)
                # One question is enough to go on with: only a cure is worth more proofs then.
                fix = _proved(self.bench, self.finding, self.slot, candidate, len(self.questions) < self.most)
                if fix is not None:
                    (self.cures if fix.is_whole else self.questions).append(fix)
                    self._has_near_move |= not (fix.is_whole or fix.leaves or self.is_open)


def _changes(bench: Bench, slot: Slot, lever: Lever, pull: Pull, need: float, everything: bool) -> Iterator[Candidate]:
    """Yield every change that should be enough for one load, by closed form."""
    rig, units, loose = bench.reading.rig, bench.units, bench.loose_for(slot, lever)
    yield from single_moves(loose, lever, pull, need, units)
    yield from left_behind(rig, slot, lever, pull, need, units)
    yield from fills(rig, slot, lever, pull, need, units)
    yield from pairs(loose, lever, pull, need, units)
    if everything and slot.use == "tow" and lever.load != "gross":
        yield from _arranged(bench, slot, [needed(slot, lever, pull, need)], [lever])


def _proved(bench: Bench, finding: Finding, slot: Slot, candidate: Candidate, may_ask: bool = True) -> Fix | None:
    """Return a candidate as a fix if the study of its own slot, and then of all slots, bears it out."""
    reading = bench.after(candidate.edits)
    if reading is None:
        return None
    alone = bench.slot_after(reading, slot)
    if alone is None or stands(finding, alone) or not adds_nothing(slot, alone):
        return None
    if not may_ask and leaves_question(slot, alone):
        return None
    proof = bench.proof(reading, finding, slot, candidate.edits)
    # What is fitted or put out cures its own finding whole; where its weight turns a breach of the road into a
    # question, that is no question of this cure.
    then = None if proof is None else "" if finding.code in CHANGED else _then(bench, proof)
    if proof is None or then is None:
        return None
    own = ((finding.code, finding.where, slot.load),) if not then else ()
    return Fix(
        code=finding.code,
        where=finding.where,
        kind=max((finding.kind, *proof.kinds), key=lambda kind: GRAVITY[kind]),
        stage=slot.stage,
        load=slot.load,
        use=slot.use,
        says=_or_carried(bench, reading, slot, candidate),
        edits=candidate.edits,
        effort=round(candidate.effort, 6),
        moves=candidate.moves,
        leaves=candidate.leaves,
        then=then,
        clears=tuple(dict.fromkeys((*own, *proof.clears))),
    )


def _or_carried(bench: Bench, reading: Reading, slot: Slot, candidate: Candidate) -> str:
    """Return what a change says; what it leaves behind may go in the tow vehicle where that was proved too."""
    count, kg = candidate.carried
    vehicle = bench.towed_by
    if not count or vehicle is None or not bench.may_carry(reading, slot, kg):
        return candidate.says
    return or_carried(candidate.says, count, vehicle)


def _then(bench: Bench, proof: Proof) -> str | None:
    """Return what to weigh after a change that leaves questions, empty without any; None where nobody knows what."""
    says = [
        then_done(finding.act) if finding.code in PLACED else what_decides(finding, slot, bench.units)
        for finding, slot in proof.questions
    ]
    if not all(says):
        return None
    return says[0] if says else ""


def with_remedies(findings: Iterable[Finding], found: Remedies) -> tuple[Finding, ...]:
    """Return findings with the best proved change, or what is said without one, as their remedy."""
    best: dict[Mark, str] = {}
    for fix in found.fixes:
        says = "; ".join(part for part in (fix.says, fix.then) if part)
        for mark in ((fix.code, fix.where, fix.load), *fix.clears):
            best.setdefault(mark, says)
    for finding, says in found.without:
        best.setdefault((finding.code, finding.where, finding.load), says)
    return tuple(
        replace(one, remedy=best[one.code, one.where, one.load]) if (one.code, one.where, one.load) in best else one
        for one in findings
    )
