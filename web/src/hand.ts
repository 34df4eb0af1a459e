import type { Numbers, Patch, Picture, Snap } from "./contract";
import { bus, hold, isConnected, isWaiting, screen, send, state } from "./link";
import { AMONG_THINGS, goneTo, oneStop } from "./roving";
import { caught, linesAlong, NOT_MOVED, shiftOf, type Shift, type Span } from "./snap";

const REACH_PX = 8;
const STEP_MM = { plain: 10, far: 100, fine: 1 };
const ZOOM_STEP = 1.25;
const MOST_ZOOM = 40;
/** What stays while a hand moves a thing: where it is at another time has a place of its own, and what is measured stands beside. */
const STAYS = new Set([".at-night", ".by-day", ".measures", ".notes"]);

export type View = { x: number; y: number; w: number; h: number };
type Held = {
  group: SVGGElement;
  of: string;
  startX: number;
  startY: number;
  scale: number;
  box: DOMRect;
  dx: number;
  dy: number;
  catches: string;
  hasMoved: boolean;
  /** What the sheet showed when the hand took hold: a thing somebody else moved since is not dropped where nobody let go. */
  base: number | undefined;
};

function based(held: Held): { base?: number } {
  return held.base === undefined ? {} : { base: held.base };
}

/** The hand on one picture: drags a lifted copy, nudges, zooms and pans. It knows no rule; numbers come from outside. */
export class Hand {
  private held: Held | null = null;
  private waiting: { of: string; group: SVGGElement } | null = null;
  private frame = 0;
  private snaps: Snap[];
  private view: View;
  private whole: View;
  private panFrom: { x: number; y: number; view: View; scale: number } | null = null;
  private readonly fingers = new Map<number, { x: number; y: number }>();
  private pinch = 0;
  private readonly off: (() => void)[] = [];
  /** Told whenever more or less of the picture is seen, or something was drawn anew. */
  onSeen: (isNew: boolean) => void = () => undefined;
  /** Told when somebody wants to go from a thing to its numbers. */
  onEnter: () => void = () => undefined;
  /** The thing that Tab comes to. */
  private stopAt = "";

  constructor(
    private readonly sheet: SVGSVGElement,
    private readonly over: SVGSVGElement,
    private readonly picture: Picture,
    private readonly picked: (of: string) => void,
    private readonly says: (text: string) => void,
  ) {
    const [x, y, w, h] = picture.view;
    this.whole = { x, y, w, h };
    this.snaps = picture.snaps;
    this.view = { ...this.whole };
    sheet.innerHTML = picture.svg;
    this.show();
    this.rove();
    const on = <K extends keyof SVGElementEventMap>(name: K, act: (event: SVGElementEventMap[K]) => void, more?: AddEventListenerOptions) => {
      sheet.addEventListener(name, act as EventListener, more);
      this.off.push(() => sheet.removeEventListener(name, act as EventListener, more));
    };
    on("pointerdown", (event) => this.down(event));
    on("pointermove", (event) => this.moved(event));
    on("pointerup", (event) => this.up(event));
    on("pointercancel", () => this.letGo(false));
    on("wheel", (event) => this.wheeled(event), { passive: false });
    on("keydown", (event) => this.key(event));
    on("focusin", (event) => {
      // Going past a thing does not take it in hand: what is typed next would go to the last one passed.
      this.stopAt = this.thing(event.target)?.dataset.of ?? this.stopAt;
      this.rove();
    });
    const hear = (name: string, act: (event: Event) => void) => {
      bus.addEventListener(name, act);
      this.off.push(() => bus.removeEventListener(name, act));
    };
    hear("patch", (event) => {
      const patch = (event as CustomEvent<Patch>).detail;
      // A picture that another was fetched for is about to go: what it took would be lost with it.
      const isLast = screen.value?.pictures.includes(this.picture) ?? false;
      if (patch.sheet !== this.picture.name || !isLast) return;
      event.preventDefault();
      this.patched(patch);
    });
    hear("no", () => this.springBack());
    hear("lost", () => this.letGo(false));
    hear("numbers", (event) => {
      if (!(event as CustomEvent<Numbers>).detail.preview) this.settle();
    });
  }

  stop(): void {
    this.letGo(false);
    for (const one of this.off) one();
  }

  private thing(target: EventTarget | null): SVGGElement | null {
    return (target as Element | null)?.closest<SVGGElement>("g.thing") ?? null;
  }

  private find(of: string): SVGGElement | null {
    return this.sheet.querySelector<SVGGElement>(`g[data-of="${CSS.escape(of)}"]`);
  }

