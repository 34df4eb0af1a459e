import type { Picture, Snap } from "./contract";

export type Shift = { x_mm: number; y_mm: number; z_mm: number };
export type Span = { low: number; high: number };
type Sign = Picture["right"] | Picture["up"];

export const NOT_MOVED: Shift = { x_mm: 0, y_mm: 0, z_mm: 0 };

/** A movement on the picture (mm, to the right and up) as a movement of the rig. */
export function shiftOf(right: Sign, up: Sign, dx: number, dy: number): Shift {
  const shift = { ...NOT_MOVED };
  const put = (axis: Sign, by: number) => {
    shift[`${axis[1]}_mm` as keyof Shift] += axis[0] === "-" ? -by : by;
  };
  put(right, dx);
  put(up, dy);
  return shift;
}

/** Where a thing catches: the least correction (mm) within reach that brings one of its edges or its middle to a line. */
export function caught(span: Span, by: number, lines: number[], reach: number): { by: number; line: number | null } {
  let best = reach;
  let found: { by: number; line: number | null } = { by, line: null };
  const spots = [span.low, span.high, (span.low + span.high) / 2];
  for (const line of lines)
    for (const spot of spots) {
      const off = line - (spot + by);
      if (Math.abs(off) < best) {
        best = Math.abs(off);
        found = { by: by + off, line };
      }
    }
  return found;
}

/** The lines of a picture's snaps along one of its axes, in the picture's own direction; none of the thing in hand. */
export function linesAlong(snaps: Snap[], axis: Sign, held = ""): { at: number; label: string }[] {
  const sign = axis[0] === "-" ? -1 : 1;
  return snaps.filter((one) => one.axis === axis[1] && (!held || one.of !== held)).map((one) => ({ at: sign * one.mm, label: one.label }));
}
