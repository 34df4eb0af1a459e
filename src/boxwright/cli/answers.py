"""The answers as JSON, for programs: the keys are a contract, written down in ``answer.schema.json``.

Every number with doubt is ``{"best", "low", "high", "known"}`` in SI; an end that is open is null. The line of a
finding comes from the text at the moment of showing, so that a new comment line in the rig file changes no answer.
"""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Mapping
from importlib import resources

from boxwright import __version__
from boxwright.cli.shown import Checked, LineOf, State, Weighed
from boxwright.finding import Finding, Problem, Verdict
from boxwright.units import Band

Json = str | int | float | bool | None | list["Json"] | dict[str, "Json"]


def number(value: float | None) -> float | None:
    """Return a number as JSON can carry it: null where there is none or it has no end."""
    return value if value is not None and math.isfinite(value) else None


def band(given: Band) -> dict[str, Json]:
    """Return a doubtful number; the best of one that is not known is the sum of what is known of it."""
    return {
        "best": number(given.best),
        "low": number(given.low),
        "high": number(given.high),
        "known": given.known,
    }


def problem(given: Problem) -> dict[str, Json]:
    """Return a problem of reading with its place in the text."""
    return {
        "line": given.line,
        "column": given.column,
        "says": given.says,
        "kind": given.kind,
        "path": given.path,
    }


def finding(given: Finding, line_of: LineOf) -> dict[str, Json]:
    """Return a finding with the line of the text it is about."""
    return {
        "code": given.code,
        "kind": given.kind,
        "where": given.where,
        "line": line_of(given.where),
        "number": number(given.number),
        "limit": number(given.limit),
        "margin": number(given.margin),
        "unit": given.unit,
        "stage": given.stage,
        "load": given.load,
        "use": given.use,
        "uses": list(given.uses),
        "source": given.source,
        "says": given.says,
        "remedy": given.remedy,
        "act": given.act,
        "minutes": given.minutes,
    }


def verdict(given: Verdict) -> dict[str, Json]:
    """Return the answer for one use."""
    return {
        "answer": given.answer,
        "because": list(given.because),
        "act": given.act,
        "stage": given.stage,
        "load": given.load,
        "says": list(given.says),
        "questions": list(given.questions),
    }


def verdicts(given: Iterable[Verdict]) -> dict[str, Json]:
    """Return the answers by use."""
    return {one.use: verdict(one) for one in given}


def state(given: State) -> dict[str, Json]:
    """Return one row of the weight table."""
    return {
        "stage": given.stage,
        "load": given.load,
        "gross_kg": band(given.gross),
        "tongue_kg": band(given.tongue),
        "tongue_share": band(given.share),
        "on_wheels_kg": band(given.on_wheels),
        "axles_kg": [band(one) for one in given.axles],
        "left_kg": band(given.left),
        "right_kg": band(given.right),
        "cg_m": [band(one) for one in given.centre],
        "unlisted": list(given.unlisted),
    }


def _head(given: Checked | Weighed) -> dict[str, Json]:
    return {
        "boxwright": __version__,
        "rig": given.rig,
        "stage": given.stage,
        "load": given.load,
        "date": given.date,
        "problems": [problem(one) for one in given.problems],
    }


def check(given: Checked) -> dict[str, Json]:
    """Return the answer of ``check``."""
    states = [one for one in (given.state, given.state_planned) if one is not None]
    return {
        **_head(given),
        "is_ticked": given.is_ticked,
        "findings": [finding(one, given.line_of) for one in given.findings],
        "accepted": [finding(one, given.line_of) for one in given.accepted],
        "verdicts": verdicts(given.verdicts),
        "verdicts_as_planned": verdicts(given.planned),
        "difference": list(given.difference),
        "states": [{"is_ticked": one.is_ticked, **state(one)} for one in states],
    }


def weight(given: Weighed) -> dict[str, Json]:
    """Return the answer of ``weight``: the plan under ``states``, today under ``as_ticked``."""
    return {
        **_head(given),
        "states": [state(one) for one in given.planned],
        "as_ticked": [state(one) for one in given.ticked],
        "weigh_next": list(given.weigh_next),
        "parked": list(given.parked),
        "compared": list(given.compared),
    }


def as_text(answer: Mapping[str, Json]) -> str:
    """Return an answer as JSON text, in ASCII so that it means the same on every terminal and in every pipe."""
    return json.dumps(answer, indent=2, ensure_ascii=True, allow_nan=False)


def answer_schema() -> str:
    """Return the JSON schema of the answers, as text."""
    return resources.files("boxwright.cli").joinpath("answer.schema.json").read_text(encoding="utf-8")
