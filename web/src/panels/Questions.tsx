import { computed, signal } from "@preact/signals";
import { useLayoutEffect } from "preact/hooks";
import type { BoardAnswer } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { Line, MARKS } from "./Answer";
import { choose } from "./choosing";
import { held, settled } from "./inSight";
import { VERDICTS, axes, counted, grouped, isShown, type Group } from "./listing";

/** Only answers about one storey, or about what is chosen on the plan. */
const onlyStorey = signal("");
const onlyChosen = signal(false);
/** Groups that were opened or shut by hand: theirs is not for the verdict to say. */
const byHand = signal<Record<number, boolean>>({});
const restShown = signal<Record<number, boolean>>({});

const only = computed(() => ({
  storey: state.storeys.value.some((one) => one.storey === onlyStorey.value) ? onlyStorey.value : "",
  thing: onlyChosen.value ? (state.chosen.value?.id ?? "") : "",
}));

/** The answer that was chosen when the list was drawn last. */
let last: string | null = null;

export function Questions() {
  const answers = state.answers.value;
  const chosen = state.shown.value;
  const before = held(last);
  useLayoutEffect(() => { settled(before, chosen); last = chosen; });
  const groups = grouped(state.order.value, answers, only.value, state.shown.value);
  const all = state.order.value.map((key) => answers.get(key)).filter((one) => one !== undefined);
  const shown = all.filter((one) => isShown(one, only.value));
  return (
    <section class="questions" id="questions" tabindex={-1} aria-labelledby="questions-title" onKeyDown={walked}>
      <h2 id="questions-title">{words.panel.questions}</h2>
      <Sum all={shown} of={all.length} />
      <Filter />
      {state.shown.value === null ? <p class="hint">{words.panel.nothingChosen} {words.plan.noticed}</p> : null}
      {groups.map((one) => <Questioned key={one.question} group={one} />)}
      {all.length && !shown.length ? <p class="hint">{words.panel.noneOfThese}</p> : null}
    </section>
  );
}

/** How it stands with the house in one line. */
function Sum({ all, of }: { all: readonly BoardAnswer[]; of: number }) {
  if (!of) return null;
  return (
    <p class="sum" role="status">
      {all.length < of ? <span>{words.panel.shownOf(all.length, of)}</span> : null}
      <Counts counts={counted(all)} isLong />
    </p>
  );
}

function Counts({ counts, isLong = false }: { counts: Readonly<Record<string, number>>; isLong?: boolean }) {
  return (
    <span class="counts">
      {VERDICTS.filter((one) => counts[one]).map((one) => (
        <span key={one} class={`is-${one}`}>
          <span class="mark" aria-hidden="true">{MARKS[one]}</span> {counts[one]}<span class={isLong ? "" : "reader"}> {words.panel.verdicts[one]}</span>
        </span>
      ))}
    </span>
  );
}

function Filter() {
  const chosen = state.chosen.value;
  const site = state.site.value;
  const name = chosen && chosen.of !== "walls" ? site?.[chosen.of]?.find((one) => one.id === chosen.id)?.name : undefined;
  if (state.storeys.value.length < 2 && !name) return null;
  return (
    <div class="filter" role="group" aria-label={words.panel.filter}>
      {state.storeys.value.length > 1 ? (
        <select aria-label={words.plan.storey} value={only.value.storey} onChange={(event) => { onlyStorey.value = event.currentTarget.value; }}>
          <option value="">{words.panel.everywhere}</option>
          {state.storeys.value.map((one) => <option key={one.storey} value={one.storey}>{one.name}</option>)}
        </select>
      ) : null}
      {name ? (
        <button type="button" aria-pressed={onlyChosen.value} onClick={() => { onlyChosen.value = !onlyChosen.value; }}>{words.panel.onlyAbout(name)}</button>
      ) : null}
    </div>
  );
}

function Questioned({ group }: { group: Group }) {
  const { question, all, open, rest } = group;
  const hasChosen = all.some((one) => one.key === state.shown.value);
  const isOpen = hasChosen || (byHand.value[question] ?? group.verdict !== "good");
  // A group of nothing but what is met or not known has nothing to put first.
  const isWhole = open.length === 0 || (restShown.value[question] ?? false);
  const lines = isWhole ? all : open;
  const axis = axes(all);
  const worst = all[0];
  return (
    <section class={`group is-${group.verdict}`} data-question={question}>
      <h3>
        <button type="button" class="head" aria-expanded={isOpen} aria-controls={`group-${question}`}
          onClick={() => { byHand.value = { ...byHand.value, [question]: !isOpen }; if (isOpen && hasChosen) choose(null); }}>
          <span class="sign" aria-hidden="true">{isOpen ? "\u2212" : "+"}</span>
          <span class="name">{group.name}</span>
          <Counts counts={group.counts} />
          {worst && !isOpen ? <span class="worst"><span class="reader">{words.panel.worst} </span>{worst.value}</span> : null}
        </button>
      </h3>
      <div id={`group-${question}`} hidden={!isOpen}>
        {isOpen ? (
          <>
            <p class="asks">{state.asks.value.get(question)}</p>
            <ol>{lines.map((one) => <Line key={one.key} answer={one} axis={one.span ? axis[one.span.unit] : undefined} />)}</ol>
            {rest.length && open.length ? (
              <button type="button" class="plain more" aria-expanded={isWhole} onClick={() => { restShown.value = { ...restShown.value, [question]: !isWhole }; }}>
                {isWhole ? words.panel.fewer : words.panel.andMore(counted(rest))}
              </button>
            ) : null}
          </>
        ) : null}
      </div>
    </section>
  );
}

/** Arrow keys go from line to line, left and right shut and open a group. */
function walked(event: KeyboardEvent): void {
  const here = (event.target as HTMLElement).closest<HTMLElement>(".head, .line, .more");
  if (!here || event.altKey || event.ctrlKey || event.metaKey) return;
  const stops = [...(event.currentTarget as HTMLElement).querySelectorAll<HTMLElement>(".head, .line, .more")];
  const at = stops.indexOf(here);
  const head = here.closest(".group")?.querySelector<HTMLElement>(".head");
  const isOpen = head?.getAttribute("aria-expanded") === "true";
  let to: HTMLElement | null | undefined = null;
  switch (event.key) {
    case "ArrowDown": to = stops[at + 1]; break;
    case "ArrowUp": to = stops[at - 1]; break;
    case "Home": to = stops[0]; break;
    case "End": to = stops.at(-1); break;
    case "ArrowLeft": if (here === head && isOpen) head?.click(); to = head; break;
    case "ArrowRight": if (here !== head) return; if (!isOpen) head?.click(); to = head; break;
    default: return;
  }
  event.preventDefault();
  to?.focus();
}
