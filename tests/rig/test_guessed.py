"""What a beginner writes from memory is answered with how the file says it; sentences and words are our own."""

from __future__ import annotations

import pytest

from boxwright.rig.compose import read_rig
from boxwright.rig.guessed import OTHER_KEYS, OTHER_SECTIONS
from boxwright.rig.keys import OWNER_OF_KEY, OWNER_OF_SECTION

HEAD = "boxwright: 1\nrig: Kestrel\nunits: {length: in, weight: lb, temperature: F}\n"


def problems(text: str) -> list[str]:
    return [one.says for one in read_rig(text).problems]


@pytest.mark.parametrize("word", OTHER_SECTIONS)
def test_a_section_by_another_name_is_answered_with_ours(word: str) -> None:
    assert word not in OWNER_OF_SECTION
    assert OTHER_SECTIONS[word].partition(":")[0] in OWNER_OF_SECTION
    assert f'no section "{word}" is known; write it as {OTHER_SECTIONS[word]}' in problems(f"{HEAD}{word}: thing\n")


@pytest.mark.parametrize("word", OTHER_KEYS)
def test_a_key_by_another_name_is_answered_with_ours(word: str) -> None:
    assert word not in OWNER_OF_KEY
    assert OTHER_KEYS[word].partition(":")[0] in OWNER_OF_KEY
    said = f'no key "{word}" is known here; write it as {OTHER_KEYS[word]}'
    assert said in problems(f"{HEAD}parts:\n  crate: {{x: 10, {word}: 3}}\n")


@pytest.mark.parametrize(
    ("line", "says"),
    [
        (
            "length: 14 ft",
            '"length" stands in a map of its own; write it as body: {length: ..} or outside: {length: ..}',
        ),
        ("tongue: 230 lb", '"tongue" stands in a map of its own; write it as empty: {tongue: ..}'),
        ("axles: 2", '"2" stands where a map is expected; write it as axles: {kind: .., x: .., gawr: .., track: ..}'),
    ],
)
def test_what_belongs_in_a_map_within_the_trailer_is_led_there(line: str, says: str) -> None:
    assert says in problems(f"{HEAD}trailer:\n  {line}\n")


def test_what_belongs_under_the_trailer_is_led_there() -> None:
    assert 'no section "axles" is known; write axles under trailer:, indented' in problems(f"{HEAD}axles: 2\n")


@pytest.mark.parametrize("key", ["units", "today"])
def test_a_word_where_a_line_of_the_head_stands_is_shown_that_line(key: str) -> None:
    text = HEAD.replace("units: {length: in, weight: lb, temperature: F}\n", "") + f"{key}: us\n"
    (said,) = [one for one in problems(text) if one.startswith(f"{key} takes")]
    line = said.partition("write it as ")[2]
    assert not [one for one in problems(f"boxwright: 1\nrig: Kestrel\nstages:\n  name:\n{line}\n") if key in one]


@pytest.mark.parametrize(("size", "says"), [("32 x 72", "width: 32, height: 72"), ("32", "width: 32, height: ..")])
def test_the_size_of_a_hole_is_its_width_and_height(size: str, says: str) -> None:
    text = f"{HEAD}openings:\n  side-door: {{wall: right, x: 36, z: 0, size: {size}}}\n"
    assert f"a hole has no size but a width and a height; write it as {says}" in problems(text)


def test_a_key_cut_short_is_known_again() -> None:
    said = 'no key "coldest" is known here; did you mean "coldest_design"?'
    assert said in problems(f"{HEAD}places:\n  home: {{coldest: 15}}\n")


def test_everyone_of_a_file_without_load_states_is_inside_while_it_stands() -> None:
    text = f"{HEAD}people:\n  skipper: {{weight: 178}}\n  spotter: {{weight: 141}}\n"
    road, parked = read_rig(text).rig.loads
    assert (road.is_parked, road.people) == (False, ())
    assert (parked.is_parked, parked.people) == (True, ("skipper", "spotter"))


@pytest.mark.parametrize("word", ["right", "material", "brand", "owner", "status", "tongue"])
def test_no_word_is_answered_with_itself_or_with_one_that_no_thing_has(word: str) -> None:
    (said,) = [one for one in problems(f"{HEAD}parts:\n  crate: {{x: 10, {word}: 3}}\n") if "is known here" in one]
    guess = said.partition('did you mean "')[2].partition('"')[0]
    assert guess != word and (not guess or guess in OWNER_OF_KEY)


@pytest.mark.parametrize(("typed", "meant"), [("deisel", "diesel"), ("Deisel", "diesel"), ("propan", "propane")])
def test_a_mistyped_fluid_is_answered_with_the_one_it_is_like(typed: str, meant: str) -> None:
    text = f"{HEAD}parts:\n  can: {{x: 10, tank: {{of: {typed}, volume: 2 gal}}}}\n"
    assert f'"{typed}" is no fluid that is known; did you mean "{meant}"? Write it as of: {meant}' in problems(text)


@pytest.mark.parametrize("typed", ["soup", "unobtainium"])
def test_a_fluid_like_no_other_is_answered_with_all_there_are(typed: str) -> None:
    text = f"{HEAD}parts:\n  can: {{x: 10, tank: {{of: {typed}, volume: 2 gal}}}}\n"
    (said,) = [one for one in problems(text) if "is no fluid" in one]
    assert said.startswith(f'"{typed}" is no fluid that is known; write it as of: water, or another of alcohol,')


@pytest.mark.parametrize("word", ["kind", "type", "fuel"])
def test_what_a_thing_runs_on_is_led_to_of(word: str) -> None:
    text = f"{HEAD}parts:\n  stove: {{x: 10, heater: {{{word}: diesel}}}}\n"
    assert f'no key "{word}" is known here; write what it is, or runs on, as of: ..' in problems(text)


def test_a_list_of_keys_that_is_cut_says_so() -> None:
    text = f"{HEAD}parts:\n  stove: {{x: 10, heater: {{zzz: 1}}}}\n"
    (said,) = [one for one in problems(text) if "zzz" in one]
    assert said.startswith('no key "zzz" is known here; known are adjusts, burn') and said.endswith(" more")


def test_a_hinge_that_is_a_word_is_led_to_how_a_door_swings() -> None:
    text = f"{HEAD}openings:\n  door: {{wall: right, x: 36, width: 32, z: 0, height: 72, hinge: rear}}\n"
    (said,) = [one for one in problems(text) if "hinge" in one]
    assert said.endswith("or swing: {hinge: rear, opens: out}")
