import { useSignal } from "@preact/signals";
import { useEffect, useId, useLayoutEffect, useRef } from "preact/hooks";
import type { Blank, Numbers, PutIn, Reason, ShownFinding, Worked } from "./contract";
import "./findings.css";
import { type Got, got, isConnected, offered, seeking, send, settled, slot, state } from "./link";
import { showInFile, showOnSheet } from "./sheet";

const FIRST = 7;
const isOff = (): boolean => !isConnected.value || !state.value?.can_write;

/** What a chapter finds, on its own screen. */
export function OwnFindings({ codes }: { codes: readonly string[] }) {
  const own = (settled.value?.findings ?? []).filter((one) => codes.includes(one.code));
  if (!own.length) return null;
  return (
    <section class="own" aria-label="What this chapter finds">
      <h2>What it finds</h2>
      <ul>{own.map((one) => <Finding key={`${one.key} ${one.says}`} finding={one} />)}</ul>
    </section>
  );
}

/** A number that went in, with the line of the file it is written on. */
function Given({ one }: { one: PutIn }) {
  return (
    <li>
      <span>{one.name} = <b>{one.text}</b></span>
      {one.line !== null && <button class="quiet" title={one.path} onClick={() => showInFile(one.line)}>line {one.line}</button>}
    </li>
  );
}

function Step({ step }: { step: Worked }) {
  return (
    <li class="step">
      <code>{step.formula}</code>
      <ul class="given">{step.given.map((one) => <Given key={one.name} one={one} />)}</ul>
      {step.with_numbers && <code>{step.with_numbers}</code>}
      <p><b>= {step.result}</b></p>
      <p class="source">{step.source}</p>
      {step.checks.length > 0 && (
        <details><summary>Published cases it is held against ({step.checks.length})</summary><ul>{step.checks.map((one) => <li key={one}>{one}</li>)}</ul></details>
      )}
    </li>
  );
}

/** How a finding was reached: asked of the program when somebody wants to know. */
function Reached({ finding }: { finding: ShownFinding }) {
  const isOpen = useSignal(false);
  const reason = useSignal<Got<Reason> | null>(null);
  const opened = isOpen.value;
  const looked = slot.value;
  const rev = settled.value?.rev;
  useEffect(() => {
    // Its lines are those of the text as it is now.
    if (!opened) return;
    let isOver = false;
    reason.value = null;
    void got<Reason>("/reason", { code: finding.code, where: finding.where, says: finding.says }).then((one) => {
      if (!isOver) reason.value = one;
    });
    return () => {
      isOver = true;
    };
  }, [opened, rev, looked, isConnected.value, finding.code, finding.where, finding.says]);
  const found = reason.value?.found;
  return (
    <div class="reached">
      <button aria-expanded={isOpen.value} onClick={() => (isOpen.value = !isOpen.value)}>How it was reached</button>
      {isOpen.value && !reason.value && <p>Working it out once more</p>}
      {isOpen.value && reason.value && !found && <p>{reason.value.why || "The text has changed since: this is not found any more."}</p>}
      {isOpen.value && found && (
        <div class="steps" role="group" aria-label="How it was reached">
          <dl>{[...found.rule, ...found.compared].map((one) => <div key={one.label}><dt>{one.label}</dt><dd>{one.text}</dd></div>)}</dl>
          {found.written.length > 0 && <><h3>Written in the rig file</h3><ul class="given">{found.written.map((one) => <Given key={one.path} one={one} />)}</ul></>}
          {found.steps.length > 0 && <><h3>Worked out</h3><ol>{found.steps.map((one, index) => <Step key={index} step={one} />)}</ol></>}
          {found.sources.length > 0 && <><h3>Sources</h3><ul>{found.sources.map((one) => <li key={one} class="source">{one}</li>)}</ul></>}
        </div>
      )}
    </div>
  );
}

/** A value that a finding asks for: written from here into its place in the file. */
function Ask({ blank }: { blank: Blank }) {
  // The same value is asked for in more than one place.
  const id = useId();
  return (
    <form class="blank" onSubmit={(event) => {
      event.preventDefault();
      const value = new FormData(event.currentTarget).get("value");
      if (typeof value === "string" && value.trim()) send({ t: "set", path: blank.path, value: value.trim() });
    }}>
      <label for={id}>{blank.label}{blank.unit && <i> in {blank.unit}</i>}</label>
      <input id={id} name="value" defaultValue={blank.text} required autocomplete="off" maxLength={120} disabled={isOff()}
        placeholder={blank.example ? `such as ${blank.example}` : "not known yet"}
        aria-invalid={blank.wrong !== ""} aria-describedby={`${id}-says`} />
      <button disabled={isOff()}>Write it</button>
      <small id={`${id}-says`}>
        {blank.wrong && <span class="wrong">{blank.wrong} </span>}
        {blank.explains} <button type="button" class="quiet" title={blank.path} onClick={() => showInFile(blank.line)}>line {blank.line ?? "?"}</button>
      </small>
    </form>
  );
}

