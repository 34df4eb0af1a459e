"""One study: which slots are worked out, and what each of them comes to.

A slot is a stage (as planned, or today as ticked), a load state and a use.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date

from boxwright.disciplines import air, frame, heat, layout, safety, towing, weight
from boxwright.disciplines.weight.result import Output
from boxwright.disciplines.weight.solve import pool_of, tongue_alone
from boxwright.exchange import Box, Context, Mass, Measured
from boxwright.finding import USES, Finding, Use, Verdict
from boxwright.model.load import LoadState
from boxwright.records import dataclass
from boxwright.rig.rig import Accepted, Rig
from boxwright.study.flow import one_slot
from boxwright.study.once import Failed, Once
from boxwright.study.own_mass import Giver, giver_of, readings_for, weighed_parts, weighed_slots
from boxwright.study.rig_findings import accepted_of, broken_off, is_accepted, no_load_state, of_a_slot, of_the_file
from boxwright.study.standing import Standing, cut, difference, weighed_empty
from boxwright.study.verdict import touches, verdict, worst
from boxwright.study.weighed import gathered, on_the_scale, weighed_slot
from boxwright.study.worked import Tongues, Weighed, Worked
from boxwright.units import Band, HeaderUnits

CUT_FROM = ("parts", "openings", "layers", "wires", "straps", "people", "surfaces")
"""What of a rig, beside the load state, says what stands."""
UNKNOWN_HEIGHT = Band(0.0, float("-inf"), float("inf"), known=False)


@dataclass(frozen=True, slots=True)
class Asked:
    """A slot to be worked out."""

    number: int
    is_ticked: bool
    load: LoadState
    use: Use
    is_for_ticket: bool = False


class Stood:
    """What stands in each slot of one rig, cut once: the other load states ask for the same again.

    What ``like`` cut from a rig with the same things in it is not cut again.
    """

    def __init__(self, rig: Rig, once: Once, like: Stood | None = None) -> None:
        self._rig, self._once = rig, once
        self._like = like if like is not None and _have_the_same(CUT_FROM, rig, like._rig) else None
        self._cut: dict[tuple[int, bool, LoadState, Use], Standing] = {}

    def by(self, asked: Asked) -> Standing:
        """Return what stands in a slot."""
        what = (asked.number, asked.is_ticked, asked.load, asked.use)
        if what not in self._cut:
            known = self._like._cut.get(what) if self._like is not None else None
            self._cut[what] = known or cut(self._rig, *what, self._once.remembered)
        return self._cut[what]


@dataclass(frozen=True, slots=True)
class Given:
    """What all slots of one study have in common."""

    rig: Rig
    giver: Giver | None
    others: tuple[Mass, ...] | Failed
    judged_on: date
    shown_in: HeaderUnits
    vehicle: str
    once: Once
    stood: Stood


@dataclass(frozen=True, slots=True)
class Judged:
    """What is said in a slot: findings that bear on its use, those the owner has accepted apart, and the verdict."""

    findings: tuple[Finding, ...]
    accepted: tuple[Finding, ...]
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class Slot:
    """One slot worked out. What a discipline came to is None where its calculation broke off.

    ``is_for_ticket`` marks a slot that nobody asked for: a scale ticket is compared in it.
    """

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
    frame: frame.Result | None
    layout: layout.Result | None
    towing: towing.Result | None
    heat: heat.Result | None
    air: air.Result | None
    safety: safety.Result | None
    findings: tuple[Finding, ...]
    accepted: tuple[Finding, ...]
    verdict: Verdict
    broken: tuple[Failed, ...] = ()
    is_for_ticket: bool = False


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
            and not slot.is_for_ticket
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
        return tuple(slot for slot in self.slots if not slot.is_ticked and not slot.is_for_ticket)


class Laid:
    """A rig laid out: what all its slots have in common, and each slot worked out once, whoever asks for it.

    A slot depends on nothing but the rig and the day, so it is the same in every study of them. ``like`` is a rig laid
    out before on the same day, of which this one is a changed text: what stands as there is not gathered again.
    """

    def __init__(
        self,
        rig: Rig,
        today: date,
        once: Once,
        shown_in: HeaderUnits | None = None,
        judged_on: date | None = None,
        vehicle: str = "",
        like: Laid | None = None,
    ) -> None:
        header = rig.header
        self.day = judged_on or (header.date_today if header.is_demo and header.date_today else today)
        self.giver = giver_of(rig)
        others, stood = _others(rig, self.giver, once), Stood(rig, once, like.given.stood if like is not None else None)
        self.given: Given = Given(rig, self.giver, others, self.day, shown_in or header.units, vehicle, once, stood)
        self._of_the_file = of_the_file(rig, today, self.day)
        self._tongues: dict[tuple[int, bool], Tongues | Failed] = {}
        self._tongue: dict[tuple[int, bool, LoadState], Output] = {}
        self._like = like if like is not None and _weigh_alike(self.given, like.given) else None
        self._slots: dict[Asked, Slot] = {}
        self._tickets: tuple[Slot, ...] | None = None

    @property
    def tickets(self) -> tuple[Slot, ...]:
        """Return the slots the scale tickets are compared in."""
        if self._tickets is None:
            asked = ticket_slots(self.given.rig, self.giver)
            self._tickets = tuple(
                _worked_slot(self.given, one, self._tongues_at(one.number, one.is_ticked), ()) for one in asked
            )
        return self._tickets

    @property
    def everywhere(self) -> tuple[Finding, ...]:
        """Return the findings that bear on every slot: of the file, and of the tickets."""
        return (*self._of_the_file, *_of_tickets(self.tickets))

    def slot(self, asked: Asked) -> Slot:
        """Return one slot worked out."""
        if asked not in self._slots:
            tongues = self._tongues_at(asked.number, asked.is_ticked)
            self._slots[asked] = _worked_slot(self.given, asked, tongues, self.everywhere)
        return self._slots[asked]

    def _tongues_at(self, number: int, is_ticked: bool) -> Tongues | Failed:
        """Return what the ball carries in every load state that is towed, at one stage."""
        if (number, is_ticked) not in self._tongues:
            self._tongues[number, is_ticked] = self._gathered_tongues(number, is_ticked)
        return self._tongues[number, is_ticked]

    def _gathered_tongues(self, number: int, is_ticked: bool) -> Tongues | Failed:
        found: list[tuple[str, Output]] = []
        for state in self.given.rig.loads:
            if "tow" in state.uses:
                at = (number, is_ticked, state)
                tongue: Output | Failed | None = self._like._tongue.get(at) if self._like is not None else None
                if tongue is None:
                    tongue = _tongue(self.given, Asked(number, is_ticked, state, "tow"))
                if isinstance(tongue, Failed):
                    return tongue
                self._tongue[at] = tongue
                found.append((state.name, tongue))
        return tuple(found)


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
    vehicle: str = "",
    ticked: bool | None = None,
) -> Study:
    """Return a rig worked out in every slot asked for.

    Without ``stage``: today as ticked, and the plan from today's stage on (``all_stages``: from the first). With it:
    that stage as planned, and as ticked too where it is today's; ``ticked`` asks for one of both. ``today`` is the
    caller's clock; ``judged_on`` is a day the caller asks for, else a demo's own day, else today. ``vehicle`` names the
    tow vehicle, else the first.
    """
    once = once if once is not None else Once()
    header, laid = rig.header, Laid(rig, today, once, shown_in, judged_on, vehicle)
    tickets, everywhere = laid.tickets, laid.everywhere
    slots = [laid.slot(one) for one in slots_of(rig, stage, load, use, all_stages, ticked)]
    have = {(slot.number, slot.is_ticked, slot.load) for slot in slots}
    slots += [slot for slot in tickets if (slot.number, slot.is_ticked, slot.load) not in have]
    number = header.stage_today if stage is None else stage
    is_ticked = number == header.stage_today and ticked is not False
    name = stage_name(rig, number)
    return Study(
        slots=tuple(slots),
        judged_on=laid.day,
        stage=name,
        number=number,
        is_ticked=is_ticked,
        differences=_differences(slots, header.stage_today),
        without_load=tuple(_without_load(rig, name, everywhere, use)),
        own_weight_from=laid.giver.of if laid.giver is not None else "",
    )


def slots_of(
    rig: Rig, stage: int | None, load: str | None, use: Use | None, all_stages: bool, only: bool | None = None
) -> tuple[Asked, ...]:
    """Return the slots a study works out: today as ticked first, then the plan stage by stage."""
    now = rig.header.stage_today
    count = max(len(rig.stages_in_order), 1)
    stages = [stage] if stage is not None else list(range(0 if all_stages else now, count))
    pairs = [
        (state, for_use)
        for state in rig.loads
        for for_use in state.uses
        if load in {None, state.name} and use in {None, for_use}
    ]
    ticked = [Asked(now, True, state, for_use) for state, for_use in pairs if now in stages]
    planned = [Asked(number, False, state, for_use) for number in stages for state, for_use in pairs]
    return (*(ticked if only is not False else ()), *(planned if only is not True else ()))


def ticket_slots(rig: Rig, giver: Giver | None) -> tuple[Asked, ...]:
    """Return the slots the scale tickets are compared in: each its own stage and load state, as on the road.

    They are worked out whatever is asked for: a ticket that disagrees casts doubt on the plan everywhere, and a slot
    must not come out otherwise because another one was asked for beside it.
    """
    found: list[Asked] = []
    for number, name in weighed_slots(rig, giver):
        state = weighed_empty(rig) if not name else next((one for one in rig.loads if one.name == name), None)
        if state is not None:
            found.append(Asked(number, number == rig.header.stage_today, state, "tow", is_for_ticket=True))
    return tuple(found)


def _of_tickets(tickets: tuple[Slot, ...]) -> tuple[Finding, ...]:
    """Return what is said of tickets, to be said in every slot."""
    return tuple(dict.fromkeys(one for slot in tickets for one in slot.findings if one.where.startswith("measured[")))


def _others(rig: Rig, giver: Giver | None, once: Once) -> tuple[Mass, ...] | Failed:
    """Return what stood on the scale with the bare trailer when it was weighed."""
    if giver is None or giver.stage is None:
        return ()
    state = next((one for one in rig.loads if one.name == giver.load), None) or weighed_empty(rig)
    once.enter(("on the scale", giver.of))
    return on_the_scale(rig, cut(rig, giver.stage, False, state, "tow", once.remembered), once)


def _worked_slot(given: Given, asked: Asked, tongues: Tongues | Failed, everywhere: tuple[Finding, ...]) -> Slot:
    """Return one slot worked out; ``everywhere`` are the findings that bear on every slot."""
    rig, once, load = given.rig, given.once, asked.load
    standing, weighed = _weighed(given, asked)
    context = Context(asked.use, load.name, rig.header.countries, given.judged_on, given.shown_in, given.vehicle)
    worked = one_slot(rig, standing, weighed, tongues, context, once)
    broken = _broken(weighed, worked)
    judged = _judged(given, asked, standing, worked, broken, everywhere)
    if isinstance(judged, Failed):
        broken += (judged,)
        judged = judge((broken_off(judged, asked.use),), (), asked.use, load.name, stage_name(rig, asked.number))
    return Slot(
        stage=stage_name(rig, asked.number),
        number=asked.number,
        is_ticked=asked.is_ticked,
        load=load.name,
        use=asked.use,
        standing=standing,
        ball_height=ball_height(rig, given.vehicle),
        box=weighed.box if not isinstance(weighed.box, Failed) else None,
        masses=weighed.masses if not isinstance(weighed.masses, Failed) else (),
        weight=weighed.weight if not isinstance(weighed.weight, Failed) else None,
        frame=worked.frame if not isinstance(worked.frame, Failed) else None,
        layout=worked.layout if not isinstance(worked.layout, Failed) else None,
        towing=worked.towing if not isinstance(worked.towing, Failed) else None,
        heat=worked.heat if not isinstance(worked.heat, Failed) else None,
        air=worked.air if not isinstance(worked.air, Failed) else None,
        safety=worked.safety if not isinstance(worked.safety, Failed) else None,
        findings=judged.findings,
        accepted=judged.accepted,
        verdict=judged.verdict,
        broken=broken,
        is_for_ticket=asked.is_for_ticket,
    )


def _weighed(given: Given, asked: Asked) -> tuple[Standing, Weighed]:
    """Return what stands in a slot and what it weighs."""
    rig, once = given.rig, given.once
    standing, box, masses = _gathered(given, asked)
    measured = _measured(rig, asked, given.giver)
    height = ball_height(rig, given.vehicle)
    return standing, weighed_slot(rig, box, masses, asked.load, height, measured, once)


def _gathered(given: Given, asked: Asked) -> tuple[Standing, Box | Failed, tuple[Mass, ...] | Failed]:
    """Return what stands in a slot, the trailer, and every mass."""
    rig, once = given.rig, given.once
    once.enter((asked.number, asked.is_ticked, asked.load.name, asked.use, asked.is_for_ticket))
    standing = given.stood.by(asked)
    return standing, *gathered(rig, standing, given.giver, given.others, once)


def ball_height(rig: Rig, vehicle: str) -> Band:
    """Return how high the ball of a tow vehicle stands above the ground; of the first where none is named."""
    asked = next((one for name, one in rig.tow if vehicle in {"", name}), None)
    return asked.ball_height if asked is not None and asked.ball_height is not None else UNKNOWN_HEIGHT


def _tongue(given: Given, asked: Asked) -> Output | Failed:
    """Return what the ball carries in one load state that is towed, at one stage."""
    _, box, masses = _gathered(given, asked)
    pool = given.once(pool_of, box, masses)
    return given.once(tongue_alone, box, pool, ball_height(given.rig, given.vehicle))


def _weigh_alike(given: Given, like: Given) -> bool:
    """Return whether two rigs put the same on the ball wherever their load states are the same."""
    rig, other = given.rig, like.rig
    return (
        _have_the_same((*CUT_FROM, "trailer", "frame"), rig, other)
        and (given.giver, given.others) == (like.giver, like.others)
        and ball_height(rig, given.vehicle) == ball_height(other, like.vehicle)
    )


def _have_the_same(fields: Iterable[str], rig: Rig, other: Rig) -> bool:
    """Return whether some fields of two rigs are equal."""
    return all(getattr(rig, name) == getattr(other, name) for name in fields)


def _judged(
    given: Given,
    asked: Asked,
    standing: Standing,
    worked: Worked,
    broken: tuple[Failed, ...],
    everywhere: tuple[Finding, ...],
) -> Judged | Failed:
    """Return what is said in a slot: by its disciplines, of what broke off, of the slot itself, and everywhere."""
    said = tuple(one for part in worked.said if not isinstance(part, Failed) for one in part)
    said += tuple(broken_off(failed, asked.use) for failed in broken)
    said = tuple(one for one in said if touches(one, asked.use))
    have = {(one.code, one.where) for one in said}
    said += of_a_slot(given.rig, standing, asked.use, said, asked.is_ticked)
    said += tuple(one for one in everywhere if touches(one, asked.use) and (one.code, one.where) not in have)
    stage = stage_name(given.rig, asked.number)
    return given.once(judge, said, accepted_of(given.rig), asked.use, asked.load.name, stage)


def _measured(rig: Rig, asked: Asked, giver: Giver | None) -> tuple[Measured, ...]:
    """Return the readings a slot is compared with: those of its stage and load state, and parts weighed alone.

    What was weighed at today's stage was the trailer as it stands, so it is compared with the ticks, not the plan.
    """
    if asked.number == rig.header.stage_today and not asked.is_ticked:
        return weighed_parts(rig)
    name = asked.load.name if asked.load in rig.loads else ""
    return readings_for(rig, giver, asked.number, name) + weighed_parts(rig)


def _broken(weighed: Weighed, worked: Worked) -> tuple[Failed, ...]:
    chapters = (worked.frame, worked.layout, worked.towing, worked.heat, worked.air, worked.safety)
    steps = (weighed.box, weighed.masses, weighed.weight, *chapters, *worked.said)
    failed = (one for one in steps if isinstance(one, Failed))
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
    planned = {
        (slot.load, slot.use): slot
        for slot in slots
        if slot.number == now and not (slot.is_ticked or slot.is_for_ticket)
    }
    found: list[Difference] = []
    for slot in slots:
        twin = planned.get((slot.load, slot.use))
        if slot.is_ticked and not slot.is_for_ticket and twin is not None:
            parts = difference(slot.standing, twin.standing)
            if parts or slot.verdict != twin.verdict:
                found.append(Difference(slot.use, slot.load, slot.verdict, twin.verdict, parts))
    return tuple(found)


def _without_load(rig: Rig, stage: str, everywhere: tuple[Finding, ...], use: Use | None) -> Iterator[Verdict]:
    """Yield the verdict of each use that no load state is judged for."""
    for one in USES:
        if use in {None, one} and not any(one in state.uses for state in rig.loads):
            yield verdict(one, "", stage, (*everywhere, no_load_state(one)))
