import type { ScreenStorey } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { pxPerMetre } from "./view";

const FOOT_M = 0.3048;
/** How long the bar is at most. [px] */
const ROOM_PX = 140;
const LENGTHS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];

/** The longest round length that has room: how many units of the system, and its pixels. */
export function barOf(pxPerM: number, system: "metric" | "feet"): { amount: number; px: number } {
  const unit = pxPerM * (system === "metric" ? 1 : FOOT_M);
  const amount = LENGTHS.filter((one) => one * unit <= ROOM_PX).at(-1) ?? (LENGTHS[0] as number);
  return { amount, px: amount * unit };
}

/** How long a length of the house is on this screen now; a screen has no scale of its own. */
export function ScaleBar({ storey }: { storey: ScreenStorey }) {
  const system = state.system.value;
  const pxPerM = pxPerMetre(storey);
  if (!pxPerM) return null;
  const { amount, px } = barOf(pxPerM, system);
  const told = words.plan.bar(amount, system);
  return (
    <p class="scale-bar"><span class="reader">{words.plan.barName} </span><span class="length" style={{ width: `${px.toFixed(1)}px` }} />{told}</p>
  );
}
