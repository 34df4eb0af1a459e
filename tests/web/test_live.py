"""The server as a whole, with real sockets and a real file: what tabs are told, what is kept, what is lost."""

from __future__ import annotations

import json
import shutil
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.web.live import ROOT, Page, Server, eventually, serving

RIG = ROOT / "rigs" / "whimbrel.yaml"
CABINET = "parts[front-cabinet]"
INCH = 25.4


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "rig.yaml"
    shutil.copy(RIG, path)
    return path


@pytest.fixture
def server(file: Path) -> Iterator[Server]:
    with serving(file, file.parent) as found:
        yield found
        assert "Traceback" not in found.said()


def checked(path: Path, stage: str, load: str) -> dict[str, object]:
    """Return what the command line says of a file."""
    command = [sys.executable, "-m", "boxwright", "check", str(path), "--stage", stage, "--load", load, "--json"]
    came = subprocess.run(command, env={"PYTHONPATH": str(ROOT / "src")}, capture_output=True, text=True, check=False)
    assert came.returncode in {0, 1, 2}, came.stderr
    found: dict[str, object] = json.loads(came.stdout)
    return found


def answers(page: Page) -> dict[str, str]:
    return {one["use"]: one["word"] for one in page.told["numbers"]["answers"]}


def test_a_drag_is_shown_while_it_lasts_and_written_when_it_ends(server: Server, file: Path) -> None:
    page = Page(server, load="departure", stage="finish")
    before, was = file.read_bytes(), page.figure("tongue")
    for inches in range(1, 30):
        told = page.do("move", of=CABINET, x_mm=INCH * inches)
        assert told["preview"] and told["held"]
    shown = page.figure("tongue")
    assert shown != was
    assert file.read_bytes() == before
    told = page.do("drop", of=CABINET, x_mm=INCH * 29)
    assert not told["preview"]
    assert page.figure("tongue") == shown
    assert eventually(lambda: file.read_bytes() != before)
    wanted = before.replace(b"front-cabinet:   {x: front,", b"front-cabinet:   {x: front+29,")
    assert file.read_bytes() == wanted
    assert page.text == wanted.decode()
    verdicts = checked(file, "finish", "departure")["verdicts"]
    assert isinstance(verdicts, dict)
    words = answers(page)
    assert {use: one["answer"] for use, one in verdicts.items()} == {use: words[use] for use in verdicts}
    assert "tow" in verdicts
    page.close()


def test_a_cancelled_drag_leaves_nothing(server: Server, file: Path) -> None:
    page = Page(server)
    was, before = page.told["numbers"], file.read_bytes()
    page.do("move", of=CABINET, x_mm=500.0)
    now = page.do("cancel")
    assert {**now, "seq": 0} == {**was, "seq": 0}
    assert page.rev == 0
    assert file.read_bytes() == before
    page.close()


def test_what_is_refused_is_said_and_the_numbers_are_true_again(server: Server) -> None:
    page = Page(server)
    seq = page.say("move", of="parts[no such thing]", x_mm=1.0)
    no = page.until(lambda one: one["t"] == "no")
    assert no["seq"] == seq and no["why"]
    numbers = page.until(lambda one: one["t"] == "numbers")
    assert not numbers["preview"]
    page.close()


def test_two_tabs_hold_the_same_text_and_are_drawn_the_same(server: Server, file: Path) -> None:
    one, other = Page(server), Page(server)
    for page in (one, other):
        server.json("/screen/plan?stage=&load=&vehicle=")
        assert page.text == file.read_text()
    other.do("set", path="parts[step].weight", value="80")
    one.do("copy", of="parts[boat-floor]", name="")
    one.do("undo")
    one.do("drop", of="parts[boat-floor]", x_mm=INCH)  # last: a copy taken out before it was drawn draws nothing anew
    end = one.rev
    for page in (one, other):
        page.until(lambda told: told["t"] == "patch" and told["rev"] >= end)
        assert "weight: 80" in page.text
    assert one.text == other.text
    assert eventually(lambda: file.read_text() == one.text)
    drawn = [[told for told in page.every if told["t"] == "patch"] for page in (one, other)]
    assert drawn[0] == drawn[1]
    assert any("parts[boat-floor]" in told["groups"] or told["whole"] for told in drawn[1])
    one.close()
    other.close()


