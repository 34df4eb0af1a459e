"""``since RIG order``: what the builder's reply changes of what was asked, in sentences, and how to go on with it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from boxwright.book.numbers import mass
from boxwright.cli.asked import Answered, Question, answered
from boxwright.cli.changed import answer_lines, finding_changes, reworded_lines
from boxwright.cli.edits import edited
from boxwright.cli.rig_file import NothingAsked
from boxwright.cli.screen import Line, clean, hanging, plain, wrapped
from boxwright.cli.trying import answered_again, swept
from boxwright.cli.worded import at_the_shell
from boxwright.disciplines.frame.as_ordered import asked_of
from boxwright.disciplines.frame.ordering import OPENING_KEYS, AskedOpening, Order, OrderLine, Replied, order_lines
from boxwright.disciplines.frame.parts import Opening
from boxwright.model.place import ANYWHERE
from boxwright.rig.document import Document
from boxwright.rig.rig import Item, Rig
from boxwright.rig.splice import tree_at
from boxwright.units import Band, HeaderUnits, exactly, show

AXIS = {"x": 0, "z": 2}
SAME = 1e-6
"""Two values in SI this close are one."""
WAYS = {
    "x": ("rearward", "forward"),
    "z": ("up", "down"),
    "weight": ("heavier", "lighter"),
    "price": ("more", "less"),
    "weeks": ("later", "sooner"),
    "width": ("wider", "narrower"),
    "height": ("higher", "lower"),
}
OPENING_HAS = {"price": "cost", "weeks": ""}
"""What an opening itself calls a key of its reply; it has no lead time of its own."""
QUANTITY = {"price": "money", "weight": "mass"}


def since_order(question: Question, today: date, columns: int) -> tuple[list[Line], Answered]:
    """Return the page that holds the builder's reply against the order, and the answer as the rig stands."""
    now = answered(question, today)
    rig, document = now.reading.rig, now.reading.document
    order = rig.frame.framing.order if rig.frame.framing is not None else None
    found = lines_of(rig, document)
    if order is None and not found:
        raise NothingAsked("there is no order in this file; begin it with: set RIG frame.order.revision=A")
    title = " ".join(_title(order))
    lines = [plain(piece, "head") for piece in wrapped(clean(title), columns)]
    for line in found:
        for sentence in _sentences(line, document, now.units):
            lines += hanging(plain(f"  {clean(line.name)}: "), sentence, columns)
    if order is not None:
        lines += [row for one in _whole(order, found, now.units) for row in hanging(plain("  "), one, columns)]
    return lines + _going_on(now, found, today, columns), now


def lines_of(rig: Rig, document: Document) -> tuple[OrderLine, ...]:
    """Return the lines of a rig's order with what its options ask for as written."""
    order = rig.frame.framing.order if rig.frame.framing is not None else None
    asks = [option.asks for _, option in order.options if option.asks] if order is not None else []
    texts = tuple((path, text) for path in asks if isinstance(text := tree_at(document, path), str))
    return order_lines(order, (_asked(item) for item in rig.openings), texts)


def _asked(item: Item) -> AskedOpening:
    """Return an opening as it is asked for."""
    own = item.own if isinstance(item.own, Opening) else Opening()
    values: list[tuple[str, Band | str]] = []
    for key in OPENING_KEYS:
        if key in AXIS:
            edge = item.place.low_edge(AXIS[key])
            if edge != ANYWHERE and edge.known:
                values.append((key, edge))
        elif key == "side":
            values += [(key, item.words.side)] if item.words.side else []
        else:
            held = getattr(own, key)
            values += [(key, held)] if held is not None else []
    weight = item.words.weight.value if item.words.weight is not None else None
    values += [("price", exactly(item.words.cost))] if item.words.cost is not None else []
    values += [("weight", weight)] if weight is not None else []
    return AskedOpening(item.of, item.name, own.by, tuple(values), own.reply)


def _title(order: Order | None) -> Iterator[str]:
    yield f"Order {order.revision}" if order is not None and order.revision else "The order"
    if order is None:
        return
    if order.date is not None:
        yield f"of {order.date}"
    if order.to:
        yield f"to the {order.to}"
    if order.reply is not None and order.reply.date is not None:
        yield f"and the reply of {order.reply.date}"
    yield "by what is written:"


