"""A refusal says what was read, what was expected and how to write it (DESIGN 17)."""

from __future__ import annotations

import pickle

import pytest

from boxwright.units import CannotRead, HeaderUnits, read_band, read_exact

POUNDS = HeaderUnits(length="in", weight="lb", temperature="F", volume="gal", wire="AWG", money="USD")
NOTHING = HeaderUnits()


@pytest.mark.parametrize(
    ("text", "quantity", "header", "says"),
    [
        # 1 stone = 14 lb: NIST SP 811 B.8, from memory; the sentence is the design's own example
        ("8 stone", "mass", POUNDS, 'cannot read the mass "8 stone"; write it as "51 kg" or "112 lb"'),
        ("60ish", "mass", POUNDS, 'cannot read the mass "60ish"; write it as "about 60"'),
        ("30", "volume", HeaderUnits(words="EU"), '"30 l" or "30 gal", or give volume: l in the units line'),
        ("30", "volume", NOTHING, '"30 gal" or "30 l", or give volume: gal in the units line'),
        ("30", "mass", HeaderUnits(words="UK"), '"30 kg" or "30 lb", or give weight: kg in the units line'),
        ("11 st 4 lb", "mass", POUNDS, '"72 kg" or "158 lb"'),
        ("2 tons", "mass", POUNDS, '"4000 lb" for the American ton, "4480 lb" for the long ton or "2 t" for the tonne'),
        ("8 in", "mass", POUNDS, 'cannot read the mass "8 in"; write it as "8 lb" or "8 kg"'),
        ("45", "mass", NOTHING, '"45 kg" or "45 lb", or give weight: kg in the units line'),
        ("45", "power", POUNDS, 'cannot read the power "45"; write it as "45 W" or "45 kW"'),
        ("45", "length", HeaderUnits(length="furlong"), '"45 in" or "45 mm", or give length: in in the units line'),
        ("45", "length", HeaderUnits(length="kg"), '"45 in" or "45 mm", or give length: in in the units line'),
        ("heavy", "mass", POUNDS, 'cannot read the mass "heavy"; write it as "12 lb" or "12 kg"'),
        ("45 - 60", "mass", POUNDS, 'one number without doubt, such as "45 lb"'),
        ("2 cwt", "mass", POUNDS, 'cannot read the mass "2 cwt"; write it as a number with its unit, lb or kg'),
        ("2026-05-02", "mass", POUNDS, "write it as a number with its unit, lb or kg"),
        ("2026-05-02", "ratio", POUNDS, "write it as a number such as 0.35, or one with its unit, %"),
        ("1.2.3 kg", "mass", POUNDS, "write it as a number with its unit, lb or kg"),
        ("1 000 mm", "length", POUNDS, 'cannot read the length "1 000 mm"; write it as "1000 mm"'),
        ("1 000 000", "mass", POUNDS, 'write it as "1000000 lb" or "1000000 kg"'),
        ("1 000 cwt", "mass", POUNDS, "write it as a number with its unit, lb or kg"),
        ("40..55", "mass", POUNDS, 'one number without doubt, such as "40 lb"'),
        ("100 CAD", "money", POUNDS, "an amount in USD"),
        ("160", "money", NOTHING, "or give money: USD in the units line"),
        ("-500 F", "temperature", POUNDS, "above absolute zero"),
        ("-1 A", "current", POUNDS, "not below zero"),
        ("1e400 m", "length", POUNDS, "a number of a sensible size"),
    ],
)
def test_the_sentence(text: str, quantity: str, header: HeaderUnits, says: str) -> None:
    with pytest.raises(CannotRead) as refusal:
        read_exact(text, quantity, header)
    assert says in str(refusal.value)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("45 - 60", '"45..60 lb" or "45..60 kg"'),
        ("40-55 lb", '"40..55 lb"'),
        ("40\u201355 kg", '"40..55 kg"'),
        ("40 lb - 55 lb", '"40..55 lb"'),
        ("4.5 lb - 6", '"4.5..6 lb"'),
        ("40 - 55 cwt", "a number with its unit, lb or kg"),
        ("40 oz - 3 lb", "a number with its unit, lb or kg"),
        ("2026-05", "a number with its unit, lb or kg"),
    ],
)
def test_a_span_with_a_dash_is_written_with_two_dots(text: str, says: str) -> None:
    with pytest.raises(CannotRead) as refusal:
        read_band(text, "mass", POUNDS)
    assert refusal.value.write == says
    for written in says.split('"')[1::2]:
        low, high = written.split(" ")[0].split("..")
        read, kilograms = read_band(written, "mass", POUNDS), 0.45359237 if "lb" in written else 1.0
        # the international pound in kilograms, exact by definition, from memory
        assert read.low == pytest.approx(float(low) * kilograms)
        assert read.high == pytest.approx(float(high) * kilograms)


def test_a_refusal_quotes_a_long_text_shortened_and_on_one_line() -> None:
    with pytest.raises(CannotRead) as refusal:
        read_exact("many\nwords " * 15, "length", POUNDS)
    assert "\n" not in str(refusal.value)
    assert len(refusal.value.read) == 60


def test_a_refusal_travels_between_processes() -> None:
    refusal = CannotRead("8 stone", "the mass", '"51 kg"')
    again = pickle.loads(pickle.dumps(refusal))
    assert (again.read, again.expected, again.write) == ("8 stone", "the mass", '"51 kg"')
    assert str(again) == str(refusal)


def test_an_unknown_quantity_is_a_bug_of_the_caller() -> None:
    with pytest.raises(KeyError):
        read_exact("45", "heaviness", POUNDS)
