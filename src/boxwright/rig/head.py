"""The head of the file, its stages and its load states."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from difflib import get_close_matches
from typing import Any

from boxwright.finding import USES
from boxwright.model.entry import Entry, read_day, read_names, read_yes_no
from boxwright.model.load import UNNAMED, LoadState, LoadWords, read_fill
from boxwright.model.stage import UNMARKED, DoneMark, Stage
from boxwright.records import dataclass
from boxwright.rig.keys import facet_models
from boxwright.rig.rig import Header, Item
from boxwright.rig.validate import Mistake, nearest, spellings, validate
from boxwright.units import Band, CannotRead, HeaderUnits, read_exact

FORMAT = 1
COUNTRIES = ("US", "CA", "UK", "EU", "AU", "NZ")
EUROPEAN = frozenset("AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK".split())
"""Members of the European Union by their two letters (from memory): written alone, they are read as EU-DE."""
PARTS_OF: dict[str, frozenset[str]] = {
    "US": frozenset(
        "AL AK AZ AR CA CO CT DE DC FL GA HI ID IL IN IA KS KY LA ME MD MA MI MN MS MO MT NE NV NH NJ NM NY NC ND OH "
        "OK OR PA RI SC SD TN TX UT VT VA WA WV WI WY AS GU MP PR VI".split()
    ),
    "CA": frozenset("AB BC MB NB NL NS NT NU ON PE QC SK YT".split()),
    "AU": frozenset("ACT NSW NT QLD SA TAS VIC WA".split()),
    "EU": EUROPEAN,
}
"""States, provinces and territories by the codes of ISO 3166-2 (from memory), of the countries whose rules may differ
between them; of the European Union its members."""
UNIT_TRIALS = {"length": "length", "weight": "mass", "temperature": "temperature", "volume": "volume", "wire": "wire"}


class StageWords(Entry):
    """What the model reads of a stage."""

    what: str = ""
    done: DoneMark = UNMARKED
    now: str = ""
    note: str = ""


ONE_LINE = {
    "units": "units: {length: in, weight: lb, temperature: F}",
    "today": "today: {stage: name, date: 2026-05-02}",
}
"""Maps of the head that stand on one line, as they are written."""


def text_at(tree: Mapping[str, Any], key: str, path: str, mistakes: list[Mistake]) -> str:
    """Return the text under a key, or an empty one; a map or list there is a mistake."""
    given = tree.get(key)
    if isinstance(given, str):
        return given.strip()
    if given is not None:
        mistakes.append(Mistake(path, f"{key} takes one value; write it as {key}: word"))
    return ""


def map_at(tree: Mapping[str, Any], key: str, mistakes: list[Mistake]) -> Mapping[str, Any]:
    """Return the map of named things under a key, or an empty one; anything else there is a mistake."""
    given = tree.get(key)
    if isinstance(given, Mapping):
        return given
    if given is not None and given != "":
        example = ONE_LINE.get(key, f"{key}: and below it, indented, name: {{...}}")
        says = f"{key} takes a map of named things; write it as {example}"
        mistakes.append(Mistake(key, says))
    return {}


def read_units(tree: Mapping[str, Any], words: str, mistakes: list[Mistake]) -> HeaderUnits:
    """Return the units of bare numbers; a unit that is not known is dropped with a mistake."""
    given = map_at(tree, "units", mistakes)
    known: dict[str, str] = {}
    fields = [name for name in HeaderUnits.__dataclass_fields__ if name != "words"]
    for key, value in given.items():
        if key not in fields:
            guess = nearest(key, fields)
            says = f'no unit of "{key}" is known; ' + (
                f'did you mean "{guess}"?' if guess else f"write {', '.join(fields)}"
            )
            mistakes.append(Mistake(f"units.{key}", says, is_key=True))
            continue
        unit = str(value).strip() if isinstance(value, str) else ""
        try:
            if key in UNIT_TRIALS:
                read_exact(f"10 {unit}", UNIT_TRIALS[key], HeaderUnits(words=words))
        except CannotRead:
            says = f'"{unit}" is no unit of {key}; write it as {"in, mm, lb, kg, F, C, gal, l, AWG or mm2"}'
            mistakes.append(Mistake(f"units.{key}", says))
            continue
        known[key] = unit
    return HeaderUnits(words=words, **known)


def read_header(
    tree: Mapping[str, Any], stages: tuple[Stage, ...], units: HeaderUnits, mistakes: list[Mistake]
) -> Header:
    """Return the head of the file."""
    countries = _countries(tree, mistakes)
    today = map_at(tree, "today", mistakes)
    for key in today:
        if key not in {"stage", "date"}:
            mistakes.append(Mistake(f"today.{key}", f'today takes stage and date, not "{key}"', is_key=True))
    return Header(
        format=_format(tree, mistakes),
        name=text_at(tree, "rig", "rig", mistakes) or "rig without a name",
        is_demo=_yes(tree, "demo", mistakes),
        units=units,
        countries=countries or ("US",),
        is_country_assumed=not countries,
        trailer_class=text_at(tree, "class", "class", mistakes),
        stage_today=_stage_today(today, stages, mistakes),
        date_today=_date_today(today, mistakes),
    )


def home_words(tree: Mapping[str, Any]) -> str:
    """Return whose words and gallons are meant: ``words:``, else the first country."""
    given = tree.get("words") or tree.get("countries") or "US"
    first = given[0] if isinstance(given, tuple) and given else given
    return str(first).split("-")[0].strip().upper() or "US"


def _countries(tree: Mapping[str, Any], mistakes: list[Mistake]) -> tuple[str, ...]:
    given = tree.get("countries")
    found: list[str] = []
    for index, country in enumerate(read_names(given) if given else ()):
        word = str(country).strip().upper()
        start, _, part = word.partition("-")
        if start in COUNTRIES:
            found.append(word)
            if part and start in PARTS_OF and part not in PARTS_OF[start]:
                mistakes.append(Mistake(f"countries[{index}]", _no_part(str(country), start, part)))
            continue
        if word == "GB" or word.startswith("GB-"):
            found.append(f"UK{word[2:]}")
            continue
        if word in EUROPEAN:
            found.append(f"EU-{word}")
            continue
        # Kept, so that it is judged as a place without rules and never by those of another country.
        found.append(word)
        says = f'no country "{country}" is known here; write {", ".join(COUNTRIES)}, or with its state, US-NC'
        mistakes.append(Mistake(f"countries[{index}]", says))
    return tuple(found)


def _no_part(written: str, country: str, part: str) -> str:
    """Return the sentence on a State or province that there is none of; it is judged as one without rules."""
    near = get_close_matches(part, sorted(PARTS_OF[country]), 1)
    such_as = near[0] if near else "NC" if country == "US" else sorted(PARTS_OF[country])[0]
    how = f"write its code behind the country, such as {country}-{such_as}"
    return f'"{written}" names no part of {country} known here; {how}'


def _format(tree: Mapping[str, Any], mistakes: list[Mistake]) -> int:
    text = text_at(tree, "boxwright", "boxwright", mistakes)
    if text.isdecimal():
        if int(text) > FORMAT:
            says = (
                f"this file is of format {text}; this Boxwright reads format {FORMAT}: it is read as far as it is known"
            )
            mistakes.append(Mistake("boxwright", says))
        return int(text)
    says = f'cannot read the format "{text}"' if text else "the format of the file is not written"
    mistakes.append(Mistake("boxwright", f"{says}; write it as boxwright: {FORMAT}"))
    return FORMAT


def _yes(tree: Mapping[str, Any], key: str, mistakes: list[Mistake]) -> bool:
    try:
        return bool(read_yes_no(tree.get(key)))
    except ValueError as problem:
        mistakes.append(Mistake(key, str(problem)))
        return False


def _date_today(today: Mapping[str, Any], mistakes: list[Mistake]) -> date | None:
    try:
        found: date | None = read_day(today.get("date"))
        return found
    except ValueError as problem:
        mistakes.append(Mistake("today.date", str(problem)))
        return None


def _stage_today(today: Mapping[str, Any], stages: tuple[Stage, ...], mistakes: list[Mistake]) -> int:
    word = str(today.get("stage") or "").strip()
    if word:
        for stage in stages:
            if word in (stage.name, str(stage.index)):
                return stage.index
        guess = nearest(word, [stage.name for stage in stages])
        says = f'no stage "{word}" is known' + (f'; did you mean "{guess}"?' if guess else "")
        mistakes.append(Mistake("today.stage", says))
    open_stages = [stage.index for stage in stages if stage.done.tick != "yes"]
    return open_stages[0] if open_stages else max(len(stages) - 1, 0)


@dataclass(frozen=True, slots=True)
class StagesRead:
    """The stages in file order, and for each what the disciplines read of it."""

    stages: tuple[Stage, ...]
    facets: tuple[tuple[str, str, Entry], ...]


def read_stages(tree: Mapping[str, Any], units: HeaderUnits, mistakes: list[Mistake]) -> StagesRead:
    """Return the stages in file order with the facets (stage, folder, facet) others have on them."""
    stages: list[Stage] = []
    facets: list[tuple[str, str, Entry]] = []
    models = facet_models("stages")
    for index, (name, given) in enumerate(map_at(tree, "stages", mistakes).items()):
        path = f"stages[{name}]"
        keys = dict(given) if isinstance(given, Mapping) else ({"what": given} if isinstance(given, str) else {})
        for folder, model in models.items():
            own = {key for choices in spellings(model).values() for key in choices}
            facet, wrong = validate(model, {key: keys.pop(key) for key in list(keys) if key in own}, path, units)
            mistakes += wrong
            if facet is not None:
                facets.append((name, folder, facet))
        words, wrong = validate(StageWords, keys, path, units)
        mistakes += wrong
        words = words or StageWords()
        stages.append(Stage(name, index, words.what, words.done))
    return StagesRead(tuple(stages), tuple(facets))


def default_loads(people: Iterable[str]) -> tuple[LoadState, ...]:
    """Return the load states of a file that names none: everything aboard, every tank anywhere from empty to full.

    Everyone of the file is inside while it stands: to leave somebody out would make the night too easy.
    """
    return (
        LoadState("as listed", None, (), (), False, (), ("tow",)),
        LoadState("as listed, parked", None, (), (), True, tuple(people), ("sleep", "leave", "work")),
    )


def read_loads(
    tree: Mapping[str, Any], units: HeaderUnits, names: Iterable[str], people: Iterable[str], mistakes: list[Mistake]
) -> tuple[LoadState, ...]:
    """Return the load states; a name in one that is no part, tank or person is a mistake."""
    everyone = tuple(people)
    names, everybody = set(names), set(everyone)
    found: list[LoadState] = []
    for name, given in map_at(tree, "loads", mistakes).items():
        path = f"loads[{name}]"
        words, wrong = validate(LoadWords, given, path, units)
        mistakes += wrong
        if words is not None:
            found.append(_load_state(name, words, path, names, everybody, mistakes))
    return tuple(found) or default_loads(everyone)


def _load_state(
    name: str, words: LoadWords, path: str, names: set[str], people: set[str], mistakes: list[Mistake]
) -> LoadState:
    def known(key: str, given: tuple[str, ...], among: set[str]) -> tuple[str, ...]:
        for index, word in enumerate(given):
            if word not in among:
                guess = nearest(word, among)
                says = f'"{word}" is nothing in this file' + (f'; did you mean "{guess}"?' if guess else "")
                mistakes.append(Mistake(f"{path}.{key}[{index}]", says))
        return given

    cargo = None if words.cargo == ("all",) else () if words.cargo == ("none",) else known("cargo", words.cargo, names)

    def full(key: str, given: tuple[tuple[str, str], ...]) -> tuple[tuple[str, Band], ...]:
        found: list[tuple[str, Band]] = []
        for one, text in given:
            known(key, (one,), names)
            try:
                found.append((one, read_fill(text)))
            except CannotRead as problem:
                mistakes.append(Mistake(f"{path}.{key}.{one}", str(problem)))
                found.append((one, UNNAMED))
        return tuple(found)

    uses = tuple(use for use in USES if use in words.uses)
    for index, use in enumerate(words.uses):
        if use not in USES:
            mistakes.append(Mistake(f"{path}.for[{index}]", f'"{use}" is no use; write tow, sleep, leave or work'))
    if not uses:
        uses = ("sleep", "leave", "work") if words.parked else ("tow",)
    legs = {"down": True, "up": False}.get(words.legs)
    if words.legs not in {"", "down", "up", "unknown"}:
        mistakes.append(Mistake(f"{path}.legs", f'cannot read legs "{words.legs}"; write it as down or up'))
    stands = bool(words.parked) or any(use != "tow" for use in uses)  # nobody sleeps, works or leaves it on the move
    return LoadState(
        name, cargo, known("out", words.out, names), full("tanks", words.tanks), stands,
        known("people", words.people, people), uses, words.coupled, legs, full("charge", words.charge),
    )  # fmt: skip


def check_left_behind(loads: tuple[LoadState, ...], items: Iterable[Item], mistakes: list[Mistake]) -> None:
    """Say which things a load state takes or leaves although they are built in: they would stay, unsaid."""
    named = {name for load in loads for name in (*(load.cargo or ()), *load.out)}
    known = [item for item in items if item.name in named]
    built_in = {item.name for item in known} - {item.name for item in known if _can_be_left_behind(item)}
    for load in loads:
        for key, given in (("cargo", load.cargo or ()), ("out", load.out)):
            for index, name in enumerate(given):
                if name in built_in:
                    says = f"{name} is built in; it stays. Write kind: cargo on it if it can be left behind"
                    mistakes.append(Mistake(f"loads[{load.name}].{key}[{index}]", says))


def _can_be_left_behind(item: Item) -> bool:
    """Return whether a thing, or what is in it, comes and goes with the load state."""
    holds = item.words.contents is not None or any(getattr(facet, "tank", None) for _, facet in item.facets)
    return item.words.kind == "cargo" or holds
