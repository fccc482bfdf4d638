import { expect, test, vi } from "vitest";

vi.stubGlobal("localStorage", { getItem: () => null, setItem: () => undefined, removeItem: () => undefined });
const { barOf } = await import("./ScaleBar");

test("the bar is the longest round length that has room, in metres or feet", () => {
  expect(barOf(60, "metric")).toEqual({ amount: 2, px: 120 });
  expect(barOf(10, "metric")).toEqual({ amount: 10, px: 100 });
  expect(barOf(60, "feet").amount).toBe(5);
  expect(barOf(60, "feet").px).toBeCloseTo(91.44);
  expect(barOf(5000, "metric").amount).toBe(0.1);
});
