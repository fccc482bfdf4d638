import { expect, test } from "vitest";
import { namesOn } from "./names";

const inks = ".ink-space-name{fill:x;font-size:2px}\n.ink-space-area{font-size:1px}";
const name = '<text class="ink-space-name" x="10" y="20" text-anchor="middle">Hall</text>';

test("names take the room of their letters, as large as they are shown", () => {
  const [box] = namesOn(name, inks, 1.5, false);
  expect(box?.x0).toBeCloseTo(10 - (4 * 3 * 0.54) / 2);
  expect((box?.y1 ?? 0) - (box?.y0 ?? 0)).toBeCloseTo(3);
});

test("areas that are left out take none, and a turned name lies along its room", () => {
  const area = '<text class="ink-space-area" x="10" y="23" text-anchor="middle">6.8 m\u00b2</text>';
  expect(namesOn(name + area, inks, 1, true)).toHaveLength(1);
  expect(namesOn(name + area, inks, 1, false)).toHaveLength(2);
  const [box] = namesOn(name.replace('"middle">', '"middle" transform="rotate(-90 10 20)">'), inks, 1, false);
  expect((box?.y1 ?? 0) - (box?.y0 ?? 0)).toBeGreaterThan((box?.x1 ?? 0) - (box?.x0 ?? 0));
});
