import { describe, expect, it } from "vitest";
import { scaleFor } from "./paper";

describe("a sheet on paper", () => {
  it("is as large as the page takes it, at a round scale", () => {
    expect(scaleFor(5700, 2900)).toBe(25);
    expect(scaleFor(5100, 2400)).toBe(20);
    expect(scaleFor(2000, 3100)).toBe(30);
    expect(scaleFor(120, 80)).toBe(1);
  });

  it("always fits, however long", () => {
    expect(scaleFor(25_500, 100)).toBe(100);
    expect(scaleFor(26_000, 100)).toBe(200);
  });
});
