/** Where the things of the Balance stand: all bars have one scale, and what lifts is told from what carries. */
import type { Balance, Reaction } from "./contract";

/** The room of the beam (px): from where to where it lies, and how long the longest bar is. */
const LEFT = 34;
const WIDE = 252;
const LONGEST = 24;
/** A bar of almost nothing is still seen. */
const LEAST = 1.5;

export type Stood = { one: Reaction; x: number; tall: number; lifts: boolean };

/** Where the beam lies and every reaction stands (px). */
export function placed(balance: Balance): { front: number; rear: number; begins: number; up: Stood[]; down: Stood[] } {
  const low = Math.min(balance.coupler_mm, balance.front_mm);
  const x = (mm: number) => LEFT + ((mm - low) / (balance.rear_mm - low || 1)) * WIDE;
  const borne = balance.reactions.filter((one) => !one.is_down);
  const most = Math.max(...borne.map((one) => Math.abs(one.kg)), 1);
  const stood = (one: Reaction): Stood => ({ one, x: x(one.x_mm), tall: Math.max((Math.abs(one.kg) * LONGEST) / most, LEAST), lifts: one.kg < 0 });
  return {
    front: x(balance.front_mm),
    rear: x(balance.rear_mm),
    begins: x(balance.coupler_mm),
    up: borne.map(stood),
    down: balance.reactions.filter((one) => one.is_down).map(stood),
  };
}
