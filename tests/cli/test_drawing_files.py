"""``boxwright draw``: files in a folder, whole or not at all, and never over what somebody else put there."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest
from pypdf import PdfReader

from boxwright import HOW_TO_ADD
from boxwright.cli.drawing_files import LIST
from boxwright.cli.run import main
from boxwright.render.extra import MissingExtra


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str]:
    code = main(list(words))
    printed = capsys.readouterr()
    return code, " ".join((printed.out + printed.err).split())


def draw(capsys: pytest.CaptureFixture[str], to: Path, *words: str, rig: str = "whimbrel") -> tuple[int, str]:
    return run(capsys, "draw", f"rigs/{rig}.yaml", "--to", str(to), *words)


def names(folder: Path) -> Sequence[str]:
    return sorted(one.name for one in folder.iterdir() if one.name != LIST)


def test_one_sheet_is_written_in_every_format_and_named(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, said = draw(
        capsys, tmp_path / "new" / "er", "--sheet", "walk-round", "--format", "svg,pdf", "--format", "png"
    )
    assert code == 0
    assert names(tmp_path / "new" / "er") == ["walk-round.pdf", "walk-round.png", "walk-round.svg"]
    assert all(name in said for name in names(tmp_path / "new" / "er"))
    assert "1 sheet, 1 page on letter paper" in said


@pytest.mark.parametrize(("rig", "size"), [("whimbrel", (215.9, 279.4)), ("dunlin", (210.0, 297.0))])
def test_the_walk_round_prints_on_one_page_of_the_paper_sold_at_home(
    rig: str, size: tuple[float, float], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert draw(capsys, tmp_path, "--sheet", "walk-round", "--format", "pdf", rig=rig)[0] == 0
    (page,) = PdfReader(tmp_path / "walk-round.pdf").pages
    assert (page.mediabox.width / 72 * 25.4, page.mediabox.height / 72 * 25.4) == pytest.approx(size, abs=0.1)
    assert "Nobody rides in the trailer" in " ".join(page.extract_text().split())


def test_all_sheets_go_into_one_pdf(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, said = draw(capsys, tmp_path, "--format", "pdf", "--paper", "a4", rig="dunlin")
    assert (code, names(tmp_path)) == (0, ["dunlin-sheets.pdf"])
    count = len(PdfReader(tmp_path / "dunlin-sheets.pdf").pages)
    assert f"{count} pages on a4 paper" in said


def test_drawing_again_writes_over_its_own_files_and_over_no_others(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert draw(capsys, tmp_path, "--sheet", "order,roof")[0] == 0
    assert draw(capsys, tmp_path, "--sheet", "order,roof", "--units", "metric")[0] == 0
    before = {name: (tmp_path / name).read_bytes() for name in names(tmp_path)}
    (tmp_path / "roof.svg").write_text("mine", encoding="utf-8")
    code, said = draw(capsys, tmp_path, "--sheet", "order,roof")
    assert code == 3
    assert "nothing was written" in said
    assert {name: (tmp_path / name).read_bytes() for name in names(tmp_path)} == {**before, "roof.svg": b"mine"}
    assert draw(capsys, tmp_path, "--sheet", "order,roof", "--over")[0] == 0
    assert (tmp_path / "roof.svg").read_bytes() != b"mine"


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("--sheet", "walk-raund"), 'did you mean "walk-round"?'),
        (("--format", "jpg"), "svg, dxf, pdf, png"),
        (("--paper", "a3"), "letter, a4"),
        (("--stage", "bunkk"), 'did you mean "bunk"?'),
    ],
)
def test_what_is_not_there_is_refused_with_what_is(
    words: tuple[str, str], says: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, said = draw(capsys, tmp_path / "x", *words)
    assert code == 3
    assert says in said
    assert not (tmp_path / "x").exists()


def test_a_folder_that_is_a_file_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "taken").write_text("", encoding="utf-8")
    code, said = draw(capsys, tmp_path / "taken", "--sheet", "roof")
    assert code == 3
    assert "could not be written to" in said


def test_a_name_in_the_rig_leads_out_of_no_folder(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    rig = tmp_path / "odd.yaml"
    rig.write_text(
        "boxwright: 1\nrig: ../../Odd\nunits: {length: mm}\n"
        "trailer:\n  body: {length: 2500, width: 1300, height: 1650}\n"
        'openings:\n  "../../up": {wall: left, x: 500, z: 100, width: 200, height: 200}\n'
        "loads:\n  empty: {cargo: none, for: [tow]}\n",
        encoding="utf-8",
    )
    assert run(capsys, "draw", str(rig), "--to", str(tmp_path / "in" / "here"), "--format", "svg,pdf")[0] == 0
    assert {one.parent for one in tmp_path.rglob("*.*") if one.is_file() and one != rig} == {tmp_path / "in" / "here"}


def test_a_missing_writer_says_what_to_type(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(*_: object) -> bytes:
        raise MissingExtra("book", "typst")

    monkeypatch.setattr("boxwright.render.pdf.pdf_of", fails)
    code, said = draw(capsys, tmp_path, "--sheet", "roof", "--format", "pdf")
    assert code == 3
    assert HOW_TO_ADD in said


def test_a_sheet_drawn_only_by_name_is_listed_and_one_that_is_not_there_says_what_it_wants(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert "changeover, year)" in draw(capsys, tmp_path, "--sheet", "nosuch", rig="dunlin")[1]
    code, said = draw(capsys, tmp_path, "--sheet", "bringing-in", rig="dunlin")
    assert code != 0 and "nothing is to be brought in at this stage" in said and "did you mean" not in said
