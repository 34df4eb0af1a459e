import { computed, signal } from "@preact/signals";
import {
  CONTRACT,
  type Disk,
  type Down,
  type Figure,
  type LeftText,
  type Numbers,
  type Offered,
  type Patch,
  type Picture,
  type Screen,
  type Slot,
  type State,
  type TextIs,
  type Typed,
} from "./contract";
import { keepTyped, keptSlot, takeTyped } from "./kept";
import { Outbox, type Said } from "./outbox";

export const state = signal<State | null>(null);
export const numbers = signal<Numbers | null>(null);
export const disk = signal<Disk | null>(null);
export const text = signal<string>("");
export const screen = signal<Screen | null>(null);
/** Why the screen that is looked at is not to be had. */
export const notShown = signal("");
/** The changes that were found, and the findings a change is being sought for, by the key of their finding. */
export const offered = signal<Record<string, Offered>>({});
export const seeking = signal<ReadonlySet<string>>(new Set());
/** What an earlier session left, while it is being looked at beside the text. */
export const leftText = signal<LeftText | null>(null);
export const refused = signal<string>("");
export const isConnected = signal(false);
export const wasConnected = signal(false);
export const slot = signal<Slot>({ stage: "", load: "", vehicle: "" });
export const isPreview = computed(() => numbers.value?.preview ?? false);
const isOfSlot = (one: Slot): boolean =>
  (["stage", "load", "vehicle"] as const).every((part) => (one[part] ?? "") === (slot.value[part] ?? ""));
/** Whether another stage, load state or vehicle was chosen, and its numbers are still being worked out. */
export const isOther = computed(() => settled.value !== null && !isOfSlot(settled.value.slot));
/** The answers, the accepted findings and the problems stay while a hand holds something. */
export const settled = signal<Numbers | null>(null);

/** The numbers of the night beside some screens. While a hand moves they are of before: they follow once it rests. */
export const night = signal<{ figures: Figure[]; isOld: boolean }>({ figures: [], isOld: false });

/** The line of the file the hand was in last, for a screen that shows the thing it is about. */
export const lookedLine = signal<number | null>(null);

export const bus = new EventTarget();
export const named = (): string => decodeURIComponent(location.hash.slice(1)) || "plan";
export const at = signal<string>(named());

let socket: WebSocket | null = null;
const outbox = new Outbox(
  (message) => socket?.readyState === 1 && socket.send(message),
  () => state.value?.rev ?? 0,
);

export const send = (message: Said): void => {
  refused.value = "";
  outbox.put(message);
};

const waiting = new Map<Said, (why: string) => void>();
/** Send what is answered by yes or no: an empty text, or why it was refused. Nothing typed is let go of before. */
export const ask = (message: Said): Promise<string> =>
  new Promise((done) => {
    waiting.set(message, done);
    send(message);
  });
function answered(seq: number, why: string): void {
  const said = outbox.asked(seq);
  if (said && waiting.has(said)) {
    waiting.get(said)?.(why);
    waiting.delete(said);
    if (why) refused.value = "";
  }
  outbox.answered(seq);
}

/** The line is gone: whoever waits for an answer is told, and what they asked is not done behind their back later. */
function letGo(): void {
  for (const [said, done] of waiting) {
    outbox.letGo(said);
    done("The line was lost meanwhile. Look whether it was put down, then try again.");
  }
  waiting.clear();
  seeking.value = new Set();
}

/** The editor and the program hold different texts: ask for the whole. */
export const lostStep = (): void => outbox.put(hello());
const page = crypto.randomUUID();
const hello = (): Said => ({ t: "hello", page, contract: CONTRACT, screen: at.value, slot: slot.value, locale: navigator.language });

/** Whether something of this page is under way: what is shown is then not yet what is stored. */
export const isWaiting = (): boolean => outbox.isBusy;

/** Fetch the screen looked at. Only the last one that was asked for counts; nobody waits for the others any more. */
let asked = new AbortController();
export async function fetchScreen(): Promise<void> {
  const name = at.value;
  if (!state.value?.has_file) return;
  asked.abort();
  const mine = (asked = new AbortController());
  const { found, why } = await got<Screen>(`/screen/${encodeURIComponent(name)}`, {}, mine.signal);
  if (mine.signal.aborted || name !== at.value) return;
  notShown.value = why;
  if (isHolding) isPutOff = true;
  // What is on the screen is of another text, stage or load state: nothing is better than that.
  else screen.value = found && { ...found, pictures: found.pictures.map(asBefore) };
  if (!found) return;
  // The text was changed while it was made: it is better than nothing, and asked for once more.
  if (!isHolding && found.rev < state.value.rev) void fetchScreen();
}

