import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Numbers, Patch, Picture } from "./contract";
import { Hand } from "./hand";
import type { Said } from "./outbox";

const sent = vi.hoisted(() => ({ all: [] as Said[], isWaiting: false }));
vi.mock("./link", () => ({
  bus: new EventTarget(),
  isConnected: { value: true },
  isWaiting: () => sent.isWaiting,
  hold: () => {},
  state: { value: { can_write: true } },
  send: (message: Said) => sent.all.push(message),
  screen: { value: { pictures: [] as Picture[] } },
}));
const { bus, isConnected, screen, state } = await import("./link");

const SCALE = 5;
/** Just as much of a drawn group as a hand touches. One pixel is five millimetres. */
class Group {
  readonly dataset: { of: string; on?: string };
  readonly classes = new Set<string>();
  readonly classList = { add: (one: string) => this.classes.add(one), remove: (one: string) => this.classes.delete(one), toggle: (one: string, is: boolean) => (is ? this.classes.add(one) : this.classes.delete(one)) };
  readonly style: Record<string, string> = {};
  isFocused = false;
  constructor(
    of: string,
    private readonly sheet: Sheet,
    readonly drawn = "first",
  ) {
    this.dataset = { of };
  }
  standsOn(other: string) {
    this.dataset.on = other;
    return this;
  }
  closest() {
    return this;
  }
  cloneNode() {
    return new Group(this.dataset.of, this.sheet, "copy");
  }
  removeAttribute() {}
  stop = "";
  setAttribute(name: string, value: string) {
    if (name === "tabindex") this.stop = value;
  }
  querySelector() {
    return null;
  }
  focus() {
    this.isFocused = true;
  }
  getBBox() {
    return { x: 1000, y: -900, width: 600, height: 400 };
  }
  set outerHTML(svg: string) {
    this.sheet.groups.set(this.dataset.of, new Group(this.dataset.of, this.sheet, svg));
  }
  remove() {
    this.sheet.groups.delete(this.dataset.of);
  }
}
class Sheet extends EventTarget {
  readonly groups = new Map<string, Group>();
  readonly classList = { toggle: () => undefined };
  readonly style: Record<string, string> = {};
  innerHTML = "";
  viewBox = "";
  lifted: Group[] = [];
  closest() {
    return null;
  }
  setAttribute(name: string, value: string) {
    if (name === "viewBox") this.viewBox = value;
  }
  setPointerCapture() {}
  getScreenCTM() {
    return { a: 1 / SCALE, inverse: () => null };
  }
  querySelector(words: string) {
    return this.groups.get(/"(.*)"/.exec(words)?.[1] ?? "") ?? null;
  }
  querySelectorAll() {
    return [...this.groups.values()];
  }
  contains() {
    return false;
  }
  replaceChildren(...groups: Group[]) {
    this.lifted = groups;
  }
}

let frames: (() => void)[] = [];
vi.stubGlobal("requestAnimationFrame", (paint: () => void) => frames.push(paint));
vi.stubGlobal("cancelAnimationFrame", () => (frames = []));
vi.stubGlobal("CSS", { escape: (text: string) => text });
vi.stubGlobal("document", { activeElement: null });
vi.stubGlobal("DOMPoint", class { matrixTransform = () => ({ x: 0, y: 0 }); });
const frame = () => frames.splice(0).forEach((paint) => paint());

const BED = "parts[bed]";
const PLAN: Picture = {
  name: "plan", title: "Plan", svg: "", view: [0, -2000, 6000, 2000], right: "-x", up: "+y", movable: [BED],
  snaps: [{ axis: "x", mm: -1500, label: "stud 4", of: "" }, { axis: "y", mm: 1000, label: "wall", of: "" }], layers: [], off: [],
};

