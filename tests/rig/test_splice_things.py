"""Things, keys and elements added, taken out, copied and renamed: the named ones change, and not a character more."""

from __future__ import annotations

import random
from collections.abc import Callable, Sequence
from typing import TypeAlias

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ruamel.yaml import YAML
from ruamel.yaml.nodes import MappingNode, Node, ScalarNode

from boxwright.finding import Problem
from boxwright.rig.add import add_thing, add_value, copy_thing
from boxwright.rig.change import Change, with_splices
from boxwright.rig.compose import read_rig
from boxwright.rig.document import Document
from boxwright.rig.read import read_document
from boxwright.rig.references import references
from boxwright.rig.remove import remove
from boxwright.rig.rename import rename
from boxwright.rig.splice import tree_at
from boxwright.rig.writing import comments_of
from tests.rig.fuzz_mutations import assert_same, rig_text
from tests.rig.test_splice import all_leaves, hostile_value

Oracle: TypeAlias = "str | Sequence[Oracle | tuple[str, Oracle]]"

ALIGNED = """# a rig
parts:
  # first
  bunk:       {x: 78, at: [1, 2], weight: 40}  # mine
  long-name:  {inside: bunk, x: +1, note: "a, b"}

  stool:      {rides_on: bunk, tank: {of: water}} # last
  # end of parts
loads:
  road: {out: [bunk, stool], tanks: {stool: full}}
"""
BLOCK = """parts:
    bunk:
        x: 78   # edge
        at:
            - 1
            - 2 # two
        # inside
        tank:
            of: water
    stool:
        inside: bunk
        x: +1
loads:
    road:
        out: [bunk]
"""
BRACED = """parts: {bunk: {x: 1, at: [3, 4]}, "a b": {inside: bunk}, stool: {x: 3}}  # all
loads: {road: {out: [bunk]}}
"""
BRACED_LINES = """parts: {
  bunk: {x: 1, at: [1]},   # one, two
  'it''s': {inside: bunk,
    x: +3},
  stool: {x: 3}   # three
}
"""
SPARSE = "parts:\n  bunk:\n  stool: {}\nopenings:   # none yet\n  # such as\n\nloads: {}\nclass: cargo"
STYLES = (ALIGNED, BLOCK, BRACED, BRACED_LINES, SPARSE)
NAMES = ("new", "a-b", "bunk 2", "it's", "a: b", "é", '"q"', "#x", "- d", "x y z", "12", "yes", "?", "a,b", "{", "~")


def shaped(text: str, shape: str) -> str:
    """Return a text with the line ends, the mark at the start and the end of another editor."""
    if "crlf" in shape:
        text = text.replace("\n", "\r\n")
    if "open" in shape:
        text = text.rstrip("\r\n")
    return "\ufeff" + text if "mark" in shape else text


def oracle(text: str) -> Oracle:
    """Return a text as ruamel.yaml (an independent reader) sees it: keys in order, every scalar its text."""

    def tree(node: Node) -> Oracle:
        if isinstance(node, ScalarNode):
            return str(node.value)
        if isinstance(node, MappingNode):
            return [(str(key.value), tree(value)) for key, value in node.value]
        return [tree(element) for element in node.value]

    return tree(YAML(pure=True).compose(text.removeprefix("\ufeff")))


def inside(tree: Oracle, steps: list[str], change: Callable[[Oracle], Oracle]) -> Oracle:
    """Return the oracle's tree with what stands at some steps changed by hand."""
    if not steps:
        return change(tree)
    assert not isinstance(tree, str)
    out: list[tuple[str, Oracle]] = []
    for pair in tree:
        assert isinstance(pair, tuple)
        out.append((pair[0], inside(pair[1], steps[1:], change)) if pair[0] == steps[0] else pair)
    return out


def as_oracle(keys: dict[str, str]) -> Oracle:
    return list(keys.items())


def pairs(tree: Oracle) -> list[tuple[str, Oracle]]:
    """Return the pairs of a group; none of an empty value or an empty pair of braces."""
    return [pair for pair in tree if isinstance(pair, tuple)] if not isinstance(tree, str) else []


def check(document: Document, done: Change, changed: set[tuple[str, str]]) -> None:
    """Assert what holds of every change: read again it is the same, all other things keep their text, no comment
    goes but those of a thing that does."""
    after = with_splices(document, done.splices)
    assert after is not None and after.text == done.document.text
    assert_same(done.document, read_document(done.document.text))
    had = {problem.says for problem in document.problems}
    assert {problem.says for problem in done.document.problems} <= had
    for number, piece in enumerate(document.pieces):
        if piece.section and (piece.section, piece.name) not in changed:
            start, end = document.starts[number], document.starts[number] + piece.extents[""].end
            now = done.document.numbers[piece.section, piece.name]
            at, behind = done.document.starts[now], done.document.pieces[now].extents[""].end
            assert done.document.text[at : at + behind] == document.text[start:end]


