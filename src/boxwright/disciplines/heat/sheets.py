"""Sheets of heat: what the room loses face by face, its coldest nights, how cold it may get, the way of the fuel."""

from __future__ import annotations

from typing import TYPE_CHECKING

from boxwright.disciplines.heat.burner_sheet import burner_grids, electricity
from boxwright.disciplines.heat.burning import fuel_of_night
from boxwright.disciplines.heat.night import HeldNight
from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.shell import Face, bare_faces, by_members, summed
from boxwright.disciplines.heat.telling import between, is_in_feet, large_area, proof_in_words, r_value, warm
from boxwright.exchange import ASLEEP_FROM
from boxwright.units import Band, HeaderUnits, show, show_band

if TYPE_CHECKING:
    from boxwright.disciplines.heat.charts import Damp
    from boxwright.drawing import Grid, Sheet

CAUTION = (
    "A heater that burns kills where its fumes get in. Its leaflet, the installer and local rules come first; carbon"
    " monoxide and smoke alarms before the first night. Off and cold on the road and while fuel is filled. Take bags"
    " for the cold of the place: a heater may fail."
)
THIN_LINES = (
    "The tone round a curve reaches between the ends of what is not known: the least and the most the room may lose."
    " What is told of an hour is its mean."
)
RUNS_AS = ("off", "cycling", "at its lowest", "between lowest and flat out", "flat out")
"""How a heater runs, by its band."""
LEAST_SHARE = 0.01
"""Faces that lose less of the whole than this are told together."""


def sheets(result: Result, shown_in: HeaderUnits, damp: tuple[Damp, ...] = ()) -> tuple[Sheet, ...]:
    """Return the sheet of the room's warmth; nothing where the room cannot be worked out.

    ``damp`` are the charts of the same nights' humidity, by whoever has worked it out.
    """
    # What draws is loaded when something is drawn: `check` answers without it.
    from boxwright.disciplines.heat.charts import charts_of
    from boxwright.drawing import Sheet
    from boxwright.drawing.chart import charted

    if not result.volume.known:
        return ()
    views = tuple(charted(one) for one in charts_of(result, shown_in, damp))
    notes = (THIN_LINES, CAUTION) if views else (CAUTION,)
    if result.proof is not None:
        notes = (proof_in_words(result.proof, shown_in), *notes)
    title = "What the room loses, and its coldest nights"
    grids = tuple(one.with_no_blanks() for one in grids_of(result, shown_in))
    return (Sheet("heat", title, views, notes, grids, stands_up=True),)


def grids_of(result: Result, shown_in: HeaderUnits) -> tuple[Grid, ...]:
    """Return the tables: the faces of the room, each night, and the way of each heater's fuel and fumes."""
    fuel = tuple(grid for one in result.heaters for grid in burner_grids(one, result.openings, result.held, shown_in))
    return (losses(result, shown_in), *_nights(result, shown_in), *electricity(result, shown_in), *fuel)


def losses(result: Result, shown_in: HeaderUnits) -> Grid:
    """Return what each face of the room loses, the largest first, and what of it the metal loses.

    All of it is by the film of the air alone, as nights are: a house's film counts what warm walls radiate.
    """
    from boxwright.drawing import Grid

    shell = result.shell
    whole = max(shell.by_air.best, 1e-9)
    lost = {one: one.by_air.best * one.area.best for one in shell.faces}
    faces = sorted(shell.faces, key=lambda one: -lost[one])
    told = [one for one in faces if lost[one] >= LEAST_SHARE * whole]
    if len(told) == len(faces) - 1:
        told = faces
    rows = [(one.name, *_of_face(one, lost[one], whole, shown_in)) for one in told]
    of = [one.of for one in told]
    rest = sum(lost.values()) - sum(lost[one] for one in told)
    if len(told) < len(faces):
        name = f"{len(faces) - len(told)} smaller ones"
        rows.append((name, "", "", show(rest, "W/K", shown_in), _share(rest, whole)))
        of.append("")
    rows.append(("all of it", "", "", show_band(_plain(shell.by_air), "W/K", shown_in), "100 %"))
    metal = summed([by_members(one) for one in shell.faces])
    bare = bare_faces(shell)
    if bare and metal.high <= 0.0:
        rows.append(("studs and bows", "", "", "counted with the bare skin", ""))
    else:
        name = "of it by studs, bows and edges" + (", bare skin aside" if bare else "")
        rows.append((name, "", "", show_band(_plain(metal), "W/K", shown_in), _share(metal.best, whole)))
    rows.append(("all of it as tables of houses count", "", "", show_band(_plain(shell.loss), "W/K", shown_in), ""))
    return Grid("What the room loses, without the air", ("Face", "Area", "Per area", "Loses", "Share"), tuple(rows),
                (*of, "", "", ""))  # fmt: skip


