"""The page of ``boxwright check``: the answers first, then what is wrong with the text, the weights, the findings."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from boxwright.book.numbers import KIND_NAMES, USE_NAMES, mass, named, place, share
from boxwright.cli.screen import Line, Span, Style, aligned, hanging, plain, wrapped
from boxwright.cli.shown import Checked, LineOf, State
from boxwright.finding import USES, Answer, Finding, Problem, Use, Verdict
from boxwright.study.verdict import NOT_JUDGED
from boxwright.units import HeaderUnits

FINDINGS_AT_FIRST, PROBLEMS_AT_FIRST, PARTS_AT_FIRST = 7, 12, 8
LEAD = 11
"""Columns in front of a sentence, filled by the use, or by the kind of a finding."""

ANSWER_STYLES: dict[Answer, Style] = {"go": "go", "limits": "limit", "ask": "unknown", "no": "stop"}
KIND_ORDER = {"stop": 0, "unknown": 1, "limit": 2, "fix": 3, "advice": 4}
CLOSING = (
    "Boxwright computes from what it was told. Local law, the trailer's own plate and a scale come first. "
    "Nobody rides in the trailer."
)


def page(checked: Checked, columns: int, is_all: bool = False) -> list[Line]:
    """Return the lines of the page; ``is_all`` shows every finding and every problem."""
    lines = [*page_title(checked, columns), *_answers(checked, columns), *_worse(checked, columns)]
    lines += _plan_differs(checked, columns, is_all)
    lines += problem_lines(checked.problems, columns, checked.path, is_all)
    lines += _weights(checked, columns)
    lines += _findings(checked, columns, is_all)
    lines += [(), *(plain(piece, "dim") for piece in wrapped(CLOSING, columns))]
    return lines


def chapter_page(checked: Checked, word: str, columns: int) -> list[Line]:
    """Return the lines of one chapter: all it found in the slots the answers were given in."""
    lines = [plain(word.upper(), "head"), *page_title(checked, columns)[:-1]]
    lines += _findings(checked, columns, is_all=True) or [
        (),
        *(plain(piece) for piece in wrapped(_nothing_found(checked), columns)),
    ]
    return [*lines, (), *(plain(piece, "dim") for piece in wrapped(CLOSING, columns))]


def _nothing_found(checked: Checked) -> str:
    """Return what is said of a chapter without a finding: without a load state it has judged nothing."""
    if not checked.load:
        return f"Nothing of this chapter was judged: no load state of the file is judged for {checked.asked}."
    without = [one.use for one in checked.verdicts if "rig/no-load-state" in one.because]
    unjudged = f" No load state is judged for {', '.join(without)}: there nothing was." if without else ""
    return f"Every rule of this chapter that was judged holds.{unjudged}"


def page_title(checked: Checked, columns: int) -> list[Line]:
    """Return what the page is about: rig, stage, load state and day."""
    when = "today as ticked" if checked.is_ticked else "as planned"
    stage = f", stage {checked.stage}" if checked.stage else ""
    load = f", load {checked.load}" if checked.load else ""
    title = f"{checked.rig}, {when}{stage}{load}; judged on {checked.date}"
    return [*(plain(piece, "head") for piece in wrapped(title, columns)), ()]


def _answers(checked: Checked, columns: int) -> list[Line]:
    lines: list[Line] = []
    for verdict in checked.verdicts:
        lead: Line = (
            Span(USE_NAMES[verdict.use].ljust(7), "head"),
            Span(verdict.answer.upper().ljust(8), ANSWER_STYLES[verdict.answer]),
        )
        lines += hanging(lead, _why(verdict, checked.load), columns)
        indent = Span(" " * 15)
        steps = first_steps(verdict)
        if verdict.use == checked.asked and len(steps) > 1:
            for count, step in enumerate(steps, start=1):
                first = Span("first: " if count == 1 else " " * 7, "dim")
                lines += hanging((indent, first, Span(f"{count} ")), step, columns)
        elif verdict.act:
            lines += hanging((indent, Span("first: ", "dim")), verdict.act, columns)
    return lines


def first_steps(verdict: Verdict) -> tuple[str, ...]:
    """Return what to do first, in order: what ends a definite no, then what to look at; no answer undoes a stop."""
    asks = any(one == verdict.act or one.startswith(f"{verdict.act} (") for one in verdict.questions)
    return verdict.questions if asks or not verdict.act else (verdict.act, *verdict.questions)


def _why(verdict: Verdict, load: str) -> str:
    """Return why the answer is what it is: the first reason, what nobody judged, and how many reasons more."""
    says = list(verdict.says) or list(verdict.because) or ["every rule that was judged holds"]
    not_judged = [reason for reason in says[1:] if reason.startswith(NOT_JUDGED)]
    shown = [says[0], *not_judged[:1]]
    more = len(says) - len(shown)
    why = "; ".join(shown) + (f"; and {more} {'reasons' if more > 1 else 'reason'} more" if more else "")
    return why if verdict.load == load or not verdict.load else f"(load {verdict.load}) {why}"


def _worse(checked: Checked, columns: int) -> list[Line]:
    """Return that another load state than the one asked about is worse, and why."""
    worse = checked.worse
    if worse is None:
        return []
    text = f"Worse with load {worse.load}: {USE_NAMES[worse.use]} {worse.answer.upper()}, {_why(worse, worse.load)}"
    return [(), *(plain(piece) for piece in wrapped(text, columns))]


def _plan_differs(checked: Checked, columns: int, is_all: bool) -> list[Line]:
    """Return the answers of the plan where they differ from today as ticked, and which parts make the difference."""
    today = {verdict.use: verdict.answer for verdict in checked.verdicts}
    other = [verdict for verdict in checked.planned if verdict.answer != today[verdict.use]]
    if not other and not checked.difference:
        return []
    if other:
        answers = ", ".join(f"{USE_NAMES[verdict.use]} {verdict.answer.upper()}" for verdict in other)
        text = f"Were stage {checked.stage} done as planned: {answers}."
    else:
        text = f"Were stage {checked.stage} done as planned the answers would be the same, the weights not."
    if checked.difference:
        shown = checked.difference if is_all else checked.difference[:PARTS_AT_FIRST]
        more = len(checked.difference) - len(shown)
        listed = ", ".join(map(named, shown)) + (f" and {more} more" if more else "")
        text += f" What makes the difference: {listed}."
    return [(), *(plain(piece) for piece in wrapped(text, columns))]


def problem_lines(problems: Sequence[Problem], columns: int, path: str, is_all: bool = False) -> list[Line]:
    """Return what could not be read as it stands, by line and column, and a word on the notes."""
    wrong = [problem for problem in problems if problem.kind == "problem"]
    notes = [problem for problem in problems if problem.kind == "note"]
    lines: list[Line] = []
    if wrong:
        lines += [(), plain(f"IN THE TEXT  {_count(wrong, 'problem')}", "head")]
        lines += _places(wrong if is_all else wrong[:PROBLEMS_AT_FIRST], columns)
        if len(wrong) > PROBLEMS_AT_FIRST and not is_all:
            lines.append(plain(f"  and {len(wrong) - PROBLEMS_AT_FIRST} more: boxwright check {path} --all", "dim"))
    if notes and is_all:
        lines += [(), plain(f"HOW IT WAS READ  {_count(notes, 'note')}", "head"), *_places(notes, columns)]
    elif notes:
        lines += [(), plain(f"{_count(notes, 'note')} on how a text was read: boxwright check {path} --all", "dim")]
    return lines


def _places(problems: Iterable[Problem], columns: int) -> list[Line]:
    lines: list[Line] = []
    for problem in problems:
        lead = Span(f"  {problem.line}:{problem.column}".ljust(LEAD))
        lines += hanging((lead,), problem.says, columns)
    return lines


def _count(things: Sequence[object], word: str) -> str:
    return f"{len(things)} {word}" + ("" if len(things) == 1 else "s")


def weight_rows(state: State, units: HeaderUnits) -> list[tuple[str, str]]:
    """Return the weights of one state as label and number."""
    rows = [
        ("gross", mass(state.gross, units)),
        ("on the ball", mass(state.tongue, units)),
        ("share of gross", share(state.share, units)),
        ("on the wheels", mass(state.on_wheels, units)),
    ]
    rows += [(f"axle {index}", mass(axle, units)) for index, axle in enumerate(state.axles, start=1)]
    return [*rows, ("left wheels", mass(state.left, units)), ("right wheels", mass(state.right, units))]


def _weights(checked: Checked, columns: int) -> list[Line]:
    state, other = checked.state, checked.state_planned
    if state is None:
        return []
    rows = [list(row) for row in weight_rows(state, checked.units)]
    if other is not None:
        for row, (_, number) in zip(rows, weight_rows(other, checked.units), strict=True):
            row.append(number)
        rows.insert(0, ["", "as ticked", "as planned"])
    lines: list[Line] = [(), plain(f"WEIGHT  load {state.load}", "head")]
    lines += [plain("  " + row) for row in aligned(rows, right=(1, 2), gap=3)]
    for index, axis in enumerate(place(state.centre, checked.units)):
        lines += hanging((Span(("" if index else "  centre of gravity").ljust(21)),), axis, columns)
    if state.unlisted:
        text = f"{', '.join(state.unlisted)} (no weight written)"
        lines += hanging((Span("  ? stands for".ljust(21)),), text, columns)
    return lines


def grouped(findings: Iterable[Finding], asked: Use) -> list[tuple[str, list[Finding]]]:
    """Return findings by use, the asked use first, the gravest kind first; those for no use stand last.

    What is said in the same words for several uses stands once, at the first of them.
    """
    order = [asked, *(use for use in USES if use != asked)]
    groups: dict[str, list[Finding]] = {use: [] for use in [*order, ""]}
    for finding in findings:
        uses = (finding.use,) if finding.use else finding.uses
        groups[next((use for use in order if use in uses), "")].append(finding)
    said: set[tuple[str, str, str]] = set()
    for use, group in groups.items():
        groups[use] = [one for one in group if (one.code, one.where, one.says) not in said]
        said |= {(one.code, one.where, one.says) for one in group}
        groups[use].sort(key=lambda finding: (KIND_ORDER[finding.kind], not finding.could_stop))
    return [(use, group) for use, group in groups.items() if group]


def _findings(checked: Checked, columns: int, is_all: bool) -> list[Line]:
    lines: list[Line] = []
    groups = grouped(checked.findings, checked.asked)
    count = sum(len(group) for _, group in groups)
    room = count if is_all else FINDINGS_AT_FIRST
    for use, group in groups:
        follow = [] if is_all else following(group)
        shown = [finding for finding in group if finding not in follow][:room]
        room -= len(shown)
        if shown:
            lines += [(), plain(f"FINDINGS  {use.upper() or 'FOR THE BUILD'}", "head")]
        for finding in shown:
            lines += finding_lines(finding, columns, checked.line_of)
        if shown and follow:
            rules = ", ".join(dict.fromkeys(finding.code.partition("/")[2].replace("-", " ") for finding in follow))
            lines += hanging((Span("  Open too".ljust(LEAD), "unknown"),), f"until those are known: {rules}", columns)
            count -= len(follow)
    hidden = count - FINDINGS_AT_FIRST
    if hidden > 0 and not is_all:
        lines.append(plain(f"  and {hidden} more: boxwright check {checked.path} --all", "dim"))
    return lines + _accepted(checked, columns)


def following(group: Sequence[Finding]) -> list[Finding]:
    """Return the unknowns that only wait for things which another finding of the group already asks about."""
    asked = {one.where for one in group if one.kind == "unknown" and one.because == (one.where,)}
    return [
        one
        for one in group
        if one.kind == "unknown" and one.because and set(one.because) <= asked and one.where not in one.because
    ]


def finding_lines(finding: Finding, columns: int, line_of: LineOf) -> list[Line]:
    """Return one finding: its kind and sentence, what to do, where it is and its code."""
    lead = Span(f"  {KIND_NAMES[finding.kind]}".ljust(LEAD), finding.kind)
    lines = hanging((lead,), finding.says, columns)
    indent = Span(" " * LEAD)
    if finding.act or finding.remedy:
        minutes = f" ({finding.minutes} min)" if finding.minutes else ""
        lines += hanging((indent, Span("do: ", "dim")), (finding.act or finding.remedy) + minutes, columns)
    line = line_of(finding.where)
    at = f"line {line}, {finding.where}" if line else finding.where
    return [*lines, *hanging((indent,), f"{at}; explain {finding.code}", columns, "dim")]


def _accepted(checked: Checked, columns: int) -> list[Line]:
    if not checked.accepted:
        return []
    lines: list[Line] = [(), plain("ACCEPTED BY THE OWNER  clears no answer", "head")]
    for finding in checked.accepted:
        lines += finding_lines(finding, columns, checked.line_of)
    return lines
