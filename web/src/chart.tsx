import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Chart as Drawn } from "./contract";
import { areLong, bar, barLabel, boundLabels, DOT, doubt, endLabels, line, nearest, type Point, pointsOf, rowsOf, saidAt, ticks } from "./plot";
import { ALONG_A_LINE, BETWEEN_LINES, goneTo } from "./roving";

/** How high a chart is (px), without what stands under it. */
const TALL = 300;
const MOST = 980;
/** Below this width (px) the lines are named under the chart and its labels lean. */
const NARROW = 560;
const LEAN = 64;
const DASHES = ["", "8 3", "2 3", "10 3 2 3", "4 4", "1 3"];

/** A chart whose numbers are told under it, on hover, on focus and by a tap, and in a table to open. */
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
  return (
    <figure class="chart" ref={place}>
      <figcaption>{chart.title}</figcaption>
      <Plot chart={chart} width={width.value} />
      {chart.form !== "fall" && width.value < NARROW && (
        <ul class="lines">
          {chart.series.map((one, number) => (
            <li key={one.label} class={`s${number % 6}`}>
              <svg viewBox="0 0 36 8" aria-hidden="true"><path d="M0 4H36" stroke-dasharray={DASHES[number % DASHES.length]} /></svg> {one.label}
            </li>
          ))}
        </ul>
      )}
      <Numbers chart={chart} />
    </figure>
  );
}

/** The numbers of a chart as a table, for whoever would rather read them. */
function Numbers({ chart }: { chart: Drawn }) {
  // What the rows say already is not said again.
  const texts = new Set(chart.series.flatMap((one) => one.texts));
  const says = chart.says.split("; ").filter((one) => !texts.has(one)).join("; ");
  return (
    <details>
      <summary>The numbers</summary>
      <div class="table" tabindex={0} role="region" aria-label={`The numbers: ${chart.title}`}>
        <table>
          <thead><tr><th scope="col">{chart.form === "fall" ? "What" : "At"}</th>{chart.series.map((one) => <th key={one.label} scope="col">{one.label}</th>)}</tr></thead>
          <tbody>{rowsOf(chart).map((row) => <tr key={row.at}><th scope="row">{row.at}</th>{row.cells.map((cell, index) => <td key={index}>{cell}</td>)}</tr>)}</tbody>
        </table>
      </div>
      {says && <p>{says.charAt(0).toUpperCase() + says.slice(1)}.</p>}
    </details>
  );
}

function Plot({ chart, width }: { chart: Drawn; width: number }) {
  /** The point Tab comes to; the one that has the focus; the one a pointer is nearest to. */
  const stop = useSignal("");
  const focused = useSignal("");
  const pointed = useSignal("");
  const { low } = chart;
  const high = chart.high + (chart.high - low) * 0.05;
  const span = high - low || 1;
  const count = chart.labels.length;
  const isFall = chart.form === "fall";
  const isNarrow = width < NARROW;
  const pad = { left: isNarrow ? 48 : 64, right: isNarrow || isFall ? 16 : 150, top: 20 };
  const end = width - pad.right;
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
  const points = pointsOf(chart, x, y);
  const stopped = points.find((one) => one.key === stop.value) ?? points[0];
  const told = points.find((one) => one.key === (pointed.value || focused.value));
  const limits = boundLabels(chart.limits.map((one) => ({ label: one.label, y: y(one.y) })), isFall ? [] : points, pad.left, end);
  const reached = (one: Point) => ({
    "data-point": one.key,
    role: "img" as const,
    "aria-label": one.says,
    tabindex: one === stopped ? 0 : -1,
    onFocus: () => {
      // What the keys come to is told, whatever lies under a pointer that rests.
      pointed.value = "";
      stop.value = focused.value = one.key;
    },
    onBlur: () => (focused.value = ""),
  });
  const near = (event: PointerEvent & { currentTarget: SVGSVGElement }) => {
    const box = event.currentTarget.getBoundingClientRect();
    const scale = width / box.width;
    pointed.value = nearest(points, (event.clientX - box.x) * scale, (event.clientY - box.y) * scale)?.key ?? "";
  };
  const go = (event: KeyboardEvent & { currentTarget: SVGSVGElement }) => {
    const here = points.find((one) => one.key === focused.value);
    if (!here) return;
    const next = goneTo(points.filter((one) => one.series === here.series), here, event.key, ALONG_A_LINE)
      ?? goneTo(points.filter((one) => one.index === here.index).sort((one, other) => one.y - other.y), here, event.key, BETWEEN_LINES);
    if (!next) return;
    event.preventDefault();
    pointed.value = "";
    event.currentTarget.querySelector<SVGElement>(`[data-point="${next.key}"]`)?.focus();
  };
  return (
    <>
      <svg viewBox={`0 0 ${width} ${tall}`} role="group" aria-label={chart.title} aria-description="Arrow keys go from number to number"
        onKeyDown={go} onPointerDown={near} onPointerMove={near} onPointerLeave={(event) => event.pointerType !== "touch" && (pointed.value = "")}>
        <g aria-hidden="true">
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
          {told && !isFall && <path class="told" d={`M${told.x} ${pad.top}V${foot}`} />}
        </g>
        {isFall
          ? points.map((one) => {
              const series = chart.series[one.series];
              const [from, to] = [series?.low[one.index] ?? 0, series?.y[one.index] ?? 0];
              const { top, tall: high } = bar(from, to, y);
              return (
                <g key={one.key} class={`bar ${one.index === count - 1 ? "whole" : ""} ${one === told ? "told" : ""}`} {...reached(one)}>
                  <rect x={one.x - wide * 0.32} y={top} width={wide * 0.64} height={high} />
                  {one.index < count - 1 && <path d={`M${one.x + wide * 0.32} ${y(to)}H${one.x + wide * 0.68}`} />}
                  <text x={one.x} y={barLabel(top, top + high, chart.limits.map((limit) => y(limit.y)))} text-anchor="middle">{show(to - from)}</text>
                </g>
              );
            })
          : chart.series.map((one, number) => (
              <g key={one.label} class={`series s${number % 6}`}>
                <path class="doubt" d={doubt(one, x, y)} />
                <path d={line(one, x, y)} stroke-dasharray={DASHES[number % DASHES.length]} />
                {points.filter((each) => each.series === number).map((each) => (
                  <circle key={each.key} cx={each.x} cy={each.y} r={DOT} {...reached(each)} />
                ))}
              </g>
            ))}
        <g aria-hidden="true">
          {!isFall && !isNarrow && endLabels(chart.series, y).map((one) => (
            <text key={one.label} x={end + 10} y={one.y} dy="0.35em" class={`end s${one.number % 6}`}>{one.label}</text>
          ))}
          {told && !isFall && <circle class={`ring s${told.series % 6}`} cx={told.x} cy={told.y} r="7" />}
        </g>
        {chart.limits.map((one, index) => (
          <g key={one.label} class={`bound ${one.kind}`}>
            <path d={`M${pad.left} ${y(one.y)}H${end}`} />
            <text x={limits[index]?.x} y={limits[index]?.y}>{one.label}</text>
          </g>
        ))}
      </svg>
      <p class={told ? "told" : "told none"} aria-hidden="true">{told ? saidAt(points, told) : "Point at the chart, tap it or go along it by the arrow keys: the number stands here."}</p>
    </>
  );
}
