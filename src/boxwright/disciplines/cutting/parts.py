"""Written keys of cutting: what a part is cut from."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from pydantic import BeforeValidator, Field

from boxwright.model.each import Alone
from boxwright.model.entry import Entry, YesNo, read_names
from boxwright.records import dataclass
from boxwright.units import MetreBand, RatioBand

Lengths = Annotated[tuple[MetreBand, ...], BeforeValidator(read_names)]


def read_stock_map(given: object) -> object:
    """Return the pairs of a map from stock to amount, so that an entry stays hashable."""
    if isinstance(given, Mapping):
        return tuple(given.items())
    if isinstance(given, str):
        raise ValueError(f'cannot read the stock "{given}"; write it as {{{given}: 1}}')
    return given


Sheets = Annotated[tuple[tuple[str, RatioBand], ...], BeforeValidator(read_stock_map)]
Bars = Annotated[tuple[tuple[str, Lengths], ...], BeforeValidator(read_stock_map)]


class Carcass(Entry):
    """A cabinet as the saw sees it; ``carcass: 1/2`` alone is the thickness of its ply."""

    ply: MetreBand | None = Field(None, description="thickness of sides, top and bottom, such as 1/2")
    back: MetreBand | None = Field(None, description="thickness of the back; left out where it has none")
    shelves: int = Field(0, ge=0, le=100, description="how many shelves, such as 1")
    drawers: Lengths = Field((), description="heights of the drawer fronts from the top, such as [5, 5, 8]")
    doors: int = Field(0, ge=0, le=100, description="how many doors, such as 2")
    lid: YesNo = Field(None, description="does its top lift: yes or no")


class Facet(Entry):
    """What cutting reads of a part."""

    carcass: Annotated[Carcass, Alone("ply")] | None = Field(
        None, description="how it is built, such as {ply: 1/2, back: 1/4, shelves: 1, doors: 2}"
    )
    sheets: Sheets = Field((), description="whole sheets it takes, by stock, such as {ply 3/4: 1}")
    bars: Bars = Field((), description="pieces it takes, by stock, such as {tube 1 x 1: [30, 30, 17 1/2]}")


NAMED: dict[str, type[Entry]] = {}
PLAIN: dict[str, type[Entry]] = {}


@dataclass(frozen=True, slots=True)
class Section:
    """The settings of cutting: none yet."""
