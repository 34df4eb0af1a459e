"""A source: the document a number was taken from, and how it was seen.

[source.mfr-1998]
work = "Title of the document"
edition = "1998"               # or "not shown", where the text read did not show it
seen = "seen"                  # see SEEN below
publisher = "..."              # the rest may be left out
place = "clause 4, table 2"
url = "..."
note = "..."
"""

from __future__ import annotations

from collections.abc import Mapping

from boxwright.records import dataclass

SEEN = ("seen", "from memory", "common practice, no source", "computed here")
"""How a source may have been seen; also ``quoted by ...`` and ``second-hand, ...``, which name who quotes it."""

_SECOND_HAND = ("quoted by ", "second-hand, ")
_FIELDS = frozenset({"work", "edition", "seen", "publisher", "place", "url", "note"})


class SourceError(ValueError):
    """A file of tables, rules or checks that may not be used: which file, which entry, what is wrong with it."""

    def __init__(self, file: str, entry: str, says: str) -> None:
        super().__init__(f"{file}: {entry}: {says}")
        self.file, self.entry, self.says = file, entry, says


@dataclass(frozen=True, slots=True)
class Source:
    """A document and how it was seen. ``key`` is how rows, rules and checks name it."""

    key: str
    work: str
    edition: str
    seen: str
    publisher: str = ""
    place: str = ""
    url: str = ""
    note: str = ""

    @property
    def was_read(self) -> bool:
        """Return whether the document itself was read; only then may its limit clear a stop."""
        return self.seen == "seen"


def is_said_how_seen(text: str) -> bool:
    """Return whether a text says how a source was seen, in one of the agreed ways."""
    return text in SEEN or any(text.startswith(start) and len(text) > len(start) for start in _SECOND_HAND)


def read_sources(blocks: Mapping[str, object], file: str) -> dict[str, Source]:
    """Return the ``[source.<key>]`` blocks of a file by their key."""
    return {key: _read_source(key, block, file) for key, block in blocks.items()}


def _read_source(key: str, block: object, file: str) -> Source:
    entry = f"source.{key}"
    if not isinstance(block, dict):
        raise SourceError(file, entry, "a source is a block of its own: [source.key]")
    given = {name: text_of(block, name, file, entry) for name in block}
    refuse_unknown_keys(block, _FIELDS, file, entry)
    missing = [name for name in ("work", "edition", "seen") if not given.get(name)]
    if missing:
        raise SourceError(file, entry, f"has no {' and no '.join(missing)}")
    if not is_said_how_seen(given["seen"]):
        raise SourceError(file, entry, f'seen = "{given["seen"]}" is not one of {", ".join(SEEN)}, "quoted by ..."')
    return Source(key=key, **given)


def text_of(block: Mapping[str, object], name: str, file: str, entry: str) -> str:
    """Return the text under a key, empty where it is missing."""
    value = block.get(name, "")
    if not isinstance(value, str):
        raise SourceError(file, entry, f"{name} must be a text in quotes")
    return value


def refuse_unknown_keys(block: Mapping[str, object], known: frozenset[str], file: str, entry: str) -> None:
    """Refuse a key nobody reads: most often a slip of the pen in a key that is read."""
    unknown = sorted(set(block) - known)
    if unknown:
        raise SourceError(file, entry, f"{', '.join(unknown)} is not read here; known are {', '.join(sorted(known))}")


def refuse_uncited(key: str, sources: Mapping[str, Source], file: str, entry: str) -> None:
    """Refuse an entry that names no source, or one that stands nowhere."""
    if not key:
        raise SourceError(file, entry, "has no source")
    if key not in sources:
        raise SourceError(file, entry, f'source "{key}" stands neither in this file nor in sources.toml')
