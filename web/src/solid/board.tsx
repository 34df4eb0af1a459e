/** The board the solids are painted on: it turns under hand and keys, and says what lies under the pointer. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { picked } from "../sheet";
import { Eye, VIEWS, met, type Cut } from "./eye";
import { dot, minus, plus, standsAt, unit, type Piece, type Scene, type Vec } from "./glb";
import { Painter, type CutFace, type Ink, type Shown } from "./paint";

export const GROUPS = [["things", "Things"], ["openings", "Openings"], ["layers", "Wall layers"], ["frame", "Frame"], ["skin", "Skin"], ["gear", "Running gear"]] as const;
export const groupOf = (of: string): string =>
  of.startsWith("parts[") || of.startsWith("people[") ? "things" : of.startsWith("openings[") ? "openings" : of.startsWith("walls[") ? "layers" : of === "frame.skin" ? "skin" : of.startsWith("trailer") ? "gear" : "frame";

export type Look = { scene: Scene; stage: number | null; apart: number; isOpen: boolean; off: Record<string, boolean>; cut: Cut | null; faces: CutFace[] };

/** How far (rad) a key turns. */
const STEP = 0.09;
/** How far (m) a stage is lifted over the one before it when they are all the way apart. */
const LIFT = 0.9;
/** How squarely a wall must look towards the eye to be left out. */
const GAZE = 0.08;
/** How far (px) a pointer may wander and still tap. */
const STILL = 4;

/** What is shown of a look: what stands, is not left out, and does not stand in the way of the eye. */
export function shownOf(look: Look, eye: Eye, held: string, hovered: string): Shown[] {
  const standing = look.scene.pieces.filter((one) => standsAt(one, look.stage) && !look.off[groupOf(one.path.of)]);
  const stages = [...new Set(standing.map((one) => one.stage))].sort((a, b) => a - b);
  return standing.flatMap((piece): Shown[] => {
    if (look.isOpen && piece.outward && isBefore(piece, eye)) return [];
    const moved: Vec = [0, 0, stages.indexOf(piece.stage) * LIFT * look.apart];
    return [{ piece, moved, isPerhaps: look.stage === null && piece.stands === "perhaps", isHeld: piece.path.of === held, isHovered: piece.path.of === hovered }];
  });
}

/** Whether a piece of a wall looks towards the eye, so that it hides the room. */
function isBefore(piece: Piece, eye: Eye): boolean {
  const middle: Vec = [(piece.low[0] + piece.high[0]) / 2, (piece.low[1] + piece.high[1]) / 2, (piece.low[2] + piece.high[2]) / 2];
  return dot(unit(minus(eye.place, middle)), piece.outward!) > GAZE;
}

export function boundsOf(shown: Shown[]): [Vec, Vec] {
  const low: Vec = [Infinity, Infinity, Infinity], high: Vec = [-Infinity, -Infinity, -Infinity];
  for (const { piece, moved } of shown)
    for (let axis = 0; axis < 3; axis++) {
      low[axis] = Math.min(low[axis]!, piece.low[axis]! + moved[axis]!);
      high[axis] = Math.max(high[axis]!, piece.high[axis]! + moved[axis]!);
    }
  return shown.length ? [low, high] : [[0, -1, 0], [4, 1, 2]];
}

const middleOf = (shown: Shown[]): Vec => {
  const [low, high] = boundsOf(shown);
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
};
const cornersOf = (low: Vec, high: Vec): Vec[] =>
  [0, 1, 2, 3, 4, 5, 6, 7].map((place) => [place & 1 ? high[0] : low[0], place & 2 ? high[1] : low[1], place & 4 ? high[2] : low[2]]);

const colour = (text: string): Vec => {
  const found = /^#(..)(..)(..)/.exec(text.trim());
  return found ? [1, 2, 3].map((place) => parseInt(found[place]!, 16) / 255) as Vec : [0.5, 0.5, 0.5];
};

function inkOf(canvas: HTMLElement): Ink {
  const style = getComputedStyle(canvas), one = (name: string) => colour(style.getPropertyValue(name));
  const dark = canvas.closest("[data-theme]")?.getAttribute("data-theme") === "dark", edge = one("--edge"), paper = one("--paper");
  // Light lines on the dark shout louder than dark ones on the light.
  return { paper, edge: dark ? plus(plus([0, 0, 0], edge, 0.7), paper, 0.3) : edge, ink: one("--ink"), chalk: one("--chalk"), dark };
}

