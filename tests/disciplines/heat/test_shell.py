"""The shell as built: what more foam, a strip and a mirror do, what adds up, and what nobody knows."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boxwright.disciplines.heat.plane import is_bridged, member_with, plane_of
from boxwright.disciplines.heat.shell import Shell, shell_of
from boxwright.exchange import ColdPlace, Opening
from boxwright.units import Band, exactly
from tests.disciplines.heat.walls import BREAK, FOAM, INCH, LINER, STRIP, Where, doubtful, layer, mirrored, wall

WINDOW = Opening(
    "openings[w]", "window-left", "left", exactly(0.2), exactly(1.0), exactly(1.5), (0.0, -1.0, 0.0), exactly(2.8),
    True, False, True, False,
)  # fmt: skip
UNKNOWN = Band(0.0, 0.0, float("inf"), known=False)


def test_the_walls_of_the_sheet_on_heat_come_out_as_its_fields_do() -> None:
    """Figures of two other codes, a finite-element and a finite-volume one; the member is best 5 % worse than clean."""
    for layers, field, bay in (
        ((FOAM, LINER), 1.1111, 0.6469),
        ((FOAM, STRIP, LINER), 0.8538, None),
        ((FOAM, BREAK, LINER), 0.6325, None),
    ):
        found = plane_of(wall(*layers))
        clean = found.bay.best + found.member.best / 1.05 * found.density.best
        assert clean == pytest.approx(field, rel=0.012)
        assert found.how == "stored" and found.transmittance.low < field < found.transmittance.high
        if bay is not None:
            assert found.bay.best == pytest.approx(bay, rel=1e-3)


def test_the_stud_face_is_as_cold_as_the_sheet_on_heat_has_it_with_the_film_of_mould() -> None:
    for layers, factor in (((FOAM, LINER), 0.2567), ((FOAM, STRIP, LINER), 0.543), ((FOAM, BREAK, LINER), 0.724)):
        found = plane_of(wall(*layers)).member_factor
        assert found.best == pytest.approx(factor, abs=0.02) and found.low < factor < found.high


@settings(deadline=None, max_examples=60)
@given(st.data())
def test_more_foam_never_loses_more(data: st.DataObject) -> None:
    thick = st.floats(0.05, 2.0)
    less, more = sorted((data.draw(thick), data.draw(thick)))
    strip = data.draw(st.sampled_from([(), (STRIP,)]))
    liner = data.draw(st.sampled_from([(), (LINER,), (BREAK, LINER)]))
    where: Where = data.draw(st.sampled_from(("bays", "all")))
    kind = data.draw(st.sampled_from(["XPS", "mineral wool", "polyiso", "spray foam"]))
    found = [plane_of(wall(layer("foam", kind, one, where), *strip, *liner)).transmittance for one in (less, more)]
    for end in ("low", "best", "high"):
        assert getattr(found[1], end) <= getattr(found[0], end) * (1.0 + 1e-6)


@settings(deadline=None, max_examples=30)
@given(st.lists(st.sampled_from([FOAM, STRIP, LINER, BREAK]), unique=True))
def test_a_wall_and_its_mirror_lose_the_same_and_ends_lie_around_the_best(layers: list) -> None:  # type: ignore[type-arg]
    left = wall(*layers)
    one, other = shell_of((left,), ()), shell_of((mirrored(left),), ())
    assert one.loss == other.loss
    assert one.loss.low <= one.loss.best <= one.loss.high
    planed = plane_of(left)
    for factor in (planed.member_factor, planed.bay_factor, planed.lining_factor):
        assert 0.0 <= factor.low <= factor.best <= factor.high <= 1.0


def test_a_layer_that_may_be_missing_is_half_there_at_best() -> None:
    perhaps = plane_of(wall(FOAM, replace(LINER, is_certain=False))).transmittance
    without, with_it = (plane_of(wall(*one)).transmittance for one in ((FOAM,), (FOAM, LINER)))
    assert perhaps.best == pytest.approx((without.best + with_it.best) / 2.0)
    assert perhaps.low == with_it.low and perhaps.high == without.high


def test_an_unknown_material_is_never_guessed_and_never_clears() -> None:
    odd = wall(FOAM, STRIP, layer("liner", "unobtainium", 0.25, "all"))
    found, shell = plane_of(odd).transmittance, shell_of((odd,), ())
    assert not found.known and not shell.loss.known
    assert found.high >= plane_of(wall(FOAM, STRIP)).transmittance.high  # as if it were not there
    assert [(one.name, one.what, one.written) for one in shell.unsaid] == [("liner", "material", "unobtainium")]
    unmeasured = shell_of((wall(layer("foam", "XPS", None, "bays"), LINER),), ())
    assert [one.what for one in unmeasured.unsaid] == ["thickness"] and not unmeasured.loss.known
    nothing = shell_of((wall(layer("foam", "XPS", 0.0, "bays"), LINER),), ())
    assert [one.what for one in nothing.unsaid] == ["nothing"] and nothing.loss.known


def test_the_rows_add_up_to_the_shell_and_its_members_are_a_share_of_it() -> None:
    left = replace(wall(FOAM, LINER), edge=exactly(6.0))
    shell = shell_of((left, mirrored(left)), (WINDOW,))
    for end in ("low", "best", "high"):
        assert sum(getattr(one.loss, end) for one in shell.faces) == pytest.approx(getattr(shell.loss, end))
    window = next(one for one in shell.faces if one.what == "hole")
    assert window.loss.best == pytest.approx(0.2 * 2.8) and window.how == "as written" and window.is_window
    bays = sum(one.planed.bay.best * one.area.best for one in shell.faces if one.what == "plane" and one.planed)
    assert bays + shell.members.best + window.loss.best == pytest.approx(shell.loss.best)


def test_an_edge_is_as_much_as_a_member_within_half_of_it_and_colder() -> None:
    plain, edged = (shell_of((replace(wall(FOAM, LINER), edge=exactly(one)),), ()) for one in (0.0, 6.0))
    member = plane_of(wall(FOAM, LINER)).member
    assert edged.loss.best - plain.loss.best == pytest.approx(6.0 * member.best)
    assert edged.loss.high - plain.loss.high == pytest.approx(9.0 * member.high)
    corner = next(one for one in edged.places if one.what.startswith("corners"))
    assert corner.factor.best < plane_of(wall(FOAM, LINER)).member_factor.best


def test_a_plane_of_no_known_area_makes_the_whole_unknown() -> None:
    shell = shell_of((replace(wall(FOAM, LINER), area=UNKNOWN), wall(FOAM, LINER)), ())
    assert not shell.loss.known and shell.loss.low > 0.0 and shell.loss.high == float("inf")


def test_bare_skin_is_bare_and_a_floor_without_filling_is_layers() -> None:
    bare = plane_of(wall())
    assert bare.how == "bare" and bare.transmittance.low == pytest.approx(1.0 / (0.04 + 0.13), rel=1e-3)
    ply = replace(wall(layer("foam", "XPS", 1.0, "all"), name="floor"), skin=exactly(0.75 * INCH), skin_of="ply 3/4")
    floor = plane_of(ply)
    by_hand = 1.0 / (0.04 + 0.75 * INCH / 0.12 + 1.0 * INCH / 0.0288 + 0.17)
    assert floor.how == "layers" and floor.transmittance.best == pytest.approx(by_hand, rel=1e-3)


def test_a_wheel_box_is_bare_skin_by_its_own_name_and_a_bay_by_its_numbers() -> None:
    box = replace(wall(), bay="wheel-box-left", members=exactly(0.0), skin=None, skin_of="", member_material="")
    bay = replace(wall(FOAM), bay="left 4-5")
    faces = shell_of((box, bay), ()).faces
    assert [one.name for one in faces] == ["wheel-box-left", "bay left 4-5"]
    assert faces[0].how == "bare" and faces[0].transmittance.low > 5.0 and faces[0].transmittance.known
    assert faces[1].how == "layers" and faces[1].members.best == 0.0


def test_foam_deeper_than_the_stud_counts_no_further_than_its_face() -> None:
    deep, flush = (plane_of(wall(layer("foam", "XPS", one, "bays"), LINER)).transmittance for one in (3.0, 1.5))
    assert deep == flush


def test_timber_lets_heat_go_straight_through_and_lies_far_below_steel() -> None:
    timber = replace(wall(FOAM, LINER), member_material="softwood", member_shape="solid")
    steel, wood = plane_of(wall(FOAM, LINER)), plane_of(timber)
    stud = 1.0 / (0.17 + 0.04 * INCH / 160.0 + 1.5 * INCH / 0.12 + 0.25 * INCH / 0.12)
    share = 1.0 / 16.0
    assert wood.how == "straight through"
    assert wood.transmittance.best == pytest.approx(share * stud + (1.0 - share) * wood.bay.best, rel=1e-6)
    assert wood.transmittance.best < steel.transmittance.best * 0.75


def test_a_lining_of_metal_is_not_read_from_the_table_and_may_be_as_bad_as_its_bound() -> None:
    metal = plane_of(wall(FOAM, layer("liner", "aluminium", 0.05, "all")))
    assert metal.how == "by hand" and metal.transmittance.high > 1.5 * metal.transmittance.best


def test_what_nobody_wrote_of_the_studs_widens_the_answer() -> None:
    vague = replace(wall(FOAM, LINER), member_gauge=None, member_face=None)
    sure, found = plane_of(wall(FOAM, LINER)).transmittance, plane_of(vague).transmittance
    assert found.high > sure.high and found.low < sure.low and doubtful(found)


def test_a_window_nobody_described_may_be_single_or_double() -> None:
    unsaid = shell_of((), (replace(WINDOW, transmittance=None),)).faces[0]
    assert unsaid.transmittance.low < 2.8 and unsaid.transmittance.high > 5.9 and unsaid.how == "window"
    nothing = shell_of((), (replace(WINDOW, transmittance=exactly(0.0)),)).faces[0]
    assert nothing.transmittance == unsaid.transmittance
    door = shell_of((), (replace(WINDOW, name="ramp", transmittance=None, is_leaf=True),)).faces[0]
    assert door.how == "door" and not door.is_window


def test_the_r_value_of_a_label_is_taken_before_what_the_kind_of_material_conducts() -> None:
    better = replace(FOAM, resistance=exactly(1.5))
    odd = replace(layer("foam", "unobtainium", 1.5, "bays"), resistance=exactly(1.5))
    found, unread = plane_of(wall(better, LINER)), plane_of(wall(odd, LINER))
    films_and_rest = 1.0 / found.bay.best - 1.5
    assert films_and_rest == pytest.approx(0.17 + 0.25 * INCH / 0.12 + 0.04 * INCH / 160.0, rel=1e-6)
    assert unread.bay == found.bay and unread.transmittance.known and shell_of((wall(odd, LINER),), ()).unsaid == ()
    nothing = shell_of((wall(replace(FOAM, resistance=exactly(0.0)), LINER),), ())
    assert [one.what for one in nothing.unsaid] == ["resists nothing"]
    assert nothing.loss == shell_of((wall(FOAM, LINER),), ()).loss


BANDS = st.one_of(
    st.none(),
    st.sampled_from([exactly(0.0), exactly(-1.0), exactly(1e-6), exactly(50.0), UNKNOWN]),
    st.floats(0.0, 0.2).map(exactly),
    st.tuples(st.floats(0.0, 0.1), st.floats(0.0, 0.1)).map(
        lambda ends: Band(sum(ends) / 2.0, min(ends), max(ends), spread="interval")
    ),
)
PLACES: st.SearchStrategy[Where] = st.sampled_from(("all", "bays", "members"))
SHAPES = st.sampled_from(["tube", "angle", "solid", "unknown"])
WORDS = st.sampled_from(["XPS", "", "unobtainium", "air gap", "aluminium", "ply", "foam tape", "vinyl on ply", "wool"])


@settings(deadline=None, max_examples=100)
@given(st.data())
def test_no_wall_however_odd_breaks_off_or_has_its_ends_the_wrong_way_round(data: st.DataObject) -> None:
    layers = [
        replace(
            layer(
                f"l{number}", data.draw(WORDS), None, data.draw(st.sampled_from(("all", "bays", "members"))), certain
            ),
            thick=data.draw(BANDS),
            resistance=data.draw(st.one_of(st.none(), BANDS)),
        )
        for number, certain in enumerate(data.draw(st.lists(st.booleans(), max_size=4)))
    ]
    odd = replace(
        wall(*layers),
        wall=data.draw(st.sampled_from(["left", "roof", "floor", "nose-left"])),
        spacing=data.draw(BANDS), member_face=data.draw(BANDS), member_depth=data.draw(BANDS),
        member_gauge=data.draw(BANDS), skin=data.draw(BANDS), skin_of=data.draw(WORDS),
        member_material=data.draw(WORDS), member_shape=data.draw(SHAPES),
        members=exactly(data.draw(st.sampled_from([0.0, 1e-9, 25.0, 1e6]))), edge=exactly(3.0),
        area=data.draw(st.sampled_from([exactly(10.0), exactly(0.0), UNKNOWN])),
    )  # fmt: skip
    shell = shell_of((odd,), (WINDOW,))
    for face in shell.faces:
        for band in (face.transmittance, face.by_air, face.loss, face.members, face.capacity):
            assert 0.0 <= band.low <= band.best <= band.high, (face.name, band)
        for place in face.places:
            assert 0.0 <= place.factor.low <= place.factor.best <= place.factor.high <= 1.0


def place(shell: Shell, what: str) -> ColdPlace:
    """Return the one cold place whose words begin so."""
    (found,) = [one for one in shell.places if one.what.startswith(what)]
    return found


def test_cold_places_lie_in_their_order_from_the_room_to_the_skin() -> None:
    """Hand arithmetic: a place's factor is one less what lies between it and the room, of all that lies there."""
    shell = shell_of((wall(FOAM, LINER),), (WINDOW,))
    open_bay, stud = place(shell, "between studs").factor.best, place(shell, "on the studs").factor.best
    behind, skin = place(shell, "behind the lining on the studs").factor.best, place(shell, "skin behind").factor.best
    assert open_bay > stud > behind > skin > 0.0
    whole = 0.25 + 0.04 + 1.5 * INCH / 0.0288 + 0.25 * INCH / 0.12 + 0.04 * INCH / 160.0
    assert open_bay == pytest.approx(1.0 - 0.25 / whole, rel=1e-4)
    assert skin == pytest.approx(0.04 / whole, rel=1e-3)
    assert (1.0 - behind) / (1.0 - stud) == pytest.approx((0.25 + 0.25 * INCH / 0.12) / 0.25, rel=1e-4)
    assert place(shell, "window").factor.best == pytest.approx(1.0 - 2.8 * 0.13)
    assert place(shell, "behind the lining").reach == "behind" and place(shell, "on the studs").reach == "open"


