import { useComputed } from "@preact/signals";
import type { RefObject } from "preact";
import { enqueue } from "../edits/queue";
import type { Device, ScreenStorey } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { byKey, takeHold } from "./drag";
import { standOf } from "./faces";
import { held } from "./held";
import { drawn, larger } from "./view";

const LOOKS = new Set(["MD", "CI", "CX"]);
const LOOK_MM = 3.6;
const TOUCH_MM = 4.6;
/** How far a mark reaches from its place, letters and all. [mm] */
export const MARK_MM = 10;

interface Props { svg: RefObject<SVGSVGElement | null>; storey: ScreenStorey; device: Device }

/** A device where it is: of all marks only that is drawn anew which is turned. */
export function DeviceMark({ svg, storey, device: kept }: Props) {
  const isHeld = useComputed(() => held.value?.of === "devices" && held.value.id === kept.id).value;
  const trial = useComputed(() => (state.trial.value?.device.id === kept.id ? state.trial.value.device : null));
  const isChosen = useComputed(() => state.chosen.value?.of === "devices" && state.chosen.value.id === kept.id).value;
  const device = (isHeld ? null : trial.value) ?? kept;
  const stand = state.site.value && standOf(state.site.value, device);
  if (stand?.storey !== storey.storey) return null;
  const [x, y] = drawn(storey, stand.at);
  const letters = state.tags.value[device.id] ?? "?";
  const key = (event: KeyboardEvent) => {
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      state.chosen.value = { of: "devices", id: device.id };
      return;
    }
    const operation = byKey(device, event.key);
    if (operation) { event.preventDefault(); void enqueue([operation]); }
  };
  return (
    <g class={`device ${isChosen ? "is-chosen" : ""} ${isHeld ? "is-held" : ""}`} data-device={device.id}
      transform={`translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${larger.value})`}
      tabindex={0} role="button" aria-label={words.plan.device(device.name, letters)} onKeyDown={key}
      onPointerDown={(event) => svg.current && takeHold(event, svg.current, storey, device)}>
      <circle class="touch" r={TOUCH_MM} />
      <Mark letters={letters} heading={stand.heading} />
    </g>
  );
}

/** A dot in its place, a stroke where it looks, its letters close by. */
export function Mark({ letters, heading }: { letters: string; heading: number }) {
  const looks = LOOKS.has(letters.replace(/[0-9]+$/, ""));
  const turn = (-heading * Math.PI) / 180;
  const look: [number, number] = [Math.cos(turn) * LOOK_MM, Math.sin(turn) * LOOK_MM];
  const away = looks ? turn + Math.PI / 2 : turn;
  const label: [number, number] = [Math.cos(away) * 4.6, Math.sin(away) * 4.6];
  const wide = letters.length * 1.55 + 1.6;
  return (
    <>
      {looks ? <path class="ink-device-look" d={`M0 0L${look[0].toFixed(2)} ${look[1].toFixed(2)}`} /> : null}
      <circle class="ink-device-dot" r={0.8} />
      <rect class="ink-device" x={label[0] - wide / 2} y={label[1] - 1.9} width={wide} height={3.8} />
      <text class="ink-device-letters" x={label[0]} y={label[1] + 0.85} text-anchor="middle">{letters}</text>
    </>
  );
}
