/** Pan and zoom of the plan: a view box in drawn millimetres. */
import { computed, signal } from "@preact/signals";
import type { ScreenStorey } from "../server/types";
import type { Point } from "../units";

export interface View { x: number; y: number; wide: number; high: number }
/** Free round the plan, for doors that open outward. */
const ROUND_MM = 6;
export const view = signal<View | null>(null);
/** How large the plan's window is on the screen. [px] */
export const room = signal({ wide: 0, high: 0 });

/** At this scale a mark is large enough as it is on paper. [px/mm] */
const READ_PX_PER_MM = 4;
const LARGEST = 2.2;

/** Pixels for a drawn millimetre; 0: not known yet. */
const scale = computed(() => scaled(view.value, room.value));

function scaled(box: View | null, on: { wide: number; high: number }): number {
  return box && on.wide && on.high ? Math.min(on.wide / box.wide, on.high / box.high) : 0;
}

export const pxPerMetre = (storey: ScreenStorey): number => scale.value * storey.mm_per_m;

/** How much larger than on paper marks are drawn, so that they are read and pressed however far off the plan is. */
export const larger = computed(() => enlargement(view.value, room.value));

/** Letters of rooms grow less than marks: they must stay in their rooms. */
const LETTERS = 1.5;
export const lettersGrow = computed(() => Math.min(LETTERS, larger.value));
/** What is written beside signs was put where it has room: it grows least. */
const ANSWERS = 1.3;
export const answersGrow = computed(() => Math.min(ANSWERS, larger.value));
/** From here on areas are left out, so that names have room. */
const CROWDED = 1.2;
export const isCrowded = computed(() => larger.value > CROWDED);

export function enlargement(box: View | null, on: { wide: number; high: number }): number {
  const now = scaled(box, on);
  return now ? Math.round(Math.min(LARGEST, Math.max(1, READ_PX_PER_MM / now)) * 20) / 20 : 1;
}

export function whole(storey: ScreenStorey): View {
  const [x0, y0, x1, y1] = storey.bounds as [number, number, number, number];
  const [wide, high] = [(x1 - x0) * storey.mm_per_m, (y1 - y0) * storey.mm_per_m];
  return { x: -ROUND_MM, y: -ROUND_MM, wide: wide + 2 * ROUND_MM, high: high + 2 * ROUND_MM };
}

/** From the plan's metres to drawn millimetres. */
export function drawn(storey: ScreenStorey, at: Point): [number, number] {
  const [x0, , , y1] = storey.bounds as [number, number, number, number];
  return [(at[0] - x0) * storey.mm_per_m, (y1 - at[1]) * storey.mm_per_m];
}

export function zoomed(now: View, factor: number, about?: { x: number; y: number }): View {
  const centre = about ?? { x: now.x + now.wide / 2, y: now.y + now.high / 2 };
  return {
    x: centre.x - (centre.x - now.x) / factor, y: centre.y - (centre.y - now.y) / factor,
    wide: now.wide / factor, high: now.high / factor,
  };
}
