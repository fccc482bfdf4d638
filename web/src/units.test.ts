import { expect, test } from "vitest";
import { lengthWords, momentWords, sizeWords, towardWords } from "./units";

test("lengths are told in metres or in feet and inches", () => {
  expect(lengthWords(2.2, "metric")).toBe("2.20 m");
  expect(lengthWords(0.3048 * 7 + 0.0254 * 2.5, "feet")).toBe("7\u2032 2\u00bd\u2033");
  expect(lengthWords(0.0127, "feet")).toBe("\u00bd\u2033");
  expect(lengthWords(0, "feet")).toBe("0\u2033");
});

test("directions are told by the plan's points", () => {
  expect(towardWords(0)).toBe("east on the plan (0\u00b0)");
  expect(towardWords(-90)).toBe("south on the plan (270\u00b0)");
  expect(towardWords(359)).toContain("east");
});

test("sizes of files are told to what matters", () => {
  expect([999, 15_400, 2_340_000, 500_000_000].map(sizeWords)).toEqual(["999 B", "15 kB", "2.3 MB", "500 MB"]);
});

test("a moment is told with its day and its hour", () => {
  expect(momentWords("2026-11-26T14:05:00.000+00:00", "en-GB")).toMatch(/26 Nov 2026.*\d\d:\d\d/);
});
