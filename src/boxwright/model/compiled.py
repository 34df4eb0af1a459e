"""A plain function of numbers and rows, compiled to machine code for long runs: the same text, the same answers."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from hashlib import sha256
from types import CodeType, FunctionType
from typing import TypeVar, cast

Plain = TypeVar("Plain", bound=Callable[..., object])


@cache
def compiled(function: Plain, kept_in: str = "") -> Plain:
    """Return a function compiled, with every plain function it calls by a global name; rows must then be arrays.

    What was compiled is kept in the folder ``kept_in``, below a name of its own for each text, so that a changed
    function is never taken for its older one; nothing is kept where none is named, or where nothing can be written.

    Raises ModuleNotFoundError where numba is not installed: whoever asks for a long run says what to install.
    """
    # Two seconds to load: only a run of thousands of steps pays for it.
    import numba

    plain = cast(FunctionType, function)
    folder = f"{kept_in}/{_written_as(plain)}" if kept_in else ""
    called = {name: compiled(cast(Plain, one), kept_in) for name, one in _calls(plain).items()}
    bound = FunctionType(plain.__code__, {**plain.__globals__, **called}, plain.__name__, plain.__defaults__)
    bound.__module__, bound.__qualname__ = plain.__module__, plain.__qualname__
    if folder:
        settings = vars(numba.config)
        before, settings["CACHE_DIR"] = settings["CACHE_DIR"], folder
        try:
            return cast(Plain, numba.njit(error_model="numpy", cache=True)(bound))
        except (RuntimeError, OSError):
            pass  # a folder that cannot be written in keeps nothing: it is compiled anew each time
        finally:
            settings["CACHE_DIR"] = before
    return cast(Plain, numba.njit(error_model="numpy")(bound))


def _calls(plain: FunctionType) -> dict[str, FunctionType]:
    """Return the plain functions one calls, by the names it has for them."""
    return {
        name: one for name in plain.__code__.co_names if isinstance(one := plain.__globals__.get(name), FunctionType)
    }


def _written_as(plain: FunctionType) -> str:
    """Return a short name for the text of a function, of all it calls, and of the numbers they take from outside."""
    return sha256("\n".join(_texts(plain)).encode()).hexdigest()[:20]


def _texts(plain: FunctionType) -> Iterator[str]:
    """Give the text of a function and of all it calls: what it does, not where it stands."""
    code = plain.__code__
    numbers = {
        name: one for name in code.co_names if isinstance(one := plain.__globals__.get(name), (int, float, str, tuple))
    }
    yield f"{plain.__qualname__} {_text(code)} {sorted(numbers.items())!r}"
    for one in _calls(plain).values():
        yield from _texts(one)


def _text(code: CodeType) -> str:
    """Return what a piece of code does, pieces within it too."""
    inner = [_text(one) if isinstance(one, CodeType) else repr(one) for one in code.co_consts]
    return f"{code.co_code.hex()} {inner!r} {code.co_names!r}"
