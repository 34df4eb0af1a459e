"""Reading a whole rig text: every scalar is its text, every value has its place, every oddity is said."""

from __future__ import annotations

from itertools import pairwise

import pytest
from ruamel.yaml import YAML
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode

from boxwright.rig.document import Document, Tree
from boxwright.rig.read import Spot, read_document
from tests.rig.fuzz_mutations import NAMES, assert_same, rig_text


def oracle_tree(node: Node) -> Tree:
    """Return the text tree of a node composed by ruamel.yaml, an independent YAML reader."""
    if isinstance(node, ScalarNode):
        return None if node.value == "" and node.style is None else str(node.value)
    if isinstance(node, MappingNode):
        return {str(key.value): oracle_tree(value) for key, value in node.value}
    return tuple(oracle_tree(element) for element in node.value)


def says(document: Document) -> str:
    return " / ".join(problem.says for problem in document.problems)


@pytest.mark.parametrize("name", NAMES)
def test_a_demo_rig_reads_as_an_independent_reader_reads_it(name: str) -> None:
    # Oracle: ruamel.yaml, pure Python, its nodes before any type is given to them.
    document = read_document(rig_text(name))
    assert document.tree == oracle_tree(YAML(pure=True).compose(rig_text(name)))
    assert document.problems == ()
    assert document.troubled == frozenset()
    assert document.pieces_read == 1


def test_counts_of_the_first_demo_rig() -> None:
    # The counts stand in the notes to the demo rigs: 71 parts, 20 wires, 11 stages, 5 load states, 2 tow vehicles.
    tree = read_document(rig_text("whimbrel")).tree
    counts = {section: len(tree[section] or ()) for section in ("parts", "wires", "stages", "loads", "tow")}
    assert counts == {"parts": 71, "wires": 20, "stages": 11, "loads": 5, "tow": 2}


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("parts[bunk].weight", "144"),
        ("walls[left].layers[foam].thick", "1 1/2"),
        ("walls[bay left 4-5].layers[foam].of", "XPS"),
        ("trailer.tyres.load", "1820 each"),
        ("parts[bunk].hinge.at[2]", "104"),
        ("places[Greensboro NC].lat", "36.07"),
        ("measured[studs-left].values.7", "112 3/8"),
        ("class", "cargo"),
    ],
)
def test_a_path_leads_to_the_value_in_the_text(path: str, value: str) -> None:
    document = read_document(rig_text("whimbrel"))
    spot = document.spot(path)
    assert document.text.splitlines()[spot.line - 1][spot.column - 1 :].startswith(value)


def test_a_path_that_is_not_written_leads_to_its_nearest_parent() -> None:
    document = read_document(rig_text("whimbrel"))
    assert document.spot("parts[bunk].hinge.colour") == document.spot("parts[bunk].hinge")
    assert document.spot("parts[bunk].colour.of") == document.spot("parts[bunk]")
    assert document.spot("parts[ghost].x") == document.spot("parts")
    assert document.spot("nothing at all") == Spot(1, 1)


def test_spots_of_keys_values_and_spans_by_hand() -> None:
    text = 'parts:\n  bay 4:5:\n    x: 1  # first\n    note: "a, b"   # last\n\n  "b.c": {x: 2}\n'
    document = read_document(text)
    assert document.key_spot("parts[bay 4:5]") == Spot(2, 3)
    assert document.spot("parts[bay 4:5].x") == Spot(3, 8)
    assert document.key_spot("parts[bay 4:5].note") == Spot(4, 5)
    assert document.spot("parts[b.c].x") == Spot(6, 14)
    start, end = document.span("parts[bay 4:5]")
    assert text[start:end] == 'bay 4:5:\n    x: 1  # first\n    note: "a, b"   # last'
    start, end = document.span("parts[b.c].x")
    assert text[start:end] == '"b.c": {x: 2}'


def test_every_scalar_stays_its_text() -> None:
    # The YAML 1.1 traps: no, a date, a sexagesimal 12:30, octal 010, 1e3, null; recalled, from memory.
    written = ("no", "2026-05-02", "12:30", "010", "1e3", "null", "~", "0x1F", ".inf", "1_000", "6' 5 3/4\"", "+3")
    document = read_document("parts:\n" + "".join(f"  p{n}: {{x: {text}}}\n" for n, text in enumerate(written)))
    parts = document.tree["parts"]
    assert isinstance(parts, dict)
    assert [part["x"] for part in parts.values()] == list(written)
    assert document.problems == ()


def test_a_key_without_value_is_none_and_an_empty_text_is_not() -> None:
    assert read_document('parts:\n  a: {x: , note: ""}\n  b:\n').tree["parts"] == {
        "a": {"x": None, "note": ""},
        "b": None,
    }


