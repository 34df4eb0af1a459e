"""Reading one entry: a tree of texts against a model, mistake by mistake, dropping only what cannot be read."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Any, TypeVar

from pydantic import AliasChoices, BaseModel, ValidationError

from boxwright.records import dataclass
from boxwright.units import HeaderUnits

E = TypeVar("E", bound=BaseModel)
ROUNDS = 12
MOST_NAMED = 4
"""How many ways to write a thing one sentence names."""
MOST_LISTED = 12
"""How many keys of a map one sentence lists; the rest are counted."""
MEANS_OF = frozenset({"kind", "type", "fuel", "material"})
"""Keys that people write for what a map calls ``of``."""


@dataclass(frozen=True, slots=True)
class Mistake:
    """A rig path and one sentence about it; ``is_key`` where the key itself is meant, not its value."""

    path: str
    says: str
    is_key: bool = False
    kind: str = "problem"


def nearest(word: str, known: Iterable[str]) -> str:
    """Return the known word most like a mistyped one, or an empty text.

    Swapped letters count as likest, then a word cut short.
    """
    return _nearest(word, known if isinstance(known, frozenset) else frozenset(known))


@lru_cache(maxsize=2048)
def _nearest(word: str, known: frozenset[str]) -> str:
    words = sorted(known)
    swapped = [one for one in words if sorted(one) == sorted(word.lower())]
    begun = [one for one in words if one.startswith(f"{word.lower()}_")]
    is_begun = len(begun) == 1
    found = swapped or (begun if is_begun else []) or difflib.get_close_matches(word.lower(), words, n=1, cutoff=0.6)
    return found[0] if found else ""


def spellings(model: type[BaseModel]) -> dict[str, tuple[str, ...]]:
    """Return each field of a model with all the ways its key may be written, the first one first."""
    out: dict[str, tuple[str, ...]] = {}
    for name, field in model.model_fields.items():
        alias = field.validation_alias
        if isinstance(alias, AliasChoices):
            out[name] = tuple(str(choice) for choice in alias.choices)
        else:
            out[name] = (field.alias or name,)
    return out


def validate(
    model: type[E], tree: Any, path: str, header: HeaderUnits, others: Iterable[str] = ()
) -> tuple[E | None, list[Mistake]]:
    """Return the entry read from a tree of texts, and what was wrong with it.

    A value that cannot be read is dropped with a mistake and the rest is read again, so that one bad value costs no
    other. None comes back only where nothing of the entry can stand. ``others`` are keys known beside the model's own,
    for guessing at what was meant.
    """
    mistakes: list[Mistake] = []
    if tree is None or tree == "":
        tree = {}
    for _ in range(ROUNDS):
        try:
            return model.model_validate(tree, context={"header": header}), mistakes
        except ValidationError as errors:
            seen: set[tuple[Any, ...]] = set()
            for error in errors.errors(include_url=False):
                location = _existing(tree, error["loc"])
                if location in seen:
                    continue
                seen.add(location)
                is_key = error["type"] == "extra_forbidden"
                mistakes.append(
                    Mistake(_path(path, location), _says(error, location, model, others), is_key or not location)
                )
                if not location:
                    return None, mistakes
            for location in sorted(seen, key=len, reverse=True):
                tree = _without(tree, location)
    return None, mistakes


def _existing(tree: Any, location: tuple[Any, ...]) -> tuple[Any, ...]:
    """Return as much of an error's location as stands in the tree (a validator may have made up the rest).

    A map that was read as a tuple of its pairs is found again: entry 3, second of the pair, is its fourth key.
    """
    kept: list[Any] = []
    steps = list(location)
    while steps:
        step = steps.pop(0)
        is_key = isinstance(tree, Mapping) and step in tree
        is_index = isinstance(tree, (list, tuple)) and isinstance(step, int) and step < len(tree)
        is_pair = isinstance(tree, Mapping) and isinstance(step, int) and step < len(tree) and steps[:1] == [1]
        if is_pair and not is_key:
            step = list(tree)[step]
            del steps[0]
        elif not (is_key or is_index):
            break
        tree = tree[step]
        kept.append(step)
    return tuple(kept)


def _without(tree: Any, location: tuple[Any, ...]) -> Any:
    """Return a copy of a tree without one value; a list element is dropped with its whole list."""
    if not location:
        return {}
    step, rest = location[0], location[1:]
    if isinstance(tree, Mapping):
        if step not in tree:
            return tree
        inner = tree[step]
        if not rest or isinstance(rest[0], int):
            return {key: value for key, value in tree.items() if key != step}
        return {key: (_without(inner, rest) if key == step else value) for key, value in tree.items()}
    return tree


def _path(path: str, location: tuple[Any, ...]) -> str:
    for step in location:
        path += f"[{step}]" if isinstance(step, int) else f".{step}"
    return path


def _says(error: Any, location: tuple[Any, ...], model: type[BaseModel], others: Iterable[str]) -> str:
    """Return one sentence for a mistake, in words that say how to write it."""
    key = str(error["loc"][-1]) if error["loc"] else ""
    given = error["input"]
    if error["type"] == "extra_forbidden":
        return _unknown_key(key, error["loc"], model, others)
    if error["type"] == "value_error":
        says = str(error["ctx"]["error"])
        if isinstance(given, (Mapping, list, tuple)):
            says = says.replace(str(given), _as_written(given)).replace(str(given).lower(), _as_written(given))
        is_named = not isinstance(given, str) or _short(given) in says
        return says if is_named else f'"{_short(given)}" is not taken: {says}'
    if error["type"] == "missing":
        return f"{key} is missing here; write it as {key}: ... or {key}: unknown"
    if isinstance(given, Mapping):
        return f"{key or 'this'} takes one value, not a map; write it as {key}: value"
    if isinstance(given, (list, tuple)):
        return f"{key or 'this'} takes one value, not a list; write it as {key}: value"
    if error["type"] in {"model_type", "model_attributes_type", "dict_type"}:
        inside = ", ".join(f"{one}: .." for one in _first_keys(model, location)) or "key: value"
        also = f", or swing: {{hinge: {_short(given)}, opens: out}}" if key == "hinge" and str(given).isalpha() else ""
        return f'"{_short(given)}" stands where a map is expected; write it as {key or "name"}: {{{inside}}}{also}'
    if error["type"].startswith("int"):
        return f'cannot read the whole number "{_short(given)}" of {key}; write it as 4'
    if error["type"].startswith(("float", "decimal")):
        return f'cannot read the number "{_short(given)}" of {key}; write it as 4.5'
    if error["type"] == "literal_error":
        return f'"{_short(given)}" is not a word {key} knows; write it as {error["ctx"]["expected"]}'
    return f'cannot read "{_short(given)}" for {key}'


def _as_written(given: Any) -> str:
    """Return a list or a map as it stands in a rig file, not as a program shows it."""
    if isinstance(given, Mapping):
        return f"{{{', '.join(f'{key}: {_as_written(value)}' for key, value in given.items())}}}"
    if isinstance(given, (list, tuple)):
        return f"[{', '.join(map(_as_written, given))}]"
    return str(given)


def _unknown_key(key: str, location: tuple[Any, ...], model: type[BaseModel], others: Iterable[str]) -> str:
    known = spellings(_inner(model, location[:-1]))
    for choices in known.values():
        if key in choices and choices[0] != key:
            return f'"{key}" says again what "{choices[0]}" already says here; "{choices[0]}" wins'
    below = _written_below(key, _inner(model, location[:-1]))
    if below:
        return f'"{key}" stands in a map of its own; write it as {below}'
    words = [choice for choices in known.values() for choice in choices]
    if key in MEANS_OF and "of" in words:
        return f'no key "{key}" is known here; write what it is, or runs on, as of: ..'
    guess = nearest(key, [*words, *(others if len(location) == 1 else ())])
    more = f" and {len(words) - MOST_LISTED} more" if len(words) > MOST_LISTED else ""
    listed = ", ".join(sorted(words)[:MOST_LISTED]) + more if len(location) > 1 else ""
    if guess:
        return f'no key "{key}" is known here; did you mean "{guess}"?'
    return f'no key "{key}" is known here' + (
        f"; known are {listed}" if listed else "; a remark goes after # or in note"
    )


def _first_keys(model: type[BaseModel], location: tuple[Any, ...]) -> list[str]:
    """Return the first keys of the map that is expected at a location, none where the model there is not known."""
    found = _inner(model, location)
    return [choices[0] for choices in spellings(found).values()][:MOST_NAMED] if found is not model else []


def _written_below(key: str, model: type[BaseModel]) -> str:
    """Return how a key is written that belongs in a map within this one; empty where it belongs in none."""
    found: list[str] = []
    for name, choices in spellings(model).items():
        for inner in _models_in(model.model_fields[name].annotation):
            if any(key in each for each in spellings(inner).values()):
                found.append(f"{choices[0]}: {{{key}: ..}}")
    return " or ".join(found[:MOST_NAMED])


def _inner(model: type[BaseModel], location: tuple[Any, ...]) -> type[BaseModel]:
    """Return the model at a location inside a model, as far as it can be followed."""
    for step in location:
        for name, choices in spellings(model).items():
            if step in choices:
                found = _models_in(model.model_fields[name].annotation)
                if found:
                    model = found[0]
                break
    return model


def _models_in(annotation: Any) -> list[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [annotation]
    found: list[type[BaseModel]] = []
    for inner in getattr(annotation, "__args__", ()):
        found += _models_in(inner)
    return found


def _short(given: Any) -> str:
    text = str(given)
    return text if len(text) <= 40 else text[:37] + "..."
