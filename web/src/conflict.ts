import { blocksOf, chosenText } from "./blocks";

/** A text that stands against the one in the editor: what is said of it, what a press keeps or takes, what is done in the end. */
export type Other = { says: string; theirs: string; keep: string; take: string; done: (text: string) => void };

/** Both texts, block by block; nothing is written until each is decided. */
export function conflictView(place: HTMLElement, editor: HTMLElement, other: Other | null, mine: () => string): void {
  place.querySelector(".conflict-view")?.remove();
  editor.hidden = other !== null;
  if (!other) return;
  const blocks = blocksOf(mine(), other.theirs);
  const decided = new Map<number, "mine" | "theirs">();
  const box = document.createElement("section");
  box.className = "conflict-view";
  box.setAttribute("aria-label", "Two versions of the file");
  const head = document.createElement("p");
  head.textContent = `${other.says}. Decide each block; then it is written.`;
  const done = document.createElement("button");
  done.className = "do";
  done.textContent = "Write what is chosen";
  done.disabled = true;
  const open = blocks.filter((one) => one.isDifferent).length;
  done.onclick = () => other.done(chosenText(blocks, decided));
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
      button.textContent = side === "mine" ? other.keep : other.take;
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
