/** The Solid screen: the trailer to be turned, cut and taken apart, with the same things as words beside it. */
import "./solid.css";
import { signal, useSignal } from "@preact/signals";
import { useEffect, useMemo, useRef } from "preact/hooks";
import { isConnected, lookedLine, NO_ANSWER, slot, state } from "../link";
import { picked, showInFile, showOnSheet } from "../sheet";
import type { Cut } from "./eye";
import { NotAScene, read, standsAt, type Scene } from "./glb";
import { Board, GROUPS, eye, groupOf, type Look } from "./board";
import type { CutFace } from "./paint";

const POSES = [["tow", "On the road"], ["sleep", "At night"], ["work", "At work"]] as const;
const AXES = [["x", "along"], ["y", "across"], ["z", "up"]] as const;
const MOST_LISTED = 400;

const pose = signal<string>("tow");
const stage = signal<number | null>(null);
const apart = signal(0);
const isOpen = signal(true);
const off = signal<Record<string, boolean>>({});
const cut = signal<Cut | null>(null);

type Told = { rev: number; says: string; faces: CutFace[] };
const asked = (more: Record<string, string>) => new URLSearchParams({ ...slot.value, use: pose.value, ...more });

export default function Solid() {
  const scene = useSignal<Scene | null>(null);
  const trouble = useSignal("");
  const faces = useSignal<Told | null>(null);
  const isNew = useSignal(false);
  const isFirst = useRef(true);
  const rev = state.value?.rev ?? 0;
  const [looked, lies, isLive] = [slot.value, pose.value, isConnected.value];

  useEffect(() => {
    isFirst.current = true;
  }, [looked]);
  useEffect(() => {
    // What stands at another stage, or lies as it lies at another time, is not shown for this one.
    scene.value = null;
  }, [looked, lies]);
  useEffect(() => {
    const over = new AbortController();
    trouble.value = "";
    isNew.value = true;
    void fetch(`/solid/scene?${asked({})}`, { signal: over.signal }).then(async (answer) => {
      if (!answer.ok) throw new NotAScene(await answer.text());
      const found = read(await answer.arrayBuffer());
      if (isFirst.current) stage.value = slot.value.stage || !found.isTicked ? found.number : null;
      isFirst.current = isNew.value = false;
      scene.value = found;
      const line = lookedLine.value;
      if (line !== null) picked.value = atLine(found, line) || picked.value;
      lookedLine.value = null;
    }).catch((error: unknown) => {
      if (over.signal.aborted) return;
      scene.value = null;
      trouble.value = error instanceof NotAScene ? error.message : NO_ANSWER;
    });
    return () => over.abort();
  }, [rev, looked, lies, isLive]);

  const wanted = cut.value;
  useEffect(() => {
    faces.value = null;
    if (!wanted || !scene.value) return;
    const over = new AbortController();
    const wait = setTimeout(() => {
      const more = { axis: AXES[wanted.axis]![0], at: String(Math.round(wanted.at * 1000)) };
      void fetch(`/solid/cut?${asked(more)}`, { signal: over.signal })
        .then(async (answer) => {
          const told = answer.ok ? ((await answer.json()) as Told) : null;
          // Pieces are named by their number in the scene: faces of a later text belong to a scene still to come.
          if (told && told.rev === scene.value?.rev) faces.value = told;
        })
        .catch(() => undefined);
    }, 40);
    return () => { clearTimeout(wait); over.abort(); };
  }, [wanted, scene.value]);

  const found = scene.value;
  if (!found) return <p class="empty" role="status">{trouble.value || "Building the solids"}</p>;
  const shown: Look = { scene: found, stage: stage.value, apart: apart.value, isOpen: isOpen.value, off: off.value, cut: cut.value, faces: faces.value?.faces ?? [] };
  return (
    <figure class="picture only solid">
      <figcaption>
        <span class="looks">Solid</span>
        <span class="grow">{isNew.value && <span class="note" role="status">as before the last change; being built anew</span>}</span>
        <label class="choose">Lies as
          <select value={pose.value} onChange={(event) => (pose.value = event.currentTarget.value)}>
            {POSES.map(([name, words]) => <option key={name} value={name}>{words}</option>)}
          </select>
        </label>
        <details class="layers">
          <summary>What is shown</summary>
          <div>
            {GROUPS.map(([name, words]) => (
              <label key={name}><input type="checkbox" checked={!off.value[name]} onChange={() => (off.value = { ...off.value, [name]: !off.value[name] })} /> {words}</label>
            ))}
            <label><input type="checkbox" checked={isOpen.value} onChange={() => (isOpen.value = !isOpen.value)} /> Walls towards me left out</label>
          </div>
        </details>
        <a class="keep" href={`/solid/file?${asked({})}`} download>Keep as GLB</a>
      </figcaption>
      <div class="stand">
        <Board look={shown} />
        <List scene={found} />
      </div>
      <Bars scene={found} says={faces.value?.says ?? ""} />
      <Held scene={found} />
    </figure>
  );
}

