import { describe, expect, it } from "vitest";
import { ALONG_A_LINE, AMONG_THINGS, BETWEEN_LINES, goneTo, oneStop } from "./roving";

const ALL = ["bed", "fridge", "tools"];

describe("going between things", () => {
  it("goes one on and one back, and stays at the ends", () => {
    expect(goneTo(ALL, "bed", "PageDown", AMONG_THINGS)).toBe("fridge");
    expect(goneTo(ALL, "fridge", ".", AMONG_THINGS)).toBe("tools");
    expect(goneTo(ALL, "tools", "PageDown", AMONG_THINGS)).toBe("tools");
    expect(goneTo(ALL, "tools", "PageUp", AMONG_THINGS)).toBe("fridge");
    expect(goneTo(ALL, "fridge", ",", AMONG_THINGS)).toBe("bed");
    expect(goneTo(ALL, "bed", ",", AMONG_THINGS)).toBe("bed");
  });

  it("goes to either end", () => {
    expect(goneTo(ALL, "fridge", "End", AMONG_THINGS)).toBe("tools");
    expect(goneTo(ALL, "fridge", "Home", AMONG_THINGS)).toBe("bed");
  });

  it("leaves the arrows to what they move on a sheet, and takes them on a chart", () => {
    expect(goneTo(ALL, "bed", "ArrowRight", AMONG_THINGS)).toBeUndefined();
    expect(goneTo(ALL, "bed", "ArrowRight", ALONG_A_LINE)).toBe("fridge");
    expect(goneTo(ALL, "tools", "ArrowLeft", ALONG_A_LINE)).toBe("fridge");
    expect(goneTo(ALL, "fridge", "End", ALONG_A_LINE)).toBe("tools");
    expect(goneTo(ALL, "bed", "ArrowDown", BETWEEN_LINES)).toBe("fridge");
    expect(goneTo(ALL, "tools", "ArrowUp", BETWEEN_LINES)).toBe("fridge");
    expect(goneTo(ALL, "bed", "ArrowDown", ALONG_A_LINE)).toBeUndefined();
  });

  it("leaves one of many to Tab", () => {
    const made = ALL.map(() => ({ stop: "", setAttribute(_: string, value: string) { this.stop = value; } }));
    oneStop(made as unknown as Element[], made[1] as unknown as Element);
    expect(made.map((one) => one.stop)).toEqual(["-1", "0", "-1"]);
  });
});
