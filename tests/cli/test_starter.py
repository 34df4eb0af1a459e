"""``new``: whatever is typed, a starter rig reads without a problem, and nothing is ever written over."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boxwright.book.new_text import NOT_YET, QUESTIONS
from boxwright.book.starter import NotUnderstood, starter
from boxwright.cli import main
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.starter import begun, put_down
from boxwright.rig.compose import read_rig
from boxwright.web.beginning import asks

WORDS = [one.word for one in QUESTIONS]
OTHERS = ["axles", "class", "country", "units", "sleepers", "coldest"]


@settings(max_examples=40, deadline=None)
@given(st.dictionaries(st.sampled_from([*WORDS, *OTHERS]), st.text(max_size=20), max_size=6))
def test_any_answer_gives_a_clean_rig_or_a_sentence(answers: dict[str, str]) -> None:
    try:
        text = starter("Tern", answers)
    except NotUnderstood as reason:
        assert str(reason)
        return
    assert read_rig(text).problems == ()


def test_what_is_left_out_stands_as_unknown_with_where_to_read_it() -> None:
    text = starter("Tern", {})
    assert read_rig(text).problems == ()
    for asked in QUESTIONS:
        assert f"{asked.question}; read it: {asked.read_it}" in text
    rig = read_rig(text).rig
    assert rig.trailer.gvwr is not None and not rig.trailer.gvwr.known


def test_what_is_typed_is_read_in_the_units_of_the_country() -> None:
    typed = {"length": "14 ft", "height": "6' 5 3/4\"", "gvwr": "7000", "coupler": "52", "axles": "2",
             "axle": "83,117", "country": "us-nc, CA-BC"}  # fmt: skip
    rig = read_rig(starter("Tern", typed)).rig
    assert rig.header.countries == ("US-NC", "CA-BC")
    assert rig.trailer.body.length is not None and rig.trailer.body.height is not None
    assert rig.trailer.coupler_x is not None and rig.trailer.gvwr is not None
    # 14 ft, 77 3/4 in, 52 in and 7,000 lb by the inch of 25.4 mm and the pound of 0.45359237 kg (from memory).
    assert rig.trailer.body.length.best == pytest.approx(4.2672)
    assert rig.trailer.body.height.best == pytest.approx(77.75 * 0.0254)
    assert rig.trailer.coupler_x.best == pytest.approx(-1.3208)
    assert rig.trailer.gvwr.best == pytest.approx(3175.14659)
    assert [round(axle.best / 0.0254, 6) for axle in rig.trailer.axles.x] == [83.0, 117.0]
    metric = read_rig(starter("Tern", {"length": "2500", "country": "UK"})).rig.trailer.body.length
    assert metric is not None and metric.best == pytest.approx(2.5)


@pytest.mark.parametrize("name", ["Tern", "a: b", '"quoted"', "# no comment", "-", "yes", "{x}", "Zoë"])
def test_any_file_name_makes_a_name_that_reads_back(name: str) -> None:
    reading = read_rig(starter(name, {}))
    assert reading.problems == () and reading.rig.header.name == name


@pytest.mark.parametrize(
    ("word", "typed", "says"),
    [
        ("length", "12}, x: {", "cannot read the length"),
        ("gvwr", "8 stone", "cannot read the mass"),
        ("length", "-4", "below nothing"),
        ("axles", "9", "number of axles"),
        ("axle", "1,2,3,4,5", "these are 5 axles"),
        ("class", "boat", "cannot read the class"),
        ("country", "Narnia", "cannot read the country"),
        ("units", "cubits", "no system of units"),
    ],
)
def test_a_hostile_answer_is_refused_in_words(word: str, typed: str, says: str) -> None:
    with pytest.raises(NotUnderstood, match=says):
        starter("Tern", {word: typed})


def test_nothing_is_ever_written_over(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "rig.yaml"
    path.write_text("mine")
    assert main(["new", str(path), "--length", "168"]) == 3
    assert path.read_text() == "mine" and "stays as it is" in capsys.readouterr().err
    with pytest.raises(NothingAsked, match="there already"):
        put_down(str(path), "other")
    with pytest.raises(NothingAsked, match=r"ends in \.yaml"):
        put_down(str(tmp_path / "rig.txt"), "other")
    assert main(["new", str(tmp_path / "nowhere" / "rig.yaml")]) == 3


def test_a_new_rig_is_begun_and_checked(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "tern.yaml"
    assert main(["new", str(path), "--length", "168", "--country", "US-NC"]) == 0
    out = capsys.readouterr().out
    assert "9 of 10 measures stand as unknown" in " ".join(out.split())
    assert main(["check", str(path)]) == 2
    assert not capsys.readouterr().err
    assert main(["next", str(path)]) == 2
    assert "STAGES THAT CAN BE DONE NOW" in capsys.readouterr().out


def test_questions_are_asked_only_of_a_person(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []

    def answered(says: str) -> str:
        asked.append(says)
        return "unknown"

    begun(str(tmp_path / "a.yaml"), {}, 80, answered)
    assert asked == []
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr("sys.stdout.isatty", lambda: True, raising=False)
    begun(str(tmp_path / "b.yaml"), {}, 80, answered)
    assert len(asked) == len(QUESTIONS) + 5
    assert read_rig((tmp_path / "b.yaml").read_bytes()).problems == ()


def test_an_answer_that_cannot_be_read_is_asked_again_in_words(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr("sys.stdout.isatty", lambda: True, raising=False)
    typed = {
        "where it is driven": ["Narnia", "UK"],
        "what its papers": ["cargo"],
        "how many axles": ["2"],
        "front wall to each of the 2 axles": ["1400", "1400, 2200"],
        "greatest mass": ["fat", "fat", "fat"],
    }
    heard: list[str] = []

    def answered(says: str) -> str:
        heard.append(says)
        return next((left.pop(0) for words, left in typed.items() if words in says and left), "unknown")

    begun(str(tmp_path / "a.yaml"), {}, 80, answered)
    text = (tmp_path / "a.yaml").read_text()
    rig = read_rig(text).rig
    assert rig.header.countries == ("UK",) and rig.header.trailer_class == "cargo" and rig.header.units.length == "mm"
    assert [round(axle.best, 6) for axle in rig.trailer.axles.x] == [1.4, 2.2]
    assert rig.trailer.gvwr is not None and not rig.trailer.gvwr.known
    assert [one for one in heard if "Once more" in one][1].startswith("2 axles, but 1 place; ")
    assert any("in mm" in one for one in heard) and sum("greatest mass" in one for one in heard) == 3


@pytest.mark.parametrize("country", ["US-NC", "UK", ""])
def test_every_line_that_waits_reads_once_its_sign_is_taken_away(country: str) -> None:
    text = starter("Tern", {"country": country, "length": "14 ft", "width": "80 in", "height": "78 in"})
    waiting = re.compile(r"^( *)# ([a-z_-]+: .*)$", re.MULTILINE)
    taken, count = waiting.subn(r"\1\2", text)
    reading = read_rig(taken)
    assert reading.problems == ()
    assert count >= text.count(NOT_YET) - 1 >= 7, "the head explains the words once"
    for word in ("class", "brakes", "lamps", "kerb", "gcwr", "me", "people_and_gear"):
        assert re.search(rf"^ *# {word}: .*{NOT_YET}; .{{8,}}", text, re.MULTILINE), word
    assert re.search(rf"^  # (chains|secondary): .*{NOT_YET}", text, re.MULTILINE)
    assert read_rig(text).rig.header.trailer_class == ""
    tow = next(vehicle for _, vehicle in reading.rig.tow)
    assert tow.kerb is not None and tow.gcwr is not None and tow.people_and_gear is not None
    assert reading.rig.trailer.brakes.kind == ("overrun" if country == "UK" else "electric")
    assert reading.rig.trailer.chains is not None
    assert reading.rig.people and reading.rig.trailer.lamps


def test_places_of_axles_alone_say_how_many_there_are() -> None:
    text = starter("Tern", {"axle": "83,117", "gawr": "3500"})
    assert "x: [83, 117]" in text and "gawr: [3500, 3500]" in text and "kind: unknown" in text
    with pytest.raises((NotUnderstood, NothingAsked), match="1 axle, but 2 places"):
        starter("Tern", {"axle": "83,117", "axles": "1"})


def test_check_of_a_new_rig_has_no_problem_and_no_room_nobody_knows(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for country in ("US-NC", "UK"):
        path = tmp_path / f"{country}.yaml"
        main(["new", str(path), "--country", country])
        capsys.readouterr()
        main(["check", str(path), "--all"])
        out = capsys.readouterr().out
        assert "of room" not in out and "PROBLEM" not in out.upper()
        assert "class" in out


def test_every_measure_that_is_asked_can_be_given_as_an_option(tmp_path: Path) -> None:
    path = tmp_path / "tern.yaml"
    assert main(["new", str(path), *(word for one in QUESTIONS for word in (f"--{one.word}", "60"))]) == 0
    rig = read_rig(path.read_text(encoding="utf-8")).rig
    assert "every: 60" in path.read_text(encoding="utf-8") and rig.trailer.gvwr is not None and rig.trailer.gvwr.known


@pytest.mark.parametrize(
    ("typed", "names"),
    [("ann, Ben", ("ann", "ben")), ("2", ("sleeper-1", "sleeper-2")), ("aunt mary", ("aunt-mary",)), (" unknown", ())],
)
def test_who_sleeps_in_it_stands_where_safety_reads_it(typed: str, names: tuple[str, ...]) -> None:
    rig = read_rig(starter("Tern", {"sleepers": typed})).rig
    assert tuple(name for name, _ in rig.people) == names


@pytest.mark.parametrize("typed", ["no", "ann, ann", "0", "9", "a: b", "ann,,ben", ", ".join("abcdefghi")])
def test_a_sleeper_that_cannot_be_a_name_is_refused_in_a_sentence(typed: str) -> None:
    with pytest.raises(NotUnderstood, match="who sleeps in it: cannot read"):
        starter("Tern", {"sleepers": typed})


@pytest.mark.parametrize(
    ("typed", "country", "kelvin"), [("14", "US-NC", 263.15), ("-10", "UK", 263.15), ("-10 C", "US-NC", 263.15)]
)
def test_the_coldest_night_stands_where_heat_reads_it(typed: str, country: str, kelvin: float) -> None:
    """14 F is -10 C: by hand."""
    rig = read_rig(starter("Tern", {"coldest": typed, "country": country})).rig
    ((_, place),) = rig.heat.climates
    assert place.coldest_design is not None and place.coldest_design.best == pytest.approx(kelvin)


def test_nights_nobody_told_of_stand_as_unknown() -> None:
    text = starter("Tern", {"sleepers": "", "coldest": "unknown"})
    rig = read_rig(text).rig
    assert rig.people == () and rig.heat.climates == ()
    assert NOT_YET in text.partition("\npeople:")[2].partition("\nplaces:")[0]
    assert NOT_YET in text.partition("\nplaces:")[2].partition("\ntrailer:")[0]


def test_all_that_the_first_page_of_the_workbench_asks_is_an_option(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["new", "--help"]) == 0
    options = set(re.findall(r"--([a-z]+)", capsys.readouterr().out))
    asked = {one.name for one in asks()} - {"name"}  # the name is that of the file
    assert asked <= options and len(asked) > len(QUESTIONS)


def test_sleepers_papers_and_the_coldest_night_are_begun_with(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "tern.yaml"
    words = ["--sleepers", "ann,ben", "--coldest", "-8 C", "--class", "camper", "--country", "UK"]
    assert main(["new", str(file), *words]) == 0
    assert file.read_text(encoding="utf-8") == starter(
        "tern", {"sleepers": "ann,ben", "coldest": "-8 C", "class": "camper", "country": "UK"}
    )
    rig = read_rig(file.read_text(encoding="utf-8")).rig
    assert [name for name, _ in rig.people] == ["ann", "ben"] and rig.header.trailer_class == "camper"
    assert main(["new", str(tmp_path / "reed.yaml"), "--sleepers", "on"]) == 3
    assert "who sleeps in it" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("asked", "typed"),
    [("country", "Mars"), ("units", "ells"), ("class", "boat"), ("sleepers", "99"), ("axles", "9"), ("axle", "here"),
     ("axle", "1,2,3,4,5"), ("axle", "-3"), ("length", "quite long"), ("coldest", "icy")],
)  # fmt: skip
def test_what_is_refused_names_the_question_it_answers(asked: str, typed: str) -> None:
    with pytest.raises(NotUnderstood) as refused:
        starter("Fern", {asked: typed})
    assert refused.value.asked == asked
