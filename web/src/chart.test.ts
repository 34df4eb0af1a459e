import { describe, expect, it } from "vitest";
import { barLabel } from "./chart";

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
