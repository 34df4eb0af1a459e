"""The screens: what each shows of one revision, drawn and put in words by the disciplines themselves.

A discipline has its screen because it has a folder: what its sheets, grids and findings give is shown in their order,
so that a new one appears without a line here.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from importlib import import_module
from importlib.resources import files
from itertools import takewhile
from pkgutil import iter_modules
from typing import NamedTuple

import boxwright.disciplines
from boxwright.book.charts import charts_of
from boxwright.book.plan import ASIDE, LAYERS, Layered, plan, with_things
from boxwright.drawing import Grid, Sheet, View
from boxwright.model.chapter import Chapter
from boxwright.render.screen import Drawn, Dress, drawn
from boxwright.study.slots import Slot as WorkedSlot
from boxwright.study.slots import study
from boxwright.web import contract, solid, terms
from boxwright.web.charts import told
from boxwright.web.figures import asked_slot, night_slot, slot_findings
from boxwright.web.later import Later
from boxwright.web.on_file import records, stages, tables_of
from boxwright.web.printed import chapter_sheets, contents
from boxwright.web.session import Seen, Session
from boxwright.web.snapping import snaps_of
from boxwright.web.words import labels_of, words_in

DRAW = {
    "plan": ("Plan", "Everything where it stands, from above. Drag it, or use the arrow keys."),
    "elevations": ("Elevations", "The walls from outside and inside, with studs and openings."),
    "sections": ("Sections", "What is behind what in each wall, from the skin inwards."),
    "solid": ("Solid", "The trailer in three dimensions: turn it, cut it, take its stages apart."),
}
ON_FILE = {
    "stages": ("Stages", "The order of work, and what stands after each stage."),
    "records": ("Records", "What was measured and weighed, beside the plan."),
    "file": ("Rig file", "The text itself: the only thing that is kept."),
    "book": ("Book", "The sheets as they are printed."),
}
EMPTY = {
    "plan": ("Nothing can be drawn before the box has its length, width and height. The rest can wait.", ""),
    "elevations": ("No wall is known yet. The walls appear with the box's length, width and height.", ""),
    "sections": ("Nothing is known of the walls yet. Write their layers under walls in the Rig file.", "file"),
    "solid": ("Nothing to build yet; the frame appears with the box's length, width and height.", "file"),
    "stages": ("One stage. Split it when you first stop to use the trailer.", "file"),
    "records": ("Nothing measured: what is drawn is as planned. What a tape or a scale reads counts from then on.", ""),
    "book": ("Nothing to print yet: the sheets appear with the box.", "file"),
}
SILENT = "Nothing to say at this stage and in this load state: what was asked here holds, or nothing was asked."
"""What the screen of a chapter says that judges, where it has neither a drawing nor a finding."""
NOT_BEGUN = "Nothing can be said here before the box has its length, width and height; the Plan asks for them."
ELEVATIONS = (
    "left-outside",
    "right-outside",
    "rear-outside",
    "front-outside",
    "left-inside",
    "right-inside",
    "rear-inside",
    "front-inside",
    "roof",
    "floor",
)
DRAWN_FROM = {"elevations": ELEVATIONS, "sections": ("sections",)}
"""Which sheets of the frame the screens of the first group show."""
DRAWN = frozenset({"plan", *(name for names in DRAWN_FROM.values() for name in names)}) - {"roof", "floor"}
"""Sheets with a screen of their own: the screen of their chapter shows their tables, and not the views again."""
THROUGH = frozenset({"weight", "stages", "book"})
"""Screens that show something of every stage, worked out one stage at a time while nobody waits."""
MOST_SHOWN = 30
"""Screens whose drawings are remembered; one that is looked at again after so many others is fetched anew."""
OWN_PAGE = re.compile(r"\s*`boxwright [^`]*` is its page\.")
"""What a chapter's text says of the command line: whoever looks at its screen has its page before the eyes."""
PATCHED = 0.3
"""Above this share of changed groups a picture is drawn anew as a whole."""


