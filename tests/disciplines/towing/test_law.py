"""The rules of the route: which bind where, which may stop, and the look-ups of the project's own sheet.

Expected values are those of the sheet's entries t-rule-eu-category, t-rule-au-brakes, t-rule-us-lamps and
t-rule-chain-1, each second-hand or seen as the rule's own table says.
"""

from __future__ import annotations

from datetime import date

import pytest

from boxwright.disciplines.towing import law
from boxwright.disciplines.towing.findings.fitted import LAMP_RULES
from boxwright.disciplines.towing.law import law_of
from boxwright.disciplines.towing.sourced import PACKAGE
from boxwright.finding import Finding
from boxwright.source import load_rules
from boxwright.units import read_any
from tests.findings.towing.held import JUDGED_ON, said_of

UNBRAKED = {"trailer.brakes": {"kind": "none"}, "tow.pickup.unbraked": "9000 lb", "trailer.gvwr": "3600 kg",
            "trailer.axles.gawr": ["1800 kg", "1800 kg"]}  # fmt: skip


def said(code: str, edits: dict[str, object]) -> list[Finding]:
    return [one for one in said_of(edits) if one.code == f"towing/{code}"]


def test_a_place_takes_its_nation_and_itself_and_never_the_neighbour() -> None:
    found = law_of(("US-NC", "EU-ES"), JUDGED_ON)
    assert {(one.place, one.rule.where) for one in found.placed} == {
        ("US-NC", "national"), ("US-NC", "NC"), ("EU-ES", "national"),
    }  # fmt: skip
    assert found.bare == ("EU-ES",)
    assert not any(one.rule.where in {"TX", "DE"} for one in found.placed)


def test_a_rule_of_building_binds_at_home_only() -> None:
    home = law_of(("US-NC", "EU-FR"), JUDGED_ON)
    away = law_of(("EU-FR", "US-NC"), JUDGED_ON)
    assert {one.place for one in home.placed if one.rule.applies == "built"} == {"US-NC"}
    assert {one.place for one in away.placed if one.rule.applies == "built"} == {"EU-FR"}


def test_a_rule_binds_only_while_it_is_in_force() -> None:
    now, then = law_of(("CA-QC",), JUDGED_ON), law_of(("CA-QC",), date(1985, 1, 1))
    assert now.bare == ("CA-QC",) and not now.asking(law.UNBRAKED_UP_TO, "cargo")
    assert [one.rule.id for one in then.asking(law.UNBRAKED_UP_TO, "cargo")] == ["ca-qc-brakes"]


def test_the_class_decides_which_rule_binds_and_commercial_rules_bind_nobody_here() -> None:
    found = law_of(("US-NC",), JUDGED_ON)
    limits = {name: [one.rule.limit for one in found.asking(law.UNBRAKED_BELOW, name)] for name in law.CLASSES}
    assert limits == {"cargo": [read_any("4000 lb")], "camper": [read_any("1000 lb")]}
    assert found.asking(law.UNBRAKED_UP_TO, "cargo") == ()
    assert found.asking(law.WIDTH, "cargo")[0].rule.where == "NC"


@pytest.mark.parametrize("country", ["US", "CA", "UK", "EU", "AU", "NZ"])
def test_every_country_has_rules_and_every_asking_with_a_limit_says_one(country: str) -> None:
    rules = [one for one in load_rules(PACKAGE) if one.country == country]
    assert len(rules) >= 9
    assert all(one.limit is not None or one.limit_text in {"required", "forbidden"} for one in rules)


def test_what_was_not_read_never_stops() -> None:
    for place in ("US-NC", "US-TX", "US-MD", "US-AK", "CA-BC", "CA-AB", "UK", "EU-IE", "AU"):
        found = said("brakes-required", {**UNBRAKED, "countries": [place], "gross": "7800 lb", "tongue": "900 lb"})
        assert {one.kind for one in found} == {"unknown"}, place
        assert all(one.could_stop for one in found)
    assert {one.kind for one in said("brakes-required", {**UNBRAKED, "class": "camper"})} == {"stop"}


def test_the_strictest_of_a_route_is_one_of_its_members_and_names_the_others() -> None:
    edits = {**UNBRAKED, "countries": ["US-TX", "US-MD", "US-NC"], "gross": "5000 lb", "tongue": "600 lb"}
    (found,) = said("brakes-required", edits)
    assert found.limit == pytest.approx(0.40 * read_any("5150 lb"))  # Maryland's share of the tow vehicle's own weight
    assert found.margin == pytest.approx(0.40 * read_any("5150 lb") - read_any("5000 lb"))
    assert "US-MD allows a cargo trailer to 0.40" in found.says
    assert "US-MD 3000 lb" in found.says and "US-NC 4000 lb" in found.says and "US-TX 4500 lb" in found.says


