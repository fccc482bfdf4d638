/** Edits wait here until the server has kept them; a cut link loses none, and none is merged silently. */
import { batch, effect } from "@preact/signals";
import * as link from "../server/link";
import type { Edit, Operation } from "../server/types";
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
  state.ahead.value = edits.flatMap((one) => one.operations);
}

/** What was left waiting when the page was last closed. */
export function recall(file: string): void { keep(file, pending(file)); }

/** Do something to the house: it waits until the server has it, and is sent at once if the link is there. */
export function enqueue(operations: Operation[]): Promise<void> {
  const file = state.file.value;
  if (!file || operations.length === 0) return Promise.resolve();
  const edit: Edit = { id: fresh(), author: author(), base: state.revision.value, operations };
  batch(() => {
    keep(file, [...pending(file), edit]);
    state.trial.value = null;
  });
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
        const settle = await one(file, first);
        batch(() => {
          settle();
          keep(file, pending(file).filter((other) => other.id !== first?.id));
        });
      }
    } while (isWantedAgain);
  } catch (fault) {
    if (!(fault instanceof TypeError)) state.note.value = String((fault as Error).message);
  } finally {
    isFlushing = false;
  }
}

/** Send one edit; what is left to do once it is off the queue. */
async function one(file: string, edit: Edit): Promise<() => void> {
  try {
    const outcome = await link.edit(file, edit);
    if ("taken" in outcome) return () => caughtUp(outcome.taken);
    const { refused } = outcome;
    return () => {
      caughtUp(refused);
      state.note.value = words.conflict(refused.keys.map(named).join(", "), refused.by.join(", "));
    };
  } catch (fault) {
    if (!(fault instanceof link.Refusal)) throw fault;
    return () => { state.note.value = fault.message; }; // the server will never take it: say so and let it go
  }
}

/** What the server said of a revision: older word than what is known already is no news. */
export function caughtUp(said: { revision: number; changed: readonly { key: string; record?: unknown }[] }): void {
  if (said.revision < state.revision.value) return;
  state.take(said.changed);
  state.revision.value = said.revision;
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
    const outcome = await link.undo(file, fresh(), author(), state.revision.value);
    if ("refused" in outcome) {
      caughtUp(outcome.refused);
      state.note.value = words.conflict(outcome.refused.keys.map(named).join(", "), outcome.refused.by.join(", "));
    } else {
      caughtUp(outcome.taken);
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
