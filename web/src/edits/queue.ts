/** Edits wait here until the server has kept them; a cut link loses none, and none is merged silently. */
import { effect } from "@preact/signals";
import { ahead } from "./ahead";
import * as link from "../server/link";
import type { Edit, Operation, Site } from "../server/types";
import * as state from "../state";
import { words } from "../words";

const AUTHOR = "author";
const AGAIN_MS = 3000;
let isFlushing = false;
let isWantedAgain = false;

const place = (file: string) => `waiting:${file}`;

export function author(): string {
  const kept = sessionStorage.getItem(AUTHOR) ?? `page-${fresh().slice(0, 4)}`;
  sessionStorage.setItem(AUTHOR, kept);
  return kept;
}

/** An id of our own: a page over plain http has no randomUUID. */
export function fresh(): string {
  return [...crypto.getRandomValues(new Uint8Array(12))].map((one) => one.toString(16).padStart(2, "0")).join("");
}

export function pending(file: string): Edit[] {
  return JSON.parse(localStorage.getItem(place(file)) ?? "[]") as Edit[];
}

function keep(file: string, edits: Edit[]): void {
  if (edits.length) localStorage.setItem(place(file), JSON.stringify(edits));
  else localStorage.removeItem(place(file));
  state.waiting.value = edits.length;
}

/** Do something to the house: it waits until the server has it, and is sent at once if the link is there. */
export function enqueue(operations: Operation[]): Promise<void> {
  const file = state.file.value;
  if (!file || operations.length === 0) return Promise.resolve();
  const edit: Edit = { id: fresh(), author: author(), base: state.revision.value, operations };
  keep(file, [...pending(file), edit]);
  if (state.site.value) state.site.value = ahead(state.site.value, operations);
  state.trial.value = null;
  return flush();
}

export async function flush(): Promise<void> {
  if (isFlushing) { isWantedAgain = true; return; }
  isFlushing = true;
  try {
    do {
      isWantedAgain = false;
      const file = state.file.value;
      for (let first = file ? pending(file)[0] : undefined; file && first; first = pending(file)[0]) {
        await one(file, first);
        keep(file, pending(file).filter((other) => other.id !== first?.id));
      }
    } while (isWantedAgain);
  } catch (fault) {
    if (!(fault instanceof TypeError)) state.note.value = String((fault as Error).message);
  } finally {
    isFlushing = false;
  }
}

async function one(file: string, edit: Edit): Promise<void> {
  try {
    const outcome = await link.edit(file, edit);
    if ("refused" in outcome) {
      state.take(outcome.refused.changed);
      state.revision.value = outcome.refused.revision;
      state.note.value = words.conflict(outcome.refused.keys.map(named).join(", "), outcome.refused.by.join(", "));
      return;
    }
    state.take(outcome.taken.changed);
    state.revision.value = Math.max(state.revision.value, outcome.taken.revision);
  } catch (fault) {
    if (!(fault instanceof link.Refusal)) throw fault;
    state.note.value = fault.message; // the server will never take it: say so, and show the house as it is kept
    const now = await link.opened(file);
    state.site.value = now.site as unknown as Site;
    state.revision.value = now.revision;
  }
}

export function named(key: string): string {
  const [list, id] = key.split("/");
  const records = (state.site.value as unknown as Record<string, { id: string; name?: string }[]> | null)?.[list ?? ""];
  return (Array.isArray(records) && records.find((record) => record.id === id)?.name) || id || key;
}

export async function undo(): Promise<void> {
  const file = state.file.value;
  if (!file) return;
  await flush();
  try {
    const outcome = await link.undo(file, fresh(), author());
    if ("refused" in outcome) {
      state.note.value = words.conflict(outcome.refused.keys.map(named).join(", "), outcome.refused.by.join(", "));
    } else {
      state.take(outcome.taken.changed);
      state.revision.value = outcome.taken.revision;
    }
  } catch (fault) {
    state.note.value = String((fault as Error).message);
  }
}

/** Try again whenever the link comes back, and every few seconds while something waits. */
export function watch(): void {
  addEventListener("online", () => void flush());
  effect(() => { if (state.isLive.value) void flush(); });
  setInterval(() => { if (state.waiting.value) void flush(); }, AGAIN_MS);
}
