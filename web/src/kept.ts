import type { Slot, Typed } from "./contract";

type Store = Pick<Storage, "length" | "key" | "getItem" | "setItem" | "removeItem">;
/** `place` stands for the whole path of the rig file: two rigs of one name in two folders never meet. */
const named = (place: string): string => `typed ${place} `;

/** Keep what one page could tell no program; another page that is closed later keeps its own beside it. */
export function keepTyped(store: Store, place: string, page: string, typed: Typed): void {
  store.setItem(named(place) + page, JSON.stringify(typed));
}

/** Take away and return what pages of a rig kept; each is taken once, whoever comes first. */
export function takeTyped(store: Store, place: string): Typed[] {
  const keys = [...Array(store.length).keys()].map((at) => store.key(at) ?? "").filter((key) => key.startsWith(named(place)));
  return keys.sort().flatMap((key) => {
    const kept = store.getItem(key);
    store.removeItem(key);
    try {
      const typed = JSON.parse(kept ?? "null") as Typed | null;
      return typed ? [typed] : [];
    } catch {
      return [];
    }
  });
}

/** What was looked at in this tab, as far as it can be read; what is not there any more is found out by the program. */
export function keptSlot(kept: string | null): Slot {
  const found: Slot = { stage: "", load: "", vehicle: "" };
  try {
    const read: unknown = JSON.parse(kept ?? "null");
    for (const part of ["stage", "load", "vehicle"] as const) {
      const name: unknown = Object(read)[part];
      if (typeof name === "string") found[part] = name;
    }
  } catch {
    // Nothing that can be read: everything as it is when the page is opened first.
  }
  return found;
}
