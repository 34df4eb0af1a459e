"""A night with a logger, ``boxwright heat RIG --logged FILE``: what the room really loses, and its nights by that."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from math import ceil, floor
from pathlib import Path
from typing import TYPE_CHECKING

from boxwright.cli.asked import Answered, Question, slot_of
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import Line, hanging, plain, wrapped
from boxwright.records import dataclass
from boxwright.units import Band, HeaderUnits, read_band, show

if TYPE_CHECKING:
    from boxwright.book.readings import Typed
    from boxwright.cli.answers import Json
    from boxwright.disciplines.heat.logged import LoggedNight, NightLoss
    from boxwright.disciplines.heat.night import HeldNight

FEW = 3
NO_ROOM = "nobody wrote how large the room is: write body: of the trailer, and a night can be compared"
HOW_TO = (
    "How to log one: in the dark, wind and vents as you sleep, doors shut, one sensor in the shade at half height and"
    " one outside; an electric heater whose watts you read on its plug for six hours and more, then off for six; 10 K"
    " (18 F) warmer than outside. Never a flame that is not vented."
)


@dataclass(frozen=True, slots=True)
class Told:
    """A logged night, what it tells, what was worked out for the same night, and the rig's own nights both ways."""

    night: LoggedNight
    found: NightLoss
    worked: HeldNight
    before: tuple[HeldNight, ...]
    after: tuple[HeldNight, ...]
    notes: tuple[str, ...]
    stage: str
    offer: str = ""


def worked(answer: Answered, path: str, heat: str) -> Told:
    """Return what a night that was logged tells; ``heat`` is what ran all night where the file does not say it."""
    from boxwright.disciplines.heat.logged import as_measured, night_loss, worked_out
    from boxwright.disciplines.heat.night import night_of
    from boxwright.rig.logged import open_logged
    from boxwright.rig.rig import home_of

    slot = slot_of(answer, answer.use)
    result = slot.heat if slot is not None else None
    if result is None or not result.volume.known:
        raise NothingAsked(NO_ROOM)
    read = open_logged(Path(path), _heat(answer, heat), home_of(answer.reading.rig.header))
    if read.night is None:
        wrong = [f"line {one.line}: {one.says}" for one in read.problems if one.kind == "problem"]
        more = f"; and {len(wrong) - FEW} more" if len(wrong) > FEW else ""
        raise NothingAsked("; ".join(wrong[:FEW]) + more)
    shell, air = result.shell, result.inside.volume * 1206.0
    holds = Band(
        shell.capacity.best + shell.furnishing.best + air,
        shell.capacity.low + shell.furnishing.low + air,
        shell.capacity.high + shell.furnishing.high + air,
        spread="interval",
    )
    found = night_loss(read.night, holds)
    built = result.proof.built if result.proof is not None else result.inside
    same = worked_out(built, read.night)
    measured = as_measured(built, same, found.loss) if found.loss is not None else None
    after = (
        tuple(night_of(measured, one.outdoors, one.warmth, result.moisture) for one in result.held)
        if measured is not None
        else ()
    )
    notes = tuple(one.says for one in read.problems)
    told = Told(read.night, found, same, result.held, after, notes, _stage(answer))
    return replace(told, offer=_offer(answer, told, path))


def _stage(answer: Answered) -> str:
    """Return which trailer the night is compared with."""
    return "as ticked today" if answer.study.is_ticked else f"as planned at stage {answer.study.stage}"


def _heat(answer: Answered, written: str) -> Band | None:
    if not written:
        return None
    try:
        heat = read_band(written, "power", answer.units)
    except ValueError as wrong:
        raise NothingAsked(str(wrong)) from None
    if not heat.known:
        raise NothingAsked(f'"{written}" is no heat that ran; write the watts of its plug meter, as --heat 1000W')
    return heat


def entry_of(answer: Answered, told: Told) -> Typed:
    """Return what a night proved as an entry of ``measured``; the loss rounded outwards."""
    from boxwright.book.readings import Typed

    loss, night = told.found.loss, told.night
    if loss is None:
        raise NothingAsked(f"nothing is kept: {_nothing(told.found, answer.units)}")
    inside, outside = (sum(values) / len(values) - 273.15 for values in (night.inside, night.outside))
    stage = {"stage": answer.study.stage} if answer.study.stage else {}
    keys = {
        "date": answer.study.judged_on.isoformat(),
        "what": "logged",
        **stage,
        "loses": f"{floor(loss.low * 10.0) / 10.0:.1f}..{ceil(loss.high * 10.0) / 10.0:.1f} W/K",
        "reckoned": f"{told.worked.loss.best:.2f} W/K",
        "inside": f"{inside:.1f} C",
        "outside": f"{outside:.1f} C",
        "log": night.came_from,
    }
    return Typed("logged", "logged", keys)


def keeping(question: Question, path: str, heat: str, today: date, columns: int) -> tuple[list[Line], Answered]:
    """Write what a night proved into the rig, and return the page of what that changes and the answer after it."""
    from boxwright.cli.asked import answered
    from boxwright.cli.measuring import entered
    from boxwright.cli.trying import data_of, kept

    data, before = data_of(question, False), answered(question, today)
    told = worked(before, path, heat)
    changed = entered(before.reading, (entry_of(before, told),))
    return kept(question, before, changed, data, today, columns)


