"""What a finding asks to be written: each value with its place in the file, its unit and how it may look."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from boxwright.book.worded import said
from boxwright.finding import Finding
from boxwright.records import dataclass
from boxwright.rig.described import Described, described, keys_below
from boxwright.rig.document import Document
from boxwright.rig.spelled import as_written
from boxwright.rig.splice import tree_at
from boxwright.units import HeaderUnits, shown_unit

MOST = 4
"""How many values one finding asks for at once."""
OPEN = ("", "unknown", "?")
"""What stands where nobody knows; so does a doubtful number, which can be made a surer one."""
DOUBTFUL = ("..", "+-", "about")
PERHAPS = "stands-perhaps"
WEIGHED = frozenset({"trailer.empty"})
"""What is weighed and is no part."""
IN_HEADER = frozenset({"length", "mass", "temperature", "volume"})


@dataclass(frozen=True, slots=True)
class Blank:
    """A value to be written: its path as the file spells it, its name in words, what stands there, its unit."""

    path: str
    label: str
    text: str
    unit: str
    explains: str
    example: str


def blanks_of(
    finding: Finding,
    document: Document,
    header: HeaderUnits,
    vehicle: str = "",
    misread: Collection[str] = (),
    doubts: Iterable[str] = (),
) -> tuple[Blank, ...]:
    """Return what a finding asks to be written; none where it asks to be looked at, moved or taken off only.

    ``misread`` are the paths of what is written and could not be read: it is asked for again. ``doubts`` are what makes
    a number doubtful, the widest first: asked for where a rule cannot tell and all it names is written.
    """
    found = _open_at(list(_asked(finding, vehicle)), document, header, misread)
    if not found and finding.kind == "unknown" and finding.number is not None and finding.limit is not None:
        weighed = (f"{path}.weight" if path in WEIGHED or path.endswith("]") else path for path in doubts)
        # What a scale or a tape said is weighed or taped again, and not written over here.
        here = [path for path in weighed if tree_at(document, as_written(document, path)) is not None]
        found = _open_at(here, document, header, misread)
    return tuple(found.values())[:MOST]


def _open_at(paths: list[str], document: Document, header: HeaderUnits, misread: Collection[str]) -> dict[str, Blank]:
    """Return the blanks of those paths at which nothing sure is written."""
    found: dict[str, Blank] = {}
    for path in paths:  # grows as it goes
        if described(path) is None and tree_at(document, as_written(document, path)) is None:
            paths += keys_below(path)  # nothing of the entry is written: each of its values is asked for
        known = described(path)
        written = as_written(document, path)
        text = tree_at(document, written)
        is_text = text is None or isinstance(text, str)
        is_asked = text is None or written in misread or (isinstance(text, str) and _is_open(text))
        if known is None or path in found or not (is_text and is_asked):
            continue
        found[path] = _blank(written, known, text if isinstance(text, str) else "", header)
    return found


def _asked(finding: Finding, vehicle: str) -> Iterator[str]:
    """Yield the paths a finding may ask about, the likeliest first."""
    key = "done" if finding.code.endswith(PERHAPS) else "weight"
    for path in (finding.lever, *finding.because, finding.where):
        if path.startswith("tow.") and vehicle:
            yield f"tow[{vehicle}]{path.removeprefix('tow')}"
        elif path.endswith("]") and path.startswith(("parts[", "openings[", "walls[", "wires[")):
            if finding.kind == "unknown" and path != finding.lever and (key == "done" or path.startswith("parts[")):
                yield f"{path}.{key}"
        else:
            yield path.partition(" ")[0]


def _is_open(text: str) -> bool:
    return text.strip() in OPEN or any(sign in text for sign in DOUBTFUL)


def _blank(path: str, known: Described, text: str, header: HeaderUnits) -> Blank:
    unit = shown_unit(known.quantity, header)[0] if known.quantity in IN_HEADER else ""
    example = next((one for one in known.examples if one not in OPEN), "")
    return Blank(path, _label(path), text, unit, known.says, example)


def _label(path: str) -> str:
    """Return what a value is called: ``overhang of pickup``, ``track, of trailer axles``."""
    if "[" in path:
        return said(path)
    *parents, key = path.replace("_", " ").split(".")
    return f"{key}, of {' '.join(parents)}" if parents else key
