import { signal, useSignal } from "@preact/signals";
import type { Answer, Balance, Figure, Numbers, ShownFinding, Working } from "./contract";
import { at, choose, fetched, isConnected, isPreview, numbers, offered, send, settled, slot, state } from "./link";
import { showInFile, showOnSheet } from "./sheet";

const FIRST = 7;
/** Whether numbers and findings are shown where there is no room for them beside the sheet. */
export const isOpen = signal(false);

/** A term with its one-line explanation, for a pointer and for a keyboard. */
export function Term({ words, explains }: { words: string; explains: string }) {
  const isShown = useSignal(false);
  if (!explains) return <>{words}</>;
  return (
    <span class="term">
      {words}
      <button
        class="what" aria-label={`What is ${words}?`} aria-expanded={isShown.value}
        onClick={() => (isShown.value = !isShown.value)} onBlur={() => (isShown.value = false)}
        onKeyDown={(event) => event.key === "Escape" && (isShown.value = false)}
      >?</button>
      {isShown.value && <span class="explains" role="status">{explains}</span>}
    </span>
  );
}

/** The four answers in words, always in sight. */
export function Answers() {
  const found = settled.value?.answers;
  const fresh = numbers.value?.answers;
  if (!found) return null;
  const now = found.map((one) => fresh?.find((other) => other.use === one.use) ?? one);
  return (
    <ul class="answers" aria-label="Answers">
      {now.map((one) => <AnswerLine key={one.use} answer={one} isOld={isPreview.value && !fresh?.some((other) => other.use === one.use)} />)}
    </ul>
  );
}

function AnswerLine({ answer, isOld }: { answer: Answer; isOld: boolean }) {
  const isShown = useSignal(false);
  return (
    <li class={`answer ${answer.word} ${isOld ? "old" : ""}`}>
      <button aria-expanded={isShown.value} onClick={() => (isShown.value = !isShown.value)}>
        <b>{answer.label}</b> <span class="word" id={`answer-${answer.use}`}>{answer.word}</span>
        <span class="because">{answer.says[0]}</span>
      </button>
      {isShown.value && (
        <div class="why">
          <p class="meaning">{answer.explains}</p>
          <ul>{answer.says.map((one) => <li key={one}>{one}</li>)}</ul>
          {answer.act && <p><b>First:</b> {answer.act}</p>}
        </div>
      )}
    </li>
  );
}

/** The trailer as a beam: weights down, wheels and ball up, one scale for all bars. */
function Beam({ balance }: { balance: Balance }) {
  const low = Math.min(balance.coupler_mm, balance.front_mm);
  const high = balance.rear_mm;
  const x = (mm: number) => 34 + ((mm - low) / (high - low || 1)) * 252;
  const most = Math.max(...balance.reactions.filter((one) => !one.is_down).map((one) => Math.abs(one.kg)), 1);
  const bar = (kg: number) => Math.max(Math.abs(kg) * (24 / most), 1.5);
  const up = balance.reactions.filter((one) => !one.is_down);
  return (
    <svg class="beam" viewBox="0 0 320 96" role="img" aria-label={balance.says}>
      <path class="frame" d={`M${x(balance.front_mm)} 48V28H${x(balance.rear_mm)}V48`} />
      <path class="wide" d={`M${x(balance.coupler_mm)} 48H${x(balance.rear_mm)}`} />
      {balance.reactions.filter((one) => one.is_down).map((one) => (
        <g key={one.label}>
          <path class="down" d={`M${x(one.x_mm)} 16V44`} />
          <path class="head" d={`M${x(one.x_mm) - 4} 37L${x(one.x_mm)} 47L${x(one.x_mm) + 4} 37z`} />
          <text x={x(one.x_mm)} y="12">{one.text}</text>
        </g>
      ))}
      {up.map((one, index) => (
        <g key={one.label}>
          <path class={one.kg < 0 ? "up lifts" : "up"} d={`M${x(one.x_mm)} 52v${bar(one.kg)}`} />
          <text x={x(one.x_mm)} y="91" style={{ textAnchor: index === 0 || up.length === 2 ? "middle" : index % 2 ? "end" : "start" }}
            dx={index === 0 || up.length === 2 ? 0 : index % 2 ? 8 : 2}>{one.text}</text>
        </g>
      ))}
    </svg>
  );
}

function FigureBox({ figure }: { figure: Figure }) {
  const isShown = useSignal(false);
  const steps = useSignal<Working[] | null>(null);
  const open = async () => {
    isShown.value = !isShown.value;
    steps.value = null;
    if (isShown.value && figure.path) steps.value = (await fetched<Working[]>("/working", { number: figure.path })) ?? [];
  };
  return (
    <div class={`figure ${figure.kind ?? ""} ${isShown.value ? "shown" : ""}`}>
      <dt>{figure.label}</dt>
      <dd class="number">
        <span id={`figure-${figure.key}`}>{figure.text}</span>{figure.unit && <i>{figure.unit}</i>}
        {figure.band && <small>{figure.band}</small>}
      </dd>
      <dd>
        <button class="what" aria-label={`${figure.label}: what it is and how it is worked out`} aria-expanded={isShown.value}
          onClick={open} onKeyDown={(event) => event.key === "Escape" && (isShown.value = false)}>?</button>
      </dd>
      {isShown.value && (
        <dd class="steps">
          <p>{figure.explains}</p>
          {steps.value && <Steps steps={steps.value} />}
        </dd>
      )}
    </div>
  );
}

function Steps({ steps }: { steps: Working[] }) {
  if (!steps.length) return <p>No working is kept for this number in this load state.</p>;
  return (
    <div>
      {steps.map((one, index) => (
        <div key={index}>
          <code>{one.formula}</code>
          <pre>{one.put_in}</pre>
          <code>{one.result}</code>
          <p>Source: {one.source}</p>
        </div>
      ))}
    </div>
  );
}

