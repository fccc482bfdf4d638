import { play } from "../plan/Walker";
import type { BoardAnswer, BoardSpan } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { Known } from "./Known";
import { Mends } from "./Mends";
import { choose } from "./choosing";
import { placed, type Axis } from "./listing";

export const MARKS: Record<string, string> = { bad: "\u25a0", thin: "\u25e7", good: "\u25cb", unknown: "?" };

interface LineProps { answer: BoardAnswer; axis: Axis | undefined }

/** One answer on one line; all of it below when it is chosen. */
export function Line({ answer, axis }: LineProps) {
  const isShown = state.shown.value === answer.key;
  return (
    <li class={`answer is-${answer.verdict}${state.later.value.has(answer.key) ? " is-later" : ""}`} data-answer={answer.key}>
      <button type="button" class="line" aria-expanded={isShown} onClick={() => choose(isShown ? null : answer.key)}>
        <span class="mark" aria-hidden="true">{MARKS[answer.verdict]}</span>
        <span class="subject">{answer.subject}</span>
        <span class="reader">{`, ${answer.verdict_word}: `}</span>
        <span class="number">
          <span class={answer.span || answer.basis ? "value" : "value is-none"}>{answer.value}</span>
          {answer.range ? <span class="range">{answer.range}</span> : null}
        </span>
        {answer.span && axis ? <RangeBar span={answer.span} axis={axis} /> : null}
      </button>
      {isShown ? <Whole answer={answer} /> : null}
    </li>
  );
}

/** Where the range lies beside those of the other answers of its question. */
function RangeBar({ span, axis }: { span: BoardSpan; axis: Axis }) {
  const from = placed(span.low, axis);
  return (
    <span class="bar" aria-hidden="true">
      {axis.low < 0 && axis.high > 0 ? <span class="nought" style={{ left: `${placed(0, axis)}%` }} /> : null}
      <span class="from-to" style={{ left: `${from}%`, width: `${placed(span.high, axis) - from}%` }} />
      <span class="at" style={{ left: `${placed(span.value, axis)}%` }} />
    </span>
  );
}

function Whole({ answer }: { answer: BoardAnswer }) {
  return (
    <div class="whole">
      <p class="measure">
        <strong class="verdict">{sentence(answer.verdict_word)}</strong> {sentence(answer.measure)}
        {answer.chance ? ` ${sentence(answer.chance)}` : ""} {answer.reason}{" "}
        {answer.basis_word ? <Known basis={answer.basis ?? "default"} /> : null}
      </p>
      {state.walk.value.length ? <button type="button" class="play" onClick={play}>{words.panel.play}</button> : null}
      {state.strip.value ? <div class="strip" dangerouslySetInnerHTML={{ __html: state.strip.value }} /> : null}
      <h4>{words.panel.mends}</h4>
      <Mends mends={answer.mends} />
      {answer.drivers.length ? <h4>{words.panel.drivers}</h4> : null}
      <ul class="drivers">
        {answer.drivers.map((one) => <li key={one.name}><span>{one.name}</span> <span class="swing">{one.swing}</span> <Known basis={one.basis} /></li>)}
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
      {answer.notes.length ? <ul class="notes">{answer.notes.map((one) => <li key={one}>{one}</li>)}</ul> : null}
    </div>
  );
}

const sentence = (text: string) => (text ? `${text[0]?.toUpperCase()}${text.slice(1)}${text.endsWith(".") ? "" : "."}` : "");