/** A picture that is drawn as before stays the same object, so that nothing lets go of what is held or focused. */
function asBefore(picture: Picture): Picture {
  const before = screen.value?.pictures.find((one) => one.name === picture.name);
  return before && JSON.stringify(before) === JSON.stringify(picture) ? before : picture;
}

let isHolding = false;
let isPutOff = false;
/** Say whether a hand holds something: a sheet is not drawn anew under it, but as soon as it lets go. */
export function hold(isHeld: boolean): void {
  isHolding = isHeld;
  if (isHeld || !isPutOff) return;
  isPutOff = false;
  void fetchScreen();
}

/** What was fetched, and where nothing was, why in words. The program may answer that there is nothing: then no why. */
export type Got<T> = { found: T | null; why: string };

export const NO_ANSWER = "Not shown: the program did not answer. It is asked again with the next change, and when the line is back.";
const NOT_MADE = "Not shown: the program could not make it. It is asked again with the next change.";

/** Fetch something of what is looked at by its address, or learn why it is not to be had. */
export async function got<T>(path: string, more: Record<string, string> = {}, signal: AbortSignal | null = null): Promise<Got<T>> {
  try {
    const answer = await fetch(`${path}?${new URLSearchParams({ ...slot.value, ...more })}`, { signal });
    return answer.ok ? { found: (await answer.json()) as T, why: "" } : { found: null, why: NOT_MADE };
  } catch {
    return { found: null, why: NO_ANSWER };
  }
}

/** Fetch something where it does not matter why it is not to be had. */
export async function fetched<T>(path: string, more: Record<string, string> = {}): Promise<T | null> {
  return (await got<T>(path, more)).found;
}

export function look(): void {
  send({ t: "look", screen: at.value, slot: slot.value });
  void fetchScreen();
}

/** Take up what an earlier session left: at once where that undoes nothing, else both are looked at first. */
export async function takeLeft(): Promise<void> {
  const found = await fetched<LeftText>("/left");
  if (found?.is_sure) send({ t: "recover", take: true });
  else if (found) {
    leftText.value = found;
    location.hash = "#file";
  }
}

export function choose(part: Partial<Slot>): void {
  slot.value = { ...slot.value, ...part };
  sessionStorage.setItem("slot", JSON.stringify(slot.value));
  look();
}

/** The program is there, and it is known which: from now on hands are listened to. */
function met(now: State, before: State | null): void {
  const isSame = before === null || before.program === now.program;
  // What is drawn is the text of a program that is no more: nobody takes hold of it.
  if (!isSame) screen.value = null;
  const doubtful = outbox.open(isSame ? now.heard : null);
  isConnected.value = wasConnected.value = true;
  if (doubtful) {
    const what = "of" in doubtful ? ` of ${doubtful.of}` : "";
    refused.value = `The program ended while a change${what} was on its way to it. Look whether it was made; if not, make it again.`;
  }
  if (before?.has_file) void fetchScreen();
}

