import { expect, test } from "vitest";
import type { Site } from "../server/types";
import { point } from "../units";
import { nearestFace, standOf, straightOff } from "./faces";

const wall = { id: "south", storey: "ground", line_m: [[0, 0], [5, 0]], thickness_m: 0.3 };
const site = {
  name: "room", storeys: [{ id: "ground", name: "ground", elevation_m: 0 }], walls: [wall],
  openings: [{ id: "door", name: "door", kind: "door", wall: "south", offset_m: 2, width_m: 0.9 }],
  devices: [],
} as unknown as Site;

test("a device stands off its face and looks straight off it", () => {
  const device = { id: "d", name: "d", sheet: "s", mount: { on: "wall", wall: "south", side: "left", offset_m: 1, height_m: 2.2 } };
  const stand = standOf(site, device as never);
  expect(stand?.at[0]).toBeCloseTo(1);
  expect(stand?.at[1]).toBeCloseTo(0.19);
  expect(stand?.heading).toBeCloseTo(90);
  expect(straightOff(wall as never, "right")).toBeCloseTo(-90);
});

test("a dragged device keeps to the nearest face and beside a door", () => {
  expect(nearestFace(site, "ground", point(1, 0.4), 1.4)).toMatchObject({ wall: "south", side: "left", offset: 1 });
  expect(nearestFace(site, "ground", point(2.1, -0.4), 1.4)).toMatchObject({ side: "right", offset: 2.53 });
  expect(nearestFace(site, "ground", point(2.1, 0.4), 2.2)).toMatchObject({ offset: 2.1 });
  expect(nearestFace(site, "first", point(1, 1), 1)).toBeNull();
});