/** Where the eye is; kept while another screen is looked at. */
export const eye = new Eye();

export function Board({ look }: { look: Look }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const painter = useRef<Painter | null>(null);
  const latest = useRef(look);
  latest.current = look;
  const hovered = useRef("");
  const note = useSignal<{ words: string; x: number; y: number } | null>(null);
  const levels = useSignal<{ words: string; x: number; y: number }[]>([]);
  const none = useSignal(false);
  const frame = useRef(0);

  const aspect = () => (canvas.current ? canvas.current.clientWidth / Math.max(canvas.current.clientHeight, 1) : 1);
  const shown = () => shownOf(latest.current, eye, picked.value, hovered.current);
  const fit = () => {
    // What is left out for the eye's sake still counts, so that turning does not change what fits.
    const all = shownOf({ ...latest.current, isOpen: false }, eye, "", "");
    eye.target = middleOf(all);
    eye.fit(all.flatMap(({ piece, moved }) => cornersOf(piece.low, piece.high).map((one) => plus(one, moved))), aspect());
  };
  const paint = () => {
    frame.current ||= requestAnimationFrame(() => {
      frame.current = 0;
      const place = canvas.current;
      if (!place || !painter.current) return;
      const ratio = Math.min(devicePixelRatio || 1, 2), width = Math.round(place.clientWidth * ratio), height = Math.round(place.clientHeight * ratio);
      if (place.width !== width || place.height !== height) [place.width, place.height] = [width, height];
      if (!width || !height) return;
      const now = shown();
      painter.current.paint(now, eye, latest.current.cut, inkOf(place));
      place.dataset.faces = String(latest.current.faces.length);
      place.dataset.painted = String(Number(place.dataset.painted ?? 0) + 1);
      levels.value = latest.current.apart > 0.15 ? levelsOf(latest.current, now, eye, aspect()) : [];
    });
  };

  useEffect(() => {
    const place = canvas.current;
    if (!place) return;
    const start = () => {
      try {
        painter.current = new Painter(place);
      } catch {
        none.value = true;
      }
      paint();
    };
    start();
    fit();
    const sizes = new ResizeObserver(() => paint());
    sizes.observe(place);
    const themes = new MutationObserver(() => paint());
    const app = place.closest("[data-theme]");
    if (app) themes.observe(app, { attributes: true, attributeFilter: ["data-theme"] });
    const lost = (event: Event) => event.preventDefault();
    place.addEventListener("webglcontextlost", lost);
    place.addEventListener("webglcontextrestored", start);
    return () => {
      sizes.disconnect();
      themes.disconnect();
      cancelAnimationFrame(frame.current);
      painter.current?.forget();
    };
  }, []);
  useEffect(() => painter.current?.forget(), [look.scene]);
  useEffect(() => {
    fit();
    paint();
  }, [look.apart]);
  useEffect(() => painter.current?.cutFaces(look.faces, look.cut), [look.faces]);
  useEffect(paint);

  const under = (event: { clientX: number; clientY: number }): Piece | null => {
    const box = canvas.current!.getBoundingClientRect();
    const way = eye.through((event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height, aspect());
    let nearest = Infinity, found: Piece | null = null;
    for (const { piece, moved } of shown()) {
      const far = met(piece, minus(eye.place, moved), way, latest.current.cut);
      if (far < nearest) [nearest, found] = [far, piece];
    }
    return found;
  };
  const hand = useRef(new Map<number, { x: number; y: number; far: number }>());
  const spread = () => {
    const [one, other] = [...hand.current.values()];
    return one && other ? Math.hypot(one.x - other.x, one.y - other.y) : 0;
  };
  const moved = (event: PointerEvent) => {
    const before = hand.current.get(event.pointerId);
    if (!before) {
      if (event.pointerType === "touch") return;
      const found = under(event), box = canvas.current!.getBoundingClientRect();
      note.value = found ? { words: found.name, x: event.clientX - box.left, y: event.clientY - box.top } : null;
      if ((found?.path.of ?? "") !== hovered.current) {
        hovered.current = found?.path.of ?? "";
        paint();
      }
      return;
    }
    const [across, up] = [event.clientX - before.x, event.clientY - before.y], was = spread();
    before.far += Math.hypot(across, up);
    [before.x, before.y] = [event.clientX, event.clientY];
    const height = canvas.current!.clientHeight;
    if (hand.current.size > 1) {
      if (was && spread()) eye.nearer(was / spread());
      eye.slide(across / height / 4, up / height / 4);
    } else if (event.shiftKey || event.button === 1 || (event.buttons & 6) !== 0) eye.slide(across / height / 1.6, up / height / 1.6);
    else eye.turn(across / 160, up / 160);
    note.value = null;
    paint();
  };
  const keys = (event: KeyboardEvent) => {
    const turns: Record<string, [number, number]> = { ArrowLeft: [-STEP, 0], ArrowRight: [STEP, 0], ArrowUp: [0, STEP], ArrowDown: [0, -STEP] };
    const turn = turns[event.key];
    if (turn && event.shiftKey) eye.slide(turn[0] / 2, -turn[1] / 2);
    else if (turn) eye.turn(...turn);
    else if (event.key === "+" || event.key === "=") eye.nearer(1 / 1.15);
    else if (event.key === "-") eye.nearer(1.15);
    else if (event.key === "Home") fit();
    else if (event.key === "Escape") picked.value = "";
    else return;
    event.preventDefault();
    paint();
  };
  const look_from = (name: string) => {
    [eye.yaw, eye.pitch] = VIEWS[name]!;
    fit();
    paint();
  };
  return (
    <div class="board">
      {none.value && <p class="empty">This browser shows no three dimensions (WebGL is off or missing). The list beside it holds the same things, and “Keep as GLB” gives the file for another program.</p>}
      <canvas ref={canvas} tabIndex={0} role="img" hidden={none.value}
        aria-label={`The trailer in three dimensions, ${look.stage === null ? "today as ticked" : `stage ${look.scene.stages[look.stage] ?? ""}`}. Arrow keys turn it, plus and minus bring it closer, Home shows all of it. What stands is listed beside it.`}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          hand.current.set(event.pointerId, { x: event.clientX, y: event.clientY, far: 0 });
        }}
        onPointerMove={moved}
        onPointerUp={(event) => {
          const before = hand.current.get(event.pointerId);
          hand.current.delete(event.pointerId);
          if (before && before.far < STILL && event.button === 0) picked.value = under(event)?.path.of ?? "";
          paint();
        }}
        onPointerCancel={(event) => hand.current.delete(event.pointerId)}
        onPointerLeave={() => { note.value = null; hovered.current = ""; paint(); }}
        onContextMenu={(event) => event.preventDefault()}
        onWheel={(event) => { event.preventDefault(); eye.nearer(Math.exp(event.deltaY / 900)); paint(); }}
        onKeyDown={keys} />
      {note.value && <span class="hover" aria-hidden="true" style={{ left: `${note.value.x + 14}px`, top: `${note.value.y + 10}px` }}>{note.value.words}</span>}
      {levels.value.map((one) => <span class="level" key={one.words} aria-hidden="true" style={{ left: `${one.x * 100}%`, top: `${one.y * 100}%` }}>{one.words}</span>)}
      {!none.value && (
        <span class="views">
          {Object.keys(VIEWS).map((name) => <button key={name} onClick={() => look_from(name)}>{name}</button>)}
          <button aria-label="Closer" onClick={() => { eye.nearer(1 / 1.25); paint(); }}>+</button>
          <button aria-label="Farther" onClick={() => { eye.nearer(1.25); paint(); }}>−</button>
        </span>
      )}
    </div>
  );
}

/** The names of the stages beside where they float. */
function levelsOf(look: Look, shown: Shown[], eye: Eye, aspect: number): { words: string; x: number; y: number }[] {
  const stages = [...new Set(shown.map((one) => one.piece.stage))].sort((a, b) => a - b);
  return stages.map((stage) => {
    const [low, high] = boundsOf(shown.filter((one) => one.piece.stage === stage));
    const seen = cornersOf(low, high).map((one) => eye.seenAt(one, aspect)).sort((a, b) => a[0] - b[0])[0]!;
    return { words: look.scene.stages[stage] ?? String(stage), x: Math.max(0.01, seen[0] - 0.02), y: seen[1] };
  });
}
