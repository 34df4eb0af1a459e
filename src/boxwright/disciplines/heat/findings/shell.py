"""Rules of the shell: what nobody knows of its layers, what lies bare, what metal lets through.

None of them stops anything: how warm it gets is judged by the night. What is not known asks; the rest is advice.
"""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.heat.as_built import Unsaid
from boxwright.disciplines.heat.cold import members_named
from boxwright.disciplines.heat.material import columns
from boxwright.disciplines.heat.plane import is_bridged, member_with
from boxwright.disciplines.heat.result import Result
from boxwright.disciplines.heat.shell import Face, bare_faces, by_members
from boxwright.disciplines.heat.telling import SLEEP, is_in_feet, source_of, thin
from boxwright.finding import Finding, Kind, listed
from boxwright.units import HeaderUnits, show, shown_unit

LIMITS: dict[str, float] = {name: row[0] for name, row in columns("shell_limits").items()}
TOLD_AT = columns("told_between")["room and frost"][0]
"""K between room and outside."""
STRIP = columns("layer_lengths")["strip"][0], columns("layers_unsaid")["strip"][0]
OWN_RULE = "shell-practice"
WRITE = "XPS, EPS, polyiso, spray foam, mineral wool, sheep wool, cork, foam tape, ply, OSB, hardboard, FRP, rubber"
ON_FILE = 5
ROWS = {"roof": "frame.bows", "floor": "frame.floor"}
"""Where the members of a plane are written, but for the studs of walls."""


def material_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask what a layer is made of whose word is not known here.

    Asks: what each layer of a wall, the roof and the floor is made of
    Limit: none; a word that is not known counts as no layer at one end and as the best foam at the other
    Source: shell-practice
    Lever: of of the layer
    """
    for written, layers in _by_material(result).items():
        said = f'"{written}" is no material known here' if written else "nobody wrote what it is made of"
        says = f"{_listed(layers)}: {said}, so nobody can say what heat it keeps"
        act = f"Look what it is, and write the nearest of: {WRITE}; or the R value of its label, resistance: R 7.5"
        yield _asked("heat/material-not-known", layers, says, act)


def thickness_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask how thick a layer is.

    Asks: the thickness of each layer
    Limit: none
    Source: shell-practice
    Lever: thick of the layer
    """
    layers = [one for one in _unsaid(result) if one.what == "thickness"]
    if layers:
        says = f"{_listed(layers)}: nobody wrote how thick, so nobody can say what heat is kept there"
        yield _asked("heat/thickness-not-known", layers, says, "Measure its edge, and write thick:")


