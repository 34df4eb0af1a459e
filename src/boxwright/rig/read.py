"""Reads rig text: total, with a place for every problem, and after an edit only what the edit touched (DESIGN 5)."""

from __future__ import annotations

import re
from dataclasses import replace

from boxwright.rig.assembly import Assembly
from boxwright.rig.damaged import read_damaged
from boxwright.rig.decode import UNREADABLE, Readable, decoded, readable
from boxwright.rig.document import NAMED, Document, Extent, Piece, Spot, Tree, piece_around
from boxwright.rig.events import Broken
from boxwright.rig.whole import read_piece, read_whole

__all__ = ["KNOWN_KEYS", "NAMED", "Document", "Spot", "Tree", "edited", "edited_alone", "read_document"]

LARGEST = 5_000_000
NOT_ALONE = re.compile(f"\t|{UNREADABLE.pattern}")
"""What a replacement must not hold if one piece is to be read again alone."""

KNOWN_KEYS = frozenset(
    "x side z wall size at weight each count stage until done now inside rides_on folds folded_depth when_sleeping kind"
    " contents how as_built note zone have cost paid from arrives across width height length unit depth sealant cut by"
    " to over route gauge fuse breaker bundle ends joins volts draw hours duty battery panel charger inverter rcd legs"
    " screws tie wll backs hinge tank heater swing slides keep_clear sees out mattress carcass sheets bars free_area"
    " fan expires alarm release egress needs weather what steps stages date with tongue axles values studs part wood"
    " of thick between cargo tanks for parked people rating payload gcwr kerb people_and_gear ball_height fuses sleeps"
    " waits bore drain unbraked nose_max total nose tube every first face".split()
)
"""The keys at which a broken one-line item is cut when the caller names none; the composed set takes their place."""


def read_document(data: bytes | str, known_keys: frozenset[str] = KNOWN_KEYS) -> Document:
    """Read a rig text. Never fails: what cannot be read is in ``problems``, each with its line and column."""
    text, troubles = decoded(data) if isinstance(data, bytes) else (data, ())
    assembly = Assembly()
    if len(data) > LARGEST:
        assembly.trouble(0, "", f"this file is {len(data) / 1e6:.1f} MB; Boxwright reads up to 5 MB; split it")
        return assembly.finished(text, known_keys)
    fit = readable(text)
    offset = 1 if fit.text.startswith("\ufeff") else 0
    try:
        read_whole(fit.text[offset:], offset, assembly, known_keys)
    except Broken as broken:
        tried, assembly = assembly.pieces_read, Assembly()
        assembly.pieces_read, assembly.is_damaged = tried, True
        read_damaged(fit.text, offset, broken, assembly, known_keys)
    if fit.at:
        _as_written(assembly, fit)
    assembly.troubles += [*troubles, *fit.troubles]
    return assembly.finished(text, known_keys)


def edited(document: Document, start: int, end: int, replacement: str) -> Document:
    """Return the document with a stretch of text replaced: the same as reading the new text whole, but sooner.

    If the change lies inside one piece, and the new piece alone is still that single key, only it is read again.
    Trees of pieces that did not change stay the same objects either way.
    """
    alone = edited_alone(document, start, end, replacement)
    if alone is not None:
        return alone
    return _whole_edited(document, document.text[:start] + replacement + document.text[end:])


def _whole_edited(document: Document, text: str) -> Document:
    new = read_document(text, document.known_keys)
    pieces, tree = list(new.pieces), dict(new.tree)
    for number, piece in enumerate(pieces):
        before = document.numbers.get((piece.section, piece.name))
        if before is None or document.pieces[before].tree != piece.tree:
            continue
        kept = document.pieces[before].tree
        pieces[number] = replace(piece, tree=kept)
        if piece.section:
            section = tree[piece.section]
            assert isinstance(section, dict)
            section[piece.name] = kept
        else:
            tree[piece.name] = kept
    return replace(new, pieces=tuple(pieces), tree=tree)


def edited_alone(document: Document, start: int, end: int, replacement: str) -> Document | None:
    """Return the document with one piece read again and nothing else, or None where only a whole reading is safe."""
    number = piece_around(document, start, end)
    if number is None or document.is_damaged or document.troubles:
        return None
    old, at = document.pieces[number], document.starts[number]
    grown = len(replacement) - (end - start)
    if not old.alone or len(document.text) + grown > LARGEST or NOT_ALONE.search(replacement):
        return None
    text = document.text[:start] + replacement + document.text[end:]
    line = at - old.column
    try:
        new = read_piece(text[line : at + old.length + grown], old.column, old, document.known_keys)
    except Broken:
        return None
    if new.tree == old.tree:
        new = replace(new, tree=old.tree)
    return _with_piece(document, number, new, text, grown)


def _with_piece(document: Document, number: int, piece: Piece, text: str, grown: int) -> Document:
    pieces, at = list(document.pieces), document.starts[number]
    pieces[number] = piece
    starts = document.starts
    if grown:
        starts = starts[: number + 1] + tuple([start + grown for start in starts[number + 1 :]])
    tree = dict(document.tree)
    if piece.section:
        section = tree[piece.section]
        assert isinstance(section, dict)
        tree[piece.section] = {**section, piece.name: piece.tree}
    else:
        tree[piece.name] = piece.tree
    shaky = document.shaky - {number}
    sections = {
        name: Extent(*(offset if offset <= at else offset + grown for offset in extent))
        for name, extent in document.sections.items()
    }
    if piece.section and (number + 1 == len(pieces) or pieces[number + 1].section != piece.section):
        sections[piece.section] = sections[piece.section]._replace(end=at + piece.extents[""].end)
    return Document(
        text=text,
        tree=tree,
        pieces=tuple(pieces),
        starts=starts,
        sections=sections,
        numbers=document.numbers,
        troubles=(),
        shaky=shaky | {number} if piece.troubles else shaky,
        known_keys=document.known_keys,
        pieces_read=1,
        is_damaged=False,
    )


def _as_written(assembly: Assembly, fit: Readable) -> None:
    """Turn the offsets of the text fit for the parser into those of the text as written."""
    for number, (piece, start) in enumerate(zip(assembly.pieces, assembly.starts, strict=True)):
        at = fit.written(start)
        assembly.starts[number] = at
        assembly.pieces[number] = replace(
            piece,
            extents={
                path: Extent(*(fit.written(start + offset) - at for offset in extent))
                for path, extent in piece.extents.items()
            },
            troubles=tuple(replace(trouble, at=fit.written(start + trouble.at) - at) for trouble in piece.troubles),
            length=fit.written(start + piece.length) - at,
            alone=False,
        )
    assembly.sections = {
        name: Extent(*(fit.written(offset) for offset in extent)) for name, extent in assembly.sections.items()
    }
    assembly.troubles = [replace(trouble, at=fit.written(trouble.at)) for trouble in assembly.troubles]