@pytest.mark.parametrize(
    ("plate", "needs"), [("700 kg", False), ("750 kg", False), ("751 kg", True), ("3500 kg", True)]
)
def test_a_european_trailer_over_750_kg_needs_brakes(plate: str, needs: bool) -> None:
    edits = {**UNBRAKED, "countries": ["EU-FR"], "trailer.gvwr": plate, "gross": "600 kg", "tongue": "60 kg"}
    assert bool(said("brakes-required", edits)) == needs


@pytest.mark.parametrize(
    ("on_wheels", "brakes", "asks"),
    [(750, "none", False), (751, "none", True), (2000, "electric", False), (2001, "electric", True)],
)
def test_australia_counts_what_rests_on_the_wheels(on_wheels: int, brakes: str, asks: bool) -> None:
    """GTM to 750 kg none; 751 to 2000 kg one axle; over 2000 kg all wheels."""
    edits = {
        **UNBRAKED,
        "countries": ["AU"],
        "trailer.brakes": {"kind": brakes, "axles": "1", "breakaway": "yes"},
        "gross": f"{on_wheels if brakes == 'electric' else on_wheels + 90} kg",
        "tongue": "90 kg",
    }
    assert bool(said("brakes-required", edits)) == asks


@pytest.mark.parametrize(
    ("width", "length", "clearance", "middle"),
    [("2000 mm", "18 ft", False, False), ("2032 mm", "18 ft", True, False), ("2440 mm", "31 ft", True, True)],
)
def test_united_states_lamps_by_width_and_length(width: str, length: str, clearance: bool, middle: bool) -> None:
    edits = {
        "trailer.outside": {"width": width, "over_fenders": width, "length": "14 ft", "height": "98 in",
                            "length_overall": length},
        "trailer.lamps": ["tail", "stop", "turn", "side", "plate"],
    }  # fmt: skip
    text = " ".join(one.says for one in said("lamps", edits))
    assert ("clearance front" in text and "identification" in text) == clearance
    assert ("intermediate" in text) == middle


def test_new_zealand_asks_twice_the_weight_of_each_chain_above_two_tonnes() -> None:
    """Read: 2,001 to 2,500 kg without a breakaway brake, two chains, each breaking at twice the laden weight."""
    heavy = {"countries": ["NZ"], "trailer.brakes.breakaway": "no", "gross": "2200 kg", "tongue": "200 kg"}
    light = {**heavy, "gross": "1900 kg"}
    weak = {"trailer.chains": {"count": "2", "rating": "4300 kg"}}
    strong = {"trailer.chains": {"count": "2", "rating": "4500 kg"}}
    assert [one.kind for one in said("chains", {**heavy, **weak})] == ["stop"]
    assert said("chains", {**heavy, **strong}) == [] == said("chains", {**light, **weak})
    assert [one.kind for one in said("chains", {**heavy, "trailer.chains": {"count": "1", "rating": "4500 kg"}})] == [
        "stop"
    ]


def test_a_place_without_rules_asks_and_a_well_fitted_trailer_is_only_limited_by_it() -> None:
    (found,) = said("no-rule-known", {"countries": ["US-VT"]})
    assert found.kind == "unknown" and not found.could_stop and "US-VT" in found.says
    (found,) = said("no-rule-known", {"countries": ["US-VT"], "trailer.brakes.axles": "1"})
    assert found.could_stop
    (found,) = said("no-rule-known", {"countries": ["JP"]})
    assert found.could_stop and "no rule known to us for JP" in found.says
    (found,) = said("no-rule-known", {"countries": ["US"]})
    assert "which State" in found.says
    (found,) = said("no-rule-known", {"countries": ["EU-ES"]})
    assert found.kind == "advice"


def test_the_change_of_class_shows_both_numbers() -> None:
    bunk = {"front": "78 in", "left": "-39 in", "under": "25 in", "size": "76 in x 48 in x 4 in"}
    edits = {"beds": ["bunk"], "parts": {"bunk": bunk}, "countries": ["US-NC"]}
    (found,) = said("class-change", edits)
    assert "US-NC then asks for brakes from 1000 lb, not from 4000 lb" in found.says
    assert said("class-change", {**edits, "class": "camper"}) == []


