import { type Signal, signal, useSignal } from "@preact/signals";
import { useEffect, useId, useRef } from "preact/hooks";
import type { Picture, Thing, ThingField } from "./contract";
import { Hand, type View } from "./hand";
import { type KeyRow, Letters } from "./letters";
import { PX_IN_MM, scaleFor } from "./paper";
import { PutIn } from "./putin";
import { ask, bus, fetched, isConnected, named, refused, send, state } from "./link";

export const picked = signal<string>("");
const hidden = signal<Record<string, boolean>>({});
/** A thing somebody asked to be shown, to be focused as soon as it is drawn. */
export const wanted = signal<string>("");

/** The whole holds its words as large as they are read here: more room for them makes them larger, so twice. */
function widen(hand: Hand, letters: Letters, [x, y, w, h]: Picture["view"]): void {
  for (let round = 0; round < 2; round += 1) {
    const { left, top, right, bottom } = letters.around({ left: x, top: y, right: x + w, bottom: y + h }, 1 / hand.perPixel());
    hand.widen({ x: left, y: top, w: right - left, h: bottom - top });
  }
}

/** What the keys do on a sheet; it is one stop of Tab, so that what comes after it is near. */
const KEYS = "Page Down and Page Up, or full stop and comma, go from thing to thing; Home and End to the first and the last. Arrow keys move it 10 mm, with Shift 100, with Alt 1; R turns it, Delete takes it out. Enter goes to its numbers, Escape comes back.";

/** One picture of the rig: the sheet, the layer the hand lifts onto, and its tools. */
export function Sheet({ picture, isOnly, takes }: { picture: Picture; isOnly: boolean; takes?: string | undefined }) {
  const base = useRef<SVGSVGElement>(null);
  const over = useRef<SVGSVGElement>(null);
  const hand = useRef<Hand | null>(null);
  const seen = useRef<View | null>(null);
  const note = useSignal("");
  const hadFocus = useRef("");
  /** Whether somebody goes from the thing to its numbers, which are fetched first. */
  const isEntering = useSignal(false);
  const key = useSignal<KeyRow[]>([]);
  const without = useSignal(0);
  const [, , wide, high] = picture.view;
  const scale = scaleFor(wide, high);
  const isHidden = (layer: string) => hidden.value[layer] ?? picture.off.includes(layer);
  useEffect(() => {
    if (!base.current || !over.current) return;
    const made = new Hand(base.current, over.current, picture, (of) => (picked.value = of), (says) => (note.value = says));
    hand.current = made;
    for (const one of picture.layers) made.layer(one.name, !isHidden(one.name));
    const letters = new Letters(base.current, (rows, more) => {
      key.value = rows;
      without.value = more;
    });
    const refit = (isNew = false) => {
      if (isNew) letters.read();
      letters.fit(1 / made.perPixel());
    };
    // Drawn anew as a whole, the sheet stays where somebody has gone on it.
    widen(made, letters, picture.view);
    if (seen.current) made.look(seen.current);
    made.onSeen = refit;
    made.onEnter = () => (isEntering.value = true);
    made.mark(picked.value);
    const sized = new ResizeObserver(() => refit());
    sized.observe(base.current);
    refit();
    // Paper shows the whole at its scale, whatever was looked at.
    let before: View | null = null;
    const print = () => {
      before ??= made.looks.view;
      const [x, y, w, h] = picture.view;
      made.look({ x, y, w, h });
      letters.write(PX_IN_MM / scale);
    };
    const printed = () => {
      if (before) made.look(before);
      before = null;
    };
    addEventListener("beforeprint", print);
    addEventListener("afterprint", printed);
    if (wanted.value) {
      if (made.focus(wanted.value)) wanted.value = "";
    } else if (document.activeElement === document.body) {
      if (!(hadFocus.current && made.reach(hadFocus.current)) && picked.value) made.focus(picked.value);
    }
    return () => {
      sized.disconnect();
      removeEventListener("beforeprint", print);
      removeEventListener("afterprint", printed);
      letters.stop();
      hadFocus.current = made.focused;
      seen.current = made.looks.isWhole ? null : made.looks.view;
      made.stop();
    };
  }, [picture]);
  useEffect(() => {
    if (wanted.value && hand.current?.focus(wanted.value)) wanted.value = "";
  }, [wanted.value]);
  useEffect(() => hand.current?.mark(picked.value), [picked.value, picture]);
  const toggle = (name: string) => {
    hidden.value = { ...hidden.value, [name]: !isHidden(name) };
    hand.current?.layer(name, !isHidden(name));
  };
  const isHeld = picture.movable.includes(picked.value);
  return (
    <figure class={isOnly ? "picture only" : "picture"}>
      <figcaption>
        <span class="looks">{picture.title}</span>
        <span class="note" aria-hidden="true">{note.value}</span>
        {takes && <PutIn section={takes} words={takes === "parts" ? "Put a part in" : "Put an opening in"} />}
        {picture.layers.length > 0 && (
          <details class="layers">
            <summary>What is shown</summary>
            <div>
              {picture.layers.map((one) => (
                <label key={one.name}><input type="checkbox" checked={!isHidden(one.name)} onChange={() => toggle(one.name)} /> {one.label}</label>
              ))}
            </div>
          </details>
        )}
      </figcaption>
      <p class="scale"><span>Scale 1 : {scale}, if the bar is 100 mm long</span><i /></p>
      <div class="board" style={`--wide:${wide / scale}mm;--high:${high / scale}mm;--shape:${wide / high}`}>
        <svg class="sheet" ref={base} role="group" aria-label={picture.title} aria-description={KEYS} />
        <svg class="sheet over" ref={over} aria-hidden="true" />
        <span class="zoom">
          <button onClick={() => hand.current?.zoom(1 / 1.25)} aria-label={`Closer: ${picture.title}`}>+</button>
          <button onClick={() => hand.current?.zoom(1.25)} aria-label={`Farther: ${picture.title}`}>−</button>
          <button onClick={() => hand.current?.fit()} aria-label={`The whole of ${picture.title}`}>Whole</button>
        </span>
      </div>
      {key.value.length > 0 && (
        <ol class="key" tabIndex={0} aria-label={`What the numbers in ${picture.title} stand for`}>
          {key.value.map((one) => (
            <li key={one.number} value={one.number}><i>{one.number}</i> {picture.movable.includes(one.of) ? <button class="quiet" tabIndex={-1} onClick={() => hand.current?.focus(one.of)}>{one.words}</button> : one.words}</li>
          ))}
          {without.value > 0 && <li class="more">{without.value} more: come closer</li>}
        </ol>
      )}
      {isHeld ? <InHand of={picked.value} isEntering={isEntering} back={() => hand.current?.reach(picked.value)} /> : isOnly && picture.movable.length > 0 && <NothingInHand />}
    </figure>
  );
}

