import { autocompletion, type CompletionContext, type CompletionResult } from "@codemirror/autocomplete";
import { yaml } from "@codemirror/lang-yaml";
import { HighlightStyle, syntaxHighlighting } from "@codemirror/language";
import { type Diagnostic, lintGutter, setDiagnostics } from "@codemirror/lint";
import { Annotation, ChangeSet, Compartment, EditorState, Text, Transaction } from "@codemirror/state";
import { EditorView } from "@codemirror/view";
import { effect } from "@preact/signals";
import { tags } from "@lezer/highlight";
import { basicSetup } from "codemirror";
import type { Disk, LeftText, ShownProblem, TextIs, Typed } from "./contract";
import { conflictView, type Other } from "./conflict";
import { bus, disk, fetched, follow, isConnected, leftText, lookedLine, lostStep, refused, send, settled, state, text, textRev } from "./link";
import { askedLine } from "./sheet";
import { asOne, Typing, wholeAsChange } from "./typing";

const PAUSE = 150;
const fromElsewhere = Annotation.define<boolean>();

const colours = HighlightStyle.define([
  { tag: tags.propertyName, color: "var(--chalk)", fontWeight: "600" },
  { tag: tags.comment, color: "var(--ink2)", fontStyle: "italic" },
  { tag: tags.string, color: "var(--holds)" },
  { tag: tags.number, color: "var(--ink)" },
]);
const look = EditorView.theme({
  "&": { backgroundColor: "var(--paper)", color: "var(--ink)", height: "100%", fontSize: "15px" },
  ".cm-scroller": { fontFamily: "ui-monospace, 'DejaVu Sans Mono', monospace", lineHeight: "1.5" },
  ".cm-gutters": { backgroundColor: "var(--shop)", color: "var(--ink2)", border: "none" },
  ".cm-activeLine, .cm-activeLineGutter": { backgroundColor: "var(--active)" },
  ".cm-cursor": { borderLeftColor: "var(--ink)" },
  "&.cm-focused .cm-selectionBackground, .cm-selectionBackground": { backgroundColor: "var(--select) !important" },
  ".cm-tooltip": { backgroundColor: "var(--paper)", color: "var(--ink)", border: "1px solid var(--edge)" },
  ".cm-tooltip-autocomplete ul li[aria-selected]": { backgroundColor: "var(--chalk)", color: "var(--paper)" },
  ".cm-panels": { backgroundColor: "var(--shop)", color: "var(--ink)" },
});

type Schema = { properties?: Record<string, Schema>; additionalProperties?: Schema | boolean; description?: string; examples?: unknown[]; anyOf?: Schema[] };
let schema: Schema | null = null;

/** The keys that may stand under a path of keys, by the schema of rig files. */
function keysUnder(path: string[]): Record<string, Schema> {
  let here: Schema | undefined = schema ?? undefined;
  for (const step of path) {
    const forms: Schema[] = here ? [here, ...(here.anyOf ?? [])] : [];
    const named = forms.map((one) => one.properties?.[step]).find(Boolean);
    const any = forms.map((one) => one.additionalProperties).find((one): one is Schema => typeof one === "object");
    here = named ?? any;
  }
  const forms: Schema[] = here ? [here, ...(here.anyOf ?? [])] : [];
  return Object.assign({}, ...forms.map((one) => one.properties ?? {})) as Record<string, Schema>;
}

/** The keys above a place in the text: by indentation, and by open braces on its own line. */
function pathAt(view: EditorState, pos: number): string[] {
  const line = view.doc.lineAt(pos);
  const before = line.text.slice(0, pos - line.from);
  const path: string[] = [];
  let indent = before.search(/\S|$/);
  for (let number = line.number - 1; number >= 1 && indent > 0; number -= 1) {
    const above = view.doc.line(number).text;
    const own = above.search(/\S|$/);
    const key = /^\s*("[^"]*"|[^\s#:{}][^:]*):/.exec(above)?.[1];
    if (key && own < indent && above.trim()) {
      path.unshift(key.trim().replaceAll('"', ""));
      indent = own;
    }
  }
  const braces = before.match(/([\w .-]+):\s*\{/g) ?? [];
  const closed = (before.match(/\}/g) ?? []).length;
  for (const one of braces.slice(0, Math.max(braces.length - closed, 0))) path.push(one.split(":")[0]?.trim() ?? "");
  return path;
}

