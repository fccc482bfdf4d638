/** Answers by question: which stand together, which are shown, and how their ranges lie beside each other. */
import type { BoardAnswer } from "../server/types";

export interface Only { storey: string; thing: string }
export interface Group {
  question: number;
  name: string;
  /** As the server has them, worst first. */
  all: readonly BoardAnswer[];
  counts: Readonly<Record<string, number>>;
  /** How it stands with the question: the verdict of its worst answer. */
  verdict: string;
  /** What is to be looked at. */
  open: readonly BoardAnswer[];
  /** Met, or not known: behind one line. */
  rest: readonly BoardAnswer[];
}

const TO_LOOK_AT = new Set(["bad", "thin"]);
/** Verdicts in the order in which they are counted. */
export const VERDICTS = ["bad", "thin", "unknown", "good"] as const;

export function isShown(answer: BoardAnswer, only: Only): boolean {
  const isThere = !only.storey || !answer.storey || answer.storey === only.storey;
  return isThere && (!only.thing || answer.about.includes(only.thing));
}

/** Groups in the order of their worst answers, which is the server's. */
export function grouped(order: readonly string[], answers: ReadonlyMap<string, BoardAnswer>, only: Only, chosen: string | null): Group[] {
  const found = new Map<number, BoardAnswer[]>();
  for (const key of order) {
    const one = answers.get(key);
    if (!one || !isShown(one, only)) continue;
    const same = found.get(one.question);
    if (same) same.push(one);
    else found.set(one.question, [one]);
  }
  return [...found].map(([question, all]) => ({
    question,
    all,
    name: all[0]?.question_name ?? "",
    verdict: all[0]?.verdict ?? "unknown",
    counts: counted(all),
    open: all.filter((one) => TO_LOOK_AT.has(one.verdict) || one.key === chosen),
    rest: all.filter((one) => !TO_LOOK_AT.has(one.verdict) && one.key !== chosen),
  }));
}

export function counted(all: readonly BoardAnswer[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const one of all) counts[one.verdict] = (counts[one.verdict] ?? 0) + 1;
  return counts;
}

export interface Axis { low: number; high: number }

/** One axis for each unit of a group; none where nothing on it has a width. */
export function axes(all: readonly BoardAnswer[]): Record<string, Axis> {
  const found: Record<string, Axis> = {};
  const wide = new Set<string>();
  for (const { span } of all) {
    if (!span) continue;
    const { unit } = span;
    if (span.high > span.low) wide.add(unit);
    const now = found[unit];
    found[unit] = { low: Math.min(now?.low ?? span.low, span.low), high: Math.max(now?.high ?? span.high, span.high) };
  }
  for (const [unit, axis] of Object.entries(found)) {
    if (!wide.has(unit)) { delete found[unit]; continue; }
    // Nought belongs to the axis unless all stand far from it, as levels in a room do.
    if (axis.low > 0 && axis.low < axis.high / 2) axis.low = 0;
    if (axis.high < 0 && axis.high > axis.low / 2) axis.high = 0;
  }
  return found;
}

/** Where a value stands on an axis. [%] */
export function placed(value: number, axis: Axis): number {
  return Math.min(100, Math.max(0, ((value - axis.low) / (axis.high - axis.low || 1)) * 100));
}
