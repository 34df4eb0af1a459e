"""Docstrings as pages: the sentence, the paragraphs, and the labels (``Asks:``, ``Formula:`` ...) with their texts."""

from __future__ import annotations

import inspect
import re

from boxwright.records import dataclass

LABEL = re.compile(r"^([A-Z][a-z]+): (.*)$")


@dataclass(frozen=True, slots=True)
class Labelled:
    """A docstring taken apart: what stands before the labels as paragraphs, and each label with its text."""

    paragraphs: tuple[str, ...]
    labels: tuple[tuple[str, str], ...]

    def label(self, name: str) -> str:
        """Return the text of one label, or an empty text."""
        return next((text for label, text in self.labels if label == name), "")


def taken_apart(documented: object) -> Labelled:
    """Return the docstring of a function in its pieces."""
    paragraphs: list[list[str]] = [[]]
    labels: list[tuple[str, list[str]]] = []
    for line in (inspect.getdoc(documented) or "").splitlines():
        found = LABEL.match(line)
        if found:
            labels.append((found[1], [found[2]]))
        elif labels and line.startswith(" "):
            labels[-1][1].append(line.strip())
        elif line.strip():
            paragraphs[-1].append(line.strip())
        else:
            paragraphs.append([])
    return Labelled(
        tuple(" ".join(lines) for lines in paragraphs if lines),
        tuple((label, " ".join(lines)) for label, lines in labels),
    )
