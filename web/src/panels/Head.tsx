import { undo } from "../edits/queue";
import * as state from "../state";
import { words } from "../words";

export function Head({ onLeave }: { onLeave(): void }) {
  const isDark = state.theme.value === "dark" || (state.theme.value === null && matchMedia("(prefers-color-scheme: dark)").matches);
  const turn = () => { state.theme.value = isDark ? "light" : "dark"; localStorage.setItem("theme", state.theme.value); };
  const measure = () => {
    state.system.value = state.system.value === "metric" ? "feet" : "metric";
    localStorage.setItem("units", state.system.value);
  };
  return (
    <header>
      <a class="skip" href="#panel" onClick={(event) => { event.preventDefault(); document.getElementById("panel")?.focus(); }}>{words.skip}</a>
      <button type="button" class="plain back" onClick={onLeave}>{words.jobs.back}</button>
      <h1>{state.site.value?.name}</h1>
      <p class="link" role="status" data-live={state.isLive.value} data-waiting={state.waiting.value}>
        {state.isLive.value ? words.link.live : words.link.lost(state.asOf.value)}
        {state.waiting.value ? `, ${words.link.waiting(state.waiting.value)}` : ""}
      </p>
      <button type="button" class="undo" onClick={() => void undo()}>{words.history.undo}</button>
      <button type="button" aria-label={words.units.label} onClick={measure}>{state.system.value === "metric" ? words.units.metric : words.units.feet}</button>
      <button type="button" aria-label={words.theme.label} onClick={turn}>{isDark ? words.theme.light : words.theme.dark}</button>
      <p class="printed">{words.printed}</p>
      <nav aria-label={words.stepsName}>
        <ol>
          {words.steps.map((one, i) => (
            <li key={one}>
              <button type="button" aria-current={state.step.value === one ? "step" : undefined} onClick={() => { state.step.value = one; }}>
                <span class="n" aria-hidden="true">{i + 1}</span> {one}
              </button>
            </li>
          ))}
        </ol>
      </nav>
    </header>
  );
}
