"""What people sleep on tonight: their own bed, or what stands in for it until it is built."""

from __future__ import annotations

from collections.abc import Container, Iterable, Mapping, Sequence
from dataclasses import replace

from boxwright.disciplines.layout.bodies import Body, body_of
from boxwright.disciplines.layout.meeting import lines_of
from boxwright.disciplines.layout.parts import Fitted
from boxwright.disciplines.layout.terraces import Bed
from boxwright.model.trailer import Person


def beds_tonight(
    fitted: Iterable[Fitted], there: Container[str], people: tuple[tuple[str, Person], ...]
) -> tuple[Bed, ...]:
    """Return what people sleep on of what is there; each who has no bed that stands lies on a stand-in of their own.

    Where there are fewer stand-ins than people the last of them carries the rest.
    """
    standing = tuple(one for one in fitted if one.of in there)
    names = {one.name for one in standing}
    bedless = tuple(name for name, person in people if person.sleeps not in names)
    free = [one.of for one in standing if one.is_stand_in for _ in range(min(one.count, len(bedless)))]
    lies_on_it = [(free[min(place, len(free) - 1)], name) for place, name in enumerate(bedless) if free]
    found = []
    for one in standing:
        sleepers = tuple(name for name, person in people if person.sleeps == one.name)
        sleepers += tuple(name for of, name in lies_on_it if of == one.of)
        if sleepers:
            mattress = one.facet.mattress if one.facet is not None else None
            thick, lies_on = (mattress[2], mattress[:2]) if mattress is not None else (0.0, None)
            found.append(Bed(one.of, one.name, one.asleep or one.place, thick, sleepers, lies_on, one.count))
    return tuple(found)


def slept_on(fitted: Iterable[Fitted], beds: Iterable[Bed], lines: Mapping[str, frozenset[str]]) -> dict[str, str]:
    """Return the name of the bed by the path of each thing that is slept on, or lies on what is.

    A leaf that folds is a bed whoever sleeps on it. What only stands elsewhere at night is none.
    """
    fitted, tonight = tuple(fitted), {one.of for one in beds}
    names = {one.of: one.name for one in fitted if one.of in tonight or one.is_stand_in or one.folds}
    found = dict(names)
    for one in fitted:
        above = [of for of in lines[one.of] if of in names]
        if above:
            # the lowest of them is carried by none of the others
            found[one.of] = names[next((of for of in above if not lines[of] & set(above)), above[0])]
    return found


def up_or_down(
    bodies: Iterable[Body], fitted: Iterable[Fitted], beds: Iterable[Bed], people: Sequence[tuple[str, Person]]
) -> tuple[Body, ...]:
    """Return what stands at night with each leaf that nobody sleeps on both up and down, and either perhaps.

    One with a place of its own at night is there.
    """
    bodies, known = tuple(bodies), {one.of: one for one in fitted}
    loose, lines = slept_on_by_nobody(bodies, known.values(), beds, people), lines_of(bodies)
    if not loose:
        return bodies
    found = list[Body]()
    for body in bodies:
        if body.of not in loose and not lines[body.of] & loose:
            found.append(body)
            continue
        found += [replace(body, stands="perhaps"), body_of(known[body.of], "perhaps", "travel")]
    return tuple(found)


def slept_on_by_nobody(
    bodies: Iterable[Body], fitted: Iterable[Fitted], beds: Iterable[Bed], people: Sequence[tuple[str, Person]]
) -> frozenset[str]:
    """Return the leaves that fold and that nobody sleeps on: nobody wrote whether they are up or down at night.

    Where it is not known on what each of the people sleeps any leaf may be a bed, and is down, and so is one on which
    something else has its place at night.
    """
    bodies, beds = tuple(bodies), tuple(beds)
    lines, known = lines_of(bodies), {one.of: one for one in fitted}
    tonight = {one.of for one in beds}
    if sum(len(one.sleepers) for one in beds) < len(people):
        return frozenset()
    in_use = tonight.union(*(lines.get(of, frozenset()) for of in tonight))
    in_use |= {one.carried_by for one in bodies if one.of in known and _is_laid_elsewhere(one, known[one.of])}
    loose = (one.of for one in known.values() if one.folds and one.folded is not None and one.asleep is None)
    return frozenset(loose) - in_use


def _is_laid_elsewhere(body: Body, one: Fitted) -> bool:
    """Return whether at night a thing lies on another one than it rides on or in."""
    return one.asleep not in (None, one.place) and body.carried_by not in ("", one.inside, one.rides_on)
