"""``boxwright draw``: the sheets of a rig as files, each written whole or not at all."""

from __future__ import annotations

import hashlib
import os
import re
from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from boxwright import HOW_TO_ADD
from boxwright.book.sheets import ONLY_BY_NAME, SLOW, Printing, sheets_of, slow_sheets, slow_titles, title_of
from boxwright.cli.asked import Answered, Question, answered, checked, slot_of
from boxwright.cli.ordered import lines_of
from boxwright.cli.rig_file import NothingAsked, must_be_one_of
from boxwright.cli.screen import Line, clean, hanging, plain, wrapped
from boxwright.drawing import Sheet
from boxwright.drawing.layout import pages_of
from boxwright.drawing.page import Page
from boxwright.drawing.paper import PAPERS, PaperName, TitleBlock
from boxwright.records import dataclass

if TYPE_CHECKING:
    from boxwright.render.extra import MissingExtra

FORMATS = ("svg", "dxf", "pdf", "png", "glb")
SOLID = "glb"
"""The format that holds solids and no sheets."""
LETTER_COUNTRIES = frozenset({"US", "CA"})
LIST = "sheets.sha256"
"""Names what this command has put into a folder, so that it never writes over anything else."""

NOT_ALWAYS = {
    "bringing-in": "nothing is to be brought in at this stage; ask for another one with --stage",
    "changeover": "it wants the room inside, and a load state for tow and another one for sleep",
}
"""Sheets that not every rig has at every stage, and what is lacking then."""

PER_INCH = 144.0


@dataclass(frozen=True, slots=True)
class Wanted:
    """What was typed besides the question: the folder, sheets, formats, paper; empty where nothing was."""

    to: str
    sheets: tuple[str, ...] = ()
    formats: tuple[str, ...] = ()
    paper: str = ""
    is_over: bool = False
    section: str = ""


def drawn_files(question: Question, wanted: Wanted, today: date, columns: int) -> list[Line]:
    """Write the sheets and solids that were asked for and return the lines that name them."""
    formats = _formats(wanted.formats)
    if wanted.section and SOLID not in formats:
        raise NothingAsked("a section is cut through solids; add --format glb")
    answer = answered(question, today)
    drawn = [_sheet_files(answer, wanted, flat)] if (flat := [one for one in formats if one != SOLID]) else []
    drawn += [_solid_files(answer, wanted)] if SOLID in formats else []
    folder = Path(wanted.to)
    _put(folder, [file for one in drawn for file in one.files], wanted.is_over)
    lines: list[Line] = []
    for one in drawn:
        lines += [plain(piece, "head") for piece in wrapped(clean(one.head), columns)]
        for form in dict.fromkeys(name.rpartition(".")[2] for name, _ in one.files):
            names = _gathered([name for name, _ in one.files if name.endswith(f".{form}")], form)
            lines += hanging(plain(f"  {form}  "), f"in {clean(str(folder))}: {', '.join(names)}", columns)
        lines += [plain(piece) for piece in wrapped(clean(one.lacks), columns)] if one.lacks else []
    return lines


class _Drawn(NamedTuple):
    """Files with their names, what they are in words, and what is not in them."""

    head: str
    files: list[tuple[str, bytes]]
    lacks: str = ""


def _sheet_files(answer: Answered, wanted: Wanted, formats: Sequence[str]) -> _Drawn:
    sheets, title = all_sheets(answer, wanted.sheets)
    slow = slow_titles(answer.reading.rig, slot_of(answer, answer.use))
    chosen = _chosen(sheets, wanted.sheets, slow)
    paper = PAPERS[_paper(answer, wanted.paper)]
    pages = pages_of(chosen, paper, title)
    name = chosen[0].name if len(chosen) == 1 else f"{_plain_name(title.rig)}-sheets"
    files = [one for form in formats for one in _written_as(form, pages, name, title)]
    count = f"{len(chosen)} {'sheet' if len(chosen) == 1 else 'sheets'}, {len(pages)} "
    head = f"{title.rig}, {title.subject}: {count}{'page' if len(pages) == 1 else 'pages'} on {paper.name} paper"
    return _Drawn(head, files)


