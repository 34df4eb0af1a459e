"""Puts the pieces of a text together into a document: names, sections written twice, lists in place of named things."""

from __future__ import annotations

from dataclasses import replace

from boxwright.rig.document import Document, Extent, Piece, Tree, Trouble
from boxwright.rig.walk import second_name, shortened, twice_named


class Assembly:
    """What has been read so far of one text; offsets are those of the text."""

    def __init__(self) -> None:
        self.tree: dict[str, Tree] = {}
        self.named: dict[str, dict[str, Tree]] = {}
        self.pieces: list[Piece] = []
        self.starts: list[int] = []
        self.sections: dict[str, Extent] = {}
        self.numbers: dict[tuple[str, str], int] = {}
        self.troubles: list[Trouble] = []
        self.next_numbers: dict[str, dict[str, int]] = {}
        self.pieces_read = 0
        self.is_damaged = False

    def trouble(self, at: int, path: str, says: str, troubled: bool = True) -> None:
        """Keep a problem that belongs to no single piece."""
        self.troubles.append(Trouble(at, path, says, troubled))

    def open_section(self, name: str, extent: Extent) -> None:
        """Begin a map of named things, or go on with one that is written a second time."""
        if name in self.named:
            says = f'"{name}:" is written twice; the names under both are read as one list; join them'
            self.trouble(extent.key, name, says)
            return
        self.named[name] = {}
        self.tree[name] = self.named[name]
        self.sections[name] = extent

    def close_section(self, name: str, end: int) -> None:
        """Note where a map of named things ends."""
        self.sections[name] = self.sections[name]._replace(end=end)

    def name_for(self, section: str, written: str) -> str:
        """Return the name that a thing written so gets: its own, or with a number where it is taken."""
        taken = self.named[section]
        if written not in taken:
            return written
        return second_name(written, taken, self.next_numbers.setdefault(section, {}))

    def add(self, piece: Piece, start: int) -> None:
        """Keep a piece; a second top-level key of one name is left out and said."""
        if piece.name != piece.written:
            again = Trouble(0, "", twice_named(piece.written, piece.name))
            piece = replace(piece, troubles=(again, *piece.troubles), alone=False)
        elif not piece.section and piece.name in self.tree:
            first = "the first one counts and this one was left out; delete one of them"
            self.trouble(start, piece.name, f'"{shortened(piece.name)}:" is written twice; {first}')
            return
        self.take(piece, start)

    def take(self, piece: Piece, start: int) -> None:
        """Keep a piece whose name is free."""
        (self.named[piece.section] if piece.section else self.tree)[piece.name] = piece.tree
        self.numbers[piece.section, piece.name] = len(self.pieces)
        self.pieces.append(piece)
        self.starts.append(start)

    def finished(self, text: str, known_keys: frozenset[str]) -> Document:
        """Return the document."""
        if any(later < earlier for earlier, later in zip(self.starts, self.starts[1:], strict=False)):
            self._put_in_order()
        return Document(
            text=text,
            tree=self.tree,
            pieces=tuple(self.pieces),
            starts=tuple(self.starts),
            sections=self.sections,
            numbers=self.numbers,
            troubles=tuple(self.troubles),
            shaky=frozenset(number for number, piece in enumerate(self.pieces) if piece.troubles),
            known_keys=known_keys,
            pieces_read=self.pieces_read,
            is_damaged=self.is_damaged,
        )

    def _put_in_order(self) -> None:
        order = sorted(range(len(self.pieces)), key=lambda number: self.starts[number])
        self.pieces = [self.pieces[number] for number in order]
        self.starts = [self.starts[number] for number in order]
        self.numbers = {(piece.section, piece.name): number for number, piece in enumerate(self.pieces)}
