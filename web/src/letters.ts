/** The least height (px) of letters that are shown: below it nobody reads them. */
export const LEAST_PX = 11;
/** The most height of letters: beyond it they only cover what is drawn. */
export const MOST_PX = 17;
/** How far beyond its thing a name that is written larger may reach, as a share of its room: its edges are free. */
const BEYOND = 1.1;
/** How wide a letter is in the page's lettering, as a share of its height. */
const WIDE = 0.46;
const LINE = 1.2;
/** Room (px) between a name and another, and round a number: without it a crowd of them hides the drawing. */
const CLEAR = { name: [6, 1], number: [10, 6] } as const;
/** A thing drawn smaller than this (px, px²) bears neither name nor number until one comes closer. */
const LEAST_THING = { side: 5, area: 130 };
/** One that is seen edge on, as a door in its wall, has its name in the open, and is looked for by its length (px). */
const LEAST_LONG = 32;

export type Room = { width: number; height: number };
export type Word = {
  x: number;
  y: number;
  /** The height of its letters as they were placed (mm), and how many are in each line. */
  size: number;
  chars: number;
  lines: number;
  isTurned: boolean;
  anchor: string;
  /** The thing it has to find room in; null where it stands in the open. */
  room: Room | null;
  /** How large the thing is that it is the name of; null where that is no thing. */
  thing?: Room | null;
  /** Meant to be read from nearer only: never written larger. */
  isNear?: boolean;
  /** Without room on any screen: a number stands for it. */
  isKeyed?: boolean;
  /** The name of something, which a number may stand for; a measure is none. */
  isName?: boolean;
};
/** A number in place of a name: where it stands, and the point it is led to where it stands aside. */
export type Mark = { index: number; number: number; x: number; y: number; lead: { x: number; y: number } | null };
/** One line of the key beside a sheet. */
export type KeyRow = { number: number; words: string; of: string };
export type Box = { left: number; top: number; right: number; bottom: number };

function covers(word: Word, size: number): Box {
  const long = word.chars * WIDE * size;
  const high = (LINE * (word.lines - 1) + 1) * size;
  const before = word.anchor === "start" ? 0 : word.anchor === "end" ? long : long / 2;
  return word.isTurned
    ? { left: word.x - high / 2, right: word.x + high / 2, top: word.y - (long - before), bottom: word.y + before }
    : { left: word.x - before, right: word.x + long - before, top: word.y - high / 2, bottom: word.y + high / 2 };
}

function meets(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}

function grown(one: Box, of: keyof typeof CLEAR, scale: number): Box {
  const [across, upright] = [CLEAR[of][0] / scale, CLEAR[of][1] / scale];
  return { left: one.left - across, right: one.right + across, top: one.top - upright, bottom: one.bottom + upright };
}

type Taken = Box & { isName: boolean };

/** What the words that are written cover. */
const boxes = (words: readonly Word[], found: readonly number[]): Taken[] =>
  words.flatMap((one, index) => (found[index] ? [{ ...covers(one, found[index]), isName: !!one.isName }] : []));

/** Whether a word would lie on another, or its surroundings on a name: a measure may stand close to it. */
const isTaken = (taken: readonly Taken[], box: Box, round: Box): boolean => taken.some((one) => meets(one, one.isName ? round : box));

/** Whether a thing is drawn so large that something may be said of it. */
function isSeen(word: Word, scale: number): boolean {
  if (!word.thing) return true;
  const [wide, high] = [word.thing.width * scale, word.thing.height * scale];
  const isLong = !word.room && Math.max(wide, high) >= LEAST_LONG;
  return isLong || (Math.min(wide, high) >= LEAST_THING.side && wide * high >= LEAST_THING.area);
}

/**
 * How large (mm) each word is written where a millimetre takes `scale` pixels, 0 where it is left out. Letters that are
 * read stay as they were placed, or a little smaller; small ones are written larger as far as they find room, the largest first.
 */