def _solid_files(answer: Answered, wanted: Wanted) -> _Drawn:
    from boxwright.cli.solid_files import solid_file
    from boxwright.render.extra import MissingExtra

    name = answer.reading.rig.header.name or "this rig"
    when = "today as ticked" if answer.study.is_ticked else "as planned"
    try:
        made = solid_file(answer, wanted.section)
    except MissingExtra as missing:
        raise NothingAsked(_says_missing(SOLID, missing)) from None
    where = f", section {wanted.section}" if wanted.section else ""
    stage = f", stage {answer.study.stage}" if answer.study.stage else ""
    head = f"{name}, {when}{stage}{where}: {made.solids} solids"
    names = ", ".join(made.missing)
    lacks = f"  not in it, for nobody wrote where they are or how large: {names}" if names else ""
    return _Drawn(head, [(f"{_plain_name(name)}.{SOLID}", made.content)], lacks)


def _says_missing(form: str, missing: MissingExtra) -> str:
    return f"{form} needs {missing.package}, which is not installed; {HOW_TO_ADD}"


def _gathered(names: list[str], form: str) -> list[str]:
    """Return the names of files, those of one sheet together: ``order.svg to order-3.svg``."""
    runs: dict[str, list[str]] = {}
    for name in names:
        stem = name.removesuffix(f".{form}")
        owner = next((one for one in runs if re.fullmatch(rf"{re.escape(one)}-\d+", stem)), stem)
        runs.setdefault(owner, []).append(name)
    return [run[0] if len(run) == 1 else f"{run[0]} to {run[-1]}" for run in runs.values()]


def all_sheets(answer: Answered, asked: Sequence[str] = ()) -> tuple[tuple[Sheet, ...], TitleBlock]:
    """Return every sheet of a rig as it was asked for, and what stands at the foot of their pages.

    Where some are ``asked`` for by name, those that take a second are drawn only if they are among them.
    """
    rig, shown = answer.reading.rig, checked(answer)
    when = "today as ticked" if answer.study.is_ticked else "as planned"
    words = f"{when}, stage {answer.study.stage}" if answer.study.stage else when
    slot = slot_of(answer, answer.use)
    lines = lines_of(rig, answer.reading.document)
    night = slot_of(answer, "sleep")
    sheets = sheets_of(rig, slot, shown.findings, lines, words, answer.units, night)
    names = _words(asked)
    slow = [name for name in SLOW if name in names or (not names and name not in ONLY_BY_NAME)]
    sheets += slow_sheets(Printing(rig, slot, shown.findings, lines, words, answer.units, night), slow)
    return sheets, title_of(rig, words, shown.date, answer.units)


def _formats(asked: Sequence[str]) -> tuple[str, ...]:
    words = [word.strip().lower() for one in asked for word in one.split(",") if word.strip()] or ["svg"]
    for word in words:
        must_be_one_of(word, list(FORMATS), "format")
    return tuple(dict.fromkeys(words))


def _words(asked: Sequence[str]) -> list[str]:
    return [word.strip() for one in asked for word in one.split(",") if word.strip()]


def _chosen(sheets: tuple[Sheet, ...], asked: Sequence[str], slow: Iterable[str]) -> tuple[Sheet, ...]:
    """Return the sheets asked for by name, else all; ``slow`` are names of more that are drawn only when asked for."""
    names, words = [sheet.name for sheet in sheets], _words(asked)
    for word in words:
        if word not in names and word in NOT_ALWAYS:
            raise NothingAsked(f'there is no sheet "{word}" here: {NOT_ALWAYS[word]}')
        must_be_one_of(word, list(dict.fromkeys([*names, *(name for name in slow if name != word)])), "sheet")
    return tuple(sheet for sheet in sheets if not words or sheet.name in words)


