import { describe, expect, it } from "vitest";
import type { Chart } from "./contract";
import { areLong, bar, barLabel, boundLabels, nearest, type Point, pointsOf, rowsOf, saidAt, ticks } from "./plot";

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

const line = (label: string, y: (number | null)[], texts: string[]) => ({ label, y, low: y, high: y, texts });
const NIGHT: Chart = {
  name: "night", title: "A night", form: "through", unit: "F", labels: ["20 h", "", "22 h"], limits: [], of: ["", "", ""], says: "A night", low: 0, high: 40, step: 10, share: 1,
  series: [
    line("room", [32, null, 31], ["20 h, room: 32 F (27 to 35)", "", "22 h, room: 31 F"]),
    line("outside", [20, 19, null], ["20 h, outside: 20 F", "21 h, outside: 19 F", ""]),
  ],
};
const x = (index: number) => 100 * index;
const y = (value: number) => 40 - value;

describe("a bar", () => {
  it("stands on the lesser of its two numbers and reaches up to the greater", () => {
    expect(bar(10, 30, y)).toEqual({ top: 10, tall: 20 });
    expect(bar(30, 10, y)).toEqual({ top: 10, tall: 20 });
    expect(bar(30, 30, y)).toEqual({ top: 10, tall: 1 });
  });
});

describe("the points of a chart", () => {
  const points = pointsOf(NIGHT, x, y);

  it("are its known numbers, each with what it says", () => {
    expect(points.map((one) => [one.key, one.x, one.y])).toEqual([["0-0", 0, 8], ["0-2", 200, 9], ["1-0", 0, 20], ["1-1", 100, 21]]);
    expect(points[1]?.says).toBe("22 h, room: 31 F");
  });

  it("are found from anywhere on the chart: first along it, then up or down", () => {
    expect(nearest(points, 40, 12)?.key).toBe("0-0");
    expect(nearest(points, 40, 16)?.key).toBe("1-0");
    expect(nearest(points, 60, 0)?.key).toBe("1-1");
    expect(nearest(points, 900, 900)?.key).toBe("0-2");
  });

  it("say all that lies under one dot, each thing once, the one pointed at first", () => {
    const at = (key: string, x: number, y: number, says: string): Point => ({ key, series: 0, index: 0, x, y, says });
    const [low, high, away, aside, same] = [at("a", 100, 50, "low"), at("b", 100, 53.9, "high"), at("c", 100, 58, "away"), at("d", 104, 50, "aside"), at("e", 100, 50, "low")];
    const all = [low, high, away, aside, same];
    expect(saidAt(all, high)).toBe("high; low");
    expect(saidAt(all, low)).toBe("low; high");
    expect(saidAt(all, away)).toBe("away");
    expect(saidAt(all, aside)).toBe("aside");
    const [room, out] = [at("f", 0, 0, "20 h, room: 32 F"), at("g", 0, 1, "20 h, outside: 31 F")];
    expect(saidAt([room, out, at("h", 1, 1, "21 h, room: 31 F")], out)).toBe("20 h, outside: 31 F; room: 32 F; 21 h, room: 31 F");
  });

  it("stand in a table by place and line, and what is not known says so", () => {
    expect(rowsOf(NIGHT)).toEqual([
      { at: "20 h", cells: ["32 F (27 to 35)", "20 F"] },
      { at: "21 h", cells: ["not known", "19 F"] },
      { at: "22 h", cells: ["31 F", "not known"] },
    ]);
  });
});

describe("the name of a limit", () => {
  const level = (at: number) => [0, 100, 200, 300].map((x, index) => ({ key: `0-${index}`, series: 0, index, x, y: at, says: "" }));

  it("stands over its line, at its beginning", () => {
    expect(boundLabels([{ label: "drips: window", y: 100 }], level(40), 0, 300)).toEqual([{ x: 6, y: 95 }]);
  });

  it("goes under its line where a line of the chart runs over it", () => {
    expect(boundLabels([{ label: "drips: window", y: 100 }], level(92), 0, 300)).toEqual([{ x: 6, y: 113 }]);
  });

  it("goes along its line to where the chart's line is away from it", () => {
    const falls = [{ x: 0, y: 95 }, { x: 100, y: 95 }, { x: 200, y: 20 }, { x: 300, y: 20 }].map((one, index) => ({ key: `0-${index}`, series: 0, index, says: "", ...one }));
    const [found] = boundLabels([{ label: "drips", y: 100 }, { label: "wet", y: 110 }], falls, 0, 300);
    expect(found?.y).toBe(95);
    expect(found?.x).toBeGreaterThan(115);
  });

  it("does not stand between its line and another where it has a choice", () => {
    const [over, under] = boundLabels([{ label: "drips: window", y: 100 }, { label: "drips: corners", y: 118 }], level(40), 0, 300);
    expect(over?.y).toBeLessThan(100);
    expect(under?.y).toBeGreaterThan(118);
  });

  it("lies on no other name", () => {
    const [one, other] = boundLabels([{ label: "drips: window", y: 100 }, { label: "drips: hatch", y: 103 }], [], 0, 300);
    expect(Math.abs((one?.y ?? 0) - (other?.y ?? 0)) >= 13 || Math.abs((one?.x ?? 0) - (other?.x ?? 0)) > 80).toBe(true);
  });

  it("makes room for the name of another limit at the same height", () => {
    expect(boundLabels([{ label: "drips: window", y: 100 }, { label: "drips: hatch", y: 100 }], [], 0, 120).map((one) => one.y)).toEqual([95, 113]);
  });

  it("is not cut off by the top of the chart", () => {
    expect(boundLabels([{ label: "plate", y: 29 }], [], 0, 300)[0]?.y).toBe(42);
    expect(boundLabels([{ label: "plate", y: 30 }], [], 0, 300)[0]?.y).toBe(25);
  });
});
