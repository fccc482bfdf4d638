import { expect, test } from "vitest";
import type { Operation, Site } from "../server/types";
import { withDone } from "./ahead";

const site = { name: "hut", storeys: [], devices: [{ id: "a", mount: { on: "free" } }], zones: [] } as unknown as Site;
const after = (...operations: unknown[]) => withDone(site, operations as Operation[]) as unknown as Record<string, any>;

test("each edit stands on the one before", () => {
  const mount = { on: "wall", wall: "w", side: "left", offset_m: 1, height_m: 2 };
  const moved = after({ do: "mount-device", device: "a", mount, heading_deg: null }, { do: "turn-device", device: "a", heading_deg: 30 });
  expect(moved["devices"][0]).toEqual({ id: "a", mount, heading_deg: 30 });
});

test("records are told, added and removed", () => {
  expect(after({ do: "tell", of: "programme", facts: { entry_time_s: 20 } })["programme"]).toEqual({ entry_time_s: 20 });
  expect(after({ do: "add", to: "people", record: { id: "p" } })["people"]).toEqual([{ id: "p" }]);
  expect(after({ do: "remove", of: "devices", id: "a" })["devices"]).toEqual([]);
  expect(after({ do: "tell", of: "name", facts: { name: "cabin" } })["name"]).toBe("cabin");
});

test("the site it stands on is left as it was", () => {
  after({ do: "remove", of: "devices", id: "a" });
  expect(site.devices).toHaveLength(1);
});
