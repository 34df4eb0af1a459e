"""I1 and I11: the same rig gives the same answer, to the last character, whatever order sets happen to have."""

from __future__ import annotations

import json
import os
import subprocess
import sys

import pytest

from tests.houserules.tree import ROOT

SEEDS = ("0", "1", "4711")


def answer(seed: str, *words: str) -> str:
    """Return what a command prints under one seed of Python's hashes."""
    environment = {**os.environ, "PYTHONHASHSEED": seed, "COLUMNS": "80"}
    command = [sys.executable, "-m", "boxwright", *words]
    run = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True, check=False)
    assert run.stderr == ""
    return run.stdout


@pytest.mark.parametrize(
    ("command", "rig"),
    [
        ("check", "whimbrel"),
        ("weight", "dunlin"),
        pytest.param("check", "dunlin", marks=pytest.mark.nightly),
        pytest.param("weight", "whimbrel", marks=pytest.mark.nightly),
    ],
)
def test_the_answer_does_not_depend_on_the_order_of_sets(command: str, rig: str) -> None:
    answers = {answer(seed, command, f"rigs/{rig}.yaml", "--json") for seed in SEEDS}
    assert len(answers) == 1
    text = answers.pop()
    assert len(text) > 1_000
    json.loads(text, parse_constant=lambda word: pytest.fail(f"{word} is no number"))


def test_a_planted_set_would_show() -> None:
    program = "print({'tongue', 'axle', 'gross', 'left', 'right'})"
    printed = {
        subprocess.run(
            [sys.executable, "-c", program], env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, check=True
        ).stdout
        for seed in SEEDS
    }
    assert len(printed) > 1
