"""The gate: every request that another site, another program or a made-up name could send is refused."""

from __future__ import annotations

from collections.abc import Iterable

import pytest
from starlette.types import Message, Receive, Scope, Send

from boxwright.web.gate import MOST_BODY, POLICY, TOKEN_LIFE, Door, Gate
from tests.web.apart import apart

PORT = 4321
HERE = f"127.0.0.1:{PORT}"
Headers = list[tuple[str, str]]


class Clock:
    def __init__(self) -> None:
        self.now = 0.0

    def __call__(self) -> float:
        return self.now


async def reading(scope: Scope, receive: Receive, send: Send) -> None:
    """Stand for the application: takes a socket, else reads the whole body and says 200."""
    if scope["type"] == "websocket":
        await send({"type": "websocket.accept"})
        return
    while (await receive()).get("more_body"):
        pass
    await send({"type": "http.response.start", "status": 200, "headers": []})
    await send({"type": "http.response.body", "body": b"inside"})


def asked(
    headers: Headers,
    *,
    method: str = "GET",
    path: str = "/",
    kind: str = "http",
    body: Iterable[bytes] = (),
    door: Door | None = None,
) -> list[Message]:
    """Return what the gate sends in answer to one request."""
    scope: Scope = {
        "type": kind,
        "path": path,
        "query_string": b"",
        "headers": [(key.encode(), value.encode()) for key, value in headers],
    }
    if kind == "http":
        scope["method"] = method
    sent: list[Message] = []
    pieces = iter(body)

    async def receive() -> Message:
        piece = next(pieces, None)
        return {"type": "http.request", "body": piece or b"", "more_body": piece is not None}

    async def send(message: Message) -> None:
        sent.append(message)

    gate = Gate(reading, door or Door(PORT), PORT)
    apart(gate(scope, receive, send))
    return sent


def status(sent: list[Message]) -> int:
    """Return the one status that was sent; a socket that is taken counts as 101, one that is not as 403."""
    first = sent[0]
    if first["type"] == "websocket.accept":
        return 101
    if first["type"] == "websocket.close":
        return 403
    assert [one["type"] for one in sent].count("http.response.start") == 1
    return int(first["status"])


def held(door: Door) -> tuple[str, str]:
    return "cookie", door.cookie().partition(";")[0]


def good(door: Door, *more: tuple[str, str], host: str = HERE) -> Headers:
    return [("host", host), held(door), *more]


@pytest.mark.parametrize("host", [HERE, f"localhost:{PORT}", f"LOCALHOST:{PORT}", f"[::1]:{PORT}"])
def test_the_names_of_this_computer_are_answered(host: str) -> None:
    door = Door(PORT)
    assert status(asked(good(door, host=host), door=door)) == 200
    origin = ("origin", f"http://{host.lower()}")
    assert status(asked(good(door, origin, host=host), kind="websocket", path="/ws", door=door)) == 101


@pytest.mark.parametrize(
    "host",
    ["example.org", f"example.org:{PORT}", "127.0.0.1", f"127.0.0.1:{PORT + 1}", f"127.0.0.1.example.org:{PORT}", "",
     f"0.0.0.0:{PORT}", f"192.168.1.5:{PORT}", f"[::1%25lo]:{PORT}", f"user@127.0.0.1:{PORT}"],
)  # fmt: skip
def test_every_other_name_is_refused(host: str) -> None:
    door = Door(PORT)
    assert status(asked(good(door, host=host), door=door)) == 403
    origin = ("origin", f"http://{host}")
    assert status(asked(good(door, origin, host=host), kind="websocket", path="/ws", door=door)) == 403


def test_exactly_one_host_is_named() -> None:
    door = Door(PORT)
    assert status(asked([held(door)], door=door)) == 400
    assert status(asked([("host", HERE), ("host", HERE), held(door)], door=door)) == 400


FOREIGN = [
    "http://example.org",
    "null",
    "",
    f"https://{HERE}",
    f"http://127.0.0.1:{PORT + 1}",
    f"http://{HERE}/",
    "file://",
]


@pytest.mark.parametrize("origin", FOREIGN)
@pytest.mark.parametrize("kind", ["http", "websocket"])
def test_a_foreign_origin_is_refused(origin: str, kind: str) -> None:
    door = Door(PORT)
    assert status(asked(good(door, ("origin", origin)), kind=kind, door=door)) == 403


