import { signal } from "@preact/signals";
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { OwnFindings } from "./findings";
import type { Labelled, Page, Table as Rows } from "./contract";
import { Measures, Readings } from "./asked";
import { at, fetchScreen, got, isConnected, notShown, screen, slot, state } from "./link";
import { Sheet, showInFile, showOnSheet } from "./sheet";

/** The charts come only when a screen has one. Without compat: that would take every key typed for a finished value. */
const charts = signal<typeof import("./chart") | null>(null);
let isAsked = false;
function chartsWanted(): void {
  if (isAsked) return;
  isAsked = true;
  void import("./chart").then((found) => (charts.value = found));
}

/** More columns than a narrow screen shows side by side. */
const MANY = 3;

/** Whether a rig path is that of a thing with a place on a sheet. */
const isDrawn = (of: string): boolean => of.startsWith("parts[") || of.startsWith("openings[");

/** A thing by its name: pressed, it is shown where it is drawn; its path in the rig file stands behind the name. */
function Named({ words, of }: { words: string; of: string }) {
  if (!isDrawn(of)) return <span title={of}>{words}</span>;
  return <button class="quiet" title={of} onClick={() => showOnSheet(of, of.startsWith("parts[") ? "plan" : "elevations")}>{words}</button>;
}

/** A cell with every thing that it names, one after the other, as something to press. */
function cellOf(cell: string, names: Record<string, string>) {
  const pieces = cell.split(", ");
  if (!pieces.some((one) => names[one])) return cell;
  return pieces.map((one, index) => <>{index > 0 && ", "}{names[one] ? <Named words={one} of={names[one]} /> : one}</>);
}

/** The solid view comes only when it is opened, with all that paints it. */
const solid = signal<typeof import("./solid/view") | null>(null);
let isSolidAsked = false;
function solidWanted(): void {
  if (isSolidAsked) return;
  isSolidAsked = true;
  void import("./solid/view").then((found) => (solid.value = found));
}

