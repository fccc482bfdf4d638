import { signal } from "@preact/signals";
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { by, counted, load, resultOf, results, signedBy, waits, writeDown, type Outcome, type Shown, type Step } from "../edits/results";
import * as state from "../state";
import { momentWords } from "../units";
import { words } from "../words";

const told = words.written;
const OUTCOMES: Record<Step, readonly Outcome[]> = { fit: ["done", "not done"], prove: ["passed", "not passed", "not done"] };
const MARKS: Record<Outcome, string> = { done: "\u2713", passed: "\u2713", "not passed": "\u2717", "not done": "\u2013" };

/** The one that is written of now: its reading and remark are in reach. */
const written = signal("");

/** How far the list is, and who writes. Looked up anew whenever the house is another. */
export function Tally({ step, keys }: { step: Step; keys: readonly string[] }) {
  const file = state.file.value ?? "";
  useEffect(() => { if (file) void load(file); }, [file, state.revision.value]);
  const { of, done, failed, earlier } = counted(step, keys, results.value);
  return (
    <div class="tally">
      <p role="status"><strong>{told.tally(done, of)}</strong>{[failed ? told.failed(failed) : "", earlier ? told.ofEarlier(earlier) : "", waits.value ? told.waiting(waits.value) : ""]
        .filter(Boolean).map((one) => <span key={one}>, {one}</span>)}</p>
      <progress aria-label={told.progress} value={done} max={Math.max(1, of)} />
      <label><span>{told.by}</span>
        <input maxLength={60} value={by.value} placeholder={told.example} onInput={(event) => signedBy(event.currentTarget.value)} /></label>
    </div>
  );
}

/** What may be said of one device or test, and what is said of it. */
export function WriteDown({ step, of: key, name, isOpen }: { step: Step; of: string; name: string; isOpen: boolean }) {
  const now = resultOf(step, key);
  const isHere = isOpen || written.value === `${step}/${key}`;
  const say = (change: Partial<Pick<Shown, "outcome" | "reading" | "remark">>) => {
    // What is of an earlier revision is not made new by a word about it.
    const said = { outcome: now && !now.earlier ? now.outcome : ("not done" as Outcome), reading: now?.reading ?? "", remark: now?.remark ?? "", ...change };
    writeDown(step, key, said);
  };
  return (
    <div class={`written is-${(now?.outcome ?? "not done").replace(" ", "-")}${now?.earlier ? " is-earlier" : ""}`} data-result={`${step}/${key}`}>
      <div class="say" role="group" aria-label={told.of(name)}>
        {OUTCOMES[step].map((one) => (
          <button key={one} type="button" aria-pressed={(now?.outcome ?? "not done") === one}
            onClick={() => { written.value = `${step}/${key}`; if (now?.outcome !== one || now.earlier) say({ outcome: one }); }}>
            <span aria-hidden="true">{MARKS[one]}</span> {told.outcomes[one]}</button>
        ))}
      </div>
      {now?.earlier ? <p class="first">{told.earlier(now.earlier)}</p> : null}
      {isHere ? (
        <div class="words">
          {step === "prove" ? <Words label={told.reading} longest={120} now={now?.reading ?? ""} onSay={(reading) => say({ reading })} /> : null}
          <Words label={told.remark} longest={400} now={now?.remark ?? ""} onSay={(remark) => say({ remark })} />
        </div>
      ) : null}
      {now && !isHere && (now.reading || now.remark) ? <p>{[now.reading, now.remark].filter(Boolean).join("; ")}</p> : null}
      {now ? <p class="hint">{now.isWaiting ? told.waits : told.who(now.author, momentWords(now.at, words.locale))}</p> : null}
    </div>
  );
}

/** A line to write on: kept when one leaves it. What the server says meanwhile takes nothing away from under the hand. */
function Words({ label, longest, now, onSay }: { label: string; longest: number; now: string; onSay(said: string): void }) {
  const input = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => { if (input.current && document.activeElement !== input.current) input.current.value = now; }, [now]);
  return (
    <label><span>{label}</span>
      <input ref={input} maxLength={longest} defaultValue={now} onChange={(event) => { const said = event.currentTarget.value.trim(); if (said !== now) onSay(said); }} /></label>
  );
}