def test_surge_brakes_end_where_the_province_says() -> None:
    """2,800 kg in British Columbia, by a trade association's table: quoted, so it asks."""
    edits = {"countries": ["CA-BC"], "trailer.brakes.kind": "surge", "tongue": "300 kg"}
    assert said("brakes-required", {**edits, "gross": "2790 kg"}) == []
    assert [one.kind for one in said("brakes-required", {**edits, "gross": "2810 kg"})] == ["unknown"]


@pytest.mark.parametrize(("gross", "needs"), [("2999.9 lb", False), ("3000 lb", True)])
def test_a_limit_that_reads_or_more_counts_itself(gross: str, needs: bool) -> None:
    """Nebraska, read: three thousand pounds or more."""
    edits = {**UNBRAKED, "class": "camper", "gross": gross, "tongue": "360 lb"}
    assert bool(said("brakes-required", edits)) == needs


@pytest.mark.parametrize(("each", "asks"), [("2100 lb", False), ("1900 lb", True)])
def test_two_chains_may_hold_the_weight_together_where_the_rule_says_so(each: str, asks: bool) -> None:
    """North Carolina, quoted: chains of sufficient strength to hold the gross weight; here 4,000 lb."""
    found = said("chains", {"countries": ["US-NC"], "trailer.chains.rating": each})
    assert ("unknown" in {one.kind for one in found}) == asks


def test_weak_chains_leave_the_law_of_an_unread_place_open() -> None:
    (found,) = said("no-rule-known", {"countries": ["US-VT"], "trailer.chains.rating": "3000 lb"})
    assert found.could_stop


@pytest.mark.parametrize(("width", "asks"), [("2100 mm", False), ("2101 mm", True)])
def test_a_limit_that_reads_over_does_not_count_itself(width: str, asks: bool) -> None:
    """End-outline lamps over 2.10 m (from memory in the UK; read in the French code, article R313-10)."""
    lamps = ["tail", "stop", "turn", "plate", "reflectors", "front position"]
    outside = {"trailer.outside.over_fenders": width, "trailer.outside.width": "2000 mm"}
    assert bool(said("lamps", {"countries": ["UK"], "trailer.lamps": lamps, **outside})) == asks
    kinds = {one.kind for one in said("lamps", {"countries": ["EU-FR"], "trailer.lamps": lamps, **outside})}
    assert kinds == ({"stop"} if asks else set())


@pytest.mark.parametrize(("height", "stops"), [("14 ft", False), ("14 ft 1 in", True)])
def test_north_carolina_lets_a_trailer_be_fourteen_feet_high(height: str, stops: bool) -> None:
    """G.S. 20-116(c), read: 14 feet, unladen or with load; older copies had 13 ft 6 in."""
    edits = {"countries": ["US-NC"], "trailer.outside.height": height}
    assert ["stop" for one in said("size-on-route", edits) if one.kind == "stop"] == (["stop"] if stops else [])


@pytest.mark.parametrize(
    ("place", "width", "kinds"),
    [
        ("US-NC", "102.5 in", {"stop"}), ("US-NC", "102 in", set()), ("US-AK", "102.5 in", {"stop"}),
        ("US-NE", "102.5 in", {"stop"}), ("US-TX", "102.5 in", {"stop"}), ("EU-FR", "2.56 m", {"stop"}),
        ("EU-DE", "2.56 m", {"stop"}),
        ("EU-FR", "2.55 m", set()), ("AU-TAS", "2.51 m", {"stop"}), ("AU-TAS", "2.50 m", set()),
        ("NZ", "2.56 m", {"unknown"}), ("NZ", "2.55 m", set()),
    ],
)  # fmt: skip
def test_a_width_that_was_read_stops_and_one_that_was_quoted_asks(place: str, width: str, kinds: set[str]) -> None:
    edits = {"countries": [place], "trailer.outside.over_fenders": width}
    assert {one.kind for one in said("size-on-route", edits)} == kinds


FRENCH = {**UNBRAKED, "trailer.gvwr": "750 kg", "gross": "500 kg", "tongue": "50 kg", "tow.pickup.kerb": "1380 kg"}


def test_france_holds_the_plate_against_half_of_the_car_and_stops_at_home_only() -> None:
    """R315-1 III 2, read: a plate of 750 kg is over half of 1,380 kg, however little is loaded."""
    (home,) = said("brakes-required", {**FRENCH, "countries": ["EU-FR"]})
    assert home.kind == "stop" and "0.50 of the tow vehicle's own weight on its plate" in home.says
    (away,) = said("brakes-required", {**FRENCH, "countries": ["UK", "EU-FR"]})
    assert away.kind == "unknown" and away.could_stop and away.says.startswith("without brakes EU-FR")
    heavier = {**FRENCH, "tow.pickup.kerb": "1500 kg"}
    assert said("brakes-required", {**heavier, "countries": ["EU-FR"]}) == []
    assert said("brakes-required", {**heavier, "countries": ["UK", "EU-FR"]}) == []


