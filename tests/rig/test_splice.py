"""Splices: one value changes, nothing else does, and comments, blank lines and order stay byte for byte."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping

import pytest
from ruamel.yaml import YAML
from ruamel.yaml.error import YAMLError
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode

from boxwright.finding import Problem
from boxwright.rig.document import Document, Tree
from boxwright.rig.read import read_document
from boxwright.rig.splice import Splice, apply, differs_only_at, splice, splice_new, tree_at
from tests.rig.fuzz_mutations import assert_same, rig_text

HOSTILE = (
    *("x", "47 lb", "a, b", "a: b", "a #b", "#x", "?", "'", '"', "{", "}", "[1]", "{a: b}", "- a", "& b", "*x", "!x"),
    *(
        "%a",
        "@b",
        "`",
        "|",
        ">",
        "yes",
        "null",
        "~",
        "",
        "  a",
        "a ",
        "a\nb",
        "\\",
        "\\n",
        "6' 5 3/4\"",
        '1/2" x',
        "a]b",
    ),
    *(
        "é",
        "日本",
        "\ttab",
        "a\tb",
        "12:30",
        "<<",
        "...",
        "---",
        "\n---\n",
        "key:",
        "x" * 2_000,
        "a,b",
        "a:b",
        ",a",
        "a,",
    ),
    *("it's", '"q"', ": ", ":", "-", "- ", "? ", "# a", "a#b", "=", "x: 1}", "1, weight: 3", "left, then right"),
)
LETTERS = "abc:#,{}[]'\"\\ \n-?&*!|>%@`0 1/"


def leaves(tree: Tree, path: str) -> Iterator[str]:
    """Give the rig path of every text below a path."""
    if isinstance(tree, Mapping):
        for key, value in tree.items():
            yield from leaves(value, f"{path}[{key}]" if path.endswith(".layers") else f"{path}.{key}")
    elif isinstance(tree, tuple):
        for number, value in enumerate(tree):
            yield from leaves(value, f"{path}[{number}]")
    else:
        yield path


def all_leaves(document: Document) -> list[str]:
    return [path for piece in document.pieces for path in leaves(piece.tree, piece.path)]


def oracle_leaves(text: str) -> list[str]:
    """Return keys and texts in the order of the file, as ruamel.yaml (an independent reader) sees them."""

    def below(node: Node) -> Iterator[str]:
        if isinstance(node, ScalarNode):
            yield str(node.value)
            return
        for element in node.value:
            for one in element if isinstance(node, MappingNode) else (element,):
                yield from below(one)

    return list(below(YAML(pure=True).compose(text)))


def hostile_value(chance: random.Random) -> str:
    if chance.random() < 0.6:
        return chance.choice(HOSTILE)
    return "".join(chance.choice(LETTERS) for _ in range(chance.randrange(12)))


def check_hostile(document: Document, paths: list[str], chance: random.Random) -> bool:
    """Splice a hostile value in; assert that it and nothing else changed; return whether it was written."""
    path, value = chance.choice(paths), hostile_value(chance)
    done = splice(document, path, value)
    if isinstance(done, Problem):
        return False
    after = apply(document, [done])
    assert tree_at(after, path) == value
    assert_same(after, read_document(after.text))
    assert after.problems == ()
    assert after.text == document.text[: done.start] + done.replacement + document.text[done.end :]
    others = [one for one in paths if one != path]
    assert [one for one in chance.sample(others, 40) if tree_at(after, one) != tree_at(document, one)] == []
    return True


def test_hostile_values_change_one_value_only() -> None:
    document = read_document(rig_text("dunlin"))
    paths, chance = all_leaves(document), random.Random(7)
    assert len(paths) > 400
    assert sum(check_hostile(document, paths, chance) for _ in range(100)) == 100


@pytest.mark.nightly
def test_three_thousand_hostile_values_change_one_value_only() -> None:
    document = read_document(rig_text("whimbrel"))
    paths, chance = all_leaves(document), random.Random(8)
    assert sum(check_hostile(document, paths, chance) for _ in range(3_000)) == 3_000


@pytest.mark.parametrize("value", HOSTILE)
def test_an_independent_reader_sees_one_value_changed(value: str) -> None:
    # Oracle: ruamel.yaml, its nodes before any type is given to them.
    text = rig_text("dunlin")
    document = read_document(text[text.index("parts:") : text.index("  cushion:")])
    path = "parts[bench-bed].weight"
    done = splice(document, path, value)
    assert isinstance(done, Splice)
    before, after = oracle_leaves(document.text), oracle_leaves(apply(document, [done]).text)
    changed = [number for number, (one, other) in enumerate(zip(before, after, strict=True)) if one != other]
    assert [before[number] for number in changed] == ["24"]
    assert [after[number] for number in changed] == [value]


@pytest.mark.parametrize("value", ["a\x00b", "\u2028", "\ufeff", "a\rb", "\ud800", "x" * 2_001])
def test_what_no_text_can_hold_is_refused_in_words(value: str) -> None:
    document = read_document(rig_text("dunlin"))
    done = splice(document, "parts[lathe].weight", value)
    assert isinstance(done, Problem)
    assert (done.line, done.path) == (document.spot("parts[lathe].weight").line, "parts[lathe].weight")


def test_bare_where_it_can_be_and_quoted_where_it_must() -> None:
    document = read_document(rig_text("whimbrel"))
    for value, written in (("6' 5 3/4\"", "6' 5 3/4\""), ("a, b", '"a, b"'), ("", '""'), ("a\nb", '"a\\nb"')):
        done = splice(document, "parts[bunk].weight", value)
        assert isinstance(done, Splice)
        assert (document.text[done.start : done.end], done.replacement) == ("144", written)


def test_line_ends_and_byte_order_mark_stay() -> None:
    text = "\ufeff" + rig_text("dunlin").replace("\n", "\r\n")
    document = read_document(text)
    changed, added = splice(document, "parts[lathe].weight", "70"), splice_new(document, "trailer.note", "new")
    assert isinstance(changed, Splice)
    assert isinstance(added, Splice)
    after = apply(document, [changed, added])
    assert after.text.startswith("\ufeff# Dunlin")
    assert after.text.count("\r\n") == after.text.count("\n") == text.count("\n") + 1
    assert after.text.replace("70, stage", "68, stage", 1).replace("\r\n  note: new", "", 1) == text


@pytest.mark.parametrize(
    ("path", "value", "line"),
    [
        ("parts[a].note", "two, three", '  a: {x: 1, tank: {of: water}, note: "two, three"}   # mine'),
        ("parts[a].tank.volume", "20", "  a: {x: 1, tank: {of: water, volume: 20}}   # mine"),
        ("parts[b].x", "1", "  b: {x: 1}"),
        ("parts[c].x", "1", "  c: {x: 1} # nothing yet"),
        ("parts[d].note", "n", "    note: n"),
        ("walls[left].layers[foam].weight", "16", "      foam: {thick: 1, weight: 16}"),
    ],
)
def test_a_key_is_added_to_a_thing_that_is_there(path: str, value: str, line: str) -> None:
    document = read_document(ADDED_TO)
    done = splice_new(document, path, value)
    assert isinstance(done, Splice)
    after = apply(document, [done])
    assert line in after.text.splitlines()
    assert tree_at(after, path) == value
    assert done.start == done.end
    assert after.problems == ()


ADDED_TO = """parts:
  a: {x: 1, tank: {of: water}}   # mine
  b: {}
  c: # nothing yet
  d:
    x: 1   # last

