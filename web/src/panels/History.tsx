import * as link from "../server/link";
import type { Site } from "../server/types";
import * as state from "../state";
import { words } from "../words";

export function History() {
  const load = async (event: Event) => {
    if ((event.currentTarget as HTMLDetailsElement).open && state.file.value) state.past.value = await link.history(state.file.value);
  };
  const compare = async (number: number) => {
    if (!state.file.value) return;
    state.compared.value = { number, site: (await link.opened(state.file.value, number)).site as unknown as Site };
  };
  const shown = state.compared.value;
  return (
    <details class="history" onToggle={(event) => void load(event)}>
      <summary>{words.history.title}</summary>
      {state.file.value ? <p><a href={link.documentOf(state.file.value)} download>{words.jobs.keep}</a></p> : null}
      {shown ? (
        <p class="comparing">{words.history.comparing(shown.number)}{" "}
          <button type="button" onClick={() => { state.compared.value = null; }}>{words.history.stop}</button></p>
      ) : null}
      <ol reversed start={state.past.value[0]?.number}>
        {state.past.value.map((one) => (
          <li key={one.number}>
            <span>{one.what}</span> <span class="hint">{one.author}, {one.at.slice(11, 16)}</span>{" "}
            <button type="button" class="plain" aria-label={`${words.history.compare}: ${one.number}`} onClick={() => void compare(one.number)}>{words.history.compare}</button>
          </li>
        ))}
      </ol>
    </details>
  );
}
