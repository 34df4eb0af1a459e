"""Written keys of an order: what is asked of the trailer's builder, and the reply as it came.

What was asked stands where it always stands: an opening under ``openings``, the studs under ``frame``. A reply stands
beside it and changes nothing; the owner goes on with it by changing the number itself.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, model_validator

from boxwright.model.each import Alone
from boxwright.model.entry import NO, YES, Day, Entry, read_pairs
from boxwright.records import dataclass
from boxwright.units import Band, KilogramBand, MetreBand, MoneyBand, RatioBand

Answer = Literal["yes", "no", "changed", ""]
CHANGED = frozenset({"changed", "other", "otherwise"})


def read_answer(given: object) -> object:
    """Return yes, no, changed or "" (no answer yet) for what a builder's reply says."""
    word = str(given).strip().lower()
    if word in YES or word in {"ok", "agreed"}:
        return "yes"
    if word in NO:
        return "no"
    if word in CHANGED:
        return "changed"
    if word in {"", "unknown", "?"}:
        return ""
    raise ValueError(f'cannot read the reply "{given}"; write it as yes, no, or the builder\'s own values: {{x: 17}}')


class Reply(Entry):
    """What the trailer's builder answers to one line: yes, no, or the values the builder gives instead.

    ``was`` keeps, key by key, what had been asked, once the owner has gone on with the builder's value.
    """

    answer: Annotated[Answer, BeforeValidator(read_answer)] = Field("", description="yes, no or changed")
    x: MetreBand | None = Field(None, description="front edge behind the front stud face, such as 17")
    side: str = Field("", description="where across the trailer, such as centre or left+6")
    z: MetreBand | None = Field(None, description="lower edge above the deck, such as 36")
    width: MetreBand | None = Field(None, description="rough opening along the wall, such as 31 1/2")
    height: MetreBand | None = Field(None, description="rough opening up the wall, such as 72")
    across: MetreBand | None = Field(None, description="across the trailer, of a hole in the roof, such as 14 1/2")
    value: str = Field("", description="the builder's own value of what an option asks for, such as 24")
    price: MoneyBand | None = Field(None, description="the builder's price, such as 95")
    weight: KilogramBand | None = Field(None, description="what it weighs, such as 4")
    weeks: RatioBand | None = Field(None, description="lead time in weeks, such as 6..8")
    on: Day = Field(None, description="the day of the reply, such as 2025-11-03")
    note: str = Field("", description="the reply in words")
    was: Annotated[tuple[tuple[str, str], ...], BeforeValidator(read_pairs)] = Field(
        (), description="what was asked before the builder's value was taken, such as {x: 16 1/2}"
    )

    @model_validator(mode="before")
    @classmethod
    def _values_are_a_change(cls, given: object) -> object:
        """Take a reply that gives a value without saying yes or no as one that changes something.

        ``no, 2 in rearward`` is a no with its words as note; a yes with more words changes something.
        """
        if isinstance(given, Mapping) and isinstance(given.get("answer"), str) and "note" not in given:
            word, comma, rest = given["answer"].partition(",")
            word = word.strip().lower()
            if comma and rest.strip() and word in YES | NO | CHANGED:
                return {**given, "answer": "no" if word in NO else "changed", "note": rest.strip()}
        if isinstance(given, Mapping) and "answer" not in given and any(key in given for key in REPLIED_KEYS):
            return {**given, "answer": "changed"}
        return given


REPLIED_KEYS = ("x", "side", "z", "width", "height", "across", "value", "price", "weight", "weeks")
"""The keys of a reply that stand against what was asked, in the order they are told."""

OPENING_KEYS = ("x", "side", "z", "width", "height", "across")
"""Those of them that an opening has itself."""

WrittenReply = Annotated[Reply, Alone("answer")]


class Option(Entry):
    """One line of the order that is no opening: what it is, and what it changes in price, weight and lead time."""

    what: str = Field("", description="in words, such as no lining inside")
    asks: str = Field("", description="the value of this file that the line asks for, such as frame.studs.every")
    price: MoneyBand | None = Field(None, description="what it adds to the price, or takes off it, such as -180")
    weight: KilogramBand | None = Field(None, description="what it weighs, such as 22")
    weeks: RatioBand | None = Field(None, description="what it adds to the lead time in weeks, such as 2")
    reply: WrittenReply | None = Field(None, description="yes, no, or the builder's own values, such as {price: 95}")


class DeliveryReply(Entry):
    """The day and the place the builder names."""

    date: Day = Field(None, description="the day the builder names, such as 2026-01-23")
    at: str = Field("", description="the place the builder names")
    note: str = Field("", description="the reply in words")


class Delivery(Entry):
    """Where and when the trailer is handed over."""

    at: str = Field("", description="where, such as builder's yard")
    date: Day = Field(None, description="the day asked for, such as 2026-01-16")
    reply: Annotated[DeliveryReply, Alone("date")] | None = Field(
        None, description="the day the builder names, such as 2026-01-23"
    )


