import * as link from "../server/link";
import type { Site } from "../server/types";
import * as state from "../state";
import { words } from "../words";

export async function compareWith(number: number): Promise<void> {
  const file = state.file.value;
  if (!file) return;
  try {
    state.compared.value = { number, site: (await link.opened(file, number)).site as unknown as Site };
  } catch (fault) { state.note.value = (fault as Error).message; }
}

export function History() {
  const load = async (event: Event) => {
    if ((event.currentTarget as HTMLDetailsElement).open && state.file.value) state.past.value = await link.history(state.file.value);
  };
  const shown = state.compared.value;
  return (
    <details class="history" onToggle={(event) => void load(event)}>
      <summary>{words.history.title}</summary>
      {state.file.value ? <p><a class="button" href={link.documentOf(state.file.value)} download>{words.jobs.keep}</a></p> : null}
      <ol reversed start={state.past.value[0]?.number}>
        {state.past.value.map((one) => (
          <li key={one.number}>
            <span class="done"><span>{one.what}</span> <span class="hint">{one.author}, {day(one.at)}</span></span>
            {one.number === state.revision.value ? <span class="hint">{words.history.now}</span> : (
              <button type="button" class="compare" aria-pressed={shown?.number === one.number} aria-label={`${words.history.compare}: ${words.jobs.revision(one.number)}`}
                onClick={() => { if (shown?.number === one.number) state.compared.value = null; else void compareWith(one.number); }}>{words.history.compare}</button>
            )}
          </li>
        ))}
      </ol>
    </details>
  );
}

/** When, by this machine's clock. */
const day = (at: string) => new Date(at).toLocaleString(words.locale, { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" });
