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

  /** The line is new: nothing is under way on it any more, and what waits goes now. */
  restart(): void {
    this.under = 0;
    this.flush();
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
    if (isAnswered) this.under = this.seq;
    this.transmit(JSON.stringify({ base: this.rev(), ...next, seq: this.seq }));
    if (!isAnswered) this.flush();
  }
}
