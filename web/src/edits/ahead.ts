/** What an edit does to the records that the page shows, ahead of the server's own word: the next edit stands on it. */
import type { Operation, Site } from "../server/types";

interface Row { id: string; [field: string]: unknown }
type Lists = Record<string, unknown>;

export function withDone(site: Site, operations: readonly Operation[]): Site {
  const next = { ...site } as unknown as Lists;
  for (const one of operations) done(next, one);
  return next as unknown as Site;
}

function done(site: Lists, one: Operation): void {
  switch (one.do) {
    case "put-device": put(site, "devices", one.device as unknown as Row); break;
    case "mount-device": change(site, "devices", one.device, { mount: one.mount, heading_deg: one.heading_deg ?? null }); break;
    case "turn-device":
      change(site, "devices", one.device, { heading_deg: one.heading_deg, ...(one.tilt_deg == null ? {} : { tilt_deg: one.tilt_deg }) });
      break;
    case "tell":
      if (one.id == null) site[one.of] = one.of === "name" ? (one.facts["name"] ?? site["name"]) : { ...(site[one.of] as object), ...one.facts };
      else change(site, one.of, one.id, one.facts);
      break;
    case "add": put(site, one.to, one.record as Row); break;
    case "remove": site[one.of] = rows(site, one.of).filter((row) => row.id !== one.id); break;
    case "move-wall": case "let-pass": break; // what hangs on a wall, or lies on a line, is for the server to say
  }
}

const rows = (site: Lists, list: string) => (site[list] as Row[] | undefined) ?? [];

function change(site: Lists, list: string, id: string, facts: Record<string, unknown>): void {
  site[list] = rows(site, list).map((row) => (row.id === id ? { ...row, ...facts } : row));
}

function put(site: Lists, list: string, record: Row): void {
  const all = rows(site, list);
  site[list] = all.some((row) => row.id === record.id) ? all.map((row) => (row.id === record.id ? record : row)) : [...all, record];
}