  // ---------------------------------------------------------------- dragging

  private down(event: PointerEvent): void {
    this.fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (this.fingers.size === 2) {
      this.letGo(false);
      this.pinch = this.spread();
      return;
    }
    const group = this.thing(event.target);
    if (event.button !== 0) return;
    this.sheet.setPointerCapture(event.pointerId);
    if (!group || !isConnected.value || !state.value?.can_write) {
      this.panFrom = { x: event.clientX, y: event.clientY, view: { ...this.view }, scale: this.perPixel() };
      if (group) this.choose(group);
      return;
    }
    this.choose(group);
    const scale = this.perPixel();
    hold(true);
    this.held = {
      group, of: group.dataset.of ?? "", startX: event.clientX, startY: event.clientY, scale, box: (group.querySelector<SVGGraphicsElement>("polygon") ?? group).getBBox(),
      dx: 0, dy: 0, catches: "", hasMoved: false, base: isWaiting() ? undefined : state.value.rev,
    };
  }

  private choose(group: SVGGElement): void {
    group.focus({ preventScroll: true });
    this.picked(group.dataset.of ?? "");
  }

  private lift(held: Held): void {
    const lifted = this.moving(held.of);
    const copies = lifted.map((group) => {
      const copy = group.cloneNode(true) as SVGGElement;
      const of = group.dataset.of ?? "";
      copy.removeAttribute("tabindex");
      copy.removeAttribute("role");
      copy.classList.add(of === held.of ? "held" : "along");
      // The ways a thing takes are looked at while it is placed, whether or not their layer is shown.
      if (of.startsWith(`${held.of}.`)) copy.style.display = "";
      return copy;
    });
    this.over.replaceChildren(...copies);
    for (const one of lifted) one.classList.add("ghost");
    held.hasMoved = true;
  }

  /** A thing, what stands in or on it, and the ways each of them takes: all that moves with it, as it is drawn. */
  private moving(of: string): SVGGElement[] {
    const all = [...this.sheet.querySelectorAll<SVGGElement>("g[data-of]")];
    const things = new Set([of]);
    for (let before = 0; before < things.size; ) {
      before = things.size;
      for (const one of all) if (things.has(one.dataset.on ?? "")) things.add(one.dataset.of ?? "");
    }
    return all.filter((one) => {
      const path = one.dataset.of ?? "";
      const thing = path.slice(0, path.lastIndexOf("]") + 1);
      return things.has(thing) && !STAYS.has(path.slice(thing.length));
    });
  }

  private moved(event: PointerEvent): void {
    if (this.fingers.has(event.pointerId)) this.fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (this.fingers.size === 2 && this.pinch) {
      const now = this.spread();
      this.zoom(this.pinch / now, this.between());
      this.pinch = now;
      return;
    }
    if (this.panFrom) {
      const { x, y, view, scale } = this.panFrom;
      this.view = { ...view, x: view.x - (event.clientX - x) * scale, y: view.y - (event.clientY - y) * scale };
      this.show();
      return;
    }
    const held = this.held;
    if (!held) return;
    const px = event.clientX - held.startX;
    const py = event.clientY - held.startY;
    if (!held.hasMoved && Math.hypot(px, py) < 3) return;
    if (!held.hasMoved) this.lift(held);
    this.place(held, px * held.scale, -py * held.scale, event.altKey);
    this.frame ||= requestAnimationFrame(() => this.paint());
  }

  /** Where the held thing is, after it caught on a line; `right` and `up` in mm of the picture. */
  private place(held: Held, right: number, up: number, isFree: boolean): void {
    const reach = isFree ? 0 : REACH_PX * held.scale;
    const caughtOn: string[] = [];
    const along = (span: Span, by: number, axis: Picture["right"] | Picture["up"]) => {
      const lines = linesAlong(this.snaps, axis, held.of);
      const found = caught(span, by, lines.map((one) => one.at), reach);
      const label = lines.find((one) => one.at === found.line)?.label;
      if (label) caughtOn.push(label);
      return found.by;
    };
    const { box } = held;
    held.dx = along({ low: box.x, high: box.x + box.width }, right, this.picture.right);
    held.dy = along({ low: -(box.y + box.height), high: -box.y }, up, this.picture.up);
    held.catches = caughtOn.join(", ");
  }

  private paint(): void {
    this.frame = 0;
    const held = this.held;
    if (!held) return;
    this.over.style.transform = `translate3d(${held.dx / held.scale}px,${-held.dy / held.scale}px,0)`;
    this.says(held.catches ? `at ${held.catches}` : "");
    send({ t: "move", of: held.of, ...based(held), ...this.shift(held.dx, held.dy) });
  }

