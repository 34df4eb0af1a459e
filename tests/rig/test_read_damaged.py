"""A text that is not YAML: what survives, and in which words the rest is said."""

from __future__ import annotations

import re
from collections.abc import Callable
from itertools import pairwise

import pytest

from boxwright.rig.document import Document, Tree
from boxwright.rig.read import read_document
from tests.rig.fuzz_mutations import rig_text

JARGON = re.compile(
    r"invalid|expected ['<]|but (?:found|got)|block |flow |scalar|token|mapping|sequence|\banchor\b(?!-)|alias", re.I
)

BREAKS: dict[str, Callable[[str], str]] = {
    "unclosed brace": lambda line: line[: line.rindex("}")] + line[line.rindex("}") + 1 :],
    "no opening brace": lambda line: line.replace("{", "", 1),
    "round bracket": lambda line: line.replace("{", "(", 1),
    "brace too many": lambda line: line.replace("}", "}}", 1),
    "comma in a text": lambda line: line.replace("{", "{note: left, then right, ", 1),
    "colon in a text": lambda line: line.replace("{", "{note: see here: it leaks, ", 1),
    "number sign": lambda line: line.replace("{", "{note: bolt #4 goes in, ", 1),
    "question mark": lambda line: line.replace("{", "{note: ? who knows, ", 1),
    "inch mark": lambda line: line.replace("{", '{note: "6 in" wide, ', 1),
    "open quote": lambda line: line.replace("{", '{note: "abc, ', 1),
    "open single quote": lambda line: line.replace("{", "{note: 'abc, ", 1),
    "at sign": lambda line: line.replace("{", "{note: @home, ", 1),
    "star": lambda line: line.replace("{", "{note: *see below, ", 1),
    "open list": lambda line: line.replace("{", "{at: [1, 2, ", 1),
    "no colon after the name": lambda line: re.sub(r":\s", " ", line, count=1),
    "no space after the colon": lambda line: re.sub(r": +\{", ":{", line, count=1),
    "no comma": lambda line: line.replace(", ", " ", 1),
    "two commas": lambda line: line.replace(", ", ",, ", 1),
    "one space too many": lambda line: " " + line,
    "one space too few": lambda line: line[1:],
    "not indented": lambda line: line.lstrip(),
    "tab": lambda line: "\t" + line.lstrip(),
}


WELL_READ = frozenset(BREAKS) - {"brace too many", "open list"}
"""Breaks of a line after which every value of the line itself is still read as it was written."""


def broken_rigs(
    text: str, document: Document, damage: Callable[[str], str], one_in: int
) -> list[tuple[str, int, Document]]:
    """Return, for some parts whose line the damage changes, their names, their lines and the document so broken."""
    lines, found = text.split("\n"), []
    names = list(document.tree["parts"] or ())
    for name in names[::one_in]:
        number = document.key_spot(f"parts[{name}]").line
        broken = damage(lines[number - 1])
        if broken != lines[number - 1]:
            new = "\n".join([*lines[: number - 1], broken, *lines[number:]])
            found.append((str(name), number, read_document(new)))
    return found


@pytest.mark.parametrize(
    ("rig", "one_in"),
    [
        ("whimbrel", 18),
        ("dunlin", 8),
        pytest.param("whimbrel", 1, marks=pytest.mark.nightly),
        pytest.param("dunlin", 1, marks=pytest.mark.nightly),
    ],
)
@pytest.mark.parametrize("damage", BREAKS)
def test_one_broken_line_costs_no_other_part_and_is_said(rig: str, one_in: int, damage: str) -> None:
    # The recorded floor is all: measured on both demo rigs, every other part and the broken one itself survive.
    text = rig_text(rig)
    sound = read_document(text)
    tried = broken_rigs(text, sound, BREAKS[damage], one_in)
    assert len(tried) > 20 / one_in
    for name, line, document in tried:
        parts, before = document.tree["parts"], sound.tree["parts"]
        assert isinstance(parts, dict)
        assert isinstance(before, dict)
        assert {other: tree for other, tree in parts.items() if other != name} == {
            other: tree for other, tree in before.items() if other != name
        }
        assert isinstance(parts[name], dict)
        assert {key: document.tree[key] for key in sound.tree if key != "parts"} == {
            key: tree for key, tree in sound.tree.items() if key != "parts"
        }
        if damage in WELL_READ:
            read, expected = dict(parts[name]), dict(before[name])
            read.pop("note", None), expected.pop("note", None)
            assert read == expected
        assert document.problems[0].line == line
        assert not JARGON.search(document.problems[0].says)
        assert document.troubled & {f"parts[{name}]", ""}