/** The sliders: which stage stands, how far the stages are apart, where it is cut. */
function Bars({ scene, says }: { scene: Scene; says: string }) {
  const now = stage.value;
  const bounds = useMemo(() => [0, 1, 2].map((axis) => [
    Math.min(...scene.pieces.map((one) => one.low[axis]!)), Math.max(...scene.pieces.map((one) => one.high[axis]!)),
  ] as const), [scene]);
  const section = cut.value;
  const choose = (axis: number) => {
    const ends = bounds[axis];
    cut.value = ends ? { axis: axis as 0 | 1 | 2, at: (ends[0] + ends[1]) / 2, keepsAbove: eye.back[axis]! < 0 } : null; // the cut face looks towards the eye
  };
  const ends = section ? bounds[section.axis]! : null;
  return (
    <div class="bars">
      <div class="bar">
        <label for="solid-stage">Stage</label>
        <input id="solid-stage" type="range" min={0} max={Math.max(scene.stages.length - 1, 0)} value={now ?? scene.number} aria-valuetext={scene.stages[now ?? scene.number]}
          onInput={(event) => (stage.value = Number(event.currentTarget.value))} />
        <output for="solid-stage">{scene.stages[now ?? scene.number] ?? ""}</output>
        {scene.isTicked && <button aria-pressed={now === null} onClick={() => (stage.value = null)}>Today as ticked</button>}
      </div>
      <div class="bar">
        <label for="solid-apart">Apart</label>
        <input id="solid-apart" type="range" min={0} max={100} value={apart.value * 100} onInput={(event) => (apart.value = Number(event.currentTarget.value) / 100)} />
        <output for="solid-apart">{apart.value ? "stage over stage" : "as built"}</output>
      </div>
      <div class="bar">
        <label for="solid-axis">Section</label>
        <select id="solid-axis" value={section ? String(section.axis) : ""} onChange={(event) => choose(event.currentTarget.value === "" ? -1 : Number(event.currentTarget.value))}>
          <option value="">none</option>
          {AXES.map(([name, words], axis) => <option key={name} value={String(axis)}>{words}</option>)}
        </select>
        {section && ends && (
          <>
            <input type="range" aria-label="Where it is cut" min={Math.floor(ends[0]! * 1000)} max={Math.ceil(ends[1]! * 1000)} value={Math.round(section.at * 1000)} aria-valuetext={says}
              onInput={(event) => (cut.value = { ...section, at: Number(event.currentTarget.value) / 1000 })} />
            <output>{says}</output>
            <button onClick={() => (cut.value = { ...section, keepsAbove: !section.keepsAbove })}>Other side</button>
          </>
        )}
      </div>
    </div>
  );
}

/** What is seen, in words: for whoever does not see it, and to pick from. */
function List({ scene }: { scene: Scene }) {
  const place = useRef<HTMLElement>(null);
  const standing = scene.paths.filter((path) => scene.pieces.some((one) => one.path === path && standsAt(one, stage.value)));
  useEffect(() => {
    place.current?.querySelector('[aria-pressed="true"]')?.scrollIntoView({ block: "nearest" });
  }, [picked.value]);
  return (
    <nav class="listed" aria-label="What stands" ref={place}>
      <p class="note">{standing.length === 1 ? "1 thing stands" : `${standing.length} things stand`}{scene.missing.length ? `; not placed: ${scene.missing.join(", ")}` : ""}</p>
      {GROUPS.map(([group, words]) => {
        const mine = standing.filter((one) => groupOf(one.of) === group).slice(0, MOST_LISTED);
        return mine.length > 0 && (
          <details key={group} open={group === "things" || mine.some((one) => one.of === picked.value)}>
            <summary>{words} ({mine.length})</summary>
            <ul>
              {mine.map((one) => (
                <li key={one.of}>
                  <button aria-pressed={picked.value === one.of} onClick={() => (picked.value = picked.value === one.of ? "" : one.of)}>
                    {nameOf(one.of)}{one.stands === "perhaps" && stage.value === null ? ", perhaps" : ""}
                  </button>
                </li>
              ))}
            </ul>
          </details>
        );
      })}
    </nav>
  );
}

/** What is picked: what it weighs, and the ways to its line and to the plan. */
function Held({ scene }: { scene: Scene }) {
  const found = scene.paths.find((one) => one.of === picked.value);
  if (!found) return <div class="inhand none"><p>Drag to turn, with Shift to slide, wheel for closer. Tap a thing for its weight and its line; arrow keys turn too.</p></div>;
  const screen = found.of.startsWith("parts[") ? "plan" : found.of.startsWith("openings[") ? "elevations" : "";
  return (
    <div class="inhand solid-held" role="group" aria-label={nameOf(found.of)}>
      <strong>{nameOf(found.of)}</strong>
      <span class="says" role="status">{[`stage ${scene.stages[found.stage] ?? ""}`, found.says].filter(Boolean).join("; ")}</span>
      <span class="acts">
        <button onClick={() => showInFile(found.line)}>Line {found.line ?? "?"}</button>
        {screen && <button onClick={() => showOnSheet(found.of, screen)}>On the {screen === "plan" ? "plan" : "wall"}</button>}
        <button onClick={() => (picked.value = "")}>Let go</button>
      </span>
    </div>
  );
}

/** The thing whose lines of the file hold a line: the last that begins before it. */
export const atLine = (scene: Scene, line: number): string =>
  scene.paths.reduce((best, one) => (one.line !== null && one.line <= line && one.line > (best.line ?? 1) ? one : best), { of: "", line: 1 } as { of: string; line: number | null }).of;

/** A rig path as one says it: `walls[left].layers[foam]` is left foam. */
export const nameOf = (of: string): string => {
  const inside = [...of.matchAll(/\[([^\]]+)\]/g)].map((one) => one[1]);
  const rest = of.replace(/\[[^\]]*\]/g, "").split(".").pop() ?? of;
  return inside.length ? `${inside.join(" ")}${of.endsWith(".uncut") ? ", not cut out yet" : ""}` : rest;
};