class Shown(NamedTuple):
    """A picture as a tab last had it: which revision, its groups."""

    rev: int
    drawn: Mapping[str, Drawn]


class Asked(NamedTuple):
    """What a screen is made from: the text of one revision worked out, and the stages of it that were done by then."""

    name: str
    slot: contract.Slot
    seen: Seen
    rev: int
    planned: tuple[WorkedSlot, ...]
    later: tuple[Sheet, ...] = ()


class Made(NamedTuple):
    """A screen, and its drawings as they are sent."""

    screen: contract.Screen
    shown: Shown


@cache
def chapters() -> tuple[Chapter, ...]:
    """Return every discipline's chapter, by its folder."""
    names = sorted(one.name for one in iter_modules(boxwright.disciplines.__path__))
    found = [import_module(f"boxwright.disciplines.{name}").CHAPTER for name in names]
    return tuple(sorted(found, key=lambda one: (not one.judges, one.word)))


@cache
def what_it_answers(word: str) -> str:
    """Return the paragraph of a chapter's own text that says what it answers."""
    text = (files(f"boxwright.disciplines.{word}") / "README.md").read_text(encoding="utf-8")
    text = OWN_PAGE.sub("", text)
    blocks = [" ".join(block.replace("`", "").split()) for block in text.split("\n\n") if not block.startswith("#")]
    says = next(iter(blocks), "").replace("**", "").removeprefix("What it answers. ")
    return says[:1].upper() + says[1:]


class Screens:
    """Draws screens, and remembers what was last drawn so that only what changed is sent."""

    def __init__(self) -> None:
        self._shown: dict[tuple[str, contract.Slot], Shown] = {}
        self._stages: dict[tuple[int, str], list[WorkedSlot]] = {}
        self._next: dict[tuple[int, str], int] = {}
        self._later = Later()

    def names(self) -> list[contract.ScreenName]:
        """Return every screen in the order of the rail."""
        found = [
            contract.ScreenName(name=name, label=label, group="draw", explains=says)
            for name, (label, says) in DRAW.items()
        ]
        for one in chapters():
            if one.word in ON_FILE:
                continue
            says = one.title if one.judges else f"{one.title}. Not judged yet."
            found.append(
                contract.ScreenName(name=one.word, label=one.word.capitalize(), group="work-out", explains=says)
            )
        return found + [
            contract.ScreenName(name=name, label=label, group="on-file", explains=says)
            for name, (label, says) in ON_FILE.items()
        ]

    def asked(self, session: Session, name: str, slot: contract.Slot) -> Asked:
        """Return all that a screen is made from: nothing of it changes any more, whatever is done to the rig."""
        planned = tuple(self._stages.get((session.rev, slot.vehicle), ()))
        later = self._later.sheets((name, session.rev, slot))
        return Asked(name, slot, session.seen(slot), session.rev, planned, later)

    def screen(self, session: Session, name: str, slot: contract.Slot) -> contract.Screen | None:
        """Return a whole screen, or None where there is none of that name."""
        asked = self.asked(session, name, slot)
        made = made_of(asked)
        if made is None:
            return None
        self.sent(asked, made.shown)
        return made.screen

    def patches(self, session: Session, name: str, slot: contract.Slot) -> list[contract.Patch]:
        """Return what of a tab's pictures changed since they were last sent; the whole screen where much did."""
        asked = self.asked(session, name, slot)
        before = self.before(asked)
        if before is None:
            return [] if self.is_drawn(asked) else whole_of(asked)
        found, shown = changed_in(asked, before)
        self.sent(asked, shown)
        return found

    def before(self, asked: Asked) -> Shown | None:
        """Return the drawings a tab has of an earlier text, None where there are none to compare with."""
        before = self._shown.get((asked.name, asked.slot))
        return before if before is not None and asked.name in DRAW and before.rev != asked.rev else None

    def is_drawn(self, asked: Asked) -> bool:
        """Return whether the tab has the screen as it is now."""
        before = self._shown.get((asked.name, asked.slot))
        return before is not None and before.rev == asked.rev

    def sent(self, asked: Asked, shown: Shown) -> None:
        """Remember what a tab now has; never what is older than what it had."""
        key = (asked.name, asked.slot)
        before = self._shown.pop(key, None)
        self._shown[key] = shown if before is None or before.rev <= shown.rev else before
        if len(self._shown) > MOST_SHOWN:
            del self._shown[next(iter(self._shown))]

    # ------------------------------------------------------------------ charts over the stages

    def one_piece(self, session: Session, name: str, slot: contract.Slot) -> bool:
        """Work out one more stage for the charts of a screen; True once the last one is done."""
        if name not in THROUGH:
            return self._later.piece((name, session.rev, slot), session.seen(slot))
        key = (session.rev, slot.vehicle)
        rig = session.reading.rig
        count = max(len(rig.stages_in_order), 1)
        if key not in self._stages:  # what was worked out for the text as it stands now is kept for every vehicle
            self._stages = {one: slots for one, slots in self._stages.items() if one[0] == session.rev}
            self._next = {one: number for one, number in self._next.items() if one[0] == session.rev}
            self._stages[key], self._next[key] = [], 0
        number = self._next[key]
        if number >= count:
            return False
        self._next[key] = number + 1
        vehicle = slot.vehicle if any(one == slot.vehicle for one, _ in rig.tow) else ""
        found = study(rig, session.today, stage=number, use="tow", once=session.once, vehicle=vehicle, ticked=False)
        self._stages[key] += [one for one in found.slots if one.number == number and not one.is_for_ticket]
        return number + 1 == count


