"""One study: which slots are worked out, and what each of them comes to.

A slot is a stage (as planned, or today as ticked), a load state and a use.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from boxwright.disciplines import weight
from boxwright.exchange import Box, Context, Mass, Measured
from boxwright.finding import USES, Finding, Use, Verdict
from boxwright.model.load import LoadState
from boxwright.rig.rig import Accepted, Rig
from boxwright.study.flow import Worked, ball_height, on_the_scale, one_slot
from boxwright.study.once import Failed, Once
from boxwright.study.own_mass import Giver, giver_of, readings_for, weighed_parts, weighed_slots
from boxwright.study.rig_findings import accepted_of, broken_off, is_accepted, no_load_state, of_a_slot, of_the_file
from boxwright.study.standing import Standing, cut, difference, weighed_empty
from boxwright.study.verdict import touches, verdict, worst
from boxwright.units import Band, HeaderUnits


@dataclass(frozen=True, slots=True)
class Asked:
    """A slot to be worked out."""

    number: int
    is_ticked: bool
    load: LoadState
    use: Use


@dataclass(frozen=True, slots=True)
class Judged:
    """What is said in a slot: findings that bear on its use, those the owner has accepted apart, and the verdict."""

    findings: tuple[Finding, ...]
    accepted: tuple[Finding, ...]
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class Slot:
    """One slot worked out. ``box``, ``masses`` and ``weight`` are None where the calculation broke off."""

    stage: str
    number: int
    is_ticked: bool
    load: str
    use: Use
    standing: Standing
    ball_height: Band
    box: Box | None
    masses: tuple[Mass, ...]
    weight: weight.Result | None
    findings: tuple[Finding, ...]
    accepted: tuple[Finding, ...]
    verdict: Verdict
    broken: tuple[Failed, ...] = ()


@dataclass(frozen=True, slots=True)
class Difference:
    """Today as ticked beside the plan of the same stage, with the paths of the parts that make the difference."""

    use: Use
    load: str
    as_ticked: Verdict
    as_planned: Verdict
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Study:
    """A rig worked out. ``number`` is the stage the answers are for: as ticked where ``is_ticked``, else as planned.

    ``without_load`` are the verdicts of the uses that no load state is judged for. ``own_weight_from`` is the path of
    what gave the bare trailer's weight, empty where nothing did.
    """

    slots: tuple[Slot, ...]
    judged_on: date
    stage: str
    number: int
    is_ticked: bool
    differences: tuple[Difference, ...]
    without_load: tuple[Verdict, ...]
    own_weight_from: str

    def asked_slots(self, use: str = "", load: str = "") -> tuple[Slot, ...]:
        """Return the slots of the stage the answers are for, of one use and one load state where they are named."""
        return tuple(
            slot
            for slot in self.slots
            if (slot.number, slot.is_ticked) == (self.number, self.is_ticked)
            and use in {"", slot.use}
            and load in {"", slot.load}
        )

    def answer(self, use: Use, load: str = "") -> Verdict | None:
        """Return the verdict for a use: in the named load state, else the worst of those it is judged in."""
        found = worst(slot.verdict for slot in self.asked_slots(use, load))
        return found or next((one for one in self.without_load if one.use == use), None)

    def findings(self, use: str = "", load: str = "") -> tuple[Finding, ...]:
        """Return the findings of the stage the answers are for, without repetition."""
        return tuple(dict.fromkeys(one for slot in self.asked_slots(use, load) for one in slot.findings))

    def planned(self) -> tuple[Slot, ...]:
        """Return the slots of the plan, in file order of stages and load states."""
        return tuple(slot for slot in self.slots if not slot.is_ticked)


def study(
    rig: Rig,
    today: date,
    *,
    stage: int | None = None,
    load: str | None = None,
    use: Use | None = None,
    once: Once | None = None,
    all_stages: bool = False,
    shown_in: HeaderUnits | None = None,
    judged_on: date | None = None,
) -> Study:
    """Return a rig worked out in every slot asked for.

    Without ``stage``: today as ticked, and the plan from today's stage on (``all_stages``: from the first). With it:
    that stage as planned, and as ticked too where it is today's. ``today`` is the caller's clock; ``judged_on`` is a
    day the caller asks for, else a demo's own day, else today.
    """
    once = once if once is not None else Once()
    header = rig.header
    day = judged_on or (header.date_today if header.is_demo and header.date_today else today)
    giver = giver_of(rig)
    others = _others(rig, giver, once)
    file_findings = of_the_file(rig, today, day)
    slots: list[Slot] = []
    for asked in slots_of(rig, stage, load, use, all_stages, giver):
        once.enter((asked.number, asked.is_ticked, asked.load.name, asked.use))
        context = Context(asked.use, asked.load.name, header.countries, day, shown_in or header.units)
        slots.append(_worked_slot(rig, asked, context, giver, others, file_findings, once))
    number = header.stage_today if stage is None else stage
    is_ticked = number == header.stage_today
    name = stage_name(rig, number)
    return Study(
        tuple(slots),
        day,
        name,
        number,
        is_ticked,
        _differences(slots, header.stage_today),
        tuple(_without_load(rig, name, file_findings, use)),
        giver.of if giver is not None else "",
    )


def slots_of(
    rig: Rig, stage: int | None, load: str | None, use: Use | None, all_stages: bool, giver: Giver | None
) -> tuple[Asked, ...]:
    """Return the slots a study works out: today as ticked first, then the plan stage by stage, then old tickets."""
    now = rig.header.stage_today
    count = max(len(rig.stages_in_order), 1)
    stages = [stage] if stage is not None else list(range(0 if all_stages else now, count))
    pairs = [
        (state, for_use)
        for state in rig.loads
        for for_use in state.uses
        if load in {None, state.name} and use in {None, for_use}
    ]
    found = [Asked(now, True, state, for_use) for state, for_use in pairs if now in stages]
    found += [Asked(number, False, state, for_use) for number in stages for state, for_use in pairs]
    if stage is None and load is None and use is None:
        found += _ticket_slots(rig, giver, found)
    return tuple(found)


def _ticket_slots(rig: Rig, giver: Giver | None, found: list[Asked]) -> Iterator[Asked]:
    """Yield the slots a ticket is compared in and nobody else asks for: its own stage, its own load state."""
    have = {(asked.number, asked.load.name) for asked in found}
    for number, name in weighed_slots(rig, giver):
        state = weighed_empty(rig) if not name else next((one for one in rig.loads if one.name == name), None)
        if state is not None and (number, state.name) not in have:
            yield Asked(number, number == rig.header.stage_today, state, state.uses[0])


def _others(rig: Rig, giver: Giver | None, once: Once) -> tuple[Mass, ...] | Failed:
    """Return what stood on the scale with the bare trailer when it was weighed."""
    if giver is None or giver.stage is None:
        return ()
    state = next((one for one in rig.loads if one.name == giver.load), None) or weighed_empty(rig)
    once.enter(("on the scale", giver.of))
    return on_the_scale(rig, cut(rig, giver.stage, False, state, "tow", once.remembered), once)


def _worked_slot(
    rig: Rig,
    asked: Asked,
    context: Context,
    giver: Giver | None,
    others: tuple[Mass, ...] | Failed,
    file_findings: tuple[Finding, ...],
    once: Once,
) -> Slot:
    standing = cut(rig, asked.number, asked.is_ticked, asked.load, asked.use, once.remembered)
    worked = one_slot(rig, standing, asked.load, context, _measured(rig, asked, giver), giver, others, once)
    broken = _broken(worked)
    said = worked.said if not isinstance(worked.said, Failed) else ()
    said += tuple(broken_off(failed, asked.use) for failed in broken)
    said = tuple(one for one in said if touches(one, asked.use))
    said += of_a_slot(rig, standing, asked.use, said) + file_findings
    stage = stage_name(rig, asked.number)
    judged = once(judge, said, accepted_of(rig), asked.use, asked.load.name, stage)
    if isinstance(judged, Failed):
        broken += (judged,)
        judged = judge((broken_off(judged, asked.use),), (), asked.use, asked.load.name, stage)
    return Slot(
        stage=stage,
        number=asked.number,
        is_ticked=asked.is_ticked,
        load=asked.load.name,
        use=asked.use,
        standing=standing,
        ball_height=ball_height(rig),
        box=worked.box if not isinstance(worked.box, Failed) else None,
        masses=worked.masses if not isinstance(worked.masses, Failed) else (),
        weight=worked.weight if not isinstance(worked.weight, Failed) else None,
        findings=judged.findings,
        accepted=judged.accepted,
        verdict=judged.verdict,
        broken=broken,
    )


def _measured(rig: Rig, asked: Asked, giver: Giver | None) -> tuple[Measured, ...]:
    """Return the readings a slot is compared with: those of its stage and load state, and parts weighed alone.

    What was weighed at today's stage was the trailer as it stands, so it is compared with the ticks, not the plan.
    """
    if asked.number == rig.header.stage_today and not asked.is_ticked:
        return weighed_parts(rig)
    name = asked.load.name if asked.load in rig.loads else ""
    return readings_for(rig, giver, asked.number, name) + weighed_parts(rig)


def _broken(worked: Worked) -> tuple[Failed, ...]:
    failed = (one for one in (worked.box, worked.masses, worked.weight, worked.said) if isinstance(one, Failed))
    return tuple(dict.fromkeys(failed))


def judge(said: tuple[Finding, ...], accepted: tuple[Accepted, ...], use: Use, load: str, stage: str) -> Judged:
    """Return what is said in a slot, marked with the slot, and the verdict it comes to."""
    stamped = tuple(replace(one, use=use, load=load, stage=stage) for one in said)
    apart = tuple(finding for finding in stamped if is_accepted(finding, accepted))
    open_findings = tuple(finding for finding in stamped if finding not in apart)
    return Judged(open_findings, apart, verdict(use, load, stage, stamped))


def stage_name(rig: Rig, number: int) -> str:
    """Return the name of a stage, empty where the file has none of that number."""
    return rig.stages_in_order[number].name if number < len(rig.stages_in_order) else ""


def _differences(slots: list[Slot], now: int) -> tuple[Difference, ...]:
    """Return today as ticked beside the plan of today's stage, where the two differ."""
    planned = {(slot.load, slot.use): slot for slot in slots if slot.number == now and not slot.is_ticked}
    found: list[Difference] = []
    for slot in slots:
        twin = planned.get((slot.load, slot.use))
        if slot.is_ticked and twin is not None:
            parts = difference(slot.standing, twin.standing)
            if parts or slot.verdict != twin.verdict:
                found.append(Difference(slot.use, slot.load, slot.verdict, twin.verdict, parts))
    return tuple(found)


def _without_load(rig: Rig, stage: str, file_findings: tuple[Finding, ...], use: Use | None) -> Iterator[Verdict]:
    """Yield the verdict of each use that no load state is judged for."""
    for one in USES:
        if use in {None, one} and not any(one in state.uses for state in rig.loads):
            yield verdict(one, "", stage, (*file_findings, no_load_state(one)))
