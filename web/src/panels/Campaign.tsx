import { signal } from "@preact/signals";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import * as works from "../server/works";
import type { SentIn, SentInPart } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { faultOf, followInto, Working, type Followed } from "./Working";

const told = words.campaign;
const COUNTS = [2_000, 20_000, 100_000];

const trials = signal(20_000);
const fault = signal("");
const under = signal<Followed | null>(null);
const came = signal<{ file: string; said: SentIn } | null>(null);

async function send(): Promise<void> {
  const file = state.file.value;
  if (!file || under.value) return;
  fault.value = "";
  state.laid.value = null;
  try {
    const last = await followInto(under, await works.campaign(file, trials.value));
    fault.value = faultOf(last);
    if (last.result?.kind === "sent-in") came.value = { file, said: last.result };
  } catch (wrong) {
    fault.value = (wrong as Error).message;
  }
}

/** Lay ways over the plan, or take them away if they lie there; the plan goes to a storey that has any. */
function lay(drawn: Record<string, string>): void {
  state.laid.value = state.laid.value === drawn ? null : drawn;
  const first = state.storeys.value.find((one) => one.storey in drawn);
  if (state.laid.value && first && !(state.storey.value in drawn)) state.storey.value = first.storey;
}

/** Seeded intruders sent into the house as it is, and what they did. */
export function Campaign() {
  const file = state.file.value;
  const said = came.value?.file === file ? came.value?.said ?? null : null;
  const isStale = said !== null && said.revision !== state.revision.value;
  useEffect(() => { if (isStale) state.laid.value = null; }, [isStale]);
  return (
    <section class="sent-in" aria-labelledby="sent-in-title">
      <details>
        <summary><h2 id="sent-in-title">{told.title}</h2></summary>
        <p class="hint">{told.intro}</p>
        <form onSubmit={(event) => { event.preventDefault(); void send(); }}>
          <label><span>{told.howMany}</span>
            <select value={trials.value} onChange={(event) => { trials.value = Number(event.currentTarget.value); }}>
              {COUNTS.map((one) => <option key={one} value={one}>{told.counts(one)}</option>)}
            </select></label>
          <button type="submit" class="main" disabled={Boolean(under.value)}>{told.send}</button>
        </form>
        {under.value ? <Working of={under.value} onStop={() => { if (under.value) void works.stop(under.value.news.id); }} /> : null}
        {fault.value ? <p class="fault" role="alert">{fault.value}</p> : null}
        {said ? <Said of={said} isStale={isStale} /> : null}
      </details>
    </section>
  );
}

function Said({ of, isStale }: { of: SentIn; isStale: boolean }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => heading.current?.focus(), [of]);
  return (
    <div class="what-came">
      <h3 ref={heading} tabIndex={-1}>{told.of(of.revision, told.counts(of.trials))}</h3>
      {isStale ? <p class="fault" role="status">{told.stale}</p> : (
        <div class="lay" role="group" aria-label={told.draw}>
          {([["lost", of.lost], ["least", of.least]] as const).map(([name, drawn]) => (Object.keys(drawn).length ? (
            <button key={name} type="button" aria-pressed={state.laid.value === drawn} onClick={() => lay(drawn)}>{told[name]}</button>
          ) : null))}
        </div>
      )}
      {of.parts.map((one) => <Part key={one.heading} of={one} />)}
    </div>
  );
}

function Part({ of }: { of: SentInPart }) {
  return (
    <div>
      <h4>{of.heading}</h4>
      {of.text.map((one) => <p key={one} class="hint">{one}</p>)}
      {of.points.length ? <ul class="facts-told">{of.points.map((one) => <li key={one}>{one}</li>)}</ul> : null}
      {of.drawing ? <div class="strip" dangerouslySetInnerHTML={{ __html: of.drawing }} /> : null}
      {of.rows.length ? (
        <div class="scroll" tabindex={0} role="group" aria-label={of.heading}>
          <table>
            <thead><tr>{of.headings.map((one, i) => <th key={i} scope="col">{one}</th>)}</tr></thead>
            <tbody>{of.rows.map((row, i) => <tr key={i}>{row.map((cell, j) => <td key={j}>{cell}</td>)}</tr>)}</tbody>
          </table>
        </div>
      ) : null}
    </div>
  );
}