def test_the_later_of_two_changes_of_one_thing_is_refused(server: Server) -> None:
    one, other = Page(server), Page(server)
    other.rev = 0
    one.do("set", path="parts[galley].weight", value="80")
    told = other.do("set", path="parts[galley].weight", value="90")  # made before it heard of the first
    assert told["t"] == "no"
    other.until(lambda told: told["t"] == "numbers" and told["seq"] == other.seq)
    assert "weight: 80" in other.text
    assert other.do("set", path="parts[galley].weight", value="90")["t"] == "numbers"
    one.close()
    other.close()


def test_a_tab_that_does_not_listen_holds_up_nobody(server: Server, file: Path) -> None:
    deaf, page = Page(server), Page(server)
    for number in range(40):
        page.do("set", path="parts[galley].weight", value=str(100 + number))
    assert eventually(lambda: b"weight: 139" in file.read_bytes())
    deaf.link.socket.shutdown(socket.SHUT_RDWR)  # it goes as it was, without a word: a parting is waited for
    deaf.close()
    assert page.do("cancel")["t"] == "numbers"
    page.close()


def test_a_server_that_is_killed_loses_at_most_the_gesture_under_way(file: Path) -> None:
    server = Server(file, file.parent, is_cold=True)
    server.enter()
    page = Page(server)
    page.do("set", path="parts[galley].weight", value="77")
    assert eventually(lambda: b"weight: 77, stage: galley" in file.read_bytes())
    page.do("set", path="parts[galley].weight", value="78")  # answered, and at once:
    server.stop(signal.SIGKILL)
    server.errors.close()
    text = file.read_text()
    assert "weight: 77, stage: galley" in text or "weight: 78, stage: galley" in text
    with serving(file, file.parent) as again:
        page = Page(again)
        if "weight: 78, stage: galley" not in text:
            assert page.told["state"]["left"]
            page.do("recover", take=True)
        assert "weight: 78, stage: galley" in page.text
        assert page.told["state"]["left"] == ""
        assert eventually(lambda: "weight: 78, stage: galley" in file.read_text())
        page.close()


def test_a_server_that_is_stopped_writes_what_waits(file: Path) -> None:
    with serving(file, file.parent, is_cold=True) as server:
        page = Page(server)
        page.do("set", path="parts[galley].weight", value="77")
        server.stop(signal.SIGTERM)
    assert b"weight: 77, stage: galley" in file.read_bytes()
    assert not (file.parent / ".boxwright" / "rig.yaml.unsaved").exists()


def test_what_a_page_sends_as_it_goes_is_done(server: Server, file: Path) -> None:
    page = Page(server)
    for number in range(5):
        page.say("text", changes=[{"start": 0, "end": 0, "insert": f"# {number}\n"}])
        page.rev += 1
    page.link.close()
    assert eventually(lambda: file.read_text().startswith("# 4\n# 3\n# 2\n# 1\n# 0\n"))


def test_a_change_on_the_disk_reaches_every_tab(server: Server, file: Path) -> None:
    one, other = Page(server), Page(server)
    new = file.read_text().replace("galley:          {x: 50,", "galley:          {x: 52,")
    beside = file.with_name("beside")
    beside.write_text(new)
    beside.replace(file)
    for page in (one, other):
        page.until(lambda told: told["t"] == "numbers" and told["rev"] == 1)
        assert page.text == new
    one.do("undo")
    assert eventually(lambda: "galley:          {x: 50," in file.read_text())
    one.close()
    other.close()


def test_a_conflict_stops_the_writing_until_the_owner_has_chosen(server: Server, file: Path) -> None:
    page = Page(server)
    theirs = file.read_text().replace("galley:          {x: 50,", "galley:          {x: 52,")
    page.say("set", path="parts[galley].x", value="55")
    file.write_text(theirs)
    disk = page.until(lambda told: told["t"] == "disk" and told["state"] == "conflict")
    assert disk["text"] == theirs
    page.do("set", path="parts[fridge].x", value="56")
    third = theirs.replace("{x: 52,", "{x: 53,")
    file.write_text(third)
    disk = page.until(lambda told: told["t"] == "disk" and told["text"] == third)
    assert page.do("resolve", disk_hash="stale", text=page.text)["t"] == "no"
    assert file.read_text() == third
    page.say("resolve", disk_hash=disk["hash"], text=page.text)
    page.until(lambda told: told["t"] == "disk" and told["state"] == "step")
    assert file.read_text() == page.text
    assert "galley:          {x: 55," in page.text
    page.close()


