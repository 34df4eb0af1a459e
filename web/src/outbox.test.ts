import { describe, expect, it } from "vitest";
import { Outbox, type Said } from "./outbox";

type Sent = { seq: number; base: number; t: string; of?: string; x_mm?: number };

function line(rev = () => 7) {
  const sent: Sent[] = [];
  const box = new Outbox((message) => sent.push(JSON.parse(message) as Sent), rev);
  box.open(0);
  return { box, sent, kinds: () => sent.map((one) => one.t) };
}
const move = (x_mm: number): Said => ({ t: "move", of: "parts[bed]", x_mm, y_mm: 0, z_mm: 0 });
const hello: Said = { t: "hello", contract: 1, screen: "plan", slot: {} };
const drop = (x_mm: number): Said => ({ t: "drop", of: "parts[bed]", x_mm, y_mm: 0, z_mm: 0 });

describe("one message under way", () => {
  it("sends the first at once, with its number and the revision it is based on", () => {
    const { box, sent } = line();
    box.put(drop(1));
    expect(sent).toEqual([{ t: "drop", of: "parts[bed]", x_mm: 1, y_mm: 0, z_mm: 0, seq: 1, base: 7 }]);
  });

  it("keeps of the previews that wait only the newest", () => {
    const { box, sent } = line();
    for (let x = 0; x < 60; x += 1) box.put(move(x));
    expect(sent.map((one) => one.x_mm)).toEqual([0]);
    box.answered(1);
    expect(sent.map((one) => one.x_mm)).toEqual([0, 59]);
    box.answered(2);
    expect(sent).toHaveLength(2);
  });

  it("loses no edit and keeps their order", () => {
    const { box, sent } = line();
    for (let x = 0; x < 20; x += 1) box.put(drop(x));
    for (let seq = 1; seq <= 20; seq += 1) box.answered(seq);
    expect(sent.map((one) => one.x_mm)).toEqual([...Array(20).keys()]);
  });

  it("throws away the preview that an edit ends", () => {
    const { box, kinds } = line();
    box.put(move(1));
    box.put(move(2));
    box.put(drop(3));
    box.answered(1);
    box.answered(2);
    expect(kinds()).toEqual(["move", "drop"]);
  });

  it("throws it away on a cancel too, so that nothing moves after Escape", () => {
    const { box, kinds } = line();
    box.put(move(1));
    box.put(move(2));
    box.put({ t: "cancel" });
    box.answered(1);
    box.answered(2);
    expect(kinds()).toEqual(["move", "cancel"]);
  });

  it("lets edits pass before a preview that came after them", () => {
    const { box, kinds } = line();
    box.put(drop(1));
    box.put({ t: "undo" });
    box.put(move(2));
    box.answered(1);
    box.answered(2);
    expect(kinds()).toEqual(["drop", "undo", "move"]);
  });

  it("does not take an answer to something older for the one it waits for", () => {
    const { box, sent } = line();
    box.put(drop(1));
    box.put(drop(2));
    box.put(drop(3));
    box.answered(1);
    box.answered(1);
    box.answered(0);
    expect(sent.map((one) => one.x_mm)).toEqual([1, 2]);
    expect(box.isBusy).toBe(true);
  });
});

it("does not wait for an answer to what is only looked at", () => {
  const { box, kinds } = line();
  box.put({ t: "look", screen: "plan", slot: {} });
  box.put({ load: "", use: "tow", t: "seek", code: "weight/tips-up", where: "" });
  box.put(drop(1));
  expect(kinds()).toEqual(["look", "seek", "drop"]);
});

it("sends what waited behind a look together with it", () => {
  const { box, kinds } = line();
  box.put(drop(1));
  box.put({ t: "look", screen: "plan", slot: {} });
  box.put(drop(2));
  expect(kinds()).toEqual(["drop"]);
  box.answered(1);
  expect(kinds()).toEqual(["drop", "look", "drop"]);
});

it("takes the revision of the moment of sending, for what was drawn last", () => {
  let rev = 7;
  const { box, sent } = line(() => rev);
  box.put(drop(1));
  box.put(drop(2));
  rev = 8;
  box.answered(1);
  expect(sent.map((one) => one.base)).toEqual([7, 8]);
});

