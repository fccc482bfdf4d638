import { expect, test } from "vitest";
import { boxAbout, HIGH_MM, laid, leader, shared, type Ground, type Mark } from "./labels";

const sheet = { x0: 0, y0: 0, x1: 200, y1: 200 };
const bare: Ground = { sheet, names: [], walls: [], grown: 1 };
const mark = (id: string, x: number, y: number, more: Partial<Mark> = {}): Mark => ({ id, at: [x, y], wide: 6, toward: 0, look: null, ...more });
const boxOf = (one: Mark, spot: readonly [number, number], grown = 1) =>
  boxAbout([one.at[0] + spot[0], one.at[1] + spot[1]], one.wide * grown, HIGH_MM * grown);

/** The same row of numbers for a seed, each from 0 to 1. */
function row(seed: number): () => number {
  let state = seed;
  return () => { state = (state * 1664525 + 1013904223) % 4294967296; return state / 4294967296; };
}

test("letters of any cluster lie on no other letters and on no mark, always in the same places", () => {
  for (let seed = 1; seed <= 60; seed += 1) {
    const next = row(seed);
    const grown = 1 + 1.2 * next();
    const marks = Array.from({ length: 2 + Math.floor(next() * 24) }, (_, i) =>
      mark(String(i), 70 + 50 * next(), 70 + 50 * next(), { wide: 4.7 + 1.55 * Math.floor(next() * 3), toward: 6.28 * next() }));
    const ground: Ground = { ...bare, grown, walls: [{ from: [95, 0], to: [95, 200], thick: 6 }], names: [boxAbout([80, 90], 20, 4)] };
    const spots = laid(marks, ground);
    const boxes = marks.map((one) => boxOf(one, spots.get(one.id) as [number, number], grown));
    const dots = marks.map((one) => boxAbout(one.at, 2 * grown, 2 * grown));
    boxes.forEach((one, i) => {
      for (const other of [...boxes.slice(0, i), ...dots]) expect(shared(one, other), `seed ${seed}, mark ${i}`).toBe(0);
    });
    expect(laid(marks, ground)).toEqual(spots);
  }
});

test("letters stand where they are liked best, off names, and on their side of a wall", () => {
  const one = mark("a", 100, 100);
  expect(laid([one], bare).get("a")).toEqual([5, 0]);
  expect(laid([{ ...one, toward: Math.PI / 2 }], bare).get("a")?.[1]).toBeCloseTo(3.9);
  const named = laid([one], { ...bare, names: [boxAbout([105, 100], 10, 4)] }).get("a") as [number, number];
  expect(shared(boxOf(one, named), boxAbout([105, 100], 10, 4))).toBe(0);
  const walled = laid([one], { ...bare, walls: [{ from: [102, 0], to: [102, 200], thick: 2 }] }).get("a") as [number, number];
  expect(walled[0]).toBeLessThan(0);
});

test("letters stay on the sheet, and a line leads to what is farther off", () => {
  const [x, y] = laid([mark("a", 199, 199)], bare).get("a") as [number, number];
  expect(199 + x + 3).toBeLessThanOrEqual(200);
  expect(199 + y + HIGH_MM / 2).toBeLessThanOrEqual(200);
  expect(leader([5, 0], 6)).toBeNull();
  expect(leader([10, 0], 6)).toEqual([7, 0]);
});
