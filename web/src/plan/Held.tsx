import type { ComponentChildren } from "preact";
import type { ScreenStorey } from "../server/types";
import * as state from "../state";
import { Mark, MARK_MM } from "./DeviceMark";
import { standOf } from "./faces";
import { held, pictured, pxPerMm } from "./held";
import { larger } from "./view";
import { across, WALL_MM } from "./WallMarks";

/** The picture of what is held. It is drawn anew only when it turns. */
export function Held({ storey }: { storey: ScreenStorey }) {
  const what = held.value;
  const site = state.site.value;
  if (!what || !site) return null;
  if (what.of === "walls") {
    const wall = site.walls?.find((one) => one.id === what.id);
    if (!wall) return null;
    const [[ax, ay], [bx, by]] = across(wall, storey);
    const wide = Math.max(WALL_MM, (wall.thickness_m ?? 0.1) * storey.mm_per_m);
    return (
      <Small high={Math.abs(by - ay) + wide} wide={Math.abs(bx - ax) + wide}>
        <path class="wall-mark is-chosen" d={`M${ax} ${ay}L${bx} ${by}`} style={{ strokeWidth: wide }} />
      </Small>
    );
  }
  const trial = state.trial.value?.device;
  const device = trial?.id === what.id ? trial : site.devices?.find((one) => one.id === what.id);
  const stand = device && standOf(site, device);
  if (!device || !stand) return null;
  return (
    <Small wide={2 * MARK_MM * larger.value} high={2 * MARK_MM * larger.value}>
      <g class="device is-chosen" transform={`scale(${larger.value})`}>
        <Mark letters={state.tags.value[device.id] ?? "?"} heading={stand.heading} />
      </g>
    </Small>
  );
}

/** No larger than what is on it: the browser then puts together anew only what is under it. */
function Small({ wide, high, children }: { wide: number; high: number; children: ComponentChildren }) {
  const scale = pxPerMm();
  return (
    <svg ref={pictured} class="held" aria-hidden="true" viewBox={`${-wide / 2} ${-high / 2} ${wide} ${high}`}
      style={{ width: wide * scale, height: high * scale, left: (-wide / 2) * scale, top: (-high / 2) * scale }}>
      {children}
    </svg>
  );
}
