"""Work out the stored sections of heat: a field of temperature for each point of a grid, and how far reading is off.

python tools/section_table.py            # all of it, about a quarter of an hour on one core
python tools/section_table.py --try 30   # measure the table as it stands on sections between its points
"""

from __future__ import annotations

import json
import sys
from datetime import date
from importlib.metadata import version
from itertools import product
from math import ceil, exp, log, prod
from pathlib import Path
from random import Random

from boxwright.disciplines.heat.across import Across, between_members, laid_out
from boxwright.disciplines.heat.method import section_field
from boxwright.disciplines.heat.stored import ASIDE
from boxwright.source import read_gridded

FILE = Path(__file__).parents[1] / "src/boxwright/disciplines/heat/tables/sections.json"
FINEST, FOR_TRIAL = 0.001, 0.0003
PLY, LINING, STRIP, FOAM = 0.12, 0.053, 0.04, 0.029
AIR = 0.17
PITCH = 0.4064
GRID = {
    "gap": (0.0, 0.6),
    "web": (0.03, 0.0825, 0.5),
    "depth": (0.01905, 0.0381, 0.1016),
    "face": (0.01905, 0.0635),
    "filling": (0.018, 0.06, 0.2, 0.7),
    "over": (0.0, 0.08, 0.16, 0.4),
    "inner": (0.0, 0.02, 0.06, 0.35, 1.3),
    "film": (0.10, 0.40),
    "skin": (0.0004, 0.17),
}
SOURCE = (
    "computed here: section_field on each point of the grid, 406.4 mm from member to member, tube of 1.651 mm wall, "
    "skin of 1 mm, strip 0.04 W/mK, lining 0.12 W/mK and foam 0.029 W/mK behind it, film outside 0.04 m2K/W; "
    "where the filling leaves a gap under a lining, air of 0.17 m2K/W in it"
)


def section_at(point: tuple[float, ...]) -> Across:
    """Return the section of a point of the grid."""
    gap, web, depth, face, filling, over, inner, film, skin = point
    lining = min(inner, LINING)
    foam = inner - lining
    layers = ([(foam * FOAM, FOAM)] if foam > 0.0 else []) + ([(lining * PLY, PLY)] if lining > 0.0 else [])
    air = AIR if gap and layers else 0.0
    foamed = depth * (1.0 - gap)
    return Across(
        face, depth, 0.001651, web / 0.001651, PITCH, (0.001, skin / 0.001),
        ((foamed, foamed / (depth / filling - air)),), air,
        ((over * STRIP, STRIP),) if over > 0.0 else (), tuple(layers), 0.04, film,
    )  # fmt: skip


def worked_out(across: Across, finest: float) -> tuple[float, float, float]:
    """Return what a member adds, how hard heat leaves its coldest place, and the transmittance, from the field."""
    laid = laid_out(across)
    field = section_field(
        laid.widths, laid.depths, laid.rows, (0.0, across.outside_film), (1.0, across.inside_film), finest=finest
    )
    bay = between_members(across)
    through = (field.transmittance - bay) * across.spacing + bay * (across.face + ASIDE)
    return through, (1.0 - field.factor) / across.inside_film, field.transmittance


def anyhow(seed: int) -> Across:
    """Return a section that lies between the points: another spacing, gauge, filling that leaves a gap."""
    chance = Random(seed)
    depth = chance.choice((0.0254, 0.0381, 0.0508, 0.0762))
    foam = depth * chance.choice((0.0, 0.5, 0.67, 1.0, 1.0, 1.0))
    filling = ((foam, chance.uniform(0.022, 0.045)),) if foam else ()
    steel = chance.random() < 0.7
    gauge = chance.uniform(0.0009, 0.003)
    inner = [(0.0127, 0.029)] if chance.random() < 0.4 else []
    inner += [(chance.choice((0.0032, 0.00635, 0.0127)), chance.uniform(0.1, 0.16))]
    skin = chance.choice(((0.00102, 160.0), (0.00076, 160.0), (0.00046, 50.0), (0.0015, 0.25)))
    over = chance.choice((0.0, 0.0032, 0.00635, 0.0127))
    return Across(
        chance.choice((0.0254, 0.0381, 0.0508)), depth, gauge, 50.0 if steel else 160.0,
        chance.choice((0.3048, 0.4064, 0.6096)), skin, filling, 0.17 if foam < depth else 0.0,
        ((over, chance.uniform(0.03, 0.05)),) if over else (), tuple(inner), 0.04,
        chance.choice((0.10, 0.13, 0.25, 0.357)),
    )  # fmt: skip