describe("a line that was lost and is back", () => {
  const cut = (heard: number | null, ...before: Said[]) => {
    const found = line();
    for (const one of before) found.box.put(one);
    found.sent.length = 0;
    found.box.close();
    return { ...found, back: () => found.box.open(heard) };
  };

  it("goes on with what waited, and sends nothing before the program is met", () => {
    const { box, sent, back } = cut(1, drop(1), drop(2));
    box.put(drop(3));
    box.greet(hello);
    expect(sent.map((one) => one.t)).toEqual(["hello"]);
    expect(back()).toBeNull();
    box.answered(box.newest);
    expect(sent.map((one) => one.x_mm ?? one.t)).toEqual(["hello", 2, 3]);
  });

  it("sends once more what did not get there, first and under a number of its own", () => {
    const { sent, back, box } = cut(0, drop(1), drop(2));
    expect(back()).toBeNull();
    box.answered(box.newest);
    expect(sent.map((one) => [one.x_mm, one.seq])).toEqual([[1, 2], [2, 3]]);
  });

  it("does not send twice what was handled though its answer was lost", () => {
    const { sent, back } = cut(1, drop(1));
    expect(back()).toBeNull();
    expect(sent).toEqual([]);
  });

  it("says what may have got to a program that is no more, and does not do it twice", () => {
    const { sent, back } = cut(null, drop(1), drop(2));
    expect(back()).toEqual(drop(1));
    expect(sent.map((one) => one.x_mm)).toEqual([2]);
  });

  it("bases what waits on the text of the new program, not on one that only the old one knew", () => {
    const { sent, back, box } = cut(null, { t: "undo" });
    box.put({ ...drop(2), base: 3 } as Said);
    back();
    expect(sent.map((one) => [one.t, one.base])).toEqual([["drop", 7]]);
  });

  it("keeps the revision a gesture was based on while the program is the same", () => {
    const { sent, back, box } = cut(1, { t: "undo" });
    box.put({ ...drop(2), base: 3 } as Said);
    back();
    expect(sent.map((one) => [one.t, one.base])).toEqual([["drop", 3]]);
  });

  it("has nothing in doubt where nothing was under way, or only a preview, a cancel or typing", () => {
    expect(cut(null).back()).toBeNull();
    expect(cut(null, move(1)).back()).toBeNull();
    expect(cut(null, { t: "cancel" }).back()).toBeNull();
    expect(cut(0, { t: "text", changes: [] }).back()).toBeNull();
  });

  it("forgets previews: no hand holds anything over a line that is gone", () => {
    const { box, sent, back } = cut(1, drop(1), move(2));
    box.put(move(3));
    back();
    expect(sent).toEqual([]);
  });

  it("does not send what its owner was told is lost", () => {
    const said = drop(1), waits = drop(2);
    const { box, sent, back } = cut(0, said, waits);
    box.letGo(said);
    box.letGo(waits);
    expect(back()).toBeNull();
    expect(sent).toEqual([]);
  });
});

it("says typing that was not answered once more on a new line, whoever is there", () => {
  for (const heard of [null, 0, 99]) {
    const { box, kinds } = line();
    box.put({ t: "rejoin", typed: { under: [], waits: [] } });
    box.put(drop(1));
    box.close();
    box.open(heard);
    box.answered(box.newest);
    expect(kinds()).toEqual(["rejoin", "rejoin", "drop"]);
  }
});

it("tells what is not answered, in order and numbered as it would be sent", () => {
  const { box, sent } = line();
  box.put(drop(1));
  box.put({ t: "text", changes: [] });
  box.put(drop(2));
  box.put(move(3));
  expect(box.rest().map((one) => [one.t, one.seq])).toEqual([["drop", 1], ["drop", 3]]);
  box.answered(1);
  box.answered(2);
  expect(sent.at(-1)).toMatchObject({ t: "drop", seq: 3, x_mm: 2 });
  box.answered(3);
  expect(box.rest()).toEqual([]);
});

it("knows a refusal of typing from one of anything else", () => {
  const { box } = line();
  box.put({ t: "text", changes: [] });
  box.put({ t: "look", screen: "plan", slot: {} });
  expect([box.isTyping(0), box.isTyping(1), box.isTyping(2)]).toEqual([false, true, false]);
  box.answered(1);
  box.put(drop(1));
  expect(box.isTyping(box.newest)).toBe(false);
});

it("numbers never repeat", () => {
  const { box, sent } = line();
  for (let x = 0; x < 9; x += 1) {
    box.put(x % 2 ? move(x) : drop(x));
    box.answered(box.newest);
  }
  expect(new Set(sent.map((one) => one.seq)).size).toBe(9);
  expect(box.newest).toBe(9);
});
