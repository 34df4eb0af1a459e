"""The contract: the page's types are those of the program, and every message is closed and finds its kind again."""

from __future__ import annotations

import subprocess
import sys
from typing import Any, get_args

import pytest
from pydantic import TypeAdapter, ValidationError

from boxwright.web import contract
from boxwright.web.contract import Message
from tests.web.live import ROOT

UP: TypeAdapter[Any] = TypeAdapter(contract.Up)
DOWN: TypeAdapter[Any] = TypeAdapter(contract.Down)
UPWARD: tuple[type[Message], ...] = get_args(get_args(contract.Up)[0])
DOWNWARD: tuple[type[Message], ...] = get_args(get_args(contract.Down)[0])
FILLED: dict[str, Any] = {
    "seq": 1, "base": 0, "contract": 1, "screen": "plan", "slot": {}, "of": "parts[a]", "path": "rig", "value": "1",
    "section": "parts", "name": "a", "code": "a/b", "where": "", "note": "", "changes": [], "disk_hash": "", "text": "",
    "take": True, "rev": 0, "has_file": True, "file": "", "rig": "", "undo": 0, "redo": 0, "can_write": True,
    "stages": [], "loads": [], "vehicles": [], "screens": [], "preview": False, "answers": [], "figures": [],
    "balance": None, "findings": None, "sheet": "", "length": 0, "state": "step", "says": "", "job": "", "done": 0.5,
    "why": "", "remedy": "", "key": "", "load": "", "use": "tow", "typed": {"under": [], "waits": []},
    "kind": "studs", "values": {}, "program": "", "place": "", "heard": 0,
}  # fmt: skip


def filled(kind: type[Message]) -> dict[str, Any]:
    """Return a message of a kind with every field that must be there."""
    fields = {key: FILLED[key] for key, field in kind.model_fields.items() if field.is_required() and key != "t"}
    return {"t": get_args(kind.model_fields["t"].annotation)[0], **fields}


def test_the_types_of_the_page_are_those_of_the_program() -> None:
    came = subprocess.run(
        [sys.executable, "tools/contract.py", "--check"], cwd=ROOT, env={"PYTHONPATH": "src"}, capture_output=True,
        text=True, check=False,
    )  # fmt: skip
    assert came.returncode == 0, came.stdout + came.stderr


@pytest.mark.parametrize("kind", UPWARD)
def test_a_message_of_the_page_is_closed_and_numbered(kind: type[Message]) -> None:
    message = filled(kind)
    read = UP.validate_python(message)
    assert type(read) is kind
    assert UP.validate_json(read.model_dump_json()) == read
    assert {"seq", "base"} <= set(kind.model_fields)
    with pytest.raises(ValidationError):
        UP.validate_python({**message, "more": 1})
    for key in message:
        if key != "slot":
            with pytest.raises(ValidationError):
                UP.validate_python({one: value for one, value in message.items() if one != key})


@pytest.mark.parametrize("kind", DOWNWARD)
def test_a_message_of_the_program_finds_its_kind_again(kind: type[Message]) -> None:
    read = DOWN.validate_python(filled(kind))
    assert type(read) is kind
    assert DOWN.validate_json(read.model_dump_json()) == read


def test_no_two_messages_go_by_one_name() -> None:
    names = [get_args(kind.model_fields["t"].annotation)[0] for kind in (*UPWARD, *DOWNWARD)]
    assert len([one for one in names if one != "text"]) == len({one for one in names if one != "text"})
    assert names.count("text") == 2  # typed here, typed elsewhere
