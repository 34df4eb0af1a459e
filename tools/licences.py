"""Writes the licences of what the built page carries: ``python tools/licences.py``, after ``npm ci`` in ``web``."""

from __future__ import annotations

import json
import sys
from pathlib import Path

WEB = Path(__file__).resolve().parents[1] / "web"
TARGET = WEB / "public" / "licences.txt"
HEAD = "The page carries the fonts and libraries named here, each under its own licence, printed below.\n"
NAMES = ("LICENSE", "LICENSE.md", "LICENSE.txt", "LICENCE", "license")


def licences() -> str:
    """Return name, version and licence of every package that goes into the page."""
    lock = json.loads((WEB / "package-lock.json").read_text(encoding="utf-8"))
    parts = [HEAD]
    for place, entry in sorted(lock["packages"].items()):
        if not place or entry.get("dev"):
            continue
        folder = WEB / place
        text = next((folder / name for name in NAMES if (folder / name).exists()), None)
        said = text.read_text(encoding="utf-8").strip() if text else f"Licence: {entry.get('license', 'not shown')}"
        name = place.removeprefix("node_modules/")
        parts.append(f"{'-' * 100}\n{name} {entry['version']}\n\n{said}\n")
    return "\n".join(parts)


if __name__ == "__main__":
    if not (WEB / "node_modules").is_dir():
        sys.exit("the packages are not there: run npm ci in web first, then this again")
    TARGET.parent.mkdir(exist_ok=True)
    TARGET.write_text(licences(), encoding="utf-8")
