import { describe, expect, it } from "vitest";
import { placed } from "./beam";
import type { Balance } from "./contract";

const one = (label: string, x_mm: number, kg: number, is_down = false) => ({ label, x_mm, kg, text: `${kg} kg`, is_down });
const balance = (ball: number): Balance => ({
  front_mm: 0, rear_mm: 4000, coupler_mm: -1000, says: "",
  reactions: [one("ball", -1000, ball), one("axle 1", 2000, 600), one("axle 2", 2500, 300), one("all", 1500, 1000, true)],
});

describe("the balance", () => {
  it("lies from the ball to the rear, with the box behind the ball", () => {
    const found = placed(balance(100));
    expect([found.begins, found.front, found.rear]).toEqual([34, 84.4, 286]);
    expect(found.down.map((each) => each.x)).toEqual([160]);
  });

  it("has one scale for all bars, the longest 24 px", () => {
    expect(placed(balance(100)).up.map((each) => each.tall)).toEqual([4, 24, 12]);
    expect(placed(balance(1)).up[0]?.tall).toBe(1.5);
  });

  it("tells a ball that is lifted from one that carries, with a bar just as long", () => {
    expect(placed(balance(100)).up.map((each) => each.lifts)).toEqual([false, false, false]);
    expect(placed(balance(-100)).up.map((each) => each.lifts)).toEqual([true, false, false]);
    expect(placed(balance(-100)).up[0]?.tall).toBe(4);
    expect(placed(balance(0)).up[0]?.lifts).toBe(false);
  });

  it("begins at the front of a box that reaches ahead of the ball", () => {
    const found = placed({ ...balance(100), front_mm: -2000 });
    expect([found.front, found.begins, found.rear]).toEqual([34, 76, 286]);
  });
});
