/** What is held while it is dragged: a small picture of its own over a still plan, which nothing but its `transform` moves. */
import { signal } from "@preact/signals";
import type { ScreenStorey } from "../server/types";
import { point, type Point } from "../units";
import { view } from "./view";

export interface Held { of: "devices" | "walls"; id: string }
export const held = signal<Held | null>(null);

/** How the sheet lies on the screen: pixels for a drawn millimetre, and where its corner is. */
interface Lie { scale: number; left: number; top: number; planLeft: number; planTop: number }

let sheet: SVGSVGElement | null = null;
let lie: Lie | null = null;
let seen: unknown = null;
let picture: SVGSVGElement | null = null;
let at: readonly [number, number] = [0, 0];

/** Take hold: from here on no layout is read until the view is another. */
export function hold(what: Held, on: SVGSVGElement, place: readonly [number, number]): void {
  sheet = on;
  lie = null;
  at = place;
  held.value = what;
}

export function release(): void { held.value = null; }

function lies(): Lie {
  if (lie && seen === view.peek()) return lie;
  const matrix = sheet?.getScreenCTM();
  const box = sheet?.parentElement?.getBoundingClientRect();
  seen = view.peek();
  lie = { scale: matrix?.a ?? 1, left: matrix?.e ?? 0, top: matrix?.f ?? 0, planLeft: box?.left ?? 0, planTop: box?.top ?? 0 };
  return lie;
}

/** From a place on the screen to the plan's metres. */
export function pointed(storey: ScreenStorey, x: number, y: number): Point {
  const { scale, left, top } = lies();
  const [x0, , , y1] = storey.bounds as [number, number, number, number];
  return point((x - left) / scale / storey.mm_per_m + x0, y1 - (y - top) / scale / storey.mm_per_m);
}

/** Put the picture's middle on a place of the sheet. [mm] */
export function put(place: readonly [number, number]): void {
  at = place;
  if (!picture) return;
  const { scale, left, top, planLeft, planTop } = lies();
  picture.style.transform = `translate(${(place[0] * scale + left - planLeft).toFixed(1)}px,${(place[1] * scale + top - planTop).toFixed(1)}px)`;
}

/** The picture is there, or gone. */
export function pictured(one: SVGSVGElement | null): void {
  picture = one;
  if (one) put(at);
}

export const pxPerMm = (): number => lies().scale;