def comment_texts(text: str) -> list[str]:
    return [comment for _, comment in comments_of(text)]


shapes = st.sampled_from(("", "crlf", "open", "mark", "crlf open", "crlf mark open"))
chances = st.integers(0, 10_000).map(random.Random)


def keys_of(chance: random.Random) -> dict[str, str]:
    names = chance.sample(("x", "weight", "note", "size", "a b", "k:"), chance.randrange(5))
    return {name: hostile_value(chance)[:300] for name in names}


@given(st.sampled_from(STYLES), shapes, chances)
def test_a_thing_is_added_and_nothing_else_changes(text: str, shape: str, chance: random.Random) -> None:
    document = read_document(shaped(text, shape))
    section = chance.choice(("parts", "parts", "loads", "openings", "measured"))
    named = [piece.name for piece in document.pieces if piece.section == section]
    name, keys, after = chance.choice(NAMES), keys_of(chance), chance.choice(["", *named])
    done = add_thing(document, section, name, keys, after)
    if isinstance(done, Problem):
        is_odd = name in named or name in "{[<>" or any("\r" in value for value in keys.values())
        assert is_odd, (done, name, keys)
        return
    check(document, done, {(section, name)})
    assert done.document.piece(section, name) == keys
    assert comment_texts(done.document.text) == comment_texts(document.text) or any("#" in one for one in keys.values())
    before = oracle(document.text)
    if section not in document.sections:
        assert not isinstance(before, str)
        assert oracle(done.document.text) == [*before, (section, [(name, as_oracle(keys))])]
        return

    def put(tree: Oracle) -> Oracle:
        things = pairs(tree)
        at = next((number + 1 for number, pair in enumerate(things) if pair[0] == after), len(things))
        return [*things[:at], (name, as_oracle(keys)), *things[at:]]

    assert oracle(done.document.text) == inside(before, [section], put)


@given(st.sampled_from(STYLES), shapes, chances)
def test_a_thing_is_taken_out_with_its_own_comment_only(text: str, shape: str, chance: random.Random) -> None:
    document = read_document(shaped(text, shape))
    piece = chance.choice([piece for piece in document.pieces if piece.section])
    done = remove(document, piece.path)
    assert isinstance(done, Change), done
    check(document, done, {(piece.section, piece.name)})
    gone = inside(oracle(document.text), [piece.section],
                  lambda tree: [pair for pair in pairs(tree) if pair[0] != piece.name] or "")  # fmt: skip
    assert oracle(done.document.text) in (gone, inside(gone, [piece.section], lambda tree: tree or []))
    number = document.numbers[piece.section, piece.name]
    start = document.starts[number]
    own = comment_texts(document.text[start : start + piece.length + 20].splitlines()[0]) + comment_texts(
        document.text[start : start + piece.length])  # fmt: skip
    lost = set(comment_texts(document.text)) - set(comment_texts(done.document.text))
    assert lost <= set(own)


@given(st.sampled_from(STYLES), shapes, chances)
def test_a_key_is_added_and_taken_out_again(text: str, shape: str, chance: random.Random) -> None:
    document = read_document(shaped(text, shape))
    piece = chance.choice([piece for piece in document.pieces if piece.section])
    value = hostile_value(chance)[:300]
    path = f"{piece.path}.{chance.choice(('colour', 'hinge.edge', 'a.b.c', 'screws.into.x'))}"
    done = add_value(document, path, value)
    assert isinstance(done, Change), (done, path, value)
    check(document, done, {(piece.section, piece.name)})
    assert tree_at(done.document, path) == value
    first = path[: len(piece.path)] + "." + path[len(piece.path) + 1 :].partition(".")[0]
    back = remove(done.document, first)
    assert isinstance(back, Change), back
    if piece.tree:
        assert back.document.text == document.text
    else:
        assert not tree_at(back.document, piece.path)


@given(st.sampled_from(STYLES), shapes, chances)
def test_every_key_and_element_can_be_taken_out(text: str, shape: str, chance: random.Random) -> None:
    document = read_document(shaped(text, shape))
    places = [(piece, suffix) for piece in document.pieces if piece.section for suffix in piece.extents if suffix]
    if not places:
        return
    piece, suffix = chance.choice(places)
    done = remove(document, piece.path + suffix)
    assert isinstance(done, Change), (done, piece.path + suffix)
    check(document, done, {(piece.section, piece.name)})