const hands: Hand[] = [];
function onTheSheet(picture: Partial<Picture> = {}) {
  const sheet = new Sheet();
  const over = new Sheet();
  const bed = new Group(BED, sheet);
  sheet.groups.set(BED, bed);
  const heard: string[] = [];
  const picked: string[] = [];
  const drawing = (one: unknown) => one as SVGSVGElement;
  const shown = { ...PLAN, ...picture };
  screen.value = { pictures: [shown] } as typeof screen.value;
  const hand = new Hand(drawing(sheet), drawing(over), shown, (of) => picked.push(of), (text) => heard.push(text));
  hands.push(hand);
  const on = (name: string, target: unknown, more: object) => {
    const event = Object.assign(new Event(name, { cancelable: true }), more);
    Object.defineProperty(event, "target", { value: target });
    sheet.dispatchEvent(event);
  };
  const pointer = (name: string, x: number, y: number, more: object = {}) =>
    on(name, bed, { pointerId: 1, button: 0, clientX: x, clientY: y, altKey: false, ...more });
  const drag = (x: number, y: number, more: object = {}) => {
    pointer("pointerdown", 100, 100);
    pointer("pointermove", 100 + x, 100 + y, more);
  };
  return { sheet, over, bed, hand, heard, picked, pointer, drag, key: (key: string, more: object = {}) => on("keydown", bed, { key, ...more }) };
}
const tell = (name: string, detail: unknown = null) => bus.dispatchEvent(new CustomEvent(name, { detail }));
const patch = (groups: Record<string, string>, gone: string[] = []): Patch =>
  ({ t: "patch", rev: 1, screen: "plan", sheet: "plan", groups, gone, snaps: [], whole: false });
const last = () => sent.all.at(-1);
const kinds = () => sent.all.map((one) => one.t);

beforeEach(() => {
  sent.all = [];
  sent.isWaiting = false;
  frames = [];
  isConnected.value = true;
  state.value = { can_write: true } as typeof state.value;
});

afterEach(() => hands.splice(0).forEach((one) => one.stop()));

describe("a drag", () => {
  it("begins after three pixels; less is a choice", () => {
    const { drag, pointer, picked, over } = onTheSheet();
    drag(2, 1);
    frame();
    pointer("pointerup", 102, 101);
    expect(picked).toEqual([BED]);
    expect(over.lifted).toEqual([]);
    expect(sent.all).toEqual([]);
  });

  it("lifts a copy and leaves the thing to be seen where it was", () => {
    const { drag, bed, over } = onTheSheet();
    drag(40, 0);
    expect(bed.classes).toContain("ghost");
    expect(over.lifted.map((one) => one.drawn)).toEqual(["copy"]);
    expect(over.lifted[0]?.classes).toContain("held");
  });

  it("takes along what stands in or on it, what stands on that, and the ways they take", () => {
    const { drag, pointer, over, sheet } = onTheSheet({ snaps: [] });
    const put = (of: string, on = "") => sheet.groups.set(of, on ? new Group(of, sheet).standsOn(on) : new Group(of, sheet));
    put("parts[lamp]", "parts[box]"); // before what it stands in, as the file may have it
    put("parts[box]", BED);
    put("parts[lamp].keep_clear");
    const way = put(`${BED}.folded`).get(`${BED}.folded`);
    put(`${BED}.at-night`);
    put("parts[bed 2]");
    put("parts[other]", "parts[bed 2]");
    if (way) way.style.display = "none";
    drag(40, 0);
    const along = ["parts[lamp]", "parts[box]", "parts[lamp].keep_clear", `${BED}.folded`];
    expect(over.lifted.map((one) => one.dataset.of)).toEqual([BED, ...along]);
    expect(over.lifted.map((one) => [...one.classes])).toEqual([["held"], ...along.map(() => ["along"])]);
    expect(over.lifted.at(-1)?.style.display).toBe("");
    const ghosts = () => [...sheet.groups.values()].filter((one) => one.classes.has("ghost")).map((one) => one.dataset.of);
    expect(ghosts()).toEqual([BED, ...along]);
    pointer("pointercancel", 140, 100);
    expect(ghosts()).toEqual([]);
    expect(over.lifted).toEqual([]);
  });

  it("says once in a frame where it is, in millimetres of the rig, in the directions of the picture", () => {
    const { drag, pointer, over } = onTheSheet({ snaps: [] });
    drag(10, 0);
    pointer("pointermove", 150, 80);
    pointer("pointermove", 160, 70);
    expect(sent.all).toEqual([]);
    frame();
    expect(sent.all).toEqual([{ t: "move", of: BED, x_mm: -300, y_mm: 150, z_mm: 0 }]);
    expect(over.style.transform).toBe("translate3d(60px,-30px,0)");
  });

  it("drops once, where the hand let go, also before the frame is painted", () => {
    const { drag, pointer } = onTheSheet({ snaps: [] });
    drag(10, 0);
    frame();
    pointer("pointermove", 120, 100);
    pointer("pointerup", 120, 100);
    frame();
    pointer("pointermove", 300, 300);
    frame();
    expect(kinds()).toEqual(["move", "drop"]);
    expect(last()).toEqual({ t: "drop", of: BED, x_mm: -100, y_mm: 0, z_mm: 0 });
  });

  it("of a thing brought back to where it was is no edit", () => {
    const { drag, pointer } = onTheSheet({ snaps: [] });
    drag(30, 0);
    pointer("pointermove", 100, 100);
    pointer("pointerup", 100, 100);
    expect(kinds()).toEqual(["cancel"]);
  });

  it("of another thing begins where that one is", () => {
    const { drag, pointer } = onTheSheet({ snaps: [] });
    drag(30, 0);
    pointer("pointerup", 130, 100);
    drag(0, 10);
    pointer("pointerup", 100, 110);
    expect(last()).toEqual({ t: "drop", of: BED, x_mm: 0, y_mm: -50, z_mm: 0 });
  });
});

