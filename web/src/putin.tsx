import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Thing } from "./contract";
import { ask, fetched, isConnected, state } from "./link";
import { picked, wanted } from "./sheet";

/** A new thing with what is known of it; what is left out is not known yet, and the findings ask for it. */
export function PutIn({ section, words }: { section: string; words: string }) {
  const asked = useSignal<Thing | null>(null);
  const form = useRef<HTMLFormElement>(null);
  const isOff = !isConnected.value || !state.value?.can_write;
  useEffect(() => {
    form.current?.querySelector("input")?.focus();
  }, [asked.value]);
  const why = useSignal("");
  const close = () => {
    asked.value = null;
    why.value = "";
  };
  return (
    <>
      <button disabled={isOff} aria-expanded={asked.value !== null}
        onClick={async () => (asked.value = asked.value ? null : await fetched<Thing>("/thing", { of: section }))}>{words}</button>
      {asked.value && (
        <form class="putin" ref={form} aria-label={words} onKeyDown={(event) => event.key === "Escape" && close()} onSubmit={async (event) => {
          event.preventDefault();
          const entries: Record<string, string> = {};
          for (const [key, value] of new FormData(event.currentTarget)) if (typeof value === "string" && value.trim()) entries[key] = value.trim();
          const { name = "", ...rest } = entries;
          // What is refused stays in the form, to be put right.
          const before = [picked.value, wanted.value];
          picked.value = wanted.value = `${section}[${name}]`;
          why.value = await ask({ t: "add", section, name, entries: rest });
          if (why.value) [picked.value, wanted.value] = before as [typeof picked.value, typeof wanted.value];
          else close();
        }}>
          {asked.value.fields.map((one) => (
            <label key={one.path}>
              <span>{one.label}</span>
              <input name={one.path} required={one.path === "name"} defaultValue={one.text} autocomplete="off" maxLength={80}
                placeholder={one.path === "name" ? "" : "not known yet"} />
              <small>{one.explains}</small>
            </label>
          ))}
          {why.value && <p class="refused" role="alert">{why.value}</p>}
          <p class="acts"><button class="do">Put it in</button> <button type="button" onClick={close}>Leave it</button></p>
        </form>
      )}
    </>
  );
}
