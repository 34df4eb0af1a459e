import type { Up } from "./contract";

type Draft<M> = M extends unknown ? Omit<M, "seq" | "base"> & { base?: number } : never;
/** A message before it is numbered. */
export type Said = Draft<Up>;

/** What is not answered by numbers of its own: nothing waits for it. */
const UNANSWERED = new Set<Up["t"]>(["look", "hello", "seek", "write-again", "resolve"]);

/**
 * What waits to be sent. One message is under way at a time; a preview replaces the one before it, an edit is never
 * lost, keeps its place, and ends the preview before it. While no program is there all of it waits.
 */
export class Outbox {
  private edits: Said[] = [];
  private move: Said | null = null;
  private seq = 0;
  private under = 0;
  private sent: Up | null = null;
  private said: Said | null = null;
  private isOpen = false;
  /** The number of the newest message sent; answers to older ones are stale. */
  get newest(): number {
    return this.seq;
  }
  constructor(
    private readonly transmit: (text: string) => void,
    private readonly rev: () => number,
  ) {}

  put(message: Said): void {
    if (message.t === "move") this.move = this.isOpen ? message : null;
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

  /** The line is gone: what waits goes on waiting, what was sent is in doubt until the program is met again. */
  close(): void {
    this.isOpen = false;
    this.move = null;
  }

  /** Say the first word on a new line: it goes before all that waits, and that waits until the program is met. */
  greet(first: Said): void {
    this.seq += 1;
    this.transmit(JSON.stringify({ base: this.rev(), ...first, seq: this.seq }));
  }

  /**
   * The program is met. `heard` is the last number of ours it handled, null where it is another program than the one
   * that was spoken with: what was sent and did not get there goes once more, and what may have got there to a program
   * that is no more is returned, to be said.
   */
  open(heard: number | null): Said | null {
    const [sent, said] = this.under ? [this.sent, this.said] : [null, null];
    this.under = 0;
    this.isOpen = true;
    // The revisions of another program are not those of this one.
    if (heard === null) this.edits = this.edits.map(({ base: _, ...one }) => one as Said);
    const isLasting = sent !== null && !["text", "move", "cancel"].includes(sent.t);
    // Typing is taken up once, however often it is said: it is said again.
    const isMissed = sent !== null && (sent.t === "rejoin" || (heard !== null && sent.seq > heard));
    if (said && isLasting && isMissed) this.edits.unshift(said);
    this.flush();
    return said && isLasting && !isMissed && heard === null ? said : null;
  }

  /** Nobody waits for this any more: it is not sent, or not once more. */
  letGo(said: Said): void {
    this.edits = this.edits.filter((one) => one !== said);
    if (this.said === said) this.under = 0;
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
    if (this.under || !this.isOpen) return;
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
