"""Where the lined inside ends, what its layers weigh, and where that weight sits."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from boxwright.disciplines.frame.lining import Plate, as_one, layer_masses
from boxwright.disciplines.frame.parts import Framing, Layer, Opening, StandingLayer, StandingOpening
from boxwright.disciplines.frame.solve import surfaces
from boxwright.model.place import Place
from boxwright.units import Band, HeaderUnits, exactly

HEADER = {"header": HeaderUnits(length="mm", weight="kg")}
BODY = (4.0, 2.0, 1.9)
WHOLE, PERHAPS = exactly(1.0), Band(0.5, 0.0, 1.0, spread="perhaps")


def layer(**keys: str) -> Layer:
    return Layer.model_validate(keys, context=HEADER)


def framing(**keys: Any) -> Framing:
    return Framing.model_validate(keys, context=HEADER)


FRAMING = framing(
    studs={"face": "25", "depth": "38", "every": "400", "first": "0"},
    bows={"face": "25", "depth": "30", "every": "500"},
)


def standing(wall: str, name: str, share: Band = WHOLE, **keys: str) -> StandingLayer:
    return StandingLayer(f"walls[{wall}].layers[{name}]", wall, name, layer(**keys), share)


def test_foam_between_studs_takes_no_room_and_a_strip_over_them_does() -> None:
    left = (("left", layer(thick="38", between="studs")), ("left", layer(thick="6", over="studs")))
    planes = surfaces(*BODY, (*left, ("left", layer(thick="5"))), FRAMING)
    assert planes.left == pytest.approx(-1.0 + 0.011)
    assert (planes.right, planes.front, planes.rear, planes.floor, planes.ceiling) == (1.0, 0.0, 4.0, 0.0, 1.9)
    assert (planes.studs_left, planes.studs_right, planes.studs_rear, planes.bows) == (-1.0, 1.0, 4.0, 1.9)


def test_foam_thicker_than_the_studs_adds_the_rest() -> None:
    planes = surfaces(
        *BODY, (("right", layer(thick="30", between="studs")), ("right", layer(thick="20", between="studs"))), FRAMING
    )
    assert planes.right == pytest.approx(1.0 - 0.012)
    assert surfaces(*BODY, (("ceiling", layer(thick="38", between="bows")),), FRAMING).ceiling == pytest.approx(1.892)


def test_all_is_four_walls_and_the_ceiling_and_the_floor_lifts_the_floor() -> None:
    planes = surfaces(*BODY, (("all", layer(thick="5")), ("floor", layer(thick="12")), ("roof", layer(thick="1"))))
    assert (planes.front, planes.rear) == pytest.approx((0.005, 3.995))
    assert (planes.left, planes.right) == pytest.approx((-0.995, 0.995))
    assert (planes.floor, planes.ceiling) == pytest.approx((0.012, 1.894))


def test_a_bay_moves_no_plane() -> None:
    assert surfaces(*BODY, (("bay left 4-5", layer(thick="25")),)).left == -1.0


def test_a_weighed_layer_sits_in_the_middle_of_its_wall() -> None:
    (mass,) = layer_masses((standing("left", "liner", weight="27"),), BODY, FRAMING)
    assert (mass.kg, mass.what, mass.of) == (exactly(27.0), "structure", "walls[left].layers[liner]")
    assert (mass.x.best, mass.y.best, mass.z.best) == pytest.approx((2.0, -1.0, 0.95))
    assert mass.size == pytest.approx((4.0, 0.0, 1.9))


def test_left_and_right_are_mirror_images() -> None:
    left, right = layer_masses((standing("left", "a", weight="5"), standing("right", "a", weight="5")), BODY, None)
    assert (left.x, left.y.best, left.z, left.size) == (right.x, -right.y.best, right.z, right.size)


def test_a_layer_nobody_weighed_is_worked_out_from_its_stock() -> None:
    (mass,) = layer_masses((standing("floor", "deck", of="ply", thick="12"),), BODY, FRAMING)
    assert mass.kg.best == pytest.approx(4.0 * 2.0 * 0.012 * 600.0)  # ply at 600 kg/m3, tables/stock.toml
    assert mass.kg.low < mass.kg.best < mass.kg.high
    assert (mass.kg.spread, mass.kg.assumed, mass.group) == ("interval", True, "density of ply")


def test_foam_between_studs_fills_the_bays_and_a_strip_covers_the_faces() -> None:
    bays = layer_masses((standing("left", "foam", of="XPS", thick="38", between="studs"),), BODY, FRAMING)[0]
    faces = layer_masses((standing("left", "foam", of="XPS", thick="38", over="studs"),), BODY, FRAMING)[0]
    whole = layer_masses((standing("left", "foam", of="XPS", thick="38"),), BODY, FRAMING)[0]
    assert bays.kg.best + faces.kg.best == pytest.approx(whole.kg.best)
    assert faces.kg.best / whole.kg.best == pytest.approx(25.0 / 400.0)


@pytest.mark.parametrize(
    "keys", [{"of": "moon dust", "thick": "12"}, {"of": "ply"}, {"of": "ply", "thick": "unknown"}, {"thick": "12"}]
)
def test_a_layer_that_cannot_be_worked_out_is_unknown_not_nothing(keys: dict[str, str]) -> None:
    (mass,) = layer_masses((standing("floor", "deck", **keys),), BODY, FRAMING)
    assert not mass.kg.known and mass.kg.high == float("inf")
    assert mass.z.best == 0.0


def test_a_layer_that_stands_perhaps_weighs_nothing_to_all_of_it() -> None:
    (mass,) = layer_masses((standing("left", "liner", PERHAPS, weight="20..30"),), BODY, FRAMING)
    assert (mass.kg.best, mass.kg.low, mass.kg.high, mass.kg.spread) == (12.5, 0.0, 30.0, "perhaps")
    (unknown,) = layer_masses((standing("left", "liner", PERHAPS),), BODY, FRAMING)
    assert not unknown.kg.known


def test_a_bay_is_covered_by_its_wall_unless_it_has_a_weight_of_its_own() -> None:
    wall, bay = standing("left", "foam", weight="7"), standing("bay left 4-5", "foam", of="XPS", thick="25")
    assert len(layer_masses((wall, bay), BODY, FRAMING)) == 1
    assert len(layer_masses((standing("all", "foam", weight="7"), bay), BODY, FRAMING)) == 1
    assert len(layer_masses((wall, standing("bay left 4-5", "foam", weight="1")), BODY, FRAMING)) == 2
    (alone,) = layer_masses((standing("right", "foam", weight="7"), bay), BODY, FRAMING)[1:]
    assert alone.kg.best == pytest.approx(0.4 * 1.9 * 0.025 * 32.0)  # XPS at 32 kg/m3, tables/stock.toml
    assert (alone.x.best, alone.y.best) == pytest.approx((1.8, -1.0))


def test_a_wall_nobody_knows_keeps_its_weight_and_says_that_its_place_is_unknown() -> None:
    (mass,) = layer_masses((standing("lfet", "liner", weight="27"),), BODY, FRAMING)
    assert mass.kg == exactly(27.0) and not mass.x.known
    (mass,) = layer_masses((standing("left", "liner", weight="27"),), None, FRAMING)
    assert mass.kg == exactly(27.0) and not mass.x.known


def inertias(masses: list[tuple[float, Plate]]) -> tuple[float, float, float]:
    """Ixx, Iyy, Izz about the common middle, by the parallel axis theorem, each plate a uniform cuboid.

    Own arithmetic from the textbook formulas m (b^2 + c^2) / 12 and m d^2 (from memory).
    """
    whole = sum(mass for mass, _ in masses)
    middle = [sum(mass * plate.middle[axis] for mass, plate in masses) / whole for axis in range(3)]
    found = []
    for first, second in ((1, 2), (0, 2), (0, 1)):
        found.append(
            sum(
                mass
                * (
                    (plate.size[first] ** 2 + plate.size[second] ** 2) / 12
                    + (plate.middle[first] - middle[first]) ** 2
                    + (plate.middle[second] - middle[second]) ** 2
                )
                for mass, plate in masses
            )
        )
    return found[0], found[1], found[2]


coordinate = st.floats(-3.0, 3.0)
extent = st.floats(0.0, 3.0)
plates = st.lists(
    st.builds(
        Plate,
        st.floats(0.1, 10.0),
        st.tuples(coordinate, coordinate, coordinate),
        st.tuples(extent, extent, extent),
    ),
    min_size=1,
    max_size=6,
)


@given(plates)
def test_several_plates_as_one_keep_middle_and_all_three_inertias(several: list[Plate]) -> None:
    one = as_one(tuple(several))
    masses = [(plate.area, plate) for plate in several]
    total = sum(mass for mass, _ in masses)
    assert inertias([(total, one)]) == pytest.approx(inertias(masses), rel=1e-9, abs=1e-9)
    for axis in range(3):
        middle = sum(mass * plate.middle[axis] for mass, plate in masses) / total
        assert one.middle[axis] == pytest.approx(middle, abs=1e-9)


def test_all_sits_above_the_middle_because_of_the_ceiling() -> None:
    (mass,) = layer_masses((standing("all", "liner", weight="34"),), BODY, FRAMING)
    assert (mass.x.best, mass.y.best) == pytest.approx((2.0, 0.0))
    upright, ceiling = 2 * (4.0 + 2.0) * 1.9, 4.0 * 2.0
    assert mass.z.best == pytest.approx((upright * 0.95 + ceiling * 1.9) / (upright + ceiling))


def hole(wall_y: float, low: tuple[float, float], high: tuple[float, float], share: Band = WHOLE) -> StandingOpening:
    """Return an opening of a side wall from one corner to the other (m, along and up)."""
    x, z = (low[0] + high[0]) / 2.0, (low[1] + high[1]) / 2.0
    place = Place(exactly(x), exactly(wall_y), exactly(z), (high[0] - low[0], 0.0, high[1] - low[1]))
    return StandingOpening("openings[window]", Opening(), place, share)


def test_what_was_not_weighed_has_no_piece_where_an_opening_is() -> None:
    board = standing("left", "liner", of="ply", thick="12")
    (whole,) = layer_masses((board,), BODY, FRAMING)
    window = hole(-1.0, (3.0, 0.9), (3.8, 1.4))
    (cut,) = layer_masses((board,), BODY, FRAMING, (window,))
    assert cut.kg.best == pytest.approx(whole.kg.best * (1.0 - 0.8 * 0.5 / (4.0 * 1.9)))
    # Own arithmetic: what is left balances about the middle of the whole board with the piece that went.
    assert cut.x.best * (7.6 - 0.4) + 3.4 * 0.4 == pytest.approx(2.0 * 7.6)
    assert cut.z.best * (7.6 - 0.4) + 1.15 * 0.4 == pytest.approx(0.95 * 7.6)
    (right,) = layer_masses((board,), BODY, FRAMING, (hole(1.0, (3.0, 0.9), (3.8, 1.4)),))
    assert right == whole
    (over_the_end,) = layer_masses((board,), BODY, FRAMING, (hole(-1.0, (3.5, 0.9), (4.5, 1.4)),))
    assert over_the_end.kg.best == pytest.approx(whole.kg.best * (1.0 - 0.25 / 7.6))


def test_what_was_weighed_is_taken_as_weighed_and_a_hole_in_doubt_may_be_there_or_not() -> None:
    window = hole(-1.0, (3.0, 0.9), (3.8, 1.4), PERHAPS)
    weighed = standing("left", "liner", weight="27")
    assert layer_masses((weighed,), BODY, FRAMING, (window,)) == layer_masses((weighed,), BODY, FRAMING)
    board = standing("left", "liner", of="ply", thick="12")
    (whole,), (doubt,) = (layer_masses((board,), BODY, FRAMING, cut) for cut in ((), (window,)))
    assert doubt.kg.high == pytest.approx(whole.kg.high)
    assert doubt.kg.low == pytest.approx(whole.kg.low * (1.0 - 0.4 / 7.6))


def test_a_wall_that_is_all_opening_weighs_nothing() -> None:
    board = standing("left", "liner", of="ply", thick="12")
    (none,) = layer_masses((board,), BODY, FRAMING, (hole(-1.0, (-1.0, -1.0), (5.0, 3.0)),))
    assert (none.kg.best, none.kg.high) == (0.0, 0.0)
