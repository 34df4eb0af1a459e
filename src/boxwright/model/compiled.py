"""A plain function of numbers and rows, compiled to machine code for long runs: the same text, the same answers."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from types import FunctionType
from typing import TypeVar, cast

Plain = TypeVar("Plain", bound=Callable[..., object])


@cache
def compiled(function: Plain) -> Plain:
    """Return a function compiled, with every plain function it calls by a global name; rows must then be arrays.

    Raises ModuleNotFoundError where numba is not installed: whoever asks for a long run says what to install.
    """
    # Two seconds to load: only a run of thousands of steps pays for it.
    from numba import njit

    plain = cast(FunctionType, function)
    called = {
        name: compiled(one)
        for name in plain.__code__.co_names
        if isinstance(one := plain.__globals__.get(name), FunctionType)
    }
    bound = FunctionType(plain.__code__, {**plain.__globals__, **called}, plain.__name__, plain.__defaults__)
    bound.__module__, bound.__qualname__ = plain.__module__, plain.__qualname__
    return cast(Plain, njit(error_model="numpy")(bound))
