"""The earlier texts of a rig: found again by name, fewer with age, never without what a day began with."""

from __future__ import annotations

import random
import time
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

from boxwright.web.past import DAY, HOUR, HOURLY, MOST_KEPT_BYTES, MOST_PAST, NEWEST, Earlier, Past, overmuch

NOW = datetime(2026, 11, 28, 15, 30, tzinfo=UTC).timestamp()


@pytest.fixture(autouse=True)
def far_from_greenwich() -> Iterator[None]:
    """Let a day be one by a clock on the wall four and a half hours off."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("TZ", "XXX4:30")
        time.tzset()
        yield
    time.tzset()


def texts(*ages: float, length: int = 100) -> list[Earlier]:
    """Return texts of so many seconds of age."""
    return sorted(Earlier(NOW - age, 0, f"{age:012.1f}", length) for age in ages)


def kept(every: list[Earlier]) -> list[float]:
    gone = set(overmuch(every, NOW))
    return [round(NOW - one.at, 1) for one in every if one not in gone]


def wall_day(one: Earlier) -> str:
    return datetime.fromtimestamp(one.at).astimezone().strftime("%Y-%m-%d")


def test_all_of_the_last_hour_are_kept() -> None:
    every = texts(*(20.0 * count for count in range(170)))
    assert overmuch(every, NOW) == []


def test_after_an_hour_one_an_hour_stays_and_after_two_days_one_a_day() -> None:
    minute = 60.0
    recent = [count * minute for count in range(NEWEST)]
    every = texts(*recent, *(count * 10 * minute for count in range(6 * 24 * 5)))
    ages = kept(every)
    hours = [age for age in ages if HOUR < age <= HOURLY]
    assert 46 <= len(hours) <= 48
    assert all(abs(younger - older) >= 0.8 * HOUR for younger, older in zip(hours[1:], hours, strict=False))
    assert 3 <= len([age for age in ages if age > HOURLY]) <= 4


def test_what_each_day_began_with_is_kept_for_months() -> None:
    shuffle = random.Random(4)
    every = texts(*(shuffle.random() * 90 * DAY for _ in range(4000)))
    first: dict[str, Earlier] = {}
    for one in every:
        first.setdefault(wall_day(one), one)
    assert not set(first.values()) & set(overmuch(every, NOW))


def test_there_are_never_more_than_so_many_nor_more_bytes() -> None:
    many = texts(*(float(count) for count in range(3000)), *(count * DAY for count in range(1, 900)))
    assert len(kept(many)) == MOST_PAST
    long = texts(*(float(count) for count in range(60)), length=MOST_KEPT_BYTES // 40)
    assert len(kept(long)) == 40
    longer = texts(*(float(count) for count in range(60)), length=MOST_KEPT_BYTES)
    assert kept(longer) == [float(age) for age in range(NEWEST - 1, -1, -1)]


def test_of_a_crowded_hour_the_newest_are_kept_beside_what_it_began_with() -> None:
    ages = kept(texts(*(float(count) for count in range(300))))
    assert ages == [299.0, *(float(age) for age in range(MOST_PAST - 2, -1, -1))]


def test_a_text_is_kept_once_however_often_it_is_replaced_in_a_row(tmp_path: Path) -> None:
    past = Past(tmp_path / "past", "rig.yaml")
    for data in (b"a", b"a", b"b", b"a"):
        past.keep(data, 0o600, NOW)
    every = past.every()
    assert [past.read(one.name) for one in every] == [b"a", b"b", b"a"]
    assert {one.at for one in every} == {NOW}
    assert every[0].name == "rig.yaml.2026-11-28T15-30-00.yaml"


def test_only_texts_of_this_rig_are_read(tmp_path: Path) -> None:
    (tmp_path / "secret.yaml").write_bytes(b"secret")
    for rig in ("rig.yaml", "rig", "other.yaml"):
        Past(tmp_path, rig).keep(rig.encode(), None, NOW)
    past = Past(tmp_path, "rig")
    assert [past.read(one.name) for one in past.every()] == [b"rig"]
    for name in ("secret.yaml", "../secret.yaml", "rig.yaml.2026-11-28T15-30-00.yaml", "", "."):
        assert past.read(name) is None


def test_the_texts_of_one_second_stay_in_order(tmp_path: Path) -> None:
    past = Past(tmp_path, "rig.yaml")
    for count in range(12):
        past.keep(str(count).encode(), None, NOW)
    assert [past.read(one.name) for one in past.every()] == [str(count).encode() for count in range(12)]
