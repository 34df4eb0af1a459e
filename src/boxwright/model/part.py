"""A part: a thing in a place at a stage, written once."""

from __future__ import annotations

from typing import Annotated, Any, Generic, Literal, TypeVar

from pydantic import BeforeValidator, Field

from boxwright.model.entry import Entry, Names, YesNo, read_day, read_pairs
from boxwright.model.place import Place
from boxwright.model.stage import UNMARKED, DoneMark
from boxwright.records import dataclass
from boxwright.units import Band, KilogramBand, MetreBand, Money


def read_weight(given: Any) -> Any:
    """Return a weight text with its word ``each`` kept apart, as a map of value and is_each."""
    if not isinstance(given, str):
        return given
    text = given.strip()
    is_each = text.endswith("each")
    return {"value": text.removesuffix("each").strip() if is_each else text, "is_each": is_each}


class Weight(Entry):
    """A weight as written: of the whole line, or of one piece where the word ``each`` follows."""

    value: KilogramBand
    is_each: bool = False


def read_arrival(given: Any) -> Any:
    """Return an arrival text after proving that each of its days can be read (``2026-08..2026-09`` is a span)."""
    for day in str(given).split(".."):
        read_day(day)
    return str(given)


def read_sleeping(given: Any) -> Any:
    """Return a place for the night as a map; the word ``out`` says that the thing leaves the trailer then."""
    return {"out": True} if str(given).strip() == "out" else given


class Asleep(Entry):
    """Where a thing stands while somebody sleeps in the trailer."""

    out: bool = False
    x: str = ""
    side: str = ""
    z: str = ""
    wall: str = ""
    size: str = ""


class PartWords(Entry):
    """The keys of an item that belong to no discipline: where, when, how heavy, how sure."""

    x: str = Field("", description="behind the front stud face, to the front edge: 36, rear-40, mid 80, +3")
    side: str = Field("", description="left+6, right-6, centre, studs-left; looking forward")
    z: str = Field("", description="underside above the deck: 27, floor+30, ceiling-2")
    wall: str = Field("", description="the wall it hangs on: left, right, front, rear, roof, floor")
    size: str = Field("", description="length x width x height, such as 9 x 20 x 9 or 9..10 x 20 x 9")
    at: Names = Field((), description="middles of a counted part along the trailer, [36, 60, 84]")
    weight: Annotated[Weight, BeforeValidator(read_weight)] | None = Field(
        None, description="weight of the whole line: 47, 45 +-5, 40..55, about 45, unknown; `3 each` for one piece"
    )
    each: KilogramBand | None = Field(None, description="weight of one piece, in place of weight")
    count: int | None = Field(None, ge=1, le=10_000, description="how many pieces the line stands for")
    stage: str = Field("", description="the stage it goes in at, by name or number; unplanned for never")
    until: str = Field("", description="a stand-in leaves at the end of this stage")
    done: DoneMark = Field(UNMARKED, description="yes, yes 2026-04-18, part, no")
    now: str = Field("", description="what is there today, in words")
    inside: str = Field("", description="the part it is in")
    rides_on: str = Field("", description="the part it stands on")
    folds: str = Field("", description="how it folds for the road: up")
    folded_depth: MetreBand | None = Field(None, description="how far it stands out from the wall when folded")
    when_sleeping: Annotated[Asleep, BeforeValidator(read_sleeping)] | None = Field(
        None, description="its place at night, or out"
    )
    kind: str = Field("", description="cargo, backing, spread, ...; a built-in part needs none")
    contents: KilogramBand | None = Field(None, description="weight of what is usually in it")
    how: str = Field("", description="how the weight is known: weighed, label, guess")
    as_built: Annotated[tuple[tuple[str, str], ...], BeforeValidator(read_pairs)] = Field(
        (), description="keys as they came out, such as {x: 36 1/8}; they win over the plan"
    )
    note: str = ""
    zone: str = Field("", description="where a loose thing rides: front, middle, rear")
    have: YesNo = Field(None, description="is it in the garage already")
    cost: Money | None = None
    paid: Money | None = None
    from_: str = Field("", alias="from", description="where it is bought")
    arrives: Annotated[str, BeforeValidator(read_arrival)] = Field("", description="day, or first..last day")
    accepted: str = Field("", description="note and date with which the owner accepts what is said of it")


MODEL_KEYS = frozenset("from" if name == "from_" else name for name in PartWords.model_fields)
"""The keys of an item that the model owns."""


@dataclass(frozen=True, slots=True)
class Frame:
    """One standing part as every discipline may see it: where it is and what it weighs, nothing of its facets.

    ``dry`` is already cut to what stands: a part that stands perhaps weighs 0 to all of it (spread "perhaps").
    ``contents`` is None where it holds nothing in this load state. ``group`` names weights that err together.
    """

    name: str
    of: str
    place: Place
    dry: Band
    contents: Band | None
    kind: str
    group: str
    stands: Literal["yes", "perhaps"]


F = TypeVar("F")


@dataclass(frozen=True, slots=True)
class Held(Generic[F]):
    """A part with the facet one discipline has on it."""

    name: str
    frame: Frame
    facet: F
