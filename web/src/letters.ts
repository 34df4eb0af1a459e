/** The least height (px) of letters that are shown: below it nobody reads them. */
export const LEAST_PX = 11;
/** The most height of letters: beyond it they only cover what is drawn. */
export const MOST_PX = 17;
/** How far beyond its thing a name that is written larger may reach, as a share of its room: its edges are free. */
const BEYOND = 1.1;
/** How wide a letter is in the page's lettering, as a share of its height. */
const WIDE = 0.46;
const LINE = 1.2;

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
  /** What it is the name of; null where it stands in the open. */
  room: Room | null;
  /** Meant to be read from nearer only: never written larger. */
  isNear?: boolean;
};
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

/**
 * How large (mm) each word is written where a millimetre takes `scale` pixels, 0 where it is left out. Letters that are
 * read stay as they were placed, or a little smaller; small ones are written larger as far as they find room, the largest first.
 */
export function sizes(words: readonly Word[], scale: number): number[] {
  const least = LEAST_PX / scale;
  const found = words.map((one) => (one.size >= least ? Math.min(one.size, MOST_PX / scale) : 0));
  const taken = words.flatMap((one, index) => (found[index] ? [covers(one, found[index])] : []));
  const small = words.map((_, index) => index).filter((index) => !found[index]).sort((one, other) => (words[other]?.size ?? 0) - (words[one]?.size ?? 0));
  for (const index of small) {
    const word = words[index];
    if (!word || word.isNear) continue;
    const box = covers(word, least);
    const fits = !word.room || (box.right - box.left <= word.room.width * BEYOND && box.bottom - box.top <= word.room.height * BEYOND);
    if (!fits || taken.some((one) => meets(one, box))) continue;
    taken.push(box);
    found[index] = least;
  }
  return found;
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

  constructor(private readonly sheet: SVGSVGElement) {
    this.read();
  }

  /** Read the words anew, as after something was drawn anew. */
  read(): void {
    this.texts = [...this.sheet.querySelectorAll("text")].filter((one) => one.closest("g")?.style.display !== "none");
    const rooms = new Map<Element, Room | null>();
    this.words = this.texts.map((text) => {
      const group = text.parentElement;
      if (group && !rooms.has(group)) rooms.set(group, text.classList.contains("measure") ? null : roomOf(group));
      const lines = text.childElementCount || 1;
      const longest = text.childElementCount ? Math.max(...[...text.children].map((one) => one.textContent?.length ?? 0)) : text.textContent?.length ?? 0;
      return {
        x: Number(text.getAttribute("x")), y: Number(text.getAttribute("y")), size: Number(text.getAttribute("font-size")), chars: longest, lines,
        isTurned: text.hasAttribute("transform"), anchor: text.getAttribute("text-anchor") ?? "middle",
        isNear: text.classList.contains("near"),
        room: text.classList.contains("free") || !group ? null : rooms.get(group) ?? null,
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
    sizes(this.words, scale).forEach((size, index) => {
      const text = this.texts[index];
      const placed = this.words[index]?.size;
      if (!text) return;
      text.style.display = size ? "" : "none";
      text.style.fontSize = size && size !== placed ? `${size}px` : "";
    });
  }
}

function roomOf(group: Element): Room | null {
  const shape = group.querySelector<SVGGraphicsElement>("polygon");
  if (!shape) return null;
  const { width, height } = shape.getBBox();
  return { width, height };
}