def test_a_file_that_vanishes_is_written_again_when_asked(server: Server, file: Path) -> None:
    page = Page(server)
    text = file.read_text()
    file.unlink()
    page.until(lambda told: told["t"] == "disk" and told["state"] == "gone")
    page.say("write-again")
    page.until(lambda told: told["t"] == "disk" and told["state"] == "step")
    assert file.read_text() == text
    page.close()


def test_typing_that_does_not_read_is_shown_with_its_problem(server: Server, file: Path) -> None:
    page = Page(server)
    before = file.read_text()
    at = len(before.encode("utf-16-le")) // 2
    told = page.do("text", changes=[{"start": at, "end": at, "insert": '  lid: {x: "4\n'}])
    assert told["problems"]
    assert told["problems"][-1]["line"] == before.count("\n") + 1
    page.until(lambda told: told["t"] == "disk" and told["state"] == "broken")
    assert file.read_text() == before
    page.close()


def test_the_proved_change_for_a_finding_is_made_as_one_step(server: Server) -> None:
    page = Page(server, load="departure", stage="safe")
    for finding in page.told["numbers"]["findings"]:
        if finding["may_seek"]:
            page.say("seek", code=finding["code"], where=finding["where"], load=finding["load"], use=finding["use"])
            offered = page.until(lambda told: told["t"] == "offered")
            assert offered["says"] and offered["key"] == finding["key"]
            if offered["remedy"]:
                break
    else:
        pytest.fail("nothing could be mended")
    about = {key: finding[key] for key in ("code", "where", "load", "use")}
    page.say("look", screen="plan", slot={"stage": "finish", "load": "departure", "vehicle": ""})
    assert page.do("apply", **about)["t"] == "no", "it was proved for another stage"
    page.say("look", screen="plan", slot={"stage": "safe", "load": "departure", "vehicle": "borrowed"})
    assert page.do("apply", **about)["t"] == "no", "it was proved for another tow vehicle"
    page.say("look", screen="plan", slot={"stage": "safe", "load": "departure", "vehicle": ""})
    assert page.do("apply", **{**about, "load": "empty"})["t"] == "no", "it was proved for another load state"
    other = "sleep" if about["use"] != "sleep" else "leave"
    assert page.do("apply", **{**about, "use": other})["t"] == "no", "it was proved for another use"
    told = page.do("apply", **about)
    assert told["t"] == "numbers"
    keys = ("code", "where", "kind")
    assert [finding[key] for key in keys] not in [[one[key] for key in keys] for one in told["findings"]]
    assert page.told["state"]["undo"] == 1
    assert page.do("apply", **about)["t"] == "no"
    page.close()


def test_an_accepted_finding_comes_back_when_its_number_changes(server: Server) -> None:
    page = Page(server, load="departure", stage="finish")

    def shares(which: str) -> list[str]:
        return [one["kind"] for one in page.told["numbers"][which] if one["code"] == "weight/tongue-lifts"]

    assert shares("findings") and not shares("accepted")
    lifts = next(one for one in page.told["numbers"]["findings"] if one["code"] == "weight/tongue-lifts")
    assert lifts["may_accept"]
    page.do("accept", code=lifts["code"], where=lifts["where"], note="I know it, the chairs stay at home")
    assert "number: " in page.text.partition("accepted:")[2] and " kg" in page.text.partition("accepted:")[2]
    assert shares("accepted") and not shares("findings")
    page.do("set", path=f"{CABINET}.weight", value="400")
    assert shares("findings") and not shares("accepted")
    page.do("undo")
    assert shares("accepted") and not shares("findings")
    page.close()


