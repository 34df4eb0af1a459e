"""A year of the room: what shines on which side, what is kept in balance, and what more loss and sun do to it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import cos, inf, pi

import pytest

from boxwright.disciplines.heat.burning import Burning
from boxwright.disciplines.heat.coating import Coat
from boxwright.disciplines.heat.cold_hours import Inside, Warmth
from boxwright.disciplines.heat.method import Heater
from boxwright.disciplines.heat.shell import Face, shell_of
from boxwright.disciplines.heat.weather import WeatherHours
from boxwright.disciplines.heat.year import NEVER_COOLED, Run, Set, Year, _loop, _pressure, _ran, worst_days, year_of
from boxwright.disciplines.heat.year_room import ROOMS, YEAR, facing_of, year_room
from boxwright.exchange import Airflow, Layup, LayupLayer, Moisture
from boxwright.model.compiled import compiled
from boxwright.units import Band, exactly

DAYS = 12
NOBODY: tuple[Moisture, ...] = ()
SIDES = {
    "left": (0.0, -1.0, 0.0),
    "right": (0.0, 1.0, 0.0),
    "front": (-1.0, 0.0, 0.0),
    "rear": (1.0, 0.0, 0.0),
    "roof": (0.0, 0.0, 1.0),
    "floor": (0.0, 0.0, -1.0),
}


@pytest.fixture(autouse=True)
def plainly(monkeypatch: pytest.MonkeyPatch) -> None:
    """Run the loop plain, as where nothing that compiles is installed."""

    def missing(_: object, kept_in: str) -> None:
        raise ModuleNotFoundError("numba")

    monkeypatch.setattr("boxwright.disciplines.heat.year.compiled", missing)


def plane(wall: str, foam: float, colour: str) -> Layup:
    """Return 8 m2 of a wall framed in steel every 16 in, with as much foam between and a lining over it."""
    layers = [LayupLayer(f"walls.{wall}", "liner", "ply", exactly(0.00635), "all", True)]
    if foam:
        layers.insert(0, LayupLayer(f"walls.{wall}", "foam", "XPS", exactly(foam), "bays", True))
    skin = "ply 3/4" if wall == "floor" else f"{colour} aluminium 0.040"
    return Layup(
        f"walls[{wall}]", wall, "", exactly(8.0), SIDES[wall], exactly(20.0), exactly(0.0), exactly(0.4064),
        exactly(0.0254), exactly(0.0381), exactly(0.00165), "tube", "steel", exactly(0.001), skin, tuple(layers),
    )  # fmt: skip


def inside(foam: float = 0.0381, colour: str = "white", leak: float = 0.006, opened: float = 0.0) -> Inside:
    shell = shell_of(tuple(plane(wall, foam, colour) for wall in SIDES), ())
    flow = Airflow("trailer", exactly(leak), exactly(0.0), exactly(0.0), 0.0, exactly(0.0), exactly(opened))
    return Inside(shell, flow, 17.0, 2.0, 8.0)


def weather(mean: float = 278.15, sun: float = 1e-9, swing: float = 6.0, wind: float = 2.0) -> WeatherHours:
    """Return twelve days from the 22nd of March on at 36 degrees north, each alike, under a sky as warm as the air."""
    count = 24 * DAYS
    noon = tuple(max(cos(2.0 * pi * (hour % 24 + 0.5 - 12.0) / 24.0), 0.0) * sun for hour in range(count))
    outside = tuple(mean + swing / 2.0 * cos(2.0 * pi * (hour % 24 - 15) / 24.0) for hour in range(count))
    return WeatherHours(
        "here", "made up", 0.63, -1.396, 0.0, -18000.0, (80, 0), outside, dew_point=(320.0,) * count,
        wind=(wind,) * count, level_sun=noon, sky_light=noon, cloud=(10.0,) * count,
    )  # fmt: skip


def heater(lowest: float = 300.0, highest: float = 2000.0) -> Warmth:
    return Warmth("parts[heater]", "heater", exactly(lowest), exactly(highest), 289.85, False, True)


def year(
    room: Inside, of: WeatherHours, warmth: Warmth | None = None, fuel: str = "diesel", burning: Burning | None = None
) -> Year:
    return year_of(room, of, warmth, burning or Burning(fuel), NOBODY)


def test_the_front_looks_north_or_east_and_the_other_sides_follow() -> None:
    # Front, right, up as they stand in the trailer: rearward, right and up.
    assert facing_of((-1.0, 0.0, 0.0), "north") == (1.0, 0.0, 0.0)
    assert facing_of((0.0, 1.0, 0.0), "north") == (0.0, 1.0, 0.0)
    assert facing_of((-1.0, 0.0, 0.0), "east") == (0.0, 1.0, 0.0)
    assert facing_of((0.0, 1.0, 0.0), "east") == (-1.0, 0.0, 0.0)
    assert facing_of((0.0, 0.0, 1.0), "east") == (0.0, 0.0, 1.0)


def test_each_direction_is_a_face_and_together_they_lose_what_the_shell_loses() -> None:
    room = inside()
    box, facings = year_room(room, Heater(0.0, 0.0, True, 0.0), "best", "best", "north", False)
    assert len(box.faces.area) == len(facings) == 6
    assert sorted(box.faces.direction) == list(range(6))
    films = [(still + wind * 2.0) * area for still, wind, area in zip(
        box.faces.film, box.faces.film_wind, box.faces.area, strict=True
    )]  # fmt: skip
    through = sum(
        1.0 / (1.0 / film + behind + 1.0 / inward)
        for film, behind, inward in zip(films, box.faces.behind, box.faces.inward, strict=True)
    )
    assert through == pytest.approx(room.shell.by_air.best, rel=1e-9)


def test_the_sun_is_taken_by_as_much_of_a_face_as_its_own_end_says_and_the_loss_by_the_other() -> None:
    """By hand: a pane of 1 (0.5 to 2) m2 and a wall of 8 (6 to 9) m2, at opposite ends of loss and sun."""
    room = inside()
    wall = replace(room.shell.faces[0], area=Band(8.0, 6.0, 9.0))
    pane = replace(wall, of="openings[pane]", area=Band(1.0, 0.5, 2.0), is_window=True)
    room = replace(room, shell=replace(room.shell, faces=(wall, pane)))
    still, through = Heater(0.0, 0.0, True, 0.0), YEAR["through a pane"]
    for loss, sun, pane_in, pane_out, wall_in, wall_out in (
        ("low", "high", 2.0, 0.5, 9.0, 6.0), ("high", "low", 0.5, 2.0, 6.0, 9.0), ("best", "best", 1.0, 1.0, 8.0, 8.0),
    ):  # fmt: skip
        box, _ = year_room(room, still, loss, sun, "north", False)  # type: ignore[arg-type]
        assert box.panes.gain == pytest.approx((getattr(through, sun) * pane_in,))
        assert box.panes.conductance == pytest.approx((getattr(pane.by_air, loss) * pane_out,))
        assert box.faces.area == pytest.approx((wall_out,))
        assert box.faces.absorptance == pytest.approx((getattr(wall.coat.absorptance, sun) * wall_in / wall_out,))


def test_the_balance_of_every_run_closes() -> None:
    for end, cool in (("low", NEVER_COOLED), ("best", ROOMS["cooled to"]), ("high", NEVER_COOLED)):
        how = Set(end, end, "east", cool == NEVER_COOLED, cool)  # type: ignore[arg-type]
        run = _ran(inside(opened=0.05), weather(sun=500.0), heater(), NOBODY, how, Run(None, None))
        assert run.lacks < 1e-6
        assert sum(run.banded) == pytest.approx(3600.0 * 24 * DAYS)


@pytest.mark.nightly
def test_compiled_the_same_comes_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """The loop is compiled once, which takes longer than a test by day may."""
    pytest.importorskip("numpy", reason="numpy is not installed: no rows for a compiled year")
    pytest.importorskip("numba", reason="numba is not installed: no year is compiled")
    how, times = Set("best", "best", "east", True, NEVER_COOLED), list[int]()

    def timed(run: Callable[[], None]) -> None:
        run()
        times.append(1)

    given = inside(opened=0.05), weather(sun=500.0), heater(), NOBODY, how
    plain = _ran(*given, Run(None, timed))
    monkeypatch.setattr("boxwright.disciplines.heat.year.compiled", compiled)
    for one, other in zip(_ran(*given, Run(_loop(""), timed)), plain, strict=True):
        assert one == pytest.approx(other, rel=1e-9, abs=1e-9)
    assert times == [1, 1]


def test_a_steady_cold_takes_what_shell_and_cracks_lose() -> None:
    """No swing, no sun, no sky: heat is the loss for each kelvin times the difference (hand arithmetic)."""
    room, cold = inside(leak=0.0), weather(swing=0.0)
    found = year(room, cold, heater())
    expected = room.shell.by_air.best * (289.85 - 278.15) * 3600.0 * 24 * DAYS
    assert found.energy.best == pytest.approx(expected, rel=0.01)
    assert found.energy.low == pytest.approx(expected * room.shell.by_air.low / room.shell.by_air.best, rel=0.01)
    assert sum(one.best for one in found.banded) == pytest.approx(24 * DAYS)
    assert found.banded[3].best == pytest.approx(24 * DAYS) and found.too_cold.high == 0.0


def test_less_foam_takes_more_heat_and_more_cooling_and_a_dark_skin_more_cooling_alone() -> None:
    good, poor = (year(inside(foam), weather(), heater()) for foam in (0.0381, 0.0))
    assert poor.energy.best > 1.3 * good.energy.best
    sunny = weather(mean=299.15, sun=700.0)
    white, black = (year(inside(colour=one), sunny) for one in ("white", "black"))
    assert black.peak.best > 1.2 * white.peak.best > 0.0
    assert black.warmest.best > white.warmest.best
    assert year(inside(0.0), sunny).peak.best > white.peak.best


def test_what_is_opened_takes_the_heat_of_a_day_out() -> None:
    sunny = weather(mean=295.15, sun=900.0)
    shut, opened = (year(inside(colour="black", opened=area), sunny) for area in (0.0, 0.2))
    assert opened.warmest.best < shut.warmest.best
    assert opened.too_warm.best < shut.too_warm.best
    assert opened.peak == shut.peak, "who cools shuts everything"


def test_fuel_is_heat_by_efficiency_and_content_and_least_where_least_is_lost() -> None:
    found = year(inside(), weather(), heater())
    assert found.fuel is not None
    # Diesel by its lower heating value and the common efficiency (hand arithmetic).
    assert found.fuel.best == pytest.approx(found.energy.best / (0.8 * 36.09e9))
    assert found.fuel.low == pytest.approx(found.energy.low / (0.85 * 36.09e9))
    assert found.fuel.high == pytest.approx(found.energy.high / (0.75 * 36.09e9))
    assert year(inside(), weather(), heater(), "electric").fuel is None
    # Twelve days from the 22nd of March on.
    for end in ("best", "low", "high"):
        # An end of a month need not be one of the year: the months' ends are at least as far out.
        months = sum(getattr(one, end) for one in found.heat_by_month)
        assert months == pytest.approx(getattr(found.energy, end), rel=0.01 if end == "best" else 0.2)
    assert sum(one.low for one in found.heat_by_month) <= found.energy.low * (1.0 + 1e-9)
    assert sum(one.high for one in found.heat_by_month) >= found.energy.high * (1.0 - 1e-9)
    assert [number for number, heat in enumerate(found.heat_by_month) if heat.best > 0.0] == [2, 3]


def test_too_small_a_heater_leaves_it_cold_for_hours_and_one_that_is_large_does_not() -> None:
    small, large = (year(inside(0.0), weather(263.15), heater(100.0, most)) for most in (500.0, 5000.0))
    assert small.too_cold.best == pytest.approx(24 * DAYS, rel=0.05)
    assert small.banded[4].best == pytest.approx(24 * DAYS)
    assert large.too_cold.high == 0.0
    assert large.need.best < 5000.0


def test_on_warm_days_the_heater_is_not_set() -> None:
    found = year(inside(), weather(mean=295.15), heater())
    assert found.energy == Band(0.0, 0.0, 0.0, spread="interval", assumed=True)
    assert found.banded[0].low == pytest.approx(24 * DAYS)


def test_air_is_thinner_higher_up() -> None:
    low, high = weather(), WeatherHours("x", "x", 0.6, 0.0, 2000.0, 0.0, (0, 0), (280.0,))
    assert _pressure(low) == 101325.0
    # 0.785 of the sea's at 2000 m, as the sheet of checks has it.
    assert _pressure(high) / 101325.0 == pytest.approx(0.785, abs=0.001)


def test_a_heater_left_at_its_lowest_is_too_warm_as_long_and_as_much_as_its_steady_state_says() -> None:
    """In steady weather without sun the room comes to outside + heat / loss: by hand from the loss of the shell."""
    still, room = weather(mean=280.15, swing=0.0), inside(leak=0.0)
    unsaid = replace(heater(lowest=900.0), switches=None)
    found = year(room, still, unsaid)
    assert found.season == len(still.outside)
    assert found.hot_at_lowest is not None and found.hot_by is not None
    by_hand = 280.15 + 900.0 / room.shell.by_air.best - 289.85
    assert by_hand > 4.0
    # It begins as warm as is wanted.
    assert 0.75 * by_hand < found.hot_by.best < by_hand * (1.0 + 1e-6)
    assert 0.6 * found.season < found.hot_at_lowest.best <= found.season
    cool = year(room, still, replace(unsaid, lowest=exactly(100.0)))
    assert cool.hot_at_lowest is not None and cool.hot_at_lowest.best == 0.0
    assert found.hot_by.known and found.too_cold.known
    dark = year(room, replace(still, level_sun=(), sky_light=()), unsaid)
    for one in (dark.hot_at_lowest, dark.hot_by, dark.warmest, dark.too_warm, dark.peak, dark.cooling):
        assert one is not None and not one.known, "without sun it is no more than the least"
        assert one.low <= one.best < one.high == inf
    assert dark.hot_by is not None and dark.hot_by.low <= found.hot_by.low


def test_one_that_goes_off_by_itself_is_never_left_at_its_lowest() -> None:
    for one in (heater(), replace(heater(), switches=None, lowest=exactly(0.0)), None):
        found = year(inside(), weather(), one)
        assert (found.hot_at_lowest, found.hot_by) == (None, None)
    assert year(inside(), weather(), None).trips == ()


def test_the_days_that_take_most_lie_between_their_mean_and_all_of_it() -> None:
    assert worst_days((*[1.0] * 24, *[3.0] * 24, *[2.0] * 24, *[0.0] * 24), 2) == 24 * 5.0
    assert worst_days((*[1.0] * 24, *[3.0] * 12), 7) == 24.0 + 36.0
    found = year(inside(), weather(), heater())
    assert [one.days for one in found.trips] == [3, 7]
    for one in found.trips:
        assert one.energy.best >= found.energy.best * one.days / DAYS * 0.999
        assert one.energy.best < found.energy.best
        assert one.fuel is not None and found.fuel is not None
        assert one.fuel.best / found.fuel.best == pytest.approx(one.energy.best / found.energy.best)


def without(of: WeatherHours, *columns: str) -> WeatherHours:
    return replace(of, **dict.fromkeys(columns, ()))


@pytest.mark.parametrize("wind", [0.0001, 4.0, 15.0])
def test_weather_that_says_no_wind_is_between_still_air_and_a_gale_and_never_still(wind: float) -> None:
    """A logger in the yard has no wind: what comes of any wind lies between the ends, of cold and of warmth."""
    room = inside(0.0, colour="black", opened=0.05)
    for of, warmth in ((weather(263.15, wind=wind), heater(100.0, 1500.0)), (weather(299.15, 700.0, wind=wind), None)):
        unsaid, told = year(room, without(of, "wind"), warmth), year(room, of, warmth)
        for name in ("energy", "too_cold", "coldest", "warmest", "too_warm", "cooling", "peak", "need"):
            ends, one = getattr(unsaid, name), getattr(told, name)
            assert ends.low <= one.low + 1e-6 and one.high <= ends.high + 1e-6, name
        for ends, one in zip(unsaid.banded, told.banded, strict=True):
            assert ends.low <= one.low and one.high <= ends.high
    cold = year(room, without(weather(268.15), "wind"), heater(100.0, 1800.0))
    assert cold.too_cold.low == 0.0 and cold.too_cold.high > 0.5 * cold.season, "a gale makes it too cold"
    assert not cold.too_cold.known, "nobody knows how often, so no most likely hours are told"
    assert cold.runs == 18 + 18 and year(room, weather(), heater()).runs == 10 + 10


def test_weather_without_sky_or_sun_has_ends_that_hold_those_with_them() -> None:
    """A clear dry sky takes more than an overcast one, and the sun gives some: neither is as if there were none."""
    room, count = inside(0.0, colour="black"), 24 * DAYS
    for dew, cloud, sun in ((258.15, 1.0, 300.0), (277.15, 9.0, 50.0)):
        of = replace(weather(sun=sun), dew_point=(dew,) * count, cloud=(cloud,) * count)
        told = year(room, of, heater())
        for columns in (("dew_point", "cloud"), ("cloud",), ("level_sun", "sky_light")):
            unsaid = year(room, without(of, *columns), heater())
            assert unsaid.energy.low < told.energy.low and told.energy.high < unsaid.energy.high, columns


@pytest.mark.parametrize(("foam", "colour"), [("low", "low"), ("low", "high"), ("high", "low"), ("high", "high")])
def test_every_shell_and_every_skin_within_their_doubt_lie_between_the_ends(foam: str, colour: str) -> None:
    """The worst shell is the coldest with the palest skin, so no end of one goes with one end of the other alone."""
    room, sunny = inside(0.0254, colour="grey"), weather(mean=282.15, sun=600.0)
    told = year(room, sunny, heater())
    shell, faces = room.shell, list[Face]()
    for one in shell.faces:
        takes = exactly(getattr(one.coat.absorptance, colour))
        loss, emits = (exactly(getattr(band, foam)) for band in (one.by_air, one.coat.emittance))
        holds = exactly(one.capacity.low if foam == "high" else one.capacity.high)
        faces.append(replace(one, by_air=loss, capacity=holds, coat=Coat(one.coat.colour, takes, emits)))
    one = year(replace(room, shell=replace(shell, faces=tuple(faces))), sunny, heater())
    for name in ("energy", "fuel", "coldest", "warmest", "too_warm", "cooling", "peak"):
        ends, found = getattr(told, name), getattr(one, name)
        assert ends.low <= found.best <= ends.high, name


def test_people_warm_a_hot_room_most_and_a_cold_one_least() -> None:
    """By hand: 100 W more all day take as much less of heat, and as much more of cooling, as they give."""
    many = Moisture("x", exactly(0.0), Band(100.0, 0.0, 200.0), "asleep", 0, 24)
    for of, warmth, name, sign in (
        (weather(263.15, 200.0), heater(300.0, 9000.0), "energy", 1.0),
        (weather(306.15, 200.0), None, "cooling", -1.0),
    ):
        none, some = (getattr(year_of(inside(), of, warmth, Burning(), people), name) for people in ((), (many,)))
        day = 3600.0 * 24 * DAYS
        assert none.best - some.best == pytest.approx(sign * 100.0 * day, rel=0.05)
        least, most = (some.high, some.low) if sign > 0.0 else (some.low, some.high)
        assert (none.high if sign > 0.0 else none.low) == pytest.approx(least, rel=1e-6), "nobody there at one end"
        assert abs((none.low if sign > 0.0 else none.high) - most) == pytest.approx(200.0 * day, rel=0.05)
