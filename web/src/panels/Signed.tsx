import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import * as works from "../server/works";
import type { DifferentAnswer, SignedLine, SinceSigned, WorkNews } from "../server/types";
import * as state from "../state";
import { momentWords } from "../units";
import { words } from "../words";
import { Tests } from "./Comparison";
import { faultOf, followInto, Working, type Followed } from "./Working";

const told = words.signed;
const lines = signal<{ file: string; all: readonly SignedLine[] }>({ file: "", all: [] });
const who = signal("");
const what = signal("");
const fault = signal("");
const under = signal<Followed | null>(null);
const since = signal<{ file: string; said: SinceSigned } | null>(null);

async function load(file: string): Promise<void> {
  try { lines.value = { file, all: await works.signed(file) }; } catch (wrong) { state.note.value = (wrong as Error).message; }
}

/** Have something done, and follow it to its end; null where it gave nothing. */
async function done(begin: () => Promise<WorkNews>): Promise<WorkNews["result"]> {
  if (under.value) return null;
  fault.value = "";
  since.value = null;
  try {
    const last = await followInto(under, await begin());
    fault.value = faultOf(last);
    return last.result;
  } catch (wrong) {
    fault.value = (wrong as Error).message;
    return null;
  }
}

async function sign(): Promise<void> {
  const file = state.file.value;
  if (!file) return;
  if (await done(() => works.sign(file, state.revision.value, who.value, what.value || told.example))) await load(file);
}

async function hold(line: SignedLine): Promise<void> {
  const file = state.file.value;
  if (!file) return;
  const result = await done(() => works.sinceSigned(file, line.number));
  if (result?.kind === "since-signed") since.value = { file, said: result };
}

/** Answers signed, what was signed before, and what is another since: the house, or the program. */
export function Signed() {
  const file = state.file.value ?? "";
  useEffect(() => { if (file) void load(file); }, [file, state.revision.value]);
  const all = lines.value.file === file ? lines.value.all : [];
  return (
    <section class="signed" aria-labelledby="signed-title">
      <h2 id="signed-title">{told.title}</h2>
      <p class="hint">{told.intro}</p>
      <form onSubmit={(event) => { event.preventDefault(); void sign(); }}>
        <label><span>{told.who}</span>
          <input required maxLength={60} autocomplete="off" value={who.value} onInput={(event) => { who.value = event.currentTarget.value; }} /></label>
        <label><span>{told.what}</span>
          <input maxLength={300} placeholder={told.example} value={what.value} onInput={(event) => { what.value = event.currentTarget.value; }} /></label>
        {state.waiting.value ? <p class="hint">{told.waiting}</p> : null}
        <button type="submit" class="main" disabled={Boolean(under.value) || state.waiting.value > 0}>{told.sign(state.revision.value)}</button>
      </form>
      {under.value ? <Working of={under.value} onStop={() => { if (under.value) void works.stop(under.value.news.id); }} /> : null}
      {fault.value ? <p class="fault" role="alert">{fault.value}</p> : null}
      <h3>{told.list}</h3>
      {all.length === 0 ? <p class="hint">{told.none}</p> : null}
      <ul>{all.map((one) => <Line key={one.number} of={one} said={since.value?.file === file && since.value.said.number === one.number ? since.value.said : null} />)}</ul>
    </section>
  );
}

function Line({ of, said }: { of: SignedLine; said: SinceSigned | null }) {
  return (
    <li>
      <p><strong>{of.what}</strong></p>
      <p>{of.author}, <time dateTime={of.at}>{momentWords(of.at, words.locale)}</time></p>
      <p class="hint">{told.of(of.revision, of.answers, of.findings)}, {told.program(of.program)}</p>
      <p class="states">
        <span data-same={of.is_same_house}>{of.is_same_house ? told.sameHouse : told.otherHouse}</span>
        <span data-same={of.is_same_program}>{of.is_same_program ? told.sameProgram : told.otherProgram}</span>
      </p>
      <button type="button" disabled={Boolean(under.value)} aria-label={told.compareOf(of.what)} onClick={() => void hold(of)}>{told.compare}</button>
      {said ? <Since of={said} /> : null}
    </li>
  );
}

function Since({ of }: { of: SinceSigned }) {
  const heading = useRef<HTMLParagraphElement>(null);
  useEffect(() => { heading.current?.focus(); }, [of]);
  const many = of.answers.length + of.findings.length;
  return (
    <div class="since">
      <p ref={heading} tabIndex={-1}><strong>{many ? told.differ(many, of.same) : told.allSame(of.same)}</strong></p>
      {of.house.length ? (
        <>
          <h4>{told.inHouse}</h4>
          <ul class="facts-told">{of.house.map((one, i) => <li key={i}>{one.thing}: {one.what.join("; ") || one.course}</li>)}</ul>
        </>
      ) : null}
      {of.program.length ? <><h4>{told.inProgram}</h4><ul class="facts-told">{of.program.map((one) => <li key={one}>{one}</li>)}</ul></> : null}
      <Differ title={told.answers} all={of.answers} />
      <Differ title={told.findings} all={of.findings} />
      <Tests of={of.tests} />
    </div>
  );
}

function Differ({ title, all }: { title: string; all: readonly DifferentAnswer[] }) {
  if (all.length === 0) return null;
  return (
    <>
      <h4>{title} <span class="count">{all.length}</span></h4>
      <ul class="differ">
        {all.map((one) => (
          <li key={one.key}>
            <strong>{one.title}</strong>
            <dl>
              <div><dt>{told.was}</dt><dd>{one.was}</dd></div>
              <div><dt>{told.today}</dt><dd>{one.today}</dd></div>
              <div><dt>{told.because}</dt><dd>{told.causes[one.cause]}</dd></div>
            </dl>
          </li>
        ))}
      </ul>
    </>
  );
}