  private shift(dx: number, dy: number): Shift {
    return shiftOf(this.picture.right, this.picture.up, dx, dy);
  }

  private up(event: PointerEvent): void {
    this.fingers.delete(event.pointerId);
    this.pinch = 0;
    this.panFrom = null;
    this.letGo(true);
  }

  private letGo(isKept: boolean): void {
    const held = this.held;
    this.held = null;
    hold(false);
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    if (!held?.hasMoved) return;
    this.says("");
    if (isKept && (held.dx || held.dy)) {
      // The copy stays where the hand left it until the sheet is drawn anew, so that nothing flashes.
      this.waiting = { of: held.of, group: held.group };
      send({ t: "drop", of: held.of, ...based(held), ...this.shift(held.dx, held.dy) });
      return;
    }
    this.clear(held.group);
    send({ t: "cancel" });
  }

  private clear(group: SVGGElement): void {
    for (const one of [group, ...this.sheet.querySelectorAll<SVGGElement>("g.ghost")]) one.classList.remove("ghost");
    this.over.replaceChildren();
    this.over.style.transform = "";
  }

  private springBack(): void {
    if (this.waiting) this.clear(this.waiting.group);
    this.waiting = null;
    const held = this.held;
    this.held = null;
    hold(false);
    if (held?.hasMoved) this.clear(held.group);
  }

  /** True numbers came: what waited for a new drawing that does not come is put back where it stands. */
  private settle(): void {
    const waiting = this.waiting;
    if (!waiting) return;
    setTimeout(() => {
      if (this.waiting === waiting) this.springBack();
    }, 400);
  }

  private patched(patch: Patch): void {
    for (const [of, svg] of Object.entries(patch.groups)) {
      const old = this.find(of);
      if (!old) continue;
      const hadFocus = document.activeElement === old;
      const display = old.style.display;
      old.outerHTML = svg;
      const now = this.find(of);
      if (now) now.style.display = display;
      if (hadFocus) now?.focus({ preventScroll: true });
    }
    const wasOnGone = patch.gone.some((of) => this.find(of) === document.activeElement && document.activeElement !== null);
    for (const of of patch.gone) this.find(of)?.remove();
    const isOld = new Set([...Object.keys(patch.groups), ...patch.gone]);
    this.snaps = [...this.snaps.filter((one) => !one.of || !isOld.has(one.of)), ...patch.snaps];
    this.rove();
    if (wasOnGone) this.things()[0]?.focus({ preventScroll: true });
    this.onSeen(true);
    if (this.waiting) {
      const again = this.find(this.waiting.of);
      this.clear(again ?? this.waiting.group);
      this.waiting = null;
    }
  }

  // ---------------------------------------------------------------- keys

