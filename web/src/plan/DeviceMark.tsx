import { useComputed } from "@preact/signals";
import type { RefObject } from "preact";
import { enqueue } from "../edits/queue";
import type { Device, ScreenStorey } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { byKey, takeHold } from "./drag";
import { standOf } from "./faces";
import { held } from "./held";
import { HIGH_MM, leader, type Spot } from "./labels";
import { LOOK_MM, looks, spots, turned, widthOf } from "./letters";
import { drawn, larger } from "./view";

const TOUCH_MM = 4.6;
/** How far a mark reaches from its place, letters and all. [mm] */
export const MARK_MM = 10;

interface Props { svg: RefObject<SVGSVGElement | null>; storey: ScreenStorey; device: Device }

/** A device where it is: of all marks only that is drawn anew which is turned. */
export function DeviceMark({ svg, storey, device: kept }: Props) {
  const isHeld = useComputed(() => held.value?.of === "devices" && held.value.id === kept.id).value;
  const trial = useComputed(() => (state.trial.value?.device.id === kept.id ? state.trial.value.device : null));
  const isChosen = useComputed(() => state.chosen.value?.of === "devices" && state.chosen.value.id === kept.id).value;
  const laidAt = useComputed(() => (spots.value.get(kept.id) ?? [0, 0]).map((one) => one.toFixed(2)).join(" ")).value;
  const device = (isHeld ? null : trial.value) ?? kept;
  const stand = state.site.value && standOf(state.site.value, device);
  if (stand?.storey !== storey.storey) return null;
  const [x, y] = drawn(storey, stand.at);
  const letters = state.tags.value[device.id] ?? "?";
  const spot = laidAt.split(" ");
  const key = (event: KeyboardEvent) => {
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      state.chosen.value = { of: "devices", id: device.id };
      return;
    }
    const operation = state.isOnSite.value ? null : byKey(device, event.key);
    if (operation) { event.preventDefault(); void enqueue([operation]); }
  };
  const press = (event: PointerEvent) => {
    if (!state.isOnSite.value) { if (svg.current) takeHold(event, svg.current, storey, device); return; }
    event.stopPropagation(); // the plan beneath would take it for a press beside all devices
    state.chosen.value = { of: "devices", id: device.id };
  };
  return (
    <g class={`device ${isChosen ? "is-chosen" : ""} ${isHeld ? "is-held" : ""}`} data-device={device.id}
      transform={`translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${larger.value})`}
      tabindex={0} role="button" aria-label={(state.isOnSite.value ? words.plan.fitted : words.plan.device)(device.name, letters)} onKeyDown={key}
      onPointerDown={press}>
      <circle class="touch" r={TOUCH_MM} />
      <Mark letters={letters} heading={stand.heading} spot={[Number(spot[0]), Number(spot[1])]} />
    </g>
  );
}

/** A dot in its place, a stroke where it looks, its letters close by or at the end of a thin line. */
export function Mark({ letters, heading, spot }: { letters: string; heading: number; spot: Spot }) {
  const turn = turned(heading);
  const wide = widthOf(letters);
  const to = leader(spot, wide);
  return (
    <>
      {to ? <path class="ink-leader" d={`M0 0L${to[0].toFixed(2)} ${to[1].toFixed(2)}`} /> : null}
      {looks(letters) ? <path class="ink-device-look" d={`M0 0L${(Math.cos(turn) * LOOK_MM).toFixed(2)} ${(Math.sin(turn) * LOOK_MM).toFixed(2)}`} /> : null}
      <circle class="ink-device-dot" r={0.8} />
      <rect class="ink-device" x={spot[0] - wide / 2} y={spot[1] - HIGH_MM / 2} width={wide} height={HIGH_MM} />
      <text class="ink-device-letters" x={spot[0]} y={spot[1] + 0.85} text-anchor="middle">{letters}</text>
    </>
  );
}
