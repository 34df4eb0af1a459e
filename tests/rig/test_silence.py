"""Nothing a builder wrote is passed over in silence: what counts nowhere is said, with how to write it."""

import pytest

from boxwright.rig.compose import read_rig

LB = 0.45359237  # exact: pound agreement of 1959 (from memory)

TRAILER = """\
boxwright: 1
rig: Trial
units: {length: in, weight: lb}
countries: [US]
trailer:
  body: {length: 168, width: 80, height: 78}
  coupler_x: -52
  axles: {kind: leaf with equaliser, x: [83, 117], gawr: [3500, 3500]}
  empty: {weight: 1960, tongue: 235, cg_z: 22}
  tyres: {count: 4}
"""
STAGES = "stages: {measure: {what: one}, liners: {what: two}}\n"
PARTS = """\
parts:
  box: {x: 10, side: left, z: 0, size: 10 x 10 x 10, weight: 20, stage: measure}
  bed: {x: 30, side: left, z: 0, size: 10 x 10 x 10, weight: 30, stage: liners}
  cupboard: {x: 50, side: left, z: 0, size: 10 x 10 x 10, weight: 30, stage: liners, contents: 12}
  fresh: {x: 70, side: left, z: 0, size: 10 x 10 x 10, weight: 3, stage: liners, tank: {of: water, volume: 5 gal}}
  boat: {x: 90, side: left, z: 0, size: 10 x 10 x 10, weight: 112, stage: measure, kind: cargo}
"""


def read(more="", trailer=TRAILER, stages=STAGES, parts=PARTS):
    return read_rig(trailer + stages + parts + more)


def said(reading):
    return [(problem.path, problem.says) for problem in reading.problems if problem.kind == "problem"]


def part(reading, name):
    return next(item for item in reading.rig.parts if item.name == name)


def with_part(keys):
    return read(parts=PARTS + f"  a: {{x: 3, side: left, z: 0, {keys}}}\n")


def test_the_trial_itself_reads_without_a_problem():
    assert said(read()) == []


MEASURED = [
    ("{what: ticket, stage: measure}", "", ["ticket gives no weight", "axles: .."]),
    ("{what: public weighbridge, stage: measure}", "", ["public weighbridge gives no weight"]),
    ("{what: scale}", "", ["scale gives no weight", "part: .., weight: .."]),
    ("{what: plank, stage: measure}", "", ["plank: {reading: .., to_scale: .., to_ball: ..}"]),
    ("{axles: [], stage: measure}", "", ["this entry gives no weight"]),
    ("{what: tickt, stage: measure}", ".what", ["tickt", 'did you mean "ticket"']),
    ("{what: ticket, axles: 1700}", "", ["stage: measure", "compared with nothing"]),
    (
        "{what: ticket, stage: measure, hitched: [3000, 3100], alone: [3100, 2900]}",
        ".hitched",
        ["2 of 3", "trailer axles"],
    ),
    ("{what: ticket, stage: measure, hitched: [1, 2, 3], alone: [4, 5, 6]}", ".alone", ["3 of 2", "drive axle"]),
    ("{what: ticket, stage: measure, hitched: [3000, 3100, 1700]}", ".hitched", ["without alone"]),
    ("{what: ticket, stage: measure, alone: [3100, 2900]}", ".alone", ["without hitched"]),
    ("{what: scale, part: boat}", ".part", ["what boat weighs", "weight:"]),
    ("{what: scale, weight: 112}", ".weight", ["part:", "total:"]),
    ("{what: ticket, stage: measure, axels: 1700}", ".axels", ["axels", 'did you mean "axles"']),
    ("{what: plank, stage: measure, to_scale: 48}", ".to_scale", ["plank: {reading: .., to_scale: .., to_ball: ..}"]),
    ("{what: ticket, stage: measure, total: 9, zzz: 3}", ".zzz", ["tongue", "hitched", "plank: {reading"]),
]