export function sizes(words: readonly Word[], scale: number): number[] {
  const least = LEAST_PX / scale;
  const found = words.map((one) => (one.size >= least && !one.isKeyed ? Math.min(one.size, MOST_PX / scale) : 0));
  const taken = boxes(words, found);
  const small = words.map((_, index) => index).filter((index) => !found[index]).sort((one, other) => (words[other]?.size ?? 0) - (words[one]?.size ?? 0));
  for (const index of small) {
    const word = words[index];
    if (!word || word.isNear || word.isKeyed) continue;
    const box = covers(word, least);
    const fits = !word.room || (box.right - box.left <= word.room.width * BEYOND && box.bottom - box.top <= word.room.height * BEYOND);
    if (!fits || isTaken(taken, box, word.isName ? grown(box, "name", scale) : box)) continue;
    taken.push({ ...box, isName: !!word.isName });
    found[index] = least;
  }
  return found;
}

/** More numbers than this (the largest things first) only cover what is drawn: the others are told where the hand is. */
export const MOST_NUMBERS = 60;
const RINGS = [1.3];
const DIRECTIONS = [[0, -1], [0, 1], [1, 0], [-1, 0], [0.8, -0.8], [-0.8, -0.8], [0.8, 0.8], [-0.8, 0.8]] as const;

/**
 * Numbers for the names that found no room, each where no word and no other number is near. The largest things come
 * first; they are counted in the order one reads them.
 */
export function numbered(words: readonly Word[], found: readonly number[], scale: number): Mark[] {
  const size = LEAST_PX / scale;
  const taken = boxes(words, found);
  const area = (one: Word) => (one.thing ? one.thing.width * one.thing.height : Infinity);
  const left = words.flatMap((one, index) => (one.isName && !found[index] && isSeen(one, scale) ? [{ ...one, index }] : []));
  left.sort((one, other) => area(other) - area(one));
  const half = (2 * WIDE + 0.25) * size * 0.5;
  const marks: Mark[] = [];
  for (const one of left) {
    if (marks.length === MOST_NUMBERS) break;
    const spots: (readonly [number, number])[] = [[0, 0], ...RINGS.flatMap((ring) => DIRECTIONS.map(([x, y]) => [x * ring * size, y * ring * size] as const))];
    for (const [dx, dy] of spots) {
      const box = { left: one.x + dx - half, right: one.x + dx + half, top: one.y + dy - size * 0.52, bottom: one.y + dy + size * 0.52 };
      if (isTaken(taken, box, grown(box, "number", scale))) continue;
      taken.push({ ...box, isName: true });
      const isInside = !!one.room && Math.abs(dx) <= one.room.width / 2 && Math.abs(dy) <= one.room.height / 2;
      marks.push({ index: one.index, number: 0, x: one.x + dx, y: one.y + dy, lead: isInside || (!dx && !dy) ? null : { x: one.x, y: one.y } });
      break;
    }
  }
  const row = (y: number) => Math.round(y / (3 * size));
  marks.sort((one, other) => row(one.y) - row(other.y) || one.x - other.x);
  return marks.map((one, at) => ({ ...one, number: at + 1 }));
}

/** The stretch of a picture that holds its words too, once they are as large as they are read. */
export function around(whole: Box, words: readonly Word[], scale: number): Box {
  return sizes(words, scale).reduce((box, size, index) => {
    const word = words[index];
    if (!word || !size || word.room) return box;
    const own = covers(word, size);
    return { left: Math.min(box.left, own.left), top: Math.min(box.top, own.top), right: Math.max(box.right, own.right), bottom: Math.max(box.bottom, own.bottom) };
  }, whole);
}

/** The words of a drawn picture, each kept at a size that is read. */
export class Letters {
  private words: Word[] = [];
  private texts: SVGTextElement[] = [];
  private scale = 0;
  private frame = 0;
  private key = "";

  /** Told the key to the numbers that stand in a picture, and how many things go without, whenever it becomes another. */
  constructor(
    private readonly sheet: SVGSVGElement,
    private readonly tellKey: (rows: KeyRow[], without: number) => void,
  ) {
    this.read();
  }

