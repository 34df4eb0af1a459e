/**
 * What has the focus goes away or rests when it has done its work. Then the focus stays at the place: on what comes
 * after it there, else before it. A keyboard that lost it would begin again at the top of the page.
 */

/** The places, near to far, that a focus is kept in. What is drawn on a sheet keeps it by itself. */
const PLACES = ".finding, .findings, .own, .blank, figcaption, header, .inhand";
const REACHED = "button:enabled, summary, input:enabled, select:enabled, a[href]";

type Place = { place: Element; row: number };
let last: { one: Element; places: Place[] } | null = null;

function placesOf(one: Element): Place[] {
  const found: Place[] = [];
  for (let at = one.parentElement?.closest(PLACES); at; at = at.parentElement?.closest(PLACES))
    found.push({ place: at, row: [...at.querySelectorAll(".finding")].findIndex((row) => row.contains(one)) });
  return found;
}

function inPlace({ place, row }: Place, one: Element): HTMLElement | undefined {
  const all = [...place.querySelectorAll<HTMLElement>(REACHED)].filter((each) => each.checkVisibility());
  if (one.isConnected) {
    const isAfter = (each: Element) => (one.compareDocumentPosition(each) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
    return all.find(isAfter) ?? all.at(-1);
  }
  const rows = place.querySelectorAll<HTMLElement>(".finding");
  return rows[Math.min(Math.max(row, 0), rows.length - 1)]?.querySelector<HTMLElement>("summary") ?? all[0];
}

function keep(): void {
  if (!last) return;
  const { one, places } = last;
  const at = document.activeElement;
  const isLost = !one.isConnected || one.matches(":disabled");
  if (!isLost || (at !== null && at !== document.body && at !== one)) return;
  for (const each of places) {
    const next = each.place.isConnected ? inPlace(each, one) : undefined;
    if (next) return next.focus({ preventScroll: true });
  }
}

/** Keep the focus at its place all over the page. */
export function keepFocus(root: Element): void {
  root.addEventListener("focusin", ({ target }) => {
    if (target instanceof Element) last = { one: target, places: placesOf(target) };
  });
  // Where somebody goes by a pointer, they know where they are.
  root.addEventListener("pointerdown", () => (last = null), true);
  new MutationObserver(keep).observe(root, { childList: true, subtree: true, attributes: true, attributeFilter: ["disabled"] });
}
