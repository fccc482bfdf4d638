import type { ScreenStorey, WalkLine } from "../server/types";
import * as state from "../state";
import { point } from "../units";
import { drawn } from "./view";

const PAUSE_S = 0.6;
const SLOWER = 0.5;
let frame = 0;

/** Where the walk is at a moment: storey and place; null outside its time. */
export function placeAt(walk: readonly WalkLine[], moment: number): { storey: string; at: [number, number] } | null {
  for (const line of walk) {
    const times = line.times_s;
    for (let i = 1; i < times.length; i += 1) {
      const [from, to] = [times[i - 1] as number, times[i] as number];
      if (moment < from || moment > to) continue;
      const share = to > from ? (moment - from) / (to - from) : 1;
      const [a, b] = [line.points[i - 1] as [number, number], line.points[i] as [number, number]];
      return { storey: line.storey, at: [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share] };
    }
  }
  return null;
}

export const lasts = (walk: readonly WalkLine[]) => Math.max(0, ...walk.flatMap((line) => line.times_s));

/** Play the walk at half its pace; the storey changes with it. */
export function play(): void {
  cancelAnimationFrame(frame);
  const walk = state.walk.value;
  const end = lasts(walk);
  const began = performance.now();
  const step = (now: number) => {
    const moment = ((now - began) / 1000) * SLOWER;
    if (moment > end + PAUSE_S || state.walk.value !== walk) { state.moment.value = null; return; }
    state.moment.value = Math.min(moment, end);
    const place = placeAt(walk, Math.min(moment, end));
    if (place && place.storey !== state.storey.value) state.storey.value = place.storey;
    frame = requestAnimationFrame(step);
  };
  frame = requestAnimationFrame(step);
}

export function Walker({ storey }: { storey: ScreenStorey }) {
  const moment = state.moment.value;
  const place = moment === null ? null : placeAt(state.walk.value, moment);
  if (!place || place.storey !== storey.storey || moment === null) return null;
  const [x, y] = drawn(storey, point(...place.at));
  return (
    <g class="walker" transform={`translate(${x.toFixed(2)} ${y.toFixed(2)})`}>
      <circle r={2.2} />
      <text y={-3.2} text-anchor="middle">{moment.toFixed(1)} s</text>
    </g>
  );
}
