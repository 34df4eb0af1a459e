"""The page of ``boxwright explain``: a rule with its source, a method with its checks, or a chapter's own text."""

from __future__ import annotations

import inspect
import re
from importlib import import_module, resources
from types import FunctionType, ModuleType

from boxwright.cli.check_methods import run_folder, source_text, worked_example
from boxwright.cli.commands import CHAPTERS
from boxwright.cli.labels import taken_apart
from boxwright.cli.rig_file import NothingAsked, nearest
from boxwright.cli.screen import Line, Span, clean, hanging, plain, wrapped
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


def _functions(module: ModuleType) -> dict[str, FunctionType]:
    """Return the public functions of a module or package that were written in it."""
    return {
        name: found
        for name, found in vars(module).items()
        if isinstance(found, FunctionType) and not name.startswith("_") and found.__module__.startswith(module.__name__)
    }


def rules_of(folder: str) -> dict[str, FunctionType]:
    """Return the rules of a chapter by their codes: the functions that say what they ask."""
    functions = _functions(import_module(f"boxwright.disciplines.{folder}.findings"))
    return {
        f"{folder}/{name.replace('_', '-')}": function
        for name, function in functions.items()
        if taken_apart(function).label("Asks")
    }


def methods_of(folder: str) -> dict[str, FunctionType]:
    """Return the methods of a chapter by their names."""
    return _functions(import_module(f"boxwright.disciplines.{folder}.method"))


def codes() -> list[str]:
    """Return every code a finding may carry."""
    return [code for folder in CHAPTERS for code in rules_of(folder)] + list(EXPLAINED)


def _rule(code: str, folder: str, rule: FunctionType, columns: int) -> list[Line]:
    package = f"boxwright.disciplines.{folder}"
    labelled = taken_apart(rule)
    lines: list[Line] = [plain(code, "head"), ()]
    for paragraph in labelled.paragraphs:
        lines += [*(plain(piece) for piece in wrapped(paragraph, columns)), ()]
    lines += _labels(labelled.labels, columns)
    lines += _sources(labelled.label("Source"), load_sources(package), columns)
    return lines + _behind(rule, folder, columns)


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
    """Return the methods a rule rests on with their checks; where it names none, the methods of its chapter."""
    methods = methods_of(folder)
    named = WORD.findall(taken_apart(rule).label("Methods")) or WORD.findall(inspect.getsource(rule))
    used = [name for name in methods if name in named]
    outcomes = run_folder(folder)
    if not used:
        counts = {name: sum(name in (one.check.method, *one.check.covers) for one in outcomes) for name in methods}
        names = ", ".join(f"{name} ({count})" for name, count in counts.items())
        head = "Its numbers come from the methods of the chapter, with their number of checks"
        return [(), *hanging((Span(f"{head}: "),), names, columns)] if names else []
    lines: list[Line] = []
    for name in used:
        lines += [(), plain(f"Why believe {name}", "head")]
        found = [one for one in outcomes if name in (one.check.method, *one.check.covers)]
        lines += [line for outcome in found for line in worked_example(outcome, columns)]
        lines += [] if found else [plain("  no published case is known")]
    return lines


def _method(folder: str, method: FunctionType, columns: int) -> list[Line]:
    labelled = taken_apart(method)
    lines: list[Line] = [plain(f"{method.__name__} ({folder})", "head"), ()]
    for paragraph in labelled.paragraphs:
        lines += [*(plain(piece) for piece in wrapped(paragraph, columns)), ()]
    lines += _labels(labelled.labels, columns)
    lines += _sources(labelled.label("Source"), load_sources(f"boxwright.disciplines.{folder}"), columns)
    outcomes = [one for one in run_folder(folder) if method.__name__ in (one.check.method, *one.check.covers)]
    lines += [(), plain("Why believe it", "head")]
    lines += [line for outcome in outcomes for line in worked_example(outcome, columns)]
    return lines if outcomes else [*lines, plain("  no published case is known")]


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
