import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import * as link from "../server/link";
import type { CareDate, LaterSteps, StepLine, StepStorey } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { choose } from "./Questions";

const told = signal<{ file: string; said: LaterSteps } | null>(null);

/** What the server says of the later steps, asked again whenever the house is another. */
function useSteps(): LaterSteps | null {
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

export function Fit() {
  const steps = useSteps();
  const { title, intro, notYet } = words.later.Fit;
  return (
    <section class="later" aria-labelledby="later-title">
      <h2 id="later-title">{title}</h2>
      <p class="hint">{intro}</p>
      {steps ? <><Cautions of={steps.fit} /><Storeys of={steps.fit} /></> : <p class="hint" role="status">{words.later.working}</p>}
      <p class="not-yet">{notYet}</p>
    </section>
  );
}

export function Prove() {
  const steps = useSteps();
  const { title, intro, notYet } = words.later.Prove;
  return (
    <section class="later" aria-labelledby="later-title">
      <h2 id="later-title">{title}</h2>
      <p class="hint">{intro}</p>
      {steps ? <Storeys of={steps.prove} /> : <p class="hint" role="status">{words.later.working}</p>}
      <p class="not-yet">{notYet}</p>
    </section>
  );
}

/** Each caution once, with the devices that it is about. */
function Cautions({ of }: { of: readonly StepStorey[] }) {
  const about = new Map<string, string[]>();
  for (const device of of.flatMap((one) => one.devices)) {
    for (const caution of device.cautions) about.set(caution, [...(about.get(caution) ?? []), device.tag]);
  }
  if (!about.size) return null;
  return (
    <div class="cautions">
      <h3>{words.later.beware}</h3>
      <ul>{[...about].map(([caution, tags]) => <li key={caution}>{caution} <span class="hint">{tags.join(", ")}</span></li>)}</ul>
    </div>
  );
}

function Storeys({ of }: { of: readonly StepStorey[] }) {
  if (!of.length) return <p class="hint">{words.later.none}</p>;
  return (
    <>
      {of.map((storey) => (
        <div key={storey.storey}>
          <h3>{storey.name} <span class="count">{storey.devices.length}</span></h3>
          <ol class="kit">{storey.devices.map((one) => <Kit key={one.device} storey={storey.storey} line={one} />)}</ol>
        </div>
      ))}
    </>
  );
}

function Kit({ storey, line }: { storey: string; line: StepLine }) {
  const show = () => {
    state.storey.value = storey;
    state.chosen.value = { of: "devices", id: line.device };
    choose(line.answer || null);
  };
  return (
    <li data-kit={line.device} class={state.chosen.value?.id === line.device ? "is-chosen" : undefined}>
      <button type="button" class="tag" aria-label={words.later.show(line.name)} onClick={show}>{line.tag}</button>
      <div>
        <p><strong>{line.name}</strong> <span class="hint">{line.kind}, {line.room}</span></p>
        <ul class="told">{line.facts.map((one) => <li key={one}>{one}</li>)}</ul>
        {line.findings.length ? <p class="first"><strong>{words.later.mendFirst}</strong> {line.findings.join(" ")}</p> : null}
      </div>
    </li>
  );
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