def read_named(given: object) -> object:
    """Return the pairs of a map of named things, so that an entry stays hashable."""
    if isinstance(given, Mapping):
        return tuple(given.items())
    if isinstance(given, str):
        says = f'cannot read the options "{given}"; write them as options: {{bare: {{what: no lining inside}}}}'
        raise ValueError(says)
    return given


class OrderReply(Entry):
    """The reply to the order as a whole: its day, and the price and lead time of the bare trailer."""

    date: Day = Field(None, description="the day of the reply, such as 2025-10-27")
    price: MoneyBand | None = Field(None, description="of the bare trailer, such as 7550")
    weeks: RatioBand | None = Field(None, description="lead time in weeks, such as 10")
    note: str = Field("", description="the reply in words")


class Order(Entry):
    """The order: its revision, whom it goes to, the delivery and the options; the openings stand for themselves."""

    revision: str = Field("", description="a letter that moves on with each sending, such as B")
    date: Day = Field(None, description="the day it was sent, such as 2025-10-20")
    to: str = Field("", description="a role, not a name, such as trailer builder")
    price: MoneyBand | None = Field(None, description="of the bare trailer, without the options, such as 7400")
    weeks: RatioBand | None = Field(None, description="lead time in weeks, without the options, such as 8")
    delivery: Annotated[Delivery, Alone("date")] | None = Field(
        None, description="such as {date: 2026-01-16, at: builder's yard}"
    )
    options: Annotated[tuple[tuple[str, Option], ...], BeforeValidator(read_named)] = Field(
        (), description="lines by name, such as bare: {what: no lining inside, price: -180, weeks: 0}"
    )
    reply: Annotated[OrderReply, Alone("date")] | None = Field(
        None, description="the reply to the whole, such as {date: 2025-10-27, price: 7550}"
    )
    note: str = Field("", description="anything else the builder should read")


@dataclass(frozen=True, slots=True)
class AskedOpening:
    """An opening as it is asked for: its rig path, its name, who makes it, its edges and size (m), and the reply.

    ``values`` are its own by the keys of `OPENING_KEYS`: lengths, or a text where a place is written as words.
    """

    of: str
    name: str
    by: str
    values: tuple[tuple[str, Band | str], ...]
    reply: Reply | None


@dataclass(frozen=True, slots=True)
class Replied:
    """One value the builder gives, beside what the rig asks for and what had been asked before it was taken over.

    ``key`` is one of `REPLIED_KEYS`. ``asked`` is None where the rig has no such value. ``was`` is the text asked for
    before the owner went on with the builder's value; empty where the owner has not.
    """

    key: str
    asked: Band | str | None
    given: Band | str
    was: str


@dataclass(frozen=True, slots=True)
class OrderLine:
    """One line of the order sheet with its reply. ``answer`` is empty where none has come.

    ``of`` is its rig path. Price, weight and weeks are those asked for. ``asks`` is the rig path an option asks the
    value of.
    """

    of: str
    name: str
    kind: Literal["opening", "option"]
    what: str
    asks: str
    price: Band | None
    weight: Band | None
    weeks: Band | None
    answer: Answer
    note: str
    on: date | None
    replied: tuple[Replied, ...]


def is_ordered(opening: AskedOpening, order: Order | None) -> bool:
    """Return whether an opening is a line of the order: the builder makes it, or has answered to it."""
    by = opening.by.strip().lower()
    return opening.reply is not None or "builder" in by or (order is not None and bool(by) and by == order.to.lower())


def order_lines(
    order: Order | None, openings: Iterable[AskedOpening], texts: tuple[tuple[str, str], ...] = ()
) -> tuple[OrderLine, ...]:
    """Return every line of the order sheet: the openings the builder makes, then the options.

    ``texts`` gives what stands at a rig path, as written, for the options that ask for a value of the file.
    """
    found = [_opening_line(one) for one in openings if is_ordered(one, order)]
    at = dict(texts)
    for name, option in order.options if order is not None else ():
        own: dict[str, Band | str | None] = {"price": option.price, "weight": option.weight, "weeks": option.weeks}
        own["value"] = at.get(option.asks) if option.asks else None
        reply = option.reply
        found.append(
            OrderLine(
                f"frame.order.options.{name}", name, "option", option.what, option.asks,
                option.price, option.weight, option.weeks,
                reply.answer if reply else "", reply.note if reply else "", reply.on if reply else None,
                _replied(reply, own),
            )
        )  # fmt: skip
    return tuple(found)


def _opening_line(one: AskedOpening) -> OrderLine:
    reply = one.reply
    return OrderLine(
        one.of, one.name, "opening", "", "", None, None, None,
        reply.answer if reply else "", reply.note if reply else "", reply.on if reply else None,
        _replied(reply, dict(one.values)),
    )  # fmt: skip


def _replied(reply: Reply | None, own: Mapping[str, Band | str | None]) -> tuple[Replied, ...]:
    """Return every value of a reply beside the rig's own."""
    if reply is None:
        return ()
    was = dict(reply.was)
    return tuple(
        Replied(key, own.get(key), given, was.get(key, ""))
        for key in REPLIED_KEYS
        if (given := getattr(reply, key)) not in (None, "")
    )
