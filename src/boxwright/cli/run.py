"""One command from its words to its exit code; every way it can go wrong is one plain sentence."""

from __future__ import annotations

import atexit
import gc
import os
import sys
from collections.abc import Sequence
from copy import copy
from functools import partial
from typing import TYPE_CHECKING, cast

if TYPE_CHECKING:
    import typer

READ_NOTHING = 3
"""Exit code where no file could be read, or where the command line itself could not be understood."""

PIPE_CLOSED = 141
"""Exit code where the reader of the pipe has gone (128 and the number of the signal), so that it is never a 0."""


OBJECTS_BEFORE_COLLECTING = 200_000
"""Objects a start makes and keeps; looking through them for rubbish every 700 costs a tenth of it and finds none."""


def main(words: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code: 0 go, 1 limits or ask, 2 no, 3 nothing could be read.

    Without ``words`` this is the whole process: it starts and leaves as quickly as it can.
    """
    if words is not None:
        return _answered(words)
    gc.set_threshold(OBJECTS_BEFORE_COLLECTING)
    # Nothing of ours plugs into the reader of entries; the search through all that is installed is left out.
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    left_with: list[int] = []
    # Registered first, so it runs when every other thing to be done on the way out is done.
    atexit.register(partial(_leave_at_once, left_with))
    left_with.append(_answered(sys.argv[1:]))
    return left_with[0]


def _leave_at_once(left_with: Sequence[int]) -> None:
    """End the process without taking apart, object by object, what ends with it anyway."""
    if left_with:
        try:
            sys.stdout.flush()
            sys.stderr.flush()
        except OSError:
            return
        os._exit(left_with[0])


def _answered(words: Sequence[str]) -> int:
    """Run one command and return its exit code; a pipe that nobody reads any more is no fault."""
    try:
        code = _run(list(words))
        sys.stdout.flush()
        return code
    except (BrokenPipeError, SystemExit):
        # The parser leaves by SystemExit where the pipe breaks under it, and in no other case here. What is still in
        # the buffer must go nowhere, or the interpreter complains about it on its way out.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return PIPE_CLOSED


def _run(words: list[str]) -> int:
    import typer

    from boxwright.cli.commands import app
    from boxwright.cli.rig_file import NothingAsked, nearest
    from boxwright.cli.words import WORDS

    if words and not words[0].startswith("-") and words[0] not in WORDS:
        guess = nearest(words[0], list(WORDS))
        meant = f'; did you mean "boxwright {guess}"?' if guess else ""
        return _refuse(f'there is no command "{words[0]}"{meant} (`boxwright` alone lists them)')
    # The class of every mistake on a command line; its name has moved between versions, its children have not.
    mistake = cast(type[Exception], typer.BadParameter.__mro__[1])
    try:
        code = _narrowed(app, words)(words, prog_name="boxwright", standalone_mode=False)
    except NothingAsked as reason:
        return _refuse(str(reason))
    except mistake as reason:
        return _refuse(_plainly(reason, words[0]))
    except typer.Abort:
        return READ_NOTHING
    return code if isinstance(code, int) else 0


def _narrowed(app: typer.Typer, words: list[str]) -> typer.Typer:
    """Return the command line with the one command that is asked; building the others too takes as long as a rig."""
    from boxwright.cli.words import WORDS

    if not words or words[0] not in WORDS:
        return app
    only = copy(app)
    named = [(one.name or getattr(one.callback, "__name__", ""), one) for one in app.registered_commands]
    only.registered_commands = [one for name, one in named if name == words[0]]
    return only


def _plainly(reason: Exception, command: str) -> str:
    says = str(getattr(reason, "format_message", lambda: reason)())
    return f"{says[:1].lower()}{says[1:].rstrip('.')}; `boxwright {command} --help` shows how it is used"


def _refuse(says: str) -> int:
    from boxwright.cli.screen import Screen, hanging, plain

    screen = Screen(sys.stderr)
    screen.show(hanging(plain("boxwright: "), says, screen.columns))
    return READ_NOTHING