@pytest.mark.parametrize("method", ["POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "CONNECT"])
def test_what_could_change_something_names_its_origin(method: str) -> None:
    door = Door(PORT)
    here = ("origin", f"http://{HERE}")
    assert status(asked(good(door), method=method, door=door)) == 403
    assert status(asked(good(door, here, here), method=method, door=door)) == 403
    assert status(asked(good(door, here), method=method, door=door)) == 200


def test_a_socket_names_its_origin() -> None:
    door = Door(PORT)
    assert status(asked(good(door), kind="websocket", path="/ws", door=door)) == 403


SITES = {"same-origin": 200, "none": 200, "cross-site": 403, "same-site": 403}


@pytest.mark.parametrize(("site", "code"), SITES.items())
def test_a_request_that_another_site_caused_is_refused(site: str, code: int) -> None:
    door = Door(PORT)
    assert status(asked(good(door, ("sec-fetch-site", site)), door=door)) == code


PATHS = ["/", "/screen/plan", "/thing", "/ws", "/assets/index.js", "/enter/", "//enter", "/ENTER"]
COOKIES = [None, "", "boxwright-4321=", "boxwright-4321=wrong", "boxwright=x; a=b", ";;=;\x7f"]


@pytest.mark.parametrize("path", PATHS)
@pytest.mark.parametrize("cookie", COOKIES)
def test_without_the_cookie_nothing_is_answered(path: str, cookie: str | None) -> None:
    headers = [("host", HERE)] + ([("cookie", cookie)] if cookie is not None else [])
    assert status(asked(headers, path=path)) == 403
    assert status(asked([*headers, ("origin", f"http://{HERE}")], path=path, kind="websocket")) == 403


def test_the_cookie_of_another_port_opens_nothing() -> None:
    door, other = Door(PORT), Door(PORT + 1)
    assert status(asked([("host", HERE), held(other)], door=door)) == 403


def test_only_the_entry_is_answered_without_a_cookie() -> None:
    assert status(asked([("host", HERE)], path="/enter")) == 200
    assert status(asked([("host", HERE), ("sec-fetch-site", "cross-site")], path="/enter")) == 200
    assert status(asked([("host", "example.org")], path="/enter")) == 403
    assert status(asked([("host", HERE), ("origin", "http://example.org")], path="/enter")) == 403


def test_the_link_opens_once_and_not_for_long() -> None:
    clock = Clock()
    door = Door(PORT, clock)
    assert not door.opens("")
    assert not door.opens(door.token[:-1])
    assert not door.opens(door.token + "\u00e9")
    clock.now = TOKEN_LIFE - 1.0
    assert door.opens(door.token)
    assert not door.opens(door.token)
    late = Door(PORT, clock)
    clock.now += TOKEN_LIFE + 1.0
    assert not late.opens(late.token)


def test_the_cookie_stays_with_this_site_and_out_of_reach_of_scripts() -> None:
    parts = [one.strip() for one in Door(PORT).cookie().split(";")]
    assert parts[0].startswith(f"boxwright-{PORT}=")
    assert set(parts[1:]) == {"HttpOnly", "SameSite=Strict", "Path=/"}


def test_no_two_doors_have_the_same_token_or_cookie() -> None:
    doors = [Door(PORT) for _ in range(50)]
    assert len({door.token for door in doors} | {door.cookie() for door in doors}) == 100
    assert all(len(door.token) >= 32 for door in doors)


def headers_of(sent: list[Message]) -> dict[str, str]:
    return {key.decode(): value.decode() for key, value in sent[0]["headers"]}


@pytest.mark.parametrize("host", [HERE, "example.org"])
def test_every_answer_says_what_the_page_may_load(host: str) -> None:
    door = Door(PORT)
    headers = headers_of(asked(good(door, host=host), door=door))
    assert headers["content-security-policy"] == POLICY
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["referrer-policy"] == "no-referrer"
    assert headers["cross-origin-opener-policy"] == headers["cross-origin-resource-policy"] == "same-origin"
    assert not any(key.startswith("access-control") for key in headers)


def test_the_policy_lets_no_foreign_script_frame_or_form_in() -> None:
    rules = dict(one.strip().split(" ", 1) for one in POLICY.split(";"))
    assert rules["default-src"] == rules["base-uri"] == rules["form-action"] == rules["frame-ancestors"] == "'none'"
    assert rules["script-src"] == rules["connect-src"] == "'self'"
    assert "unsafe-eval" not in POLICY
    assert "unsafe-inline" not in rules["script-src"]


@pytest.mark.parametrize("length", [str(MOST_BODY + 1), "99999999999999999999", "-1", "1e3", "0x10", "", "10, 10"])
def test_a_body_said_to_be_too_long_is_not_read(length: str) -> None:
    door = Door(PORT)
    headers = good(door, ("origin", f"http://{HERE}"), ("content-length", length))
    assert status(asked(headers, method="POST", body=(), door=door)) == 413


def test_a_chunked_body_is_read_to_the_limit_and_no_further() -> None:
    door = Door(PORT)
    headers = good(door, ("origin", f"http://{HERE}"), ("transfer-encoding", "chunked"))
    piece = bytes(MOST_BODY // 4)
    assert status(asked(headers, method="POST", body=[piece] * 4, door=door)) == 200
    taken: list[int] = []

    def endless() -> Iterable[bytes]:
        for number in range(8):
            taken.append(number)
            yield piece

    sent = asked(headers, method="POST", body=endless(), door=door)
    assert status(sent) == 413
    assert taken == [0, 1, 2, 3, 4]
    assert [one["type"] for one in sent] == ["http.response.start", "http.response.body"]
