"""Every command that a document shows is run, and prints what the document says it prints."""

from __future__ import annotations

import itertools
import re
from pathlib import Path

import pytest

from boxwright.rig.compose import read_rig
from tests.houserules.tree import PACKAGE, ROOT
from tools.tour import LEFT_OUT, is_printed, printed, refreshed, shown

DOCUMENTS = [*sorted(ROOT.glob("*.md")), *sorted((ROOT / "docs").glob("*.md")), *sorted(PACKAGE.rglob("README.md"))]
SHOWN = [(path.relative_to(ROOT).as_posix(), *one) for path in DOCUMENTS for one in shown(path.read_text("utf-8"))]
TOURED = [one for one in SHOWN if one[1].startswith("boxwright ")]


@pytest.mark.parametrize(("document", "command", "lines"), TOURED, ids=[f"{one[0]}: {one[1]}" for one in TOURED])
def test_a_shown_command_prints_what_is_shown(document: str, command: str, lines: list[str]) -> None:
    came = printed(command).splitlines()
    assert is_printed([line.rstrip() for line in lines], came), "\n".join([f"{document} shows otherwise:", *came])


def test_every_place_of_the_tour_is_filled() -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    places = [line for line in text.splitlines() if line.startswith("<!-- tour: ")]
    assert len(places) >= 2
    assert len(places) == sum(document == "README.md" for document, _, _ in TOURED), "run: make docs"


def rig_in(text: str) -> str:
    """Return the rig file that a document shows: the indented lines from its first key on."""
    lines = text.splitlines()
    start = lines.index("    boxwright: 1")
    shown_lines = itertools.takewhile(lambda line: line.startswith("    "), lines[start:])
    return "\n".join(line.removeprefix("    ") for line in shown_lines) + "\n"


def test_the_rig_shown_is_read_without_a_problem() -> None:
    reading = read_rig(rig_in((ROOT / "README.md").read_text(encoding="utf-8")))
    assert reading.problems == ()
    assert [part.name for part in reading.rig.parts] == ["bunk", "battery", "toolbox"]


def links(text: str) -> list[str]:
    """Return the targets of a document's links that are files."""
    targets = re.findall(r"\]\(([^)\s]+)\)", re.sub(r"```.*?```", "", text, flags=re.DOTALL))
    return [target.split("#")[0] for target in targets if not re.match(r"[a-z]+:|#", target)]


def broken_links(path: Path) -> list[str]:
    """Return the links of a document that lead nowhere."""
    return [target for target in links(path.read_text("utf-8")) if not (path.parent / target).exists()]


@pytest.mark.parametrize("path", DOCUMENTS, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_links_lead_somewhere(path: Path) -> None:
    assert broken_links(path) == []


def test_a_planted_broken_link_is_found(tmp_path: Path) -> None:
    (tmp_path / "a.md").write_text("[a](b.md#c) [b](a.md#top) [c](https://example.org) [d](#e) `x`", encoding="utf-8")
    assert broken_links(tmp_path / "a.md") == ["b.md"]


def test_a_shown_output_is_compared_line_by_line() -> None:
    text = "```console\n$ boxwright a\none\n...\n\n$ boxwright b\n```\n```console\n$ make test\n```"
    assert shown(text) == [("boxwright a", ["one", LEFT_OUT, ""]), ("boxwright b", []), ("make test", [])]
    assert is_printed(["one", LEFT_OUT], ["one", "two", "three"])
    assert is_printed(["one", LEFT_OUT, "three"], ["one", "two", "three"])
    assert not is_printed(["one", LEFT_OUT, "two"], ["one", "two", "three"])
    assert not is_printed(["one", "two"], ["one", "two", "three"])
    assert not is_printed(["two", LEFT_OUT], ["one", "two", "three"])


def test_a_place_is_filled_and_filled_again() -> None:
    place = "before\n<!-- tour: boxwright a (first 2 lines) -->\nafter\n"
    once = refreshed(place, lambda command: "1\n2\n3")
    assert once == place.replace("after", "```console\n$ boxwright a\n1\n2\n...\n```\nafter")
    assert refreshed(once, lambda command: "1\n2\n3") == once
