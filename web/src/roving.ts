/** Many things that Tab comes to once: a key goes from one to the next, and Tab comes back to the last of them. */

const INFINITE = Number.MAX_SAFE_INTEGER;
/** How far a key goes among the things of a sheet. The arrows move what has the focus, so they are not among them. */
export const AMONG_THINGS: Readonly<Record<string, number>> = { PageDown: 1, ".": 1, PageUp: -1, ",": -1, Home: -INFINITE, End: INFINITE };
/** How far a key goes among the points of a line of a chart, and from one line to another at the same place. */
export const ALONG_A_LINE: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowLeft: -1, Home: -INFINITE, End: INFINITE };
export const BETWEEN_LINES: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1 };

/** The thing that a key goes to, and nothing where it is no such key; the ends hold. */
export function goneTo<T>(all: readonly T[], at: T | undefined, key: string, ways: Readonly<Record<string, number>>): T | undefined {
  const by = ways[key];
  if (by === undefined || !all.length) return undefined;
  const here = at === undefined ? -1 : all.indexOf(at);
  return all[Math.min(Math.max(here + by, 0), all.length - 1)];
}

/** Leave one of them for Tab to come to. */
export function oneStop(all: readonly Element[], at: Element | undefined): void {
  for (const one of all) one.setAttribute("tabindex", one === at ? "0" : "-1");
}