def test_line_ends_and_a_byte_order_mark_change_nothing_but_the_text() -> None:
    plain = rig_text("dunlin")
    for text in (plain.replace("\n", "\r\n"), plain.replace("\n", "\r"), "\ufeff" + plain):
        document, expected = read_document(text), read_document(plain)
        assert document.tree == expected.tree
        assert document.problems == ()
        assert document.text == text
        for path in ("parts[bench-bed].hinge.at[1]", "boxwright", "wires[main].fuse.amps"):
            assert document.spot(path) == expected.spot(path)
            assert document.key_spot(path) == expected.key_spot(path)


def test_bytes_read_as_their_text() -> None:
    text = rig_text("dunlin")
    assert_same(read_document(text.encode()), read_document(text))
    utf_16 = read_document(text.encode("utf-16"))
    assert utf_16.tree == read_document(text).tree
    assert [problem.kind for problem in utf_16.problems] == ["note"]
    assert utf_16.troubled == frozenset()


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
def test_a_byte_that_is_not_utf_8_is_said_where_it_stands(mark: bytes) -> None:
    document = read_document(mark + b"parts:\n  a: {note: caf\xe9}\n")
    assert document.tree["parts"] == {"a": {"note": "caf\xe9"}}
    assert [(problem.line, problem.column) for problem in document.problems] == [(2, 16)]
    assert "" in document.troubled


def test_tabs_in_the_indentation_are_read_and_said() -> None:
    document = read_document("parts:\n\ta: {x: 1}\n\tb:\n\t\tx: 2\n\t# \tmine\n")
    assert document.tree["parts"] == {"a": {"x": "1"}, "b": {"x": "2"}}
    assert [(problem.line, problem.column) for problem in document.problems] == [(2, 1)]
    assert "this line and 2 more are indented with tabs" in says(document)
    assert document.spot("parts[b].x") == Spot(4, 6)
    mixed = read_document("parts:\n    a: {x: 1}\n\tb: {x: 2}\n")
    assert mixed.tree["parts"] == {"a": {"x": "1"}, "b": {"x": "2"}}


def test_what_cannot_be_shown_is_said() -> None:
    document = read_document("parts:\n  a: {note: a\x00b\u2028c, x: 1}\n")
    assert document.tree["parts"] == {"a": {"note": "a b c", "x": "1"}}
    assert [(problem.line, problem.column) for problem in document.problems] == [(2, 14)]
    escaped = read_document('parts:\n  a: {note: "a\\0b"}\n')
    assert escaped.tree["parts"] == {"a": {"note": "a b"}}
    assert escaped.troubled == {"parts[a]"}


def test_names_written_twice_are_both_kept() -> None:
    document = read_document("parts:\n  a: {x: 1}\n  a: {x: 2}\n  a-2: {x: 3}\n  a: {x: 4}\n")
    assert document.tree["parts"] == {"a": {"x": "1"}, "a-2": {"x": "2"}, "a-2-2": {"x": "3"}, "a-3": {"x": "4"}}
    assert [problem.line for problem in document.problems] == [3, 4, 5]
    walls = "walls:\n  left:\n    layers:\n      foam: {thick: 1}\n      foam: {thick: 2}\n"
    assert read_document(walls).tree["walls"] == {
        "left": {"layers": {"foam": {"thick": "1"}, "foam-2": {"thick": "2"}}}
    }


def test_sections_and_keys_written_twice() -> None:
    document = read_document("parts:\n  a: {x: 1, x: 2}\nclass: cargo\nparts:\n  b: {x: 3}\nclass: camper\n")
    assert document.tree == {"parts": {"a": {"x": "1"}, "b": {"x": "3"}}, "class": "cargo"}
    assert [(problem.line, problem.path) for problem in document.problems] == [
        (2, "parts[a].x"),
        (4, "parts"),
        (6, "class"),
    ]
    assert document.troubled == {"parts[a]", "parts", "class"}
    assert all("the first one counts" in document.problems[number].says for number in (0, 2))


def test_references_tags_and_merge_keys_are_refused_and_the_rest_is_read() -> None:
    document = read_document(
        "parts:\n  a: &d {x: 1}\n  b: {<<: *d, y: 2, z: *d}\n  c: {note: !mine it is, x: !!int 3}\n"
    )
    assert document.tree["parts"] == {
        "a": {"x": "1"},
        "b": {"y": "2", "z": None},
        "c": {"note": "!mine it is", "x": "!!int 3"},
    }
    assert document.troubled == {"parts[a]", "parts[b]", "parts[c]"}
    assert [problem.line for problem in document.problems] == [2, 3, 3, 4, 4]


def test_an_alias_bomb_is_one_pass() -> None:
    names = "abcdefghijklmnopqrst"
    text = "a: &a [x, x]\n" + "".join(f"{one}: &{one} [*{up}, *{up}]\n" for up, one in pairwise(names))
    document = read_document(text)
    assert document.pieces_read == 1
    assert document.tree["t"] == (None, None)


