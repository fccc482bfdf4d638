/** What each device is called on the plan, and where those letters stand on the storey that is shown. */
import { computed } from "@preact/signals";
import * as state from "../state";
import type { Device, ScreenStorey, Site } from "../server/types";
import { standOf } from "./faces";
import { laid, type Ground, type Mark, type Spot } from "./labels";
import { namesOn } from "./names";
import { drawn, isCrowded, larger, lettersGrow, whole } from "./view";
import { point } from "../units";

const LOOKS = new Set(["MD", "CI", "CX"]);
export const LOOK_MM = 3.6;
/** Walks end at a control unit, with a sign: its letters keep clear of that. */
const GOAL_MM = 3.4;

/** Whether it matters where a device looks. */
export const looks = (letters: string): boolean => LOOKS.has(letters.replace(/[0-9]+$/, ""));
export const widthOf = (letters: string): number => letters.length * 1.55 + 1.6;
/** A heading as it is drawn, y downward. [rad] */
export const turned = (heading: number): number => (-heading * Math.PI) / 180;

/** The direction that letters like best: off the face, beside what it looks at. */
const liked = (letters: string, heading: number) => turned(heading) + (looks(letters) ? Math.PI / 2 : 0);

export function usual(letters: string, heading: number): Spot {
  const turn = Math.round(liked(letters, heading) / (Math.PI / 2)) * (Math.PI / 2);
  return [Math.cos(turn) * (widthOf(letters) / 2 + 2), Math.sin(turn) * 3.9];
}

function markOf(site: Site, device: Device, storey: ScreenStorey, letters: string, grown: number): Mark | null {
  const stand = standOf(site, device);
  if (stand?.storey !== storey.storey) return null;
  const [x, y] = drawn(storey, stand.at);
  const turn = turned(stand.heading);
  const look: Spot | null = looks(letters) ? [x + Math.cos(turn) * LOOK_MM * grown, y + Math.sin(turn) * LOOK_MM * grown] : null;
  const clear = letters.startsWith("CU") ? GOAL_MM : undefined;
  return { id: device.id, at: [x, y], wide: widthOf(letters), toward: liked(letters, stand.heading), look, ...(clear && { clear }) };
}

/** By device: the middle of its letters, seen from its place; as on paper, before they grow. */
export const spots = computed<ReadonlyMap<string, Spot>>(() => {
  const site = state.site.value;
  const storey = state.storeys.value.find((one) => one.storey === state.storey.value);
  if (!site || !storey) return new Map();
  const grown = larger.value;
  const marks = (site.devices ?? []).flatMap((one) => markOf(site, one, storey, state.tags.value[one.id] ?? "?", grown) ?? []);
  const sheet = whole(storey);
  const ground: Ground = {
    grown,
    sheet: { x0: sheet.x, y0: sheet.y, x1: sheet.x + sheet.wide, y1: sheet.y + sheet.high },
    names: namesOn(state.houses.value[storey.storey] ?? "", state.inks.value, lettersGrow.value, isCrowded.value),
    walls: (site.walls ?? []).filter((one) => one.storey === storey.storey).map((one) => {
      const [[ax, ay], [bx, by]] = one.line_m as [[number, number], [number, number]];
      return { from: drawn(storey, point(ax, ay)), to: drawn(storey, point(bx, by)), thick: (one.thickness_m ?? 0.1) * storey.mm_per_m };
    }),
  };
  return new Map([...laid(marks, ground)].map(([id, [x, y]]) => [id, [x / grown, y / grown]]));
});