  /** Read the words anew, as after something was drawn anew. */
  read(): void {
    this.texts = [...this.sheet.querySelectorAll("text")].filter((one) => one.closest("g")?.style.display !== "none" && !one.closest(".keys"));
    const rooms = new Map<Element, Room | null>();
    this.words = this.texts.map((text) => {
      const group = text.parentElement;
      if (group && !rooms.has(group)) rooms.set(group, text.classList.contains("measure") ? null : roomOf(group));
      const lines = text.childElementCount || 1;
      const longest = text.childElementCount ? Math.max(...[...text.children].map((one) => one.textContent?.length ?? 0)) : text.textContent?.length ?? 0;
      return {
        x: Number(text.getAttribute("x")), y: Number(text.getAttribute("y")), size: Number(text.getAttribute("font-size")), chars: longest, lines,
        isTurned: text.hasAttribute("transform"), anchor: text.getAttribute("text-anchor") ?? "middle",
        isNear: text.classList.contains("near"), isKeyed: text.classList.contains("keyed"),
        isName: !text.classList.contains("measure") && /\p{L}{2}/u.test(text.textContent ?? ""),
        thing: (group && rooms.get(group)) ?? null,
        // One that is hidden has no place in the open: its number stands for its thing, which is as large as it is.
        room: (text.classList.contains("free") && !text.classList.contains("keyed")) || !group ? null : rooms.get(group) ?? null,
      };
    });
    this.scale = 0;
  }

  around(whole: Box, scale: number): Box {
    return around(whole, this.words, scale);
  }

  /** Write the words for a scale (px in a mm), once for a run of changes. */
  fit(scale: number): void {
    if (!(scale > 0) || Math.abs(scale / (this.scale || 1) - 1) < 0.02) return;
    this.scale = scale;
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.write(scale));
  }

  stop(): void {
    cancelAnimationFrame(this.frame);
  }

  /** Write the words at once. */
  write(scale: number): void {
    cancelAnimationFrame(this.frame);
    this.scale = scale;
    const found = sizes(this.words, scale);
    found.forEach((size, index) => {
      const text = this.texts[index];
      const placed = this.words[index]?.size;
      if (!text) return;
      text.style.display = size ? "" : "none";
      text.style.fontSize = size && size !== placed ? `${size}px` : "";
    });
    const marks = numbered(this.words, found, scale);
    const unnamed = this.words.filter((one, index) => one.isName && !found[index]).length;
    this.number(marks, LEAST_PX / scale, unnamed - marks.length);
  }

  /** Draw the numbers over all else, and tell what they stand for. */
  private number(marks: readonly Mark[], size: number, without: number): void {
    this.sheet.querySelector(".keys")?.remove();
    const keys = drawn("g", { class: "keys", "aria-hidden": "true" });
    const rows = marks.map((one) => {
      if (one.lead) keys.append(drawn("path", { class: "ln dimension", d: `M${one.x},${one.y}L${one.lead.x},${one.lead.y}` }));
      const text = drawn("text", { x: one.x, y: one.y, "font-size": size, dy: "0.35em", class: "word free" });
      text.textContent = String(one.number);
      keys.append(text);
      const named = this.texts[one.index];
      return { number: one.number, words: wordsOf(named), of: named?.closest("g")?.dataset.of ?? "" };
    });
    if (rows.length) this.sheet.append(keys);
    const key = JSON.stringify([rows, without]);
    if (key !== this.key) this.tellKey(rows, without);
    this.key = key;
  }
}

function roomOf(group: Element): Room | null {
  const shape = group.querySelector<SVGGraphicsElement>("polygon");
  if (!shape) return null;
  const { width, height } = shape.getBBox();
  return { width, height };
}

function wordsOf(text: SVGTextElement | undefined): string {
  const lines = [...(text?.children ?? [])].map((one) => one.textContent ?? "");
  return lines.length ? lines.reduce((before, line) => before + (before.endsWith("-") ? "" : " ") + line) : text?.textContent ?? "";
}

function drawn(name: string, given: Record<string, string | number>): SVGElement {
  const made = document.createElementNS("http://www.w3.org/2000/svg", name);
  for (const [key, value] of Object.entries(given)) made.setAttribute(key, String(value));
  return made;
}
