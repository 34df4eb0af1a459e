"""Records as an answer shows them, written by hand so that pages can be tested without a study. All figures made up."""

from __future__ import annotations

from dataclasses import replace

from boxwright.book.numbers import US
from boxwright.cli.shown import Checked, State, Weighed
from boxwright.finding import Finding, Problem, Verdict
from boxwright.units import Band, exactly

POUND = 0.45359237


def pounds(best: float, doubt: float = 0.0) -> Band:
    """Return a mass in lb with a half-width at 95 %."""
    return Band(best * POUND, (best - doubt) * POUND, (best + doubt) * POUND, spread="sigma" if doubt else "exact")


STATE = State(
    stage="liners",
    load="departure",
    is_ticked=True,
    gross=pounds(3412, 60),
    tongue=pounds(343, 20),
    share=Band(0.1005, 0.0945, 0.1065, spread="sigma"),
    on_wheels=pounds(3069, 55),
    axles=(pounds(1535, 40), pounds(1534, 40)),
    left=pounds(1500, 30),
    right=pounds(1569, 30),
    centre=(Band(2.17, 2.15, 2.19, spread="sigma"), Band(-0.01, -0.03, 0.01, spread="sigma"), exactly(0.79)),
    unlisted=("launch-wheels", "deck-chairs"),
)
PLANNED = replace(STATE, is_ticked=False, gross=pounds(3520, 55))

UNKNOWN = Finding(
    code="weight/weight-unknown",
    where="parts[launch-wheels]",
    kind="unknown",
    says="Nobody has written what launch-wheels weigh; each 10 lb here takes 6 lb off the ball.",
    act="weigh launch-wheels on a luggage scale",
    minutes=5,
    uses=("tow",),
    stage="liners",
    load="departure",
    use="tow",
    source="common practice, no source",
)
STOP = replace(
    UNKNOWN,
    code="weight/tips-up",
    where="loads[night]",
    kind="stop",
    says="With two people at the rear wall the nose lifts: 380 lb there, 310 lb are enough.",
    act="lower the rear legs before anybody boards",
    minutes=3,
    uses=("sleep",),
    use="sleep",
    number=172.4,
    limit=140.6,
    margin=-31.8,
    unit="kg",
)

VERDICTS = (
    Verdict(
        "tow",
        "departure",
        "liners",
        "ask",
        ("weight/weight-unknown",),
        "weigh launch-wheels on a luggage scale (5 min)",
        questions=("What do launch-wheels weigh? Luggage scale, 5 min.", "What do deck-chairs weigh? 5 min."),
        says=("nothing known is wrong, but two weights are not written",),
    ),
    Verdict("sleep", "night", "liners", "no", ("weight/tips-up", "not-judged/heat"), "lower the rear legs (3 min)",
            says=("the nose lifts when two people stand at the rear", "not judged: heat, air, power, safety")),
    Verdict("leave", "parked", "liners", "no", ("not-judged/power",), "", says=("not judged: power, air, heat",)),
    Verdict("work", "parked", "liners", "no", ("not-judged/power",), "", says=("not judged: power, air",)),
)  # fmt: skip

CHECKED = Checked(
    rig="Whimbrel",
    path="rigs/whimbrel.yaml",
    stage="liners",
    load="departure",
    date="2026-05-02",
    is_ticked=True,
    asked="tow",
    units=US,
    problems=(
        Problem(28, 14, "parts[bunk].weight", 'cannot read the mass "8 stone"; write it as "51 kg" or "112 lb"'),
    ),
    verdicts=VERDICTS,
    planned=(replace(VERDICTS[0], answer="limits", questions=()),),
    difference=("walls[left].layers[liner]", "walls[ceiling].layers[liner]"),
    state=STATE,
    state_planned=PLANNED,
    findings=(UNKNOWN, STOP),
    accepted=(),
    line_of=lambda path: {"parts[launch-wheels]": 143, "loads[night]": 201}.get(path),
)

WEIGHED = Weighed(
    rig="Whimbrel",
    path="rigs/whimbrel.yaml",
    stage="liners",
    load="departure",
    date="2026-05-02",
    units=US,
    problems=CHECKED.problems,
    ticked=(STATE,),
    planned=(PLANNED, replace(PLANNED, load="boat-out", unlisted=()), replace(PLANNED, stage="power")),
    weigh_next=("boat (62 % of the variance)", "outboard (20 %)", "radios (9 %)"),
    parked=("Uncoupled, legs up: 310 lb at the rear wall lift the nose.",),
    compared=("ticket-empty, gross: computed 612 +- 45 lb, measured 655 +- 10 lb, gap 43 lb.",),
)