def test_a_second_document_is_not_read_and_said() -> None:
    document = read_document("---\nclass: cargo\n---\nclass: camper\n")
    assert document.tree == {"class": "cargo"}
    assert [problem.line for problem in document.problems] == [3]
    assert document.troubled == {""}


def test_a_list_of_parts_is_read_as_named_parts() -> None:
    document = read_document("parts:\n  - battery: {x: 1}\n  - {name: fridge, x: 2}\n  - {x: 3}\n  - step\n")
    expected = {"battery": {"x": "1"}, "fridge": {"name": "fridge", "x": "2"}, "3": {"x": "3"}, "step": None}
    assert document.tree["parts"] == expected
    assert "holds a list; names were expected" in says(document)


@pytest.mark.parametrize("text", ["", "\n\n# nothing\n", "hello", "- a\n- b\n", "parts", "{", "\ufeff"])
def test_a_text_that_is_no_rig_is_said(text: str) -> None:
    document = read_document(text)
    assert document.tree.get("parts", {}) in ({}, None)
    assert document.problems
    assert document.troubled


def test_a_thing_that_is_not_indented_belongs_to_the_section_above_it() -> None:
    document = read_document("parts:\n  a: {x: 1}\nb: {x: 2, weight: 3}\nclass: cargo\n")
    assert document.tree == {"parts": {"a": {"x": "1"}, "b": {"x": "2", "weight": "3"}}, "class": "cargo"}
    assert "write two spaces before it" in says(document)
    assert document.troubled == {"parts[b]"}


@pytest.mark.parametrize(
    "written", ["stuff: {}", "tyres: {size: ST205}", "empty: {weight: 1960, tongue: 235}", "b: {x: 2, weight: }"]
)
@pytest.mark.parametrize("damage", ["", "%%% }{\n"])
def test_a_key_in_braces_without_place_and_weight_is_a_key_of_the_file_and_no_part(written: str, damage: str) -> None:
    document = read_document(f"parts:\n  a: {{x: 1}}\n{written}\nclass: cargo\n{damage}")
    assert document.tree["parts"] == {"a": {"x": "1"}}
    assert list(document.tree) == ["parts", written.split(":")[0], "class"]
    assert "is not indented, so it was not read as one of parts" in says(document)
    assert "parts" in document.troubled


def test_a_weight_without_a_value_is_said_in_words_of_its_own() -> None:
    blank = "weight has no value; it is unknown until you write it"
    for written in ("{x: 3, weight: , side: left}", "{x: 3, weight:, side: left}"):
        document = read_document(f"parts:\n  bed: {written}\n")
        assert document.tree["parts"] == {"bed": {"x": "3", "weight": None, "side": "left"}}
        assert [(one.line, one.path, one.says) for one in document.problems] == [(2, "parts[bed].weight", blank)]


@pytest.mark.parametrize(
    ("written", "read"),
    [
        ("{x: 1, side:right-1}", {"x": "1", "side": "right-1"}),
        ("{weight 47, x: 1}", {"weight": "47", "x": "1"}),
        ("{note: door, left side, x: 1}", {"note": "door, left side", "x": "1"}),
        ("{note: one, two, three}", {"note": "one, two, three"}),
        ("{note: left, weight 47 of it}", {"note": "left, weight 47 of it"}),
        ("{size=3 x 4}", {"size": "3 x 4"}),
    ],
)
def test_a_slip_inside_braces_is_read_as_it_was_meant_and_said(written: str, read: Tree) -> None:
    document = read_document(f"parts:\n  a: {written}\n")
    assert document.tree["parts"] == {"a": read}
    assert document.troubled == {"parts[a]"}
    assert len(document.problems) == 1


def test_limits_of_depth_length_and_size() -> None:
    assert read_document("a: " + "{a: " * 11 + "1" + "}" * 11).problems == ()
    assert "more than 12 deep" in says(read_document("a: " + "{a: " * 12 + "1" + "}" * 12))
    assert read_document("rig: " + "x" * 2_000).problems == ()
    long = read_document("rig: " + "x" * 2_001)
    assert long.tree == {"rig": None}
    assert long.troubled == {"rig"}
    large = read_document(b"class: cargo\n" * 400_000)
    assert large.tree == {}
    assert "Boxwright reads up to 5 MB" in says(large)
    assert large.pieces_read == 0


def test_problems_are_at_most_two_hundred_and_the_rest_is_counted() -> None:
    document = read_document("parts:\n" + "  a: {x: 1}\n" * 301)
    assert len(document.problems) == 201
    assert document.problems[-1].says.startswith("there are 100 more problems")
