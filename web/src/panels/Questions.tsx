import { enqueue } from "../edits/queue";
import { play } from "../plan/Walker";
import { live } from "../server/now";
import type { BoardAnswer, BoardMend } from "../server/types";
import * as state from "../state";
import { words } from "../words";

const MARKS: Record<string, string> = { bad: "\u25a0", thin: "\u25e7", good: "\u25cb", unknown: "?" };

export function choose(key: string | null): void {
  state.shown.value = key;
  state.goesAlong.value = key !== null;
  live.value?.show(key);
}

export function Questions() {
  const order = state.order.value;
  return (
    <section class="questions" id="questions" tabindex={-1} aria-labelledby="questions-title">
      <h2 id="questions-title">{words.panel.questions}</h2>
      {state.shown.value === null ? <p class="hint">{words.panel.nothingChosen} {words.plan.noticed}</p> : null}
      <ol>
        {order.map((key) => {
          const answer = state.answers.value.get(key);
          return answer ? <Line key={key} answer={answer} /> : null;
        })}
      </ol>
    </section>
  );
}

function Line({ answer }: { answer: BoardAnswer }) {
  const isShown = state.shown.value === answer.key;
  return (
    <li class={`answer is-${answer.verdict}${state.later.value.has(answer.key) ? " is-later" : ""}`} data-answer={answer.key}>
      <button type="button" class="line" aria-expanded={isShown} onClick={() => choose(isShown ? null : answer.key)}>
        <span class="mark" aria-hidden="true">{MARKS[answer.verdict]}</span>
        <span class="what">
          <span class="kind">{answer.question_name}</span>
          <span class="subject">{answer.subject}</span>
        </span>
        <span class="number">
          <span class="value">{answer.value}</span>
          {answer.range ? <span class="range">{answer.range}</span> : null}
        </span>
        <span class="reader">{answer.verdict_word}</span>
      </button>
      {isShown ? <Whole answer={answer} /> : null}
    </li>
  );
}

function Whole({ answer }: { answer: BoardAnswer }) {
  return (
    <div class="whole">
      <p class="measure">
        <strong class="verdict">{answer.verdict_word}.</strong> {sentence(answer.measure)}
        {answer.chance ? ` ${sentence(answer.chance)}` : ""} {answer.reason}
        {answer.basis_word ? <Known basis={answer.basis ?? "default"} /> : null}
      </p>
      {state.walk.value.length ? <button type="button" class="play" onClick={play}>{words.panel.play}</button> : null}
      {state.strip.value ? <div class="strip" dangerouslySetInnerHTML={{ __html: state.strip.value }} /> : null}
      <h3>{words.panel.mends}</h3>
      <Mends mends={answer.mends} />
      {answer.drivers.length ? <h3>{words.panel.drivers}</h3> : null}
      <ul class="drivers">
        {answer.drivers.map((one) => <li key={one.name}>{one.name}: {one.swing} <Known basis={one.basis} /></li>)}
      </ul>
      {answer.numbers.length ? (
        <details>
          <summary>{words.panel.numbers}</summary>
          <dl>
            {answer.numbers.map((one) => (
              <div key={one.name}><dt>{one.name}</dt><dd>{one.value}{one.range ? ` (${one.range})` : ""}</dd></div>
            ))}
          </dl>
        </details>
      ) : null}
      <ul class="notes">{answer.notes.map((one) => <li key={one}>{one}</li>)}</ul>
    </div>
  );
}

export function Mends({ mends, isAmongMany = false }: { mends: readonly BoardMend[]; isAmongMany?: boolean }) {
  if (!mends.length) return <p class="hint">{state.later.value.size ? words.panel.later : words.panel.noMend}</p>;
  return (
    <>
      <ul class="mends">
        {mends.map((mend) => (
          <li key={mend.text}>
            <span>{mend.text}</span>
            {mend.operations
              ? <button type="button" class="do" onClick={() => void enqueue([...(mend.operations ?? [])])}>{words.panel.doIt}</button>
              : <span class="hint">{words.panel.byHand}</span>}
          </li>
        ))}
      </ul>
      {isAmongMany ? null : <Beware cautions={mends.flatMap((mend) => mend.cautions)} />}
    </>
  );
}

/** Each caution once, however many mends ask for such work. */
export function Beware({ cautions }: { cautions: readonly string[] }) {
  const told = [...new Set(cautions)].filter(Boolean);
  return told.length ? <p class="caution"><strong>{words.panel.beware}</strong> {told.join(" ")}</p> : null;
}

export function Known({ basis }: { basis: string }) {
  return <span class={`known known-${basis}`}>{words.panel.basis[basis] ?? basis}</span>;
}

const sentence = (text: string) => (text ? `${text[0]?.toUpperCase()}${text.slice(1)}${text.endsWith(".") ? "" : "."}` : "");
