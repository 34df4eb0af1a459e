import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { No } from "./contract";
import { bus, isConnected, refused, send, state } from "./link";

/** Where the measures that are asked for are taken. */
function Measured() {
  const along = (from: number, to: number, y: number, words: string) => (
    <>
      <path class="dim" d={`M${from} ${y}H${to}M${from} ${y - 5}V${y + 5}M${to} ${y - 5}V${y + 5}`} />
      <text x={(from + to) / 2} y={y - 5} text-anchor="middle">{words}</text>
    </>
  );
  return (
    <svg class="measured" viewBox="24 16 516 158" role="img" aria-label="A box trailer from its side: where length, height, ball to front wall and front wall to axle are measured">
      <path class="body" d="M150 24H500V126H150Z" />
      <path class="wide" d="M40 126H500M150 126V24H500V126" />
      <circle class="wide" cx="40" cy="126" r="5" /><circle class="wide" cx="344" cy="134" r="19" /><circle class="wide" cx="344" cy="134" r="4" />
      <path class="thin" d="M40 132V170M150 120V170M344 138V170" />
      {along(150, 500, 66, "inside length")}
      {along(40, 150, 164, "ball to front wall")}
      {along(150, 344, 164, "front wall to axle")}
      <path class="dim" d="M528 24V126M523 24H533M523 126H533" />
      <text x="520" y="71" text-anchor="middle" transform="rotate(-90 520 71)">inside height</text>
    </svg>
  );
}

/** The first page: a demo rig of one's own to look round in, or a start from what one knows. */
export function First() {
  const demos = state.value?.demos ?? [];
  const asks = state.value?.asks ?? [];
  const form = useRef<HTMLFormElement>(null);
  /** The question whose answer was refused: it is told at its box, and the hand is led there. */
  const asked = useSignal("");
  useEffect(() => {
    const told = (event: Event) => {
      asked.value = (event as CustomEvent<No>).detail.asked ?? "";
      requestAnimationFrame(() => form.current?.querySelector<HTMLElement>("[aria-invalid]")?.focus());
    };
    bus.addEventListener("no", told);
    return () => bus.removeEventListener("no", told);
  }, []);
  const wrong = (name: string) => refused.value !== "" && asked.value === name;
  return (
    <section class="first">
      <h1>Whose trailer is it?</h1>
      <p>Boxwright keeps a whole camper trailer in one plain text file and works everything out together: what it weighs, whether it may be towed, where every stud is. Nothing leaves this computer.</p>
      <h2>Begin with your own</h2>
      <p>Leave out what you do not know yet; it stands in the file as unknown, with where to read it.</p>
      <Measured />
      <p><small>{state.value?.terms.stud ?? ""}</small></p>
      <form ref={form} onSubmit={(event) => {
        event.preventDefault();
        asked.value = "";
        const answers: Record<string, string> = {};
        for (const [key, value] of new FormData(event.currentTarget)) if (typeof value === "string" && value.trim()) answers[key] = value.trim();
        send({ t: "begin", demo: "", answers });
      }}>
        {asks.map((one) => (
          <label key={one.name}>
            <span>{one.label}</span>
            <input name={one.name} maxLength={60} autocomplete="off" placeholder="I do not know yet" aria-description={one.explains}
              aria-invalid={wrong(one.name) || undefined} aria-errormessage={wrong(one.name) ? "wrong" : undefined} />
            {wrong(one.name) && <small id="wrong" class="wrong" role="alert">{refused.value}</small>}
            <small>{one.explains}</small>
          </label>
        ))}
        <button class="do" disabled={!isConnected.value}>Begin my rig file</button>
      </form>
      <h2>Or look round in a demo first</h2>
      <p>An invented rig, opened as a copy in this folder: change what you like.</p>
      <ul class="demos">
        {demos.map((one) => (
          <li key={one.name}>
            <button disabled={!isConnected.value} onClick={() => send({ t: "begin", demo: one.name, answers: {} })}>
              <b>{one.label}</b>{one.explains && <span>{one.explains}</span>}
            </button>
          </li>
        ))}
      </ul>
      {refused.value && !asks.some((one) => wrong(one.name)) && <p class="refused" role="alert">{refused.value}</p>}
    </section>
  );
}