# ---------------------------------------------------------------------- a screen, of one text


def made_of(asked: Asked) -> Made | None:
    """Return a whole screen, or None where there is none of that name. Any thread may make one."""
    name, seen = asked.name, asked.seen
    label, says = {**DRAW, **ON_FILE}.get(name, ("", ""))
    chapter = next((one for one in chapters() if one.word == name), None)
    if chapter is not None and not label:
        label = chapter.title
        says = what_it_answers(name) if chapter.judges else terms.TODAY.get(name, terms.READ_ONLY)
    if not label:
        return None
    pictures, shown = _pictures(asked)
    tables = _tables(name, seen, asked)
    charts = _charts(asked)
    printed = contents(seen, asked.planned) if name == "book" else []
    findings = [one.code for one in slot_findings(seen) if one.code.startswith(f"{name}/")]
    is_bare = not (pictures or tables or charts or printed or findings) and name != "file"
    is_bare = is_bare and not (name == "solid" and solid.is_there(seen))
    empty, act = EMPTY.get(name, (SILENT, "") if chapter is not None else ("", "")) if is_bare else ("", "")
    if empty == SILENT and not solid.is_there(seen):
        empty, act = NOT_BEGUN, "plan"
    if chapter is not None and not chapter.judges and name not in ON_FILE:
        empty = terms.BY_HAND[name]
    screen = contract.Screen(
        name=name,
        title=label,
        explains=says,
        rev=asked.rev,
        empty=empty,
        act=act,
        pictures=pictures,
        charts=charts,
        tables=tables,
        notes=_notes(name, asked),
        pages=printed,
        findings=list(dict.fromkeys(findings)),
        words=words_in(labels_of(pictures, tables, charts, printed)),
    )
    return Made(screen, shown)


def _pictures(asked: Asked) -> tuple[list[contract.Picture], Shown]:
    name, seen = asked.name, asked.seen
    found, groups = [], {}
    for key, layered in _views(name, seen).items():
        one = groups[key] = _drawn(name, key, seen, layered)
        right, up = _axes(key)
        movable = _movable(name, key, layered.view)
        found.append(
            contract.Picture(
                name=key,
                title=layered.view.name,
                svg=one.svg,
                view=one.box,
                right=right,
                up=up,
                movable=[of for of in one.groups if of in movable],
                snaps=snaps_of(key, seen, layered.view, right, up),
                layers=(layers := _layers(layered)),
                off=[layer.name for layer in layers if layer.name in ASIDE],
            )
        )
    return found, Shown(asked.rev, groups)


