import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import * as server from "../server/office";
import type { ShownLine, ShownOption, ShownQuote } from "../server/types";
import * as state from "../state";
import { words } from "../words";

const told = words.quote;
const isOpen = signal(false);
const isWide = signal(false);
const found = signal<{ file: string; revision: number; quote: ShownQuote | null; fault: string } | null>(null);

/** What the job costs: its options beside one another, told by what they change; asked only once it is opened. */
export function Quote() {
  const file = state.file.value ?? "";
  const revision = state.revision.value;
  useEffect(() => {
    let isWanted = true;
    if (!isOpen.value || !file) return undefined;
    server.quote(file)
      .then((quote) => { if (isWanted) found.value = { file, revision, quote, fault: "" }; })
      .catch((wrong: unknown) => { if (isWanted) found.value = { file, revision, quote: null, fault: (wrong as Error).message }; });
    return () => { isWanted = false; };
  }, [file, revision, isOpen.value]);
  const now = found.value?.file === file && found.value.revision === revision ? found.value : null;
  return (
    <details class="quote" open={isOpen.value} onToggle={(event) => { isOpen.value = event.currentTarget.open; }}>
      <summary>{told.title}</summary>
      {now ? null : <p class="hint" role="status">{told.working}</p>}
      {now?.fault ? <p class="fault" role="alert">{now.fault}</p> : null}
      {now?.quote && !isWide.value ? (
        <>
          {now.quote.options.length > 1 ? <p class="acts"><button type="button" onClick={() => { isWide.value = true; }}>{told.wide}</button></p> : null}
          <Options of={now.quote} />
        </>
      ) : null}
      {now?.quote && isWide.value ? <Wide of={now.quote} /> : null}
    </details>
  );
}

/** All options in one row, over the page; Escape closes it. */
function Wide({ of }: { of: ShownQuote }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => { if (!dialog.current?.open) dialog.current?.showModal(); }, []);
  return (
    <dialog ref={dialog} class="viewer quote wide" aria-label={told.title} onClose={() => { isWide.value = false; }}>
      <p class="acts"><strong>{told.title}: {of.house}</strong> <button type="button" onClick={() => dialog.current?.close()}>{told.close}</button></p>
      <div class="over" tabIndex={0} role="group" aria-label={told.title}><Options of={of} /></div>
    </dialog>
  );
}

function Options({ of }: { of: ShownQuote }) {
  return (
    <>
      <p class="hint">{of.by ? told.by(of.by) : told.madeUp}</p>
      <ol class="options" aria-label={told.title}>
        {of.options.map((one) => <li key={one.name}><Option of={one} isAlone={of.options.length === 1} /></li>)}
      </ol>
      {of.upkeep ? (
        <>
          <h4>{told.upkeep}</h4>
          <p>{of.upkeep}</p>
          <Lines all={of.upkeep_lines} name={told.upkeep} />
        </>
      ) : null}
      <ul class="facts-told">{of.notes.map((one) => <li key={one}>{one}</li>)}</ul>
      <p class="hint">{told.own}</p>
    </>
  );
}

function Option({ of, isAlone }: { of: ShownOption; isAlone: boolean }) {
  return (
    <section aria-label={of.name}>
      <h4>{of.name}</h4>
      <p class="total">{of.total}</p>
      {of.difference ? <p class="more">{told.more(of.difference)}</p> : null}
      {of.changes.length ? <ul class="changes">{of.changes.map((one) => <li key={one}>{one}</li>)}</ul> : <p class="hint">{isAlone ? told.alone : told.first}</p>}
      <p class="hint">{told.likely(of.price, of.hours)}</p>
      {of.not_priced.map((one) => <p key={one} class="fault">{one}</p>)}
      <details><summary>{told.lines}</summary><Lines all={[...of.lines, ...of.sums]} name={of.name} sums={of.sums.length} /></details>
    </section>
  );
}

function Lines({ all, name, sums = 0 }: { all: readonly ShownLine[]; name: string; sums?: number }) {
  return (
    <table class="lines" aria-label={name}>
      <tbody>
        {all.map((one, i) => (
          <tr key={i} class={i >= all.length - sums ? "sum" : undefined}><th scope="row">{one.what}</th><td>{one.count}</td><td>{one.amount}</td></tr>
        ))}
      </tbody>
    </table>
  );
}