def test_a_finding_is_accepted_with_a_note_but_never_a_stop(server: Server) -> None:
    page = Page(server, load="departure")
    page.do("set", path="trailer.gvwr", value="2000")
    findings = page.told["numbers"]["findings"]
    stop = next(one for one in findings if one["kind"] == "stop")
    assert page.do("accept", code=stop["code"], where=stop["where"], note="so what")["t"] == "no"
    page.until(lambda told: told["t"] == "numbers")
    small = next(one for one in findings if one["may_accept"] and one["where"])
    told = page.do("accept", code=small["code"], where=small["where"], note="we live with it")
    assert (small["code"], small["where"]) in {(one["code"], one["where"]) for one in told["accepted"]}
    assert "we live with it" in page.text
    page.close()


def test_a_hostile_name_stays_text(file: Path) -> None:
    hostile = '"<img src=x onerror=alert(1)>]]>\u202e</text><script>"'
    text = file.read_text().replace("rig: Whimbrel", f"rig: {hostile}")
    file.write_text(text.replace("  galley:          {x: 50,", f"  {hostile}: {{x: 50,"))
    with serving(file, file.parent) as server:
        page = Page(server)
        assert page.told["state"]["rig"] == json.loads(hostile)
        for screen in ("plan", "elevations", "weight", "stages", "towing", "frame"):
            for picture in server.json(f"/screen/{screen}")["pictures"]:
                assert "<img" not in picture["svg"] and "<script" not in picture["svg"]
        page.close()
        assert "Traceback" not in server.said()


def test_the_first_page_begins_a_demo_and_a_rig_of_ones_own(tmp_path: Path) -> None:
    (tmp_path / "dunlin.yaml").write_text("mine\n")
    with serving(None, tmp_path) as server:
        page, other = Page(server), Page(server)
        state = page.told["state"]
        assert not state["has_file"]
        assert {one["name"] for one in state["demos"]} >= {"whimbrel", "dunlin"}
        assert server.get("/screen/plan").status == 404
        assert page.do("undo")["t"] == "no"
        assert page.do("begin", demo="../../etc/passwd", answers={})["t"] == "no"
        page.say("begin", demo="dunlin", answers={})
        for tab in (page, other):
            tab.until(lambda told: told["t"] == "state" and told["has_file"])
            tab.until(lambda told: told["t"] == "numbers")
        assert page.told["state"]["file"] == "dunlin-2.yaml"
        assert (tmp_path / "dunlin.yaml").read_text() == "mine\n"
        assert (tmp_path / "dunlin-2.yaml").read_bytes() == (ROOT / "rigs" / "dunlin.yaml").read_bytes()
        assert page.do("begin", demo="whimbrel", answers={})["t"] == "no"
        page.close()
        other.close()


def test_the_first_page_begins_with_what_is_known(tmp_path: Path) -> None:
    with serving(None, tmp_path) as server:
        page = Page(server)
        assert page.told["state"]["asks"]
        no = page.do("begin", demo="", answers={"length": "long"})
        assert (no["t"], no["asked"]) == ("no", "length"), "it is said at the box it is about"
        page.say("begin", demo="", answers={"name": "../Fern & co", "country": "US-NC", "length": "168", "no": "x"})
        page.until(lambda told: told["t"] == "numbers")
        assert [one.name for one in tmp_path.glob("*.yaml")] == [page.told["state"]["file"]]
        assert "168" in page.text
        page.close()


def test_a_rig_that_cannot_be_opened_is_said_in_words(tmp_path: Path) -> None:
    for name, what in (("none.yaml", None), ("folder.yaml", "folder")):
        if what:
            (tmp_path / name).mkdir()
        command = [sys.executable, "-m", "boxwright", "open", name, "--no-browser"]
        env = {"PYTHONPATH": str(ROOT / "src")}
        came = subprocess.run(command, cwd=tmp_path, env=env, capture_output=True, text=True, check=False, timeout=60)
        assert came.returncode >= 3
        assert name in came.stderr + came.stdout
        assert "Traceback" not in came.stderr


def test_numbers_name_what_they_were_worked_out_for(server: Server) -> None:
    page = Page(server)
    stage = page.told["state"]["stages"][-1]["name"]
    assert stage
    page.say("look", screen="plan", slot={"stage": stage, "load": "", "vehicle": ""})
    assert page.until(lambda one: one["t"] == "numbers")["slot"]["stage"] == stage
    page.say("move", of=CABINET, x_mm=10.0)
    assert page.until(lambda one: one["t"] == "numbers")["slot"]["stage"] == stage
    page.close()