describe("what a held thing catches on", () => {
  // The front of the bed lies at 1000 of the picture, and the picture runs against x: stud 4 lies at 1500.
  it("is within eight pixels, and is named", () => {
    const { drag, heard } = onTheSheet();
    drag(95, 0);
    frame();
    expect(last()).toMatchObject({ t: "move", x_mm: -500 });
    expect(heard.at(-1)).toBe("at stud 4");
  });

  it("is nothing further off, and nothing with Alt", () => {
    const { drag, pointer, heard } = onTheSheet({ snaps: [{ axis: "x", mm: -1500, label: "stud 4", of: "" }] });
    drag(90, 0);
    frame();
    expect(last()).toMatchObject({ x_mm: -450 });
    pointer("pointermove", 197, 100, { altKey: true });
    frame();
    expect(last()).toMatchObject({ x_mm: -485 });
    expect(heard.at(-1)).toBe("");
  });

  it("may be two lines at once", () => {
    const { drag, heard } = onTheSheet();
    drag(98, -22);
    frame();
    expect(last()).toMatchObject({ x_mm: -500, y_mm: 100 });
    expect(heard.at(-1)).toBe("at stud 4, wall");
  });
});

describe("a thing goes back to where it was", () => {
  const isBack = (one: ReturnType<typeof onTheSheet>) => {
    expect(one.over.lifted).toEqual([]);
    expect(one.over.style.transform).toBe("");
    expect(one.bed.classes).not.toContain("ghost");
  };

  it("on Escape, and the release of the button then stores nothing", () => {
    const one = onTheSheet();
    one.drag(40, 0);
    frame();
    one.key("Escape");
    isBack(one);
    one.pointer("pointerup", 140, 100);
    expect(kinds()).toEqual(["move", "cancel"]);
  });

  it.each(["pointercancel", "lost"])("on %s", (name) => {
    const one = onTheSheet();
    one.drag(40, 0);
    if (name === "lost") tell("lost");
    else one.pointer(name, 0, 0);
    isBack(one);
    one.pointer("pointerup", 140, 100);
    frame();
    expect(kinds()).toEqual(["cancel"]);
  });

  it("when the drop is refused", () => {
    const one = onTheSheet();
    one.drag(40, 0);
    one.pointer("pointerup", 140, 100);
    expect(one.over.lifted).toHaveLength(1);
    tell("no");
    isBack(one);
  });

  it("when a second finger comes down: two fingers zoom", () => {
    const one = onTheSheet();
    one.drag(40, 0);
    one.pointer("pointerdown", 300, 300, { pointerId: 2 });
    isBack(one);
    expect(kinds()).toEqual(["cancel"]);
  });

  it("when the screen is left with it in hand", () => {
    const one = onTheSheet();
    one.drag(40, 0);
    one.hand.stop();
    isBack(one);
    expect(kinds()).toEqual(["cancel"]);
  });
});

