"""Opening the file that was named, or saying in one plain sentence why it cannot be opened."""

from __future__ import annotations

import difflib
import sys
from pathlib import Path

from boxwright.cli.screen import clean

RIG_ENDINGS = (".yaml", ".yml")


class NothingAsked(Exception):
    """What was asked for cannot be asked: no such file, stage, load state, use or code. Says so in one sentence."""


def read_bytes(name: str) -> bytes:
    """Return what stands in a named file, or what comes through the pipe where the name is ``-``."""
    if name == "-":
        return sys.stdin.buffer.read()
    path = Path(name)
    try:
        return path.read_bytes()
    except FileNotFoundError:
        raise NothingAsked(_missing(path)) from None
    except IsADirectoryError:
        raise NothingAsked(_folder(path)) from None
    except PermissionError:
        if path.is_dir():  # so it is refused on some systems
            raise NothingAsked(_folder(path)) from None
        raise NothingAsked(f'"{clean(name)}" is there, but this account may not read it') from None
    except (OSError, ValueError) as reason:
        words = getattr(reason, "strerror", None) or str(reason)
        raise NothingAsked(f'"{clean(name)}" could not be read: {clean(words).lower()}') from None


def _missing(path: Path) -> str:
    says = f'there is no file "{clean(str(path))}"'
    beside = _rigs_in(path.parent)
    near = difflib.get_close_matches(path.name.lower(), [name.lower() for name in beside], n=1, cutoff=0.5)
    if near:
        found = next(name for name in beside if name.lower() == near[0])
        return f'{says}; did you mean "{clean(str(path.parent / found))}"?'
    return says


def _folder(path: Path) -> str:
    beside = _rigs_in(path)
    such = f", such as {clean(str(path / beside[0]))}" if beside else ""
    return f'"{clean(str(path))}" is a folder; name the rig file in it{such}'


def _rigs_in(folder: Path) -> list[str]:
    try:
        return sorted(entry.name for entry in folder.iterdir() if entry.suffix.lower() in RIG_ENDINGS)
    except OSError:
        return []


def nearest(word: str, known: list[str]) -> str:
    """Return the known word most like a mistyped one, or an empty text."""
    found = difflib.get_close_matches(word.lower(), known, n=1, cutoff=0.5)
    return found[0] if found else ""


def must_be_one_of(word: str, known: list[str], what: str) -> str:
    """Return the word if it is known; otherwise say which are."""
    if word in known:
        return word
    guess = nearest(word, known)
    listed = ", ".join(clean(name) for name in known)
    meant = f'; did you mean "{clean(guess)}"?' if guess else ""
    raise NothingAsked(f'there is no {what} "{clean(word)}"{meant} ({listed})' if known else f"there is no {what} here")
