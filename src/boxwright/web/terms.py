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
    "band": "How far the number may be off, from the doubts that are written.",
}
