import { describe, expect, it } from "vitest";
import { areLong, barLabel, ticks } from "./chart";

describe("the number of a bar", () => {
  it("stands over its bar", () => {
    expect(barLabel(100, 300, [])).toBe(95);
    expect(barLabel(100, 300, [40, 200])).toBe(95);
  });

  it("is never struck through by a limit", () => {
    for (let top = 20; top < 280; top += 1)
      for (const limit of [60, 100, 101, 240]) {
        const base = barLabel(top, 300, [limit]);
        expect(limit <= base - 13 || limit >= base + 4).toBe(true);
      }
  });

  it("stands over the line where its bar is too low to hold it", () => {
    expect(barLabel(100, 104, [92])).toBe(87);
  });
});

describe("the numbers at an axis", () => {
  it("are the multiples of its step, and nought has no sign", () => {
    expect(ticks(0, 44, 20)).toEqual([0, 20, 40]);
    expect(ticks(-25, 134, 25)).toEqual([-25, 0, 25, 50, 75, 100, 125]);
    expect(Object.is(ticks(0, 1, 0.5)[0], 0)).toBe(true);
  });
});

describe("what stands under a chart", () => {
  it("lies level as long as it has room", () => {
    const hours = ["20 h", "", "", "23 h", "", "", "2 h"];
    expect(areLong(hours, 24)).toBe(false);
    expect(areLong(hours, 9)).toBe(true);
    expect(areLong(["measure", "safe", "wire"], 40)).toBe(true);
    expect(areLong(["", "", ""], 1)).toBe(false);
  });
});