describe("after a drop", () => {
  it("the copy stays until the sheet is drawn anew, so that nothing flashes", () => {
    const { drag, pointer, over, sheet } = onTheSheet();
    drag(40, 0);
    pointer("pointerup", 140, 100);
    expect(over.lifted).toHaveLength(1);
    tell("patch", patch({ [BED]: "second" }));
    expect(over.lifted).toEqual([]);
    expect(sheet.groups.get(BED)?.drawn).toBe("second");
    expect(sheet.groups.get(BED)?.classes).not.toContain("ghost");
  });

  it("it does not stay for ever where nothing is drawn anew", () => {
    vi.useFakeTimers();
    const { drag, pointer, over, bed } = onTheSheet();
    drag(40, 0);
    pointer("pointerup", 140, 100);
    tell("numbers", { preview: false } as Numbers);
    vi.runAllTimers();
    vi.useRealTimers();
    expect(over.lifted).toEqual([]);
    expect(bed.classes).not.toContain("ghost");
  });

  it("a drawing of another sheet changes nothing here, and what is gone goes", () => {
    const { sheet } = onTheSheet();
    tell("patch", { ...patch({ [BED]: "second" }), sheet: "roof" });
    expect(sheet.groups.get(BED)?.drawn).toBe("first");
    tell("patch", patch({}, [BED]));
    expect(sheet.groups.has(BED)).toBe(false);
  });

  it("a drawing of a picture that another was fetched for is left to that other one", () => {
    const { sheet } = onTheSheet();
    const isLeft = () => bus.dispatchEvent(new CustomEvent("patch", { detail: patch({ [BED]: "second" }), cancelable: true }));
    screen.value = { pictures: [{ ...PLAN }] } as typeof screen.value;
    expect(isLeft()).toBe(true);
    expect(sheet.groups.get(BED)?.drawn).toBe("first");
    onTheSheet();
    expect(isLeft()).toBe(false);
  });

  it("what was left out of sight stays out of sight", () => {
    const { sheet, bed } = onTheSheet();
    bed.style.display = "none";
    tell("patch", patch({ [BED]: "second" }));
    expect(sheet.groups.get(BED)?.style.display).toBe("none");
  });
});

describe("where nothing can be changed", () => {
  it.each(["the program is gone", "the file is not ours"])("%s: a drag moves the sheet, never the thing", (why) => {
    if (why === "the program is gone") isConnected.value = false;
    else state.value = { can_write: false } as typeof state.value;
    const { drag, pointer, sheet, over, picked } = onTheSheet();
    drag(40, 10);
    pointer("pointerup", 140, 110);
    frame();
    expect(sent.all).toEqual([]);
    expect(over.lifted).toEqual([]);
    expect(sheet.viewBox).toBe("-200 -2050 6000 2000");
    expect(picked).toEqual([BED]);
  });
});