@pytest.mark.parametrize(
    ("written", "read", "told"),
    [
        ("{x: 1, note: see: there, weight: 3}", {"x": "1", "note": "see: there", "weight": "3"}, 'note: "see: there"'),
        ("{note: bolt #4, x: 1}", {"note": "bolt #4", "x": "1"}, 'note: "bolt #4"'),
        ('{note: "6 in" wide, x: 1}', {"note": '6 in" wide', "x": "1"}, r'note: "6 in\" wide"'),
        ("{x: 1, note: 'tis, weight: 3}", {"x": "1", "note": "tis", "weight": "3"}, "the quote ' here is not closed"),
        ("{x: 1, weight: 3", {"x": "1", "weight": "3"}, 'the "{" here is not closed'),
        ("{at: [1, 2, x: 3}", {"at": ("1", "2"), "x": "3"}, 'the "[" here is not closed'),
        ("{x: 1 side: left}", {"x": "1", "side": "left"}, 'a comma is missing after the value of "x"'),
        ("{x: 1, tank: {of: water}}}", {"x": "1", "tank": {"of": "water"}}, 'one "}" too many'),
        ("{note: a: b, wieght: 3}", {"note": "a: b, wieght: 3"}, 'note: "a: b, wieght: 3"'),
        ("{x: 1, note: http://a.b: c, x: 2}", {"x": "1", "note": "http://a.b: c"}, '"x" is written twice'),
    ],
)
def test_a_broken_item_is_cut_only_at_known_keys(written: str, read: Tree, told: str) -> None:
    document = read_document(f"parts:\n  a: {written}  # mine\n  b: {{x: 9}}\n")
    assert document.tree["parts"] == {"a": read, "b": {"x": "9"}}
    assert told in " / ".join(problem.says for problem in document.problems)
    assert document.troubled == {"parts[a]"}


def test_the_known_keys_decide_where_an_item_is_cut() -> None:
    text = "parts:\n  a: {note: a: b, colour: red}\n"
    assert read_document(text).tree["parts"] == {"a": {"note": "a: b, colour: red"}}
    cut = read_document(text, known_keys=frozenset({"note", "colour"}))
    assert cut.tree["parts"] == {"a": {"note": "a: b", "colour": "red"}}


def test_a_thing_swallowed_by_the_one_above_it_is_seen() -> None:
    # Both texts are YAML, but not the YAML that was meant: b would vanish into a.
    quote = read_document('parts:\n  a: {size: "5 x 3}\n  b: {size: 6", x: 1}\n')
    assert set(quote.tree["parts"] or ()) == {"a", "b"}
    brace = read_document("parts:\n  a: {x: 1,\n  b: {x: 2}}\n")
    assert brace.tree["parts"] == {"a": {"x": "1"}, "b": {"x": "2"}}
    assert quote.problems[0].line == brace.problems[0].line == 2


def test_a_text_over_several_lines_is_no_damage() -> None:
    text = 'parts:\n  a: {note: "one\n      two: three", x: 1,\n      y: {z: 1}}\n'
    document = read_document(text)
    assert document.tree["parts"] == {"a": {"note": "one two: three", "x": "1", "y": {"z": "1"}}}
    assert document.problems == ()


def test_a_damaged_wall_keeps_its_other_layers() -> None:
    text = rig_text("whimbrel").replace("strip: {of: foam tape, thick: 1/4", "strip: {of: foam: tape, thick: 1/4", 1)
    walls, sound = read_document(text).tree["walls"], read_document(rig_text("whimbrel")).tree["walls"]
    assert isinstance(walls, dict)
    assert isinstance(sound, dict)
    expected = {**sound["left"]["layers"], "strip": {**sound["left"]["layers"]["strip"], "of": "foam: tape"}}
    assert walls == {**sound, "left": {"layers": expected}}
    line = text.count("\n", 0, text.index("strip: {of: foam: tape")) + 1
    assert read_document(text).spot("walls[left].layers[strip].thick").line == line


def test_a_section_whose_colon_is_missing_is_still_that_section() -> None:
    text = rig_text("dunlin").replace("\nstages: ", "\nstages ", 1)
    assert set(read_document(text).tree) == set(read_document(rig_text("dunlin")).tree)
    assert read_document(text).tree["stages"] == read_document(rig_text("dunlin")).tree["stages"]


def test_a_stray_line_is_left_out_and_said() -> None:
    document = read_document("class: cargo\n%%% what }{\nparts:\n  a: {x: 1}\n  ]]\n  b: {x: 2}\n")
    assert document.tree["parts"] == {"a": {"x": "1"}, "b": {"x": "2"}}
    assert {problem.line for problem in document.problems} & {2, 3}


def test_half_a_file_keeps_what_stands_before_the_cut() -> None:
    text = rig_text("whimbrel")
    sound = read_document(text)
    starts = [sound.span(f"parts[{name}]")[0] for name in sound.tree["parts"] or ()]
    for number, (_, start) in enumerate(pairwise(starts)):
        cut = read_document(text[: start + 30]).tree["parts"]
        assert isinstance(cut, dict)
        kept = list(sound.tree["parts"] or ())[: number + 1]
        assert [name for name in kept if cut.get(name) != sound.piece("parts", str(name))] == []
