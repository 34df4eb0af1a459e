"""A table as lines of text: in columns where they fit, else row by row, each cell after the name of its column."""

from __future__ import annotations

from collections.abc import Sequence

from boxwright.cli.screen import Line, aligned, columns_of, hanging, plain


def rows_of(heads: Sequence[str], rows: Sequence[Sequence[str]], columns: int) -> list[Line]:
    """Return a table as lines; one that is too wide is told row by row."""
    has_head = any(heads)
    texts = aligned([tuple(heads), *rows] if has_head else list(rows))
    if all(columns_of(text) + 2 <= columns for text in texts):
        return [plain(f"  {text}", "dim" if has_head and not number else "") for number, text in enumerate(texts)]
    names = [_running(one) for one in heads[1:]]
    lines: list[Line] = []
    for row in rows:
        told = "; ".join(f"{name} {cell}".strip() for name, cell in zip(names, row[1:], strict=True) if cell)
        lines += hanging(plain(f"  {row[0]}: "), told, columns)
    return lines


def _running(head: str) -> str:
    """Return the head of a column as it stands within a line; one that is a sign (U) stays as it is."""
    return head[:1].lower() + head[1:] if head[1:2].islower() else head