function completed(context: CompletionContext): CompletionResult | null {
  const word = context.matchBefore(/[\w-]*/);
  if (!word || (word.from === word.to && !context.explicit)) return null;
  const line = context.state.doc.lineAt(context.pos);
  const lead = line.text.slice(0, word.from - line.from);
  if (!/^\s*$|[{,]\s*$/.test(lead)) return null;
  const keys = keysUnder(pathAt(context.state, word.from));
  return {
    from: word.from,
    options: Object.entries(keys).map(([key, one]) => ({
      label: key, apply: `${key}: `, info: one.description ?? "", type: "property",
    })),
  };
}

function marks(view: EditorView, problems: ShownProblem[]): Diagnostic[] {
  const spot = (line: number, column: number) => {
    if (line > view.state.doc.lines) return view.state.doc.length;
    const found = view.state.doc.line(Math.max(line, 1));
    return Math.min(found.from + Math.max(column - 1, 0), found.to);
  };
  return problems.map((one) => {
    const from = spot(one.line, one.column);
    return {
      from, to: Math.max(from, spot(one.end_line, one.end_column)),
      severity: one.kind === "problem" ? "error" : "info", message: one.says,
    };
  });
}

const guard = new Compartment();
const typing = new Typing();
let shown: EditorView | null = null;
let timer = 0;
/** The revision the places of what is typed belong to, and the program's text at that revision. */
let known = textRev();
let there = Text.of(text.value.split("\n"));
/** Characters of one message and of the whole text beyond which the program takes no more. */
const MOST_AT_ONCE = 900_000;
const MOST_TEXT = 1_000_000;

function flush(): void {
  clearTimeout(timer);
  const changes = typing.next();
  if (changes) send({ t: "text", changes, base: known });
}

/** Follow the program's text, whether the editor is open or not: what was typed may still be on its way. */
function heard(message: TextIs): void {
  const isAnswer = message.text === null && !message.changes.length && message.rev > known;
  const before = known;
  known = message.rev;
  if (message.text !== null) {
    // The line was lost, or the typing refused: the program joins what it may not have with what it has.
    if (!typing.isDone) send({ t: "rejoin", typed: typedRest(null) });
    typing.forget();
    there = Text.of(message.text.split("\n"));
    if (message.text !== text.value) become(wholeAsChange(text.value, message.text), false);
  } else if (message.changes.length) {
    const change = asOne(message.changes, typing.lengthThere(text.value.length));
    if (message.by_another && typing.meets(change, there)) {
      // A digit typed before a number that has become another one would be neither's: the owner chooses.
      send({ t: "rejoin", typed: typedRest(before) });
      typing.forget();
      there = change.apply(there);
      become(wholeAsChange(text.value, there.toString()), false);
      return;
    }
    there = change.apply(there);
    become(typing.from(change), true);
  } else if (isAnswer) {
    there = typing.answered()?.apply(there) ?? there;
    flush();
  }
  if (typing.isDone && message.length !== text.value.length && message.text === null) lostStep();
}

/** What was typed and is not answered, into the text of a revision or into a whole text that is sent along. */
function typedRest(base: number | null): Typed {
  return { base: base ?? 0, known: base === null ? there.toString() : null, ...typing.rest() };
}

/** One half of a pair of code units without the other. */
const HALF_A_CHARACTER = /\p{Surrogate}/u;

/** Nothing that would not be taken gets as far as the editor. */
const filter = EditorState.changeFilter.of((change) => {
  if (!change.docChanged || change.annotation(fromElsewhere)) return true;
  let most = 0;
  let isWhole = true;
  change.changes.iterChanges((_from, _to, _fromB, _toB, inserted) => {
    most += inserted.length;
    isWhole &&= !HALF_A_CHARACTER.test(inserted.toString());
  });
  if (!isWhole) {
    refused.value = "There is half a character in that, which no file can hold. It was not put in; the text is as it was.";
    return false;
  }
  if (most > MOST_AT_ONCE / 8) most = JSON.stringify(change.newDoc.toString()).length - JSON.stringify(change.startState.doc.toString()).length;
  const isTooLong = change.newDoc.length > MOST_TEXT && change.newDoc.length > change.startState.doc.length;
  if (most <= MOST_AT_ONCE && !isTooLong) return true;
  refused.value = "That is longer than a rig file can be (1 MB). It was not put in; the text is as it was.";
  return false;
});

/** The text that is to be looked at beside the one here: the disk's, or what was left by an earlier session. */
function against(now: Disk | null, left: LeftText | null): Other | null {
  if (now?.state === "conflict" && typeof now.text === "string")
    return { says: now.says, theirs: now.text, keep: "Keep mine", take: "Take disk", done: (chosen) => send({ t: "resolve", disk_hash: now.hash, text: chosen }) };
  if (!left) return null;
  return {
    says: "What was left, beside what stands here now", theirs: left.text, keep: "Keep what stands here", take: "Take what was left",
    done: (chosen) => send({ t: "recover", take: true, text: chosen, rev: left.rev }),
  };
}

function become(changes: ChangeSet, isStep: boolean): void {
  text.value = changes.apply(Text.of(text.value.split("\n"))).toString();
  // A cursor at the end of what was replaced stays at its end: what is typed next is typed after it.
  shown?.dispatch({ changes, selection: shown.state.selection.map(changes, 1), annotations: [fromElsewhere.of(true), Transaction.addToHistory.of(isStep)] });
}

follow(heard, (isWhole) => (typing.isDone ? null : typedRest(isWhole ? null : known)));
bus.addEventListener("typing-refused", lostStep);

/** Put the editor in place; the text of the program and of the editor follow each other. */
export function mount(place: HTMLElement): () => void {
  const host = document.createElement("div");
  host.className = "editor";
  place.append(host);
  const view = new EditorView({
    parent: host,
    state: EditorState.create({
      doc: text.value,
      extensions: [
        basicSetup, yaml(), lintGutter(), look, syntaxHighlighting(colours), EditorView.lineWrapping,
        autocompletion({ override: [completed] }),
        guard.of([]), filter,
        EditorView.contentAttributes.of({ "aria-label": "The rig file", "tabindex": "0" }),
        EditorView.updateListener.of((update) => {
          if (update.selectionSet || update.docChanged) lookedLine.value = update.state.doc.lineAt(update.state.selection.main.head).number;
          if (!update.docChanged) return;
          for (const one of update.transactions) {
            if (!one.docChanged || one.annotation(fromElsewhere)) continue;
            typing.typed(one.changes);
            clearTimeout(timer);
            timer = window.setTimeout(flush, PAUSE);
            text.value = update.state.doc.toString();
          }
        }),
      ],
    }),
  });
  shown = view;
  const stopGuard = effect(() =>
    view.dispatch({ effects: guard.reconfigure(EditorState.readOnly.of(!state.value?.can_write || !isConnected.value)) }));
  const toLine = () => {
    const line = askedLine.value;
    if (line === null || line > view.state.doc.lines) return;
    const spot = view.state.doc.line(Math.max(line, 1));
    view.dispatch({ selection: { anchor: spot.from }, effects: EditorView.scrollIntoView(spot.from, { y: "center" }) });
    view.focus();
    askedLine.value = null;
  };
  bus.addEventListener("line", toLine);
  setTimeout(toLine);
  const stopMarks = effect(() => {
    const problems = settled.value?.problems;
    if (problems) view.dispatch(setDiagnostics(view.state, marks(view, problems)));
  });
  const stopConflict = effect(() => conflictView(place, host, against(disk.value, leftText.value), () => text.value));
  if (!schema) void fetched<Schema>("/schema").then((found) => (schema = found));
  return () => {
    flush();
    shown = null;
    stopGuard();
    bus.removeEventListener("line", toLine);
    stopMarks();
    stopConflict();
    view.destroy();
    place.replaceChildren();
  };
}
