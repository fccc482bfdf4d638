/** The one state of the page: signals that panels and plan read, and nobody else writes but the edits and the link. */
import { batch, computed, signal } from "@preact/signals";
import { withDone } from "./edits/ahead";
import type { Board, BoardAnswer, BoardFinding, Device, Operation, Opened, ScreenStorey, Site, WalkLine } from "./server/types";

export type Chosen = { of: "devices" | "openings" | "walls"; id: string } | null;

export const file = signal<string | null>(null);
/** The house as the server has it. */
export const kept = signal<Site | null>(null);
/** What waits for the server, oldest first. */
export const ahead = signal<Operation[]>([]);
/** The house as it is shown: as kept, with what waits already done. */
export const site = computed<Site | null>(() => kept.value && withDone(kept.value, ahead.value));
export const revision = signal(0);
export const storeys = signal<ScreenStorey[]>([]);
export const houses = signal<Record<string, string>>({});
export const tags = signal<Record<string, string>>({});
export const inks = signal("");
/** By question: the whole of what it asks. */
export const asks = signal<ReadonlyMap<number, string>>(new Map());

export const step = signal("Design");
/** On site a device is looked up, not moved: no finger that slips makes another house of it. */
export const isOnSite = computed(() => step.value === "Fit" || step.value === "Prove");
export const storey = signal("");
export const shown = signal<string | null>(null);
export const chosen = signal<Chosen>(null);

export const order = signal<string[]>([]);
export const answers = signal<ReadonlyMap<string, BoardAnswer>>(new Map());
/** Answers from before: their questions, and all mends, are asked again when what is dragged stands still. */
export const later = signal<ReadonlySet<string>>(new Set());
export const findings = signal<BoardFinding[]>([]);
export const overlays = signal<Record<string, string>>({});
/** What lies over the plan instead of an answer: ways that seeded intruders went. */
export const laid = signal<Record<string, string> | null>(null);
/** An answer was just chosen: the plan goes to a storey on which it is drawn. */
export const goesAlong = signal(false);
export const strip = signal("");
export const walk = signal<WalkLine[]>([]);
/** The moment of the walk that is played; null: it is not. [s] */
export const moment = signal<number | null>(null);
export const timing = signal({ engine: 0, drawing: 0, link: 0 });
export const boardOf = signal({ revision: 0, number: null as number | null });

export const isLive = signal(false);
export const asOf = signal("");
export const waiting = signal(0);
export const note = signal("");

/** What is being tried while something is dragged: drawn at once, kept only when it is let go. */
export const trial = signal<{ device: Device } | null>(null);
export const compared = signal<{ number: number; site: Site } | null>(null);
export const past = signal<{ number: number; author: string; at: string; what: string; undoes: number | null }[]>([]);

export const system = signal<"metric" | "feet">((localStorage.getItem("units") as "metric" | "feet" | null) ?? "metric");
export const theme = signal<"light" | "dark" | null>(localStorage.getItem("theme") as "light" | "dark" | null);

/** The devices as they are drawn now: as kept, but for the one that is being dragged. */
export const devices = computed<Device[]>(() => {
  const all = site.value?.devices ?? [];
  const moving = trial.value?.device;
  return moving ? all.map((one) => (one.id === moving.id ? moving : one)) : all;
});

export function begin(opened: Opened): void {
  file.value = opened.file;
  kept.value = opened.site as unknown as Site;
  revision.value = opened.revision;
  storeys.value = opened.storeys;
  houses.value = opened.houses;
  tags.value = opened.tags;
  inks.value = opened.stylesheet;
  asks.value = new Map(opened.questions.map((one) => [one.number, one.asks]));
  if (!opened.storeys.some((one) => one.storey === storey.value)) storey.value = opened.storeys[0]?.storey ?? "";
  untold = [];
  answers.value = new Map();
  order.value = [];
  shown.value = null;
  chosen.value = null;
  laid.value = null;
}

