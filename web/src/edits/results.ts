/** What is written down on site: it waits here until the server has kept it, so that a cut link loses nothing. */
import { batch, computed, effect, signal } from "@preact/signals";
import { Refusal } from "../server/link";
import * as link from "../server/link";
import type { ResultWish, SiteResult } from "../server/types";
import * as state from "../state";
import { author, fresh } from "./queue";

export type Step = ResultWish["step"];
export type Outcome = ResultWish["outcome"];
/** A result as it is shown: kept by the server, or waiting for it. */
export interface Shown { outcome: Outcome; reading: string; remark: string; author: string; at: string; earlier: string; isWaiting: boolean }

const AGAIN_MS = 3000;
const NAME = "written by";
const place = (file: string) => `results:${file}`;
const keyOf = (step: Step, key: string) => `${step}/${key}`;

/** Who writes it down: told once, else the page itself. */
export const by = signal(localStorage.getItem(NAME) ?? "");
const kept = signal<{ file: string; all: readonly SiteResult[] }>({ file: "", all: [] });
const waiting = signal<readonly ResultWish[]>([]);
export const waits = computed(() => waiting.value.length);

/** By step and key: what the server has, with what waits for it on top. */
export const results = computed<ReadonlyMap<string, Shown>>(() => {
  const found = new Map<string, Shown>();
  if (kept.value.file === state.file.value) {
    for (const one of kept.value.all) found.set(keyOf(one.step, one.key), { ...one, isWaiting: false });
  }
  for (const one of waiting.value) {
    found.set(keyOf(one.step, one.key), {
      outcome: one.outcome, reading: one.reading ?? "", remark: one.remark ?? "", author: one.author, at: "", earlier: "", isWaiting: true,
    });
  }
  return found;
});

export const resultOf = (step: Step, key: string): Shown | undefined => results.value.get(keyOf(step, key));

export function signedBy(name: string): void {
  by.value = name;
  localStorage.setItem(NAME, name);
}

function pending(file: string): ResultWish[] { return JSON.parse(localStorage.getItem(place(file)) ?? "[]") as ResultWish[]; }

function hold(file: string, wishes: readonly ResultWish[]): void {
  if (wishes.length) localStorage.setItem(place(file), JSON.stringify(wishes));
  else localStorage.removeItem(place(file));
  if (file === state.file.value) waiting.value = wishes;
}

/** Ask what is kept; what could not be asked stays as it was. */
export async function load(file: string): Promise<void> {
  waiting.value = pending(file);
  try {
    const all = await link.results(file);
    if (file === state.file.value) kept.value = { file, all };
  } catch (fault) {
    if (fault instanceof Refusal) state.note.value = fault.message;
  }
}

/** Write something down: it is shown at once, and sent as soon as there is a link. */
export function writeDown(step: Step, key: string, said: { outcome: Outcome; reading: string; remark: string }): void {
  const file = state.file.value;
  if (!file) return;
  const all = kept.value.file === file ? kept.value.all : [];
  const seen = all.find((one) => one.step === step && one.key === key)?.number ?? 0;
  const wish: ResultWish = { id: fresh(), step, key, ...said, revision: state.revision.value, author: by.value.trim() || author(), seen };
  hold(file, [...pending(file), wish]);
  void flush();
}

let isFlushing = false;
let isWantedAgain = false;

async function flush(): Promise<void> {
  if (isFlushing) { isWantedAgain = true; return; }
  isFlushing = true;
  try {
    do {
      isWantedAgain = false;
      const file = state.file.value;
      for (let first = file ? pending(file)[0] : undefined; file && first; first = pending(file)[0]) await send(file, first);
    } while (isWantedAgain);
  } catch { /* no link: it waits */ } finally { isFlushing = false; }
}

async function send(file: string, wish: ResultWish): Promise<void> {
  const rest = () => pending(file).filter((one) => one.id !== wish.id);
  try {
    const made = await link.writeResult(file, wish);
    batch(() => {
      if (file === kept.value.file) {
        kept.value = { file, all: [...kept.value.all.filter((one) => one.step !== made.step || one.key !== made.key), made] };
      }
      hold(file, rest());
    });
  } catch (fault) {
    if (!(fault instanceof Refusal)) throw fault;
    state.note.value = fault.message; // the server will never take it: say so, and show what stands there
    hold(file, rest());
    await load(file);
  }
}

export function watchResults(): void {
  addEventListener("online", () => void flush());
  effect(() => { if (state.isLive.value) void flush(); });
  // What somebody else wrote meanwhile is looked up when one comes back to the page.
  addEventListener("focus", () => { if (state.file.value && kept.value.file === state.file.value) void load(state.file.value); });
  setInterval(() => { if (waiting.value.length) void flush(); }, AGAIN_MS);
}

/** How a list stands: what holds is counted, and what is of an earlier revision counts for nothing until it is done again. */
export function counted(step: Step, keys: readonly string[], all: ReadonlyMap<string, Shown>): { of: number; done: number; failed: number; earlier: number } {
  const found = keys.map((key) => all.get(keyOf(step, key))).filter((one) => one !== undefined);
  const holding = found.filter((one) => !one.earlier && one.outcome !== "not done");
  const failed = holding.filter((one) => one.outcome === "not passed").length;
  return { of: keys.length, done: holding.length, failed, earlier: found.filter((one) => one.earlier && one.outcome !== "not done").length };
}
