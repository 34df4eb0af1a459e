"""What a page said: whether it is of the contract, how far it moves a thing, how much longer it makes the text."""

from __future__ import annotations

import json

from pydantic import TypeAdapter, ValidationError

from boxwright.web import contract

UP: TypeAdapter[contract.Up] = TypeAdapter(contract.Up)
MILLIMETRE = 0.001


def shift_of(message: contract.Move | contract.Drop) -> tuple[float, float, float]:
    """Return how far a thing is moved (m)."""
    return message.x_mm * MILLIMETRE, message.y_mm * MILLIMETRE, message.z_mm * MILLIMETRE


def growth_of(message: contract.Up) -> int:
    """Return how much longer a change can make the text (characters); a step back is never held to be longer."""
    match message:
        case contract.TextEdit():
            return sum(len(one.insert) - (one.end - one.start) for one in message.changes)
        case contract.Rejoin() | contract.BringBack() | contract.Resolve() | contract.Recover():
            return 0
        case contract.Undo() | contract.Redo() | contract.TakeOut():
            return 0
        case _:
            return 1


def understood(text: str) -> contract.Up | None:
    """Return a message a page sent, None where it is none."""
    try:
        return UP.validate_json(text)
    except ValidationError:
        return None


def holds_half_a_character(text: str) -> bool:
    """Return whether a message that is not understood holds one half of a pair of code units, which no file can."""
    try:
        json.dumps(json.loads(text), ensure_ascii=False).encode("utf-8")
    except UnicodeEncodeError:
        return True
    except (ValueError, RecursionError):
        return False
    return False
