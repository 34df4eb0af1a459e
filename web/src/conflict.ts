import type { Disk } from "./contract";
import { blocksOf, chosenText } from "./blocks";
import { send } from "./link";

/** Both texts of a conflict, block by block; nothing is written until each is decided. */
export function conflictView(place: HTMLElement, editor: HTMLElement, disk: Disk | null, mine: () => string): void {
  place.querySelector(".conflict-view")?.remove();
  const theirs = disk?.state === "conflict" ? disk.text : null;
  editor.hidden = theirs !== null && theirs !== undefined;
  if (!disk || theirs === null || theirs === undefined) return;
  const blocks = blocksOf(mine(), theirs);
  const decided = new Map<number, "mine" | "theirs">();
  const box = document.createElement("section");
  box.className = "conflict-view";
  box.setAttribute("aria-label", "Two versions of the file");
  const head = document.createElement("p");
  head.textContent = `${disk.says}. Decide each block; then it is written.`;
  const done = document.createElement("button");
  done.className = "do";
  done.textContent = "Write what is chosen";
  done.disabled = true;
  const open = blocks.filter((one) => one.isDifferent).length;
  done.onclick = () => send({ t: "resolve", disk_hash: disk.hash, text: chosenText(blocks, decided) });
  box.append(head);
  blocks.forEach((block, index) => {
    if (!block.isDifferent) return;
    const part = document.createElement("fieldset");
    const legend = document.createElement("legend");
    legend.textContent = `Line ${block.line}`;
    part.append(legend);
    for (const side of ["mine", "theirs"] as const) {
      const row = document.createElement("div");
      const button = document.createElement("button");
      button.textContent = side === "mine" ? "Keep mine" : "Take disk";
      button.setAttribute("aria-pressed", "false");
      button.onclick = () => {
        decided.set(index, side);
        for (const one of part.querySelectorAll("button")) one.setAttribute("aria-pressed", String(one === button));
        done.disabled = decided.size < open;
      };
      const lines = document.createElement("pre");
      lines.textContent = block[side].join("\n") || "(nothing)";
      row.append(button, lines);
      part.append(row);
    }
    box.append(part);
  });
  box.append(done);
  place.append(box);
}