function Table({ table }: { table: Rows }) {
  return (
    <div class={table.columns.length > MANY ? "table many" : "table"} tabindex={0} role="region" aria-label={table.title || "Table"}>
      <table>
        {table.title && <caption>{table.title}</caption>}
        {table.columns.some((one) => one) && <thead><tr>{table.columns.map((one, index) => one ? <th key={index} scope="col">{one}</th> : <td key={index} />)}</tr></thead>}
        <tbody>
          {table.rows.map((row, index) => {
            const of = table.of[index] ?? "";
            return (
              <tr key={index}>
                {row.map((cell, column) => {
                  const words = column === 0 && isDrawn(of) ? <Named words={cell} of={of} /> : cellOf(cell, table.names ?? {});
                  return column === 0 ? <th key={column} scope="row">{words}</th> : <td key={column} data-column={table.columns[column]} class={/^[-−]?\d.{0,14}$/.test(cell) ? "number" : undefined}>{cell && <span>{words}</span>}</td>;
                })}
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

/** How many sheets stand open and are not drawn, or not as the rig is now: on paper they would be missing. */
const undrawn = signal(0);

/** One sheet of the book: laid out on paper when somebody opens it. */
function Printed({ page }: { page: Page }) {
  const isOpen = useSignal(false);
  const pages = useSignal<Page[]>([]);
  const says = useSignal("");
  const opened = isOpen.value;
  const looked = slot.value;
  const rev = state.value?.rev;
  const isLive = isConnected.value;
  useEffect(() => {
    // What was printed of another stage, load state or vehicle is no longer shown: somebody tows by it.
    pages.value = [];
  }, [looked, opened, page.name]);
  useEffect(() => {
    if (!opened) return;
    const over = new AbortController();
    says.value = pages.value.length ? "as before the last change; being drawn anew" : "Being drawn";
    void got<Page[]>(`/page/${encodeURIComponent(page.name)}`, {}, over.signal).then(({ found, why }) => {
      if (over.signal.aborted) return;
      pages.value = found ?? [];
      says.value = why || (found?.length ? "" : "Not shown: this sheet is not in the book any more.");
    });
    return () => over.abort();
  }, [opened, rev, looked, page.name, isLive]);
  const isUndrawn = opened && says.value !== "";
  useEffect(() => {
    if (!isUndrawn) return;
    undrawn.value += 1;
    return () => void (undrawn.value -= 1);
  }, [isUndrawn]);
  const isOld = says.value !== "" && pages.value.length > 0;
  return (
    <details class={isOld ? "printed old" : "printed"} onToggle={(event) => (isOpen.value = event.currentTarget.open)}>
      <summary>{page.title}{isOld && <small role="status"> {says.value}</small>}</summary>
      {opened && says.value && !isOld && <p class="empty" role="status">{says.value}</p>}
      {opened && pages.value.map((one) => <div class="page" key={one.name} dangerouslySetInnerHTML={{ __html: one.svg }} />)}
    </details>
  );
}

const openSheets = (many: number): string => (many === 1 ? "One open sheet is" : `${many} open sheets are`);

/** For whoever wants the whole book on paper: each sheet is opened, and so drawn and printed. */
function OpenAll() {
  const opened = (is: boolean) => {
    for (const one of document.querySelectorAll<HTMLDetailsElement>("details.printed")) one.open = is;
  };
  return (
    <p class="acts">
      <button onClick={() => opened(true)}>Open all the sheets</button> <button onClick={() => opened(false)}>Close them</button>{" "}
      <small role="status">{undrawn.value > 0 && `${openSheets(undrawn.value)} being drawn: print when this line is gone.`}</small>
    </p>
  );
}

/** The text of the rig file; the editor comes only when it is opened. */
function File() {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    let stop: (() => void) | null = null;
    let isOver = false;
    void import("./editor").then((editor) => {
      if (!isOver && place.current) stop = editor.mount(place.current);
    });
    return () => {
      isOver = true;
      stop?.();
    };
  }, []);
  return <div class="file" ref={place} />;
}

/** The rig file: its text as it stands, and the way to its earlier texts. */
function RigFile() {
  const earlier = useSignal<typeof import("./earlier") | null>(null);
  const close = () => {
    earlier.value = null;
    requestAnimationFrame(() => document.getElementById("to-earlier")?.focus());
  };
  const found = earlier.value;
  if (found) return <found.Earlier close={close} />;
  return (
    <div class="filing">
      <p class="acts"><button id="to-earlier" onClick={() => void import("./earlier").then((module) => (earlier.value = module))}>Earlier texts</button></p>
      <File />
    </div>
  );
}

/** What can be put in on a screen: the section of the file it goes into. */
const TAKES: Record<string, string | undefined> = { plan: "parts", elevations: "openings" };

/** Screens that show little before the first measures are written. */
const ASKS_MEASURES = new Set(["plan", "elevations", "sections", "frame", "weight"]);

/** The words of the trade on a screen, for whoever never built or towed. */
function Words({ words }: { words: Labelled[] }) {
  if (!words.length) return null;
  return (
    <details class="words">
      <summary>Words on this screen</summary>
      <dl>{words.map((one) => <div key={one.label}><dt>{one.label}</dt><dd>{one.text}</dd></div>)}</dl>
    </details>
  );
}

/** Any screen: what it shows comes ready, so that a new discipline needs nothing here. */
export function Body() {
  const name = at.value;
  if (name === "file") return <RigFile key="file" />;
  const found = screen.value;
  if (notShown.value && !found) return <p class="empty" role="alert">{notShown.value} <button onClick={() => void fetchScreen()}>Try again</button></p>;
  if (!found || found.name !== name) return <p class="empty" role="status">Being worked out</p>;
  if (name === "solid" && !found.empty) {
    solidWanted();
    const Solid = solid.value?.default;
    return <div class="body only">{Solid ? <Solid /> : <p class="empty" role="status">Being worked out</p>}</div>;
  }
  if (found.charts.length) chartsWanted();
  const Chart = charts.value?.Chart;
  const isOnly = found.pictures.length === 1 && !found.charts.length && !found.tables.length && !found.pages.length;
  return (
    <div class={isOnly ? "body only" : "body"}>
      {!isOnly && <p class="explains">{found.explains}</p>}
      {found.empty && (
        <p class="empty">
          {found.empty} {found.act && <button onClick={() => (found.act === "file" ? showInFile(null) : (location.hash = found.act))}>
            {found.act === "file" ? "Open the Rig file" : `Go to ${state.value?.screens.find((one) => one.name === found.act)?.label ?? found.act}`}
          </button>}
        </p>
      )}
      {ASKS_MEASURES.has(name) && <Measures key={name} isBegun={found.empty !== ""} />}
      {name === "records" && <Readings />}
      {found.pictures.map((one, index) => (
        <Sheet key={`${name} ${one.name}`} picture={one} isOnly={isOnly} takes={index === 0 ? TAKES[name] : undefined} />
      ))}
      {name === "weight" && found.charts.length > 0 && !(Chart && found.charts.some((one) => one.name === "tongue")) && (
        // It comes stage by stage, later than the rest: its place is kept, so that nothing below it moves.
        <figure class="chart waits"><figcaption>Load on the ball through the stages, one line for each load state</figcaption><p role="status">Not worked out yet</p></figure>
      )}
      {Chart && found.charts.map((one) => <Chart key={one.name} chart={one} />)}
      {found.tables.map((one, index) => <Table key={index} table={one} />)}
      {(found.notes ?? []).length > 0 && <ul class="notes" aria-label="Notes">{(found.notes ?? []).map((one) => <li key={one}>{one}</li>)}</ul>}
      {!isOnly && <OwnFindings codes={found.findings} />}
      {found.pages.length > 1 && <OpenAll />}
      {found.pages.length > 0 && !found.pictures.length && !found.charts.length && !found.tables.length && (
        <p class="unopened">No sheet is open here, so there is nothing to print. Open the sheets you want on paper, then print.</p>
      )}
      {undrawn.value > 0 && <p class="undrawn">{openSheets(undrawn.value)} not drawn as the rig is now, and missing or old on this paper. Print once more.</p>}
      {found.pages.map((one) => <Printed key={one.name} page={one} />)}
      <Words words={found.words ?? []} />
    </div>
  );
}
