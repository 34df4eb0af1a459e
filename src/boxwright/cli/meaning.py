"""An edit that rewrites no number and changes what many mean: another unit in the ``units:`` line."""

from __future__ import annotations

from collections.abc import Iterator

from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import clean
from boxwright.rig.change import Change
from boxwright.rig.compose import Composer, Reading
from boxwright.rig.remove import remove
from boxwright.rig.splice import tree_at
from boxwright.units import CannotRead, HeaderUnits, read_exact

KEYS = ("length", "weight", "temperature", "volume", "wire", "money")
"""The keys of the ``units:`` line."""


def must_be_meant(before: Reading, after: Reading, is_anyway: bool) -> tuple[str, ...]:
    """Return what is said of numbers that would mean something else; refuse the edit where it is not said so."""
    says = tuple(_changed(before, after))
    if says and not is_anyway:
        raise NothingAsked(f"{says[0]}; nothing was done. Write the units behind the numbers first, or add --anyway")
    return says


def _changed(before: Reading, after: Reading) -> Iterator[str]:
    """Yield a sentence for each unit of the header that is another one now, where a bare number takes it."""
    old, new = before.rig.header.units, after.rig.header.units
    for key in KEYS:
        was, now = getattr(old, key), getattr(new, key)
        if was is None or (was == now and _same_gallon(key, old, new)):
            continue
        paths = bare_numbers(before, key)
        if not paths:
            continue
        text = clean(str(tree_at(before.document, paths[0])))
        count = f"{len(paths)} bare number{'s' if len(paths) > 1 else ''}"
        to = f"{clean(now)}" if was != now and now is not None else f"of another {clean(was)}" if now else "of no unit"
        yield (
            f"this rewrites none of the {count} that take their unit from units.{key}, and changes what they mean: "
            f"{clean(paths[0])} is {text} {clean(was)} now, and would be {text} {to}"
        )


def _same_gallon(key: str, old: HeaderUnits, new: HeaderUnits) -> bool:
    """Return whether a volume is as large as it was: the home country says which gallon is meant."""
    try:
        return key != "volume" or read_exact("1", "volume", old) == read_exact("1", "volume", new)
    except CannotRead:
        return True


def bare_numbers(reading: Reading, key: str) -> list[str]:
    """Return the paths of the values that take their unit from a key of the header.

    They are those that cannot be read where the header does not have it.
    """
    without = remove(reading.document, f"units.{key}")
    if not isinstance(without, Change):
        return []
    lost = Composer().compose(without.document).problems
    return list(dict.fromkeys(one.path for one in lost if f"give {key}: " in one.says))