def test_a_tight_lining_seals_what_lies_behind_it() -> None:
    tight = shell_of((wall(FOAM, layer("liner", "FRP", 0.1, "all")),), ())
    assert place(tight, "behind the lining").reach == place(tight, "skin behind").reach == "sealed"
    perhaps = shell_of((wall(FOAM, layer("liner", "FRP", 0.1, "all", False)),), ())
    assert place(perhaps, "skin behind").reach == "behind"


def test_the_film_of_the_air_alone_stands_in_the_place_of_a_houses() -> None:
    window = next(one for one in shell_of((), (WINDOW,)).faces)
    assert 1.0 / window.by_air.best == pytest.approx(1.0 / 2.8 - 0.13 + 0.357)
    bay = shell_of((replace(wall(FOAM, LINER), members=exactly(0.0)),), ()).faces[0]
    assert 1.0 / bay.by_air.best - 1.0 / bay.transmittance.best == pytest.approx(0.357 - 0.13, rel=1e-6)


def test_what_linings_hold_counts_to_the_foam_and_half_where_they_may_be_missing() -> None:
    face = shell_of((wall(FOAM, LINER),), ()).faces[0]
    holds = 0.25 * INCH * 500.0 * 1600.0 * 10.0  # thickness, density, heat capacity, area: by hand
    assert face.capacity.best == pytest.approx(holds)
    assert face.inward == pytest.approx(0.357 + 0.25 * INCH / 0.12 / 2.0)
    half = shell_of((wall(FOAM, replace(LINER, is_certain=False)),), ()).faces[0].capacity
    assert (half.low, half.best, half.high) == pytest.approx((0.0, holds / 2.0, holds))
    behind = shell_of((wall(layer("inner", "ply", 0.5, "all"), BREAK, LINER),), ()).faces[0]
    assert behind.capacity.best == pytest.approx(holds)  # what lies behind the foam is no store of the room


