"""Written keys of structure: straps, hinges, legs, screws, ties and the loads they are rated for."""

from __future__ import annotations

import re
from typing import Annotated

from pydantic import BeforeValidator, Field, ValidationInfo

from boxwright.model.each import Each
from boxwright.model.entry import Entry, read_names
from boxwright.model.place import Place
from boxwright.records import dataclass
from boxwright.units import HeaderUnits, KilogramBand, Metre, MetreBand, read_size

Places = Annotated[tuple[MetreBand, ...], BeforeValidator(read_names)]


def read_anchors(given: object) -> object:
    """Return the names a strap hooks to: None for ``unknown``, an empty tuple for ``none``."""
    if given is None or (isinstance(given, str) and given.strip().lower() in {"unknown", "?"}):
        return None
    if isinstance(given, str) and given.strip().lower() in {"none", "nothing", "no"}:
        return ()
    return read_names(given)


Anchors = Annotated[tuple[str, ...] | None, BeforeValidator(read_anchors)]


def read_screw_size(given: object) -> object:
    """Return a screw's diameter as a length: ``#10`` by the inch screw numbers, ``M6`` in millimetres.

    A number N is 0.060 in + N * 0.013 in thick (ASME B18.6.3, from memory).
    """
    text = str(given).strip()
    numbered = re.fullmatch(r"#\s*(\d{1,2})", text)
    if numbered:
        return f"{0.060 + 0.013 * int(numbered[1]):.3f} in"
    metric = re.fullmatch(r"[Mm](\d{1,2}(?:\.\d)?)", text)
    return f"{metric[1]} mm" if metric else given


ScrewSize = Annotated[MetreBand, BeforeValidator(read_screw_size)]


def read_extents(given: object, info: ValidationInfo) -> object:
    """Return length, width and height (m) of a size written as ``3 x 3 x 25``."""
    if not isinstance(given, str):
        return given
    return read_size(given, (info.context or {}).get("header", HeaderUnits()))


Extents = Annotated[tuple[Metre, Metre, Metre], BeforeValidator(read_extents)]


class Hinge(Entry):
    """The hinge of a bunk, a table or a lid, with the places of its screws along the trailer."""

    edge: str = Field("", description="the edge it runs along: left, right, front, rear, roof, floor")
    length: MetreBand | None = Field(None, description="length of the hinge, such as 76")
    at: Places = Field(
        (), description="places of its leaves along the trailer, at front and rear from the left stud face, [80, 96]"
    )


class Legs(Entry):
    """Legs that carry a bunk or a table while it is down."""

    at: Places = Field((), description="places along the trailer, such as [82, 116, 150]")
    side: str = Field("", description="where they stand across the trailer, such as +39 from the part's own edge")
    size: Extents | None = Field(None, description="length x width x height of one, such as 3 x 3 x 25")


class Screws(Entry):
    """The screws that hold a thing."""

    count: int | None = Field(None, ge=0, le=10_000, description="how many, such as 8")
    size: ScrewSize | None = Field(None, description="thickness of the shank: 1/4 in, #10 or M6")
    length: MetreBand | None = Field(None, description="length under the head, such as 1 1/2")
    into: str = Field("", description="what they bite into: studs, bows, or the name of a backing")
    at: Places = Field(
        (), description="their places along the trailer, at front and rear from the left stud face, such as [128, 144]"
    )


class Strap(Entry):
    """One strap: what it goes over, what it hooks to, what it is rated for."""

    over: str = Field("", description="the part it holds, such as boat")
    to: Anchors = Field(
        None, description="unknown, none, or what it hooks to, such as [d-rings-left 2, track-right x120]"
    )
    wll: Each[KilogramBand] | None = Field(
        None, description="working load limit on its label, or of one with the word each, such as 833"
    )


def read_tie(given: object) -> object:
    """Return a tie as a map: ``tie: unknown``, ``tie: none`` or what it goes to alone."""
    return {"to": given} if isinstance(given, (str, list, tuple)) else given


class Facet(Entry):
    """What structure reads of a part."""

    hinge: Hinge | None = Field(None, description="its hinge, such as {edge: left, length: 76, at: [80, 96, 128]}")
    legs: Legs | None = Field(None, description="its legs, such as {at: [82, 150], side: +39, size: 3 x 3 x 25}")
    screws: Screws | None = Field(None, description="its screws, such as {count: 8, size: 1/4 in, into: studs}")
    tie: Annotated[Strap, BeforeValidator(read_tie)] | None = Field(
        None, description="unknown where nobody looked, none, or what ties it down, such as {to: deck, wll: 100}"
    )
    wll: Each[KilogramBand] | None = Field(
        None, description="working load limit of a track or a ring, such as 833 each"
    )
    backs: str = Field("", description="the part a backing holds the screws of, such as bunk")


NAMED: dict[str, type[Entry]] = {"straps": Strap}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class Fastened:
    """A part with a hinge or screws: where it is while it is used, and the wall it is written to hang on."""

    of: str
    name: str
    place: Place
    wall: str
    facet: Facet


@dataclass(frozen=True, slots=True)
class Section:
    """The straps as written, by name, and every part of the plan that has a hinge or screws."""

    straps: tuple[tuple[str, Strap], ...] = ()
    fastened: tuple[Fastened, ...] = ()
