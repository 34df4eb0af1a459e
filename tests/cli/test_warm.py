"""The word ``heat``: the plain answer, the tables, the same for programs, a night asked for, what is borrowed."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from boxwright.cli.run import main
from boxwright.disciplines.heat.telling import as_warm_as, thin
from boxwright.units import HeaderUnits
from tests.study.demo import CLEAN

RIGS = Path(__file__).parents[2] / "rigs"
WHIMBREL = str(RIGS / "whimbrel.yaml")
FINISHED = (WHIMBREL, "--stage", "finish")
TRIO = str(Path(__file__).parents[1] / "findings" / "heat" / "rig.yaml")


def said(capsys: pytest.CaptureFixture[str], *typed: str) -> tuple[int, str]:
    """Return the exit code and all that is printed, its spaces as one."""
    code = main(["heat", *typed])
    told = capsys.readouterr()
    return code, " ".join(f"{told.out} {told.err}".split())


def test_the_plain_answer_comes_first_then_the_tables_then_what_was_found(capsys: pytest.CaptureFixture[str]) -> None:
    _, shown = said(capsys, *FINISHED)
    order = ["The room loses", "Greensboro NC, 18 F outside: heater would hold 62 F most likely",
             "Sand Point AK, 12 F outside: heater does not hold 62 F", "WHAT THE ROOM LOSES", "THE COLDEST NIGHT",
             "FUEL, AIR AND FUMES OF HEATER", "FINDINGS SLEEP"]  # fmt: skip
    places = [shown.index(one) for one in order]
    assert places == sorted(places)
    assert "hour by hour" not in shown.lower().partition("findings")[0]


def test_bare_studs_lose_four_times_as_much_and_nothing_warms_them(capsys: pytest.CaptureFixture[str]) -> None:
    _, bare = said(capsys, WHIMBREL, "--stage", "wire", "--outside", "20F")
    assert "no heater that may run with somebody asleep stands, and the room comes to 19 F" in bare
    losses = []
    for stage in ("wire", "finish"):
        main(["heat", WHIMBREL, "--stage", stage, "--json"])
        losses.append(json.loads(capsys.readouterr().out)["heat"]["loss"]["best"])
    assert 3.5 < losses[0] / losses[1] < 5.0


def test_studs_of_a_bare_skin_are_said_to_be_counted_with_it(capsys: pytest.CaptureFixture[str]) -> None:
    """Bare members lose heat as fins of their sheet: that studs lose nothing would be wrong to read."""
    _, bare = said(capsys, WHIMBREL, "--stage", "measure")
    assert re.search(r"through its faces\. The skin stands bare: its studs and bows stand in the room like fins", bare)
    assert "studs and bows: loses counted with the bare skin" in bare and "of it by studs" not in bare
    _, half = said(capsys, WHIMBREL, "--stage", "liners")
    assert re.search(
        r"[1-9][\d.]* Btu/h per F of it by studs, bows and edges\. The skin of rear wall stands bare", half
    )
    assert "of it by studs, bows and edges, bare skin aside" in half
    _, whole = said(capsys, TRIO)
    assert "W/K of it by studs, bows and edges." in whole and "stands bare" not in whole and "aside" not in whole


def test_a_room_that_nobody_stays_in_is_told_as_no_hotter_than_that() -> None:
    units = HeaderUnits(temperature="C")
    assert as_warm_as(318.1, units) == "as warm as 45 C" and as_warm_as(319.0, units) == "hotter than 45 C"


def test_foam_of_which_nobody_wrote_how_thick_is_no_bare_skin(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """At its worst end it counts as nothing, and is asked; that nothing is put in would be wrong to say."""
    text = Path(TRIO).read_text(encoding="utf-8")
    head, _, rest = text.partition("walls:")
    foam = "walls:\n  all:\n    layers:\n      foam: {of: XPS, between: studs, stage: shell, done: yes}\nopenings:"
    unsaid, bare = tmp_path / "unsaid.yaml", tmp_path / "bare.yaml"
    unsaid.write_text(head + foam + rest.partition("openings:")[2], encoding="utf-8")
    bare.write_text(f"{head}openings:{rest.partition('openings:')[2]}", encoding="utf-8")
    told, bared = (said(capsys, str(one), "--outside", "-30 C")[1] for one in (unsaid, bare))
    assert "stands bare" not in told and "nothing is put in yet" not in told and "nobody wrote how thick" in told
    assert "0 W/K of it" not in told and "saves 0 W/K" not in told
    assert "The skin stands bare" in bared and "nothing is put in yet that keeps heat" in bared


def test_a_night_asked_for_and_what_is_wanted_stand_in_place_of_the_file(capsys: pytest.CaptureFixture[str]) -> None:
    main(["heat", *FINISHED, "--outside", "-10 C", "--inside", "10 C", "--json"])
    (night,) = json.loads(capsys.readouterr().out)["heat"]["nights"]
    assert night["outside_at_its_coldest"]["best"] == pytest.approx(263.15)
    assert min(night["air"]) == pytest.approx(283.15, abs=0.2)
    assert all(heat <= 2000.0 for heat in night["heat"])


def test_each_night_is_told_hour_by_hour_where_that_is_asked(capsys: pytest.CaptureFixture[str]) -> None:
    _, shown = said(capsys, *FINISHED, "--night", "--outside", "20F")
    assert "THE NIGHT AT THE NIGHT ASKED FOR, HOUR BY HOUR" in shown
    assert "20 h" in shown and "7 h" in shown


def test_an_electric_heater_can_be_borrowed_and_a_flame_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    _, shown = said(capsys, WHIMBREL, "--stage", "liners", "--outside", "20F", "--with", "electric heater 1500 W")
    assert "borrowed electric heater 1500 W holds 62 F most likely while it is plugged in outside" in shown
    code, refused = said(capsys, *FINISHED, "--with", "propane heater 3 kW")
    assert code == 3 and "carbon monoxide kills" in refused
    for words in ("diesel heater 900 W", "wood stove 2 kW", "gas heater 1 kW"):
        code, refused = said(capsys, *FINISHED, "--with", words)
        refused = " ".join(refused.split())
        assert code == 3 and "only electric heaters are lent here" in refused and "heater: and exhaust:" in refused
        assert "fumes stay" not in refused, "most of what burns diesel is vented"
    for words in ("stove", "electric heater -1500 W"):
        code, unread = said(capsys, *FINISHED, "--with", words)
        assert code == 3 and 'as "electric heater 1500 W"' in unread
    code, unread = said(capsys, *FINISHED, "--with", "electric heater 50 kW")
    assert code == 3 and "no plug of a site carries that" in unread


@pytest.mark.parametrize(("words", "says"), [
    ("electric heater 1500..1700 W", "borrowed electric heater 1500..1700 W"),
    ("electric heater about 1500 W", "borrowed electric heater about 1500 W"),
    ("electric heater 1.5.2 kW", 'cannot read the power "1.5.2 kW"'),
    ("electric heater 1500..4000 W", "no plug of a site carries that"),
    ("electric heater 2000..1500 W", "electric heater 2000..1500 W"),
    ("two electric heaters 1500 W", "write one heater with the heat of all of them together"),
    ("electric heater 1500 W and electric heater 1500 W", "write one heater with the heat of all of them together"),
    ("2 x electric heater 1500 W", "write one heater with the heat of all of them together"),
    ("1.7 kW electric heater", "borrowed 1.7 kW electric heater"),
    ("electric heater 1.5 kW, own cable", "borrowed electric heater 1.5 kW, own cable"),
])  # fmt: skip
def test_what_is_borrowed_may_be_a_range_and_what_cannot_be_read_is_told_in_words(
    capsys: pytest.CaptureFixture[str], words: str, says: str
) -> None:
    _, shown = said(capsys, *FINISHED, "--with", words)
    assert says in " ".join(shown.split()) and "Traceback" not in shown


@pytest.mark.parametrize(("breaker", "says"), [
    ("breaker: 30 A", "borrowed electric heater 1500 W"),
    ("breaker: 10 A", "the breaker of the wire shore lets 1,200 W through, and trips above"),
    ("breaker: unknown", "nobody wrote how large the breaker of the wire shore is"),
])  # fmt: skip
def test_what_is_borrowed_is_held_against_the_breaker_of_the_rig(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, breaker: str, says: str
) -> None:
    """By hand: 30 and 10 A at 120 V are 3600 and 1200 W; by a cable of its own it is held against neither."""
    text = Path(WHIMBREL).read_text(encoding="utf-8")
    rig = tmp_path / "rig.yaml"
    rig.write_text(text.replace("gauge: 10, breaker: 30 A", f"gauge: 10, {breaker}"), encoding="utf-8")
    asked = (str(rig), "--stage", "liners", "--outside", "20F", "--with")
    _, shown = said(capsys, *asked, "electric heater 1500 W")
    assert says in " ".join(shown.split())
    _, wide = said(capsys, *asked, "electric heater 1000..1500 W")
    assert ("is not worked out" in wide) == (breaker != "breaker: 30 A")
    hook = "  hook: {from: inlet-30A, to: ac-panel, breaker: 30 A, volts: 120, stage: wire}\n  shore: "
    rig.write_text(rig.read_text(encoding="utf-8").replace("  shore: ", hook), encoding="utf-8")
    assert "is not worked out" not in said(capsys, *asked, "electric heater 1500 W")[1], "it has another cable"
    _, own = said(capsys, *asked, "electric heater 1500 W, own cable")
    assert "borrowed electric heater 1500 W, own cable" in " ".join(own.split())


def test_what_is_borrowed_is_held_against_the_breakers_behind_the_panel(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    """By hand: 8 A at 120 V are 960 W; that the plan has no heater of its own makes its breakers no larger."""
    rig = tmp_path / "rig.yaml"
    outlets = "  outlets: {x: 70, wall: left, z: 40, size: 4 x 2 x 4, weight: 1, stage: shell, done: yes}\n"
    wires = "wires:\n  in: {from: mains, to: panel, breaker: 30 A, volts: 120}\n"
    wires += "  out: {from: panel, to: outlets, breaker: 8 A}\n"
    text = CLEAN.replace("loads:\n", f"{outlets}{outlets.replace('outlets', 'panel')}{wires}loads:\n")
    for heater in ("heater: {of: electric, lowest: 300 W, highest: 1500 W, switches: yes, fed_by: mains}", "cost: 5"):
        rig.write_text(re.sub("heater: {of: electric[^}]*}", heater, text), encoding="utf-8")
        code, refused = said(capsys, str(rig), "--outside", "20F", "--with", "electric heater 1000 W")
        assert code == 3 and "the breaker of the wire out lets 960 W through" in " ".join(refused.split())
        _, less = said(capsys, str(rig), "--outside", "20F", "--with", "electric heater 900 W")
        assert "borrowed electric heater 900 W" in less


def test_wrong_input_is_said_in_words(capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, *FINISHED, "--inside", "warm")[0] == 3
    code, shown = said(capsys, *FINISHED, "--inside", "200F")
    assert code == 3 and "no room is held below 0 C or above 40 C" in shown
    code, shown = said(capsys, *FINISHED, "--outside=-200F")
    assert code == 3 and "no night colder than -55 C" in shown
    code, shown = said(capsys, *FINISHED, "--section", "north")
    assert code == 3 and 'no wall "north"' in shown


def test_where_nobody_sleeps_no_night_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    _, shown = said(capsys, TRIO, "--use", "leave")
    assert "Nobody sleeps in this use" in shown


def test_what_may_run_on_is_not_called_held_alone(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    written = Path(TRIO).read_text(encoding="utf-8")
    asked = tmp_path / "asked.yaml"
    asked.write_text(written.replace(", switches: yes", "").replace("lowest: 900 W, ", ""), encoding="utf-8")
    _, shown = said(capsys, TRIO, "--outside", "5 C")
    assert "heater holds 17 C with battery full as it gets dark." in shown
    _, shown = said(capsys, str(asked), "--outside", "5 C")
    assert "heater would hold 17 C with battery full as it gets dark; the room, left shut, may also get hotter" in shown
    assert "nobody wrote what it gives at its lowest or whether it goes off by itself" in shown


def test_a_hole_of_any_size_up_to_that_of_its_wall_is_reckoned_with(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    open_end = "openings:\n  ramp: {wall: rear, width: 1800, z: 0, stage: shell, cut: yes, done: yes}\n"
    path = tmp_path / "rig.yaml"
    path.write_text(Path(TRIO).read_text(encoding="utf-8").replace("openings:\n", open_end), encoding="utf-8")
    _, told = said(capsys, str(path), "--outside", "-45 C")
    assert "heater may hold 17 C with battery full as it gets dark; at worst the room comes to" in told
    assert " inf" not in told and "most likely" not in told


def test_foam_is_told_in_millimetres_or_inches_whatever_lengths_are_written_in() -> None:
    """A quarter of an inch is 6.35 mm."""
    quarter = 0.25 * 0.0254
    assert [thin(quarter, HeaderUnits(length=unit)) for unit in ("m", "mm", "ft", "in")] == [
        "6.35 mm", "6.35 mm", "0.25 in", "0.25 in"
    ]  # fmt: skip


def test_that_nobody_is_written_to_sleep_in_it_is_said_before_anything_is_called_judged(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    path = tmp_path / "rig.yaml"
    path.write_text("boxwright: 1\nrig: nobody\npeople:\n  # me: {weight: 180}\n", encoding="utf-8")
    _, told = said(capsys, str(path))
    assert "No person is written to be in it at night, so nobody's night was judged." in told
    _, told = said(capsys, TRIO)
    assert "nobody's night" not in told
