import { useComputed } from "@preact/signals";
import type { RefObject } from "preact";
import { enqueue } from "../edits/queue";
import type { Device, ScreenStorey } from "../server/types";
import * as state from "../state";
import { words } from "../words";
import { byKey, takeHold } from "./drag";
import { standOf } from "./faces";
import { drawn, larger } from "./view";

const LOOKS = new Set(["MD", "CI", "CX"]);
const LOOK_MM = 3.6;
const TOUCH_MM = 4.6;

interface Props { svg: RefObject<SVGSVGElement | null>; storey: ScreenStorey; device: Device }

/** A device where it is, or where it is being dragged to: of all marks only that one is drawn anew. */
export function DeviceMark({ svg, storey, device: kept }: Props) {
  const trial = useComputed(() => (state.trial.value?.device.id === kept.id ? state.trial.value.device : null));
  const isChosenNow = useComputed(() => state.chosen.value?.of === "devices" && state.chosen.value.id === kept.id);
  const device = trial.value ?? kept;
  const stand = state.site.value && standOf(state.site.value, device);
  if (stand?.storey !== storey.storey) return null;
  const [x, y] = drawn(storey, stand.at);
  const letters = state.tags.value[device.id] ?? "?";
  const kind = letters.replace(/[0-9]+$/, "");
  const turn = (-stand.heading * Math.PI) / 180;
  const look: [number, number] = [Math.cos(turn) * LOOK_MM, Math.sin(turn) * LOOK_MM];
  const away = LOOKS.has(kind) ? turn + Math.PI / 2 : turn;
  const label: [number, number] = [Math.cos(away) * 4.6, Math.sin(away) * 4.6];
  const wide = letters.length * 1.55 + 1.6;
  const isChosen = isChosenNow.value;
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
    <g class={`device ${isChosen ? "is-chosen" : ""}`} data-device={device.id} transform={`translate(${x.toFixed(2)} ${y.toFixed(2)}) scale(${larger.value})`}
      tabindex={0} role="button" aria-label={words.plan.device(device.name, letters)} onKeyDown={key}
      onPointerDown={(event) => svg.current && takeHold(event, svg.current, storey, device)}>
      <circle class="touch" r={TOUCH_MM} />
      {LOOKS.has(kind) ? <path class="ink-device-look" d={`M0 0L${look[0].toFixed(2)} ${look[1].toFixed(2)}`} /> : null}
      <circle class="ink-device-dot" r={0.8} />
      <rect class="ink-device" x={label[0] - wide / 2} y={label[1] - 1.9} width={wide} height={3.8} />
      <text class="ink-device-letters" x={label[0]} y={label[1] + 0.85} text-anchor="middle">{letters}</text>
    </g>
  );
}
