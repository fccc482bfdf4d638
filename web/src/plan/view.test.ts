import { expect, test } from "vitest";
import { enlargement } from "./view";

test("marks are as on paper where they can be read, and larger the farther off the plan is", () => {
  const box = { x: 0, y: 0, wide: 200, high: 100 };
  expect(enlargement(box, { wide: 1000, high: 900 })).toBe(1);
  expect(enlargement(box, { wide: 400, high: 900 })).toBe(2);
  expect(enlargement(box, { wide: 100, high: 900 })).toBe(2.2);
  expect(enlargement(null, { wide: 100, high: 900 })).toBe(1);
  expect(enlargement(box, { wide: 0, high: 0 })).toBe(1);
});
