"""The one seam to the YAML parser: its events, named, and where it gives up."""

from __future__ import annotations

from collections.abc import Callable
from typing import Protocol, cast

from yaml import Mark, YAMLError
from yaml import events as made
from yaml.cyaml import CParser  # type: ignore[attr-defined]


class Parsed(Protocol):
    """What an event of the parser offers; which of it an event has depends on its class."""

    start_mark: Mark
    end_mark: Mark
    value: str
    style: str | None
    tag: str | None
    anchor: str | None
    flow_style: bool


SCALAR: type[object] = made.ScalarEvent
ALIAS: type[object] = made.AliasEvent
GROUP: type[object] = made.MappingStartEvent
GROUP_END: type[object] = made.MappingEndEvent
LIST: type[object] = made.SequenceStartEvent
LIST_END: type[object] = made.SequenceEndEvent
DOCUMENT: type[object] = made.DocumentStartEvent
STREAM_END: type[object] = made.StreamEndEvent


class Broken(Exception):
    """The text is not YAML, or is YAML nobody meant; ``at`` is the offset where that showed, ``deep`` why."""

    def __init__(self, at: int, deep: bool = False) -> None:
        super().__init__(at)
        self.at, self.deep = at, deep


def parsed(text: str) -> Callable[[], Parsed]:
    """Return a function that gives the events of a text one after the other."""
    return cast("Callable[[], Parsed]", CParser(text).get_event)


def broken_by(error: YAMLError) -> Broken:
    """Return where the parser gave up."""
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    return Broken(mark.index if mark is not None else 0)


def is_nothing(event: Parsed) -> bool:
    """Return whether an event stands for a value that is not written."""
    return event.__class__ is SCALAR and not event.value and not event.style and not event.tag and not event.anchor