describe("keys on a thing", () => {
  it.each([
    ["ArrowRight", {}, { x_mm: -10, y_mm: 0 }],
    ["ArrowLeft", { shiftKey: true }, { x_mm: 100, y_mm: 0 }],
    ["ArrowUp", { altKey: true }, { x_mm: 0, y_mm: 1 }],
    ["ArrowDown", {}, { x_mm: 0, y_mm: -10 }],
  ])("%s %o moves it in the directions of the picture", (key, more, shift) => {
    onTheSheet().key(key, more);
    expect(sent.all.map((one) => ({ ...one }))).toEqual([{ t: "drop", of: BED, x_mm: 0, y_mm: 0, z_mm: 0, ...normal(shift) }]);
  });
  const normal = (shift: object) => Object.fromEntries(Object.entries(shift).map(([axis, by]) => [axis, expect.closeTo(by as number)]));

  it("R turns it, Delete takes it out, and both are nothing with Ctrl", () => {
    const { key } = onTheSheet();
    key("r");
    key("Delete");
    key("r", { ctrlKey: true });
    expect(sent.all).toEqual([{ t: "turn", of: BED }, { t: "take-out", of: BED }]);
  });

  it("plus, minus and nought look closer, farther and at the whole", () => {
    const { key, sheet } = onTheSheet();
    key("+");
    expect(sheet.viewBox).toBe("600 -1800 4800 1600");
    key("-");
    key("-");
    expect(sheet.viewBox.split(" ")[2]).toBe("7500");
    key("0");
    expect(sheet.viewBox).toBe("0 -2000 6000 2000");
    expect(sent.all).toEqual([]);
  });
});

it("a sheet that is left listens no more", () => {
  const { hand, key, drag } = onTheSheet();
  hand.stop();
  key("r");
  drag(40, 0);
  frame();
  tell("patch", patch({ [BED]: "second" }));
  expect(sent.all).toEqual([]);
});

describe("what a drop is based on", () => {
  it("is what was shown when the hand took hold, not what came meanwhile", () => {
    const { drag, pointer } = onTheSheet({ snaps: [] });
    state.value = { can_write: true, rev: 7 } as typeof state.value;
    drag(10, 0);
    frame();
    state.value = { can_write: true, rev: 9 } as typeof state.value;
    pointer("pointerup", 110, 100);
    expect(last()).toMatchObject({ t: "drop", base: 7 });
  });
});

describe("what a hand rests on", () => {
  it("catches on no line while it wants to be free", () => {
    const { drag, heard } = onTheSheet();
    drag(99, 0); // 5 mm short of the stud, which is 1500 behind: 8 pixels are 40
    frame();
    expect([last(), heard.at(-1)]).toEqual([{ t: "move", of: BED, x_mm: -500, y_mm: 0, z_mm: 0 }, "at stud 4"]);
    sent.all = [];
    const free = onTheSheet();
    free.drag(99, 0, { altKey: true });
    frame();
    expect([last(), free.heard.at(-1)]).toEqual([{ t: "move", of: BED, x_mm: -495, y_mm: 0, z_mm: 0 }, ""]);
  });

  it("is the text the sheet showed, but not one it has already asked to change", () => {
    state.value = { can_write: true, rev: 7 } as typeof state.value;
    const calm = onTheSheet();
    calm.drag(40, 0, { altKey: true });
    calm.pointer("pointerup", 140, 100);
    expect(last()).toMatchObject({ t: "drop", base: 7 });
    sent.isWaiting = true;
    const hasty = onTheSheet();
    hasty.drag(40, 0, { altKey: true });
    hasty.pointer("pointerup", 140, 100);
    expect(last()?.t).toBe("drop");
    expect(last()).not.toHaveProperty("base");
  });

  it("still catches on other things when one was drawn anew", () => {
    const snaps = [{ axis: "x", mm: -1500, label: "front of stove", of: "parts[stove]" }, { axis: "x", mm: -3000, label: "old place", of: "parts[sink]" }] as Picture["snaps"];
    const { drag, heard } = onTheSheet({ snaps });
    tell("patch", patch({ "parts[sink]": "second" }));
    drag(98, 0);
    frame();
    expect(heard.at(-1)).toBe("at front of stove");
    tell("no");
    drag(398, 0);
    frame();
    expect(heard.at(-1)).toBe("");
  });
});
