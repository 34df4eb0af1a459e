"""Rules of weight: what is missing, what lifts or tips, and where plan and scale disagree.

A rule that stops compares the bad end of the band: the best value or a permitted fill outside is a stop; only the
bad end outside, by doubt or by what is unknown, is a question.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from math import inf

from boxwright.disciplines.weight.result import Output, Parked, Result, Tip
from boxwright.disciplines.weight.sourced import LIMITS
from boxwright.disciplines.weight.telling import (
    DAY,
    EQUILIBRIUM,
    above_zero,
    disagreement,
    from_to,
    is_unanswered,
    is_weighable,
    lifting,
    listed,
    measure_of,
    name_of,
    ten_units,
    tipping_sentence,
    weighing,
)
from boxwright.finding import Finding, Kind, Use
from boxwright.units import HeaderUnits, show, show_band

PRACTICE = "trailer-practice"
THREE = 3
"""How many parts are named to be weighed next."""
A_PERSON = 80.0
"""kg: an example of what is written of somebody."""
TRACK = ", tyre middle to tyre middle"
LEAST_SHARE = 0.01
"""Share of the variance below which a part is not worth weighing."""


def findings(result: Result, shown_in: HeaderUnits, judged_on: date) -> tuple[Finding, ...]:
    """Return what all rules of weight have to say of one slot."""
    return (
        *measure_missing(result),
        *measure_assumed(result, shown_in),
        *weight_unknown(result, shown_in),
        *place_unknown(result, shown_in),
        *stands_perhaps(result, shown_in),
        *tank_unnamed(result, shown_in),
        *tongue_lifts(result, shown_in),
        *axle_lifts(result, shown_in),
        *tips_up(result, shown_in),
        *sides_differ(result, shown_in),
        *ticket_disagrees(result, shown_in),
        *weighed_part_differs(result, shown_in),
        *ticket_is_old(result, judged_on),
        *weigh_these_next(result, shown_in),
    )


def measure_missing(result: Result) -> Iterator[Finding]:
    """Say which measure of the trailer is missing, without which nothing is known of tongue and axles.

    Asks: are the places of coupler and axles known, so that tongue and axle loads can be worked out
    Limit: both known
    Source: first-principles section 1.3
    Lever: write the measure in the trailer's entry
    """
    carried = dict.fromkeys(result.left.unknown, "the wheels of each side carry")
    carried |= dict.fromkeys(result.tongue.unknown, "tongue and axles carry")
    for path, carry in carried.items():
        if not is_weighable(path):
            yield Finding(
                "weight/measure-missing",
                path,
                "unknown",
                f"{measure_of(path)} is not written, so nobody can say what {carry}",
                source=EQUILIBRIUM,
                lever=path,
                act=f"Measure {measure_of(path)}"
                + (TRACK if path.endswith("track") else " with a tape, from the front wall's stud face"),
                minutes=5,
                uses=("tow", "sleep"),
                because=(path,),
            )


def measure_assumed(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which measures of the trailer were taken from its kind.

    Asks: which measures that decide the loads were not written
    Limit: none assumed; with torsion axles the heights decide what each axle carries
    Source: trailer-practice
    Lever: write the measure in the trailer's or the tow vehicle's entry
    """
    kind: Kind = "unknown" if result.running_gear == "independent" else "advice"
    for path in result.assumed:
        tongue = show_band(result.tongue.band, "kg", shown_in)
        yield Finding(
            "weight/measure-assumed",
            path,
            kind,
            f"{measure_of(path)} is not written and was assumed from the kind of trailer; "
            f"tongue weight with all doubt: {tongue}",
            source=PRACTICE,
            lever=path,
            act="Ask the axle's maker for its spring rate, or weigh each axle with the nose high and low"
            if path.endswith("rate")
            else f"Measure {measure_of(path)} with a tape, the trailer standing level",
            minutes=5,
            uses=("tow",),
            because=(path,),
        )


