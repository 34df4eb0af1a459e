import { ChangeSet, type Text } from "@codemirror/state";
import type { TextChange } from "./contract";

/**
 * What was typed and the program has not answered yet. One stretch of typing is under way at a time, so that its places
 * are always those of a text the program had; what somebody else changes meanwhile is carried past it.
 */
export class Typing {
  private under: ChangeSet | null = null;
  private waits: ChangeSet | null = null;

  /** Whether the program has everything that was typed. */
  get isDone(): boolean {
    return !this.under && !this.waits;
  }

  /** Whether typing was sent and is not answered. */
  get isUnder(): boolean {
    return this.under !== null;
  }

  typed(changes: ChangeSet): void {
    this.waits = this.waits ? this.waits.compose(changes) : changes;
  }

  /** What is to be sent now: nothing while something is under way. */
  next(): TextChange[] | null {
    if (this.under || !this.waits) return null;
    [this.under, this.waits] = [this.waits, null];
    return stretches(this.under);
  }

  /** What is neither answered nor sent, for a program that may have lost it. */
  rest(): { under: TextChange[]; waits: TextChange[] } {
    return { under: stretches(this.under), waits: stretches(this.waits) };
  }

  /** The program has what was sent: what it made of its text. */
  answered(): ChangeSet | null {
    const done = this.under;
    this.under = null;
    return done;
  }

  /** The texts were put in step as a whole: nothing is under way any more. */
  forget(): void {
    this.under = this.waits = null;
  }

  /** A change made elsewhere, in the places of the program's text, as it lies in the text here. */
  from(elsewhere: ChangeSet): ChangeSet {
    let change = elsewhere;
    const past = (own: ChangeSet | null): ChangeSet | null => {
      if (!own) return null;
      const carried = own.map(change);
      change = change.map(own, true);
      return carried;
    };
    this.under = past(this.under);
    this.waits = past(this.waits);
    return change;
  }

  /** Whether a change of the program's text, `there`, touches a line in which something typed is on its way. */
  meets(elsewhere: ChangeSet, there: Text): boolean {
    let [change, text] = [elsewhere, there];
    for (const own of [this.under, this.waits]) {
      if (!own) continue;
      if (sharesALine(own, change, text)) return true;
      [change, text] = [change.map(own, true), own.apply(text)];
    }
    return false;
  }

  /** How long the program's text is while ours is so long. */
  lengthThere(here: number): number {
    const back = (length: number, own: ChangeSet | null) => (own ? length - own.newLength + own.length : length);
    return back(back(here, this.waits), this.under);
  }
}

function sharesALine(own: ChangeSet, other: ChangeSet, text: Text): boolean {
  let shares = false;
  own.iterChangedRanges((from, to) => {
    const [first, last] = [text.lineAt(from).from, text.lineAt(to).to];
    other.iterChangedRanges((start, end) => (shares ||= start <= last && end >= first));
  });
  return shares;
}

function stretches(changes: ChangeSet | null): TextChange[] {
  const found: TextChange[] = [];
  changes?.iterChanges((from, to, _from, _to, inserted) => found.push({ start: from, end: to, insert: inserted.toString() }));
  return found;
}

/** Changes that were made one after the other, as one. */
export function asOne(changes: TextChange[], length: number): ChangeSet {
  let found = ChangeSet.empty(length);
  for (const one of changes) found = found.compose(ChangeSet.of({ from: one.start, to: one.end, insert: one.insert }, found.newLength));
  return found;
}

/** A whole text that takes the place of another, as the stretch in which they differ: the cursor stays elsewhere. */
export function wholeAsChange(before: string, after: string): ChangeSet {
  let start = 0;
  const most = Math.min(before.length, after.length);
  while (start < most && before[start] === after[start]) start += 1;
  let end = 0;
  while (end < most - start && before[before.length - 1 - end] === after[after.length - 1 - end]) end += 1;
  return asOne([{ start, end: before.length - end, insert: after.slice(start, after.length - end) }], before.length);
}
