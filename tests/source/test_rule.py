"""Rules of a country: every field is required, and says what it rests on. The rule of these tests is made up."""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.source import Rule, SourceError, read_source_file

RULE = """
[source.act]
work = "An act made up for this test"
edition = "1st"
seen = "quoted by a pamphlet"

[[rule]]
id = "tow-width"
asks = "overall width"
limit = "8 1/2 ft"
kind = "stop"
applies = "driven"
binding = "law"
source = "act"
in_force = {from = 1998-06-01, until = "2030"}
read = {on = 2026-11-25, as = "seen"}
where = "national"
"""
ALARM = RULE.split("[[rule]]")[1].replace("tow-width", "alarm").replace('"8 1/2 ft"', '"required"')


def rules(text: str, file: str = "tables/rules_us.toml") -> tuple[Rule, ...]:
    return read_source_file(text, file).rules


def test_a_rule_is_read_whole() -> None:
    rule, alarm = rules(f"{RULE}\n[[rule]]{ALARM}")
    assert rule == Rule(
        id="tow-width", country="US", asks="overall width", limit=pytest.approx(2.5908), limit_text="8 1/2 ft",
        kind="stop", applies="driven", binding="law", source="act", where="national", starts=date(1998, 6, 1),
        ends=date(2030, 1, 1), read_on=date(2026, 11, 25), read_as="seen",
    )  # fmt: skip
    assert (alarm.limit, alarm.limit_text) == (None, "required")


def test_in_force_on_a_day() -> None:
    (rule,) = rules(RULE)
    days = [date(1998, 5, 31), date(1998, 6, 1), date(2030, 1, 1), date(2030, 1, 2)]
    assert [rule.is_in_force(day) for day in days] == [False, True, True, False]
    (open_ended,) = rules(RULE.replace('{from = 1998-06-01, until = "2030"}', '{from = "unknown"}'))
    assert open_ended.is_in_force(date(1900, 1, 1)) and open_ended.is_in_force(date(2100, 1, 1))


def test_only_a_text_that_was_read_may_clear_a_stop() -> None:
    assert rules(RULE)[0].was_read
    assert not rules(RULE.replace('as = "seen"', 'as = "from memory"'))[0].was_read


REQUIRED = ("id", "asks", "limit", "kind", "applies", "binding", "source", "in_force", "read", "where")


@pytest.mark.parametrize("field", REQUIRED)
def test_every_field_is_required(field: str) -> None:
    head, body = RULE.split("[[rule]]")
    lines = [line for line in body.splitlines() if not line.startswith(f"{field} =")]
    assert len(lines) == len(body.splitlines()) - 1
    with pytest.raises(SourceError, match=f"has no {field}$"):
        rules(head + "[[rule]]" + "\n".join(lines))


@pytest.mark.parametrize(
    ("was", "becomes", "says"),
    [
        ('kind = "stop"', 'kind = "halt"', 'kind = "halt" is not one of stop, limit, advice'),
        ('applies = "driven"', 'applies = "asleep"', "applies ="),
        ('binding = "law"', 'binding = "habit"', "binding ="),
        ('source = "act"', 'source = "bill"', 'source "bill" stands neither'),
        ('"8 1/2 ft"', '"8 1/2 heaps"', "cannot read"),
        ('"8 1/2 ft"', '"wide"', "cannot read"),
        ("from = 1998-06-01", 'from = "long ago"', '"long ago" is no date'),
        ("from = 1998-06-01", 'from = "1998-13"', "is no date"),
        ("from = 1998-06-01", 'since = "1998"', "in_force is {from = <date>}"),
        ("from = 1998-06-01", "from = 2031-01-01", "ends before it starts"),
        ('as = "seen"', 'as = "believed"', "does not say how it was seen"),
        ("on = 2026-11-25, ", "", "read is {on = <date>"),
        ("on = 2026-11-25", 'on = "unknown"', "not unknown"),
        ('where = "national"', 'where = "national"\nlever = "x"', "lever is not read here"),
    ],
)
def test_refusals(was: str, becomes: str, says: str) -> None:
    assert was in RULE
    with pytest.raises(SourceError) as refusal:
        rules(RULE.replace(was, becomes))
    assert says in str(refusal.value)
    assert str(refusal.value).startswith("tables/rules_us.toml: rule tow-width")


def test_a_rule_stands_once_for_a_place_and_in_a_file_of_its_country() -> None:
    head, body = RULE.split("[[rule]]")
    with pytest.raises(SourceError, match="stands twice for national"):
        rules(f"{head}[[rule]]{body}[[rule]]{body}")
    two = rules(f"{head}[[rule]]{body}[[rule]]{body.replace('national', 'NC')}")
    assert [rule.where for rule in two] == ["national", "NC"]
    with pytest.raises(SourceError, match="named for their country"):
        rules(RULE, "tables/rules.toml")
