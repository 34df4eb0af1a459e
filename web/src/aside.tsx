import { signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { placed } from "./beam";
import type { Answer, Balance, Figure, Working } from "./contract";
import { Findings } from "./findings";
import { at, choose, type Got, got, isConnected, isOther, isPreview, night, numbers, settled, slot, state } from "./link";

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
    <section class="said" aria-label="Answers"><ul class={isOther.value ? "answers other" : "answers"} aria-busy={isOther.value}>
      {now.map((one) => <AnswerLine key={one.use} answer={one} isOld={isPreview.value && !fresh?.some((other) => other.use === one.use)} />)}
    </ul></section>
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

/** Whether the words under the ball are wider than the room to the left of it. */
const isLong = (text: string): boolean => text.length > 11;

/** The trailer as a beam: weights down, wheels and ball up, one scale for all bars. */
function Beam({ balance }: { balance: Balance }) {
  const { front, rear, begins, up, down } = placed(balance);
  return (
    <svg class="beam" viewBox="0 0 320 96" role="img" aria-label={balance.says}>
      <path class="frame" d={`M${front} 48V28H${rear}V48`} />
      <path class="wide" d={`M${begins} 48H${rear}`} />
      {down.map(({ one, x }) => (
        <g key={one.label}>
          <path class="down" d={`M${x} 16V44`} />
          <path class="head" d={`M${x - 4} 37L${x} 47L${x + 4} 37z`} />
          <text x={x} y="12">{one.text}</text>
        </g>
      ))}
      {up.map(({ one, x, tall, lifts }, index) => (
        <g key={one.label}>
          <path class={lifts ? "up lifts" : "up"} d={`M${x} 52v${tall}`} />
          <text x={isLong(one.text) && index === 0 ? 0 : x} y="91" style={{ textAnchor: isLong(one.text) && index === 0 ? "start" : index === 0 || up.length === 2 ? "middle" : index % 2 ? "end" : "start" }}
            dx={index === 0 || up.length === 2 ? 0 : index % 2 ? 8 : 2}>{one.text}</text>
        </g>
      ))}
    </svg>
  );
}

function FigureBox({ figure }: { figure: Figure }) {
  const isShown = useSignal(false);
  const steps = useSignal<Got<Working[]> | null>(null);
  const shown = isShown.value;
  const looked = slot.value;
  const rev = settled.value?.rev;
  useEffect(() => {
    // A working is that of the number beside it: of no other text, stage, load state or vehicle.
    steps.value = null;
    if (!shown || !figure.path) return;
    let isOver = false;
    void got<Working[]>("/working", { number: figure.path }).then((found) => {
      if (!isOver) steps.value = found;
    });
    return () => {
      isOver = true;
    };
  }, [shown, rev, looked, isConnected.value, figure.path]);
  return (
    <div class={`figure ${figure.kind ?? ""} ${isShown.value ? "shown" : ""}`}>
      <dt>{figure.label}</dt>
      <dd class="number">
        <span id={`figure-${figure.key}`}>{figure.text}</span>{figure.unit && <i>{figure.unit}</i>}
        {figure.band && <small>{figure.band}</small>}
      </dd>
      <dd>
        <button class="what" aria-label={`${figure.label}: what it is and how it is worked out`} aria-expanded={isShown.value}
          onClick={() => (isShown.value = !isShown.value)} onKeyDown={(event) => event.key === "Escape" && (isShown.value = false)}>?</button>
      </dd>
      {isShown.value && (
        <dd class="steps">
          <p>{figure.explains}</p>
          {steps.value && (steps.value.why ? <p>{steps.value.why}</p> : <Steps steps={steps.value.found ?? []} />)}
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

function Choose({ label, part }: { label: string; part: "stage" | "load" | "vehicle" }) {
  const choices = state.value?.[`${part}s` as "stages" | "loads" | "vehicles"] ?? [];
  if (choices.length < 2) return null;
  return (
    <div class="choose">
      <span><Term words={label} explains={state.value?.terms[part] ?? ""} /></span>
      <select aria-label={label} disabled={!isConnected.value} value={slot.value[part]} onChange={(event) => choose({ [part]: event.currentTarget.value })}>
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
    <aside id="numbers" class={`aside ${isOpen.value ? "open" : ""} ${isOther.value ? "other" : ""}`} aria-label="Numbers and findings" aria-busy={isOther.value}>
      <div class="folded">
        <div class="slot"><Choose label="As of" part="stage" /><Choose label="Loaded" part="load" /><Choose label="Behind" part="vehicle" /></div>
        {isOther.value && <p class="being" role="status">Working it out for what was chosen</p>}
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
        {night.value.figures.length > 0 && (
          <section aria-label="The night" aria-busy={night.value.isOld}>
            <h2 class="whose">The night{night.value.isOld && ": as before, until the hand rests"}</h2>
            <dl class={`figures night ${found.preview ? "preview" : ""} ${night.value.isOld ? "old" : ""}`}>{night.value.figures.map((one) => <FigureBox key={one.key} figure={one} />)}</dl>
          </section>
        )}
        <Findings found={found} />
        <p class="closing">Computed from what was typed. Local law, the plate and a scale come first. Nobody rides in the trailer.</p>
        <p class="vh" role="status" aria-live="polite">{found.preview ? "" : `${found.findings?.length ?? 0} findings; ${at.value}`}</p>
      </div>
    </aside>
  );
}
