"""The section of a member as it is written, such as ``1 x 1 1/2 x 16 ga`` or ``angle 40 x 40 x 3``, read into numbers.

The first size is the face that looks inward, the second the depth from the skin, the last the gauge.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Literal

from boxwright.disciplines.frame import method
from boxwright.disciplines.frame.parts import Framing
from boxwright.disciplines.frame.result import Tube
from boxwright.disciplines.frame.sourced import GAUGE, LIMITS, density_of
from boxwright.units import Band, CannotRead, HeaderUnits, OutOfRange, exactly, read_exact

Shape = Literal["tube", "channel", "angle", "hat", "zed", "solid", "unknown"]
_SHAPES: tuple[tuple[str, Shape], ...] = (
    (r"channel|\bu-?section|\bc-?section", "channel"),
    (r"angle|\bl-?section", "angle"),
    (r"\bhat\b|top-?hat|omega", "hat"),
    (r"\bz\b|\bzed|\bzee|z-?section", "zed"),
    (r"timber|wood|solid|\bbar\b|spruce|pine|ply", "solid"),
)
_METALS: tuple[tuple[str, str], ...] = (
    (r"alumini?um|\balu?\b|6061|6063", "aluminium"),
    (r"timber|wood|spruce|pine", "softwood"),
)
_GAUGED = re.compile(r"^(\d{1,2})\s*(?:ga|gages?|gauges?|swg)\b\.?$", re.IGNORECASE)
_WORDS = re.compile(r"(?i)\b(?!ga\b|gages?\b|gauges?\b|swg\b|in\b|mm\b|cm\b|ft\b|x\b)[a-z][a-z-]*\b")
MOST_SIZES = 3
_BETWEEN = re.compile(r"\s*[xX*\u00d7]\s*")


def read_tube(
    written: str, header: HeaderUnits, face: Band | None = None, depth: Band | None = None
) -> tuple[Tube, str]:
    """Return the section a text says, and what could not be read of it; ``face`` and ``depth`` as written win."""
    shape = next((shape for pattern, shape in _SHAPES if re.search(pattern, written, re.IGNORECASE)), None)
    material = next((metal for pattern, metal in _METALS if re.search(pattern, written, re.IGNORECASE)), "steel")
    sizes, trouble = _sizes(_WORDS.sub(" ", written.replace(",", " ")).strip(), header)
    if not written.strip():
        return Tube("", "unknown", "", face, depth, None, None, None, None, None), ""
    if trouble:
        return Tube(written, shape or "unknown", material, face, depth, None, None, None, None, None), trouble
    face = face if face is not None and face.known else _at(sizes, 0)
    depth = depth if depth is not None and depth.known else _at(sizes, 1) or _at(sizes, 0)
    gauge = _at(sizes, 2) if shape != "solid" else None
    known = shape or ("tube" if sizes else "unknown")
    area, deep, wide = _worked(known, face, depth, gauge)
    density = density_of(material)
    weight = _product(area, density) if area is not None and density is not None else None
    return Tube(written, known, material, face, depth, gauge, area, deep, wide, weight), ""


def with_depths(framing: Framing | None, header: HeaderUnits) -> Framing | None:
    """Return a frame whose studs and bows have their depth where only their section says it."""
    if framing is None:
        return None
    found = framing
    for key, row in (("studs", framing.studs), ("bows", framing.bows)):
        if row is not None and not (row.depth is not None and row.depth.known):
            depth = read_tube(row.tube, header)[0].depth
            if depth is not None:
                found = found.model_copy(update={key: row.model_copy(update={"depth": depth})})
    return found


def _at(sizes: tuple[float, ...], index: int) -> Band | None:
    return exactly(sizes[index]) if index < len(sizes) else None


def _sizes(text: str, header: HeaderUnits) -> tuple[tuple[float, ...], str]:
    """Return the lengths of a text such as ``1 x 1 1/2 x 16 ga``, and what was wrong with it."""
    pieces = [piece.strip() for piece in _BETWEEN.split(text)] if text else []
    if len(pieces) > 1 and "" in pieces:
        return (), f'cannot read a size of the section "{text}"'
    if len(pieces) > MOST_SIZES:
        return (), f'the section "{text}" has {len(pieces)} sizes; write face x depth x wall'
    ending = re.search(r"(mm|cm|in\b|\")\s*$", text)
    unit = ending[1] if ending else ""
    found: list[float] = []
    for piece in pieces:
        gauge = _GAUGED.match(piece)
        if gauge:
            if not found:
                return (), f'the section "{text}" begins with its gauge; write face x depth x gauge'
            if gauge[1] not in GAUGE:
                return (), f"no gauge {gauge[1]} is known; write the wall as a length, such as 1.5 mm or 1/16 in"
            found.append(GAUGE[gauge[1]])
            continue
        bare = re.fullmatch(r"[\d\s./-]+", piece) and unit
        try:
            found.append(read_exact(f"{piece} {unit}" if bare else piece, "length", header))
        except CannotRead as problem:
            return (), str(problem)
        if found[-1] <= 0.0:
            return (), f'a size of the section "{text}" is nothing or less'
    return tuple(found), ""


def _worked(
    shape: Shape, face: Band | None, depth: Band | None, gauge: Band | None
) -> tuple[Band | None, Band | None, Band | None]:
    """Return area, and second moments for bending in and out and along the wall, where the sizes are enough."""
    if face is None or depth is None or (gauge is None and shape != "solid"):
        return None, None, None
    wide, deep, thick = face.best, depth.best, gauge.best if gauge is not None else 0.0
    try:
        if shape == "tube":
            return _rolled(wide, deep, thick)
        if shape == "solid":
            return tuple(map(exactly, _solid(wide, deep)))  # type: ignore[return-value]
        if shape in {"channel", "zed"}:
            area = method.channel_area(wide, deep, thick, thick)
            return exactly(area), exactly(method.channel_second_moment(wide, deep, thick, thick)), None
        if shape == "angle":
            moment: Callable[[float, float, float], float] = method.angle_second_moment
            area = method.angle_area(wide, deep, thick)
            return exactly(area), exactly(moment(wide, deep, thick)), exactly(moment(deep, wide, thick))
    except OutOfRange:
        return None, None, None
    return None, None, None


def _solid(wide: float, deep: float) -> tuple[float, float, float]:
    return (
        method.rounded_area(wide, deep, 0.0),
        method.rounded_second_moment(wide, deep, 0.0),
        method.rounded_second_moment(deep, wide, 0.0),
    )


def _rolled(wide: float, deep: float, thick: float) -> tuple[Band, Band, Band]:
    """Return the numbers of a tube whose corners nobody measured: from sharp ones to the roundest usual."""
    corners = [min(LIMITS[name] * thick, min(wide, deep) / 2.0) for name in ("corner_best", "corner_low")]
    rows = [
        (
            method.tube_area(wide, deep, thick, corner),
            method.tube_second_moment(wide, deep, thick, corner),
            method.tube_second_moment(deep, wide, thick, corner),
        )
        for corner in (*corners, 0.0)
    ]
    area, deep_moment, wide_moment = (
        Band(best, low, high, spread="interval", assumed=True) for best, low, high in zip(*rows, strict=True)
    )
    return area, deep_moment, wide_moment


def _product(area: Band, density: Band) -> Band:
    best, low, high = (
        method.mass_per_length(metal, of)
        for metal, of in ((area.best, density.best), (area.low, density.low), (area.high, density.high))
    )
    return Band(best, low, high, spread="interval", assumed=True)
