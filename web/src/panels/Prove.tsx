import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import * as link from "../server/link";
import type { ProveRound, ProveStop, ProveTest, ProveWalk } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { useSteps } from "./LaterSteps";
import { choose } from "./choosing";
import { Tally, WriteDown } from "./WriteDown";

const told = words.later.Prove;
const WHOLE_ROUND = "round";
const SIGNS: Record<ProveWalk["expects"], string> = { notices: "\u25cf", "may notice": "\u25d0", "stays quiet": "\u25cb" };

/** What is drawn on the plan now: a test, a walk of one, the whole round. */
const drawn = signal<string | null>(null);

function clear(): void {
  if (drawn.value !== null) state.laid.value = null;
  drawn.value = null;
}

/** Draw it over the plan, or take it away if it is there. */
async function draw(key: string, storey: string, about = ""): Promise<void> {
  const file = state.file.value;
  if (!file) return;
  if (drawn.value === key) { clear(); state.chosen.value = null; return; }
  choose(null);
  drawn.value = key;
  state.chosen.value = state.site.value?.devices?.some((one) => one.id === about) ? { of: "devices", id: about } : null;
  if (storey) state.storey.value = storey;
  try {
    const said = await link.drawn(file, key);
    if (drawn.value !== key) return;
    state.laid.value = said.storeys;
    const first = state.storeys.value.find((one) => one.storey in said.storeys);
    if (first && !(state.storey.value in said.storeys)) state.storey.value = first.storey;
  } catch (fault) {
    drawn.value = null;
    state.note.value = (fault as Error).message;
  }
}

/** The round of tests in walking order; what is pressed is drawn on the plan. */
export function Prove() {
  const steps = useSteps();
  const revision = state.revision.value;
  useEffect(() => clear, [revision, state.file.value]);
  const about = state.chosen.value?.id;
  // Pressed on the plan, its first test comes into sight; a test that is drawn is under the eye already.
  useEffect(() => {
    if (about && drawn.value === null) document.querySelector(`[data-about="${CSS.escape(about)}"]`)?.scrollIntoView({ block: "nearest" });
  }, [about]);
  const round = steps?.prove;
  return (
    <section class="later" aria-labelledby="later-title">
      <h2 id="later-title">{told.title}</h2>
      <p class="hint">{told.intro}</p>
      {!steps ? <p class="hint" role="status">{words.later.working}</p> : null}
      {steps && !round ? <p class="hint">{words.later.none}</p> : null}
      {round ? <Round of={round} /> : null}
      <p class="not-yet">{told.also}</p>
    </section>
  );
}

/** Stops that follow each other on one storey stand together. */
function runs(stops: readonly ProveStop[]): ProveStop[][] {
  const found: ProveStop[][] = [];
  for (const one of stops) {
    const last = found.at(-1);
    if (last && last[0]?.storey === one.storey) last.push(one);
    else found.push([one]);
  }
  return found;
}

function Round({ of }: { of: ProveRound }) {
  return (
    <>
      <p><strong>{of.heading}</strong> {of.begins}</p>
      <details><summary>{told.how}</summary><p class="hint">{of.how}</p></details>
      {of.missing ? <p class="fault">{of.missing}</p> : null}
      <Tally step="prove" keys={of.stops.flatMap((one) => one.tests).flatMap((one) => (one.walks.length ? one.walks.map((walk) => walk.key) : [one.key]))} />
      <button type="button" class="whole-round" aria-pressed={drawn.value === WHOLE_ROUND} onClick={() => void draw(WHOLE_ROUND, "")}>{told.round}</button>
      {runs(of.stops).map((some) => (
        <div key={some[0]?.number} class="stage">
          <h3>{some[0]?.where || told.nowhere}</h3>
          <ol class="stops">{some.map((one) => <Stop key={one.number} of={one} />)}</ol>
        </div>
      ))}
    </>
  );
}

function Stop({ of }: { of: ProveStop }) {
  return (
    <li data-stop={of.number}>
      <h4><span class="n">{of.number}</span> <span class="hint">{of.walk}</span></h4>
      <ul class="tests">{of.tests.map((one) => <Test key={one.key} stop={of} of={one} />)}</ul>
    </li>
  );
}

function Test({ stop, of }: { stop: ProveStop; of: ProveTest }) {
  return (
    <li data-test={of.key} data-about={of.about} class={drawn.value === of.key ? "is-drawn" : state.chosen.value?.id === of.about ? "is-about" : undefined}>
      <button type="button" class="press" aria-pressed={drawn.value === of.key} onClick={() => void draw(of.key, stop.storey, of.about)}>
        <span class="tag">{of.tag || "\u2013"}</span> <span>{of.what}</span>
      </button>
      {of.expected ? <p class="expected"><strong>{told.expected}</strong> {of.expected}</p> : null}
      {of.wait ? <p class="hint">{of.wait}</p> : null}
      {of.walks.length ? null : <WriteDown step="prove" of={of.key} name={of.what} isOpen={drawn.value === of.key} />}
      {of.walks.length ? <ol class="walks">{of.walks.map((one) => <Walk key={one.key} stop={stop} test={of} of={one} />)}</ol> : null}
    </li>
  );
}

function Walk({ stop, test, of }: { stop: ProveStop; test: ProveTest; of: ProveWalk }) {
  return (
    <li data-test={of.key} class={drawn.value === of.key ? "is-drawn" : undefined}>
      <button type="button" class="press" aria-pressed={drawn.value === of.key} onClick={() => void draw(of.key, stop.storey, test.about)}>
        <span class="sign" aria-hidden="true">{SIGNS[of.expects]}</span>
        <span>{of.how} <span class="hint">{of.pace}</span></span>
      </button>
      <p class={of.is_wanted ? "expected" : "expected first"}>{of.expected}</p>
      <WriteDown step="prove" of={of.key} name={`${test.tag}, ${of.how}, ${of.pace}`} isOpen={drawn.value === of.key} />
    </li>
  );
}
