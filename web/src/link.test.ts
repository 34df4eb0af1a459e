import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

/** The line to the program, as a page has it: what was sent, and what it hears. */
class Line {
  static last: Line;
  readyState = 1;
  sent: { t: string; seq: number }[] = [];
  onopen: () => void = () => undefined;
  onmessage: (event: { data: string }) => void = () => undefined;
  onclose: () => void = () => undefined;
  constructor() {
    Line.last = this;
  }
  send(text: string) {
    this.sent.push(JSON.parse(text));
  }
}

type Answer = { ok: boolean; json: () => Promise<unknown> };
let fetches: { url: string; answer: (made: Answer) => void; fail: () => void }[] = [];
let kept: Map<string, string>;
let heard: Record<string, () => void>;

beforeEach(() => {
  fetches = [];
  kept = new Map();
  heard = {};
  vi.resetModules();
  vi.stubGlobal("location", { hash: "#plan", host: "here", reload: vi.fn() });
  vi.stubGlobal("navigator", { language: "en", sendBeacon: () => true });
  vi.stubGlobal("addEventListener", (name: string, done: () => void) => (heard[name] = done));
  vi.stubGlobal("WebSocket", Line);
  vi.stubGlobal("localStorage", { length: 0, key: () => null });
  vi.stubGlobal("sessionStorage", { getItem: (key: string) => kept.get(key) ?? null, setItem: (key: string, value: string) => kept.set(key, value) });
  vi.stubGlobal("fetch", (url: string, { signal }: { signal: AbortSignal | null }) =>
    new Promise<Answer>((answer, fail) => {
      fetches.push({ url, answer, fail: () => fail(new TypeError("no line")) });
      signal?.addEventListener("abort", () => fail(new DOMException("over", "AbortError")));
    }));
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const STATE = {
  t: "state", program: "one", place: "aa", heard: 1, rev: 1, has_file: true, file: "rig.yaml", rig: "A", undo: 0, redo: 0, can_write: true,
  stages: [{ name: "", label: "Today" }, { name: "finish", label: "finish" }], loads: [{ name: "", label: "all" }], vehicles: [],
  slot: {}, screens: [], demos: [], asks: [], left: "", terms: {},
};
const SCREEN = { name: "plan", rev: 1, pictures: [], charts: [], tables: [], pages: [] };
const MOVE = { t: "move", of: "parts[a]", dx: 1, dy: 0 } as never;
const says = (message: object) => Line.last.onmessage({ data: JSON.stringify(message) });
const numbers = (seq: number, preview: boolean, stage = "") => ({ t: "numbers", seq, rev: 1, preview, slot: { stage, load: "", vehicle: "" }, figures: [], held: [] });
const settle = () => new Promise((done) => setTimeout(done, 0));

async function opened() {
  const link = await import("./link");
  link.link();
  Line.last.onopen();
  says(STATE);
  return link;
}
async function shown(link: Awaited<ReturnType<typeof opened>>, more: object = {}) {
  fetches.at(-1)?.answer({ ok: true, json: async () => ({ ...SCREEN, ...more }) });
  await settle();
  return link.screen.value;
}

describe("numbers", () => {
  it("of a preview older than the last but one are dropped", async () => {
    const link = await opened();
    for (let seq = 2; seq <= 5; seq += 1) {
      link.send(MOVE);
      if (seq < 5) says(numbers(seq, true));
    }
    expect(Line.last.sent.filter((one) => one.t === "move").map((one) => one.seq)).toEqual([2, 3, 4, 5]);
    says(numbers(3, true));
    expect(link.numbers.value?.seq).toBe(4);
    says(numbers(5, true));
    expect(link.numbers.value?.seq).toBe(5);
  });

  it("of the preview just before the one under way are still shown", async () => {
    const link = await opened();
    link.send(MOVE);
    says(numbers(2, true));
    link.send(MOVE);
    link.numbers.value = null;
    says(numbers(2, true));
    expect(link.numbers.value).toMatchObject({ seq: 2 });
  });

  it("that are stored are never too old, and are what has settled", async () => {
    const link = await opened();
    for (let seq = 2; seq <= 5; seq += 1) {
      link.send(MOVE);
      says(numbers(seq, true));
    }
    expect(link.settled.value).toBeNull();
    expect(link.isPreview.value).toBe(true);
    says(numbers(0, false));
    expect(link.numbers.value).toMatchObject({ seq: 0, preview: false });
    expect(link.settled.value).toMatchObject({ seq: 0 });
    link.send(MOVE);
    says(numbers(6, true));
    expect(link.settled.value).toMatchObject({ seq: 0 });
  });

  it("of another stage than the one chosen are never shown, and those there are known to be another's", async () => {
    const link = await opened();
    says(numbers(0, false));
    expect(link.isOther.value).toBe(false);
    link.choose({ stage: "finish" });
    expect(link.isOther.value).toBe(true);
    says({ ...numbers(0, false), rev: 2 });
    says(numbers(2, true));
    expect(link.settled.value).toMatchObject({ rev: 1, slot: { stage: "" } });
    expect(link.numbers.value).toMatchObject({ preview: false, slot: { stage: "" } });
    says(numbers(0, false, "finish"));
    expect(link.isOther.value).toBe(false);
    expect(link.settled.value).toMatchObject({ slot: { stage: "finish" } });
  });

  it("of a preview end with the line", async () => {
    vi.useFakeTimers();
    const link = await opened();
    says(numbers(0, false));
    link.send(MOVE);
    says(numbers(2, true));
    Line.last.onclose();
    expect(link.numbers.value).toMatchObject({ preview: false });
    expect(link.isConnected.value).toBe(false);
    vi.useRealTimers();
  });
});

describe("the night", () => {
  const one = (text: string) => [{ key: "room-at-coldest", label: "", text, unit: "F" }];
  const follows = (seq: number, text: string, stage = "") => ({ t: "night", seq, rev: 1, slot: { stage, load: "", vehicle: "" }, figures: one(text) });

  it("stays as it was while the hand moves, and says so, until it follows the hand that rests", async () => {
    const link = await opened();
    says({ ...numbers(0, false), night: one("56") });
    expect(link.night.value).toEqual({ figures: one("56"), isOld: false });
    link.send(MOVE);
    says({ ...numbers(2, true), night: null });
    expect(link.night.value).toEqual({ figures: one("56"), isOld: true });
    says(follows(2, "61"));
    expect(link.night.value).toEqual({ figures: one("61"), isOld: false });
    link.send(MOVE);
    says({ ...numbers(3, true), night: null });
    expect(link.night.value).toEqual({ figures: one("61"), isOld: true });
  });

  it("of where the hand was before it moved on, or of another stage, is not shown", async () => {
    const link = await opened();
    says({ ...numbers(0, false), night: one("56") });
    link.send(MOVE);
    says({ ...numbers(2, true), night: null });
    says(follows(2, "99", "finish"));
    expect(link.night.value.isOld).toBe(true);
    link.send(MOVE);
    says(follows(2, "61"));
    expect(link.night.value).toEqual({ figures: one("56"), isOld: true });
  });

  it("is again what is stored when the hand lets go, or the line is lost", async () => {
    vi.useFakeTimers();
    const link = await opened();
    says({ ...numbers(0, false), night: one("56") });
    for (const lets of [() => says({ ...numbers(0, false), night: one("56") }), () => Line.last.onclose()]) {
      link.send(MOVE);
      says({ ...numbers(0, true), seq: Line.last.sent.at(-1)?.seq, night: null });
      says(follows(Line.last.sent.at(-1)?.seq ?? 0, "61"));
      expect(link.night.value.figures).toEqual(one("61"));
      lets();
      expect(link.night.value).toEqual({ figures: one("56"), isOld: false });
    }
    vi.useRealTimers();
  });
});

describe("a change that was found", () => {
  const offered = (rev: number, key = "k") => ({ t: "offered", key, rev, says: "move it", remedy: "x", is_of_the_built: false });

  it("is offered for the text it was proved in and for no other", async () => {
    const link = await opened();
    link.seeking.value = new Set(["k", "other"]);
    says(offered(0));
    expect(link.offered.value).toEqual({});
    expect([...link.seeking.value]).toEqual(["other"]);
    says(offered(2));
    expect(link.offered.value).toEqual({});
    says(offered(1));
    expect(Object.keys(link.offered.value)).toEqual(["k"]);
    says(offered(1, "l"));
    expect(Object.keys(link.offered.value)).toEqual(["k", "l"]);
  });

  it("is gone with the next text", async () => {
    const link = await opened();
    says({ t: "text", rev: 1, text: "a", changes: [] });
    says(offered(1));
    says({ t: "text", rev: 1, text: "a", changes: [] });
    expect(Object.keys(link.offered.value)).toEqual(["k"]);
    says({ t: "text", rev: 2, text: null, changes: [{ start: 0, end: 1, insert: "bc" }] });
    expect(link.offered.value).toEqual({});
    expect(link.text.value).toBe("bc");
  });
});

describe("a screen", () => {
  it("that comes while a hand holds something is put off, and fetched anew when it lets go", async () => {
    const link = await opened();
    expect(await shown(link)).toMatchObject({ rev: 1 });
    link.hold(true);
    void link.fetchScreen();
    const before = fetches.length;
    expect(await shown(link, { rev: 1, empty: "new" })).not.toHaveProperty("empty");
    link.hold(true);
    expect(fetches.length).toBe(before);
    link.hold(false);
    expect(fetches.length).toBe(before + 1);
    expect(await shown(link, { empty: "new" })).toHaveProperty("empty", "new");
    link.hold(false);
    expect(fetches.length).toBe(before + 1);
  });

  it("of an older text is shown and asked for once more; one of this text is not", async () => {
    const link = await opened();
    says({ ...STATE, rev: 5 });
    const before = fetches.length;
    expect(await shown(link, { rev: 4 })).toMatchObject({ rev: 4 });
    expect(fetches.length).toBe(before + 1);
    expect(await shown(link, { rev: 5 })).toMatchObject({ rev: 5 });
    expect(fetches.length).toBe(before + 1);
  });

  it("that is not to be had goes, with why; the next that comes takes the why away", async () => {
    const link = await opened();
    await shown(link);
    void link.fetchScreen();
    fetches.at(-1)?.fail();
    await settle();
    expect(link.screen.value).toBeNull();
    expect(link.notShown.value).toBe(link.NO_ANSWER);
    void link.fetchScreen();
    await shown(link);
    expect(link.notShown.value).toBe("");
    void link.fetchScreen();
    fetches.at(-1)?.answer({ ok: false, json: async () => SCREEN });
    await settle();
    expect(link.screen.value).toBeNull();
    expect(link.notShown.value).toContain("could not make it");
  });

  it("that nobody waits for any more changes nothing", async () => {
    const link = await opened();
    await shown(link);
    void link.fetchScreen();
    const [first] = fetches.slice(-1);
    void link.fetchScreen();
    first?.answer({ ok: true, json: async () => ({ ...SCREEN, empty: "late" }) });
    await settle();
    expect(link.screen.value).not.toHaveProperty("empty");
    expect(link.notShown.value).toBe("");
  });

  it("keeps a picture that is drawn as before the same object", async () => {
    const link = await opened();
    const picture = { name: "left", svg: "<g/>", view: [0, 0, 1, 1] };
    const first = (await shown(link, { pictures: [picture, { ...picture, name: "right" }] }))?.pictures;
    void link.fetchScreen();
    const second = (await shown(link, { pictures: [{ ...picture }, { ...picture, name: "right", svg: "<p/>" }] }))?.pictures;
    expect(second?.[0]).toBe(first?.[0]);
    expect(second?.[1]).not.toBe(first?.[1]);
  });
});

describe("what is looked at", () => {
  it("that is not there any more is let go of, and kept so", async () => {
    kept.set("slot", JSON.stringify({ stage: "gone", load: "", vehicle: "van" }));
    const link = await opened();
    expect(link.slot.value).toEqual({ stage: "", load: "", vehicle: "" });
    expect(JSON.parse(kept.get("slot") ?? "")).toEqual({ stage: "", load: "", vehicle: "" });
  });

  it("that is there stays", async () => {
    kept.set("slot", JSON.stringify({ stage: "finish", load: "", vehicle: "" }));
    const link = await opened();
    expect(link.slot.value.stage).toBe("finish");
    expect(fetches.at(-1)?.url).toContain("stage=finish");
  });
});

it("a refusal is said, and whoever asked is told it instead", async () => {
  const link = await opened();
  link.send({ t: "turn", of: "parts[a]" } as never);
  says({ t: "no", seq: 2, why: "it hangs" });
  expect(link.refused.value).toBe("it hangs");
  const asked = link.ask({ t: "turn", of: "parts[a]" } as never);
  expect(link.refused.value).toBe("");
  says({ t: "no", seq: 3, why: "it stands" });
  expect(await asked).toBe("it stands");
  expect(link.refused.value).toBe("");
});

describe("a patch", () => {
  const PATCH = { t: "patch", rev: 2, screen: "plan", sheet: "plan", groups: { a: "g" }, gone: [], snaps: [], whole: false };
  const drawn = () => ({ pictures: [{ name: "plan", svg: "<g/>" }] });

  it("that no sheet takes, for it is not drawn yet, empties nothing and is fetched", async () => {
    const link = await opened();
    await shown(link, drawn());
    const before = fetches.length;
    says(PATCH);
    expect(link.screen.value?.pictures[0]?.svg).toBe("<g/>");
    expect(fetches.length).toBe(before + 1);
  });

  it("that a sheet takes is not fetched, and the next fetch draws it anew", async () => {
    const link = await opened();
    await shown(link, drawn());
    link.bus.addEventListener("patch", (event) => event.preventDefault());
    const before = fetches.length;
    says(PATCH);
    expect(fetches.length).toBe(before);
    expect(link.screen.value).toMatchObject({ rev: 2, pictures: [{ svg: "" }] });
  });
});
