/** Where the things of a chart stand: pure geometry and words, so that it can be tried without a page. */
import type { Chart, Series } from "./contract";

/** How wide a letter is, nearly (px). */
const LETTER = 6.5;
/** How high the letters of a number or a name are (px). */
const LETTERS = 13;
/** How far a dot reaches (px). */
export const DOT = 4;

/** A number of a chart: whose it is, where it stands (px), and what it says. */
export type Point = { key: string; series: number; index: number; x: number; y: number; says: string };
type Place = (value: number) => number;

/** The multiples of a step from low to high. */
export function ticks(low: number, high: number, step: number): number[] {
  const found: number[] = [];
  for (let at = Math.ceil(low / step - 1e-9) + 0; at * step <= high + step * 1e-6; at += 1) found.push(at * step + 0);
  return found;
}

/** Whether what stands under a chart has no room side by side: of labels that are told, so many places apart. */
export function areLong(labels: readonly string[], wide: number): boolean {
  const told = labels.flatMap((one, index) => (one ? [index] : []));
  const apart = Math.min(...told.slice(1).map((one, index) => one - (told[index] ?? 0)));
  return Math.max(0, ...labels.map((one) => one.length)) * LETTER + LETTER > wide * apart;
}

/** A line through the known numbers of a series. */
export function line(series: Series, x: Place, y: Place): string {
  let path = "";
  series.y.forEach((value, index) => {
    if (value !== null) path += `${path && series.y[index - 1] !== null ? "L" : "M"}${x(index)} ${y(value)}`;
  });
  return path;
}

/** The area between the ends of each number's doubt, as far as both ends are known. */
export function doubt(series: Series, x: Place, y: Place): string {
  let path = "";
  for (let index = 0; index + 1 < series.y.length; index += 1) {
    const [low, next, high, after] = [series.low[index], series.low[index + 1], series.high[index], series.high[index + 1]];
    if (low == null || next == null || high == null || after == null) continue;
    path += `M${x(index)} ${y(low)}L${x(index + 1)} ${y(next)}L${x(index + 1)} ${y(after)}L${x(index)} ${y(high)}Z`;
  }
  return path;
}

/** A bar from one number to another, whichever is the greater: the upper edge and how high it is, a line at least. */
export function bar(from: number, to: number, y: Place): { top: number; tall: number } {
  const top = Math.min(y(from), y(to));
  return { top, tall: Math.max(Math.max(y(from), y(to)) - top, 1) };
}

/** Every known number of a chart. */
export function pointsOf(chart: Chart, x: Place, y: Place): Point[] {
  return chart.series.flatMap((one, series) => one.y.flatMap((value, index) => value === null ? []
    : [{ key: `${series}-${index}`, series, index, x: x(index), y: y(value), says: one.texts[index] || `${chart.labels[index] ?? ""} ${one.label}`.trim() }]));
}

/** The number nearest to a spot: the nearest place along the chart, and of several there the nearest up or down. */
export function nearest(points: readonly Point[], x: number, y: number): Point | undefined {
  const away = Math.min(...points.map((one) => Math.abs(one.x - x)));
  const there = points.filter((one) => Math.abs(one.x - x) < away + 0.5);
  return there.toSorted((one, other) => Math.abs(one.y - y) - Math.abs(other.y - y))[0];
}

/** What is said where a number stands: by it, and by each other that its dot covers or is covered by: the place they have in common once. */
export function saidAt(points: readonly Point[], one: Point): string {
  const covered = points.filter((other) => other !== one && Math.hypot(other.x - one.x, other.y - one.y) < DOT);
  const at = one.says.slice(0, one.says.indexOf(", ") + 2);
  const others = covered.map((each) => each.says).filter((says) => says !== one.says);
  return [one.says, ...new Set(others.map((says) => (at.length > 1 && says.startsWith(at) ? says.slice(at.length) : says)))].join("; ");
}

