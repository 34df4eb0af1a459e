"""A rig on the bench: trials of a changed text, each proved by a study of every slot the change can reach."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import fields, replace
from datetime import date
from typing import Literal, NamedTuple

from boxwright.finding import Finding, Kind
from boxwright.model.stage import stands as stands_by
from boxwright.rig.add import add_value
from boxwright.rig.change import Change
from boxwright.rig.compose import Composer, Reading
from boxwright.rig.document import Document
from boxwright.rig.rig import Item, Rig
from boxwright.rig.splice import Splice, apply, splice, tree_at
from boxwright.study.lever import Lever
from boxwright.study.moves import Edit, Movable, Rooms, movables
from boxwright.study.once import Once
from boxwright.study.own_mass import giver_of
from boxwright.study.slots import Asked, Laid, Slot, slots_of, ticket_slots
from boxwright.study.standing import Standing, cut
from boxwright.units import HeaderUnits

CURED: tuple[Kind, ...] = ("stop", "fix", "limit")
SOUGHT = frozenset({"weight/sides-differ"})
"""Advice a cure is sought for unasked: uneven sides overload tyres and pull, and one move mostly evens them."""
GRAVITY: dict[Kind, int] = {"stop": 3, "fix": 2, "limit": 2, "unknown": 1, "advice": 0}
"""How grave a kind of finding is; a question is less than any breach, and no cure of one either."""
MOST_HARMED = 4
"""How many slots are looked at first because another change harmed them."""
OF_THE_VEHICLE = frozenset({"towing/payload", "towing/combination", "towing/rear-axle"})
"""Rules of what the tow vehicle itself carries."""
LISTING = frozenset({"weight/tank-unnamed", "weight/stands-perhaps", "rig/stands-perhaps", "rig/tank-not-named"})
"""Rules that ask once for several things, at the first of them: with one answered they stand at another."""
AXES: dict[str, tuple[Literal[0, 1], ...]] = {
    "tongue": (0,), "share": (0,), "nose": (0,), "wheels": (0,), "axle": (0,), "wheel": (1, 0), "left": (1,),
    "gross": (),
}  # fmt: skip
"""The axes along which moving a part changes a load."""

Key = tuple[int, bool, str, str]
Mark = tuple[str, str, str]
"""A finding of a stage: its code, where, and its load state."""


class Scope(NamedTuple):
    """The slots a change can reach: of some stages, in one load state or, where none is named, in all of them."""

    stages: tuple[int, ...]
    load: str | None = None


class Proof(NamedTuple):
    """What a change did that harmed nothing: the findings of its stage it cleared, and the breaches it made questions.

    ``kinds`` are those of what is cleared. A question stands with the slot it is asked in, as changed.
    """

    clears: tuple[Mark, ...]
    kinds: tuple[Kind, ...]
    questions: tuple[tuple[Finding, Slot], ...]


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
        self._rooms: Rooms | None = None
        self._loose: dict[tuple[Key, int], tuple[Movable, ...]] = {}
        self._past: int | None = None
        self._harmed: list[Slot] = []
        self._laid_stages: set[int] = set()
        self._as_is: Laid | None = None
        self._changed: Laid | None = None

    def look_at(self, number: int) -> None:
        """Take the stage asked about into every proof where it is before today; the others before today are gone."""
        past = number if number < self.reading.rig.header.stage_today else None
        if past != self._past:
            self._past, self._rooms = past, None
            self._harmed.clear()
            self._loose.clear()

    @property
    def units(self) -> HeaderUnits:
        """Return the units everything is said in."""
        return self.shown_in or self.reading.rig.header.units

    @property
    def before(self) -> tuple[Slot, ...]:
        """Return every slot from today on, and of the stage asked about, as the text stands."""
        return tuple(slot for number in self.stages for slot in self._at_stage(number))

    @property
    def stages(self) -> tuple[int, ...]:
        """Return the stages every proof looks at: from today on, and the one asked about."""
        header, count = self.reading.rig.header, max(len(self.reading.rig.stages_in_order), 1)
        past = () if self._past is None else (self._past,)
        return (*past, *range(header.stage_today, count))

    @property
    def rooms(self) -> Rooms:
        """Return where parts are free to go in every slot from today on."""
        if self._rooms is None:
            self._rooms = Rooms(self.reading.rig, self._standings())
        return self._rooms

    def lay_one_more(self) -> bool:
        """Work out the next stage that no proof has asked for yet, as the text stands; False where none is left."""
        left = next((number for number in self.stages if number not in self._laid_stages), None)
        if left is not None:
            self._at_stage(left)
            self._laid_stages.add(left)
        return left is not None

    def stage_before(self, number: int, is_ticked: bool) -> tuple[Slot, ...]:
        """Return the slots of one stage, as planned or as ticked, as the text stands."""
        return tuple(one for one in self._at_stage(number) if one.is_ticked == is_ticked)

    def loose(self, slot: Slot, axes: Iterable[Literal[0, 1]]) -> list[Movable]:
        """Return the parts of a slot that may be moved along some axes."""
        found: list[Movable] = []
        for axis in axes:
            key = (key_of(slot), axis)
            if key not in self._loose:
                self._loose[key] = movables(self.reading.rig, self.rooms, slot, axis, self.reading.rig.header.units)
            found += self._loose[key]
        return found

    def loose_for(self, slot: Slot, lever: Lever) -> list[Movable]:
        """Return the parts of a slot that may be moved along the axes that change a load."""
        return self.loose(slot, AXES[lever.load])

    def after(self, edits: Iterable[Edit]) -> Reading | None:
        """Return the reading of the text with some edits, None where one cannot be written or is not understood."""
        document = edited_by(self.reading.document, edits)
        if document is None:
            return None
        reading = self.composer.compose(document)
        if len(reading.problems) > len(self.reading.problems):
            return None
        return replace(reading, rig=_with_the_same(self.reading.rig, reading.rig))

    def slot_after(self, reading: Reading, slot: Slot) -> Slot | None:
        """Return one slot of a changed text."""
        asked = slots_of(reading.rig, slot.number, slot.load, slot.use, False)
        return next((self._laid(reading).slot(one) for one in asked if one.is_ticked == slot.is_ticked), None)

    def proof(self, reading: Reading, finding: Finding, slot: Slot, edits: tuple[Edit, ...]) -> Proof | None:
        """Return what a changed text does; None where a finding stands as grave as before, or something is harmed.

        Harmed is any slot with a stop, limit or unknown it had not. What goes wrong mostly does so in another load
        state of the same stage, or in the same one later, so those are looked at first; with the first harm the rest is
        not looked at.
        """
        self.proofs += 1
        scope = self.scope_of(edits)
        if self._harms_again(reading, scope):
            return None
        stages = sorted(scope.stages, key=lambda one: one != slot.number)
        every = [asked for number in stages for asked in self._asked(number, scope.load)]
        looked_at: dict[Asked, tuple[Slot, Slot]] = {}
        for asked in sorted(every, key=lambda one: _farness(one, slot)):
            old = self._laid(self.reading).slot(asked)
            changed = self.slot_after(reading, old)
            if changed is None or _adds(old, changed):
                self._harmed = [old, *(one for one in self._harmed if one is not old)][:MOST_HARMED]
                return None
            looked_at[asked] = old, changed
        # What is said of them does not hang on the order they were looked at.
        pairs = [looked_at[asked] for asked in every]
        own = [new for old, new in pairs if key_of(old) == key_of(slot)]
        if not own or stands(finding, own[0]):
            return None
        here_only = [pair for pair in pairs if (pair[0].number, pair[0].is_ticked) == (slot.number, slot.is_ticked)]
        cleared = [(old, one) for old, new in here_only for one in _cleared(old, new)]
        clears = ((one.code, one.where, old.load) for old, one in cleared)
        questions = (said for old, new in pairs for said in _softened(old, new))
        return Proof(tuple(dict.fromkeys(clears)), tuple(one.kind for _, one in cleared), tuple(questions))

    @property
    def towed_by(self) -> str | None:
        """Return the name of the tow vehicle everything is judged with; None where the file has none."""
        return next((name for name, _ in self.reading.rig.tow if self.vehicle in {"", name}), None)

    def may_carry(self, reading: Reading, slot: Slot, kg: float) -> bool:
        """Return whether the tow vehicle may carry so much more in the load state of a slot, by all its ratings.

        A rating nobody wrote proves nothing: with any question about what the vehicle carries it may not.
        """
        vehicle = dict(reading.rig.tow).get(self.towed_by or "")
        carried = vehicle.people_and_gear if vehicle is not None else None
        if vehicle is None or carried is None or not carried.known or slot.use != "tow":
            return False
        more = replace(carried, best=carried.best + kg, low=carried.low + kg, high=carried.high + kg)
        laden = vehicle.model_copy(update={"people_and_gear": more})
        tow = tuple((name, laden if one is vehicle else one) for name, one in reading.rig.tow)
        laden_reading = replace(reading, rig=replace(reading.rig, tow=tow))
        for number in self.stages:
            for one in self._at_stage(number, slot.load):
                new = self.slot_after(laden_reading, one)
                if new is None or _adds(one, new) or any(
                    said.code in OF_THE_VEHICLE and said.kind != "advice" for said in new.findings
                ):  # fmt: skip
                    return False
        return True

    def _harms_again(self, reading: Reading, scope: Scope) -> bool:
        """Return whether a changed text harms a slot that an earlier one harmed: mostly the next does so there too.

        A slot comes out the same alone as beside others, so this answers nothing that the whole proof would not.
        """
        for old in self._harmed:
            if old.number in scope.stages and scope.load in {None, old.load}:
                new = self.slot_after(reading, old)
                if new is None or _adds(old, new):
                    return True
        return False

    def scope_of(self, edits: Iterable[Edit]) -> Scope:
        """Return the slots edits bear on: those of one load state, or of the stages a moved part stands at.

        What one state puts on the ball bears on the swing over all states, and that is said in its own slots too. A
        load state that stood on a scale, or a part that did, bears on the trailer's own weight, and so on everything.
        What is screwed to the frame is judged at every stage, before it stands and after.
        """
        edits = tuple(edits)
        if all(edit.path.startswith("loads[") for edit in edits):
            names = {state.name for state in self.reading.rig.loads for edit in edits
                     if edit.path.startswith(f"loads[{state.name}].")}  # fmt: skip
            is_weighed = any(one.load in names for one in self.reading.rig.measured)
            return Scope(self.stages, names.pop() if len(names) == 1 and not is_weighed else None)
        moved = [item for item in self.reading.rig.parts for edit in edits if edit.path.startswith(f"{item.of}.")]
        if len(moved) < len(edits) or any(edit.path.endswith((".stage", ".done")) for edit in edits):
            return Scope(self.stages)
        families = self.rooms.families
        members = {of for item in moved for of in families[item.of]}
        if members & self._on_the_frame():
            return Scope(self.stages)
        return Scope(self._stages_of([item for item in self.reading.rig.parts if item.of in members]))

    def _on_the_frame(self) -> set[str]:
        """Return the parts the frame judges as planned: those with a hinge or screws, and the backings."""
        rig = self.reading.rig
        return {*(one.of for one in rig.structure.fastened), *(one.of for one in rig.frame.backings)}

    def _stages_of(self, items: Iterable[Item]) -> tuple[int, ...]:
        """Return the stages any of some parts stands at, perhaps or for certain; all where it stood on a scale."""
        rig = self.reading.rig
        now = rig.header.stage_today
        stood = {
            number
            for number in range(max(len(rig.stages_in_order), 1))
            for item in items
            if stands_by(item.marks, number, False) != "no"
            or (number == now and stands_by(item.marks, number, True) != "no")
        }
        giver = giver_of(rig)
        weighed = {asked.number for asked in ticket_slots(rig, giver)}
        weighed |= {giver.stage} if giver is not None and giver.stage is not None else set()
        return self.stages if stood & weighed else tuple(number for number in self.stages if number in stood)

    def _standings(self) -> Iterator[Standing]:
        """Yield what stands in each slot, without working any of them out."""
        rig = self.reading.rig
        past = () if self._past is None else slots_of(rig, self._past, None, None, False)
        for asked in (*past, *slots_of(rig, None, None, None, False)):
            yield cut(rig, asked.number, asked.is_ticked, asked.load, asked.use, self.once.remembered)

    def _at_stage(self, number: int, load: str | None = None) -> tuple[Slot, ...]:
        """Return the slots of a stage in one load state, or in all of them, as the text stands."""
        return tuple(self._laid(self.reading).slot(one) for one in self._asked(number, load))

    def _asked(self, number: int, load: str | None) -> tuple[Asked, ...]:
        return slots_of(self.reading.rig, number, load, None, False)

    def _laid(self, reading: Reading) -> Laid:
        """Return a reading laid out for its slots: the text as it stands for good, a changed one until the next."""
        if self._as_is is None:
            self._as_is = self._laid_out(self.reading.rig, None)
        if reading.rig is self.reading.rig:
            return self._as_is
        if self._changed is None or self._changed.given.rig is not reading.rig:
            self._changed = self._laid_out(reading.rig, self._as_is)
        return self._changed

    def _laid_out(self, rig: Rig, like: Laid | None) -> Laid:
        return Laid(rig, self.today, self.once, self.shown_in, self.judged_on, self.vehicle, like)


def key_of(slot: Slot) -> Key:
    """Return what tells a slot from all others of its study."""
    return slot.number, slot.is_ticked, slot.load, slot.use


def _farness(asked: Asked, slot: Slot) -> int:
    """Return how late a slot is looked at, after a change made for another: where harm is likeliest comes first."""
    if asked.use != slot.use:
        return 3
    if asked.number == slot.number:
        return 0
    return 1 if asked.load.name == slot.load else 2


def _with_the_same(before: Rig, rig: Rig) -> Rig:
    """Return a rig with the very objects of an earlier one where they are equal: what takes them stops at ``is``."""
    pairs = ((one.name, getattr(before, one.name), getattr(rig, one.name)) for one in fields(rig))
    return replace(rig, **{name: old for name, old, new in pairs if old is not new and old == new})


def stands(finding: Finding, slot: Slot) -> bool:
    """Return whether a finding is said in a slot, as a breach where it was one, else as grave as it was.

    A breach may have become a question, advice about what is left of a reserve, or the most that may be loaded.
    """
    return any(
        (one.code, one.where) == (finding.code, finding.where)
        and ((one.kind in CURED and not is_kept(one)) or GRAVITY[one.kind] >= GRAVITY[finding.kind])
        for one in (*slot.findings, *slot.accepted)
    )


def is_kept(finding: Finding) -> bool:
    """Return whether a finding says a limit that is kept: load no more than so much, and it is less now."""
    return finding.kind == "limit" and finding.margin is not None and finding.margin >= 0.0


def adds_nothing(slot: Slot, after: Slot) -> bool:
    """Return whether a changed slot has no stop, limit or unknown it had not, or had in a graver kind."""
    return not _adds(slot, after)


def _adds(slot: Slot, after: Slot) -> bool:
    kinds = {(one.code, one.where, one.kind) for one in slot.findings}
    had, has = _gravest(slot), _gravest(after)
    listed = {(one.code, path) for one in slot.findings if one.code in LISTING for path in one.because}
    return any(
        one.kind != "advice"
        and (one.code, one.where, one.kind) not in kinds
        and not (is_kept(one) and had.get((one.code, one.where), 0) > 0)
        and has[one.code, one.where] >= had.get((one.code, one.where), 0)
        and not (one.code in LISTING and {(one.code, path) for path in one.because} <= listed)
        for one in after.findings
    )


def leaves_question(slot: Slot, after: Slot) -> bool:
    """Return whether a breach of a slot is only a question in it as changed."""
    return any(True for _ in _softened(slot, after))


def _gravest(slot: Slot) -> dict[tuple[str, str], int]:
    """Return how grave the gravest finding of each rule at each place is."""
    found: dict[tuple[str, str], int] = {}
    for one in slot.findings:
        found[one.code, one.where] = max(GRAVITY[one.kind], found.get((one.code, one.where), 0))
    return found


def _cleared(slot: Slot, after: Slot) -> Iterator[Finding]:
    """Yield the breaches of a slot of which nothing but advice is left, and the advice worth a cure that is gone."""
    every = (*after.findings, *after.accepted)
    left = {(one.code, one.where) for one in every
            if not is_kept(one) and (one.kind != "advice" or one.code in SOUGHT)}  # fmt: skip
    for one in slot.findings:
        if ((one.kind in CURED and not is_kept(one)) or one.code in SOUGHT) and (one.code, one.where) not in left:
            yield one


def _softened(slot: Slot, after: Slot) -> Iterator[tuple[Finding, Slot]]:
    """Yield the questions of a changed slot that were breaches."""
    breaches = {(one.code, one.where) for one in slot.findings if one.kind in CURED}
    questions = {(one.code, one.where) for one in slot.findings if one.kind == "unknown"}
    for one in after.findings:
        if one.kind == "unknown" and (one.code, one.where) in breaches - questions:
            yield one, after


def edited_by(document: Document, edits: Iterable[Edit]) -> Document | None:
    """Return the document with edits made, each by a proved splice; None where one is refused."""
    for edit in edits:
        after = _edited(document, edit)
        if after is None:
            return None
        document = after
    return document


def _edited(document: Document, edit: Edit) -> Document | None:
    """Return the document with a value changed, a key added with what it belongs to, or a name added to a list."""
    before, extent = tree_at(document, edit.path), document.extent(edit.path, exact=True)
    if extent is None:
        added = add_value(document, edit.path, edit.value)
        return added.document if isinstance(added, Change) else None
    if isinstance(before, tuple):
        at = extent.end - 1 if document.text[extent.end - 1 : extent.end] == "]" else -1
        if at < 0:
            return None
        return _listed(document, Splice(at, at, f"{', ' if before else ''}{edit.value}"), edit, before)
    if edit.path.endswith(".out") and isinstance(before, str):
        written = f"[{document.text[extent.value : extent.end]}, {edit.value}]"
        return _listed(document, Splice(extent.value, extent.end, written), edit, (before,))
    made = splice(document, edit.path, edit.value)
    return apply(document, [made]) if isinstance(made, Splice) else None


def _listed(document: Document, made: Splice, edit: Edit, before: tuple[object, ...]) -> Document | None:
    """Return the document with a name added to a list, where exactly that comes of it."""
    after = apply(document, [made])
    return after if tree_at(after, edit.path) == (*before, edit.value) else None