def no_thickness(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that a layer is written with no thickness, or with an R value of nothing.

    Asks: is each layer thicker than nothing, and is its R value more than nothing
    Limit: nothing
    Source: shell-practice
    Lever: thick of the layer
    """
    for one in _unsaid(result):
        if one.what == "nothing":
            says = f"{one.name} is written as no thicker than nothing: it keeps no heat, and is counted as missing"
            act = "Measure its edge and write that, or take the layer out"
            yield _finding("heat/no-thickness", one.of, "fix", says, act, OWN_RULE, f"{one.of}.thick")
        elif one.what == "resists nothing":
            says = f"{one.name} is written with an R value of nothing, which no layer has: it is not taken"
            act = "Copy the R value of its label, such as resistance: R 7.5, or leave it out"
            yield _finding("heat/no-thickness", one.of, "fix", says, act, OWN_RULE, f"{one.of}.resistance")


def foam_too_thick(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say that what lies between members is thicker than they are deep.

    Asks: thickness of all layers between members, against their depth
    Limit: the depth, and a millimetre
    Source: shell-practice
    Lever: thick of the layer
    """
    for one in _unsaid(result):
        if one.what == "too deep":
            thick, deep = (show(size, "length", shown_in, cuts=True) for size in (one.thick, one.depth))
            says = f"{one.name} between the members is {thick} thick, and they are {deep} deep: the lining cannot"
            says += " lie on them, and what stands out is not counted"
            yield Finding(
                "heat/foam-too-thick", one.of, "fix", says, one.thick, one.depth, one.depth - one.thick, "m",
                source_of("layer_lengths", "over the members"), f"{one.of}.thick",
                act=f"Take sheets of {deep}, or lay the rest over the members as a layer of its own", minutes=10,
                uses=SLEEP, because=(one.of,),
            )  # fmt: skip


def frame_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask for the members of planes that are insulated, where nobody wrote them.

    Asks: the studs, bows and cross-members of each plane that has layers
    Limit: none; they count as none at one end, as metal 12 in apart at the other, as metal 16 in apart at best
    Source: shell-practice
    Lever: frame.studs, frame.bows or frame.floor
    """
    planes = [one for one in _planes(result) if one.planed is not None and one.planed.density.assumed]
    unsaid = [one for one in planes if one.how not in ("bare", "layers")]
    if not unsaid:
        return
    words = list(dict.fromkeys(members_named(one.wall) for one in unsaid))
    names = listed([f"the {word} of {_planes_of(word, unsaid)}" for word in words])
    low, high = (sum(getattr(by_members(one), end) for one in unsaid) for end in ("low", "high"))
    says = f"nobody wrote where {names} are, and metal leads heat past what is between them:"
    says += f" {_watts(low, shown_in)} to {_watts(high, shown_in)} {_apart(shown_in)}"
    where = ROWS.get(unsaid[0].wall, "frame.studs")
    apart = "16" if is_in_feet(shown_in) else "400"
    act = "Find them with a magnet, and write under frame:"
    act += f" studs: {{every: {apart}}}, bows: {{every: {apart}}}, floor: {{cross_members: {apart}}}"
    yield Finding(
        "heat/frame-not-known", where, "unknown", says, source=OWN_RULE, lever=where, act=act, minutes=30,
        could_stop=False, could_limit=False, uses=SLEEP, because=(where,),
    )  # fmt: skip


def metal_bridge(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what members of metal with nothing over them lose, and what a strip of foam on them would save.

    Asks: what bare members of insulated planes lose, as a share of the shell
    Limit: a twentieth of what the shell loses; own rule, practice
    Source: shell-practice
    Lever: a layer over the members
    """
    shell = result.shell
    bridged = [one for one in _planes(result) if one.planed is not None and is_bridged(one.planed)]
    lost, whole = sum(_by_members(one) for one in bridged), shell.by_air.best
    if not bridged or lost <= LIMITS["metal, share of the shell"] * whole:
        return
    worst = max(bridged, key=_by_members)
    saved = sum(_saved(one) for one in bridged)
    words = list(dict.fromkeys(members_named(one.wall) for one in bridged))
    names = listed([f"the {word} of {_planes_of(word, bridged)}" for word in words])
    says = f"{_apart(shown_in)} {names} lose {_watts(lost, shown_in)} of the"
    thick = show(STRIP[0], "length", shown_in, cuts=True) if is_in_feet(shown_in) else thin(STRIP[0], shown_in)
    says += f" {_watts(whole, shown_in)} the shell loses; a strip of foam of {thick} over them saves"
    says += f" {_watts(saved, shown_in)}"
    share = lost / whole
    limit = LIMITS["metal, share of the shell"]
    yield Finding(
        "heat/metal-bridge", worst.of, "advice", says, share, limit, limit - share, "",
        source_of("shell_limits", "metal, share of the shell"), worst.of,
        act="Stick foam strip on them before the lining goes on, and write it: strip: {of: foam strip, thick:"
        f" {thick}, over: studs}}", minutes=240, could_stop=False, uses=SLEEP, because=tuple(one.of for one in bridged),
    )  # fmt: skip


def bare_plane(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which planes have nothing that keeps heat, and what they lose.

    Asks: is there any layer on each plane of the box
    Limit: three hundredths of what the shell loses; own rule, practice
    Source: shell-practice
    Lever: layers of the plane
    """
    planes = _planes(result)
    bare = [one for one in bare_faces(result.shell) if one in planes]
    lost, whole = sum(_by_air(one) for one in bare), result.shell.by_air.best
    limit = LIMITS["bare, share of the shell"]
    if not bare or lost <= limit * whole:
        return
    if all(one in bare or one.how == "layers" for one in planes):
        says = "nothing is put in yet that keeps heat:"
        said = "the shell loses"
        lost = whole
    else:
        says = f"bare skin is left on {listed([one.name for one in bare])}:"
        said = "it loses"
    says += f" {_apart(shown_in)} {said} {_watts(lost, shown_in)}"
    says += "" if lost == whole else f" of the {_watts(whole, shown_in)} of the shell"
    yield Finding(
        "heat/bare-plane", "walls", "advice", says, lost / whole, limit, limit - lost / whole, "",
        source_of("shell_limits", "bare, share of the shell"), "walls",
        act="Fit foam there before a heater is chosen, or write the layers that are there", minutes=120,
        could_stop=False, uses=SLEEP, because=("walls",),
    )  # fmt: skip


def hole_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask how well doors, windows and lids keep heat, where much hangs on it.

    Asks: the U value of what fills a hole
    Limit: a tenth of what the shell loses, between the best and the worst of their kinds; own rule, practice
    Source: unit-memory
    Lever: U of the unit
    """
    holes = [one for one in result.shell.faces if one.what == "hole" and one.how != "as written"]
    low, high = (sum(getattr(one.by_air, end) * one.area.best for one in holes) for end in ("low", "high"))
    between, whole = high - low, result.shell.by_air.best
    if not holes or between <= LIMITS["holes nobody knows, share of the shell"] * whole:
        return
    widest = sorted(holes, key=lambda one: one.loss.low - one.loss.high)[:3]
    says = f"nobody wrote how well {listed([one.name for one in widest])} keep heat in: {_apart(shown_in)}"
    says += f" {_watts(low, shown_in)} to {_watts(high, shown_in)} goes through what fills holes"
    act = f"Look for foam in the leaf of {widest[0].name}, or one pane or two, and write unit: {{U: 2.8 W/m2K}}"
    yield Finding(
        "heat/hole-not-known", widest[0].of, "unknown", says, source=source_of("units_in_holes", "door"),
        lever=f"{widest[0].of}.unit", act=act, minutes=15, could_stop=False, could_limit=False, uses=SLEEP,
        because=tuple(one.of for one in widest),
    )  # fmt: skip


def colour_not_known(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Ask what colour the skin is, which decides what the sun does to the room.

    Asks: a colour in the words of the skin
    Limit: none; it keeps no answer back, for the night is dark
    Source: colour-memory
    Lever: frame.skin
    """
    unsaid = [one for one in _planes(result) if one.wall != "floor" and not one.coat.colour]
    if unsaid:
        says = "nobody wrote the colour of the skin, so nobody can say how hot the sun makes it: white takes a quarter"
        says += " of it, black nearly all"
        yield Finding(
            "heat/colour-not-known", "frame.skin", "unknown", says, source=source_of("colours", "white"),
            lever="frame.skin", act="Write the colour before the metal, such as skin: white aluminium 0.040", minutes=1,
            could_stop=False, could_limit=False, uses=SLEEP, because=("frame.skin",),
        )  # fmt: skip


def _planes(result: Result) -> list[Face]:
    return [one for one in result.shell.faces if one.what == "plane"] if result.use == "sleep" else []


def _unsaid(result: Result) -> tuple[Unsaid, ...]:
    return result.shell.unsaid if result.use == "sleep" else ()


def _by_material(result: Result) -> dict[str, list[Unsaid]]:
    """Return the layers whose material is not known, by the word for it, however it is spaced and written."""
    found: dict[str, list[Unsaid]] = {}
    for one in _unsaid(result):
        if one.what == "material":
            found.setdefault(" ".join(one.written.lower().split()), []).append(one)
    return found


def _saved(face: Face) -> float:
    """Return what a strip over its members saves of the loss of a face (W/K): the section is worked out anew."""
    planed = face.planed
    if planed is None:
        return 0.0
    added = member_with(planed.across, STRIP)
    return max(planed.member_by_air.best - added, 0.0) * planed.density.best * face.area.best


def _by_members(face: Face) -> float:
    """Return what the members of a plane add to its loss (W/K), as in a trailer whose faces are all cold."""
    return by_members(face).best if face.what == "plane" else 0.0


def _by_air(face: Face) -> float:
    return face.by_air.best * face.area.best


def _asked(code: str, layers: list[Unsaid], says: str, act: str) -> Finding:
    paths = tuple(dict.fromkeys(one.of for one in layers))
    return Finding(
        code, paths[0], "unknown", says, source=OWN_RULE, lever=paths[0], act=act, minutes=ON_FILE, could_stop=False,
        uses=SLEEP, because=paths,
    )  # fmt: skip


def _finding(code: str, where: str, kind: Kind, says: str, act: str, source: str, lever: str) -> Finding:
    return Finding(
        code, where, kind, says, source=source, lever=lever, act=act, minutes=ON_FILE, uses=SLEEP, because=(where,)
    )


def _listed(layers: list[Unsaid]) -> str:
    return listed(f"{one.name} of {_wall_of(one.of)}" for one in layers)


def _wall_of(path: str) -> str:
    return path.partition("[")[2].partition("]")[0] or path


def _planes_of(word: str, bridged: list[Face]) -> str:
    """Return the planes whose members go by a word: ``the left, right and front wall``, or ``the roof``."""
    names = [one.name for one in bridged if members_named(one.wall) == word]
    if all(name.endswith(" wall") for name in names):
        return f"the {listed([name.removesuffix(' wall') for name in names])} wall"
    return f"the {listed(names)}"


def _apart(shown_in: HeaderUnits) -> str:
    unit, scale = shown_unit("temperature", shown_in)
    return f"when it is {scale.difference_from_si(TOLD_AT):.0f} {unit} colder outside than in"


def _watts(loss: float, shown_in: HeaderUnits) -> str:
    return show(loss * TOLD_AT, "heat flow", shown_in)