  private key(event: KeyboardEvent): void {
    if (event.key === "Escape" && this.held) return this.letGo(false);
    const group = this.thing(event.target);
    const of = group?.dataset.of;
    if (group && of && !event.ctrlKey && !event.metaKey && !event.altKey) {
      const next = goneTo(this.things(), group, event.key, AMONG_THINGS);
      if (next) {
        event.preventDefault();
        this.reveal(next);
        return next.focus({ preventScroll: true });
      }
      if (event.key === "Enter" || event.key === " ") {
        event.preventDefault();
        this.picked(of);
        return this.onEnter();
      }
    }
    const way = ({ ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] } as Record<string, [number, number]>)[event.key];
    if (of && way && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      this.picked(of);
      const step = event.shiftKey ? STEP_MM.far : event.altKey ? STEP_MM.fine : STEP_MM.plain;
      return send({ t: "drop", of, ...NOT_MOVED, ...this.shift(way[0] * step, way[1] * step) });
    }
    if (of && event.key.toLowerCase() === "r" && !event.ctrlKey && !event.metaKey) {
      this.picked(of);
      return send({ t: "turn", of });
    }
    if (of && event.key === "Delete") return send({ t: "take-out", of });
    if (event.key === "+" || event.key === "=") this.zoom(1 / ZOOM_STEP);
    if (event.key === "-") this.zoom(ZOOM_STEP);
    if (event.key === "0") this.fit();
  }

  // ---------------------------------------------------------------- zoom and pan

  zoom(by: number, about?: { x: number; y: number }): void {
    const { view, whole } = this;
    const w = Math.min(Math.max(view.w * by, whole.w / MOST_ZOOM), whole.w * 2);
    const share = w / view.w;
    const spot = about ?? { x: view.x + view.w / 2, y: view.y + view.h / 2 };
    this.view = { x: spot.x - (spot.x - view.x) * share, y: spot.y - (spot.y - view.y) * share, w, h: view.h * share };
    this.show();
  }

  fit(): void {
    this.look(this.whole);
  }

  /** The whole is more than was drawn: words that are written larger reach beyond it. */
  widen(whole: View): void {
    this.whole = { ...whole };
    this.fit();
  }

  /** Look at a stretch of the picture. */
  look(view: View): void {
    this.view = { ...view };
    this.show();
  }

  /** What is looked at, and whether that is all there is. */
  get looks(): { view: View; isWhole: boolean } {
    const { view, whole } = this;
    return { view: { ...view }, isWhole: view.w === whole.w && view.x === whole.x && view.y === whole.y };
  }

  /** The things that can be gone to, in the order they are gone through. */
  private things(): SVGGElement[] {
    return [...this.sheet.querySelectorAll<SVGGElement>("g.thing[tabindex]")].filter((one) => one.style.display !== "none");
  }

  /** Leave one thing of the whole sheet to Tab: many of them would stand between it and all that comes after. */
  private rove(): void {
    const all = this.things();
    oneStop(all, all.find((one) => one.dataset.of === this.stopAt) ?? all[0]);
  }

  /** The thing that has the focus, and nothing where it is elsewhere. */
  get focused(): string {
    return this.sheet.contains(document.activeElement) ? this.stopAt : "";
  }

  /** Bring a thing into sight that lies beyond what is looked at. */
  private reveal(group: SVGGElement): void {
    const { x, y, width, height } = group.getBBox();
    const { view } = this;
    const spot = { x: x + width / 2, y: y + height / 2 };
    const isSeen = spot.x >= view.x && spot.x <= view.x + view.w && spot.y >= view.y && spot.y <= view.y + view.h;
    if (!isSeen) this.look({ ...view, x: spot.x - view.w / 2, y: spot.y - view.h / 2 });
  }

  /** Show which thing the numbers below the sheet are of. */
  mark(of: string): void {
    for (const one of this.sheet.querySelectorAll<SVGGElement>("g.thing")) one.classList.toggle("taken", one.dataset.of === of);
  }

  /** Give a thing the focus without taking it in hand; whether it is drawn here. */
  reach(of: string): boolean {
    const group = this.find(of);
    group?.focus({ preventScroll: true });
    return group !== null;
  }

  /** Go to a thing and take it in hand; whether it is drawn here. */
  focus(of: string): boolean {
    const group = this.find(of);
    if (!group) return false;
    this.choose(group);
    group.classList.add("found");
    setTimeout(() => group.classList.remove("found"), 1600);
    return true;
  }

  layer(name: string, isShown: boolean): void {
    for (const one of this.sheet.querySelectorAll<SVGGElement>(`g[data-layer="${CSS.escape(name)}"]`))
      one.style.display = isShown ? "" : "none";
    this.rove();
    this.onSeen(true);
  }

  private wheeled(event: WheelEvent): void {
    event.preventDefault();
    this.zoom(event.deltaY > 0 ? ZOOM_STEP : 1 / ZOOM_STEP, this.spot(event.clientX, event.clientY));
  }

  private show(): void {
    const box = `${this.view.x} ${this.view.y} ${this.view.w} ${this.view.h}`;
    this.sheet.setAttribute("viewBox", box);
    this.over.setAttribute("viewBox", box);
    this.sheet.classList.toggle("far", this.view.w > this.whole.w * 1.6);
    this.onSeen(false);
  }

  /** Millimetres of the rig in one pixel of the screen. */
  perPixel(): number {
    return 1 / (this.sheet.getScreenCTM()?.a ?? 1);
  }

  private spot(clientX: number, clientY: number): { x: number; y: number } {
    const place = this.sheet.getScreenCTM();
    if (!place) return { x: 0, y: 0 };
    const found = new DOMPoint(clientX, clientY).matrixTransform(place.inverse());
    return { x: found.x, y: found.y };
  }

  private spread(): number {
    const [one, other] = [...this.fingers.values()];
    return one && other ? Math.hypot(one.x - other.x, one.y - other.y) || 1 : 1;
  }

  private between(): { x: number; y: number } | undefined {
    const [one, other] = [...this.fingers.values()];
    return one && other ? this.spot((one.x + other.x) / 2, (one.y + other.y) / 2) : undefined;
  }
}
