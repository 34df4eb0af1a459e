"""What follows a hand that holds a thing: the numbers at once, those of the night as soon as the hand rests.

A night takes longer than a hand's patience, unless it is what is looked at.
"""

from __future__ import annotations

from boxwright.web import contract, things
from boxwright.web.figures import night_slot, numbers_of
from boxwright.web.gestures import Refused
from boxwright.web.night import SCREENS, night_beside
from boxwright.web.said import shift_of
from boxwright.web.session import Session
from boxwright.web.tab import Tab

HAND_RESTS = 0.1
"""How long (s) a hand rests before the night of what it holds is worked out."""


def previewed(tab: Tab, move: contract.Move, session: Session) -> None:
    """Tell a page what follows from what its hand holds; the text stays as it is."""
    shift = shift_of(move)
    seen = session.preview(move.of, shift, move.base, tab.slot)
    numbers = numbers_of(seen, move.seq, session.rev, preview=True)
    # Only the load state looked at was worked out; where nobody sleeps in that one, its night is still to come.
    waits = tab.screen in SCREENS and night_slot(seen) is None
    tab.in_hand = move if waits else None
    night = None if waits else night_beside(tab.screen, seen)
    tab.tell(numbers.model_copy(update={"held": things.held(seen, move.of, shift), "night": night}))


def night_follows(tab: Tab, session: Session) -> None:
    """Tell a page the night of what its hand holds, now that it rests."""
    move, tab.in_hand = tab.in_hand, None
    slept_in = night_slot(session.seen(tab.slot))
    if move is None or slept_in is None:
        return
    try:
        looked_at = tab.slot.model_copy(update={"load": slept_in.load})
        seen = session.preview(move.of, shift_of(move), move.base, looked_at, "sleep")
    except Refused:
        return  # somebody else changed the thing meanwhile; the page is told when the hand lets go
    figures = night_beside(tab.screen, seen)
    tab.tell(contract.NightIs(t="night", seq=move.seq, rev=session.rev, slot=tab.slot, figures=figures))
