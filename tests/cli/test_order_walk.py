"""From the order sheet over the builder's reply to the day of receiving, walked on a demo rig as an owner would."""

from __future__ import annotations

import json
import shlex
from dataclasses import replace
from pathlib import Path

import pytest

from boxwright.cli import main
from boxwright.cli.edits import edited
from boxwright.disciplines.frame.receiving import differing, expected
from boxwright.rig.compose import Reading, read_rig
from boxwright.rig.splice import tree_at
from boxwright.rig.taped import lengths_read
from tests.disciplines.frame.test_ordering import EMPTY, stud
from tests.study.demo import RIGS

INCH = 0.0254
ORDER = "frame.order.options"


@pytest.fixture
def rig(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a copy of a demo rig for one walk."""
    monkeypatch.chdir(tmp_path)  # a long path is wrapped at 80 columns, and a command is looked for in one piece
    path = Path("whimbrel.yaml")
    path.write_bytes((RIGS / "whimbrel.yaml").read_bytes())
    return path


def run(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    """Run a command that must not be refused; return its page on one line."""
    main([str(word) for word in words])
    shown = capsys.readouterr()
    assert not shown.err, shown.err
    return " ".join(shown.out.split())


def put(rig: Path, *edits: str) -> None:
    """Make edits as ``set`` does, where what they change is not looked at."""
    rig.write_text(edited(now(rig), edits).reading.document.text)


def weights(capsys: pytest.CaptureFixture[str], rig: Path) -> object:
    """Return every number of weight with all aboard, at every stage."""
    main(["weight", str(rig), "--load", "departure", "--json"])
    return json.loads(capsys.readouterr().out)["states"]


def now(rig: Path) -> Reading:
    return read_rig(rig.read_bytes())


def door_at(rig: Path) -> float:
    """Return where the side door begins, in inches."""
    door = next(item for item in now(rig).rig.openings if item.name == "side-door")
    return door.place.low_edge(0).best / INCH


def test_the_walk_from_the_order_to_the_day_of_receiving(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    lines = rig.read_text().splitlines()
    # The order goes out: no line has a reply yet.
    put(rig, "drop side-door.reply", "drop ramp.reply",
        *(f"drop {ORDER}.{name}.reply" for name in ("bare", "studs-16", "taller", "ramp-release")))  # fmt: skip
    page = run(capsys, "since", str(rig), "order")
    assert "Order C of 2025-10-20 to the trailer builder" in page
    for name in ("side-door", "ramp", "bare", "studs-16", "taller", "ramp-release"):
        assert f"{name}: not answered yet" in page
    asked = weights(capsys, rig)

    # The reply is typed as it came. Nothing that was asked changes, and no number does.
    run(capsys, "set", str(rig), "side-door.reply.x=17", "side-door.reply.note=jamb stock is 1 in", "ramp.reply=yes",
        f"{ORDER}.bare.reply=yes", f"{ORDER}.studs-16.reply.value=24", f"{ORDER}.taller.reply.price=270",
        f"{ORDER}.ramp-release.reply=no")  # fmt: skip
    assert door_at(rig) == pytest.approx(16.5)
    assert weights(capsys, rig) == asked
    page = run(capsys, "since", str(rig), "order")
    assert 'side-door: x: asked 16 1/2, the builder says 17: 1/2 in rearward ("jamb stock is 1 in")' in page
    assert "ramp: yes" in page and "ramp-release: NO, the builder does not" in page
    assert "studs-16: value: asked 16, the builder says 24" in page
    assert "taller: price: asked 260, the builder says 270: 10 USD more" in page
    # By hand: 7400 - 180 + 260 + 65 was asked; the reply is 7400 - 180 + 270 without the release.
    assert "price with its options: asked 7,545 USD, by the reply 7,490 USD: 55 USD less" in page
    assert "Until then the rig stays with what was asked" in page

    # The owner goes on with the door and the price, by the command that the page offers, but keeps the studs asked for.
    offered = shlex.split(page.partition(f"boxwright set {rig} ")[2])
    assert "side-door.x=17" in offered and "frame.studs.every=24" in offered
    run(capsys, "set", str(rig), *(edit for edit in offered if "stud" not in edit))
    assert door_at(rig) == pytest.approx(17.0)
    document = now(rig).document
    assert tree_at(document, "openings[side-door].reply.was") == {"x": "16 1/2"}
    page = run(capsys, "since", str(rig), "order")
    assert "side-door: x: asked 16 1/2, the builder says 17; the rig goes on with that" in page
    assert "side-door.x=17" not in page and "frame.studs.every=24" in page

    # The trailer is there: what is read is entered, and stands beside what was ordered.
    run(capsys, "measured", str(rig), "opening", "side-door", "front=17 1/8", "--photo", "3")
    page = run(capsys, "measured", str(rig), "body", "width-mid=79 1/2", "length=168", "--within", "1/8")
    assert "inside width mid: 79 1/2 in; held to be 80 in: 1/2 in less" in page
    run(capsys, "measured", str(rig), "studs", "left", "7=112 1/16")
    reading = now(rig)
    readings = lengths_read(reading.document.tree, reading.rig.header.units)
    found = expected(reading.rig.trailer, replace(EMPTY, members=(stud(7),)), readings, reading.rig.measured)
    # By hand: half an inch is more than the 6 mm of the list, a sixteenth is not.
    assert [one.what for one in differing(found)] == ["inside width, mid"]
    assert next(one for one in found if one.what == "stud 7").passes is True

    # Every line nobody named is as it was, and in its order.
    after = rig.read_text().splitlines()
    named = ("side-door:", "ramp:", "bare:", "studs-16:", "taller:", "ramp-release:")
    kept = [line for line in lines if not line.strip().startswith(named)]
    assert [line for line in after if line in kept] == kept
    assert [line.split(":")[0].strip() for line in after if line not in lines and line.split(":")[0].strip()
            not in {name[:-1] for name in named}] == ["side-door-tape", "box-inside", "studs-left-2"]  # fmt: skip
    assert now(rig).problems == read_rig((RIGS / "whimbrel.yaml").read_bytes()).problems


def test_an_order_as_it_was_delivered_leaves_nothing_to_decide(capsys: pytest.CaptureFixture[str]) -> None:
    page = run(capsys, "since", str(RIGS / "whimbrel.yaml"), "order")
    assert "nothing is to be decided" in page
    assert "delivery: asked 2026-01-12, the builder says 2026-01-16: 4 days later" in page


def test_a_rig_without_an_order_says_how_to_begin_one(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "bare.yaml"
    path.write_text("boxwright: 1\nparts:\n  a: {x: 1}\n")
    assert main(["since", str(path), "order"]) == 3
    assert "set RIG frame.order.revision=A" in " ".join(capsys.readouterr().err.split())


def test_a_reply_that_gives_no_value_is_asked_for_one(rig: Path, capsys: pytest.CaptureFixture[str]) -> None:
    put(rig, "side-door.reply=changed")
    page = run(capsys, "since", str(rig), "order")
    assert "side-door: changed, but no value is given; write the builder's own, such as side-door.reply.x=17" in page


def test_lead_times_and_the_prices_of_openings_are_summed_and_can_be_adopted(
    rig: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    put(rig, "drop side-door.reply")
    put(rig, "side-door.reply.price=95", "side-door.reply.weeks=2", f"{ORDER}.taller.reply.weeks=3")
    sums = (
        # By hand: 7400 - 180 + 240 + 65 asked; 7400 - 180 + 260 + 95 by the reply, which refuses the release for 65.
        "price with its options: asked 7,525 USD, by the reply 7,575 USD: 50 USD more",
        # By hand: 10 + 1 asked; 11 + 3 + 2 by the reply.
        "lead time with its options: asked 11 weeks, by the reply 16 weeks: 5 weeks later",
    )
    page = run(capsys, "since", str(rig), "order")
    assert "taller: weeks: asked 1, the builder says 3: 2 weeks later" in page
    assert all(one in page for one in sums)
    offered = shlex.split(page.partition(f"boxwright set {rig} ")[2])
    assert "side-door.cost=95" in offered
    assert not any("weeks" in edit for edit in offered if edit.startswith("side-door"))

    run(capsys, "set", str(rig), *offered)
    assert tree_at(now(rig).document, "openings[side-door].cost") == "95"
    page = run(capsys, "since", str(rig), "order")
    assert "side-door: price: asked unknown, the builder says 95; the rig goes on with that" in page
    assert "nothing is to be decided" in page
    assert all(one in page for one in sums)
