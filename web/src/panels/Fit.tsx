import { signal } from "@preact/signals";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import * as link from "../server/link";
import type { FitLine, FitStage } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { AttachedTo } from "./Attachments";
import { unlessDragged } from "./inSight";
import { useSteps } from "./LaterSteps";
import { choose } from "./choosing";
import { Tally, WriteDown } from "./WriteDown";

const told = words.later.Fit;

/** By job, revision and device: how far it may give way, as sentences. */
const ways = signal<ReadonlyMap<string, readonly string[]>>(new Map());
const keyOf = (device: string) => `${state.file.value}/${state.revision.value}/${device}`;

async function ask(device: string): Promise<void> {
  const file = state.file.value;
  const key = keyOf(device);
  if (!file || ways.value.has(key)) return;
  try {
    const said = await link.givesWay(file, device);
    ways.value = new Map(ways.value).set(`${file}/${said.revision}/${device}`, said.ways);
  } catch (fault) { state.note.value = (fault as Error).message; }
}

/** The order of fitting, stage by stage; a device that is pressed is shown on the plan, with the whole of its sheet. */
export function Fit() {
  const stages = useSteps()?.fit;
  return (
    <section class="later" aria-labelledby="later-title">
      <h2 id="later-title">{told.title}</h2>
      <p class="hint">{told.intro}</p>
      {!stages ? <p class="hint" role="status">{words.later.working}</p> : null}
      {stages && !stages.length ? <p class="hint">{words.later.none}</p> : null}
      {stages?.length ? <Tally step="fit" keys={stages.flatMap((one) => (one.is_fitted ? one.devices.map((device) => device.device) : []))} /> : null}
      {stages ? <Cautions of={stages} /> : null}
      {stages?.map((one, i) => <Stage key={one.heading} number={i + 1} of={one} />)}
      <p class="not-yet">{told.also}</p>
    </section>
  );
}

/** Each caution once, with the devices that it is about. */
function Cautions({ of }: { of: readonly FitStage[] }) {
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

function Stage({ number, of }: { number: number; of: FitStage }) {
  return (
    <div class="stage">
      <h3><span class="n">{number}</span> {of.heading}</h3>
      {of.named.length ? <p class="hint">{of.named.join(", ")}</p> : null}
      {of.devices.length ? <ol class="kit">{of.devices.map((one) => <Kit key={one.device} line={one} isFitted={of.is_fitted} />)}</ol> : null}
    </div>
  );
}

function Kit({ line, isFitted }: { line: FitLine; isFitted: boolean }) {
  const isChosen = state.chosen.value?.of === "devices" && state.chosen.value.id === line.device;
  const press = () => {
    if (isChosen) { state.chosen.value = null; return; }
    choose(null);
    state.storey.value = line.storey;
    state.chosen.value = { of: "devices", id: line.device };
  };
  const key = keyOf(line.device);
  const here = useRef<HTMLLIElement>(null);
  useEffect(() => { if (isChosen) void ask(line.device); }, [isChosen, key]);
  // Pressed on the plan, it is told in sight; pressed here, it is under the eye already.
  useLayoutEffect(() => { if (isChosen) unlessDragged(() => here.current?.scrollIntoView({ block: "nearest" })); }, [isChosen]);
  return (
    <li ref={here} data-kit={line.device} class={isChosen ? "is-chosen" : undefined}>
      <button type="button" class="press" aria-expanded={isChosen} aria-controls={`kit-${line.device}`} onClick={press}>
        <span class="tag">{line.tag}</span>
        <span><strong>{line.name}</strong> <span class="hint">{line.kind}, {line.room}</span></span>
      </button>
      <p class="where">{line.facts[0]}</p>
      {isFitted ? <WriteDown step="fit" of={line.device} name={line.name} isOpen={isChosen} /> : null}
      {line.findings.length ? <p class="first"><strong>{words.later.mendFirst}</strong> {line.findings.join(" ")}</p> : null}
      <div id={`kit-${line.device}`} class="sheet" hidden={!isChosen}>
        <ul class="told">{line.facts.slice(1).map((one) => <li key={one}>{one}</li>)}</ul>
        {line.cautions.map((one) => <p key={one} class="caution">{one}</p>)}
        {isChosen ? <><Ways of={ways.value.get(key)} /><AttachedTo about={`devices/${line.device}`} /></> : null}
      </div>
    </li>
  );
}

/** How far it may be fixed from its place. */
function Ways({ of }: { of: readonly string[] | undefined }) {
  return (
    <div class="ways">
      <h4>{told.ways}</h4>
      {!of ? <p class="hint" role="status">{told.trying}</p> : null}
      {of && !of.length ? <p class="hint">{told.bound}</p> : null}
      {of?.length ? <><ul class="told">{of.map((one) => <li key={one}>{one}</li>)}</ul><p class="hint">{told.tried}</p></> : null}
    </div>
  );
}