def _sentences(line: OrderLine, document: Document, units: HeaderUnits) -> Iterator[str]:
    """Yield what the builder says to one line."""
    note = f' ("{clean(line.note)}")' if line.note else ""
    if line.answer == "":
        yield "not answered yet"
        return
    if line.answer in ("yes", "no"):
        yield f"{'yes' if line.answer == 'yes' else 'NO, the builder does not'}{note}"
        note = ""
    told = [_difference(line, one, document, units) for one in line.replied]
    for number, one in enumerate(told):
        yield one + (note if number + 1 == len(told) else "")
    if not told and line.answer == "changed":
        yield f"changed, but no value is given{note}; write the builder's own, such as {clean(line.name)}.reply.x=17"


def _difference(line: OrderLine, one: Replied, document: Document, units: HeaderUnits) -> str:
    """Return one value of the reply beside what was asked, in the words it was written in."""
    given = _written(document, f"{line.of}.reply.{one.key}")
    if one.was:
        taken = "the rig goes on with that" if _agrees(one) else f"the rig now has {_own_text(line, one, document)}"
        return f"{one.key}: asked {clean(one.was)}, the builder says {given}; {taken}"
    if one.asked is None:
        return f"{one.key}: the builder says {given}; nothing had been asked"
    if _agrees(one):
        return f"{one.key}: {given}, as asked"
    return f"{one.key}: asked {_own_text(line, one, document)}, the builder says {given}{_by(one, units)}"


def _written(document: Document, path: str) -> str:
    text = tree_at(document, path)
    return clean(text) if isinstance(text, str) else "nothing"


def own_path(line: OrderLine, key: str) -> str:
    """Return the rig path of the value that a value of the reply stands against; nothing where the rig has no such."""
    if key == "value":
        return line.asks
    own = OPENING_HAS.get(key, key) if line.kind == "opening" else key
    return f"{line.of}.{own}" if own else ""


def _own_text(line: OrderLine, one: Replied, document: Document) -> str:
    return _written(document, own_path(line, one.key))


def _agrees(one: Replied) -> bool:
    """Return whether the rig has the builder's value."""
    if isinstance(one.asked, Band) and isinstance(one.given, Band):
        return one.asked.known and abs(one.asked.best - one.given.best) < SAME
    return one.asked == one.given


def _by(one: Replied, units: HeaderUnits) -> str:
    """Return how far the builder's value is from what was asked, in words."""
    if not (isinstance(one.asked, Band) and isinstance(one.given, Band) and one.asked.known and one.given.known):
        return ""
    by = one.given.best - one.asked.best
    ways = WAYS.get(one.key, ("more", "less"))
    way = ways[0] if by > 0.0 else ways[1]
    if one.key == "weeks":
        return f": {_weeks(abs(by))} {way}"
    quantity = QUANTITY.get(one.key, "length")
    return f": {show(abs(by), quantity, units, cuts=quantity == 'length')} {way}"


def _whole(order: Order, found: tuple[OrderLine, ...], units: HeaderUnits) -> Iterator[str]:
    """Yield what the order and the reply say as a whole: price, lead time, delivery."""
    asked, told = (_sum(order, found, "price", is_reply, units) for is_reply in (False, True))
    if asked is not None and told is not None:
        same = ", as asked" if abs(told - asked) < SAME else f": {show(abs(told - asked), 'money', units)} " + (
            "more" if told > asked else "less")  # fmt: skip
        yield f"price with its options: asked {show(asked, 'money', units)}, by the reply " \
              f"{show(told, 'money', units)}{same}"  # fmt: skip
    asked, told = (_sum(order, found, "weeks", is_reply, units) for is_reply in (False, True))
    if asked is not None and told is not None:
        by = told - asked
        same = ", as asked" if abs(by) < SAME else f": {_weeks(abs(by))} {'later' if by > 0.0 else 'sooner'}"
        yield f"lead time with its options: asked {_weeks(asked)}, by the reply {_weeks(told)}{same}"
    weight = [option.weight for _, option in order.options if option.weight is not None and _is_taken(option.reply)]
    if weight and all(band.known for band in weight):
        total = Band(sum(one.best for one in weight), sum(one.low for one in weight), sum(one.high for one in weight))
        yield f"the options that were not refused weigh {mass(total, units)} together"
    delivery = order.delivery
    if delivery is not None and delivery.reply is not None and delivery.reply.date is not None:
        if delivery.date is None:
            yield f"delivery: the builder says {delivery.reply.date}"
        else:
            days = (delivery.reply.date - delivery.date).days
            late = "as asked" if not days else f"{abs(days)} days {'later' if days > 0 else 'sooner'}"
            yield f"delivery: asked {delivery.date}, the builder says {delivery.reply.date}: {late}"


