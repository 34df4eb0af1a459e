export type Block = { isDifferent: boolean; line: number; mine: string[]; theirs: string[] };

/** Two texts as blocks of lines that are the same or different, in order. */
export function blocksOf(mine: string, theirs: string): Block[] {
  const a = mine.split("\n");
  const b = theirs.split("\n");
  const blocks: Block[] = [];
  let i = 0;
  let j = 0;
  const push = (isDifferent: boolean, one: string[], other: string[], line: number) => {
    if (one.length || other.length) blocks.push({ isDifferent, line, mine: one, theirs: other });
  };
  while (i < a.length || j < b.length) {
    const start = [i, j] as const;
    while (i < a.length && j < b.length && a[i] === b[j]) {
      i += 1;
      j += 1;
    }
    push(false, a.slice(start[0], i), b.slice(start[1], j), start[0] + 1);
    if (i >= a.length && j >= b.length) break;
    const from = [i, j] as const;
    [i, j] = nextSame(a, b, i, j);
    push(true, a.slice(from[0], i), b.slice(from[1], j), from[0] + 1);
  }
  return blocks;
}

/** The nearest place at which both texts hold the same line again. */
function nextSame(a: string[], b: string[], i: number, j: number): [number, number] {
  const most = a.length - i + (b.length - j);
  for (let sum = 1; sum <= most; sum += 1)
    for (let di = Math.max(0, sum - (b.length - j)); di <= Math.min(sum, a.length - i); di += 1) {
      const line = a[i + di];
      if (line !== undefined && line.trim() && line === b[j + sum - di]) return [i + di, j + sum - di];
    }
  return [a.length, b.length];
}

/** The text of the chosen sides. */
export function chosenText(blocks: Block[], decided: ReadonlyMap<number, "mine" | "theirs">): string {
  return blocks.flatMap((one, index) => (one.isDifferent && decided.get(index) === "theirs" ? one.theirs : one.mine)).join("\n");
}
