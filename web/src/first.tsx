import { isConnected, refused, send, state } from "./link";

/** The first page: a demo rig of one's own to look round in, or a start from what one knows. */
export function First() {
  const demos = state.value?.demos ?? [];
  return (
    <section class="first">
      <h1>Whose trailer is it?</h1>
      <p>Boxwright keeps a whole camper trailer in one plain text file and works everything out together: what it weighs, whether it may be towed, where every stud is. Nothing leaves this computer.</p>
      <h2>Begin with your own</h2>
      <p>Leave out what you do not know yet; it stands in the file as unknown, with where to read it.</p>
      <form onSubmit={(event) => {
        event.preventDefault();
        const answers: Record<string, string> = {};
        for (const [key, value] of new FormData(event.currentTarget)) if (typeof value === "string" && value.trim()) answers[key] = value.trim();
        send({ t: "begin", demo: "", answers });
      }}>
        {(state.value?.asks ?? []).map((one) => (
          <label key={one.name}>
            <span>{one.label}</span>
            <input name={one.name} maxLength={60} autocomplete="off" placeholder="I do not know yet" aria-description={one.explains} />
            <small>{one.explains}</small>
          </label>
        ))}
        <button class="do" disabled={!isConnected.value}>Begin my rig file</button>
      </form>
      <h2>Or look round in a demo first</h2>
      <p>An invented rig, opened as a copy in this folder: change what you like.</p>
      <ul class="demos">
        {demos.map((one) => (
          <li key={one.name}><button disabled={!isConnected.value} onClick={() => send({ t: "begin", demo: one.name, answers: {} })}>{one.label}</button></li>
        ))}
      </ul>
      {refused.value && <p class="refused" role="alert">{refused.value}</p>}
    </section>
  );
}