/** The smallest change: sought when somebody wants it, made as one step. */
function Smallest({ finding }: { finding: ShownFinding }) {
  const found = offered.value[finding.key];
  const isSought = seeking.value.has(finding.key);
  const about = { code: finding.code, where: finding.where, load: finding.load, use: finding.use };
  const asker = useRef<HTMLButtonElement>(null);
  const offer = useRef<HTMLDivElement>(null);
  const isAsker = useRef(false);
  useLayoutEffect(() => {
    // What was asked for comes in place of what asked: whoever waits there hears it there.
    if (found && isAsker.current && document.activeElement === document.body) offer.current?.focus({ preventScroll: true });
    isAsker.current = !found && document.activeElement === asker.current && asker.current !== null;
  });
  if (!finding.may_seek) return null;
  if (!found)
    return (
      <button ref={asker} disabled={isOff()} aria-disabled={isSought || undefined} onFocus={() => (isAsker.current = true)} onClick={() => {
        if (isSought) return;
        isAsker.current = true;
        seeking.value = new Set([...seeking.value, finding.key]);
        send({ t: "seek", ...about });
      }}>{isSought ? "Proving changes" : "Find the smallest change"}</button>
    );
  return (
    <div class="offer" role="status" ref={offer} tabIndex={-1}>
      <p>{found.says}</p>
      {found.remedy && <p><code>{found.remedy}</code></p>}
      {found.is_of_the_built && <p><b>Build it first.</b> This writes that it is built, and everything is judged by that.</p>}
      {found.remedy && (
        <button disabled={isOff()} class="do" onClick={() => send({ t: "apply", ...about })}>
          {found.is_of_the_built ? "It is built: write it down" : "Make this change"}
        </button>
      )}
    </div>
  );
}

function Accepting({ finding }: { finding: ShownFinding }) {
  const isNoting = useSignal(false);
  return (
    <>
      <button disabled={isOff()} aria-expanded={isNoting.value} onClick={() => (isNoting.value = !isNoting.value)}>I accept this</button>
      {isNoting.value && (
        <form onSubmit={(event) => {
          event.preventDefault();
          const note = new FormData(event.currentTarget).get("note");
          send({ t: "accept", code: finding.code, where: finding.where, note: String(note) });
          isNoting.value = false;
        }}>
          <label>Why, in a few words <input name="note" required maxLength={200} /></label>
          <button>Write it down</button>
        </form>
      )}
    </>
  );
}

function Finding({ finding, isKept }: { finding: ShownFinding; isKept?: boolean }) {
  const blanks = finding.blanks ?? [];
  return (
    <li class={`finding ${finding.kind}`}>
      <details>
        <summary><span class="head"><b title={finding.explains}>{finding.word}</b> {finding.says}</span></summary>
        <p class="meaning">{finding.word}: {finding.explains}</p>
        {finding.act && <p>{finding.act}</p>}
        {blanks.map((one) => <Ask key={`${one.path} ${one.text}`} blank={one} />)}
        <p class="source">Rule: {finding.code}. Source: {finding.source || "not shown"}. {finding.use && `Bears on: ${finding.use}.`}</p>
        <div class="acts">
          {finding.where && <button title={finding.where} onClick={() => showOnSheet(finding.where, finding.screen)}>Show on the sheet</button>}
          <button onClick={() => showInFile(finding.line)}>Line {finding.line ?? "?"} of the file</button>
          <Smallest finding={finding} />
          {finding.may_accept && !isKept && <Accepting finding={finding} />}
        </div>
        <Reached finding={finding} />
      </details>
    </li>
  );
}

export function Findings({ found }: { found: Numbers }) {
  const isAll = useSignal(false);
  const every = found.findings ?? [];
  const shown = isAll.value ? every : every.slice(0, FIRST);
  const kept = settled.value?.accepted ?? [];
  return (
    <section class="findings" aria-label="Findings">
      <h2>Findings {!found.preview && <span class="tag">{every.length}</span>}</h2>
      {every.length === 0 && <p class="holds">Every rule that was judged holds.</p>}
      <ul>{shown.map((one) => <Finding key={`${one.key} ${one.says}`} finding={one} />)}</ul>
      {every.length > FIRST && !found.preview && (
        <button aria-expanded={isAll.value} onClick={() => (isAll.value = !isAll.value)}>
          {isAll.value ? "The first seven" : `All ${every.length}`}
        </button>
      )}
      {kept.length > 0 && (
        <details>
          <summary>Accepted by the owner ({kept.length})</summary>
          <ul>{kept.map((one) => <Finding key={`${one.key} ${one.says}`} finding={one} isKept />)}</ul>
        </details>
      )}
    </section>
  );
}

