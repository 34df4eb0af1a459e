"""Checks: what they hold in SI, what they allow, and what is refused."""

from __future__ import annotations

import math

import pytest

from boxwright.source import Check, SourceError, read_source_file

HEAD = """
[source.book]
work = "A book of worked examples"
edition = "2nd"
seen = "seen"
"""
CHECK = """
[[check]]
id = "rollup"
method = "tongue_load"
covers = ["pooled_mass"]
source = "book"
place = "example 3"
kind = "published"
given = {axle_x = "4.1 m", items = [["900 kg", "3.6 m"], ["180 kg", "13 ft"]], gear = "single", doors = 2, level = true}
expect = {tongue = "203.4 kg", share = "14.2 %", fills = ["0 kg", "80 kg"]}
within = {tongue = "0.1", share = "0.1 %", fills = "1 lb"}
"""


def only(text: str, head: str = HEAD) -> Check:
    return read_source_file(head + text, "checks/weight.toml").checks[0]


def test_given_is_si_with_words_and_lists() -> None:
    arguments = only(CHECK).arguments()
    assert arguments["axle_x"] == 4.1
    assert arguments["items"] == ((900.0, 3.6), (180.0, pytest.approx(3.9624)))
    assert (arguments["gear"], arguments["doors"], arguments["level"]) == ("single", 2.0, True)
    assert isinstance(arguments["doors"], float)


def test_a_check_is_a_record() -> None:
    check = only(CHECK)
    assert hash(check) == hash(only(CHECK))
    assert check == only(CHECK)
    assert [given.written for given in check.given][:2] == ["4.1 m", "[[900 kg, 3.6 m], [180 kg, 13 ft]]"]
    assert check.covers == ("pooled_mass",)


def test_allowed_is_in_the_unit_the_number_is_written_in() -> None:
    tongue, share, fills = only(CHECK).expect
    assert (tongue.value, tongue.allowed) == (203.4, pytest.approx(0.1))
    assert (share.value, share.allowed) == (pytest.approx(0.142), pytest.approx(0.001))
    assert fills.allowed == (pytest.approx(0.45359237), pytest.approx(0.45359237))


def test_a_share_is_of_the_expected_number() -> None:
    one = only(CHECK.replace('within = {tongue = "0.1", share = "0.1 %", fills = "1 lb"}', 'within = "0.5 %"'))
    assert one.expect[0].allowed == pytest.approx(1.017)
    assert one.expect[2].allowed == (0.0, pytest.approx(0.4))


def test_a_tolerance_of_temperature_leaves_the_zero_point_out() -> None:
    text = CHECK.split("given =")[0] + 'given = {}\nexpect = "68 F"\nwithin = "0.9 F"\n'
    (wanted,) = only(text).expect
    assert (wanted.name, wanted.value, wanted.allowed) == ("result", pytest.approx(293.15), pytest.approx(0.5))


def test_misses_names_what_is_outside() -> None:
    check = only(CHECK)
    held = {"tongue": 203.49, "share": 0.1411, "fills": (0.2, 80.3)}
    assert check.misses(held) == ()
    assert check.misses(held | {"tongue": 203.51}) == ("tongue is 203.51, the source says 203.4 kg",)
    assert len(check.misses(held | {"fills": (0.2, 80.5)})) == 1
    assert len(check.misses(held | {"fills": (0.2,)})) == 1
    assert len(check.misses(held | {"share": math.nan})) == 1
    assert len(check.misses(held | {"share": "0.142"})) == 1
    assert check.misses({"tongue": 203.4, "share": 0.142}) == ("fills was not given",)


def test_a_number_on_the_edge_of_its_rounding_holds() -> None:
    check = only(CHECK)
    assert check.misses({"tongue": 203.4 - 0.1, "share": 0.142, "fills": [0.0, 80.0]}) == ()


def test_bare_numbers_take_the_units_of_their_columns() -> None:
    text = (
        CHECK.split("given =")[0]
        + """
given = {items = [[900.0, 350], [180, 410]], length = 12, shares = [10, 20]}
expect = {loads = [1.5, 2.5]}
within = 0.1
units = {items = ["kg", "cm"], length = "ft", loads = "kN", shares = ["%"]}
"""
    )
    check = only(text)
    assert check.arguments()["items"] == ((900.0, 3.5), (180.0, 4.1))
    assert check.arguments()["length"] == pytest.approx(3.6576)
    assert check.arguments()["shares"] == (0.1, 0.2)
    assert check.expect[0].value == (1500.0, 2500.0)
    assert check.expect[0].allowed == (pytest.approx(100.0), pytest.approx(100.0))
    row = only(text.replace("items = [[900.0, 350], [180, 410]]", "items = [900, 360]"))
    assert row.arguments()["items"] == (900.0, 3.6)


def test_what_is_computed_here_never_counts_as_published() -> None:
    assert only(CHECK).kind == "published"
    assert only(CHECK, HEAD.replace('seen = "seen"', 'seen = "computed here"')).kind == "hand"
    assert only(CHECK.replace('"published"', '"independent"')).kind == "independent"


def test_an_id_left_out_is_method_source_place() -> None:
    assert only(CHECK.replace('id = "rollup"\n', "")).id == "tongue_load-book-example-3"


def test_a_disputed_example_stays() -> None:
    assert only(CHECK + 'disputed = "the book prints 203.5"\n').disputed == "the book prints 203.5"


@pytest.mark.parametrize(
    ("was", "becomes", "says"),
    [
        ('source = "book"\n', "", "has no source"),
        ('source = "book"', 'source = "pamphlet"', 'source "pamphlet" stands neither'),
        ('place = "example 3"\n', "", "has no place"),
        ('method = "tongue_load"\n', "", "has no method"),
        ('kind = "published"\n', "", "has no kind"),
        ('"published"', '"certain"', 'kind = "certain" is not one of'),
        ('within = {tongue = "0.1", share = "0.1 %", fills = "1 lb"}', "", "has no within"),
        ('tongue = "0.1", ', "", "expect.tongue: has no within"),
        ('"0.1"', '"-0.1"', "within is not below zero"),
        ('"0.1"', '"0.1 heaps"', "cannot read"),
        ('"900 kg"', '"900 heaps"', "cannot read"),
        ('axle_x = "4.1 m"', 'axle_x = "4.1 furlongs"', "given.axle_x"),
        ("covers =", "cover =", "cover is not read here"),
        ('covers = ["pooled_mass"]', "covers = 3", "covers is a list"),
        ("expect = {", "expect = {}\nnote = ''\n#", "expects nothing"),
        ('gear = "single"', "gear = {a = 1}", "is no number"),
    ],
)
def test_refusals(was: str, becomes: str, says: str) -> None:
    assert was in CHECK
    with pytest.raises(SourceError) as refusal:
        only(CHECK.replace(was, becomes))
    assert says in str(refusal.value)
    assert str(refusal.value).startswith("checks/weight.toml: check rollup")


def test_a_number_in_another_unit_than_its_column_is_refused() -> None:
    text = CHECK + 'units = {axle_x = "kg"}\n'
    with pytest.raises(SourceError, match="is not in a unit like kg"):
        only(text)
    with pytest.raises(SourceError, match='the unknown unit "heap"'):
        only(CHECK + 'units = {axle_x = "heap"}\n')


def test_an_id_may_stand_once() -> None:
    with pytest.raises(SourceError, match="the id stands twice"):
        only(CHECK + CHECK)