/** What a chapter finds, on its own screen. */
export function OwnFindings({ codes }: { codes: readonly string[] }) {
  const own = (settled.value?.findings ?? []).filter((one) => codes.includes(one.code));
  if (!own.length) return null;
  return (
    <section class="own" aria-label="What this chapter finds">
      <h2>What it finds</h2>
      <ul>{own.map((one) => <Finding key={`${one.code} ${one.where} ${one.says}`} finding={one} />)}</ul>
    </section>
  );
}

function Finding({ finding, isKept }: { finding: ShownFinding; isKept?: boolean }) {
  const isNoting = useSignal(false);
  const isSeeking = useSignal(false);
  const key = `${finding.code} ${finding.where}`;
  const found = offered.value[key];
  const isOff = !isConnected.value || !state.value?.can_write;
  return (
    <li class={`finding ${finding.kind}`}>
      <details>
        <summary><span class="head"><b title={finding.explains}>{finding.word}</b> {finding.says}</span></summary>
        <p class="meaning">{finding.word}: {finding.explains}</p>
        {finding.act && <p>{finding.act}</p>}
        <p class="source">Rule: {finding.code}. Source: {finding.source || "not shown"}. {finding.use && `Bears on: ${finding.use}.`}</p>
        <p class="acts">
          {finding.where && <button onClick={() => showOnSheet(finding.where, finding.screen)}>Show on the sheet</button>}
          <button onClick={() => showInFile(finding.line)}>Line {finding.line ?? "?"} of the file</button>
          {finding.may_seek && !found && (
            <button disabled={isOff || isSeeking.value} onClick={() => {
              isSeeking.value = true;
              send({ t: "seek", code: finding.code, where: finding.where });
            }}>{isSeeking.value ? "Proving changes" : "Find the smallest change"}</button>
          )}
          {finding.may_accept && !isKept && <button disabled={isOff} onClick={() => (isNoting.value = !isNoting.value)}>I accept this</button>}
        </p>
        {found && (
          <div class="offer">
            <p>{found.says}</p>
            {found.remedy && <p><code>{found.remedy}</code></p>}
            {found.remedy && <button disabled={isOff} class="do" onClick={() => send({ t: "apply", code: finding.code, where: finding.where })}>Make this change</button>}
          </div>
        )}
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
      </details>
    </li>
  );
}

function Findings({ found }: { found: Numbers }) {
  const isAll = useSignal(false);
  const every = found.findings ?? [];
  const shown = isAll.value ? every : every.slice(0, FIRST);
  const kept = settled.value?.accepted ?? [];
  return (
    <section class="findings" aria-label="Findings">
      <h2>Findings {!found.preview && <span class="tag">{every.length}</span>}</h2>
      {every.length === 0 && <p class="holds">Every rule that was judged holds.</p>}
      <ul>{shown.map((one) => <Finding key={`${one.code} ${one.where} ${one.says}`} finding={one} />)}</ul>
      {every.length > FIRST && !found.preview && (
        <button aria-expanded={isAll.value} onClick={() => (isAll.value = !isAll.value)}>
          {isAll.value ? "The first seven" : `All ${every.length}`}
        </button>
      )}
      {kept.length > 0 && (
        <details>
          <summary>Accepted by the owner ({kept.length})</summary>
          <ul>{kept.map((one) => <Finding key={`${one.code} ${one.where}`} finding={one} isKept />)}</ul>
        </details>
      )}
    </section>
  );
}

function Choose({ label, part }: { label: string; part: "stage" | "load" | "vehicle" }) {
  const choices = state.value?.[`${part}s` as "stages" | "loads" | "vehicles"] ?? [];
  if (choices.length < 2) return null;
  return (
    <div class="choose">
      <span><Term words={label} explains={state.value?.terms[part] ?? ""} /></span>
      <select aria-label={label} value={slot.value[part]} onChange={(event) => choose({ [part]: event.currentTarget.value })}>
        {choices.map((one) => <option key={one.name} value={one.name}>{one.label}</option>)}
      </select>
    </div>
  );
}

/** What stands beside every screen. */
export function Aside() {
  const found = numbers.value;
  if (!found) return <aside class="aside" aria-label="Numbers and findings"><p class="empty">Working it out</p></aside>;
  return (
    <aside id="numbers" class={isOpen.value ? "aside open" : "aside"} aria-label="Numbers and findings">
      <div class="folded">
        <div class="slot"><Choose label="As of" part="stage" /><Choose label="Loaded" part="load" /><Choose label="Behind" part="vehicle" /></div>
        {found.of && <p class="whose">{found.of}</p>}
        {found.balance && (
          <div class="balance">
            <span class="corner"><Term words="Balance" explains={state.value?.terms.balance ?? ""} /></span>
            <Beam balance={found.balance} />
          </div>
        )}
        {found.held.length > 0 && (
          <dl class="held">{found.held.map((one) => <div key={one.key}><dt>{one.label}</dt><dd>{one.text} {one.unit}</dd></div>)}</dl>
        )}
        <dl class={found.preview ? "figures preview" : "figures"}>{found.figures.map((one) => <FigureBox key={one.key} figure={one} />)}</dl>
        <Findings found={found} />
        <p class="closing">Computed from what was typed. Local law, the plate and a scale come first. Nobody rides in the trailer.</p>
        <p class="vh" role="status" aria-live="polite">{found.preview ? "" : `${found.findings?.length ?? 0} findings; ${at.value}`}</p>
      </div>
    </aside>
  );
}
