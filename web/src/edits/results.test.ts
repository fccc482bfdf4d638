import { expect, test } from "vitest";
import type { Outcome, Shown } from "./results";

// The queue looks into the browser's own store when it is loaded.
Object.assign(globalThis, { localStorage: { getItem: () => null, setItem: () => undefined, removeItem: () => undefined } });
const { counted } = await import("./results");

const shown = (outcome: Outcome, earlier = ""): Shown => ({ outcome, reading: "", remark: "", author: "", at: "", earlier, isWaiting: false });

test("what is not done is never passed, and what is of an earlier revision counts for nothing", () => {
  const all = new Map([
    ["prove/a", shown("passed")],
    ["prove/b", shown("not passed")],
    ["prove/c", shown("not done")],
    ["prove/d", shown("passed", "it was moved or turned")],
    ["fit/e", shown("done")],
    ["prove/gone", shown("passed")],
  ]);
  expect(counted("prove", ["a", "b", "c", "d", "e"], all)).toEqual({ of: 5, done: 2, failed: 1, earlier: 1 });
  expect(counted("fit", ["e", "f"], all)).toEqual({ of: 2, done: 1, failed: 0, earlier: 0 });
  expect(counted("prove", [], all)).toEqual({ of: 0, done: 0, failed: 0, earlier: 0 });
});
