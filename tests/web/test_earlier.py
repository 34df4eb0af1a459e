"""The list of earlier texts says what was changed, and a difference puts both texts together again."""

from __future__ import annotations

import random
import time
from pathlib import Path

import pytest

from boxwright.web import earlier
from boxwright.web.earlier import difference, listed, until_words
from boxwright.web.past import Past

ONE = "rig: one\nparts:\n  bench: {weight: 30}\n  crate: {weight: 5}\n# end\n"
TWO = ONE.replace("30", "31")
THREE = TWO.replace("  crate: {weight: 5}\n", "").replace("rig: one", "rig: three")


@pytest.fixture
def past(tmp_path: Path) -> Past:
    found = Past(tmp_path, "rig.yaml")
    for count, text in enumerate((ONE, TWO, THREE)):
        found.keep(text.encode(), None, 1_000_000_000.0 + count)
    return found


def test_each_text_says_what_was_changed_when_another_took_its_place(past: Past) -> None:
    assert [one.says for one in listed(past, THREE + "# more\n")] == [
        "one line, notes or spacing",
        "rig, crate: 2 lines",
        "bench: one line",
    ]
    assert listed(past, THREE)[0].says == "nothing"
    assert listed(past, THREE.replace("\n", "\r\n"))[0].says == "nothing but how a line ends"
    assert [one.size for one in listed(past, THREE)] == [f"{len(one)} bytes" for one in (THREE, TWO, ONE)]


def test_where_nothing_is_kept_nothing_is_listed(tmp_path: Path) -> None:
    assert listed(Past(tmp_path / "none", "rig.yaml"), ONE) == []


def both_texts(lines: list[tuple[str, str]], now: list[str]) -> tuple[list[str], list[str]]:
    """Put two texts together again from what differs, the lines left out taken from the newer one."""
    old, new, at = list[str](), list[str](), 0
    for side, text in lines:
        if side == "gap":
            count = int(text.split()[0])
            old += now[at : at + count]
            new += now[at : at + count]
            at += count
        else:
            if side != "now":
                old.append(text)
            if side != "then":
                new.append(text)
                at += 1
    return old, new


def test_a_difference_holds_both_texts(tmp_path: Path) -> None:
    shuffle = random.Random(2)
    for count in range(200):
        then = [shuffle.choice("abc") for _ in range(shuffle.randrange(12))]
        now = [one for one in then if shuffle.random() < 0.8] + [shuffle.choice("abx")] * shuffle.randrange(4)
        past = Past(tmp_path, f"{count}.yaml")
        past.keep("\n".join(then).encode(), None)
        found = difference(past, past.every()[0].name, "\n".join(now))
        assert found is not None
        assert both_texts([(one.side, one.before + one.text + one.after) for one in found.lines], now) == (then, now)


def test_a_difference_shows_the_lines_around_it_and_their_numbers(past: Past) -> None:
    oldest = past.every()[0].name
    found = difference(past, oldest, TWO)
    assert found is not None
    assert [(one.side, one.line) for one in found.lines] == [
        ("both", 1), ("both", 2), ("then", 3), ("now", 3), ("both", 4), ("both", 5),
    ]  # fmt: skip
    assert [(one.before, one.text, one.after) for one in found.lines[2:4]] == [
        ("  bench: {weight: 3", "0", "}"), ("  bench: {weight: 3", "1", "}"),
    ]  # fmt: skip
    same = difference(past, oldest, ONE)
    assert same is not None and [one.side for one in same.lines] == ["gap"]
    assert difference(past, "none.yaml", ONE) is None


def test_texts_that_have_nothing_in_common_are_told_apart_in_good_time(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(earlier, "MOST_COMPARED", 100)
    past = Past(tmp_path, "rig.yaml")
    past.keep("\n".join(f"a{one}" for one in range(900)).encode(), None)
    found = difference(past, past.every()[0].name, "\n".join(f"b{one}" for one in range(900)))
    assert found is not None
    assert len(found.lines) == earlier.MOST_SHOWN + 1
    assert found.lines[-1].text == "and 300 lines more"


def test_when_is_said_as_a_clock_on_the_wall_says_it() -> None:
    noon = time.mktime((2026, 11, 28, 12, 0, 0, 0, 0, -1))
    assert until_words(noon - 60.0, noon) == "today 11:59:00"
    assert until_words(noon - 13 * 3600.0, noon) == "yesterday 23:00"
    assert until_words(noon - 40 * 86_400.0, noon) == "2026-10-19 12:00"
