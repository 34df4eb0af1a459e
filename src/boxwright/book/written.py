"""What the rig file says of the things a finding is about: each value with its line, and what is not written."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import isclose

from boxwright.finding import Finding
from boxwright.records import dataclass
from boxwright.rig.document import NAMED, Document, Tree
from boxwright.rig.spelled import as_written
from boxwright.rig.splice import tree_at
from boxwright.units import CannotRead, HeaderUnits, read_band

MOST_WRITTEN = 14
"""How many values of one thing are listed."""
SAME = 1e-6
"""Share by which two numbers may differ and still be the same: records are rounded."""
QUANTITIES = {"kg": "mass", "m": "length", "m**3": "volume", "rad": "angle", "N": "force", "Pa": "pressure"}


@dataclass(frozen=True, slots=True)
class PutIn:
    """A number that went in: its name, as it is shown, and where it is written; no path where that is not known."""

    name: str
    text: str
    path: str = ""
    line: int | None = None


class Written:
    """The values of the rig file that a finding is about, each with its line."""

    def __init__(self, document: Document, finding: Finding, header: HeaderUnits) -> None:
        self._document, self._header = document, header
        paths = (finding.where, *finding.because, finding.lever if "[" in finding.lever or "." in finding.lever else "")
        self._paths = tuple(dict.fromkeys(as_written(document, one) for one in paths if one))
        self._leaves = {path: text for one in self._paths for path, text in _leaves(one, tree_at(document, one))}

    def lines(self) -> Iterator[PutIn]:
        """Yield what is written at the paths, each once, and which of them hold nothing."""
        told: set[str] = set()
        for path in self._paths:
            found = [leaf for leaf in self._leaves if leaf == path or leaf.startswith((f"{path}.", f"{path}["))]
            if not found:
                yield PutIn(path, "not written", path, self._line(path))
            for leaf in found[:MOST_WRITTEN]:
                if leaf not in told:
                    yield PutIn(leaf, self._leaves[leaf], leaf, self._line(leaf))
            told |= set(found)

    def of_value(self, value: float, unit: str) -> PutIn | None:
        """Return the one place where a value is written, None where that is not certain."""
        quantity = QUANTITIES.get(unit)
        if quantity is None or not value:
            return None
        found = [path for path, text in self._leaves.items() if self._reads(text, quantity, value)]
        if len(found) != 1:
            return None
        return PutIn(found[0], self._leaves[found[0]], found[0], self._line(found[0]))

    def about(self, path: str) -> PutIn:
        """Return what is written of one thing that was put in, at the key that gives its weight."""
        text = tree_at(self._document, f"{path}.weight")
        return PutIn(path, text if isinstance(text, str) else "", path, self._line(path))

    def _reads(self, text: str, quantity: str, value: float) -> bool:
        try:
            return isclose(read_band(text, quantity, self._header).best, value, rel_tol=SAME)
        except CannotRead:
            return False

    def _line(self, path: str) -> int | None:
        return self._document.spot(path).line if self._document.extent(path) is not None else None


def _leaves(path: str, tree: Tree) -> Iterator[tuple[str, str]]:
    """Yield every scalar below a path with its own path."""
    if isinstance(tree, str):
        yield path, tree
    elif isinstance(tree, Mapping) and path in NAMED:
        yield path, f"{len(tree)} written"
    elif isinstance(tree, Mapping):
        for key, below in tree.items():
            # The layers of a wall are named things, found by their names alone.
            yield from _leaves(f"{path}[{key}]" if path.endswith(".layers") else f"{path}.{key}", below)
    elif isinstance(tree, tuple) and all(isinstance(one, str) for one in tree):
        yield path, f"[{', '.join(map(str, tree))}]"
    elif isinstance(tree, tuple):
        for index, below in enumerate(tree):
            yield from _leaves(f"{path}[{index}]", below)