def _paper(answer: Answered, asked: str) -> PaperName:
    """Return the paper asked for, else the one that is sold at home."""
    if asked:
        word = must_be_one_of(asked.strip().lower(), list(PAPERS), "paper")
        return next(name for name in PAPERS if name == word)
    home = next(iter(answer.reading.rig.header.countries), "US").partition("-")[0]
    return "letter" if home in LETTER_COUNTRIES else "a4"


def _plain_name(text: str) -> str:
    """Return a name as a file may be called on any machine."""
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-") or "rig"


def _written_as(form: str, pages: tuple[Page, ...], name: str, title: TitleBlock) -> list[tuple[str, bytes]]:
    """Return names and contents: one file for each page, and one PDF for all of them."""
    from boxwright.render.extra import MissingExtra

    try:
        if form == "pdf":
            from boxwright.render.pdf import pdf_of

            return [(f"{name}.pdf", pdf_of(pages, f"{title.rig}, {title.subject}"))]
        writer = _writer(form)
        return [(f"{_file_name(page.name)}.{form}", writer(page)) for page in pages]
    except MissingExtra as missing:
        raise NothingAsked(_says_missing(form, missing)) from None


def _file_name(name: str) -> str:
    """Return the name of a sheet as a file name: nothing of a rig file leads out of the folder."""
    return re.sub(r"[^A-Za-z0-9._-]+", "-", name).lstrip(".") or "sheet"


def _writer(form: str) -> Callable[[Page], bytes]:
    if form == "dxf":
        from boxwright.render.dxf import dxf_of

        return dxf_of
    if form == "png":
        from boxwright.render.png import png_of

        return lambda page: png_of(page, PER_INCH)
    from boxwright.render.svg import svg_of

    return lambda page: svg_of(page).encode("utf-8")


def _put(folder: Path, files: list[tuple[str, bytes]], is_over: bool) -> None:
    """Write files into a folder, all of them, unless one would go over a file that this command did not write."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
        listed = _listed(folder)
        foreign = [name for name, _ in files if not is_over and not _is_ours(folder / name, listed)]
        if foreign:
            more = f" and {len(foreign) - 1} more" if len(foreign) > 1 else ""
            first = clean(str(folder / foreign[0]))
            says = f'"{first}"{more} is there and was not written by this command, or was changed since; '
            raise NothingAsked(f"{says}nothing was written: name another folder, or add --over")
        for name, content in files:
            _replace(folder / name, content)
            listed[name] = hashlib.sha256(content).hexdigest()
        text = "".join(f"{digest}  {name}\n" for name, digest in sorted(listed.items()))
        _replace(folder / LIST, text.encode("utf-8"))
    except OSError as reason:
        words = (reason.strerror or str(reason)).lower()
        raise NothingAsked(f'"{clean(str(folder))}" could not be written to: {clean(words)}') from None


def _listed(folder: Path) -> dict[str, str]:
    """Return what this command has written into a folder so far, by name."""
    try:
        text = (folder / LIST).read_text(encoding="utf-8", errors="replace")
    except FileNotFoundError:
        return {}
    pairs: Iterable[tuple[str, str, str]] = (line.partition("  ") for line in text.splitlines())
    return {name: digest for digest, _, name in pairs if name}


def _is_ours(path: Path, listed: dict[str, str]) -> bool:
    """Return whether a name is free, or holds exactly what this command wrote there."""
    if not path.exists() and not path.is_symlink():
        return True
    return path.is_file() and listed.get(path.name) == hashlib.sha256(path.read_bytes()).hexdigest()


def _replace(path: Path, content: bytes) -> None:
    """Put a whole file in place at once; a crash leaves the old one or the new one, never half of one."""
    beside = path.with_name(f"{path.name}.part")
    try:
        beside.write_bytes(content)
        os.replace(beside, path)
    except OSError:
        with suppress(OSError):
            beside.unlink()
        raise
