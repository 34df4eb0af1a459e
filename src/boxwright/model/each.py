"""Short ways of writing: a value per piece (``833 each``), one value or unknown in place of a map (``fuse: 15 A``)."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Generic, TypeVar

from pydantic import BeforeValidator, GetCoreSchemaHandler, model_validator
from pydantic_core import CoreSchema, core_schema

from boxwright.model.entry import Entry
from boxwright.records import dataclass
from boxwright.units import Band

Q = TypeVar("Q", bound=Band)


def split_each(text: str) -> tuple[str, bool]:
    """Return a text without its last word ``each``, and whether it had it."""
    bare = text.strip()
    stripped = bare.removesuffix("each").strip()
    return stripped, stripped != bare


class Each(Entry, Generic[Q]):
    """A number of the whole line, or of one piece where the word ``each`` follows it."""

    value: Q
    is_each: bool = False

    @model_validator(mode="before")
    @classmethod
    def _from_text(cls, given: object) -> object:
        if isinstance(given, (Mapping, cls)):
            return given
        text, is_each = split_each(str(given))
        return {"value": text, "is_each": is_each}


@dataclass(frozen=True, slots=True)
class Alone:
    """Lets an entry be written as the value of one of its keys alone: ``fuse: 15 A`` for ``fuse: {amps: 15 A}``.

    Used as ``Annotated[Protection, Alone("amps")]``.
    """

    key: str

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self._as_map, handler(source))

    def _as_map(self, given: object) -> object:
        return {self.key: given} if isinstance(given, (str, list, tuple)) else given


UNKNOWN = frozenset({"unknown", "?"})
"""The words for a value that nobody knows."""


def not_known(key: str) -> BeforeValidator:
    """Return what lets an entry be written as unknown: it is there, and nobody knows how: ``swing: unknown``.

    Used as ``Annotated[Swing, not_known("to")]``: it is read as ``{to: unknown}``.
    """

    def as_map(given: object) -> object:
        return {key: given} if isinstance(given, str) and given.strip().lower() in UNKNOWN else given

    return BeforeValidator(as_map)
