import { type Signal, useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Form } from "./contract";
import { ask, fetched, isConnected, state } from "./link";

/** Questions that are answered together; they stay until the answers are taken. */
function Questions({ form, words, put, close }: { form: Form; words: string; put: (values: Record<string, string>) => Promise<string>; close: () => void }) {
  const why = useSignal("");
  const isSending = useSignal(false);
  const isOff = !isConnected.value || !state.value?.can_write || isSending.value;
  return (
    <form class="putin asked" aria-label={form.label} onKeyDown={(event) => event.key === "Escape" && close()} onSubmit={async (event) => {
      event.preventDefault();
      const values: Record<string, string> = {};
      for (const [key, value] of new FormData(event.currentTarget)) if (typeof value === "string" && value.trim()) values[key] = value.trim();
      isSending.value = true;
      why.value = await put(values);
      isSending.value = false;
      if (!why.value) close();
    }}>
      <p class="meaning">{form.explains}</p>
      {form.fields.map((one) => (
        <label key={`${form.name} ${one.name}`}>
          <span>{one.label}</span>
          {one.options?.length
            ? <select name={one.name} required={one.is_needed}>{one.options.map((each) => <option key={each.name} value={each.name} selected={each.name === one.text}>{each.label}</option>)}</select>
            : <input name={one.name} required={one.is_needed} defaultValue={one.text} maxLength={400} autocomplete="off" placeholder={one.is_needed ? "" : "not known yet"} />}
          <small>{one.explains}</small>
        </label>
      ))}
      {why.value && <p class="refused" role="alert">{why.value}</p>}
      <p class="acts"><button class="do" disabled={isOff}>{words}</button> <button type="button" onClick={close}>Leave it</button></p>
    </form>
  );
}

/** Keep the forms of one kind in step with the text. */
function useForms(of: string): Signal<Form[]> {
  const forms = useSignal<Form[]>([]);
  const rev = state.value?.rev ?? 0;
  useEffect(() => {
    let isOver = false;
    void fetched<Form[]>("/forms", { of }).then((found) => !isOver && found && (forms.value = found));
    return () => {
      isOver = true;
    };
  }, [of, rev]);
  return forms;
}

/** The measures nobody has written yet: what a bare rig begins with. */
export function Measures({ isBegun }: { isBegun: boolean }) {
  const forms = useForms("measures");
  const isOpen = useSignal(isBegun);
  const opener = useRef<HTMLButtonElement>(null);
  const form = forms.value[0];
  if (!form) return null;
  const count = form.fields.length;
  const close = () => {
    isOpen.value = false;
    opener.current?.focus();
  };
  return (
    <section class="asking">
      <button ref={opener} aria-expanded={isOpen.value} onClick={() => (isOpen.value = !isOpen.value)}>First measures: {count} still asked</button>
      {isOpen.value && <Questions form={form} words="Write them down" close={close} put={(values) => ask({ t: "write-measures", values })} />}
    </section>
  );
}

/** A reading of a scale, a tape or a meter, put down as an entry of its own. */
export function Readings() {
  const forms = useForms("readings");
  const isOpen = useSignal(false);
  const kind = useSignal("");
  const opener = useRef<HTMLButtonElement>(null);
  const form = forms.value.find((one) => one.name === kind.value) ?? forms.value[0];
  if (!form) return null;
  const close = () => {
    isOpen.value = false;
    opener.current?.focus();
  };
  return (
    <section class="asking">
      <button ref={opener} aria-expanded={isOpen.value} onClick={() => (isOpen.value = !isOpen.value)}>Put a reading down</button>
      {isOpen.value && (
        <>
          <label class="kind"><span>What was read</span>
            <select value={form.name} onChange={(event) => (kind.value = event.currentTarget.value)}>
              {forms.value.map((one) => <option key={one.name} value={one.name}>{one.label}</option>)}
            </select>
          </label>
          <Questions key={form.name} form={form} words="Put it down" close={close} put={(values) => ask({ t: "enter-reading", kind: form.name, values })} />
        </>
      )}
    </section>
  );
}
