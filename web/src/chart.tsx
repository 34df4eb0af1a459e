import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Chart as Drawn, Series } from "./contract";

/** How high a chart is (px), without what stands under it. */
const TALL = 228;
const MOST = 980;
/** How wide a letter is, nearly (px). */
const LETTER = 6.5;
/** How high the letters of a bar's number are (px). */
const LETTERS = 13;
/** Below this width (px) the lines are named under the chart and its labels lean. */
const NARROW = 560;
const LEAN = 64;
const DASHES = ["", "8 3", "2 3", "10 3 2 3", "4 4", "1 3"];

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

function line(series: Series, x: (index: number) => number, y: (value: number) => number): string {
  let path = "";
  series.y.forEach((value, index) => {
    if (value !== null) path += `${path && series.y[index - 1] !== null ? "L" : "M"}${x(index)} ${y(value)}`;
  });
  return path;
}

/** The area between the ends of each number's doubt, as far as both ends are known. */
function doubt(series: Series, x: (index: number) => number, y: (value: number) => number): string {
  let path = "";
  for (let index = 0; index + 1 < series.y.length; index += 1) {
    const [low, next, high, after] = [series.low[index], series.low[index + 1], series.high[index], series.high[index + 1]];
    if (low == null || next == null || high == null || after == null) continue;
    path += `M${x(index)} ${y(low)}L${x(index + 1)} ${y(next)}L${x(index + 1)} ${y(after)}L${x(index)} ${y(high)}Z`;
  }
  return path;
}

/** A chart with its numbers on hover and on focus, and a table of the same for whoever hears it. */
export function Chart({ chart }: { chart: Drawn }) {
  const place = useRef<HTMLElement>(null);
  const width = useSignal(720);
  useEffect(() => {
    if (!place.current) return;
    const sized = new ResizeObserver(([one]) => one && (width.value = Math.max(Math.min(one.contentRect.width, MOST), 280)));
    sized.observe(place.current);
    return () => sized.disconnect();
  }, []);
  if (!chart.series.some((one) => one.y.some((value) => value !== null)))
    return <figure class="chart"><figcaption>{chart.title}</figcaption><p>Not drawn: {chart.says}.</p></figure>;
  const { low } = chart;
  const high = chart.high + (chart.high - low) * 0.05;
  const span = high - low || 1;
  const count = chart.labels.length;
  const isFall = chart.form === "fall";
  const isNarrow = width.value < NARROW;
  const pad = { left: isNarrow ? 48 : 64, right: isNarrow || isFall ? 16 : 150, top: 20 };
  const end = width.value - pad.right;
  const wide = (end - pad.left) / Math.max(isFall ? count : count - 1, 1);
  const leans = isFall ? wide < LEAN : areLong(chart.labels, wide);
  const foot = pad.top + TALL * Math.min(chart.share, 1);
  const tall = foot + (!leans ? 32 : isNarrow ? 72 : 56);
  const x = (index: number) => pad.left + wide * (isFall ? index + 0.5 : index);
  const y = (value: number) => foot - (foot - pad.top) * ((value - low) / span);
  const show = (value: number) => value.toLocaleString(undefined, { maximumFractionDigits: 0 });
  const marked = ticks(low, chart.high, chart.step);
  const digits = [0, 1, 2, 3].find((one) => marked.every((at) => Math.abs(Number(at.toFixed(one)) - at) < 1e-9)) ?? 3;
  const numbered = (value: number) => value.toLocaleString(undefined, { minimumFractionDigits: digits, maximumFractionDigits: digits });
  return (
    <figure class="chart" ref={place}>
      <figcaption>{chart.title}</figcaption>
      <svg viewBox={`0 0 ${width.value} ${tall}`} role="img" aria-label={`${chart.title}. ${chart.says}`}>
        {marked.map((one) => (
          <g key={one} class="tick">
            <path d={`M${pad.left} ${y(one)}H${end}`} />
            <text x={pad.left - 8} y={y(one)} dy="0.35em" text-anchor="end">{numbered(one)}</text>
          </g>
        ))}
        <text x={isNarrow ? 4 : pad.left - 8} y={pad.top - 8} text-anchor={chart.unit.length > 6 || isNarrow ? "start" : "end"} class="unit">{chart.unit}</text>
        {chart.labels.map((one, index) => (
          <text key={index} x={x(index)} y={foot + 18} text-anchor={leans ? "end" : "middle"} class="label"
            transform={!leans ? undefined : `rotate(-30 ${x(index)} ${foot + 18})`}>{one}</text>
        ))}
        {isFall
          ? chart.series.flatMap((one) => one.y.map((value, index) => {
              const from = one.low[index] ?? 0;
              const top = value ?? 0;
              return (
                <g key={chart.labels[index]} class={index === count - 1 ? "bar whole" : "bar"}>
                  <title>{one.texts[index]}</title>
                  <rect x={x(index) - wide * 0.32} y={y(top)} width={wide * 0.64} height={Math.max(y(from) - y(top), 1)} />
                  {index < count - 1 && <path d={`M${x(index) + wide * 0.32} ${y(top)}H${x(index + 1) - wide * 0.32}`} />}
                  <text x={x(index)} y={barLabel(y(top), y(from), chart.limits.map((limit) => y(limit.y)))} text-anchor="middle">{show(top - from)}</text>
                </g>
              );
            }))
          : chart.series.map((one, number) => {
              return (
                <g key={one.label} class={`series s${number % 6}`}>
                  <path class="doubt" d={doubt(one, x, y)} />
                  <path d={line(one, x, y)} stroke-dasharray={DASHES[number % DASHES.length]} />
                  {one.y.map((value, index) => value !== null && (
                    <circle key={index} cx={x(index)} cy={y(value)} r="4" tabindex={-1}><title>{one.texts[index]}</title></circle>
                  ))}
                </g>
              );
            })}
        {!isFall && !isNarrow && endLabels(chart.series, y).map((one) => (
          <text key={one.label} x={end + 10} y={one.y} dy="0.35em" class={`end s${one.number % 6}`}>{one.label}</text>
        ))}
        {chart.limits.map((one) => (
          <g key={one.label} class={`bound ${one.kind}`}>
            <path d={`M${pad.left} ${y(one.y)}H${end}`} />
            <text x={pad.left + 6} y={y(one.y) - 5}>{one.label}</text>
          </g>
        ))}
      </svg>
      {!isFall && isNarrow && (
        <ul class="lines">
          {chart.series.map((one, number) => (
            <li key={one.label} class={`s${number % 6}`}>
              <svg viewBox="0 0 36 8" aria-hidden="true"><path d="M0 4H36" stroke-dasharray={DASHES[number % DASHES.length]} /></svg> {one.label}
            </li>
          ))}
        </ul>
      )}
      <details>
        <summary>The numbers</summary>
        <p>{chart.says}</p>
        <ul>
          {chart.series.map((one) => (
            <li key={one.label}>{one.texts.filter((text) => text).join("; ")}</li>
          ))}
        </ul>
      </details>
    </figure>
  );
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
function endLabels(series: Series[], y: (value: number) => number): { label: string; y: number; number: number }[] {
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
