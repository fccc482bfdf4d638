import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import * as works from "../server/works";
import type { BroughtIn, HandedInLimits, IntakeWish, WorkNews } from "../server/types";
import { sizeWords } from "../units";
import { words } from "../words";
import { faultOf, followInto, Working, type Followed } from "./Working";

const told = words.intake;
const HOUSES = ".ifc,.dxf,.notes,.txt,.json";
const NOTES = ".notes,.txt";
const KEPT = "intake";

const house = signal<File | null>(null);
const notes = signal<File | null>(null);
const unit = signal("");
/** A new form for each house. */
const round = signal(0);
const limits = signal<HandedInLimits | null>(null);
const under = signal<Followed | null>(null);
const fault = signal("");
/** What somebody must choose from, with what was handed in for it. */
const asks = signal<{ result: BroughtIn; wish: IntakeWish } | null>(null);
const done = signal<BroughtIn | null>(null);
/** Until the server has begun: what ends the sending, and is asked once the work has its id. */
let sending: AbortController | null = null;

const ending = (file: File) => /\.[^.]*$/.exec(file.name.toLowerCase())?.[0] ?? "";

/** Say at once what the server would say only once all of it was sent. */
function tooLong(file: File): string {
  const largest = limits.value?.largest_by_ending[ending(file)];
  if (limits.value && largest === undefined) return told.noHouse(file.name);
  return largest !== undefined && file.size > largest ? told.tooLong(file.name, sizeWords(largest)) : "";
}

async function bringHouse(): Promise<void> {
  const given = [house.value, notes.value].filter((one) => one !== null);
  const [first, second] = given;
  if (!first) { fault.value = told.nothing; return; }
  fault.value = given.map(tooLong).find(Boolean) ?? "";
  if (fault.value) return;
  sending = new AbortController();
  under.value = { news: sendingNews(first), since: performance.now() };
  try {
    const ids = [];
    for (const one of given) ids.push((await works.handIn(one, sending.signal)).id);
    await follow({ file: ids[0] ?? "", notes: second ? ids[1] ?? null : null, unit: (unit.value || null) as IntakeWish["unit"] });
  } catch (wrong) {
    fault.value = sending?.signal.aborted ? words.work.stopped : (wrong as Error).message;
  } finally {
    sending = null;
    under.value = null;
  }
}

/** Handing a file in is a step like the others, though the page does it. */
function sendingNews(file: File): WorkNews {
  return { kind: "work", id: "", what: told.title, job: "", state: "running", step: told.sending(file.name), begun: 1, of: 5, seconds: 0, is_stopping: false, fault: null, result: null };
}

async function follow(wish: IntakeWish): Promise<void> {
  const begun = await works.bringHouse(wish);
  if (sending?.signal.aborted) void works.stop(begun.id);
  sending = null;
  sessionStorage.setItem(KEPT, JSON.stringify({ id: begun.id, wish }));
  await heard(begun, wish);
}

async function heard(begun: WorkNews, wish: IntakeWish): Promise<void> {
  try {
    const last = await followInto(under, begun);
    fault.value = faultOf(last);
    if (last.result?.kind !== "brought-in") {
      for (const id of [wish.file, wish.notes]) if (id) void works.letGo(id);
    } else if (last.result.file) {
      done.value = last.result;
    } else {
      asks.value = { result: last.result, wish };
    }
  } catch (wrong) {
    fault.value = (wrong as Error).message;
  } finally {
    sessionStorage.removeItem(KEPT);
  }
}

/** What was under way when the page was loaded anew is followed on. */
async function recall(): Promise<void> {
  const kept = sessionStorage.getItem(KEPT);
  if (!kept || under.value) return;
  const { id, wish } = JSON.parse(kept) as { id: string; wish: IntakeWish };
  await heard({ ...sendingNews(new File([], "")), id, step: "" }, wish);
}

async function choose(premises: string): Promise<void> {
  const asked = asks.value;
  if (!asked) return;
  asks.value = null;
  fault.value = "";
  sending = new AbortController();
  under.value = { news: { ...sendingNews(new File([], "")), step: "" }, since: performance.now() };
  try { await follow({ ...asked.wish, premises }); } catch (wrong) { fault.value = (wrong as Error).message; } finally { sending = under.value = null; }
}

function stop(): void {
  if (sending) sending.abort();
  else if (under.value?.news.id) void works.stop(under.value.news.id);
}