def _of_face(face: Face, lost: float, whole: float, shown_in: HeaderUnits) -> tuple[str, str, str, str]:
    return (
        large_area(face.area.best, shown_in),
        _per_area(_plain(face.by_air), shown_in),
        show(lost, "W/K", shown_in),
        _share(lost, whole),
    )


def _per_area(through: Band, shown_in: HeaderUnits) -> str:
    """Return what a square metre lets through; where areas are in square feet the R value, as labels there have it."""
    if not is_in_feet(shown_in) or through.low <= 0.0:
        return show_band(through, "transmittance", shown_in)
    low, high = (r_value(one, shown_in) for one in (through.high, through.low))
    return f"R {low}" if low == high else f"R {low} to {high}"


def _plain(band: Band) -> Band:
    """Return a number without the word that it is taken: the whole table is."""
    return Band(band.best, band.low, band.high, band.known, band.spread)


def _share(part: float, whole: float) -> str:
    return f"{100.0 * part / whole:.0f} %"


def _nights(result: Result, shown_in: HeaderUnits) -> tuple[Grid, ...]:
    from boxwright.drawing import Grid

    if not result.held:
        return ()
    heaters = {one.planned.of: one for one in result.heaters}
    columns = ("Place, outside", "Heater", "Room at its coldest", "Held down to", "Lowest too warm above", "Fuel")
    rows = []
    for one in result.held:
        heater = heaters.get(one.warmth.of) if one.warmth is not None else None
        fuel = fuel_of_night(one, heater) if heater is not None else None
        rows.append(
            (
                f"{one.outdoors.place}, {warm(one.outdoors.coldest.best, shown_in)}",
                one.warmth.name if one.warmth is not None else "none",
                between(one.coldest, shown_in),
                between(one.holds_down_to, shown_in) if one.holds_down_to is not None else "",
                between(one.too_warm_above, shown_in) if one.too_warm_above is not None else "",
                show_band(_plain(fuel), "volume", shown_in) if fuel is not None else "",
            )
        )
    of = tuple(one.outdoors.of for one in result.held)
    return (Grid("The coldest night, eight to eight", columns, tuple(rows), of), *_bands(result.held))


def _bands(held: tuple[HeldNight, ...]) -> tuple[Grid, ...]:
    """Return the hours of each night a heater spends off, cycling, at its lowest, between and flat out."""
    from boxwright.drawing import Grid

    warmed = [(one, one.warmth) for one in held if one.warmth is not None and one.warmth.highest.known]
    if not warmed:
        return ()
    rows = tuple(
        (f"{one.outdoors.place}, {warmth.name}", *(f"{spent} h" if spent else "" for spent in one.banded))
        for one, warmth in warmed
    )
    of = tuple(one.outdoors.of for one, _ in warmed)
    columns = ("Place, heater", *(one.capitalize() for one in RUNS_AS))
    return (Grid("How the heater runs in that night", columns, rows, of),)


def hours_grid(one: HeldNight, shown_in: HeaderUnits) -> Grid:
    """Return a night hour by hour: outside, in the room, the heater's heat, the air that comes in."""
    from boxwright.drawing import Grid

    night = one.night
    rows = tuple(
        (
            f"{(ASLEEP_FROM + number) % 24} h",
            warm(night.outside[number], shown_in),
            warm(night.air[number], shown_in),
            show(night.heat[number], "power", shown_in),
            show(night.flow[number], "flow", shown_in),
        )
        for number in range(len(night.air))
    )
    columns = ("From", "Outside", "Room", "Heater", "Outdoor air")
    return Grid(f"The night at {one.outdoors.place}, hour by hour", columns, rows, ("",) * len(rows))
