import { describe, expect, it } from "vitest";
import { blocksOf, chosenText } from "./blocks";

const BASE = "rig: A\nparts:\n  bed: {x: 1}\n  tank: {x: 2}\n  box: {x: 3}\n";

function sides(mine: string, theirs: string): { mine: string; theirs: string; open: number } {
  const blocks = blocksOf(mine, theirs);
  const every = (side: "mine" | "theirs") =>
    chosenText(blocks, new Map(blocks.flatMap((one, index) => (one.isDifferent ? [[index, side] as const] : []))));
  return { mine: every("mine"), theirs: every("theirs"), open: blocks.filter((one) => one.isDifferent).length };
}

describe("two texts as blocks", () => {
  it.each([
    ["one line other", BASE, BASE.replace("x: 2", "x: 9"), 1],
    ["two lines other", BASE.replace("x: 1", "x: 8"), BASE.replace("x: 3", "x: 9"), 2],
    ["lines put in", BASE, BASE.replace("  box", "  lamp: {x: 4}\n  fan: {x: 5}\n  box"), 1],
    ["a line taken out", BASE, BASE.replace("  tank: {x: 2}\n", ""), 1],
    ["nothing but one side", "", BASE, 1],
    ["no line in common", "a\nb\nc", "d\ne", 1],
    ["no last line end", BASE, BASE.trimEnd(), 1],
    ["the same", BASE, BASE, 0],
  ])("%s: either side as a whole can be had again", (_name, mine, theirs, open) => {
    expect(sides(mine, theirs)).toEqual({ mine, theirs, open });
  });

  it("say at which of my lines they begin", () => {
    const blocks = blocksOf(BASE.replace("x: 2", "x: 8"), BASE.replace("x: 2", "x: 9"));
    expect(blocks.filter((one) => one.isDifferent)).toEqual([
      { isDifferent: true, line: 4, mine: ["  tank: {x: 8}"], theirs: ["  tank: {x: 9}"] },
    ]);
  });

  it("can be chosen one by one", () => {
    const mine = BASE.replace("x: 1", "x: 8").replace("x: 3", "x: 8");
    const theirs = BASE.replace("x: 1", "x: 9").replace("x: 3", "x: 9");
    const blocks = blocksOf(mine, theirs);
    const open = blocks.flatMap((one, index) => (one.isDifferent ? [index] : []));
    const chosen = chosenText(blocks, new Map([[open[0] ?? 0, "mine"], [open[1] ?? 0, "theirs"]]));
    expect(chosen).toBe(BASE.replace("x: 1", "x: 8").replace("x: 3", "x: 9"));
  });
});

it("holds for any two texts of few words", () => {
  let seed = 1;
  const next = (below: number) => (seed = (seed * 48271) % 2147483647) % below;
  const some = () => Array.from({ length: next(9) }, () => "abc  "[next(5)]).join("\n");
  for (let round = 0; round < 3000; round += 1) {
    const [mine, theirs] = [some(), some()];
    expect(sides(mine, theirs), JSON.stringify([mine, theirs])).toMatchObject({ mine, theirs });
  }
});

describe("blocks are as small as they can be", () => {
  const same = (line: number, ...lines: string[]) => ({ isDifferent: false, line, mine: lines, theirs: lines });
  const other = (line: number, mine: string[], theirs: string[]) => ({ isDifferent: true, line, mine, theirs });

  it.each([
    ["lines only mine", "x\na\nb", "a\nb", [other(1, ["x"], []), same(2, "a", "b")]],
    ["lines only theirs", "a\nb", "x\ny\na\nb", [other(1, [], ["x", "y"]), same(1, "a", "b")]],
    ["other lines before the same ones", "x\na", "y\nz\na", [other(1, ["x"], ["y", "z"]), same(2, "a")]],
    ["other lines amid the same ones", "a\nx\nb\nc", "a\ny\nb\nc", [same(1, "a"), other(2, ["x"], ["y"]), same(3, "b", "c")]],
    ["lines taken out at the end", "a\nb\nc", "a", [same(1, "a"), other(2, ["b", "c"], [])]],
    ["empty lines are no hold", "x\n\na", "y\n\nz\na", [other(1, ["x", ""], ["y", "", "z"]), same(3, "a")]],
  ])("%s", (_name, mine, theirs, blocks) => {
    expect(blocksOf(mine, theirs)).toEqual(blocks);
  });
});
