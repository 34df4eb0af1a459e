"""A record of ours is, can and refuses what the standard library's does, which is the reference."""

from __future__ import annotations

import copy
import dataclasses
import inspect
import pickle
from dataclasses import field
from typing import Any, ClassVar

import pytest

from boxwright import records

OURS: Any = records.dataclass
THEIRS: Any = dataclasses.dataclass


def made_by(dataclass: Any) -> dict[str, Any]:
    """Return the same classes, made by one or the other."""

    @dataclass(frozen=True, slots=True)
    class Nothing:
        """No field at all."""

    @dataclass(frozen=True, slots=True)
    class One:
        """One field."""

        only: float

    @dataclass(frozen=True, slots=True)
    class Plain:
        """Fields with and without a default."""

        x: float
        y: float
        of: str = "parts[a]"
        KIND: ClassVar[str] = "plain"

        @property
        def both(self) -> float:
            """Return both together."""
            return self.x + self.y

    @dataclass(frozen=True, slots=True)
    class Odd:
        """Fields that are not compared, not shown, not hashed, made anew."""

        x: float
        note: str = field(default="", compare=False)
        inner: tuple[int, ...] = field(default_factory=lambda: (1, 2))
        hidden: int = field(default=3, repr=False)
        unhashed: int = field(default=4, hash=False)

    @dataclass(frozen=True, slots=True)
    class Longer(Plain):
        """A record that adds a field to another."""

        more: int = 7

    @dataclass(frozen=True, slots=True)
    class OwnWords:
        """A record that says itself how it is shown and compared."""

        x: float

        def __repr__(self) -> str:
            return "mine"

        def __eq__(self, other: object) -> bool:
            return True

        __hash__ = None  # type: ignore[assignment]

    return {one.__name__: one for one in (Nothing, One, Plain, Odd, Longer, OwnWords)}


MINE, STANDARD = made_by(OURS), made_by(THEIRS)
NAN = float("nan")
GIVEN: list[tuple[str, tuple[Any, ...], dict[str, Any]]] = [
    ("Nothing", (), {}), ("Nothing", (1,), {}), ("One", (1.0,), {}), ("One", (NAN,), {}), ("One", (), {}),
    ("One", (1.0,), {"only": 2.0}), ("Plain", (1.0, 2.0), {}), ("Plain", (2.0, 1.0), {}),
    ("Plain", (1.0,), {"y": 2.0, "of": "b"}), ("Plain", (1.0, 2.0, "b", 4), {}), ("Plain", (1.0, 2.0), {"z": 1}),
    ("Odd", (1.0,), {}), ("Odd", (1.0, "n"), {}), ("Odd", (1.0,), {"hidden": 9}), ("Odd", (1.0,), {"unhashed": 9}),
    ("Odd", (1.0, "", ()), {}), ("Longer", (1.0, 2.0), {}), ("Longer", (1.0, 2.0, "b", 8), {}), ("OwnWords", (1,), {}),
]  # fmt: skip


def tried(kinds: dict[str, Any], name: str, given: tuple[Any, ...], named: dict[str, Any]) -> Any:
    try:
        return kinds[name](*given, **named)
    except TypeError as error:
        return str(error)


@pytest.mark.parametrize(("name", "given", "named"), GIVEN, ids=range(len(GIVEN)))
def test_a_record_is_made_shown_and_hashed_alike(name: str, given: tuple[Any, ...], named: dict[str, Any]) -> None:
    mine, theirs = tried(MINE, name, given, named), tried(STANDARD, name, given, named)
    if isinstance(theirs, str):
        assert mine == theirs
        return
    assert repr(mine) == repr(theirs)
    assert [getattr(mine, one.name) for one in dataclasses.fields(mine)] == [
        getattr(theirs, one.name) for one in dataclasses.fields(theirs)
    ]
    if name == "OwnWords":
        with pytest.raises(TypeError, match="unhashable"):
            hash(mine)
    else:
        assert hash(mine) == hash(theirs)


def test_records_are_equal_where_the_standard_ones_are() -> None:
    pairs = [(tried(MINE, *one), tried(STANDARD, *one)) for one in GIVEN]
    pairs = [(mine, theirs) for mine, theirs in pairs if not isinstance(mine, str)]
    for mine, theirs in pairs:
        assert [mine == other for other, _ in pairs] == [theirs == other for _, other in pairs]
        assert [mine != other for other, _ in pairs] == [theirs != other for _, other in pairs]


@pytest.mark.parametrize("name", [name for name in MINE if name != "Nothing"])
def test_a_record_is_frozen_and_holds_nothing_else(name: str) -> None:
    one = MINE[name](**{field.name: 1 for field in dataclasses.fields(MINE[name])})
    first = dataclasses.fields(one)[0].name
    for change in (lambda: setattr(one, first, 2), lambda: setattr(one, "new", 2), lambda: delattr(one, first)):
        with pytest.raises(dataclasses.FrozenInstanceError):
            change()
    assert not hasattr(one, "__dict__")
    assert MINE[name].__slots__ == STANDARD[name].__slots__
    assert MINE[name].__match_args__ == STANDARD[name].__match_args__
    assert MINE[name].__doc__ == STANDARD[name].__doc__


def test_a_record_is_replaced_copied_and_read_by_name() -> None:
    one, theirs = MINE["Odd"](1.0, "n", (5,), 6, 7), STANDARD["Odd"](1.0, "n", (5,), 6, 7)
    assert repr(dataclasses.replace(one, x=2.0)) == repr(dataclasses.replace(theirs, x=2.0))
    assert dataclasses.asdict(one) == {"x": 1.0, "note": "n", "inner": (5,), "hidden": 6, "unhashed": 7}
    assert copy.copy(one) == copy.deepcopy(one) == one
    match MINE["Plain"](1.0, 2.0):
        case object(x=1.0, both=both):
            assert both == 3.0
        case _:
            pytest.fail("it does not match")
    assert MINE["Plain"].KIND == "plain"


@OURS(frozen=True, slots=True)
class Sent:
    """A record that stands where another process finds it."""

    x: float
    of: tuple[str, ...] = ()


def test_a_record_goes_to_another_process_and_back() -> None:
    assert pickle.loads(pickle.dumps(Sent(1.0, ("a",)))) == Sent(1.0, ("a",))
    assert pickle.loads(pickle.dumps(Sent(1.0, ("a",)))) != Sent(1.0)


def test_nothing_is_compiled_before_it_is_used() -> None:
    kind = made_by(OURS)["Plain"]
    assert "put_0" not in kind.__init__.__globals__
    kind(1.0, 2.0)
    assert "put_0" in kind.__init__.__globals__
    assert list(inspect.signature(kind).parameters) == ["x", "y", "of"]


@pytest.mark.parametrize("options", [{"frozen": False, "slots": True}, {"frozen": True, "slots": False}])
def test_there_is_no_other_kind(options: dict[str, bool]) -> None:
    with pytest.raises(AssertionError):
        OURS(**options)
