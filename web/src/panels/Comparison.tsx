import { signal } from "@preact/signals";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import * as link from "../server/link";
import type { Compared, ComparedLine, ComparedState, ToldRound } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { MARKS } from "./Answer";
import { choose } from "./choosing";
import { broughtInSight } from "./inSight";

const told = signal<Compared | null>(null);

/** What became of the house since a revision: beside the plan, which shows what moved. */
export function Comparison() {
  const number = state.compared.value?.number;
  const { file, revision } = state;
  useEffect(() => {
    let isWanted = true;
    if (number === undefined || !file.value) { told.value = null; return undefined; }
    link.comparison(file.value, number)
      .then((found) => { if (isWanted) told.value = found; })
      .catch((fault: unknown) => { state.note.value = (fault as Error).message; });
    return () => { isWanted = false; };
  }, [number, revision.value, file.value]);
  const section = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    broughtInSight(section.current);
    section.current?.querySelector("h2")?.focus({ preventScroll: true });
  }, [number]);
  if (number === undefined) return null;
  const now = told.value?.before === number ? told.value.comparison : null;
  return (
    <section ref={section} class="comparison" aria-labelledby="comparison-title" aria-busy={!now}>
      <div class="title">
        <h2 id="comparison-title" tabindex={-1}>{words.history.comparing(number)}</h2>
        <button type="button" onClick={() => { state.compared.value = null; }}>{words.history.stop}</button>
      </div>
      {!now ? <p class="hint" role="status">{words.history.working}</p> : (
        <>
          <h3>{words.history.house}</h3>
          {now.changes.length ? (
            <ul class="things">
              {now.changes.map((one) => (
                <li key={`${one.of}/${one.thing}`}>
                  <strong>{one.thing}</strong> {one.of ? <span class="hint">{one.of}</span> : null} <span class={`course is-${one.course}`}>{words.history.course[one.course]}</span>
                  {one.what.length ? <ul>{one.what.map((piece) => <li key={piece}>{piece}</li>)}</ul> : null}
                </li>
              ))}
            </ul>
          ) : <p class="hint">{words.history.noHouse}</p>}
          <h3>{words.history.answers}</h3>
          {now.answers.length ? <Answers lines={now.answers} /> : <p class="hint">{words.history.noAnswers}</p>}
          {now.answers.length ? <p class="hint">{words.history.alike(now.same)}</p> : null}
          <h3>{words.history.findings}</h3>
          {now.findings.length ? (
            <ul class="things">
              {now.findings.map((one) => (
                <li key={`${one.course}/${one.code}/${one.subject}`}>
                  <strong>{one.code}</strong> <span class={`course is-${one.course.replaceAll(" ", "-")}`}>{words.history.course[one.course]}</span> {one.message}
                </li>
              ))}
            </ul>
          ) : <p class="hint">{words.history.noFindings}</p>}
          <Tests of={now.tests} />
        </>
      )}
    </section>
  );
}

/** What must be tested again, in the shortest walking order. */
export function Tests({ of }: { of: ToldRound }) {
  return (
    <div class="due-tests">
      <h3>{words.history.tests}</h3>
      <p>{of.heading}.</p>
      {of.stops.length ? (
        <>
          <p class="hint">{words.history.order(of.order, of.begins_at)}</p>
          <ol>
            {of.stops.map((stop) => (
              <li key={stop.number}>
                <span class="hint">{words.history.place(stop.where, stop.walk)}</span>
                <ul>{stop.tests.map((one) => <li key={one.what}>{one.what} <span class="hint">({one.why})</span></li>)}</ul>
              </li>
            ))}
          </ol>
          <p class="hint">{words.history.back(of.back)}</p>
        </>
      ) : null}
    </div>
  );
}

function Answers({ lines }: { lines: readonly ComparedLine[] }) {
  return (
    <div class="scroll" tabindex={0} role="group" aria-label={words.history.answers}>
      <table>
        <thead>
          <tr>{[words.history.answer, words.history.before, words.history.after].map((one) => <th key={one} scope="col">{one}</th>)}</tr>
        </thead>
        {[...new Set(lines.map((one) => one.course))].map((course) => (
          <tbody key={course}>
            <tr class={`course is-${course.replaceAll(" ", "-")}`}><th scope="rowgroup" colSpan={3}>{lines.find((one) => one.course === course)?.course_word} <span class="count">{lines.filter((one) => one.course === course).length}</span></th></tr>
            {lines.filter((one) => one.course === course).map((one) => (
              <tr key={one.key} data-compared={one.key}>
                <th scope="row">
                  {one.after ? <button type="button" class="plain" onClick={() => choose(one.key)}>{one.subject}</button> : one.subject}
                  <span class="hint">{one.question_name}</span>
                  {one.fails ? <span class={`fails is-${one.fails.replace(" ", "-")}`}>{words.history.fails[one.fails]}</span> : null}
                  {one.is_beyond ? null : <span class="hint">{words.history.within}</span>}
                </th>
                <td><State of={one.before} /></td>
                <td><State of={one.after} />{one.by ? <span class="by"><span class="reader">{words.history.by} </span>{one.by}</span> : null}</td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
    </div>
  );
}

function State({ of }: { of: ComparedState | null }) {
  if (!of) return <span class="hint">{words.history.none}</span>;
  return (
    <span class={`then is-${of.verdict}`}>
      <span class="mark" aria-hidden="true">{MARKS[of.verdict]}</span><span class="reader">{of.verdict_word}: </span> {of.value}
    </span>
  );
}
