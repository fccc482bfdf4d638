import type { ScreenStorey } from "../server/types";
import * as state from "../state";
import { standOf } from "./faces";
import { drawn } from "./view";

/** Where devices were at the revision that is compared with: a ring, and a line to where they are. */
export function Compared({ storey }: { storey: ScreenStorey }) {
  const before = state.compared.value;
  const now = state.site.value;
  if (!before || !now) return null;
  return (
    <g class="compared">
      {(before.site.devices ?? []).map((device) => {
        const old = standOf(before.site, device);
        const same = now.devices?.find((one) => one.id === device.id);
        const here = same && standOf(now, same);
        if (!old || old.storey !== storey.storey) return null;
        const [x, y] = drawn(storey, old.at);
        const to = here && here.storey === storey.storey ? drawn(storey, here.at) : null;
        if (to && Math.hypot(to[0] - x, to[1] - y) < 0.1) return null;
        return (
          <g key={device.id}>
            <circle class="was" cx={x} cy={y} r={2} />
            {to ? <path class="was" d={`M${x} ${y}L${to[0]} ${to[1]}`} /> : null}
          </g>
        );
      })}
    </g>
  );
}
