"""The verdict: for one use, one answer out of four, with what it rests on and what to do first (DESIGN 10)."""

from __future__ import annotations

from collections.abc import Iterable

from boxwright.disciplines import (
    air,
    cutting,
    frame,
    heat,
    layout,
    power,
    safety,
    stages,
    structure,
    towing,
    water,
    weight,
)
from boxwright.finding import Answer, Finding, Use, Verdict
from boxwright.model.chapter import Chapter

CHAPTERS: tuple[Chapter, ...] = (
    frame.CHAPTER,
    layout.CHAPTER,
    structure.CHAPTER,
    weight.CHAPTER,
    towing.CHAPTER,
    heat.CHAPTER,
    air.CHAPTER,
    power.CHAPTER,
    water.CHAPTER,
    safety.CHAPTER,
    cutting.CHAPTER,
    stages.CHAPTER,
)
"""The chapters in the order of the book."""

JUDGED = frozenset(chapter.word for chapter in CHAPTERS if chapter.judges)
"""The disciplines whose rules are built."""

RESTS_ON: dict[Use, tuple[str, ...]] = {
    "tow": ("weight", "towing", "structure", "frame", "power"),
    "sleep": ("air", "heat", "power", "safety", "structure", "weight", "stages"),
    "leave": ("power", "air", "heat", "safety", "structure"),
    "work": ("power", "air", "structure"),
}
"""The disciplines each use rests on."""

MOST_QUESTIONS = 3
NOT_JUDGED = "not judged: "
"""How the reason begins that names the chapters without rules."""
TELL_THE_CAUSE = {"safety/two-ways-out": 0, "safety/opens-from-inside": 1}
"""Rules that tell what they come from, the most telling first: what else stops for that alone is said with them."""
SAME_CAUSE = "; of the same cause: "
WORST_FIRST: tuple[Answer, ...] = ("no", "ask", "limits", "go")


def touches(finding: Finding, use: Use) -> bool:
    """Return whether a finding bears on a use: as it says itself, else where the use rests on its discipline."""
    if finding.uses:
        return use in finding.uses
    folder = finding.code.partition("/")[0]
    return folder == "rig" or folder in RESTS_ON[use]


def verdict(use: Use, load: str, stage: str, findings: Iterable[Finding], judged: frozenset[str] = JUDGED) -> Verdict:
    """Return the answer for one use in one slot, never better than the worst of what it rests on.

    ``findings`` are all of the slot, those of the file and those the owner has accepted among them: an acceptance
    clears no verdict.
    """
    bearing = tuple(finding for finding in findings if touches(finding, use))
    missing = tuple(folder for folder in RESTS_ON[use] if folder not in judged)
    # What may cost a life is said before what only hinders.
    stops = sorted((one for one in bearing if one.kind == "stop"), key=lambda one: not one.protects)
    unknown = _most_telling_first(bearing)
    barred = [finding for finding in unknown if finding.protects]
    asking = [finding for finding in unknown if finding.could_stop and not finding.protects]
    limiting = [finding for finding in bearing if finding.kind == "limit"]
    limited = [finding for finding in unknown if not finding.could_stop and not finding.protects]
    until_measured = [finding for finding in limited if finding.could_limit]

    answer: Answer = "go"
    if stops or barred or missing:
        answer = "no"
    elif asking:
        answer = "ask"
    elif limiting or until_measured:
        answer = "limits"
    not_judged = [f"not-judged/{folder}" for folder in missing]
    codes = [finding.code for finding in (*stops, *barred, *asking, *limiting, *until_measured)]
    says = [*_causes(stops), *(finding.says for finding in barred)]
    says += [finding.says for finding in (*asking, *limiting)]
    says += [f"until measured: {finding.says}" for finding in until_measured]
    # Last: what is known of the trailer is read first, and what nobody judged behind it.
    if missing:
        says.append(NOT_JUDGED + ", ".join(missing))
    if answer == "go":
        says.append("judged and holding: " + ", ".join(RESTS_ON[use]))
    return Verdict(
        use=use,
        load=load,
        stage=stage,
        answer=answer,
        because=tuple(dict.fromkeys((*codes[: len(stops) + len(barred)], *not_judged, *codes))),
        act=_first_act((*stops, *barred, *asking, *limiting, *until_measured), missing),
        questions=_questions((*barred, *asking)),
        says=tuple(dict.fromkeys(says)),
    )


def _causes(stops: list[Finding]) -> list[str]:
    """Return the reasons of some stops, a cause that more than one of them tells of said once."""
    told: dict[Finding, list[str]] = {}
    for one in sorted(stops, key=lambda one: TELL_THE_CAUSE.get(one.code, len(TELL_THE_CAUSE))):
        first = next((first for first in told if _is_of_one_cause(first, one)), None)
        if first is None:
            told[one] = []
        else:
            told[first].append(one.code.partition("/")[2])
    same = {one: SAME_CAUSE + ", ".join(dict.fromkeys(codes)) if codes else "" for one, codes in told.items()}
    return [one.says + same[one] for one in stops if one in same]


def _is_of_one_cause(first: Finding, other: Finding) -> bool:
    is_told = first.code in TELL_THE_CAUSE and first.code != other.code
    return is_told and other.protects and not set(first.because).isdisjoint(other.because)


def _most_telling_first(bearing: tuple[Finding, ...]) -> list[Finding]:
    """Return the unknowns, the one whose answer would change most first.

    Rules that weigh doubts against each other list them in ``because``, the widest first; that is the order here.
    """
    rank: dict[str, int] = {}
    for finding in bearing:
        if len(finding.because) > 1:
            for index, path in enumerate(finding.because):
                rank[path] = min(index, rank.get(path, index))
    unknown = [finding for finding in bearing if finding.kind == "unknown"]
    return sorted(unknown, key=lambda finding: (not finding.protects, rank.get(finding.where, len(rank))))


def _first_act(by_weight: tuple[Finding, ...], missing: tuple[str, ...]) -> str:
    for finding in by_weight:
        if finding.remedy or finding.act:
            return finding.remedy or finding.act
    if missing:
        return f"Judge {', '.join(missing)} yourself: this program has no rules for it yet."
    return ""


def _questions(asking: tuple[Finding, ...]) -> tuple[str, ...]:
    """Return at most three things to look at or to measure, each with the minutes it takes."""
    asked = [
        f"{finding.act} ({finding.minutes} min)" if finding.minutes is not None else finding.act
        for finding in asking
        if finding.act
    ]
    return tuple(dict.fromkeys(asked))[:MOST_QUESTIONS]


def worst(verdicts: Iterable[Verdict]) -> Verdict | None:
    """Return the worst of some verdicts: of equal answers the one with most against it, of those the first."""
    return min(verdicts, key=lambda one: (WORST_FIRST.index(one.answer), -len(one.because)), default=None)
