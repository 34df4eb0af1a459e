"""Draw the sample page of the writers anew: its SVG, the sums of it, and a PNG to be looked at.

    python tools/goldens.py PICTURE.png

Look at the picture before the two changed files of tests/golden are kept.
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]


def main() -> None:
    """Write the sample and its sums; the picture goes where the caller says."""
    if len(sys.argv) != 2:
        sys.exit("say where the picture goes: python tools/goldens.py PICTURE.png")
    sys.path.insert(0, str(ROOT))
    from boxwright.render.png import png_of
    from boxwright.render.svg import svg_of
    from tests.render.by_hand import page
    from tests.render.test_golden import DPI, GOLDEN, LIST, SVG, sums

    GOLDEN.mkdir(exist_ok=True)
    SVG.write_text(svg_of(page()), encoding="utf-8", newline="\n")
    lines = [f'{key} = "{value}"' for key, value in sums().items()]
    LIST.write_text("\n".join(["[by-hand]", *lines]) + "\n", encoding="utf-8", newline="\n")
    Path(sys.argv[1]).write_bytes(png_of(page(), DPI))


if __name__ == "__main__":
    main()
