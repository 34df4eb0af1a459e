"""``boxwright open``: the workbench in the browser, served to this computer only."""

from __future__ import annotations

import webbrowser
from collections.abc import Callable
from datetime import date
from errno import EADDRINUSE
from pathlib import Path

from boxwright.cli.rig_file import NothingAsked, read_bytes
from boxwright.cli.screen import Line, clean, plain, wrapped
from boxwright.web.keeping import CannotKeep
from boxwright.web.serving import served

HIGHEST_PORT = 65535


def opened(rig: str, port: int, is_quiet: bool, today: date, show: Callable[[list[Line]], None], columns: int) -> None:
    """Serve a rig until the user stops it; without one the first page offers a demo rig and a start."""
    if not 0 <= port <= HIGHEST_PORT:
        raise NothingAsked(f"there is no port {port}; leave it out, or name one from 1024 to {HIGHEST_PORT}")
    path = Path(rig) if rig else None
    if path is not None:
        read_bytes(rig)  # says in words why it cannot be opened

    def started(link: str) -> None:
        name = clean(rig) if rig else "no rig yet: the first page offers a start"
        says = f"{name}. Open this link in a browser on this computer; it works once, for ten minutes:"
        show([*(plain(piece) for piece in wrapped(says, columns)), plain(f"  {link}", "head"),
              plain("Stop with Ctrl-C; what you changed is in the file.", "dim")])  # fmt: skip
        if not is_quiet:
            webbrowser.open(link)

    try:
        served(path, Path.cwd(), today, port, started)
    except CannotKeep as reason:
        raise NothingAsked(clean(str(reason))) from None
    except OSError as reason:
        taken = "another program uses it, perhaps a workbench that is still open"
        words = taken if reason.errno == EADDRINUSE else (reason.strerror or str(reason)).lower()
        raise NothingAsked(f"port {port} cannot be used: {clean(words)}; leave --port out for a free one") from None
    except KeyboardInterrupt:
        return