def _is_taken(reply: object) -> bool:
    return getattr(reply, "answer", "") != "no"


def _weeks(count: float) -> str:
    return f"{count:g} week{'' if count == 1.0 else 's'}"


def _sum(order: Order, found: tuple[OrderLine, ...], key: str, is_reply: bool, units: HeaderUnits) -> float | None:
    """Return price or lead time of the trailer with what its lines add, as asked or as replied.

    None where the trailer's own is not written.
    """
    replied = getattr(order.reply, key) if is_reply and order.reply is not None else None
    whole = replied if replied is not None else getattr(order, key)
    if whole is None or not whole.known:
        return None
    total: float = whole.best
    for line in found:
        if is_reply and line.answer == "no":
            continue
        told = next((one for one in line.replied if one.key == key), None)
        asked = asked_of(line, key, line.price if key == "price" else line.weeks, units)
        if told is not None and asked is None and isinstance(told.asked, Band) and not told.was:
            asked = told.asked  # of an opening, whose own price stands with it
        given = told.given if is_reply and told is not None else asked
        if isinstance(given, Band) and given.known:
            total += given.best
    return total


def adopting(found: tuple[OrderLine, ...], document: Document) -> list[str]:
    """Return the typed edits with which the owner goes on with the builder's values; what was asked is kept with them.

    A value the rig has already, one nothing had been asked of, and a line the builder refuses need none.
    """
    edits: list[str] = []
    for line in found:
        for one in line.replied:
            path = own_path(line, one.key)
            short = _short(document, line)
            if one.was or not path or _agrees(one) or line.answer == "no":
                continue
            typed = path if one.key == "value" else f"{short}{path.removeprefix(line.of)}"
            edits.append(f"{typed}={_written(document, f'{line.of}.reply.{one.key}')}")
            before = tree_at(document, path)
            if isinstance(before, str):
                edits.append(f"{short}.reply.was.{one.key}={before}")
            elif one.key in QUANTITY:  # nothing had been asked: the builder's value must not pass for the asked one
                edits.append(f"{short}.reply.was.{one.key}=unknown")
    return edits


def _short(document: Document, line: OrderLine) -> str:
    """Return how a line is typed: an opening by its name alone, unless something else is called so too."""
    homes = [section for section, name in document.numbers if name == line.name]
    return line.name if line.kind == "opening" and homes == ["openings"] else line.of


def _going_on(now: Answered, found: tuple[OrderLine, ...], today: date, columns: int) -> list[Line]:
    """Return what would change if the owner went on with the reply, and the command that does it."""
    document = now.reading.document
    edits = adopting(found, document)
    if not edits:
        return [(), *map(plain, wrapped("The rig has every value of the reply; nothing is to be decided.", columns))]
    changed = edited(now.reading, edits)
    after = answered_again(now, changed, today)
    lines: list[Line] = [(), plain("IF YOU GO ON WITH THE REPLY", "head"), *answer_lines(now, after, columns)]
    old, new = swept(now, today), swept(after, today)
    lines += finding_changes(old, new, after, columns)
    lines += reworded_lines(old, new, {line.of for line in found}, columns)
    typed = " ".join(map(at_the_shell, edits))
    says = "Until then the rig stays with what was asked. To go on with the reply: "
    path = clean(now.question.path)
    return [*lines, (), *hanging((), f"{says}boxwright set {path} {clean(typed)}", columns)]