function told(message: Down): void {
  switch (message.t) {
    case "state": {
      const before = state.value;
      const isNew = !before?.has_file && message.has_file;
      state.value = message;
      if (!message.left) leftText.value = null;
      if (!isConnected.value && message.heard >= 0) met(message, before);
      if (isNew) outbox.answered(Infinity);
      // A stage, load state or vehicle that was renamed or taken out, or is of another rig, is no longer looked at.
      if (message.has_file) {
        const there = (choices: { name: string }[], name: string | undefined) =>
          choices.some((one) => one.name === name) ? name : "";
        const stage = there(message.stages, slot.value.stage);
        const load = there(message.loads, slot.value.load);
        const vehicle = there(message.vehicles, slot.value.vehicle) || (message.vehicles[0]?.name ?? "");
        const now = slot.value;
        if (stage !== (now.stage ?? "") || load !== (now.load ?? "") || vehicle !== (now.vehicle ?? "")) choose({ stage, load, vehicle });
        else if (isNew) void fetchScreen();
      }
      break;
    }
    case "numbers":
      if (message.preview && message.seq < outbox.newest - 1) break;
      if (!isOfSlot(message.slot)) {
        // Of what was chosen before: shown now, it would stand under the name of another stage.
        answered(message.seq, "");
        break;
      }
      numbers.value = message;
      night.value = message.night ? { figures: message.night, isOld: false } : { ...night.value, isOld: true };
      if (!message.preview) settled.value = message;
      bus.dispatchEvent(new CustomEvent("numbers", { detail: message }));
      answered(message.seq, "");
      break;
    case "night":
      // Of where the hand was before it moved on: what is shown waits for where it rests now.
      if (message.seq === numbers.value?.seq && message.seq >= outbox.newest && isOfSlot(message.slot)) night.value = { figures: message.figures, isOld: false };
      break;
    case "patch":
      patched(message);
      break;
    case "text":
      textBecomes(message);
      break;
    case "disk":
      disk.value = message;
      break;
    case "no":
      refused.value = message.why;
      if (outbox.isTyping(message.seq)) bus.dispatchEvent(new Event("typing-refused"));
      bus.dispatchEvent(new CustomEvent("no", { detail: message }));
      answered(message.seq, message.why);
      break;
    case "offered":
      // What was proved in an earlier text is no longer proved.
      if (message.rev === state.value?.rev) offered.value = { ...offered.value, [message.key]: message };
      seeking.value = new Set([...seeking.value].filter((one) => one !== message.key));
      break;
    case "reload":
      location.reload();
      break;
  }
}

/** Whoever edits the text follows it too, past what is typed and not sent yet. */
let follower: ((message: TextIs) => void) | null = null;
let rev = 0;
export const textRev = (): number => rev;
export const follow = (who: (message: TextIs) => void, whatRests: (isWhole: boolean) => Typed | null): void => {
  follower = who;
  typedRest = whatRests;
};

let typedRest: (isWhole: boolean) => Typed | null = () => null;
/** The page is closed: what is not answered is said once more, past the socket, or kept for when it is opened again. */
addEventListener("pagehide", () => {
  const typed = typedRest(false);
  const edits = outbox.rest();
  if (!typed && !edits.length) return;
  const isSaid = isConnected.value && navigator.sendBeacon("/leave", JSON.stringify({ page, edits, typed }));
  const whole = isSaid ? null : typedRest(true);
  if (whole && state.value) keepTyped(localStorage, state.value.place, page, whole);
});
addEventListener("pageshow", (event) => event.persisted && location.reload());

/** Take up typing that no program could be told of. */
function resume(): void {
  if (!state.value?.has_file) return;
  for (const typed of takeTyped(localStorage, state.value.place)) send({ t: "rejoin", typed });
}

function textBecomes(message: TextIs): void {
  if (message.rev !== rev) {
    offered.value = {};
    seeking.value = new Set();
  }
  rev = message.rev;
  if (follower) follower(message);
  else if (message.text !== null) text.value = message.text;
  else
    for (const one of message.changes)
      text.value = text.value.slice(0, one.start) + one.insert + text.value.slice(one.end);
  if (message.text !== null) resume();
}

function patched(message: Patch): void {
  if (message.screen !== at.value) return;
  const isTaken = !message.whole && !bus.dispatchEvent(new CustomEvent<Patch>("patch", { detail: message, cancelable: true }));
  // A sheet that was fetched and is not drawn yet takes no patch: it would come empty, or as it was before.
  if (!isTaken) void fetchScreen();
  else {
    if (screen.value) screen.value.rev = message.rev;
    // What was patched is no longer drawn as it was fetched: the next fetch draws it anew.
    const shown = screen.value?.pictures.find((one) => one.name === message.sheet);
    if (shown) shown.svg = "";
  }
}

export function link(): void {
  slot.value = keptSlot(sessionStorage.getItem("slot"));
  socket = new WebSocket(`ws://${location.host}/ws`);
  socket.onopen = () => {
    outbox.greet(hello());
  };
  socket.onmessage = (event) => told(JSON.parse(event.data as string) as Down);
  socket.onclose = () => {
    isConnected.value = false;
    outbox.close();
    // A preview is over with the line: what is shown is what is stored.
    if (settled.value) {
      numbers.value = settled.value;
      night.value = { figures: settled.value.night ?? [], isOld: false };
    }
    bus.dispatchEvent(new CustomEvent("lost"));
    letGo();
    setTimeout(link, 700);
  };
}

addEventListener("hashchange", () => {
  at.value = named();
  screen.value = null;
  notShown.value = "";
  look();
});
