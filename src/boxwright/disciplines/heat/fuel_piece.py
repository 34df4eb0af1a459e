"""What a piece of the way of the fuel is, by the words an owner writes for it."""

from __future__ import annotations

import re
from typing import Literal

Kind = Literal["valve", "filter", "pump", "line", "joint", "other"]
_KINDS: tuple[tuple[Kind, str], ...] = (
    ("valve", "valve|tap|cock"),
    ("filter", "filter|strainer|separator"),
    ("pump", "pump"),
    ("joint", "joint|coupling|union|tee|clip"),
    ("line", "line|hose|tube|pipe"),
)
_STORES = re.compile(
    r"(?:the |a |own |fuel |diesel |petrol |propane |gas |kerosene )*(?:tank|can|bottle|cylinder|jug)s?"
)


def is_any_store(written: str) -> bool:
    """Return whether a piece is a tank by a common word only, such as ``tank`` or ``gas bottle``: it names none."""
    return _STORES.fullmatch(written.strip().lower()) is not None


def kind_of(written: str) -> Kind:
    """Return what a piece is; a tank, the burner and what no word is known for are other."""
    return next((kind for kind, words in _KINDS if re.search(rf"\b(?:{words})s?\b", written, re.IGNORECASE)), "other")