def whole_of(asked: Asked) -> list[contract.Patch]:
    """Return that a screen is to be fetched anew."""
    return [contract.Patch(t="patch", rev=asked.rev, screen=asked.name, sheet="", whole=True)]


def changed_in(asked: Asked, before: Shown) -> tuple[list[contract.Patch], Shown]:
    """Return what changed in the drawings of a screen, and how they are now. Any thread may look."""
    views = _views(asked.name, asked.seen)
    now = {key: _drawn(asked.name, key, asked.seen, layered) for key, layered in views.items()}
    shown = Shown(asked.rev, now)
    found = []
    for key, one in now.items():
        old = before.drawn.get(key)
        if old is None or old.box != one.box:
            return whole_of(asked), shown
        changed = {of: svg for of, svg in one.groups.items() if old.groups.get(of) != svg}
        gone = [of for of in old.groups if of not in one.groups]
        is_new = any(of not in old.groups for of in changed)
        if is_new or len(changed) > PATCHED * len(one.groups):
            return whole_of(asked), shown
        if changed or gone:
            snaps = [one for one in snaps_of(key, asked.seen, views[key].view, *_axes(key)) if one.of in changed]
            patch = contract.Patch(
                t="patch", rev=asked.rev, screen=asked.name, sheet=key, groups=changed, gone=gone, snaps=snaps
            )
            found.append(patch)
    return found, shown


def _charts(asked: Asked) -> list[contract.Chart]:
    slot = asked_slot(asked.seen)
    if slot is None:
        return []
    if asked.name != "weight":
        views = [view for sheet in _on_screen(asked, slot) for view in sheet.views]
        return [told(view.chart) for view in views if view.chart is not None]
    rig = asked.seen.reading.rig
    return [told(one) for one in charts_of(rig, slot, asked.planned, rig.header.units)]


# ---------------------------------------------------------------------- what a screen is drawn from


def _views(name: str, seen: Seen) -> dict[str, Layered]:
    """Return the views of a screen by name."""
    slot = asked_slot(seen)
    if slot is None or slot.box is None or slot.frame is None:
        return {}
    rig = seen.reading.rig
    views: dict[str, Layered] = {}
    if name in {"plan", "layout"}:
        found = plan(rig, slot, rig.header.units)
        views = {"plan": found} if found is not None else {}
    wanted = DRAWN_FROM.get(name)
    for sheet in chapter_sheets(rig, slot, "frame" if wanted else name, night_slot(seen)):
        is_shown = sheet.name in wanted if wanted else not sheet.is_for_hand and sheet.name not in DRAWN
        for number, view in enumerate(sheet.views if is_shown else (), start=1):
            if view.chart is not None:
                continue  # the page draws it itself, with its numbers to be pointed at
            key = sheet.name if len(sheet.views) == 1 else f"{sheet.name}-{number}"
            wall, _, side = sheet.name.rpartition("-")
            is_wall = side in {"inside", "outside"}
            views[key] = with_things(rig, slot, view, wall, side == "inside") if is_wall else Layered(view, {})
    return views


def _drawn(name: str, key: str, seen: Seen, layered: Layered) -> Drawn:
    fitted = seen.reading.rig.layout.fitted
    carried_by = {one.of: one.inside or one.rides_on for one in fitted if one.inside or one.rides_on}
    movable = _movable(name, key, layered.view)
    dress = Dress(_names(seen), movable, layered.layers, _kinds(seen, name), ASIDE, carried_by)
    return drawn(layered.view, dress)


FACETS = (("water", "wet"), ("heat", "hot"), ("power", "wire"))
"""What a thing is coloured by: the discipline that reads something of it, and the word of the page's style."""


def _kinds(seen: Seen, name: str) -> dict[str, str]:
    """Return what kind of thing each part is, for its colour."""
    found = {}
    for item in seen.reading.rig.parts:
        folders = {folder for folder, _ in item.facets}
        kind = (
            "cargo" if item.words.kind == "cargo" else next((word for folder, word in FACETS if folder in folders), "")
        )
        found[item.of] = f"{kind} against".strip() if name == "elevations" else kind
    return found


