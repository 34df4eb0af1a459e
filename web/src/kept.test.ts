import { describe, expect, it } from "vitest";
import { keepTyped, keptSlot, takeTyped } from "./kept";

function store() {
  const held = new Map<string, string>();
  return {
    held,
    get length() {
      return held.size;
    },
    key: (at: number) => [...held.keys()][at] ?? null,
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => void held.set(key, value),
    removeItem: (key: string) => void held.delete(key),
  };
}
const typed = (insert: string) => ({ base: 0, known: "rig: A", under: [], waits: [{ start: 0, end: 0, insert }] });

describe("what was typed and could be told nobody", () => {
  it("is taken once", () => {
    const kept = store();
    keepTyped(kept, "aa", "one", typed("x"));
    expect(takeTyped(kept, "aa")).toEqual([typed("x")]);
    expect(takeTyped(kept, "aa")).toEqual([]);
    expect(kept.held.size).toBe(0);
  });

  it("is not that of another rig, though its place begins alike", () => {
    const kept = store();
    keepTyped(kept, "aab", "one", typed("x"));
    kept.setItem("theme", "dark");
    expect(takeTyped(kept, "aa")).toEqual([]);
    expect(takeTyped(kept, "aab")).toEqual([typed("x")]);
    expect([...kept.held.keys()]).toEqual(["theme"]);
  });

  it("of two pages stays both", () => {
    const kept = store();
    keepTyped(kept, "aa", "one", typed("x"));
    keepTyped(kept, "aa", "two", typed("y"));
    expect(takeTyped(kept, "aa")).toEqual([typed("x"), typed("y")]);
  });

  it("that cannot be read stands in nobody's way", () => {
    const kept = store();
    kept.setItem("typed aa one", "{half");
    keepTyped(kept, "aa", "two", typed("y"));
    expect(takeTyped(kept, "aa")).toEqual([typed("y")]);
    expect(kept.held.size).toBe(0);
  });
});

describe("what was looked at in this tab", () => {
  it.each([
    ['{"stage":"finish","load":"full","vehicle":"van"}', { stage: "finish", load: "full", vehicle: "van" }],
    ['{"stage":"finish","other":1}', { stage: "finish", load: "", vehicle: "" }],
    ['{"stage":7,"load":null,"vehicle":"van"}', { stage: "", load: "", vehicle: "van" }],
    ["{half", { stage: "", load: "", vehicle: "" }],
    ["null", { stage: "", load: "", vehicle: "" }],
    [null, { stage: "", load: "", vehicle: "" }],
  ])("%s is read as far as it can be", (kept, slot) => {
    expect(keptSlot(kept)).toEqual(slot);
  });
});