walls:
  left:
    layers:
      foam: {thick: 1}
"""


@pytest.mark.parametrize("path", ["parts[a].x", "parts[zz].x", "parts[a].x.y", "colour", "parts"])
def test_what_cannot_be_added_is_said(path: str) -> None:
    done = splice_new(read_document(ADDED_TO), path, "1")
    assert isinstance(done, Problem)
    assert len(done.says) > 20


def test_a_key_whose_group_is_missing_is_not_written_with_a_point_in_its_name() -> None:
    done = splice_new(read_document("trailer:\n  body: {length: 3}\n"), "trailer.jack.rating", "1")
    assert isinstance(done, Problem) and 'belongs to "trailer.jack", which is not there' in done.says


def test_what_does_not_belong_to_anything_is_not_called_there_already() -> None:
    done = splice_new(read_document(ADDED_TO), "parts[zz].x", "1")
    assert isinstance(done, Problem) and "there already" not in done.says


@pytest.mark.parametrize("path", ["parts[a].tank", "parts[zz].x", "parts", "parts[a].colour"])
def test_what_cannot_be_changed_is_said(path: str) -> None:
    assert isinstance(splice(read_document(ADDED_TO), path, "1"), Problem)


def test_a_key_without_value_is_given_one() -> None:
    document = read_document("parts:\n  a: {x: , weight}\nclass:\n")
    for path, text in (
        ("parts[a].x", "parts:\n  a: {x: 3, weight}\nclass:\n"),
        ("parts[a].weight", "parts:\n  a: {x: , weight: 3}\nclass:\n"),
        ("class", "parts:\n  a: {x: , weight}\nclass: 3\n"),
    ):
        done = splice(document, path, "3")
        assert isinstance(done, Splice)
        assert apply(document, [done]).text == text


def test_the_fix_of_a_broken_text_is_a_splice_of_what_was_taken() -> None:
    document = read_document("parts:\n  a: {x: 1, note: see: bolt #4, weight: 3}  # mine\n  b: {x: 2}\n")
    taken = tree_at(document, "parts[a].note")
    assert taken == "see: bolt #4"
    done = splice(document, "parts[a].note", taken)
    assert isinstance(done, Splice)
    after = apply(document, [done])
    assert after.text == 'parts:\n  a: {x: 1, note: "see: bolt #4", weight: 3}  # mine\n  b: {x: 2}\n'
    assert (after.tree, after.problems) == (document.tree, ())


def test_a_value_can_be_changed_while_another_place_is_broken() -> None:
    document = read_document("parts:\n  a: {x: 1, note: a: b}\n  b: {x: 2}  # mine\n")
    done = splice(document, "parts[b].x", "3")
    assert isinstance(done, Splice)
    assert apply(document, [done]).text == "parts:\n  a: {x: 1, note: a: b}\n  b: {x: 3}  # mine\n"


def test_splices_are_applied_together_or_refused_where_they_meet() -> None:
    document = read_document("parts:\n  a: {x: 1}\n  b: {x: 2}\n")
    two = [splice(document, "parts[a].x", "10"), splice(document, "parts[b].x", "20")]
    done = [one for one in two if isinstance(one, Splice)]
    assert apply(document, done).text == "parts:\n  a: {x: 10}\n  b: {x: 20}\n"
    with pytest.raises(ValueError, match="overlap"):
        apply(document, [Splice(3, 8, ""), Splice(5, 9, "")])


@pytest.mark.parametrize(
    "after",
    [
        "parts:\n  a: {x: 4, note: n}\n  b: {x: 2}\n",
        "parts:\n  a: {x: 3, note: m}\n  b: {x: 2}\n",
        "parts:\n  a: {x: 3, note: n, z: 1}\n  b: {x: 2}\n",
        "parts:\n  a: {x: 3, note: n}\n  b: {x: 1}\n",
        "parts:\n  a: {x: 3, note: n}\n  b: {x: 2}\n  c:\n",
        "parts:\n  a: {x: 3, note: n}\n  b: {x: 2}\nclass: cargo\n",
        "parts:\n  a: {x:3, note: n}\n  b: {x: 2}\n",
        "parts:\n  a: {x: 3, note: n\n  b: {x: 2}\n",
    ],
)
def test_the_proof_refuses_any_other_change(after: str) -> None:
    before = read_document("parts:\n  a: {x: 1, note: n}\n  b: {x: 2}\n")
    assert differs_only_at(before, read_document("parts:\n  a: {x: 3, note: n}\n  b: {x: 2}\n"), "parts[a].x", "3")
    assert not differs_only_at(before, read_document(after), "parts[a].x", "3")


def test_the_oracle_itself_refuses_what_is_no_yaml() -> None:
    with pytest.raises(YAMLError):
        oracle_leaves("a: {b: c")
