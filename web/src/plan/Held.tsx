import type { ComponentChildren } from "preact";
import type { ScreenStorey } from "../server/types";
import * as state from "../state";
import { Mark, MARK_MM } from "./DeviceMark";
import { standOf } from "./faces";
import { held, pictured, pxPerMm } from "./held";
import { spots, usual } from "./letters";
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
  const kept = site.devices?.find((one) => one.id === what.id);
  const device = state.trial.value?.device.id === what.id ? state.trial.value.device : kept;
  const stand = device && standOf(site, device);
  if (!kept || !device || !stand) return null;
  const letters = state.tags.value[device.id] ?? "?";
  // Its letters stay where they stand until it turns.
  const isAsKept = standOf(site, kept)?.heading === stand.heading;
  const spot = (isAsKept && spots.value.get(device.id)) || usual(letters, stand.heading);
  return (
    <Small wide={2 * MARK_MM * larger.value} high={2 * MARK_MM * larger.value}>
      <g class="device is-chosen" transform={`scale(${larger.value})`}>
        <Mark letters={letters} heading={stand.heading} spot={spot} />
      </g>
    </Small>
  );
}

/** No larger than what is on it: the browser then puts together anew only what is under it. */
function Small({ wide, high, children }: { wide: number; high: number; children: ComponentChildren }) {
  const scale = pxPerMm();
  const px = (mm: number) => `${(mm * scale).toFixed(1)}px`;
  return (
    <svg ref={pictured} class="held" aria-hidden="true" viewBox={`${-wide / 2} ${-high / 2} ${wide} ${high}`}
      style={{ width: px(wide), height: px(high), left: px(-wide / 2), top: px(-high / 2) }}>
      {children}
    </svg>
  );
}
