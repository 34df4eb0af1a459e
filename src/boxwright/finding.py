"""What is said to the builder: problems of reading, findings of rules, and the verdict for a use."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Literal

from boxwright.records import dataclass

Kind = Literal["stop", "limit", "fix", "unknown", "advice"]
Use = Literal["tow", "sleep", "leave", "work"]
Answer = Literal["go", "limits", "ask", "no"]

KINDS: tuple[Kind, ...] = ("stop", "limit", "fix", "unknown", "advice")
USES: tuple[Use, ...] = ("tow", "sleep", "leave", "work")


@dataclass(frozen=True, slots=True)
class Problem:
    """Something in the text that could not be read as it stands, with its place (line and column count from 1).

    ``says`` is one whole sentence: what was read, what was expected, how to write it. A ``note`` says how a text was
    understood and keeps no verdict back; a ``problem`` keeps every verdict at "ask" or worse.
    """

    line: int
    column: int
    path: str
    says: str
    kind: Literal["problem", "note"] = "problem"


@dataclass(frozen=True, slots=True)
class Finding:
    """One judgement of one rule. ``number``, ``limit`` and ``margin`` are SI, in ``unit``; ``None`` where none applies.

    ``margin`` is positive on the safe side. ``could_stop`` says, of an unknown, that the missing value could turn the
    answer into a stop; an unknown that can only limit leaves ``limits`` open; one that can come out as no more than
    something to put right has ``could_limit`` False and keeps no answer back. ``protects`` says that the rule guards
    combustion, an alarm or a way out, where an unknown is already a no. ``because`` holds the rig paths the doubt
    comes from, the one that flips most first. ``besides`` are the amounts that ``says`` names beside these, each with
    what it is, as they are said.
    """

    code: str
    where: str
    kind: Kind
    says: str
    number: float | None = None
    limit: float | None = None
    margin: float | None = None
    unit: str = ""
    source: str = ""
    lever: str = ""
    remedy: str = ""
    act: str = ""
    minutes: int | None = None
    could_stop: bool = True
    could_limit: bool = True
    protects: bool = False
    uses: tuple[Use, ...] = ()
    because: tuple[str, ...] = ()
    use: str = ""
    load: str = ""
    stage: str = ""
    besides: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Verdict:
    """The answer for one use at one stage in one load state, with the findings it rests on.

    ``because`` holds finding codes and, for what no discipline has judged, ``not-judged/<folder>``. ``act`` is the
    one thing to do first. ``questions`` are at most three, the one that flips most first.
    """

    use: Use
    load: str
    stage: str
    answer: Answer
    because: tuple[str, ...]
    act: str
    questions: tuple[str, ...] = ()
    says: tuple[str, ...] = ()


def listed(names: Iterable[str], most: int | None = None) -> str:
    """Return names as one says them, each once: a, b and c; of more than ``most`` the first ones and how many more."""
    found = list(dict.fromkeys(names))
    if most is not None and len(found) > most:
        return f"{', '.join(found[: most - 1])} and {len(found) - most + 1} more"
    return f"{', '.join(found[:-1])} and {found[-1]}" if len(found) > 1 else "".join(found)