@pytest.mark.parametrize(("kerb", "asks"), [("900 kg", False), ("898 kg", True)])
def test_germany_holds_what_rests_on_the_wheels_against_half_of_the_car(kerb: str, asks: bool) -> None:
    """Section 42(2): 500 kg, 50 kg of it on the ball; the 75 kg of the section are left out, so it asks."""
    found = said("brakes-required", {**FRENCH, "tow.pickup.kerb": kerb, "countries": ["EU-DE"]})
    assert [one.kind for one in found] == (["unknown"] if asks else [])


def test_germany_stops_an_unbraked_trailer_over_750_kg_in_tow() -> None:
    edits = {**UNBRAKED, "countries": ["EU-DE"], "trailer.gvwr": "", "tongue": "80 kg", "tow.pickup.kerb": "2400 kg"}
    assert "stop" in {one.kind for one in said("brakes-required", {**edits, "gross": "831 kg"})}
    assert "stop" not in {one.kind for one in said("brakes-required", {**edits, "gross": "830 kg"})}


@pytest.mark.parametrize(("length", "asks"), [("6000 mm", False), ("6010 mm", True)])
def test_a_trailer_at_home_in_germany_has_side_lamps_over_six_metres(length: str, asks: bool) -> None:
    """Section 51a(6), read: more than 6.0 m; a rule of building, so a visitor is not asked."""
    edits = {
        "trailer.lamps": ["tail", "stop", "turn", "plate", "reflectors", "front position", "clearance"],
        "trailer.outside.length_overall": length,
    }
    home = [one.kind for one in said("lamps", {**edits, "countries": ["EU-DE"]}) if "side lamps" in one.says]
    assert home == (["stop"] if asks else [])
    away = said("lamps", {**edits, "countries": ["UK", "EU-DE"]})
    assert not [one for one in away if "side lamps" in one.says]


@pytest.mark.parametrize(
    ("place", "kind"), [("UK", "unknown"), ("EU-ES", "unknown"), ("NZ", "stop"), ("CA-QC", "stop"), ("US-TX", "stop")]
)
def test_a_second_link_is_asked_for_where_nothing_stops_the_trailer_that_comes_off(place: str, kind: str) -> None:
    """Read in New Zealand and Quebec: unless it has a breakaway brake. Texas, read: chains in any case."""
    bare = {"countries": [place], "trailer.chains": {"fitted": "no"}, "gross": "1500 kg", "tongue": "150 kg"}
    loose = {**bare, "trailer.brakes.breakaway": "no"}
    assert {one.kind for one in said("chains", loose)} == {kind}
    assert bool(said("chains", bare)) == (place == "US-TX")


def test_texas_allows_surge_brakes_to_fifteen_thousand_pounds() -> None:
    edits = {"countries": ["US-TX"], "trailer.brakes.kind": "surge", "tongue": "1500 lb"}
    assert said("brakes-required", {**edits, "gross": "15000 lb"}) == []
    assert [one.kind for one in said("brakes-required", {**edits, "gross": "15001 lb"})] == ["stop"]


@pytest.mark.parametrize(
    ("place", "below", "from_here"),
    [("US-NM", "2999 lb", "3000 lb"), ("US-DC", "3000 lb", "3001 lb"), ("AU-TAS", "840 kg", "841 kg")],
)
def test_brakes_are_asked_for_where_the_text_that_was_read_says_so(place: str, below: str, from_here: str) -> None:
    """New Mexico: less than 3,000 lb excepted. Washington: in excess of 3,000 lb. Tasmania: GTM of more than 750 kg."""
    edits = {**UNBRAKED, "countries": [place], "tongue": "90 kg"}
    assert said("brakes-required", {**edits, "gross": below}) == []
    assert [one.kind for one in said("brakes-required", {**edits, "gross": from_here})] == ["stop"]


def test_a_place_whose_law_of_brakes_nobody_read_asks_though_its_law_of_chains_was_read() -> None:
    """New Hampshire and Quebec: only chains stand here, so that nothing is known of brakes."""
    for place in ("US-NH", "CA-QC"):
        (found,) = said("no-rule-known", {"countries": [place], "trailer.brakes.axles": "1"})
        assert found.kind == "unknown" and found.could_stop and f"in {place} no rule of its own on brakes" in found.says


