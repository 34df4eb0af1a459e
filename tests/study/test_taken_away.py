"""No warning goes away in silence: where a value of a rig becomes unknown, what it warned of is asked for instead.

Each value of a demo rig is written as unknown, one at a time. In every use in which a stop, a limit or a question is
lost by that, another one must have come, or one that stays must have become worse.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

import pytest

from boxwright.finding import USES, Kind, Use
from boxwright.rig.compose import read_rig
from boxwright.study.slots import study
from tests.lanes import every_so_many
from tests.study.demo import RIGS, TODAY

Told = dict[tuple[Use, str, str], Kind]
VALUE = re.compile(r"(?<=[\w]: )(?=(\"[^\"]*\"|\[[^\]\[{}]*\]|\{[^{}]*\}|[^,{}\[\]\n#]+))")
"""A word, a list or a table of one line behind its key; what stands within a table is found besides the table."""
BEARS_ON_AN_ANSWER: dict[Kind, int] = {"stop": 0, "unknown": 1, "limit": 2}


@cache
def text_of(demo: str) -> str:
    return (RIGS / f"{demo}.yaml").read_text(encoding="utf-8")


def told(text: str) -> Told:
    """Return the kind of all that bears on an answer, by use, rule and place."""
    found = study(read_rig(text).rig, TODAY)
    return {
        (use, one.code, one.where): one.kind
        for use in USES
        for one in found.findings(use)
        if one.kind in BEARS_ON_AN_ANSWER
    }


@cache
def told_of(demo: str) -> Told:
    return told(text_of(demo))


def values(demo: str) -> Iterator[tuple[str, int, int]]:
    """Give the place of each value of a demo rig that is written on one line, outside its comments."""
    text = text_of(demo)
    for value in VALUE.finditer(text):
        before = text[text.rfind("\n", 0, value.start()) + 1 : value.start()]
        if "#" not in before:
            yield demo, value.start(1), value.end(1)


def test_the_values_tried_are_those_of_the_rig() -> None:
    tried = {text_of("dunlin")[start:end] for _, start, end in values("dunlin")}
    assert len(list(values("dunlin"))) > 500
    assert {"poplar ply", "inside"} <= {one.strip() for one in tried}


@pytest.mark.parametrize(("demo", "start", "end"), every_so_many(values("dunlin"), 40))
def test_a_value_that_becomes_unknown_takes_no_warning_away_in_silence(demo: str, start: int, end: int) -> None:
    text, before = text_of(demo), told_of(demo)
    after = told(f"{text[:start]}unknown{text[end:]}")
    lost = {key for key, kind in before.items() if key not in after or (kind != "limit" and after[key] == "limit")}
    come = {key for key, kind in after.items()
            if key not in before or BEARS_ON_AN_ANSWER[kind] < BEARS_ON_AN_ANSWER[before[key]]}  # fmt: skip
    assert {key[0] for key in lost} <= {key[0] for key in come}, (text[start - 30 : end], sorted(lost))
