"""The page of ``boxwright explain``: a rule with its source, a method with its checks, or a chapter's own text."""

from __future__ import annotations

import inspect
import re
from importlib import resources
from types import FunctionType

from boxwright.book.labels import taken_apart
from boxwright.book.rules import methods_of, rules_of, source_text
from boxwright.cli.check_methods import run_folder, worked_example
from boxwright.cli.rig_file import NothingAsked, nearest
from boxwright.cli.screen import Line, Span, clean, hanging, plain, wrapped
from boxwright.cli.words import CHAPTERS
from boxwright.source import Source, load_sources
from boxwright.study.rig_findings import EXPLAINED

LEAD = 11
WORD = re.compile(r"[a-z_0-9]+")


def page(asked: str, columns: int) -> list[Line]:
    """Return the page for a finding's code, the name of a method, or a chapter."""
    folder, _, name = asked.partition("/")
    if folder == "not-judged" and name in CHAPTERS:
        return _chapter(name, columns)
    if asked in CHAPTERS:
        return _chapter(asked, columns)
    rule = rules_of(folder).get(asked) if folder in CHAPTERS else None
    if rule is not None:
        return _rule(asked, folder, rule, columns)
    own = EXPLAINED.get(name if name in EXPLAINED and folder in CHAPTERS else asked)
    if own is not None:
        return [plain(asked, "head"), (), *_labels((("Asks", own.asks), ("Source", own.source)), columns)]
    for chapter in CHAPTERS:
        method = methods_of(chapter).get(asked.replace("-", "_"))
        if method is not None:
            return _method(chapter, method, columns)
    guess = nearest(asked, [*codes(), *CHAPTERS, *(name for chapter in CHAPTERS for name in methods_of(chapter))])
    meant = f'; did you mean "{guess}"?' if guess else ""
    raise NothingAsked(f'nothing is called "{clean(asked)}"{meant} (`boxwright explain weight` lists its rules)')


def codes() -> list[str]:
    """Return every code a finding may carry."""
    return [code for folder in CHAPTERS for code in rules_of(folder)] + list(EXPLAINED)


def _rule(code: str, folder: str, rule: FunctionType, columns: int) -> list[Line]:
    return [*_documented(code, folder, rule, columns), *_behind(rule, folder, columns)]


def _documented(head: str, folder: str, function: FunctionType, columns: int) -> list[Line]:
    """Return a docstring as a page: its sentences, its labels, and each source it names in full."""
    labelled = taken_apart(function)
    lines: list[Line] = [plain(head, "head"), ()]
    for paragraph in labelled.paragraphs:
        lines += [*(plain(piece) for piece in wrapped(paragraph, columns)), ()]
    for label in labelled.labels:
        lines += _labels((label,), columns)
        if label[0] == "Source":
            lines += _sources(label[1], load_sources(f"boxwright.disciplines.{folder}"), columns)
    return lines


def _labels(labels: tuple[tuple[str, str], ...], columns: int) -> list[Line]:
    lines: list[Line] = []
    for label, text in labels:
        lines += hanging((Span(label.ljust(LEAD), "head"),), text, columns)
    return lines


def _sources(text: str, sources: dict[str, Source], columns: int) -> list[Line]:
    """Return the sources a label names, each in full with how it was seen."""
    lines: list[Line] = []
    for key, source in sources.items():
        if re.search(rf"(?<![\w-]){re.escape(key)}(?![\w-])", text):
            lines += hanging((Span("".ljust(LEAD)),), f"{key}: {source_text(source)}", columns)
            if source.url:
                lines += hanging((Span("".ljust(LEAD)),), source.url, columns, "dim")
    return lines


def _behind(rule: FunctionType, folder: str, columns: int) -> list[Line]:
    """Return the methods a rule rests on, with their checks: those it names, and those of the same clause."""
    clause = taken_apart(rule).label("Source")
    named = set(WORD.findall(inspect.getsource(rule)))
    used = [
        method
        for name, method in methods_of(folder).items()
        if name in named or (clause and taken_apart(method).label("Source") == clause)
    ]
    return [line for method in used for line in _checks(method, folder, columns)]


def _method(folder: str, method: FunctionType, columns: int) -> list[Line]:
    page = _documented(f"{method.__name__} ({folder})", folder, method, columns)
    return [*page, *_checks(method, folder, columns)]


def _checks(method: FunctionType, folder: str, columns: int) -> list[Line]:
    """Return the checks of a method as worked examples."""
    name = method.__name__
    lines: list[Line] = [(), plain(f"Why believe {name}", "head")]
    outcomes = [one for one in run_folder(folder) if name in (one.check.method, *one.check.covers)]
    lines += [line for outcome in outcomes for line in worked_example(outcome, columns)]
    return lines if outcomes else [*lines, plain("  no check is known for it")]


def _chapter(folder: str, columns: int) -> list[Line]:
    """Return a chapter's own text, and the names of its rules."""
    text = resources.files(f"boxwright.disciplines.{folder}").joinpath("README.md").read_text(encoding="utf-8")
    lines = read_aloud(text, columns)
    rules = list(rules_of(folder))
    if rules:
        lines += [(), plain("Rules, each explained by its code", "head")]
        lines += hanging((Span("  "),), ", ".join(rules), columns)
    return lines


def read_aloud(text: str, columns: int) -> list[Line]:
    """Return a text written with # headings, lists and paragraphs as lines of the screen's width."""
    lines: list[Line] = []
    paragraph: list[str] = []
    for line in [*text.splitlines(), ""]:
        is_own_line = line.startswith(("#", "|", "    ", "```"))
        starts_item = bool(re.match(r"\s*([-*]|\d+\.) ", line))
        if paragraph and (is_own_line or starts_item or not line.strip()):
            lines += _paragraph(" ".join(paragraph), columns)
            paragraph = []
        if line.startswith("#"):
            lines.append(plain(line.lstrip("# "), "head"))
        elif is_own_line and not starts_item:
            lines.append(plain(line))
        elif line.strip():
            paragraph.append(line.strip())
        elif lines and lines[-1] != ():
            lines.append(())
    return lines[:-1] if lines and lines[-1] == () else lines


def _paragraph(text: str, columns: int) -> list[Line]:
    item = re.match(r"([-*]|\d+\.) ", text)
    if item:
        return hanging(plain(f"  {item[0]}"), text[item.end() :], columns)
    return [plain(piece) for piece in wrapped(text, columns)]
