import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import * as link from "../server/link";
import type { CareDate, LaterSteps } from "../server/types";
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
  const care = useSteps()?.care;
  const told = words.later["Look after"];
  return (
    <section class="later" aria-labelledby="later-title">
      <h2 id="later-title">{told.title}</h2>
      <p class="hint">{told.intro}</p>
      {!care ? <p class="hint" role="status">{words.later.working}</p> : (
        <>
          {care.dates.length ? <ol class="dates">{care.dates.map((one) => <Dated key={`${one.device}/${one.what}`} one={one} />)}</ol> : <p>{told.noDates}</p>}
          <Named title={told.undated} names={care.undated} />
          <Named title={told.lasting} names={care.lasting} />
        </>
      )}
      <p class="not-yet">{told.notYet}</p>
    </section>
  );
}

function Dated({ one }: { one: CareDate }) {
  const day = new Date(`${one.on}T12:00`).toLocaleDateString(words.locale, { day: "numeric", month: "long", year: "numeric" });
  return (
    <li class={one.is_past ? "is-past" : undefined}>
      <time dateTime={one.on}>{day}</time>
      <span><strong>{one.name}</strong>: {one.what}{one.is_past ? <span class="past"> {words.later["Look after"].past}</span> : null}</span>
    </li>
  );
}

function Named({ title, names }: { title: string; names: readonly string[] }) {
  if (!names.length) return null;
  return <div><h3>{title} <span class="count">{names.length}</span></h3><p>{names.join(", ")}.</p></div>;
}
