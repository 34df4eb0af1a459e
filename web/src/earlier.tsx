import "./earlier.css";
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Difference, EarlierText } from "./contract";
import { fetched, isConnected, send, state } from "./link";

const MARKS = { then: "\u2212", now: "+", both: "", gap: "" } as const;
const SPOKEN = { then: "only then", now: "only now", both: "", gap: "" } as const;

/** How an earlier text differs from the one that stands, and the way back to it. */
function Shown({ one, difference, close }: { one: EarlierText; difference: Difference; close: () => void }) {
  const isSame = difference.lines.every((line) => line.side === "gap" || line.side === "both");
  const isOff = !isConnected.value || !state.value?.can_write;
  return (
    <div class="difference">
      <p>
        {isSame ? "This text is the one that stands now." : <>What stood until {one.until} is marked <b class="then">&minus;</b>, what stands now <b class="now">+</b>.</>}{" "}
        {!isSame && <button class="do" disabled={isOff} onClick={() => { send({ t: "bring-back", name: one.name }); close(); }}>Bring this text back</button>}
      </p>
      {!isSame && <p class="meaning">It becomes the text in one step; Undo takes that back, and what stands now is kept among the earlier texts.</p>}
      <ol tabindex={0} aria-label="What differs">
        {difference.lines.map((line, index) => (
          <li key={index} class={line.side}>
            <span class="line" aria-hidden="true">{line.line || ""}</span>
            <b>{MARKS[line.side]}{SPOKEN[line.side] && <span class="vh">{SPOKEN[line.side]}</span>}</b>
            <code>{line.before}{line.side === "both" || line.side === "gap" ? line.text : <mark>{line.text}</mark>}{line.after}</code>
          </li>
        ))}
      </ol>
    </div>
  );
}

/** The earlier texts of the file: when each stood, what was changed then. */
export function Earlier({ close }: { close: () => void }) {
  const texts = useSignal<EarlierText[] | null>(null);
  const asked = useSignal<EarlierText | null>(null);
  const difference = useSignal<Difference | null>(null);
  const rev = state.value?.rev ?? 0;
  const name = asked.value?.name;
  useEffect(() => {
    let isOver = false;
    void fetched<EarlierText[]>("/earlier").then((found) => !isOver && found && (texts.value = found));
    if (name) void fetched<Difference>("/earlier", { name }).then((found) => !isOver && (difference.value = found));
    return () => {
      isOver = true;
    };
  }, [rev, name]);
  return (
    <section class="earlier" aria-label="Earlier texts" onKeyDown={(event) => event.key === "Escape" && close()}>
      <p class="acts"><b>Earlier texts</b> <button onClick={close}>Back to the text</button></p>
      <p class="meaning">Kept beside the file as plain files, in <code>.boxwright/past</code>: of the last hour nearly every one, then one an hour, then one a day. What a day began with stays.</p>
      {texts.value?.length === 0 && <p class="empty">None yet. The text that stands now is kept here as soon as another takes its place.</p>}
      <ul class="texts">
        {(texts.value ?? []).map((one) => (
          <li key={one.name}>
            <button aria-pressed={asked.value?.name === one.name} onClick={() => (asked.value = one)}>
              <b>Until {one.until}</b> <span>then changed: {one.says}</span> <small>{one.size}</small>
            </button>
          </li>
        ))}
      </ul>
      {asked.value && difference.value?.name === name && difference.value && <Shown one={asked.value} difference={difference.value} close={close} />}
    </section>
  );
}
