"""The rule of weight-distribution bars: where they put the load of the ball, and where they do harm."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.towing.brake_words import are_surge
from boxwright.disciplines.towing.findings.plates import rated_on_wheels
from boxwright.disciplines.towing.result import Behind, Result, Shifted
from boxwright.disciplines.towing.telling import OWN_PLATE, Question, in_words, is_open, judged, missing
from boxwright.finding import Finding
from boxwright.model.trailer import Bars
from boxwright.units import HeaderUnits, show_band

CODE = "towing/bars"
DERIVED = "first-principles"


def bars(result: Result, behind: Behind, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what weight-distribution bars make of the axle loads, and when they do not belong there.

    Every other rule judges with the bars slack: bars move load and raise no rating, so an overload stays one.

    Asks: what do the bars take off the rear axle, bring back to the front axle and put on the trailer's wheels
    Limit: what the trailer's wheels may carry; with surge brakes, none unless the maker allows them
    Source: first-principles section 1.6; own-plate; surge brakes towing-practice
    Lever: slacker bars, other brakes, or no bars
    Methods: restoring_moment front_axle_change rear_axle_change trailer_axle_change
    """
    fitted = behind.vehicle.bars
    if fitted is None or fitted.fitted is False:
        return
    where = f"{behind.of}.bars"
    if fitted.fitted is None and fitted.restores is None:
        says = f"whether {behind.name} has weight-distribution bars is not known; write bars: yes or bars: no"
        act = f"Look whether bars are fitted at the hitch of {behind.name}"
        yield missing(CODE, where, says, act, False, DERIVED)
        return
    if are_surge(result.trailer.brakes.kind):
        says = (
            f"bars at {behind.name} with surge (overrun) brakes: taut bars can hold back the coupler's slide,"
            " by which those brakes work; use them only where the maker of the coupler allows it"
        )
        # Brakes that may not work are no matter of taste: nobody is told to go until somebody has read it.
        act = "Take the bars off, or read that the coupler's maker allows them"
        yield missing(CODE, where, says, act, True, "towing-practice")
    if behind.shifted is None:
        yield _lacking(result, behind, fitted)
        return
    yield _moved(behind, behind.shifted, fitted, shown_in)
    yield from _too_much_on_wheels(result, behind, behind.shifted, shown_in)


def _lacking(result: Result, behind: Behind, fitted: Bars) -> Finding:
    """Return the question for the first number without which nobody can say what the bars do."""
    needed = (
        (f"{behind.of}.bars.restores", fitted.restores,
         f"Measure how high the front fender of {behind.name} stands: alone, coupled, bars taut"),
        (f"{behind.of}.wheelbase", behind.vehicle.wheelbase, f"Measure the wheelbase of {behind.name}"),
        (f"{behind.of}.overhang", behind.vehicle.overhang, f"Measure from the rear axle of {behind.name} to its ball"),
        ("trailer.coupler_x", result.trailer.coupler_x, "Measure the places of coupler and axles"),
    )  # fmt: skip
    unwritten = [(path, act) for path, band, act in needed if band is None or not band.known]
    where, act = unwritten[0] if unwritten else ("trailer.coupler", "Weigh the load on the ball")
    lacks = in_words(where, behind.name) if unwritten else "the load on the ball or the axles' place"
    says = f"nobody can say what the bars at {behind.name} move: {lacks} is not known"
    return missing(CODE, where, says, act, False, DERIVED)


def _moved(behind: Behind, shifted: Shifted, fitted: Bars, shown_in: HeaderUnits) -> Finding:
    """Return what the bars move, with what they must not be used for."""
    slack, front, rear, wheels = (
        show_band(band, "kg", shown_in) for band in (shifted.front_slack, shifted.front, shifted.rear, shifted.wheels)
    )
    share = show_band(fitted.restores, "ratio", shown_in) if fitted.restores is not None else ""
    says = (
        f"bars that restore {share} leave the front axle of {behind.name} {front} lighter instead of {slack}, put"
        f" {rear} on its rear axle and {wheels} on the trailer's wheels; they raise no rating, so everything else is"
        " judged with them slack, and an overload stays one"
    )
    act = f"Slack the bars at {behind.name} for the three weighings, which taut bars would falsify"
    return Finding(CODE, f"{behind.of}.bars", "advice", says, number=shifted.front.best, unit="kg", source=DERIVED,
                   lever=f"{behind.of}.bars", act=act, uses=("tow",))  # fmt: skip


def _too_much_on_wheels(result: Result, behind: Behind, shifted: Shifted, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Yield when only the bars put more on the trailer's wheels than they may carry."""
    limit = rated_on_wheels(result)
    if limit is None or is_open(result.on_wheels, limit):
        return  # that is said without bars already
    asked = Question(
        CODE,
        behind.of,
        "the load on the trailer's wheels with the bars taut",
        "what they may carry together",
        "trailer.axles.gawr",
        "on the plate of each axle",
        source=OWN_PLATE,
        lever=f"{behind.of}.bars",
        act="Set the bars slacker, or carry less",
    )
    yield from judged(asked, result.on_wheels.plus(shifted.wheels), limit, shown_in)
