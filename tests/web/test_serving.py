"""The port a rig is served on: the same each time, so that what a page keeps is found again; never a taken one."""

from __future__ import annotations

from pathlib import Path

from boxwright.web.serving import FIRST_PORT, MANY_PORTS, bound, port_of


def test_a_rig_has_its_own_port_each_time_and_another_where_that_is_taken(tmp_path: Path) -> None:
    rig = tmp_path / "rig.yaml"
    with bound(0, rig) as first:
        port = first.getsockname()[1]
        with bound(0, rig) as second:
            assert second.getsockname()[1] not in {0, port}
    with bound(0, rig) as again:
        assert again.getsockname()[1] == port
        assert again.getsockname()[0] == "127.0.0.1"


def test_the_port_is_that_of_the_whole_path(tmp_path: Path) -> None:
    ports = {port_of(tmp_path / f"{number}" / "rig.yaml") for number in range(200)}
    assert len(ports) > 190 and all(FIRST_PORT <= one < FIRST_PORT + MANY_PORTS < 32_768 for one in ports)
    (tmp_path / "other.yaml").symlink_to(tmp_path / "rig.yaml")
    assert port_of(tmp_path / "other.yaml") == port_of(tmp_path / "rig.yaml"), "it is the same file"