def _offer(answer: Answered, told: Told, path: str) -> str:
    """Return how to keep what the night proved, its entry tried on the rig first; nothing where it tells nothing."""
    from boxwright.cli.measuring import entered
    from boxwright.cli.worded import at_the_shell

    if told.found.loss is None:
        return ""
    entry = entry_of(answer, told)
    entered(answer.reading, (entry,))
    words = ", ".join(f"{key}: {value}" for key, value in entry.keys.items())
    typed = f"boxwright heat {at_the_shell(answer.question.path)} --logged {at_the_shell(path)} --keep"
    return f"To take it for every answer, with {{{words}}} under measured, type: {typed}"


def lines(told: Told, units: HeaderUnits, columns: int) -> list[Line]:
    """Return the lines of the page."""
    out: list[Line] = []
    for said in in_words(told, units):
        out += [*(plain(piece) for piece in wrapped(said, columns)), ()]
    for before, after in zip(told.before, told.after, strict=False):
        out += hanging(plain("  "), _nights(before, after, units), columns)
    if told.after:
        out.append(())
    if told.offer:
        out += [*hanging(plain("  "), told.offer, columns), ()]
    for note in (*told.notes, HOW_TO):
        out += hanging(plain("  "), note, columns, "dim")
    return out


def in_words(told: Told, units: HeaderUnits) -> list[str]:
    """Return what the night tells, and whether it agrees with what was worked out."""
    from boxwright.disciplines.heat.telling import loss_span

    night, found = told.night, told.found
    lasting = show(night.times[-1], "time", units)
    over = show(found.over, "temperature difference", units)
    head = f"{night.came_from}: {len(night.times)} readings in {lasting}."
    if found.loss is None:
        return [f"{head} {_nothing(found, units)}"]
    ways = {
        "two slopes": "by how fast it warmed with one heat and cooled with another",
        "held even": "by the heat that held it",
    }
    said = [
        f"{head} The room loses {loss_span(found.loss, units)}, air counted in, {ways[found.how]};"
        f" it was {over} warmer than outside meanwhile."
    ]
    if found.over < _asked_over():
        said[0] += " That is little: the warmer, the surer."
    said.append(_compared(told, units))
    if found.one is not None and found.how == "two slopes":
        off = show(found.one.off, "temperature difference", units)
        alone, no_one = "as readings err, each by itself", "not as readings err: the room is no one mass"
        fits = alone if found.is_one_mass else no_one
        said.append(
            f"Beside it: one mass fitted to the whole night loses {show(found.one.loss, 'W/K', units)}; readings"
            f" lie {off} off, {fits}. It is shown, and not used."
        )
    return said


def _asked_over() -> float:
    from boxwright.disciplines.heat.logged import OVER

    return OVER["warmer than outside"]


def _nothing(found: NightLoss, units: HeaderUnits) -> str:
    if found.how == "cooled alone":
        lasts = f"It cools by two thirds in {show(found.lasts, 'time', units)}. " if found.lasts is not None else ""
        return (
            f"{lasts}Without a heat that is known it tells how fast the room cools and not what it loses: no night"
            " without heat can tell the two apart."
        )
    if found.how == "too short":
        return "It is too short: one heat wants four hours, two heats three hours each."
    return "Its two heats warm the room too little, or too much alike, to tell a loss by."


def _compared(told: Told, units: HeaderUnits) -> str:
    """Return the loss as it was worked out for the same night, and whether both can be true."""
    from boxwright.disciplines.heat.telling import loss_span

    loss, own = told.found.loss, told.worked.loss
    assert loss is not None
    said = f"Worked out for the same night, the trailer {told.stage}, in what wind it may have had:"
    said += f" {loss_span(own, units)}."
    if loss.low > own.high:
        return f"{said} It loses more than that can be: look for air that blows in, and for foam that is not there."
    if loss.high < own.low:
        return f"{said} It loses less than that can be: was the heat all that ran, and was it dark?"
    return f"{said} Both can be true."


def _nights(before: HeldNight, after: HeldNight, units: HeaderUnits) -> str:
    from boxwright.disciplines.heat.telling import between, warm

    heater = f" with {before.warmth.name}" if before.warmth is not None else ""
    cold = warm(before.outdoors.coldest.best, units)
    return (
        f"{before.outdoors.place}, {cold} outside{heater}: as measured the room comes to"
        f" {between(after.coldest, units)} at its coldest; as worked out {between(before.coldest, units)}."
    )


def as_json(told: Told) -> Json:
    """Return the same in SI, for programs."""
    from boxwright.cli.answers import band, number

    found = told.found
    return {
        "file": told.night.came_from,
        "readings": len(told.night.times),
        "how": found.how,
        "loss": band(found.loss) if found.loss is not None else None,
        "loss_worked_out": band(told.worked.loss),
        "warmer_than_outside": number(found.over),
        "cools_in": number(found.lasts) if found.lasts is not None else None,
        "nights": [{"of": one.outdoors.of, "coldest": band(one.coldest)} for one in told.after],
    }
