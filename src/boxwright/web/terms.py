"""One line for every term on the page, for whoever has never towed or built."""

from __future__ import annotations

from boxwright.finding import Answer, Kind, Use

FIGURES: dict[str, str] = {
    "gross": "All that the trailer weighs with what is in it, wheels and ball together.",
    "tongue": "What presses down on the tow ball: the tongue, or nose, weight.",
    "share": "The tongue weight as a share of all the weight. Too little and the trailer sways, too much and the tow "
    "vehicle's front goes light.",
    "wheels": "What all wheels of the trailer carry together.",
    "axle": "What one axle carries, both wheels.",
    "sides": "How much heavier one side's wheels are loaded than the other's.",
    "room": "What may still be carried before the plate's greatest mass is reached.",
}
NIGHT: dict[str, str] = {
    "room-at-coldest": "How cold the room gets in the coldest night that is written, with its heater; of several "
    "places and heaters the coldest of all.",
    "held-down-to": "The cold outside down to which the heater still holds what is wanted.",
    "carbon-dioxide": "The carbon dioxide of a mild and still night by morning, windows shut: how stale the air gets.",
}
"""What the numbers of a night beside the screens are."""
USES: dict[Use, tuple[str, str]] = {
    "tow": ("Tow", "May it go on the road as it is?"),
    "sleep": ("Sleep", "May somebody sleep in it as it is?"),
    "leave": ("Leave", "May it stand alone as it is?"),
    "work": ("Work", "May somebody work in it as it is?"),
}
ANSWERS: dict[Answer, str] = {
    "go": "Every rule that could stop it was judged and holds.",
    "limits": "It may, within the numbers named.",
    "ask": "Nothing known is wrong, but something that is not known could be.",
    "no": "Something stops it, or nobody has judged what could.",
}
KINDS: dict[Kind, tuple[str, str]] = {
    "stop": ("Stop", "Do not tow, sleep, leave or work so."),
    "limit": ("Limit", "It may, but no more than the number."),
    "fix": ("Fix", "Put it right before the next stage closes over it."),
    "unknown": ("Unknown", "It cannot be judged: write or measure what is named."),
    "advice": ("Advice", "For the owner to judge."),
}
GROUPS: dict[str, str] = {"draw": "Draw", "work-out": "Work out", "on-file": "On file"}
SLOT: dict[str, str] = {
    "stage": "Today is what is ticked as done. A stage is the plan as it will stand when that stage is finished.",
    "load": "What is carried: the tanks, the cargo and the people of a trip.",
    "vehicle": "Which vehicle pulls it.",
    "balance": "The trailer as a beam: weight presses down, wheels and ball press up; one scale for all bars.",
    "stud": "A stud is one of the upright bars in a wall; its face is the side towards the room.",
    "band": "How far the number may be off, from the doubts that are written.",
}
READ_ONLY = "Its words in the rig file are read and checked; nothing is worked out of them yet."
"""What the screen of a chapter says that works nothing out."""
TODAY: dict[str, str] = {
    "water": "Worked out: what the filling of each tank weighs in each load state, and how high its middle is.",
}
"""What a chapter that judges nothing works out all the same."""
BY_HAND: dict[str, str] = {
    "cutting": "Not judged: how many sheets and bars to buy, and how to cut them. By hand: draw the pieces on squared "
    "paper, the width of the saw's cut between them, and count the sheets.",
    "heat": "Not judged: whether the heater makes up for the cold, how much fuel that takes, and how cold the inner "
    "faces get. By hand: before you rely on it, sleep one cold night near home with a thermometer inside and one "
    "outside.",
    "power": "Not judged: how long the battery lasts, what sun and chargers put back, and whether each wire and fuse "
    "fits what it feeds. By hand: add up watts times hours of a day against what the battery holds, take from the "
    "maker's table what each wire bears, put a fuse at the battery, and leave mains to licensed hands.",
    "stages": "Not judged: whether the order of the work holds together, what is still to buy and to pay. By hand: "
    "before a stage closes over another, go through its list here and tick what is in.",
    "structure": "Not judged: whether hinges, legs and screws carry the bunk, whether the roof bears its load, and "
    "whether straps and rings hold what is loose. By hand: load the bunk with a quarter more than will lie on it, for "
    "ten minutes, before anybody lies on it or under it; strap all that is loose with gear rated for its weight.",
    "water": "Not judged: whether the waste tank holds what the fresh one gives, and whether every pipe drains before "
    "frost. By hand: hold the two volumes against each other; before frost open every drain and blow the pipes "
    "through.",
}
"""What nobody judges yet of each chapter that is not built, and what its owner does by hand meanwhile."""
