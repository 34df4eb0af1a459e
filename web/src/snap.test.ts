import { describe, expect, it } from "vitest";
import { caught, linesAlong, shiftOf } from "./snap";

describe("a movement on a picture is a movement of the rig", () => {
  it.each([
    ["+x", "+y", { x_mm: 3, y_mm: 4, z_mm: 0 }],
    ["-x", "+z", { x_mm: -3, y_mm: 0, z_mm: 4 }],
    ["-y", "+z", { x_mm: 0, y_mm: -3, z_mm: 4 }],
    ["+y", "+z", { x_mm: 0, y_mm: 3, z_mm: 4 }],
  ] as const)("right %s, up %s", (right, up, shift) => {
    expect(shiftOf(right, up, 3, 4)).toEqual(shift);
  });
});

describe("a thing catches on a line", () => {
  const span = { low: 100, high: 300 };

  it("with its low edge, its high edge and its middle", () => {
    expect(caught(span, 0, [104], 8)).toEqual({ by: 4, line: 104 });
    expect(caught(span, 0, [297], 8)).toEqual({ by: -3, line: 297 });
    expect(caught(span, 0, [205], 8)).toEqual({ by: 5, line: 205 });
  });

  it("on the nearest of several, whatever their order", () => {
    expect(caught(span, 10, [105, 112], 8)).toEqual({ by: 12, line: 112 });
    expect(caught(span, 10, [112, 105], 8)).toEqual({ by: 12, line: 112 });
  });

  it("only within reach, and never with a reach of nothing", () => {
    expect(caught(span, 0, [108], 8)).toEqual({ by: 0, line: null });
    expect(caught(span, 0, [107.9], 8).line).toBe(107.9);
    expect(caught(span, 0, [101], 0)).toEqual({ by: 0, line: null });
  });

  it("stays where it is when nothing is drawn to catch on", () => {
    expect(caught(span, 42, [], 8)).toEqual({ by: 42, line: null });
  });
});

it("turns the lines round where the picture shows the axis the other way round", () => {
  const snaps = [
    { axis: "x", mm: 400, label: "stud 1", of: "" },
    { axis: "z", mm: 50, label: "floor", of: "parts[box]" },
  ] as const;
  expect(linesAlong([...snaps], "-x")).toEqual([{ at: -400, label: "stud 1" }]);
  expect(linesAlong([...snaps], "+x")).toEqual([{ at: 400, label: "stud 1" }]);
  expect(linesAlong([...snaps], "+z")).toEqual([{ at: 50, label: "floor" }]);
  expect(linesAlong([...snaps], "+y")).toEqual([]);
  expect(linesAlong([...snaps], "+z", "parts[box]")).toEqual([]);
  expect(linesAlong([...snaps], "+x", "parts[box]")).toHaveLength(1);
});