def test_every_entry_of_the_tables_is_judged_or_said_to_be_told_only() -> None:
    """An entry that no finding compares is a rule that looks kept and is not."""
    judged = {asks for asks in vars(law).values() if isinstance(asks, str)} | set(law.CHAIN_COUNT_HEAVY)
    judged |= {asks for asks, *_ in LAMP_RULES}
    of_a_class = {f"{asks}, {one}" for asks in judged | law.TOLD_ONLY for one in (*law.CLASSES, "commercial")}
    entries = {rule.asks for rule in load_rules(PACKAGE)}
    assert entries - judged - law.TOLD_ONLY - of_a_class == set()
    assert {asks for asks in law.TOLD_ONLY if not any(one.startswith(asks) for one in entries)} == set()


def test_a_class_in_capitals_is_the_class() -> None:
    edits = {"class": " Cargo", "countries": ["US-NC"], "trailer.brakes": {"kind": "none"}, "gross": "3000 lb"}
    assert not said("class-change", {**edits, "beds": []})
    assert not [one for one in said("brakes-required", edits) if one.kind == "stop"]


def test_chocks_on_board_are_enough() -> None:
    chock = {"front": "10 in", "left": "0 in", "under": "0 in", "size": "8 in x 5 in x 5 in"}
    assert said("wheel-chocks", {"countries": ["EU-DE"]})
    assert not said("wheel-chocks", {"countries": ["EU-DE"], "parts": {"wheel-chocks": chock}})


def test_a_heavy_trailer_needs_no_more_than_the_load_that_is_enough() -> None:
    heavy = {"countries": ["EU-DE"], "gross": "3000 kg"}
    assert not said("ball-load-too-small", {**heavy, "tongue": "26 kg"})
    assert said("ball-load-too-small", {**heavy, "tongue": "24 kg"})


def test_over_three_and_a_half_tonnes_on_the_plate_the_share_counts_to_a_greater_load() -> None:
    """4 % of 3,600 kg by hand: 144 kg."""
    heavy = {"countries": ["EU-DE"], "gross": "3600 kg", "trailer.gvwr": "3600 kg"}
    assert not said("ball-load-too-small", {**heavy, "tongue": "145 kg"})
    (found,) = said("ball-load-too-small", {**heavy, "tongue": "143 kg"})
    assert found.kind == "stop" and found.limit == pytest.approx(144.0)


def test_what_the_ball_must_carry_at_least_is_asked_about_while_the_weight_has_no_end() -> None:
    open_ended = {"countries": ["EU-DE"], "gross": "at least 400 kg"}
    for tongue, kinds in (("15 kg", ["stop"]), ("20 kg", ["unknown"]), ("26 kg", [])):
        found = said("ball-load-too-small", {**open_ended, "tongue": tongue})
        assert [one.kind for one in found] == kinds and all(one.could_stop for one in found), tongue


def test_a_finding_looks_at_every_rule_that_is_in_force(monkeypatch: pytest.MonkeyPatch) -> None:
    """By running the findings in each place, so that an asking which no finding takes up cannot pass for judged."""
    looked_at: set[str] = set()
    asking = law.Law.asking

    def told(self: law.Law, asks: str, trailer_class: str) -> tuple[law.Placed, ...]:
        found = asking(self, asks, trailer_class)
        looked_at.update(one.rule.id for one in found)
        return found

    monkeypatch.setattr(law.Law, "asking", told)
    rules = load_rules(PACKAGE)
    for place in {one.country if one.where == "national" else f"{one.country}-{one.where}" for one in rules}:
        for trailer_class in law.CLASSES:
            for brakes in ({"kind": "none"}, {"kind": "surge", "axles": "1", "breakaway": "no"}):
                for plate, chains in (("7000 lb", {"count": "1", "rating": "500 lb"}), ("9000 lb", {"kind": "none"})):
                    said_of({"countries": [place], "class": trailer_class, "trailer.brakes": brakes, "gross": plate,
                             "trailer.gvwr": plate, "trailer.chains": chains,
                             "trailer.tyres.size": "205/75R15 97S"})  # fmt: skip
    lamps = {asks for asks, *_ in LAMP_RULES}
    bound = [one for one in rules if one.is_in_force(JUDGED_ON) and not one.asks.endswith(", commercial")]
    told_only = {one.id for one in bound if one.asks.removesuffix(", cargo").removesuffix(", camper") in law.TOLD_ONLY}
    unseen = {one.id for one in bound if one.id not in looked_at and one.asks not in lamps}
    assert unseen == told_only
