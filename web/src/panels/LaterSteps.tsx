import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import * as link from "../server/link";
import type { BatteryDay, CareDate, LaterSteps } from "../server/types";
import * as state from "../state";
import { words } from "../words";

const told = signal<{ file: string; said: LaterSteps } | null>(null);

/** What the server says of the later steps, asked again whenever the house is another. */
export function useSteps(): LaterSteps | null {
  const file = state.file.value;
  const revision = state.revision.value;
  useEffect(() => {
    let isWanted = true;
    if (file) {
      link.laterSteps(file)
        .then((said) => { if (isWanted) told.value = { file, said }; })
        .catch((fault: unknown) => { state.note.value = (fault as Error).message; });
    }
    return () => { isWanted = false; };
  }, [file, revision]);
  return told.value?.file === file ? told.value.said : null;
}

export function LookAfter() {
  const steps = useSteps();
  const care = steps?.care;
  const told = words.later["Look after"];
  return (
    <section class="later" aria-labelledby="later-title">
      <h2 id="later-title">{told.title}</h2>
      <p class="hint">{told.intro}</p>
      {!care ? <p class="hint" role="status">{words.later.working}</p> : (
        <>
          <h3>{told.visits}</h3>
          <Batteries days={steps.batteries} />
          <h3>{told.ends}</h3>
          {care.dates.length ? <ol class="dates">{care.dates.map((one) => <Dated key={`${one.device}/${one.what}`} one={one} />)}</ol> : <p>{told.noDates}</p>}
          <Named title={told.undated} names={care.undated} />
          <Named title={told.lasting} names={care.lasting} />
        </>
      )}
      <p class="not-yet">{told.notYet}</p>
    </section>
  );
}

/** The days by which batteries are changed, and on what they are counted. */
function Batteries({ days }: { days: readonly BatteryDay[] }) {
  const told = words.later["Look after"];
  if (!days.length) return <p>{told.noBatteries}</p>;
  return (
    <>
      <ol class="dates">{days.map((one) => (
        <li key={`${one.on}/${one.names.join()}`} class={one.is_past ? "is-past" : undefined}>
          <time dateTime={one.on}>{dayOf(one.on)}</time>
          <span>{one.names.join(", ")}{one.is_past ? <span class="past"> {told.past}</span> : null}</span>
        </li>
      ))}</ol>
      {days.some((one) => one.is_counted) ? <p class="hint">{told.counted}</p> : null}
    </>
  );
}

function dayOf(on: string): string {
  return new Date(`${on}T12:00`).toLocaleDateString(words.locale, { day: "numeric", month: "long", year: "numeric" });
}

function Dated({ one }: { one: CareDate }) {
  return (
    <li class={one.is_past ? "is-past" : undefined}>
      <time dateTime={one.on}>{dayOf(one.on)}</time>
      <span><strong>{one.name}</strong>: {one.what}{one.is_past ? <span class="past"> {words.later["Look after"].past}</span> : null}</span>
    </li>
  );
}

function Named({ title, names }: { title: string; names: readonly string[] }) {
  if (!names.length) return null;
  return <div><h3>{title} <span class="count">{names.length}</span></h3><p>{names.join(", ")}.</p></div>;
}