def test_members_of_a_bare_skin_are_fins_and_the_error_of_the_table_widens_both_ends() -> None:
    bare = plane_of(wall()).transmittance
    assert bare.best == pytest.approx(1.08 / (0.17 + 0.04 * INCH / 160.0), rel=1e-4)
    sure = replace(wall(replace(FOAM, resistance=exactly(1.3)), replace(LINER, resistance=exactly(0.053))))
    found = plane_of(sure).transmittance
    assert found.low < found.best * 0.95 and found.high > found.best * 1.05


def test_what_a_strip_is_said_to_save_is_what_the_wall_with_it_loses_less() -> None:
    plain, stripped = plane_of(wall(FOAM, LINER)), plane_of(wall(FOAM, STRIP, LINER))
    said = (plain.member_by_air.best - member_with(plain.across, (0.25 * INCH, 0.04))) * plain.density.best
    assert said == pytest.approx(plain.by_air.best - stripped.by_air.best, rel=1e-6) and said > 0.05
    assert is_bridged(plain) and not is_bridged(stripped)
    assert not is_bridged(plane_of(wall(FOAM, BREAK, LINER))) and not is_bridged(plane_of(wall()))


def test_a_lining_is_tight_by_the_least_its_kind_resists() -> None:
    """Ply resists vapour as 50 to 250 times its thickness of air: 100 mm are 5 m at the least and 25 at the most."""
    for thick, reach in ((100.0, "behind"), (220.0, "sealed")):
        shell = shell_of((wall(FOAM, layer("liner", "ply", thick / 25.4, "all")),), ())
        assert place(shell, "skin behind").reach == reach