def off(seeds: range) -> tuple[float, float]:
    """Return how far the table is off at most: a share of the transmittance, and of the flux at the coldest place."""
    from boxwright.disciplines.heat import stored

    most = [0.0, 0.0]
    table = stored.table_of(read_gridded(FILE.read_text(encoding="utf-8"), FILE.name))
    for seed in seeds:
        across = anyhow(seed)
        if not stored.is_stored(across, table):
            print("not in the table", seed, stored.coordinates(across))
            continue
        _, flux, field = worked_out(across, FOR_TRIAL)
        held = stored.look_up(across, table)
        here = stored.transmittance(across, held) / field - 1.0, held.flux / flux - 1.0
        print(seed, f"{field:.3f}", *(f"{one:+.3f}" for one in here))
        most = [max(one, abs(two)) for one, two in zip(most, here, strict=True)]
    return most[0], most[1]


def make() -> None:
    """Work out every point and write the file."""
    from boxwright.disciplines.heat import stored

    through: list[float] = []
    flux: list[float] = []
    count = prod(len(axis) for axis in GRID.values())
    for number, point in enumerate(product(*GRID.values())):
        if point[0] and point[4] > stored.MOST_FILLING_BARE:  # what fills a bay so badly is air itself
            before = number - count // len(GRID["gap"])
            through.append(through[before])
            flux.append(flux[before])
            continue
        across = section_at(point)
        if not across.inner and point[4] > stored.MOST_FILLING_BARE:
            through.append(0)  # never read: an open bay that next to nothing fills is no section of layers
            flux.append(0)
            continue
        held = worked_out(across, FINEST)
        rough = stored.estimate(stored.coordinates(across))
        if min(held) <= 0.0:
            raise ValueError(f"nothing to take the logarithm of at {point}: {held}")
        through.append(round(log(held[0] / rough.through) * stored.STORED_AS))
        flux.append(round(log(held[1] / rough.flux) * stored.STORED_AS))
        if number % 500 == 0:
            print(number, count, exp(through[-1] / stored.STORED_AS), flush=True)
    written = {
        "source": SOURCE,
        "made": date.today().isoformat(),
        "with": {name: version(name) for name in ("scikit-fem", "scipy", "numpy")},
        "finest": FINEST,
        "grid": GRID,
        "off": {"transmittance": 0.0, "flux": 0.0, "sections": 0},
        "through": through,
        "flux": flux,
    }
    FILE.write_text(json.dumps(written, separators=(",", ":")) + "\n", encoding="utf-8")


def _up(share: float) -> float:
    """Return a share rounded up to a whole percent."""
    return ceil(share * 100.0) / 100.0


def state(count: int) -> None:
    """Measure the table and write into it how far it is off."""
    found = off(range(count))
    written = json.loads(FILE.read_text(encoding="utf-8"))
    written["off"] = {"transmittance": _up(found[0]), "flux": _up(found[1]), "sections": count}
    FILE.write_text(json.dumps(written, separators=(",", ":")) + "\n", encoding="utf-8")


if __name__ == "__main__":
    if "--try" in sys.argv:
        print(off(range(int(sys.argv[sys.argv.index("--try") + 1]))))
    else:
        make()
        state(30)