def _names(seen: Seen) -> dict[str, str]:
    rig = seen.reading.rig
    return {item.of: item.name for section in (rig.parts, rig.openings, rig.wires, rig.pipes) for item in section}


def _movable(name: str, key: str, view: View) -> frozenset[str]:
    """Return what may be dragged: parts and openings, where they are drawn in their place."""
    if key != "plan" and name != "elevations":
        return frozenset()
    return frozenset(
        mark.of for mark in view.marks if mark.of.startswith(("parts[", "openings[")) and mark.of[-1] == "]"
    )


def _axes(key: str) -> tuple[contract.Along, contract.Upward]:
    """Return which of the rig's axes run to the right and up in a view."""
    side, _, where = key.partition("-")
    if side in {"plan", "roof", "floor"}:
        return "+x", "+y"
    if side == "left":
        return ("+x" if where == "outside" else "-x"), "+z"
    if side == "right":
        return ("-x" if where == "outside" else "+x"), "+z"
    if side == "rear":
        return ("+y" if where == "outside" else "-y"), "+z"
    if side == "front":
        return ("-y" if where == "outside" else "+y"), "+z"
    return "+x", "+z"


def _layers(layered: Layered) -> list[contract.Choice]:
    """Return the layers there is something in, in the order of all layers."""
    drawn_on = {layered.layers.get(mark.of, "") for mark in layered.view.marks}
    return [contract.Choice(name=layer, label=label) for layer, label in LAYERS.items() if layer in drawn_on]


# ---------------------------------------------------------------------- tables and pages


def _tables(name: str, seen: Seen, asked: Asked) -> list[contract.Table]:
    own = stages(seen, asked.planned) if name == "stages" else records(seen) if name == "records" else []
    return own + [table for sheet in _on_screen(asked, asked_slot(seen)) for table in _tables_of_sheet(sheet)]


def _on_screen(asked: Asked, slot: WorkedSlot | None) -> tuple[Sheet, ...]:
    """Return the sheets of a chapter that its screen shows, what takes longer last."""
    if slot is None:
        return ()
    every = chapter_sheets(asked.seen.reading.rig, slot, asked.name, night_slot(asked.seen))
    own = tuple(one for one in every if not one.is_for_hand)
    return (*own, *asked.later) if own else ()


def _tables_of_sheet(sheet: Sheet) -> list[contract.Table]:
    """Return the tables of a sheet, each called by its own title, and by that of its sheet where they are several."""
    return tables_of(
        replace(grid, title=f"{sheet.title}: {grid.title}" if _is_part(grid, sheet) else grid.title or sheet.title)
        for grid in sheet.grids
    )


def _is_part(grid: Grid, sheet: Sheet) -> bool:
    """Return whether a table says too little without the title of its sheet."""
    return bool(grid.title) and (any(one.chart is None for one in sheet.views) or not grid.title[0].isupper())


def _number_of_fault(note: str) -> int:
    """Return the number a fault has on the sheets, so that it is found in a list."""
    return int("".join(takewhile(str.isdigit, note.removeprefix("Fault "))) or 0)


def _notes(name: str, asked: Asked) -> list[str]:
    """Return what is written under the sheets of a chapter, each sentence once."""
    slot, wanted = asked_slot(asked.seen), DRAWN_FROM.get(name, ())
    if wanted and slot is not None:
        every = chapter_sheets(asked.seen.reading.rig, slot, "frame", night_slot(asked.seen))
        # what else is said on those papers speaks of one paper each; numbers of faults are the same on all
        faults = [note for one in every if one.name in wanted for note in one.notes if note.startswith("Fault ")]
        return sorted(dict.fromkeys(faults), key=_number_of_fault)
    notes = [note for sheet in _on_screen(asked, slot) for note in sheet.notes]
    is_unjudged = name in ON_FILE and any(one.word == name and not one.judges for one in chapters())
    return list(dict.fromkeys([*notes, terms.BY_HAND[name]] if is_unjudged else notes))