/** The numbers of a chart as a table: a row for each place along it, a column for each line. */
export function rowsOf(chart: Chart): { at: string; cells: string[] }[] {
  return chart.labels.flatMap((label, index) => {
    const told = chart.series.map((one) => {
      const text = one.texts[index] ?? "";
      const cut = text.lastIndexOf(": ");
      return { at: (cut < 0 ? "" : text.slice(0, cut)).replace(`, ${one.label}`, ""), cell: cut < 0 ? text : text.slice(cut + 2) };
    });
    const at = label || told.find((one) => one.at)?.at || "";
    return told.some((one) => one.cell) ? [{ at, cells: told.map((one) => one.cell || "not known") }] : [];
  });
}

/** Where the number of a bar stands: over it, and where a limit's line would run through it, in the bar or over the line. */
export function barLabel(top: number, foot: number, limits: readonly number[]): number {
  const meets = (base: number) => limits.filter((one) => one > base - LETTERS && one < base + 4);
  const over = top - 5;
  if (!meets(over).length) return over;
  const inside = top + LETTERS + 3;
  if (foot - top > LETTERS + 8 && !meets(inside).length) return inside;
  return Math.min(...meets(over), over) - 5;
}

/** The names of the lines beside their last points, moved apart so that none lies on another. */
export function endLabels(series: readonly Series[], y: Place): { label: string; y: number; number: number }[] {
  const ends = series
    .map((one, number) => ({ label: one.label, number, last: one.y.findLast((value) => value !== null) ?? null }))
    .filter((one): one is { label: string; number: number; last: number } => one.last !== null)
    .map((one) => ({ label: one.label, number: one.number, y: y(one.last) }))
    .sort((one, other) => one.y - other.y);
  for (let index = 1; index < ends.length; index += 1) {
    const before = ends[index - 1];
    const here = ends[index];
    if (before && here && here.y - before.y < 15) here.y = before.y + 15;
  }
  return ends;
}

/** How much of a line between two points lies within a stretch across it and a height (px across). */
function within(one: Point, other: Point, left: number, right: number, top: number, foot: number): number {
  let [from, to] = [Math.max(left, one.x), Math.min(right, other.x)];
  if (from >= to) return 0;
  const slope = (other.y - one.y) / (other.x - one.x);
  if (slope === 0) return one.y > top && one.y < foot ? to - from : 0;
  const [first, last] = [one.x + (top - one.y) / slope, one.x + (foot - one.y) / slope];
  from = Math.max(from, Math.min(first, last));
  to = Math.min(to, Math.max(first, last));
  return Math.max(to - from, 0);
}

/** Where the name of each limit stands: over or under its line, where least of the lines and no other limit runs through. */
export function boundLabels(bounds: readonly { label: string; y: number }[], points: readonly Point[], left: number, right: number): { x: number; y: number }[] {
  const taken: { left: number; right: number; base: number }[] = [];
  const steps = 12;
  return bounds.map((one) => {
    const long = one.label.length * LETTER;
    const room = Math.max(right - left - 12 - long, 0);
    let best = { x: left + 6, y: one.y - 5, cost: Infinity };
    for (const base of [one.y - 5, one.y + LETTERS])
      for (let step = 0; step <= steps; step += 1) {
        const x = left + 6 + (room * step) / steps;
        const [top, foot] = [base - LETTERS + 2, base + 3];
        let cost = 0;
        for (let index = 0; index + 1 < points.length; index += 1) {
          const [here, next] = [points[index], points[index + 1]];
          if (here && next && here.series === next.series) cost += within(here, next, x - 4, x + long + 4, top, foot);
        }
        if (bounds.some((other) => other !== one && other.y > top && other.y < foot)) cost += long;
        if (taken.some((other) => Math.abs(other.base - base) < LETTERS && other.left < x + long && other.right > x)) cost += 2 * long;
        // Between two lines it could be the name of either.
        if (bounds.some((other) => other.y !== one.y && other.y < one.y === base < one.y && Math.abs(other.y - one.y) < 2 * LETTERS)) cost += long / 2;
        if (top < 14) cost += long;
        if (cost < best.cost - 1e-9) best = { x, y: base, cost };
      }
    taken.push({ left: best.x, right: best.x + long, base: best.y });
    return { x: best.x, y: best.y };
  });
}