@pytest.mark.parametrize(("entry", "key", "words"), MEASURED)
def test_a_measurement_that_says_nothing_is_told(entry, key, words):
    reading = read(f"measured:\n  one: {entry}\n")
    found = said(reading)
    assert [path for path, _ in found] == ["measured[one]" + key]
    for word in words:
        assert word in found[0][1]
    line = len((TRAILER + STAGES + PARTS).splitlines()) + 2
    assert [problem.line for problem in reading.problems] == [line]
    assert "measured[one]" + key in reading.rig.troubled


@pytest.mark.parametrize(
    "entry",
    [
        "{what: ticket, stage: measure, axles: 1700, tongue: 200}",
        "{what: ticket, stage: measure, total: unknown}",
        "{what: ticket, stage: measure, hitched: [3000, 3100, 1700], alone: [3050, 2850]}",
        "{what: plank, stage: measure, plank: {reading: 62, to_scale: 48, to_ball: 12}}",
        "{what: scale, part: boat, weight: 112}",
        "{what: tape, studs: left, values: {0: 0}}",
        "{what: moisture, wood: 19 %}",
        "{what: seen, note: the door took it}",
    ],
)
def test_a_whole_measurement_is_taken_as_it_is(entry):
    assert said(read(f"measured:\n  one: {entry}\n")) == []


def test_without_stages_a_ticket_needs_none():
    parts = PARTS.replace(", stage: measure", "").replace(", stage: liners", "")
    assert said(read("measured:\n  one: {what: ticket, axles: 1700}\n", stages="", parts=parts)) == []


def test_a_mistyped_name_inside_the_empty_weight_is_told():
    trailer = TRAILER.replace("cg_z: 22}", "cg_z: 22, includes: [boat, bux]}")
    ((path, says),) = said(read(trailer=trailer))
    assert path == "trailer.empty.includes[1]" and "bux" in says and 'did you mean "box"' in says


def test_a_mistyped_key_as_built_is_told_and_the_plan_counts():
    reading = with_part("size: 4 x 4 x 4, weight: 8, stage: measure, as_built: {weigth: 300}")
    ((path, says),) = said(reading)
    assert path == "parts[a].as_built.weigth" and 'did you mean "weight"' in says
    assert part(reading, "a").mass.best == pytest.approx(8 * LB)


def test_a_weight_as_built_wins_over_the_plan():
    plain = with_part("size: 4 x 4 x 4, weight: 8, stage: measure, as_built: {weight: 300}")
    assert said(plain) == [] and part(plain, "a").mass.best == pytest.approx(300 * LB)
    each = with_part("size: 4 x 4 x 4, weight: 8, count: 3, stage: measure, as_built: {weight: 5 each}")
    assert said(each) == [] and part(each, "a").mass.best == pytest.approx(15 * LB)
    over_each = with_part("size: 4 x 4 x 4, each: 8, count: 3, stage: measure, as_built: {weight: 20}")
    assert said(over_each) == [] and part(over_each, "a").mass.best == pytest.approx(20 * LB)


@pytest.mark.parametrize(("key", "text"), [("weight", "heavy"), ("x", "frnt"), ("size", "4 x 4")])
def test_an_unreadable_value_as_built_is_told_where_it_stands(key, text):
    reading = with_part(f"size: 4 x 4 x 4, weight: 8, stage: measure, as_built: {{{key}: {text}}}")
    ((path, says),) = said(reading)
    assert path == f"parts[a].as_built.{key}" and text in says
    assert part(reading, "a").mass.best == pytest.approx(8 * LB)


@pytest.mark.parametrize(("key", "given"), [("out", "[boat, bed]"), ("cargo", "[boat, bed]")])
def test_what_is_built_in_cannot_be_left_behind(key, given):
    ((path, says),) = said(read(f"loads:\n  road: {{{key}: {given}, for: [tow]}}\n"))
    assert path == f"loads[road].{key}[1]"
    assert says == "bed is built in; it stays. Write kind: cargo on it if it can be left behind"


