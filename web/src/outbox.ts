import type { Up } from "./contract";

type Draft<M> = M extends unknown ? Omit<M, "seq" | "base"> & { base?: number } : never;
/** A message before it is numbered. */
export type Said = Draft<Up>;

/** What is not answered by numbers of its own: nothing waits for it. */
const UNANSWERED = new Set<Up["t"]>(["look", "hello", "seek", "write-again", "resolve"]);

/**
 * What waits to be sent. One message is under way at a time; a preview replaces the one before it, an edit is never
 * lost, keeps its place, and ends the preview before it.
 */
export class Outbox {
  private edits: Said[] = [];
  private move: Said | null = null;
  private seq = 0;
  private under = 0;
  private sent: Up | null = null;
  private said: Said | null = null;
  /** The number of the newest message sent; answers to older ones are stale. */
  get newest(): number {
    return this.seq;
  }
  constructor(
    private readonly transmit: (text: string) => void,
    private readonly rev: () => number,
  ) {}

  put(message: Said): void {
    if (message.t === "move") this.move = message;
    else {
      this.move = null;
      this.edits.push(message);
    }
    this.flush();
  }

  /** An answer to a message came: the next may go. */
  answered(seq: number): void {
    if (seq >= this.under) this.under = 0;
    this.flush();
  }

  /** What was put and is answered by a number, null where that number answers nothing under way. */
  asked(seq: number): Said | null {
    return this.under === seq ? this.said : null;
  }

  /** Whether a number is that of typing under way. */
  isTyping(seq: number): boolean {
    return this.under === seq && this.sent?.t === "text";
  }

  /** The line is new: nothing is under way on it any more. The first word goes, then what waits. */
  restart(first: Said): void {
    // Typing is taken up once, however often it is said: it is said again.
    if (this.under && this.sent?.t === "rejoin") this.edits.unshift(this.sent);
    this.edits.unshift(first);
    this.under = 0;
    this.flush();
  }

  /** What was done and is not answered, for the last word of the page. Typing goes by itself. */
  rest(): Up[] {
    const waiting = this.edits.map((one, index) => ({ base: this.rev(), ...one, seq: this.seq + 1 + index }) as Up);
    const under = this.under && this.sent ? [this.sent] : [];
    return [...under, ...waiting].filter((one) => !["text", "move", "cancel"].includes(one.t) && !UNANSWERED.has(one.t));
  }

  /** Whether a preview is on its way or waits. */
  get isBusy(): boolean {
    return this.under !== 0;
  }

  private flush(): void {
    if (this.under) return;
    const next = this.edits.shift() ?? this.move;
    if (!next) return;
    if (next === this.move) this.move = null;
    this.seq += 1;
    const isAnswered = !UNANSWERED.has(next.t);
    this.said = next;
    this.sent = { base: this.rev(), ...next, seq: this.seq } as Up;
    if (isAnswered) this.under = this.seq;
    this.transmit(JSON.stringify(this.sent));
    if (!isAnswered) this.flush();
  }
}