/** Stands where the number boxes come, so that the sheet does not move under a hand that takes hold. */
function NothingInHand() {
  return (
    <div class="inhand none">
      <p>{state.value?.can_write === false ? "Tap a thing: its numbers stand here." : "Drag a thing, or tap it and type its place. Keys: Page Down: the next; arrows: move; Enter: its numbers."}</p>
    </div>
  );
}

/** One number box. What is being typed in it is never touched: a new text waits until it is left. */
function Box({ field, isOff, told }: { field: ThingField; isOff: boolean; told: string }) {
  const box = useRef<HTMLInputElement>(null);
  const latest = useRef(field.text);
  latest.current = field.text;
  const fresh = () => {
    if (box.current && document.activeElement !== box.current) box.current.value = latest.current;
  };
  useEffect(fresh, [field.text]);
  return (
    <input
      ref={box}
      defaultValue={field.text}
      disabled={isOff}
      aria-description={field.explains}
      aria-invalid={field.wrong ? true : undefined}
      aria-describedby={field.wrong ? told : undefined}
      onBlur={() => setTimeout(fresh, 300)}
      onKeyDown={(event) => event.key === "Escape" && (event.currentTarget.value = field.text)}
      onChange={(event) => {
        const value = event.currentTarget.value.trim();
        if (value && value !== field.text) send({ t: "set", path: field.path, value });
        else event.currentTarget.value = field.text;
      }}
    />
  );
}

/** The number boxes of the thing in hand: a way to move it that is no drag. */
function InHand({ of, isEntering, back }: { of: string; isEntering: Signal<boolean>; back: () => void }) {
  const thing = useSignal<Thing | null>(null);
  const place = useRef<HTMLDivElement>(null);
  const id = useId();
  /** What the box somebody is at stands for: a hover is no way to learn it by key or by touch. */
  const told = useSignal("");
  const rev = state.value?.rev;
  useEffect(() => {
    let isOver = false;
    void fetched<Thing>("/thing", { of }).then((found) => {
      if (!isOver) thing.value = found;
    });
    return () => {
      isOver = true;
    };
  }, [of, rev]);
  const found = thing.value;
  const isThere = found?.of === of;
  useEffect(() => {
    if (!isThere || !isEntering.value) return;
    isEntering.value = false;
    place.current?.querySelector<HTMLElement>("input:enabled, button:enabled")?.focus();
  }, [isThere, isEntering.value]);
  if (!found || found.of !== of) return <div class="inhand" aria-busy="true" />;
  const isOff = !isConnected.value || !state.value?.can_write;
  return (
    <div class="inhand" ref={place} role="group" aria-label={`${found.name}: its numbers`} onKeyDown={(event) => event.key === "Escape" && back()}>
      <strong>{found.name}</strong>
      {found.fields.map((field) => (
        <label key={field.path} title={field.explains} onFocusIn={() => (told.value = `${field.label}: ${field.explains}`)}>
          <span>{field.label}</span>
          <Box field={field} isOff={isOff} told={`${id}-${field.path}`} />
          {field.wrong && <small class="wrong" id={`${id}-${field.path}`}>{field.wrong}</small>}
        </label>
      ))}
      <span class="acts">
        {of.startsWith("parts") && <button disabled={isOff} onClick={() => send({ t: "turn", of })}>Turn</button>}
        <button disabled={isOff} onClick={async () => {
          // The copy lies where the thing itself lies: it is the copy that the hand goes on with.
          const why = await ask({ t: "copy", of, name: found.of_a_copy ?? "" });
          if (why) refused.value = why;
          else if (picked.value === of) picked.value = wanted.value = `${of.slice(0, of.indexOf("["))}[${found.of_a_copy}]`;
        }}>Copy</button>
        <button disabled={isOff} onClick={() => send({ t: "take-out", of })}>Take out</button>
        <button onClick={() => showInFile(found.line)}>Line {found.line ?? "?"}</button>
      </span>
      {told.value && <p class="told">{told.value}</p>}
      {found.says.map((one) => <p class="wrong" key={one}>{one}</p>)}
    </div>
  );
}

/** The line the editor should go to when it opens. */
export const askedLine = signal<number | null>(null);

export function showInFile(line: number | null): void {
  askedLine.value = line;
  if (named() !== "file") location.hash = "file";
  else bus.dispatchEvent(new CustomEvent("line"));
}

export function showOnSheet(of: string, screen: string): void {
  wanted.value = "";
  picked.value = of;
  if (named() !== screen) location.hash = screen;
  wanted.value = of;
}
