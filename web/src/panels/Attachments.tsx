import { signal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { author } from "../edits/queue";
import * as works from "../server/works";
import type { AttachmentLine } from "../server/types";
import * as state from "../state";
import { momentWords, sizeWords } from "../units";
import { words } from "../words";

const told = words.attachments;
const ACCEPTED = "image/jpeg,image/png,image/gif,image/webp,image/heic,.heic,.pdf,.txt,.log,.csv,.tsv,.md";
/** Pictures that every browser can show. */
const SHOWN = ["image/jpeg", "image/png", "image/gif", "image/webp"];
const TEXTS = ["text/plain", "text/csv"];

const lines = signal<{ file: string; all: readonly AttachmentLine[] }>({ file: "", all: [] });
const isOpen = signal(false);
const about = signal("");
const given = signal<File | null>(null);
const note = signal("");
const fault = signal("");
const isAttaching = signal(false);
const viewed = signal<{ line: AttachmentLine; text: string } | null>(null);
/** A new form for each attachment. */
const round = signal(0);

const all = () => (lines.value.file === state.file.value ? lines.value.all : []);

async function load(file: string): Promise<void> {
  try { lines.value = { file, all: await works.attachments(file) }; } catch (wrong) { state.note.value = (wrong as Error).message; }
}

async function attach(): Promise<void> {
  const [file, content] = [state.file.value, given.value];
  if (!file || isAttaching.value) return;
  if (!content) { fault.value = told.nothing; return; }
  isAttaching.value = true;
  fault.value = "";
  try {
    const { largest_attachment: largest } = await works.limits();
    if (content.size > largest) { fault.value = told.tooLong(content.name, sizeWords(largest)); return; }
    await works.attach(file, content, { about: about.value, note: note.value.trim(), author: author() });
    given.value = null;
    note.value = about.value = "";
    round.value += 1;
    await load(file);
  } catch (wrong) { fault.value = (wrong as Error).message; } finally { isAttaching.value = false; }
}

async function change(line: AttachmentLine, what: "removed" | "put back"): Promise<void> {
  const file = state.file.value;
  if (!file) return;
  try {
    await works.changeAttachment(file, line.number, what, author());
    await load(file);
  } catch (wrong) { state.note.value = (wrong as Error).message; }
}

async function view(line: AttachmentLine): Promise<void> {
  const file = state.file.value;
  if (!file) return;
  const text = TEXTS.includes(line.kind) ? await (await fetch(works.contentOf(file, line.number))).text() : "";
  viewed.value = { line, text };
}

/** Everything that is kept beside the house: attached, listed, looked at, taken away and put back. */
export function Attachments() {
  const file = state.file.value ?? "";
  useEffect(() => { if (file) void load(file); }, [file, state.revision.value]);
  const there = all().filter((one) => !one.removed_at);
  const gone = all().filter((one) => one.removed_at);
  return (
    <details id="attachments" class="attachments" open={isOpen.value} onToggle={(event) => { isOpen.value = event.currentTarget.open; }}>
      <summary>{told.title} <span class="count">{there.length}</span></summary>
      <p class="hint">{told.intro}</p>
      <Form key={`${file}/${round.value}`} />
      {there.length === 0 ? <p class="hint">{told.none}</p> : null}
      <ul class="attached">{there.map((one) => <Line key={one.number} of={one} />)}</ul>
      {gone.length ? (
        <details>
          <summary>{told.removed} <span class="count">{gone.length}</span></summary>
          <ul class="attached">{gone.map((one) => <Line key={one.number} of={one} />)}</ul>
        </details>
      ) : null}
      <Viewer />
    </details>
  );
}

function Form() {
  return (
    <form onSubmit={(event) => { event.preventDefault(); void attach(); }}>
      <fieldset disabled={isAttaching.value}>
        <label><span>{told.file}</span>
          <input id="attachment-file" type="file" accept={ACCEPTED} onChange={(event) => { given.value = event.currentTarget.files?.[0] ?? null; fault.value = ""; }} /></label>
        <label><span>{told.about}</span><About /></label>
        <label><span>{told.note}</span>
          <input maxLength={1000} value={note.value} onInput={(event) => { note.value = event.currentTarget.value; }} /></label>
        <button type="submit">{isAttaching.value ? told.attaching : told.attach}</button>
      </fieldset>
      {fault.value ? <p class="fault" role="alert">{fault.value}</p> : null}
    </form>
  );
}

function About() {
  const site = state.site.value;
  const findings = state.findings.value.filter((one) => one.severity !== "not run");
  const groups: [string, (readonly [string, string])[]][] = [
    [told.devices, (site?.devices ?? []).map((one) => [`devices/${one.id}`, one.name] as const)],
    [told.openings, (site?.openings ?? []).filter((one) => one.kind !== "gap").map((one) => [`openings/${one.id}`, one.name] as const)],
    [told.findings, [...new Map(findings.map((one) => [`findings/${one.code}/${one.subject_id}`, `${one.code}: ${one.subject}`]))]],
  ];
  return (
    <select value={about.value} onChange={(event) => { about.value = event.currentTarget.value; }}>
      <option value="">{told.job}</option>
      {groups.map(([name, options]) => (options.length ? (
        <optgroup key={name} label={name}>{options.map(([key, text]) => <option key={key} value={key}>{text}</option>)}</optgroup>
      ) : null))}
    </select>
  );
}

function Line({ of }: { of: AttachmentLine }) {
  const file = state.file.value ?? "";
  const address = works.contentOf(file, of.number);
  const at = momentWords(of.at, words.locale);
  const facts = [told.kinds[of.kind] ?? of.kind, sizeWords(of.size_bytes), of.author, at].filter(Boolean).join(", ");
  return (
    <li>
      {SHOWN.includes(of.kind) ? <img src={address} alt="" loading="lazy" width={64} height={64} /> : <span class="sheet" aria-hidden="true">{told.kinds[of.kind]?.split(" ")[0] ?? "?"}</span>}
      <div class="what">
        <strong>{of.name}</strong>
        {of.note ? <span>{of.note}</span> : null}
        {of.about ? <Subject of={of} /> : null}
        <span class="hint">{facts}</span>
        {of.starred_lines ? <span class="hint">{told.starred(of.starred_lines)}</span> : null}
        {of.removed_at ? <span class="hint">{told.removedBy(of.removed_by, momentWords(of.removed_at, words.locale))}</span> : null}
      </div>
      <div class="acts">
        {SHOWN.includes(of.kind) || TEXTS.includes(of.kind)
          ? <button type="button" aria-label={told.viewOf(of.name)} onClick={() => void view(of)}>{told.view}</button>
          : <a class="button" href={address} target="_blank" rel="noopener" aria-label={told.viewOf(of.name)}>{told.view}</a>}
        {of.removed_at
          ? <button type="button" aria-label={told.putBackOf(of.name)} onClick={() => void change(of, "put back")}>{told.putBack}</button>
          : <button type="button" aria-label={told.removeOf(of.name)} onClick={() => void change(of, "removed")}>{told.remove}</button>}
      </div>
    </li>
  );
}

/** What it is about; a thing of the house can be looked at on the plan. */
function Subject({ of }: { of: AttachmentLine }) {
  const [list, ...rest] = of.about.split("/");
  const id = rest.join("/");
  const records = list === "devices" ? state.site.value?.devices : list === "openings" ? state.site.value?.openings : undefined;
  if (!records?.some((one) => one.id === id)) return <span>{of.about_name}</span>;
  const show = () => { state.chosen.value = { of: list as "devices" | "openings", id }; };
  return <button type="button" class="plain" aria-label={told.show(of.about_name)} onClick={show}>{of.about_name}</button>;
}

/** A picture or a text over the page; Escape closes it. */
function Viewer() {
  const dialog = useRef<HTMLDialogElement>(null);
  const now = viewed.value;
  useEffect(() => { if (now && !dialog.current?.open) dialog.current?.showModal(); }, [now]);
  if (!now) return null;
  return (
    <dialog ref={dialog} class="viewer" aria-label={now.line.name} onClose={() => { viewed.value = null; }}>
      <p class="acts"><strong>{now.line.name}</strong> <button type="button" onClick={() => dialog.current?.close()}>{told.close}</button></p>
      {now.line.note ? <p>{now.line.note}</p> : null}
      {SHOWN.includes(now.line.kind)
        ? <img src={works.contentOf(state.file.value ?? "", now.line.number)} alt={now.line.note || now.line.name} />
        : <pre tabIndex={0}>{now.text}</pre>}
    </dialog>
  );
}

/** At the details of a thing: what is attached to it, and the way to attach more. */
export function AttachedTo({ about: key }: { about: string }) {
  const found = all().filter((one) => one.about === key && !one.removed_at);
  const add = () => {
    about.value = key;
    isOpen.value = true;
    requestAnimationFrame(() => {
      document.getElementById("attachments")?.scrollIntoView({ block: "start" });
      document.getElementById("attachment-file")?.focus();
    });
  };
  return (
    <div class="attached-to">
      {found.map((one) => (
        <button key={one.number} type="button" class="plain" aria-label={told.viewOf(one.name)}
          onClick={() => { isOpen.value = true; void view(one); }}>{one.name}</button>
      ))}
      <button type="button" class="plain" onClick={add}>{told.toThis}</button>
    </div>
  );
}
