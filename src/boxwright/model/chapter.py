"""The name a discipline goes by in the book, on the command line and in a verdict."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Chapter:
    """One discipline's chapter. ``judges`` is False while its rules are not built: a verdict then says so."""

    word: str
    title: str
    judges: bool
