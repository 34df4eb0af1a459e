"""The probes of the gate once more, over the wire: what the server in front of it lets through is refused behind it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest
from websockets.exceptions import ConnectionClosed, InvalidStatus
from websockets.sync.client import ClientConnection

from boxwright.web.contract import CONTRACT
from boxwright.web.gate import MOST_BODY
from boxwright.web.routes import HALF, MOST_A_SECOND, MOST_MESSAGE, MOST_TAKEN, TOO_LONG
from tests.web.live import PATIENCE, ROOT, Page, Server, joined, serving


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    folder = tmp_path_factory.mktemp("probes")
    path = folder / "rig.yaml"
    path.write_bytes((ROOT / "rigs" / "dunlin.yaml").read_bytes())
    with serving(path, folder) as found:
        yield found


def test_the_link_works_once(server: Server) -> None:
    assert server.get(server.entry, Cookie="").status == 403
    assert server.get("/enter?t=", Cookie="").status == 403
    assert server.get("/enter", Cookie="").status == 403
    again = server.get(server.entry)
    assert (again.status, again.getheader("location")) == (303, "/")
    assert again.getheader("set-cookie") is None


def test_looking_the_link_over_does_not_use_it_up(tmp_path: Path) -> None:
    with serving(None, tmp_path) as fresh:
        pass
    other = Server(None, tmp_path)
    try:
        assert other.get(other.entry, "HEAD").status == 200
        other.enter()
    finally:
        other.stop()
        other.errors.close()
    assert fresh.process.returncode is not None


def test_the_page_and_what_it_fetches(server: Server) -> None:
    for path in ("/", "/screen/plan", "/schema", "/thing?of=parts[none]", "/working?number=gross"):
        answer = server.get(path)
        assert answer.status == 200, path
        assert answer.getheader("content-security-policy")
    assert server.get("/", Cookie="").status == 403
    assert server.get("/screen/plan", Cookie="").status == 403


PATHS = [
    "/..%2f..%2fetc/passwd", "/../../etc/passwd", "/%2e%2e/%2e%2e/etc/passwd", "//etc/passwd", "/assets/%00",
    "/assets/../index.html", "/rig.yaml", "/.boxwright/past", "/screen/..%2f..", "/contract.py", "/dist/index.html",
]  # fmt: skip


@pytest.mark.parametrize("path", PATHS)
def test_no_path_leads_out_of_the_page(server: Server, path: str) -> None:
    answer = server.get(path)
    assert answer.status in {400, 404}
    assert len(answer.read()) < 100


def status(answer: bytes) -> int:
    return int(answer.split(b" ", 2)[1]) if answer.startswith(b"HTTP/1.") else 0


def request(server: Server, *lines: str, method: str = "GET", path: str = "/") -> bytes:
    head = [f"{method} {path} HTTP/1.1", *lines, f"Cookie: {server.cookie}", "", ""]
    return "\r\n".join(head).encode()


def test_one_host_is_named_and_it_is_ours(server: Server) -> None:
    host = f"Host: {server.host}"
    assert status(server.raw(request(server, host))) == 200
    assert status(server.raw(request(server, f"Host: [::1]:{server.port}"))) == 200
    assert status(server.raw(request(server, f"Host: localhost:{server.port}"))) == 200
    assert status(server.raw(request(server, host, host))) == 400
    assert status(server.raw(request(server))) == 400
    assert status(server.raw(request(server, "Host: rebound.example.org"))) == 403
    assert status(server.raw(request(server, f"Host: rebound.example.org:{server.port}"))) == 403


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH", "OPTIONS"])
def test_nothing_is_changed_by_a_request(server: Server, method: str) -> None:
    here = f"http://{server.host}"
    assert server.get("/screen/plan", method).status == 403
    assert server.get("/screen/plan", method, Origin="null").status == 403
    assert server.get("/screen/plan", method, Origin="http://example.org").status == 403
    assert server.get("/screen/plan", method, Origin=here).status == 405


def test_a_long_body_is_refused_whether_its_length_is_said_or_not(server: Server) -> None:
    host, origin = f"Host: {server.host}", f"Origin: http://{server.host}"
    said = request(server, host, origin, f"Content-Length: {MOST_BODY + 1}", method="POST")
    assert status(server.raw(said)) == 413
    chunked = request(server, host, origin, "Transfer-Encoding: chunked", method="POST")
    piece = b"10000\r\n" + bytes(65_536) + b"\r\n"
    try:
        answer = server.raw(chunked + piece * (MOST_BODY // 65_536 + 20) + b"0\r\n\r\n")
    except (ConnectionResetError, BrokenPipeError):
        answer = b""  # let go of before all of it was taken
    assert status(answer) in {0, 405, 413}
    assert server.get("/").status == 200


def test_a_socket_is_opened_from_our_own_page_only(server: Server) -> None:
    here = f"http://{server.host}"
    for origin in (None, "null", "http://example.org", f"https://{server.host}", f"http://127.0.0.1:{server.port + 1}"):
        with pytest.raises(InvalidStatus) as refused, joined(server, origin):
            pass
        assert refused.value.response.status_code == 403
    for cookie in ("", "boxwright-1=x", server.cookie[:-1]):
        with pytest.raises(InvalidStatus), joined(server, here, cookie):
            pass
    with joined(server, here) as link:
        assert link.ping().wait(PATIENCE)


def closed_with(link: ClientConnection) -> int:
    """Return the code a socket is closed with, whatever is said before."""
    try:
        while True:
            link.recv(timeout=PATIENCE)
    except ConnectionClosed as how:
        return how.rcvd.code if how.rcvd is not None else 0


HELLO = {"t": "hello", "seq": 1, "base": 0, "contract": CONTRACT, "screen": "plan",
         "slot": {"stage": "", "load": "", "vehicle": ""}}  # fmt: skip
WRONG: list[str | bytes] = [
    "", "{", "[]", "null", "7", '{"t": "none"}', '{"t": "undo"}',
    json.dumps({**HELLO, "more": 1}),
    '{"t": "undo", "seq": 1, "base": 0, "t": "nothing"}',
    '{"t": "move", "seq": 1, "base": 0, "of": "parts[a]", "x_mm": NaN}',
    '{"t": "move", "seq": 1, "base": 0, "of": "parts[a]", "x_mm": Infinity}',
    '{"t": "drop", "seq": 1, "base": 0, "of": "parts[a]", "x_mm": 1e300}',
    '{"t": "drop", "seq": 1, "base": 0, "of": ["parts"], "x_mm": 1}',
    json.dumps({"t": "set", "seq": 1, "base": 0, "path": {"a": 1}, "value": "1"}),
    "[" * 20_000,
    b"\x00\x01", json.dumps(HELLO).encode(),
]  # fmt: skip


@pytest.mark.parametrize("message", WRONG, ids=range(len(WRONG)))
def test_what_is_no_message_ends_the_talk(server: Server, message: str | bytes) -> None:
    with joined(server, f"http://{server.host}") as link:
        link.send(message)
        assert closed_with(link) == 1008
    assert "Traceback" not in server.said()


def test_a_message_that_is_too_long_is_answered_and_the_talk_goes_on(server: Server) -> None:
    page = Page(server)
    long = [{"start": 0, "end": 0, "insert": "x" * MOST_MESSAGE}]
    told = page.do("text", changes=long)
    assert (told["t"], told["why"]) == ("no", TOO_LONG)
    assert page.do("cancel")["t"] == "numbers"
    page.close()


@pytest.mark.parametrize("half", ["\ud83d", "\ude90", "a\ud83d b"])
def test_half_a_character_is_answered_and_the_talk_goes_on(server: Server, half: str) -> None:
    page = Page(server)
    before = page.text
    for told in (
        page.do("text", changes=[{"start": 0, "end": 0, "insert": half}]),
        page.do("set", path="rig", value=half),
    ):
        assert (told["t"], told["why"]) == ("no", HALF)
    assert page.do("set", path="rig", value="Whole \U0001f690")["t"] == "numbers"
    assert page.text == before.replace("rig: Dunlin", "rig: Whole \U0001f690") != before
    page.do("undo")
    page.close()


def test_a_message_that_is_longer_still_ends_the_talk(server: Server) -> None:
    with joined(server, f"http://{server.host}") as link:
        link.send(json.dumps({**HELLO, "locale": "x" * MOST_TAKEN}))
        assert closed_with(link) == 1009


def test_a_last_word_passes_the_same_gate(server: Server) -> None:
    page = Page(server)
    page.do("set", path="rig", value="Before")
    typed = {"base": page.rev, "under": [], "waits": [{"start": 0, "end": 0, "insert": "# by nobody\n"}]}
    body = json.dumps({"page": "p", "edits": [], "typed": typed})
    origin = f"http://{server.host}"
    refused = [{"Origin": "http://evil.example"}, {}, {"Origin": origin, "Cookie": "boxwright-1=x"},
               {"Origin": origin, "Sec-Fetch-Site": "cross-site"}]  # fmt: skip
    assert [server.post("/leave", body, headers) for headers in refused] == [403] * 4
    assert server.post("/leave", "{}", {"Origin": origin}) == 400
    assert server.get("/leave").status in {404, 405}
    assert page.do("cancel")["t"] == "numbers"
    assert not page.text.startswith("# by")
    assert server.post("/leave", body, {"Origin": origin}) == 204
    page.until(lambda one: one["t"] == "text")
    assert page.text.startswith("# by nobody\n")
    page.do("undo")
    page.close()


def test_too_many_messages_end_the_talk_and_no_other(server: Server) -> None:
    quiet = Page(server)
    with joined(server, f"http://{server.host}") as link:
        with suppress(ConnectionClosed):
            for number in range(MOST_A_SECOND * 4):
                # Of moves only the newest waits: nothing but their number in a second can end the talk.
                move = {"t": "move", "seq": number, "base": 0, "of": "parts[bench]", "x_mm": 1.0}
                link.send(json.dumps(move))
        assert closed_with(link) == 1008
    assert quiet.do("cancel")["t"] == "numbers"
    quiet.close()


def test_a_page_hears_of_no_change_before_it_has_the_text(server: Server) -> None:
    other = Page(server)
    with joined(server, f"http://{server.host}") as link:
        assert other.do("set", path="rig", value="Changed before the first word")["t"] == "numbers"
        link.send(json.dumps(HELLO))
        told = json.loads(link.recv(timeout=PATIENCE))
        while told["t"] != "text":
            told = json.loads(link.recv(timeout=PATIENCE))
        assert told["text"] is not None and "Changed before the first word" in told["text"]
    other.do("undo")
    other.close()


def test_an_older_page_is_told_to_load_itself_again(server: Server) -> None:
    with joined(server, f"http://{server.host}") as link:
        link.send(json.dumps({**HELLO, "contract": CONTRACT + 1}))
        assert json.loads(link.recv(timeout=PATIENCE)) == {"t": "reload"}
