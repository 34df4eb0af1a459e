"""The rule of what is still to be brought in: does each big thing come through an opening to its place at its stage."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.disciplines.layout.result import Brought, Hole, Result
from boxwright.disciplines.layout.telling import GEOMETRY, PRACTICE, asking, length, listed, sizes, whole_sheet
from boxwright.finding import USES, Finding
from boxwright.units import HeaderUnits

CODE = "layout/brought-in"


def brought_in(result: Result, shown_in: HeaderUnits) -> Iterator[Finding]:
    """Say what is too large for every opening, and ask about what no way in was found for at its stage.

    Asks: does each big thing that is not in yet come through an opening to its place, past what stands by then
    Limit: its least side against the least side of a hole, its middle side against the hole from corner to corner
    Source: first-principles
    Lever: the stage it is brought in at; parts to be joined inside
    Methods: none
    """
    for one in result.brought:
        names = listed((one.name, *(name for _, name in one.others)))
        because = tuple(of for of, _ in (*one.others, *one.by, *one.doors, *one.held) if "[" in of)
        if one.word == "large":
            says = f"{names}, {sizes(one.size, shown_in)}, {_verb(one, 'goes', 'go')} in through no opening however "
            says += f"held: {_hole(one.tried[0], shown_in)}, which falls short least, is "
            says += f"{length(one.short, shown_in)} too small"
            act = f"Build {names} inside, of parts that go through"
            act += f", or bring {_it(one)} in at stage {one.after}, through a hole that is in then" if one.after else ""
            yield Finding(
                CODE, one.of, "fix", says, -one.short, 0.0, -one.short, "m", GEOMETRY, f"{one.of}.size", act=act,
                minutes=5, uses=USES, because=because,
            )  # fmt: skip
            continue
        if one.word == "sheet":
            yield _in_sheets(one, names, because, shown_in)
            continue
        says, act = _asked(one, names, shown_in)
        yield asking(CODE, one.of, says, act, USES, because)


def _in_sheets(one: Brought, names: str, because: tuple[str, ...], shown_in: HeaderUnits) -> Finding:
    """Return the advice to cut sheets outside that are not found to come in whole."""
    holes = listed([_hole(hole, shown_in) for hole in one.tried]) or "any opening"
    says = f"a whole sheet for {names}, taken to be {whole_sheet(shown_in)}, was not found to come in at stage "
    says += f"{one.stage} through {holes}" + (f"; at stage {one.before} it does" if one.before else "")
    act = f"Bring the sheets in at stage {one.before}, or cut" if one.before else "Cut"
    act += " them to their bays outside"
    return Finding(CODE, one.of, "advice", says, source=PRACTICE, act=act, minutes=5, uses=USES, because=because)


def _asked(one: Brought, names: str, shown_in: HeaderUnits) -> tuple[str, str]:
    """Return what is not known of a way in, and what to do about it."""
    held = listed([name for _, name in one.held])
    if one.word == "no hole" and one.held:
        says = f"no opening that {names} could be brought in through is known to open far enough: "
        return f"{says}{held} {_is_are(one.held)} in the way of its leaf", f"Give {one.held[0][1]} another place"
    if one.word == "no hole" and one.after:
        doors, goes = listed([name for _, name in one.doors]), "goes" if len(one.doors) == 1 else "go"
        says = f"no opening that {names} could be brought in through is there at stage {one.stage}: {doors} {goes} in"
        return f"{says} at stage {one.after}", f"Bring {names} in at stage {one.after}, or cut {doors} before"
    if one.word == "no hole":
        doubt = f", as the size or place of {listed([name for _, name in one.by])} is not known" if one.by else ""
        says = f"no opening that {names} could be brought in through is known{doubt}"
        return says, "Write the doors and the ramp: openings: {ramp: {wall: rear, side: centre, width: .., height: ..}}"
    if one.word == "not looked":
        says = f"too much stands in the way to look at everything: nobody can say how {names} "
        return says + f"{_verb(one, 'comes', 'come')} in", "Walk the way in of each with a box of card of its size"
    holes = listed([_hole(hole, shown_in) for hole in one.tried])
    by = listed([name for _, name in one.by])
    says = f"no way was found to bring {names} in, straight, turned, tilted or aslant: {sizes(one.size, shown_in)}, "
    says += f"at stage {one.stage}, through {holes}"
    if one.word == "doubt":
        doors = listed([name for _, name in one.doors])
        ifs = [f"{by} {_is_are(one.by)} not in the way"] if by else []
        ifs += [f"{doors} is there and opens far enough"] if doors else []
        says += f"; there is one if {' and '.join(ifs)}, and that is not sure"
        says += f": {held} may keep it from opening" if held else ""
        if one.by and one.by[0][0].startswith("openings["):
            return says, f"Try it with a box of card of that size, and shut {by.removeprefix('the leaf of ')} again"
        if one.by:
            return says, f"Look whether {one.by[0][1]} is there, measure where, and write it"
        return says, f"Open {doors} as far as it goes, measure what is clear, and write how it opens"
    says += f": {by} {_is_are(one.by)} in the way" if by else ""
    if one.before:
        says += f"; at stage {one.before} there is a way"
        return says, f"Bring {names} in at stage {one.before}"
    return says, f"Try it with a box of card of that size, or bring {names} in in parts"


def _hole(hole: Hole, shown_in: HeaderUnits) -> str:
    return f"{hole.name} ({sizes((hole.width, hole.height), shown_in)})"


def _is_are(some: tuple[tuple[str, str], ...]) -> str:
    return "is" if len(some) == 1 else "are"


def _it(one: Brought) -> str:
    return "them" if one.others else "it"


def _verb(one: Brought, of_one: str, of_many: str) -> str:
    return of_many if one.others else of_one