@given(st.sampled_from((ALIGNED, BLOCK, BRACED, BRACED_LINES)), shapes, chances)
def test_a_thing_is_renamed_wherever_it_is_named(text: str, shape: str, chance: random.Random) -> None:
    document, name = read_document(shaped(text, shape)), chance.choice([one for one in NAMES if one != "{"])
    old = chance.choice(("bunk", "stool"))
    done = rename(document, "parts", old, name)
    if ("parts", name) in document.numbers:
        assert isinstance(done, Problem)
        return
    assert isinstance(done, Change), (done, name)

    def renamed(tree: Oracle) -> Oracle:
        if isinstance(tree, str):
            return name if tree == old else tree
        out: list[Oracle | tuple[str, Oracle]] = []
        for one in tree:
            is_pair = isinstance(one, tuple)
            out.append((name if one[0] == old else str(one[0]), renamed(one[1])) if is_pair else renamed(one))
        return out

    assert oracle(done.document.text) == renamed(oracle(document.text))
    assert comment_texts(done.document.text) == comment_texts(document.text) or "#" in name
    back = rename(done.document, "parts", name, old)
    assert isinstance(back, Change)
    assert oracle(back.document.text) == oracle(document.text)


@pytest.mark.parametrize(
    ("rig", "count"),
    [
        ("whimbrel", 8),
        ("dunlin", 8),
        pytest.param("whimbrel", 50, marks=pytest.mark.nightly),
        pytest.param("dunlin", 40, marks=pytest.mark.nightly),
    ],
)
def test_every_part_and_opening_of_a_demo_can_be_renamed_and_nothing_is_lost(rig: str, count: int) -> None:
    document = read_rig(rig_text(rig)).document
    problems = {problem.says for problem in read_rig(document.text).problems}
    chance = random.Random(3)
    things = [(piece.section, piece.name) for piece in document.pieces
              if piece.section in ("parts", "openings", "stages", "people", "loads")]  # fmt: skip
    for section, name in chance.sample(things, min(count, len(things))):
        done = rename(document, section, name, "brand-new")
        assert isinstance(done, Change), (done, name)
        after = {problem.says.replace("brand-new", name) for problem in read_rig(done.document.text).problems}
        assert after <= problems
        assert references(done.document, section, name) == ()
        changed = {(section, name), *(_holder(one.path) for one in references(document, section, name))}
        check(document, done, changed)


def _holder(path: str) -> tuple[str, str]:
    section, _, rest = path.partition("[")
    return section, rest.partition("]")[0]


def test_a_copy_is_the_same_under_another_name() -> None:
    for text in STYLES:
        document = read_document(text)
        done = copy_thing(document, "parts", "bunk", "bunk-2")
        assert isinstance(done, Change)
        check(document, done, {("parts", "bunk-2")})
        assert done.document.piece("parts", "bunk-2") == document.piece("parts", "bunk")
        names = [piece.name for piece in done.document.pieces if piece.section == "parts"]
        assert names[names.index("bunk") + 1] == "bunk-2"


def test_a_new_thing_is_written_as_its_neighbours_are() -> None:
    for text, line in (
        (ALIGNED, '  box:        {x: 3, note: "a, b"}  # new'),
        (BRACED, ', box: {x: 3, note: "a, b"}}  # all'),
        (BRACED_LINES, '  stool: {x: 3},   # three\n  box: {x: 3, note: "a, b"}'),
        (BLOCK, "        x: +1\n    box:\n        x: 3\n        note: a, b"),
    ):
        comment = "new" if text is ALIGNED else ""
        done = add_thing(read_document(text), "parts", "box", {"x": "3", "note": "a, b"}, comment=comment)
        assert isinstance(done, Change)
        assert line in done.document.text


def test_the_comment_of_a_new_thing_stands_in_the_column_of_the_others() -> None:
    text = "parts:\n  a: {x: 1}      # one\n  bb: {x: 1}     # two\n"
    done = add_thing(read_document(text), "parts", "c", {"x": "11"}, comment="three\nlines")
    assert isinstance(done, Change)
    assert done.document.text == text + "  c: {x: 11}     # three lines\n"


def test_what_names_a_thing_that_goes_is_told() -> None:
    done = remove(read_document(ALIGNED), "parts[stool]")
    assert isinstance(done, Change)
    assert done.says == ("loads[road].out[1] names stool", "loads[road].tanks.stool names stool")


def test_remarks_with_the_old_name_are_told_and_stay() -> None:
    text = "parts:\n  bunk: {x: 1, note: the bunk}  # bunk\n  # bunks\n  a: {inside: bunk}\n"
    done = rename(read_document(text), "parts", "bunk", "bed")
    assert isinstance(done, Change)
    assert done.document.text == "parts:\n  bed: {x: 1, note: the bunk}  # bunk\n  # bunks\n  a: {inside: bed}\n"
    assert done.says == ('remarks that hold the word "bunk" stay as they are: line 2',)