def test_a_wire_cannot_be_left_behind_either():
    wire = "wires:\n  lead: {from: bed, to: box, length: 40, stage: measure}\n"
    assert [path for path, _ in said(read(wire + "loads:\n  road: {out: [lead], for: [tow]}\n"))] == [
        "loads[road].out[0]"
    ]


def test_cargo_contents_and_tanks_can_be_left_behind():
    assert said(read("loads:\n  road: {out: [boat, cupboard, fresh], for: [tow]}\n")) == []
    # a strap of the same name as the boat does not tie the boat down for ever
    strap = "straps:\n  boat: {over: boat, to: unknown, stage: measure}\n"
    assert said(read(strap + "loads:\n  road: {out: [boat], for: [tow]}\n")) == []


def test_cargo_is_cargo_in_any_letters_and_needs_no_stage():
    reading = with_part("size: 4 x 4 x 4, weight: 8, kind: Cargo")
    assert said(reading) == [] and part(reading, "a").words.kind == "cargo"
    assert part(reading, "a").marks == part(with_part("size: 4 x 4 x 4, weight: 8, kind: cargo"), "a").marks
    ((path, says),) = said(with_part("size: 4 x 4 x 4, weight: 8"))
    assert path == "parts[a]" and "stage: measure" in says


@pytest.mark.parametrize(
    ("kind", "meant"), [("cagro", "cargo"), ("Backng", "backing"), ("sprad", "spread"), ("panel", "")]
)
def test_a_mistyped_kind_is_told(kind, meant):
    found = said(with_part(f"size: 4 x 4 x 4, weight: 8, stage: measure, kind: {kind}"))
    assert found == ([("parts[a].kind", f'no kind "{kind}" is known; did you mean "{meant}"?')] if meant else [])


AXLES = "{kind: leaf with equaliser, x: [83, 117], gawr: [3500, 3500]}"


@pytest.mark.parametrize(
    ("axles", "tyres", "paths"),
    [
        ("{kind: leaf with equaliser, x: [83]}", "2", ["kind"]),
        ("{kind: torsion, x: [83], gawr: [3500, 3500]}", "2", ["gawr"]),
        ("{kind: torsion, x: [83], gawr: [3500]}", "4", ["count"]),
        ("{kind: torsion, x: [83, 117], gawr: [3500]}", "4", ["gawr"]),
        ("{kind: tandem torsion, x: [60, 83, 117]}", "6", ["kind"]),
        ("{kind: single axle, x: [83, 117]}", "4", ["kind"]),
        ("{kind: leaf with equaliser, x: [83], gawr: [3500, 3500]}", "4", ["gawr", "kind", "count"]),
        ("{kind: torsion, x: [83], gawr: [3500]}", "2", []),
        ("{kind: leaf with equaliser, x: [50, 83, 117]}", "6", []),
        ("{kind: leaf and dual wheels, x: [83]}", "4", []),
    ],
)
def test_axles_that_contradict_each_other_are_told(axles, tyres, paths):
    trailer = TRAILER.replace(AXLES, axles).replace("count: 4", f"count: {tyres}")
    found = said(read(trailer=trailer))
    assert sorted(path.split(".")[-1] for path, _ in found) == sorted(paths)
    assert all("write one place in axles.x for each axle" in says for _, says in found)


def test_an_unknown_size_is_a_value_and_leaves_the_place_in_doubt():
    """Written as unknown it is no mistake, but nobody knows where the middle is; not written at all it is asked for."""
    reading, without = with_part("size: unknown, weight: 8, stage: measure"), with_part("weight: 8, stage: measure")
    assert said(reading) == []
    assert [path for path, _ in said(without)] == ["parts[a]"]
    known, open_place = part(without, "a").place.x, part(reading, "a").place.x
    assert (open_place.low, open_place.high) == (known.low, known.high) and not open_place.known