def weight_unknown(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which parts have no weight, and what each could do to the tongue weight.

    Asks: does every part that stands have a weight
    Limit: none without
    Source: first-principles section 1.1
    Lever: weigh the part and write its weight
    """
    ten = ten_units(shown_in)
    for part in result.unweighed:
        name = name_of(part.of)
        least, most = part.tongue_low * ten, part.tongue_high * ten
        if least >= 0.0 or most <= 0.0:
            least, most = min(abs(least), abs(most)), max(abs(least), abs(most))
            verb = "puts" if part.tongue_high > 0.0 else "takes"
            side = "on" if part.tongue_high > 0.0 else "off"
            moved = f"{verb} {from_to(least, most, shown_in)} {side} the tongue"
            if most == 0.0:
                moved = "moves the tongue weight nobody knows how far"
        else:
            off, on = show(-least, "kg", shown_in), show(most, "kg", shown_in)
            moved = f"takes up to {off} off the tongue or puts {on} on it"
        yield Finding(
            "weight/weight-unknown",
            part.of if part.what == "dry" else f"{part.of}.{part.what}",
            "unknown",
            f"{name} is of unknown weight; each {show(ten, 'kg', shown_in)} of it {moved}",
            source="first-principles section 1.1",
            lever=f"{part.of}.weight",
            act=weighing([part.of]),
            minutes=5,
            uses=("tow",),
            because=(part.of,),
            besides=((f"Each {show(ten, 'kg', shown_in)} of it", moved),),
        )


def place_unknown(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which parts have no place, and how far that leaves the tongue weight open.

    Asks: does every part that stands have a place
    Limit: none without
    Source: first-principles section 1.1
    Lever: write the part's place
    """
    unweighed = {part.of for part in result.unweighed}
    for of in result.unplaced:
        bare = of == "trailer.empty"
        if bare and of in unweighed:
            continue  # Its weight is asked for, and its tongue with it: one scale answers both.
        tongue = show_band(result.tongue.band, "kg", shown_in)
        yield Finding(
            "weight/place-unknown",
            of,
            "unknown",
            f"{name_of(of)} has no known place; tongue weight with it anywhere in the trailer: {tongue}",
            source="first-principles section 1.1",
            lever=f"{of}.tongue" if bare else f"{of}.x",
            act="Weigh the tongue of the empty trailer with a bathroom scale and plank"
            if bare
            else f"Measure with a tape where {name_of(of)} stands behind the front wall",
            minutes=5,
            uses=("tow",),
            because=(of,),
        )


def stands_perhaps(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which parts stand perhaps, and what difference they make.

    Asks: is it known of every part whether it is in
    Limit: none perhaps
    Source: first-principles section 1.1
    Lever: tick the parts yes or no
    """
    parts = sorted(result.perhaps, key=lambda part: (-abs(part.tongue), part.of))
    if not parts:
        return
    less, more = sum(min(0.0, part.tongue) for part in parts), sum(max(0.0, part.tongue) for part in parts)
    names = listed(list(dict.fromkeys(name_of(part.of) for part in parts)))
    weigh = show(sum(part.kg for part in parts), "kg", shown_in)
    yield Finding(
        "weight/stands-perhaps",
        parts[0].of,
        "unknown",
        f"it is not ticked whether {names} {'is' if len(parts) == 1 else 'are'} in: up to {weigh}, "
        f"and {from_to(less, more, shown_in)} on the tongue",
        number=more - less,
        unit="kg",
        source="first-principles section 1.1",
        lever=f"{parts[0].of}.done",
        act=f"Look whether {names} {'is' if len(parts) == 1 else 'are'} in, and tick yes or no",
        minutes=5,
        uses=("tow",),
        because=tuple(part.of for part in parts),
    )


def tank_unnamed(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which tanks the load state does not name.

    Asks: does the load state say how full every tank is
    Limit: every tank named
    Source: first-principles section 2.2
    Lever: write the tank's fill in the load state
    """
    tanks = result.unnamed_tanks
    if not tanks:
        return
    low, high = (show(end, "kg", shown_in) for end in (result.tongue.permitted_low, result.tongue.permitted_high))
    names = listed(list(dict.fromkeys(name_of(of) for of in tanks)))
    yield Finding(
        "weight/tank-unnamed",
        tanks[0],
        "unknown",
        f"the load state does not say how full {names} {'is' if len(tanks) == 1 else 'are'}; "
        f"from empty to full the tongue weight goes from {low} to {high}",
        source="first-principles section 2.2",
        lever=tanks[0],
        act=f"Look how full {names} {'is' if len(tanks) == 1 else 'are'}, and write it in the load state",
        minutes=5,
        uses=("tow",),
        because=tanks,
    )


def tongue_lifts(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the trailer pulls its coupling up.

    Asks: does the ball carry weight over the whole permitted range
    Limit: above zero
    Source: first-principles section 1.3
    Lever: move weight ahead of the axles
    """
    kind = above_zero(result.tongue)
    if kind is None or is_unanswered(result.tongue):
        return
    weigh = "eigh the tongue with a bathroom scale and plank"
    act = f"Move weight ahead of the axles, then w{weigh}" if kind == "stop" else f"W{weigh}"
    yield lifting(
        result.tongue,
        kind,
        "weight/tongue-lifts",
        "the trailer pulls its coupling up" if kind == "stop" else "the trailer may pull its coupling up",
        act,
        shown_in,
        result,
    )


def axle_lifts(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when an axle, or the wheels on one side of it, carries nothing.

    Asks: does every axle, and every side of it, carry weight over the whole permitted range
    Limit: above zero
    Source: first-principles section 1.5
    Lever: the height of the tow ball with torsion axles, else where the weight is
    """
    for index, axle in enumerate(result.axles):
        sides = {"left": result.axles_left[index], "right": result.axles_right[index]}
        name, verb = f"axle {index + 1}", "carries"
        output, kind = axle, above_zero(axle)
        if kind is None or is_unanswered(axle):
            bad = [(side, one) for side, one in sides.items() if not is_unanswered(one) and above_zero(one)]
            if not bad:
                continue
            side, output = min(bad, key=lambda pair: pair[1].band.low)
            name, verb, kind = f"the {side} wheels of axle {index + 1}", "carry", above_zero(output)
        if kind is not None:
            says = f"{name} {verb} nothing" if kind == "stop" else f"{name} may carry nothing"
            act = "Weigh each axle, and each side of it, on a public scale"
            if result.running_gear == "independent" and name.startswith("axle"):
                act = "Set the tow ball so that the trailer stands level, then weigh each axle on a public scale"
            yield lifting(output, kind, "weight/axle-lifts", says, act, shown_in, result)


def tips_up(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when the parked trailer tips back: with everybody at its rear end, or left with nobody in it.

    Asks: does the nose stay down, parked, with everybody who may board at the rear end, and with nobody aboard
    Limit: a margin above zero, in the way it stands; if that is not written, in the worse way
    Source: first-principles section 7.1
    Lever: legs down, or coupled, before anybody boards
    """
    parked = result.parked
    if parked is None or parked.is_coupled is True:
        return
    legs = parked.legs_are_down
    tip = parked.legs_down if legs and parked.legs_down is not None else parked.legs_up
    if above_zero(tip.margin) is None and parked.people.known and parked.people.best <= 0.0:
        yield _nobody_boards(result, tip, shown_in)
    for margin, uses in ((tip.margin, BOARDED), (tip.alone, LEFT)):
        kind = above_zero(margin)
        if kind is not None:
            yield _tipping(result, parked, tip, margin, kind, uses, shown_in)


BOARDED: tuple[Use, ...] = ("sleep", "work")
LEFT: tuple[Use, ...] = ("leave",)


def _tipping(
    result: Result, parked: Parked, tip: Tip, margin: Output, kind: Kind, uses: tuple[Use, ...], shown_in: HeaderUnits
) -> Finding:
    """Return the finding of a nose that does not stay down, or may not."""
    legs = parked.legs_are_down
    has_no_legs = bool(legs) and parked.legs_down is None
    is_written = parked.is_coupled is not None and legs is not None
    is_sure = is_written and not has_no_legs
    if kind == "stop" and not is_sure:
        kind = "unknown"
    before = "before anybody boards" if uses == BOARDED else "before you leave it, or move weight to the front"
    return Finding(
        "weight/tips-up", result.of, kind,
        tipping_sentence(tip, parked.people if uses == BOARDED else None, kind, shown_in),
        number=margin.band.best, limit=0.0, margin=margin.band.low, unit="kg m", source="first-principles section 7.1",
        lever="trailer.legs.x" if has_no_legs else f"loads[{'legs' if legs is not True else 'coupled'}]",
        act=f"Put the rear legs down, or stay coupled, {before}" if is_sure
        else "Look whether it is coupled and its rear legs are down, and write it in the load state",
        minutes=5, uses=uses, because=margin.unknown or tuple(part.of for part in result.perhaps) or (result.of,),
    )  # fmt: skip


def _nobody_boards(result: Result, tip: Tip, shown_in: HeaderUnits) -> Finding:
    """Return the question who boards, where the file names nobody: an empty trailer tips nobody."""
    alone = tip.person.band if tip.person is not None else None
    enough = f"; {show_band(alone, 'kg', shown_in)} at the rear wall lifts the nose" if alone is not None else ""
    return Finding(
        "weight/tips-up",
        "people",
        "unknown",
        f"nobody is named who boards, so nobody can say whether it tips back{enough}",
        source="first-principles section 7.1",
        lever="people",
        act="Write the people with their weights, such as"
        f" people: {{owner: {{weight: {show(A_PERSON, 'kg', shown_in)}}}}}",
        minutes=2,
        uses=BOARDED,
        because=("people",),
    )


def sides_differ(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when one side's wheels carry clearly more than the other's.

    Asks: by how much the wheels of the two sides differ
    Limit: 5 % of what both carry
    Source: trailer-practice
    Lever: move weight to the lighter side
    """
    left, right = result.left.band, result.right.band
    if not (left.known and right.known) or result.on_wheels.band.best <= 0.0:
        return
    difference, limit = abs(left.best - right.best), LIMITS["sides"] * result.on_wheels.band.best
    if difference <= limit:
        return
    heavy = "left" if left.best > right.best else "right"
    yield Finding(
        "weight/sides-differ",
        result.of,
        "advice",
        f"the {heavy} wheels carry {show(difference, 'kg', shown_in)} more than those of the other side; "
        f"{show(limit, 'kg', shown_in)} is usual at most",
        number=difference,
        limit=limit,
        margin=limit - difference,
        unit="kg",
        source=PRACTICE,
        lever="side of the heaviest parts",
        act="Move weight to the lighter side, or weigh each side on half a platform",
        minutes=30,
        uses=("tow",),
    )


def ticket_disagrees(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a scale and the plan of the same stage and load disagree by more than both may err.

    Asks: is measured against planned within the doubt of both
    Limit: 1, as gap over the 95 % half-widths of both in quadrature
    Source: first-principles section 3.3
    Lever: weigh the parts with the largest share of the plan's doubt; look for what is not listed
    """
    for one in result.compared:
        if one.what != "part" and one.agreement > 1.0:
            yield disagreement(one, "weight/ticket-disagrees", one.of, f"the {one.what} on {name_of(one.of)}", shown_in)


def weighed_part_differs(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say when a part's own scale reading and its written weight disagree.

    Asks: is a part's reading against its written weight within the doubt of both
    Limit: 1, as gap over the 95 % half-widths of both in quadrature
    Source: first-principles section 3.3
    Lever: write the weight that was read, or weigh again
    """
    for one in result.compared:
        if one.what == "part" and one.agreement > 1.0:
            yield disagreement(one, "weight/weighed-part-differs", one.part, name_of(one.part), shown_in)


def ticket_is_old(result: Result, judged_on: date) -> Iterator[Finding]:
    """Say when a scale ticket of this stage and load is old, or carries no date.

    Asks: how many days ago was the ticket weighed
    Limit: 365 days
    Source: trailer-practice
    Lever: weigh again
    """
    dates = {one.of: one.on for one in result.compared if one.what != "part"}
    for of, weighed_on in sorted(dates.items()):
        name = name_of(of)
        if weighed_on is None:
            yield Finding(
                "weight/ticket-is-old",
                of,
                "unknown",
                f"{name} carries no date, so nobody can say what has changed since it was weighed",
                source=PRACTICE,
                lever=f"{of}.date",
                act=f"Write the date of {name}",
                minutes=1,
                could_stop=False,
                uses=("tow",),
                because=(of,),
            )
        elif (judged_on - weighed_on).days > LIMITS["ticket_days"]:
            age, limit = float((judged_on - weighed_on).days), LIMITS["ticket_days"]
            yield Finding(
                "weight/ticket-is-old",
                of,
                "advice",
                f"{name} was weighed {age:.0f} days ago; after {limit:.0f} days, or after changes, weigh again",
                number=age * DAY,
                limit=limit * DAY,
                margin=(limit - age) * DAY,
                unit="s",
                source=PRACTICE,
                lever=of,
                act="Weigh on a public scale, as loaded for the road",
                minutes=30,
                uses=("tow",),
            )


def weigh_these_next(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say which three parts widen the tongue's band most, where it is wide.

    Asks: how wide is the tongue weight by what parts may err, and which parts widen it most
    Limit: a half-width of 1 % of the gross weight
    Source: trailer-practice
    Lever: weigh the parts named
    """
    half, limit = result.tongue.half_width, LIMITS["weigh_next_share"] * result.gross.band.best
    able = [one for one in result.tongue_widened_by if one.half_width < inf and is_weighable(one.of)]
    parts = [one for one in able if one.share >= LEAST_SHARE][:THREE]
    if half <= limit or not parts:
        return
    named = listed([f"{name_of(one.of)} ({show(one.share, '', shown_in)})" for one in parts])
    tongue = show(result.tongue.band.best, "kg", shown_in)
    yield Finding(
        "weight/weigh-these-next",
        parts[0].of,
        "advice",
        f"the tongue weight is {tongue}, give or take {show(half, 'kg', shown_in)}; most of that doubt is {named}",
        number=half,
        limit=limit,
        margin=limit - half,
        unit="kg",
        source=PRACTICE,
        lever=parts[0].of,
        act=weighing([one.of for one in parts], again=True),
        minutes=5 * len(parts),
        uses=("tow",),
        because=tuple(one.of for one in parts),
        besides=(("Tongue weight", tongue),),
    )
