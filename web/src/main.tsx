import "./style.css";
import "./phone.css";
import "./wanted.css";
import "./print.css";
import { signal } from "@preact/signals";
import { render } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { Answers, Aside, isOpen } from "./aside";
import { First } from "./first";
import { keepFocus } from "./focus";
import { at, disk, isConnected, link, refused, send, settled, state, takeLeft, wasConnected } from "./link";
import { Body } from "./screens";

const GROUPS = { "draw": "Draw", "work-out": "Work out", "on-file": "On file" } as const;
const THEMES = ["light", "dark"] as const;
const kept = localStorage.getItem("theme");
const theme = signal<string>(kept ?? (matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light"));
const isMenuOpen = signal(false);

function Header() {
  const found = state.value;
  return (
    <header>
      <strong>Boxwright</strong>
      <span class="rig">{found?.rig}</span>
      <span class={`disk ${disk.value?.state ?? ""}`} role="status">{isConnected.value ? disk.value?.says : ""}</span>
      <span class="grow" />
      <button disabled={!found?.undo || !isConnected.value} onClick={() => send({ t: "undo" })}>Undo</button>
      <button disabled={!found?.redo || !isConnected.value} onClick={() => send({ t: "redo" })}>Redo</button>
      <button class="desk" onClick={() => print()}>Print</button>
      <Theme />
    </header>
  );
}

function Theme() {
  return (
    <button onClick={() => {
      theme.value = THEMES[theme.value === "light" ? 1 : 0] ?? "light";
      localStorage.setItem("theme", theme.value);
    }}>{theme.value === "light" ? "Dark" : "Light"}</button>
  );
}

/** What a thumb reaches: the screens, and the numbers that have no room beside the sheet. One is open at a time. */
function Foot() {
  return (
    <div class="foot">
      <button aria-expanded={isMenuOpen.value} aria-controls="screens" onClick={() => {
        isMenuOpen.value = !isMenuOpen.value;
        isOpen.value = false;
      }}>Screens</button>
      <button aria-expanded={isOpen.value} aria-controls="numbers" onClick={() => {
        isOpen.value = !isOpen.value;
        isMenuOpen.value = false;
      }}>{isOpen.value ? "Close the numbers" : "Numbers and findings"}</button>
    </div>
  );
}

/** How many places of the text could not be read, at the way to it: nobody looks for them on a drawing. */
function Mistakes() {
  const count = (settled.value?.problems ?? []).filter((one) => one.kind === "problem").length;
  return count > 0 ? <span class="mistakes" title="Places of the text that could not be read">{" "}{count}<span class="vh"> not read in its text</span></span> : null;
}

function Rail() {
  const screens = state.value?.screens ?? [];
  return (
    <nav id="screens" class={isMenuOpen.value ? "rail open" : "rail"} aria-label="Screens">
      {Object.entries(GROUPS).map(([group, label]) => (
        <div key={group}>
          <h2>{label}</h2>
          <ul>
            {screens.filter((one) => one.group === group).map((one) => (
              <li key={one.name}>
                <a href={`#${one.name}`} title={one.explains} aria-current={at.value === one.name ? "page" : undefined}
                  onClick={() => (isMenuOpen.value = false)}>{one.label}{one.name === "file" && <Mistakes />}</a>
              </li>
            ))}
          </ul>
        </div>
      ))}
    </nav>
  );
}

/** The text as it is, saved by the browser wherever its owner chooses. */
const Elsewhere = () => <a href="/text" download>Save a copy elsewhere</a>;

function Banner() {
  if (!isConnected.value && wasConnected.value)
    return <p class="banner stop" role="alert">Not connected: the program has stopped, or this computer slept. The page tries by itself until the line is back; until then typing, dragging and the buttons rest. What you typed just before is kept in this page and put in then. If you start the program anew, open the link it prints in this browser; then this page goes on too.</p>;
  const found = disk.value;
  if (state.value?.left)
    return (
      <p class="banner limit" role="alert">
        {state.value.left}{" "}
        <button onClick={() => void takeLeft()}>Take them</button>{" "}
        <button onClick={() => send({ t: "recover", take: false })}>Leave them</button>
      </p>
    );
  if (found?.state === "gone")
    return <p class="banner limit" role="alert">{found.says} <button onClick={() => send({ t: "write-again" })}>Write it again</button> <Elsewhere /></p>;
  if (found?.state === "stuck") return <p class="banner stop" role="alert">{found.says}. <Elsewhere /></p>;
  if (found?.state === "conflict" && at.value !== "file")
    return <p class="banner limit" role="alert">{found.says} <a href="#file">Look at both</a></p>;
  if (refused.value)
    return <p class="banner limit" role="alert">{refused.value} <button onClick={() => (refused.value = "")}>Close</button></p>;
  if (found?.state === "read-only")
    return <p class="banner limit" role="alert">Nothing can be changed: {found.says}. The rig is shown and judged all the same. <Elsewhere /></p>;
  return null;
}

function App() {
  const found = state.value;
  const hadNoFile = useRef(false);
  useEffect(() => {
    // The first page went away with what was pressed on it: the keys go on at the sheet.
    if (hadNoFile.current && found?.has_file) document.getElementById("main")?.focus();
    hadNoFile.current = found !== null && !found.has_file;
  }, [found?.has_file]);
  if (found && !found.has_file)
    return <div class="app begin" data-theme={theme.value}><header><strong>Boxwright</strong><span class="grow" /><Theme /></header><main id="main" tabIndex={-1}><First /></main></div>;
  return (
    <div class="app" data-theme={theme.value}>
      <a class="skip" href="#main" onClick={(event) => { event.preventDefault(); document.getElementById("main")?.focus(); }}>Skip to the sheet</a>
      <Header />
      <Answers />
      <Rail />
      <main id="main" tabIndex={-1}>
        <Banner />
        <h1 class="vh">{found?.screens.find((one) => one.name === at.value)?.label ?? at.value}</h1>
        <Body />
      </main>
      <Aside />
      <Foot />
    </div>
  );
}

addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || (event.target as Element).closest(".cm-editor, input")) return;
  const key = event.key.toLowerCase();
  if (key === "z" || key === "y") {
    event.preventDefault();
    send({ t: key === "y" || event.shiftKey ? "redo" : "undo" });
  }
});

const place = document.getElementById("app");
if (place) {
  render(<App />, place);
  keepFocus(place);
}
link();
