import { expect, test, vi } from "vitest";

vi.stubGlobal("localStorage", { getItem: () => null, setItem: () => undefined, removeItem: () => undefined });
const { lasts, placeAt } = await import("./Walker");

const walk = [
  { storey: "ground", points: [[0, 0], [4, 0]], times_s: [0, 2] },
  { storey: "first", points: [[4, 0], [4, 2]], times_s: [3, 4] },
] as never;

test("a walk is somewhere on its line at each moment, and nowhere outside its time", () => {
  expect(placeAt(walk, 1)).toEqual({ storey: "ground", at: [2, 0] });
  expect(placeAt(walk, 3.5)).toEqual({ storey: "first", at: [4, 1] });
  expect(placeAt(walk, 2.5)).toBeNull();
  expect(placeAt(walk, 5)).toBeNull();
  expect(lasts(walk)).toBe(4);
  expect(lasts([])).toBe(0);
});