/** Records that are others now take the place of the old ones. */
export function take(changes: readonly { key: string; record?: unknown }[]): void {
  const now = kept.value;
  if (!now || changes.length === 0) return;
  const next = { ...now } as unknown as Record<string, unknown>;
  for (const { key, record } of changes) {
    const [list, ...rest] = key.split("/");
    const id = rest.join("/");
    if (!list) continue;
    if (!id) { next[list] = record; continue; }
    const old = (next[list] as { id: string }[] | undefined) ?? [];
    const rows = record === null ? old.filter((one) => one.id !== id) : old.map((one) => (one.id === id ? (record as { id: string }) : one));
    next[list] = record !== null && !old.some((one) => one.id === id) ? [...rows, record as { id: string }] : rows;
  }
  kept.value = next as unknown as Site;
}

/** What says the same stays the same object, so that nothing that shows it is drawn anew. */
export function asBefore<T>(old: T | undefined, now: T): T {
  return old !== undefined && JSON.stringify(old) === JSON.stringify(now) ? old : now;
}

function goAlong(drawn: Record<string, string>): void {
  goesAlong.value = false;
  const first = storeys.value.find((one) => one.storey in drawn);
  if (first && !(storey.value in drawn)) storey.value = first.storey;
}

/** While something is dragged: numbers that change oftener are not read. [ms] */
const TOLD_EVERY_MS = 250;
/** It is told with the next board if one comes so soon: one frame then draws both. [ms] */
const NEXT_BOARD_MS = 150;
let untold: Board[] = [];
let toldAt = -Infinity;
let telling: ReturnType<typeof setTimeout> | undefined;

/** What is drawn over the plan is shown at once; what stands beside it keeps pace with the eye while something is dragged. */
export function takeBoard(board: Board, link: number): void {
  if (board.fault) { note.value = board.fault; return; }
  untold.push(board);
  batch(() => {
    tags.value = asBefore(tags.value, board.tags);
    overlays.value = asBefore(overlays.value, board.overlays);
    if (goesAlong.value) goAlong(board.overlays);
    const rest = board.number === null ? 0 : toldAt + TOLD_EVERY_MS - performance.now();
    if (rest <= 0) tell();
    else telling ??= setTimeout(tell, rest + NEXT_BOARD_MS);
  });
  timing.value = { engine: board.engine_ms, drawing: board.drawing_ms, link };
  performance.clearMeasures("answers"); // noted for whoever watches; only the last is kept
  performance.measure("answers", { start: performance.now(), duration: 0, detail: timing.value });
  boardOf.value = { revision: board.revision, number: board.number ?? null };
  asOf.value = new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
}

/** Put what was said since it was last told beside the plan. */
function tell(): void {
  clearTimeout(telling);
  telling = undefined;
  toldAt = performance.now();
  const all = untold;
  untold = [];
  batch(() => all.forEach(told));
}

function told(board: Board): void {
  const next = new Map(answers.value);
  for (const one of board.answers) next.set(one.key, one);
  const named = new Set(board.order);
  for (const key of [...next.keys()]) if (!named.has(key)) next.delete(key);
  if (board.answers.length || next.size !== answers.value.size) answers.value = next;
  order.value = asBefore(order.value, board.order);
  if (board.findings) {
    const old = new Map(findings.value.map((one) => [one.key, one]));
    findings.value = board.findings.map((one) => asBefore(old.get(one.key), one));
  }
  if (board.waiting.length !== later.value.size) later.value = new Set(board.waiting);
  strip.value = board.strip;
  walk.value = asBefore(walk.value, board.walk);
}

/** How a fact of a record is known: marked, else told if it is written, else a default. */
export function knownBy(record: object, field: string): string {
  const basis = (record as { basis?: Record<string, string> }).basis ?? {};
  return basis[field] ?? (field in record ? "told" : "default");
}

export type { Operation };