def test_a_name_in_a_route_a_strap_and_a_path_is_followed() -> None:
    text = (
        "parts:\n  rings: {x: 1}\n  rings left: {x: 2}\nopenings:\n  gland: {wall: roof}\n"
        "straps:\n  s: {over: rings, to: [rings 2, rings left 2, unknown]}\n"
        "wires:\n  w: {from: rings, to: left x1, route: roof x8 > gland > inside rings left > rings x2}\n"
        'accepted:\n  a: {code: x, where: "parts[rings].x"}\n'
    )
    done = rename(read_document(text), "parts", "rings", "eyes")
    assert isinstance(done, Change)
    assert "to: [eyes 2, rings left 2, unknown]" in done.document.text
    assert "route: roof x8 > gland > inside rings left > eyes x2" in done.document.text
    assert 'where: "parts[eyes].x"' in done.document.text
    other = rename(read_document(text), "openings", "gland", "hole: wet")
    assert isinstance(other, Change)
    assert 'route: "roof x8 > hole: wet > inside rings left > rings x2"' in other.document.text


@pytest.mark.parametrize(
    ("text", "act", "says"),
    [
        (ALIGNED, lambda one: add_thing(one, "parts", "bunk", {}), "already"),
        (ALIGNED, lambda one: add_thing(one, "colours", "red", {}), "no named things"),
        (ALIGNED, lambda one: add_thing(one, "parts", "a\nb", {}), "no name can hold"),
        (ALIGNED, lambda one: add_thing(one, "parts", " ", {}), "no name"),
        (ALIGNED, lambda one: add_thing(one, "parts", "n", {"x": "a\x00"}), "cannot be shown"),
        (ALIGNED, lambda one: add_thing(one, "parts", "n", {}, after="nobody"), "to put it after"),
        (ALIGNED, lambda one: copy_thing(one, "parts", "nobody", "n"), "to copy"),
        (ALIGNED, lambda one: rename(one, "parts", "nobody", "n"), "to rename"),
        (ALIGNED, lambda one: rename(one, "parts", "bunk", "stool"), "already"),
        (ALIGNED, lambda one: rename(one, "parts", "bunk", "all"), "of its own"),
        (ALIGNED, lambda one: remove(one, "parts"), "whole section"),
        (ALIGNED, lambda one: remove(one, "parts[bunk].colour"), "to take out"),
        (ALIGNED, lambda one: add_value(one, "parts[bunk].x", "3"), "already"),
        (ALIGNED, lambda one: add_value(one, "parts[bunk].x.y", "3"), "no keys"),
        (ALIGNED, lambda one: add_value(one, "parts[nobody].x", "3"), "add that first"),
        (ALIGNED, lambda one: add_value(one, "colour", "3"), "no key"),
        ("parts:\n- a: 1\n", lambda one: add_thing(one, "parts", "n", {}), "nothing else changes"),
        ("parts: none\n", lambda one: add_thing(one, "parts", "n", {}), "nothing else changes"),
        ("parts:\n  a: {x: 1\n  b: {x: 2}\n", lambda one: add_thing(one, "parts", "n", {}), "as a whole"),
        ("parts:\n  a: {x: 1}\n  a: {x: 2}\n", lambda one: remove(one, "parts[a]"), "nothing else changes"),
        ("parts:\n  a: {x: 1}\nopenings:\n  a: {inside: a}\nwires:\n  w: {from: a}\n",
         lambda one: rename(one, "parts", "a", "b"), "another section"),
    ],
)  # fmt: skip
def test_what_cannot_be_done_is_refused_in_words(
    text: str, act: Callable[[Document], Change | Problem], says: str
) -> None:
    done = act(read_document(text))
    assert isinstance(done, Problem)
    assert says in done.says


def test_a_tab_in_the_indent_is_kept() -> None:
    done = add_thing(read_document("parts:\n\ta: {x: 1}\n"), "parts", "b", {"x": "2"})
    assert isinstance(done, Change)
    assert done.document.text == "parts:\n\ta: {x: 1}\n\tb: {x: 2}\n"


@pytest.mark.nightly
def test_three_thousand_hostile_things_and_keys_change_nothing_else() -> None:
    document, chance = read_document(rig_text("whimbrel")), random.Random(9)
    leaves = all_leaves(document)
    for turn in range(3_000):
        value = hostile_value(chance)
        if turn % 3 == 0:
            done = add_thing(document, chance.choice(("parts", "openings", "measured")), f"n{turn}", {"note": value})
        elif turn % 3 == 1:
            path = chance.choice([piece.path for piece in document.pieces if piece.section not in ("", "walls")])
            done = add_value(document, f"{path}.brand_new", value)
        else:
            done = remove(document, chance.choice(leaves))
            assert not isinstance(done, Problem) or "at the top of the file" in done.says, done
            continue
        assert isinstance(done, Change), (done, value)
