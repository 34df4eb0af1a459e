"""The first page: the demo rigs and the starter, each opened as a file of the owner's own in the folder they are in."""

from __future__ import annotations

from collections.abc import Mapping
from importlib.resources import files
from itertools import takewhile
from pathlib import Path

from boxwright.book.new_text import COLDEST, QUESTIONS, SLEEPERS
from boxwright.book.starter import NotUnderstood, starter
from boxwright.rig.compose import read_rig
from boxwright.web.contract import Ask
from boxwright.web.gestures import Refused

GENERATED = "More parts than anybody builds, from a generator: to see how it bears a crowd"
MOST_NAMES = 200
MOST_TYPED = 60


def _demo_folder() -> Path:
    """Return where the demo rigs are: in the installed package, or beside its sources."""
    inside = Path(str(files("boxwright"))) / "rigs"
    return inside if inside.is_dir() else Path(str(files("boxwright"))).parents[1] / "rigs"


def _about(text: str) -> str:
    """Return what the first lines of a rig file say of it, after the sentence that says that it is a demo."""
    head = " ".join(line.lstrip("# ") for line in takewhile(lambda line: line.startswith("#"), text.splitlines()[:2]))
    return head.partition(". ")[2].partition(". ")[0].rstrip(".") or (GENERATED if "generated" in head else "")


def demos() -> list[Ask]:
    """Return the demo rigs that can be opened, with what each is about."""
    found = []
    for path in sorted(_demo_folder().glob("*.yaml")):
        head = path.read_text(encoding="utf-8")[:2000]
        name = read_rig(head.partition("\nparts:")[0]).rig.header.name or path.stem.capitalize()
        found.append(Ask(name=path.stem, label=name, explains=_about(head)))
    return found


def begun_from_demo(name: str, folder: Path) -> Path:
    """Return a copy of a demo rig in a folder, under a name that nothing has yet."""
    if name not in {one.name for one in demos()}:
        raise Refused(f'there is no demo rig "{name}"')
    return _written(folder, name, (_demo_folder() / f"{name}.yaml").read_text(encoding="utf-8"))


NAME, COUNTRY = "name", "country"
PLACES = "with commas between, such as US-NC, CA-BC, UK, EU-FR, AU, NZ"


def asks() -> list[Ask]:
    """Return what the first page asks: a name, where it is driven, and what a starter rig is begun with."""
    found = [
        Ask(name=NAME, label="What is it called", explains="a name for the file, such as fern"),
        Ask(name=COUNTRY, label="Where it is driven, home first", explains=PLACES),
    ]
    for one in (SLEEPERS, COLDEST, *QUESTIONS):
        label = one.question[:1].upper() + one.question[1:]
        found.append(
            Ask(name=one.word, label=label, explains=f"read it: {one.read_it}" if one in QUESTIONS else one.read_it)
        )
    return found


def begun_from_answers(answers: Mapping[str, str], folder: Path) -> Path:
    """Return a new rig file from the answers of the first page, under a name that nothing has yet."""
    known = {one.name for one in asks()}
    given = {word: typed[:MOST_TYPED] for word, typed in answers.items() if word in known}
    name = given.pop(NAME, "").strip() or "rig"
    plain = "".join(letter for letter in name.lower().replace(" ", "-") if letter.isalnum() or letter == "-")
    try:
        text = starter(name.capitalize(), given)
    except NotUnderstood as reason:
        raise Refused(str(reason), reason.asked) from None
    return _written(folder, plain.strip("-")[:40] or "rig", text)


def _written(folder: Path, stem: str, text: str) -> Path:
    for number in range(1, MOST_NAMES):
        path = folder / (f"{stem}.yaml" if number == 1 else f"{stem}-{number}.yaml")
        try:
            with path.open("x", encoding="utf-8", newline="") as file:
                file.write(text)
        except FileExistsError:
            continue
        except OSError as reason:
            words = (reason.strerror or str(reason)).lower()
            raise Refused(f"{path.name} could not be written in this folder: {words}") from None
        return path
    raise Refused(f"there are {MOST_NAMES} files called {stem} here already")