function another(): void {
  round.value += 1;
  for (const id of [asks.value?.wish.file, asks.value?.wish.notes]) if (id) void works.letGo(id);
  done.value = asks.value = null;
  fault.value = "";
}

/** A house brought in: files chosen, long work followed, premises asked for, its report read, its job opened. */
export function Intake({ onOpen }: { onOpen(file: string): void }) {
  useEffect(() => {
    void works.limits().then((found) => { limits.value = found; }).catch(() => undefined);
    void recall();
  }, []);
  return (
    <section class="intake" aria-labelledby="intake-title">
      <h2 id="intake-title">{told.title}</h2>
      {/* Hidden and not taken away: what was chosen stays chosen when it must be tried again. */}
      <div hidden={Boolean(under.value ?? done.value ?? asks.value)}><Form key={round.value} /></div>
      {under.value ? <Working of={under.value} onStop={stop} /> : done.value ? <Report of={done.value} onOpen={onOpen} />
        : asks.value ? <Choices of={asks.value.result} /> : null}
      {fault.value ? <p class="fault" role="alert">{fault.value}</p> : null}
    </section>
  );
}

function Form() {
  useEffect(() => () => { house.value = notes.value = null; unit.value = ""; }, []);
  const given = house.value;
  const take = (into: typeof house) => (event: Event) => {
    into.value = (event.currentTarget as HTMLInputElement).files?.[0] ?? null;
    fault.value = into.value ? tooLong(into.value) : "";
  };
  return (
    <form class="bring" onSubmit={(event) => { event.preventDefault(); void bringHouse(); }}>
      <p class="hint">{told.intro}</p>
      <label><span>{told.file}</span><input name="house" type="file" accept={HOUSES} onChange={take(house)} /></label>
      {given && ending(given) === ".dxf" ? (
        <label><span>{told.unit}</span>
          <select value={unit.value} onChange={(event) => { unit.value = event.currentTarget.value; }}>
            <option value="">{told.unitFound}</option>
            {limits.value?.units.map((one) => <option key={one} value={one}>{told.units[one] ?? one}</option>)}
          </select></label>
      ) : null}
      {given ? <label><span>{told.notes}</span><input name="notes" type="file" accept={NOTES} onChange={take(notes)} /></label> : null}
      {given ? <button type="submit" class="main">{told.bring}</button> : null}
    </form>
  );
}

/** A heading that takes the focus when it comes, so that keys and readers go on where they were. */
function Heading({ text }: { text: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => { heading.current?.focus(); }, []);
  return <h3 ref={heading} tabIndex={-1}>{text}</h3>;
}

function Choices({ of }: { of: BroughtIn }) {
  return (
    <div class="premises" role="group" aria-label={told.which}>
      <Heading text={told.which} />
      <p class="hint">{told.whichIntro}</p>
      <ul>
        {of.choices.map((one) => (
          <li key={one.name}><button type="button" onClick={() => void choose(one.name)}>{told.premises(one.name, one.spaces)}</button></li>
        ))}
        <li><button type="button" onClick={() => void choose("")}>{told.whole}</button></li>
      </ul>
      <button type="button" class="plain" onClick={another}>{words.cancel}</button>
    </div>
  );
}

function Report({ of, onOpen }: { of: BroughtIn; onOpen(file: string): void }) {
  const { report } = of;
  const parts: [string, readonly string[], boolean][] = [
    [told.worth, of.worth_adding, true], [told.guessed, report?.guessed ?? [], true], [told.leftOut, report?.left_out ?? [], true],
    [told.odd, report?.oddities ?? [], false], [told.noted, of.noted, false], [told.read, report?.read ?? [], false],
  ];
  const open = () => { another(); onOpen(of.file); };
  return (
    <div class="report">
      <Heading text={told.done(of.name)} />
      <p>{of.counts.join(", ")}</p>
      <p class="acts">
        <button type="button" class="main" onClick={open}>{told.open}</button>
        <button type="button" class="plain" onClick={another}>{told.another}</button>
      </p>
      {parts.map(([title, facts, isOpen]) => (facts.length ? (
        <details key={title} open={isOpen}>
          <summary>{title} <span class="count">{facts.length}</span></summary>
          <ul class="facts-told">{facts.map((one) => <li key={one}>{one}</li>)}</ul>
        </details>
      ) : null))}
      {report ? <p class="hint">{told.kept}</p> : null}
    </div>
  );
}
