"""The smallest changes that clear what was found, as lines to act on and as edits to type."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from shlex import quote

from boxwright.book.numbers import named
from boxwright.cli.asked import Answered, Question, checked, of_chapter, slot_of
from boxwright.cli.check import chapter_page
from boxwright.cli.rig_file import must_be_one_of
from boxwright.cli.screen import Line, hanging, plain
from boxwright.cli.shown import Checked
from boxwright.study.bench import Bench
from boxwright.study.clear_place import PLACED
from boxwright.study.moves import Edit
from boxwright.study.reach import crossings
from boxwright.study.remedy import Fix, Remedies, remedies, with_remedies
from boxwright.study.remedy_words import weigh_first

HOW_MANY = ("first", "all")
MOST_WITHOUT, MOST_CROSSINGS = 4, 3


def sought(answer: Answered, word: str, today: date, chapter: str = "") -> Remedies:
    """Return the smallest changes: for the answer's own load state, or with ``all`` for every one and advice too.

    ``chapter`` asks for those of one discipline only.
    """
    must_be_one_of(word, list(HOW_MANY), "choice of fixes")
    asked = slot_of(answer, answer.use)
    load = answer.question.load if word == "all" else (asked.load if asked else answer.question.load)
    bench = Bench(answer.reading, today, answer.units, answer.study.judged_on, answer.once, answer.question.vehicle)
    return remedies(
        bench,
        answer.study.number,
        answer.study.is_ticked,
        use=answer.use,
        load=load,
        everything=word == "all",
        found=answer.study,
        chapter=chapter,
    )


def chapter_with_fixes(answer: Answered, word: str, columns: int, today: date) -> tuple[Checked, list[Line]]:
    """Return what a chapter found, each with the change that clears it as its remedy, and its page."""
    found, shown = sought(answer, "first", today, word), of_chapter(checked(answer), word)
    lines = [*fix_lines(found, answer.question, columns), *weigh_first_lines(answer, columns, word)]
    return with_fixes(shown, found), put_in(chapter_page(shown, word, columns), lines)


def with_fixes(shown: Checked, found: Remedies) -> Checked:
    """Return an answer whose findings carry the change that clears them as their remedy."""
    return replace(shown, findings=with_remedies(shown.findings, found))


def with_first_fix(shown: Checked, found: Remedies) -> Checked:
    """Return an answer whose first thing to do is the proved change, where one cures what it is about."""
    cured = {mark: fix.says for fix in reversed(found.fixes) if fix.is_whole for mark in fix.clears}
    by_act: dict[tuple[str, str], str] = {}
    for one in shown.findings:
        says = cured.get((one.code, one.where, one.load))
        if says and one.kind in {"stop", "limit"} and one.use == shown.asked:
            by_act.setdefault((one.load, one.act), says)
    verdicts = tuple(
        replace(one, act=by_act.get((one.load, one.act), one.act)) if one.use == shown.asked else one
        for one in shown.verdicts
    )
    return replace(shown, verdicts=verdicts)


def fix_lines(found: Remedies, question: Question, columns: int) -> list[Line]:
    """Return the changes, the least effort first, and what is said where there is none."""
    plainly = dict.fromkeys(
        (finding.code, says) for finding, says in found.without if finding.kind in {"stop", "fix", "limit"}
    )
    if not found.fixes and not plainly:
        return []
    lines: list[Line] = [(), plain("SMALLEST CHANGES, each proved in every stage and load state", "head")]
    for count, fix in enumerate(found.fixes, start=1):
        then = f"; {fix.then}" if fix.then else ""
        lines += hanging(plain(f"  {count} "), f"{fix.says}{then}", columns)
        lines += hanging(plain("    "), f"{does(fix)}: {tried_as(fix, question)}", columns, "dim")
    for code, says in list(plainly)[:MOST_WITHOUT]:
        lines += hanging(plain("  - "), f"{code}: {says}", columns)
    return lines


def weigh_first_lines(answer: Answered, columns: int, chapter: str = "") -> list[Line]:
    """Return what to weigh first where a rule is undecided in the load state of the answer, and where it crosses."""
    asked = slot_of(answer, answer.use)
    found = [one for one in crossings((asked,) if asked is not None else ()) if one.code.startswith(chapter)]
    lines: list[Line] = [(), plain("UNDECIDED UNTIL WEIGHED", "head")] if found else []
    for one in found[:MOST_CROSSINGS]:
        says = weigh_first(named(one.of), one.kg, answer.units)
        lines += hanging(plain("  - "), f"{one.code}: {says}", columns)
    return lines


def does(fix: Fix) -> str:
    """Return what a change clears, rule by rule with the load states; or that it only makes a question of a breach."""
    loads: dict[str, list[str]] = {}
    for code, _, load in fix.clears:
        loads.setdefault(code, []).append(load)
    each = [
        code if code in PLACED else f"{code} (load {', '.join(dict.fromkeys(names))})" for code, names in loads.items()
    ]
    clears = f"clears {', '.join(each)}" if each else ""
    asks = "" if fix.is_whole else f"no cure yet of {fix.code}{'' if fix.code in PLACED else f' (load {fix.load})'}"
    return ", ".join(part for part in (asks, clears) if part)


def put_in(page: list[Line], found: list[Line]) -> list[Line]:
    """Return a page with the changes ahead of its closing words, which stand behind the last empty line."""
    end = max((index for index, line in enumerate(page) if not line), default=len(page))
    return [*page[:end], *found, *page[end:]]


def typed(fix: Fix) -> str:
    """Return the edits of a change as they are typed behind ``try`` or ``set``."""
    return " ".join(f'"{_typed(edit)}"' for edit in fix.edits)


def _typed(edit: Edit) -> str:
    """Return one edit as it is typed. What stays behind joins those that do already: a value would take their place."""
    if edit.path.endswith(".out"):
        return f"add {edit.value} to {edit.path}"
    return f"{_short(edit.path)}={edit.value}"


def tried_as(fix: Fix, question: Question) -> str:
    """Return the command that shows what a change does, asked the way the question was: its page tells the same.

    It shows the load state the change is for, whatever state the page would choose by itself.
    """
    load = question.load if fix.code in PLACED else fix.load
    asked = (("stage", question.stage, ""), ("load", load, ""), ("use", question.use, "tow"),
             ("units", question.units, "file"), ("date", question.on, ""),
             ("vehicle", question.vehicle, ""))  # fmt: skip
    options = [f" --{name} {quote(word)}" for name, word, usual in asked if word not in {"", usual}]
    return f"boxwright try {quote(question.path)} {typed(fix)}{''.join(options)}"


def _short(path: str) -> str:
    """Return a part's path as it is typed, by its name alone."""
    return path.removeprefix("parts[").replace("].", ".", 1) if path.startswith("parts[") else path
